package receipt

import (
	"strings"

	"assize/formula"
	"assize/reference"
)

// The parts of a fruit.
const (
	juice      = "juice"
	rind       = "rind"
	flesh      = "flesh"
	wholeFruit = "whole"
)

// share is one part of a fruit that a line takes.
type share struct {
	part    string
	number  *reference.Span // how many fruits give it; that of the line when nil
	own     *amount         // how much of it, measured
	words   []string        // what else is said of it
	left    bool            // it is left out
	portion string          // the words of a share of the fruits: "rind of two thirds"
}

// fruit makes the items of a fruit: those parts that the words name, else the
// parts that are meant when nothing is said.
func (r *Reader) fruit(f *found, a amount, th thing, forms []phrase) {
	shares, rest, without := r.shares(a, forms)
	if th.part != "" {
		shares = append([]share{{part: th.part}}, shares...)
	}
	shares = merge(shares)
	f.aside(th, rest)
	switch {
	case len(shares) > 0:
	case without[rind]:
		shares = []share{{part: flesh}}
		f.note("taken as the flesh of %s", th.name.String())
	case uses(forms):
		shares = []share{{part: wholeFruit}}
		f.note("taken as the whole fruit")
	case a.measured && a.State == formula.Stated:
		shares = []share{{part: juice}}
		f.note("%s by measure is taken as its juice", th.name.String())
	default:
		var said []string
		for _, p := range th.fruit.Default {
			if without[p] {
				continue
			}
			shares = append(shares, share{part: p})
			said = append(said, defaultWords[p])
		}
		f.note("taken as %s", list(said))
	}
	for _, p := range r.whole(th.fruit, shares) {
		r.fruitPart(f, a, th, p, rest)
	}
}

var defaultWords = map[string]string{juice: "the juice", rind: "the grated rind", wholeFruit: "the whole fruit"}

// uses reports what is done to a fruit that leaves all of it in.
func uses(forms []phrase) bool {
	for _, c := range forms {
		if c.has(wholeUses) {
			return true
		}
	}
	return false
}

// fruitRow is where a part of a fruit is counted in the sizes table.
type fruitRow struct {
	share
	each     string
	readings []reference.NameReading
}

// whole turns parts into rows of the sizes table. A whole fruit is juice,
// flesh and rind with its pith; flesh by itself has its juice in it.
func (r *Reader) whole(fr *reference.Fruit, shares []share) []fruitRow {
	has := map[string]bool{}
	for _, s := range shares {
		has[s.part] = true
	}
	if has[wholeFruit] && has[rind] { // "grated whole, rind of two thirds"
		for i := range shares {
			if shares[i].part == wholeFruit {
				shares[i].part = flesh
			}
		}
	}
	var out []fruitRow
	for _, s := range shares {
		inner := s
		inner.words = nil
		switch {
		case s.part == juice:
			out = append(out, fruitRow{s, fr.ID, fr.Juice})
		case s.part == rind:
			out = append(out, fruitRow{s, fr.ID, fr.Rind})
		case s.part == flesh && (has[juice] || len(fr.Whole) == 0):
			out = append(out, fruitRow{s, fr.ID, fr.Whole})
		case s.part == flesh && r.counts("peeled-"+fr.ID):
			out = append(out, fruitRow{s, "peeled-" + fr.ID, fr.Whole})
		case s.part == flesh:
			inner.part = juice
			out = append(out, fruitRow{s, fr.ID, fr.Whole}, fruitRow{inner, fr.ID, fr.Juice})
		default:
			s.part = wholeFruit
			out = append(out, fruitRow{s, fr.ID, fr.Juice}, fruitRow{s, fr.ID, fr.Whole})
			if r.counts("whole-" + fr.ID) {
				out = append(out, fruitRow{s, "whole-" + fr.ID, fr.Rind})
			} else {
				out = append(out, fruitRow{s, fr.ID, fr.Rind})
			}
		}
	}
	return out
}

// counts reports whether the sizes table has things called so.
func (r *Reader) counts(each string) bool {
	for i := range r.Tables.Sizes {
		if r.Tables.Sizes[i].Each == each {
			return true
		}
	}
	return false
}

