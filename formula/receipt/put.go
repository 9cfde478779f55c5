package receipt

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// put makes the items of an amount and the words that say what it is of: the
// name first, what is said about it after a mark.
func (r *Reader) put(a amount, ts phrase) found {
	f := a.found
	clauses := split(ts)
	if len(clauses) == 0 {
		r.unknown(&f, nil)
		return f
	}
	name, forms := clauses[0], clauses[1:]
	pick, ok := r.choose(name)
	if !ok && len(forms) > 0 {
		// "good, fresh butter": the name goes on after the comma.
		both := splice(name, forms[0])
		if th, found := r.find(both); found && len(th.name) > len(name) {
			pick, ok, forms = choice{things: []thing{th}}, true, forms[1:]
		}
	}
	if two, used, found := r.halfAndHalf(clauses); found {
		pick, ok, forms = two, true, append(forms[:0:0], clauses[used:]...)
		a.Words = strings.TrimSpace(a.Words + " " + clauses[used-1].String())
		if used > 1 {
			f.note("%q is taken as %s", name.String(), clauses[1].String())
		}
	}
	if loafOf(&f, a, name) {
		return f
	}
	if !ok {
		r.unknown(&f, name)
		return f
	}
	if len(pick.things) == 1 && (sharedEqually(forms) || saidMixed(pick.things[0], forms)) {
		if two := r.bothOf(pick.things[0], name); two != nil {
			pick.things, pick.halves = two, true
		}
	}
	pick.halves = pick.halves || len(pick.things) > 1 && sharedEqually(forms)
	if len(pick.or) > 0 {
		f.note("%q: taken as %s", name.String(), pick.things[0].name.String())
	}
	if len(pick.things) > 1 && a.State == formula.Stated && a.said && !pick.halves {
		f.trouble(name.column(), "give each an amount of its own, or write \"of each\"", "%q have one amount between them", name.String())
		return f
	}
	if pick.halves {
		a = a.scaled(ratio(one, decimal.NewFromInt(int64(len(pick.things)))))
	}
	for _, th := range pick.things {
		if len(pick.things) == 1 {
			th, forms = r.turned(&f, th, forms)
		}
		r.place(&f, a, th, forms)
	}
	return f
}

// bothOf parts a name that the tables hold as one, "currants and raisins", into the two
// it is of; nil when it is none. What is poured together, as milk and water, stays one.
func (r *Reader) bothOf(whole thing, name phrase) []thing {
	if whole.ing != nil && strings.HasPrefix(whole.ing.ID, "x_") {
		return nil
	}
	for k := 1; k+1 < len(name); k++ {
		if name.key(k) != "and" {
			continue
		}
		a, okA := r.find(name[:k])
		b, okB := r.find(name[k+1:])
		if okA && okB && a.ing != nil && b.ing != nil && a.ing != b.ing && len(a.rest) == 0 {
			return []thing{a, b}
		}
	}
	return nil
}

// saidMixed reports words that the two things of a name are mixed.
func saidMixed(th thing, forms []phrase) bool {
	for _, p := range append(th.rest[:len(th.rest):len(th.rest)], forms...) {
		if p.has(mixedWords) && !p.has(withWord) {
			return true
		}
	}
	return false
}

var withWord = words("with")

// turned finds a name given hind part first: "sugar, brown".
func (r *Reader) turned(f *found, th thing, forms []phrase) (thing, []phrase) {
	all := append(th.rest[:len(th.rest):len(th.rest)], forms...)
	if th.ing == nil {
		return th, forms
	}
	for _, c := range all {
		if fromEgg.has(th.ing.Kind) && !c.has(driedEgg) {
			continue // whites beaten dry are not dried whites
		}
		if len(c) > 3 || len(th.name) > 2 || slices.ContainsFunc(all, func(p phrase) bool { return p.has(madeUp) }) {
			continue
		}
		got, ok := r.named(c.String() + " " + th.name.String())
		if !ok || len(got.Stripped) > 0 || got.Ingredient == nil {
			continue
		}
		if got.Ingredient == th.ing { // "sugar, loaf" is loaf sugar, which is sugar
			th.hind = c
			continue
		}
		f.note("taken as %s", c.String()+" "+th.name.String())
		return thing{ing: got.Ingredient, name: th.name, hind: c}, all
	}
	return th, forms
}

