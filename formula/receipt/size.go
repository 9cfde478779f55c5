package receipt

import (
	"strings"

	"assize/reference"
	"assize/reference/spell"
)

// likenesses are the ways of saying how big a piece is by a thing of its size.
var likenesses = []string{"size of", "bigness of", "bulk of", "as big as", "as large as", "about as big as", "so big as"}

var likeOpens = words("size bigness bulk as about so")

// likeness is a bigness found in a phrase.
type likeness struct {
	from, to int // tokens
	measure  string
	number   reference.Span
	named    bool // a likeness was named, though perhaps one that is not known
	thing    string
}

// likenessIn finds "the size of an egg", "as big as two walnuts", "walnut-sized".
func (r *Reader) likenessIn(ts phrase) (likeness, bool) {
	for i := range ts {
		for _, l := range likenesses {
			if !ts.is(i, likeOpens) {
				break
			}
			n := ts[i:].begins(l)
			if n == 0 {
				continue
			}
			found := r.likeThing(ts, i, i+n)
			for found.from > 0 && ts.is(found.from-1, likeBefore) {
				found.from--
			}
			if half := ts.key(found.from - 1); half == "half" {
				found.from--
				found.number = multiply(found.number, reference.Exact(ratio(one, two)))
			}
			return found, true
		}
		if k := ts.key(i); (k == "size" || k == "sized") && i > 0 {
			for w := min(3, i); w > 0; w-- {
				if m := r.sizeMeasure(ts[i-w : i]); m != "" {
					return likeness{from: i - w, to: i + 1, measure: m, number: reference.Exact(one), named: true}, true
				}
			}
		}
	}
	return likeness{}, false
}

var likeBefore = words("the of about nearly quite")

// likeThing reads the thing a piece is as big as, from token i on.
func (r *Reader) likeThing(ts phrase, from, i int) likeness {
	out := likeness{from: from, number: reference.Exact(one), named: true}
	if n := number(ts[i:]); n.used > 0 && n.err == nil {
		out.number = n.span
		i += n.used
	}
	for w := min(3, len(ts)-i); w > 0; w-- {
		if m := r.sizeMeasure(ts[i : i+w]); m != "" {
			out.measure, out.to = m, i+w
			return out
		}
	}
	out.thing, out.to = cut(ts[i:]).String(), len(ts)
	return out
}

// askSize lists the sizes that are known.
func (r *Reader) askSize(thing string) string {
	if r.quiet {
		return ""
	}
	var known []string
	for _, m := range r.Tables.MeasureNames() {
		if strings.HasPrefix(m, "size of ") {
			known = append(known, m)
		}
	}
	if hint := spell.Ask("size of a "+thing, known); hint != "" {
		return hint
	}
	return "give the weight instead"
}

// sizeMeasure finds the measure that is the bigness of a thing.
func (r *Reader) sizeMeasure(ts phrase) string {
	if !plainWords(ts) {
		return ""
	}
	name := ts.String()
	last := ts[len(ts)-1]
	for _, single := range append([]string{last.key}, singulars(last.key)...) {
		thing := strings.TrimSuffix(name, last.text) + single
		for _, article := range []string{"a ", "an "} {
			if m := "size of " + article + thing; len(r.Tables.MeasuresCalled(m)) > 0 {
				return r.measureName(m)
			}
		}
	}
	return ""
}

// ofBigness reads a piece given by its bigness: "butter the size of an egg", "a
// bit of butter as big as a walnut", "the size of a nutmeg of butter".
func (r *Reader) ofBigness(ts phrase) (found, bool) {
	l, ok := r.likenessIn(ts)
	if !ok {
		return found{}, false
	}
	before := trimMarks(ts[:l.from])
	a := amount{said: true, numbered: true, measured: true, from: ts[l.from].from}
	a.Number, a.Words = l.number, ts[l.from:l.to].String()
	// "a bit of", "two lumps of" before the name
	n := number(before)
	if n.used > 0 && n.err == nil && !n.article {
		a.Number = multiply(a.Number, n.span)
	} else {
		n.used = 0
	}
	used := n.used
	for _, p := range piece {
		if m := before[n.used:].begins(p); m > 0 && n.used+m > used {
			used = n.used + m
		}
	}
	if n.used > 0 && used == n.used && len(before) > used {
		return found{}, false // a number of something else: "2 eggs the size of ..."
	}
	if used > 0 {
		a.Words = before[:used].String() + " " + a.Words
	}
	name := before[used:]
	if name.key(0) == "of" {
		name = name[1:]
	}
	for len(name) > 0 && name.is(len(name)-1, likeBefore) {
		name = name[:len(name)-1]
	}
	after := ts[l.to:]
	if len(name) == 0 {
		for _, p := range piece { // "a walnut-sized piece of butter"
			if m := after.begins(p); m > 0 && after.key(m) == "of" {
				a.Words += " " + after[:m].String()
				after = after[m:]
				break
			}
		}
	}
	if len(name) == 0 && (after.key(0) == "of" || after.key(0) == "in") {
		name, after = after[1:], nil
	}
	if m, _ := r.amountAt(name); m.measured && m.Measure != "" {
		return found{}, false // the amount is given already: the bigness only explains it
	}
	if l.measure == "" {
		var f found
		f.trouble(ts[l.from].from, r.askSize(l.thing), "how big %q is, is not known", l.thing)
		return f, true
	}
	a.Measure, a.written = l.measure, l.measure
	return r.put(a, joined(trimMarks(name), trimMarks(after))), true
}