// fruitPart makes the item of one part.
func (r *Reader) fruitPart(f *found, a amount, th thing, p fruitRow, rest []phrase) {
	ing, ok := r.Tables.Reading(p.readings, r.kitchen())
	if !ok {
		f.trouble(th.name.column(), "give a weight or a measure of what is used", "the %s of %s is not in the tables", p.part, th.name.String())
		return
	}
	form := append([]string{p.part}, p.words...)
	if t := text(rest); t != "" {
		form = append(form, t)
	}
	th.ing = ing
	if p.own != nil {
		b := *p.own
		b.Words = strings.TrimSpace(a.Words + ", " + b.Words)
		f.note("%q is what counts, not the number of %s", p.own.Words, th.name.String())
		a = b
	}
	if a.State != formula.Stated || a.measured {
		r.weighed(f, a, th, nil)
		if n := len(f.items); n > 0 {
			f.items[n-1].Form = strings.Join(form, ", ")
		}
		return
	}
	if p.number != nil {
		a.Number = *p.number
	}
	if p.portion != "" {
		f.note("%q is taken as of the whole number", p.portion)
	}
	known := false
	for i := range r.Tables.Sizes {
		s := &r.Tables.Sizes[i]
		known = known || s.Each == p.each && r.kin(s.Of, ing)
	}
	if !known {
		f.trouble(th.name.column(), "give a weight or a measure", "how much is the %s of one %s?", p.part, th.name.String())
		return
	}
	a.Each = p.each
	r.sizeInName(&a, th.name, p.each)
	r.setFill(f, &a)
	r.setSize(&a, p.each)
	f.items = append(f.items, item(a, th, strings.Join(form, ", ")))
}

// shares reads which parts of a fruit the clauses name, and gives back the
// clauses and words that name none, and the parts that are left out.
func (r *Reader) shares(a amount, clauses []phrase) (out []share, rest []phrase, without map[string]bool) {
	without = map[string]bool{}
	for _, c := range clauses {
		var plain []phrase
		got := false
		for _, chunk := range chunks(c) {
			s, ok := r.share(a, chunk)
			if !ok {
				plain = append(plain, chunk)
				continue
			}
			got = true
			if s.left {
				without[s.part] = true
				plain = append(plain, chunk)
			} else {
				out = append(out, s)
			}
		}
		if !got {
			plain = []phrase{c}
		}
		rest = append(rest, plain...)
	}
	return out, rest, without
}

// chunks parts a clause at "and", but not within "rind and all".
func chunks(c phrase) []phrase {
	var out []phrase
	from := 0
	for i := range c {
		if c.key(i) == "and" && c.key(i+1) != "all" && i > from {
			out = append(out, c[from:i])
			from = i + 1
		}
	}
	return append(out, c[from:])
}

var (
	leftOut  = words("without no not leaving omitting")
	takenOff = words("off removed")
	pith     = words("pith")
)

// share reads one part: "grated rind", "juice", "rind of one", "150 ml juice",
// "rind and all", or a part that is left out.
func (r *Reader) share(a amount, c phrase) (share, bool) {
	if c.key(0) == "and" { // "juice of one lemon, and half the peel"
		c = c[1:]
	}
	at := -1
	for i := range c {
		if fruitParts.of(c, i) != "" {
			at = i
			if fruitParts.of(c, i) != wholeFruit { // "whole rind" is rind
				break
			}
		}
	}
	if at < 0 {
		return share{}, false
	}
	s := share{part: fruitParts.of(c, at)}
	if c[:at].has(leftOut) || c[at+1:].has(takenOff) && !c.has(pith) {
		s.left = true
		return s, true
	}
	if c.key(at+1) == "and" && c.key(at+2) == "all" {
		s.part = wholeFruit
	}
	if b, n := r.amountAt(c[:at]); n > 0 && b.Measure != "" && b.numbered {
		s.own = &b
		return s, true
	}
	if c.key(at+1) == "of" {
		if n := number(c[at+2:]); n.used > 0 && n.err == nil {
			span := n.span
			if n.fraction && ofA(c[at+2+n.used-1:]) == 0 && !a.measured && a.State == formula.Stated {
				span = multiply(a.Number, span)
				s.portion = c.String()
			}
			s.number = &span
		}
	} else if n := number(c[:at]); n.used > 0 && n.fraction && n.err == nil {
		span := multiply(a.Number, n.span)
		s.number, s.portion = &span, c.String()
	}
	// What else is said of it; its own name says nothing more.
	from := 0
	for from < at && (c.key(from) == "the" || c.key(from) == "and") {
		from++
	}
	switch {
	case c.key(at) != s.part && c.key(at) != s.part+"s":
		s.words = []string{c[from:].String()}
	case len(c) > from+1:
		s.words = []string{splice(c[from:at], c[at+1:]).String()}
	}
	return s, true
}

