package receipt

import "strings"

// tail is where that ends which is said of a thing right behind its name:
// "finely sifted", "melted to oil", ", well beaten", "(leaving out half the
// whites)". What is done with it next is no part of it.
func (w *weave) tail(i int, eggs bool) int {
	for {
		n := w.tailStep(i, eggs)
		if n <= i {
			return i
		}
		i = n
	}
}

func (w *weave) tailStep(i int, eggs bool) int {
	if i >= len(w.ts) {
		return i
	}
	if w.ts[i].kind == mark {
		if w.ts[i].key == "-" && eggs { // "16 eggs--leave 4 whites out"
			if n := w.limited(i + 1); n > 0 {
				return n
			}
		}
		if k := w.ts[i].key; k != "," && k != "(" {
			return i
		}
		if w.ts[i].key == "," && i+1 < len(w.ts) && w.ts[i+1].key == "(" { // "eight eggs, (leaving out two of the whites,)"
			if n := w.tailStep(i+1, eggs); n > i+1 {
				return n
			}
			return i
		}
		end := i + 1
		for end < len(w.ts) && w.ts[end].kind != mark {
			end++
		}
		clause := w.ts[i+1 : end]
		if len(clause) == 0 || len(clause) > longestClause {
			return i
		}
		if eggs {
			if keptFor(clause) {
				return w.closed(i, end)
			}
			if n := w.limited(i + 1); n > 0 {
				return w.closed(i, n)
			}
		}
		if n := w.saidOf(i+1, end); n > i+1 && (n == end || w.keys[n] == "and") {
			return w.closed(i, n)
		}
		return i
	}
	if w.keys[i] == "and" {
		if n := w.saidOf(i+1, len(w.ts)); n > i+1 && w.ts.participle(i+1) && !imperative(w.ts, i+1) {
			return n
		}
		if eggs {
			if n := w.limited(i + 1); n > 0 {
				return n
			}
		}
		return i
	}
	if eggs {
		if n := w.limited(i); n > 0 {
			return n
		}
	}
	return w.saidOf(i, len(w.ts))
}

// keptFor reports a clause that keeps some whites or yolks for another use in the same
// receipt: "reserving the whites of two for the icing". They are put in after all.
func keptFor(c phrase) bool {
	return c.is(0, leavesOut) && c.has(eggWords) && c.has(forWord)
}

var forWord = words("for")

// closed takes in the bracket that was opened at i.
func (w *weave) closed(i, n int) int {
	if w.ts[i].key != "(" {
		return n
	}
	for k := n; k < min(len(w.ts), n+2); k++ {
		if w.ts[k].key == ")" {
			return k + 1
		}
		if w.ts[k].key != "," {
			break
		}
	}
	return n
}

// longestClause is how many words a clause about a thing may have.
const longestClause = 10

// saidOf is where words end that say what was done to a thing or how it is:
// participles with their adverbs, and what they were done to ("to a froth", "in
// thin slices").
func (w *weave) saidOf(i, end int) int {
	j := i
	for j < end && w.ts.is(j, adverbs) {
		j++
	}
	switch {
	case j >= end || w.ts[j].kind != word:
		return i
	case w.ts.participle(j) && !strings.HasSuffix(w.keys[j], "ly") && !imperative(w.ts, j) && !w.ts.is(j, adverbs):
		j++
	case j > i && w.ts.is(j, trailing): // "very light"
		j++
	case j == i && w.ts.is(j, trailing) && w.closesAt(j+1):
		j++
	default:
		n := w.setAside(j, min(end, j+6))
		if n < 2 || !w.ts.participle(j) && !w.ts.is(j, handled) {
			return i
		}
		j += n
	}
	for j < end && (w.ts.is(j, trailing) || w.ts.is(j, adverbs) && w.closesAt(j+1)) {
		j++
	}
	return w.outcome(j, end)
}

// imperative reports a word that looks like a participle and is an order here:
// "cut it", "beat them".
func imperative(ts phrase, i int) bool {
	if !ts.is(i, handled) {
		return ts.is(i, imperatives)
	}
	switch ts.key(i + 1) {
	case "it", "them", "the", "these", "up", "in", "your", "all", "off", "out":
		return i == 0 || !ts.is(i-1, adverbs)
	}
	return false
}

// closesAt reports that nothing more is said from token i on: the end, a mark
// or "and".
func (w *weave) closesAt(i int) bool {
	return i >= len(w.ts) || w.ts[i].kind == mark || w.keys[i] == "and" || w.keys[i] == "or"
}

// outcome takes in what a thing was made into: "to a stiff froth", "in thin
// slices", "through a sieve".
func (w *weave) outcome(i, end int) int {
	if i >= end || !w.ts.is(i, into) {
		return i
	}
	if w.keys[i] == "in" { // "soaked in a very little cold water"
		for j := i + 1; j < min(end, i+7) && w.ts[j].kind == word; j++ {
			if w.keys[j] == "water" {
				return j + 1
			}
			if !w.ts.is(j, someWater) {
				break
			}
		}
	}
	for j := i + 1; j < min(end, i+6) && w.ts[j].kind == word; j++ {
		if w.keys[i] == "in" && (w.keys[j] == "cream" || w.keys[j] == "oil") {
			return i // "dissolved in cream" puts cream in
		}
		if w.ts.is(j, outcomes) {
			return j + 1
		}
		if !w.ts.is(j, outcomeWords) && !w.ts.participle(j) {
			return i
		}
	}
	return i
}

var (
	adverbs      = words("well very finely quite thinly nicely lightly previously freshly newly rather coarsely extremely perfectly thoroughly carefully slightly equally once twice just fine separately together")
	trailing     = words("fine small cold hot warm thin light smooth clean dry boiling separately apart together soft")
	into         = words("to in into through from for")
	outcomes     = words("froth cream oil powder pulp snow paste mortar slices pieces dice strips halves quarters sieve cloth shreds bits crumbs stones foam mash chips lump")
	someWater    = words("a the some very little boiling hot cold warm luke lukewarm tepid plain")
	outcomeWords = words("a an the thin small fine stiff strong very light smooth hair firm little large solid silk lawn their coarse")
)

// limited is where a clause ends that leaves out some of the whites or yolks of
// eggs: "leaving out half the whites", "but only two whites", "half the whites".
func (w *weave) limited(i int) int {
	end := i
	for end < len(w.ts) && w.ts[end].kind != mark && end < i+longestClause {
		end++
	}
	for to := end; to > i; to-- {
		c := w.ts[i:to]
		if !w.closesAt(to) && to < end || !c.has(eggWords) || !c.is(len(c)-1, eggLast) && number(c[len(c)-1:]).used == 0 {
			continue
		}
		if c.is(0, imperatives) && !c.is(0, leavesOut) {
			return 0
		}
		if len(c) == 1 && (w.ts[max(0, i-1)].key != "(" || w.key(to) == "and" && eggSides.of(w.ts, to+1) != "") {
			return 0 // "yolks and whites apart"
		}
		if _, ok := limit(c); ok {
			if _, n := w.nameBefore(i, to); !n {
				return to
			}
		}
	}
	return 0
}

// eggLast are the words a clause about whites or yolks may end with.
var eggLast = words("whites white yolks yolk yelks yelk only out eggs them omitted")

// nameBefore reports whether any name but that of eggs stands between.
func (w *weave) nameBefore(from, to int) (int, bool) {
	for i := from; i < to; i++ {
		if c, n := w.r.begins(w.keys[i:to]); n > 0 && (c.Ingredient == nil || !fromEgg.has(c.Ingredient.Kind)) {
			return i, true
		}
	}
	return 0, false
}
