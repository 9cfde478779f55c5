package bench_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/bench"
	"assize/formula/receipt"
	"assize/reference/fault"
	"assize/reference/fault/misprint"
)

const malformed = "../../testdata/malformed-bench"

// Each malformed record says exactly what is wrong with it.
func TestMalformed(t *testing.T) {
	misprint.Pages(t, malformed, 50, func(name string, text []byte) (bool, fault.List) {
		r, faults := bench.Read(name, text, tables(t))
		return r != nil, faults
	})
}

// Whatever stands on a page, reading it ends, puts every fault on the page, and
// gives a record only when there is none; and a record that is read weighs.
func FuzzRead(f *testing.F) {
	misprint.Seed(f, filepath.Join(malformed, "*.yaml"), filepath.Join(demo, "bench", "*.yaml"))
	tab := tables(f)
	methods := receipt.NewMethodReader(tab)
	f.Fuzz(func(t *testing.T, text []byte) {
		r, faults := bench.Read("record.yaml", text, tab)
		misprint.Inside(t, text, faults)
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
