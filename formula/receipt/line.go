package receipt

import (
	"slices"
	"strings"
	"unicode/utf8"

	"assize/formula"
	"assize/reference"
	"assize/reference/spell"
)

// The most a line may hold: nobody writes one longer, and a page that has lost
// its line ends would.
const (
	longestLine  = 500
	mostOfTokens = 120
)

// Line reads one ingredient line as a book words it. What it comes to is in the
// items of the line; what was taken for what is in its notes. With any trouble
// the line must not be used.
func (r *Reader) Line(text string) (formula.Line, []Trouble) {
	out := formula.Line{Text: text}
	var f found
	clear, doubtful := withoutQuery(text)
	ts := r.tokens(clear)
	switch {
	case ts.has(cannotRead) && strings.Contains(text, "["):
		f.trouble(1+utf8.RuneCountInString(text[:strings.Index(text, "[")]), "write what it must have been, or {either: [...], why: ...} for one or the other", "the book cannot be read here")
	case utf8.RuneCountInString(text) > longestLine || len(ts) > mostOfTokens:
		f.trouble(1, "one ingredient a line", "the line is too long to be one ingredient")
	case len(ts) > 0 && ts.key(0) == "-" && len(ts) > 1 && ts[1].kind == figure && ts[1].lead == "":
		f.trouble(ts[0].from, "", "the amount is less than nothing")
	default:
		f = r.line(trimOrders(ts))
		r.account(&f, ts)
	}
	if len(f.troubles) > 0 {
		return out, f.troubles
	}
	if doubtful {
		f.note("%s", doubtfulWord)
	}
	out.Items, out.Notes = f.items, f.notes
	return out, nil
}

func (r *Reader) tokens(text string) phrase {
	return tokenize(text, r.Tables)
}

// trimOrders drops the marks of a list and the "take" of an order.
func trimOrders(ts phrase) phrase {
	ts = trimMarks(ts)
	for len(ts) > 1 && (ts.is(0, orders) || ts.key(0) == "of" && ts.key(1) != "each") {
		ts = ts[1:]
	}
	return ts
}

// line reads a line that may hold several things.
func (r *Reader) line(ts phrase) found {
	if len(ts) == 0 {
		var f found
		f.trouble(1, "write an ingredient, with its amount: 6 eggs", "the line is empty")
		return f
	}
	f := r.one(ts)
	hidden := r.hidden(f)
	if f.clean() && hidden == nil {
		return f
	}
	if g, ok := r.several(ts); ok {
		return g
	}
	if f.clean() {
		f.trouble(hidden.column(), "give each thing a line of its own", "%q looks like a thing of its own", hidden.String())
	}
	return f
}

// one reads a line of one amount, however it is worded. The forms that only
// certain words begin are tried before the common ones.
func (r *Reader) one(ts phrase) found {
	for _, read := range [...]func(*Reader, phrase) (found, bool){
		(*Reader).proportion, (*Reader).seasoning, (*Reader).countingUnit, (*Reader).weightOf, (*Reader).enoughFor, (*Reader).leans, (*Reader).ofEach,
		(*Reader).eggSidesFirst, (*Reader).fruitPartsFirst, (*Reader).ofBigness, (*Reader).vague, (*Reader).amountFirst, (*Reader).nameFirst,
	} {
		if f, ok := read(r, ts); ok {
			return f
		}
	}
	return r.put(amount{}, ts)
}

// proportion refuses an amount given for so much of something else: "to every
// lb. of flour, 8 oz. of butter".
func (r *Reader) proportion(ts phrase) (found, bool) {
	if !perEach(ts) {
		return found{}, false
	}
	var f found
	f.trouble(ts.column(), "reckon it out and write each amount on its own line", "%q gives a proportion and not an amount", cut(ts).String())
	return f, true
}

func perEach(c phrase) bool {
	return opens(c, "to every", "to each", "for every", "for each", "to a pound", "to one pound") ||
		(c.key(0) == "to" || c.key(0) == "for") && number(c[1:]).used > 0
}

// seasoning reads orders that name no ingredient: "season to taste".
func (r *Reader) seasoning(ts phrase) (found, bool) {
	name := ""
	switch ts.key(0) {
	case "season":
		name = "seasoning"
	case "sweeten":
		name = "sugar"
	default:
		return found{}, false
	}
	a := amount{said: true}
	a.State, a.Words = formula.ToTaste, ts.String()
	rest := ts[1:]
	if rest.key(0) == "with" {
		a.Words = ts[:2].String()
		return r.put(a, rest[1:]), true
	}
	c, ok := r.named(name)
	if !ok || c.Ingredient == nil {
		return found{}, false
	}
	var f found
	f.note("taken as %s", c.Ingredient.Name)
	f.items = append(f.items, item(a, thing{ing: c.Ingredient, name: ts[:1]}, ""))
	return f, true
}

