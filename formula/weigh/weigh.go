package weigh

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
	"assize/reference/fault"
)

// Weigh puts every line of a formula on the scales. What cannot be weighed is
// a fault at its line; all are returned together, and then there is no result.
// Parts that are only taken from another receipt must have been resolved.
func Weigh(f *formula.Formula, t *reference.Tables) (*Weighed, fault.List) {
	s := &scales{t: t, f: f, out: &Weighed{Formula: f}, byID: map[string]int{}, own: make([]bool, len(f.Measures))}
	for i := range f.Parts {
		s.part(&f.Parts[i])
	}
	if len(s.faults) > 0 {
		return nil, s.faults
	}
	s.noteKitchen()
	s.noteMeasures()
	return s.out, nil
}

type scales struct {
	t      *reference.Tables
	f      *formula.Formula
	out    *Weighed
	byID   map[string]int // unknowns
	faults fault.List
	line   *formula.Line
	// mixed marks that sizes of both the book's and today's kitchen were drawn.
	mixed bool
	own   []bool // which of the book's own measures were met
}

func (s *scales) part(p *formula.Part) {
	wp := Part{Of: p}
	for i := range p.Lines {
		s.line = &p.Lines[i]
		if len(s.line.Either) == 0 {
			wp.Items = s.items(wp.Items, i, s.line.Items, nil)
			continue
		}
		u := s.either(i, p)
		for way, alt := range s.line.Either {
			wp.Items = s.items(wp.Items, i, alt.Items, &When{Unknown: u, Way: way})
		}
	}
	s.out.Parts = append(s.out.Parts, wp)
}

// either makes the unknown that chooses between the readings of a line.
func (s *scales) either(line int, p *formula.Part) int {
	u := Unknown{
		ID:    fmt.Sprintf("either %s %d", p.Name, line),
		Words: "which is meant by " + quote(s.line.Text),
	}
	if s.line.Why != "" {
		u.Words += " (" + s.line.Why + ")"
	}
	for _, alt := range s.line.Either {
		one := decimal.NewFromInt(1)
		u.Ways = append(u.Ways, Way{Words: alt.Text, Odds: alt.Odds, Span: reference.Exact(one)})
	}
	return s.unknown(u)
}

func quote(text string) string { return `"` + text + `"` }

func (s *scales) items(out []Item, line int, items []formula.Item, when *When) []Item {
	for _, it := range items {
		ing, ok := s.t.Ingredient(it.Ingredient)
		if !ok {
			s.fault("", "unknown ingredient %q", it.Ingredient)
			continue
		}
		w := Item{Line: line, Ingredient: ing, Form: it.Form, State: it.Amount.State, Amount: it.Amount, When: when}
		if it.Amount.State == formula.Stated && !s.weigh(&w, it.Amount) {
			continue
		}
		s.out.Again(&w)
		if w.Grams.High.GreaterThan(heaviest) {
			s.fault("check the figure and the measure", "%s comes to %s g; no kitchen weighs that", quote(s.line.Text), w.Grams.High.Round(0))
			continue
		}
		out = append(out, w)
	}
	return out
}

// heaviest is the most one ingredient may weigh, grams: a thousand kilograms.
var heaviest = decimal.NewFromInt(1_000_000)

func (s *scales) fault(hint, format string, args ...any) {
	s.faults = append(s.faults, fault.Fault{
		File: s.f.File, Line: s.line.Pos.Line, Column: s.line.Pos.Column,
		What: fmt.Sprintf(format, args...), Hint: hint,
	})
}

// unknown adds an unknown, or finds the one of the same id.
func (s *scales) unknown(u Unknown) int {
	if i, ok := s.byID[u.ID]; ok {
		return i
	}
	for i, w := range u.Ways {
		if w.Odds.IsZero() {
			u.Ways[i].Odds = decimal.NewFromInt(1)
		}
	}
	s.out.Unknowns = append(s.out.Unknowns, u)
	i := len(s.out.Unknowns) - 1
	s.byID[u.ID] = i
	return i
}

// times multiplies the item by a span: into its base when the span is exact,
// as a factor of its own when it is not.
func (s *scales) times(w *Item, u Unknown) {
	if len(u.Ways) == 1 && u.Ways[0].IsExact() {
		w.Base = w.Base.Mul(u.Ways[0].Likely)
		return
	}
	w.Factors = append(w.Factors, Factor{Unknown: s.unknown(u)})
}

func one(id, words string, span reference.Span, from *reference.Provenance) Unknown {
	return Unknown{ID: id, Words: words, Ways: []Way{{Span: span, Source: from}}}
}

// weigh sets the base and factors of an item; false when it cannot be weighed.
func (s *scales) weigh(w *Item, a formula.Amount) bool {
	w.Base = decimal.NewFromInt(1)
	number := one(fmt.Sprintf("number %d %s %s", s.line.Pos.Line, s.line.Text, a.Words), "how many are meant by "+quote(a.Words), a.Number, nil)
	number.Number = true
	s.times(w, number)
	ok := true
	a = s.bookMeasure(w, a)
	switch {
	case a.Parts: // a baker's part is taken as a gram: only proportions are known
	case a.WeightOf != "":
		ok = s.weightOf(w, a.WeightOf)
	case a.Measure != "":
		ok = s.measure(w, a)
	default:
		ok = s.counted(w, a)
	}
	if ok && a.Fill != "" {
		s.fill(w, a.Fill)
	}
	return ok
}

// eggInShell is what an egg weighs in its shell against its inside: the shell
// is 11 to 12 parts in 100 of the whole (USDA SR28 NDB 01123, refuse 12 %; New
// International Encyclopaedia 1903, vol. 6 p. 681, 11 %), so 1 / 0.885.
var eggInShell = decimal.RequireFromString("1.13")

// weightOf weighs "the weight of four eggs": eggs in their shells, as the
// household tables count them.
func (s *scales) weightOf(w *Item, each string) bool {
	egg, ok := s.t.Ingredient("egg_whole")
	if each != "egg" || !ok {
		s.fault("give the weight", "what the weight of one %s is, is not known", each)
		return false
	}
	u, ok := s.size(each, egg, "")
	if !ok {
		s.fault("give the weight", "no weight of an egg is known for this year and place")
		return false
	}
	w.Base = w.Base.Mul(eggInShell)
	s.times(w, u)
	return true
}

func (s *scales) fill(w *Item, id string) {
	for i := range s.t.Fills {
		if f := &s.t.Fills[i]; f.ID == id {
			s.times(w, one("fill "+id, "how much "+quote(f.Words[0])+" means", f.Span, &f.Provenance))
			return
		}
	}
}

// dry reports whether an ingredient heaps on a spoon.
func dry(ing *reference.Ingredient) bool {
	return slices.ContainsFunc(ing.Roles, func(r string) bool {
		return r == "flour" || r == "meal" || r == "crumb" || r == "sugar"
	})
}

// noteKitchen says whose eggs and lemons were taken.
func (s *scales) noteKitchen() {
	if s.mixed {
		s.out.Notes = append(s.out.Notes, "no kitchen is given, so eggs and fruit are weighed both as the book's and as today's; say `kitchen:` and the doubt goes")
	}
}

// names joins names for a hint.
func names(list []string) string { return strings.Join(list, ", ") }
