package file_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const malformed = "../../testdata/malformed"

// Each malformed file says exactly what is wrong with it, every fault in one
// run. UPDATE=1 writes what it says now; read it as a cook would before
// keeping it.
func TestMalformed(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(malformed, "*.yaml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 45)
	tab := tables(t)
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			f, faults := read(filepath.Base(name), text, tab)
			require.NotEmpty(t, faults, "nothing is wrong with it")
			require.Nil(t, f, "a formula came of a page with faults")
			requireInside(t, text, faults)

			var got bytes.Buffer
			require.NoError(t, faults.Write(&got))
			golden := strings.TrimSuffix(name, ".yaml") + ".want"
			if os.Getenv("UPDATE") != "" {
				require.NoError(t, os.WriteFile(golden, got.Bytes(), 0o644))
				return
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			require.Equal(t, string(want), got.String())
		})
	}
}

// read reads a page as what its name says it is.
func read(name string, text []byte, t *reference.Tables) (any, fault.List) {
	switch {
	case strings.HasPrefix(name, "kitchen-"):
		_, faults := file.ReadKitchen(name, text)
		return nil, faults
	case strings.HasPrefix(name, "book-"):
		_, faults := file.ReadBook(name, text, t)
		return nil, faults
	}
	f, faults := file.Read(name, text, t)
	if f == nil {
		return nil, faults
	}
	return f, faults
}

// requireInside holds every fault to a place on the page.
func requireInside(t testing.TB, text []byte, faults fault.List) {
	t.Helper()
	rows := fault.Lines(string(text))
	last := fault.Fault{}
	for _, f := range faults {
		require.NotEmpty(t, f.What)
		require.GreaterOrEqual(t, f.Line, 0)
		require.LessOrEqual(t, f.Line, len(rows), f.What)
		if f.Line > 0 {
			require.GreaterOrEqual(t, f.Column, 0)
			require.LessOrEqual(t, f.Column, len([]rune(rows[f.Line-1]))+1, f.What)
		}
		require.False(t, f.Line < last.Line || f.Line == last.Line && f.Column < last.Column, "out of order: %s", f.What)
		last = f
	}
}
