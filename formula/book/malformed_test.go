package book_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/book"
	"assize/reference"
	"assize/reference/fault/misprint"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const malformed = "../../testdata/malformed"

// Each folder says exactly what is wrong with it, read as a book and receipt
// by receipt.
func TestMalformedBooks(t *testing.T) {
	entries, err := os.ReadDir(malformed)
	require.NoError(t, err)
	tab := tables(t)
	books := 0
	for _, e := range entries {
		if !e.IsDir() {
			continue
		}
		books++
		t.Run(e.Name(), func(t *testing.T) {
			dir := filepath.Join(malformed, e.Name())
			misprint.Said(t, dir+".want", said(t, os.DirFS(dir), tab))
		})
	}
	require.GreaterOrEqual(t, books, 12)
}

// said is everything said of a folder: of the book, then of each receipt by
// itself. At least one thing must be wrong.
func said(t *testing.T, fsys fs.FS, tab *reference.Tables) []byte {
	t.Helper()
	var out bytes.Buffer
	b, faults := book.Open(fsys, tab)
	wrong := len(faults)
	fmt.Fprintln(&out, "# the book")
	require.NoError(t, faults.Write(&out))
	for _, f := range b.Receipts {
		resolved, faults := b.Resolve(f)
		require.Equal(t, len(faults) > 0, resolved == nil)
		wrong += len(faults)
		fmt.Fprintf(&out, "# %s, of the book\n", f.File)
		require.NoError(t, faults.Write(&out))
	}
	names, err := fs.Glob(fsys, "*.yaml")
	require.NoError(t, err)
	for _, name := range names {
		if name == "book.yaml" || name == "kitchen.yaml" {
			continue
		}
		f, _, faults := book.For(fsys, name, tab)
		require.Equal(t, len(faults) > 0, f == nil)
		wrong += len(faults)
		fmt.Fprintf(&out, "# %s, by itself\n", name)
		require.NoError(t, faults.Write(&out))
	}
	require.Positive(t, wrong, "nothing is wrong with it")
	return out.Bytes()
}
