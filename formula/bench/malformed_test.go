package bench_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/bench"
	"assize/formula/receipt"
	"assize/reference/fault"
)

const malformed = "../../testdata/malformed-bench"

// Each malformed record says exactly what is wrong with it, every fault in one
// run. UPDATE=1 writes what it says now; read it as a cook would before keeping
// it.
func TestMalformed(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(malformed, "*.yaml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 50)
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			r, faults := bench.Read(filepath.Base(name), text, tables(t))
			require.NotEmpty(t, faults, "nothing is wrong with it")
			require.Nil(t, r, "a record came of a page with faults")
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

// requireInside holds every fault to a place on the page, in the order of it.
func requireInside(t testing.TB, text []byte, faults fault.List) {
	t.Helper()
	rows := fault.Lines(string(text))
	last := fault.Fault{}
	for _, f := range faults {
		require.NotEmpty(t, f.What)
		require.LessOrEqual(t, f.Line, len(rows), f.What)
		if f.Line > 0 {
			require.GreaterOrEqual(t, f.Column, 0)
			require.LessOrEqual(t, f.Column, len([]rune(rows[f.Line-1]))+1, f.What)
		}
		require.False(t, f.Line < last.Line || f.Line == last.Line && f.Column < last.Column, "out of order: %s", f.What)
		last = f
	}
}

// Whatever stands on a page, reading it ends, puts every fault on the page, and
// gives a record only when there is none; and a record that is read weighs.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{filepath.Join(malformed, "*.yaml"), filepath.Join(demo, "bench", "*.yaml")} {
		names, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, name := range names {
			text, err := os.ReadFile(name)
			require.NoError(f, err)
			f.Add(text)
		}
	}
	tab := tables(f)
	methods := receipt.NewMethodReader(tab)
	f.Fuzz(func(t *testing.T, text []byte) {
		r, faults := bench.Read("record.yaml", text, tab)
		requireInside(t, text, faults)
		require.Equal(t, len(faults) == 0, r != nil)
		if r == nil {
			return
		}
		require.True(t, bench.IsRecord(text))
		if w, faults := r.Made(tab, methods); len(faults) == 0 {
			require.Len(t, w.Methods, len(r.Formula.Parts))
			for _, p := range w.Weighed.Parts {
				for _, it := range p.Items {
					require.False(t, it.Grams.Low.IsNegative())
					require.False(t, it.Grams.Low.GreaterThan(it.Grams.High))
				}
			}
		}
	})
}
