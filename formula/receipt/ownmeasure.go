package receipt

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// OwnMeasure reads a book's remark on a measure of its own: "this book's teacup
// is a gill", "the wineglass holds 2 fl oz". The other measure is one the table
// knows; which size of it holds follows the book's year and place. When the
// remark cannot be read, what is wrong with it comes back with a hint.
func OwnMeasure(text string, t *reference.Tables) (m formula.OwnMeasure, hint, what string) {
	const wanted = "write it as `this book's teacup is a gill`; keep other remarks in a comment"
	r := &Reader{Tables: t}
	ts := tokenizeLine(strings.TrimRight(strings.TrimSpace(text), "."), t)
	verb := slices.IndexFunc(ts, func(k token) bool { return slices.Contains(isWords, reference.Key(k.text)) })
	if verb <= 0 || verb+1 >= len(ts) {
		return m, wanted, fmt.Sprintf("%q is not read as a remark on a measure", text)
	}
	of, is := ts[:verb], ts[verb+1:]
	name := ""
	for i := range of {
		if n := r.measureAt(of[i:]); n > 0 && i+n == len(of) {
			name = r.measureName(of[i:].String())
			break
		}
	}
	if name == "" {
		ask := r.askMeasure(of[len(of)-1].text)
		if ask == "" {
			ask = "`assize tables measures` lists them"
		}
		return m, ask, fmt.Sprintf("%q is no measure the tables know", of.String())
	}
	n := number(is)
	if n.used == 0 || n.err != nil {
		return m, wanted, fmt.Sprintf("%q gives no amount", is.String())
	}
	rest := is[n.used:]
	used := r.measureAt(rest)
	if used == 0 {
		return m, "give it in a measure the tables know: a gill, 4 fl oz, 150 ml", fmt.Sprintf("%q is measured by nothing the tables know", is.String())
	}
	m = formula.OwnMeasure{Name: name, Number: n.span, Measure: r.measureName(rest[:used].String()), Words: text}
	if t.SameMeasure(m.Name, m.Measure) {
		return formula.OwnMeasure{}, wanted, fmt.Sprintf("a %s is said to be a %s", m.Name, m.Measure)
	}
	return m, "", ""
}

// isWords stand between a measure and what it holds.
var isWords = []string{"is", "was", "are", "holds", "held", "means", "meant", "contains", "equals"}
