package receipt

import (
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
	or       []mention // what may be taken instead
	choice   bool      // it is one of those that the mention before it may be taken for
	first    bool      // "the flour", of which nothing was said before
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

	loaves bool // a loaf or a roll is spoken of
	shares bool // something is said of each of some things
	inList bool // among ingredients every name counts
	found  []mention
	before func(c reference.Called, name []string) bool // was it listed
	last   *formula.Item                                // the amount met last
	times  *reference.Span                              // so many times is the next amount meant
	bare   *formula.Item                                // what was named last without an amount
	bared  func(name []string) bool                     // was it named without an amount
	listed func(c reference.Called) *formula.Item       // what a line read before has of a thing
	eggs   of
	fruit  of
	titled phrase // of the receipt
}

func newWeave(r *Reader, p *page, ts phrase) *weave {
	w := &weave{r: r, quiet: p.quiet, ts: ts, page: p, loaves: ts.has(rollOrLoaf), shares: ts.has(eachWords)}
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
			if n := w.spelledOut(i); n > 0 {
				i += n
				continue
			}
			if n := w.mayBe(i); n > 0 {
				w.found = append(w.found, mention{from: i, to: i + n, how: again, choice: true})
				i += n
				continue
			}
			i++
			continue
		}
		if n := w.leavesOutOf(i); n > 0 {
			i += n
			continue
		}
		if m, ok := w.mentionAt(i); ok {
			m = w.timesOver(m)
			if w.otherWay(m) {
				w.allChoices()
				if last := &w.found[len(w.found)-1]; m.how != again && len(m.line.Items) == 1 {
					last.or = append(last.or, m)
				}
				m.how, m.choice = again, true
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

// leavesOutOf has a clause that leaves out some of the whites or yolks be said of the
// eggs named last in the sentence: "beat six eggs till thick, leaving out the whites".
// It counts the tokens of the clause.
func (w *weave) leavesOutOf(i int) int {
	if !w.ts.is(i, leavingOut) || len(w.found) == 0 || i == 0 || w.ts[i-1].kind != mark {
		return 0
	}
	m := &w.found[len(w.found)-1]
	if m.how != withAmount || len(m.line.Items) != 1 || m.line.Items[0].Ingredient != egg || m.line.Items[0].Amount.Measure != "" {
		return 0
	}
	to := w.limited(i)
	if to == 0 {
		return 0
	}
	text := m.written
	if text == "" {
		text = w.say(m.from, m.to)
	}
	written := text + ", " + w.say(i, to)
	more, ok := w.reads(m.from, m.to, m.to, written, "some are left out")
	if !ok {
		return 0
	}
	more.to = to
	*m = more
	return to - i
}

var leavingOut = words("leaving omitting without excepting wanting")

// spelledOut counts the tokens of a bracket that tells what the thing before it is made
// of, which has its amount: "a spoonful of mixed spice (cinnamon, mace, and nutmeg)".
func (w *weave) spelledOut(i int) int {
	if w.ts[i].key != "(" || len(w.found) == 0 {
		return 0
	}
	m := &w.found[len(w.found)-1]
	if m.how != withAmount || m.to != i || len(m.line.Items) != 1 || m.line.Items[0].Ingredient != mixedSpice {
		return 0
	}
	for j := i + 1; j < len(w.ts); j++ {
		if w.ts[j].kind == mark && w.ts[j].key == ")" {
			return j + 1 - i
		}
	}
	return 0
}

// mixedSpice is the ingredient of spices ground together.
const mixedSpice = "spice_mixed"

// mayBe counts the tokens of a bracket in a list that tells what may be put in as well:
// "(figs cut in bits may be a part of the fruit)".
func (w *weave) mayBe(i int) int {
	if !w.inList || w.ts[i].key != "(" {
		return 0
	}
	for j := i + 1; j < len(w.ts); j++ {
		if w.ts[j].kind == mark && w.ts[j].key == ")" {
			if w.ts[i:j].has(mayWords) {
				return j + 1 - i
			}
			return 0
		}
	}
	return 0
}

var mayWords = words("may might can could would improve better")

// timesOver has an amount that is given for every pound of a thing be as many times
// that as there are pounds of it. A stop ends what is given so.
func (w *weave) timesOver(m mention) mention {
	if w.times == nil || m.how == again {
		return m
	}
	times := *w.times
	if len(w.found) > 0 && w.ts[w.found[len(w.found)-1].to:m.from].has(fullStops) {
		w.times = nil
		return m
	}
	if m.how != withAmount || len(m.line.Items) != 1 || m.line.Items[0].Amount.State != formula.Stated {
		return m
	}
	it := m.line.Items[0]
	number := spelled(multiply(it.Amount.Number, times))
	written := number + " " + it.Name
	if it.Amount.Measure != "" {
		written = number + " " + it.Amount.Measure + " of " + it.Name
	}
	if it.Form != "" {
		written += ", " + it.Form
	}
	n, ok := w.reads(m.from, m.to, m.to, written, "so much for each of "+spelled(times))
	if !ok {
		return m
	}
	return n
}

var fullStops = words(". ;")

// allChoices has "apple, plum or cherry" be one of the three: the names joined by
// commas to the one before "or" are choices as well, and the first stands for all.
func (w *weave) allChoices() {
	for k := len(w.found) - 1; k > 0; k-- {
		m, before := &w.found[k], &w.found[k-1]
		between := w.ts[before.to:m.from]
		if !unsaid(m) || !unsaid(before) || len(between) != 1 || between[0].key != "," {
			return
		}
		m.how, m.choice = again, true
	}
}

// unsaid reports a name of which no amount is given.
func unsaid(m *mention) bool {
	return m.how == bare && len(m.line.Items) == 1 && m.line.Items[0].Amount.State == formula.NotGiven && m.line.Items[0].Amount.Words == ""
}

// otherWay reports one thing that may be taken for the one named before it: "or
// a small tea-spoonful of essence of lemon".
func (w *weave) otherWay(m mention) bool {
	if len(w.found) == 0 {
		return false
	}
	before := w.found[len(w.found)-1].to
	j := m.from
	for j > before && (w.ts[j-1].kind == mark && (w.ts[j-1].key == "," || w.ts[j-1].key == "(") || w.ts.is(j-1, skipped) || w.keys[j-1] == "or" || w.keys[j-1] == "else" || w.keys[j-1] == "a") {
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
	if last.how != bare || len(last.line.Items) != 1 || last.line.Items[0].Amount.State != formula.ToTaste || w.ts.is(last.from, sweetens) || w.ts.is(last.from+1, objectWords) {
		return // "and sweeten it to your taste" is of what sweetens alone
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

var (
	sweetens    = words("sweeten sweetened season")
	objectWords = words("it them")
)

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
	if numbered {
		if m, ok := w.shared(i); ok {
			return m, true
		}
	}
	if numbered || parted || t.is(partsOpen) {
		if m, ok := w.sideOfThose(i); ok {
			return m, true
		}
		if m, ok := w.parts(i); ok {
			return m, true
		}
		if m, ok := w.ofTheSame(i); ok {
			return m, true
		}
	}
	if w.loaves && t.is(crumbOpens) {
		if m, ok := w.crumb(i); ok {
			return m, true
		}
	}
	if t.is(ofWord) {
		if m, ok := w.ofEach(i); ok {
			return m, true
		}
		if m, ok := w.weightGoesOn(i); ok {
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
	if t.is(dittoWords) && w.inList || t.is(ditto) {
		if m, ok := w.dittoOf(i); ok {
			return m, true
		}
	}
	if m, ok := w.amount(i); ok {
		if more, ok := w.orTwo(i, m); ok {
			return more, true
		}
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
	crumbOpens   = union(words("the"), grated, crumbWords, numberOpens)
	partsOpen    = union(words("the squeeze"), sideOrPart, partAdjectives)
	weightOpens  = words("the weight same")
	leaningOpens = union(words("against"), leaningBy.set)
	enoughOrOnly = words("enough sufficient as so a just about only plenty")
	mentionOpens = union(partsOpen, dittoWords, crumbOpens, ofWord, weightOpens, leaningOpens, enoughOrOnly, statesBy.set, amountOpens, ofFlour, words("sweeten sweetened season flavour"))
	listOpens    = union(skipped, adverbs, words("and"))
)

// measureLen is how many tokens the measure at i takes.
func (w *weave) measureLen(i int) int {
	if i >= len(w.ts) || w.ts[i].kind != word {
		return 0
	}
	return w.r.measureAt(w.ts[i:])
}

// key is the word at a token, empty outside the sentence and for a mark.
func (w *weave) key(i int) string {
	if i >= 0 && i < len(w.keys) {
		return w.keys[i]
	}
	return ""
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
