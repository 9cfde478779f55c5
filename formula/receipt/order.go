package receipt

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// timed takes the time of baking from words that stand under "Time".
func (m *making) timed(ts phrase) {
	if m.f.Bake != "" || len(ts) == 0 || !m.bakes() {
		return
	}
	words := m.page.words(ts[0].from-1, after(ts))
	if b := ReadBake(words); b.Said() && b.Minutes > 0 {
		m.f.Bake = shortened(words)
		m.told(ts, "how long it bakes", "from the words under \"time\"")
	}
}

// bakes reports that the method speaks of baking.
func (m *making) bakes() bool {
	for _, p := range m.parts {
		for _, s := range p.steps {
			if bakeWord.MatchString(s.text) {
				return true
			}
		}
	}
	return false
}

func (m *making) told(ts phrase, took, why string) {
	m.named = append(m.named, stretch{from: ts[0].from - 1, to: after(ts)})
	pos := m.page.pos(ts[0].from - 1)
	m.trace.Read = append(m.trace.Read, Interpretation{
		Words: m.page.words(ts[0].from-1, after(ts)), Line: pos.Line, Column: pos.Column, Took: took, Why: why, Part: -1, Index: -1,
	})
}

// order reads a sentence of the method. One that only lists what to take is no
// step.
func (m *making) order(whole, ts phrase) {
	chosen := func(f mention) bool { return leavesOpen(openPiece(ts, f.from)) }
	m.references(ts)
	w := newWeave(m.r, m.page, ts)
	onlyTakes := true
	iced, whipped := icedAt(ts), m.frothedWhites(ts)
	for _, f := range m.weave(w) {
		g := m.gatheredAt(f, ts, false)
		if iced > 0 && f.from > iced && f.how != again && !chosen(f) {
			m.topping(g)
			onlyTakes = false
			continue
		}
		switch {
		case f.how == again:
			if f.written != "" && !f.choice {
				m.limitEggs(f.written)
			}
			if f.first && !chosen(f) && !m.served(ts[:f.from]) {
				g.how, g.note = bare, "spoken of as known, and listed nowhere"
				m.firsts = append(m.firsts, known{g, m.now})
			}
			onlyTakes = false
			continue
		case chosen(f) || m.served(ts[:f.from]):
			if f.how == withAmount {
				m.choice(g)
			}
			onlyTakes = false
			continue
		case !(whipped > 0 && f.from > whipped) && m.repeated(g):
			onlyTakes = false
			continue
		}
		onlyTakes = onlyTakes && f.how == withAmount && !handledItems(f.line.Items)
		if m.settles(g) {
			continue
		}
		m.gather(g)
	}
	m.baked(ts)
	if !onlyTakes || len(w.found) == 0 || !listOnly(ts, w.found) || len(whole) > len(ts) {
		m.step(whole)
	}
}

// openPiece is the piece of a sentence that token i is in, without the brackets it is
// not in: "(lemon would improve it)" is said of the lemon alone.
func openPiece(ts phrase, i int) phrase {
	piece := pieceOf(ts, i)
	if !piece.has(bracket) {
		return piece
	}
	var out phrase
	for k := 0; k < len(piece); k++ {
		if piece.key(k) != "(" {
			out = append(out, piece[k])
			continue
		}
		end := k
		for end < len(piece) && piece.key(end) != ")" {
			end++
		}
		if in := piece[k:min(len(piece), end+1)]; in[0].from <= ts[i].from && ts[i].from <= in[len(in)-1].from {
			return in
		}
		k = end
	}
	return out
}

var bracket = words("(")

// leavesOpen reports a piece of a sentence that tells what might be put in as well, or
// instead.
func leavesOpen(ts phrase) bool {
	return ts.has(choiceWords) || (ts.key(0) == "if" || ts.key(0) == ";" && ts.key(1) == "if") && !wishes(ts) || niceAddition(ts) || madeRicher(ts)
}

// madeRicher reports "ten ounces will make it very rich, but eight are enough".
func madeRicher(ts phrase) bool {
	for i := 0; i+2 < len(ts); i++ {
		if ts.key(i) == "will" && ts.key(i+1) == "make" && ts[i:min(len(ts), i+6)].has(richer) {
			return true
		}
	}
	return ts.has(wouldWords) && ts.has(improveWords)
}

var (
	richer       = words("rich richer better lighter finer")
	wouldWords   = words("would will")
	improveWords = words("improve improved")
)

// niceAddition reports "half a pound of raisins will be a pleasant addition".
func niceAddition(ts phrase) bool {
	for i := 1; i < len(ts); i++ {
		if ts.key(i) == "addition" && ts.key(i-1) != "in" && ts.key(i-1) != "the" {
			return true
		}
	}
	return false
}

