// Package receipt reads receipt words: ingredient lines, amounts and method.
// It is the one line grammar of the house, used for lists, for prose and for
// the lines of formula files.
package receipt

import "assize/reference"

// Reader reads words by the measures and names of one year and place.
type Reader struct {
	Tables *reference.Tables
	// Year and Place are the book's: they decide what names and measures meant.
	Year  int
	Place string
	// KitchenYear and KitchenPlace are those of the kitchen that buys the
	// goods: lemons, flour and butter follow it. Zero means the book's.
	KitchenYear  int
	KitchenPlace string

	quiet bool // gives no hints
}

// kitchen is when and where the goods are bought.
func (r *Reader) kitchen() reference.When {
	w := reference.When{Year: r.KitchenYear, Place: r.KitchenPlace}
	if w.Year == 0 {
		w.Year = r.Year
	}
	if w.Place == "" {
		w.Place = r.Place
	}
	return w
}

// Trouble is something in a text that could not be read. Column counts
// characters from 1 in the text given.
type Trouble struct {
	Column int
	What   string // lower case, no final stop
	Hint   string
}

// Plain is an ingredient given field by field instead of in words. Amount may
// be a figure, a fraction, a range or number words; empty means not given.
type Plain struct {
	Amount string
	Unit   string
	Of     string
	Form   string
}
