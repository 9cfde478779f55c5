package daybook

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference/fault"
	"assize/reference/fault/misprint"
)

const malformed = "../../testdata/malformed-daybook"

// Each damaged book says exactly what is wrong with it and where.
func TestMalformed(t *testing.T) {
	misprint.Pages(t, malformed, 25, func(name string, text []byte) (bool, fault.List) {
		b, faults := Read(name, text, tables(t))
		require.Positive(t, faults[0].Line)
		return b != nil, faults
	})
}

// Whatever stands on a page, reading it ends; and a book that can be read can be
// added to, and then holds what it held and one bake more.
func FuzzRead(f *testing.F) {
	misprint.Seed(f, filepath.Join(malformed, "*.yaml"), "../../testdata/demo/millrace/bench/day-book.yaml")
	tab := tables(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		b, faults := Read("book.yaml", text, tab)
		misprint.Inside(t, text, faults)
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
