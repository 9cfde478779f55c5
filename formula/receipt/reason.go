package receipt

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// reason tells why an amount is taken as it is, and between what bounds one of
// its measure lies: "wineglass: printed household tables", "45-70 ml, likely 57".
func (r *Reader) reason(it formula.Item) (why, span string) {
	a := it.Amount
	switch {
	case a.State == formula.ToTaste:
		return "the book leaves it to the taste", ""
	case a.State == formula.Enough:
		return "the book gives no figure, only what it is enough for", ""
	case a.State == formula.NotGiven:
		return "the book names it and gives no amount", ""
	case a.WeightOf != "":
		return "weighed against eggs, so it goes with their size", ""
	case a.Parts:
		return "only the proportion to the other lines is known", ""
	case a.Measure != "":
		return r.measureReason(a, it.Ingredient)
	}
	return r.countReason(a, it.Ingredient)
}

// grades are the ways a measure is known.
var grades = map[string]string{"exact": "fixed by law or definition", "printed": "printed tables of the time", "custom": "custom of the kitchen"}

func (r *Reader) measureReason(a formula.Amount, id string) (why, span string) {
	ing, _ := r.Tables.Ingredient(id)
	rows := r.holding(a.Measure, ing)
	if len(rows) == 0 {
		return "", ""
	}
	general := slices.DeleteFunc(slices.Clone(rows), func(m *reference.Measure) bool { return len(m.For) == 0 })
	if len(general) > 0 { // where such a row fits, the rows without `for` are left aside
		rows = general
	}
	best := rows[0]
	low, high := best.Low, best.High
	for _, m := range rows[1:] {
		if m.Unit != best.Unit {
			continue
		}
		low, high = decimal.Min(low, m.Low), decimal.Max(high, m.High)
		if m.Odds.GreaterThan(best.Odds) {
			best = m
		}
	}
	if a.Measure == best.Unit {
		return "", "" // grams are grams
	}
	why = grades[best.Grade]
	if best.Grade != "exact" {
		why += r.work(best.Source)
	}
	if !low.Equal(high) && len(rows) > 1 {
		why += "; it meant more than one thing"
	}
	return why, reference.A(a.Measure) + " is " + bounds(low, best.Likely, high, best.Unit)
}

// countReason is of things counted.
func (r *Reader) countReason(a formula.Amount, id string) (why, span string) {
	ing, ok := r.Tables.Ingredient(id)
	if !ok {
		return "", ""
	}
	for i := range r.Tables.Sizes {
		s := &r.Tables.Sizes[i]
		if s.Each == a.Each && s.Size == a.Size && s.Unit != "share" && r.kin(s.Of, ing) && s.Holds(r.Year, r.Place) {
			return strings.TrimPrefix(r.work(s.Source), ", "), "one gives " + bounds(s.Low, s.Likely, s.High, s.Unit)
		}
	}
	return "counted; weighed by the size of one", ""
}

// work names a source in few words.
func (r *Reader) work(id string) string {
	s, ok := r.Tables.Source(id)
	switch {
	case !ok:
		return ""
	case s.Author != "" && s.Year != "":
		return ", " + s.Author + " " + s.Year
	}
	return ", " + s.Title
}

// bounds is a range as a cook reads it: "45-70 ml, likely 57".
func bounds(low, likely, high decimal.Decimal, unit string) string {
	l, m, h := rounded(low), rounded(likely), rounded(high)
	if l == h {
		return m + " " + unit
	}
	return l + "-" + h + " " + unit + ", likely " + m
}

// spelled is a number or a range as a cook writes it.
func spelled(s reference.Span) string {
	if s.IsExact() {
		return figured(s.Likely)
	}
	return figured(s.Low) + " to " + figured(s.High)
}
