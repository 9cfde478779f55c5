package variant

import (
	"math"

	"github.com/shopspring/decimal"

	"assize/ratios"
	"assize/reference"
)

// bound is a ratio with the ranges it serves in; within any of them will do,
// since sources of one class may disagree.
type bound struct {
	ratio *reference.Ratio
	spans []Range
	// of and to are what a gram of each item puts into the sides of the ratio.
	of, to   []decimal.Decimal
	ofF, toF []float64
}

// pointWidth is how far either side of a single published formula counts as
// like it, as in the distance of a class: a fifth.
var pointWidth = decimal.RequireFromString("0.2")

// boundsOf are the ranges of a class: its published ranges where a ratio has
// any, else its rules and single formulas, the latter a fifth either way.
func boundsOf(c *reference.Class, t *reference.Tables, kind string) []bound {
	if c == nil {
		return nil
	}
	var out []bound
	for i := range t.Ratios {
		row := &t.Ratios[i]
		applies := false
		for _, k := range row.Kinds {
			applies = applies || k == kind
		}
		if !applies {
			continue
		}
		var ranges, others []Range
		for j := range t.Ranges {
			r := &t.Ranges[j]
			if r.Class != c.ID || r.Ratio != row.ID {
				continue
			}
			switch r.Kind {
			case "range":
				ranges = append(ranges, Range{r.Low, r.High})
			case "point":
				others = append(others, Range{r.Low.Sub(r.Low.Mul(pointWidth)), r.High.Add(r.High.Mul(pointWidth))})
			default:
				others = append(others, Range{r.Low, r.High})
			}
		}
		if len(ranges) == 0 {
			ranges = others
		}
		if len(ranges) > 0 {
			out = append(out, bound{ratio: row, spans: ranges})
		}
	}
	return out
}

// sides are the exact sums of the two sides of a bound at a point.
func (s *search) sides(b *bound, p *point) (of, to decimal.Decimal) {
	for i, g := range s.gramsAt(p) {
		if !g.IsZero() {
			of = of.Add(b.of[i].Mul(g))
			to = to.Add(b.to[i].Mul(g))
		}
	}
	return of, to
}

// within reports whether a ratio serves, exactly. One with nothing to divide by
// is not held against its range, as in a check.
func (b *bound) within(of, to decimal.Decimal) bool {
	if !to.IsPositive() {
		return true
	}
	for _, r := range b.spans {
		if !of.LessThan(r.Low.Mul(to)) && !of.GreaterThan(r.High.Mul(to)) {
			return true
		}
	}
	return false
}

// excess is how far, in logs, a ratio lies outside the nearest of its ranges.
func (b *bound) excess(of, to float64) float64 {
	if to <= 0 {
		return 0
	}
	const floor = .005
	v := of / to
	best := math.Inf(1)
	for _, r := range b.spans {
		low, high := r.Low.InexactFloat64(), r.High.InexactFloat64()
		switch {
		case v < low:
			best = min(best, math.Log(max(low, floor)/max(v, floor)))
		case v > high:
			best = min(best, math.Log(max(v, floor)/max(high, floor)))
		default:
			return 0
		}
	}
	return best
}

// weighIn fills in what each item of the part puts into the bound.
func (b *bound) weighIn(s *search) {
	for i := range s.in.Weighed.Parts[s.in.Part].Items {
		it := &s.in.Weighed.Parts[s.in.Part].Items[i]
		of, to := ratios.Counts(it, b.ratio)
		b.of, b.to = append(b.of, of), append(b.to, to)
		b.ofF, b.toF = append(b.ofF, of.InexactFloat64()), append(b.toF, to.InexactFloat64())
	}
}
