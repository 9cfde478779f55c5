package bake_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/ratios/setting"
	"assize/reference"
)

// compiled reads, weighs and compiles one part, of a year and a place.
func compiled(t require.TestingT, year int, kind, lines, method string) *bake.Kernel {
	tables, err := reference.Load()
	require.NoError(t, err)
	text := fmt.Sprintf("title: check\nyear: %d\nplace: england\nparts:\n- kind: %s\n  lines: %s\n  method: %s\n", year, kind, lines, method)
	f, faults := file.Read("check.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])})
	require.NoError(t, err)
	return k
}

// parts are receipts that between them have every kind of slot: amounts not
// named, whites folded or perhaps folded, methods said and unsaid.
var parts = []struct {
	name          string
	year          int
	kind          formula.Kind
	lines, method string
}{
	{"creamed lemon pudding", 1861, formula.Filling, `["8 eggs", "8 oz butter", "8 oz sugar", "2 lemons"]`, "[creamed, beaten]"},
	{"unsaid", 1845, formula.Filling, `["6 eggs", "0.5 lb butter", "0.5 lb sugar", "1 lemon"]`, "[]"},
	{"whites folded", 1900, formula.Filling, `["4 egg yolks", "4 egg whites, whisked stiff and folded in", "4 oz sugar", "1 oz flour", "0.5 pint milk"]`, "[baked]"},
	{"starch on the fire", 2000, formula.Filling, `["500 ml milk", "4 egg yolks", "40 g cornflour", "100 g sugar"]`, "[stirred over heat]"},
	{"sour milk custard", 2000, formula.Filling, `["500 ml milk", "4 eggs", "60 g lemon juice"]`, "[baked]"},
	{"curd", 1880, formula.Filling, `["1 lb curd", "4 eggs", "4 oz sugar"]`, "[baked]"},
	{"short paste", 1861, formula.Pastry, `["1 lb flour", "8 oz butter", "cold water"]`, "[rubbed-in]"},
	{"puff paste", 1861, formula.Pastry, `["1 lb flour", "1 lb butter", "cold water"]`, "[laminated]"},
	{"oil paste", 2000, formula.Pastry, `["250 g flour", "90 g oil", "60 g water"]`, "[pressed]"},
	{"hot water", 2000, formula.Pastry, `["450 g flour", "165 g lard", "200 g water"]`, "[hot water]"},
	{"sweet paste", 2000, formula.Pastry, `["250 g flour", "125 g butter", "90 g sugar", "1 egg"]`, "[creamed]"},
}

// Whatever is drawn for the slots, also at their very ends, the shares lie
// between 0 and 1 and sum to 1, and no measure fails to be a number.
func TestSharesOfAnyReading(t *testing.T) {
	for _, p := range parts {
		t.Run(p.name, func(t *testing.T) {
			k := compiled(t, p.year, string(p.kind), p.lines, p.method)
			require.NotEmpty(t, k.Textures)
			require.NotEmpty(t, k.Slots)
			rapid.Check(t, func(t *rapid.T) {
				values := make([]bake.Value, len(k.Slots))
				for i := range values {
					values[i] = k.Slots[i].At(rapid.OneOf(rapid.Float64Range(0, nearly1), rapid.SampledFrom([]float64{0, .5, nearly1})).Draw(t, k.Slots[i].ID))
				}
				var out bake.Outcome
				k.Run(values, &out)
				sum := 0.0
				for i, s := range out.Shares {
					require.GreaterOrEqual(t, s, 0.0)
					require.LessOrEqual(t, s, 1.0)
					if i >= len(k.Textures) {
						require.Zero(t, s)
					}
					sum += s
				}
				require.InDelta(t, 1, sum, 1e-9)
				require.True(t, out.Heat >= 0 && out.Heat <= 1)
				for _, m := range k.Measures {
					require.False(t, math.IsNaN(out.Measures[m]) || math.IsInf(out.Measures[m], 0), m.String())
				}
				if k.Kind == formula.Filling {
					require.True(t, out.Measures[bake.PH] >= 1.5 && out.Measures[bake.PH] <= 10)
					require.True(t, out.Measures[bake.Air] >= 0 && out.Measures[bake.Air] < 100)
				}
				require.True(t, out.Measures[bake.WaterActivity] > 0 && out.Measures[bake.WaterActivity] <= 1)

				// The outcome is overwritten, not added to, and the same draw gives the same.
				again := out
				k.Run(values, &again)
				require.Equal(t, out, again)
			})
		})
	}
}

// nearly1 is the largest number under 1 that a draw can be.
var nearly1 = 1 - math.Pow(2, -53)

func TestRunAllocatesNothing(t *testing.T) {
	for _, p := range parts {
		t.Run(p.name, func(t *testing.T) {
			k := compiled(t, p.year, string(p.kind), p.lines, p.method)
			values, streams := make([]bake.Value, len(k.Slots)), make([]uint64, len(k.Slots))
			for i := range k.Slots {
				streams[i] = k.Slots[i].Stream(1)
			}
			var out bake.Outcome
			reading := 0
			require.Zero(t, testing.AllocsPerRun(200, func() {
				for i := range values {
					values[i] = k.Slots[i].At(bake.Draw(streams[i], reading))
				}
				reading++
				k.Run(values, &out)
			}))
		})
	}
}

// The mix as weighed out and the reading made of it are of the same receipt.
func TestLikelyMixIsWhatTheReadingJudges(t *testing.T) {
	k := compiled(t, 2000, "filling", `["250 ml milk", "2 eggs", "30 g sugar", "10 g flour"]`, "[eggs slightly beaten, baked]")
	m := k.LikelyMix()
	out := readings.LikelyReading(k)
	require.InDelta(t, setting.PH(&m), out.Measures[bake.PH], 1e-9)
	require.InDelta(t, setting.EggProtein(&m), out.Measures[bake.EggProtein], 1e-9)
	require.InDelta(t, setting.WaterActivity(&m), out.Measures[bake.WaterActivity], 1e-9)
	require.InEpsilon(t, setting.Density(&m, out.Measures[bake.Air]), out.Measures[bake.Density], 1e-9)
}

// More egg to the same milk: the reading sets no less and its loose share does
// not grow.
func TestMoreEggByTheWholePath(t *testing.T) {
	var last bake.Outcome
	for n := 1; n <= 8; n++ {
		k := compiled(t, 2000, "filling", fmt.Sprintf(`["500 ml milk", "%d large eggs", "60 g sugar"]`, n), "[eggs slightly beaten, baked]")
		out := readings.LikelyReading(k)
		if n > 1 {
			require.Greater(t, out.Measures[bake.SetIndex], last.Measures[bake.SetIndex])
			require.Less(t, out.Measures[bake.ThinIndex], last.Measures[bake.ThinIndex])
		}
		last = out
	}
}

// More acid to the same mix is never less sour, by the juice as it is measured.
func TestMoreJuiceByTheWholePath(t *testing.T) {
	last := 10.0
	for _, g := range []int{1, 10, 30, 60, 120, 240} {
		k := compiled(t, 2000, "filling", fmt.Sprintf(`["4 large eggs", "200 g sugar", "100 g butter", "%d g lemon juice"]`, g), "[stirred over heat]")
		ph := readings.LikelyReading(k).Measures[bake.PH]
		require.Less(t, ph, last, "%d g", g)
		last = ph
	}
}

// An oven the receipt does not speak of may be slow or hot: it is a doubt of its
// own. A word, a figure, a bath or the fire settles it.
func TestUnsaidHeatIsDrawn(t *testing.T) {
	lines := `["8 eggs, well beaten", "8 oz sugar", "8 oz butter"]`
	drawn := func(method string) bool {
		k := compiled(t, 1840, "filling", lines, method)
		return slices.ContainsFunc(k.Slots, func(s bake.Slot) bool { return s.ID == "heat unsaid" })
	}
	require.True(t, drawn("[creamed, baked]"))
	for _, said := range []string{"[creamed, bake in a quick oven]", "[creamed, bake in a slow oven]", "[creamed, bake in a moderate oven]", "[creamed, baked, water-bath]", "[stirred over heat]"} {
		require.False(t, drawn(said), said)
	}
}
