package receipt

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// finish makes the formula of what was gathered.
func (m *making) finish() (*formula.Formula, Trace) {
	m.neverListed()
	m.meringue()
	for _, p := range m.parts {
		slices.SortStableFunc(p.lines, func(a, b gathered) int { return a.from - b.from })
		m.dropAgain(p)
	}
	m.partAlone()
	m.unnamed()
	m.filled()
	var out []*portionOf
	for _, p := range m.parts {
		if p.plain && (m.parts[0].part.Kind == formula.Cake || m.parts[0].part.Kind == formula.Bread || m.makes(p.part.Kind)) {
			continue // the paste is what is in hand
		}
		if len(p.lines) == 0 && p.part.Take == "" {
			if len(p.steps) > 0 && len(m.parts) > 1 {
				m.moveSteps(p)
			}
			continue
		}
		out = append(out, p)
	}
	if len(out) == 0 {
		return nil, noReceipt(1, 1, "no ingredient is named in it", "is it a receipt? write what goes in, with its amount: 6 eggs")
	}
	slices.SortStableFunc(out, func(a, b *portionOf) int { return cmp.Or(rank(a)-rank(b), a.begins()-b.begins()) })
	m.tellKinds(out)
	m.resting(out)
	settleBeside(m.f, m.r.Tables, func(yield func(*formula.Line) bool) {
		for _, p := range out {
			for i := range p.lines {
				if !yield(&p.lines[i].line) {
					return
				}
			}
		}
	})
	read := 0
	for _, p := range out {
		for _, g := range p.lines {
			read += len(g.line.Items)
		}
	}
	if read > 0 {
		m.trace.Read = slices.Grow(m.trace.Read, read+len(out))
	}
	for i, p := range out {
		part := p.part
		part.Lines = slices.Grow(part.Lines, len(p.lines))
		for _, s := range p.steps {
			part.Steps = append(part.Steps, s.text)
		}
		for _, g := range p.lines {
			part.Lines = append(part.Lines, m.line(g, i, len(part.Lines)))
		}
		m.f.Parts = append(m.f.Parts, part)
		if part.Take != "" {
			pos := part.Pos
			m.trace.Read = append(m.trace.Read, Interpretation{
				Words: part.Take, Line: pos.Line, Column: pos.Column,
				Took: "taken from another receipt of the book: " + part.Take, Why: "the text names it and does not give it", Part: i, Index: -1,
			})
		}
	}
	m.owe()
	m.trace.inOrder()
	return m.f, m.trace
}

// neverListed lists what the receipt speaks of as known and nowhere lists: "rub the
// butter into the flour" of a paste that is told in two lines.
func (m *making) neverListed() {
	for _, k := range m.firsts {
		if len(k.line.Items) == 1 && !m.isListed(k.line.Items[0]) && !m.namedBare(reference.Words(k.line.Items[0].Name)) {
			k.in.lines = append(k.in.lines, k.gathered)
		}
	}
}

// makes reports that a part of the kind is made here.
func (m *making) makes(k formula.Kind) bool {
	return slices.ContainsFunc(m.parts, func(p *portionOf) bool { return p.part.Kind == k && len(p.lines) > 0 })
}

// tellKinds settles by what is in it the kind of a part whose name does not
// tell, and how a paste made here is laid.
func (m *making) tellKinds(parts []*portionOf) {
	raised := m.titled.has(raisedWords)
	for _, p := range parts {
		if p.part.Kind == formula.Filling && p == m.parts[0] && m.holds(p, "flour") {
			switch {
			case m.mostlyOf(p, pasteRoles) && m.holds(p, "flour") && m.says(p, pasteWords):
				p.part.Kind, p.part.Name = formula.Pastry, "paste"
			case m.holds(p, "flour") && m.holds(p, "yeast") && len(parts) == 1:
				p.part.Kind, p.part.Name = formula.Bread, "bread"
			case m.holds(p, "flour") && m.says(p, cakeWords) && !m.titled.has(fillings) && len(parts) == 1 && !m.says(p, batterWords):
				p.part.Kind, p.part.Name = formula.Cake, "cake"
			case (m.says(p, batterWords) || m.titled.has(batterWords)) && m.holds(p, "flour") && (m.holds(p, "milk") || m.holds(p, "egg")) && len(parts) == 1:
				p.part.Kind, p.part.Name = formula.Batter, "batter"
			}
		}
		if p == m.parts[0] {
			if kind := m.kindByMakings(p, len(parts) == 1); kind != p.part.Kind {
				p.part.Kind, p.part.Name = kind, string(kind)
			}
		}
		if p.part.Kind != formula.Pastry || p.part.Lay != "" || len(p.lines) == 0 {
			continue
		}
		if raised {
			p.part.Lay = "raised"
			continue
		}
		for _, q := range parts {
			for _, s := range q.steps {
				if !strings.Contains(s.text, "ine") && !strings.Contains(s.text, "aise") && !strings.Contains(s.text, "alls") {
					continue // neither line nor raise nor walls
				}
				ts := m.said(s)
				if p.part.Lay != "" || !ts.has(lineOrRaise) {
					continue
				}
				if ts.has(raiseWords) && ts.has(ofPaste) || ts.has(wallWords) {
					p.part.Lay = "raised"
				} else if ts.has(linedWords) {
					p.part.Lay = layOf(ts)
				}
			}
		}
	}
}

