package trial

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/optimize"

	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// fitReadings is how many readings a fit rests on.
const fitReadings = 200

// One label in thirty is taken as wrong: shares are squeezed to .03 + .94 p.
const mislabelled, trusted = .03, .94

// sample is a formula as the fit of one link sees it.
type sample struct {
	happened bool      // whether it had the link's texture
	weight   float64   // how much its outcome counts
	index    []float64 // the link's index in every reading
}

// sampled draws the readings of the formulas once, so that a fit only has to
// try link values on them: the samples of each link of the kind in its order.
// Links are taken in order, each of what the ones before have left, so a link
// is fitted on the formulas that had none of the textures before it. Formulas
// whose texture the links do not decide are left out.
func sampled(items []*Item) [][]sample {
	var out [][]sample
	for _, it := range items {
		label := slices.Index(it.Kernel.Textures, it.Label)
		if label < 0 {
			continue
		}
		links := it.Kernel.Links()
		drawn := make([]sample, len(links))
		fixed := false
		readings.Each(it.Kernel, readings.Options{N: fitReadings, Seed: it.Seed}, func(o *bake.Outcome) {
			for i, m := range links {
				drawn[i].index = append(drawn[i].index, o.Measures[m])
			}
			fixed = fixed || o.Fixed()
		})
		if fixed {
			continue
		}
		if out == nil {
			out = make([][]sample, len(links))
		}
		for i := range links[:min(label+1, len(links))] {
			drawn[i].happened, drawn[i].weight = i == label, weightOf(it.Published)
			out[i] = append(out[i], drawn[i])
		}
	}
	return out
}

// weightOf is how much an outcome counts: a doneness cue read from the process
// half as much as a tester's or the author's word.
func weightOf(p *reference.Published) float64 {
	if p.Evidence == "process" {
		return .5
	}
	return 1
}

// linksOf are the links of a kind in their order.
func linksOf(t *reference.Tables, kind string) []reference.Link {
	var out []reference.Link
	for order := 1; ; order++ {
		found := false
		for _, l := range t.Links {
			if l.Kind == kind && l.Order == order {
				out, found = append(out, l), true
			}
		}
		if !found {
			return out
		}
	}
}

// Calibrate fits the links of a kind to published formulas. The same formulas
// give the same values.
func Calibrate(t *reference.Tables, kind string, items []*Item) ([]reference.Link, error) {
	links := linksOf(t, kind)
	samples := sampled(items)
	if len(samples) != len(links) {
		return nil, fmt.Errorf("fitting the %s links: there are no formulas to fit them on", kind)
	}
	for i := range links {
		fitted, err := fitLink(links[i], samples[i])
		if err != nil {
			return nil, err
		}
		fitted.Cases = 0
		for _, it := range items {
			if it.Label == fitted.ID {
				fitted.Cases++
			}
		}
		fitted.MostlyPrior = fitted.Cases < fewCases
		links[i] = fitted
	}
	return links, nil
}

// fewCases is how many formulas with its texture a link needs to say more than
// its prior.
const fewCases = 5

// fitLink fits a link by penalised likelihood: the log of the mean share of
// what was seen, with Gaussian priors on the midpoint and on the log of the
// width.
func fitLink(l reference.Link, samples []sample) (reference.Link, error) {
	objective := func(x []float64) float64 {
		mid, width := x[0], math.Exp(x[1])
		a := (mid - float64(l.PriorMid)) / float64(l.PriorMidSD)
		b := (x[1] - math.Log(float64(l.PriorWidth))) / float64(l.PriorWidthSD)
		loss := (a*a + b*b) / 2
		for i := range samples {
			loss -= samples[i].weight * math.Log(mislabelled+trusted*samples[i].share(mid, width))
		}
		return loss
	}
	result, err := optimize.Minimize(optimize.Problem{
		Func: objective,
		Grad: func(grad, x []float64) { fd.Gradient(grad, objective, x, &fd.Settings{Formula: fd.Central}) },
	}, []float64{float64(l.PriorMid), math.Log(float64(l.PriorWidth))}, &optimize.Settings{GradientThreshold: 1e-4, MajorIterations: 300}, &optimize.BFGS{})
	if err != nil && result == nil {
		return l, fmt.Errorf("fitting the link %s: %w", l.ID, err)
	}
	l.Mid, l.Width = reference.Float(result.X[0]), reference.Float(math.Exp(result.X[1]))
	return l, nil
}

// share is the mean share, under a link, of what was seen.
func (s *sample) share(mid, width float64) float64 {
	sum := 0.0
	for _, x := range s.index {
		sum += 1 / (1 + math.Exp(-(x-mid)/width))
	}
	mean := sum / float64(len(s.index))
	if s.happened {
		return mean
	}
	return 1 - mean
}

// with gives tables in which the links of a kind are these.
func with(t *reference.Tables, kind string, links []reference.Link) *reference.Tables {
	out := *t
	out.Links = nil
	for _, l := range t.Links {
		if l.Kind != kind || l.Order == 0 {
			out.Links = append(out.Links, l)
		}
	}
	out.Links = append(out.Links, links...)
	return &out
}
