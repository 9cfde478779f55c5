package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
	"assize/reference/spell"
)

// thing is what a name on a line stands for.
type thing struct {
	ing   *reference.Ingredient
	fruit *reference.Fruit
	part  string // of the fruit, when the name says it: "juice of lemon"
	name  phrase // as written
	rest  []phrase
	hind  phrase // a clause that turned out to be part of the name: "sugar, brown"
}

// longestName is how many words a name is looked for in.
const longestName = 12

// find reads the name a phrase begins with: the longest beginning that is known,
// provided what follows speaks about the thing ("butter melted to oil") and is
// not more of the name ("butter beans"). What follows is kept as rest.
func (r *Reader) find(ts phrase) (thing, bool) {
	for len(ts) > 0 && ts.is(0, skipped) {
		ts = ts[1:]
	}
	if r.flourFor(ts) {
		th, ok := r.find(ts[1:])
		th.name = splice(ts[:1], th.name)
		return th, ok
	}
	if th, ok := r.partOf(ts); ok {
		return th, true
	}
	for n := min(longestName, len(ts)); n > 0; n-- {
		if !named(ts[:n]) || !opensForm(ts[n:]) {
			continue
		}
		c, ok := r.called(ts[:n])
		if !ok || r.goesOn(ts[n:]) && !handledIn(ts[n:]) {
			continue
		}
		th := thing{ing: c.Ingredient, fruit: c.Fruit}
		name, rest := r.trim(ts[:n], c)
		rest = splice(rest, ts[n:])
		var before phrase
		before, th.name = describing(name, len(c.Stripped)-len(ts[:n])+len(name))
		th.rest = split(before)
		th.rest = append(th.rest, split(rest)...)
		return th, true
	}
	return r.interrupted(ts)
}

// flourFor reports flour named by what it is baked into, where that is no name
// of its own: "loaf flour" is flour, and no loaf.
func (r *Reader) flourFor(ts phrase) bool {
	if ts.key(1) != "flour" || !ts.is(0, ofFlour) {
		return false
	}
	_, known := r.called(ts[:2])
	return !known
}

// ofFlour are the words for pastes, cakes, breads and batters, which flour is sold
// for; by one of them as well as by many.
var ofFlour = func() wordSet {
	flour := func(k formula.Kind) bool {
		return k == formula.Pastry || k == formula.Cake || k == formula.Bread || k == formula.Batter
	}
	out := union(titleKinds.where(flour), partKinds.where(flour), words("pie pies pudding puddings tart tarts"))
	for _, w := range out.list() {
		out.add(strings.TrimSuffix(w, "s"))
	}
	return out
}()

// handledIn reports words of what a thing was handled in: "wet in cold milk".
func handledIn(rest phrase) bool {
	if len(rest) < 3 || !rest.is(0, steeped) {
		return false
	}
	k := rest.key(1)
	return k == "in" || k == "with" || k == "into"
}

// steeped are participles of what is done to a thing in another.
var steeped = words("wet wetted dissolved soaked steeped dipped moistened mixed beaten rubbed boiled stewed washed melted worked braided")

// goesOn reports that what follows a name leads to another name: in "white
// pounded sugar" or "sugar and grated nutmeg" the first name is not all.
func (r *Reader) goesOn(rest phrase) bool {
	if len(rest) == 0 || rest[0].kind == mark {
		return false
	}
	switch rest.key(0) {
	case "and", "or", "but":
		rest = rest[1:]
	}
	for n := min(longestName, len(rest)); n > 0; n-- {
		if !named(rest[:n]) || rest[:n].has(eggWords) {
			continue
		}
		if _, ok := r.called(rest[:n]); ok {
			return true
		}
	}
	return false
}

