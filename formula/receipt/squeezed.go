package receipt

import (
	"slices"
)

// partAlone takes a fruit, of which no part is named where it is put in, for its
// juice when the text has it squeezed and nowhere speaks of its rind but to leave it
// out, and for its rind when the text speaks of that alone.
func (m *making) partAlone() {
	if !slices.ContainsFunc(m.parts, func(p *portionOf) bool { return slices.ContainsFunc(p.lines, bothParts) }) {
		return
	}
	squeezed, grated := false, false
	for _, ts := range m.seen {
		for i := range ts {
			squeezed = squeezed || ts.is(i, squeezing) || fruitParts.of(ts, i) == juice
			grated = grated || ts.is(i, rindWords)
		}
	}
	only := juice
	switch {
	case grated && !squeezed:
		only = rind
	case !squeezed:
		return
	}
	for _, ts := range m.seen {
		for i := range ts {
			if only == rind {
				if fruitParts.of(ts, i) == flesh {
					return
				}
				continue
			}
			if k := fruitParts.of(ts, i); k != "" && k != juice && !(ts.is(i, sidesOfAll) && ts.key(i-1) != "the") && !ts[max(0, i-4):i].has(leavesOut) && !ts[max(0, i-4):i].has(noneWords) || ts.is(i, wholeUses) {
				return
			}
		}
	}
	part, why := "the juice", "it is squeezed, and its rind is not put in"
	if only == rind {
		part, why = "the rind", "its juice is nowhere spoken of"
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
			line, troubles := m.r.silent().Line(text + ", " + part)
			if len(troubles) == 0 && len(line.Items) == 1 {
				l.line, l.written, l.note = line, text+", "+part, why
			}
		}
	}
}

// bothParts reports a line of a fruit that is taken for its juice and its rind.
func bothParts(l gathered) bool {
	return l.how == withAmount && len(l.line.Items) == 2 && l.line.Items[0].Form == juice && l.line.Items[1].Form == rind
}

var noneWords = words("none nothing")

// sidesOfAll are said of a vessel as well as of a fruit: "butter them inside".
var sidesOfAll = words("inside outside whole")

var rindWords = words("rind rinds zest peel peels grated")

var squeezing = words("squeeze squeezed squeezing")
