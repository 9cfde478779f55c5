package receipt

// shared reads a further fruit of which the same part is meant as of the one
// before it: "the juice of two lemons and three oranges".
func (w *weave) shared(i int) (mention, bool) {
	if len(w.found) == 0 {
		return mention{}, false
	}
	last := &w.found[len(w.found)-1]
	j := last.to
	if j < len(w.ts) && w.ts[j].kind == mark && w.ts[j].key == "," {
		j++
	}
	if last.how != withAmount || w.key(j) != "and" || j+1 != i {
		return mention{}, false
	}
	n, ok := w.r.partsWords(w.ts[last.from:])
	if !ok {
		return mention{}, false
	}
	from := last.from + n
	before, _ := w.nameAt(from+number(w.ts[from:]).used, false)
	fruit, to := w.nameAt(i+number(w.ts[i:]).used, false)
	if before.Fruit == nil || fruit.Fruit == nil || to == 0 {
		return mention{}, false
	}
	return w.reads(i, w.tail(to, true), to, w.say(last.from, from)+" "+w.say(i, to), "of the same part as of the fruit before it")
}
