package trial

import (
	"fmt"

	"gopkg.in/yaml.v3"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// Yield is a published filling with what it makes by volume, as
// testdata/vectors/filling-yields.yaml has it.
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
	Is        string     `yaml:"is"` // within | not
	Source    string     `yaml:"source"`
	Locator   string     `yaml:"locator"`
	How       string     `yaml:"how"`
	Why       string     `yaml:"why"`
}

// Reckoned is a yield beside what is reckoned.
type Reckoned struct {
	*Yield
	ML    readings.Span
	Grams float64
	// Off is how far the likely volume lies outside what is told, a share; 0
	// inside a range.
	Off float64
}

// Lightest and Heaviest are the densities, g/ml, within which an unbeaten
// filling must lie: cream is .99, a syrup of sugar and egg 1.3. A yield that
// wants another is no measurement of the batch.
const Lightest, Heaviest = .95, 1.35

// Possible reports whether the yield told, or the most of a range, can be that
// of the weight that goes in.
func (r *Reckoned) Possible() bool {
	return r.Grams/r.Yield.ML[1] <= Heaviest && r.Grams/r.Yield.ML[0] >= Lightest
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
		one := Reckoned{Yield: y, ML: r.Measures[bake.Volume], Grams: in.Weighed.Parts[0].Total(in.Weighed.Unknowns).Likely.InexactFloat64()}
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
