package receipt

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"assize/reference"
)

// The sides of an egg.
var eggSides = mapped(map[string]string{"yolk": yolk, "yolks": yolk, "yelk": yolk, "yelks": yolk, "white": white, "whites": white})

const yolk, white = "egg_yolk", "egg_white"

var eggWords = words("yolk yolks yelk yelks white whites")

// eggSidesFirst reads yolks and whites named before the eggs: "the yolks of
// eight eggs", "8 yolks and 6 whites of eggs", "the yolks of six and the whites
// of three eggs".
func (r *Reader) eggSidesFirst(ts phrase) (found, bool) {
	if f, ok := r.sidesOfEggs(ts); ok {
		return f, true
	}
	list, ok := portions(ts, eggWords)
	if !ok {
		return found{}, false
	}
	var f found
	eggs, known := thing{}, false
	for _, p := range list {
		if th, ok := r.find(first(p.name)); ok {
			if th.ing == nil || th.ing.Kind != "egg" {
				return found{}, false // "the whites of 3 leeks"
			}
			eggs, known = th, true
		}
	}
	for _, p := range list {
		if !known && len(p.name) > 0 {
			return found{}, false // "the yolks of 3" are of eggs; of what else is not said
		}
	}
	implied := !known
	if implied {
		eggs.ing, known = r.Tables.Ingredient(egg)
		eggs.name = phrase{plainWord("eggs", ts.column())}
	}
	if !known {
		return found{}, false
	}
	for _, p := range list {
		mine, forms := eggs, split(p.name)
		mine.rest = nil
		if len(forms) > 0 {
			if th, ok := r.find(forms[0]); ok {
				mine, forms = th, forms[1:]
			}
		}
		a := amount{said: true, numbered: true, from: ts.column()}
		a.Number, a.Words = p.number(list), p.head.String()
		if i := slices.IndexFunc(forms, ofThem); i >= 0 {
			a.Words += " " + forms[i].String()
			forms = slices.Delete(forms, i, i+1)
		}
		if !implied {
			a.Words += " " + mine.name.String()
		}
		sides := sidesIn(p.parts)
		forms, more := otherSide(forms, sides)
		if len(sides) == 2 { // "the yolks and whites of 4 eggs, beaten apart"
			r.place(&f, a, mine, append(split(p.parts), forms...))
			continue
		}
		r.side(&f, a, mine, sides[0], forms)
		if more != nil {
			b := a
			b.Number, b.Words = *more.count, more.words
			r.side(&f, b, mine, more.sides[0], nil)
		}
	}
	return f, true
}

// otherSide takes from what is said of yolks how many of the whites go in with
// them, or of whites how many yolks: "(leaving out all the whites but two)".
func otherSide(forms []phrase, sides []string) ([]phrase, *limited) {
	if len(sides) != 1 {
		return forms, nil
	}
	for i, c := range forms {
		if l, ok := limit(c); ok && !l.out && l.count != nil && l.sides[0] == other(sides[0]) {
			l.words = c.String()
			return slices.Delete(slices.Clone(forms), i, i+1), &l
		}
	}
	return forms, nil
}

// sidesIn lists the sides a phrase names, each once.
func sidesIn(ts phrase) []string {
	var out []string
	for i := range ts {
		if s := eggSides.of(ts, i); s != "" && (len(out) == 0 || len(out) == 1 && out[0] != s) {
			out = append(out, s)
		}
	}
	return out
}

// sidesOfEggs reads "8 yolks and 6 whites of eggs".
func (r *Reader) sidesOfEggs(ts phrase) (found, bool) {
	type part struct {
		head  phrase
		count reference.Span
		side  string
	}
	var parts []part
	i := 0
	for {
		from := i
		if ts.key(i) == "the" {
			i++
		}
		n := number(ts[i:])
		side := eggSides.of(ts, i+n.used)
		if n.used == 0 || n.err != nil || side == "" {
			return found{}, false
		}
		i += n.used + 1
		parts = append(parts, part{ts[from:i], n.span, side})
		if ts.key(i) == "and" || ts.key(i) == "," {
			i++
			continue
		}
		break
	}
	if ts.key(i) != "of" {
		return found{}, false
	}
	rest := split(ts[i+1:])
	if len(rest) == 0 {
		return found{}, false
	}
	eggs, ok := r.find(rest[0])
	if !ok || eggs.ing == nil || eggs.ing.Kind != "egg" {
		return found{}, false
	}
	var f found
	for _, p := range parts {
		a := amount{said: true, numbered: true, from: ts.column()}
		a.Number, a.Words = p.count, p.head.String()+" of "+eggs.name.String()
		r.side(&f, a, eggs, p.side, rest[1:])
	}
	return f, true
}

