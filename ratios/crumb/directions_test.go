package crumb_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/ratios"
	"assize/ratios/crumb"
)

// slack is what rounding may take.
const slack = 1e-9

func between(t *rapid.T, what string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(t, what)
}

// anyMix draws egg, liquid, sugar, butter and flour by weight.
func anyMix(t *rapid.T) ratios.Mix {
	var m ratios.Mix
	white, yolk := between(t, "white", 1, 300), between(t, "yolk", 1, 200)
	butter, sugar, flour, milk := between(t, "butter", 0, 400), between(t, "sugar", 0, 500), between(t, "flour", 0, 400), between(t, "milk", 0, 800)
	m[ratios.EggWhite], m[ratios.EggYolk] = white, yolk
	m[ratios.WhiteProtein], m[ratios.YolkProtein] = .109*white, .159*yolk
	m[ratios.EggWater] = .876*white + .523*yolk
	m[ratios.ButterLike], m[ratios.ButterWater] = butter, .16*butter
	m[ratios.Sugar], m[ratios.Sugars] = sugar, sugar
	m[ratios.Flour], m[ratios.Starch], m[ratios.FlourProtein] = flour, .72*flour, .10*flour
	m[ratios.MilkProtein] = .033 * milk
	m[ratios.Water] = m[ratios.EggWater] + m[ratios.ButterWater] + .13*flour + .88*milk
	m[ratios.Fat] = .265*yolk + .815*butter
	m[ratios.Total] = white + yolk + butter + sugar + flour + milk
	return m
}

// added gives the mix with more of some quantities, and as much to its weight.
func added(m ratios.Mix, grams float64, of ...ratios.Quantity) *ratios.Mix {
	for _, q := range of {
		m[q] += grams
	}
	m[ratios.Total] += grams
	return &m
}

func TestFlourGivesStructure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, g := anyMix(t), between(t, "more", .1, 200)
		a := crumb.Floury(&m)
		for _, what := range []ratios.Quantity{ratios.Flour, ratios.Meal, ratios.Crumb} {
			b := crumb.Floury(added(m, g, what))
			require.GreaterOrEqual(t, b+slack, a)
			eggs := between(t, "eggs", 0, 1.2)
			require.GreaterOrEqual(t, crumb.Structure(b, eggs)+slack, crumb.Structure(a, eggs))
			require.GreaterOrEqual(t, crumb.Structure(a, eggs+.1), crumb.Structure(a, eggs))
			require.GreaterOrEqual(t, crumb.Fixed(crumb.Structure(b, eggs))+slack, crumb.Fixed(crumb.Structure(a, eggs)))
			require.GreaterOrEqual(t, crumb.Leaven(5, 0, 0, b)+slack, crumb.Leaven(5, 0, 0, a))
		}
		require.LessOrEqual(t, crumb.Floury(added(m, g, ratios.Sugar)), a+slack, "anything else makes it less floury")
	})
}

func TestAirMakesCakey(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		air, d := between(t, "air", 0, 80), between(t, "more air", 0, 20)
		structure, ds := between(t, "structure", 0, 3), between(t, "more structure", 0, 1)
		for _, stove := range []bool{false, true} {
			k := crumb.Cakey(air, structure, stove)
			require.GreaterOrEqual(t, crumb.Cakey(air+d, structure, stove), k)
			require.GreaterOrEqual(t, crumb.Cakey(air, structure+ds, stove), k)
		}
		require.LessOrEqual(t, crumb.Cakey(air, structure, true), crumb.Cakey(air, structure, false))
		require.LessOrEqual(t, crumb.Cakey(air, structure, true), -2.0, "what is stirred on the fire keeps no crumb")
		ml := between(t, "ml", 1, 1000)
		share := crumb.Share(ml, 500)
		require.Greater(t, crumb.Share(ml+d+.1, 500), share)
		require.Less(t, crumb.Share(ml, 600), share)
		require.Less(t, share, 100.0)
	})
}

