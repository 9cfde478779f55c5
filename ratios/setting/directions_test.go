package setting_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/setting"
	"assize/reference"
)

// What one gram of an ingredient brings, near enough for directions (figures
// of the USDA's food tables, from memory, rounded). The strong ions follow from
// the pH.
var (
	eggWhite = ingredient(8.8, amounts{ratios.Water: .876, ratios.WhiteProtein: .109, ratios.EggWhite: 1, ratios.EggWater: .876})
	eggYolk  = ingredient(6.2, amounts{ratios.Water: .523, ratios.YolkProtein: .159, ratios.Fat: .265, ratios.EggYolk: 1, ratios.EggWater: .523})
	milk     = ingredient(6.7, amounts{ratios.Water: .88, ratios.MilkProtein: .033, ratios.Fat: .035, ratios.Sugars: .048, ratios.FreeLiquid: 1})
	sugar    = ingredient(0, amounts{ratios.Sugars: 1, ratios.Sugar: 1})
	fat      = ingredient(0, amounts{ratios.Fat: 1})
	starch   = ingredient(0, amounts{ratios.Starch: .88, ratios.StrongStarch: .88, ratios.Water: .12})
	juice    = ingredient(2.3, amounts{ratios.Water: .92, ratios.Citric: .055, ratios.Acid: .055, ratios.Sugars: .025, ratios.FreeLiquid: 1})
)

type amounts map[ratios.Quantity]float64

func ingredient(ph float64, a amounts) ratios.Mix {
	var m ratios.Mix
	for q, g := range a {
		m[q] = g
	}
	m[ratios.Total] = 1
	if ph > 0 {
		m[ratios.StrongIons] = setting.StrongIons(&m, ph)
	}
	return m
}

func with(m ratios.Mix, grams float64, what *ratios.Mix) *ratios.Mix {
	m.Add(grams, what)
	return &m
}

func grams(t *rapid.T, what string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(t, what)
}

// whole is egg out of its shell, white and yolk as they come.
func whole() ratios.Mix {
	var m ratios.Mix
	m.Add(.67, &eggWhite)
	m.Add(.33, &eggYolk)
	return m
}

// anyMix draws a filling of milk, egg, sugar, fat, starch and juice.
func anyMix(t *rapid.T) ratios.Mix {
	var m ratios.Mix
	m.Add(grams(t, "milk", 20, 1000), &milk)
	m.Add(grams(t, "white", 0, 300), &eggWhite)
	m.Add(grams(t, "yolk", 0, 300), &eggYolk)
	m.Add(grams(t, "sugar", 0, 600), &sugar)
	m.Add(grams(t, "fat", 0, 300), &fat)
	m.Add(grams(t, "starch", 0, 80), &starch)
	m.Add(grams(t, "juice", 0, 250), &juice)
	return m
}

// slack is what rounding may take.
const slack = 1e-9

// Whole egg never makes the water phase poorer in egg where the egg in it is
// whole egg. Not so for any mix: white added to a mix that is nearly all yolk
// brings more water than it brings protein that sets.
func TestMoreEggSetsNoLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		egg := whole()
		var m ratios.Mix
		m.Add(grams(t, "milk", 20, 1000), &milk)
		m.Add(grams(t, "egg", 0, 500), &egg)
		m.Add(grams(t, "sugar", 0, 500), &sugar)
		m.Add(grams(t, "fat", 0, 300), &fat)
		m.Add(grams(t, "juice", 0, 200), &juice)
		more := with(m, grams(t, "more", .1, 100), &egg)
		a, b := setting.EggProtein(&m), setting.EggProtein(more)
		require.GreaterOrEqual(t, b+slack, a)
		// The set of a mix without starch or set milk, which egg's water would thin.
		require.GreaterOrEqual(t, setting.Set(more, b, 0, 0)+slack, setting.Set(&m, a, 0, 0))
	})
}

func TestSetRisesWithEachOfItsParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		egg, curd, thick := grams(t, "egg", 0, 15), grams(t, "curd", 0, 5), grams(t, "thick", 0, 5)
		d := grams(t, "more", 0, 5)
		set := setting.Set(&m, egg, curd, thick)
		require.GreaterOrEqual(t, setting.Set(&m, egg+d, curd, thick), set)
		require.GreaterOrEqual(t, setting.Set(&m, egg, curd+d, thick), set)
		require.GreaterOrEqual(t, setting.Set(&m, egg, curd, thick+d), set)
		jelly := m
		jelly[ratios.Setting] += d
		require.GreaterOrEqual(t, setting.Set(&jelly, egg, curd, thick), set)
		need := grams(t, "need", .4, 1)
		require.LessOrEqual(t, setting.Thin(set+d, need), setting.Thin(set, need), "what sets more is no thinner")
		require.GreaterOrEqual(t, setting.Thin(set, need+d), setting.Thin(set, need), "what must stand is sooner too thin")
		require.GreaterOrEqual(t, setting.Rubbery(egg+d, thick, 0), setting.Rubbery(egg, thick, 0))
		require.LessOrEqual(t, setting.Rubbery(egg, thick, 15), max(-3, setting.Rubbery(egg, thick, 0)))
	})
}

func TestMoreStarchSetsAndGuards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		more := with(m, grams(t, "more", .1, 60), &starch)
		a, b := setting.Starch(&m), setting.Starch(more)
		require.GreaterOrEqual(t, b+slack, a)
		ea, eb := setting.ExtraStarch(&m), setting.ExtraStarch(more)
		require.GreaterOrEqual(t, eb+slack, ea)
		kept := grams(t, "kept", .6, 1)
		require.GreaterOrEqual(t, setting.StarchSet(b, eb, kept)+slack, setting.StarchSet(a, ea, kept))
		require.GreaterOrEqual(t, setting.StarchSet(a, ea, 1)+slack, setting.StarchSet(a, ea, kept), "acid never helps starch")
		require.GreaterOrEqual(t, setting.Window(&m, b)+slack, setting.Window(&m, a))
		// Starch also thins out the fat, a little; it never costs more than that.
		require.GreaterOrEqual(t, setting.Window(more, b)+slack, setting.Window(&m, a)-.25*(m.FatShare()-more.FatShare())-.15*(m.SugarShare()-more.SugarShare()))
		spread, egg := grams(t, "spread", 2, 22), grams(t, "egg", 0, 10)
		w := setting.Window(&m, a)
		require.LessOrEqual(t, setting.Curdle(spread, w, false, false, b, egg), setting.Curdle(spread, w, false, false, a, egg)+slack)
		require.LessOrEqual(t, setting.Heat(&m, spread, w, b), setting.Heat(&m, spread, w, a)+slack)
	})
}

// Fat never narrows the window. Nor does sugar by itself; but a spoon of sugar
// also makes the fat a smaller share of the whole, and past saturation (67 in
// 100 of the water phase) that is all it does, so a rich sweet mix may lose a
// little. The property is of sugar at a given share of fat, and in full of
// mixes without fat.
func TestSugarAndFatWidenTheWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, thick, g := anyMix(t), grams(t, "starch share", 0, 4), grams(t, "more", .1, 200)
		w := setting.Window(&m, thick)
		require.GreaterOrEqual(t, setting.Window(with(m, g, &fat), thick)+slack, w)
		sweet := with(m, g, &sugar)
		sweet[ratios.Fat] *= sweet[ratios.Total] / m[ratios.Total]
		require.GreaterOrEqual(t, setting.Window(sweet, thick)+slack, w)
		lean := m
		lean[ratios.Total] -= lean[ratios.Fat]
		lean[ratios.Fat] = 0
		require.GreaterOrEqual(t, setting.Window(with(lean, g, &sugar), thick)+slack, setting.Window(&lean, thick))
	})
}

