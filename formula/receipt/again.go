package receipt

import (
	"assize/formula"
	"assize/reference"
)

// of is what a part was last taken of: the lemons whose rind was grated, the
// eggs whose whites were beaten. A later "the juice", "the yolks" is of these.
type of struct {
	things string // "three large lemons", "four eggs", with their number
	name   string // "large lemons"
	had    map[string]bool
	whole  bool // whole eggs were put in: their yolks are in already
}

// remember keeps what the parts of a mention are of.
func (w *weave) remember(m mention) { remember(m.line.Items, &w.eggs, &w.fruit) }

func remember(items []formula.Item, eggs, fruit *of) {
	for _, it := range items {
		a := it.Amount
		if a.State != formula.Stated || a.Each == "" || a.Measure != "" {
			continue
		}
		switch {
		case it.Ingredient == egg:
			eggs.whole = true
		case a.Each == "egg":
			if eggs.had == nil || eggs.had[it.Ingredient] {
				eggs.had = map[string]bool{}
			}
			eggs.things = spelled(a.Number) + " eggs"
			eggs.had[it.Ingredient] = true
		default:
			part, _ := fruitParts.get(firstWord(it.Form))
			if part == "" {
				continue
			}
			if fruit.had == nil || fruit.name != it.Name {
				fruit.had = map[string]bool{}
			}
			fruit.name, fruit.things = it.Name, spelled(a.Number)+" "+it.Name
			fruit.had[part] = true
		}
	}
}

func firstWord(s string) string {
	for i, r := range s {
		if r == ' ' || r == ',' {
			return s[:i]
		}
	}
	return s
}

// ofTheSame reads a part of what was met before: "the juice", "press the juice
// from the lemons", "squeeze it", "add the yolks", "the juice of three".
func (w *weave) ofTheSame(i int) (mention, bool) {
	ts := w.ts
	k := w.keys[i]
	if k == "squeeze" && w.fruit.had != nil && !w.fruit.had[juice] {
		if n := w.key(i + 1); n == "it" || n == "them" || n == "the" && w.isFruit(i+2) {
			return w.reads(i, i+2, i+2, "the juice of "+w.fruit.things, "of those whose rind was taken")
		}
	}
	j := i
	for j < len(ts) && j < i+4 && (w.keys[j] == "the" || w.ts.participle(j) && !w.ts.is(j, imperatives)) {
		j++
	}
	side, part := eggSides.of(w.ts, j), fruitParts.of(w.ts, j)
	if j == i && side == "" && part != juice {
		return mention{}, false
	}
	switch {
	case side != "" && w.eggs.things != "" && !w.eggs.whole && !w.eggs.had[side]:
		if w.key(j+1) == "of" && !w.pointsBack(j+2) || w.adviceAt(j) || w.key(j-1) == "no" {
			return mention{}, false
		}
		return w.reads(i, j+1, j+1, "the "+ts[j].text+" of "+w.eggs.things, "of the same eggs")
	case (part == juice || part == rind) && w.fruit.had != nil:
		to := j + 1
		if n := w.key(to); n == "of" || n == "from" {
			c := number(ts[to+1:])
			if c.used > 0 && !w.isFruit(to+1+c.used) {
				return w.reads(i, to+1+c.used, to+1+c.used, "the "+ts[j].text+" of "+ts[to+1:to+1+c.used].String()+" "+w.fruit.name, "of the same fruit")
			}
			if !w.pointsBack(to + 1) {
				return mention{}, false
			}
		}
		if w.fruit.had[part] || w.adviceAt(j) {
			return mention{}, false
		}
		if n := w.shareBefore(i); n != nil { // "grate one-half of the peel"
			if c := number(w.r.tokens(w.fruit.things)); c.used > 0 {
				return w.reads(i, to, to, "the "+ts[j].text+" of "+spelled(multiply(c.span, *n))+" "+w.fruit.name, "of those that were named before, in part")
			}
		}
		return w.reads(i, to, to, "the "+ts[j].text+" of "+w.fruit.things, "of those that were named before")
	}
	return mention{}, false
}

// shareBefore is the fraction that stands right before a token: "one-half of", "half".
func (w *weave) shareBefore(i int) *reference.Span {
	end := i
	if w.key(end-1) == "of" {
		end--
	}
	for k := max(0, end-3); k < end; k++ {
		if f := fraction(w.ts[k:]); f.used > 0 && f.err == nil && k+f.used == end {
			s := reference.Exact(f.value)
			return &s
		}
	}
	return nil
}

// pointsBack reports words for what was named before: "it", "them", "the
// lemons", "the eggs".
func (w *weave) pointsBack(i int) bool {
	switch w.key(i) {
	case "it", "them", "these", "those", "both":
		return true
	case "the":
		if n := number(w.ts[min(i+1, len(w.ts)):]); n.used > 0 && w.key(i+1+n.used) == "eggs" {
			return true // "the whites of the five eggs"
		}
		return w.key(i+1) == "same" || w.isFruit(i+1) || w.key(i+1) == "eggs"
	}
	return false
}

func (w *weave) isFruit(i int) bool {
	if i >= len(w.ts) {
		return false
	}
	c, n := w.nameAt(i, false)
	return n > 0 && c.Fruit != nil
}

// adviceAt reports a clause that speaks of what might be done.
func (w *weave) adviceAt(i int) bool { return w.clauseHas(i, i+1, adviceWords) }
