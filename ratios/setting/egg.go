package setting

import "assize/ratios"

// Aqueous is the part of the mix that can gel, grams: free water with what is
// dissolved in it. Fat is only filler and starch granules are counted apart.
func Aqueous(m *ratios.Mix) float64 {
	return m.FreeWater() + m[ratios.Sugars] + m[ratios.WhiteProtein] + m[ratios.YolkProtein] + m[ratios.MilkProtein] + m[ratios.Acid]
}

// EggProtein is the effective egg-gel protein, per cent of the aqueous part:
//
//	100 (white + .65 yolk) / aqueous
//
// Yolk protein counts .65 because it networks less well: then three yolks to a
// cup of milk equal one whole egg, as McGee (On Food and Cooking, 2004, custard
// section) has it. One egg to a cup is the classic least. Valid for .7 to 20;
// confidence high at the low end, medium above.
func EggProtein(m *ratios.Mix) float64 {
	return 100 * (m[ratios.WhiteProtein] + .65*m[ratios.YolkProtein]) / Aqueous(m)
}

// MilkCurd is the effective protein of set milk, per cent of the aqueous part:
// soured milk, curd and cheese always, sweet milk where acid (pH under 5.2) or
// rennet has set it. Casein counts .35, rising with the butterfat caught in it:
//
//	.35 (1 + min(2, fat/15)), at least .6 under rennet
//
// Casein's isoelectric point is pH 4.6, and it clots from 5.2 down (dairy
// chemistry textbooks); the size is judgement, confidence medium.
func MilkCurd(m *ratios.Mix, ph float64, rennet bool) float64 {
	casein := m[ratios.SourMilkProtein]
	if ph < 5.2 || rennet {
		casein += m[ratios.MilkProtein]
	}
	strength := .35 * (1 + min(2, m.FatShare()/15))
	if rennet {
		strength = max(strength, .6)
	}
	return 100 * strength * casein / Aqueous(m)
}
