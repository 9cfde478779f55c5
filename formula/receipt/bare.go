package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
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
	if to == 0 || !w.put(c, j, to) && !((little || w.key(i) == "some") && (w.key(to-1) == "water" && little || to == j+1 && w.ts.is(j, spiceWords))) {
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
	if k := w.keys[i]; k == "sweeten" || k == "season" || k == "flavour" || (k == "sugar" || k == "spice") && (w.key(i+1) == "it" || w.key(i+1) == "them") || k == "sweetened" && (w.key(i-1) == "is" || w.key(i-1) == "be" || w.key(i-1) == "are") {
		return w.seasoning(i)
	}
	if i > 0 && w.ts[i].kind == word && w.setAside(i, i+1) > 0 && !w.inList {
		if _, n := w.begins(i); n == 0 {
			return mention{}, false // the words before a name come in with it
		}
	}
	c, to := w.nameAt(i, !w.inList)
	if to == 0 {
		return mention{}, false
	}
	if l := w.likeness(to); l > to {
		return w.reads(i, w.tail(l, false), l, "", "")
	}
	if m, ok := w.amountBehind(i, to, c); ok {
		return m, true
	}
	if strings.HasPrefix(w.key(to-1), "berr") && !w.inList { // "clean berries" for a gooseberry tart
		if full := w.longerName(to-1, to); full != "" && w.put(c, i, to) {
			if m, ok := w.reads(i, to, to, full+", quantity not given", "named in full in the title"); ok {
				m.how = bare
				return m, true
			}
		}
	}
	c, to = w.firstOfTwo(i, to, c)
	if m, ok := w.leanAfter(i, to, c); ok {
		return m, true
	}
	if e, written := w.eachAfter(i); e > 0 {
		if m, ok := w.reads(i, e, e, written, "as much of each"); ok {
			return m, true
		}
	}
	if m, ok := w.enoughOfBoth(i, to, c); ok {
		return m, true
	}
	state := w.stateAfter(to)
	if k := w.key(i - 1); !w.inList && k == "the" && !(w.ts[min(to, len(w.ts)):].begins("to your") > 0 || w.ts[min(to, len(w.ts)):].begins("to taste") > 0) {
		state = 0
	}
	if state == 0 && !w.put(c, i, to) && !w.offered(i) {
		return mention{}, false
	}
	from := i
	for from > 0 && w.ts[from-1].kind == word && !w.ts.is(from-1, glue) && !w.ts.is(from-1, skipped) && (w.setAside(from-1, from) == 1 || w.ts.participle(from-1) && !w.ts.is(from-1, imperatives)) && !w.taken(from-1) {
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
	if k := w.key(from - 1); !w.inList && (k == "the" || k == "this" || k == "these" || k == "your") && !(w.inTitle(i, to) && w.before != nil && !w.before(c, w.keys[i:to]) && !w.saidBefore(w.keys[i:to])) {
		m := mention{from: from, to: to, how: again} // of what was there before, by that name or another
		if k == "the" && w.before != nil && !w.before(c, w.keys[i:to]) && c.Ingredient != nil && overlap(c.Ingredient.Roles, staples) {
			if line, ok := w.reads(i, to, to, "", ""); ok {
				m.first, m.line = true, line.line
			}
		}
		if k == "your" && c.Ingredient != nil && w.before != nil && !w.before(c, w.keys[i:to]) && !w.saidBefore(w.keys[i:to]) && w.ts.is(from-2, firstDone) {
			if m, ok := w.asBare(from, to, c, "", ""); ok { // "cut your bread"
				return m, true
			}
		}
		return m, true
	}
	if full := w.longerName(to-1, to); full != "" && from == to-1 && w.key(from-1) == "the" { // "the potatoes" of a sweet potato pie
		if m, ok := w.reads(from, to, to, full+", quantity not given", "named in full in the title"); ok {
			m.how = bare
			return m, true
		}
	}
	if full := w.longerName(to-1, to); full != "" && !w.inList && w.saidBefore(w.keys[i:to]) {
		return mention{from: from, to: to, how: again}, true
	}
	return w.asBare(from, to, c, "", "")
}

// offered reports a name that may be taken for the thing before it, which has its
// amount: "half a pint of milk or cold water".
func (w *weave) offered(i int) bool {
	if len(w.found) == 0 || w.found[len(w.found)-1].how != withAmount {
		return false
	}
	between := w.ts[min(w.found[len(w.found)-1].to, i):i]
	if len(between) > 0 && between[0].key == "," {
		between = between[1:]
	}
	if len(between) == 0 || between[0].key != "or" {
		return false
	}
	for k := 1; k < len(between); k++ {
		if t := &between[k]; t.key != "of" && t.opens.Aside == 0 && !t.is(skipped) {
			return false
		}
	}
	return true
}

// firstDone are the orders by which a receipt begins with a thing: "cut your bread".
var firstDone = words("cut take pare peel wash pick stone boil stew scald grate slice core shell blanch")

// enoughOfBoth reads the first of "water and sugar enough to cover them": what is
// said behind the second is said of both.
func (w *weave) enoughOfBoth(i, to int, c reference.Called) (mention, bool) {
	if w.key(to) != "and" || w.key(i-1) == "the" || c.Ingredient == nil || len(c.Ingredient.Roles) == 0 {
		return mention{}, false
	}
	d, end := w.nameAt(to+1, true)
	if end == 0 || d.Ingredient == nil || d.Ingredient == c.Ingredient {
		return mention{}, false
	}
	e := w.stateAfter(end)
	if e == 0 || w.key(end) != "enough" && w.key(end) != "sufficient" {
		return mention{}, false
	}
	m, ok := w.reads(i, to, to, w.say(i, to)+" "+w.say(end, e), "what is enough is said of both")
	m.how = bare
	return m, ok
}

// firstOfTwo is the first of two things that have one name together, "raisins and
// currants": without an amount between them, each is a thing of its own. What is
// sold or poured together, as milk and water, stays one.
func (w *weave) firstOfTwo(i, to int, c reference.Called) (reference.Called, int) {
	if c.Ingredient == nil || strings.HasPrefix(c.Ingredient.ID, "x_") {
		return c, to
	}
	for k := i + 1; k+1 < to; k++ {
		if w.keys[k] != "and" {
			continue
		}
		a, n := w.nameAt(i, false)
		if a.Ingredient == c.Ingredient && n == to {
			a, n = w.r.begins(w.keys[i:k])
			n += i
		}
		b, m := w.r.begins(w.keys[k+1 : to])
		if n == k && k+1+m == to && a.Ingredient != nil && b.Ingredient != nil && a.Ingredient != b.Ingredient {
			return a, k
		}
	}
	return c, to
}

// staples are the roles of what a receipt may name with "the" and never list: "rub
// the butter into the flour".
var staples = []string{"flour", "butter"}

// inTitle reports a name of which the receipt is, "the codlins" of a codlin tart: it is
// put in though nothing was said of it before. What the title says is made of it is
// none.
func (w *weave) inTitle(from, to int) bool {
	for i := range w.titled {
		t := &w.titled[i]
		if t.kind != word || i+1 == len(w.titled) || w.titled[i+1].kind != word || len(t.key) < 4 || t.is(notName) || t.is(fillings) || t.is(titleKinds.set) || t.is(partKinds.set) {
			continue
		}
		for j := from; j < to; j++ {
			if stem(w.keys[j]) == stem(t.key) {
				return true
			}
		}
	}
	return false
}

// saidBefore reports that a name without an amount stands already for the same word:
// "the tomatoes" behind "green tomatoes".
func (w *weave) saidBefore(name []string) bool {
	for i := range w.found {
		for _, it := range w.found[i].line.Items {
			if overlaps(stems(reference.Words(it.Name)), stems(name)) {
				return true
			}
		}
	}
	return w.bared != nil && w.bared(name)
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
	if last := name[len(name)-1]; preserves.has(last) && !w.clauseHas(from, to, adviceWords) {
		return w.preserve(to - 1)
	}
	if c.Ingredient != nil && len(c.Ingredient.Roles) == 0 {
		return false
	}
	if len(name) == 1 && name[0] == "water" && from > 0 && to < len(w.ts) && w.ts[from-1].key == "," && w.ts[to].key == "," && w.clauseBoundsHas(from, mixesWords) {
		return true // "mix together wine, water, sugar and nutmeg"
	}
	for len(name) > 1 && (skipped.has(name[0]) || name[0] == "of") {
		name = name[1:]
	}
	if w.clauseHas(from, to, adviceWords) || w.forSauce(to) {
		return false
	}
	if onlyIdle(name) && !(len(name) > 1 && sugared.has(name[0])) && !w.withSalt(from, to) || len(name) == 1 && notName.has(name[0]) && !w.withSalt(from, to) && !w.spiceLast(from, to) {
		return false
	}
	// The rules for names in a method look no further than the next stop.
	lo, hi := w.clauseBounds(from, to, false)
	clause := w.words[w.at[lo]:w.at[hi]]
	if (w.key(from-1) == "its" || w.key(from-1) == "their") && overlaps(clause, []string{"free", "wash", "washed"}) {
		return false // butter washed free of its salt
	}
	if w.key(from-1) == "from" && overlaps(clause, []string{"free", "wash", "washed"}) {
		return false // washed to free it from salt
	}
	if w.key(to) == "out" && overlaps(clause, []string{"wash", "squeeze", "press", "work"}) {
		return false // wash the salt out
	}
	if len(name) == 1 && to < len(w.ts) && w.ts[to].kind == mark && slices.Contains(verbs, name[0]) {
		clause = w.words[w.at[lo]:w.at[to]] // "nutmeg, sugar, a little salt": what stands behind a comma is not what is sugared
	}
	comma := from
	for comma > lo && !(w.ts[comma-1].kind == mark && w.ts[comma-1].key == ",") {
		comma--
	}
	return !passedOver(clause, w.at[from]-w.at[lo], w.at[to]-w.at[lo], w.at[from]-w.at[comma])
}

// clauseBoundsHas reports a word of the set between the stops round a token.
func (w *weave) clauseBoundsHas(i int, set wordSet) bool {
	lo, _ := w.clauseBounds(i, i+1, false)
	return w.ts[lo:i].has(set)
}

var mixesWords = words("mix mixed stir add together")

// spiceLast reports "spice" at the end of a run of ingredients: "raisins a pound, and
// spice".
func (w *weave) spiceLast(from, to int) bool {
	k := w.key(from)
	if k != "spice" && k != "spices" {
		return false
	}
	j := from - 1
	for j > 0 && w.participleAt(j) {
		j--
	}
	if w.ts.is(j, addsSpice) { // "add spice and sugar to your taste"
		return true
	}
	if !w.closesAt(to) || len(w.found) == 0 {
		return false
	}
	last := w.found[len(w.found)-1]
	for j := last.to; j < from; j++ {
		if w.ts[j].kind != mark && w.keys[j] != "and" {
			return false
		}
	}
	return last.how != again
}

var addsSpice = words("add some adding with")

// forSauce reports that what is named is said to make a sauce, "with butter, sugar and
// wine, for sauce", or another dish: "plums are made in the same way".
func (w *weave) forSauce(to int) bool {
	_, hi := w.clauseBounds(to, to, false)
	for j := to; j+1 < hi; j++ {
		if w.keys[j] == "same" && (w.keys[j+1] == "way" || w.keys[j+1] == "manner") {
			return true
		}
	}
	for j := to; j+1 < hi; j++ {
		if w.keys[j] == "for" && (w.keys[j+1] == "sauce" || w.keys[j+1] == "a" && w.key(j+2) == "sauce") {
			return true
		}
	}
	return false
}

// withSalt reports pepper that stands beside salt, which is no colour and no hot
// word: "salt and pepper the pieces".
func (w *weave) withSalt(from, to int) bool {
	before, after := from-1, to
	for _, joined := range []string{",", "and"} {
		if before >= 0 && w.ts[before].key == joined {
			before--
		}
	}
	for _, joined := range []string{",", "and"} {
		if after < len(w.ts) && w.ts[after].key == joined {
			after++
		}
	}
	return w.key(from) == "pepper" && (before < from-1 && w.key(before) == "salt" || after > to && w.key(after) == "salt")
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
		case k == "spread" || k == "spreading" || k == "add":
			return true
		case k == "bottom" || k == "dish" || k == "paste" || k == "crust" || k == "over":
			return overlaps(w.keys[lo:hi], []string{"lay", "laid", "spread", "put"})
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

// clauseHas reports a word of the set in the narrow clause round tokens.
func (w *weave) clauseHas(from, to int, set wordSet) bool {
	lo, hi := w.clauseBounds(from, to, true)
	return w.ts[lo:hi].has(set)
}

func (w *weave) nameFollows(i int) bool {
	if i >= len(w.ts) {
		return false
	}
	_, n := w.nameAt(i, false)
	return n > 0
}

// byAndBy are words for putting a thing in slowly, which say nothing of how much.
var byAndBy = []string{"into it", "in it", "to it", "therein", "by degrees", "gradually", "slowly", "a little at a time", "little by little"}

// stateAfter is where "to your taste", "enough to make a paste" ends that
// follows a name.
func (w *weave) stateAfter(to int) int {
	j := to
	for _, m := range byAndBy { // "sugar by degrees, as much as"
		if n := w.ts[min(j, len(w.ts)):].begins(m); n > 0 {
			j += n
			break
		}
	}
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	s, n := stateAt(w.ts[min(j, len(w.ts)):])
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
	if k := w.keys[i]; k == "sugar" || k == "spice" { // "sugar it to your taste"
		s, n := stateAt(w.ts[min(i+2, len(w.ts)):])
		if s != formula.ToTaste {
			return mention{}, false
		}
		m, ok := w.reads(i, i+2+n, i+2+n, k+", to taste", "no amount is said")
		m.how = bare
		return m, ok
	}
	if w.keys[i] != "sweeten" && w.keys[i] != "sweetened" {
		return mention{}, false // what follows names the things
	}
	end := i + 1
	for end < len(w.ts) && w.ts[end].kind != mark && w.keys[end] != "and" && w.keys[end] != "with" && end < i+9 {
		if a, n := w.quiet.amountAt(w.ts[end:]); n > 0 && a.numbered && (w.key(end+n) == "of" && w.nameFollows(end+n+1) || !a.measured && w.nameFollows(end+n)) { // "sweeten a pint of cream"
			m, ok := w.reads(i, i+1, i+1, "sugar, to taste", "it is put in to sweeten, and no amount is said")
			m.how = bare
			return m, ok
		}
		end++
	}
	if w.key(end) == "with" { // "sweeten it with loaf sugar": what makes it sweet is by taste
		c, to := w.nameAt(end+1, false)
		if to == 0 || c.Ingredient == nil || !overlap(c.Ingredient.Roles, sweetening) || w.adviceAt(i) {
			return mention{}, false
		}
		from := end + 1
		for from < to-1 && w.ts.is(from, skipped) {
			from++
		}
		if w.key(end+1) == "the" && w.before != nil && w.before(c, w.keys[from:to]) {
			return mention{}, false
		}
		e := w.tail(to, false)
		m, ok := w.reads(i, e, e, w.say(from, e)+", to taste", "it is put in to sweeten, and no amount is said")
		m.how = bare
		return m, ok
	}
	written, note := "", ""
	if w.keys[i] == "sweetened" { // "it is sweetened to the palate"
		if w.adviceAt(i) {
			return mention{}, false
		}
		written, note = "sugar, to taste", "it is put in to sweeten, and no amount is said"
	}
	m, ok := w.reads(i, end, end, written, note)
	m.how = bare
	return m, ok
}

// sweetening are the roles of what sweetens.
var sweetening = []string{"sugar", "syrup"}

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
		if (w.keys[e] == "and" || w.keys[e] == "then") && (w.ts.is(e+1, imperatives) || w.keys[e] == "then") {
			end = e
		}
	}
	for e := i + 4; e < end; e++ { // "as much water as will bring a pound of flour to a paste": the flour is a thing of its own
		if a, n := w.quiet.amountAt(w.ts[e:end]); n > 0 && a.numbered && a.measured && a.Measure != "" && w.key(e+n) == "of" && w.nameFollows(e+n+1) && timeAt(w.ts[e:]) == 0 {
			end = e
		}
	}
	if far := w.overAside(end); far > 0 { // "as much cold water, put in by degrees, as makes a paste"
		to := far
		for to < len(w.ts) && w.ts[to].kind != mark && to < far+12 && (w.keys[to] != "and" || !w.ts.is(to+1, imperatives)) {
			to++
		}
		written := w.say(i, end) + " " + w.say(far, to)
		if f, ok := w.quiet.enoughFor(w.r.tokens(written)); ok && f.clean() && len(f.items) == 1 {
			m, ok := w.reads(i, to, to, written, "what is said between is of how it is put in")
			m.how = bare
			return m, ok
		}
	}
	if n := ofTheKnown(w.ts[i:end]); n > 0 && w.before != nil { // "enough of the flour to make it stiff"
		if c, to := w.nameAt(i+n, false); to > 0 && (w.before(c, w.keys[i+n:to]) || c.Ingredient != nil && len(c.Ingredient.Roles) == 0) {
			return mention{from: i, to: end, how: again}, true
		}
	}
	f, ok := w.quiet.enoughFor(w.ts[i:end])
	if !ok || !f.clean() || len(f.items) != 1 || k == "plenty" && f.items[0].Ingredient == "water" && w.key(i-1) == "in" { // what it is boiled in
		return mention{}, false
	}
	m, ok := w.reads(i, end, end, "", "")
	m.how = bare
	return m, ok
}

// ofTheKnown is where the name begins in "enough of the flour", "as much of the
// custard"; 0 when the words are others.
func ofTheKnown(ts phrase) int {
	if k := ts.key(0); k == "a" && ts.key(1) != "sufficient" && ts.key(1) != "sufficiency" || k == "about" && ts.key(1) == "a" {
		return 0 // "a quart of the best cream"
	}
	for i := 1; i+2 < min(len(ts), 6); i++ {
		if ts.key(i) == "of" && ts.key(i+1) == "the" {
			return i + 1
		}
	}
	return 0
}

// overAside is where "as" stands behind a clause between two commas that begins
// at a token; 0 when there is no such clause.
func (w *weave) overAside(i int) int {
	if i >= len(w.ts) || w.ts[i].kind != mark || w.ts[i].key != "," {
		return 0
	}
	j := i + 1
	for j < len(w.ts) && j <= i+longestClause && w.ts[j].kind == word {
		j++
	}
	if j > i+1 && j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," && w.key(j+1) == "as" {
		return j + 1
	}
	return 0
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

// spiceWords are names that say no more than that something is spice; with "a little"
// before them they are put in.
var spiceWords = words("spice spices")
