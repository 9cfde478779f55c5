package receipt

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

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
	if strings.TrimSpace(string(m.page.given)) == "" {
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

// gathered is one ingredient line with where it stands.
type gathered struct {
	from, to int
	mention
	listed bool // from a list
	hand   string
}

func newMaking(r *Reader, text string, about About) *making {
	m := &making{r: r, page: newPage(r, text)}
	m.f = &formula.Formula{Title: about.Title, Source: about.Source, Year: r.Year, Place: r.Place, Text: asCopied(m.page.given)}
	m.owned = mentions{t: r.Tables, f: m.f}
	return m
}

// asCopied is the text as it is kept: without space at the ends of its lines,
// nor lines without words around it.
func asCopied(given []rune) string {
	lines := strings.Split(string(given), "\n")
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

// title takes the name of the receipt: the first heading, or the words before
// the first dash of running text ("Orange pudding.--Take ...").
func (m *making) title(blocks []block) []block {
	b := blocks[0]
	ts := m.page.tokens(b.from, b.to)
	switch {
	case b.kind == heading && !m.isHead(ts):
		m.name(ts)
		return blocks[1:]
	case b.kind == prose:
		if n := titleBefore(m.r, ts); n > 0 {
			m.name(ts[:n])
			rest := block{prose, b.to, b.to}
			if k := pastMarks(ts, n); k < len(ts) {
				rest.from = ts[k].from - 1
			}
			return append([]block{rest}, blocks[1:]...)
		}
	}
	if m.f.Title == "" {
		m.f.Title = "A receipt without a heading"
		if b.kind == prose {
			m.titled = ts[:min(len(ts), 30)]
		}
	}
	return blocks
}

func (m *making) isHead(ts phrase) bool {
	h, n := m.r.headAt(ts, true)
	return h.section != none && h.section != ofPart && n == len(ts)
}

// name sets the title, without the number of the receipt and the stop behind
// it. The number becomes another name, so that the book can call it by that.
func (m *making) name(ts phrase) {
	m.titled, m.seen = ts, append(m.seen, ts)
	if number, rest := numbered(ts); len(rest) > 0 {
		m.f.Also = append(m.f.Also, "No. "+number)
		ts, m.titled = rest, rest
	}
	words := strings.Trim(m.page.words(ts[0].from-1, after(ts)), " .:-–—_*=")
	if utf8.RuneCountInString(words) < longestTitle {
		m.named = append(m.named, stretch{from: ts[0].from - 1, to: after(ts)})
	}
	switch {
	case words == "":
	case m.f.Title == "":
		m.f.Title = shortened(quieted(words))
	case !strings.EqualFold(m.f.Title, words):
		m.f.Also = append(m.f.Also, shortened(quieted(words)))
	}
}

// numbered parts the number of a receipt from its title: "No. 34. Rich lemon
// pudding", "1292. Lemon cheesecakes".
func numbered(ts phrase) (number string, rest phrase) {
	i := 0
	if ts.key(0) == "no" {
		i = 1
	}
	if i >= len(ts) || ts[i].kind != figure || i+1 >= len(ts) {
		return "", nil
	}
	next := ts[i+1]
	if next.kind == mark && (next.key == "." || next.key == ")" || next.key == "-" || next.key == ":") {
		return ts[i].text, trimMarks(ts[i+2:])
	}
	if strings.HasPrefix(next.lead, ".") {
		return ts[i].text, ts[i+1:]
	}
	return "", nil
}

// after is the place behind the last token.
func after(ts phrase) int {
	t := ts[len(ts)-1]
	return t.from - 1 + utf8.RuneCountInString(t.text)
}

// longestTitle is how many characters of a heading make the title.
const longestTitle = 120

func shortened(s string) string {
	if utf8.RuneCountInString(s) <= longestTitle {
		return s
	}
	return string([]rune(s)[:longestTitle-3]) + "..."
}

// quieted is a heading without its capitals, when it has nothing else.
func quieted(s string) string {
	if s != strings.ToUpper(s) || s == strings.ToLower(s) {
		return s
	}
	runes := []rune(strings.ToLower(s))
	runes[0] = unicode.ToUpper(runes[0])
	return string(runes)
}

// titleBefore counts the tokens of a title that stands in front of running
// text: "Orange Pudding.--Take ...", "ORANGE PUDDING. Take ...".
func titleBefore(r *Reader, ts phrase) int {
	const longest = 9
	if _, rest := numbered(ts); len(rest) > 0 {
		if n := titleBefore(r, rest); n > 0 {
			return len(ts) - len(rest) + n
		}
		return 0
	}
	for i := 1; i < min(len(ts), longest+1); i++ {
		if ts[i].kind != mark || ts[i].key == "," && i < longest {
			continue
		}
		if k := ts[i].key; k != "." && k != "-" && k != ":" || r.isItem(ts[:i]) || i+1 == len(ts) {
			return 0
		}
		if h, _ := r.headAt(ts, false); h.section != none || imperatives[ts.key(0)] && ts.key(0) != "to" {
			return 0
		}
		return i
	}
	return 0
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
	m.now = &portionOf{part: formula.Part{Name: name, Kind: kind, Pos: pos}, at: at}
	m.parts = append(m.parts, m.now)
}

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
	line, troubles := m.r.silent().read(ts)
	line.Text = text
	if len(troubles) == 0 && utf8.RuneCountInString(text) <= longestLine {
		m.gather(gathered{from: from, to: to, listed: true, mention: mention{line: line}})
		return
	}
	if m.reference(ts, true) {
		return
	}
	if found, all := m.woven(ts, true); all {
		for _, f := range found {
			m.gather(m.gatheredAt(f, ts, true))
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

// bought reports a case that is counted and no receipt of the book: "1 unbaked
// 9-inch pie shell".
func bought(ts phrase) bool {
	c := number(ts)
	if c.used == 0 || ts.key(len(ts)-2) == "no" {
		return false
	}
	for i := c.used; i < len(ts) && (ts[i].kind != mark); i++ {
		if k := ts.key(i); (k == "shell" || k == "case") && shellWords[ts.key(i-1)] {
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

// weave scans a sentence with what was met before it in mind.
func (m *making) weave(w *weave) []mention {
	w.before, w.last, w.titled = m.wasListed, m.lastItem(), m.titled
	w.eggs, w.fruit = m.eggs, m.fruit
	found := w.scan()
	m.eggs, m.fruit = w.eggs, w.fruit
	return found
}

// uncovered are the runs of words that no mention holds.
func uncovered(ts phrase, found []mention) []phrase {
	var out []phrase
	i := 0
	add := func(run phrase) {
		for _, c := range split(run) {
			for _, t := range c {
				if t.kind == figure || !glue[t.key] {
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

func (m *making) gatheredAt(f mention, ts phrase, listed bool) gathered {
	return gathered{from: ts[f.from].from - 1, to: after(ts[:f.to]), mention: f, listed: listed, hand: m.hand}
}

func (m *making) gather(g gathered) {
	m.now.lines = append(m.now.lines, g)
	if g.how == withAmount || g.listed {
		m.owned.list(g.line)
	}
}

// wasListed reports a thing that a line read so far holds.
func (m *making) wasListed(c reference.Called, name []string) bool {
	n := spokenName{fruit: c.Fruit}
	telling := slices.DeleteFunc(slices.Clone(name), func(w string) bool { return m.r.Tables.SetAside([]string{w}) > 0 })
	n.words = stems(telling)
	if ing := c.Ingredient; ing != nil {
		n.id, n.base, n.roles = ing.ID, ing.Base, ing.Roles[:min(1, len(ing.Roles))]
	}
	return m.owned.isListed(n)
}

// isListed reports an item that a line read so far holds.
func (m *making) isListed(it formula.Item) bool {
	ing, ok := m.r.Tables.Ingredient(it.Ingredient)
	return ok && m.wasListed(reference.Called{Ingredient: ing}, reference.Words(it.Name))
}

// prose reads sentences.
func (m *making) prose(ts phrase) {
	for _, s := range sentencesOf(ts) {
		m.sentence(s)
	}
	if m.section == beside || m.section == time {
		m.section = directions
	}
}

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
	if m.section == ingredients {
		m.list(ts)
		return
	}
	m.order(whole, ts)
}

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

// list reads a run of ingredients: "4 oz. of flour, 2 oz. of butter; salt to
// taste". What is none of them is shown as unread.
func (m *making) list(ts phrase) {
	m.had = true
	var got []mention
	crossings := m.crossing(ts)
	for _, c := range crossings {
		m.take(c, ts)
		got = append(got, mention{from: amountBefore(m.r, ts, c.from), to: c.to})
	}
	found, _ := m.woven(ts, true)
	for _, f := range found {
		if slices.ContainsFunc(crossings, func(c crossing) bool { return f.from < c.to && f.to > c.from }) {
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
	if slices.ContainsFunc(c, func(t token) bool { return t.kind == figure || numberWords[t.key] > 0 }) {
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
	for len(ts) > 0 && ts[0].kind == word && glue[ts[0].key] {
		ts = ts[1:]
	}
	for len(ts) > 0 && ts[len(ts)-1].kind == word && glue[ts[len(ts)-1].key] {
		ts = ts[:len(ts)-1]
	}
	return ts
}

// order reads a sentence of the method. One that only lists what to take is no
// step.
func (m *making) order(whole, ts phrase) {
	chosen := ts.has(choiceWords) || ts.key(0) == "if"
	m.references(ts)
	w := newWeave(m.r, m.page, ts)
	onlyTakes := true
	for _, f := range m.weave(w) {
		g := m.gatheredAt(f, ts, false)
		switch {
		case f.how == again:
			if f.written != "" {
				m.limitEggs(f.written)
			}
			onlyTakes = false
			continue
		case chosen || m.served(ts[:f.from]):
			if f.how == withAmount {
				m.choice(g)
			}
			onlyTakes = false
			continue
		case m.repeated(g):
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
var choiceWords = words("substitute substituted substituting instead cannot omit omitted")

// served reports that what follows is set beside the dish and not put in.
func (m *making) served(before phrase) bool {
	from := 0
	for i := range before {
		if before[i].kind == mark && before[i].key != "," {
			from = i + 1
		}
	}
	for i := from; i < len(before); i++ {
		switch before.key(i) {
		case "serve", "served", "garnish", "garnished", "eat", "eaten", "accompanied":
			return true
		case "send":
			return before.key(i+1) == "it" || before.key(i+1) == "to"
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
		if !m.isListed(it) {
			return false
		}
		if m.had {
			continue
		}
		if !m.sameAmount(it) || !m.summing(g) {
			return false
		}
	}
	return true
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
				if have.Ingredient == it.Ingredient && have.Amount.Measure == it.Amount.Measure && have.Amount.Number.Likely.Equal(it.Amount.Number.Likely) {
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

// listOnly reports a sentence that says nothing but what to take.
func listOnly(ts phrase, found []mention) bool {
	for _, c := range uncovered(ts, found) {
		for i := range c {
			if c[i].kind != word || !glue[c.key(i)] {
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
	text := strings.Join(strings.Fields(string(m.page.steps[ts[0].from-1:to])), " ")
	if m.hand != "" {
		text = upperFirst(m.hand) + ": " + m.page.words(ts[0].from-1, to)
	}
	m.now.steps = append(m.now.steps, stretch{ts[0].from - 1, to, text})
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
