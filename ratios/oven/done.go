package oven

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// Doneness is how a cook tells that a thing is done. Set and Floor are kept
// apart: what has set is not thereby held fit to eat, and what has passed the
// floor need not have set.
type Doneness struct {
	Set   *reference.Doneness // nil when no row fits
	Floor *reference.Doneness // the authority's heat, nil for what holds neither egg nor meat
	// Under is set when it may be set under the floor, at the lowest heat that is
	// given for it: the dish must be carried on, or made with pasteurised egg.
	Under bool
	kind  formula.Kind
}

// Done finds the rows for a thing of a kind, by the roles of what it holds and
// by its class and its other names (title, part), in the order that counts. The
// safety floor applies to what holds egg or meat.
func Done(t *reference.Tables, kind formula.Kind, roles []string, names ...string) Doneness {
	d := Doneness{kind: kind}
	for _, name := range names {
		if d.Set = doneFor(t, kind, roles, name); d.Set != nil {
			break
		}
	}
	egg := slices.ContainsFunc(roles, func(r string) bool { return r == "egg" || r == "white" || r == "yolk" })
	meat := slices.Contains(roles, "meat")
	for i := range t.Doneness {
		r := &t.Doneness[i]
		if r.Floor && (egg && slices.Contains(r.For, "egg") || meat && slices.Contains(r.For, "meat")) {
			if d.Floor == nil || r.C.Likely.GreaterThan(d.Floor.C.Likely) {
				d.Floor = r
			}
		}
	}
	d.Under = d.Set != nil && d.Floor != nil && d.Set.C.Low.LessThan(d.Floor.C.Likely)
	return d
}

// doneFor is the row of the kind whose longest wording stands in a name.
func doneFor(t *reference.Tables, kind formula.Kind, roles []string, name string) *reference.Doneness {
	text := " " + reference.Key(strings.ReplaceAll(name, "-", " ")) + " "
	var best *reference.Doneness
	most := 0
	for i := range t.Doneness {
		r := &t.Doneness[i]
		lacks := len(r.Roles) > 0 && !slices.ContainsFunc(r.Roles, func(w string) bool { return slices.Contains(roles, w) })
		if r.Floor || r.Kind != string(kind) || lacks {
			continue
		}
		for _, w := range r.For {
			if k := reference.Key(w); len(k) > most && (strings.Contains(text, " "+k+" ") || strings.Contains(text, " "+k+"s ")) {
				best, most = r, len(k)
			}
		}
	}
	return best
}

// SetC is the heat at the centre when it is done, C, of the row found; of
// nothing found, that of things of its kind (judgement, over the rows of the
// table): an egg filling, a cake, a bread.
func (d Doneness) SetC() Range {
	switch {
	case d.Set != nil:
		return spanOf(d.Set.C, false)
	case d.kind == formula.Cake, d.kind == formula.Batter:
		return Range{93, 97, 100}
	case d.kind == formula.Bread:
		return Range{90, 95, 99}
	}
	return Range{75, 79, 85}
}