// interrupted reads a name with words of handling in the midst of it: "white
// pounded sugar".
func (r *Reader) interrupted(ts phrase) (thing, bool) {
	clause := cut(ts)
	if len(clause) > longestName || len(clause) < 3 {
		return thing{}, false
	}
	var name, between phrase
	end := len(clause) // behind the name: what is said after it is said by itself
	for end > 0 && clause[end-1].participle() {
		end--
	}
	for i, t := range clause[:end] {
		if i > 0 && t.participle() {
			between = splice(between, phrase{t})
		} else {
			name = splice(name, phrase{t})
		}
	}
	if len(between) == 0 || len(name) < 2 || !named(name) {
		return thing{}, false
	}
	c, ok := r.called(name)
	if !ok {
		return thing{}, false
	}
	return thing{ing: c.Ingredient, fruit: c.Fruit, name: name, rest: append([]phrase{between}, split(ts[end:])...)}, true
}

// skipped are words before a name that say nothing.
var skipped = words("the some your of any")

// named reports a phrase that may be a name: no marks in it, and a word that a
// name may end with at its end.
func named(ts phrase) bool {
	last := ts[len(ts)-1]
	return last.kind == word && !last.is(unending) && !slices.ContainsFunc(ts, func(t token) bool { return t.kind == mark })
}

// unending are words no name ends with, though the tables set them aside.
var unending = words("and or but of the a an with plus")

func (r *Reader) called(ts phrase) (reference.Called, bool) {
	var room [longestName]string
	keys := room[:0]
	for i := range ts {
		t := &ts[i]
		if t.kind != word || len(keys) == cap(keys) || len(t.text) == 1 && t.text != t.key || strings.Contains(t.key, " ") {
			return r.named(ts.modern()) // "salt & pepper" is looked up as it stands
		}
		keys = append(keys, t.key)
	}
	return r.Tables.CalledBy(keys, reference.When{Year: r.Year, Place: r.Place}, r.kitchen())
}

// named finds what a name means in the book, bought by the kitchen.
func (r *Reader) named(name string) (reference.Called, bool) {
	return r.Tables.Called(name, reference.When{Year: r.Year, Place: r.Place}, r.kitchen())
}

// begins finds the longest name the words begin with, and how many it takes.
func (r *Reader) begins(words []string) (reference.Called, int) {
	return r.Tables.Begins(words, reference.When{Year: r.Year, Place: r.Place}, r.kitchen())
}

// trim takes words off the end of a name that the tables set aside, so that
// they count as form: "butter melted".
func (r *Reader) trim(ts phrase, c reference.Called) (name, rest phrase) {
	for n := 1; n < len(ts); n++ {
		rest := ts[n:]
		if len(rest) > len(c.Stripped) || !aside(rest, c.Stripped[len(c.Stripped)-len(rest):]) {
			continue
		}
		if shorter, ok := r.called(ts[:n]); ok && shorter.Ingredient == c.Ingredient && shorter.Fruit == c.Fruit {
			return ts[:n], rest
		}
	}
	return ts, nil
}

// aside reports that the phrase is made of just these words.
func aside(ts phrase, words []string) bool {
	for i := range ts {
		if ts.key(i) != words[i] {
			return false
		}
	}
	return true
}

// describing takes words of handling off the front of a name, of which the
// first aside words are no part of the name proper: "finely pounded sugar" is
// sugar, finely pounded. Words of quality ("fresh", "best") stay.
func describing(name phrase, aside int) (before, rest phrase) {
	last := 0
	for i := 0; i < aside && i < len(name)-1; i++ {
		if name.participle(i) {
			last = i + 1
		}
	}
	return name[:last], name[last:]
}

// sugared are words that make another thing of a peel.
var sugared = words("candied preserved sugared dried crystallised crystallized")

// partOf reads a part of a fruit named without a number: "juice of lemon",
// "the grated rind of lemons".
func (r *Reader) partOf(ts phrase) (thing, bool) {
	i := 0
	for i < len(ts) && i < longestName && ts.key(i) != "of" {
		i++
	}
	if i == 0 || i+1 >= len(ts) || i >= longestName {
		return thing{}, false
	}
	part, ok := fruitParts.at(ts, i-1)
	if !ok || ts[:i].has(sugared) {
		return thing{}, false
	}
	if _, known := r.called(ts); known {
		return thing{}, false // "juice of lemon" may be a name of its own
	}
	th, ok := r.find(ts[i+1:])
	if !ok || th.fruit == nil || th.part != "" {
		return thing{}, false
	}
	th.part = part
	th.rest = append(split(ts[:i]), th.rest...)
	return th, true
}

