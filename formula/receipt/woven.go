package receipt

import (
	"slices"

	"assize/formula"
	"assize/reference"
)

// mention is an ingredient met in a sentence.
type mention struct {
	from, to int    // tokens of the sentence
	written  string // the line it makes, when that is not the words themselves
	note     string // why it is written so
	how      manner
	line     formula.Line
	trouble  *Trouble
}

// manner is how an ingredient is met.
type manner int

const (
	withAmount manner = iota
	bare              // named, no amount
	again             // spoken of a second time: "stir in the butter"
	unread            // an amount of something that is not known
)

// weave finds ingredients in sentences. One is made for each sentence; what
// has been met before it is told by before.
type weave struct {
	r     *Reader
	quiet *Reader
	ts    phrase
	keys  []string // of the tokens, as names are looked up: marks are empty
	words []string // without the marks, as the rules for bare names want them
	at    []int    // of each token, its place in words
	page  *page

	inList bool // among ingredients every name counts
	found  []mention
	before func(c reference.Called, name []string) bool // was it listed
	last   *formula.Item                                // the amount met last
	eggs   of
	fruit  of
	titled phrase // of the receipt
}

func newWeave(r *Reader, p *page, ts phrase) *weave {
	w := &weave{r: r, quiet: p.quiet, ts: ts, page: p}
	if rooms := &p.rooms; cap(rooms.keys) < len(ts) {
		n := max(len(ts)+1, len(p.all)/2)
		rooms.keys, rooms.words, rooms.at = make([]string, 0, n), make([]string, 0, n), make([]int, 0, n+1)
	}
	w.keys, w.words, w.at, w.found = p.rooms.keys[:0], p.rooms.words[:0], p.rooms.at[:0], p.rooms.found[:0]
	for i := range ts {
		t := &ts[i]
		w.at = append(w.at, len(w.words))
		key := ""
		switch t.kind {
		case word:
			key = t.key
		case figure:
			key = t.text
		}
		w.keys = append(w.keys, key)
		if t.kind != mark {
			w.words = append(w.words, key)
		}
	}
	w.at = append(w.at, len(w.words))
	p.rooms.keys, p.rooms.words, p.rooms.at = w.keys, w.words, w.at
	return w
}

// scan goes through the sentence once.
func (w *weave) scan() []mention {
	for i := 0; i < len(w.ts); {
		if w.ts[i].kind == mark {
			i++
			continue
		}
		if m, ok := w.mentionAt(i); ok {
			if w.otherWay(m) {
				m.how = again
			}
			w.found = append(w.found, m)
			w.tasteBefore(len(w.found) - 1)
			if m.how == withAmount && len(m.line.Items) > 0 {
				w.remember(m)
				w.last = &w.found[len(w.found)-1].line.Items[len(m.line.Items)-1]
			}
			i = max(m.to, i+1)
			continue
		}
		i += max(1, w.pass(i))
	}
	w.page.rooms.found = w.found
	return w.found
}

// otherWay reports one thing that may be taken for the one named before it: "or
// a small tea-spoonful of essence of lemon".
func (w *weave) otherWay(m mention) bool {
	if len(w.found) == 0 {
		return false
	}
	before := w.found[len(w.found)-1].to
	j := m.from
	for j > before && (w.ts[j-1].kind == mark && w.ts[j-1].key == "," || w.ts.is(j-1, skipped) || w.keys[j-1] == "or" || w.keys[j-1] == "else" || w.keys[j-1] == "a") {
		j--
	}
	return j == before && (m.afterOr(w, before) || w.key(m.from) == "or")
}

// afterOr reports that "or" stands between a place and the mention.
func (m mention) afterOr(w *weave, from int) bool {
	for i := from; i < m.from; i++ {
		if w.keys[i] == "or" {
			return true
		}
	}
	return false
}

// tasteBefore has "to taste" hold for the names joined to the one it follows:
// "pepper and salt to taste".
func (w *weave) tasteBefore(i int) {
	last := &w.found[i]
	if last.how != bare || len(last.line.Items) != 1 || last.line.Items[0].Amount.State != formula.ToTaste {
		return
	}
	for joined := false; i > 0; i-- {
		m, next := &w.found[i-1], w.found[i]
		between := w.ts[m.to:next.from]
		if m.how != bare || len(m.line.Items) != 1 || m.line.Items[0].Amount.State != formula.NotGiven || len(between) > 2 {
			return
		}
		for _, t := range between {
			if t.key != "and" && t.key != "," {
				return
			}
			joined = joined || t.key == "and"
		}
		if !joined {
			return
		}
		text := w.say(m.from, m.to) + ", to taste"
		l, troubles := w.quiet.Line(text)
		if len(troubles) > 0 {
			return
		}
		m.line, m.written, m.note = l, text, "the taste goes for all that are named together"
	}
}

