// Package worksheet assembles one sheet for the bench: what to weigh, by parts;
// every step in working order, those the book printed elsewhere in their place
// and those it leaves unsaid marked as such; a time plan worked back from the
// table; and what to buy. It is pure: the same formula gives the same sheet.
package worksheet

import (
	"slices"

	"assize/formula"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/practice"
	"assize/reference"
	"assize/reference/fault"
)

// Sheet is a receipt ready for the bench.
type Sheet struct {
	Formula  *formula.Formula
	Weighed  *weigh.Weighed
	Parts    []Part
	Phases   []Phase
	Oven     Oven
	InDish   *dish.Fit // in the dish the receipt names; nil when none is known
	Plan     Plan
	Shopping Shopping
	// Aside are directions the book prints elsewhere for such parts that have no
	// place in this dish.
	Aside []Step
	// Unlisted are things the steps name and no line weighs, or the reverse.
	Unlisted []judge.Finding
	// Cautions are always on the sheet.
	Cautions []judge.Finding
}

// Part is one part on the scales.
type Part struct {
	Of    *formula.Part
	Lay   string // how the paste lies, as it is told or as it is taken
	Given bool   // whether the file, the words, the title or the kind of paste tell it
	Lines []Line
	Total reference.Span
	// Parts marks a part of which only the proportions are known.
	Parts bool
}

// Line is a line of the receipt with what it comes to.
type Line struct {
	Text  string
	Items []Item
	Notes []string
}

// Item is one thing to weigh.
type Item struct {
	Ingredient *reference.Ingredient
	Form       string
	Grams      reference.Span
	State      formula.State
	Amount     formula.Amount
	Used       bool // false for the less likely side of a line in doubt
}

// Phase is a stretch of the work with its steps.
type Phase struct {
	ID    string // one of Phases
	Part  string // the part it is done to, empty for the whole dish
	Steps []Step
}

// Phases are the stretches of work in their order.
var Phases = []string{"ready", "paste", "case", "filling", "oven", "finish"}

// Origin says where a step stands.
type Origin string

// The origins of a step.
const (
	Own       Origin = "own"       // on the receipt's own page
	Taken     Origin = "taken"     // on the page of a receipt a part is taken from
	Elsewhere Origin = "elsewhere" // among what the book says once for all
	Unsaid    Origin = "unsaid"    // not in the book: what a working cook does
)

// Step is one thing to do.
type Step struct {
	Text   string
	Origin Origin
	From   string          // the receipt or the place in the book it stands in
	Row    *reference.Step // the step of the table it is, nil when none
	Part   int             // the part it is done to
	Stage  string          // one of reference.StepStages
	// Done is set on the step of trying whether it is done: what to look for.
	Done *reference.Doneness
}

// Assembler assembles sheets by one set of tables. It may be used for many
// receipts, from one goroutine at a time.
type Assembler struct {
	tables *reference.Tables
	reader *receipt.MethodReader
	judge  *judge.Judge
}

// New makes an assembler.
func New(t *reference.Tables) *Assembler {
	return &Assembler{tables: t, reader: receipt.NewMethodReader(t), judge: judge.New(t)}
}

// Assemble makes the sheet of a formula whose takes are resolved. What cannot
// be weighed comes back as faults, and then there is no sheet.
func (a *Assembler) Assemble(f *formula.Formula) (*Sheet, fault.List) {
	w, faults := weigh.Weigh(f, a.tables)
	if len(faults) > 0 {
		return nil, faults
	}
	d := practice.Read(f, a.tables, a.reader)
	s := &Sheet{Formula: f, Weighed: w}
	for i := range w.Parts {
		s.Parts = append(s.Parts, part(w, i, d))
	}
	r := a.sketch(w, d)
	s.Oven, s.InDish = a.oven(r, d), r.InDish
	order := a.order(d, &s.Oven)
	s.Phases, s.Aside = phases(d, order), order.aside
	s.Plan = plan(d, order, &s.Oven)
	s.Shopping = a.shopping(w, s)
	for _, x := range r.Findings {
		if x.Code == "not-listed" {
			s.Unlisted = append(s.Unlisted, x)
		} else {
			s.Cautions = append(s.Cautions, x)
		}
	}
	return s, nil
}

func part(w *weigh.Weighed, i int, d *practice.Dish) Part {
	wp := &w.Parts[i]
	p := Part{Of: wp.Of, Lines: make([]Line, len(wp.Of.Lines)), Total: wp.Total(w.Unknowns)}
	if wp.Of.Kind == formula.Pastry {
		p.Lay, p.Given = d.Lay(i), d.LaidBy(i) != ""
	}
	for j, l := range wp.Of.Lines {
		p.Lines[j] = Line{Text: l.Text, Notes: l.Notes}
		if l.Why != "" {
			p.Lines[j].Notes = append(slices.Clone(l.Notes), "in doubt: "+l.Why)
		}
	}
	for j := range wp.Items {
		it := &wp.Items[j]
		p.Parts = p.Parts || it.Amount.Parts
		p.Lines[it.Line].Items = append(p.Lines[it.Line].Items, Item{
			Ingredient: it.Ingredient, Form: it.Form, Grams: it.Grams, State: it.State, Amount: it.Amount, Used: it.Used(w.Unknowns),
		})
	}
	return p
}
