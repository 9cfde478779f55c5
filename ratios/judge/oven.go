package judge

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/oven"
	"assize/reference"
)

// Baking is the oven a part wants and how long it takes.
type Baking struct {
	// Class is the family whose heat is told, nil when none is near; Says is
	// that heat in words, and Wants in degrees, in the order it is let fall.
	Class *reference.Class
	Says  string
	Wants []oven.Heat
	// At is the heat the time is reckoned for, C: the book's own, else the
	// class's; nothing when neither is told.
	At     oven.Range
	AtBook bool
	// Depth of the mixture, cm; nothing when no dish is known.
	Depth oven.Range
	Bath  bool
	SetC  oven.Range
	// Bake is the part in its dish, its oven and depth left open; Time is how
	// long it takes in the oven At, and Today in what the class wants. Nothing
	// when depth or heat is not known.
	Bake        oven.Bake
	Time, Today oven.Minutes
	// Book is the receipt's own time, minutes; nothing when it gives none.
	Book oven.Range
	// Base is the chance that the paste under it bakes through, by what the dish
	// stands on; nil where there is no paste. Only what may be advised for the
	// dish is told of.
	Base []Through
}

// Through is the chance that a base bakes through on a floor.
type Through struct {
	On     oven.Floor
	Chance float64
}

// said are the heats of the receipt's own words: of its oven, else of its
// bake, else of the sentences of its steps that name the oven.
func said(f *formula.Formula, t *reference.Tables) []oven.Heat {
	when := oven.When{Year: f.Year, Place: f.Place}
	for _, words := range []string{f.Oven, f.Bake} {
		if heats := oven.Read(words, t, when); len(heats) > 0 {
			return heats
		}
	}
	for i := range f.Parts {
		for _, step := range f.Parts[i].Steps {
			for sentence := range strings.SplitSeq(step, ".") {
				if at := aroundOven(sentence); at != "" {
					if heats := oven.Read(at, t, when); len(heats) > 0 {
						return heats
					}
				}
			}
		}
	}
	return nil
}

// aroundOven is what a sentence says just before and after the word oven,
// nothing when it has none.
func aroundOven(sentence string) string {
	words := strings.Fields(sentence)
	at := slices.IndexFunc(words, func(w string) bool { return strings.HasPrefix(strings.ToLower(w), "oven") })
	if at < 0 {
		return ""
	}
	const before, after = 4, 8
	return strings.Join(words[max(0, at-before):min(len(words), at+1+after)], " ")
}

// rolesOf are the roles of everything in a part.
func rolesOf(in *bake.Input) []string {
	var out []string
	for _, it := range in.Weighed.Parts[in.Part].Items {
		out = append(out, it.Ingredient.Roles...)
	}
	return out
}

// near is the class a part may be told the heat and the doneness of: the one
// it names, else one it is like.
func near(fit *ClassFit) *reference.Class {
	if fit == nil || !fit.Given && fit.Distance > likeEnough {
		return nil
	}
	return fit.Class
}

// likeEnough is the distance to which a class is like a part: a third outside
// its ranges on the whole.
const likeEnough = .1

// doneness is how part in is known to be done.
func doneness(in *bake.Input, p *Part) oven.Doneness {
	var names []string
	if c := near(p.Class); c != nil {
		names = append(names, c.ID, c.Name)
	}
	if !bake.FireOf(&in.Method).Stove { // a filling boiled on the stove is not done as the tart of its title is
		names = append(names, in.Weighed.Formula.Title, p.Name)
	}
	return oven.Done(in.Tables, p.Kind, rolesOf(in), names...)
}

// Pastes under a filling, cm: a lining and the dish it is in.
const (
	liningCM = .4
	tinCM    = .1
	dishCM   = .6
)

// baking is what the oven has to do with a part, nil when nothing bakes it.
func (j *Judge) baking(in *bake.Input, p *Part, heats []oven.Heat, filling *bake.Input) *Baking {
	f := in.Weighed.Formula
	fire := bake.FireOf(&in.Method)
	if fire.Stove || !fire.Baked || p.Kind == formula.Sauce || !cooked(f, in) {
		return nil
	}
	b := &Baking{Bath: fire.Bath, SetC: p.Done.SetC()}
	if c := near(p.Class); c != nil && c.Heat != "" {
		b.Class, b.Says = c, c.Heat
		b.Wants = Wants(c.Heat, in.Tables)
	}
	switch {
	case len(heats) > 0 && !heats[0].C.IsZero():
		b.At, b.AtBook = heats[0].C, true
	case len(b.Wants) > 0:
		b.At = b.Wants[0].C
	}
	if in.Method.Bake.Minutes > 0 {
		for _, s := range in.Method.Bake.Stages {
			b.Book.Low += s.LowMinutes
			b.Book.High += s.HighMinutes
		}
		b.Book.Likely = in.Method.Bake.Minutes
	}
	if p.Kind == formula.Pastry {
		b.Base = j.base(in, p, b, filling)
		b.Book = oven.Range{}
		return b
	}
	b.Depth, b.Bake = j.Depth, j.bakeOf(in, p, b)
	if !b.At.IsZero() {
		b.Time = b.In(b.At)
	}
	if len(b.Wants) > 0 {
		b.Today = b.In(b.Wants[0].C)
	}
	return b
}

