package receipt

import (
	"strings"
	"unicode"

	"assize/formula"
	"assize/reference"
)

// The most a text may hold: no receipt has more parts or words, and a text that
// has lost its ends, or holds a whole book, would.
const (
	mostParts   = 40
	longestText = 1 << 20 // bytes
)

// Receipt reads a receipt as it was copied out: a heading, a list or sentences
// or both, in the spelling of any time. What it comes to is in the formula;
// how each thing was taken, and what could not be read, is in the trace.
//
// An ingredient line that could not be read is in the formula with its words
// and no items, so that nobody weighs the formula without it. The formula is
// nil when the text is no receipt; then the trace says why.
//
// The marks of a copyist are read: [?] after a doubtful word, [6|8] for one or
// the other, [illegible], [struck: ...], [margin: ...], [errata: ...].
func (r *Reader) Receipt(text string, about About) (*formula.Formula, Trace) {
	reader := *r
	if about.Year != 0 {
		reader.Year = about.Year
	}
	if about.Place != "" {
		reader.Place = about.Place
	}
	if len(text) > longestText {
		return nil, noReceipt(1, 1, "the text is longer than any receipt", "give one receipt at a time")
	}
	m := newMaking(&reader, text, about)
	if strings.TrimSpace(m.page.text) == "" {
		return nil, noReceipt(1, 1, "there are no words in it", "")
	}
	m.read()
	if len(m.parts) > mostParts {
		over := m.parts[mostParts]
		pos := m.page.pos(over.at)
		return nil, noReceipt(pos.Line, pos.Column, "there are more parts than any receipt has", "give one receipt at a time")
	}
	return m.finish()
}

func noReceipt(line, column int, why, hint string) Trace {
	return Trace{Unread: []Stretch{{Line: line, Column: column, Why: why, Hint: hint, Part: -1, Index: -1}}}
}

// making is one receipt being read.
type making struct {
	r       *Reader
	page    *page
	f       *formula.Formula
	trace   Trace
	parts   []*portionOf
	now     *portionOf // the part being read
	section section
	had     bool // a list of ingredients was there
	owned   mentions
	titled  phrase
	hints   int       // looked up so far
	seen    []phrase  // every word of the page
	set     []stretch // set aside
	named   []stretch // in the title, or told
	eggs    of        // whose whites or yolks were taken
	fruit   of        // whose rind or juice was taken
	hand    string    // of what is being read: empty, or why it is no part of the first text
	passing bool      // a part is made in passing
	firsts  []known   // named as if they were listed
	// proportioned is that the amounts were given for so much of something, before the
	// work is told: there they are said again.
	proportioned, seenProportion bool
}

// known is a thing that a receipt speaks of as known, in the part that does.
type known struct {
	gathered
	in *portionOf
}

// portionOf is one part being read.
type portionOf struct {
	part  formula.Part
	at    int // where it begins
	lines []gathered
	steps []stretch
	plain bool // taken by a name that may mean what is in hand
}

// stretch is a run of the page, with its words as they are kept.
type stretch struct {
	from, to int
	text     string
}

// said are the tokens of a stretch.
func (m *making) said(s stretch) phrase { return m.page.tokens(s.from, s.to) }

// gathered is one ingredient line with where it stands.
type gathered struct {
	from, to int
	mention
	listed bool // from a list
	hand   string
}

func newMaking(r *Reader, text string, about About) *making {
	m := &making{r: r, page: newPage(r, text)}
	m.f = &formula.Formula{Title: about.Title, Source: about.Source, Year: r.Year, Place: r.Place, Text: asCopied(m.page.kept)}
	m.owned = mentions{t: r.Tables, f: m.f}
	return m
}

// asCopied is the text as it is kept: without space at the ends of its lines,
// nor lines without words around it.
func asCopied(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRightFunc(lines[i], unicode.IsSpace)
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n")
}

// read goes through the blocks of the page, then through what stands beside it.
func (m *making) read() {
	blocks := m.page.blocks
	if len(blocks) > 0 {
		blocks = m.title(blocks)
	}
	m.main()
	for _, b := range blocks {
		ts := m.page.tokens(b.from, b.to)
		m.seen = append(m.seen, ts)
		switch b.kind {
		case heading:
			m.head(b, ts)
		case listed:
			m.item(b, ts)
		default:
			m.prose(ts)
		}
		if len(m.parts) > mostParts {
			return
		}
	}
	for _, d := range m.page.doubts {
		m.outside(d)
	}
}

