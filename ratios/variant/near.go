package variant

import (
	"math"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/reference"
	"assize/reference/fault"
)

// Nearest is what is published nearest to each part of a receipt.
type Nearest struct {
	Formula *formula.Formula
	Parts   []NearPart
}

// NearPart is what is nearest to one part.
type NearPart struct {
	Name   string
	Kind   formula.Kind
	Modern []NearClass // nearest first
	Period []NearClass
	Like   []NearFormula
}

// NearClass is a class with what keeps a part from it.
type NearClass struct {
	judge.ClassDistance
	// Off are the ratios outside the class's ranges.
	Off []Obstacle
	// Otherwise are the questions of the making the class answers otherwise:
	// fat, fire, air.
	Otherwise []string
}

// NearFormula is a published formula like the part.
type NearFormula struct {
	Published *reference.Published
	Texture   *reference.Texture // that its outcome counts as, nil when it is none
	Distance  float64
	Shared    int
}

// How many classes and formulas are named, and how many ratios a published
// formula must share with the part before it is held like it.
const (
	mostClasses  = 4
	mostFormulas = 5
	fewestAlike  = 3
)

// Near finds the classes and published formulas nearest to the parts of a
// formula.
func Near(j *judge.Judge, f *formula.Formula) (*Nearest, fault.List) {
	w, faults := weigh.Weigh(f, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	out := &Nearest{Formula: f}
	methods := receipt.NewMethodReader(j.Tables)
	for i := range f.Parts {
		p := &f.Parts[i]
		profile := ratios.ProfileOf(w, i, j.Tables, "")
		method := j.Input(w, i).Method
		one := NearPart{Name: p.Name, Kind: p.Kind}
		if bake.OfMeat(&w.Parts[i]) { // what is published here is sweet
			out.Parts = append(out.Parts, one)
			continue
		}
		for _, era := range []string{"modern", "period"} {
			list := judge.Distances(p.Kind, &profile, &method, j.Tables, era)
			var near []NearClass
			for _, d := range list[:min(len(list), mostClasses)] {
				n := nearClass(d, w, i, j.Tables)
				n.Otherwise = otherwiseMade(d.Class, &method, j.Tables)
				near = append(near, n)
			}
			if era == "modern" {
				one.Modern = near
			} else {
				one.Period = near
			}
		}
		one.Like = like(p.Kind, f.Title, &profile, &method, j.Tables, methods)
		out.Parts = append(out.Parts, one)
	}
	return out, nil
}

// nearClass tells what keeps a part from a class.
func nearClass(d judge.ClassDistance, w *weigh.Weighed, part int, t *reference.Tables) NearClass {
	n := NearClass{ClassDistance: d}
	profile := ratios.ProfileOf(w, part, t, "")
	for _, b := range boundsOf(d.Class, t, d.Class.Kind) {
		for i := range profile.Ratios {
			r := &profile.Ratios[i]
			if r.Row == b.ratio && !r.Open && !judge.Seasons(r) && !b.within(r.Of, r.To) {
				n.Off = append(n.Off, Obstacle{Ratio: b.ratio, Value: r.Value.Likely, Ranges: b.spans})
			}
		}
	}
	return n
}

// like finds the published formulas nearest to a part: by the mean square of
// the logs of what its ratios are to theirs, over the ratios both have, and
// with them of how it is made.
func like(kind formula.Kind, title string, profile *ratios.Profile, method *formula.Method, t *reference.Tables, methods *receipt.MethodReader) []NearFormula {
	var out []NearFormula
	for i := range t.Published {
		p := &t.Published[i]
		if p.Part != string(kind) || p.ID == title {
			continue
		}
		f, faults := file.Published(p, t)
		if len(faults) > 0 {
			continue // one of the person's own tables that cannot be read
		}
		w, faults := weigh.Weigh(f, t)
		if len(faults) > 0 {
			continue
		}
		other := ratios.ProfileOf(w, 0, t, "")
		m := methods.Read(f, &f.Parts[0])
		if d, shared := apart(profile, &other, method, &m, kind, t); shared >= fewestAlike {
			out = append(out, NearFormula{Published: p, Texture: outcomeOf(p, t), Distance: d, Shared: shared})
		}
	}
	slices.SortStableFunc(out, func(a, b NearFormula) int {
		if s := sign(a.Distance - b.Distance); s != 0 {
			return s
		}
		return strings.Compare(a.Published.ID, b.Published.ID)
	})
	return out[:min(len(out), mostFormulas)]
}

// otherwise is how far off a formula counts for being made otherwise, in logs:
// as for the distance of classes.
var otherwise = math.Log(1.5)

// apart is how far two formulas are from each other. A ratio only one of them
// has counts by how much of it there is, against a trace.
func apart(a, b *ratios.Profile, am, bm *formula.Method, kind formula.Kind, t *reference.Tables) (mean float64, shared int) {
	const trace = .01
	sum := 0.0
	for i := range a.Ratios {
		r := &a.Ratios[i]
		for k := range b.Ratios {
			o := &b.Ratios[k]
			if r.Row != o.Row || r.Open || o.Open || r.Of.IsZero() && o.Of.IsZero() {
				continue
			}
			scale := r.Row.Scale.InexactFloat64()
			x := math.Log(max(trace, r.Value.Likely.InexactFloat64()/scale) / max(trace, o.Value.Likely.InexactFloat64()/scale))
			sum += x * x
			shared++
		}
	}
	if shared == 0 {
		return math.Inf(1), 0
	}
	asked := 0
	for _, flags := range questions(kind, t) {
		said, told := false, false
		same := false
		for f := range flags {
			said = said || am.Has(f)
			told = told || bm.Has(f)
			same = same || am.Has(f) && bm.Has(f)
		}
		if said && told {
			asked++
			if !same {
				sum += otherwise * otherwise
			}
		}
	}
	return sum / float64(shared+asked), shared
}

// questions are what is asked of the making of a kind of part, with every flag
// that answers it.
func questions(kind formula.Kind, t *reference.Tables) map[string]map[formula.Flag]bool {
	out := map[string]map[formula.Flag]bool{}
	for i := range t.Classes {
		c := &t.Classes[i]
		if c.Kind != string(kind) {
			continue
		}
		for q, flags := range c.Made {
			if out[q] == nil {
				out[q] = map[formula.Flag]bool{}
			}
			for _, f := range flags {
				out[q][formula.Flag(f)] = true
			}
		}
	}
	return out
}

// outcomeOf is the texture a published outcome counts as, nil when it is none.
func outcomeOf(p *reference.Published, t *reference.Tables) *reference.Texture {
	for i := range t.Textures {
		if x := &t.Textures[i]; x.Kind == p.Part && slices.Contains(x.Outcomes, p.Outcome) {
			return x
		}
	}
	return nil
}
