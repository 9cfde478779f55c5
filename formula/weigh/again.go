package weigh

import "assize/reference"

// Again weighs an item anew after its base or its factors were changed: its
// grams are the base times the factors.
func (w *Weighed) Again(it *Item) {
	it.Grams = reference.Exact(it.Base)
	for _, f := range it.Factors {
		g := f.of(&w.Unknowns[f.Unknown])
		it.Grams = reference.Span{Low: it.Grams.Low.Mul(g.Low), Likely: it.Grams.Likely.Mul(g.Likely), High: it.Grams.High.Mul(g.High)}
	}
}

// Numbered is the factor of an item that is the number the book leaves open
// ("two or three eggs"), -1 when it gives one figure.
func (w *Weighed) Numbered(it *Item) int {
	for i, f := range it.Factors {
		if w.Unknowns[f.Unknown].Number {
			return i
		}
	}
	return -1
}
