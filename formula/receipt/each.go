package receipt

import "slices"

// each gives the same amount of each of several things.
func (r *Reader) each(f *found, a amount, ts phrase) {
	things, ok := r.things(f, ts)
	if !ok {
		return
	}
	r.peels(a, things)
	for _, th := range things {
		forms := th.rest
		th.rest = nil
		r.place(f, a, th, forms)
	}
}

// peels takes fruits by weight that stand among candied peels for peels themselves:
// "candied orange, lemon and citron, of each an ounce".
func (r *Reader) peels(a amount, things []thing) {
	i := slices.IndexFunc(things, func(th thing) bool { return th.ing != nil && th.ing.ID == candied })
	if i < 0 || !a.measured || a.Measure == "" || !r.isWeight(a.Measure) {
		return
	}
	for k := range things {
		if th := &things[k]; th.fruit != nil && th.part == "" && !slices.ContainsFunc(th.rest, func(p phrase) bool { return p.has(anyPart) }) {
			th.fruit, th.ing = nil, things[i].ing
		}
	}
}

// candied is the ingredient of the peels that are boiled in sugar.
const candied = "candied_peel"

// things reads a list of names joined by commas and "and". What follows a name
// and is no name itself is said of it.
func (r *Reader) things(f *found, ts phrase) ([]thing, bool) {
	var out []thing
	for _, c := range split(ts) {
		for _, p := range ands(c) {
			if len(p) == 0 {
				continue
			}
			if two, ok := r.sharedHead(p); ok {
				out = append(out, two...)
				continue
			}
			if pick, ok := r.choose(p); ok {
				if len(pick.or) > 0 {
					f.note("%q: taken as %s", p.String(), pick.things[0].name.String())
				}
				out = append(out, pick.things...)
				continue
			}
			if ofFruit(out, p) { // "lemons and limes, juice only" is said of both
				for i := range out {
					out[i].rest = append(out[i].rest[:len(out[i].rest):len(out[i].rest)], p)
				}
				continue
			}
			if len(out) > 0 && opensForm(p) {
				last := &out[len(out)-1]
				last.rest = append(last.rest[:len(last.rest):len(last.rest)], p)
				continue
			}
			r.unknown(f, p)
			return nil, false
		}
	}
	if len(out) == 0 {
		r.unknown(f, nil)
		return nil, false
	}
	return out, true
}

// sharedHead parts a name that stands for two things of one sort: "candied
// orange and lemon peel".
func (r *Reader) sharedHead(p phrase) ([]thing, bool) {
	for k := 1; k+1 < len(p); k++ {
		if p.key(k) != "and" {
			continue
		}
		a, okA := r.find(splice(p[:k], p[len(p)-1:]))
		b, okB := r.find(splice(p[:1], p[k+1:]))
		if okA && okB && a.ing != nil && b.ing != nil && k > 1 && len(a.rest)+len(b.rest) == 0 {
			left, whole := r.find(p[:k])
			right, too := r.find(p[k+1:])
			if whole && too && left.ing != nil && right.ing != nil && left.ing != a.ing && len(left.rest)+len(right.rest) == 0 {
				return []thing{left, right}, true // "corn meal and flour"
			}
			return []thing{a, b}, true
		}
	}
	for k := 1; k+1 < len(p); k++ {
		if p.key(k) != "and" {
			continue
		}
		a, okA := r.find(p[:k])
		b, okB := r.find(p[k+1:])
		if okA && okB && a.ing != nil && b.ing != nil && a.ing != b.ing && len(a.rest)+len(b.rest) == 0 { // "wine and brandy"
			return []thing{a, b}, true
		}
		if b, ok := r.find(splice(p[:1], p[k+1:])); ok && okA && k > 1 && a.ing != nil && b.ing == a.ing && a.ing.ID == candied && len(a.rest)+len(b.rest) == 0 { // "candied orange and citron"
			return []thing{a, b}, true
		}
	}
	return nil, false
}

