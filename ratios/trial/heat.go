package trial

import (
	"fmt"
	"slices"

	"assize/formula"
	"assize/formula/receipt"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// HeatItem is a filling for the heat caution: spoiled by heat, or good.
type HeatItem struct {
	*Item
	Spoiled bool
}

// spoiledByHeat tells whether an outcome is one that too much heat gave: it
// curdled, wheyed or toughened, and not by its formula alone or its dish. A
// mishandled fire is heat too; but what is grainy or lumpy may be so from a
// hundred causes, and counts only where heat is named. One that never set had
// too little heat: no caution against a fierce fire would have helped.
func spoiledByHeat(p *reference.Published) bool {
	if !p.Scored {
		return false
	}
	switch p.Cause {
	case "heat", "formula-and-heat":
		return slices.Contains([]string{"curdy", "weeps", "rubbery", "grainy"}, p.Outcome)
	case "handling":
		return slices.Contains([]string{"curdy", "weeps", "rubbery"}, p.Outcome)
	}
	return false
}

// HeatBench makes ready the scored fillings that heat spoiled, and the good
// ones of the fit beside them.
func HeatBench(t *reference.Tables, rules bake.Rules) ([]HeatItem, error) {
	methods := receipt.NewMethodReader(t)
	labels, complaints := Labels(t, formula.Filling), Complaints(t, formula.Filling)
	var out []HeatItem
	for i := range t.Published {
		p := &t.Published[i]
		if p.Part != string(formula.Filling) {
			continue
		}
		spoiled := spoiledByHeat(p)
		good := p.Fit && slices.Contains([]string{"sets", "starch-set"}, labels[p.Outcome]) && !complaints[p.Outcome]
		if !spoiled && !good {
			continue
		}
		it, err := ready(p, t, methods, rules)
		if err != nil {
			return nil, err
		}
		out = append(out, HeatItem{it, spoiled})
	}
	return out, nil
}

// CalibrateHeat fits the heat link: the chance of harm in careless hands.
func CalibrateHeat(t *reference.Tables, items []HeatItem) (reference.Link, error) {
	i := slices.IndexFunc(t.Links, func(l reference.Link) bool { return l.ID == "heat" })
	if i < 0 {
		return reference.Link{}, fmt.Errorf("the links table has no heat link")
	}
	samples := make([]sample, len(items))
	cases := 0
	for n, it := range items {
		s := &samples[n]
		s.happened, s.weight = it.Spoiled, weightOf(it.Published)
		readings.Each(it.Kernel, readings.Options{N: fitReadings, Seed: it.Seed}, func(out *bake.Outcome) {
			s.index = append(s.index, out.Measures[bake.HeatIndex])
		})
		if it.Spoiled {
			cases++
		}
	}
	link, err := fitLink(t.Links[i], samples)
	link.Cases = cases
	return link, err
}
