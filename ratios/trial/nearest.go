package trial

import (
	"assize/formula"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/judge"
	"assize/reference"
)

// ClassFound is how often published formulas of a class are found nearest to
// it, by their proportions alone and with the words of their method.
type ClassFound struct {
	Kind             formula.Kind
	Era              string
	Of               int // formulas that share enough with their class
	First, FirstMade int // found nearest, by proportions; with the making
	Three, ThreeMade int // among the nearest three
}

// ClassesFound holds the distance of classes against the published formulas,
// whose classes are known. The ranges of a class rest on some of these works,
// so that the figures flatter the distance somewhat.
func ClassesFound(t *reference.Tables) []ClassFound {
	methods := receipt.NewMethodReader(t)
	var out []ClassFound
	for _, kind := range []formula.Kind{formula.Filling, formula.Pastry} {
		for _, era := range []string{"modern", "period"} {
			one := ClassFound{Kind: kind, Era: era}
			for i := range t.Published {
				one.count(&t.Published[i], t, methods)
			}
			out = append(out, one)
		}
	}
	return out
}

func (n *ClassFound) count(p *reference.Published, t *reference.Tables, methods *receipt.MethodReader) {
	c, ok := t.Class(p.Class)
	if !ok || p.Part != string(n.Kind) || c.Era != n.Era {
		return
	}
	f, faults := Formula(p, t)
	if len(faults) > 0 {
		return
	}
	w, faults := weigh.Weigh(f, t)
	if len(faults) > 0 {
		return
	}
	profile, method := ratios.ProfileOf(w, 0, t, ""), methods.Read(f, &f.Parts[0])
	place := func(m *formula.Method) int {
		for i, d := range judge.Distances(n.Kind, &profile, m, t, n.Era) {
			if d.Class == c {
				return i
			}
		}
		return -1
	}
	const three = 3
	alone, made := place(nil), place(&method)
	if alone < 0 {
		return
	}
	n.Of++
	for _, one := range []struct {
		at           int
		first, among *int
	}{{alone, &n.First, &n.Three}, {made, &n.FirstMade, &n.ThreeMade}} {
		if one.at == 0 {
			*one.first++
		}
		if one.at < three {
			*one.among++
		}
	}
}
