package trial

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"

	"gopkg.in/yaml.v3"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// Yield is a published filling with what it makes by volume, as
// testdata/vectors/filling-yields.yaml has it; the rule by which a yield is
// usable stands there.
type Yield struct {
	ID        string     `yaml:"id"`
	Published string     `yaml:"published"`
	Year      int        `yaml:"year"`
	Place     string     `yaml:"place"`
	Kind      string     `yaml:"kind"`
	Lines     []string   `yaml:"lines"`
	Method    []string   `yaml:"method"`
	ML        [2]float64 `yaml:"ml"` // least and most told
	Told      string     `yaml:"told"`
	Usable    string     `yaml:"usable"`  // plain | about | no
	Liquid    float64    `yaml:"liquid"`  // ml put in as liquid, where it comes to the yield
	Aerated   bool       `yaml:"aerated"` // air is beaten in that stays
	Source    string     `yaml:"source"`
	Locator   string     `yaml:"locator"`
	How       string     `yaml:"how"`
	Why       string     `yaml:"why"` // which point of the rule fails
}

// ReadYields reads a file of published yields.
func ReadYields(raw []byte) ([]Yield, error) {
	var f struct {
		Rows []Yield `yaml:"rows"`
	}
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	if err := dec.Decode(&f); err != nil {
		return nil, err
	}
	return f.Rows, nil
}

// Reckoned is a yield beside what is reckoned.
type Reckoned struct {
	*Yield
	ML   readings.Span
	In   float64 // grams put in
	Left float64 // grams left when steam has gone off
	// Off is how far the likely volume lies outside what is told, a share; 0
	// inside a range.
	Off float64
}

// Near is how far off, a share, a reckoned volume may lie.
const Near = .15

// Lightest and Heaviest are the densities, g/ml, beyond which no filling
// without air can lie, with room to spare: butter alone weighs .91, a syrup that
// crystallises on cooling 1.35.
const Lightest, Heaviest = .9, 1.4

// Cannot says why the yield told, or the nearest of a range, cannot be that of
// what is put in and left; empty when it can.
func (r *Reckoned) Cannot() string {
	least, most := r.Left/r.Yield.ML[1], r.In/r.Yield.ML[0]
	switch {
	case r.Liquid >= r.Yield.ML[1] && r.Liquid > 0:
		return fmt.Sprintf("the liquid alone is %.0f ml", r.Liquid)
	case least > Heaviest:
		return fmt.Sprintf("%.0f g would weigh %.2f g/ml", r.Left, least)
	case most < Lightest && !r.Aerated:
		return fmt.Sprintf("%.0f g would weigh %.2f g/ml", r.In, most)
	}
	return ""
}

// Within reports whether what is reckoned lies near what is told.
func (r *Reckoned) Within() bool { return r.Off >= -Near && r.Off <= Near }

var (
	toldCups = regexp.MustCompile(`(?:(\d+) )?(\d)/(\d) cups?\b|(\d+) cups?\b`)
	toldJars = regexp.MustCompile(`(\d+) (?:half-pint )?jars?\b`)
)

// Grain is how finely a yield is told, ml: cups in wholes and halves by the half
// cup, in quarters and thirds by those, jars by the jar. 0 where it is told
// otherwise.
func (y *Yield) Grain() float64 {
	const cup = 236.6
	if m := toldJars.FindStringSubmatch(y.Told); m != nil {
		n, err := strconv.Atoi(m[1])
		if err != nil || n == 0 {
			return 0
		}
		return y.ML[1] / float64(n)
	}
	m := toldCups.FindStringSubmatch(y.Told)
	switch {
	case m == nil:
		return 0
	case m[3] == "3":
		return cup / 3
	case m[3] == "4":
		return cup / 4
	}
	return cup / 2
}

// WithinGrain reports whether what is reckoned lies near what the figure told may
// stand for, half its grain either way.
func (r *Reckoned) WithinGrain() bool {
	half, v := r.Grain()/2, r.ML.Likely
	return v >= (1-Near)*(r.Yield.ML[0]-half) && v <= (1+Near)*(r.Yield.ML[1]+half)
}

