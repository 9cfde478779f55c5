package receipt

import (
	"slices"
	"strings"

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
	w := &weave{r: r, quiet: r.silent(), ts: ts, page: p, keys: make([]string, len(ts)), at: make([]int, len(ts)+1)}
	for i, t := range ts {
		w.at[i] = len(w.words)
		switch {
		case t.kind == word:
			w.keys[i] = t.key
			w.words = append(w.words, t.key)
		case t.kind == figure:
			w.keys[i] = t.text
			w.words = append(w.words, t.text)
		}
	}
	w.at[len(ts)] = len(w.words)
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
	for j > before && (w.ts[j-1].kind == mark && w.ts[j-1].key == "," || skipped[w.keys[j-1]] || w.keys[j-1] == "or" || w.keys[j-1] == "else" || w.keys[j-1] == "a") {
		j--
	}
	return j == before && (m.key(w, before) || w.key(m.from) == "or")
}

// key reports that "or" stands between a place and the mention.
func (m mention) key(w *weave, from int) bool {
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
	if n := w.passFirst(i); n > 0 {
		return mention{}, false
	}
	for _, read := range [...]func(*weave, int) (mention, bool){
		(*weave).parts, (*weave).ofTheSame, (*weave).ofEach, (*weave).weightOf, (*weave).leaning, (*weave).enough, (*weave).amount, (*weave).some, (*weave).named,
	} {
		if m, ok := read(w, i); ok {
			return m, true
		}
	}
	return mention{}, false
}

// passFirst counts the tokens of a time, a vessel or a comparison, which are
// no amounts whatever they look like.
func (w *weave) passFirst(i int) int {
	ts := w.ts[i:]
	if n := timeAt(ts); n > 0 {
		return n
	}
	if n := w.vesselAt(i); n > 0 {
		return n
	}
	if n := w.comparison(i); n > 0 {
		return n
	}
	if k := w.keys[i]; (k == "in" || k == "into") && i+1 < len(w.ts) { // "cut into two pieces"
		if c := number(ts[1:]); c.used > 0 && pieces[ts.key(1+c.used)] {
			return 2 + c.used
		}
	}
	if c := number(ts); c.used > 0 && uncounted[ts.key(c.used)] {
		return c.used + 1
	}
	return 0
}

func (w *weave) pass(i int) int { return w.passFirst(i) }

// uncounted are words that make no amount of a number before them.
var uncounted = words("times time inch inches thick degrees persons people turns folds foldings fold layers layer parts d s shillings pence")

var pieces = words("pieces parts slices halves quarters strips layers portions cakes rounds dice")

// vesselAt reads a vessel told by what it holds: "a quart basin", "pint mould".
func (w *weave) vesselAt(i int) int {
	ts := w.ts[i:]
	n := 0
	if c := number(ts); c.used > 0 {
		n = c.used
	}
	m := w.measureLen(i + n)
	if m == 0 {
		return 0
	}
	if vesselWords[ts.key(n+m)] && ts.key(n+m) != "" {
		return n + m + 1
	}
	if vesselWords[ts.key(n+m-1)] && ts.key(n+m) == "of" && !w.inList { // "over a basin of boiling water"
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
	case k == "as" && i+2 < len(ts) && ts.key(i+2) == "as" && !howMuch[ts.key(i+1)]:
		end = i + 3
	case likened[k] && ts.key(i+1) == "of":
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
		if c, n := w.r.begins(w.run(i)); n > 0 && w.wholeName(i, i+n) {
			return c, i + n
		}
		if plain {
			return reference.Called{}, 0
		}
		n := w.r.Tables.SetAside(w.run(i))
		switch {
		case n > 0:
			i += n
		case skipped[w.keys[i]] || participle(w.keys[i]) && !imperatives[w.keys[i]] || adverbs[w.keys[i]] || w.keys[i] == "and" && skip > 0:
			i++
		default:
			return reference.Called{}, 0
		}
	}
	return reference.Called{}, 0
}

