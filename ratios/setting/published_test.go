package setting_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/ratios/setting"
	"assize/reference"
)

// filling reads, weighs and compiles a filling of an American kitchen of today,
// in cups of its country, by the way every receipt goes.
func filling(t testing.TB, lines, method string) *bake.Kernel {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	text := fmt.Sprintf("title: check\nyear: 2000\nplace: usa\nkitchen: {year: 2000, place: usa}\nparts:\n- kind: filling\n  lines: %s\n  method: %s\n", lines, method)
	f, faults := file.Read("check.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	require.Equal(t, formula.Filling, f.Parts[0].Kind)
	k, err := bake.Compile(bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])})
	require.NoError(t, err)
	return k
}

func likely(t testing.TB, lines, method string) bake.Outcome {
	t.Helper()
	return readings.LikelyReading(filling(t, lines, method))
}

// National Center for Home Food Preservation (University of Georgia), Canned
// Lemon Curd, ingredients and the note on acidity: 2 1/2 cups superfine sugar, 1
// cup bottled lemon juice, 3/4 cup butter, 7 yolks and 4 whole eggs come to an
// equilibrium pH of 3.7. (The half cup of lemon zest of the original is
// optional there and is left out.) The model claims .3.
func TestPublishedPHOfLemonCurd(t *testing.T) {
	k := filling(t, `["2.5 cups sugar", "1 cup bottled lemon juice", "0.75 cup butter", "7 egg yolks", "4 eggs"]`, "[stirred over heat]")
	m := k.LikelyMix()
	require.InDelta(t, 3.7, setting.PH(&m), .3)
	out := readings.LikelyReading(k)
	require.InDelta(t, 3.7, out.Measures[bake.PH], .3, "the reading says the same as the mix")
	require.Negative(t, out.Measures[bake.ThinIndex], "the curd is known to thicken")
	require.Negative(t, out.Measures[bake.CurdleIndex], "and to stay smooth in careful hands")
}

// McGee, On Food and Cooking (2004), chapter 2, custards: one egg to a cup
// (250 ml) of milk, with about 30 g of sugar, is the least that just holds.
// Woman's Institute Library of Cookery, vol. 4, custards, has the same least.
func TestOneEggToACupJustHolds(t *testing.T) {
	at := func(lines string) (set, need float64) {
		out := likely(t, lines, "[eggs slightly beaten, baked]")
		return out.Measures[bake.SetIndex], out.Measures[bake.Need]
	}
	set, need := at(`["250 ml milk", "1 large egg", "30 g sugar"]`)
	require.InDelta(t, 1.07, set, .1)
	require.InDelta(t, .75, need, 1e-9)
	require.Greater(t, set, need)
	require.Less(t, set, 1.5, "one egg to the cup is not a custard to turn out")

	set, need = at(`["2.5 cups milk", "1 large egg", "60 g sugar"]`)
	require.Less(t, set, need, "one egg to two and a half cups does not hold")

	// Beeton, The Book of Household Management (1861), boiled and baked custards:
	// four eggs to the imperial pint is what turns out.
	set, _ = at(`["568 ml milk", "4 large eggs", "60 g sugar"]`)
	require.Greater(t, set, 1.5)
}

// Mohos, Confectionery and Chocolate Engineering (2010), appendix 2, after
// Antokolskaya: grams of sucrose that 100 g of water hold, by temperature.
func TestSolubilityOfSucrose(t *testing.T) {
	for _, p := range [][2]float64{
		{0, 179.2}, {10, 190.5}, {20, 203.9}, {25, 211.4}, {30, 219.5}, {40, 238.1},
		{50, 260.4}, {60, 287.3}, {70, 320.5}, {80, 362.1}, {90, 415.7}, {100, 487.2},
	} {
		require.InDelta(t, p[1], setting.Solubility(p[0]), 1e-9, "%v C", p[0])
	}
	// A second table, independent of the first: Properties of sucrose (a Russian
	// sugar engineer's web page, k-mashzavod.narod.ru/SvoystvaSaharozi5.htm), table
	// of solubility. The two works differ by up to 1.6 in 100.
	for _, p := range [][2]float64{{0, 181.2}, {20, 200.7}, {60, 289.4}, {100, 484.4}} {
		require.InEpsilon(t, p[1], setting.Solubility(p[0]), .02, "%v C", p[0])
	}
}

