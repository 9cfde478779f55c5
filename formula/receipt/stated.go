package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

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
	if m, ok := w.filledElliptic(i, n, a); ok {
		return m, true
	}
	j := i + n
	if k := w.key(i - 1); !a.measured && !w.inList && (k == "stick" || k == "sticking") {
		return mention{}, false // "stick a clove in each"
	}
	if k := w.key(i - 1); a.article() && (k == "as" || k == "like") && w.key(j) != "of" {
		if _, to := w.nameAt(j, false); to > 0 {
			return mention{from: i, to: to, how: again}, true // "mix as a pound cake is mixed"
		}
	}
	if !a.numbered && w.key(j) != "of" && !w.inList && !w.ts.is(i, pinchWords) {
		return mention{}, false // "small round cakes"
	}
	if k := w.key(j); (k == "do" || k == "ditto") && !a.measured {
		return w.ditto(i, j)
	}
	definite := w.definite(i, j)
	if k := w.key(i - 1); (k == "in" || k == "into") && w.key(j) == "the" && a.measured {
		return mention{}, false // "stir in a bowl the yolks of two eggs"
	}
	if a.Parts && (w.key(j) != "of" || definite) {
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
	if to == j+1 && of && w.keys[j] == "white" && w.last != nil && w.quiet.isWeight(a.Measure) { // "six ounces of moist sugar and six of white"
		words := reference.Words(w.last.Name)
		if m, ok := w.reads(i, to, to, w.say(i, to)+" "+words[len(words)-1], "the name is that of the thing before it"); ok {
			return m, true
		}
	}
	if to == j+1 && !of && w.ts.is(j, notName) && !w.inList && a.measured && !w.quiet.isWeight(a.Measure) {
		return mention{}, false // "two bowls must have"
	}
	if to == 0 && w.key(j+1) == "or" { // "a spoonful of raspberry or currant jelly"
		if _, e := w.nameAt(j+2, true); e > 0 && w.ts.is(e-1, preserves) {
			return w.reads(i, e, e, w.say(i, i+n)+" of "+w.say(j+2, e), "one or the other")
		}
	}
	if to == 0 && w.quiet.isWeight(a.Measure) { // "1/4 lb crushed peel"
		k := j
		for w.participleAt(k) {
			k++
		}
		if p := w.key(k); p == "peel" || p == "peels" {
			return w.reads(i, k+1, k+1, a.Words+" of candied peel", "peel by weight is candied peel")
		}
	}
	switch {
	case to == 0 && a.measured && a.Measure != "" && (a.numbered || w.inList):
		if !of && w.closesAt(j) { // "three or four cloves": what measures as well
			if m, ok := w.reads(i, w.tail(j, false), j, "", ""); ok {
				return m, true
			}
		}
		if m, ok := w.ones(i, j); ok {
			return m, true
		}
		if m, ok := w.weighedOut(i, j); ok {
			return m, true
		}
		return w.unknown(i, j)
	case to == 0:
		if m, ok := w.ones(i, j); ok {
			return m, true
		}
		return w.sharedNoun(i, j)
	case of && w.goesOnCounting(i, n, a, c):
		if m, ok := w.elliptic(i, n, j, to); ok {
			return m, true
		}
	}
	switch {
	case !a.measured && !w.countable(c, j, to, i):
		m, ok := w.elliptic(i, n, j, to)
		if !ok && !w.inList && w.cannotWeigh(i, j, to, c) { // "six sponge biscuits"
			return w.asBare(j, to, c, w.say(j, to)+", quantity not given", "what one of them weighs is not known")
		}
		if !ok && w.inList && a.numbered && !a.article() {
			return w.notRead(i, to)
		}
		return m, ok
	}
	if definite && c.Ingredient != nil && len(c.Ingredient.Roles) == 0 {
		return mention{from: i, to: to, how: again}, true // "a spoonful of the crust"
	}
	if definite && w.before != nil && w.before(c, w.keys[j:to]) {
		return mention{from: i, to: to, how: again}, true
	}
	if full := w.longerName(j, to); full != "" && (definite || strings.HasPrefix(w.key(to-1), "berr") || w.key(to-1) == "fruit" || w.key(to-1) == "nuts" || stem(w.key(to-1)) == "potato") {
		m, ok := w.reads(i, to, to, w.say(i, i+n)+" of "+full, "named in full before")
		if ok && definite && len(m.line.Items) == 1 {
			w.partOnly(m.line.Items[0].Ingredient)
		}
		return m, ok
	}
	if m, ok := w.sideAfter(i, to, c); ok {
		return m, true
	}
	if l := w.likeness(to); l > to && w.ts[i:i+n].has(lumps) { // "a lump of butter the size of an egg"
		if m, ok := w.reads(i, w.tail(l, false), l, "", ""); ok {
			return m, true
		}
	}
	if e := w.trailingEach(to); e > 0 {
		if m, ok := w.reads(i, e, e, "", ""); ok {
			return m, true
		}
	}
	if a.Measure != "" {
		if m, ok := w.between(i, to, a, c); ok {
			return m, true
		}
	}
	if m, ok := w.reads(i, w.tail(to, c.Ingredient != nil && c.Ingredient.Kind == "egg"), to, "", ""); ok {
		return m, true
	}
	s := j
	maker := false
	for s < to-1 && !w.ts.is(s, remade) && (w.participleAt(s) || w.ts.is(s, adverbs) || w.keys[s] == "dry" || w.ts[s].kind == mark || w.keys[s] == "and" || w.ofMaker(s)) {
		maker = maker || w.ofMaker(s)
		s++
	}
	if s == j || s >= to || !a.measured {
		return mention{}, false
	}
	written := w.say(i, i+n) + " of " + w.say(s, to)
	if maker { // "Cooper's gelatine"
		return w.reads(i, w.tail(to, false), to, written, "whose make it is says nothing of what it is")
	}
	return w.reads(i, to, to, written+", "+strings.Trim(w.say(j, s), " ,"), "what was done to it stands before the name") // "unwashed butter"
}

