package receipt

import (
	"slices"

	"assize/formula"
)

// A paste may be made and filled in one breath, and never called one: "rub the
// butter into the flour, wet it and roll it out; lay a spoonful of jam on each
// round". Taken as one part it would be judged as a filling of flour.

// unnamed parts what is made first from what goes into it, where the first
// things named are those of a paste, the words roll or raise it, and fill, cover
// or fold it afterwards.
func (m *making) unnamed() {
	p := m.onlyMade()
	if p == nil || p.part.Kind != formula.Filling && p.part.Kind != formula.Batter {
		return
	}
	n := 0
	for n < len(p.lines) && m.allOf(p.lines[n], pasteRoles) {
		n++
	}
	first := &portionOf{lines: p.lines[:n]}
	if n < 2 || n == len(p.lines) || !m.holds(first, "flour") || !m.holds(first, "butter") && !m.holds(first, "hard_fat") {
		return
	}
	rest := &portionOf{lines: p.lines[n:]}
	if m.holds(rest, "flour") {
		return
	}
	end, begins := p.lines[n-1].to, p.lines[n].from
	if !m.between(0, begins, workedWords) || !m.between(end, len(m.page.given), filledWords) {
		return
	}
	first.at, first.part = p.at, formula.Part{Name: "paste", Kind: formula.Pastry, Pos: p.part.Pos}
	var own []stretch
	for _, s := range p.steps {
		if s.from < end || s.to <= begins {
			first.steps = append(first.steps, s)
		} else {
			own = append(own, s)
		}
	}
	first.lines = slices.Clone(first.lines)
	p.lines, p.steps = slices.Clone(rest.lines), own
	p.part.Kind, p.part.Name = formula.Filling, "filling"
	m.parts = slices.Insert(m.parts, slices.Index(m.parts, p), first)
}

// filled gives the main part what a paste made in passing is filled with: things
// that are no paste's, named after the whole of it, are not rolled into it.
func (m *making) filled() {
	main := m.parts[0]
	if main.part.Kind != formula.Filling {
		return
	}
	for _, p := range m.parts[1:] {
		if p.part.Kind != formula.Pastry {
			continue
		}
		n := 0
		for n < len(p.lines) && m.allOf(p.lines[n], richPaste) {
			n++
		}
		first := &portionOf{lines: p.lines[:n]}
		if n < 2 || n == len(p.lines) || !m.holds(first, "flour") || !m.holds(first, "butter") && !m.holds(first, "hard_fat") {
			continue
		}
		end, begins := p.lines[n-1].to, p.lines[n].from
		steps := p.steps
		p.steps = nil
		for _, s := range steps {
			if s.from < end || s.to <= begins {
				p.steps = append(p.steps, s)
			} else {
				main.steps = append(main.steps, s)
			}
		}
		main.lines = append(main.lines, p.lines[n:]...)
		p.lines = slices.Clone(p.lines[:n])
		slices.SortStableFunc(main.lines, func(a, b gathered) int { return a.from - b.from })
		slices.SortStableFunc(main.steps, func(a, b stretch) int { return a.from - b.from })
	}
}

// richPaste are the roles of what a paste may hold.
var richPaste = append([]string{"egg", "milk", "cream", "sugar", "leaven", "nut"}, pasteRoles...)

var (
	workedWords = words("paste dough crust knead kneaded roll rolled raise raised")
	filledWords = words("fill filled fold folded lid cover covered lay laid pinch inside enclose close turnover")
)

// onlyMade is the one part that has lines, nil when there are more or a paste is
// taken from elsewhere.
func (m *making) onlyMade() *portionOf {
	var only *portionOf
	for _, p := range m.parts {
		switch {
		case p.part.Take != "" && !p.plain:
			return nil
		case len(p.lines) > 0 && only != nil:
			return nil
		case len(p.lines) > 0:
			only = p
		}
	}
	return only
}

// allOf reports a line all of whose things are of some roles.
func (m *making) allOf(g gathered, roles []string) bool {
	for _, it := range g.line.Items {
		if ing, ok := m.r.Tables.Ingredient(it.Ingredient); !ok || !overlap(ing.Roles, roles) {
			return false
		}
	}
	return len(g.line.Items) > 0
}

// between reports that a word of the set stands in a stretch of the page.
func (m *making) between(from, to int, set wordSet) bool {
	for _, ts := range m.seen {
		for i := range ts {
			if ts[i].from > from && ts[i].from <= to && ts[i].is(set) {
				return true
			}
		}
	}
	return false
}
