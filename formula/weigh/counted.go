package weigh

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// counted weighs things given by number: eggs, yolks, the juice of lemons.
func (s *scales) counted(w *Item, a formula.Amount) bool {
	each := a.Each
	role, rest := separated(w.Ingredient)
	side := role && each == "egg"
	u, ok := s.size(each, w.Ingredient, a.Size)
	// Eggs that were weighed whole tell of a yolk or a white by its share alone.
	if ok && !(side && s.f.Kitchen.EggGrams.IsPositive()) {
		s.times(w, u)
		if s.unit(each, w.Ingredient) == "ml" {
			return s.density(w)
		}
		return true
	}
	if side {
		egg, known := s.t.Ingredient("egg_whole")
		if !known {
			return false
		}
		size, known := s.size("egg", egg, a.Size)
		share, shareKnown := s.size("yolk-share", s.yolk(), "")
		if known && shareKnown {
			s.times(w, size)
			w.Factors = append(w.Factors, Factor{Unknown: s.unknown(share), Rest: rest})
			return true
		}
	}
	s.fault("give a weight or a measure", "what one %s of %s weighs is not known", orThing(each), w.Ingredient.Name)
	return false
}

func orThing(each string) string {
	if each == "" {
		return "piece"
	}
	return reference.Piece(each)
}

// parts are what a fruit gives that is not the whole of it.
var parts = []string{"juice", "rind", "peel", "zest", "pulp"}

// separated reports whether the ingredient is one side of a separated egg, and
// whether it is what is left when the yolk is out.
func separated(ing *reference.Ingredient) (is, white bool) {
	switch ing.Kind {
	case "white":
		return true, true
	case "yolk":
		return true, false
	}
	return false, false
}

func (s *scales) yolk() *reference.Ingredient {
	ing, _ := s.t.Ingredient("egg_yolk")
	return ing
}

// Today is the year taken for a kitchen of now: that of the edition of the
// tables, so that the same page weighs the same on any day.
const Today = 2026

// size finds what one counted thing gives in the kitchen that bakes it. With
// no kitchen given the book's and today's sizes are two ways of one unknown.
func (s *scales) size(each string, of *reference.Ingredient, word string) (Unknown, bool) {
	id := strings.TrimSpace("size " + each + " " + family(of) + " " + word)
	u := Unknown{ID: id, Words: "the size of the " + reference.Plural(reference.Piece(each))}
	if each == "yolk-share" {
		u.Words = "how much of the egg is yolk"
	} else if each != "egg" {
		thing := plainName(of)
		u.Words = "what one " + reference.Piece(each) + " weighs"
		if slices.ContainsFunc(parts, func(p string) bool { return strings.Contains(thing, p) }) {
			u.Words = "how much " + thing + " one " + reference.Piece(each) + " gives"
		}
	}
	k := s.f.Kitchen
	if each == "egg" {
		switch {
		case k.EggGrams.IsPositive():
			u.Ways = []Way{{Words: "as weighed", Span: reference.Exact(k.EggGrams)}}
			return u, true
		case word == "" && k.EggSize != "":
			word = k.EggSize
		}
	}
	year, place := k.Year, k.Place
	if place == "" {
		place = s.f.Place
	}
	if year != 0 {
		r := s.sizeRow(each, of, word, year, place)
		if r == nil {
			return u, false
		}
		u.Ways = []Way{{Span: r.Span, Source: &r.Provenance}}
		return u, true
	}
	then := s.sizeRow(each, of, word, s.f.Year, s.f.Place)
	now := s.sizeRow(each, of, word, Today, place)
	switch {
	case then == nil && now == nil:
		return u, false
	case then == nil:
		then, now = now, nil
	}
	u.Ways = []Way{{Words: "as the book's", Span: then.Span, Source: &then.Provenance, Odds: decimal.NewFromInt(1)}}
	if now != nil && now.ID != then.ID {
		s.mixed = true
		u.Ways = append(u.Ways, Way{Words: "as today's", Span: now.Span, Source: &now.Provenance, Odds: decimal.NewFromInt(1)})
	}
	return u, true
}

func (s *scales) unit(each string, of *reference.Ingredient) string {
	for i := range s.t.Sizes {
		if r := &s.t.Sizes[i]; r.Each == each && s.sameThing(r.Of, of) {
			return r.Unit
		}
	}
	return "g"
}

// sizeRow is the most particular row that fits: the size word first, then the
// time and place.
func (s *scales) sizeRow(each string, of *reference.Ingredient, word string, year int, place string) *reference.Size {
	var plain *reference.Size
	for i := range s.t.Sizes {
		r := &s.t.Sizes[i]
		if r.Each != each || !r.Holds(year, place) || !s.sameThing(r.Of, of) {
			continue
		}
		if r.Size == word {
			return r
		}
		if r.Size == "" && plain == nil {
			plain = r
		}
	}
	return plain
}

// sameThing reports whether a size row speaks of the ingredient or of another
// form of it: the juice of a period lemon is still the juice of a lemon.
func (s *scales) sameThing(id string, of *reference.Ingredient) bool {
	if id == of.ID {
		return true
	}
	other, ok := s.t.Ingredient(id)
	return ok && family(other) == family(of)
}

// family is the row an ingredient is a form of, itself when it is none.
func family(ing *reference.Ingredient) string {
	if ing.Base != "" {
		return ing.Base
	}
	return ing.ID
}
