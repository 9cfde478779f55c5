package ratios

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

// Profile is one part to the hundred, with every named ratio that applies.
type Profile struct {
	Basis    Basis
	Total    reference.Span
	Percents []decimal.Decimal // of the basis, by item, at the likely weights
	Ratios   []Ratio
}

// Basis is what a part is reckoned to the hundred of.
type Basis struct {
	Of    string // flour | egg | total
	Grams reference.Span
}

// Bases a person may ask for.
var Bases = []string{"flour", "egg", "total"}

// Ratio is one named proportion of a part. Value holds the exact quotient's
// ends, rounded to ten places; Of and To are the likely grams it is the
// quotient of, from which verdicts are taken without rounding.
type Ratio struct {
	Row    *reference.Ratio
	Value  reference.Span
	Of, To decimal.Decimal
	// Open marks a ratio that counts something the receipt names and gives no
	// amount of: the figure leaves it out.
	Open bool
}

// places is how far a quotient is carried for showing.
const places = 10

// ProfileOf reckons part i of a weighed formula. basis is empty for the usual
// one: flour when there is flour, else egg when there is egg, else the total.
func ProfileOf(w *weigh.Weighed, i int, t *reference.Tables, basis string) Profile {
	p := &w.Parts[i]
	prof := Profile{Total: p.Total(w.Unknowns)}
	prof.Basis = basisOf(w, p, basis)
	for j := range p.Items {
		it := &p.Items[j]
		if prof.Basis.Grams.Likely.IsPositive() {
			prof.Percents = append(prof.Percents, it.Grams.Likely.Mul(hundred).DivRound(prof.Basis.Grams.Likely, places))
		} else {
			prof.Percents = append(prof.Percents, decimal.Zero)
		}
	}
	for r := range t.Ratios {
		row := &t.Ratios[r]
		if !slices.Contains(row.Kinds, string(p.Of.Kind)) {
			continue
		}
		if ratio, ok := ratioOf(w, p, row); ok {
			prof.Ratios = append(prof.Ratios, ratio)
		}
	}
	return prof
}

func basisOf(w *weigh.Weighed, p *weigh.Part, asked string) Basis {
	sum := func(q ...Quantity) reference.Span {
		return p.Sum(w.Unknowns, func(it *weigh.Item) decimal.Decimal {
			s := decimal.Zero
			for _, one := range q {
				s = s.Add(share(it, one))
			}
			return s
		})
	}
	flour, egg, total := sum(Flour), sum(Egg, White, Yolk), p.Total(w.Unknowns)
	switch {
	case asked == "total":
		return Basis{"total", total}
	case asked == "flour" && flour.Likely.IsPositive():
		return Basis{"flour", flour}
	case asked == "egg" && egg.Likely.IsPositive():
		return Basis{"egg", egg}
	case flour.Likely.IsPositive():
		return Basis{"flour", flour}
	case egg.Likely.IsPositive():
		return Basis{"egg", egg}
	}
	return Basis{"total", total}
}

// ratioOf is one ratio of a part; false when there is nothing to divide by.
func ratioOf(w *weigh.Weighed, p *weigh.Part, row *reference.Ratio) (Ratio, bool) {
	var terms []term
	open := false
	for i := range p.Items {
		it := &p.Items[i]
		if it.State != formula.Stated {
			open = open || weight(it, row.Of).IsPositive() || weight(it, row.To).IsPositive()
			continue
		}
		terms = append(terms, term{of: weight(it, row.Of), to: weight(it, row.To), item: it})
	}
	r := Ratio{Row: row, Open: open}
	for _, t := range terms {
		if t.item.Used(w.Unknowns) {
			r.Of = r.Of.Add(t.of.Mul(t.item.Grams.Likely))
			r.To = r.To.Add(t.to.Mul(t.item.Grams.Likely))
		}
	}
	if !r.To.IsPositive() {
		return r, false
	}
	r.Of = r.Of.Mul(row.Scale)
	r.Value = reference.Exact(r.Of.DivRound(r.To, places))
	for _, reading := range choices(w, terms) {
		low, ok := extreme(reading, row.Scale, false)
		if !ok {
			continue
		}
		high, _ := extreme(reading, row.Scale, true)
		r.Value.Low = decimal.Min(r.Value.Low, low)
		r.Value.High = decimal.Max(r.Value.High, high)
	}
	return r, true
}

