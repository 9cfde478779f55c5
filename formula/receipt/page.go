package receipt

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"assize/formula"
)

// page is the text of a receipt as it was copied, cut into blocks.
type page struct {
	r      *Reader
	quiet  *Reader
	given  []rune
	clear  []rune // without its marks of doubt, character for character
	steps  []rune // with them, but for what does not stand in the text itself
	lines  []int  // where each line of the text as given begins
	doubts []doubt
	blocks []block
	all    phrase  // the tokens of the clear text
	kept   string  // the text as given
	text   string  // the same with the words whole that a line broke
	bytes  []int32 // where each character begins in it; nil when a character is a byte
	rooms  rooms
}

// rooms are the lists that the sentences of a page are worked in, one after
// another.
type rooms struct {
	keys, words []string
	at          []int
	found       []mention
}

// blockKind tells the blocks of a page apart.
type blockKind int

const (
	prose   blockKind = iota // sentences
	listed                   // one line of a list
	heading                  // words that stand over what follows
)

// block is a stretch of the page that is read by itself.
type block struct {
	kind     blockKind
	from, to int // characters of the page
}

// newPage cuts a text into blocks. What is no character of a text is read as a
// space.
func newPage(r *Reader, text string) *page {
	p := &page{r: r, quiet: r.silent(), given: []rune(text), text: text}
	same := utf8.ValidString(text)
	for i, c := range p.given {
		if c < ' ' && c != '\n' || c > '~' && noCharacter(c) {
			p.given[i], same = ' ', false
		}
	}
	if !same {
		p.text = string(p.given)
	}
	p.lines = append(p.lines, 0)
	for i, c := range p.given {
		if c == '\n' {
			p.lines = append(p.lines, i+1)
		}
	}
	if p.kept = p.text; mendBroken(p.given, r.Tables) {
		p.text = string(p.given)
	}
	if len(p.text) > len(p.given) {
		p.bytes = make([]int32, 0, len(p.given)+1)
		for i := range p.text {
			p.bytes = append(p.bytes, int32(i))
		}
		p.bytes = append(p.bytes, int32(len(p.text)))
	}
	p.clear, p.steps = p.given, p.given
	p.all = scan(p.text, p.clear, 0, r.Tables)
	if strings.Contains(p.text, "[") || p.all.has(blottedSet) {
		p.doubts = findDoubts(p.text)
	}
	if len(p.doubts) > 0 {
		p.clear, p.steps = cleared(p.given, p.doubts), slices.Clone(p.given)
		p.all = scan(string(p.clear), p.clear, 0, r.Tables)
	}
	for _, d := range p.doubts {
		if d.kind == struck || d.kind == margin || d.kind == corrected {
			copy(p.steps[d.from:d.to], p.clear[d.from:d.to])
		}
	}
	p.cut()
	return p
}

// noCharacter reports what is no character of a text: a sign of order, a break of
// another kind.
func noCharacter(c rune) bool {
	return c == '\uFEFF' || unicode.IsControl(c) || unicode.In(c, unicode.Zl, unicode.Zp)
}

// pos is the place of a character, counted from 1.
func (p *page) pos(at int) formula.Pos {
	n, found := slices.BinarySearch(p.lines, at)
	if !found {
		n--
	}
	return formula.Pos{Line: n + 1, Column: at - p.lines[n] + 1}
}

// words are the clear words between two places on one line.
func (p *page) words(from, to int) string {
	if len(p.doubts) == 0 {
		return p.copied(from, to)
	}
	return spaced(string(p.clear[from:to]))
}

// copied are the words between two places as they were copied, on one line.
func (p *page) copied(from, to int) string {
	if p.bytes != nil {
		from, to = int(p.bytes[from]), int(p.bytes[to])
	}
	return spaced(p.text[from:to])
}

// step are the words between two places as a step keeps them.
func (p *page) step(from, to int) string {
	if len(p.doubts) == 0 {
		return p.copied(from, to)
	}
	return spaced(string(p.steps[from:to]))
}

// spaced is a text with one space between any two words and none around them.
func spaced(s string) string {
	s = strings.TrimSpace(s)
	for i := range s {
		if c := s[i]; c == '\n' || c == '\t' || c == '\r' || c >= utf8.RuneSelf || c == ' ' && s[i+1] == ' ' {
			return strings.Join(strings.Fields(s), " ")
		}
	}
	return s
}

