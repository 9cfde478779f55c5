package change

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

// Amount is another amount of one item of the part. What a measure or an egg
// holds stays as doubtful as the book leaves it, and is drawn as before; only
// how many there are changes, and with it a number in doubt is settled.
type Amount struct {
	Item int // index among the part's items
	// Number is how many of the measure or thing the book counts in; nothing
	// leaves the item out.
	Number decimal.Decimal
	// Grams states the amount of an item the book gives none of; Number is then
	// not looked at.
	Grams decimal.Decimal
}

// exactly is how many places a quotient is carried to: enough that taking a
// number out of a weight and putting it back changes nothing.
const exactly = 24

// amounts gives the items with the amounts changed.
func (c Change) amounts(w *weigh.Weighed, items []weigh.Item) []weigh.Item {
	items = slices.Clone(items)
	gone := map[int]bool{}
	for _, a := range c.Amounts {
		it := &items[a.Item]
		if it.State != formula.Stated {
			it.State, it.Base, it.Factors = formula.Stated, a.Grams, nil
			it.Amount = formula.Amount{Number: reference.Exact(a.Grams), Measure: "g"}
			it.Grams = reference.Exact(a.Grams)
			continue
		}
		if a.Number.IsZero() {
			gone[a.Item] = true
			continue
		}
		if n := w.Numbered(it); n >= 0 {
			it.Factors = slices.Delete(slices.Clone(it.Factors), n, n+1)
			it.Base = it.Base.Mul(a.Number)
		} else {
			it.Base = it.Base.Mul(a.Number).DivRound(it.Amount.Number.Likely, exactly)
		}
		it.Amount.Number = reference.Exact(a.Number)
		w.Again(it)
	}
	if len(gone) == 0 {
		return items
	}
	var kept []weigh.Item
	for i := range items {
		if !gone[i] {
			kept = append(kept, items[i])
		}
	}
	return kept
}
