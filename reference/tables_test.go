package reference_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference"
	"assize/reference/fault"
)

func readFiles(t testing.TB) *reference.Tables {
	t.Helper()
	tables, err := reference.Read(os.DirFS("data"), nil)
	if list, ok := err.(fault.List); ok {
		list.Write(os.Stderr)
	}
	require.NoError(t, err)
	return tables
}

// The YAML files are the tables; the snapshot is only a quick way to them.
func TestSnapshotEqualsFiles(t *testing.T) {
	want := readFiles(t)
	got, err := reference.Load()
	require.NoError(t, err)
	for _, name := range reference.TableNames() {
		w, _ := want.Rows(name)
		g, _ := got.Rows(name)
		require.Equal(t, len(w), len(g), "rows of %s: run go generate ./reference", name)
		for i := range w {
			require.Equal(t, show(w[i]), show(g[i]), "table %s row %d: run go generate ./reference", name, i)
		}
	}
}

func BenchmarkLoad(b *testing.B) {
	raw, err := os.ReadFile("data/tables.gob")
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := reference.Decode(raw); err != nil {
			b.Fatal(err)
		}
	}
}
