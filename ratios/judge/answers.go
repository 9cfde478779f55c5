package judge

import (
	"slices"
	"strings"

	"assize/formula/weigh"
	"assize/reference"
)

// Answer is what the things of a receipt say to one question of the public.
type Answer struct {
	Row  *reference.Answer
	From []string // the ingredients, or the words of the page, that bring it up
	// Named are those that no line lists.
	Named []Named
}

// Answers are the rows of the table that a receipt brings up, by its
// ingredients, else by what its directions name, else by the words of its page.
func (r *Report) Answers(t *reference.Tables) []Answer {
	text := pageWords(r.Formula)
	var out []Answer
	for i := range t.Answers {
		row := &t.Answers[i]
		if hasAny(text, row.Unless) {
			continue
		}
		a := Answer{Row: row}
		add := func(s string) {
			if !slices.Contains(a.From, s) {
				a.From = append(a.From, s)
			}
		}
		for _, ing := range holds(r.Weighed) {
			if slices.Contains(row.Ingredients, ing.ID) {
				add(ing.Name)
			}
		}
		for _, n := range r.Named {
			if slices.Contains(row.Ingredients, n.Ingredient.ID) {
				a.Named = append(a.Named, n)
			}
		}
		if len(a.From)+len(a.Named) == 0 {
			for _, word := range row.Words {
				if hasAny(text, []string{word}) {
					add(strings.ToLower(word))
				}
			}
		}
		if len(a.From)+len(a.Named) > 0 {
			out = append(out, a)
		}
	}
	return out
}

// holds are the ingredients of a receipt, each once, in the order they are
// listed.
func holds(w *weigh.Weighed) []*reference.Ingredient {
	var out []*reference.Ingredient
	for i := range w.Parts {
		for j := range w.Parts[i].Items {
			if ing := w.Parts[i].Items[j].Ingredient; !slices.Contains(out, ing) {
				out = append(out, ing)
			}
		}
	}
	return out
}

// Spirits are the ingredients that hold alcohol by their composition, those
// listed and those the directions name.
func (r *Report) Spirits() (listed []*reference.Ingredient, named []Named) {
	for _, ing := range holds(r.Weighed) {
		if ing.Per100.Alcohol.IsPositive() {
			listed = append(listed, ing)
		}
	}
	for _, n := range r.Named {
		if n.Ingredient.Per100.Alcohol.IsPositive() {
			named = append(named, n)
		}
	}
	return listed, named
}