// wholeName reports that a name is not cut out of the middle of words that mean
// something else: "butter dish", "cream-coloured".
func (w *weave) wholeName(from, to int) bool {
	if to < len(w.ts) && (toolWords[w.keys[to]] || vesselWords[w.keys[to]] && to-from == 1 && w.keys[from] != "sugar") {
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

// parts reads parts of eggs and fruits named before their number: "the yolks of
// eight eggs", "the grated rind and the juice of two lemons", "grated rind 1
// lemon", "half the rind of a lemon".
func (w *weave) parts(i int) (mention, bool) {
	ts := w.ts[i:]
	shift, share := 0, phrase(nil)
	if f := fraction(ts); f.used > 0 && f.err == nil && ts.key(f.used) == "the" {
		shift, share = f.used, ts[:f.used]
	}
	n, ok := w.r.partsWords(ts[shift:])
	if !ok {
		return mention{}, false
	}
	n += shift
	c := number(ts[n:])
	end := i + n + c.used
	_, to := w.nameAt(end, false)
	if to == 0 {
		to = end
		// "the rind of one and the juice of two lemons", "the yolks of six"
		for j := end; j < min(len(w.ts), end+3); j++ {
			if m, ok := w.r.partsWords(w.ts[j:]); ok {
				d := number(w.ts[j+m:])
				if _, e := w.nameAt(j+m+d.used, false); e > 0 {
					to = e
				}
				break
			}
		}
	}
	to = w.moreParts(i, to)
	written, note := "", ""
	if to == end && w.key(to) == "of" && w.pointsBack(to+1) && share == nil { // "the whites of but two of them"
		if m, ok := w.reads(i, to, to, "", ""); ok {
			m.to = to + 2
			return m, true
		}
	}
	if share != nil {
		if !c.article && !(c.used > 0 && c.span.IsExact() && c.span.Likely.Equal(one)) {
			return mention{}, false
		}
		rest := w.say(i+shift, i+n)
		written = rest + " " + share.String() + " a " + w.say(end, to)
		note = "a part of one is taken as one in part"
	}
	return w.reads(i, w.tail(to, true), to, written, note)
}

// moreParts takes in further parts of the same things: "and the juice of 3", "and
// half the whites".
func (w *weave) moreParts(from, to int) int {
	for {
		j := to
		for j < len(w.ts) && (w.keys[j] == "and" || w.keys[j] == "with" || w.ts[j].kind == mark && w.ts[j].key == ",") {
			j++
		}
		if j == to {
			return to
		}
		n, ok := w.r.partsWords(w.ts[j:])
		if !ok {
			return to
		}
		c := number(w.ts[j+n:])
		end := j + n + c.used
		if _, e := w.nameAt(end, false); e > 0 {
			return to // it names its own
		}
		if _, tr := w.quiet.read(w.ts[from:end]); len(tr) > 0 {
			return to
		}
		to = end
	}
}

// partsWords reads the words for parts up to the number of the things they are
// of, and tells how many tokens those are.
func (r *Reader) partsWords(ts phrase) (int, bool) {
	i := 0
	if ts.key(0) == "and" {
		return 0, false
	}
	for i < min(len(ts), 6) {
		k := ts.key(i)
		if eggSides[k] != "" || fruitParts[k] != "" && fruitParts[k] != wholeFruit && k != "peeled" && k != "skinned" {
			break
		}
		if ts[i].kind != word || k != "the" && (!participle(k) || imperatives[k]) && !partAdjectives[k] || i == 0 && adverbs[k] && ts.key(1) == "the" {
			return 0, false
		}
		i++
	}
	if i == min(len(ts), 6) {
		return 0, false
	}
	n, _, ok := partsAt(ts, func(w string) bool {
		return eggSides[w] != "" || fruitParts[w] != "" && fruitParts[w] != wholeFruit
	})
	return n, ok
}

var partAdjectives = words("very thin yellow outer well finely clear fresh whole and stiff")

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
		if _, n := stateAt(w.ts[j:]); n > 0 || number(w.ts[j:]).used > 0 {
			return to // the next has an amount of its own
		}
		i = j
	}
}

