package trial

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/crumb"
	"assize/ratios/paste"
	"assize/ratios/readings"
	"assize/ratios/setting"
	"assize/reference"
)

// kernel compiles a filling or paste of today from its lines and method.
func kernel(t testing.TB, kind, lines, method string) *bake.Kernel {
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
	return k
}

func measured(t testing.TB, lines, method string) bake.Outcome {
	return readings.LikelyReading(kernel(t, "filling", lines, method))
}

// National Center for Home Food Preservation, Lemon Curd, Canned: 2 1/2 cups
// sugar, 1 cup bottled lemon juice, 3/4 cup butter, 7 yolks, 4 whole eggs;
// equilibrium pH 3.7. The model claims .3.
func TestCurdPH(t *testing.T) {
	o := measured(t, `["2.5 cups sugar", "1 cup bottled lemon juice", "0.75 cup butter", "7 egg yolks", "4 eggs"]`, "[stirred over heat]")
	require.InDelta(t, 3.7, o.Measures[bake.PH], .3)
}

// McGee, On Food and Cooking (2004), custards: one egg to a cup (250 ml) of
// milk is the least that holds; less does not.
func TestOneEggToACup(t *testing.T) {
	holds := measured(t, `["250 ml milk", "1 large egg", "30 g sugar"]`, "[slightly beaten, baked]")
	require.InDelta(t, 1.07, holds.Measures[bake.SetIndex], .15)
	require.Negative(t, holds.Measures[bake.ThinIndex])
	loose := measured(t, `["625 ml milk", "1 large egg", "60 g sugar"]`, "[slightly beaten, baked]")
	require.Positive(t, loose.Measures[bake.ThinIndex])
}

// McGee, On Food and Cooking (2004): 5 g of pure starch to 250 ml of liquid
// keeps egg from curdling.
func TestStarchGuardsEgg(t *testing.T) {
	o := measured(t, `["250 ml milk", "1 large egg", "5.8 g cornflour"]`, "[baked, hot oven]")
	require.InDelta(t, 2, o.Measures[bake.StarchShare], .15, "the guard of 2 in 100 of the water is that dose")
	require.LessOrEqual(t, measured(t, `["250 ml milk", "1 large egg", "7 g cornflour"]`, "[baked]").Measures[bake.CurdleIndex], -8.0)
}

// Mohos, Confectionery and Chocolate Engineering (2010), appendix 2, after
// Antokolskaya: grams of sucrose to 100 g of water.
func TestSolubility(t *testing.T) {
	for _, p := range [][2]float64{{0, 179.2}, {20, 203.9}, {50, 260.4}, {100, 487.2}} {
		require.InDelta(t, p[1], setting.Solubility(p[0]), .01)
	}
	require.InDelta(t, (203.9+190.5)/2, setting.Solubility(15), .01)
}

// Brown 1912: boiling points of sucrose syrups by Brix. By the equation of
// Clausius and Clapeyron (heat of vaporisation 40.66 kJ/mol) Norrish's water
// activity gives them to 70 Brix.
func TestWaterActivityBoilsSyrup(t *testing.T) {
	for _, p := range [][2]float64{{40, 101.5}, {50, 102.0}, {60, 103.0}, {70, 106.5}} {
		var m ratios.Mix
		m[ratios.Sugars], m[ratios.Water] = p[0], 100-p[0]
		boils := 1/(1/373.15+8.314/40660*math.Log(setting.WaterActivity(&m))) - 273.15
		require.InDelta(t, p[1], boils, 1.0, "%v Brix", p[0])
	}
}

// Mohos 2010, appendix 2: a saturated syrup at 20 C (203.9 g to 100 g) weighs
// 1.3327 g/ml.
func TestSyrupDensity(t *testing.T) {
	var m ratios.Mix
	m[ratios.Sugars], m[ratios.Water] = 203.9, 100
	m[ratios.Total] = 303.9
	require.InEpsilon(t, 1.3327, setting.Density(&m, 0), .01)
}

