package weigh

import (
	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// Weighed is a formula on the scales.
type Weighed struct {
	Formula  *formula.Formula
	Parts    []Part
	Unknowns []Unknown
	Notes    []string // what was assumed, for the cook to check
}

// Part is one part on the scales. Its items stand in the order of its lines.
type Part struct {
	Of    *formula.Part
	Items []Item
}

// Item is one ingredient in grams. The grams are Base times its factors.
type Item struct {
	Line       int // index in Of.Lines
	Ingredient *reference.Ingredient
	Form       string
	State      formula.State // not Stated: the receipt gives no figure and Grams is nothing
	Amount     formula.Amount
	Grams      reference.Span
	Base       decimal.Decimal
	Factors    []Factor
	// When names an unknown and the way of it in which this item is used at
	// all: one side of a line that is either this or that.
	When *When
}

// When ties an item to one way of an unknown.
type When struct{ Unknown, Way int }

// Used reports whether the item belongs to the likeliest reading.
func (it *Item) Used(unknowns []Unknown) bool {
	return it.When == nil || unknowns[it.When.Unknown].Likeliest() == it.When.Way
}

// Total is the weight of the part: the sum of its items, alternatives taken
// at their lightest for low and heaviest for high.
func (p *Part) Total(unknowns []Unknown) reference.Span {
	return p.Sum(unknowns, func(*Item) decimal.Decimal { return decimal.NewFromInt(1) })
}

// Sum adds up the part's items, each multiplied by share.
func (p *Part) Sum(unknowns []Unknown, share func(*Item) decimal.Decimal) reference.Span {
	var sum reference.Span
	either := map[int][]reference.Span{} // by unknown, the sum of each way
	for i := range p.Items {
		it := &p.Items[i]
		g := it.Grams.Mul(share(it))
		if it.When == nil {
			sum = sum.Add(g)
			continue
		}
		ways := either[it.When.Unknown]
		if ways == nil {
			ways = make([]reference.Span, len(unknowns[it.When.Unknown].Ways))
			either[it.When.Unknown] = ways
		}
		ways[it.When.Way] = ways[it.When.Way].Add(g)
	}
	for u, ways := range either {
		s := ways[unknowns[u].Likeliest()]
		for i, w := range ways {
			if unknowns[u].Ways[i].Odds.IsZero() && unknowns[u].open() > 0 {
				continue // settled otherwise
			}
			s.Low = decimal.Min(s.Low, w.Low)
			s.High = decimal.Max(s.High, w.High)
		}
		sum = sum.Add(s)
	}
	return sum
}
