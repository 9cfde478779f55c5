package receipt

import (
	"assize/reference"
)

// portion is a stretch of a line that names parts before the thing they are
// of: "the grated rind of two lemons".
type portion struct {
	head  phrase // all up to the name: "the grated rind of two"
	parts phrase // "the grated rind"
	count counted
	name  phrase // what they are of, and what is said of it; empty when another says
}

// portions finds every stretch that names parts, by the words for them. ok is
// false unless the line begins with one.
func portions(ts phrase, parts wordSet) (out []portion, ok bool) {
	if !ts.has(parts) {
		return nil, false
	}
	var starts []int
	for i := range ts {
		if i > 0 && ts[i-1].kind != mark && ts.key(i-1) != "and" && ts.key(i-1) != "with" {
			continue
		}
		if _, _, ok := partsAt(ts[i:], parts); ok && (len(starts) == 0 || i > starts[len(starts)-1]) {
			if len(starts) == 0 && i > 0 {
				return nil, false
			}
			// "rind and juice of a lemon": the second part is no stretch of its own.
			if len(starts) > 0 {
				prev := starts[len(starts)-1]
				if n, _, _ := partsAt(ts[prev:], parts); prev+n > i {
					continue
				}
			}
			starts = append(starts, i)
		}
	}
	if len(starts) == 0 {
		return nil, false
	}
	for k, from := range starts {
		to := len(ts)
		if k+1 < len(starts) {
			to = starts[k+1] - 1
		}
		seg := ts[from:to]
		n, count, _ := partsAt(seg, parts)
		p := portion{head: seg[:n+count.used], parts: seg[:n], count: count, name: seg[n+count.used:]}
		if p.parts.key(len(p.parts)-1) == "of" || p.parts.key(len(p.parts)-1) == "from" {
			p.parts = p.parts[:len(p.parts)-1]
		}
		for len(p.name) > 0 && (p.name.key(len(p.name)-1) == "and" || p.name.key(len(p.name)-1) == "with" || p.name[len(p.name)-1].kind == mark && p.name.key(len(p.name)-1) != ")") {
			p.name = p.name[:len(p.name)-1]
		}
		out = append(out, p)
	}
	return out, true
}

// number is how many things the parts are of. A share of no thing named, "the whites
// of half", is of the number that another stretch gives.
func (p *portion) number(of []portion) reference.Span {
	if p.count.fraction && (len(p.name) == 0 || ofThem(p.name)) {
		for i := range of {
			if !of[i].count.fraction {
				return multiply(of[i].count.span, p.count.span)
			}
		}
	}
	return p.count.span
}

// ofThem reports words that only point back to what was counted before.
func ofThem(ts phrase) bool {
	n := 0
	if ts.key(0) == "of" {
		n = 1
	}
	switch ts.key(n) {
	case "them", "these", "those":
		return n+1 == len(ts)
	case "that", "the":
		return n+2 == len(ts) && (ts.key(n+1) == "number" || ts.key(n+1) == "quantity")
	}
	return false
}

// longestParts is how many words the naming of parts may take: "the very thin
// yellow rind and the strained juice of".
const longestParts = 12

// partsAt reads parts up to the number of the things they are of, and how many
// tokens stand before that number.
func partsAt(ts phrase, parts wordSet) (int, counted, bool) {
	named := false
	for i := 0; i < min(len(ts), longestParts); i++ {
		k := ts.key(i)
		switch {
		case ts[i].kind == mark && k != ",":
			return 0, counted{}, false
		case named && (k == "of" || k == "from"):
			j := i + 1
			if ts.key(j) == "but" || ts.key(j) == "only" {
				j++
			}
			if n := number(ts[j:]); n.used > 0 && n.err == nil {
				return j, n, true
			}
			return 0, counted{}, false
		case named && ts.is(i-1, parts) && (ts[i].kind == figure || k != "a" && k != "an" && number(ts[i:]).used > 0):
			if n := number(ts[i:]); n.used > 0 && n.err == nil && timeAt(ts[i:]) == 0 { // "beat the yolks half an hour"
				return i, n, true
			}
			return 0, counted{}, false
		case named && k != "a" && k != "an" && k != "half" && number(ts[i:]).used > 0:
			return 0, counted{}, false // "yolks and whites apart, quarter of a pound of almonds"
		case ts.is(i, parts):
			named = true
		case !named && number(ts[i:]).used > 0:
			return 0, counted{}, false // "4 oranges, juice": the number stands first
		}
	}
	return 0, counted{}, false
}