// fromEgg are the kinds of ingredient an egg gives.
var fromEgg = words("egg white yolk")

var (
	driedEgg = words("dried powdered")
	madeUp   = words("reconstituted soaked")
)

// halfAndHalf reads "half lard, half butter", in the name or in what is said
// of it. used is how many clauses it takes.
func (r *Reader) halfAndHalf(clauses []phrase) (pick choice, used int, ok bool) {
	for i, c := range clauses[:min(2, len(clauses))] {
		if c.key(0) != "half" {
			continue
		}
		for j := 2; j < len(c); j++ {
			if c.key(j) != "half" {
				continue
			}
			first := c[1:j]
			if first.key(len(first)-1) == "and" {
				first = first[:len(first)-1]
			}
			a, okA := r.find(first)
			b, okB := r.find(c[j+1:])
			if okA && okB {
				return choice{things: []thing{a, b}, halves: true}, i + 1, true
			}
		}
	}
	return choice{}, 0, false
}

// sharedEqually reports that things are said to share their amount: "brandy and
// water, equal parts".
func sharedEqually(forms []phrase) bool {
	return slices.ContainsFunc(forms, func(p phrase) bool {
		return opens(p, "equal parts", "in equal parts", "equal quantities", "in equal quantities", "half and half", "equally", "half of each")
	})
}

// place makes the items of one thing.
func (r *Reader) place(f *found, a amount, th thing, forms []phrase) {
	forms = append(th.rest[:len(th.rest):len(th.rest)], forms...)
	forms = r.inForms(f, &a, forms)
	if !a.said {
		a.State = formula.NotGiven
	}
	if th.fruit == nil {
		f.aside(th, forms)
	}
	switch {
	case th.fruit != nil:
		r.fruit(f, a, th, forms)
	case a.State == formula.Stated && !a.measured && th.ing.ID == egg:
		r.eggs(f, a, th, forms)
	case a.State != formula.Stated || a.measured:
		r.weighed(f, a, th, forms)
	default:
		r.byNumber(f, a, th, forms)
	}
}

// egg is the ingredient that a counted egg is.
const egg = "egg_whole"

// inForms takes out of what is said of a thing whatever says how much: how full
// the measure was, a size, that no amount is given, the weight of what was
// counted.
func (r *Reader) inForms(f *found, a *amount, forms []phrase) []phrase {
	var rest []phrase
	a.fills, a.beside = slices.Clip(a.fills), slices.Clip(a.beside)
	for _, c := range forms {
		if !a.said {
			if s, n := stateAt(c); n > 0 {
				a.State, a.said, a.Words = s, true, c.String()
				rest = append(rest, c)
				continue
			}
			if l, ok := r.likenessIn(c); ok && l.measure != "" && l.from == 0 && l.to == len(c) {
				a.said, a.numbered, a.measured = true, true, true
				a.Number, a.Measure, a.Words = l.number, l.measure, c.String()
				rest = append(rest, c)
				continue
			}
		}
		if a.said && a.State == formula.Stated {
			if x, ok := r.fillOf(c, a); ok {
				a.fills = append(a.fills, x)
				rest = append(rest, c)
				continue
			}
			if c.key(0) == "jumbo" {
				a.jumbo = true
			}
			if b, n := r.amountAt(c); n > 0 && b.Measure != "" && b.numbered && !b.implied && (n == len(c) || n == len(c)-1 && c.key(n) == "each") {
				a.beside = append(a.beside, b)
				a.each = n < len(c)
			}
		}
		rest = append(rest, c)
	}
	return rest
}

