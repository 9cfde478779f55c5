package receipt

import (
	"slices"
)

// juiceAlone takes a fruit, of which no part is named where it is put in, for its
// juice when the text has it squeezed and nowhere speaks of its rind but to leave it
// out.
func (m *making) juiceAlone() {
	if !slices.ContainsFunc(m.parts, func(p *portionOf) bool { return slices.ContainsFunc(p.lines, bothParts) }) {
		return
	}
	squeezed := false
	for _, ts := range m.seen {
		for i := range ts {
			squeezed = squeezed || ts.is(i, squeezing)
			if k := fruitParts.of(ts, i); k != "" && k != juice && !ts[max(0, i-4):i].has(leavesOut) || ts.is(i, wholeUses) {
				return
			}
		}
	}
	if !squeezed {
		return
	}
	for _, p := range m.parts {
		for i := range p.lines {
			l := &p.lines[i]
			if !bothParts(*l) {
				continue
			}
			text := l.line.Text
			if l.written != "" {
				text = l.written
			}
			line, troubles := m.r.silent().Line(text + ", the juice")
			if len(troubles) == 0 && len(line.Items) == 1 {
				l.line, l.written, l.note = line, text+", the juice", "it is squeezed, and its rind is not put in"
			}
		}
	}
}

// bothParts reports a line of a fruit that is taken for its juice and its rind.
func bothParts(l gathered) bool {
	return l.how == withAmount && len(l.line.Items) == 2 && l.line.Items[0].Form == juice && l.line.Items[1].Form == rind
}

var squeezing = words("squeeze squeezed squeezing")