// side makes the item of yolks or whites.
func (r *Reader) side(f *found, a amount, eggs thing, side string, forms []phrase) {
	ing, ok := r.Tables.Ingredient(side)
	if c, known := r.named(sideNames[side]); known && c.Ingredient != nil {
		ing, ok = c.Ingredient, true
	}
	if !ok {
		f.trouble(eggs.name.column(), "", "the tables hold no row %q", side)
		return
	}
	th := eggs
	th.ing = ing
	if eggs.ing.ID != egg {
		f.note("%s of %s are taken as those of hens' eggs", sideNames[side]+"s", eggs.name.String())
	}
	forms = append(th.rest[:len(th.rest):len(th.rest)], forms...)
	forms = r.inForms(f, &a, forms)
	f.aside(th, forms)
	r.sizeInName(&a, eggs.name, "egg")
	r.setFill(f, &a)
	r.setSize(&a, "egg")
	a.Each = "egg"
	it := item(a, th, text(forms))
	it.Name = sideNames[side] + "s"
	if words := eggs.name.String(); words != "" && words != "eggs" && words != "egg" {
		it.Name += " of " + words
	}
	f.items = append(f.items, it)
}

var sideNames = map[string]string{yolk: "egg yolk", white: "egg white"}

// eggs makes the items of whole eggs, of which some whites or yolks may be left
// out: "10 eggs, leaving out 4 of the whites" are 10 yolks and 6 whites.
func (r *Reader) eggs(f *found, a amount, th thing, forms []phrase) {
	counts := map[string]reference.Span{yolk: a.Number, white: a.Number}
	var rest []phrase
	words := a.Words + " " + th.name.String()
	changed := false
	for _, c := range forms {
		l, ok := limit(c)
		if !ok {
			rest = append(rest, c)
			continue
		}
		if l.sides == nil {
			f.trouble(c.column(), "say how many yolks and how many whites", "%q can be taken two ways", c.String())
			return
		}
		for _, s := range l.sides {
			n := a.Number
			if l.times != nil {
				n = multiply(a.Number, *l.times)
			} else if l.count != nil {
				n = *l.count
			}
			switch {
			case l.out:
				counts[s] = reference.Span{Low: counts[s].Low.Sub(n.High), Likely: counts[s].Likely.Sub(n.Likely), High: counts[s].High.Sub(n.Low)}
			case l.more:
				counts[s] = counts[s].Add(n)
			default:
				counts[s] = n
				if l.count == nil && l.times == nil { // "whites only"
					counts[other(s)] = reference.Span{}
				}
			}
			if counts[s].Low.IsNegative() || n.Likely.GreaterThan(a.Number.Likely) && !l.more {
				f.trouble(c.column(), "check the figures", "%q is more than there are in %s %s", c.String(), a.Words, th.name.String())
				return
			}
		}
		changed = changed || !l.more
		words += ", " + c.String()
	}
	if !changed && len(rest) < len(forms) { // whole eggs, and some sides besides
		r.byNumber(f, a, th, rest)
		th.rest = nil
		for _, s := range []string{yolk, white} {
			if n := counts[s]; n.Likely.GreaterThan(a.Number.Likely) {
				b := a
				b.Words = words
				b.Number = reference.Span{Low: n.Low.Sub(a.Number.Low), Likely: n.Likely.Sub(a.Number.Likely), High: n.High.Sub(a.Number.High)}
				r.side(f, b, th, s, nil)
			}
		}
		return
	}
	if !changed {
		if a.Number.Likely.IsPositive() {
			r.byNumber(f, a, th, rest)
		}
		return
	}
	th.rest = nil
	total := ""
	for _, s := range []string{yolk, white} {
		n := counts[s]
		if !n.High.IsPositive() {
			continue
		}
		b := a
		b.Number, b.Words, b.fills = n, words, a.fills
		r.side(f, b, th, s, rest)
		if total != "" {
			total += " and "
		}
		total += many(n.Likely, sideNames[s])
	}
	if total == "" {
		f.trouble(th.name.column(), "check the figures", "nothing is left of the eggs")
		return
	}
	f.note("taken as %s", total)
}

