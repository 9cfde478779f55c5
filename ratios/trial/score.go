package trial

import (
	"math"
	"math/rand/v2"
	"strconv"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/baseline"
	"assize/ratios/readings"
	"assize/reference"
)

// scoreReadings is how many readings a score rests on.
const scoreReadings = 400

// Prediction is what one judge says of one formula.
type Prediction struct {
	Item   *Item
	Shares map[string]float64
	Best   string
	Heat   float64
}

// Names of the judges that are fitted.
const (
	Fitted     = "assize, links fitted on the rest"
	Regression = "regression"
)

// Judged is one judge's predictions for all items.
type Judged struct {
	Name        string
	Textures    []string
	Predictions []Prediction
}

// FoldOf puts a formula into the fold of the published table. Five folds keep
// sources and pairs together.
func FoldOf(p *reference.Published) string { return p.Fold }

// SourceOf puts a formula with those of its source, so that one source is left
// out at a time: where a texture has few cases, five folds may leave too few
// to fit on.
func SourceOf(p *reference.Published) string { return p.Source }

// DealtOut puts the formulas into five folds afresh, whole sources dealt out in
// an order that hangs on the seed: how far a score hangs on one division.
func DealtOut(items []*Item, seed uint64) func(*reference.Published) string {
	sources := groups(items, SourceOf)
	fold := map[string]string{}
	for i, n := range rand.New(rand.NewPCG(seed, 0)).Perm(len(sources)) {
		fold[sources[n]] = strconv.Itoa(i % 5)
	}
	return func(p *reference.Published) string { return fold[p.Source] }
}

// Evaluate runs the judge and both baselines over the items of a kind by
// cross-validation: each group, by FoldOf, SourceOf or DealtOut, is judged by
// links fitted on the others. The rule constants were made with all items in
// view, so the figures flatter the judge somewhat.
func Evaluate(t *reference.Tables, kind formula.Kind, items []*Item, group func(*reference.Published) string) ([]Judged, error) {
	textures := items[0].Kernel.Textures
	mine := Judged{Name: Fitted, Textures: textures}
	shipped := Judged{Name: "assize, links as shipped", Textures: textures}
	text := Judged{Name: "textbook rules", Textures: textures}
	logistic := Judged{Name: Regression, Textures: textures}
	for _, apart := range groups(items, group) {
		var train, test []*Item
		for _, it := range items {
			if group(it.Published) == apart {
				test = append(test, it)
			} else {
				train = append(train, it)
			}
		}
		links, err := Calibrate(t, string(kind), train)
		if err != nil {
			return nil, err
		}
		fitted := with(t, string(kind), links)
		reg, err := regression(textures, train)
		if err != nil {
			return nil, err
		}
		for _, it := range test {
			if err := mine.add(it, fitted); err != nil {
				return nil, err
			}
			if err := shipped.add(it, t); err != nil {
				return nil, err
			}
			v, err := baseline.Textbook(it.Input)
			if err != nil {
				return nil, err
			}
			text.Predictions = append(text.Predictions, Prediction{Item: it, Shares: map[string]float64{v.Texture: 1}, Best: v.Texture})
			f, err := baseline.Features(it.Input)
			if err != nil {
				return nil, err
			}
			s := reg.Shares(f)
			logistic.Predictions = append(logistic.Predictions, Prediction{Item: it, Shares: s, Best: Best(textures, s)})
		}
	}
	return []Judged{mine, shipped, text, logistic}, nil
}

func (j *Judged) add(it *Item, t *reference.Tables) error {
	in := it.Input
	in.Tables = t
	k, err := bake.Compile(in)
	if err != nil {
		return err
	}
	shares, heat := readings.Shares(k, readings.Options{N: scoreReadings, Seed: it.Seed})
	byID := map[string]float64{}
	for i, id := range k.Textures {
		byID[id] = shares[i]
	}
	j.Predictions = append(j.Predictions, Prediction{Item: it, Shares: byID, Best: Best(k.Textures, byID), Heat: heat})
	return nil
}