// remade are participles that make another thing of what they are said of.
var remade = words(`preserved candied dried stewed pickled salted smoked potted clarified burnt toasted roasted parched condensed evaporated malted
	spiced sweetened soured curdled desiccated crystallised crystallized sugared brandied fermented powdered pounded`)

// between reads two spices that have one amount between them, "a tea-spoonful of mace
// and cinnamon", and any two things that are said to be mixed.
func (w *weave) between(i, to int, a amount, c reference.Called) (mention, bool) {
	if end := w.peelList(i, to, a, c); end > 0 {
		return w.reads(i, end, end, a.Words+" of candied peel", "peels, all of them")
	}
	if c.Fruit != nil && w.key(to) == "and" { // "two ounces of orange and citron"
		if d, end := w.nameAt(to+1, false); end > 0 && d.Ingredient != nil && d.Ingredient.ID == candied {
			return w.reads(i, end, end, a.Words+" of candied peel", "peels, both")
		}
	}
	if m, ok := w.mixedBoth(i, to, c); ok {
		return m, true
	}
	if w.key(to) != "and" || c.Ingredient == nil {
		return mention{}, false
	}
	if _, n := w.quiet.amountAt(w.ts[min(to+1, len(w.ts)):]); n > 0 {
		return mention{}, false // "a stick of cinnamon and a blade of mace"
	}
	d, end := w.nameAt(to+1, false)
	if end == 0 || d.Ingredient == nil || d.Ingredient == c.Ingredient || w.key(to+1) == "the" || w.key(to+1) == "some" || w.stateAfter(end) > 0 {
		return mention{}, false
	}
	mixed := w.mixedBehind(end) > 0 || w.ts[i:to].has(mixedWords)
	if !mixed && !(slices.Contains(c.Ingredient.Roles, "flavour") && slices.Contains(d.Ingredient.Roles, "flavour")) {
		return mention{}, false
	}
	last := max(end, w.mixedBehind(end))
	return w.reads(i, last, last, w.say(i, end)+", equal parts", "the two have the amount between them")
}