// boil is under what heat, C, degrees in a class's words are no oven's but
// those at the centre.
const boil = 100

// Wants are the degrees of an oven in a class's words, each told once: what
// stands in brackets behind it is the same heat in the other scale.
func Wants(says string, t *reference.Tables) []oven.Heat {
	var out []oven.Heat
	if strings.Contains(says, "deep fat") {
		return nil
	}
	for _, h := range oven.Read(says, t, oven.When{}) {
		same := len(out) > 0 && math.Abs(out[len(out)-1].C.Likely-h.C.Likely) < sameHeat
		if h.Sign == oven.Degrees && h.C.Likely >= boil && !same {
			out = append(out, h)
		}
	}
	return out
}

// sameHeat is how near two heats are, C, that are one in two scales, rounded
// each by itself.
const sameHeat = 8.0

// bakeOf is a part as it goes into the oven.
func (j *Judge) bakeOf(in *bake.Input, p *Part, b *Baking) oven.Bake {
	o := oven.Bake{
		Set: b.SetC.Likely, Bath: b.Bath, Width: j.Width,
		Batter: p.Kind == formula.Cake || p.Kind == formula.Batter || p.Kind == formula.Bread,
		Start:  start(&in.Method), Wall: tinCM,
	}
	if d := p.Measures[bake.Density.String()]; d.Likely > 0 {
		o.Density = d.Likely
	}
	if slices.ContainsFunc(in.Weighed.Formula.Parts, func(x formula.Part) bool { return x.Kind == formula.Pastry }) {
		o.Paste = liningCM
	}
	if j.thick(in.Weighed.Formula) {
		o.Wall = dishCM
	}
	return o
}

// In is how long the part takes over a range of ovens and over the range of its
// depth; nothing when its depth is not known.
func (b *Baking) In(heat oven.Range) oven.Minutes {
	if b.Depth.IsZero() {
		return oven.Minutes{}
	}
	return b.Bake.Over(heat, b.Depth)
}

// Dish is the receipt as something to go into a falling oven: the part that
// the oven must bake through, at the heat the book's own words ask for, or
// else the class's. It is false, with the reason, for what is no dish or tells
// no heat.
func (r *Report) Dish() (d oven.Dish, why string, ok bool) {
	var of *Part
	for i := range r.Parts {
		if p := &r.Parts[i]; p.Baking != nil && p.Kind != formula.Pastry && (of == nil || p.Kind == formula.Filling) {
			of = p
		}
	}
	switch {
	case of == nil && len(r.Parts) == 1 && r.Parts[0].Kind == formula.Pastry:
		return d, "a paste by itself, baked with what goes into it", false
	case of == nil && len(r.Parts) > 0 && r.Parts[0].Baking != nil:
		return d, "only its paste is baked, empty", false
	case of == nil:
		return d, "nothing in it is baked", false
	case of.Baking.At.IsZero():
		return d, "neither its words nor its class tell a heat", false
	}
	b := of.Baking
	d = oven.Dish{Name: r.Formula.Title, Kind: string(of.Kind), C: b.At}
	d.Takes = func(c float64) oven.Minutes {
		if m := b.In(oven.Range{Low: c, Likely: c, High: c}); m.Never || !m.IsZero() {
			return m
		}
		if !b.Book.IsZero() {
			return oven.Minutes{Range: b.Book}
		}
		if of.Done.Set != nil {
			m := of.Done.Set.Minutes
			return oven.Minutes{Range: oven.Range{Low: m.Low.InexactFloat64(), Likely: m.Likely.InexactFloat64(), High: m.High.InexactFloat64()}}
		}
		return oven.Minutes{}
	}
	return d, "", true
}

// warmStart is what hot milk on eggs comes to, C (130 to 150 F as cooks
// measured it).
const warmStart = 60.0

// start is the heat a mixture goes in at, C. Milk heated by itself goes in warm
// unless it is left to cool.
func start(m *formula.Method) float64 {
	if m.Has("milk_on_egg", "on_heat", "warm_filling") || m.Has("scalded") && !m.Has("cooled") {
		return warmStart
	}
	return 0
}

// thick reports a dish of earthenware, china or thick glass.
func (j *Judge) thick(f *formula.Formula) bool {
	return slices.ContainsFunc(wallsOf(f, j.Tables), func(w string) bool { return w == "earthenware" || w == "china" || w == "glass" })
}

