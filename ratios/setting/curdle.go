package setting

import "assize/ratios"

// Window is how far above setting a mix may be heated before it curdles, C:
//
//	4 + .15 min(sugar, 67) + min(6, .25 fat) + 2.5 min(starch, 2) + 2 if mostly yolk
//
// with sugar per cent of the water phase, fat and starch as elsewhere. Base 4:
// a custard's network fails 3-6 C above setting (McGee 2004; Barham). That
// sugar, fat, starch and yolk widen it is agreed; the sizes are judgement.
// Confidence medium.
func Window(m *ratios.Mix, starch float64) float64 {
	w := 4 + .15*min(m.SugarShare(), 67) + min(6, .25*m.FatShare()) + 2.5*min(starch, 2)
	if m.WhiteShare() < .3 {
		w += 2
	}
	return w
}

// Clots reports that sweet milk will be clotted by the acid in the mix: milk
// protein at least .5 per cent of the whole, pH between 4.0 and 5.2, and too
// little starch, sugar or fat to hold it apart. Casein's isoelectric point is
// the reason; no published case in our table tests it. Low confidence.
func Clots(m *ratios.Mix, ph, starch float64) bool {
	return m[ratios.MilkProtein] >= .005*m[ratios.Total] && ph > 4 && ph < 5.2 &&
		starch < 1 && m.SugarShare() < 30 && m.FatShare() < 12
}

// Curdle is the index of curdling in careful hands: the spread of heat between
// the just-set centre and the hottest part (C) less the window, 3 more when
// the milk clots, 6 more for egg and plain water. Mixes that starch guards, or
// with next to no egg, cannot curdle: at most -8.
func Curdle(spread, window float64, clots, plainWater bool, starch, egg float64) float64 {
	x := spread - window
	if clots {
		x += 3
	}
	if plainWater {
		x += 6
	}
	if starch >= 2 || egg < .4 {
		x = min(x, -8)
	}
	return x
}

// Heat is the index of curdling in careless hands: as Curdle, by the spread
// of a careless fire. A caution, never a fault. Weak: one good custard in three
// carries it.
func Heat(m *ratios.Mix, spread, window, starch float64) float64 {
	x := spread - window
	if starch >= 2 || m[ratios.WhiteProtein]+m[ratios.YolkProtein] < .01*m[ratios.Total] {
		x = min(x, -8)
	}
	return x
}

// PlainWater reports a mix of egg and water only, without milk, salt, fruit or
// broth: it curdles, where a pinch of salt gives a gel (McGee 2004, on the part
// of dissolved minerals).
func PlainWater(m *ratios.Mix) bool {
	return m.EggMass() > 0 && m[ratios.WaterAdded] > .5*m.EggMass() &&
		m[ratios.MilkProtein]+m[ratios.SourMilkProtein] < .001*m[ratios.Total] &&
		m[ratios.SaltContent] < .001*m[ratios.Total] && m[ratios.PulpMass]+m[ratios.Acid] < .001*m[ratios.Total]
}