// A gentler fire never raises the indices of curdling, whatever share up its
// range a hand falls: a bath is gentler than a slow oven, that than a moderate,
// that than a hot one; and a pan stirred, than a moderate oven. Stirring and
// the bath are not ranked: a careful hand may do better on the fire.
func TestGentlerFireCurdlesNoMore(t *testing.T) {
	gentler := [][2]setting.Fire{
		{setting.Bath, setting.Slow}, {setting.Slow, setting.Moderate}, {setting.Moderate, setting.Hot},
		{setting.Stirred, setting.Moderate}, {setting.Moderate, setting.Microwave},
	}
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		up, thick, egg := grams(t, "hand", 0, 1), grams(t, "starch share", 0, 4), grams(t, "egg", 0, 12)
		clots, plain := rapid.Bool().Draw(t, "clots"), rapid.Bool().Draw(t, "plain water")
		w := setting.Window(&m, thick)
		for _, p := range gentler {
			a, b := setting.SpreadOf(p[0]), setting.SpreadOf(p[1])
			careful := func(s setting.Spread) float64 {
				return setting.Curdle(s.CarefulLow+up*(s.CarefulHigh-s.CarefulLow), w, clots, plain, thick, egg)
			}
			careless := func(s setting.Spread) float64 {
				return setting.Heat(&m, s.CarelessLow+up*(s.CarelessHigh-s.CarelessLow), w, thick)
			}
			require.LessOrEqual(t, careful(a), careful(b)+slack, "%v", p)
			require.LessOrEqual(t, careless(a), careless(b)+slack, "%v", p)
		}
		for f := setting.Microwave; f <= setting.Moderate; f++ {
			s := setting.SpreadOf(f)
			require.LessOrEqual(t, s.CarefulLow, s.CarefulHigh)
			require.LessOrEqual(t, s.CarelessLow, s.CarelessHigh)
			require.LessOrEqual(t, s.CarefulLow, s.CarelessLow, "care never makes it worse")
			require.LessOrEqual(t, s.CarefulHigh, s.CarelessHigh)
		}
	})
}

func TestCurdleFollowsItsParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spread, w, d := grams(t, "spread", 2, 22), grams(t, "window", 4, 27), grams(t, "more", 0, 5)
		thick, egg := grams(t, "starch share", 0, 4), grams(t, "egg", 0, 12)
		x := setting.Curdle(spread, w, false, false, thick, egg)
		require.GreaterOrEqual(t, setting.Curdle(spread+d, w, false, false, thick, egg), x)
		require.LessOrEqual(t, setting.Curdle(spread, w+d, false, false, thick, egg), x)
		require.GreaterOrEqual(t, setting.Curdle(spread, w, true, false, thick, egg), x)
		require.GreaterOrEqual(t, setting.Curdle(spread, w, false, true, thick, egg), x)
		require.LessOrEqual(t, setting.Curdle(spread, w, true, true, 2, egg), -8.0)
		require.LessOrEqual(t, setting.Curdle(spread, w, true, true, thick, .39), -8.0)
	})
}

func TestAcidNeverRaisesPH(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		ph := setting.PH(&m)
		require.GreaterOrEqual(t, ph, 1.5)
		require.LessOrEqual(t, ph, 10.0)
		for _, acid := range []ratios.Quantity{ratios.Citric, ratios.Malic, ratios.Tartaric, ratios.Lactic, ratios.Acetic} {
			sour := m
			sour[acid] += grams(t, "acid", .01, 40)
			require.LessOrEqual(t, setting.PH(&sour), ph)
			require.GreaterOrEqual(t, setting.PH(&sour), 1.5)
		}
		alkaline := m
		alkaline[ratios.StrongIons] += grams(t, "alkali", 0, .1)
		require.GreaterOrEqual(t, setting.PH(&alkaline), ph)
		require.LessOrEqual(t, setting.PH(&alkaline), 10.0)
		require.InDelta(t, ph, setting.PH(with(m, grams(t, "fat", 0, 200), &fat)), slack, "fat only dilutes")
	})
}

// An ingredient alone has its own pH back, and a mix of two lies between theirs.
func TestPHOfIngredients(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pairs := []struct {
			m  *ratios.Mix
			ph float64
		}{{&juice, 2.3}, {&eggYolk, 6.2}, {&milk, 6.7}, {&eggWhite, 8.8}}
		i := rapid.IntRange(0, len(pairs)-1).Draw(t, "one")
		j := rapid.IntRange(0, len(pairs)-1).Draw(t, "other")
		var m ratios.Mix
		m.Add(grams(t, "grams of one", 1, 500), pairs[i].m)
		require.InDelta(t, pairs[i].ph, setting.PH(&m), .001)
		m.Add(grams(t, "grams of other", 1, 500), pairs[j].m)
		require.GreaterOrEqual(t, setting.PH(&m), min(pairs[i].ph, pairs[j].ph)-.001)
		require.LessOrEqual(t, setting.PH(&m), max(pairs[i].ph, pairs[j].ph)+.001)
	})
}