// mixedBoth reads two things that the tables hold by one name, and that are said to
// be mixed: "a pint of currants and raisins mixed".
func (w *weave) mixedBoth(i, to int, c reference.Called) (mention, bool) {
	last := w.mixedBehind(to)
	if last == 0 || c.Ingredient == nil || strings.HasPrefix(c.Ingredient.ID, "x_") {
		return mention{}, false
	}
	m, ok := w.reads(i, last, last, w.say(i, to)+", equal parts", "the two have the amount between them")
	return m, ok && len(m.line.Items) == 2
}

// mixedBehind is where the words end that say of two things that they are mixed:
// "mixed", ", chopped and mixed together"; 0 when they are none.
func (w *weave) mixedBehind(i int) int {
	if i < len(w.ts) && w.ts[i].kind == mark && w.ts[i].key == "," {
		i++
	}
	for j := i; j < min(len(w.ts), i+4) && w.ts[j].kind == word; j++ {
		if w.keys[j] == "mixed" {
			if w.key(j+1) == "together" {
				j++
			}
			return j + 1
		}
		if !w.ts.participle(j) && w.keys[j] != "and" {
			return 0
		}
	}
	return 0
}

// peelList is where "orange, lemon and citron peel" ends, of which a weight is given; 0
// when the words are no such list.
func (w *weave) peelList(i, to int, a amount, c reference.Called) int {
	if c.Fruit == nil || !w.quiet.isWeight(a.Measure) {
		return 0
	}
	j := to
	for j < min(len(w.ts), to+8) {
		switch {
		case w.keys[j] == "and", w.ts[j].kind == mark && w.ts[j].key == ",", w.key(j) == "citron":
			j++
		case w.key(j) == "peel" || w.key(j) == "peels":
			if j > to {
				return j + 1
			}
			return 0
		default:
			d, e := w.nameAt(j, true)
			if e == 0 || d.Fruit == nil && (d.Ingredient == nil || d.Ingredient.ID != candied) {
				return 0
			}
			if d.Ingredient != nil && w.keys[e-1] == "peel" && j > to {
				return e
			}
			j = e
		}
	}
	return 0
}

var mixedWords = words("mixed")