// amount reads an amount and the name of what it is of.
func (w *weave) amount(i int) (mention, bool) {
	if !w.mayStart(i) {
		return mention{}, false
	}
	ts := w.ts[i:]
	a, n := w.quiet.amountAt(ts)
	if n == 0 {
		return mention{}, false
	}
	j := i + n
	if !a.numbered && w.key(j) != "of" && !w.inList {
		return mention{}, false // "small round cakes"
	}
	if k := w.key(j); (k == "do" || k == "ditto") && !a.measured {
		return w.ditto(i, j)
	}
	definite := w.definite(i, j)
	if a.Parts && w.key(j) != "of" {
		return mention{}, false // "one part over the paste"
	}
	if m, ok := w.proportion(i, j, a); ok {
		return m, true
	}
	if m, ok := w.each(i, j); ok {
		return m, true
	}
	of := w.key(j) == "of"
	if of {
		j++
	}
	c, to := w.nameAt(j, false)
	if to == j+1 && !of && notName[w.keys[j]] && !w.inList && a.measured {
		return mention{}, false // "two bowls must have"
	}
	switch {
	case to == 0 && a.measured && a.Measure != "":
		return w.unknown(i, j)
	case to == 0:
		return mention{}, false
	case !a.measured && !w.countable(c, j, to, i):
		m, ok := w.elliptic(i, n, j, to)
		if !ok && w.inList && a.numbered && !a.article() {
			return w.notRead(i, to)
		}
		return m, ok
	}
	if definite && w.before != nil && w.before(c, w.keys[j:to]) {
		return mention{from: i, to: to, how: again}, true
	}
	if full := w.longerName(j, to); full != "" && definite {
		return w.reads(i, to, to, w.say(i, i+n)+" of "+full, "named in full before")
	}
	if m, ok := w.sideAfter(i, to, c); ok {
		return m, true
	}
	if e := w.trailingEach(to); e > 0 {
		if m, ok := w.reads(i, e, e, "", ""); ok {
			return m, true
		}
	}
	return w.reads(i, w.tail(to, c.Ingredient != nil && c.Ingredient.Kind == "egg"), to, "", "")
}

// mayStart reports a token an amount may begin with.
func (w *weave) mayStart(i int) bool {
	t := w.ts[i]
	if t.kind == figure {
		return i == 0 || w.ts[i-1].key != "/"
	}
	k := t.key
	if imperatives[k] && w.key(i+1) != "of" {
		return false // "grate" and "shake" are measures as well
	}
	if isFraction(k) && (i == 0 || w.ts[i-1].kind != figure && numberWords[w.keys[i-1]] == 0) {
		switch w.key(i + 1) {
		case "a", "an", "the", "them", "it", "your", "each":
			if k != "half" {
				return false // "core and quarter a dozen pippins"
			}
		}
	}
	if _, ok := numberWords[k]; ok || k == "a" || k == "an" || k == "half" || isFraction(k) || k == "from" || k == "between" || k == "about" {
		return true
	}
	if _, ok := fewWords[k]; ok {
		return true
	}
	if _, ok := groupWords[k]; ok {
		return true
	}
	if w.measureLen(i) > 0 {
		return true
	}
	_, n := w.r.fillAt(w.ts[i:])
	return n > 0
}

// definite reports an amount of something that was there before: "the half
// pound of butter", "two spoonfuls of the milk".
func (w *weave) definite(i, j int) bool {
	if i > 0 {
		switch w.keys[i-1] {
		case "the", "other", "remaining", "this", "that", "your":
			return true
		}
	}
	k, next := w.key(j), w.key(j+1)
	if k == "of" {
		k, next = next, w.key(j+2)
	}
	if strings.HasSuffix(next, "est") {
		return false // "a pound of the best flour"
	}
	return k == "the" || k == "this" || k == "that" || k == "these" || k == "those"
}

// countable reports that a number of the thing says how much it is.
func (w *weave) countable(c reference.Called, from, to, start int) bool {
	if c.Fruit != nil {
		return true
	}
	if c.Ingredient == nil {
		return false
	}
	_, ok := w.r.eachOf(c.Ingredient, w.ts[from:to])
	return ok || c.Ingredient.Kind == "egg"
}

// elliptic reads "three quarters of butter" after "three quarters of a pound of
// sugar": the measure is that of the amount before it.
func (w *weave) elliptic(i, n, j, to int) (mention, bool) {
	if w.key(i+n) != "of" || w.last == nil || w.last.Amount.Measure == "" || w.definite(i, i+n) {
		return mention{}, false
	}
	between := " "
	if f := fraction(w.ts[i:]); f.used == n {
		between = " of a "
	}
	written := w.say(i, i+n) + between + w.last.Amount.Measure + " of " + w.say(j, to)
	return w.reads(i, to, to, written, "the measure is that of the amount before it")
}

// ditto reads "1/4 do. butter": the measure is that of the amount before it.
func (w *weave) ditto(i, j int) (mention, bool) {
	from := j + 1
	if w.key(from) == "of" {
		from++
	}
	_, to := w.nameAt(from, false)
	if to == 0 || w.last == nil || w.last.Amount.Measure == "" {
		return mention{}, false
	}
	between := " "
	if f := fraction(w.ts[i:]); f.used == j-i {
		between = " of a "
	}
	end := w.tail(to, false)
	return w.reads(i, end, end, w.say(i, j)+between+w.last.Amount.Measure+" of "+w.say(from, end), "ditto: the measure is that of the amount before it")
}

