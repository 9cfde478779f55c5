package judge

import (
	"math"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios"
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

// distance of one class. Of several rows for one ratio the nearest counts:
// published ranges of one class may disagree.
func distance(c *reference.Class, p *ratios.Profile, t *reference.Tables) (mean float64, shared int) {
	sum := 0.0
	for i := range p.Ratios {
		r := &p.Ratios[i]
		best := math.Inf(1)
		for j := range t.Ranges {
			row := &t.Ranges[j]
			if row.Class == c.ID && row.Ratio == r.Row.ID {
				best = min(best, excess(r.Value.Likely.InexactFloat64(), row))
			}
		}
		if !math.IsInf(best, 1) {
			shared++
			sum += best * best
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

// classOf fits a part to its class: the one the receipt names, else the
// nearest.
func classOf(part *formula.Part, p *ratios.Profile, t *reference.Tables) *ClassFit {
	modern := Distances(part.Kind, p, t, "modern")
	period := Distances(part.Kind, p, t, "period")
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

// runnersUp is how many other near classes are named.
const runnersUp = 3