func TestWaterActivityFallsWithSugar(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		m[ratios.SaltContent] = grams(t, "salt", 0, 30)
		m[ratios.Alcohol] = grams(t, "alcohol", 0, 100)
		a := setting.WaterActivity(&m)
		require.Greater(t, a, 0.0)
		require.LessOrEqual(t, a, 1.0)
		g := grams(t, "more", 1, 300)
		require.Less(t, setting.WaterActivity(with(m, g, &sugar)), a)
		for _, q := range []ratios.Quantity{ratios.SaltContent, ratios.Alcohol} {
			n := m
			n[q] += g
			require.Less(t, setting.WaterActivity(&n), a)
		}
		require.Greater(t, setting.Saturation(with(m, g, &sugar)), setting.Saturation(&m))
	})
	var dry ratios.Mix
	require.Zero(t, setting.WaterActivity(&dry))
}

func TestSolubilityRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := grams(t, "celsius", -10, 110)
		d := grams(t, "warmer", 0, 20)
		require.GreaterOrEqual(t, setting.Solubility(c+d), setting.Solubility(c))
		require.GreaterOrEqual(t, setting.Solubility(c), 179.2)
		require.LessOrEqual(t, setting.Solubility(c), 487.2)
	})
}

func TestEvaporatedRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minutes, d := grams(t, "minutes", 0, 400), grams(t, "longer", 0, 100)
		bath := rapid.Bool().Draw(t, "bath")
		a := setting.Evaporated(true, minutes, bath)
		require.GreaterOrEqual(t, setting.Evaporated(true, minutes+d, bath), a)
		require.GreaterOrEqual(t, a, 0.0)
		require.LessOrEqual(t, a, .40)
		require.LessOrEqual(t, setting.Evaporated(true, minutes, true), setting.Evaporated(true, minutes, false))
		require.Zero(t, setting.Evaporated(false, minutes, bath))
	})
}

func TestVolumeAndDensity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		more := with(m, grams(t, "more", 1, 100), &sugar)
		require.Greater(t, setting.Volume(more), setting.Volume(&m))
		air, d := grams(t, "air", 0, 60), grams(t, "more air", .1, 30)
		require.Less(t, setting.Density(&m, air+d), setting.Density(&m, air))
		require.Greater(t, setting.Density(more, air), setting.Density(&m, air), "sugar is heavier than what it goes into")
	})
}

// Milk sets by acid or rennet only, the more the more of it there is.
func TestMilkCurd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		m[ratios.SourMilkProtein] = grams(t, "curd", 0, 40)
		ph := grams(t, "pH", 2, 9)
		a := setting.MilkCurd(&m, ph, false)
		require.GreaterOrEqual(t, setting.MilkCurd(&m, ph, true)+slack, a, "rennet never sets less")
		require.GreaterOrEqual(t, setting.MilkCurd(&m, ph-1, false)+slack, a, "nor does acid")
		rich := m
		rich[ratios.SourMilkProtein]++
		require.GreaterOrEqual(t, setting.MilkCurd(&rich, ph, false)+slack, a)
	})
}

// Starch's part of the set lies between nothing and all of it.
func TestStarchPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := anyMix(t)
		egg := setting.EggProtein(&m)
		thick := setting.StarchSet(setting.Starch(&m), setting.ExtraStarch(&m), 1)
		set := setting.Set(&m, egg, 0, thick)
		if set <= 0 {
			return // milk and sugar alone: there is no set to share out
		}
		late, first := setting.StarchPart(&m, thick, set, false), setting.StarchPart(&m, thick, set, true)
		require.GreaterOrEqual(t, late, 0.0)
		require.LessOrEqual(t, late, first+slack)
		require.LessOrEqual(t, first, 1+slack)
	})
}

// Without air the volume of two mixes together is the sum of their volumes.
func TestVolumesAdd(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		some := func(label string) ratios.Mix {
			var m ratios.Mix
			for range rapid.IntRange(1, 5).Draw(t, label) {
				ing := &tables.Ingredients[rapid.IntRange(0, len(tables.Ingredients)-1).Draw(t, "ingredient")]
				row := ratios.Row(&weigh.Item{Ingredient: ing})
				m.Add(rapid.Float64Range(1, 500).Draw(t, "grams"), &row)
			}
			return m
		}
		a, b := some("first"), some("second")
		both := a
		for q := range both {
			both[q] += b[q]
		}
		require.InEpsilon(t, setting.Volume(&a)+setting.Volume(&b), setting.Volume(&both), 1e-9)
	})
}