// merge joins shares of one part: "rind and peel".
func merge(shares []share) []share {
	var out []share
	for _, s := range shares {
		joined := false
		for i := range out {
			if out[i].part == s.part {
				out[i].words = append(out[i].words, s.words...)
				if s.number != nil {
					out[i].number = s.number
				}
				joined = true
			}
		}
		if !joined {
			out = append(out, s)
		}
	}
	return out
}

// fruitPartsFirst reads parts named before the fruit: "rind and juice of a lemon",
// "the juice of 4 lemons, the rinds of 2".
func (r *Reader) fruitPartsFirst(ts phrase) (found, bool) {
	list, ok := portions(ts, partWords)
	if !ok || list[0].parts.has(sugared) {
		return found{}, false
	}
	for _, p := range list {
		if r.measureAt(p.name) > 0 { // "lemon juice 90 ml"
			return found{}, false
		}
	}
	var f found
	th, known := thing{}, false
	for _, p := range list { // the name may stand with any one of them
		if t, ok := r.find(first(p.name)); ok {
			th, known = t, true
			break
		}
	}
	for _, p := range list {
		clauses := split(p.name)
		mine := th
		var forms []phrase
		back := "" // words for what was counted before
		if len(clauses) > 0 {
			if c, ok := r.choose(clauses[0]); ok && len(c.things) == 1 {
				mine, forms = c.things[0], clauses[1:]
				if len(c.or) > 0 {
					f.note("%q: taken as %s", clauses[0].String(), mine.name.String())
				}
			} else if known && ofThem(clauses[0]) {
				mine.rest, forms, back = nil, clauses[1:], " "+clauses[0].String()
			} else if opensForm(clauses[0]) && known {
				mine.rest, forms = nil, clauses
			} else {
				r.unknown(&f, clauses[0])
				return f, true
			}
		} else if !known {
			r.unknown(&f, nil)
			return f, true
		} else {
			mine.rest = nil
		}
		a := amount{said: true, numbered: true, from: ts.column()}
		a.Number, a.Words = p.number(list), p.head.String()+back
		parts := split(p.parts)
		if mine.fruit == nil {
			r.partOfOther(&f, a, mine, p.parts)
			continue
		}
		mine.rest = append(append([]phrase{}, parts...), mine.rest...)
		r.place(&f, a, mine, forms)
	}
	return f, true
}

// first is the first clause of a phrase.
func first(ts phrase) phrase {
	if c := split(ts); len(c) > 0 {
		return c[0]
	}
	return nil
}

// partOfOther reads the juice or rind of something the tables do not hold as a
// fruit, when the two together are a name: "the juice of 2 onions" is onion
// juice, if that were known.
func (r *Reader) partOfOther(f *found, a amount, th thing, parts phrase) {
	for i := range parts {
		if fruitParts.of(parts, i) == flesh && th.ing != nil { // "the grated meat of one cocoa-nut" is all of it that is used
			if _, ok := r.eachOf(th.ing, th.name); ok {
				r.place(f, a, th, []phrase{parts})
				return
			}
		}
	}
	for i := range parts {
		part := fruitParts.of(parts, i)
		if part == "" {
			continue
		}
		for _, single := range singulars(th.name.key(len(th.name) - 1)) {
			c, ok := r.named(single + " " + part)
			if !ok || c.Ingredient == nil || c.Ingredient == th.ing {
				continue
			}
			th.ing = c.Ingredient
			r.place(f, a, th, []phrase{parts})
			return
		}
	}
	named := juice
	for i := range parts {
		if p := fruitParts.of(parts, i); p != "" {
			named = p
		}
	}
	f.trouble(th.name.column(), "give a weight or a measure", "how much is the %s of one %s?", named, r.single(th.name))
}
