package oven_test

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/ratios/oven"
)

// published is one printed baking time of testdata/vectors/baking-times.yaml.
type published struct {
	ID, What, Done, Work, Locator, Note string
	ML                                  float64    `yaml:"ml"`
	Width                               float64    `yaml:"width_cm"`
	Set                                 float64    `yaml:"set_c"`
	Oven                                float64    `yaml:"oven_c"`
	Start                               float64    `yaml:"start_c"`
	Paste                               float64    `yaml:"paste_cm"`
	Wall                                float64    `yaml:"wall_cm"`
	Bath, Batter                        bool       `yaml:",omitempty"`
	Density                             float64    `yaml:"density"`
	Minutes                             [2]float64 `yaml:"minutes"`
}

// The range of a computed time was set from the first list (minutes.go), so that
// it can only show how well it fits; the second was set down before any of it
// was reckoned, and had no part in the range.
func TestPublishedBakingTimes(t *testing.T) {
	for _, list := range []struct {
		file         string
		within, rows int
	}{
		{"baking-times.yaml", 29, 34},
		{"baking-times-apart.yaml", 23, 27},
	} {
		t.Run(list.file, func(t *testing.T) {
			within, of := bakingTimes(t, list.file)
			require.Equal(t, list.rows, of)
			require.GreaterOrEqual(t, within, list.within)
		})
	}
}

// bakingTimes counts the rows of a list whose printed time, its middle, lies
// within the computed range.
func bakingTimes(t *testing.T, file string) (within, of int) {
	raw, err := os.ReadFile("../../testdata/vectors/" + file)
	require.NoError(t, err)
	var list struct{ Rows []published }
	require.NoError(t, yaml.Unmarshal(raw, &list))
	tables := load(t)
	kinds := map[string][2]int{}
	for _, p := range list.Rows {
		require.NotEmpty(t, p.Work)
		kind, name := formula.Filling, "custards and tarts"
		if p.Batter {
			kind, name = formula.Cake, "cakes"
		}
		d := oven.Done(tables, kind, []string{"egg", "cheese"}, p.Done)
		require.NotNil(t, d.Set, p.Done)
		set := d.SetC().Likely
		if p.Set > 0 {
			set = p.Set
		}
		m := oven.Bake{
			Depth: p.ML / (math.Pi / 4 * p.Width * p.Width), Width: p.Width, Set: set, Start: p.Start,
			Oven: p.Oven, Bath: p.Bath, Batter: p.Batter, Paste: p.Paste, Wall: p.Wall, Density: p.Density,
		}.Time()
		book := (p.Minutes[0] + p.Minutes[1]) / 2
		in := !m.Never && book >= m.Low && book <= m.High
		k := kinds[name]
		k[1]++
		if in {
			within++
			k[0]++
		}
		kinds[name] = k
		t.Logf("%-20s %3.0f min in the book, %3.0f (%.0f to %.0f) computed, within: %t", p.ID, book, m.Likely, m.Low, m.High, in)
	}
	t.Logf("within: %d of %d; %v", within, len(list.Rows), kinds)
	return within, len(list.Rows)
}
