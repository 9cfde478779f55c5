package judge_test

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

const demo = "../../testdata/demo/millrace"

// demoFormula reads a receipt of the demo book, its takes resolved.
func demoFormula(t testing.TB, name string) (*formula.Formula, *reference.Tables) {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	f, _, faults := book.For(os.DirFS(demo), name, tables)
	require.NoError(t, faults.Err())
	return f, tables
}

// One reading of a two-part receipt: at most 5 microseconds, nothing allocated.
func BenchmarkReading(b *testing.B) {
	f, tables := demoFormula(b, "rich-lemon-pudding.yaml")
	w, faults := weigh.Weigh(f, tables)
	require.NoError(b, faults.Err())
	j := judge.New(tables)
	var kernels []*bake.Kernel
	var values [][]bake.Value
	for i := range w.Parts {
		k, err := bake.Compile(j.Input(w, i))
		require.NoError(b, err)
		v := make([]bake.Value, len(k.Slots))
		for s := range k.Slots {
			v[s] = k.Slots[s].Likely()
		}
		kernels, values = append(kernels, k), append(values, v)
	}
	var out bake.Outcome
	b.ReportAllocs()
	for b.Loop() {
		for i, k := range kernels {
			k.Run(values[i], &out)
		}
	}
}

// The floor beside it: the same masses added up and nothing else.
func BenchmarkMassBalance(b *testing.B) {
	f, tables := demoFormula(b, "rich-lemon-pudding.yaml")
	w, faults := weigh.Weigh(f, tables)
	require.NoError(b, faults.Err())
	j := judge.New(tables)
	var kernels []*bake.Kernel
	for i := range w.Parts {
		k, err := bake.Compile(j.Input(w, i))
		require.NoError(b, err)
		kernels = append(kernels, k)
	}
	for b.Loop() {
		for _, k := range kernels {
			k.LikelyMix()
		}
	}
}

// check of one receipt at 2,000 readings with remedies: at most 150 ms.
func BenchmarkCheck(b *testing.B) {
	f, tables := demoFormula(b, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := j.Check(f); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

// Work grows with the receipts and with the readings, no faster. A thousand
// receipts without remedies take at most 15 s.
func BenchmarkReceipts(b *testing.B) {
	f, tables := demoFormula(b, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	j.Remedies = false
	for _, n := range []int{1, 10, 100, 1000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for range n {
					if _, faults := j.Check(f); len(faults) > 0 {
						b.Fatal(faults)
					}
				}
			}
		})
	}
}

func BenchmarkReadings(b *testing.B) {
	f, tables := demoFormula(b, "rich-lemon-pudding.yaml")
	w, faults := weigh.Weigh(f, tables)
	require.NoError(b, faults.Err())
	k, err := bake.Compile(judge.New(tables).Input(w, 1))
	require.NoError(b, err)
	for _, n := range []int{500, 2000, 8000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				readings.Run(k, readings.Options{N: n, Seed: 1})
			}
		})
	}
}