// Trade tables of specific gravity (pound cake batter .80-.90): creamed pound
// batter holds 20 to 30 parts of air in 100.
func TestPoundBatterGravity(t *testing.T) {
	o := measured(t, `["1 lb butter", "1 lb sugar", "1 lb flour", "9 large eggs"]`, "[creamed, eggs beaten in]")
	require.InDelta(t, .85, o.Measures[bake.Density], .15)
}

// Casein clots from pH 5.2 down and is past it under 4 (dairy chemistry).
func TestClots(t *testing.T) {
	var m ratios.Mix
	m[ratios.Total], m[ratios.Water], m[ratios.MilkProtein] = 100, 88, 3.3
	require.True(t, setting.Clots(&m, 4.6, 0))
	require.False(t, setting.Clots(&m, 3.5, 0))
	require.False(t, setting.Clots(&m, 6.6, 0))
}

// mix draws a plausible egg mixture.
func mix(t *rapid.T) ratios.Mix {
	var m ratios.Mix
	g := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	m[ratios.Water], m[ratios.Sugars], m[ratios.Fat] = g("water", 50, 1000), g("sugar", 0, 500), g("fat", 0, 300)
	m[ratios.WhiteProtein], m[ratios.YolkProtein], m[ratios.MilkProtein] = g("white", 0, 40), g("yolk", 0, 40), g("milk", 0, 40)
	m[ratios.Starch], m[ratios.Citric] = g("starch", 0, 100), g("citric", 0, 15)
	m[ratios.Acid] = m[ratios.Citric]
	m[ratios.Flour], m[ratios.EggWater] = m[ratios.Starch], g("egg water", 10, 300)
	m[ratios.Total] = m[ratios.Water] + m[ratios.Sugars] + m[ratios.Fat] + m.AllProtein() + m[ratios.Starch] + m[ratios.Citric]
	return m
}

// Directions every cook and handbook agrees on, over any plausible mix.
func TestDirections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := mix(t)
		more := rapid.Float64Range(.1, 20).Draw(t, "more")
		with := func(q ratios.Quantity) *ratios.Mix {
			n := m
			n[q] += more
			n[ratios.Total] += more
			return &n
		}
		require.GreaterOrEqual(t, setting.EggProtein(with(ratios.WhiteProtein)), setting.EggProtein(&m), "more egg sets no less")
		require.GreaterOrEqual(t, setting.Starch(with(ratios.Starch)), setting.Starch(&m))
		require.GreaterOrEqual(t, setting.Window(with(ratios.Sugars), 0)+1e-9, setting.Window(&m, 0)-.25*m.FatShare(), "sugar widens what fat alone leaves")
		require.GreaterOrEqual(t, setting.Window(&m, 2), setting.Window(&m, 1), "starch never narrows the window")
		require.LessOrEqual(t, setting.PH(with(ratios.Citric)), setting.PH(&m)+1e-9, "more acid is no less sour")
		require.LessOrEqual(t, setting.WaterActivity(with(ratios.Sugars)), setting.WaterActivity(&m)+1e-12)
		require.LessOrEqual(t, crumb.AddedLiquid(&m), crumb.AddedLiquid(with(ratios.Water)))
		require.LessOrEqual(t, crumb.EggStructure(with(ratios.Water), 6, 1), crumb.EggStructure(&m, 6, 1), "liquid never helps egg hold air")
		require.GreaterOrEqual(t, crumb.Floury(with(ratios.Flour)), crumb.Floury(&m))
		air := rapid.Float64Range(0, 60).Draw(t, "air")
		require.GreaterOrEqual(t, crumb.Cakey(air+more, 1, false), crumb.Cakey(air, 1, false))
		for fire := setting.Stirred; fire <= setting.Moderate; fire++ {
			require.LessOrEqual(t, setting.SpreadOf(setting.Bath).CarefulHigh, setting.SpreadOf(fire).CarefulHigh+1e-9, "a bath is the gentlest")
		}
		require.GreaterOrEqual(t, setting.Evaporated(true, 60+more*4, false), setting.Evaporated(true, 60+more, false))
	})
}

