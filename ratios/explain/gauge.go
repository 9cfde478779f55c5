package explain

import (
	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

// gauge tells how much of a texture a part as changed has coming: a share of
// the readings, or, for what no share tells, how many of the known reasons for
// it are there.
type gauge struct {
	judged string // texture id the share is of; empty when told by reasons
	curdle bool   // grains may also be sugar coming out of solution
	risks  []risk
	// measure, with in, is one that stands for a taste no share tells.
	measure bake.Measure
	in      Unit
}

// unit is what the gauge's figures are of.
func (g gauge) unit() Unit {
	switch {
	case g.judged != "":
		return Shares
	case g.in != "":
		return g.in
	}
	return Reasons
}

// minds reports whether a change is looked at for the gauge: a taste is mended
// with what is sour and what is sweet, not with eggs and butter.
func (g gauge) minds(change string) bool {
	switch g.unit() {
	case Acid, Sugar:
		return change == "juice" || change == "sugar"
	}
	return true
}

// least is how far the gauge must move to be worth telling.
func (g gauge) least(now float64) float64 {
	switch g.unit() {
	case Shares:
		return leastMoved
	case Reasons:
		return .5 // reasons are counted whole
	}
	return tastes * now
}

// tastes is the part of a taste by which it must change to be noticed.
const tastes = .05

// risk is a reason for a texture that has no share.
type risk func(in bake.Input, out *bake.Outcome) bool

// gaugeOf is how a texture is gauged; false when neither the mechanisms nor
// practice tell anything of it.
func gaugeOf(x *reference.Texture) (gauge, bool) {
	if x.Judged {
		return gauge{judged: x.ID}, true
	}
	if list := reasons[x.Kind+"/"+x.ID]; list != nil {
		return gauge{risks: list}, true
	}
	switch {
	case x.Kind == string(formula.Filling) && x.ID == "too-sour":
		return gauge{measure: bake.AcidShare, in: Acid}, true
	case x.Kind == string(formula.Filling) && x.ID == "too-sweet":
		return gauge{measure: bake.SugarShare, in: Sugar}, true
	case x.Counts == "":
		return gauge{}, false
	}
	return gauge{judged: x.Counts, curdle: x.ID == "grainy"}, true
}

// Limits of the reasons, as the judge has them.
const (
	wetPaste   = .28 // water to one of flour
	oilyFat    = 25.0
	noStarch   = 1.0
	saturation = 1.0
)

// reasons are why a texture that has no share may come about, as cooks know
// them.
var reasons = map[string][]risk{
	"pastry/soggy-base": {
		func(in bake.Input, _ *bake.Outcome) bool {
			return in.Method.Has("raw_case") || !in.Method.Has("blind_baked", "part_baked", "baked_case", "egg_wash_inside")
		},
		func(in bake.Input, _ *bake.Outcome) bool {
			return in.Method.Has("cool_oven", "slow") || heat(&in.Method) > 0 && heat(&in.Method) < coolC
		},
		func(in bake.Input, _ *bake.Outcome) bool { return in.Method.Has("warm_filling", "juicy_filling") },
	},
	"pastry/shrank": {
		func(in bake.Input, _ *bake.Outcome) bool { return in.Method.Has("blind_no_weights") },
		func(in bake.Input, _ *bake.Outcome) bool { return !in.Method.Has("rested", "chilled") },
		func(_ bake.Input, out *bake.Outcome) bool { return out.Measures[bake.WorkedWater] > wetPaste },
		func(in bake.Input, _ *bake.Outcome) bool { return in.Method.Has("cool_oven", "slow") },
	},
	"pastry/heavy": {
		func(in bake.Input, _ *bake.Outcome) bool {
			return in.Method.Has("melted_fat") && in.Method.Has("laminated", "folded_turns", "flakes")
		},
		func(in bake.Input, _ *bake.Outcome) bool { return in.Method.Has("beaten_with_roller") },
		func(in bake.Input, _ *bake.Outcome) bool { return in.Method.Has("cool_oven", "slow") },
		func(_ bake.Input, out *bake.Outcome) bool { return out.Measures[bake.WorkedWater] > wetPaste },
	},
	"filling/oily": {
		func(in bake.Input, out *bake.Outcome) bool {
			return out.Measures[bake.FatShare] > oilyFat && out.Measures[bake.StarchShare] < noStarch
		},
	},
}

// coolC is where an oven is too cool for paste (judgement; see the ovens table).
const coolC = 165.0

func heat(m *formula.Method) float64 { return m.Bake.FirstC() }

// told is how a part as changed is gauged, with the mean shares it comes from.
func (g gauge) told(in bake.Input, k *bake.Kernel, o readings.Options) (float64, []float64) {
	if g.judged == "" {
		out := readings.LikelyReading(k)
		if g.in != "" {
			return out.Measures[g.measure], nil
		}
		n := 0.0
		for _, r := range g.risks {
			if r(in, &out) {
				n++
			}
		}
		return n, nil
	}
	shares := make([]float64, len(k.Textures))
	grains, n := 0.0, float64(max(1, o.N))
	readings.Each(k, o, func(out *bake.Outcome) {
		for t := range shares {
			shares[t] += out.Shares[t] / n
		}
		if g.curdle && out.Measures[bake.Saturation] > saturation {
			grains += 1 / n
		}
	})
	s := judge.Sum(k.Textures, shares)[g.judged]
	if g.curdle {
		s += (1 - s) * grains
	}
	return s, shares
}

// of is the texture's share in one reading.
func (g gauge) of(k *bake.Kernel) func(*bake.Outcome) float64 {
	var at []int
	for i, id := range k.Textures {
		if judge.ShownAs(id) == g.judged {
			at = append(at, i)
		}
	}
	return func(out *bake.Outcome) float64 {
		s := 0.0
		for _, i := range at {
			s += out.Shares[i]
		}
		return s
	}
}

// holds reports how much of the part some roles make up, of its total.
func holds(m *ratios.Mix, quantities ...ratios.Quantity) float64 {
	s := 0.0
	for _, q := range quantities {
		s += m[q]
	}
	if m[ratios.Total] <= 0 {
		return 0
	}
	return s / m[ratios.Total]
}
