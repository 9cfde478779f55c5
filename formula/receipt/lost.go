package receipt

// account refuses a reading that has lost a word. Every word of a line must
// stand in the name, the form or the amount of an item, or in a note; only the
// words that hold a line together ("of", "the", "and") may go. What no rule has
// a place for is not passed over in silence.
func (r *Reader) account(f *found, ts phrase) {
	if len(f.troubles) > 0 {
		return
	}
	kept := wordSet{}
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
	for _, t := range ts {
		if w := t.spelled(); t.kind != mark && w != "" && !glue[w] && !kept[w] {
			f.trouble(t.from, "write how much, of what, and what is done to it: 4 oz butter, melted", "%q has no place in this line", t.text)
			return
		}
	}
}

// spelled is a token as it is compared: a word by its key, a figure as it
// stands.
func (t token) spelled() string {
	if t.kind == figure {
		return t.text
	}
	return t.key
}