// proportion reads "to every pound of flour", "for each pint of milk": the
// receipt is reckoned on one.
func (w *weave) proportion(i, j int, a amount) (mention, bool) {
	from := i
	for from > 0 && proportionWords[w.keys[from-1]] {
		from--
	}
	if from == i || !a.measured || w.keys[i-1] != "every" && w.keys[i-1] != "each" {
		return mention{}, false
	}
	if w.key(j) == "of" {
		j++
	}
	_, to := w.nameAt(j, false)
	if to == 0 {
		return mention{}, false
	}
	written := w.say(i, to)
	if a.implied && !a.article() {
		written = "1 " + written
	}
	m, ok := w.reads(from, to, to, written, "reckoned on one; put in more of each in the same proportion")
	return m, ok
}

var proportionWords = words("to for every each allow")

// longerName finds the whole name of what is now called by its last word alone:
// "the nut" after "a cocoa-nut". It is empty when the name is whole as it is.
func (w *weave) longerName(from, to int) string {
	if w.key(from) == "the" {
		from++
	}
	if to-from != 1 {
		return ""
	}
	short := w.keys[from]
	for _, ts := range []phrase{w.ts[:from], w.titled} {
		for k := len(ts) - 1; k > 0; k-- {
			if ts.key(k) != short || ts[k-1].kind != word {
				continue
			}
			keys := []string{ts.key(k - 1), short}
			if _, n := w.r.begins(keys); n == 2 {
				return ts[k-1 : k+1].String()
			}
		}
	}
	return ""
}

// sideAfter reads "of 12 eggs whip the whites alone".
func (w *weave) sideAfter(i, to int, c reference.Called) (mention, bool) {
	if i == 0 || w.keys[i-1] != "of" || i > 1 && w.ts[i-2].kind != mark || c.Ingredient == nil || c.Ingredient.ID != egg {
		return mention{}, false
	}
	for j := to; j < min(len(w.ts), to+6) && w.ts[j].kind == word; j++ {
		if eggSides[w.keys[j]] != "" {
			return w.reads(i, j+1, to, "the "+w.ts[j].text+" of "+w.say(i, to), "only those are put in")
		}
	}
	return mention{}, false
}

// each reads "half a pound each of butter and sugar".
func (w *weave) each(i, j int) (mention, bool) {
	if w.key(j) == "of" && w.key(j+1) == "each" {
		j++
	}
	if w.key(j) != "each" {
		return mention{}, false
	}
	j++
	if w.key(j) == "of" {
		j++
	}
	to := w.names(j)
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, "", "")
}

// trailingEach finds "of each" behind a list of names.
func (w *weave) trailingEach(to int) int {
	j := to
	for j < len(w.ts) && (w.keys[j] == "and" || w.ts[j].kind == mark && w.ts[j].key == ",") {
		j++
	}
	end := to
	if j > to {
		if e := w.names(j); e > 0 {
			end = e
		}
	}
	k := end
	if k < len(w.ts) && w.ts[k].kind == mark && w.ts[k].key == "," {
		k++
	}
	if w.key(k) == "of" {
		k++
	}
	if w.key(k) == "each" && w.key(k+1) != "of" {
		return k + 1
	}
	return 0
}

// unknown is an amount of something the tables do not know. Of what was made
// on the way ("a pint of this syrup", "half the mixture") it is none.
func (w *weave) unknown(i, j int) (mention, bool) {
	if j == 0 || w.key(j-1) != "of" || w.definite(i, j-1) {
		return mention{}, false
	}
	to := j
	for to < len(w.ts) && to < j+4 && w.ts[to].kind == word && !stops[w.keys[to]] && number(w.ts[to:]).used == 0 {
		to++
	}
	if to == j || inHand[w.keys[to-1]] || inHand[w.keys[j]] {
		return mention{}, false
	}
	if w.last != nil { // "half a pound of sweet almonds and 3 oz. of bitter"
		words := reference.Words(w.last.Name)
		noun := words[len(words)-1]
		full := w.say(i, to) + " " + noun
		whole := append(slices.Clone(w.keys[j:to]), noun)
		if _, n := w.r.begins(whole); n < len(whole) {
			full = ""
		}
		if m, ok := w.reads(i, to, to, full, "the name is that of the thing before it"); ok {
			return m, true
		}
	}
	return w.notRead(i, to)
}

