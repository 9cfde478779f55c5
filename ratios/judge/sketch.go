package judge

import (
	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/dish"
	"assize/ratios/practice"
	"assize/ratios/readings"
)

// Sketch is a report without its readings: what each part is, how it is known
// to be done, what oven it wants, how it lies in its dish by the likeliest
// reading; what the steps name and no line weighs; and the cautions, which are
// on whatever is made of a receipt. It tells nothing of textures.
func (j *Judge) Sketch(w *weigh.Weighed, inputs []bake.Input, d *practice.Dish) *Report {
	f := w.Formula
	r := &Report{Formula: f, Weighed: w, Notes: w.Notes, Said: said(f, j.Tables)}
	for i := range inputs {
		r.Parts = append(r.Parts, j.sketched(w, &inputs[i]))
	}
	r.inShell, r.stands = j.inShell(f, inputs), standing(d, inputs)
	if load := r.LoadOf(); f.Dish != "" && (known(load.Filling) || load.Paste.Likely > 0) {
		if found, err := dish.Called(j.Tables, f.Dish, KitchenOf(f)); err == nil {
			fit := dish.Into(found.Dish, max(found.Count, found.Number(load)), load)
			r.InDish = &fit
		}
	}
	own := j.inDish(r)
	for i := range r.Parts {
		p := &r.Parts[i]
		p.Done = doneness(&inputs[i], p)
		p.Baking = own.baking(&inputs[i], p, r.Said, nil)
	}
	r.meets(d, j.Tables)
	r.Findings = append(j.mentions(f), cautions(r, inputs, j.Tables)...)
	return r
}

// sketched is one part of a sketch. Its profile is worked out only where a class
// must be found by it.
func (j *Judge) sketched(w *weigh.Weighed, in *bake.Input) Part {
	of := w.Parts[in.Part].Of
	p := Part{
		Name: of.Name, Kind: of.Kind, From: of.From, Lay: of.Lay,
		Profile: ratios.Profile{Total: w.Parts[in.Part].Total(w.Unknowns)}, Measures: map[string]readings.Span{},
	}
	switch c, given := j.Tables.Class(of.Class); {
	case given:
		p.Class = &ClassFit{Class: c, Given: true}
	case of.Kind != formula.Pastry:
		p.Profile = ratios.ProfileOf(w, in.Part, j.Tables, j.Basis)
		p.Class = ClassOf(*in, &p.Profile)
	}
	if !p.Profile.Total.Likely.GreaterThan(decimal.Zero) {
		return p
	}
	k, err := bake.Compile(*in)
	if err != nil {
		return p // a check tells what is wrong with it
	}
	out := readings.LikelyReading(k)
	for _, m := range []bake.Measure{bake.Volume, bake.Risen, bake.Density} {
		if v := out.Measures[m]; v > 0 {
			p.Measures[m.String()] = readings.Span{Low: v, Likely: v, High: v}
		}
	}
	return p
}

// Near is the class a part is told the usual heat of: the one its page names,
// else one it is like; nil when nothing is.
func (p *Part) Near() (class string, given bool) {
	if c := near(p.Class); c != nil {
		return c.ID, p.Class.Given
	}
	return "", false
}
