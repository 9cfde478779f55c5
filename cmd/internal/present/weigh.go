package present

import (
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula/weigh"
	"assize/ratios/judge"
	"assize/reference"
)

// Weigh is the page of a weighed receipt: every line on the scales, and what
// was taken for what.
func Weigh(s *Sheet, a About) *Page {
	w := &weighing{Sheet: s, citations: citations{tables: a.Tables}}
	f := s.Report.Formula
	p := &Page{Title: f.Title, Under: under(f)}
	for i := range s.Report.Parts {
		p.section(w.heading(i), w.table(i), w.notes(i))
	}
	p.section(headDoubt, w.doubts())
	p.section(headEye, w.unlisted())
	p.section(headElsewhere, (&checking{Sheet: s}).elsewhere())
	p.section(headAssumed, assumed(s.Report))
	p.section(headSources, w.sources(a)...)
	return p
}

type weighing struct {
	*Sheet
	citations
}

func (w *weighing) heading(i int) string {
	p := &w.Report.Parts[i]
	out := upper(p.Name)
	if is := partIs(p); is != "" {
		out += " (" + is + ")"
	}
	return out
}

func (w *weighing) table(i int) Table {
	p := &w.Report.Parts[i]
	unit := w.unit(i)
	t := Table{Columns: []Column{
		{Name: "in the book"}, {Name: "is"}, {Name: unit, Right: true}, {Name: "between", Right: true},
		{Name: basisColumn[p.Profile.Basis.Of], Right: true},
	}}
	for _, l := range p.Lines {
		text := l.Text
		for _, it := range l.Items {
			row := []string{text, itemIs(&it), "", "", ""}
			text = ""
			if words, ok := states[it.State]; ok {
				row[2] = words
			} else {
				row[2], row[3], row[4] = figure(it.Grams.Likely), between(it.Grams), figure(it.Percent)
			}
			t.Rows = append(t.Rows, row)
		}
	}
	total := p.Profile.Total
	t.Rows = append(t.Rows, []string{"all together", "", figure(total.Likely), between(total), ""})
	return t
}

// itemIs is an ingredient with its form, as far as its name does not say it;
// the less likely side of a line in doubt says so.
func itemIs(it *judge.Item) string {
	out := it.Ingredient.Name
	for form := range strings.SplitSeq(it.Form, ", ") {
		if form != "" && !strings.Contains(out, form) {
			out += ", " + form
		}
	}
	if !it.Used {
		return "or " + out
	}
	return out
}

// notes are what is to be checked of a part's lines.
func (w *weighing) notes(i int) List {
	var out List
	for _, l := range w.Report.Parts[i].Lines {
		for _, n := range l.Notes {
			out = append(out, Entry{Text: quoted(l.Text) + ": " + n})
		}
	}
	return out
}

// doubts are what the weights hang on, with where each figure comes from.
func (w *weighing) doubts() List {
	var out List
	for i := range w.Report.Weighed.Unknowns {
		u := &w.Report.Weighed.Unknowns[i]
		var ways []string
		for j := range u.Ways {
			said := strings.TrimSpace(w.way(u, &u.Ways[j]))
			if said != "" && !strings.Contains(u.Words, said) {
				ways = append(ways, said)
			}
		}
		e := Entry{Text: upper(u.Words)}
		if len(ways) > 0 {
			e.Text += ": " + or(ways)
		}
		out = append(out, e)
	}
	return out
}

// way is one way of taking an unknown with its figure and its source.
func (w *weighing) way(u *weigh.Unknown, way *weigh.Way) string {
	if way.Source == nil {
		if way.Words != "" {
			return way.Words
		}
		return spanned(way.Span)
	}
	mark := " " + w.cite(*way.Source)
	if size := w.size(way.Source); size != nil {
		said := weight(way.Span, size.Unit)
		if size.Unit == "share" {
			said = spanned(way.Span.Mul(hundred)) + " in 100"
		}
		if way.Words != "" {
			said = way.Words + " " + said
		}
		return said + mark
	}
	if m := w.measure(way.Source); m != nil && u.ID != heaped {
		return m.Names[0] + " of " + weight(m.Span, m.Unit) + mark
	}
	for i := range w.tables.Ingredients {
		if way.Source == &w.tables.Ingredients[i].Provenance {
			return fine(way.Span) + " g to the ml" + mark
		}
	}
	return "times " + fine(way.Span) + mark
}

// heaped is the unknown of how heaped spoons were. It has the source of the
// measure it belongs to.
const heaped = "heap"

var hundred = decimal.NewFromInt(100)

// size is the row of sizes a figure was taken from, nil when from none.
func (w *weighing) size(from *reference.Provenance) *reference.Size {
	for i := range w.tables.Sizes {
		if r := &w.tables.Sizes[i]; from == &r.Provenance {
			return r
		}
	}
	return nil
}

// measure is the row of measures a figure was taken from, nil when from none.
func (w *weighing) measure(from *reference.Provenance) *reference.Measure {
	for i := range w.tables.Measures {
		if r := &w.tables.Measures[i]; from == &r.Provenance {
			return r
		}
	}
	return nil
}

// unlisted are the things named in the steps and not listed, or the reverse:
// to be put right before anything is weighed out.
func (w *weighing) unlisted() List {
	var out List
	for i := range w.Report.Findings {
		if f := &w.Report.Findings[i]; f.Code == "not-listed" {
			out = append(out, Entry{Label: f.Part, Text: f.Says})
		}
	}
	return out
}

// assumed is what was taken for granted of the whole receipt.
func assumed(r *judge.Report) List {
	var out List
	if k := kitchen(&r.Formula.Kitchen); k != "" {
		out = append(out, Entry{Text: k})
	}
	for _, n := range r.Notes {
		out = append(out, Entry{Text: sentence(n)})
	}
	return out
}
