package judge

import (
	"math"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/reference"
)

// fewestShared is the least number of ratios a class must have in common with
// a part before a distance means anything, those counted that the receipt
// leaves open.
const fewestShared = 2

// floor keeps a ratio of nothing from being infinitely far from a range.
const floor = .005

// pointWidth is how far either side of a single published formula counts as
// like it: a fifth.
const pointWidth = .2

// otherwiseMade is how far off a class counts for being made otherwise than the
// receipt is, in logs: as far as for a ratio half as large again as its range.
var otherwiseMade = math.Log(1.5)

// Distances measures how far a part is from every class of its kind and era,
// nearest first: the mean square of the log excess outside the class's ranges,
// over the ratios both have, and with them of how it is made, over what both
// the class and the words of the receipt answer. A part made as the class is
// comes nearer by it, one made otherwise further off. Equal distances go to the
// class made most like it, then to the one that shares more ratios. Ratios that
// count what the receipt gives no amount of tell nothing, and are left out.
func Distances(kind formula.Kind, p *ratios.Profile, m *formula.Method, t *reference.Tables, era string) []ClassDistance {
	var out []ClassDistance
	for i := range t.Classes {
		c := &t.Classes[i]
		if c.Kind != string(kind) || c.Era != era {
			continue
		}
		if d, shared, open := distance(c, p, m, t); shared > 0 && shared+open >= fewestShared {
			out = append(out, ClassDistance{Class: c, Distance: d, Shared: shared, Made: Made(c, m, t)})
		}
	}
	slices.SortStableFunc(out, func(a, b ClassDistance) int {
		switch {
		case a.Distance != b.Distance:
			if a.Distance < b.Distance {
				return -1
			}
			return 1
		case a.alike() != b.alike():
			return b.alike() - a.alike()
		case a.Shared != b.Shared:
			return b.Shared - a.Shared
		}
		return strings.Compare(a.Class.ID, b.Class.ID)
	})
	return out
}

// distance of one class. Of several published ranges for one ratio the nearest
// counts, since sources of one class may disagree. Single formulas count all
// together; see Middle.
func distance(c *reference.Class, p *ratios.Profile, m *formula.Method, t *reference.Tables) (mean float64, shared, open int) {
	sum := 0.0
	for i := range p.Ratios {
		r := &p.Ratios[i]
		if r.Open || Seasons(r) {
			if slices.ContainsFunc(t.RangesOf(c.ID), func(row *reference.Range) bool { return row.Ratio == r.Row.ID }) {
				open++
			}
			continue
		}
		v := r.Value.Likely.InexactFloat64()
		best := math.Inf(1)
		var points []float64
		for _, row := range t.RangesOf(c.ID) {
			switch {
			case row.Ratio != r.Row.ID:
			case row.Kind == "point":
				points = append(points, row.Typical.InexactFloat64())
			default:
				x := excess(v, row.Low.InexactFloat64(), row.High.InexactFloat64())
				best = min(best, x*x)
			}
		}
		// Single formulas say nothing of what they have not.
		if low, high, ok := Middle(points); ok && !r.Of.IsZero() {
			x := excess(v, low, high)
			best = min(best, x*x)
		}
		if !math.IsInf(best, 1) {
			shared++
			sum += best
		}
	}
	if shared == 0 {
		return math.Inf(1), 0, open
	}
	asked := 0
	for _, same := range Made(c, m, t) {
		asked++
		if !same {
			sum += otherwiseMade * otherwiseMade
		}
	}
	return sum / float64(shared+asked), shared, open
}

// Made tells, for each question of the making that both a class and the words
// of a receipt answer, whether they answer it alike. What is an answer is
// what any class of the kind gives to the question.
func Made(c *reference.Class, m *formula.Method, t *reference.Tables) map[string]bool {
	out := map[string]bool{}
	if m == nil {
		return out
	}
	for question, own := range c.Made {
		said := false
		for i := range t.Classes {
			o := &t.Classes[i]
			said = said || o.Kind == c.Kind && has(m, o.Made[question])
		}
		if said {
			out[question] = has(m, own)
		}
	}
	return out
}

