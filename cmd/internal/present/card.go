package present

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/daybook"
	"assize/formula/weigh"
	"assize/ratios/judge"
	"assize/ratios/worksheet"
)

// CardSheet is what a card to publish is made of.
type CardSheet struct {
	*Sheet
	Bench *worksheet.Sheet
	// Book is the day-book that tells how often it was baked, nil when none is
	// at hand.
	Book *daybook.Book
}

// Headings of a card.
const (
	headFromBook = "Changed from the book"
	headFrom     = "Where it comes from"
	headBaked    = "As it was baked"
)

// Card is the page of a receipt to publish: where it comes from, what it makes,
// the amounts in grams and in the measures of a kitchen, every step, the oven,
// what was changed and why, how often it was baked, and the cautions, which
// stand on every card.
func Card(s *CardSheet, a About) *Page {
	c := &carding{CardSheet: s, benching: &benching{s: s.Bench, citations: citations{tables: a.Tables}, serve: NoClock}}
	f := s.Report.Formula
	p := &Page{Title: f.Title, Under: "After " + under(f), Lead: c.lead()}
	p.section(headMakes, c.makes())
	for i := range s.Report.Parts {
		p.section(c.heading(i), c.table(i))
	}
	p.section(headSteps, c.steps())
	p.section(headBake, plainList(c.oven()))
	p.section(headCautions, c.cautionsOf(s.Report.Findings)...)
	p.section(headFromBook, c.changed())
	p.section(headBaked, c.baked())
	p.section(headFrom, c.from())
	p.section(headSources, c.benching.sources(a)...)
	return p
}

type carding struct {
	*CardSheet
	*benching
}

// lead says honestly whether anyone has made it, and then what is expected.
func (c *carding) lead() string {
	said := notYetBaked
	if n := len(c.bakes()); n > 0 {
		said = fmt.Sprintf("Baked %s.", times(n))
	}
	return said + " " + (&checking{Sheet: c.Sheet}).lead()
}

// bakes are the day-book's bakes of this receipt.
func (c *carding) bakes() []daybook.Entry {
	if c.Book == nil {
		return nil
	}
	var out []daybook.Entry
	for _, e := range c.Book.Entries {
		if e.Title == c.Report.Formula.Title {
			out = append(out, e)
		}
	}
	return out
}

func (c *carding) makes() List {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		said := []string{makes(p, c.unit(i)), inDish(c.Report, i)}
		out = append(out, Entry{Label: p.Name, Text: strings.Join(slices.DeleteFunc(said, func(s string) bool { return s == "" }), "; ")})
	}
	return out
}

func (c *carding) heading(i int) string {
	p := &c.Report.Parts[i]
	if is := partIs(p); is != "" {
		return upper(p.Name) + " (" + is + ")"
	}
	return upper(p.Name)
}

// table is what goes into a part: grams, and what a kitchen without scales
// would take.
func (c *carding) table(i int) Table {
	unit := c.unit(i)
	t := Table{Columns: []Column{{Name: unit, Right: true}, {Name: "or about"}, {Name: "of"}}}
	for k := range c.Report.Weighed.Parts[i].Items {
		it := &c.Report.Weighed.Parts[i].Items[k]
		if !it.Used(c.Report.Weighed.Unknowns) {
			continue
		}
		is := judge.Item{Ingredient: it.Ingredient, Form: it.Form, Used: true}
		row := []string{figure(it.Grams.Likely), "", itemIs(&is)}
		if words, ok := states[it.State]; ok {
			row[0] = words
		} else if unit == "g" {
			row[1] = c.household(it)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// household is an amount as a kitchen without scales would take it: by number
// where the receipt counts, else in cups and spoons where they come near.
func (c *carding) household(it *weigh.Item) string {
	if each := it.Amount.Each; each != "" && it.Amount.Measure == "" {
		n := it.Amount.Number
		thing := each
		if n.High.GreaterThan(decimal.NewFromInt(1)) {
			thing = pluralOf(each, 2)
		}
		if size := c.Report.Formula.Kitchen.EggSize; each == "egg" && size != "" {
			thing = size + " " + thing
		}
		said := spanned(n) + " " + thing
		switch it.Ingredient.Kind {
		case "yolk", "white":
			return it.Ingredient.Kind + " of " + said
		}
		return said
	}
	h, ok := weigh.HouseholdOf(it.Ingredient, it.Grams.Likely, c.Report.Formula.Kitchen, c.tables)
	if !ok {
		return ""
	}
	return h.Words
}

// steps are all steps in working order, those the book prints elsewhere or
// leaves unsaid marked.
func (c *carding) steps() List {
	var out List
	for i := range c.Bench.Phases {
		ph := c.phase(&c.Bench.Phases[i])
		label := ph.Heading + "."
		for _, s := range ph.Steps {
			e := Entry{Label: label, Text: s.Text}
			if s.Mark != "" {
				e.More = []string{s.Mark}
			}
			out = append(out, e)
			label = ""
		}
	}
	return out
}

// changed tells every change from the book and why, from the ancestry the file
// keeps.
func (c *carding) changed() List {
	var out List
	a := c.Report.Formula.Ancestry
	if a == nil {
		out = append(out, Entry{Text: nothingChanged})
	} else {
		for _, ch := range a.Change {
			out = append(out, Entry{Text: sentence(ch)})
		}
	}
	if n := c.unsaid(); n > 0 {
		out = append(out, Entry{Text: sentence(fmt.Sprintf("%s above %s not in the book, and marked so", count(n, "step", "steps"), isAre(n)))})
	}
	return out
}

func (c *carding) unsaid() int {
	n := 0
	for _, ph := range c.Bench.Phases {
		for _, s := range ph.Steps {
			if s.Origin == worksheet.Unsaid {
				n++
			}
		}
	}
	return n
}

// baked is each bake of the day-book with what its tasters saw.
func (c *carding) baked() List {
	var out List
	v := &dayBook{&DayBook{Book: c.Book}, c.tables}
	for _, e := range c.bakes() {
		tasted := v.tasted(&e)
		if tasted == "" {
			tasted = "nothing noted of the taste"
		}
		day := e.Baked
		if day == "" {
			day = "day not noted"
		}
		out = append(out, Entry{Label: day, Text: tasted})
	}
	return out
}

// from is where the receipt comes from, what was in doubt in taking it from
// the page, and whose leave there is to print it.
func (c *carding) from() List {
	f := c.Report.Formula
	var out List
	add := func(s string) {
		if s != "" {
			out = append(out, Entry{Text: sentence(s)})
		}
	}
	add(under(f))
	if a := f.Ancestry; a != nil {
		add("made from " + quoted(a.Of) + where(a.Page))
		for _, d := range a.Doubt {
			add("in doubt on the page: " + d)
		}
		if a.Trial != "" {
			add("changed after " + a.Trial)
		}
	}
	for _, d := range doubtful(f) {
		add(d)
	}
	add(kitchen(&f.Kitchen))
	if f.Permission == "" {
		add(noPermission)
	} else {
		add(f.Permission)
	}
	return out
}

func where(page string) string {
	if page == "" {
		return ""
	}
	return ", " + page
}

// doubtful are the lines the page leaves in doubt.
func doubtful(f *formula.Formula) []string {
	var out []string
	for i := range f.Parts {
		for _, l := range f.Parts[i].Lines {
			if l.Why != "" {
				out = append(out, "in doubt on the page: "+quoted(l.Text)+", "+l.Why)
			}
		}
	}
	return out
}
