package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// icedAt is the place of "with" in "iced with", "ice it with": what follows is the
// icing. It is 0 when there is none.
func icedAt(ts phrase) int {
	for i := range ts { // "lay over the top the whites of three eggs"
		if (ts.key(i) == "top" || ts.key(i) == "surface") && ts.key(i-1) == "the" && (ts.key(i-2) == "over" || ts.key(i-2) == "on") && ts[max(0, i-5):i].has(laysOver) && ts[i:min(len(ts), i+4)].has(whiteWords) {
			return i
		}
	}
	for i := range ts { // "make an icing of the whites of three eggs"
		if ts.is(i, icingNames) && ts.key(i+1) == "made" && (ts.key(i+2) == "of" || ts.key(i+2) == "with") {
			return i + 2
		}
		if ts.is(i, icingNames) && (ts.key(i+1) == "of" || ts.key(i+1) == "with") && ts[max(0, i-4):i].has(makesIcing) {
			return i + 1
		}
	}
	for i := range ts {
		if k := ts.key(i); k != "iced" && k != "ice" && k != "frosted" && k != "frost" {
			continue
		}
		for j := i + 1; j < min(len(ts), i+4) && ts[j].kind == word; j++ {
			switch ts.key(j) {
			case "with":
				return j
			case "it", "them", "over", "the", "cake", "cakes", "top":
				continue
			}
			break
		}
	}
	return 0
}

// topping gathers what an icing is made of, as a part of its own.
func (m *making) topping(g gathered) {
	if m.parts[0].part.Kind == formula.Meringue || g.how == again {
		m.gather(g)
		return
	}
	was := m.now
	m.begin("icing", formula.Meringue, g.from)
	m.gather(g)
	m.now = was
}

// meringue parts whole eggs of which the yolks go into the filling and the whites,
// beaten with sugar, are spread over the top at the end: "Add the yolks of the eggs.
// Beat the whites to a froth with two spoonfuls of sugar, and spread over the top."
func (m *making) meringue() {
	p := m.parts[0]
	if p.part.Kind == formula.Meringue || slices.ContainsFunc(m.parts, func(q *portionOf) bool { return q.part.Kind == formula.Meringue }) {
		return
	}
	line := -1
	for i := range p.lines {
		for _, it := range p.lines[i].line.Items {
			switch {
			case it.Ingredient == white || it.Ingredient == yolk:
				m.meringueApart(p) // the text parts them itself
				return
			case it.Ingredient == egg && len(p.lines[i].line.Items) == 1 && it.Amount.State == formula.Stated && it.Amount.Measure == "":
				if line >= 0 {
					return
				}
				line = i
			}
		}
	}
	if line < 0 {
		return
	}
	yolks := false
	for k, s := range p.steps {
		ts := m.said(s)
		at := theWhites(ts)
		if at > 0 && yolks && (spreads(ts[at:]) || k+1 < len(p.steps) && spreads(m.said(p.steps[k+1]))) {
			m.partWhites(p, line, k)
			return
		}
		yolks = yolks || ts.has(yolkWords)
	}
}

// meringueApart moves whites that have a line of their own, and what is beaten with
// them, to a meringue, when they are laid over what was baked before.
func (m *making) meringueApart(p *portionOf) {
	baked, yolks := false, false
	for k, s := range p.steps {
		ts := m.said(s)
		at := slices.IndexFunc(p.lines, func(g gathered) bool {
			return g.from >= s.from && g.from < s.to && len(g.line.Items) == 1 && g.line.Items[0].Ingredient == white
		})
		if at >= 0 && baked && yolks && (laidOver(ts) || k+1 < len(p.steps) && laidOver(m.said(p.steps[k+1]))) {
			q := &portionOf{part: formula.Part{Name: "meringue", Kind: formula.Meringue, Pos: m.page.pos(s.from)}, at: s.from}
			m.moveFrom(p, q, k)
			return
		}
		if at < 0 && yolks && theWhites(ts) > 0 && ts.has(frothWords) && (spreads(ts) || k+1 < len(p.steps) && spreads(m.said(p.steps[k+1]))) {
			m.whitesOfThose(p, k)
			return
		}
		baked = baked || ts.has(bakingSoon)
		yolks = yolks || ts.has(yolkWords) || slices.ContainsFunc(p.lines, func(g gathered) bool {
			return g.from < s.from && len(g.line.Items) > 0 && g.line.Items[0].Ingredient == yolk
		})
	}
}

