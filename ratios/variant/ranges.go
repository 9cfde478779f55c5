package variant

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios"
	"assize/reference"
)

// bound is a ratio with the ranges it serves in; within any of them will do,
// since sources of one class may disagree.
type bound struct {
	ratio *reference.Ratio
	spans []Range
	// single marks ranges about single formulas, which say nothing of what they
	// have not.
	single bool
	// open are the items it counts that the book gives no amount of: until they
	// are measured the ratio is not held against its range.
	open []int
	// of and to are what a gram of each item puts into the sides of the ratio.
	of, to   []decimal.Decimal
	ofF, toF []float64
}

// pointWidth is how far either side of a single published formula counts as
// like it, as in the distance of a class: a fifth.
var pointWidth = decimal.RequireFromString("0.2")

// boundsOf are the ranges of a class: its published ranges where a ratio has
// any, else its rules. A class known by single formulas alone is held to what they
// come to.
func boundsOf(c *reference.Class, t *reference.Tables, kind string) []bound {
	if c == nil {
		return nil
	}
	of := func(row *reference.Ratio, kind string) []Range {
		var out []Range
		for i := range t.Ranges {
			r := &t.Ranges[i]
			if r.Class != c.ID || r.Ratio != row.ID || r.Kind != kind {
				continue
			}
			one := Range{r.Low, r.High}
			if kind == "point" || !slices.ContainsFunc(out, func(o Range) bool { return o.Low.Equal(one.Low) && o.High.Equal(one.High) }) {
				out = append(out, one)
			}
		}
		if kind == "point" && len(out) > 0 {
			return []Range{middle(out)}
		}
		return out
	}
	single := !slices.ContainsFunc(t.Ranges, func(r reference.Range) bool { return r.Class == c.ID && r.Kind != "point" })
	var out []bound
	for i := range t.Ratios {
		row := &t.Ratios[i]
		if !slices.Contains(row.Kinds, kind) {
			continue
		}
		spans := of(row, "range")
		if len(spans) == 0 {
			spans = of(row, "rule")
		}
		if single {
			spans = of(row, "point")
		}
		if len(spans) > 0 {
			out = append(out, bound{ratio: row, spans: spans, single: single})
		}
	}
	return out
}

// middle is the range that single formulas come to, as in the distance of a
// class: of many the middle half, a fifth either way.
func middle(points []Range) Range {
	slices.SortFunc(points, func(a, b Range) int { return a.Low.Cmp(b.Low) })
	quarter := (len(points) - 1) / 4
	low, high := points[quarter].Low, points[len(points)-1-quarter].High
	return Range{low.Sub(low.Mul(pointWidth)), high.Add(high.Mul(pointWidth))}
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

// within reports whether a ratio is within its ranges at a point, exactly.
func (s *search) within(b *bound, p *point) bool {
	for _, i := range b.open {
		if !slices.ContainsFunc(p.items[:p.n], func(n uint8) bool { return s.list[n].at == i }) {
			return true
		}
	}
	return b.within(s.sides(b, p))
}

// within reports whether a ratio serves, exactly. One with nothing to divide by
// is not held against its range, as in a check.
func (b *bound) within(of, to decimal.Decimal) bool {
	if !to.IsPositive() || b.single && of.IsZero() {
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
	if to <= 0 || b.single && of == 0 {
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
		if it.State != formula.Stated && (of.IsPositive() || to.IsPositive()) {
			b.open = append(b.open, i)
		}
		b.of, b.to = append(b.of, of), append(b.to, to)
		b.ofF, b.toF = append(b.ofF, of.InexactFloat64()), append(b.toF, to.InexactFloat64())
	}
}