// A syrup that holds what it can at 20 C is at saturation, neither more nor less.
func TestSaturationIsOneAtSolubility(t *testing.T) {
	m := syrup(203.9, 100)
	require.InDelta(t, 1, setting.Saturation(&m), 1e-9)
}

// Mohos (2010), appendix 2, after Antokolskaya: density of saturated sucrose
// syrup, 1.3327 at 20 C and 1.3149 at 0 C.
func TestDensityOfSaturatedSyrup(t *testing.T) {
	for _, p := range [][2]float64{{203.9, 1.3327}, {179.2, 1.3149}} {
		m := syrup(p[0], 100)
		require.InEpsilon(t, p[1], setting.Density(&m, 0), .01)
		require.InEpsilon(t, p[1], m[ratios.Total]/setting.Volume(&m), .01)
	}
}

// Brown (1912), boiling points of sucrose solutions at one atmosphere, by
// Brix. Boiling is where the water's activity times the pressure of pure water
// vapour makes one atmosphere; Clausius and Clapeyron give that pressure, with
// 40.66 kJ/mol to boil water (Atkins, Physical Chemistry, table of standard
// enthalpies of transition).
func TestWaterActivityGivesBoilingPoints(t *testing.T) {
	boils := func(brix float64) float64 {
		m := syrup(brix, 100-brix)
		return 1/(1/373.15+8.314/40660*math.Log(setting.WaterActivity(&m))) - 273.15
	}
	for _, p := range [][2]float64{{20, 100.6}, {30, 101.0}, {40, 101.5}, {50, 102.0}, {60, 103.0}, {66, 104.8}} {
		require.InDelta(t, p[1], boils(p[0]), .6, "%v Brix", p[0])
	}
	// At 70 Brix the equation runs .9 C low: half a degree is not to be had there.
	require.InDelta(t, 106.5, boils(70), 1.0)
}

// National Bureau of Standards Circular 440, Polarimetry, Saccharimetry and the
// Sugars (1942), table 114: apparent specific gravity of sugar solutions at 20 C,
// by Brix, against water of .99717 g/ml; as GNU units has it (definition "brix").
func TestDensityOfSugarSolutions(t *testing.T) {
	for _, p := range [][2]float64{
		{5, 1.01968}, {10, 1.04003}, {20, 1.08297}, {30, 1.12913}, {40, 1.17874}, {50, 1.23202}, {60, 1.28909}, {66, 1.32516}, {70, 1.34997},
	} {
		m := syrup(p[0], 100-p[0])
		require.InEpsilon(t, .99717*p[1], setting.Density(&m, 0), .01, "%v Brix", p[0])
	}
}

// Saska, Boiling point elevation of technical sugarcane solutions (International
// Sugar Journal 104, 2002), equation 3 after Starzak and Peacock (1997): how far
// over that of water sucrose solutions boil, by Brix, as GNU units tabulates it
// (definition "sugar_conc_bpe"). Brown's table stands over it; Norrish's equation
// runs between the two, an eighth over this one at the most.
func TestWaterActivityAgainstASecondBoilingTable(t *testing.T) {
	for _, p := range [][2]float64{
		{10, .1690}, {20, .3936}, {30, .7027}, {40, 1.1475}, {50, 1.8249}, {60, 2.9400}, {66, 4.0012}, {70, 4.9905},
	} {
		m := syrup(p[0], 100-p[0])
		over := 1/(1/373.15+8.314/40660*math.Log(setting.WaterActivity(&m))) - 373.15
		require.InEpsilon(t, p[1], over, .125, "%v Brix", p[0])
	}
}