// fillOf finds the fill that a whole clause is: "heaped", "small cup" of cups,
// "large" of eggs. Of a measure fixed by law a size says nothing.
func (r *Reader) fillOf(c phrase, a *amount) (fill, bool) {
	id, ok := "", false
	if a.Measure != "" {
		id, ok = r.fillCalled(c.String() + " " + a.Measure)
	}
	if !ok {
		id, ok = r.fillCalled(c.String())
	}
	if x, n := r.fillAt(c); !ok && n > 0 && n < len(c) {
		sizeWord := sized(x.id) && n == len(c)-1 && (c.key(n) == "sized" || c.key(n) == "size")
		if sizeWord || a.Measure != "" && r.measureName(c[n:].String()) == a.Measure {
			id, ok = x.id, true
		}
	}
	switch {
	case !ok, a.Parts, a.WeightOf != "":
		return fill{}, false
	case a.Measure == "":
		return fill{id, c.String()}, !fullness.has(id) && id != "good" && id != "scant"
	case sized(id):
		rows := r.holding(a.Measure, nil)
		return fill{id, c.String()}, len(rows) > 0 && rows[0].Grade != "exact"
	}
	return fill{id, c.String()}, !ofTheThing.has(c.String()) || !r.isWeight(a.Measure)
}

// weighed makes the item of an amount that is in a measure, in parts, or not
// given.
func (r *Reader) weighed(f *found, a amount, th thing, forms []phrase) {
	if a.Measure != "" && len(r.holding(a.Measure, th.ing)) == 0 {
		if b, ok := r.instead(a, th.ing); ok {
			f.note("%q is what counts, not the %s", b.Words, a.Measure)
			b.Words = a.Words
			a = b
		} else {
			r.unheld(f, a, th)
			return
		}
	}
	if a.implied && a.measured && !a.numbered {
		switch {
		case a.plural:
			a.State, a.Number = formula.NotGiven, reference.Span{}
			f.note("how many is not said: %q", a.Words)
		default:
			f.note("no number is given: taken as one %s", a.Measure)
		}
	}
	r.compare(f, a, th.ing)
	r.setFill(f, &a)
	f.items = append(f.items, item(a, th, text(forms)))
	for _, b := range a.also {
		b.Words = a.Words
		r.weighed(f, b, th, forms)
	}
}

// instead is the amount given beside one whose measure is not known.
func (r *Reader) instead(a amount, ing *reference.Ingredient) (amount, bool) {
	for _, b := range a.beside {
		if len(r.holding(b.Measure, ing)) == 0 {
			continue
		}
		if a.each || containers.has(a.Measure) {
			b.Number = multiply(a.Number, b.Number)
		}
		return b, true
	}
	return amount{}, false
}

func item(a amount, th thing, form string) formula.Item {
	if a.State != formula.Stated {
		a.Amount = formula.Amount{State: a.State, Words: a.Words}
	}
	return formula.Item{Name: th.name.String(), Ingredient: th.ing.ID, Form: form, Amount: a.Amount}
}

// byNumber makes the item of a thing that is counted.
func (r *Reader) byNumber(f *found, a amount, th thing, forms []phrase) {
	each, ok := r.eachOf(th.ing, append([]phrase{th.name}, forms...)...)
	if !ok {
		r.uncountable(f, a, th, forms)
		return
	}
	a.Each = each
	r.sizeInName(&a, th.name, each)
	r.setFill(f, &a)
	r.setSize(&a, each)
	for _, b := range a.beside {
		f.note("%q is also given; the number is what is taken", b.Words)
	}
	f.items = append(f.items, item(a, th, text(forms)))
}

// sizeInName takes the size out of "large eggs", unless it is part of what is
// counted ("small sponge cakes").
func (r *Reader) sizeInName(a *amount, name phrase, each string) {
	for i := range name {
		if name.key(i) == "jumbo" {
			a.jumbo = true
		}
		x, n := r.fillAt(name[i:])
		if n > 0 && n < len(name)-i && (sized(x.id) || n > 1) && !strings.Contains(each, name.key(i)) {
			a.fills = append(a.fills, x)
			return
		}
	}
}