// alike is how many questions of the making are answered alike.
func (d *ClassDistance) alike() int {
	n := 0
	for _, same := range d.Made {
		if same {
			n++
		}
	}
	return n
}

func has(m *formula.Method, flags []string) bool {
	return slices.ContainsFunc(flags, func(f string) bool { return m.Has(formula.Flag(f)) })
}

// Seasons reports a ratio of salt where none is named: most books leave it to
// the cook, and its want tells nothing of the class.
func Seasons(r *ratios.Ratio) bool {
	return r.Of.IsZero() && slices.ContainsFunc(r.Row.Of, func(t reference.Term) bool { return strings.HasPrefix(t.Quantity, "salt") })
}

// Middle is the range that single formulas come to, a fifth either way: of many
// the middle half, so that one odd formula among them does not make a class
// near everything.
func Middle(points []float64) (low, high float64, ok bool) {
	n := len(points)
	if n == 0 {
		return 0, 0, false
	}
	slices.Sort(points)
	quarter := (n - 1) / 4
	return points[quarter] * (1 - pointWidth), points[n-1-quarter] * (1 + pointWidth), true
}

// excess is how far, in logs, a figure lies outside a range.
func excess(v, low, high float64) float64 {
	switch {
	case v < low:
		return math.Log(max(low, floor) / max(v, floor))
	case v > high:
		return math.Log(max(v, floor) / max(high, floor))
	}
	return 0
}

// ClassOf fits a part to its class: the one the receipt names, else the
// nearest. Proportions alone cannot tell a standing paste, which is meant hard,
// from a short one; it is thought of only where the paste is raised or wetted
// hot. A filling of meat is of no class of sweet fillings.
func ClassOf(in bake.Input, p *ratios.Profile) *ClassFit {
	part, method, t := in.Weighed.Parts[in.Part].Of, &in.Method, in.Tables
	meat := bake.OfMeat(&in.Weighed.Parts[in.Part])
	stands := part.Lay == "raised" || method.Has("hot_water")
	unfit := func(d ClassDistance) bool { return d.Class.Meant == "tough" && !stands || meat }
	modern := slices.DeleteFunc(Distances(part.Kind, p, method, t, "modern"), unfit)
	period := slices.DeleteFunc(Distances(part.Kind, p, method, t, "period"), unfit)
	fit := &ClassFit{}
	if len(period) > 0 {
		fit.Period = &period[0]
	}
	if c, ok := t.Class(part.Class); ok {
		fit.Class, fit.Given = c, true
		fit.Distance, fit.Shared, _ = distance(c, p, method, t)
		if fit.Shared == 0 {
			fit.Distance = 0
		}
		for _, d := range modern {
			if d.Class.ID != c.ID && len(fit.Others) < runnersUp {
				fit.Others = append(fit.Others, d)
			}
		}
		return fit
	}
	if len(modern) == 0 {
		return nil
	}
	fit.Class, fit.Distance, fit.Shared = modern[0].Class, modern[0].Distance, modern[0].Shared
	fit.Others = modern[1:min(len(modern), 1+runnersUp)]
	return fit
}

// Ready is the input with the class whose habits are taken for what the
// receipt leaves unsaid of its method. Where it says how it is mixed the class
// changes nothing, and none is looked for.
func (j *Judge) Ready(in bake.Input) bake.Input {
	in.Class = nil
	if in.Silent || bake.Unsaid(in.Weighed.Parts[in.Part].Of, &in.Method) {
		p := ratios.ProfileOf(in.Weighed, in.Part, j.Tables, "")
		in.Class = likelyMeant(ClassOf(in, &p))
	}
	return in
}

// runnersUp is how many other near classes are named.
const runnersUp = 3