// wishes reports words before the making itself: "if you wish to make a good
// pudding, take", "if you want it". They leave nothing open.
func wishes(ts phrase) bool {
	return ts.key(1) == "you" && (ts.key(2) == "wish" || ts.key(2) == "want" || ts.key(2) == "would") && ts[:min(len(ts), 6)].has(makes)
}

var makes = words("make have")

// handledItems reports ingredients of which it is said what is done to them.
func handledItems(items []formula.Item) bool {
	return slices.ContainsFunc(items, func(it formula.Item) bool { return it.Form != "" })
}

// limitEggs has the eggs of the list without the whites or yolks that the method
// leaves out.
func (m *making) limitEggs(clause string) {
	for _, p := range m.parts {
		for i := range p.lines {
			l := &p.lines[i]
			if len(l.line.Items) != 1 || l.line.Items[0].Ingredient != egg {
				continue
			}
			text := l.line.Text
			if l.written != "" {
				text = l.written
			}
			line, troubles := m.r.silent().Line(text + ", " + clause)
			if len(troubles) == 0 {
				l.line, l.written, l.note = line, text+", "+clause, "some are left out in the method"
				return
			}
		}
	}
}

// settles puts what an ingredient is enough for to its line in the list, which
// gives no amount: "warm milk" there, "sufficient warm milk to make a dough" in
// the method.
func (m *making) settles(g gathered) bool {
	if g.how != bare || len(g.line.Items) != 1 {
		return false
	}
	it := g.line.Items[0]
	if it.Amount.State != formula.Enough && it.Amount.State != formula.ToTaste {
		return false
	}
	for _, p := range m.parts {
		for i := range p.lines {
			l := &p.lines[i]
			if len(l.line.Items) == 1 && l.line.Items[0].Ingredient == it.Ingredient && l.line.Items[0].Amount.State == formula.NotGiven {
				l.line, l.written, l.note = g.line, g.line.Text, "what it is enough for stands in the method"
				return true
			}
		}
	}
	return false
}

// choiceWords tell that a sentence speaks of what might be put in instead.
var choiceWords = words("substitute substituted substituting instead cannot omit omitted improvement improves accompany example")

// served reports that what follows is set beside the dish and not put in.
func (m *making) served(before phrase) bool {
	from := 0
	for i := range before {
		if before[i].kind == mark && before[i].key != "," && before.key(i+1) != "or" { // "; or with butter and sugar" goes on
			from = i + 1
		}
	}
	for i := from; i < len(before); i++ {
		switch before.key(i) {
		case "serve", "served", "garnish", "garnished", "eat", "eaten", "accompanied":
			return true
		case "send":
			if k := before.key(i + 1); k == "it" || k == "to" || k == "them" && before.key(i+2) == "to" {
				return true
			}
		}
	}
	return false
}

func (m *making) choice(g gathered) {
	pos := m.page.pos(g.from)
	m.trace.Read = append(m.trace.Read, Interpretation{
		Words: m.page.words(g.from, g.to), Line: pos.Line, Column: pos.Column,
		Took: "left in the method and not weighed", Why: "it is set beside the dish, or is one thing instead of another", Part: -1, Index: -1,
	})
}

// repeated reports an amount that was given before: the method of a list, or a
// summary at the end, says it again.
func (m *making) repeated(g gathered) bool {
	if g.how == bare || g.how == unread {
		return false
	}
	for _, it := range g.line.Items {
		same := m.sameAmount(it)
		switch told := m.had && !m.passing; { // the method of a list says it again
		case told && (same || m.inPart(it)):
		case !same || !m.proportioned && !m.summing(g):
			return false
		}
		if !m.isListed(it) {
			return false
		}
	}
	return true
}

// inPart reports that the part being read has a line of the thing, or of one that is
// called so too.
func (m *making) inPart(it formula.Item) bool {
	if len(m.parts) == 1 {
		return true
	}
	ing, ok := m.r.Tables.Ingredient(it.Ingredient)
	if !ok {
		return true
	}
	for i := range m.now.lines {
		for _, have := range m.now.lines[i].line.Items {
			other, known := m.r.Tables.Ingredient(have.Ingredient)
			if have.Ingredient == it.Ingredient || known && len(ing.Roles) > 0 && len(other.Roles) > 0 && ing.Roles[0] == other.Roles[0] {
				return true
			}
		}
	}
	return false
}

// summing reports an amount that stands behind its name, as in the summary at
// the end of a receipt.
func (m *making) summing(g gathered) bool {
	ts := m.page.tokens(g.from, g.to)
	a, n := m.r.silent().amountAt(ts)
	return n == 0 || !a.numbered
}