// vague reads "a little salt", "some raisins", "a few cloves": named without an
// amount.
func (r *Reader) vague(ts phrase) (found, bool) {
	s, n := stateAt(ts)
	if n == 0 || s != formula.NotGiven {
		return found{}, false
	}
	if m := r.measureAt(ts[n:]); m > 0 && (n+m < len(ts) && ts[n+m].kind != mark || !r.isName(ts[n:])) { // but "a few cloves" are cloves
		return found{}, false
	}
	a := amount{said: true}
	a.State, a.Words = s, ts[:n].String()
	rest := ts[n:]
	if rest.key(0) == "of" {
		rest = rest[1:]
	}
	if len(rest) == 0 {
		return found{}, false
	}
	f := r.put(a, rest)
	return f, f.clean()
}

// amountFirst reads the common line: amount, measure, name, what is said of it.
func (r *Reader) amountFirst(ts phrase) (found, bool) {
	if _, known := r.called(first(ts)); known && len(ts) > 0 && ts[0].kind == figure {
		return found{}, false // "00 flour" is a name
	}
	a, n := r.amountAt(ts)
	if n == 0 {
		return found{}, false
	}
	f := r.put(a, ofName(ts[n:]))
	if f.clean() {
		return f, true
	}
	// What looked like a measure may be part of the name: "2 yeast cakes".
	if c := number(ts); a.measured && c.used > 0 && c.err == nil {
		b := amount{said: true, numbered: true, from: ts.column()}
		b.Number, b.Words = c.span, ts[:c.used].String()
		if g := r.put(b, ts[c.used:]); g.clean() {
			return g, true
		}
	}
	if g, ok := r.misspeltMeasure(ts[n:], a); ok {
		return g, true
	}
	return f, true
}

// ofName drops the "of" between amount and name.
func ofName(ts phrase) phrase {
	if ts.key(0) == "of" {
		return ts[1:]
	}
	return ts
}

// misspeltMeasure reports a word between number and name that is no measure: "3
// gils of milk".
func (r *Reader) misspeltMeasure(ts phrase, a amount) (found, bool) {
	if a.measured || len(ts) < 2 {
		return found{}, false
	}
	for n := 1; n < min(4, len(ts)); n++ {
		of := ts.key(n) == "of"
		if _, ok := r.choose(first(ofName(ts[n:]))); !ok || ts[n-1].kind != word {
			continue
		}
		hint := r.askMeasure(ts[:n].String())
		if r.isModifier(ts[:1]) || !of && (n > 1 || !r.nearMeasure(ts.key(0))) {
			continue
		}
		if hint == "" {
			hint = "`assize tables measures` lists those that are known"
		}
		var f found
		f.trouble(ts.column(), hint, "unknown measure %q", ts[:n].String())
		return f, true
	}
	return found{}, false
}

// nearMeasure reports a word that is a slip or two from a measure.
func (r *Reader) nearMeasure(w string) bool {
	limit := min(2, len(w)/3)
	return limit > 0 && slices.ContainsFunc(r.Tables.MeasureNames(), func(m string) bool { return len(m) > 3 && spell.Slips(w, m, limit) <= limit })
}

// nameFirst reads a line that names the thing before it says how much: "flour 8
// oz", "yeast, a spoonful", "salt, to taste", "milk to mix".
func (r *Reader) nameFirst(ts phrase) (found, bool) {
	for k := 1; k < len(ts); k++ {
		if ts[k].kind == mark {
			continue
		}
		name := trimMarks(ts[:k])
		if s, n := stateAt(ts[k:]); n > 0 && r.isName(name) {
			if g, ok := r.enoughFor(ts[k:]); ok && g.clean() {
				continue // "salt, and enough water to ..."
			}
			a := amount{said: true}
			clause := cut(ts[k:])
			if s != formula.Enough { // what follows "to taste" is no part of it
				clause = clause[:n]
			}
			a.State, a.Words = s, clause.String()
			return r.put(a, joined(name, trimMarks(ts[k+len(clause):]))), true
		}
		a, n := r.amountAt(ts[k:])
		if n == 0 || r.startsInside(ts, k) || !a.numbered && ts[k-1].kind != mark || !a.measured && k+n < len(ts) && ts[k+n].kind != mark || !a.numbered && a.Measure == "" {
			continue
		}
		if !r.isName(name) || len(name) > 0 && name.is(len(name)-1, purpose) {
			continue
		}
		f := r.put(a, joined(name, trimMarks(ts[k+n:])))
		if f.clean() {
			return f, true
		}
	}
	return found{}, false
}

// isName reports a phrase whose first clause is a known name, or several.
func (r *Reader) isName(ts phrase) bool {
	if len(ts) == 0 {
		return false
	}
	_, ok := r.choose(first(ts))
	return ok
}

