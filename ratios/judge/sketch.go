package judge

import (
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/readings"
)

// Sketch is a report without its readings: what each part is, how it is known
// to be done, what oven it wants; what the steps name and no line weighs; and
// the cautions, which are on whatever is made of a receipt. It tells nothing of
// textures.
func (j *Judge) Sketch(w *weigh.Weighed, inputs []bake.Input) *Report {
	f := w.Formula
	r := &Report{Formula: f, Weighed: w, Notes: w.Notes, Said: said(f, j.Tables)}
	for i := range inputs {
		of := w.Parts[i].Of
		p := Part{
			Name: of.Name, Kind: of.Kind, From: of.From, Lay: of.Lay,
			Profile: ratios.ProfileOf(w, i, j.Tables, j.Basis), Measures: map[string]readings.Span{},
		}
		p.Class = ClassOf(inputs[i], &p.Profile)
		p.Done = doneness(&inputs[i], &p)
		p.Baking = j.baking(&inputs[i], &p, r.Said, nil)
		r.Parts = append(r.Parts, p)
	}
	r.Findings = append(Mentions(f, j.Tables), cautions(w, inputs, r.Parts, j.Tables)...)
	return r
}

// Near is the class a part is told the usual heat of: the one its page names,
// else one it is like; nil when nothing is.
func (p *Part) Near() (class string, given bool) {
	if c := near(p.Class); c != nil {
		return c.ID, p.Class.Given
	}
	return "", false
}