func (m *making) sameAmount(it formula.Item) bool {
	for _, p := range m.parts {
		for _, l := range p.lines {
			for _, have := range l.line.Items {
				if (have.Ingredient == it.Ingredient || have.Amount.Measure != "") && equalAmounts(have.Amount, it.Amount) && sameName(have.Name, it.Name) {
					return true
				}
			}
		}
	}
	return false
}

// equalAmounts reports the same amount, though one may be in ounces and the other in
// pounds.
func equalAmounts(a, b formula.Amount) bool {
	if x, y := ounces[a.Measure], ounces[b.Measure]; !x.IsZero() && !y.IsZero() {
		return a.Number.Likely.Mul(x).Equal(b.Number.Likely.Mul(y))
	}
	return a.Measure == b.Measure && a.Number.Likely.Equal(b.Number.Likely)
}

// ounces are how many go to a weight.
var ounces = map[string]decimal.Decimal{"ounce": one, "pound": decimal.NewFromInt(16)}

// sameName reports names of which one says no more than the other: "candied orange"
// and "candied lemon" are two things, though they are weighed alike.
func sameName(a, b string) bool {
	x, y := undone(stems(reference.Words(a))), undone(stems(reference.Words(b)))
	if len(x) == 0 || len(y) == 0 || x[len(x)-1] != y[len(y)-1] {
		return false
	}
	return containsAll(x, y) || containsAll(y, x)
}

// undone are the words of a name without what was done to the thing.
func undone(words []string) []string {
	return slices.DeleteFunc(words, func(w string) bool { return len(w) > 4 && strings.HasSuffix(w, "ed") })
}

// namedLast is what was named last in the part without an amount, nil when an amount
// came after it.
func (m *making) namedLast() *formula.Item {
	if n := len(m.now.lines); n > 0 {
		if l := &m.now.lines[n-1]; l.how == bare && len(l.line.Items) == 1 && l.line.Items[0].Amount.State == formula.NotGiven {
			return &l.line.Items[0]
		}
	}
	return nil
}

// namedBare reports a line without an amount that is called by one of the words.
func (m *making) namedBare(name []string) bool {
	for _, p := range m.parts {
		for i := range p.lines {
			for _, it := range p.lines[i].line.Items {
				if p.lines[i].how == bare && overlaps(stems(reference.Words(it.Name)), stems(name)) {
					return true
				}
			}
		}
	}
	return false
}

// lastItem is the amount met last in the part.
func (m *making) lastItem() *formula.Item {
	for i := len(m.now.lines) - 1; i >= 0; i-- {
		l := &m.now.lines[i]
		if l.how == withAmount && len(l.line.Items) > 0 {
			return &l.line.Items[len(l.line.Items)-1]
		}
	}
	return nil
}

// amountOf is how much the lines read so far have of a thing, nil when none says.
func (m *making) amountOf(c reference.Called) *formula.Item {
	for _, p := range m.parts {
		for i := range p.lines {
			for k := range p.lines[i].line.Items {
				if it := &p.lines[i].line.Items[k]; isCalled(it, c) {
					return it
				}
			}
		}
	}
	return nil
}

// listOnly reports a sentence that says nothing but what to take.
func listOnly(ts phrase, found []mention) bool {
	for _, c := range uncovered(ts, found) {
		for i := range c {
			if c[i].kind != word || !c.is(i, glue) {
				return false
			}
		}
	}
	return true
}

func (m *making) step(ts phrase) {
	if len(ts) == 0 {
		return
	}
	to := after(ts)
	if to < len(m.page.given) && m.page.given[to] == '.' {
		to++
	}
	_, to = m.marked(to-1, to)
	text := m.page.step(ts[0].from-1, to)
	if m.hand != "" {
		text = upperFirst(m.hand) + ": " + m.page.words(ts[0].from-1, to)
	}
	m.now.steps = append(m.now.steps, stretch{ts[0].from - 1, to, text})
}

func lowerFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + s[n:]
}

func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// baked takes oven, time and dish from a sentence.
func (m *making) baked(ts phrase) {
	words := func(from, to int) string { return m.page.words(ts[from].from-1, after(ts[:to])) }
	before := *m.f
	oven, bake, dish := m.r.setBaking(m.f, ts, words)
	tell := func(at int, value, old, took string) {
		if at >= 0 && value != old {
			pos := m.page.pos(ts[at].from - 1)
			m.trace.Read = append(m.trace.Read, Interpretation{
				Words: value, Line: pos.Line, Column: pos.Column, Took: took, Why: "from the method", Part: -1, Index: -1,
			})
		}
	}
	tell(oven, m.f.Oven, before.Oven, "the heat of the oven")
	tell(bake, m.f.Bake, before.Bake, "how long it bakes")
	tell(dish, m.f.Dish, before.Dish, "the dish")
}