// mentionAt reads what begins at a token. Each way of wording is tried, those
// that only certain words begin first.
func (w *weave) mentionAt(i int) (mention, bool) {
	t := &w.ts[i]
	numbered := t.kind == figure || t.is(numberOpens)
	parted := t.participle()
	switch {
	case numbered, parted, t.old, t.opens.Name > 0, t.opens.Measure > 0, t.opens.Fill > 0, t.is(mentionOpens):
	case w.inList && (t.opens.Aside > 0 || t.is(listOpens)):
	default:
		return mention{}, false // as most words do, it begins nothing
	}
	if n := w.passFirst(i); n > 0 {
		return mention{}, false
	}
	if t.old {
		if m, ok := w.signed(i); ok {
			return m, true
		}
	}
	if numbered || parted || t.is(partsOpen) {
		if m, ok := w.parts(i); ok {
			return m, true
		}
		if m, ok := w.ofTheSame(i); ok {
			return m, true
		}
	}
	if t.is(ofWord) {
		if m, ok := w.ofEach(i); ok {
			return m, true
		}
	}
	if numbered || t.is(weightOpens) {
		if m, ok := w.weightOf(i); ok {
			return m, true
		}
	}
	if t.is(leaningOpens) {
		if m, ok := w.leaning(i); ok {
			return m, true
		}
	}
	if t.is(enoughOrOnly) {
		if m, ok := w.enough(i); ok {
			return m, true
		}
	}
	if m, ok := w.amount(i); ok {
		return m, true
	}
	if t.is(statesBy.set) {
		if m, ok := w.some(i); ok {
			return m, true
		}
	}
	return w.named(i)
}

// The words by which the ways of wording begin, besides numbers, measures, names
// and participles.
var (
	ofWord       = words("of")
	partsOpen    = union(words("the squeeze"), sideOrPart, partAdjectives)
	weightOpens  = words("the weight same")
	leaningOpens = union(words("against"), leaningBy.set)
	enoughOrOnly = words("enough sufficient as so a just about only plenty")
	mentionOpens = union(partsOpen, ofWord, weightOpens, leaningOpens, enoughOrOnly, statesBy.set, amountOpens, baked, words("sweeten season flavour"))
	listOpens    = union(skipped, adverbs, words("and"))
)

// passFirst counts the tokens of a time, a vessel or a comparison, which are
// no amounts whatever they look like.
func (w *weave) passFirst(i int) int {
	ts := w.ts[i:]
	switch t := &ts[0]; {
	case t.kind == figure, t.opens.Measure > 0, t.is(passOpens):
	default:
		return 0
	}
	c := number(ts)
	if n := timeOf(ts, c); n > 0 {
		return n
	}
	if n := w.vesselAt(i, c.used); n > 0 {
		return n
	}
	if n := w.comparison(i); n > 0 {
		return n
	}
	if k := w.keys[i]; (k == "in" || k == "into") && i+1 < len(w.ts) { // "cut into two pieces"
		if c := number(ts[1:]); c.used > 0 && ts.is(1+c.used, pieces) {
			return 2 + c.used
		}
	}
	if c.used > 0 && ts.is(c.used, uncounted) {
		return c.used + 1
	}
	return 0
}

// passOpens are the words that open what passFirst passes, besides measures.
var passOpens = union(numberOpens, likened, words("as like in into"))

func (w *weave) pass(i int) int { return w.passFirst(i) }

// uncounted are words that make no amount of a number before them.
var uncounted = words("times time inch inches thick degrees persons people turns folds foldings fold layers layer parts d s shillings pence")

var pieces = words("pieces parts slices halves quarters strips layers portions cakes rounds dice")

// vesselAt reads a vessel told by what it holds, behind a number of n tokens: "a
// quart basin", "pint mould".
func (w *weave) vesselAt(i, n int) int {
	ts := w.ts[i:]
	m := w.measureLen(i + n)
	if m == 0 {
		return 0
	}
	if ts.is(n+m, vesselWords) && ts.key(n+m) != "" {
		return n + m + 1
	}
	if ts.is(n+m-1, vesselWords) && ts.key(n+m) == "of" && !w.inList { // "over a basin of boiling water"
		for j := max(0, i-3); j < i; j++ {
			if k := w.keys[j]; k == "in" || k == "into" || k == "over" {
				if c, e := w.nameAt(i+n+m+1, false); e > 0 && c.Ingredient != nil && slices.Contains(c.Ingredient.Roles, "water") {
					return e - i
				}
			}
		}
	}
	return 0
}

