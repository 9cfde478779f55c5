package trial

import (
	"fmt"
	"math"

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

// sample is an item as the fit sees it: the indices of every reading.
type sample struct {
	label   int // place of the label among the textures
	weight  float64
	indices [][]float64 // by reading, by link
}

// sampled draws the readings of the items once, so that a fit only has to try
// link values on them. Items whose texture the links do not decide are left out.
func sampled(items []*Item) []sample {
	var out []sample
	for _, it := range items {
		s := sample{label: -1, weight: weightOf(it.Published)}
		for i, id := range it.Kernel.Textures {
			if id == it.Label {
				s.label = i
			}
		}
		if s.label < 0 {
			continue
		}
		links := it.Kernel.Links()
		fixed := false
		readings.Each(it.Kernel, readings.Options{N: fitReadings, Seed: it.Seed}, func(out *bake.Outcome) {
			row := make([]float64, len(links))
			for i, m := range links {
				row[i] = out.Measures[m]
			}
			fixed = fixed || out.Fixed()
			s.indices = append(s.indices, row)
		})
		if !fixed {
			out = append(out, s)
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

// Calibrate fits the links of a kind to items by penalised likelihood: the log
// of the mean share of each observed texture, with Gaussian priors on each
// midpoint and on the log of each width. The same items give the same values.
func Calibrate(t *reference.Tables, kind string, items []*Item) ([]reference.Link, error) {
	links := linksOf(t, kind)
	samples := sampled(items)
	objective := func(x []float64) float64 {
		loss := 0.0
		for i, l := range links {
			a := (x[2*i] - float64(l.PriorMid)) / float64(l.PriorMidSD)
			b := (x[2*i+1] - math.Log(float64(l.PriorWidth))) / float64(l.PriorWidthSD)
			loss += (a*a + b*b) / 2
		}
		mid, width := make([]float64, len(links)), make([]float64, len(links))
		for i := range links {
			mid[i], width[i] = x[2*i], math.Exp(x[2*i+1])
		}
		for i := range samples {
			loss -= samples[i].weight * math.Log(mislabelled+trusted*samples[i].share(mid, width))
		}
		return loss
	}
	start := make([]float64, 2*len(links))
	for i, l := range links {
		start[2*i], start[2*i+1] = float64(l.PriorMid), math.Log(float64(l.PriorWidth))
	}
	problem := optimize.Problem{
		Func: objective,
		Grad: func(grad, x []float64) { fd.Gradient(grad, objective, x, &fd.Settings{Formula: fd.Central}) },
	}
	result, err := optimize.Minimize(problem, start, &optimize.Settings{GradientThreshold: 1e-4, MajorIterations: 300}, &optimize.BFGS{})
	if err != nil && result == nil {
		return nil, fmt.Errorf("fitting the %s links: %w", kind, err)
	}
	for i := range links {
		links[i].Mid = reference.Float(result.X[2*i])
		links[i].Width = reference.Float(math.Exp(result.X[2*i+1]))
		links[i].Cases = 0
		for _, it := range items {
			if it.Label == links[i].ID {
				links[i].Cases++
			}
		}
		links[i].MostlyPrior = links[i].Cases < 5
	}
	return links, nil
}

// share is the mean share of the sample's label under the links.
func (s *sample) share(mid, width []float64) float64 {
	sum := 0.0
	for _, row := range s.indices {
		left := 1.0
		for i := range mid {
			p := 1 / (1 + math.Exp(-(row[i]-mid[i])/width[i]))
			if i == s.label {
				left *= p
				break
			}
			left *= 1 - p
		}
		sum += left
	}
	return sum / float64(len(s.indices))
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
