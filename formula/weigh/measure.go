package weigh

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// measure weighs an amount given in a measure: by weight as it stands, by
// volume through the density of the ingredient.
func (s *scales) measure(w *Item, a formula.Amount) bool {
	rows := s.rows(a.Measure, w.Ingredient)
	if len(rows) == 0 {
		s.fault(s.when(a.Measure), "no %q of %s is known for %d in %s", a.Measure, w.Ingredient.Name, s.f.Year, s.f.Place)
		return false
	}
	volume := rows[0].Unit == "ml"
	u := Unknown{ID: "measure " + rows[0].ID, Words: "how much " + reference.A(rows[0].Names[0]) + " held"}
	if len(rows) > 1 {
		u.ID = "measures " + rows[0].Shared + a.Measure
		u.Words = "which " + a.Measure + " is meant"
		if rows[0].Shared != "" {
			u.ID = fmt.Sprintf("measures %s, %d ways", rows[0].Shared, len(rows))
			u.Words = "which " + rows[0].Shared + " the book measures by"
		}
	}
	if len(rows) == 1 || rows[0].Shared == "" {
		for _, r := range rows {
			u.Ways = append(u.Ways, Way{Words: r.ID, Odds: r.Odds, Span: r.Span, Source: &r.Provenance})
		}
		s.times(w, u)
	} else {
		s.sharedMeasure(w, rows, u)
	}
	if !volume {
		return true
	}
	if rows[0].Heap.High.IsPositive() && dry(w.Ingredient) && !s.level(a.Fill) {
		s.times(w, one("heap", "how heaped the spoons were", rows[0].Heap, &rows[0].Provenance))
	}
	return s.density(w)
}

// sharedMeasure handles a doubt that several measures share: whether the book
// means wine or imperial measure is one question for its pints and gills
// alike. The ways are one unknown; what each way holds is the line's own.
func (s *scales) sharedMeasure(w *Item, rows []*reference.Measure, u Unknown) {
	f := Factor{}
	for _, r := range rows {
		u.Ways = append(u.Ways, Way{Words: r.ID, Odds: r.Odds, Source: &r.Provenance, Span: r.Span})
		f.ByWay = append(f.ByWay, r.Span)
	}
	f.Unknown = s.unknown(u)
	w.Factors = append(w.Factors, f)
}

// rows are the measures of that name that hold for the book's year and place
// and for the ingredient. Rows made for the ingredient stand before general
// ones. Of a book that a later printer copied, measures of both years count.
func (s *scales) rows(name string, ing *reference.Ingredient) []*reference.Measure {
	var own, general []*reference.Measure
	for _, m := range s.t.MeasuresCalled(name) {
		if !m.Holds(s.f.Year, s.f.Place) && (s.f.Printed == 0 || !m.Holds(s.f.Printed, s.f.Place)) {
			continue
		}
		switch {
		case len(m.For) == 0:
			general = append(general, m)
		case suits(m.For, ing):
			own = append(own, m)
		}
	}
	rows := own
	if len(rows) == 0 {
		rows = general
	}
	if len(rows) == 0 {
		return nil
	}
	// Ways are drawn against each other only within one unit.
	unit := rows[0].Unit
	return slices.DeleteFunc(rows, func(m *reference.Measure) bool { return m.Unit != unit })
}

func suits(list []string, ing *reference.Ingredient) bool {
	return slices.Contains(list, ing.ID) || slices.ContainsFunc(ing.Roles, func(r string) bool { return slices.Contains(list, r) })
}

// when says where and when a measure of that name is known.
func (s *scales) when(name string) string {
	var known []string
	for _, m := range s.t.MeasuresCalled(name) {
		years := "at any time"
		switch {
		case m.From != 0 && m.To != 0:
			years = fmt.Sprintf("%d to %d", m.From, m.To)
		case m.From != 0:
			years = fmt.Sprintf("from %d", m.From)
		case m.To != 0:
			years = fmt.Sprintf("to %d", m.To)
		}
		where := "everywhere"
		if len(m.Places) > 0 {
			where = names(m.Places)
		}
		known = append(known, fmt.Sprintf("%s (%s, %s)", m.ID, where, years))
	}
	if len(known) == 0 {
		return ""
	}
	return "known: " + names(known)
}

func (s *scales) level(fill string) bool {
	return slices.ContainsFunc(s.t.Fills, func(f reference.Fill) bool { return f.ID == fill && f.Level })
}

// density turns millilitres into grams.
func (s *scales) density(w *Item) bool {
	d := w.Ingredient.Density
	switch {
	case d.Liquid.IsPositive():
		w.Base = w.Base.Mul(d.Liquid)
	case d.Loose.Likely.IsPositive():
		s.times(w, one("packing "+w.Ingredient.ID, "the packing of the "+plainName(w.Ingredient), d.Loose, &w.Ingredient.Provenance))
	case d.Particle.IsPositive():
		w.Base = w.Base.Mul(d.Particle)
	default:
		s.fault("give it by weight", "what a measure of %s weighs is not known", w.Ingredient.Name)
		return false
	}
	return true
}

// bookMeasure puts what the book says of its own measure in place of a measure
// the tables know otherwise: its teacup is a gill, whatever teacups were.
func (s *scales) bookMeasure(w *Item, a formula.Amount) formula.Amount {
	for i, own := range s.f.Measures {
		if a.Measure == "" || !s.t.SameMeasure(own.Name, a.Measure) {
			continue
		}
		s.own[i] = true
		s.times(w, one("own "+own.Name, "how much the book's "+own.Name+" held", own.Number, nil))
		a.Measure = own.Measure
		return a
	}
	return a
}

// noteMeasures says which measures were taken as the book gives them.
func (s *scales) noteMeasures() {
	for i, own := range s.f.Measures {
		if s.own[i] {
			s.out.Notes = append(s.out.Notes, "by the book's own word: "+strings.TrimRight(own.Words, ". "))
		}
	}
}

// plainName is the name of an ingredient without what is said of it behind a comma.
func plainName(ing *reference.Ingredient) string {
	name, _, _ := strings.Cut(ing.Name, ",")
	return name
}
