package cli

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every block of the README that starts with a command of ours is run, and its
// output must be what stands there, as far as "..." .
func TestReadmeIsTrue(t *testing.T) {
	t.Chdir("../../..")
	raw, err := os.ReadFile("README.md")
	require.NoError(t, err)
	blocks := strings.Split(string(raw), "```")
	ran := 0
	for i, block := range blocks {
		command, want, ok := strings.Cut(strings.TrimPrefix(block, "\n"), "\n")
		args, ours := strings.CutPrefix(command, "$ assize ")
		if i%2 == 0 || !ok || !ours {
			continue
		}
		ran++
		code, out, errs := at(Session{}, strings.Fields(args)...)
		require.Equal(t, Done, code, errs)
		if part, cut := strings.CutSuffix(strings.TrimRight(want, "\n"), "..."); cut {
			lines := strings.SplitAfter(out, "\n")
			out = strings.Join(lines[:min(len(lines), strings.Count(part, "\n"))], "")
			want = part
			blocks[i] = "\n" + command + "\n" + out + "...\n"
		} else {
			blocks[i] = "\n" + command + "\n" + out
		}
		if os.Getenv("UPDATE") == "" {
			require.Equal(t, want, out)
		}
	}
	require.Positive(t, ran)
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.WriteFile("README.md", []byte(strings.Join(blocks, "```")), 0o644))
	}
}

// Many single formulas of an old class are told together, without a verdict:
// nothing lies within a formula.
func TestManyFormulasAreToldTogether(t *testing.T) {
	_, out, _ := at(Session{}, "check", "--brief", "--readings", "50", "../../../testdata/demo/millrace/paste-no-3.yaml")
	require.Regexp(t, `[0-9.]+-[0-9.]+ in [0-9]+ formulas`, out)
	require.NotRegexp(t, `formulas( \[[0-9]+\])* (below|within|above)`, out)
}