// mayStart reports a token an amount may begin with.
func (w *weave) mayStart(i int) bool {
	t := w.ts[i]
	if t.kind == figure {
		return i == 0 || w.ts[i-1].key != "/"
	}
	k := t.key
	if t.is(imperatives) && w.key(i+1) != "of" {
		return false // "grate" and "shake" are measures as well
	}
	if t.is(fractionSet) && (i == 0 || w.ts[i-1].kind != figure && !w.ts.is(i-1, numberWordSet)) {
		switch w.key(i + 1) {
		case "a", "an", "the", "them", "it", "your", "each":
			if k != "half" {
				return false // "core and quarter a dozen pippins"
			}
		}
	}
	if t.is(amountOpens) {
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
		case "the", "other", "remaining", "this", "that", "your", "extra":
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
	figured := w.ts[i].kind == figure && fraction(w.ts[i:]).used == n // "1/2 lb. butter, 1/4 citron"
	if w.key(i+n) != "of" && !figured || w.last == nil || w.last.Amount.Measure == "" || w.definite(i, i+n) || figured && !w.quiet.isWeight(w.last.Amount.Measure) {
		return mention{}, false
	}
	between := " "
	if f := fraction(w.ts[i:]); f.used == n {
		between = " of a "
	}
	name := w.say(j, to)
	if w.key(to-1) == "fruit" {
		if full := w.titledFruit(); full != "" {
			name = full
		}
	}
	written := w.say(i, i+n) + between + w.last.Amount.Measure + " of " + name
	return w.reads(i, to, to, written, "the measure is that of the amount before it")
}

// filledElliptic reads "one heaped of butter" behind "three tea-cups of sugar": the
// measure is that of the amount before it, and how full it was is its own.
func (w *weave) filledElliptic(i, n int, a amount) (mention, bool) {
	c := number(w.ts[i:])
	if a.measured || c.used == 0 || c.article || w.last == nil || w.last.Amount.Measure == "" {
		return mention{}, false
	}
	f, m := w.r.fillAt(w.ts[min(i+c.used, len(w.ts)):])
	if m == 0 || !fullness.has(f.id) && f.id != "scant" || w.key(i+c.used+m) != "of" {
		return mention{}, false
	}
	_, to := w.nameAt(i+c.used+m+1, false)
	if to == 0 {
		return mention{}, false
	}
	written := w.say(i, i+c.used+m) + " " + w.last.Amount.Measure + " of " + w.say(i+c.used+m+1, to)
	return w.reads(i, to, to, written, "the measure is that of the amount before it")
}

// lumps are the measures whose bigness may be told behind the name.
var lumps = words("lump lumps piece pieces bit bits knob knobs ball balls slice slices")

// cannotWeigh reports a number of things that are put in, of which nobody knows what
// one weighs: no waters to wash in, nor what is made.
func (w *weave) cannotWeigh(i, j, to int, c reference.Called) bool {
	n := number(w.ts[i:])
	if n.used == 0 || n.article || to <= j+1 || c.Ingredient == nil || len(c.Ingredient.Roles) == 0 || slices.Contains(c.Ingredient.Roles, "water") {
		return false
	}
	if k := w.keys[j]; k == "the" || k == "or" || k == "full" || w.key(i-1) == "or" {
		return false
	}
	return countMarks(w.ts[i:to], ",") == 0 && !overlaps(w.keys[max(0, i-2):i], makingWords)
}

// makingWords are the words before a number of things that are made.
var makingWords = []string{"make", "makes", "making", "into", "in", "form", "formed", "for"}

// goesOnCounting reports "two of raisins" right behind "three pounds of currants":
// a number with "of" is of the measure before it, though the thing can be counted.
func (w *weave) goesOnCounting(i, n int, a amount, c reference.Called) bool {
	if a.measured || !a.numbered || a.article() || c.Ingredient == nil || fromEgg.has(c.Ingredient.Kind) || len(w.found) == 0 || w.last == nil || w.last.Amount.Measure == "" {
		return false
	}
	last := w.found[len(w.found)-1]
	if last.how != withAmount || w.ts[i:i+n].has(groupWords.set) { // "a dozen of walnuts"
		return false
	}
	for j := last.to; j < i; j++ {
		if w.ts[j].kind != mark && w.keys[j] != "and" {
			return false
		}
	}
	return true
}

// sharedNoun reads "twelve sweet and six bitter almonds": the noun stands with the
// second alone.
func (w *weave) sharedNoun(i, j int) (mention, bool) {
	to := j
	for to < min(len(w.ts), j+3) && w.ts[to].kind == word && w.keys[to] != "and" && number(w.ts[to:]).used == 0 {
		to++
	}
	if to == j || w.key(to) != "and" {
		return mention{}, false
	}
	n := number(w.ts[min(to+1, len(w.ts)):])
	_, e := w.nameAt(to+1+n.used, false)
	if n.used == 0 || n.article || e <= to+2+n.used {
		return mention{}, false
	}
	whole := append(slices.Clone(w.keys[j:to]), w.keys[e-1])
	if _, m := w.r.begins(whole); m != len(whole) {
		return mention{}, false
	}
	return w.reads(i, to, to, w.say(i, to)+" "+w.ts[e-1].text, "the name is that of the thing after it")
}

// weighedOut reads "pare the apples, weigh two pounds, and chop them": the amount is of
// what was named last.
func (w *weave) weighedOut(i, j int) (mention, bool) {
	if k := w.key(i - 1); k != "weigh" && k != "measure" || !w.closesAt(j) {
		return mention{}, false
	}
	for k := len(w.found) - 1; k >= 0; k-- {
		if m := w.found[k]; m.how == bare && len(m.line.Items) == 1 && m.line.Items[0].Amount.State == formula.NotGiven {
			return w.reads(i, j, j, w.say(i, j)+" of "+m.line.Items[0].Name, ofNamed)
		}
	}
	if w.bare != nil {
		return w.reads(i, j, j, w.say(i, j)+" of "+w.bare.Name, ofNamed)
	}
	if n := len(w.found); n > 0 {
		if its := w.found[n-1].line.Items; len(its) == 1 && w.partOnly(its[0].Ingredient) {
			return w.reads(i, j, j, w.say(i, j)+" of "+its[0].Name, ofNamed)
		}
	}
	return mention{}, false
}

// partOnly drops the count of a thing of which a part is weighed out: "open a
// cocoa-nut, and weigh half a pound".
func (w *weave) partOnly(ingredient string) bool {
	for k := len(w.found) - 1; k >= 0; k-- {
		m := &w.found[k]
		if m.how == withAmount && len(m.line.Items) == 1 && m.line.Items[0].Ingredient == ingredient && m.line.Items[0].Amount.Measure == "" {
			m.how = again
			return true
		}
	}
	return false
}

// ofNamed is why an amount is of what was named before it.
const ofNamed = "of what was named before"

// ones reads "4 bitter ones" after sweet almonds: the noun is that of the thing
// named before it.
func (w *weave) ones(i, j int) (mention, bool) {
	to := j
	for to < len(w.ts) && to < j+4 && w.ts[to].kind == word && w.keys[to] != "ones" {
		to++
	}
	if to == j || w.key(to) != "ones" || w.last == nil {
		return mention{}, false
	}
	words := reference.Words(w.last.Name)
	noun := words[len(words)-1]
	return w.reads(i, to+1, to+1, w.say(i, to)+" "+noun, "the name is that of the thing before it")
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
	const note = "ditto: the measure is that of the amount before it"
	if end := len(w.ts); w.inList && end > to {
		if m, ok := w.reads(i, end, end, w.say(i, j)+between+w.last.Amount.Measure+" of "+w.say(from, end), note); ok {
			return m, true
		}
	}
	end := w.tail(to, false)
	return w.reads(i, end, end, w.say(i, j)+between+w.last.Amount.Measure+" of "+w.say(from, end), note)
}

// dittoOf reads "ditto flour", "do. of sugar": the amount is the one before it.
func (w *weave) dittoOf(i int) (mention, bool) {
	j := i + 1
	if w.key(j) == "of" {
		j++
	}
	c, to := w.nameAt(j, false)
	if to == 0 || w.last == nil || w.last.Amount.State != formula.Stated {
		return mention{}, false
	}
	return w.leansOn(i, to, *w.last, leaningWord{words: "ditto", times: one}, w.say(j, to), c)
}

// proportion reads "to every pound of flour", "for each pint of milk": the
// receipt is reckoned on one.
func (w *weave) proportion(i, j int, a amount) (mention, bool) {
	from := i
	for from > 0 && w.ts.is(from-1, proportionWords) {
		from--
	}
	if from == i || !a.measured || w.keys[i-1] != "every" && w.keys[i-1] != "each" {
		return mention{}, false
	}
	if w.key(j) == "of" {
		j++
	}
	c, to := w.nameAt(j, false)
	if to == 0 {
		return mention{}, false
	}
	if on := w.amountOf(c); on != nil && on.Amount.Measure == a.Measure && len(a.also) == 0 && a.Number.Likely.Equal(one) {
		w.times = &on.Amount.Number // "to every pound of flour eight eggs", of which there are four pounds
		return mention{from: from, to: to, how: again}, true
	}
	written := w.say(i, to)
	if a.implied && !a.article() {
		written = "1 " + written
	}
	m, ok := w.reads(from, to, to, written, "reckoned on one; put in more of each in the same proportion")
	return m, ok
}

// pinchWords are measures that are said without "of" or a number: "pinch salt".
var pinchWords = words("pinch dash")

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
	if short == "fruit" { // "a quart of fruit" for a gooseberry tart
		return w.titledFruit()
	}
	if short == "berries" || short == "berry" { // "the berries" of a whortleberry cake
		for i := range w.titled {
			if k := w.titled.key(i); strings.Contains(k, "berr") && k != short && w.titled[i].opens.Name > 0 {
				return w.titled[i].text
			}
		}
	}
	for _, ts := range []phrase{w.ts[:from], w.titled} {
		for k := len(ts) - 1; k > 0; k-- {
			if ts.key(k) != short && stem(ts.key(k)) != stem(short) || ts[k-1].kind != word || ts.participle(k-1) { // the apples of a boiled apple pudding are not boiled
				continue
			}
			keys := []string{ts.key(k - 1), ts.key(k)}
			if _, n := w.r.begins(keys); n == 2 {
				return ts[k-1 : k+1].String()
			}
		}
	}
	return ""
}

