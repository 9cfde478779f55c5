package receipt

import (
	"strings"
	"unicode"

	"assize/reference"
)

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
		if skip == 0 && w.keys[i] == "and" {
			return reference.Called{}, 0 // what follows is another thing
		}
		if w.r.flourFor(w.ts[i:]) {
			i++
		}
		if c, n := w.begins(i); n > 0 && w.wholeName(i, i+n) {
			if d, end := w.furtherName(i, n); end > 0 {
				return d, end
			}
			return c, i + n
		}
		if plain {
			return reference.Called{}, 0
		}
		n := w.setAside(i, i+len(w.run(i)))
		switch {
		case w.keys[i] == "dry" && i+1 < len(w.ts) && w.ts[i+1].key == ",", w.ofMaker(i):
			i++
		case n > 0:
			i += n
		case w.ts.is(i, skipped) || w.ts.participle(i) && !w.ts.is(i, imperatives) || w.ts.is(i, adverbs) || w.keys[i] == "and" && skip > 0:
			i++
		default:
			return reference.Called{}, 0
		}
	}
	return reference.Called{}, 0
}

// ofMaker reports the name of whoever makes a thing: "Cooper's".
func (w *weave) ofMaker(i int) bool {
	t := &w.ts[i]
	return t.kind == word && len(t.text) > 3 && unicode.IsUpper(rune(t.text[0])) && (strings.HasSuffix(t.text, "'s") || strings.HasSuffix(t.text, "’s"))
}

// begins finds the longest name that begins at a token, and how many it takes.
func (w *weave) begins(i int) (reference.Called, int) {
	if w.ts[i].opens.Name == 0 {
		return reference.Called{}, 0
	}
	return w.r.begins(w.run(i))
}

// setAside counts the tokens from one on that are a way of saying nothing of what a
// thing is; it looks no further than a second.
func (w *weave) setAside(from, to int) int {
	if w.ts[from].opens.Aside == 0 {
		return 0
	}
	return w.r.Tables.SetAside(w.keys[from:to])
}

// furtherName reads on where a side of an egg begins a longer name with words
// of handling in its midst: "white powdered sugar" is no white of egg.
func (w *weave) furtherName(i, n int) (reference.Called, int) {
	if eggSides.of(w.ts, i) == "" {
		return reference.Called{}, 0
	}
	if w.keys[i] == "white" && w.key(i+1) != "of" && i+1 < len(w.ts) && w.ts[i+1].kind == word { // "white brandy"
		if c, m := w.begins(i + 1); m > 0 && c.Ingredient != nil && !fromEgg.has(c.Ingredient.Kind) {
			return c, i + 1 + m
		}
	}
	j := i + 1
	for j < len(w.ts) && w.ts[j].kind == word && w.ts.participle(j) {
		j++
	}
	if j >= len(w.ts) || w.ts[j].kind != word {
		return reference.Called{}, 0
	}
	name := append([]string{w.keys[i]}, w.run(j)...)
	if c, m := w.r.begins(name); m > 1 && j+m-1 > i+n {
		return c, j + m - 1
	}
	return reference.Called{}, 0
}

// wholeName reports that a name is not cut out of the middle of words that mean
// something else: "butter dish", "cream-coloured".
func (w *weave) wholeName(from, to int) bool {
	if to < len(w.ts) && (w.ts.is(to, toolWords) || w.ts.is(to, vesselWords) && to-from == 1 && w.keys[from] != "sugar" && !(w.keys[to] == "size" && w.key(to+1) == "of")) {
		return false
	}
	if w.key(to) == "water" {
		return false // "ratafia water" is no ratafia
	}
	if to < len(w.ts) && strings.HasSuffix(w.ts[to].lead, "-") && !w.ts.participle(to) {
		return false // "sugar-plums"
	}
	if from > 0 && strings.HasSuffix(w.ts[from].lead, "-") && w.ts[from-1].kind == word && w.ts[from-1].opens.Aside == 0 && !w.ts.participle(from-1) && w.ts[from-1].opens.Name > 0 {
		return false // "dough-nuts"
	}
	for j := to; j < min(len(w.ts), to+4); j++ { // "a chicken or meat pie"
		switch {
		case w.ts[j].kind != word, j == to && w.keys[j] != "or":
			return true
		case w.ts.is(j, toolWords):
			return w.ts.is(j, dressings)
		}
	}
	return true
}

// dressings are words that a thing may be followed by which is put in itself.
var dressings = words("sauce thick bath mill")

var toolWords = words("flavour flavor flavouring flavoring jelly filling frosting icing mixture mints cake cakes pie pies pudding puddings tart tarts tartlets pasties dumplings sauce soup patties cheesecakes fritters spoon spoons whisk dish cloth paper cutter knife grater brush boat sieve coloured colored colour color cellar dredger bath thick mill")

// run are the keys from token i to the next mark, as many as a name may have.
func (w *weave) run(i int) []string {
	end := i
	for end < len(w.ts) && end < i+7 && w.ts[end].kind != mark {
		end++
	}
	return w.keys[i:end]
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
		if w.keys[j-1] == "and" && w.key(j) == "of" && w.nameFollows(j+1) { // "of milk and of coffee"
			j++
		}
		if _, n := stateAt(w.ts[j:]); n > 0 || number(w.ts[j:]).used > 0 {
			return to // the next has an amount of its own
		}
		if n, ok := w.r.partsWords(w.ts[j:]); ok && number(w.ts[j+n:]).used > 0 {
			return to // "the white of one egg"
		}
		i = j
	}
}
