package receipt

import (
	"strings"
	"unicode/utf8"
)

// account refuses a reading that has lost a word. Every word of a line must
// stand in the name, the form or the amount of an item, or in a note; only the
// words that hold a line together ("of", "the", "and") may go. What no rule has
// a place for is not passed over in silence.
func (r *Reader) account(f *found, ts phrase) {
	if len(f.troubles) > 0 {
		return
	}
	var kept map[string]bool // every word that is kept, made when a look does not settle it
	for i := range ts {
		t := &ts[i]
		w := t.spelled()
		if t.kind == mark || w == "" || t.is(glue) || f.shows(t.text) {
			continue
		}
		if kept == nil {
			kept = r.keptWords(f)
		}
		if !kept[w] {
			f.trouble(t.from, "write how much, of what, and what is done to it: 4 oz butter, melted", "%q has no place in this line", t.text)
			return
		}
	}
}

// keptWords are the words and figures of what a reading came to.
func (r *Reader) keptWords(f *found) map[string]bool {
	kept := map[string]bool{}
	keep := func(s string) {
		for _, t := range r.tokens(s) {
			kept[t.spelled()] = true
		}
	}
	for _, it := range f.items {
		keep(it.Name)
		keep(it.Form)
		keep(it.Amount.Words)
	}
	for _, n := range f.notes {
		keep(n)
	}
	return kept
}

// shows reports that a word stands by itself in the name, the form or the amount
// of an item.
func (f *found) shows(w string) bool {
	for i := range f.items {
		it := &f.items[i]
		if standsIn(it.Name, w) || standsIn(it.Form, w) || standsIn(it.Amount.Words, w) {
			return true
		}
	}
	return false
}

// standsIn reports a word between spaces, or between a space and a comma.
func standsIn(s, w string) bool {
	for from := 0; ; {
		at := strings.Index(s[from:], w)
		if at < 0 {
			return false
		}
		at += from
		end := at + len(w)
		if (at == 0 || s[at-1] == ' ') && (end == len(s) || s[end] == ' ' || s[end] == ',' && end+1 < len(s) && s[end+1] == ' ') {
			return true
		}
		_, size := utf8.DecodeRuneInString(s[at:])
		from = at + size
	}
}

// spelled is a token as it is compared: a word by its key, a figure as it
// stands.
func (t *token) spelled() string {
	if t.kind == figure {
		return t.text
	}
	return t.key
}
