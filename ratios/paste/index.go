package paste

import "math"

// NetWater is the water left for the flour to one of flour: what is worked in,
// the part of the butter's own that reaches it, less .4 of the sugar's weight
// that sugar binds (dissolving sucrose at 20 C takes .49 of its weight in
// water). At least .02.
func (s *State) NetWater() float64 {
	return max(.02, s.Water+s.Type.butterWater()*s.FatWater-.4*s.Sugar)
}

// Layers is fat that lies in sheets and does not coat flour, to one of flour.
func (s *State) Layers() float64 { return max(0, (1-s.Coverage)*s.PureFat) }

// Toughness is the gluten a paste makes against a two-to-one English short
// paste at 1:
//
//	(protein/10) h exp(-1.5 (coverage x fat - .455)) work acid leaven / (1 + 3 layers)
//
// h is net water's effect, levelling off, with a surcharge for more water than
// the paste needs. Divided by the layers, since thin layers do not feel tough.
// Ordering is the part that can be defended; confidence medium.
func (s *State) Toughness() float64 {
	water := s.NetWater()
	if s.Type == HotWater {
		water *= .6
	}
	h := water/(water+.25)/.419 + 4*max(0, s.Water-1.2*max(s.UsualMost, .30))
	tau := s.Protein / 10 * h * math.Exp(-1.5*(s.Coverage*s.PureFat-.455)) * s.Work
	if s.Acid {
		tau *= .85
	}
	if s.Leavened {
		tau *= .8
	}
	return tau / (1 + 3*s.Layers())
}

// Tough is the index of a tough paste: ln(toughness) + 6 max(0, .30 - fat), the
// second part not for sweet paste. Fat comes first: under about a third of
// butter a paste hardens whatever else is done. Fat first: medium; few cases.
func (s *State) Tough() float64 {
	x := math.Log(s.Toughness())
	if s.Sugar < .08 {
		x += 6 * max(0, .30-s.Lean*s.PureFat)
	}
	return x
}

// Greasy is the index of a greasy paste: fat - .82 - .6 (1 - coverage). Paste
// raised with hot water holds its fat. One published case: low confidence.
func (s *State) Greasy() float64 {
	if s.Type == HotWater {
		return -.5
	}
	return s.PureFat - .82 - .6*(1-s.Coverage)
}

// Crumbly is the index of a paste that falls apart: -ln(net water / max(1,
// coverage)^2). Oil reaches all the flour and keeps water out. It was good on
// the formulas it was developed on and failed on those kept back: low.
func (s *State) Crumbly() float64 {
	c := max(1, s.Coverage)
	return -math.Log(s.NetWater() / (c * c))
}

// Flakes is the index of a flaky paste: the fat in layers, for pastes that can
// flake at all.
func (s *State) Flakes() float64 {
	if s.Type == Short || s.Type == Sweet || s.Type == Flaky {
		return s.Layers()
	}
	return 0
}
