package explain

import (
	"assize/formula"
	"assize/formula/bench"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
	"assize/reference/fault"
)

// Bake is a receipt as it was made, ready to be explained.
type Bake struct {
	Record *bench.Record // nil when there is none: then it is the page that is explained
	Report *judge.Report // as it was made
	// Written is the report on the receipt as it is written; the same as Report
	// when there is no record.
	Written *judge.Report
	Made    *bench.Made // nil when there is no record
	// Meant is how the dish should be, when a taster knows; it goes before what
	// the record and the receipt say.
	Meant string

	judge  *judge.Judge
	inputs []bake.Input
}

// Receipt makes a receipt ready, when nothing is known of how it was made.
func Receipt(j *judge.Judge, f *formula.Formula) (*Bake, fault.List) {
	w, faults := weigh.Weigh(f, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	b := &Bake{judge: j}
	for i := range w.Parts {
		b.inputs = append(b.inputs, j.Input(w, i))
	}
	if b.Report, faults = j.CheckWeighed(w, b.inputs); len(faults) > 0 {
		return nil, faults
	}
	b.Written = b.Report
	b.classes()
	return b, nil
}

// Record makes a bench record ready.
func Record(j *judge.Judge, r *bench.Record) (*Bake, fault.List) {
	written, faults := Receipt(j, r.Formula)
	if len(faults) > 0 {
		return nil, faults
	}
	made, faults := r.Made(j.Tables, receipt.NewMethodReader(j.Tables))
	if len(faults) > 0 {
		return nil, faults
	}
	b := &Bake{Record: r, Written: written.Report, Made: made, judge: j}
	did := make([][]string, len(r.Parts))
	for i := range r.Parts {
		did[i] = r.Parts[i].Done
	}
	for i := range made.Weighed.Parts {
		in := j.Input(made.Weighed, i)
		in.Method = made.Methods[i]
		in.Silent = bake.Unsaid(made.Weighed.Parts[i].Of, &made.Written[i])
		b.inputs = append(b.inputs, in)
	}
	if b.Report, faults = j.CheckMade(made.Weighed, b.inputs, did); len(faults) > 0 {
		return nil, faults
	}
	b.classes()
	return b, nil
}

// classes puts to each part the class whose habits hold where it is silent.
func (b *Bake) classes() {
	for i := range b.inputs {
		b.inputs[i] = b.judge.Ready(b.inputs[i])
	}
}

// Formula is the receipt.
func (b *Bake) Formula() *formula.Formula { return b.Report.Formula }

// Tables are the tables it is judged by.
func (b *Bake) Tables() *reference.Tables { return b.judge.Tables }

// Open are what the record leaves in doubt of a part, in the words of the
// doubt; everything the receipt leaves open when there is no record.
func (b *Bake) Open(part int) []string {
	var out []string
	for _, s := range b.openSlots(part) {
		out = append(out, b.Report.Weighed.Unknowns[s].Words)
	}
	return out
}

// openSlots are the unknowns of the scales that some unweighed item of the part
// hangs on. They stand first among a kernel's slots.
func (b *Bake) openSlots(part int) []int {
	w := b.Report.Weighed
	var out []int
	for u := range w.Unknowns {
		for i := range w.Parts[part].Items {
			it := &w.Parts[part].Items[i]
			if it.Open(w.Unknowns) && it.Hangs(u) && w.Unknowns[u].Open() {
				out = append(out, u)
				break
			}
		}
	}
	return out
}

// Prediction is how a part was expected to turn out.
type Prediction struct {
	Part      string
	Kind      formula.Kind
	Likeliest string // texture id
	Shares    []judge.Share
}

// Predictions are those of the parts whose textures are judged.
func Predictions(r *judge.Report) []Prediction {
	var out []Prediction
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.Texture == nil {
			continue
		}
		x := Prediction{Part: p.Name, Kind: p.Kind, Likeliest: p.Texture.Likeliest}
		x.Shares = append(x.Shares, p.Texture.Shares...)
		out = append(out, x)
	}
	return out
}

// options are the draws of the bake's receipt.
func (b *Bake) options() readings.Options { return b.judge.Options(b.Report.Formula) }