// uncountable handles a number of something nobody can weigh one of: the words
// may hold a measure after all ("6 blades mace", "3 mace blades") or a weight
// beside the number ("3 carrots (300 g)").
func (r *Reader) uncountable(f *found, a amount, th thing, forms []phrase) {
	if b, ok := r.instead(a, th.ing); ok {
		f.note("%q is what counts, not the number", b.Words)
		b.Words = a.Words
		r.weighed(f, b, th, forms)
		return
	}
	if m := r.measureAt(th.name); m > 0 && m < len(th.name) {
		if inner, ok := r.find(th.name[m:]); ok {
			b := a
			r.take(th.name, 0, m, &b)
			b.Words += " " + th.name[:m].String()
			r.weighed(f, b, inner, forms)
			return
		}
	}
	if m := len(th.name) - 1; m > 0 && r.measureAt(th.name[m:]) == 1 {
		if inner, ok := r.find(th.name[:m]); ok && len(r.holding(th.name[m:].String(), inner.ing)) > 0 {
			b := a
			r.take(th.name, m, 1, &b)
			b.Words += " " + th.name[m:].String()
			r.weighed(f, b, inner, forms)
			return
		}
	}
	f.trouble(th.name.column(), "give a weight or a measure", "how much is one %s?", r.single(th.name))
}

// single is a name in the singular, for showing.
func (r *Reader) single(name phrase) string {
	last := name[len(name)-1]
	for _, s := range singulars(last.key)[1:] {
		words := strings.TrimSuffix(name.String(), last.text) + s
		if _, ok := r.named(words); ok {
			return words
		}
	}
	return name.String()
}

var (
	loaf   = words("loaf loaves")
	ofLoaf = words("sugar") // loaf sugar is no bread
)

// loafOf says that a loaf sold by its price or its look has no weight.
func loafOf(f *found, a amount, ts phrase) bool {
	if a.measured || !ts.has(loaf) || ts.has(ofLoaf) {
		return false
	}
	f.trouble(ts.column(), "weigh the crumb and write that: 4 oz breadcrumbs", "%q has no fixed weight: a loaf went by its price and the price of corn", cut(ts).String())
	return true
}

// eachOf finds what the sizes table calls one of the thing, by the words of its
// name and, failing those, of its form ("egg, dried"). The longest fits best, of
// equals the one named first.
func (r *Reader) eachOf(ing *reference.Ingredient, said ...phrase) (string, bool) {
	if ing.Kind == "white" || ing.Kind == "yolk" {
		return "egg", true
	}
	sizes := r.Tables.SizesOf(family(ing))
	if len(sizes) == 0 {
		return "", false
	}
	have := map[string]int{}
	for _, p := range said {
		for i := range p {
			for _, w := range singulars(p.key(i)) {
				if _, ok := have[w]; !ok {
					have[w] = len(have)
				}
			}
		}
	}
	for _, two := range [...][3]string{{"cocoa", "nut", "coconut"}, {"vanilla", "bean", "pod"}, {"vanilla", "stick", "pod"}} { // a cocoa-nut
		c, ok := have[two[0]]
		if _, both := have[two[1]]; ok && both {
			have[two[2]] = c
		}
	}
	best, bestParts, bestAt := "", 0, 0
	for _, s := range sizes {
		if s.Unit == "share" || strings.HasPrefix(s.Each, "whole-") || strings.HasPrefix(s.Each, "peeled-") {
			continue
		}
		parts, at, all := 0, 0, true
		for w := range strings.SplitSeq(s.Each, "-") {
			if w == "of" {
				continue
			}
			k, ok := have[w]
			all = all && ok
			parts, at = parts+1, max(at, k)
		}
		if all && (parts > bestParts || parts == bestParts && at < bestAt) {
			best, bestParts, bestAt = s.Each, parts, at
		}
	}
	return best, best != ""
}

// kin reports whether the row of that id is the ingredient or a form of it.
func (r *Reader) kin(id string, ing *reference.Ingredient) bool {
	if id == ing.ID {
		return true
	}
	other, ok := r.Tables.Ingredient(id)
	return ok && family(other) == family(ing)
}

// family is the row an ingredient is a form of, itself when it is none.
func family(ing *reference.Ingredient) string { return ing.Family() }

// singulars are the forms a word may have in the singular, itself first.
func singulars(w string) []string {
	out := []string{w}
	for _, end := range []struct{ plural, single string }{{"ies", "y"}, {"es", ""}, {"s", ""}, {"ves", "f"}} {
		if s, ok := strings.CutSuffix(w, end.plural); ok && s != "" {
			out = append(out, s+end.single)
		}
	}
	for _, s := range out {
		if same, ok := sameEach[s]; ok {
			out = append(out, strings.Split(same, "-")...)
		}
	}
	return out
}
