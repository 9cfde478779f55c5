package setting

import (
	"math"

	"assize/ratios"
)

// Set is the set index: 1 is what a stirred custard of one egg to a cup of
// milk comes to when it just holds.
//
//	(egg + curd) / 1.7 + starch set + 100 gelatine / (.8 free water)
//
// The 1.7 makes one egg to 250 ml about 1.07 (McGee 2004: the least that
// holds); four eggs to the imperial pint, "to turn out" (Beeton), 1.58.
func Set(m *ratios.Mix, egg, curd, starchSet float64) float64 {
	return (egg+curd)/1.7 + starchSet + 100*m[ratios.Setting]/(.8*m.FreeWater())
}

// Need is the set a dish must reach: .75 baked or thickened with starch, 1.0
// stirred on the fire and yet asked to stand in a crust, .45 stirred and
// poured. Judgement, medium.
func Need(stove bool, starch float64, stands bool) float64 {
	switch {
	case !stove || starch >= 2:
		return .75
	case stands:
		return 1
	}
	return .45
}

// Thin is the index of a filling that stays loose: ln(need / set), with the
// set not taken under .05. Confidence medium to low: it found a third of the
// loose fillings it was developed on and none of those kept back.
func Thin(set, need float64) float64 {
	return -math.Log(max(set, .05) / need)
}

// Rubbery is the index of too much egg or flour for the water in a filling
// without air: ln((egg/1.7 + starch set) / 6); -3 where air (per cent of the
// volume) reaches 15. Two published cases: low confidence.
func Rubbery(egg, starchSet, air float64) float64 {
	if air >= 15 {
		return -3
	}
	return math.Log(max(egg/1.7+starchSet, 1e-6) / 6)
}
