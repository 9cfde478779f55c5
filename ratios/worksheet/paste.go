package worksheet

import (
	"strings"

	"assize/formula"
	"assize/reference"
)

// pasteNeeded is how much paste the dish takes, grams, and the dish it is
// reckoned for; nothing when that is not known.
func (a *Assembler) pasteNeeded(f *formula.Formula, p *Part) (reference.Span, *reference.Vessel) {
	if p.Lay != "lining" {
		return reference.Span{}, nil
	}
	dish := " " + reference.Key(f.Dish) + " "
	for i := range a.tables.Vessels {
		v := &a.tables.Vessels[i]
		if v.Refused != "" || v.Lining.IsZero() || !v.Holds(f.Year, f.Place) {
			continue
		}
		for _, n := range v.Names {
			if strings.Contains(dish, " "+reference.Key(n)+" ") {
				return v.Lining, v
			}
		}
	}
	return reference.Span{}, nil
}
