package receipt

import (
	"strings"
	"unicode"
)

// longestItem is the most characters one line of a list may well have.
const longestItem = 140

// itemRows tells which lines begin as a line of a list does.
func (p *page) itemRows(rows []row) []bool {
	out := make([]bool, len(rows))
	for i, w := range rows {
		if w.to-w.from > longestItem {
			continue
		}
		ts := unnumbered(p.tokens(w.from, w.to))
		out[i] = p.r.startsItem(ts) || len(ts) <= 6 && !ts.is(0, imperatives) && p.r.isName(trimMarks(ts)) || p.r.endsInAmount(ts)
	}
	return out
}

// isList tells a list from prose whose lines were broken by the page.
func (p *page) isList(rows []row, items []bool, inList bool, broken int) bool {
	n := 0
	for _, is := range items {
		if is {
			n++
		}
	}
	if len(rows) == 1 {
		return p.isListed(rows[0], items[0], inList)
	}
	if inList {
		return 3*n >= len(rows) && 2*broken <= len(rows)
	}
	return 5*n >= 3*len(rows) && 3*broken <= len(rows)
}

// broken counts the lines that the next one goes on from.
func (p *page) broken(rows []row) int {
	broken := 0
	for i, w := range rows {
		if i+1 < len(rows) && !marked(p.clear[w.from]) && !marked(p.clear[rows[i+1].from]) && goesOn(p.clear[w.from:w.to], p.clear[rows[i+1].from]) {
			broken++
		}
	}
	return broken
}

// isListed reports a line that stands alone and is one of a list.
func (p *page) isListed(w row, starts, inList bool) bool {
	ts := unnumbered(p.tokens(w.from, w.to))
	if inList {
		return countMarks(ts, ".") == 0 && len(ts) <= 40 && (starts || !ts.is(0, imperatives))
	}
	if !starts || countMarks(ts, ".")+countMarks(ts, ";") > 0 || severalAmounts(ts) {
		return false
	}
	l, troubles := p.r.silent().Line(p.words(w.from, w.to))
	return len(troubles) == 0 && len(l.Items) > 0 && !(p.clear[w.to-1] == '.' && len(ts) > 8)
}

// severalAmounts reports a line with a second amount in it, or with what may be
// taken instead: running words, though they begin as a list does.
func severalAmounts(ts phrase) bool {
	for _, c := range split(ts)[1:] {
		if n := number(c); n.used > 0 || c.key(0) == "or" {
			return true
		}
	}
	return false
}

// marked reports the sign a line of a list may begin with.
func marked(r rune) bool { return strings.ContainsRune("-–—•*·+", r) }

// goesOn reports a line of prose that the next one goes on from: it is long,
// ends in the middle of things, and the next begins in small letters.
func goesOn(line []rune, next rune) bool {
	const long = 45
	last := line[len(line)-1]
	return len(line) >= long && !strings.ContainsRune(".:", last) && (unicode.IsLower(next) || last == ',' && !unicode.IsDigit(next))
}

// unnumbered takes the mark or the number of a list off a line: "- 6 eggs",
// "1. Beat the eggs", "2) 6 eggs".
func unnumbered(ts phrase) phrase {
	ts = trimMarks(ts)
	if len(ts) > 2 && ts[0].kind == figure && !ts[0].vulgar && (ts[1].kind == mark && (ts.key(1) == "." || ts.key(1) == ")") || ts[1].kind != mark && strings.HasPrefix(ts[1].lead, ".")) {
		if ts[1].kind == mark {
			return ts[2:]
		}
		return ts[1:]
	}
	return ts
}

// startsItem reports words that begin as an ingredient line does: with an
// amount, a part of an egg or a fruit, or a way of giving no amount.
func (r *Reader) startsItem(ts phrase) bool {
	ts = trimMarks(ts)
	if len(ts) == 0 {
		return false
	}
	if c := number(ts); c.used > 0 && ts.is(c.used, timeUnits) {
		return false
	}
	if ts.is(0, imperatives) && !ts.is(0, orders) {
		return false
	}
	if _, n := stateAt(ts); n > 0 {
		return true
	}
	if a, n := r.amountAt(ts); n > 0 && (a.measured || a.numbered) {
		return true
	}
	_, ok := r.partsWords(ts)
	return ok
}

// mostOfRow is how many tokens a row of a table may have.
const mostOfRow = 10

// endsInAmount reports a row of a table: a name, and the amount at the end of the
// line.
func (r *Reader) endsInAmount(ts phrase) bool {
	ts = trimMarks(ts)
	if len(ts) < 2 || len(ts) > mostOfRow || ts.is(len(ts)-1, vesselWords) || number(ts).used > 0 { // "butter two tins"
		return false
	}
	if last := &ts[len(ts)-1]; last.kind != figure && last.opens.Measure == 0 && !last.is(amountOpens) {
		return false
	}
	for k := 1; k < len(ts); k++ {
		a, n := r.amountAt(ts[k:])
		if k+n < len(ts) || !a.numbered || a.article() && !a.measured || r.startsInside(ts, k) {
			continue
		}
		name := trimMarks(ts[:k])
		if _, ok := r.choose(name); ok && !name.has(stops) {
			return true
		}
	}
	return false
}

// isItem reports words that are an ingredient line with its amount.
func (r *Reader) isItem(ts phrase) bool {
	if !r.startsItem(ts) {
		return false
	}
	l, troubles := r.silent().read(trimMarks(ts))
	return len(troubles) == 0 && len(l.Items) > 0
}