// titledFruit is the one fruit that the title names; empty when there is none, or more.
func (w *weave) titledFruit() string {
	found := ""
	for i := range w.titled {
		if w.titled[i].opens.Name == 0 || w.titled[i].kind != word {
			continue
		}
		c, n := w.r.begins([]string{w.titled.key(i)})
		if n == 0 || c.Fruit == nil && (c.Ingredient == nil || !overlap(c.Ingredient.Roles, []string{"pulp", "dried"})) || w.titled.is(i, notName) {
			continue
		}
		if found != "" {
			return ""
		}
		found = w.titled[i].text
	}
	return found
}

// sideAfter reads "of 12 eggs whip the whites alone".
func (w *weave) sideAfter(i, to int, c reference.Called) (mention, bool) {
	if i == 0 || w.keys[i-1] != "of" || i > 1 && w.ts[i-2].kind != mark || c.Ingredient == nil || c.Ingredient.ID != egg {
		return mention{}, false
	}
	for j := to; j < min(len(w.ts), to+6) && w.ts[j].kind == word; j++ {
		if eggSides.of(w.ts, j) != "" {
			return w.reads(i, j+1, to, "the "+w.ts[j].text+" of "+w.say(i, to), "only those are put in")
		}
	}
	return mention{}, false
}

// unknown is an amount of something the tables do not know. Of what was made
// on the way ("a pint of this syrup", "half the mixture") it is none.
func (w *weave) unknown(i, j int) (mention, bool) {
	if j == 0 || w.key(j-1) != "of" || w.definite(i, j-1) {
		return mention{}, false
	}
	to := j
	for to < len(w.ts) && to < j+4 && w.ts[to].kind == word && !w.ts.is(to, stops) && number(w.ts[to:]).used == 0 {
		to++
	}
	if to == j || w.ts.is(to-1, inHand) || w.ts.is(j, inHand) {
		return mention{}, false
	}
	if k := to; w.key(k) == "and" || w.key(k) == "or" || k < len(w.ts) && w.ts[k].key == "," { // "three ounces of sweet and one of bitter almonds"
		if w.ts[k].kind == mark && w.key(k+1) == "and" {
			k++
		}
		_, n := w.quiet.amountAt(w.ts[min(k+1, len(w.ts)):])
		if _, e := w.nameAt(k+1+n+1, false); n > 0 && w.key(k+1+n) == "of" && e > k+n+3 {
			whole := append(slices.Clone(w.keys[j:to]), w.keys[e-1])
			if _, m := w.r.begins(whole); m == len(whole) {
				if m, ok := w.reads(i, to, to, w.say(i, to)+" "+w.ts[e-1].text, "the name is that of the thing after it"); ok {
					return m, true
				}
			}
		}
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
		crust pastry puff composition preparation liquid froth pudding cake quantity whichever any other cold hot boiling one water paper papers cloth muslin lawn linen string straw`)

	// stops are words no name goes over.
	stops = words(`into to with and in on for till until from which that over upon as at by or when if then put add beat stir mix let but not is are be
		of well finely very through while being having so too`)
)