// choice is the things one amount is given for.
type choice struct {
	things []thing
	// or are the words of what might be taken instead.
	or phrase
	// halves marks things that share the amount between them.
	halves bool
}

// choose reads a name, or several joined by "and" or "or".
func (r *Reader) choose(ts phrase) (choice, bool) {
	if len(ts) > 3 && ts.is(len(ts)-1, preserves) { // "raspberry or currant jelly" is jelly of one or the other
		for i := 1; i+2 < len(ts); i++ {
			if ts.key(i) != "or" {
				continue
			}
			if th, ok := r.find(ts[i+1:]); ok && len(th.rest) == 0 {
				return choice{things: []thing{th}, or: ts[:i]}, true
			}
		}
	}
	if th, ok := r.find(ts); ok {
		return choice{things: []thing{th}}, true
	}
	for i := 1; i+1 < len(ts); i++ {
		switch k := ts.key(i); k {
		case "or", "/":
			// "lemon or orange juice" is lemon juice or orange juice.
			shared := splice(ts[:i], ts[len(ts)-1:])
			if th, ok := r.find(shared); ok && len(th.rest) == 0 && len(ts)-i > 2 {
				return choice{things: []thing{th}, or: ts[i:]}, true
			}
			if th, ok := r.find(ts[:i]); ok {
				return choice{things: []thing{th}, or: ts[i:]}, true
			}
		case "and":
			left, ok := r.find(ts[:i])
			if !ok {
				continue
			}
			right, ok := r.choose(ts[i+1:])
			if ok && len(right.or) == 0 {
				return choice{things: append([]thing{left}, right.things...)}, true
			}
		}
	}
	return choice{}, false
}

// unknown says that a name is not known and what may be meant. first is how
// many words of it could also be a measure.
func (r *Reader) unknown(f *found, ts phrase) {
	for len(ts) > 1 && ts.is(0, skipped) {
		ts = ts[1:]
	}
	name := strings.TrimSpace(cut(ts).String())
	if len(ts) > 0 && number(ts).used > 0 {
		f.trouble(ts.column(), "write how much, of what, and what is done to it: 4 oz butter, melted", "%q cannot be made out", name)
		return
	}
	if name == "" {
		f.trouble(ts.column(), "name the ingredient after the amount", "the line does not say what it is of")
		return
	}
	f.trouble(ts.column(), r.askName(name), "unknown ingredient %q", name)
}

// cut is the phrase up to its first mark.
func cut(ts phrase) phrase {
	for i, t := range ts {
		if t.kind == mark && t.key != "/" && i > 0 {
			return ts[:i]
		}
	}
	return ts
}

// askName suggests ingredients for a name: by the whole of it, then by its last
// words.
func (r *Reader) askName(name string) string {
	if r.quiet {
		return ""
	}
	names := r.Tables.IngredientNames()
	words := strings.Fields(name)
	for _, from := range []int{0, len(words) - 2, len(words) - 1} {
		if from < 0 || from > 0 && len(words) > longestName {
			continue
		}
		if hint := spell.Ask(strings.Join(words[from:], " "), names); hint != "" {
			return hint
		}
	}
	return "`assize tables ingredients` lists those that are known"
}

// split parts a phrase at its marks. Clauses without words are dropped.
func split(ts phrase) []phrase {
	var out []phrase
	from := 0
	for i := 0; i <= len(ts); i++ {
		if i < len(ts) && (ts[i].kind != mark || ts[i].key == "/" || ts[i].key == "=" || ts[i].key == "+") {
			continue
		}
		if i > from {
			out = append(out, ts[from:i])
		}
		from = i + 1
	}
	return out
}

// text joins clauses as a form is shown.
func text(clauses []phrase) string {
	out := make([]string, len(clauses))
	for i, c := range clauses {
		out[i] = c.String()
	}
	return strings.Join(out, ", ")
}
