package trial

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/optimize"

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

// HeatBench makes ready the scored fillings that heat spoiled, and the good
// ones of the fit beside them.
func HeatBench(t *reference.Tables, rules bake.Rules) ([]HeatItem, error) {
	methods := receipt.NewMethodReader(t)
	labels := Labels(t, formula.Filling)
	var out []HeatItem
	for i := range t.Published {
		p := &t.Published[i]
		if p.Part != string(formula.Filling) {
			continue
		}
		spoiled := p.Scored && slices.Contains([]string{"heat", "formula-and-heat"}, p.Cause) &&
			slices.Contains([]string{"curdy", "thin", "rubbery"}, labels[p.Outcome])
		good := p.Fit && slices.Contains([]string{"sets", "starch-set"}, labels[p.Outcome])
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
	link := t.Links[i]
	indices := make([][]float64, len(items))
	for n, it := range items {
		readings.Each(it.Kernel, readings.Options{N: fitReadings, Seed: it.Seed}, func(out *bake.Outcome) {
			indices[n] = append(indices[n], out.Measures[bake.HeatIndex])
		})
	}
	objective := func(x []float64) float64 {
		a := (x[0] - float64(link.PriorMid)) / float64(link.PriorMidSD)
		b := (x[1] - math.Log(float64(link.PriorWidth))) / float64(link.PriorWidthSD)
		loss := (a*a + b*b) / 2
		for n, it := range items {
			p := 0.0
			for _, v := range indices[n] {
				p += 1 / (1 + math.Exp(-(v-x[0])/math.Exp(x[1]))) / fitReadings
			}
			if !it.Spoiled {
				p = 1 - p
			}
			loss -= math.Log(mislabelled + trusted*p)
		}
		return loss
	}
	result, err := optimize.Minimize(optimize.Problem{
		Func: objective,
		Grad: func(grad, x []float64) { fd.Gradient(grad, objective, x, &fd.Settings{Formula: fd.Central}) },
	}, []float64{float64(link.PriorMid), math.Log(float64(link.PriorWidth))}, &optimize.Settings{GradientThreshold: 1e-4, MajorIterations: 200}, &optimize.BFGS{})
	if err != nil && result == nil {
		return link, fmt.Errorf("fitting the heat link: %w", err)
	}
	link.Mid, link.Width = reference.Float(result.X[0]), reference.Float(math.Exp(result.X[1]))
	link.Cases = 0
	for _, it := range items {
		if it.Spoiled {
			link.Cases++
		}
	}
	return link, nil
}
