package trial_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/trial"
	"assize/reference"
)

func pans(t *testing.T) []trial.PanVolume {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/vectors/pan-volumes.yaml")
	require.NoError(t, err)
	rows, err := trial.ReadPans(raw)
	require.NoError(t, err)
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, p := range rows.Rows {
		require.Contains(t, []string{"said", "full", "told how", "not said"}, p.Measured, p.ID)
		require.Contains(t, []string{"brim", "usable"}, p.Told, p.ID)
		require.Equal(t, "read", p.How, p.ID)
		require.NotEmpty(t, p.Locator, p.ID)
	}
	out, err := trial.Pans(tables, rows.Rows)
	require.NoError(t, err)
	return out
}

// TestPans: of pans whose work says it filled them, or says that what it prints
// is the whole of them or how to measure it, at least twenty different ones are
// reproduced within a tenth. Each row is what the file says it is, and those
// that no such pan can hold are counted.
func TestPans(t *testing.T) {
	rows := pans(t)
	is := map[string]int{}
	for _, p := range rows {
		require.Equalf(t, p.Pan.Is, p.Is, "%s: %.0f ml printed, %.0f by its size (%.0f-%.0f), %+.3f", p.ID, p.ML, p.Reckoned, p.Least, p.Most, p.Off())
		require.Equal(t, p.Is == trial.PanCannot, p.Why != "", p.ID)
		require.Less(t, p.Least, p.Reckoned, p.ID)
		require.Less(t, p.Reckoned, p.Most, p.ID)
		is[p.Is]++
	}
	counts := trial.PanCounts(rows)
	t.Logf("different pans told to the brim, and of them within 10 in 100: measured %+v, of which said %+v, full %+v, told how %+v; not said %+v; rows %v",
		counts["measured"], counts["said"], counts["full"], counts["told how"], counts["not said"], is)
	require.GreaterOrEqual(t, counts["measured"].AtBrim, 20)
	require.GreaterOrEqual(t, counts["said"].AtBrim, 8)
	require.Equal(t, 10, is[trial.PanCannot])
	require.Positive(t, is[trial.PanUnder], "none is left out for not fitting")
}

// What a pan is filled to for use is printed under its brim where a work prints
// both: by 2 to 13 in 100.
func TestUsableUnderBrim(t *testing.T) {
	both := 0
	for _, p := range pans(t) {
		if p.UsableML == 0 {
			continue
		}
		both++
		require.Less(t, p.UsableML, p.ML, p.ID)
		require.Greater(t, p.UsableML, .87*p.ML, p.ID)
	}
	require.Equal(t, 18, both)
}

// A pan that two works print differently has one volume by its size.
func TestTablesThatDisagree(t *testing.T) {
	byID := map[string]trial.PanVolume{}
	for _, p := range pans(t) {
		byID[p.ID] = p
	}
	for _, pair := range [][2]string{
		{"tbp-8-x-2-cake-pan", "ph-8-x-2-cake-pan"}, {"co-8-x-1.5-cake-tin", "tbp-8-x-1.5-cake-pan"}, {"mk-11-x-7-x-2-pan", "da-11-x-7-x-2-pan"},
	} {
		a, b := byID[pair[0]], byID[pair[1]]
		require.Equal(t, a.Reckoned, b.Reckoned)
		require.Greater(t, a.ML, b.ML*1.1)
		require.Equal(t, trial.PanBrim, a.Is)
		require.NotEqual(t, trial.PanBrim, b.Is)
	}
}

func TestPansThatCannotBeRead(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, p := range []trial.Pan{
		{Words: "9 x 2 in cake pan", Holds: "8 hands"}, {Words: "9 x 2 in cake pan", Holds: "many cups"}, {Words: "9 x 2 in cake pan", Holds: "8 cups", Usable: "x"},
		{Words: "soup plate", Holds: "2 cups"}, {Words: "9 x", Holds: "2 cups"}, {Words: "500 ml", Holds: "2 cups"},
	} {
		_, err := trial.Pans(tables, []trial.Pan{p})
		require.Error(t, err, "%+v", p)
	}
	for _, raw := range []string{"rows: [{id: x, source: nobody}]", "rows: [{size: 9}]", "rows: 3"} {
		_, err := trial.ReadPans([]byte(raw))
		require.Error(t, err, raw)
	}
}
