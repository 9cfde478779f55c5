package receipt

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// unit is how a unit that is no measure of the tables is taken.
type unit int

const (
	byMeasure unit = iota
	byCount
	byParts
	byEggs
)

// units are the units of a list of fields that are no measures.
var units = map[string]unit{
	"": byCount, "each": byCount, "unit": byCount, "units": byCount, "whole": byCount, "piece": byCount, "pieces": byCount,
	"part": byParts, "parts": byParts, "percent": byParts, "per cent": byParts, "%": byParts,
	"weight of eggs": byEggs,
}

// Plain reads an ingredient given field by field. The text of the line is put
// together from the fields so that a cook can read it; columns of troubles
// count in it.
func (r *Reader) Plain(p Plain) (formula.Line, []Trouble) {
	p = Plain{strings.TrimSpace(p.Amount), strings.TrimSpace(p.Unit), strings.TrimSpace(p.Of), strings.TrimSpace(p.Form)}
	a, f := r.plainAmount(p)
	line := formula.Line{}
	before, name := r.plainWords(p, a)
	line.Text = before + name
	if p.Form != "" {
		line.Text += ", " + p.Form
	}
	if utf8.RuneCountInString(line.Text) > longestLine {
		f.trouble(1, "one ingredient a line", "the line is too long to be one ingredient")
	}
	if len(f.troubles) > 0 {
		return line, f.troubles
	}
	of := shifted(r.tokens(p.Of), utf8.RuneCountInString(before))
	form := shifted(r.tokens(p.Form), utf8.RuneCountInString(before+name+", "))
	if len(of) == 0 {
		f.trouble(1, "", "the line does not say what it is of")
		return line, f.troubles
	}
	a.from = 1
	g := r.fields(p, a, of, form)
	f.add(g)
	r.account(&f, joined(of, form))
	if c := r.hidden(g); c != nil && len(f.troubles) == 0 {
		f.note("%q is left as said of it, and not weighed", c.String())
	}
	if len(f.troubles) > 0 {
		return line, f.troubles
	}
	line.Items, line.Notes = f.items, f.notes
	return line, nil
}

// fields reads the name and form of a line given field by field.
func (r *Reader) fields(p Plain, a amount, of, form phrase) found {
	g := r.put(a, joined(of, form))
	if g.clean() || p.Amount != "" || units[unitKey(p.Unit)] != byCount {
		return g
	}
	// Everything may stand in the name: "juice of 2 lemons".
	if h := r.one(joined(of, form)); h.clean() {
		return h
	}
	return g
}

// shifted moves the columns of a phrase that stands further on in a text.
func shifted(ts phrase, by int) phrase {
	out := slices.Clone(ts)
	for i := range out {
		out[i].from += by
	}
	return out
}

func unitKey(u string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(u), func(r rune) bool { return r == ' ' || r == '-' || r == '_' || r == '.' }), " ")
}

// plainAmount reads the amount and unit fields.
func (r *Reader) plainAmount(p Plain) (amount, found) {
	var a amount
	var f found
	kind, special := units[unitKey(p.Unit)]
	if !special {
		ts := splice(phrase{plainWord("a", 1)}, r.tokens(p.Unit))
		b, n := r.amountAt(ts)
		if n != len(ts) || b.Measure == "" {
			hint := r.askMeasure(p.Unit)
			if hint == "" {
				hint = "`assize tables measures` lists those that are known"
			}
			f.trouble(1, hint, "unknown measure %q", p.Unit)
			return a, f
		}
		a = amount{measured: true, fills: b.fills, plural: b.plural}
		a.Measure, a.written = b.Measure, p.Unit
	}
	a.Words = p.Amount
	if kind != byCount || !special {
		a.Words = strings.TrimSpace(p.Amount + " " + p.Unit)
	}
	switch {
	case p.Amount == "" && pinches.has(a.Measure):
		a.Number, a.said, a.numbered = reference.Exact(one), true, true
		return a, f
	case p.Amount == "":
		a = amount{}
		if p.Unit != "" && kind != byCount {
			a.said, a.State, a.Words = true, formula.NotGiven, p.Unit
			f.note("no number is given: how much by the %s is not said", p.Unit)
		}
		return a, f
	}
	n, err := ParseNumber(p.Amount)
	if err != nil {
		ts := r.tokens(p.Amount)
		if b, used := r.amountAt(ts); used > 0 && used == len(ts) && p.Unit == "" && b.Measure != "" {
			f.add(b.found)
			b.found = found{}
			return b, f
		}
		if b, used := r.amountAt(ts); used > 0 && used == len(ts) && b.numbered && !b.measured && b.found.troubles == nil {
			a.Number, a.said, a.numbered, a.fills = b.Number, true, true, append(a.fills, b.fills...)
			return r.counting(a, kind), f
		}
		if s, used := stateAt(ts); used > 0 {
			a.said, a.State = true, s
			return a, f
		}
		f.trouble(1, "a figure, a fraction or a range: 2, 1/2, 2 to 3", "%s", err)
		return a, f
	}
	a.Number, a.said, a.numbered = n, true, true
	return r.counting(a, kind), f
}

// counting completes an amount whose unit is no measure.
func (r *Reader) counting(a amount, kind unit) amount {
	switch kind {
	case byParts:
		a.Parts, a.measured = true, true
	case byEggs:
		a.WeightOf, a.measured = "egg", true
	}
	return a
}

// plainWords is the amount and the name as they are shown.
func (r *Reader) plainWords(p Plain, a amount) (before, name string) {
	name = p.Of
	kind := units[unitKey(p.Unit)]
	many := a.Number.High.GreaterThan(decimal.NewFromInt(1))
	u := strings.ReplaceAll(p.Unit, "_", " ")
	switch {
	case p.Amount == "" && (p.Unit == "" || kind == byCount && p.Unit != ""):
		if p.Form == "" {
			name += ", quantity not given"
		}
		return "", name
	case p.Amount == "" && pinches.has(a.Measure):
		return "a " + u + " of ", name
	case p.Amount == "":
		return "", name + " by the " + u + ", quantity not given"
	case kind == byEggs:
		return "the weight of " + p.Amount + " eggs in ", name
	case kind == byParts && (u == "part" || u == "parts"):
		if many {
			return p.Amount + " parts ", name
		}
		return p.Amount + " part ", name
	case kind == byParts:
		return p.Amount + " per cent ", name
	case kind == byCount:
		ts := r.tokens(name)
		if m := r.measureAt(ts); many && !a.measured && (m == 0 || m == len(ts)) { // not of "3 rice bowls milk"
			name = plural(name)
		}
		return p.Amount + " ", name
	}
	if many && strings.ContainsAny(u, "aeiou") && !strings.Contains(u, " ") && len(u) > 2 && u != "oz" {
		u = plural(u)
	}
	return p.Amount + " " + u + " ", name
}

// plural is a plain English plural, for showing.
func plural(w string) string {
	last := w[strings.LastIndex(w, " ")+1:]
	switch {
	case last == "", strings.HasSuffix(last, "s") && last != "glass", strings.ContainsAny(w, ",("), strings.Contains(w, " of "), strings.Contains(w, " or "):
		return w
	case strings.HasSuffix(last, "y") && len(last) > 1 && !strings.ContainsRune("aeiou", rune(last[len(last)-2])):
		return w[:len(w)-1] + "ies"
	case strings.HasSuffix(last, "ch"), strings.HasSuffix(last, "sh"), strings.HasSuffix(last, "x"), strings.HasSuffix(last, "ss"), last == "potato", last == "mango", last == "tomato":
		return w + "es"
	}
	return w + "s"
}