// notRead is an amount that the line reader makes nothing of.
func (w *weave) notRead(i, to int) (mention, bool) {
	_, troubles := w.quiet.read(w.ts[i:to])
	if len(troubles) == 0 {
		return mention{}, false
	}
	return mention{from: i, to: to, how: unread, trouble: &troubles[0], line: formula.Line{Text: w.say(i, to)}}, true
}

var (
	// inHand are things made on the way, and words that stand for them.
	inHand = words(`it them this that these those mixture liquor syrup batter paste dough custard which each pulp jelly jam whole same same what mass
		crust pastry puff composition preparation liquid froth pudding cake quantity whichever any other cold hot boiling one water`)
	// stops are words no name goes over.
	stops = words(`into to with and in on for till until from which that over upon as at by or when if then put add beat stir mix let but not is are be
		of well finely very through while being having so too`)
)

// some reads "a little salt", "some currants", "a few cloves".
func (w *weave) some(i int) (mention, bool) {
	s, n := stateAt(w.ts[i:])
	if n == 0 || s != formula.NotGiven {
		return mention{}, false
	}
	j := i + n
	for w.key(j) == "more" || w.key(j) == "of" || w.key(j) == "very" || w.key(j) == "good" {
		j++
	}
	k := j
	if m := w.measureLen(k); m > 0 && w.key(k+m) == "of" { // "some slices of citron"
		k += m + 1
	}
	c, to := w.nameAt(k, false)
	if to > 0 && w.key(j) == "the" && w.before != nil && w.before(c, w.keys[k:to]) {
		return mention{from: i, to: to, how: again}, true
	}
	little := w.ts[i:].begins("a little") > 0 || w.ts[i:].begins("a very little") > 0 || w.ts[i:].begins("very little") > 0
	if to == 0 || !w.put(c, j, to) && !(little && w.key(to-1) == "water") {
		return mention{}, false
	}
	if l := w.likeness(to); l > to { // "a piece of butter the size of an egg"
		return w.reads(i, w.tail(l, false), l, "", "")
	}
	if k > j { // how many is not said
		return w.asBare(k, to, c, w.say(k, to), "how much is not said")
	}
	return w.asBare(i, to, c, "", "")
}

// likeness is where "the size of an egg" ends that begins at a token.
func (w *weave) likeness(i int) int {
	end := min(len(w.ts), i+10)
	for e := i; e < end; e++ {
		if w.ts[e].kind == mark && w.ts[e].key != "," {
			end = e
		}
	}
	l, ok := w.quiet.likenessIn(w.ts[i:end])
	if !ok || l.measure == "" || l.from > 1 {
		return 0
	}
	return i + l.to
}

// named reads a name without an amount before it: one may follow ("flour, half
// a pound"; "butter the size of a walnut"; "sugar to your taste").
func (w *weave) named(i int) (mention, bool) {
	if k := w.keys[i]; k == "and" || k == "or" || k == "with" || k == "of" && !w.inList {
		return mention{}, false
	}
	if i > 0 && w.ts[i].kind == word && w.r.Tables.SetAside(w.keys[i:i+1]) > 0 && !w.inList {
		if _, n := w.r.begins(w.run(i)); n == 0 {
			return mention{}, false // the words before a name come in with it
		}
	}
	if k := w.keys[i]; k == "sweeten" || k == "season" || k == "flavour" {
		return w.seasoning(i)
	}
	c, to := w.nameAt(i, !w.inList)
	if to == 0 {
		return mention{}, false
	}
	if l := w.likeness(to); l > to {
		return w.reads(i, w.tail(l, false), l, "", "")
	}
	if m, ok := w.amountBehind(i, to); ok {
		return m, true
	}
	if m, ok := w.leanAfter(i, to, c); ok {
		return m, true
	}
	if e, written := w.eachAfter(i); e > 0 {
		if m, ok := w.reads(i, e, e, written, "as much of each"); ok {
			return m, true
		}
	}
	state := w.stateAfter(to)
	if k := w.key(i - 1); !w.inList && k == "the" && !(w.ts[min(to, len(w.ts)):].begins("to your") > 0 || w.ts[min(to, len(w.ts)):].begins("to taste") > 0) {
		state = 0
	}
	if state == 0 && !w.put(c, i, to) {
		return mention{}, false
	}
	from := i
	for from > 0 && w.ts[from-1].kind == word && !glue[w.keys[from-1]] && !skipped[w.keys[from-1]] && (w.r.Tables.SetAside(w.keys[from-1:from]) == 1 || participle(w.keys[from-1]) && !imperatives[w.keys[from-1]]) && !w.taken(from-1) {
		from--
	}
	if e := state; e > to {
		for f := from; f <= i; f++ {
			if m, ok := w.reads(f, e, e, "", ""); ok {
				m.how = bare
				return m, true
			}
		}
	}
	if state > 0 && !w.put(c, i, to) {
		return mention{}, false
	}
	if c.Ingredient != nil && c.Ingredient.ID == egg && !w.inList {
		if e := w.tail(to, true); e > to && w.hasLimit(to, e) {
			return mention{from: from, to: e, how: again, written: strings.Trim(w.say(to, e), " ,()")}, true
		}
	}
	if k := w.key(from - 1); !w.inList && (k == "the" || k == "this" || k == "these" || k == "your") {
		return mention{from: from, to: to, how: again}, true // of what was there before, by that name or another
	}
	return w.asBare(from, to, c, "", "")
}