// Liquid added never helps egg hold the air: neither with the egg protein of
// the water phase given, nor with that thinned by the liquid as it is.
func TestLiquidTakesFromEggStructure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, g := anyMix(t), between(t, "more", .1, 500)
		heat := between(t, "heat", crumb.NoOven, crumb.DryOven)
		egg, thinner := between(t, "egg", 0, 12), between(t, "thinned to", 0, 1)
		wet := added(m, g, ratios.Water)
		require.GreaterOrEqual(t, crumb.AddedLiquid(wet)+slack, crumb.AddedLiquid(&m))
		q := crumb.EggStructure(&m, egg, heat)
		require.GreaterOrEqual(t, q, 0.0)
		require.LessOrEqual(t, crumb.EggStructure(wet, egg, heat), q+slack)
		require.LessOrEqual(t, crumb.EggStructure(wet, egg*thinner, heat), q+slack)
		require.GreaterOrEqual(t, crumb.EggStructure(&m, egg+1, heat), q, "more egg in the water holds no less")
		require.GreaterOrEqual(t, crumb.EggStructure(&m, egg, crumb.DryOven), q, "a fierce dry oven lifts most")
		if d := crumb.AddedLiquid(&m); d > .5 && d < 2 && q > 0 {
			require.Less(t, crumb.EggStructure(wet, egg, heat), q, "between a rich pudding and a custard each spoon tells")
		}
		whiter := m
		whiter[ratios.WhiteProtein]++
		require.GreaterOrEqual(t, crumb.EggStructure(&whiter, egg, heat)+slack, q, "yolk alone rises least")
	})
	var dry ratios.Mix
	require.Equal(t, 9.0, crumb.AddedLiquid(&dry), "without egg there is all the liquid that counts")
}

func TestWhatTakesAirAway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, g := anyMix(t), between(t, "more", .1, 300)
		beaten, liquid := between(t, "beaten", .1, 500), between(t, "liquid", 0, 800)
		kept := crumb.Diluted(beaten, liquid)
		require.LessOrEqual(t, crumb.Diluted(beaten, liquid+g), kept)
		require.LessOrEqual(t, kept, 1.0)
		require.LessOrEqual(t, crumb.Drain(added(m, g, ratios.Sugar, ratios.Sugars)), crumb.Drain(&m)+slack)
		require.LessOrEqual(t, crumb.Break(added(m, g, ratios.Fat)), crumb.Break(&m)+slack)
		require.GreaterOrEqual(t, crumb.WhiteHelp(added(m, g, ratios.EggWhite))+slack, crumb.WhiteHelp(&m))
		for _, share := range []float64{crumb.Drain(&m), crumb.Break(&m), crumb.WhiteHelp(&m)} {
			require.True(t, share > 0 && share <= 1+slack)
		}
	})
}

func TestCreamingAndLeaven(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, g := anyMix(t), between(t, "more", .1, 300)
		base := crumb.CreamedBase(&m)
		require.GreaterOrEqual(t, crumb.CreamedBase(added(m, g, ratios.ButterLike)), base)
		require.GreaterOrEqual(t, crumb.CreamedBase(added(m, g, ratios.Sugar)), base)
		require.LessOrEqual(t, base, 3.2*m[ratios.ButterLike]+slack, "more sugar than 2.2 of the butter stays grit")
		powder, soda, floury := between(t, "powder", 0, 30), between(t, "soda", 0, 10), between(t, "floury", 0, 60)
		gas := crumb.Leaven(powder, soda, 0, floury)
		require.GreaterOrEqual(t, crumb.Leaven(powder+g, soda, 0, floury), gas)
		require.GreaterOrEqual(t, crumb.Leaven(powder, soda+g, 0, floury), crumb.Leaven(powder+g, soda, 0, floury)-slack, "soda gives more gas than powder")
		require.GreaterOrEqual(t, crumb.Leaven(powder, soda, g, floury), gas)
	})
	for _, r := range []crumb.Range{
		crumb.WhitesFolded, crumb.FoldedKept, crumb.WhitesAlone, crumb.AloneKept, crumb.CreamedByHand, crumb.CreamedBy1930, crumb.EggsVeryLight,
		crumb.BeatenCreamed, crumb.EggsBeaten, crumb.CreamedUnsaid, crumb.EggsUnsaid, crumb.EggsSlightly, crumb.CheeseMix,
	} {
		require.Less(t, r.At(0), r.At(.5))
		require.Less(t, r.At(.5), r.At(1))
		require.Positive(t, r.At(0))
	}
}