// many is a number of things in words.
func many(n decimal.Decimal, thing string) string {
	if n.Equal(one) {
		return "1 " + thing
	}
	return fmt.Sprintf("%s %ss", n, thing)
}

func other(side string) string {
	if side == yolk {
		return white
	}
	return yolk
}

// limited is what a clause says of the yolks or whites of eggs.
type limited struct {
	sides []string
	count *reference.Span
	times *reference.Span // a share of the eggs' number: half the whites
	out   bool            // they are left out
	more  bool            // they are in addition
	words string          // as written, where they are wanted
}

var (
	leavesOut = words("leaving leave left omitting omit without wanting less except excepting minus no reserving taking out")
	onlyThese = words("only")
	allBut    = words("but except save excepting")
	extra     = words("extra more additional added besides also")
)

// limit reads a clause that says how many of the whites or yolks are used, or
// are not. Words about handling ("whites beaten to a froth") are no limit.
func limit(c phrase) (limited, bool) {
	if keptFor(c) {
		return limited{}, false
	}
	at := -1
	for i := range c {
		if eggSides.of(c, i) != "" {
			at = i
			break
		}
	}
	if at < 0 {
		return limited{}, false
	}
	l := limited{sides: sidesIn(c)}
	if len(l.sides) != 1 {
		return limited{}, false // "yolks and whites beaten apart"
	}
	l.out, l.more = c.has(leavesOut), c.has(extra)
	if !l.out && c.key(at+1) == "of" && (c.key(at+2) == "another" || c.key(at+2) == "a" && fractionSet.has(c.key(at+3)) && c.key(at+4) == "") {
		return limited{}, false // "two eggs, and the yolk of a third"
	}
	// How many: a number before ("4 of the whites", "half the whites") or after
	// ("the whites of two").
	for i := 0; i < at; i++ {
		n := number(c[i:])
		if n.used == 0 || n.err != nil || n.article {
			continue
		}
		span := n.span
		if n.fraction {
			l.times = &span
		} else {
			l.count = &span
		}
		break
	}
	if c.key(at+1) == "of" {
		if n := number(c[at+2:]); n.used > 0 && n.err == nil {
			span := n.span
			if l.count, l.times = &span, nil; n.fraction {
				l.count, l.times = nil, &span
			}
		}
	}
	if k := c.key(at + 1); l.count == nil && l.times == nil && (onlyThese.has(k) || k == "but") { // "of the whites only four"
		if n := number(c[at+2:]); n.used > 0 && n.err == nil && !n.article {
			span := n.span
			if l.count = &span; n.fraction {
				l.count, l.times = nil, &span
			}
		}
	}
	if k := c.key(at + 1); l.out && allBut.has(k) { // "leaving out all the whites but two"
		j := at + 2
		if c.key(j) == "for" {
			j++
		}
		if n := number(c[min(j, len(c)):]); n.used > 0 && n.err == nil && !n.article && !n.fraction {
			l.count, l.out = &n.span, false
		}
	}
	if k := c.key(0); (k == "and" || k == "with" || k == "plus") && l.count != nil && !l.out && !c.has(onlyThese) { // "and two whites" are two more
		if n := number(c[1:]); n.used > 0 && 1+n.used == at {
			l.more = true
		}
	}
	numbered := l.count != nil || l.times != nil
	return l, numbered || l.out || c.has(onlyThese) || len(c) == 1 // "3 eggs (yolks)"
}
