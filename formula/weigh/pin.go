package weigh

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// Clone is a copy whose items and unknowns may be pinned without touching the
// one it was made from.
func (w *Weighed) Clone() *Weighed {
	out := *w
	out.Parts = slices.Clone(w.Parts)
	for i := range out.Parts {
		out.Parts[i].Items = slices.Clone(w.Parts[i].Items)
	}
	out.Unknowns = slices.Clone(w.Unknowns)
	for i := range out.Unknowns {
		out.Unknowns[i].Ways = slices.Clone(w.Unknowns[i].Ways)
	}
	return &out
}

// Pinned is what became of an item that was really weighed.
type Pinned struct {
	Found bool
	// Outside is set when the weight is none the receipt can mean: the cook
	// did otherwise, and nothing is said of the receipt's own doubts.
	Outside bool
}

// Pin sets what was really weighed of one ingredient of a line, grams. The item
// is in doubt no longer. What its weight rests on together with other lines -
// the size of the eggs, the pint meant - is narrowed to what gives that weight,
// so that the lines left open agree with it; other doubts stay open.
func (w *Weighed) Pin(part, line int, ingredient string, grams decimal.Decimal) Pinned {
	var at []int
	for i := range w.Parts[part].Items {
		if it := &w.Parts[part].Items[i]; it.Line == line && it.Ingredient.ID == ingredient {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		return Pinned{}
	}
	out := Pinned{Found: true}
	chosen := at[0]
	if when := w.Parts[part].Items[chosen].When; when != nil {
		chosen = w.nearest(part, at, grams)
		w.settle(w.Parts[part].Items[chosen].When)
	}
	it := &w.Parts[part].Items[chosen]
	if it.State == formula.Stated {
		out.Outside = !w.narrow(it, grams)
	}
	for _, i := range at {
		other := &w.Parts[part].Items[i]
		if i != chosen && other.When == nil {
			other.Base, other.Factors, other.Grams = decimal.Zero, nil, reference.Exact(decimal.Zero) // named twice on one line: the weight is of both
		}
	}
	it.State, it.Base, it.Factors, it.Grams = formula.Stated, grams, nil, reference.Exact(grams)
	it.Amount.Parts = false
	w.recount()
	return out
}

// nearest is the item, of those of a line in doubt, whose weight is nearest.
func (w *Weighed) nearest(part int, at []int, grams decimal.Decimal) int {
	best := at[0]
	for _, i := range at[1:] {
		a, b := w.Parts[part].Items[i].Grams.Likely, w.Parts[part].Items[best].Grams.Likely
		if a.Sub(grams).Abs().LessThan(b.Sub(grams).Abs()) {
			best = i
		}
	}
	return best
}

// settle takes away every way of an unknown but one.
func (w *Weighed) settle(when *When) {
	u := &w.Unknowns[when.Unknown]
	for i := range u.Ways {
		if i != when.Way {
			u.Ways[i].Odds = decimal.Zero
		}
	}
	if u.Ways[when.Way].Odds.IsZero() {
		u.Ways[when.Way].Odds = decimal.NewFromInt(1)
	}
}

// exactness is how far a weight may be off and still be the one meant: half a
// gram, or a hundredth.
var exactness = decimal.RequireFromString("0.01")

var half = decimal.RequireFromString("0.5")

// narrow takes from the unknowns behind an item all that cannot give its
// weight. It reports false, and narrows nothing, when no way of taking them can.
func (w *Weighed) narrow(it *Item, grams decimal.Decimal) bool {
	off := decimal.Max(half, grams.Mul(exactness))
	low, high := decimal.Max(decimal.Zero, grams.Sub(off)), grams.Add(off)
	if it.Grams.High.LessThan(low) || it.Grams.Low.GreaterThan(high) {
		return false
	}
	narrowed := make([]Unknown, len(it.Factors))
	for i, f := range it.Factors {
		others := reference.Exact(it.Base)
		for j, g := range it.Factors {
			if j != i {
				s := g.of(&w.Unknowns[g.Unknown])
				others = reference.Span{Low: others.Low.Mul(s.Low), Likely: others.Likely.Mul(s.Likely), High: others.High.Mul(s.High)}
			}
		}
		u, ok := f.within(w.Unknowns[f.Unknown], low, high, others)
		if !ok {
			return false
		}
		narrowed[i] = u
	}
	for i, f := range it.Factors {
		w.Unknowns[f.Unknown] = narrowed[i]
	}
	return true
}

// within is the unknown with only the ways and values that, multiplied by the
// other factors, come to between low and high; false when none do.
func (f Factor) within(u Unknown, low, high decimal.Decimal, others reference.Span) (Unknown, bool) {
	ways := slices.Clone(u.Ways)
	any := false
	for i := range ways {
		way := &ways[i]
		if way.Odds.IsZero() {
			continue
		}
		s := way.Span
		switch {
		case f.ByWay != nil:
			s = f.ByWay[i]
		case f.Rest:
			one := decimal.NewFromInt(1)
			s = reference.Span{Low: one.Sub(s.High), Likely: one.Sub(s.Likely), High: one.Sub(s.Low)}
		}
		if s.High.Mul(others.High).LessThan(low) || s.Low.Mul(others.Low).GreaterThan(high) {
			way.Odds = decimal.Zero
			continue
		}
		any = true
		if f.ByWay == nil && !s.IsExact() && others.Low.IsPositive() {
			s.Low = decimal.Max(s.Low, low.Div(others.High))
			s.High = decimal.Min(s.High, high.Div(others.Low))
			s.Likely = decimal.Max(s.Low, decimal.Min(s.High, s.Likely))
			if f.Rest {
				one := decimal.NewFromInt(1)
				s = reference.Span{Low: one.Sub(s.High), Likely: one.Sub(s.Likely), High: one.Sub(s.Low)}
			}
			way.Span = s
		}
	}
	u.Ways = ways
	return u, any
}

// recount works out the grams of every item anew from its factors.
func (w *Weighed) recount() {
	for p := range w.Parts {
		for i := range w.Parts[p].Items {
			it := &w.Parts[p].Items[i]
			g := reference.Exact(it.Base)
			for _, f := range it.Factors {
				s := f.of(&w.Unknowns[f.Unknown])
				g = reference.Span{Low: g.Low.Mul(s.Low), Likely: g.Likely.Mul(s.Likely), High: g.High.Mul(s.High)}
			}
			it.Grams = g
		}
	}
}

// Open reports whether the item's weight is still in doubt.
func (it *Item) Open(unknowns []Unknown) bool {
	if it.State != formula.Stated || it.When != nil && unknowns[it.When.Unknown].open() > 1 {
		return true
	}
	return slices.ContainsFunc(it.Factors, func(f Factor) bool {
		u := &unknowns[f.Unknown]
		return u.open() > 1 || !f.of(u).IsExact()
	})
}

// Hangs reports whether the item's weight hangs on an unknown.
func (it *Item) Hangs(unknown int) bool {
	return it.When != nil && it.When.Unknown == unknown ||
		slices.ContainsFunc(it.Factors, func(f Factor) bool { return f.Unknown == unknown })
}

// Open reports whether the unknown can still be taken in more than one way, or
// for more than one value.
func (u *Unknown) Open() bool { return u.open() > 1 || !u.Span().IsExact() }
