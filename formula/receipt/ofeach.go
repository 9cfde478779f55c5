package receipt

import (
	"strings"
)

// eachWords are those by which an amount is that of each of some things.
var eachWords = words("each either")

// ofEach reads "of each one glass: white wine, brandy and rose water".
func (w *weave) ofEach(i int) (mention, bool) {
	if w.keys[i] != "of" || w.key(i+1) != "each" {
		return mention{}, false
	}
	_, n := w.quiet.amountAt(w.ts[i+2:])
	if n == 0 {
		return mention{}, false
	}
	to := w.names(pastMarks(w.ts, i+2+n))
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, "", "")
}

// each reads "half a pound each of butter and sugar".
func (w *weave) each(i, j int) (mention, bool) {
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," && w.key(j+1) == "each" { // "a tablespoonful, each, of cloves and mace"
		j++
	}
	if w.key(j) == "of" && w.key(j+1) == "each" {
		j++
	}
	if w.key(j) != "each" {
		return mention{}, false
	}
	j++
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," && w.key(j+1) == "of" {
		j++
	}
	if w.key(j) == "of" {
		j++
	}
	to := w.names(j)
	if to == 0 {
		return mention{}, false
	}
	return w.reads(i, to, to, "", "")
}

// trailingEach finds "of each" behind a list of names.
func (w *weave) trailingEach(to int) int {
	if !w.shares {
		return 0
	}
	j := to
	for j < len(w.ts) && (w.keys[j] == "and" || w.ts[j].kind == mark && w.ts[j].key == ",") {
		j++
	}
	end := to
	if j > to {
		if e := w.names(j); e > 0 {
			end = e
		}
	}
	k := end
	if k < len(w.ts) && w.ts[k].kind == mark && w.ts[k].key == "," {
		k++
	}
	if w.key(k) == "of" {
		k++
	}
	if w.key(k) == "each" && w.key(k+1) != "of" {
		if _, n := w.quiet.amountAt(w.ts[min(len(w.ts), k+1):]); n > 0 {
			return 0 // "flour, butter and sugar each half a pound"
		}
		return k + 1
	}
	return 0
}

// eachAfter is where a list of names ends that has its amount behind it:
// "candied peel and citron, of each an ounce".
func (w *weave) eachAfter(i int) (to int, written string) {
	if !w.shares {
		return 0, ""
	}
	end := w.names(i)
	if m := w.saidBeforeEach(end); m > 0 { // "hot milk and coffee, made strong, each half a pint"
		if _, n := w.quiet.amountAt(w.ts[m:]); n > 0 {
			names := strings.ReplaceAll(w.say(i, end), " and of ", " and ")
			return m + n, w.say(m, m+n) + " each of " + names
		}
	}
	if said := w.tail(end, false); end > 0 && said > end { // "nutmeg and cloves finely ground 1 oz. each"
		if _, n := w.quiet.amountAt(w.ts[min(len(w.ts), said):]); n > 0 && w.key(said+n) == "each" {
			return said + n + 1, w.say(said, said+n) + " each of " + w.say(i, end)
		}
	}
	j := end
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	if w.key(j) == "of" {
		j++
	}
	if end > 0 && w.key(j) != "each" && w.key(j-1) != "of" { // "butter and flour, a pound of each"
		_, n := w.quiet.amountAt(w.ts[min(len(w.ts), j):])
		k := j + n
		if w.key(k) == "of" {
			k++
		}
		if n > 0 && (w.key(k) == "each" || w.key(k) == "either") && !w.nameFollows(k+1) {
			return k + 1, w.say(j, j+n) + " each of " + w.say(i, end)
		}
		return 0, ""
	}
	if end == 0 || w.key(j) != "each" {
		return 0, ""
	}
	_, n := w.quiet.amountAt(w.ts[min(len(w.ts), j+1):])
	if n == 0 {
		return 0, ""
	}
	return j + 1 + n, ""
}

// saidBeforeEach is where the amount begins behind a list of names, a clause
// about the last of them and "each"; 0 when it is not so worded.
func (w *weave) saidBeforeEach(end int) int {
	if end == 0 {
		return 0
	}
	j := w.aside(end)
	if j == end {
		if j = w.tail(end, false); j == end {
			return 0
		}
	}
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	if w.key(j) == "of" {
		j++
	}
	if w.key(j) != "each" || j+1 >= len(w.ts) {
		return 0
	}
	return j + 1
}
