package trial

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/ratios/bake"
	"assize/reference"
)

// The links in force are what a fit to the published formulas gives, and come
// to the values testdata/vectors/textures.yaml was worked out with: the
// midpoint within a tenth of the width, the width within 5 in 100. The heat
// link's stand beside them (3.397, 3.517), fitted there too on 15 fillings
// spoiled by heat and 71 good ones.
func TestCalibrateGivesTheLinks(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	given := map[string][2]float64{"heat": {3.397, 3.517}}
	for id, v := range worked {
		given[id] = v
	}
	var fitted []reference.Link
	for _, kind := range []formula.Kind{formula.Filling, formula.Pastry} {
		items, err := Bench(tables, kind, bake.Standard, Fit)
		require.NoError(t, err)
		links, err := Calibrate(tables, string(kind), items)
		require.NoError(t, err)
		fitted = append(fitted, links...)
	}
	items, err := HeatBench(tables, bake.Standard)
	require.NoError(t, err)
	heat, err := CalibrateHeat(tables, items)
	require.NoError(t, err)
	require.Equal(t, 15, heat.Cases)
	require.Len(t, items, 15+71)
	fitted = append(fitted, heat)

	require.Len(t, fitted, len(given))
	shipped := map[string]reference.Link{}
	for _, l := range tables.Links {
		shipped[l.ID] = l
	}
	for _, l := range fitted {
		mid, width, want := float64(l.Mid), float64(l.Width), given[l.ID]
		require.InDelta(t, float64(shipped[l.ID].Mid), mid, .0015, "%s: make calibrate has not been run", l.ID)
		require.InDelta(t, float64(shipped[l.ID].Width), width, .0015, "%s: make calibrate has not been run", l.ID)
		require.InDelta(t, want[0], mid, want[1]/10, "midpoint of %s", l.ID)
		require.InEpsilon(t, want[1], width, .05, "width of %s", l.ID)
	}
}
