package daybook

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference/fault"
)

const malformed = "../../testdata/malformed-daybook"

// Each damaged book says exactly what is wrong with it and where. UPDATE=1
// writes what it says now; read it as a cook would before keeping it.
func TestMalformed(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(malformed, "*.yaml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 24)
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			b, faults := Read(filepath.Base(name), text, tables(t))
			require.NotEmpty(t, faults, "nothing is wrong with it")
			require.Nil(t, b)
			requireInside(t, text, faults)
			require.Positive(t, faults[0].Line)
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

func requireInside(t testing.TB, text []byte, faults fault.List) {
	t.Helper()
	rows := fault.Lines(string(text))
	for _, f := range faults {
		require.NotEmpty(t, f.What)
		require.LessOrEqual(t, f.Line, len(rows), f.What)
		if f.Line > 0 {
			require.LessOrEqual(t, f.Column, len([]rune(rows[f.Line-1]))+1, f.What)
		}
	}
}

// Whatever stands on a page, reading it ends; and a book that can be read can be
// added to, and then holds what it held and one bake more.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{filepath.Join(malformed, "*.yaml"), "../../testdata/demo/millrace/bench/day-book.yaml"} {
		names, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, name := range names {
			text, err := os.ReadFile(name)
			require.NoError(f, err)
			f.Add(text)
		}
	}
	tab := tables(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		b, faults := Read("book.yaml", text, tab)
		requireInside(t, text, faults)
		require.Equal(t, len(faults) == 0, b != nil)
		if b == nil {
			return
		}
		for i := range b.Entries {
			_, ok := b.Record(i + 1)
			require.True(t, ok)
		}
		b.Fared(tab)
		b.Adjustment(tab)
		path := filepath.Join(t.TempDir(), "book.yaml")
		require.NoError(t, os.WriteFile(path, text, 0o600))
		if _, err := Keep(path, entry(tab, "A", "cakey"), tab); err != nil {
			// A book in another manner of writing may have no room at its end; it
			// is left as it is.
			got, e := os.ReadFile(path)
			require.NoError(t, e)
			require.Equal(t, text, got)
			return
		}
		again, err := Load(path, tab)
		require.NoError(t, err)
		require.Len(t, again.Entries, len(b.Entries)+1)
	})
}