// eachAfter is where a list of names ends that has its amount behind it:
// "candied peel and citron, of each an ounce".
func (w *weave) eachAfter(i int) (to int, written string) {
	end := w.names(i)
	j := end
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	if w.key(j) == "of" {
		j++
	}
	if end > 0 && w.key(j) != "each" && w.key(j-1) != "of" { // "butter and flour, a pound of each"
		_, n := w.quiet.amountAt(w.ts[min(len(w.ts), j):])
		k := j + n
		if w.key(k) == "of" {
			k++
		}
		if n > 0 && (w.key(k) == "each" || w.key(k) == "either") && !w.nameFollows(k+1) {
			return k + 1, w.say(j, j+n) + " each of " + w.say(i, end)
		}
		return 0, ""
	}
	if end == 0 || w.key(j) != "each" {
		return 0, ""
	}
	_, n := w.quiet.amountAt(w.ts[min(len(w.ts), j+1):])
	if n == 0 {
		return 0, ""
	}
	return j + 1 + n, ""
}

// leanAfter reads a name with a leaning amount behind it: "of fresh butter
// melted the same".
func (w *weave) leanAfter(i, to int, c reference.Called) (mention, bool) {
	j := w.tail(to, false)
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	for _, l := range leaningBy[w.key(j)] {
		n := w.ts[j:].begins(l.words)
		if n == 0 || !w.closesAt(j+n) || w.last == nil || w.last.Amount.State != formula.Stated || l.words == "the weight" {
			continue
		}
		return w.leansOn(i, j+n, *w.last, l, w.say(i, to), c)
	}
	return mention{}, false
}

// hasLimit reports that some of the whites or yolks are left out by the words
// between.
func (w *weave) hasLimit(from, to int) bool {
	for _, c := range split(w.ts[from:to]) {
		if _, ok := limit(c); ok {
			return true
		}
	}
	return false
}

// taken reports a token that an earlier mention holds.
func (w *weave) taken(i int) bool {
	return len(w.found) > 0 && i < w.found[len(w.found)-1].to
}

// put reports a name that is put into the dish where it stands.
func (w *weave) put(c reference.Called, from, to int) bool {
	if w.inList {
		return true
	}
	name := w.keys[from:to]
	if last := name[len(name)-1]; preserves[last] && !overlaps(w.clauseAt(from, to, true), advice) {
		return w.preserve(to - 1)
	}
	if c.Ingredient != nil && len(c.Ingredient.Roles) == 0 {
		return false
	}
	for len(name) > 1 && (skipped[name[0]] || name[0] == "of") {
		name = name[1:]
	}
	if overlaps(w.clauseAt(from, to, true), advice) {
		return false
	}
	if onlyIdle(name) || len(name) == 1 && notName[name[0]] {
		return false
	}
	// The rules for names in a method look no further than the next stop.
	lo, hi := w.clauseBounds(from, to, false)
	clause := w.words[w.at[lo]:w.at[hi]]
	if (w.key(from-1) == "its" || w.key(from-1) == "their") && overlaps(clause, []string{"free", "wash", "washed"}) {
		return false // butter washed free of its salt
	}
	if w.key(to) == "out" && overlaps(clause, []string{"wash", "squeeze", "press", "work"}) {
		return false // wash the salt out
	}
	return !passedOver(clause, w.at[from]-w.at[lo], w.at[to]-w.at[lo])
}

