package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// leanAfter reads a name with a leaning amount behind it: "of fresh butter
// melted the same".
func (w *weave) leanAfter(i, to int, c reference.Called) (mention, bool) {
	j := w.tail(to, false)
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	for _, l := range leaningBy.of(w.ts, j) {
		n := w.ts[j:].runs(l.run)
		if n > 0 && w.key(j+n) == "as" { // "apples, twice as much as meat"
			k := j + n + 1
			for w.ts.is(k, ofThere) {
				k++
			}
			if other, end := w.nameAt(k, false); end > 0 {
				if on := w.amountOf(other); on != nil {
					return w.leansOn(i, end, *on, l, w.say(i, to), c)
				}
			}
		}
		if n == 0 || !w.closesAt(j+n) || w.last == nil || w.last.Amount.State != formula.Stated || l.words == "the weight" {
			continue
		}
		return w.leansOn(i, j+n, *w.last, l, w.say(i, to), c)
	}
	return mention{}, false
}

// amountBehind reads an amount that stands behind its name: "flour, half a
// pound;", "suet, chopped fine, twelve ounces", "of flour there is half a pound",
// "of milk four" after an amount in spoonfuls, "eggs, five;".
func (w *weave) amountBehind(i, to int, c reference.Called) (mention, bool) {
	if w.ordersGreasing(i, to) {
		return mention{}, false
	}
	if e := w.amountAfter(to); e > 0 {
		if m, ok := w.reads(i, e, e, "", ""); ok {
			return m, true
		}
	}
	if to == i+1 && w.ts.is(i, notName) && !w.inList {
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
	for n := 0; n < 2 && (w.ts.is(j, being) || n == 0 && w.ts.is(j, imperatives) && w.ofBefore(i)); n++ {
		j++ // "of flour sift half a pound"
	}
	if m, ok := w.countBehind(i, to, j, c); ok {
		return m, true
	}
	if j == to {
		return w.numberBehind(i, to)
	}
	a, n := w.quiet.amountAt(w.ts[min(j, len(w.ts)):])
	end := j + n
	if w.key(end) == "of" && (w.key(end+1) == "it" || w.key(end+1) == "them") {
		end += 2 // "sift the flour, a pint of it"
	}
	if n == 0 || !a.numbered || !a.measured || timeAt(w.ts[j:]) > 0 || !w.closesAt(end) {
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

// ordersGreasing reports a name that is an order here, "butter a large bowl": it
// begins a clause, and the article of a vessel follows it.
func (w *weave) ordersGreasing(i, to int) bool {
	if to != i+1 || w.inList || !slices.Contains(verbs, w.keys[i]) || i > 0 && w.ts[i-1].kind != mark && w.keys[i-1] != "and" && w.keys[i-1] != "then" {
		return false
	}
	if k := w.key(to); k != "a" && k != "an" && k != "some" && k != "the" && k != "your" {
		return false
	}
	for j := to + 1; j < min(len(w.ts), to+4); j++ {
		if w.ts[j].kind != word {
			return false
		}
		if w.ts.is(j, greasedWords) {
			return true
		}
	}
	return false
}

var greasedWords = words(strings.Join(vessels, " ") + " bowl bowls tins moulds cups")

// countBehind reads how many there are of a thing that is counted, when that stands
// behind its name: "eggs, five;", "lemons 2".
func (w *weave) countBehind(i, to, j int, c reference.Called) (mention, bool) {
	n := number(w.ts[min(j, len(w.ts)):])
	if n.used == 0 || n.article || n.err != nil || !w.closesAt(j+n.used) || w.key(i-1) == "the" || !w.countable(c, i, to, i) || w.ofBefore(i) && c.Fruit == nil && !fromEgg.has(c.Ingredient.Kind) {
		return mention{}, false
	}
	written := w.say(j, j+n.used) + " " + w.say(i, to)
	if form := strings.Trim(w.say(to, j), " ,()"); form != "" {
		written += ", " + form
	}
	return w.reads(i, j+n.used, j+n.used, written, "the number stands behind the name")
}

// aside is where a clause ends that stands between a name and its amount and
// has no amount itself: "sugar, common white and powdered, a pound".
func (w *weave) aside(to int) int {
	const longest = 6
	if to >= len(w.ts) || w.ts[to].kind != mark || w.ts[to].key != "," {
		return to
	}
	j := to + 1
	if w.key(j) == "if" { // "currants, if liked, one pound"
		j++
	}
	for j < len(w.ts) && j <= to+longest && w.ts[j].kind == word && !w.ts.is(j, numberWordSet) && !w.ts.is(j, imperatives) {
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
