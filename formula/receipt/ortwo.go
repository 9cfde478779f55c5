package receipt

// orTwo reads the other end of a number behind its name: "a blade of mace or
// two", "a pippin or three".
func (w *weave) orTwo(i int, m mention) (mention, bool) {
	if k := w.key(i); k != "a" && k != "an" && k != "one" || w.key(m.to) != "or" || m.to <= i+1 {
		return mention{}, false
	}
	n := number(w.ts[min(m.to+1, len(w.ts)):])
	end := m.to + 2
	if n.used != 1 || n.err != nil || !n.span.Likely.GreaterThan(one) || end < len(w.ts) && w.ts[end].kind != mark && w.key(end) != "and" && !w.ts.participle(end) {
		return mention{}, false
	}
	return w.reads(i, end, end, "one or "+w.say(m.to+1, end)+" "+w.say(i+1, m.to), "one or so many")
}
