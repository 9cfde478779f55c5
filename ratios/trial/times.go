package trial

import (
	"bytes"
	"fmt"
	"math"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/file"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/reference"
)

// PrintedTime is a baking time as a work prints it, with the oven and what is
// needed to know how deep the mixture stands: a row of testdata/vectors/baking-times.yaml
// or of baking-times-apart.yaml, whose heads say what each column is.
type PrintedTime struct {
	ID      string     `yaml:"id"`
	What    string     `yaml:"what"`
	Done    string     `yaml:"done"`
	ML      float64    `yaml:"ml"`
	Width   float64    `yaml:"width_cm"`
	Set     float64    `yaml:"set_c"`
	Oven    float64    `yaml:"oven_c"`
	Start   float64    `yaml:"start_c"`
	Paste   float64    `yaml:"paste_cm"`
	Wall    float64    `yaml:"wall_cm"`
	Bath    bool       `yaml:"bath"`
	Batter  bool       `yaml:"batter"`
	Density float64    `yaml:"density"`
	Minutes [2]float64 `yaml:"minutes"`
	Work    string     `yaml:"work"`
	Locator string     `yaml:"locator"`
	Note    string     `yaml:"note"`
	// Page is the same as a formula file, where the amounts are told.
	Page yaml.Node `yaml:"page"`
}

// ReadTimes reads a file of printed baking times.
func ReadTimes(raw []byte) ([]PrintedTime, error) {
	var f struct {
		Rows []PrintedTime `yaml:"rows"`
	}
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	if err := dec.Decode(&f); err != nil {
		return nil, err
	}
	return f.Rows, nil
}

// Book is the middle of the printed time, minutes.
func (p *PrintedTime) Book() float64 { return (p.Minutes[0] + p.Minutes[1]) / 2 }

// Computed is how long it would take by its depth and its oven.
func (p *PrintedTime) Computed(t *reference.Tables) (oven.Minutes, error) {
	kind := formula.Filling
	if p.Batter {
		kind = formula.Cake
	}
	set := p.Set
	if set == 0 {
		d := oven.Done(t, kind, []string{"egg", "cheese"}, p.Done)
		if d.Set == nil {
			return oven.Minutes{}, fmt.Errorf("%s: nothing is known of when %q is done", p.ID, p.Done)
		}
		set = d.SetC().Likely
	}
	return oven.Bake{
		Depth: p.ML / (math.Pi / 4 * p.Width * p.Width), Width: p.Width, Set: set, Start: p.Start,
		Oven: p.Oven, Bath: p.Bath, Batter: p.Batter, Paste: p.Paste, Wall: p.Wall, Density: p.Density,
	}.Time(), nil
}

// Within reports that the printed time lies in the computed range.
func (p *PrintedTime) Within(m oven.Minutes) bool {
	return !m.Never && p.Book() >= m.Low && p.Book() <= m.High
}

// Chained is the time by the whole chain from the row's formula file: weighing,
// the air its method puts in, the dish, the depth, the oven. False when the row
// has none, or the chain comes to no time.
func (p *PrintedTime) Chained(t *reference.Tables, j *judge.Judge) (oven.Minutes, bool, error) {
	if p.Page.IsZero() {
		return oven.Minutes{}, false, nil
	}
	page, err := yaml.Marshal(&p.Page)
	if err != nil {
		return oven.Minutes{}, false, err
	}
	f, faults := file.Read(p.ID+".yaml", page, t)
	if err := faults.Err(); err != nil {
		return oven.Minutes{}, false, err
	}
	r, faults := j.Check(f)
	if err := faults.Err(); err != nil {
		return oven.Minutes{}, false, err
	}
	b := r.Parts[0].Baking
	if b == nil || b.Time.IsZero() && !b.Time.Never {
		return oven.Minutes{}, false, nil
	}
	return b.Time, true, nil
}

// ChainedTime is a published formula's printed time beside the one computed by the
// whole chain.
type ChainedTime struct {
	ID     string
	Baking *judge.Baking
}

// Within reports that the middle of the printed time lies in the computed range.
func (c *ChainedTime) Within() bool {
	t, book := c.Baking.Time, c.Baking.Book.Likely
	return !t.Never && book >= t.Low && book <= t.High
}

// ChainedTimes are the published formulas that name a dish whose size is known, an
// oven and a time, taken through the whole chain: volume, dish, depth, oven words,
// baking time.
func ChainedTimes(t *reference.Tables, j *judge.Judge) ([]ChainedTime, error) {
	var out []ChainedTime
	for i := range t.Published {
		p := &t.Published[i]
		if p.Dish == "" || p.Part != string(formula.Filling) && p.Part != string(formula.Cake) {
			continue
		}
		f, faults := Formula(p, t)
		if err := faults.Err(); err != nil {
			return nil, fmt.Errorf("%s: %w", p.ID, err)
		}
		r, faults := j.Check(f)
		if err := faults.Err(); err != nil {
			return nil, fmt.Errorf("%s: %w", p.ID, err)
		}
		b := r.Parts[0].Baking
		if b == nil || b.Book.IsZero() || b.Time.IsZero() && !b.Time.Never {
			continue
		}
		out = append(out, ChainedTime{p.ID, b})
	}
	return out, nil
}
