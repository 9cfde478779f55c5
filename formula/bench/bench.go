// Package bench holds the bench record: what was really done when a receipt
// was baked, and what tasters saw. Everything in it is optional: what is filled
// in takes the place of a doubt, what is left open stays open.
//
// The record carries the receipt as it stood that day, so that it can be read
// alone, years later, whatever has become of the file it was made from.
package bench

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// Record is what was done at the bench.
type Record struct {
	File string // the name the person calls the page by
	// Baked is the day, as 2026-11-07; empty when not said.
	Baked   string
	Eggs    Eggs
	Parts   []Part // one for each part of the formula, in its order
	Dish    string
	Oven    []Heat          // readings, in the order of the clock
	Centre  decimal.Decimal // heat at the centre when it came out, C; 0 when not measured
	Minutes decimal.Decimal // in the oven or over the fire; 0 when not said
	// Departures are things done otherwise, in the cook's words. They are kept
	// and shown; nothing is reckoned from them.
	Departures []string
	// Meant is how the dish should be, when somebody knows better than the
	// receipt says.
	Meant    string
	Tastings []Tasting
	// Formula is the receipt as it stood, parts taken from others put in.
	Formula *formula.Formula

	text []byte // the page it was read from
}

// Text is the page the record was read from.
func (r *Record) Text() []byte { return r.text }

// Of is the record as one of a page of today, which may lie in its book with the
// directions of the book about it. False when the page is another receipt or has
// changed since: then what was weighed of its lines cannot be told.
func (r *Record) Of(f *formula.Formula) (*Record, bool) {
	same := reference.Key(r.Formula.Title) == reference.Key(f.Title) && slices.EqualFunc(r.Formula.Parts, f.Parts, func(a, b formula.Part) bool {
		return a.Name == b.Name && a.Kind == b.Kind && slices.EqualFunc(a.Lines, b.Lines, func(a, b formula.Line) bool { return a.Text == b.Text })
	})
	if !same {
		return nil, false
	}
	out := *r
	out.Formula = f
	return &out, true
}

// Eggs are eggs weighed together out of their shells.
type Eggs struct {
	Number int
	Grams  decimal.Decimal
}

// Each is the weight of one of them, grams; 0 when they were not weighed.
func (e Eggs) Each() decimal.Decimal {
	if e.Number == 0 {
		return decimal.Zero
	}
	return e.Grams.Div(decimal.NewFromInt(int64(e.Number)))
}

// Part is what went into one part and how it was made.
type Part struct {
	Used  []Used
	Added []formula.Line // what the receipt does not list
	Done  []string       // how it was made, in words
}

// Used is what was really weighed of one ingredient of a line.
type Used struct {
	Line       int    // index of the line in the part
	Ingredient string // id
	Grams      decimal.Decimal
}

// Heat is a reading of the oven.
type Heat struct {
	Minute decimal.Decimal // after the dish went in
	C      decimal.Decimal
}

// Tasting is what one taster saw at one time. Tasters are kept apart.
type Tasting struct {
	By    string // as the taster is to be called; "taster 2" when not said
	When  string // hot | cool | next day; empty when not said
	Signs []Sign
	Words string // free words, kept and not interpreted
}

// Times are when a dish may be tasted.
var Times = []string{"hot", "cool", "next day"}

// Sign is one thing seen, and what it was taken for.
type Sign struct {
	Look    string // place of the tasting sheet, empty when none was given
	Words   string // as written
	Part    int    // the part it speaks of; -1 when it tells nothing by itself
	Texture string // id of the texture it points to, empty when it tells nothing
	Row     string // id of the sign it was taken for, empty when it names a texture
}

// Named is a texture of a part.
type Named struct {
	Part    int
	Texture string // id
}

// Results are the textures a taster's signs point to, each once, in the order
// they were written.
func (t *Tasting) Results() []Named {
	var out []Named
	for _, s := range t.Signs {
		if s.Texture == "" {
			continue
		}
		n := Named{s.Part, s.Texture}
		seen := false
		for _, o := range out {
			seen = seen || o == n
		}
		if !seen {
			out = append(out, n)
		}
	}
	return out
}
