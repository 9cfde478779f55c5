package receipt

import (
	"cmp"
	"fmt"
	"iter"
	"slices"

	"assize/formula"
	"assize/reference"
)

// Beside settles the names that mean another thing beside what stands in the
// same receipt: jelly in a pie of meat is stock, and not of fruit. It changes the
// items in place and leaves a note on each line it changes.
func Beside(f *formula.Formula, t *reference.Tables) {
	settleBeside(f, t, func(yield func(*formula.Line) bool) {
		for i := range f.Parts {
			for j := range f.Parts[i].Lines {
				if !yield(&f.Parts[i].Lines[j]) {
					return
				}
			}
		}
	})
}

func settleBeside(f *formula.Formula, t *reference.Tables, lines iter.Seq[*formula.Line]) {
	meat := false
	for l := range lines {
		for it := range itemsOf(l) {
			ing, ok := t.Ingredient(it.Ingredient)
			meat = meat || ok && slices.Contains(ing.Roles, "meat")
		}
	}
	if !meat {
		return
	}
	book := reference.When{Year: f.Year, Place: f.Place}
	kitchen := reference.When{Year: cmp.Or(f.Kitchen.Year, f.Year), Place: cmp.Or(f.Kitchen.Place, f.Place)}
	with := func(w reference.When) reference.When { w.Beside = "meat"; return w }
	for l := range lines {
		for it := range itemsOf(l) {
			plain, ok := t.Called(it.Name, book, kitchen)
			if !ok || plain.Ingredient == nil || plain.Ingredient.ID != it.Ingredient {
				continue
			}
			if c, ok := t.Called(it.Name, with(book), with(kitchen)); ok && c.Ingredient != nil && c.Ingredient != plain.Ingredient {
				it.Ingredient = c.Ingredient.ID
				l.Notes = append(slices.Clip(l.Notes), fmt.Sprintf("%s beside meat is taken as %s", it.Name, c.Ingredient.Name))
			}
		}
	}
}

// itemsOf are the items of a line and of each of its alternatives.
func itemsOf(l *formula.Line) iter.Seq[*formula.Item] {
	return func(yield func(*formula.Item) bool) {
		for i := range l.Items {
			if !yield(&l.Items[i]) {
				return
			}
		}
		for a := range l.Either {
			for i := range l.Either[a].Items {
				if !yield(&l.Either[a].Items[i]) {
					return
				}
			}
		}
	}
}
