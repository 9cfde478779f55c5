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
	ran := 0
	for i, block := range strings.Split(string(raw), "```") {
		command, want, ok := strings.Cut(strings.TrimPrefix(block, "\n"), "\n")
		args, ours := strings.CutPrefix(command, "$ assize ")
		if i%2 == 0 || !ok || !ours {
			continue
		}
		ran++
		code, out, errs := at(Session{}, strings.Fields(args)...)
		require.Equal(t, Done, code, errs)
		if part, cut := strings.CutSuffix(strings.TrimRight(want, "\n"), "..."); cut {
			require.True(t, strings.HasPrefix(out, part), "%s\nprints\n%s\nand the README has\n%s", command, out, part)
			continue
		}
		require.Equal(t, want, out)
	}
	require.Positive(t, ran)
}

// Many single formulas of an old class are told together, without a verdict:
// nothing lies within a formula.
func TestManyFormulasAreToldTogether(t *testing.T) {
	_, out, _ := at(Session{}, "check", "--brief", "--readings", "50", "../../../testdata/demo/millrace/paste-no-3.yaml")
	require.Regexp(t, `[0-9.]+-[0-9.]+ in [0-9]+ formulas`, out)
	require.NotRegexp(t, `formulas( \[[0-9]+\])* (below|within|above)`, out)
}