func regression(textures []string, train []*Item) (*baseline.Logistic, error) {
	var x [][]float64
	var labels []string
	for _, it := range train {
		f, err := baseline.Features(it.Input)
		if err != nil {
			return nil, err
		}
		x, labels = append(x, f), append(labels, it.Label)
	}
	return baseline.FitLogistic(textures, x, labels)
}

// Joined gives the predictions with some textures counted as one.
func (j *Judged) Joined(as map[string]string) Judged {
	name := func(id string) string {
		if to, ok := as[id]; ok {
			return to
		}
		return id
	}
	out := Judged{Name: j.Name}
	seen := map[string]bool{}
	for _, id := range j.Textures {
		if n := name(id); !seen[n] {
			seen[n] = true
			out.Textures = append(out.Textures, n)
		}
	}
	for _, p := range j.Predictions {
		shares := map[string]float64{}
		for id, s := range p.Shares {
			shares[name(id)] += s
		}
		it := *p.Item
		it.Label = name(it.Label)
		out.Predictions = append(out.Predictions, Prediction{Item: &it, Shares: shares, Best: Best(out.Textures, shares), Heat: p.Heat})
	}
	return out
}

// Accuracy is how many predictions were right, of how many.
func (j *Judged) Accuracy() (right, of int) {
	for _, p := range j.Predictions {
		if p.Best == p.Item.Label {
			right++
		}
	}
	return right, len(j.Predictions)
}

// Balanced is the mean, over the textures that occur, of the share found.
func (j *Judged) Balanced() float64 {
	found, seen := map[string]float64{}, map[string]float64{}
	for _, p := range j.Predictions {
		seen[p.Item.Label]++
		if p.Best == p.Item.Label {
			found[p.Item.Label]++
		}
	}
	sum := 0.0
	for id, n := range seen {
		sum += found[id] / n
	}
	return sum / float64(max(1, len(seen)))
}

// Flag is how well one texture is called at a threshold.
type Flag struct {
	Occurs, Called, Right int
	Brier, BaseBrier, ECE float64
}

// Flag scores one texture: called when its share reaches from.
func (j *Judged) Flag(texture string, from float64) Flag {
	var f Flag
	n := float64(len(j.Predictions))
	bins := make([][3]float64, 10) // count, sum of shares, seen
	for _, p := range j.Predictions {
		s, y := p.Shares[texture], 0.0
		if p.Item.Label == texture {
			f.Occurs, y = f.Occurs+1, 1
		}
		if s >= from {
			f.Called++
			if y == 1 {
				f.Right++
			}
		}
		f.Brier += (s - y) * (s - y) / n
		b := min(9, int(s*10))
		bins[b][0]++
		bins[b][1] += s
		bins[b][2] += y
	}
	base := float64(f.Occurs) / n
	f.BaseBrier = base * (1 - base)
	for _, b := range bins {
		if b[0] > 0 {
			f.ECE += b[0] / n * math.Abs(b[1]/b[0]-b[2]/b[0])
		}
	}
	return f
}

// FalseAlarms counts good formulas on which some fault's share reaches from.
// One that was complained of is not good, whatever its texture: too sour, too
// sweet.
func (j *Judged) FalseAlarms(good map[string]bool, from float64) (alarms, of int) {
	for _, p := range j.Predictions {
		if !good[p.Item.Label] || p.Item.Complaint {
			continue
		}
		of++
		for id, s := range p.Shares {
			if !good[id] && s >= from {
				alarms++
				break
			}
		}
	}
	return alarms, of
}

// Confusion counts predictions by label and best.
func (j *Judged) Confusion() map[string]map[string]int {
	out := map[string]map[string]int{}
	for _, p := range j.Predictions {
		if out[p.Item.Label] == nil {
			out[p.Item.Label] = map[string]int{}
		}
		out[p.Item.Label][p.Best]++
	}
	return out
}

// Wilson is the 95 per cent interval of a share (Wilson 1927).
func Wilson(right, of int) (low, high float64) {
	if of == 0 {
		return 0, 1
	}
	const z = 1.959964
	n := float64(of)
	p := float64(right) / n
	mid := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return mid - half, mid + half
}