// kindByMakings is the kind of the main part, told by what goes into it and how that is
// handled where the title would have it another: a cake that rises with yeast is bread,
// one without flour or eggs is sweetmeat, one baked on a griddle is batter.
func (m *making) kindByMakings(p *portionOf, alone bool) formula.Kind {
	kind := p.part.Kind
	meal := m.holds(p, "flour") || m.holds(p, "meal")
	dry := meal || m.holds(p, "crumb") || m.holds(p, "nut")
	eggs := m.holds(p, "egg") || m.holds(p, "white") || m.holds(p, "yolk")
	switch {
	case len(p.lines) == 0:
	case kind == formula.Cake && !m.holds(p, "flour") && m.holds(p, "setting"): // a sponge of gelatine
		return formula.Filling
	case kind == formula.Cake && !dry && !eggs && m.holds(p, "sugar"): // clear cakes of fruit
		return formula.Filling
	case kind == formula.Pastry && !dry && m.holds(p, "sugar") && m.holds(p, "pulp"): // a paste of fruit
		return formula.Filling
	case kind == formula.Bread && !meal && !m.holds(p, "yeast") && eggs && m.holds(p, "milk"): // bread is only put in
		return formula.Filling
	case kind == formula.Cake && meal && alone && !m.holds(p, "sugar") && (m.holds(p, "milk") || m.holds(p, "egg") || m.holds(p, "yeast")) && (m.says(p, batterWords) || m.says(p, griddleWords)):
		return formula.Batter
	case kind == formula.Cake && meal && m.holds(p, "yeast"):
		return formula.Bread
	case kind == formula.Filling && m.holds(p, "flour") && alone && m.holds(p, "leaven") && m.holds(p, "sugar") && !m.titled.has(puddingWords):
		return formula.Cake
	}
	return kind
}

var (
	raisedWords  = words("raised standing")
	pasteWords   = words("paste dough crust")
	cakeWords    = words("cakes biscuits")
	batterWords  = words("batter")
	puddingWords = words("pudding puddings pie pies tart tarts custard custards dumplings")
	griddleWords = words("griddle gridiron bakestone")
	linedWords   = words("line lined")
	lineOrRaise  = union(linedWords, raiseWords)
	pasteRoles   = []string{"flour", "butter", "hard_fat", "water", "salt", "yolk", "oil", "white"}
)

// says reports that a word of the set is among the steps of a part.
func (m *making) says(p *portionOf, set wordSet) bool {
	for _, ts := range m.seen {
		for i := range ts {
			t := &ts[i]
			if t.is(set) && slices.ContainsFunc(p.steps, func(s stretch) bool { return t.from > s.from && t.from <= s.to }) {
				return true
			}
		}
	}
	return false
}

// mostlyOf reports a part whose amounts are all of things of some roles.
func (m *making) mostlyOf(p *portionOf, roles []string) bool {
	for _, g := range p.lines {
		for _, it := range g.line.Items {
			if ing, ok := m.r.Tables.Ingredient(it.Ingredient); !ok || it.Amount.State == formula.Stated && !overlap(ing.Roles, roles) {
				return false
			}
		}
	}
	return true
}