// tokens splits a stretch of the page; columns count in the page.
func (p *page) tokens(from, to int) phrase {
	if from >= to {
		return nil
	}
	if from > 0 && !unicode.IsSpace(p.clear[from-1]) || to < len(p.clear) && !unicode.IsSpace(p.clear[to]) || p.clear[from] == '.' {
		return p.r.split(p.clear[from:to], from) // cut out of the middle of words
	}
	at := func(t token, from int) int { return t.from - from }
	i, _ := slices.BinarySearchFunc(p.all, from+1, at)
	n, _ := slices.BinarySearchFunc(p.all[i:], to+1, at)
	ts := p.all[i : i+n : i+n]
	for len(ts) > 0 && ts[len(ts)-1].kind == mark && ts[len(ts)-1].key == "." {
		ts = ts[:len(ts)-1] // the last stop parts nothing from nothing
	}
	if len(ts) > 0 && ts[0].lead != "" && ts[0].lead != " " {
		ts = slices.Clone(ts)
		ts[0].lead = ""
	}
	return ts
}

// row is one line of the page, its ends trimmed.
type row struct{ from, to int }

func (w row) blank() bool { return w.from >= w.to }

// rows are the lines of the page without the space around them.
func (p *page) rows() []row {
	out := make([]row, 0, len(p.lines))
	for next := 0; next <= len(p.clear); {
		from, to := next, next
		for to < len(p.clear) && p.clear[to] != '\n' {
			to++
		}
		next = to + 1
		for from < to && aroundWords(p.clear[from]) {
			from++
		}
		for from < to && aroundWords(p.clear[to-1]) {
			to--
		}
		out = append(out, row{from, to})
	}
	return out
}

// aroundWords are the characters that may stand round the words of a line and
// say nothing.
func aroundWords(r rune) bool {
	return unicode.IsSpace(r) || r == '_' || r == '*' || r == '#' || r == '|' || r == '>'
}

// cut makes the blocks: paragraph by paragraph, headings, lists and prose.
func (p *page) cut() {
	rows := p.rows()
	inList := false // under "Ingredients" every line is one
	for i := 0; i < len(rows); {
		if rows[i].blank() {
			i++
			continue
		}
		end := i
		for end < len(rows) && !rows[end].blank() {
			end++
		}
		inList = p.paragraph(rows[i:end], inList, slices.ContainsFunc(rows[end:], func(w row) bool { return !w.blank() }))
		i = end
	}
}

// paragraph makes the blocks of lines that stand together.
func (p *page) paragraph(rows []row, inList, more bool) bool {
	for len(rows) > 0 {
		ts := p.tokens(rows[0].from, rows[0].to)
		h, n := p.r.headAt(ts, true)
		first := len(p.blocks) == 0
		switch {
		case h.section != none && n == len(ts):
			inList = h.section == ingredients || inList && h.section == ofPart
		case first && p.isTitle(rows, ts, more):
		case h.section == ingredients && n < len(ts) && p.oneItem(ts[n:]) && p.itemsUnder(rows[1:]): // "Ingredients--1/2 lb. of flour."
			inList = true
			p.blocks = append(p.blocks, block{heading, rows[0].from, ts[n].from - 1})
			rows[0].from = ts[n].from - 1
			continue
		default:
			return p.body(rows, inList)
		}
		p.blocks = append(p.blocks, block{heading, rows[0].from, rows[0].to})
		rows = rows[1:]
	}
	return inList
}

// oneItem reports words that read as one ingredient and no more.
func (p *page) oneItem(ts phrase) bool {
	l, troubles := p.quiet.read(ts)
	return len(troubles) == 0 && len(l.Items) == 1
}

// itemsUnder reports lines that each begin an ingredient, up to a heading or the end.
func (p *page) itemsUnder(rows []row) bool {
	for i, w := range rows {
		ts := p.tokens(w.from, w.to)
		if h, _ := p.r.headAt(ts, true); h.section != none && i > 0 {
			return true
		}
		if !p.r.startsItem(ts) {
			return false
		}
	}
	return len(rows) > 0
}

