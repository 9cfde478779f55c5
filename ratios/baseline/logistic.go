package baseline

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/optimize"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
)

// Logistic is a multinomial regression on raw ratios and method words,
// standardised, with an L2 penalty of 1.
type Logistic struct {
	Classes     []string
	mean, scale []float64
	weights     [][]float64 // by class, intercept first
}

// Features are what the regression sees of a part.
func Features(in bake.Input) ([]float64, error) {
	k, err := bake.Compile(in)
	if err != nil {
		return nil, err
	}
	m := k.LikelyMix()
	flag := func(yes bool) float64 {
		if yes {
			return 1
		}
		return 0
	}
	method := &in.Method
	total := max(m[ratios.Total], 1e-9)
	if in.Weighed.Parts[in.Part].Of.Kind == formula.Pastry {
		flour := max(m.FlourAndMeal()+m[ratios.Nut], 1e-9)
		return []float64{
			m[ratios.WrittenFat] / flour, min(1, m[ratios.NamedWater]/flour), m[ratios.Sugar] / flour, m.EggMass() / flour,
			flag(method.Has("laminated", "folded_turns", "flakes")), flag(m[ratios.Oil] > 0), flag(method.Has("hot_water")),
		}, nil
	}
	fire := bake.FireOf(method)
	return []float64{
		m.EggMass() / total, m[ratios.Sugar] / total, m[ratios.Fat] / total, m.FlourAndMeal() / total,
		math.Log(1 + m[ratios.FreeLiquid]/max(m.EggMass(), 1)),
		flag(method.Has("whites_folded")), flag(method.Has("starch_boiled")), flag(fire.Stove),
	}, nil
}

// FitLogistic fits the regression. The same samples give the same weights.
func FitLogistic(classes []string, features [][]float64, labels []string) (*Logistic, error) {
	if len(features) == 0 {
		return nil, fmt.Errorf("nothing to fit a regression on")
	}
	l := &Logistic{Classes: classes}
	l.standardise(features)
	at := map[string]int{}
	for i, c := range classes {
		at[c] = i
	}
	width := len(features[0]) + 1
	x := make([][]float64, len(features))
	for i, f := range features {
		x[i] = l.scaled(f)
	}
	problem := optimize.Problem{
		Func: func(w []float64) float64 { return l.loss(w, width, x, labels, at, nil) },
		Grad: func(grad, w []float64) { l.loss(w, width, x, labels, at, grad) },
	}
	result, err := optimize.Minimize(problem, make([]float64, width*len(classes)), &optimize.Settings{GradientThreshold: 1e-4, MajorIterations: 500}, &optimize.LBFGS{})
	if err != nil && result == nil {
		return nil, fmt.Errorf("fitting the regression: %w", err)
	}
	for c := range classes {
		l.weights = append(l.weights, result.X[c*width:(c+1)*width])
	}
	return l, nil
}

func (l *Logistic) standardise(features [][]float64) {
	n := float64(len(features))
	l.mean, l.scale = make([]float64, len(features[0])), make([]float64, len(features[0]))
	for j := range l.mean {
		for _, f := range features {
			l.mean[j] += f[j] / n
		}
		for _, f := range features {
			l.scale[j] += (f[j] - l.mean[j]) * (f[j] - l.mean[j]) / n
		}
		l.scale[j] = math.Sqrt(l.scale[j])
		if l.scale[j] == 0 {
			l.scale[j] = 1
		}
	}
}

// scaled puts a 1 before the standardised features, for the intercept.
func (l *Logistic) scaled(f []float64) []float64 {
	out := make([]float64, len(f)+1)
	out[0] = 1
	for j := range f {
		out[j+1] = (f[j] - l.mean[j]) / l.scale[j]
	}
	return out
}

// loss is the penalised negative log likelihood; grad is filled when given.
func (l *Logistic) loss(w []float64, width int, x [][]float64, labels []string, at map[string]int, grad []float64) float64 {
	sum := 0.0
	for i := range grad {
		grad[i] = 0
	}
	for c := range l.Classes {
		for j := 1; j < width; j++ { // the intercept is free
			v := w[c*width+j]
			sum += v * v / 2
			if grad != nil {
				grad[c*width+j] += v
			}
		}
	}
	p := make([]float64, len(l.Classes))
	for i, row := range x {
		softmax(p, w, width, row)
		label := at[labels[i]]
		sum -= math.Log(max(p[label], 1e-300))
		for c := 0; grad != nil && c < len(p); c++ {
			d := p[c]
			if c == label {
				d--
			}
			for j := range row {
				grad[c*width+j] += d * row[j]
			}
		}
	}
	return sum
}

func softmax(p, w []float64, width int, row []float64) {
	top, sum := math.Inf(-1), 0.0
	for c := range p {
		p[c] = 0
		for j, v := range row {
			p[c] += w[c*width+j] * v
		}
		top = max(top, p[c])
	}
	for c := range p {
		p[c] = math.Exp(p[c] - top)
		sum += p[c]
	}
	for c := range p {
		p[c] /= sum
	}
}

// Shares are the probabilities of the classes for a part.
func (l *Logistic) Shares(features []float64) map[string]float64 {
	p := make([]float64, len(l.Classes))
	flat := make([]float64, 0, len(p)*len(l.weights[0]))
	for _, w := range l.weights {
		flat = append(flat, w...)
	}
	softmax(p, flat, len(l.weights[0]), l.scaled(features))
	out := map[string]float64{}
	for i, c := range l.Classes {
		out[c] = p[i]
	}
	return out
}
