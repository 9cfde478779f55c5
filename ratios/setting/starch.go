package setting

import "assize/ratios"

// Starch is the working starch, per cent of the free water. Starch inside pulp
// counts .35 and in crumb or nuts .60, since it is bound or already cooked
// (judgement, medium). About 2 per cent keeps egg from curdling: McGee (2004)
// gives 5 g of starch or 8 g of flour to 250 ml.
func Starch(m *ratios.Mix) float64 {
	return 100 * (m.FreeStarch() + .35*m[ratios.PulpStarch] + .60*m[ratios.CrumbStarch]) / m.FreeWater()
}

// ExtraStarch is what washed starches set beyond their weight in flour starch,
// per cent of the free water: cornflour thickens about as twice its weight of
// flour (trade tables of thickeners), counted .6 on top.
func ExtraStarch(m *ratios.Mix) float64 {
	return 100 * .6 * m[ratios.StrongStarch] / m.FreeWater()
}

// AcidThinning is what acid leaves of the set of starch that is not cooked
// before the acid goes in: 1 at pH 3.6 and over, .8 to 3.2, .6 below. Citric
// acid thins corn starch pastes below pH 3.5 when it is in before cooking;
// direction high, size judgement.
func AcidThinning(ph float64, cookedFirst bool) float64 {
	switch {
	case cookedFirst || ph >= 3.6:
		return 1
	case ph >= 3.2:
		return .8
	}
	return .6
}

// StarchSet is the set that starch gives, on the scale of the set index:
//
//	thinning x max(0, starch + extra - 1) / 5
//
// Below 1 per cent starch only thickens (confidence high).
func StarchSet(starch, extra, thinning float64) float64 {
	return thinning * max(0, starch+extra-1) / 5
}

// StarchPart is how much of the whole set is starch's, told from free starch
// alone; starch not cooked first counts .6, as it swells late.
func StarchPart(m *ratios.Mix, starchSet, set float64, cookedFirst bool) float64 {
	if m[ratios.Starch] <= 0 {
		return 0
	}
	part := starchSet * m.FreeStarch() / m[ratios.Starch] / set
	if !cookedFirst {
		part *= .6
	}
	return part
}

// Amylase reports that the yolk's starch-splitting enzyme may thin the filling
// on standing: yolk, working starch, and no step that reaches 85 C. The enzyme
// outlives a custard's heat and needs about a boil (trade experience; one
// experimenter found 85 C enough). Direction high, threshold medium.
func Amylase(m *ratios.Mix, boiled bool) bool {
	return !boiled && m[ratios.EggYolk] > 0 && Starch(m) >= 2
}