func (m *making) holds(p *portionOf, role string) bool {
	for _, g := range p.lines {
		for _, it := range g.line.Items {
			if ing, ok := m.r.Tables.Ingredient(it.Ingredient); ok && slices.Contains(ing.Roles, role) {
				return true
			}
		}
	}
	return false
}

// owe shows as unread whatever words have found no place: not in the title, a
// line, a step, nor among what was told or set aside.
func (m *making) owe() {
	placed := make([]bool, len(m.page.given))
	put := func(from, to int) {
		for i := max(0, from); i < min(to, len(placed)); i++ {
			placed[i] = true
		}
	}
	for _, s := range m.named {
		put(s.from, s.to)
	}
	for _, a := range m.set {
		put(a.from, a.to)
	}
	for _, p := range m.parts {
		kept := slices.ContainsFunc(m.f.Parts, func(q formula.Part) bool { return q.Name == p.part.Name })
		for _, s := range p.steps {
			if kept {
				put(s.from, s.to)
			}
		}
		for _, g := range p.lines {
			if kept {
				put(g.from, g.to)
			}
		}
	}
	for _, ts := range m.seen {
		m.owing(ts, placed)
	}
}

// owing shows the words of a block that have no place.
func (m *making) owing(ts phrase, placed []bool) {
	for i := 0; i < len(ts); i++ {
		from := i
		for i < len(ts) && (ts[i].kind == mark && i > from || ts[i].kind != mark && !placed[ts[i].from-1]) {
			i++
		}
		run := trimGlue(trimMarks(ts[from:i]))
		if len(run) == 0 {
			continue
		}
		pos := m.page.pos(run[0].from - 1)
		m.trace.Unread = append(m.trace.Unread, Stretch{
			Words: m.page.copied(run[0].from-1, after(run)), Line: pos.Line, Column: pos.Column,
			Why: "no place was found for these words", Hint: "write them into the file where they belong, or take them out of the text", Part: -1, Index: -1,
		})
	}
}

// rank puts what is taken for the case before what goes into it.
func rank(p *portionOf) int {
	if p.part.Take != "" && p.part.Kind == formula.Pastry {
		return 0
	}
	return 1
}

// begins is where the first words of a part stand.
func (p *portionOf) begins() int {
	if len(p.lines) > 0 {
		return p.lines[0].from
	}
	return p.at
}

// moveSteps gives the steps of a part without lines to the part before it.
func (m *making) moveSteps(p *portionOf) {
	for _, other := range m.parts {
		if other != p && len(other.lines) > 0 {
			other.steps = append(other.steps, p.steps...)
			p.steps = nil
			return
		}
	}
}

// dropAgain takes out names without an amount that another line of the receipt
// holds.
func (m *making) dropAgain(p *portionOf) {
	kept := p.lines[:0]
	var named []string
	for _, g := range p.lines {
		if g.how == bare && !g.listed && len(g.line.Items) > 0 {
			it := g.line.Items[0]
			if it.Amount.State == formula.Enough && !m.had {
				kept = append(kept, g) // as much more as is wanted
				continue
			}
			if it.Amount.Words != "" && len(m.parts) > 1 && !m.inThePart(p, it) && !slices.Contains(named, it.Ingredient) {
				kept = append(kept, g) // a little salt for the crust, though there is salt in the filling
				named = append(named, it.Ingredient)
				continue
			}
			if !((strings.HasPrefix(it.Amount.Words, "a little") || it.Amount.Words == "some") && m.firstOf(p, g)) && (m.isListed(it) || slices.Contains(named, it.Ingredient)) {
				continue
			}
			named = append(named, it.Ingredient)
			defer m.owned.list(g.line)
		}
		kept = append(kept, g)
	}
	p.lines = kept
}

// inThePart reports that the part has an amount of the thing.
func (m *making) inThePart(p *portionOf, it formula.Item) bool {
	return slices.ContainsFunc(p.lines, func(g gathered) bool {
		return (g.how == withAmount || g.listed) && slices.ContainsFunc(g.line.Items, func(have formula.Item) bool { return have.Ingredient == it.Ingredient })
	})
}

// firstOf reports that no line before it in the part holds the same thing: "a little
// milk" to pound almonds with comes before the pint of milk, and besides it.
func (m *making) firstOf(p *portionOf, g gathered) bool {
	later := false
	for i := range p.lines {
		for _, it := range p.lines[i].line.Items {
			if it.Ingredient == g.line.Items[0].Ingredient && p.lines[i].from < g.from {
				return false
			}
			later = later || it.Ingredient == g.line.Items[0].Ingredient && p.lines[i].from > g.to && p.lines[i].how == withAmount && p.lines[i].note != ofNamed
		}
	}
	return later && !m.had
}

