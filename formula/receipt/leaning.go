package receipt

import (
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// leaningWord is a way of giving an amount by one that was given before it.
type leaningWord struct {
	words  string
	times  decimal.Decimal
	weight bool // it is the weight that is the same, not the number or the measure
	run    wordRun
}

var leaningWords = func() []leaningWord {
	double := two
	var out []leaningWord
	add := func(times decimal.Decimal, weight bool, list ...string) {
		for _, w := range list {
			out = append(out, leaningWord{w, times, weight, running(w)})
		}
	}
	add(one, true, "their weight", "its weight", "their own weight", "its own weight", "the same weight", "same weight", "the like weight", "equal weight", "an equal weight", "the weight", "their weights")
	add(half, true, "half their weight", "half its weight", "half the weight", "half that weight")
	add(double, true, "twice their weight", "twice its weight", "double their weight", "double its weight", "double the weight", "twice the weight")
	add(one, false, "the same quantity", "same quantity", "the like quantity", "an equal quantity", "a like quantity", "like quantity", "equal quantity", "equal quantities", "the same amount", "the same", "same", "as much", "as many", "the like", "the same measure", "an equal measure", "the like measure")
	add(half, false, "half as much", "half the quantity", "half that quantity", "half the same", "half the amount", "half as many")
	add(double, false, "twice as much", "double the quantity", "twice the quantity", "as much again", "double that quantity", "twice as many")
	return out
}()

// leaningBy are the same by their first word.
var leaningBy = func() wordMap[[]leaningWord] {
	out := map[string][]leaningWord{}
	for _, l := range leaningWords {
		first, _, _ := strings.Cut(l.words, " ")
		out[first] = append(out[first], l)
	}
	return mapped(out)
}()

// leaning reads an amount given by the one before: "the same of sugar", "their
// weight in butter", "half as much flour". It is written out, so that the line
// stands by itself.
func (w *weave) leaning(i int) (mention, bool) {
	if w.measureLen(i) > 0 && w.keys[i] == "as" {
		return mention{}, false // "as much as will lie on a sixpence"
	}
	if w.keys[i] == "against" && w.last != nil && w.last.Ingredient == egg { // "weigh twelve eggs against sugar"
		if c, to := w.nameAt(i+1, false); to > 0 {
			return w.leansOn(i, to, *w.last, leaningWord{words: "against", times: one, weight: true}, w.say(i+1, to), c)
		}
	}
	var lean leaningWord
	n := 0
	for _, l := range leaningBy.of(w.ts, i) {
		if m := w.ts[i:].runs(l.run); m > n {
			lean, n = l, m
		}
	}
	if n == 0 {
		return mention{}, false
	}
	j := i + n
	of := w.key(j) == "of" || w.key(j) == "in"
	if of {
		j++
	}
	if k := w.key(j); k == "each" && !of {
		j++
		if w.key(j) == "of" || w.key(j) == "in" {
			j++
		}
	}
	switch {
	case w.key(j) == "as", w.key(j) == "the" && w.key(i) != "half" && !lean.weight:
		return mention{}, false
	case (lean.words == "the same" || lean.words == "same") && !of, lean.words == "the weight" && !of, lean.words == "the like" && !of:
		return mention{}, false
	}
	c, to := w.nameAt(j, false)
	if to > 0 && w.key(to) == "as" {
		return w.asMuchAs(i, j, to, lean, c)
	}
	if k := to; to > 0 && w.participleAt(k) { // "as much butter melted as will make it roll"
		for w.participleAt(k) {
			k++
		}
		if w.key(k) == "as" {
			return mention{}, false
		}
	}
	if to == 0 || w.overAside(to) > 0 { // "as much cold water, put in by degrees, as makes a paste"
		return mention{}, false
	}
	for { // "the same of butter and of sugar"
		k := to
		if k < len(w.ts) && w.ts[k].kind == mark && w.ts[k].key == "," {
			k++
		}
		if w.key(k) == "and" && (w.key(k+1) == "of" || w.key(k+1) == "in") {
			if _, e := w.nameAt(k+2, false); e > 0 {
				to = e
				continue
			}
		}
		break
	}
	if e := w.names(j); e > to && w.key(e) == "each" {
		to = e
	} else if e > to && lean.words != "same" && w.ts[to:e].has(andWord) && !w.ts[to:e].has(theWord) && countMarks(w.ts[to:e], ",") > 0 && w.stateAfter(e) == 0 {
		to = e // "the same of mace, cloves and cinnamon"
	}
	name := ofJoined.Replace(w.say(j, to))
	if w.key(to) == "as" || w.last == nil || w.last.Amount.State != formula.Stated {
		return w.asBare(j, to, c, name, "how much is told by another amount, and which is not clear")
	}
	return w.leansOn(i, to, *w.last, lean, name, c)
}

var andWord, theWord = words("and"), words("the")

// participleAt reports what was done to a thing at a token: "melted".
func (w *weave) participleAt(i int) bool {
	return i < len(w.ts) && w.ts[i].kind == word && w.ts[i].participle()
}

// ofJoined takes out the "of" and "in" between names that share an amount.
var ofJoined = strings.NewReplacer(", and in ", ", ", ", and of ", ", ", " and in ", " and ", " and of ", " and ")

// asMuchAs reads an amount given by that of another thing which is named: "half as
// much butter as sugar", "the same weight of currants as of flour", "as much flour
// as the weight of six eggs". "As much flour as will make a paste" is none.
func (w *weave) asMuchAs(i, from, to int, lean leaningWord, c reference.Called) (mention, bool) {
	j := to + 1
	if n, _, own := weightHead(w.ts[j:], false); n > 0 && !own {
		k := number(w.ts[j+n:])
		e, end := w.nameAt(j+n+k.used, false)
		if k.used == 0 || end == 0 || e.Ingredient == nil || e.Ingredient.ID != egg {
			return mention{}, false
		}
		return w.reads(i, end, end, w.say(j, end)+" in "+w.say(from, to), "by the weight of the eggs")
	}
	if lean.times.Equal(one) && !lean.weight { // "as much butter as an egg"
		k := j + number(w.ts[j:]).used
		for e := min(len(w.ts), k+2); k > j && e > k; e-- {
			if w.closesAt(e) && w.quiet.sizeMeasure(w.ts[k:e]) != "" {
				return w.reads(i, e, e, w.say(from, to)+" the size of "+w.say(j, e), "as big as the thing named")
			}
		}
	}
	for w.ts.is(j, ofThere) {
		j++
	}
	other, end := w.nameAt(j, false)
	if end == 0 {
		return mention{}, false
	}
	on := w.amountOf(other)
	if on == nil {
		return mention{}, false
	}
	return w.leansOn(i, end, *on, lean, w.say(from, to), c)
}

// amountOf is how much there is of a thing named before, nil when that is not said.
func (w *weave) amountOf(c reference.Called) *formula.Item {
	for k := len(w.found) - 1; k >= 0; k-- {
		for x := range w.found[k].line.Items {
			if it := &w.found[k].line.Items[x]; isCalled(it, c) {
				return it
			}
		}
	}
	if w.listed == nil {
		return nil
	}
	return w.listed(c)
}

// isCalled reports a stated amount of the thing called so.
func isCalled(it *formula.Item, c reference.Called) bool {
	return it.Amount.State == formula.Stated && c.Ingredient != nil && it.Ingredient == c.Ingredient.ID
}

// ofThere are the words that may stand before the other thing.
var ofThere = words("of the there is are you have in for")

// leansOn writes a leaning amount out by the amount it leans on.
func (w *weave) leansOn(i, to int, on formula.Item, lean leaningWord, name string, c reference.Called) (mention, bool) {
	a := on.Amount
	number := spelled(multiply(a.Number, reference.Exact(lean.times)))
	note := "as much as of the " + on.Name
	if !lean.times.Equal(one) {
		note = figured(lean.times) + " times as much as of the " + on.Name
	}
	switch {
	case a.Measure != "":
		if strings.Contains(name, ", ") || strings.Contains(name, " and ") {
			if m, ok := w.reads(i, to, to, number+" "+a.Measure+" each of "+name, note); ok {
				return m, true
			}
		}
		return w.reads(i, to, to, number+" "+a.Measure+" of "+name, note)
	case a.WeightOf != "":
		return w.reads(i, to, to, "the weight of "+number+" eggs in "+name, note)
	case a.Each == "egg" && on.Ingredient == egg && (lean.weight || !w.countable(c, 0, 0, 0)):
		return w.reads(i, to, to, "the weight of "+number+" eggs in "+name, "by the weight of the eggs")
	case a.Each != "" && !lean.weight:
		if m, ok := w.reads(i, to, to, number+" "+name, note); ok {
			return m, true
		}
	}
	return w.asBare(i, to, c, name, "as much as of the "+on.Name+", of which no weight is given")
}

// weightOfThose reads "the weight of the eggs in sugar and in flour", of eggs that have
// been counted before.
func (w *weave) weightOfThose(i, j int) (mention, bool) {
	if w.key(j) == "the" && w.key(j+1) == "eggs" {
		j += 2
	} else if k := w.key(j); k == "them" || k == "these" {
		j++
	} else {
		return mention{}, false
	}
	ing, ok := w.r.Tables.Ingredient(egg)
	if k := w.key(j); !ok || k != "in" && k != "of" {
		return mention{}, false
	}
	on := w.amountOf(reference.Called{Ingredient: ing})
	if on == nil || on.Amount.Measure != "" {
		return mention{}, false
	}
	to := w.names(j + 1)
	if to == 0 {
		return mention{}, false
	}
	for w.key(to) == "and" && w.key(to+1) == "in" { // "in sugar and in flour"
		_, e := w.nameAt(to+2, false)
		if e == 0 {
			break
		}
		to = e
	}
	written := "the weight of " + spelled(on.Amount.Number) + " eggs in " + ofJoined.Replace(w.say(j+1, to))
	return w.reads(i, to, to, written, "by the weight of the eggs")
}

// weightOf reads "the weight of four eggs in sugar and flour".
func (w *weave) weightOf(i int) (mention, bool) {
	n, _, own := weightHead(w.ts[i:], false)
	if n == 0 || own {
		return mention{}, false
	}
	c := number(w.ts[i+n:])
	if c.used == 0 {
		return w.weightOfThose(i, i+n)
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

// weightGoesOn reads "of three in flour" behind the weight of eggs in another thing.
func (w *weave) weightGoesOn(i int) (mention, bool) {
	if len(w.found) == 0 || w.keys[i] != "of" || i == 0 || w.keys[i-1] != "and" && w.ts[i-1].key != "," {
		return mention{}, false
	}
	items := w.found[len(w.found)-1].line.Items
	if len(items) == 0 || items[0].Amount.WeightOf == "" {
		return mention{}, false
	}
	c := number(w.ts[i+1:])
	j := i + 1 + c.used
	if c.used == 0 || c.err != nil || w.key(j) != "in" {
		return mention{}, false
	}
	to := w.names(j + 1)
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, "the weight of "+w.say(i+1, j)+" eggs in "+w.say(j+1, to), "of eggs, like the weight before it")
}
