package receipt

import (
	"strings"

	"github.com/shopspring/decimal"

	"assize/reference"
)

// weightOf reads amounts given as what so many eggs weigh: "the weight of four
// eggs in butter", "the weight of 5 eggs in flour, of 8 in sugar", and after
// the eggs themselves "their weight in butter, sugar and flour".
func (r *Reader) weightOf(ts phrase) (found, bool) {
	if !ts.has(weightWords) {
		return found{}, false
	}
	var f found
	eggs := false // known to be eggs from what stands before
	count := reference.Span{}
	i := 0
	if at := theirWeight(ts); at > 0 {
		before := ts[:at]
		if before.key(at-1) == "and" {
			before = before[:at-1]
		}
		a, n := r.amountAt(before)
		th, ok := r.find(first(before[n:]))
		if n == 0 || a.measured || !ok || th.ing == nil || th.ing.ID != egg {
			return found{}, false
		}
		f.add(r.put(a, before[n:]))
		eggs, count, i = true, a.Number, at
	}
	begun := false
	for i < len(ts) {
		for i < len(ts) && (ts[i].kind == mark || begun && ts.key(i) == "and") {
			i++
		}
		from := i
		n, times, own := weightHead(ts[i:], begun || eggs)
		if n == 0 {
			break
		}
		i += n
		a := amount{said: true, numbered: true, measured: true, from: ts.column()}
		if own {
			a.Number = count
		} else {
			c := number(ts[i:])
			if c.used == 0 {
				return found{}, false
			}
			if c.err != nil {
				f.trouble(ts[i].from, "", "%s", c.err)
				return f, true
			}
			a.Number = c.span
			i += c.used
			end := i
			for end < len(ts) && ts.key(end) != "in" && ts.key(end) != "of" && ts[end].kind != mark {
				end++
			}
			if end > i {
				th, ok := r.find(ts[i:end])
				if !ok || th.ing == nil || th.ing.ID != egg {
					f.trouble(ts[i].from, "write the weight itself: 8 oz", "what %q weigh is not known", ts[i:end].String())
					return f, true
				}
				eggs = true
			} else if !eggs {
				return found{}, false
			}
			i = end
		}
		a.Number = multiply(a.Number, reference.Exact(times))
		a.WeightOf, a.Words = "egg", ts[from:i].String()
		if k := ts.key(i); k == "in" || k == "of" {
			i++
		}
		end := i
		for end < len(ts) {
			if n, _, _ := weightHead(ts[end:], true); n > 0 && (end == 0 || ts[end-1].kind == mark || ts.key(end-1) == "and") {
				break
			}
			end++
		}
		things := trimMarks(ts[i:end])
		if things.key(len(things)-1) == "and" {
			things = things[:len(things)-1]
		}
		r.each(&f, a, things)
		i, begun = end, true
	}
	return f, begun
}

var weightWords = words("weight")

// theirWeight finds "their weight in" after things that are named before it.
func theirWeight(ts phrase) int {
	if n, _, _ := weightHead(ts, false); n > 0 {
		return 0
	}
	for i := 1; i < len(ts); i++ {
		if n := ts[i:].begins("their weight"); n > 0 {
			if k := ts.key(i + n); k == "in" || k == "of" || k == "each" {
				return i
			}
		}
		if ts[i:].begins("the weight of") > 0 && ts[i-1].kind == mark {
			return i
		}
	}
	return 0
}

// weightHead reads "the weight of", "half the weight of" up to the number, or
// "their weight", which has none. After one of them a bare "of" goes on.
func weightHead(ts phrase, begun bool) (n int, times decimal.Decimal, own bool) {
	times = one
	i := 0
	if f := fraction(ts); f.used > 0 && f.err == nil && (ts.key(f.used) == "the" || ts.key(f.used) == "their") {
		times, i = f.value, f.used
	}
	for _, w := range []string{"the weight of", "weight of", "the same weight as", "the weight"} {
		if n := ts[i:].begins(w); n > 0 {
			if w == "the weight" {
				return 0, one, false
			}
			return i + n, times, false
		}
	}
	if n := ts[i:].begins("their weight"); n > 0 && begun {
		i += n
		for ts.key(i) == "each" || ts.key(i) == "of" {
			i++
		}
		return i, times, true
	}
	if begun && ts.key(0) == "of" {
		if c := number(ts[1:]); c.used > 0 && ts.key(1+c.used) == "in" {
			return 1, one, false
		}
	}
	return 0, one, false
}

var (
	ditto       = words("ditto")
	leanOrDitto = union(ditto, leansBy.set)
)

// leansBy are the ways of leaning on another line by their first word.
var leansBy = func() wordMap[[]string] {
	out := map[string][]string{}
	for _, w := range leaning {
		first, _, _ := strings.Cut(w, " ")
		out[first] = append(out[first], w)
	}
	return mapped(out)
}()

// leans reports a line that gives its amount by another: "their weight in
// sugar".
func (r *Reader) leans(ts phrase) (found, bool) {
	if !ts.has(leanOrDitto) {
		return found{}, false
	}
	clauses := split(ts)
	if len(clauses) > 0 {
		if a, n := r.amountAt(clauses[0]); n > 0 && a.numbered {
			clauses = clauses[:1] // "1 pint milk and cream, equal parts" has its amount
		}
	}
	if ts.has(ditto) {
		var f found
		f.trouble(ts.column(), "write the name again", "\"ditto\" leans on another line")
		return f, true
	}
	for _, c := range clauses {
		for _, w := range leansBy.of(c, 0) {
			n := c.begins(w)
			if n == 0 || c.key(n) == "as" || c.key(n) == "will" || w == "do" && n == len(c) {
				continue
			}
			var f found
			f.trouble(c.column(), "write the weight itself: 8 oz, or \"the weight of 4 eggs in sugar\"", "%q leans on another line", c[:n].String())
			return f, true
		}
	}
	return found{}, false
}
