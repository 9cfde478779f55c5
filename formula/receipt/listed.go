package receipt

import (
	"fmt"
	"slices"
	"unicode/utf8"

	"assize/formula"
)

// item reads one line of a list.
func (m *making) item(b block, ts phrase) {
	m.had = true
	given := trimMarks(ts)
	ts = unnumbered(ts)
	if len(given) > len(ts) {
		m.aside(given[0].from-1, after(given[:1]), Numbering)
	}
	if len(ts) == 0 {
		return
	}
	from, to := ts[0].from-1, b.to
	if ts.key(0) == "cream" { // "cream half a pound of butter" is an order, and half a pound of butter
		if a, n := m.r.silent().amountAt(ts[1:]); n > 0 && a.measured && a.numbered && m.r.isName(ofName(ts[1+n:])) {
			ts = ts[1:]
			from = ts[0].from - 1
		}
	}
	text := m.page.words(from, to)
	if d := m.doubtIn(from, to); d != nil {
		g := gathered{from: from, to: to, listed: true}
		g.line = m.doubtful(g, d, formula.Pos{})
		m.gather(g)
		return
	}
	if bought(ts) {
		m.aside(from, to, "a case bought or made before: it is not weighed")
		return
	}
	if c := m.crossing(ts); len(c) == 1 && (c[0].to-c[0].from > 1 || len(ts) < 4) {
		m.take(c[0], ts)
		m.told(ts, "a part taken from elsewhere", "it names another receipt")
		return
	}
	if ts.has(berryWords) {
		if found, all := m.woven(ts, true); len(found) == 1 && found[0].written != "" && (all || saidOnly(ts, found)) {
			m.gather(m.gatheredAt(found[0], ts, true))
			return
		}
	}
	line, troubles := m.r.silent().read(ts)
	line.Text = text
	if len(troubles) == 0 && !ts.has(dittoWords) && !ts.signed() && utf8.RuneCountInString(text) <= longestLine {
		m.gather(gathered{from: from, to: to, listed: true, mention: mention{line: line}})
		remember(line.Items, &m.eggs, &m.fruit)
		return
	}
	if m.reference(ts, true) {
		return
	}
	if parts := sentencesOf(ts); len(parts) > 1 && len(parts[0]) > 1 {
		for _, s := range parts {
			m.item(block{listed, s[0].from - 1, after(s)}, s)
		}
		return
	}
	if found, all := m.woven(ts, true); all || onlyHandled(ts, found) {
		for _, f := range found {
			m.gather(m.gatheredAt(f, ts, true))
		}
		for _, c := range uncovered(ts, found) {
			m.extends(trimGlue(c), found, ts)
		}
		return
	}
	_, troubles = m.r.silent().Line(text)
	tr := Trouble{Column: 1, What: "cannot be read as an ingredient line"}
	if len(troubles) > 0 {
		tr = troubles[0]
	}
	m.gather(gathered{from: from, to: to, listed: true, mention: mention{how: unread, line: formula.Line{Text: text}, trouble: &tr}})
}

var berryWords = words("berries berry")

// dittoWords lean on the amount before them, which the line reader does not see.
var dittoWords = words("do ditto")

// bought reports a case that is counted and no receipt of the book: "1 unbaked
// 9-inch pie shell".
func bought(ts phrase) bool {
	c := number(ts)
	if c.used == 0 || ts.key(len(ts)-2) == "no" {
		return false
	}
	for i := c.used; i < len(ts) && (ts[i].kind != mark); i++ {
		if k := ts.key(i); (k == "shell" || k == "case") && ts.is(i-1, shellWords) {
			return true
		}
	}
	return false
}

// woven finds the ingredients in a run of words, and reports whether nothing
// else stands in it.
func (m *making) woven(ts phrase, inList bool) (found []mention, whole bool) {
	w := newWeave(m.r, m.page, ts)
	w.inList = inList
	m.weave(w)
	return w.found, len(w.found) > 0 && len(uncovered(ts, w.found)) == 0
}

// onlyHandled reports several amounts between which nothing stands but what is done with
// them: "a teaspoonful of soda, dissolved in a spoonful of milk".
func onlyHandled(ts phrase, found []mention) bool {
	return len(found) > 1 && !slices.ContainsFunc(found, func(m mention) bool { return m.how != withAmount }) && saidOnly(ts, found)
}

// saidOnly reports that nothing stands beside the mentions but what is done with them.
func saidOnly(ts phrase, found []mention) bool {
	for _, c := range uncovered(ts, found) {
		for i := range c {
			if c[i].kind != word || !c.participle(i) && !c.is(i, glue) && !c.is(i, into) && !c.is(i, adverbs) {
				return false
			}
		}
	}
	return true
}