var vesselWords = words("kettle kettles basin basins mould moulds mold molds dish dishes bowl bowls jar jars pan pans saucepan stewpan tin tins pot pots jug jugs bottle bottles measure size sized")

// comparison reads what a thing is likened to: "as thick as cream", "the colour
// of straw", "like butter".
func (w *weave) comparison(i int) int {
	ts := w.ts
	end := 0
	switch k := w.keys[i]; {
	case k == "as" && i+2 < len(ts) && ts.key(i+2) == "as" && !ts.is(i+1, howMuch):
		end = i + 3
	case ts.is(i, likened) && ts.key(i+1) == "of":
		end = i + 2
	case k == "like":
		end = i + 1
	default:
		return 0
	}
	if a := ts.key(end); a == "a" || a == "an" || a == "the" {
		end++
	}
	if _, n := w.nameAt(end, false); n > end {
		return n - i
	}
	if end < len(ts) && ts[end].kind == word {
		end++
	}
	return end - i
}

var (
	howMuch = words("much many little few")
	likened = words("size bigness thickness consistency consistence colour color shape form strength substance")
)

// measureLen is how many tokens the measure at i takes.
func (w *weave) measureLen(i int) int {
	if i >= len(w.ts) || w.ts[i].kind != word {
		return 0
	}
	return w.r.measureAt(w.ts[i:])
}

// nameAt finds a name that begins at token i or behind words that say nothing
// of what it is. It gives where the name proper begins and where it ends; end
// is 0 when there is none.
func (w *weave) nameAt(i int, plain bool) (c reference.Called, end int) {
	const most = 8
	for skip := 0; i < len(w.ts) && skip < most; skip++ {
		if w.ts[i].kind == mark && w.ts[i].key != "(" || w.ts[i].key == "(" {
			if skip > 0 && w.ts[i].key == "," && i+1 < len(w.ts) { // "good, fresh butter"
				i++
				continue
			}
			return reference.Called{}, 0
		}
		if w.r.flourFor(w.ts[i:]) {
			i++
		}
		if c, n := w.begins(i); n > 0 && w.wholeName(i, i+n) {
			if d, end := w.furtherName(i, n); end > 0 {
				return d, end
			}
			return c, i + n
		}
		if plain {
			return reference.Called{}, 0
		}
		n := w.setAside(i, i+len(w.run(i)))
		switch {
		case n > 0:
			i += n
		case w.ts.is(i, skipped) || w.ts.participle(i) && !w.ts.is(i, imperatives) || w.ts.is(i, adverbs) || w.keys[i] == "and" && skip > 0:
			i++
		default:
			return reference.Called{}, 0
		}
	}
	return reference.Called{}, 0
}

// begins finds the longest name that begins at a token, and how many it takes.
func (w *weave) begins(i int) (reference.Called, int) {
	if w.ts[i].opens.Name == 0 {
		return reference.Called{}, 0
	}
	return w.r.begins(w.run(i))
}

// setAside counts the tokens from one on that are a way of saying nothing of what a
// thing is; it looks no further than a second.
func (w *weave) setAside(from, to int) int {
	if w.ts[from].opens.Aside == 0 {
		return 0
	}
	return w.r.Tables.SetAside(w.keys[from:to])
}

// furtherName reads on where a side of an egg begins a longer name with words
// of handling in its midst: "white powdered sugar" is no white of egg.
func (w *weave) furtherName(i, n int) (reference.Called, int) {
	if eggSides.of(w.ts, i) == "" {
		return reference.Called{}, 0
	}
	j := i + 1
	for j < len(w.ts) && w.ts[j].kind == word && w.ts.participle(j) {
		j++
	}
	if j >= len(w.ts) || w.ts[j].kind != word {
		return reference.Called{}, 0
	}
	name := append([]string{w.keys[i]}, w.run(j)...)
	if c, m := w.r.begins(name); m > 1 && j+m-1 > i+n {
		return c, j + m - 1
	}
	return reference.Called{}, 0
}

// wholeName reports that a name is not cut out of the middle of words that mean
// something else: "butter dish", "cream-coloured".
func (w *weave) wholeName(from, to int) bool {
	if to < len(w.ts) && (w.ts.is(to, toolWords) || w.ts.is(to, vesselWords) && to-from == 1 && w.keys[from] != "sugar") {
		return false
	}
	return true
}

