package file

import (
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/reference"
	"assize/reference/fault"
)

// PublishedPage writes a published formula as a formula file: amount, unit,
// name and form of each line as they were published, the method word for word.
// The kitchen is the one that reports the outcome.
func PublishedPage(p *reference.Published) ([]byte, error) {
	type line struct {
		Amount string `yaml:"amount,omitempty"`
		Unit   string `yaml:"unit,omitempty"`
		Of     string `yaml:"of"`
		Form   string `yaml:"form,omitempty"`
	}
	type part struct {
		Name   string   `yaml:"name"`
		Kind   string   `yaml:"kind"`
		Lines  []line   `yaml:"lines"`
		Method []string `yaml:"method,omitempty"`
	}
	type kitchen struct {
		Year  int    `yaml:"year"`
		Place string `yaml:"place"`
	}
	type page struct {
		Title   string  `yaml:"title"`
		Year    int     `yaml:"year"`
		Place   string  `yaml:"place"`
		Kitchen kitchen `yaml:"kitchen"`
		Parts   []part  `yaml:"parts"`
		Dish    string  `yaml:"dish,omitempty"`
		Oven    string  `yaml:"oven,omitempty"`
		Bake    string  `yaml:"bake,omitempty"`
	}
	year := p.KitchenYear
	if year == 0 {
		year = p.Year
	}
	out := page{
		Title: p.ID, Year: p.Year, Place: p.Place, Kitchen: kitchen{year, p.Place},
		Dish: p.Dish, Oven: p.Oven, Bake: p.Bake,
	}
	pt := part{Name: p.Part, Kind: p.Part, Method: p.Method}
	for _, l := range p.Lines {
		ln := line{Unit: l.Unit, Of: l.Of, Form: l.Form}
		if l.Amount != nil {
			ln.Amount = l.Amount.String()
			if l.Max != nil {
				ln.Amount += " to " + l.Max.String()
			}
		}
		pt.Lines = append(pt.Lines, ln)
	}
	out.Parts = []part{pt}
	return yaml.Marshal(out)
}

// Published reads a published formula the way a person's file is read.
func Published(p *reference.Published, t *reference.Tables) (*formula.Formula, fault.List) {
	text, err := PublishedPage(p)
	if err != nil {
		return nil, fault.List{{File: p.ID, What: err.Error()}}
	}
	return Read(p.ID+".yaml", text, t)
}
