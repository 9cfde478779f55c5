package receipt

import (
	"cmp"
	"slices"

	"assize/formula"
	"assize/reference"
)

// About is what is known of a receipt besides its words. What is left at its
// zero value is taken from the reader or from the words.
type About struct {
	Title  string
	Source string
	Year   int
	Place  string
}

// Trace is what reading a receipt came to, beside the formula: how each thing
// was taken and why, what could not be read, and what was set aside. Places
// count lines and characters of the text from 1.
type Trace struct {
	Read   []Interpretation // in the order of the text
	Unread []Stretch        // what may belong to the making and could not be read
	Aside  []Stretch        // what is no part of the making: prices, seasons, words struck out
}

// Interpretation is one thing read: the words, what they were taken for, and
// why.
type Interpretation struct {
	Words        string
	Line, Column int
	Took         string
	Why          string
	Range        string // of the measure, as a cook reads it; empty where nothing is open
	// Part and Index are the ingredient line of the formula it speaks of; Index
	// is -1 when it speaks of the part, and both are -1 when it speaks of the
	// whole receipt.
	Part, Index int
}

// Stretch is a run of words that were not read as part of the making.
type Stretch struct {
	Words        string
	Line, Column int
	Why          string
	Hint         string
	// Part and Index are the line of the formula that stands for it, so that
	// nobody weighs the formula without it; -1 when none does.
	Part, Index int
}

// Whole reports whether everything in the text was understood.
func (t *Trace) Whole() bool { return len(t.Unread) == 0 }

// inOrder puts what was read in the order of the text.
func (t *Trace) inOrder() {
	slices.SortStableFunc(t.Read, func(a, b Interpretation) int { return place(a.Line, a.Column, b.Line, b.Column) })
	for _, list := range [][]Stretch{t.Unread, t.Aside} {
		slices.SortStableFunc(list, func(a, b Stretch) int { return place(a.Line, a.Column, b.Line, b.Column) })
	}
}

func place(line, column, otherLine, otherColumn int) int {
	return cmp.Or(cmp.Compare(line, otherLine), cmp.Compare(column, otherColumn))
}

// took is how an ingredient and its amount are told.
func (r *Reader) took(it formula.Item) string {
	name := it.Ingredient
	if ing, ok := r.Tables.Ingredient(it.Ingredient); ok {
		name = ing.Name
	}
	a := it.Amount
	switch a.State {
	case formula.ToTaste:
		return name + ", to taste: not weighed"
	case formula.NotGiven:
		return name + ", amount not given"
	case formula.Enough:
		return name + ", enough for its purpose: the usual range of such a mixture"
	}
	number := spelled(a.Number)
	switch {
	case a.Parts:
		return name + ", " + number + " parts to the others"
	case a.WeightOf != "":
		return name + ", what " + number + " eggs weigh in the shell"
	case a.Measure != "":
		return name + ", " + ofNumber(a.Number, a.Measure, true)
	case a.Each == it.Ingredient, a.Each == "egg" && it.Ingredient == egg:
		return ofNumber(a.Number, name, false)
	}
	return name + ", of " + ofNumber(a.Number, reference.Piece(a.Each), false)
}

// ofNumber is so many of a measure or a thing: "2 ounces", "1/4 pound", "1/4 of a
// lemon".
func ofNumber(n reference.Span, name string, measured bool) string {
	if n.High.GreaterThan(one) {
		return spelled(n) + " " + reference.Plural(name)
	}
	if n.High.LessThan(one) && !measured {
		return spelled(n) + " of " + reference.A(name)
	}
	return spelled(n) + " " + name
}

// Why words that only order the page are set aside.
const (
	Heading   = "a heading"
	Numbering = "a number of the list"
)

// Furniture reports words that only order the page and say nothing of the
// making.
func (s *Stretch) Furniture() bool { return s.Why == Heading || s.Why == Numbering }
