package crumb

import (
	"math"

	"assize/ratios"
)

// AddedLiquid is the water added beside the eggs to the water in them: 3 to 6
// in a custard, under 1 in a curd, next to nothing in a rich egg pudding. 9
// when there is no egg. Confidence medium.
func AddedLiquid(m *ratios.Mix) float64 {
	if m[ratios.EggWater] <= 0 {
		return 9
	}
	return (m[ratios.Water] - .9*m[ratios.PulpWater] - m[ratios.EggWater] - m[ratios.ButterWater]) / m[ratios.EggWater]
}

// Floury is flour, meal, crumb and nuts (by how much they stiffen), per cent
// of the whole. From about 8 the structure is a cake's.
func Floury(m *ratios.Mix) float64 {
	if m[ratios.Total] <= 0 {
		return 0
	}
	return 100 * (m.FlourAndMeal() + m[ratios.Crumb] + m[ratios.NutWeight]) / m[ratios.Total]
}

// How dry and fierce the heat is, for EggStructure.
const (
	DryOven  = 1.0
	SoftHeat = .3 // water bath or slow oven
	NoOven   = 0.0
)

// EggStructure is Q, what eggs alone have to fix the air:
//
//	clip((egg - 2)/5, 0, 1.2) x clip((2 - added liquid)/1.5) x heat x (.4 + .6 min(1, white share/.5))
//
// A mix rich in egg with no liquid added has protein enough in its water to
// fix its own bubbles; a hot dry oven lifts it by steam before it sets; yolk
// alone rises little. Experienced cooks report such fillings (butter and sugar
// creamed, whole eggs whisked in, lemon, baked unstirred) set between a custard
// and a souffle. Direction high, size medium.
func EggStructure(m *ratios.Mix, egg, heat float64) float64 {
	return max(0, min(1.2, (egg-2)/5)) * clip((2-AddedLiquid(m))/1.5) * heat * (.4 + .6*min(1, m.WhiteShare()/.5))
}

// Structure is all there is to fix air: flour to 6.5 per cent counts as 1, egg
// on top. Flour's part is sure (starch and gluten fix air).
func Structure(floury, eggs float64) float64 { return floury/6.5 + eggs }

// Cakey is K, the index of a filling that sets cakey:
//
//	ln(max(air, .3)/10) + 1.6 min(structure, 1.5)
//
// at most -2 for what is stirred on the fire. Confidence high where whites are
// folded in, medium for the rest.
func Cakey(air, structure float64, stove bool) float64 {
	k := math.Log(max(air, .3)/10) + 1.6*min(structure, 1.5)
	if stove {
		k = min(k, -2)
	}
	return k
}
