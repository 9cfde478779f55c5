package crumb

import "assize/ratios"

// Range is what a step of method puts in, from a slack hand to a strong one:
// ml of air to a gram of the part beaten, or a share kept.
type Range struct{ Low, High float64 }

// At is the value a share u (0 to 1) of the way up the range.
func (r Range) At(u float64) float64 { return r.Low + u*(r.High-r.Low) }

// What the steps put in. Trade figures: stiff whites reach six to eight
// volumes; butter and sugar creamed by machine gain 60-65 per cent of volume in
// eight to ten minutes, by hand about half that; "well beaten" eggs vary most.
// A meringue is beaten till it is at its largest, eight times its whites
// (Migoya, The Elements of Dessert, 2012, the meringue methods).
// Sizes are physics and judgement, medium; the spread is meant to be wide.
var (
	WhitesFolded  = Range{4, 6} // of the whipped white
	FoldedKept    = Range{.5, .7}
	Meringue      = Range{5, 7}  // of white beaten stiff with its sugar
	MeringueKept  = Range{.8, 1} // nothing is folded in
	WhitesAlone   = Range{2, 5}  // whites the only egg, beaten
	AloneKept     = Range{.4, .6}
	CreamedByHand = Range{.20, .36} // before 1930
	CreamedBy1930 = Range{.35, .55} // with machines and caster sugar
	EggsVeryLight = Range{.4, 1.3}
	BeatenCreamed = Range{.15, .7}  // eggs beaten, into a creamed mix
	EggsBeaten    = Range{.08, .55} // eggs beaten or whisked
	CreamedUnsaid = Range{.05, .4}  // into a creamed mix, the eggs not described
	EggsUnsaid    = Range{.01, .10} // mixed, not described
	EggsSlightly  = Range{.01, .05} // slightly beaten, or milk poured on
	CheeseMix     = Range{.02, .08}
)

// CreamedBase is the butter and sugar that hold air when creamed together:
// the butter and at most 2.2 times its weight of sugar (more stays grit).
func CreamedBase(m *ratios.Mix) float64 {
	return m[ratios.ButterLike] + min(m[ratios.Sugar], 2.2*m[ratios.ButterLike])
}

// Diluted is what is left of beaten-in air when liquid follows: the part
// beaten over itself and the liquid.
func Diluted(beaten, liquid float64) float64 {
	if beaten <= 0 {
		return 0
	}
	return beaten / (beaten + liquid)
}

// WhiteHelp is how well the eggs of a mix foam: .4 for yolks alone, 1 from
// six parts white in ten.
func WhiteHelp(m *ratios.Mix) float64 {
	egg := m.EggMass()
	if egg <= 0 {
		return 0
	}
	return .4 + .6*min(1, m[ratios.EggWhite]/egg/.60)
}

// Drain is what sugar leaves of the foam: it delays the set, so that foam
// drains first. 1 to 40 per cent of the water phase, .4 from 60. Set so that
// chess pies come out dense under their crust (a fact of the trade); medium.
func Drain(m *ratios.Mix) float64 {
	return 1 - .6*clip((m.SugarShare()-40)/20)
}

// Break is what fat leaves of beaten eggs' foam: 1 to 8 per cent fat, .5 from 20.
func Break(m *ratios.Mix) float64 {
	return 1 - .5*clip((m.FatShare()-8)/12)
}

// Fixed is what is kept of air creamed into butter, by how much there is to
// fix it (see Structure).
func Fixed(structure float64) float64 { return .25 + .75*clip(structure) }

// What heat leaves of air other than stiff whites: stirred on the fire .05,
// heated and then baked .3. Stiff whites keep .6 on the fire.
const (
	StoveKept       = .05
	HeatedKept      = .3
	StoveKeptWhites = .6
)

// Leaven is the gas of leavening, ml: 60 ml to a gram of baking powder, twice
// that of soda, of which a thin mix holds .05 and one of a tenth flour .40.
func Leaven(powder, soda, selfRaising, floury float64) float64 {
	return (powder + 2*soda + .05*selfRaising) * 60 * (.05 + .35*clip(floury/10))
}

// Share is air as per cent of the volume: 100 air / (mix + air), both ml.
func Share(air, mix float64) float64 {
	if air+mix <= 0 {
		return 0
	}
	return 100 * air / (mix + air)
}

func clip(x float64) float64 { return max(0, min(1, x)) }