// ofFruit reports words about a part of a fruit, said of nothing but fruit.
func ofFruit(things []thing, p phrase) bool {
	for _, th := range things {
		if th.fruit == nil {
			return false
		}
	}
	for i := range p {
		if fruitParts.of(p, i) != "" {
			return len(things) > 0
		}
	}
	return false
}

// ands parts a clause that is a list at its "and", where a name stands on both
// sides or the clause begins with it.
func ands(c phrase) []phrase {
	if c.key(0) == "and" {
		return []phrase{c[1:]}
	}
	return []phrase{c}
}

var eachWord = words("each")

// ofEach reads one amount for several things: "half a pound each of butter and
// sugar", "butter and sugar, of each half a pound", "flour and sugar, 4 oz each".
func (r *Reader) ofEach(ts phrase) (found, bool) {
	if !ts.has(eachWord) {
		return found{}, false
	}
	at := -1
	depth := 0
	for i := range ts {
		switch k := ts.key(i); {
		case k == "(":
			depth++
		case k == ")":
			depth--
		case k == "each" && depth == 0 && ts.key(i-1) != "to" && ts.key(i-1) != "for":
			at = i
		}
		if at >= 0 {
			break
		}
	}
	if at < 0 {
		return found{}, false
	}
	before, after := ts[:at], ts[at+1:]
	if k := before.key(len(before) - 1); k == "of" {
		before = before[:len(before)-1]
	}
	var f found
	lead := trimMarks(before)
	// "half a pound each of butter and sugar", "of each half a pound" by itself
	if a, n := r.amountAt(lead); n > 0 && n == len(lead) {
		if after.key(0) == "of" {
			after = after[1:]
		}
		r.each(&f, a, trimMarks(after))
		return f, true
	}
	rest := trimMarks(after)
	if a, n := r.amountAt(rest); n > 0 && len(lead) > 0 {
		r.each(&f, a, joined(lead, rest[n:]))
		return f, true
	}
	if a, n := r.amountAt(rest); n > 0 && len(lead) == 0 {
		if n < len(rest) { // "of each half a pound: butter, sugar"
			r.each(&f, a, trimMarks(rest[n:]))
			return f, true
		}
		f.trouble(ts.column(), "name the things on the same line: butter and sugar, of each half a pound", "\"of each\" leans on another line")
		return f, true
	}
	// "butter and sugar, 4 oz each"
	for k := len(lead) - 1; k > 0; k-- {
		a, n := r.amountAt(lead[k:])
		if n == 0 || n != len(lead)-k || r.startsInside(lead, k) {
			continue
		}
		names := trimMarks(lead[:k])
		if b, m := r.amountAt(names); m > 0 && b.numbered && !b.measured {
			// "6 eggs, 60 g each" are so many times the weight
			a.Number = multiply(a.Number, b.Number)
			a.Words = lead[:m].String() + ", " + a.Words + " each"
			f.add(r.put(a, joined(names[m:], rest)))
			return f, true
		}
		r.each(&f, a, joined(names, rest))
		return f, true
	}
	return found{}, false
}

// startsInside reports that an amount may begin before token k: the number
// itself was cut.
func (r *Reader) startsInside(ts phrase, k int) bool {
	for j := max(0, k-4); j < k; j++ {
		if _, n := r.amountAt(ts[j:]); n > k-j {
			return true
		}
	}
	return false
}

// trimMarks takes marks off both ends of a phrase.
func trimMarks(ts phrase) phrase {
	for len(ts) > 0 && ts[0].kind == mark && ts.key(0) != "(" {
		ts = ts[1:]
	}
	for len(ts) > 0 && ts[len(ts)-1].kind == mark && ts.key(len(ts)-1) != ")" {
		ts = ts[:len(ts)-1]
	}
	return ts
}

// comma is the mark set between phrases that are put together.
var comma = token{kind: mark, key: ",", text: ",", lead: "", id: entered(",")}

// joined puts one phrase after another with a mark between them.
func joined(a, b phrase) phrase {
	if len(b) == 0 {
		return a
	}
	return splice(splice(a, phrase{comma}), b)
}
