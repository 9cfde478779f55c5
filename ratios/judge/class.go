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
// a part before a distance means anything.
const fewestShared = 2

// floor keeps a ratio of nothing from being infinitely far from a range.
const floor = .005

// pointWidth is how far either side of a single published formula counts as
// like it: a fifth.
const pointWidth = .2

// Distances measures how far a profile is from every class of its kind and
// era, nearest first: the mean square of the log excess outside the class's
// ranges, over the ratios both have. Equal distances go to the class that
// shares more ratios.
func Distances(kind formula.Kind, p *ratios.Profile, t *reference.Tables, era string) []ClassDistance {
	var out []ClassDistance
	for i := range t.Classes {
		c := &t.Classes[i]
		if c.Kind != string(kind) || c.Era != era {
			continue
		}
		if d, shared := distance(c, p, t); shared >= fewestShared {
			out = append(out, ClassDistance{Class: c, Distance: d, Shared: shared})
		}
	}
	slices.SortStableFunc(out, func(a, b ClassDistance) int {
		switch {
		case a.Distance != b.Distance:
			if a.Distance < b.Distance {
				return -1
			}
			return 1
		case a.Shared != b.Shared:
			return b.Shared - a.Shared
		}
		return strings.Compare(a.Class.ID, b.Class.ID)
	})
	return out
}

// distance of one class. Of several published ranges for one ratio the nearest
// counts, since sources of one class may disagree. Single formulas count all
// together: one odd formula among many must not make a class near everything.
func distance(c *reference.Class, p *ratios.Profile, t *reference.Tables) (mean float64, shared int) {
	sum := 0.0
	for i := range p.Ratios {
		r := &p.Ratios[i]
		v := r.Value.Likely.InexactFloat64()
		best, points, n := math.Inf(1), 0.0, 0.0
		for _, row := range t.RangesOf(c.ID) {
			switch {
			case row.Ratio != r.Row.ID:
			case row.Kind == "point":
				points += excess(v, row) * excess(v, row)
				n++
			default:
				best = min(best, excess(v, row)*excess(v, row))
			}
		}
		if n > 0 {
			best = min(best, points/n)
		}
		if !math.IsInf(best, 1) {
			shared++
			sum += best
		}
	}
	if shared == 0 {
		return math.Inf(1), 0
	}
	return sum / float64(shared), shared
}

// excess is how far, in logs, a figure lies outside a range.
func excess(v float64, row *reference.Range) float64 {
	low, high := row.Low.InexactFloat64(), row.High.InexactFloat64()
	if row.Kind == "point" {
		low, high = low*(1-pointWidth), high*(1+pointWidth)
	}
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
// hot.
func ClassOf(in bake.Input, p *ratios.Profile) *ClassFit {
	part, method, t := in.Weighed.Parts[in.Part].Of, &in.Method, in.Tables
	stands := part.Lay == "raised" || method.Has("hot_water")
	unfit := func(d ClassDistance) bool { return d.Class.Meant == "tough" && !stands }
	modern := slices.DeleteFunc(Distances(part.Kind, p, t, "modern"), unfit)
	period := slices.DeleteFunc(Distances(part.Kind, p, t, "period"), unfit)
	fit := &ClassFit{}
	if len(period) > 0 {
		fit.Period = &period[0]
	}
	if c, ok := t.Class(part.Class); ok {
		fit.Class, fit.Given = c, true
		fit.Distance, fit.Shared = distance(c, p, t)
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
