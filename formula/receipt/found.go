package receipt

import (
	"fmt"
	"slices"

	"assize/formula"
)

// found is what a piece of a line came to.
type found struct {
	items    []formula.Item
	notes    []string
	troubles []Trouble
	// asides are the words kept as the form of the items, clause by clause.
	asides []phrase
}

func (f *found) note(format string, args ...any) {
	if n := fmt.Sprintf(format, args...); !slices.Contains(f.notes, n) {
		f.notes = append(f.notes, n)
	}
}

func (f *found) trouble(column int, hint, format string, args ...any) {
	f.troubles = append(f.troubles, Trouble{Column: column, What: fmt.Sprintf(format, args...), Hint: hint})
}

// add takes in what another piece came to.
func (f *found) add(g found) {
	f.items = append(f.items, g.items...)
	f.troubles = append(f.troubles, g.troubles...)
	f.asides = append(f.asides, g.asides...)
	for _, n := range g.notes {
		f.note("%s", n)
	}
}

// aside remembers what is kept as said of a thing. Of eggs, words about yolks
// and whites are no more than that.
func (f *found) aside(th thing, clauses []phrase) {
	for _, c := range clauses {
		if th.ing != nil && fromEgg.has(th.ing.Kind) && c.has(eggWords) {
			continue
		}
		if len(th.hind) == 0 || c.column() != th.hind.column() {
			f.asides = append(f.asides, c)
		}
	}
}

// clean reports whether something was read and nothing went wrong.
func (f *found) clean() bool { return len(f.items) > 0 && len(f.troubles) == 0 }