// McGee (2004), chapter 2, custards: 5 g of pure starch to 250 ml keeps egg from
// curdling. The dose is of starch itself, and cornflour holds 88 to 90 parts in
// 100 of it: the weight given is of cornflour. Water of the egg and milk
// together is what the judge counts it by.
func TestStarchStopsCurdling(t *testing.T) {
	guarded := func(g string) bake.Outcome {
		return likely(t, `["250 ml milk", "1 large egg", "30 g sugar", "`+g+` g cornflour"]`, "[baked, hot oven]")
	}
	none := likely(t, `["250 ml milk", "1 large egg", "30 g sugar"]`, "[baked, hot oven]")
	// 5 g of dry starch against the 220 g of water in the milk alone is 2.3; with
	// the water of the egg 1.9. Either way it lies at the threshold of 2.
	dose := guarded("5.7")
	require.InDelta(t, 2, dose.Measures[bake.StarchShare], .15)
	sure := guarded("6.5")
	require.GreaterOrEqual(t, sure.Measures[bake.StarchShare], 2.0)
	require.LessOrEqual(t, sure.Measures[bake.CurdleIndex], -8.0)
	require.Greater(t, none.Measures[bake.CurdleIndex], -8.0)

	// The same pages give 8 g of flour to 250 ml.
	flour := likely(t, `["250 ml milk", "1 large egg", "30 g sugar", "8 g plain flour"]`, "[baked, hot oven]")
	require.InDelta(t, 2.3, flour.Measures[bake.StarchShare], .4)
	require.LessOrEqual(t, flour.Measures[bake.CurdleIndex], -8.0)
}

// Lowe, Experimental Cookery (1932), heat coagulation of proteins, and McGee
// (2004), chapter 2: sugar raises the heat at which egg curdles and makes the
// gel tenderer; the LA Times test kitchen (18 February 1998, custards) found the
// span between set and curdled wider with it.
func TestSugarTendersAndWidens(t *testing.T) {
	var last bake.Outcome
	for i, g := range []int{0, 30, 60, 120, 240} {
		sugar := ""
		if g > 0 {
			sugar = fmt.Sprintf(`, "%d g sugar"`, g)
		}
		out := likely(t, `["250 ml milk", "2 large eggs"`+sugar+`]`, "[baked]")
		if i > 0 {
			require.Less(t, out.Measures[bake.SetIndex], last.Measures[bake.SetIndex], "%d g sets tenderer", g)
			require.Greater(t, out.Measures[bake.CurdleMargin], last.Measures[bake.CurdleMargin], "%d g is safer", g)
		}
		last = out
	}
}

// Corn starch cooked with citric acid does not thin down to pH 3.6 and thins
// under 3.5; with the acid put in after cooking it does not (a paper on corn
// starch pastes known from a quotation, believed to be Hirashima and others,
// Food Hydrocolloids, about 2004, abstract).
func TestAcidThinsStarch(t *testing.T) {
	require.Equal(t, 1.0, setting.AcidThinning(3.6, false))
	require.Less(t, setting.AcidThinning(3.49, false), 1.0)
	require.Equal(t, 1.0, setting.AcidThinning(3.0, true))
	last := 0.0
	for ph := 2.0; ph < 7; ph += .05 {
		kept := setting.AcidThinning(ph, false)
		require.GreaterOrEqual(t, kept, last)
		last = kept
	}
}

// Casein is least soluble at pH 4.6 and clots from about 5.2 down (Walstra,
// Wouters and Geurts, Dairy Science and Technology (2006), acid coagulation of
// casein, from memory; the dairy lessons of ecoursesonline.iasri.res.in, page
// 19935, give the same two figures). Under 4 it is charged again.
func TestCaseinClots(t *testing.T) {
	m := filling(t, `["500 ml milk", "2 large eggs"]`, "[baked]").LikelyMix()
	for ph := 1.5; ph < 10; ph += .1 {
		require.Equal(t, ph > 4 && ph < 5.2, setting.Clots(&m, ph, 0), "pH %.1f", ph)
	}
	require.False(t, setting.Clots(&m, 4.6, 2), "starch holds it apart")

	// Lowe (1932) and McGee (2004): a little lemon in a milk custard clots it. By
	// the real path: the pH falls into the span and the index tells.
	plain := likely(t, `["500 ml milk", "4 large eggs", "40 g sugar"]`, "[baked]")
	sour := likely(t, `["500 ml milk", "4 large eggs", "40 g sugar", "50 g lemon juice"]`, "[baked]")
	require.Greater(t, plain.Measures[bake.PH], 6.0)
	require.Greater(t, sour.Measures[bake.PH], 4.0)
	require.Less(t, sour.Measures[bake.PH], 5.2)
	require.InDelta(t, 3, sour.Measures[bake.CurdleIndex]-plain.Measures[bake.CurdleIndex], .6)
}

