package receipt

// countingUnits are units of a list of fields that stand between number and
// name and are no measures.
var countingUnits = []struct {
	words string
	kind  unit
}{
	{"each", byCount}, {"unit", byCount}, {"units", byCount}, {"weight of eggs", byEggs},
}

// countingUnit reads a line in the manner of a list of fields: "2 each lemon,
// zest and juice", "4 weight-of-eggs sugar". "2 each of lemons and limes" is no
// such line: there "each" speaks of what follows.
func (r *Reader) countingUnit(ts phrase) (found, bool) {
	c := number(ts)
	if c.used == 0 || c.err != nil {
		return found{}, false
	}
	for _, u := range countingUnits {
		n := ts[c.used:].begins(u.words)
		if n == 0 || ts.key(c.used+n) == "of" {
			continue
		}
		a := amount{said: true, numbered: true, from: ts.column()}
		a.Number, a.Words = c.span, ts[:c.used+n].String()
		f := r.put(r.counting(a, u.kind), ts[c.used+n:])
		return f, f.clean()
	}
	return found{}, false
}