// outside reads what a mark keeps out of the text itself.
func (m *making) outside(d doubt) {
	pos := m.page.pos(d.from)
	switch d.kind {
	case struck:
		m.aside(d.from, d.to, d.why)
	case margin, corrected:
		m.hand = d.why
		ts := m.r.split(m.page.given[d.inner:d.innerTo], d.inner)
		clear := m.page.clear
		m.page.clear = m.page.given // the words are blank there
		m.sentence(ts)
		m.page.clear = clear
		m.hand = ""
		m.trace.Read = append(m.trace.Read, Interpretation{
			Words: m.page.copied(d.from, d.to), Line: pos.Line, Column: pos.Column,
			Took: "read with the text, at the end of it", Why: d.why, Part: -1, Index: -1,
		})
	}
}

func (m *making) aside(from, to int, why string) {
	if w := m.page.copied(from, to); w != "" {
		pos := m.page.pos(from)
		m.set = append(m.set, stretch{from: from, to: to})
		m.trace.Aside = append(m.trace.Aside, Stretch{Words: w, Line: pos.Line, Column: pos.Column, Why: why, Part: -1, Index: -1})
	}
}

// main begins the part that the title names.
func (m *making) main() {
	kind := kindOf(m.titled)
	m.begin(string(kind), kind, 0)
}

// begin goes on with the part of that name, new or met before.
func (m *making) begin(name string, kind formula.Kind, at int) {
	for _, p := range m.parts {
		if strings.EqualFold(p.part.Name, name) {
			m.now = p
			return
		}
	}
	pos := m.page.pos(at)
	m.now = &portionOf{part: formula.Part{Name: name, Kind: kind, Pos: pos}, at: at, lines: make([]gathered, 0, usualLines)}
	m.parts = append(m.parts, m.now)
}

// usualLines is how many ingredients most parts have room in.
const usualLines = 8

// head follows a heading.
func (m *making) head(b block, ts phrase) {
	h, _ := m.r.headAt(ts, true)
	m.turn(h, b.from)
	m.aside(b.from, b.to, Heading)
}

// turn goes on under a heading.
func (m *making) turn(h head, at int) {
	if h.section != ofPart {
		m.section = h.section
	} else if m.section != ingredients {
		m.section = none
	}
	if h.part != "" {
		m.begin(h.part, h.kind, at)
	}
}

// weave scans a sentence with what was met before it in mind.
func (m *making) weave(w *weave) []mention {
	w.before, w.last, w.titled = m.wasListed, m.lastItem(), m.titled
	w.listed, w.bare, w.bared = m.amountOf, m.namedLast(), m.namedBare
	w.eggs, w.fruit = m.eggs, m.fruit
	found := w.scan()
	m.proportioned = m.proportioned || m.seenProportion
	m.seenProportion = m.seenProportion || perEach(w.ts)
	m.eggs, m.fruit = w.eggs, w.fruit
	return found
}

func (m *making) gatheredAt(f mention, ts phrase, listed bool) gathered {
	return gathered{from: ts[f.from].from - 1, to: after(ts[:f.to]), mention: f, listed: listed, hand: m.hand}
}

func (m *making) gather(g gathered) {
	m.now.lines = append(m.now.lines, g)
	if g.how == withAmount || g.listed {
		m.owned.list(g.line)
		for _, e := range m.choiceWithin(g.line).Either {
			m.owned.list(formula.Line{Items: e.Items})
		}
	}
}

// wasListed reports a thing that a line read so far holds.
func (m *making) wasListed(c reference.Called, name []string) bool {
	n := spokenName{fruit: c.Fruit}
	if ing := c.Ingredient; ing != nil {
		n.id, n.base, n.roles = ing.ID, ing.Base, ing.Roles[:min(1, len(ing.Roles))]
	}
	if m.owned.holds(&n) {
		return true
	}
	if n.fruit != nil || len(m.owned.listed) == 0 {
		return false
	}
	for i, w := range name {
		if m.r.Tables.SetAside(name[i:i+1]) == 0 && m.owned.called(stem(w)) {
			return true
		}
	}
	return false
}

