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
}

// Answers are the rows of the table that a receipt brings up, by its
// ingredients and the words of its page.
func Answers(w *weigh.Weighed, t *reference.Tables) []Answer {
	text := pageWords(w.Formula)
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
		for _, ing := range holds(w) {
			if slices.Contains(row.Ingredients, ing.ID) {
				add(ing.Name)
			}
		}
		if len(a.From) == 0 {
			for _, word := range row.Words {
				if hasAny(text, []string{word}) {
					add(strings.ToLower(word))
				}
			}
		}
		if len(a.From) > 0 {
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

// Spirits are the ingredients that hold alcohol by their composition.
func Spirits(w *weigh.Weighed) []*reference.Ingredient {
	var out []*reference.Ingredient
	for _, ing := range holds(w) {
		if ing.Per100.Alcohol.IsPositive() {
			out = append(out, ing)
		}
	}
	return out
}
