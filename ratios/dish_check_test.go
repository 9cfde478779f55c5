package ratios_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/ratios"
)

// analysis is what 100 g of a dish is made of, in grams.
type analysis struct {
	Water        float64  `yaml:"water"`
	Protein      float64  `yaml:"protein"`
	Fat          float64  `yaml:"fat"`
	Starch       *float64 `yaml:"starch"`
	Sugars       float64  `yaml:"sugars"`
	Carbohydrate float64  `yaml:"carbohydrate"`
}

// madeDish is a published analysis beside a formula for the dish.
type madeDish struct {
	ID         string   `yaml:"id"`
	Dish       string   `yaml:"dish"`
	Source     string   `yaml:"source"`
	Locator    string   `yaml:"locator"`
	How        string   `yaml:"how"`
	Printed    analysis `yaml:"printed"`
	Formula    string   `yaml:"formula"`
	FormulaHow string   `yaml:"formula_how"`
	Year       int      `yaml:"year"`
	Place      string   `yaml:"place"`
	Kind       string   `yaml:"kind"`
	Lines      []string `yaml:"lines"`
	Loss       float64  `yaml:"loss"`
	Within     analysis `yaml:"within"`
}

func madeDishes(t *testing.T) []madeDish {
	t.Helper()
	raw, err := os.ReadFile("../testdata/vectors/made-dishes.yaml")
	require.NoError(t, err)
	var out []madeDish
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	require.NoError(t, dec.Decode(&out))
	return out
}

// published turns the printed figures into sugars and starch as they stand.
// Dextrins are counted with starch in the tables, so all are one figure here.
func (d *madeDish) published() analysis {
	a := d.Printed
	if a.Starch != nil {
		a.Carbohydrate = *a.Starch/1.10 + a.Sugars/1.05
	}
	return a
}

// reckoned is what the formula comes to, with its loss of water.
func (d *madeDish) reckoned() analysis {
	w := receipt{d.Year, d.Place, d.Kind, d.Lines}.weighed()
	var m ratios.Mix
	for i := range w.Parts[0].Items {
		it := &w.Parts[0].Items[i]
		row := ratios.Row(it)
		m.Add(it.Grams.Likely.InexactFloat64(), &row)
	}
	lost := m[ratios.Total] * d.Loss / 100
	in100 := func(g float64) float64 { return 100 * g / (m[ratios.Total] - lost) }
	return analysis{
		Water: in100(m[ratios.Water] - lost), Protein: in100(m[ratios.Protein]), Fat: in100(m[ratios.Fat]),
		Carbohydrate: in100(m[ratios.Sugars] + m[ratios.Starch] + m[ratios.OtherCarbohydrate]),
	}
}

// off lists how far the figures are apart where they are compared.
func (d *madeDish) off(got analysis) map[string][2]float64 {
	want := d.published()
	out := map[string][2]float64{
		"water":   {got.Water - want.Water, d.Within.Water},
		"protein": {got.Protein - want.Protein, d.Within.Protein},
		"fat":     {got.Fat - want.Fat, d.Within.Fat},
	}
	if d.Printed.Starch != nil {
		out["carbohydrate"] = [2]float64{got.Carbohydrate - want.Carbohydrate, d.Within.Carbohydrate}
	}
	return out
}

func TestMadeDishes(t *testing.T) {
	for _, d := range madeDishes(t) {
		t.Run(d.ID, func(t *testing.T) {
			got := d.reckoned()
			for what, o := range d.off(got) {
				assert.InDeltaf(t, 0, o[0], o[1], "%s of %s: published %+v, reckoned %+v", what, d.Dish, d.published(), got)
			}
		})
	}
}

// TestMadeDishesTellDishesApart: the tolerances are narrow enough that no
// formula passes for another dish.
func TestMadeDishesTellDishesApart(t *testing.T) {
	dishes := madeDishes(t)
	for i := range dishes {
		got := dishes[i].reckoned()
		for j := range dishes {
			if i == j {
				continue
			}
			passes := true
			for _, o := range dishes[j].off(got) {
				passes = passes && o[0] <= o[1] && -o[0] <= o[1]
			}
			assert.Falsef(t, passes, "the formula of %s passes for %s", dishes[i].Dish, dishes[j].Dish)
		}
	}
}