// several reads a line of several things, each with an amount of its own: "4 oz
// of butter and 2 oz of sugar".
func (r *Reader) several(ts phrase) (found, bool) {
	var parts []phrase
	from := 0
	for i := 1; i+1 < len(ts); i++ {
		k := ts.key(i)
		if !joins.has(k) || from == i {
			continue
		}
		next := i + 1
		for next < len(ts) && (ts.is(next, joins) || ts.key(next) == "the") {
			next++
		}
		_, starts := r.startsAmount(ts[next:])
		if !starts {
			continue
		}
		parts = append(parts, ts[from:i])
		from = next
		i = next
	}
	if from == 0 || from >= len(ts) {
		return found{}, false
	}
	parts = append(parts, ts[from:])
	var all found
	for _, p := range parts {
		f := r.one(trimMarks(p))
		if !f.clean() || r.hidden(f) != nil || !allStated(f.items) {
			return found{}, false
		}
		all.add(f)
	}
	return all, true
}

// joins are the marks and words that may stand between two things.
var joins = words(", ; . + - and plus with also then")

// startsAmount reports a phrase that begins with an amount, or with a part of
// an egg or a fruit and its number.
func (r *Reader) startsAmount(ts phrase) (int, bool) {
	if a, n := r.amountAt(ts); n > 0 && a.numbered {
		return n, true
	}
	n, _, ok := partsAt(ts, anyPart)
	return n, ok
}

func allStated(items []formula.Item) bool {
	for _, it := range items {
		if it.Amount.State != formula.Stated {
			return false
		}
	}
	return true
}

// hidden finds, among what was kept as said of a thing, a thing of its own: an
// amount with a known name, or a name by itself. Nothing may be lost as a
// remark on another thing.
func (r *Reader) hidden(f found) phrase {
	for _, c := range f.asides {
		for c.key(0) == "and" || c.key(0) == "also" || c.key(0) == "with" || c.key(0) == "of" && len(c) > 1 {
			c = c[1:]
		}
		if len(c) > 0 && r.standsAlone(c) {
			return c
		}
		for i := range c { // "well beaten with 2 oz sugar"
			if k := c.key(i); k == "in" || i > 0 && (k == "with" || k == "and" || k == "through") {
				if a, n := r.amountAt(c[i+1:]); n > 0 && a.numbered && a.Measure != "" {
					if _, ok := r.find(ofName(c[i+1+n:])); ok {
						return c[i+1:]
					}
				}
			}
		}
	}
	return nil
}

// standsAlone reports a clause that is a thing of its own.
func (r *Reader) standsAlone(c phrase) bool {
	if opens(c, "or", "instead") || c.participle(0) && c.is(1, doneWith) {
		return false // "rubbed in flour"
	}
	if opens(c, "to every", "to each", "for every", "for each") {
		return r.holdsName(c)
	}
	if _, ok := r.likenessIn(c); ok {
		return false
	}
	for _, w := range leaning {
		if n := c.begins(w); n > 0 && c.key(n) == "of" {
			return true
		}
	}
	if g, ok := r.enoughFor(c); ok && g.clean() {
		return true
	}
	for k := 1; k < len(c); k++ { // "eggs five"
		if n := number(c[k:]); n.used > 0 && !n.article && k+n.used == len(c) && c[k].kind == word && r.isName(c[:k]) {
			return true
		}
	}
	for k := 1; k+1 < len(c); k++ { // "pepper and salt to taste"
		if c.key(k) == "and" {
			_, a := r.called(c[:k])
			_, b := r.called(c[k+1 : k+2])
			if _, n := stateAt(c[k+2:]); a && b && (n > 0 || k+2 == len(c)) {
				return true
			}
		}
	}
	if a, n := r.amountAt(c); n > 0 {
		if c.key(len(c)-1) == "ones" { // "4 oz almonds, 6 bitter ones"
			return true
		}
		if n == len(c) || !a.numbered || a.article() && !a.measured {
			return false
		}
		_, ok := r.find(ofName(c[n:]))
		return ok && (a.measured || c.key(n) != "of")
	}
	if s, n := stateAt(c); n > 0 && s == formula.NotGiven && n < len(c) && r.isName(ofName(c[n:])) {
		return true // "and some coriander"
	}
	if _, n := stateAt(c); n > 0 || r.isModifier(c) {
		return false
	}
	th, ok := r.find(c)
	return ok && len(th.rest) <= 1
}

// doneWith are the words behind a participle that tell what a thing was done with.
var doneWith = words("in with into through to from over")

// isModifier reports words that the tables set aside as saying nothing of what
// a thing is: "full fat".
func (r *Reader) isModifier(c phrase) bool {
	key := reference.Key(c.String())
	return slices.ContainsFunc(r.Tables.Modifiers, func(m reference.Modifier) bool {
		return slices.ContainsFunc(m.Words, func(w string) bool { return len(w) == len(key) && reference.Key(w) == key })
	})
}

// holdsName reports a clause that names an ingredient anywhere.
func (r *Reader) holdsName(c phrase) bool {
	for i := range c {
		if c[i].kind == word && !c.is(i, glue) {
			if _, ok := r.called(c[i : i+1]); ok {
				return true
			}
		}
	}
	return false
}
