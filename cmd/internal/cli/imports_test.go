package cli

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestOneWayThroughTheHouse holds imports to one direction: cmd uses ratios,
// ratios uses formula, formula uses reference, and never the other way.
func TestOneWayThroughTheHouse(t *testing.T) {
	cmd := exec.Command("go", "list", "-f", "{{.ImportPath}}{{range .Imports}} {{.}}{{end}}", "./...")
	cmd.Dir = "../../.."
	out, err := cmd.Output()
	require.NoError(t, err)
	rank := map[string]int{"reference": 0, "formula": 1, "ratios": 2, "cmd": 3}
	place := func(path string) (int, bool) {
		inside, ok := strings.CutPrefix(path, "assize/")
		if !ok {
			return 0, false
		}
		top, _, _ := strings.Cut(inside, "/")
		r, known := rank[top]
		require.True(t, known, "a package outside the four places: %s", path)
		return r, true
	}
	seen := map[int]bool{}
	for line := range strings.Lines(string(out)) {
		paths := strings.Fields(line)
		from, ok := place(paths[0])
		require.True(t, ok, paths[0])
		seen[from] = true
		for _, used := range paths[1:] {
			if to, ours := place(used); ours {
				require.LessOrEqual(t, to, from, "%s must not use %s", paths[0], used)
			}
		}
	}
	require.Len(t, seen, len(rank))
}

// TestMechanismsStandAlone: the judge may show the verdict of the textbook, but the
// packages that work out a reading do not rest on it, nor on the judge.
func TestMechanismsStandAlone(t *testing.T) {
	for _, pkg := range []string{"setting", "crumb", "paste", "bake", "readings"} {
		cmd := exec.Command("go", "list", "-deps", "./ratios/"+pkg)
		cmd.Dir = "../../.."
		out, err := cmd.Output()
		require.NoError(t, err)
		for _, above := range []string{"assize/ratios/judge", "assize/ratios/baseline", "assize/ratios/change"} {
			require.NotContains(t, strings.Fields(string(out)), above, pkg)
		}
	}
}