// preserves are things a dish is filled with as they are, by words that mostly
// mean something made on the way.
var preserves = words("preserve preserves jam jams marmalade jelly sweetmeat sweetmeats")

// preserve reports that a preserve at token i is put in: "with good preserve",
// "as much jam", not "the jelly".
func (w *weave) preserve(i int) bool {
	lo, hi := w.clauseBounds(i, i+1, false)
	for j := i - 1; j >= max(0, i-4) && w.ts[j].kind == word; j-- {
		switch k := w.keys[j]; {
		case k == "with" || k == "some" || k == "of" || k == "much" || k == "any":
			return overlaps(w.keys[lo:hi], []string{"line", "spread", "cover", "fill", "filled", "layer", "layers", "put", "lay", "spreading", "some", "much"})
		case k == "the" || k == "your" || k == "this" || k == "a":
			return false
		}
	}
	return false
}

// clauseBounds is the stretch round tokens up to the next stop, or comma when
// the narrow one is wanted.
func (w *weave) clauseBounds(from, to int, narrow bool) (lo, hi int) {
	ends := func(t token) bool {
		return t.kind == mark && (t.key == ";" || t.key == "." || t.key == ":" || narrow && (t.key == "," || t.key == "-" || t.key == "(" || t.key == ")"))
	}
	lo, hi = from, to
	for lo > 0 && !ends(w.ts[lo-1]) {
		lo--
	}
	for hi < len(w.ts) && !ends(w.ts[hi]) {
		hi++
	}
	return lo, hi
}

func (w *weave) clauseAt(from, to int, narrow bool) []string {
	lo, hi := w.clauseBounds(from, to, narrow)
	return w.words[w.at[lo]:w.at[hi]]
}

// amountBehind reads an amount that stands behind its name: "flour, half a
// pound;", "suet, chopped fine, twelve ounces", "of flour there is half a pound",
// "of milk four" after an amount in spoonfuls.
func (w *weave) amountBehind(i, to int) (mention, bool) {
	if e := w.amountAfter(to); e > 0 {
		if m, ok := w.reads(i, e, e, "", ""); ok {
			return m, true
		}
	}
	if to == i+1 && notName[w.keys[i]] && !w.inList {
		return mention{}, false
	}
	said := w.tail(to, false)
	if said == to {
		said = w.aside(to)
	}
	j := said
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	for n := 0; n < 2 && (being[w.key(j)] || n == 0 && imperatives[w.key(j)] && w.ofBefore(i)); n++ {
		j++ // "of flour sift half a pound"
	}
	if j == to {
		return w.numberBehind(i, to)
	}
	a, n := w.quiet.amountAt(w.ts[min(j, len(w.ts)):])
	if n == 0 || !a.numbered || !a.measured || timeAt(w.ts[j:]) > 0 || !w.closesAt(j+n) {
		return mention{}, false
	}
	const note = "the amount stands behind the name"
	written := w.say(j, j+n) + " of " + w.say(i, to)
	if said > to {
		form := strings.Trim(w.say(to, said), " ,()")
		if m, ok := w.reads(i, j+n, j+n, written+", "+form, note); ok {
			return m, true
		}
	}
	return w.reads(i, j+n, j+n, written, note)
}

// aside is where a clause ends that stands between a name and its amount and
// has no amount itself: "sugar, common white and powdered, a pound".
func (w *weave) aside(to int) int {
	const longest = 6
	if to >= len(w.ts) || w.ts[to].kind != mark || w.ts[to].key != "," {
		return to
	}
	j := to + 1
	for j < len(w.ts) && j <= to+longest && w.ts[j].kind == word && numberWords[w.keys[j]] == 0 && !imperatives[w.keys[j]] {
		j++
	}
	if j == to+1 || j >= len(w.ts) || w.ts[j].kind != mark || w.ts[j].key != "," {
		return to
	}
	return j
}

// being are the words that may stand between a name and its amount.
var being = words("is are there take weigh was be")

// numberBehind reads "of sifted flour four" after an amount in cups.
func (w *weave) numberBehind(i, to int) (mention, bool) {
	c := number(w.ts[min(to, len(w.ts)):])
	if c.used == 0 || c.article || !w.closesAt(to+c.used) || w.last == nil || w.last.Amount.Measure == "" || !w.ofBefore(i) {
		return mention{}, false
	}
	return w.reads(i, to+c.used, to+c.used, w.say(to, to+c.used)+" "+w.last.Amount.Measure+" of "+w.say(i, to), "the measure is that of the amount before it")
}