// readied are the flags of a case made ready for a wet filling.
var readied = []formula.Flag{"blind_baked", "part_baked", "baked_case", "egg_wash_inside"}

// base is the chance that a paste bakes through under its filling.
func (j *Judge) base(in *bake.Input, p *Part, b *Baking, filling *bake.Input) []Through {
	if filling == nil || p.Lay != "" && p.Lay != "lining" && p.Lay != "lining and lid" && p.Lay != "patty" {
		return nil
	}
	k, err := bake.Compile(*filling)
	if err != nil {
		return nil // the filling's own fault, told with the filling
	}
	mix := k.LikelyMix()
	set := in.Method.Has(readied...) || filling.Method.Has(readied...)
	base := oven.Base{
		Raw: !set, Sealed: set, Oven: b.At.Likely, Depth: j.Depth.Likely, ColdDish: j.thick(in.Weighed.Formula),
		Flaky: p.Measures[bake.FlakyIndex.String()].Likely >= flakyFat,
	}
	if mix[ratios.Total] > 0 {
		base.Wet = 100 * mix[ratios.Water] / mix[ratios.Total]
	}
	floors := oven.Floors
	if base.ColdDish {
		floors = floors[:1] // a hot tray or stone under a cold dish is never advised
	}
	var out []Through
	for _, on := range floors {
		base.On = on
		out = append(out, Through{on, base.Through()})
	}
	return out
}

// throughEvidence puts the chance of a base beside the finding that it may
// stay soggy.
func throughEvidence(b *Baking) (Evidence, bool) {
	if b == nil || len(b.Base) == 0 {
		return Evidence{}, false
	}
	var said []string
	for _, t := range b.Base {
		said = append(said, fmt.Sprintf("%s on %s", tenthsOf(t.Chance), t.On))
	}
	return Evidence{
		What: "that the base bakes through", Value: strings.Join(said, ", "), Layer: LayerMechanism, Confidence: "low",
	}, true
}

// tenthsOf is a chance in tenths, never none and never all.
func tenthsOf(chance float64) string {
	return fmt.Sprintf("about %d in 10", min(9, max(1, int(math.Round(10*chance)))))
}

// overshoot takes what the edge of a deep filling is heated beyond its centre
// off the room before it curdles, and warns where nothing is left of it. It
// moves no share: of the published formulas too few name a deep dish to tell.
func (j *Judge) overshoot(p *Part) (Finding, bool) {
	b := p.Baking
	name := bake.CurdleMargin.String()
	m, ok := p.Measures[name]
	if !j.Rules.Overshoot || b == nil || !ok || p.Kind != formula.Filling {
		return Finding{}, false
	}
	by := oven.Range{Low: oven.Overshoot(b.Depth.Low), Likely: oven.Overshoot(b.Depth.Likely), High: oven.Overshoot(b.Depth.High)}
	if by.High == 0 {
		return Finding{}, false
	}
	before := m.Likely
	m.Low, m.Likely, m.High = m.Low-by.High, m.Likely-by.Likely, m.High-by.Low
	p.Measures[name] = m
	if before < 0 || m.Likely >= 0 {
		return Finding{}, false
	}
	return Finding{
		Code: "heat-care", Part: p.Name, Share: HeatFrom,
		Says: "so deep, its edge may curdle before the middle is set: bake it shallower, or slower",
		Because: []Evidence{{
			What: "how far the edge runs ahead of the middle", Value: fmt.Sprintf("%.0f C more at %.1f cm deep", by.Likely, b.Depth.Likely),
			Limit: "from about 3 cm", Layer: LayerMechanism, Confidence: "low",
		}},
	}, true
}

// fillingOf is the input of the filling that part i is laid under, nil when
// there is none.
func fillingOf(inputs []bake.Input) *bake.Input {
	for i := range inputs {
		if inputs[i].Weighed.Formula.Parts[inputs[i].Part].Kind == formula.Filling {
			return &inputs[i]
		}
	}
	return nil
}

// ovens works out, for every part, its doneness and its baking, and puts the
// chance of the base beside what warns of it.
func (j *Judge) ovens(r *Report, inputs []bake.Input) {
	r.Said = said(r.Formula, j.Tables)
	filling := fillingOf(inputs)
	for i := range r.Parts {
		p := &r.Parts[i]
		p.Done = doneness(&inputs[i], p)
		p.Baking = j.baking(&inputs[i], p, r.Said, filling)
		if f, ok := j.overshoot(p); ok {
			r.Findings = append(r.Findings, f)
		}
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Code != "soggy-base" && !f.Base {
			continue
		}
		for k := range r.Parts {
			if e, ok := throughEvidence(r.Parts[k].Baking); ok && r.Parts[k].Name == f.Part {
				f.Because = append(f.Because, e)
			}
		}
	}
}
