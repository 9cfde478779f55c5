package paste_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// likely is the likely reading of a paste made in an American kitchen of today.
func likely(t testing.TB, lines, method string) bake.Outcome {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	text := fmt.Sprintf("title: check\nyear: 2000\nplace: usa\nkitchen: {year: 2000, place: usa}\nparts:\n- kind: pastry\n  lines: %s\n  method: %s\n", lines, method)
	f, faults := file.Read("check.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])})
	require.NoError(t, err)
	return readings.LikelyReading(k)
}

// McGee, On Food and Cooking (2004), chapter 10, pastries: butter is about
// 15 parts water, and a little water more or less shows: 3 ml in 120 g of flour.
func TestAFewDropsShow(t *testing.T) {
	at := func(ml string) bake.Outcome {
		return likely(t, `["120 g flour", "60 g butter", "`+ml+` ml water"]`, "[rubbed-in]")
	}
	dry, right, wet := at("17"), at("20"), at("23")
	require.Less(t, dry.Measures[bake.Toughness], right.Measures[bake.Toughness])
	require.Less(t, right.Measures[bake.Toughness], wet.Measures[bake.Toughness])
	require.Greater(t, dry.Measures[bake.CrumblyIndex], right.Measures[bake.CrumblyIndex])
	require.Greater(t, right.Measures[bake.CrumblyIndex], wet.Measures[bake.CrumblyIndex])
	// 3 ml in 120 g is 2.5 parts to the hundred of flour, and nothing else.
	require.InDelta(t, .025, wet.Measures[bake.NetWater]-right.Measures[bake.NetWater], .001)
	require.InDelta(t, .81, right.Measures[bake.PureFat]/.5, .03, "butter is four fifths fat")
}

// Bakery lessons of ecoursesonline.iasri.res.in, page 109448, pie pastry: 42 to
// 59 parts of fat to 100 of flour; under that gluten forms and the crust is
// tough, over it the paste is crumbly and greasy; too much water toughens. The
// page gives 44 as well as 42 for the lower end.
func TestFatOfPiePastry(t *testing.T) {
	var last bake.Outcome
	for i, g := range []int{20, 42, 59, 90} {
		out := likely(t, fmt.Sprintf(`["100 g flour", "%d g lard", "25 g water"]`, g), "[rubbed-in]")
		require.InDelta(t, float64(g)/100, out.Measures[bake.PureFat], .02)
		if i > 0 {
			require.Less(t, out.Measures[bake.ToughIndex], last.Measures[bake.ToughIndex])
			require.Greater(t, out.Measures[bake.GreasyIndex], last.Measures[bake.GreasyIndex])
		}
		last = out
	}
}