// body makes the blocks of a paragraph that begins with no heading.
func (p *page) body(rows []row, inList bool) bool {
	broken := p.broken(rows)
	var items []bool
	if len(rows) == 1 || 3*broken <= len(rows) || inList && 2*broken <= len(rows) {
		items = p.itemRows(rows)
	}
	if items == nil || !p.isList(rows, items, inList, broken) {
		from := rows[0].from
		for _, w := range rows { // a heading inside parts the prose
			if w.to-w.from > longestHead || w.from == from || !p.endsBefore(w.from) {
				continue
			}
			ts := p.tokens(w.from, w.to)
			if h, n := p.r.headAt(ts, true); h.section != none && n == len(ts) {
				p.blocks = append(p.blocks, block{prose, from, w.from}, block{heading, w.from, w.to})
				from = w.to
			}
		}
		if last := rows[len(rows)-1]; from < last.to {
			p.blocks = append(p.blocks, block{prose, from, last.to})
		}
		return false
	}
	for i, w := range rows {
		ts := p.tokens(w.from, w.to)
		h, n := p.r.headAt(ts, true)
		last := len(p.blocks) - 1
		switch {
		case h.section != none && n == len(ts):
			p.blocks = append(p.blocks, block{heading, w.from, w.to})
		case i > 0 && unicode.IsLower(p.clear[w.from]) && p.blocks[last].kind == listed && (!items[i] || p.nameGoesOn(p.blocks[last], w, ts) || p.leftOpen(p.blocks[last])):
			p.blocks[last].to = w.to // the line goes on
		case !items[i] && (isStep(ts) || ts.is(0, imperatives) && len(ts) > 1 && number(ts[1:]).used == 0 && !ts.has(dittoWords) || ts.is(0, imperatives) && ts.has(vesselWords)):
			p.blocks = append(p.blocks, block{prose, w.from, w.to})
		default:
			p.blocks = append(p.blocks, block{listed, w.from, w.to})
		}
	}
	return inList
}

// endsBefore reports that the sentence has ended before a place: the last words of
// one, on a line of their own, are no heading.
func (p *page) endsBefore(at int) bool {
	for at > 0 && unicode.IsSpace(p.clear[at-1]) {
		at--
	}
	return at == 0 || strings.ContainsRune(".:;!?-–—", p.clear[at-1])
}

// leftOpen reports a line that ends in the midst of what it says: "stirred in the".
func (p *page) leftOpen(b block) bool {
	ts := p.tokens(b.from, b.to)
	return len(ts) > 1 && ts[len(ts)-1].kind == word && ts[len(ts)-1].is(midst)
}

var midst = words("a an the of and or in into with to for from as")

// nameGoesOn reports a line that ends the name which the one before it begins:
// "4 oz. white powdered", "sugar".
func (p *page) nameGoesOn(before block, w row, ts phrase) bool {
	have := p.tokens(before.from, before.to)
	if len(have) == 0 || p.r.startsItem(ts) {
		return false
	}
	last := have[len(have)-1:]
	if _, whole := p.r.called(last); !last.has(eggWords) && (whole || last[0].opens.Aside == 0 && !last.participle(0)) {
		return false
	}
	l, troubles := p.quiet.read(unnumbered(p.tokens(before.from, w.to)))
	return len(troubles) == 0 && len(l.Items) == 1
}

// longestHead is how many characters a heading inside a receipt may have.
const longestHead = 60

// isStep reports a line that gives an order and names no amount at its start:
// the method printed right under the list.
func isStep(ts phrase) bool {
	return len(ts) > 4 && ts.is(0, imperatives) || len(ts) > 14
}

// isTitle reports whether the first line of a text is what it is called.
func (p *page) isTitle(rows []row, ts phrase, more bool) bool {
	const longest = 14 // words
	alone := len(rows) == 1 && more || p.capitals(rows[0])
	if len(ts) == 0 || len(ts) > longest || ts[0].kind != word && len(ts) < 2 || !alone && p.r.isItem(ts) || (ts[len(ts)-1].key == "," || ts[len(ts)-1].key == ";") && !p.capitals(rows[0]) {
		return false
	}
	if n := countMarks(ts, "."); n > 1 {
		return false
	}
	if len(rows) == 1 {
		return more && (len(ts) <= 6 || !ts.is(0, imperatives))
	}
	if ts.is(0, imperatives) {
		return false
	}
	// A title over the text itself: the next line begins afresh.
	next := p.clear[rows[1].from]
	return !unicode.IsLower(next)
}

// capitals reports a line that is set in capitals throughout.
func (p *page) capitals(w row) bool {
	s := string(p.clear[w.from:w.to])
	return s == strings.ToUpper(s) && s != strings.ToLower(s)
}

func countMarks(ts phrase, key string) int {
	n := 0
	for i := range ts {
		if ts[i].kind == mark && ts[i].key == key && i+1 < len(ts) {
			n++
		}
	}
	return n
}

// split makes tokens of characters that begin at a place of the page.
func (r *Reader) split(runes []rune, at int) phrase {
	return scan(string(runes), runes, at, r.Tables)
}

// silent is the reader without advice on what else might be meant, for
// readings that are only tried.
func (r *Reader) silent() *Reader {
	if r.quiet {
		return r
	}
	q := *r
	q.quiet = true
	return &q
}