// line makes the line of the formula and tells how it was taken.
func (m *making) line(g gathered, part, index int) formula.Line {
	pos := m.page.pos(g.from)
	l := g.line
	if g.written != "" {
		l.Text = g.written
	}
	l.Pos = pos
	words := m.page.copied(m.marked(g.from, g.to))
	if d := m.doubtIn(g.from, g.to); d != nil && g.how != unread {
		l = m.doubtful(g, d, pos)
	}
	switch {
	case len(l.Either) > 0:
	case len(g.or) > 0:
		l = m.choices(g, l)
	default:
		l = m.choiceWithin(l)
	}
	if len(l.Items) == 0 && len(l.Either) == 0 {
		tr := g.trouble
		if tr == nil {
			tr = &Trouble{What: "cannot be read as an ingredient line"}
		}
		d := m.doubtIn(g.from, g.to)
		if m.hints++; d == nil && tr.Hint == "" && m.hints <= mostHints {
			if _, again := m.r.Line(l.Text); len(again) > 0 && again[0].What == tr.What {
				tr.Hint = again[0].Hint
			}
		}
		if d != nil && d.kind == illegible {
			tr = &Trouble{What: d.why, Hint: "write what it must have been, or [6|8] for one or the other"}
			l.Text = words
		}
		m.trace.Unread = append(m.trace.Unread, Stretch{Words: words, Line: pos.Line, Column: pos.Column, Why: tr.What, Hint: tr.Hint, Part: part, Index: index})
		return l
	}
	for i := range m.page.doubts {
		if d := &m.page.doubts[i]; d.kind == uncertain && d.from >= g.from && d.from <= g.to+1 {
			l.Text = strings.TrimSpace(l.Text) + " [?]"
			l.Notes = append(l.Notes, doubtfulWord)
		}
	}
	m.explain(words, pos, l, g, part, index)
	return l
}

// mostHints is for how many lines that cannot be read it is looked up what may
// be meant: in a text with more of them that is not what is wrong with it.
const mostHints = 20

// doubtfulWord is the note on a line that bears the sign of a doubtful reading.
const doubtfulWord = "the book is hard to read here"

// marked widens a stretch to take in the whole of the marks of doubt in it.
func (m *making) marked(from, to int) (int, int) {
	for _, d := range m.page.doubts {
		if d.from < to && d.to > from && d.kind != margin && d.kind != struck {
			from, to = min(from, d.from), max(to, d.to)
		}
	}
	return from, to
}

// doubtful makes a line of one thing or another.
func (m *making) doubtful(g gathered, d *doubt, pos formula.Pos) formula.Line {
	out := formula.Line{Pos: pos, Why: d.why, Text: m.page.copied(m.marked(g.from, g.to))}
	if d.kind != either {
		return formula.Line{Pos: pos, Text: out.Text}
	}
	var texts []string
	for _, way := range d.ways {
		text := strings.Join(strings.Fields(string(m.page.clear[g.from:max(g.from, d.from)])+" "+way+" "+string(m.page.clear[min(d.to, g.to):g.to])), " ")
		l, troubles := m.r.silent().Line(text)
		if len(troubles) > 0 {
			return formula.Line{Pos: pos, Text: out.Text}
		}
		out.Either = append(out.Either, formula.Alternative{Text: text, Items: l.Items, Odds: decimal.NewFromInt(1)})
		texts = append(texts, text)
		for _, n := range l.Notes {
			if !slices.Contains(out.Notes, n) {
				out.Notes = append(out.Notes, n)
			}
		}
	}
	out.Text, out.Items = strings.Join(texts, " or "), out.Either[0].Items
	return out
}

