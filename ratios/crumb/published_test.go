package crumb_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/ratios/setting"
	"assize/reference"
)

// likely is the likely reading of a mix made in an American kitchen of today.
func likely(t testing.TB, kind, lines, method string) (bake.Outcome, *bake.Kernel) {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	text := fmt.Sprintf("title: check\nyear: 2000\nplace: usa\nkitchen: {year: 2000, place: usa}\nparts:\n- kind: %s\n  lines: %s\n  method: %s\n", kind, lines, method)
	f, faults := file.Read("check.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])})
	require.NoError(t, err)
	return readings.LikelyReading(k), k
}

// Published specific gravities of batters as they go into the tin:
// American Society of Baking, Specific Gravity (web page,
// asbe.org/article/specific-gravity), table: pound .80, sponge .50, angel .30;
// Specific gravity, in Bake magazine (web page, bakemag.com/articles/11566):
// pound .90, angel .30, genoise .50; sponge cake, in Baking Business (web page,
// bakingbusiness.com): sponge .46-.48. The works differ by a tenth among
// themselves, so a tenth is allowed, and the order must be theirs. Angel batter is
// allowed .15: its whites are whipped with much of the sugar, which keeps the foam
// whole in the folding, and here folding costs all whites alike. Leavened batters (layer .80, yellow .70) are left out, since the
// gas counted here is that of the oven and not of the bowl; so is meringue, which
// here is always folded into something and pays for it.
func TestPublishedGravityOfBatters(t *testing.T) {
	const allowed = .10
	batters := []struct {
		name, lines, method string
		low, high           float64
		more                float64 // allowed beyond the tenth
	}{
		{"angel", `["12 egg whites", "300 g sugar", "120 g flour"]`, "[whites whisked stiff and folded in]", .30, .30, .05},
		{"sponge", `["4 large eggs", "120 g sugar", "120 g flour"]`, "[eggs beaten until very light and thick, flour folded in]", .45, .50, 0},
		{"pound", `["450 g butter", "450 g sugar", "450 g flour", "9 large eggs"]`, "[creamed, eggs beaten in]", .80, .90, 0},
	}
	last := 0.0
	for _, b := range batters {
		out, k := likely(t, "cake", b.lines, b.method)
		d := out.Measures[bake.Density]
		require.Greater(t, d, b.low-allowed, b.name)
		require.Less(t, d, b.high+allowed+b.more, b.name)
		require.Greater(t, d, last, b.name)
		last = d
		// The figure shown is the mix's own weight and volume with the air in it.
		m := k.LikelyMix()
		require.InEpsilon(t, setting.Density(&m, out.Measures[bake.Air]), d, 1e-9, b.name)
	}
	// The same weights with the butter melted and the eggs only mixed in are heavier.
	out, _ := likely(t, "cake", `["450 g butter, melted", "450 g sugar", "450 g flour", "9 large eggs"]`, "[eggs slightly beaten, melted butter]")
	require.Greater(t, out.Measures[bake.Density], last+.1)

	// Genoise, .50 in Bake magazine: sponge with a little butter, a little heavier
	// than the same sponge without.
	genoise, _ := likely(t, "cake", `["4 large eggs", "120 g sugar", "120 g flour", "60 g butter"]`, "[eggs beaten until very light and thick, flour folded in, melted butter]")
	require.InDelta(t, .50, genoise.Measures[bake.Density], allowed)
	sponge, _ := likely(t, "cake", batters[1].lines, batters[1].method)
	require.Greater(t, genoise.Measures[bake.Density], sponge.Measures[bake.Density])
}