// term is one item's part in a ratio: its grams times of over its grams times to.
type term struct {
	of, to decimal.Decimal
	item   *weigh.Item
}

// Counts is what one gram of an item puts into each side of a ratio, the first
// already in the ratio's scale: the ratio is the sum of the one over the sum of
// the other.
func Counts(it *weigh.Item, row *reference.Ratio) (of, to decimal.Decimal) {
	return weight(it, row.Of).Mul(row.Scale), weight(it, row.To)
}

func weight(it *weigh.Item, terms []reference.Term) decimal.Decimal {
	sum := decimal.Zero
	for _, t := range terms {
		q, ok := Named(t.Quantity)
		if !ok {
			continue // the loader refuses unknown quantities
		}
		s := share(it, q)
		if !t.Times.IsZero() {
			s = s.Mul(t.Times)
		}
		sum = sum.Add(s)
	}
	return sum
}

// mostReadings bounds how many ways of taking the either-or lines are held
// against each other; more than that keeps to the likeliest.
const mostReadings = 64

// choices lists the terms in use for every way of taking the lines that are
// either one thing or another.
func choices(w *weigh.Weighed, terms []term) [][]term {
	ways := map[int]int{}
	count := 1
	for _, t := range terms {
		if wh := t.item.When; wh != nil && ways[wh.Unknown] == 0 {
			ways[wh.Unknown] = len(w.Unknowns[wh.Unknown].Ways)
			count *= ways[wh.Unknown]
		}
	}
	if count > mostReadings {
		count, ways = 1, nil
	}
	var unknowns []int
	for u := range ways {
		unknowns = append(unknowns, u)
	}
	slices.Sort(unknowns)
	out := make([][]term, 0, count)
	for n := range count {
		pick, rest := map[int]int{}, n
		for _, u := range unknowns {
			pick[u], rest = rest%ways[u], rest/ways[u]
		}
		var reading []term
		for _, t := range terms {
			wh := t.item.When
			if wh == nil || ways == nil && t.item.Used(w.Unknowns) || ways != nil && pick[wh.Unknown] == wh.Way {
				reading = append(reading, t)
			}
		}
		out = append(out, reading)
	}
	return out
}

// extreme finds the lowest or highest value the ratio can take while every
// item stays within its grams. A quotient of sums is at its extreme with each
// item at one of its ends; starting anywhere and moving every item to the end
// that helps at the present quotient reaches it in a few rounds (Dinkelbach
// 1967, Management Science 13:492). Comparisons are exact.
func extreme(terms []term, scale decimal.Decimal, highest bool) (decimal.Decimal, bool) {
	of, to := decimal.Zero, decimal.Zero
	for _, t := range terms {
		of = of.Add(t.of.Mul(t.item.Grams.Likely))
		to = to.Add(t.to.Mul(t.item.Grams.Likely))
	}
	if !to.IsPositive() {
		return decimal.Zero, false
	}
	for {
		nextOf, nextTo := decimal.Zero, decimal.Zero
		for _, t := range terms {
			// Does more of this item raise the quotient? of/to against its own.
			raises := t.of.Mul(to).GreaterThan(t.to.Mul(of))
			g := t.item.Grams.Low
			if raises == highest {
				g = t.item.Grams.High
			}
			nextOf = nextOf.Add(t.of.Mul(g))
			nextTo = nextTo.Add(t.to.Mul(g))
		}
		if !nextTo.IsPositive() {
			break
		}
		better := nextOf.Mul(to).Cmp(of.Mul(nextTo))
		if highest && better <= 0 || !highest && better >= 0 {
			break
		}
		of, to = nextOf, nextTo
	}
	return of.Mul(scale).DivRound(to, places), true
}

// Against holds the likely quotient of a ratio against a range, exactly:
// -1 below, 0 within, 1 above.
func (r *Ratio) Against(low, high decimal.Decimal) int {
	switch {
	case r.Of.LessThan(low.Mul(r.To)):
		return -1
	case r.Of.GreaterThan(high.Mul(r.To)):
		return 1
	}
	return 0
}