// McGee (2004), chapter 2, custards: egg and plain water curdle where milk, or
// a pinch of salt, gives a gel.
func TestEggAndPlainWater(t *testing.T) {
	for _, c := range []struct {
		lines string
		plain bool
	}{
		{`["250 ml water", "1 large egg"]`, true},
		{`["250 ml water", "1 large egg", "1 g salt"]`, false},
		{`["250 ml milk", "1 large egg"]`, false},
		{`["200 ml water", "50 g lemon juice", "2 large eggs"]`, false},
	} {
		m := filling(t, c.lines, "[baked]").LikelyMix()
		require.Equal(t, c.plain, setting.PlainWater(&m), c.lines)
	}
}

// syrup is sugar and water alone, grams.
func syrup(sugar, water float64) ratios.Mix {
	var m ratios.Mix
	m[ratios.Sugars], m[ratios.Water], m[ratios.Total] = sugar, water, sugar+water
	return m
}

// Trade and textbook figures of how far mixes rise in the oven, by the air
// beaten in: what is told of custards, beaten egg puddings, creamed ones, sponge
// puddings and sponges (batters of .46 to .50 g/ml, cakes of 3.5 ml/g and over).
func TestRiseOfTheTrade(t *testing.T) {
	for _, c := range []struct {
		what      string
		air       float64
		low, high float64
	}{
		{"custard", 2, 1, 1.05},
		{"beaten egg pudding", 13, 1.1, 1.25},
		{"creamed butter and egg", 20, 1.2, 1.4},
		{"sponge pudding", 30, 1.3, 1.5},
		{"sponge", 58, 1.6, 1.9},
		{"souffle", 50, 1.6, 2},
	} {
		got := setting.Rise(c.air, 80)
		require.GreaterOrEqualf(t, got, c.low-.005, "%s", c.what)
		require.LessOrEqualf(t, got, c.high+.005, "%s", c.what)
	}
}

// Steam over water at 60, 80 and 100 C is 199, 474 and 1013 hPa in any table of
// steam; a bubble without it grows by Gay-Lussac's law alone.
func TestBubblesSwellAsGasAndSteam(t *testing.T) {
	require.InDelta(t, 1, setting.Rise(0, 80), 1e-12, "no air, no rise")
	require.InDelta(t, 1, setting.Rise(40, 20), 1e-9, "at the heat it was beaten at")
	// All air, at 80 C: 353.15/293.15 x (1013.25-23.4)/(1013.25-474).
	require.InDelta(t, 353.15/293.15*(1013.25-23.4)/(1013.25-474), setting.Rise(100, 80), .01)
}

// A cup of a pourable ingredient weighs what the food tables say: its volume by
// what it is made of, against the density it is poured by. USDA SR28 weighs cups
// of milk, cream, egg, juice, honey and the like; the rows name their works.
func TestVolumesOfLiquids(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	checked := 0
	for i := range tables.Ingredients {
		ing := &tables.Ingredients[i]
		if slices.Contains(ing.Roles, "flavour") { // extracts: a cup of them is reckoned from spoons
			continue
		}
		if !ing.Density.Liquid.IsPositive() || ing.Per100.Water.InexactFloat64() < 10 || ing.Kind == "egg" { // a whole egg is parted first
			continue
		}
		it := weigh.Item{Ingredient: ing}
		row := ratios.Row(&it)
		var m ratios.Mix
		m.Add(100, &row)
		got := m[ratios.Total] / setting.Volume(&m)
		want := ing.Density.Liquid.InexactFloat64()
		assert.InEpsilonf(t, want, got, .06, "%s: %.3f g/ml told, %.3f reckoned", ing.ID, want, got)
		checked++
	}
	require.Greater(t, checked, 20)
}