func TestPasteDirections(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		s := paste.State{
			Type: paste.Short, PureFat: g("fat", .1, .9), Coverage: g("coverage", .1, .95), Water: g("water", .05, .28),
			Protein: g("protein", 7, 14), Work: g("work", .8, 1.6), UsualMost: .30, Lean: 1, Sugar: g("sugar", 0, .05),
		}
		up := s
		up.Coverage += .05
		require.LessOrEqual(t, up.Layers(), s.Layers())
		up = s
		up.Protein++
		require.GreaterOrEqual(t, up.Toughness(), s.Toughness(), "stronger flour is no tenderer")
		up = s
		up.Water += .02
		require.GreaterOrEqual(t, up.Toughness(), s.Toughness())
		require.LessOrEqual(t, up.Crumbly(), s.Crumbly())
		up = s
		up.PureFat += .05
		require.GreaterOrEqual(t, up.Greasy(), s.Greasy())
		up = s
		up.Work += .1
		require.GreaterOrEqual(t, up.Tough(), s.Tough())
	})
}

// More coverage never raises toughness in a paste whose layers are not felt:
// beyond that, uncovered fat in sheets is what makes a paste eat short, and
// the rule does not hold (see Toughness).
func TestCoverageTenders(t *testing.T) {
	for fat := .2; fat < .9; fat += .05 {
		s := paste.State{Type: paste.Short, PureFat: fat, Coverage: .9, Water: .2, Protein: 10, Work: 1, UsualMost: .3, Lean: 1}
		lower := s
		s.Coverage = 1
		require.Less(t, s.Toughness()*(1+3*s.Layers()), lower.Toughness()*(1+3*lower.Layers()))
	}
}

// Shares of any reading lie between 0 and 1 and sum to 1; a reading allocates
// nothing.
func TestSharesOfAReading(t *testing.T) {
	for _, k := range []*bake.Kernel{
		kernel(t, "filling", `["8 eggs", "8 oz butter", "8 oz sugar", "2 lemons"]`, "[creamed, beaten]"),
		kernel(t, "pastry", `["1 lb flour", "8 oz butter", "cold water"]`, "[rubbed-in]"),
	} {
		readings.Each(k, readings.Options{N: 500, Seed: 7}, func(o *bake.Outcome) {
			sum := 0.0
			for i := range k.Textures {
				require.GreaterOrEqual(t, o.Shares[i], 0.0)
				sum += o.Shares[i]
			}
			require.InDelta(t, 1, sum, 1e-9)
		})
		values := make([]bake.Value, len(k.Slots))
		for i := range k.Slots {
			values[i] = k.Slots[i].Likely()
		}
		var out bake.Outcome
		require.Zero(t, testing.AllocsPerRun(100, func() { k.Run(values, &out) }))
	}
}

// A slot's draws stay within its span and rise with u; streams are even.
func TestDraws(t *testing.T) {
	s := bake.Slot{ID: "check", Ways: []bake.Way{{Odds: 1, Low: 2, Likely: 3, High: 7}}}
	last := 0.0
	for i := range 1000 {
		v := s.At(float64(i) / 1000).At
		require.GreaterOrEqual(t, v, max(last, 2.0))
		require.LessOrEqual(t, v, 7.0)
		last = v
	}
	mean, stream := 0.0, s.Stream(1)
	const n = 20000
	for i := range n {
		u := bake.Draw(stream, i)
		require.True(t, u >= 0 && u < 1)
		mean += u / n
	}
	require.InDelta(t, .5, mean, .01)
	require.NotEqual(t, stream, s.Stream(2))
}
