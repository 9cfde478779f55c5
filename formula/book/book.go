// Package book holds a folder of receipts together as one book: the year,
// place and kitchen its receipts share, the parts one receipt takes from
// another, and the standing directions the book gives once for all.
//
// A folder is one book: its *.yaml files are receipts, but for book.yaml
// (title, year, place, standing directions) and kitchen.yaml (the kitchen that
// bakes them now). Nothing outside the folder is read, nor folders inside it.
package book

import (
	"slices"

	"assize/formula"
	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
)

// Book is a folder of receipts read as one book.
type Book struct {
	Title   string
	Year    int // of the receipts that do not say; 0 when the book does not
	Place   string
	Kitchen formula.Kitchen
	// Measures are what the book says its own measures hold.
	Measures []formula.OwnMeasure
	Standing []Standing
	// Receipts are those without a fault, by the names of their files.
	Receipts []*formula.Formula

	tables      *reference.Tables
	pages       []*page
	byName      map[string][]*page // what answers to a name, by its key
	kitchenOver formula.Kitchen    // stands over the receipts' own
}

// page is one receipt's file: what it is called, what it says, and the formula
// or the faults it was read as.
type page struct {
	name    string
	text    []byte
	names   []string // title and other names, as far as they can be read
	formula *formula.Formula
	faults  fault.List
}

// Standing is a direction the book prints once and means to hold wherever it
// fits.
type Standing = file.Standing

// Directions are the standing directions that hold for part i of the formula,
// in the order of the book.
func (b *Book) Directions(f *formula.Formula, i int) []Standing {
	var out []Standing
	for _, s := range b.Standing {
		if s.Holds(f, i) {
			out = append(out, s)
		}
	}
	return out
}

// defaults are what the book's receipts need not say.
func (b *Book) defaults() file.Defaults {
	return file.Defaults{
		Year: b.Year, Place: b.Place, Source: b.Title,
		Kitchen: b.Kitchen, KitchenOver: b.kitchenOver, Measures: b.Measures,
	}
}

// read reads the page's receipt by the book's defaults.
func (b *Book) read(p *page) {
	p.formula, p.faults = file.ReadWith(p.name, p.text, b.tables, b.defaults())
	if p.formula != nil {
		p.names = append([]string{p.formula.Title}, p.formula.Also...)
	} else {
		p.names = file.Names(p.text)
	}
}

// add takes a page that has been read into the book.
func (b *Book) add(p *page) {
	b.pages = append(b.pages, p)
	if b.byName == nil {
		b.byName = map[string][]*page{}
	}
	for _, n := range p.names {
		k := nameKey(n)
		if !slices.Contains(b.byName[k], p) {
			b.byName[k] = append(b.byName[k], p)
		}
	}
	if p.formula != nil {
		b.Receipts = append(b.Receipts, p.formula)
	}
}
