package receipt

// orTwo reads the other end of a number behind its name: "a blade of mace or
// two", "a pippin or three", "three eggs or four".
func (w *weave) orTwo(i int, m mention) (mention, bool) {
	first := number(w.ts[i:])
	if first.used != 1 || first.err != nil || first.fraction || w.key(m.to) != "or" || m.to <= i+1 {
		return mention{}, false
	}
	n := number(w.ts[min(m.to+1, len(w.ts)):])
	end := m.to + 2
	if n.used != 1 || n.err != nil || n.fraction || !n.span.Likely.GreaterThan(first.span.Likely) || end < len(w.ts) && w.ts[end].kind != mark && w.key(end) != "and" && !w.ts.participle(end) {
		return mention{}, false
	}
	from := w.say(i, i+1)
	if first.article {
		from = "one"
	}
	return w.reads(i, end, end, from+" or "+w.say(m.to+1, end)+" "+w.say(i+1, m.to), "one number or the other")
}