// whitesOfThose makes a meringue of the whites of the eggs whose yolks are listed, and
// of what step k beats up with them.
func (m *making) whitesOfThose(p *portionOf, k int) {
	for i := range p.lines {
		for _, it := range p.lines[i].line.Items {
			if it.Ingredient == white {
				return
			}
		}
	}
	for i := range p.lines {
		its := p.lines[i].line.Items
		if len(its) != 1 || its[0].Ingredient != yolk || its[0].Amount.State != formula.Stated || its[0].Amount.Measure != "" {
			continue
		}
		line, troubles := m.r.silent().Line("the whites of " + spelled(its[0].Amount.Number) + " eggs")
		if len(troubles) > 0 {
			return
		}
		q := &portionOf{part: formula.Part{Name: "meringue", Kind: formula.Meringue, Pos: m.page.pos(p.steps[k].from)}, at: p.steps[k].from}
		q.lines = append(q.lines, gathered{from: p.steps[k].from, to: p.steps[k].from, mention: mention{line: line, written: line.Text, note: "the whites of the eggs whose yolks go in"}})
		m.moveFrom(p, q, k)
		return
	}
}

// laidOver reports words that have a froth laid over what is baked: "put this over the
// pudding", "spread it on top".
func laidOver(ts phrase) bool {
	for i := range ts {
		if !ts.is(i, laysOver) {
			continue
		}
		for j := i + 1; j < min(len(ts), i+6); j++ {
			if (ts.key(j) == "over" || ts.key(j) == "on" || ts.key(j) == "upon") && ts[j:min(len(ts), j+4)].has(overWhat) {
				return true
			}
		}
	}
	return false
}

var (
	laysOver = words("spread put lay pour heap pile")
	overWhat = words("top pie pies pudding puddings custard tart")
)

// theWhites is the place of the whites that a sentence has beaten; 0 when it has
// none.
func theWhites(ts phrase) int {
	if !ts.has(beatsWhites) {
		return 0
	}
	for i := 1; i < len(ts); i++ {
		if eggSides.of(ts, i) == white && ts.is(i-1, ofThoseEggs) {
			return i
		}
	}
	return 0
}

// frothedWhites is the place of whites that are beaten up, after the thing was baked, to
// be laid over it; 0 when there are none. What follows is put in besides what a list has:
// "beat the whites to a froth with three tablespoonfuls of sugar".
func (m *making) frothedWhites(ts phrase) int {
	at := theWhites(ts)
	if at == 0 || !ts.has(frothWords) {
		return 0
	}
	for _, p := range m.parts {
		if slices.ContainsFunc(p.steps, func(s stretch) bool { return bakeWord.MatchString(s.text) || strings.Contains(s.text, "mould") }) {
			return at
		}
	}
	return 0
}

// spreads reports words that have a thing laid over what is baked: "spread it over the
// top", "cover the pie with this".
func spreads(ts phrase) bool { return ts.has(spreadWords) && ts.has(spreadOn) }

var (
	yolkWords   = words("yolk yolks yelk yelks")
	frothWords  = words("froth stiff meringue icing frosting light")
	ofThoseEggs = words("the beaten whipped whisked remaining other")
	beatsWhites = words("beat beaten beating whip whipped whisk whisked")
	spreadWords = words("spread cover covered frost frosting meringue heap pile over")
	spreadOn    = words("top pie pies pudding over cover frost frosting meringue")
)

