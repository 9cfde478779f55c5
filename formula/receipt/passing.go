package receipt

import (
	"slices"
)

// passFirst counts the tokens of a time, a vessel or a comparison, which are
// no amounts whatever they look like.
func (w *weave) passFirst(i int) int {
	ts := w.ts[i:]
	switch t := &ts[0]; {
	case t.kind == figure, t.opens.Measure > 0, t.is(passOpens):
	default:
		return 0
	}
	c := number(ts)
	if n := timeOf(ts, c); n > 0 {
		return n
	}
	if n := w.vesselAt(i, c.used); n > 0 {
		return n
	}
	if n := w.comparison(i); n > 0 {
		return n
	}
	if k := w.keys[i]; (k == "in" || k == "into") && i+1 < len(w.ts) { // "cut into two pieces"
		if c := number(ts[1:]); c.used > 0 {
			j := 1 + c.used
			for j < min(len(ts), c.used+4) && ts[j].kind == word && (ts[j].opens.Fill > 0 || ts[j].opens.Aside > 0) && !ts.is(j, pieces) {
				j++ // "into a long roll"
			}
			if (ts.is(j, pieces) || ts.is(j, formed)) && ts.key(j+1) != "of" {
				return j + 1
			}
			if ts.is(1+c.used, pieces) {
				return 2 + c.used
			}
		}
	}
	if c.used > 0 && ts.is(c.used, uncounted) {
		return c.used + 1
	}
	return 0
}

// passOpens are the words that open what passFirst passes, besides measures.
var passOpens = union(numberOpens, likened, words("as like in into"))

func (w *weave) pass(i int) int {
	if k := w.keys[i]; (k == "consisting" || k == "composed") && w.key(i+1) == "of" && len(w.found) > 0 && w.found[len(w.found)-1].how == withAmount {
		// "a spoonful of mixed spice, consisting of mace and cloves": it is weighed already
		j := i
		for j < len(w.ts) && (w.ts[j].kind != mark || w.ts[j].key != ";" && w.ts[j].key != ".") {
			j++
		}
		return j - i
	}
	return w.passFirst(i)
}

// uncounted are words that make no amount of a number before them.
var uncounted = words("times time inch inches thick degrees persons people turns folds foldings fold layers layer parts d s shillings pence")

// formed are the shapes that a paste or a dough is brought into.
var formed = words("roll rolls ball balls cake cakes loaf loaves bun buns biscuit biscuits ring rings round rounds sheet sheets oval ovals square squares")

var pieces = words("pieces parts slices halves quarters strips layers portions cakes rounds dice")

// vesselAt reads a vessel told by what it holds, behind a number of n tokens: "a
// quart basin", "pint mould".
func (w *weave) vesselAt(i, n int) int {
	ts := w.ts[i:]
	m := w.measureLen(i + n)
	if m == 0 {
		return 0
	}
	if ts.is(n+m, vesselWords) && ts.key(n+m) != "" {
		return n + m + 1
	}
	if ts.is(n+m-1, vesselWords) && ts.key(n+m) == "of" && !w.inList { // "over a basin of boiling water"
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
	case k == "as" && i+2 < len(ts) && ts.key(i+2) == "as" && !ts.is(i+1, howMuch):
		end = i + 3
	case ts.is(i, likened) && ts.key(i+1) == "of":
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
