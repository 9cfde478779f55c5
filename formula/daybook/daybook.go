// Package daybook keeps the record of what was baked: for each bake the bench
// record, what was foretold of it, and what each taster saw.
//
// A day-book is a plain YAML file, one bake after another. It is only ever added
// to: a new bake is written with all that stood there before to a file beside
// it, which then takes its place whole, so that a run ended at any moment leaves
// either the old book or the new one. Two runs that add at once wait for each
// other. A book that is damaged is told of with line and column and never
// written to.
//
// What was tasted later of a bake kept already, the next day or by another
// taster, is added the same way, at the end, under the number of its bake; what
// was tasted first stays where it is.
package daybook

import (
	"github.com/shopspring/decimal"

	"assize/formula/bench"
)

// Entry is one bake.
type Entry struct {
	Bake      int    // its number in the book, from 1
	Baked     string // the day, as 2026-11-07; empty when not said
	Title     string
	Version   string // of the program that foretold it
	Tables    string // edition of the tables
	Readings  int
	Predicted []Predicted
	Tasted    []Tasted // in the order they were kept, later ones last
	Record    *bench.Record
}

// Predicted is how one part was foretold to turn out.
type Predicted struct {
	Part      string
	Kind      string // pastry | filling
	Likeliest string // texture id
	Shares    []Share
}

// Share is the chance that was given to a texture.
type Share struct {
	Texture string
	Share   decimal.Decimal // 0 to 1, to three places
}

// Tasted is what one taster saw at one time.
type Tasted struct {
	By      string
	When    string // hot | cool | next day; empty when not said
	Results []Result
	Words   string
}

// Result is a texture a part had.
type Result struct {
	Part    string
	Texture string // id
}

// Book is a day-book as read.
type Book struct {
	File    string
	Entries []Entry
	text    string
	starts  []place // of each entry's record
}

// place is where a record stands on the page: its first line, the last line it
// may reach, and the column it begins in.
type place struct{ from, to, column int }