// YieldCount counts the yields of one way of telling.
type YieldCount struct {
	Within, Possible, Cannot int
	// WithinGrain are those possible that lie within by WithinGrain.
	WithinGrain int
	// WithinOfAll are those within of the ones that cannot be as well.
	WithinOfAll int
}

// Count counts yields told in a way: plain, about, or no.
func Count(all []Reckoned, usable string) YieldCount {
	var c YieldCount
	for i := range all {
		r := &all[i]
		if r.Usable != usable {
			continue
		}
		can := r.Cannot() == ""
		if can {
			c.Possible++
			if r.WithinGrain() {
				c.WithinGrain++
			}
		} else {
			c.Cannot++
		}
		if r.Within() {
			c.WithinOfAll++
			if can {
				c.Within++
			}
		}
	}
	return c
}

// Yields reckons the volume of every filling.
func Yields(t *reference.Tables, rows []Yield) ([]Reckoned, error) {
	methods := receipt.NewMethodReader(t)
	var out []Reckoned
	for i := range rows {
		y := &rows[i]
		in, err := y.input(t, methods)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", y.ID, err)
		}
		k, err := bake.Compile(in)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", y.ID, err)
		}
		r := readings.Run(k, readings.Options{N: 400, Seed: readings.SeedOf(y.ID)})
		one := Reckoned{
			Yield: y, ML: r.Measures[bake.Volume],
			In:   in.Weighed.Parts[0].Total(in.Weighed.Unknowns).Likely.InexactFloat64(),
			Left: r.Measures[bake.Density].Likely * r.Measures[bake.Volume].Likely,
		}
		switch v := one.ML.Likely; {
		case v < y.ML[0]:
			one.Off = v/y.ML[0] - 1
		case v > y.ML[1]:
			one.Off = v/y.ML[1] - 1
		}
		out = append(out, one)
	}
	return out, nil
}

func (y *Yield) input(t *reference.Tables, methods *receipt.MethodReader) (bake.Input, error) {
	p := reference.Published{ID: y.ID, Title: y.ID, Year: y.Year, Place: y.Place, Part: y.Kind, Method: y.Method}
	if y.Published != "" {
		found := false
		for i := range t.Published {
			if t.Published[i].ID == y.Published {
				p, found = t.Published[i], true
			}
		}
		if !found {
			return bake.Input{}, fmt.Errorf("no published formula %q", y.Published)
		}
	}
	text, err := y.page(&p)
	if err != nil {
		return bake.Input{}, err
	}
	f, faults := file.Read(y.ID+".yaml", text, t)
	if len(faults) > 0 {
		return bake.Input{}, faults
	}
	w, faults := weigh.Weigh(f, t)
	if len(faults) > 0 {
		return bake.Input{}, faults
	}
	return bake.Input{Weighed: w, Tables: t, Rules: bake.Standard, Method: methods.Read(f, &f.Parts[0])}, nil
}

// page writes the filling as a formula file.
func (y *Yield) page(p *reference.Published) ([]byte, error) {
	if y.Published != "" {
		return file.PublishedPage(p)
	}
	type part struct {
		Kind   string   `yaml:"kind"`
		Lines  []string `yaml:"lines"`
		Method []string `yaml:"method,omitempty"`
	}
	type kitchen struct {
		Year  int    `yaml:"year"`
		Place string `yaml:"place"`
	}
	return yaml.Marshal(struct {
		Title   string  `yaml:"title"`
		Year    int     `yaml:"year"`
		Place   string  `yaml:"place"`
		Kitchen kitchen `yaml:"kitchen"`
		Parts   []part  `yaml:"parts"`
	}{y.ID, y.Year, y.Place, kitchen{y.Year, y.Place}, []part{{y.Kind, y.Lines, y.Method}}})
}
