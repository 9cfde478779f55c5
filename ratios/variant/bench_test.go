package variant_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/variant"
	"assize/reference"
)

func demo(t testing.TB, name string) (*formula.Formula, *reference.Tables) {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	f, _, faults := book.For(os.DirFS("../../testdata/demo/millrace"), name, tables)
	require.NoError(t, faults.Err())
	return f, tables
}

// A variant at 2,000 readings: at most a second.
func BenchmarkFind(b *testing.B) {
	for _, c := range []struct {
		name, file string
		wish       variant.Wish
	}{
		{"against cakey", "rich-lemon-pudding.yaml", variant.Wish{Against: []string{"cakey"}}},
		{"to a tart", "rich-lemon-pudding.yaml", variant.Wish{To: "lemon-tart"}},
		{"to a curd", "rich-lemon-pudding.yaml", variant.Wish{To: "citrus-curd"}},
		{"to chess", "rich-lemon-pudding.yaml", variant.Wish{To: "chess"}},
		{"to short crust", "rich-lemon-pudding.yaml", variant.Wish{To: "shortcrust"}},
		{"four to a tart, butter kept", "rich-lemon-pudding.yaml", variant.Wish{To: "lemon-tart", Keep: []string{"butter", "sugar"}, Most: 4}},
	} {
		b.Run(c.name, func(b *testing.B) {
			f, tables := demo(b, c.file)
			j := judge.New(tables)
			for b.Loop() {
				if _, err := variant.Find(j, f, c.wish); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkNear(b *testing.B) {
	f, tables := demo(b, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	for b.Loop() {
		if _, faults := variant.Near(j, f); len(faults) > 0 {
			b.Fatal(faults)
		}
	}
}

// Nothing is allocated for a reading: ten times the readings allocate no more.
func TestNothingAllocatedPerReading(t *testing.T) {
	f, tables := demo(t, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	j.Readings = 10
	r, faults := j.Check(f)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(j.Input(r.Weighed, 1))
	require.NoError(t, err)
	limits := make([]float64, len(k.Textures))
	for i := range limits {
		limits[i] = 2
	}
	at := func(n int) float64 {
		return testing.AllocsPerRun(20, func() { readings.Under(k, readings.Options{N: n, Seed: 1}, limits) })
	}
	require.Equal(t, at(100), at(1000))
}

// Under says what the shares of all readings say, wherever the limit lies.
func TestUnder(t *testing.T) {
	f, tables := demo(t, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	j.Readings = 10
	r, faults := j.Check(f)
	require.NoError(t, faults.Err())
	for part := range r.Parts {
		k, err := bake.Compile(j.Input(r.Weighed, part))
		require.NoError(t, err)
		o := readings.Options{N: 300, Seed: 3}
		shares, _ := readings.Shares(k, o)
		for i := range shares {
			for _, limit := range []float64{.001, .05, .25, .5, .75, .95, .999} {
				limits := make([]float64, len(shares))
				for n := range limits {
					limits[n] = 2
				}
				limits[i] = limit
				require.Equal(t, shares[i] < limit, readings.Under(k, o, limits), "%s under %g", k.Textures[i], limit)
			}
		}
	}
}

// Words that are not known are asked about, with those that are.
func TestProblems(t *testing.T) {
	f, tables := demo(t, "rich-lemon-pudding.yaml")
	j := judge.New(tables)
	j.Readings = 20
	for _, c := range []struct {
		wish  variant.Wish
		what  string
		known string
	}{
		{variant.Wish{To: "lemon-trat"}, `no class is called "lemon-trat"`, "lemon-tart"},
		{variant.Wish{Against: []string{"cakeyy"}}, `"cakeyy" is no fault that is judged`, "cakey"},
		{variant.Wish{Against: []string{"smooth"}}, `"smooth" is no fault that is judged`, "cakey"},
		{variant.Wish{Keep: []string{"treacle"}}, `there is no "treacle" in the filling to keep`, "lemon juice, fresh"},
		{variant.Wish{Part: "icing"}, `the receipt has no part "icing"`, "paste"},
		{variant.Wish{Part: "paste", Against: []string{"cakey"}}, "a paste cannot come out cakey", "tough"},
		{variant.Wish{To: "pound-cake"}, "Pound cake is a cake, and the receipt has none to bring into it", ""},
	} {
		_, err := variant.Find(j, f, c.wish)
		require.Error(t, err)
		p, ok := err.(*variant.Problem)
		require.True(t, ok, err)
		require.Equal(t, c.what, p.What)
		if c.known != "" {
			require.Contains(t, p.Known, c.known)
		}
	}
}
