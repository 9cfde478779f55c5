package receipt

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// signed reads an amount in the apothecaries' signs, whose number stands behind
// the sign: "℥ij of ginger", "ʒ iv. of mace", "℥ss".
func (w *weave) signed(i int) (mention, bool) {
	r, _ := utf8.DecodeRuneInString(w.ts[i].text)
	measure := apothecaries[r]
	if measure == "" || !w.ts[i].old {
		return mention{}, false
	}
	j, number := i+1, "1"
	if j < len(w.ts) && w.ts[j].kind == figure {
		number, j = w.ts[j].text, j+1
	} else if n, ok := roman(w.key(j)); ok {
		number, j = n, j+1
	}
	if w.key(j) == "of" {
		j++
	}
	_, to := w.nameAt(j, false)
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, number+" "+measure+" of "+w.say(j, to), "the apothecaries' sign for "+measure)
}

// roman reads a small number as the apothecary writes it: "ij", "iv", "xii",
// and "ss" for a half, with a j for the last i.
func roman(s string) (string, bool) {
	value := 0
	rest, halved := strings.CutSuffix(strings.ReplaceAll(s, "j", "i"), "ss")
	for i := range len(rest) {
		n := numerals[rest[i]]
		if n == 0 {
			return "", false
		}
		if i+1 < len(rest) && numerals[rest[i+1]] > n {
			n = -n
		}
		value += n
	}
	switch {
	case value < 0, value == 0 && !halved:
		return "", false
	case value == 0:
		return "1/2", true
	case halved:
		return strconv.Itoa(value) + " 1/2", true
	}
	return strconv.Itoa(value), true
}

var numerals = map[byte]int{'i': 1, 'v': 5, 'x': 10, 'l': 50}

// signed reports a phrase with an apothecaries' sign in it.
func (p phrase) signed() bool {
	for i := range p {
		if r, _ := utf8.DecodeRuneInString(p[i].text); p[i].old && apothecaries[r] != "" {
			return true
		}
	}
	return false
}