var toolWords = words("jelly filling frosting icing mixture mints pie pies pudding puddings tart tarts tartlets pasties dumplings sauce soup patties cheesecakes fritters spoon spoons whisk dish cloth paper cutter knife grater brush boat sieve coloured colored colour color cellar dredger bath thick mill")

// run are the keys from token i to the next mark, as many as a name may have.
func (w *weave) run(i int) []string {
	end := i
	for end < len(w.ts) && end < i+7 && w.ts[end].kind != mark {
		end++
	}
	return w.keys[i:end]
}

// ofEach reads "of each one glass: white wine, brandy and rose water".
func (w *weave) ofEach(i int) (mention, bool) {
	if w.keys[i] != "of" || w.key(i+1) != "each" {
		return mention{}, false
	}
	_, n := w.quiet.amountAt(w.ts[i+2:])
	if n == 0 {
		return mention{}, false
	}
	to := w.names(pastMarks(w.ts, i+2+n))
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, "", "")
}

// weightOf reads "the weight of four eggs in sugar and flour".
func (w *weave) weightOf(i int) (mention, bool) {
	n, _, own := weightHead(w.ts[i:], false)
	if n == 0 || own {
		return mention{}, false
	}
	c := number(w.ts[i+n:])
	if c.used == 0 {
		return mention{}, false
	}
	j := i + n + c.used
	written, note := "", ""
	_, e := w.nameAt(j, false)
	if e > 0 {
		j = e
	}
	if k := w.key(j); k != "in" && k != "of" {
		return mention{}, false
	}
	to := w.names(j + 1)
	if to == 0 {
		return mention{}, false
	}
	if e == 0 { // "the weight of 7 in flour"
		written, note = w.say(i, j)+" eggs in "+w.say(j+1, to), "of eggs, like the weight before it"
	}
	return w.reads(i, to, to, written, note)
}

// key is the word at a token, empty outside the sentence and for a mark.
func (w *weave) key(i int) string {
	if i >= 0 && i < len(w.keys) {
		return w.keys[i]
	}
	return ""
}

// names takes a list of names, "butter, sugar and flour", and gives where it
// ends; 0 when there is none.
func (w *weave) names(i int) int {
	to := 0
	for {
		_, e := w.nameAt(i, false)
		if e == 0 {
			return to
		}
		to = e
		j := e
		for j < len(w.ts) && (w.keys[j] == "and" || w.ts[j].kind == mark && w.ts[j].key == ",") {
			j++
		}
		if j == e {
			return to
		}
		if w.keys[j-1] == "and" && w.key(j) == "of" && w.nameFollows(j+1) { // "of milk and of coffee"
			j++
		}
		if _, n := stateAt(w.ts[j:]); n > 0 || number(w.ts[j:]).used > 0 {
			return to // the next has an amount of its own
		}
		i = j
	}
}

// say are the words of tokens as they stand on the page.
func (w *weave) say(from, to int) string {
	if from >= to {
		return ""
	}
	return w.page.words(w.ts[from].from-1, w.end(to))
}

// end is the place behind token to-1.
func (w *weave) end(to int) int {
	t := w.ts[to-1]
	return t.from - 1 + len([]rune(t.text))
}

// reads tries the words from one token to another as an ingredient line, then
// those up to a nearer end.
func (w *weave) reads(from, to, nearer int, written, note string) (mention, bool) {
	for from < to && w.ts[from].kind == mark {
		from++
	}
	ends := []int{to}
	if nearer != to {
		ends = append(ends, nearer)
	}
	for _, e := range ends {
		var l formula.Line
		var troubles []Trouble
		if written != "" {
			l, troubles = w.quiet.Line(written)
		} else {
			l, troubles = w.quiet.read(w.ts[from:e])
			l.Text = w.say(from, e)
		}
		if len(troubles) == 0 && len(l.Items) > 0 {
			return mention{from: from, to: e, written: written, note: note, line: l}, true
		}
	}
	return mention{}, false
}

// read reads tokens as an ingredient line; columns are those of the tokens.
func (r *Reader) read(ts phrase) (formula.Line, []Trouble) {
	if len(ts) > mostOfTokens {
		return formula.Line{}, []Trouble{{Column: ts.column(), What: "the line is too long to be one ingredient"}}
	}
	f := r.line(trimOrders(ts))
	r.account(&f, ts)
	if len(f.troubles) > 0 {
		return formula.Line{}, f.troubles
	}
	return formula.Line{Items: f.items, Notes: f.notes}, nil
}