// isListed reports an item that a line read so far holds.
func (m *making) isListed(it formula.Item) bool {
	ing, ok := m.r.Tables.Ingredient(it.Ingredient)
	return ok && m.wasListed(reference.Called{Ingredient: ing}, reference.Words(it.Name))
}

// prose reads sentences.
func (m *making) prose(ts phrase) {
	if m.section == ingredients && m.had && tellsWork(ts) {
		m.section = directions
	}
	for _, s := range sentencesOf(ts) {
		m.sentence(s)
	}
	if m.section == beside || m.section == time {
		m.section = directions
	}
}

// tellsWork reports a paragraph behind a list that goes on with the work though
// no heading says so: it begins with an order, or says what is done.
func tellsWork(ts phrase) bool {
	sentences := sentencesOf(ts)
	if len(sentences) == 0 || number(sentences[0]).used > 0 {
		return false
	}
	first := sentences[0]
	if first.is(0, imperatives) && len(first) > 1 && (first[1].kind == word && number(first[1:]).used == 0 || timeAt(first[1:]) > 0) {
		return true
	}
	return first.has(isDone) || first.is(0, toldFirst) && len(first) > 1 && number(first[1:]).used == 0
}

// tellsOfWork reports a sentence among the ingredients that is none of them: "Boil the
// pudding four hours", "It is steamed", "To be eaten with sauce".
func tellsOfWork(ts phrase) bool {
	switch ts.key(0) {
	case "it", "this":
		return ts.is(1, isDone) || ts.key(1) == "will" || ts.key(1) == "should"
	case "to":
		return ts.key(1) == "be"
	}
	return ts.is(0, imperatives) && len(ts) > 2 && (ts.key(1) == "it" || ts.key(1) == "them" || ts.key(1) == "the" || timeAt(ts[1:]) > 0)
}

// toldFirst are words that a sentence of the work begins with and no ingredient does.
var toldFirst = words("with when having first then after afterwards into upon over as now next if while before meanwhile put")

var isDone = words("is are")

// sentencesOf parts tokens at the stops.
func sentencesOf(ts phrase) []phrase {
	var out []phrase
	from := 0
	depth := 0
	for i := range ts {
		if ts[i].kind == mark {
			switch ts[i].key {
			case "(":
				depth++
			case ")":
				depth = max(0, depth-1)
			}
		}
		end := ts[i].kind == mark && ts[i].key == "." && depth == 0
		if !end && i+1 < len(ts) {
			continue
		}
		to := i
		if !end {
			to = i + 1
		}
		if s := trimMarks(ts[from:to]); len(s) > 0 {
			out = append(out, s)
		}
		from = i + 1
		depth = 0
	}
	return out
}

// sentence reads one sentence: what it is of, what it puts in, where it bakes.
func (m *making) sentence(ts phrase) {
	if len(ts) == 0 {
		return
	}
	whole := ts
	if h, n := m.r.headAt(ts, false); h.section != none {
		m.turn(h, ts[0].from-1)
		if h.section == beside {
			m.aside(ts[0].from-1, after(ts), "told beside the making")
			return
		}
		if m.aside(ts[0].from-1, after(ts[:n]), Heading); n >= len(ts) {
			return
		}
		if h.section != ofPart {
			whole = trimMarks(ts[n:])
		}
		ts = trimMarks(ts[n:])
	}
	if m.section == beside {
		m.aside(ts[0].from-1, after(ts), "told beside the making")
		return
	}
	if m.section == time {
		m.timed(ts)
		m.aside(ts[0].from-1, after(ts), "how long it takes")
		return
	}
	if len(ts) == 1 && ts[0].kind == figure {
		m.aside(ts[0].from-1, after(ts), Numbering)
		return
	}
	m.madeHere(ts)
	if m.section == ingredients && !(m.had && tellsOfWork(ts)) {
		m.list(ts)
		return
	}
	m.order(whole, ts)
}

// doubtIn is the mark that leaves a line between two readings, nil when there is
// none.
func (m *making) doubtIn(from, to int) *doubt {
	for i := range m.page.doubts {
		if d := &m.page.doubts[i]; d.from < to && d.to > from && (d.kind == either || d.kind == illegible) {
			return d
		}
	}
	return nil
}