// uncovered are the runs of words that no mention holds.
func uncovered(ts phrase, found []mention) []phrase {
	var out []phrase
	i := 0
	add := func(run phrase) {
		for _, c := range split(run) {
			for _, t := range c {
				if t.kind == figure || !t.is(glue) {
					out = append(out, c)
					break
				}
			}
		}
	}
	for _, f := range found {
		if f.how == unread {
			return []phrase{ts}
		}
		if f.from > i {
			add(ts[i:f.from])
		}
		i = max(i, f.to)
	}
	if i < len(ts) {
		add(ts[i:])
	}
	return out
}

// list reads a run of ingredients: "4 oz. of flour, 2 oz. of butter; salt to
// taste". What is none of them is shown as unread.
func (m *making) list(ts phrase) {
	m.had = true
	var got []mention
	crossings := m.crossing(ts)
	for _, c := range crossings {
		m.take(c, ts)
		from := amountBefore(m.r, ts, c.from)
		got = append(got, mention{from: from, to: c.to})
		m.named = append(m.named, stretch{from: ts[from].from - 1, to: after(ts[:c.to])})
	}
	found, _ := m.woven(ts, true)
	for _, f := range found {
		if slices.ContainsFunc(crossings, func(c crossing) bool { return f.from < c.to && f.to > c.from }) {
			continue
		}
		if f.choice {
			got = append(got, f)
			got[len(got)-1].how = bare
			if n := len(m.now.lines); n > 0 { // the line it is a choice of holds its words
				m.now.lines[n-1].to = max(m.now.lines[n-1].to, after(ts[:f.to]))
			}
			continue
		}
		definite := ts.key(f.from) == "the" || f.from > 0 && ts.key(f.from-1) == "the"
		if definite && (f.how == again || f.how == bare && len(f.line.Items) == 1 && m.isListed(f.line.Items[0])) { // "mixed with the molasses"
			got = append(got, f)
			got[len(got)-1].how = bare
			if n := len(m.now.lines); n > 0 { // it is said of the line before it
				m.now.lines[n-1].to = max(m.now.lines[n-1].to, after(ts[:f.to]))
			}
			continue
		}
		if f.how == again {
			f.how = bare
		}
		m.gather(m.gatheredAt(f, ts, true))
		got = append(got, f)
		got[len(got)-1].how = bare // an unread one covers its own words
	}
	slices.SortFunc(got, func(a, b mention) int { return a.from - b.from })
	for _, c := range uncovered(ts, got) {
		c = trimGlue(c)
		if len(c) == 0 {
			continue
		}
		if m.extends(c, got, ts) {
			continue
		}
		if m.reference(c, true) {
			continue
		}
		text := m.page.words(c[0].from-1, after(c))
		tr := Trouble{What: fmt.Sprintf("%q cannot be made out", text), Hint: "write how much, of what, and what is done to it"}
		m.gather(gathered{from: c[0].from - 1, to: after(c), listed: true, mention: mention{how: unread, line: formula.Line{Text: text}, trouble: &tr}})
	}
}

// amountBefore is where an amount begins that stands right before a token.
func amountBefore(r *Reader, ts phrase, at int) int {
	end := at
	if ts.key(end-1) == "of" {
		end--
	}
	for from := max(0, end-5); from < end; from++ {
		if a, n := r.silent().amountAt(ts[from:]); n > 0 && from+n == end && a.numbered {
			return from
		}
	}
	return at
}

// extends puts words to the line before them when the line is still read with
// them: "for the dish", "well washed".
func (m *making) extends(c phrase, got []mention, ts phrase) bool {
	if slices.ContainsFunc(c, func(t token) bool { return t.kind == figure || t.is(numberWordSet) }) {
		return false
	}
	lines := m.now.lines
	for i := len(lines) - 1; i >= 0 && i >= len(lines)-len(got); i-- {
		l := &lines[i]
		if l.to > c[0].from-1 || l.how == unread || l.written != "" {
			continue
		}
		text := m.page.words(l.from, after(c))
		line, troubles := m.r.silent().Line(text)
		if len(troubles) > 0 || len(line.Items) != len(l.line.Items) {
			return false
		}
		l.line, l.to = line, after(c)
		return true
	}
	return false
}

func trimGlue(ts phrase) phrase {
	for len(ts) > 0 && ts[0].kind == word && ts.is(0, glue) {
		ts = ts[1:]
	}
	for len(ts) > 0 && ts[len(ts)-1].kind == word && ts.is(len(ts)-1, glue) {
		ts = ts[:len(ts)-1]
	}
	return ts
}