// explain tells how a line was taken.
func (m *making) explain(words string, pos formula.Pos, l formula.Line, g gathered, part, index int) {
	why := []string{}
	if g.hand != "" {
		why = append(why, g.hand)
	}
	if g.note != "" {
		why = append(why, g.note)
	}
	why = append(why, l.Notes...)
	if len(l.Either) > 0 {
		var ways []string
		for _, a := range l.Either {
			ways = append(ways, a.Text)
		}
		m.trace.Read = append(m.trace.Read, Interpretation{
			Words: words, Line: pos.Line, Column: pos.Column, Took: "one or the other: " + strings.Join(ways, ", or "),
			Why: l.Why, Part: part, Index: index,
		})
	}
	for _, it := range l.Items {
		reason, span := m.r.reason(it)
		all := slices.Clone(why)
		if reason != "" {
			all = append(all, reason)
		}
		m.trace.Read = append(m.trace.Read, Interpretation{
			Words: words, Line: pos.Line, Column: pos.Column, Took: m.r.took(it), Why: strings.Join(all, "; "), Range: span, Part: part, Index: index,
		})
	}
}

// reference reads a line of a list that names another receipt: "paste No. 3".
func (m *making) reference(ts phrase, listed bool) bool {
	found := m.crossing(ts)
	for _, c := range found {
		m.take(c, ts)
	}
	return len(found) > 0
}

// references finds the pastes and the like that a sentence takes from
// elsewhere.
func (m *making) references(ts phrase) {
	for _, c := range m.crossing(ts) {
		m.take(c, ts)
	}
	if putsLid(ts) {
		for _, p := range m.parts {
			if p.part.Kind == formula.Pastry && p.part.Lay == "lining" {
				p.part.Lay = layBoth(p.part.Lay, "lid")
				return
			}
		}
	}
}

// putsLid reports a paste laid over what the lined dish was filled with: "put on a
// crust", "put on another sheet of paste", "lay the upper crust on".
func putsLid(ts phrase) bool {
	for i := range ts { // "cover it, and bake"
		if ts.key(i) == "cover" && (ts.key(i+1) == "it" || ts.key(i+1) == "them") && ts[i:].has(bakingSoon) {
			if n := ts.key(i + 2); n == "" || n == "," || n == "and" || n == "over" || n == "close" {
				return true
			}
		}
	}
	for i := range ts {
		if k := ts.key(i); k != "crust" && k != "paste" && k != "lid" && k != "cover" || i > 0 && ts[i-1].kind != word {
			continue
		}
		from := i - 1
		for from > 0 && ts[from].kind == word && (ts.is(from, lidBefore) || ts.is(from, pasteAdjectives)) {
			from--
		}
		on := ts.key(from) == "on" && ts.is(from-1, putsOn)
		if on && ts.key(i+1) != "the" { // "put on the crust a layer of apples"
			return true
		}
		if ts.is(from, putsOn) && (ts.key(i+1) == "on" || ts.key(i+1) == "over") && !ts[i:min(len(ts), i+6)].has(dishWords) {
			return true
		}
	}
	return false
}

var (
	lidBefore  = words("a an the your another other sheet of lid top upper second thin nice good")
	putsOn     = words("put lay place with")
	bakingSoon = words("bake baked baking")
)

// layBoth is how a paste is laid of which a second sentence speaks.
func layBoth(before, now string) string {
	switch {
	case before == "":
		return now
	case before == "lining" && now == "lid", before == "lid" && now == "lining":
		return "lining and lid"
	}
	return before
}

// take adds a part taken from another receipt.
func (m *making) take(c crossing, ts phrase) {
	for _, p := range m.parts {
		if p.part.Take != "" && (strings.EqualFold(p.part.Take, c.title) || c.number != "" && strings.HasSuffix(p.part.Take, "no. "+c.number) || p.part.Kind == c.kind && c.plain) {
			p.part.Lay = layBoth(p.part.Lay, c.lay)
			return
		}
		if p.part.Kind == c.kind && len(p.lines) > 0 && c.plain {
			if p.part.Lay == "" && c.kind == formula.Pastry {
				p.part.Lay = c.lay
			}
			return // it is made here
		}
	}
	if utf8.RuneCountInString(c.title) > longestTitle {
		return
	}
	name := c.name
	for n := 2; slices.ContainsFunc(m.parts, func(p *portionOf) bool { return strings.EqualFold(p.part.Name, name) }); n++ {
		name = fmt.Sprintf("%s %d", c.name, n)
	}
	at := ts[c.from].from - 1
	m.parts = append(m.parts, &portionOf{
		part: formula.Part{Name: name, Kind: c.kind, Take: c.title, Lay: c.lay, Pos: m.page.pos(at)}, at: at, plain: c.plain,
	})
}