// ofBefore reports that the words before a name begin with "of", as in "of
// sifted flour four".
func (w *weave) ofBefore(i int) bool {
	for j := i - 1; j >= max(0, i-3); j-- {
		if w.keys[j] == "of" {
			return true
		}
		if w.ts[j].kind != word {
			return false
		}
	}
	return false
}

// amountAfter is where an amount ends that follows a name: "flour, half a
// pound;". It has to close the clause.
func (w *weave) amountAfter(to int) int {
	j := to
	for j < len(w.ts) && (w.ts[j].kind == mark && (w.ts[j].key == "," || w.ts[j].key == ":" || w.ts[j].key == "-" || w.ts[j].key == "(")) {
		j++
	}
	if j > to+1 || j >= len(w.ts) {
		return 0
	}
	a, n := w.quiet.amountAt(w.ts[j:])
	if n == 0 || !a.numbered || !a.measured || timeAt(w.ts[j:]) > 0 {
		return 0
	}
	end := j + n
	switch {
	case end == len(w.ts), w.ts[end].kind == mark, w.keys[end] == "and" && w.nameFollows(end+1):
		if end < len(w.ts) && w.ts[end].key == ")" {
			end++
		}
		return end
	}
	return 0
}

func (w *weave) nameFollows(i int) bool {
	if i >= len(w.ts) {
		return false
	}
	_, n := w.nameAt(i, false)
	return n > 0
}

// stateAfter is where "to your taste", "enough to make a paste" ends that
// follows a name.
func (w *weave) stateAfter(to int) int {
	j := to
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	s, n := stateAt(w.ts[j:])
	switch {
	case n == 0 || s == formula.NotGiven:
		return 0
	case s == formula.ToTaste:
		return j + n
	}
	if k := w.key(j); k != "q" && k != "quantum" && k != "enough" && k != "sufficient" && k != "to" && k != "as" {
		return 0
	}
	end := j + n
	for end < len(w.ts) && w.ts[end].kind != mark && end < j+12 && w.keys[end] != "and" && w.keys[end] != "then" {
		end++
	}
	return end
}

// seasoning reads "sweeten it to your taste", "season with pepper and salt".
func (w *weave) seasoning(i int) (mention, bool) {
	if w.keys[i] != "sweeten" {
		return mention{}, false // what follows names the things
	}
	end := i + 1
	for end < len(w.ts) && w.ts[end].kind != mark && w.keys[end] != "and" && w.keys[end] != "with" && end < i+9 {
		end++
	}
	if w.key(end) == "with" {
		return mention{}, false
	}
	m, ok := w.reads(i, end, end, "", "")
	m.how = bare
	return m, ok
}

// enough reads "as much flour as will make it a stiff paste", "enough milk to
// mix".
func (w *weave) enough(i int) (mention, bool) {
	k := w.keys[i]
	if k != "enough" && k != "sufficient" && k != "as" && k != "so" && k != "a" && k != "just" && k != "about" && k != "only" && k != "plenty" {
		return mention{}, false
	}
	if w.measureLen(i) > 0 {
		return mention{}, false // "as much as will lie on a sixpence"
	}
	end := i
	for end < len(w.ts) && w.ts[end].kind != mark && end < i+16 {
		end++
	}
	for e := i + 4; e < end; e++ { // an order after it is no part of it
		if (w.keys[e] == "and" || w.keys[e] == "then") && (imperatives[w.key(e+1)] || w.keys[e] == "then") {
			end = e
		}
	}
	f, ok := w.quiet.enoughFor(w.ts[i:end])
	if !ok || !f.clean() || len(f.items) != 1 {
		return mention{}, false
	}
	m, ok := w.reads(i, end, end, "", "")
	m.how = bare
	return m, ok
}

// asBare makes a mention of a name that has no amount.
func (w *weave) asBare(from, to int, c reference.Called, written, note string) (mention, bool) {
	if w.before != nil && w.before(c, w.keys[from:to]) && !w.inList {
		return mention{from: from, to: to, how: again}, true
	}
	for f := from; f < to; f++ { // shorter words before the name, when the longer do not read
		m, ok := w.reads(f, to, to, written, note)
		if ok {
			m.how = bare
			return m, true
		}
		if written != "" {
			break
		}
	}
	return mention{}, false
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