// partWhites moves the whites, and what is beaten with them from step k on, to a
// meringue, and leaves the yolks.
func (m *making) partWhites(p *portionOf, line, k int) {
	eggs := &p.lines[line]
	it := eggs.line.Items[0]
	number := spelled(it.Amount.Number)
	r := m.r.silent()
	yolks, t1 := r.Line("the yolks of " + number + " eggs")
	whites, t2 := r.Line("the whites of " + number + " eggs")
	if len(t1)+len(t2) > 0 {
		return
	}
	const why = "the yolks go in, and the whites over the top"
	top := gathered{from: p.steps[k].from, to: p.steps[k].from, mention: mention{line: whites, written: whites.Text, note: why}}
	eggs.line, eggs.written, eggs.note = yolks, yolks.Text, why
	q := &portionOf{part: formula.Part{Name: "meringue", Kind: formula.Meringue, Pos: m.page.pos(p.steps[k].from)}, at: p.steps[k].from}
	q.lines = append(q.lines, top)
	m.moveFrom(p, q, k)
}

// moveFrom moves the lines that step k names, or the step after it, and the steps from
// it on, to another part.
func (m *making) moveFrom(p, q *portionOf, k int) {
	to := p.steps[k].to
	if k+1 < len(p.steps) {
		to = p.steps[k+1].to
	}
	kept := p.lines[:0]
	for _, g := range p.lines {
		if g.from >= p.steps[k].from && g.from < to {
			q.lines = append(q.lines, g)
			continue
		}
		kept = append(kept, g)
	}
	p.lines = kept
	m.restOfSugar(p, q, k)
	q.steps = append(q.steps, p.steps[k:]...)
	p.steps = p.steps[:k]
	m.parts = append(m.parts, q)
}

// restOfSugar gives the meringue "the remainder of the sugar", when an earlier step
// tells how much of it went in before: "four spoonfuls of the sugar".
func (m *making) restOfSugar(p, q *portionOf, k int) {
	ts := m.said(p.steps[k])
	if !ts.has(restWords) || !ts.has(sugarWord) {
		return
	}
	i := slices.IndexFunc(p.lines, func(g gathered) bool {
		return len(g.line.Items) == 1 && g.line.Items[0].Amount.State == formula.Stated && m.isRole(g.line.Items[0], "sugar")
	})
	if i < 0 {
		return
	}
	it := p.lines[i].line.Items[0]
	for _, s := range p.steps[:k] {
		ts := m.said(s)
		for j := range ts {
			a, n := m.r.silent().amountAt(ts[j:])
			if n == 0 || a.Measure != it.Amount.Measure || ts.key(j+n) != "of" || ts.key(j+n+1) != "the" || ts.key(j+n+2) != "sugar" {
				continue
			}
			rest := reference.Exact(it.Amount.Number.Likely.Sub(a.Number.Likely))
			if !rest.Likely.IsPositive() {
				return
			}
			in, t1 := m.r.silent().Line(a.Words + " of " + it.Name)
			over, t2 := m.r.silent().Line(spelled(rest) + " " + it.Amount.Measure + " of " + it.Name)
			if len(t1)+len(t2) > 0 {
				return
			}
			g := p.lines[i]
			g.line, g.written, g.note = over, over.Text, "what was left of it goes over the top"
			g.from, g.to = p.steps[k].from, p.steps[k].from
			q.lines = append(q.lines, g)
			p.lines[i].line, p.lines[i].written, p.lines[i].note = in, in.Text, "the rest goes over the top"
			return
		}
	}
}

func (m *making) isRole(it formula.Item, role string) bool {
	ing, ok := m.r.Tables.Ingredient(it.Ingredient)
	return ok && slices.Contains(ing.Roles, role)
}

var (
	whiteWords = words("white whites")
	icingNames = words("icing frosting meringue")
	makesIcing = words("make made making prepare")
	restWords  = words("remainder rest remaining")
	sugarWord  = words("sugar")
)
