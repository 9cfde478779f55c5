package judge_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/reference"
)

// custardAt judges a baked custard at a depth, cm.
func custardAt(t *testing.T, depth float64, rules bake.Rules) *judge.Report {
	t.Helper()
	f, tables := demoFormula(t, "baked-custard.yaml")
	j := judge.New(tables)
	j.Readings, j.Remedies, j.Rules = 50, false, rules
	j.Depth = oven.Range{Low: depth, Likely: depth, High: depth}
	r, faults := j.Check(f)
	require.NoError(t, faults.Err())
	return r
}

// The edge of a deep dish runs further ahead: a degree less room before it
// curdles for every centimetre beyond three, and no share moves. Switched off,
// the depth does nothing.
func TestOvershootFeedsTheMargin(t *testing.T) {
	margin := func(r *judge.Report) float64 { return r.Parts[0].Measures[bake.CurdleMargin.String()].Likely }
	shallow, deep := custardAt(t, 3, bake.Standard), custardAt(t, 6, bake.Standard)
	require.InDelta(t, 3, margin(shallow)-margin(deep), 1e-9)
	require.Equal(t, shallow.Parts[0].Texture, deep.Parts[0].Texture)
	off := bake.Standard
	off.Overshoot = false
	require.Equal(t, margin(shallow), margin(custardAt(t, 6, off)))
	require.NotNil(t, finding(custardAt(t, 12, bake.Standard), "heat-care"), "nothing is left of the room")
	require.Nil(t, finding(shallow, "heat-care"))
}

// A deeper dish takes longer, and the book's own time stands beside.
func TestBakingOfAReceipt(t *testing.T) {
	shallow, deep := custardAt(t, 2, bake.Standard), custardAt(t, 4, bake.Standard)
	a, b := shallow.Parts[0].Baking, deep.Parts[0].Baking
	require.NotNil(t, a)
	require.True(t, a.Bath, "the cups stand in hot water")
	require.True(t, a.AtBook)
	require.Equal(t, oven.Range{Low: 60, Likely: 60, High: 60}, a.Book)
	require.Less(t, a.Time.Likely, b.Time.Likely)
	require.Equal(t, "baked-custard", a.Class.ID)
	require.InDelta(t, 150, a.Wants[0].C.Likely, 1)
	require.NotEmpty(t, shallow.Said)
	require.Equal(t, "custard-cups", shallow.Parts[0].Done.Set.ID)
	require.Equal(t, "egg-floor", shallow.Parts[0].Done.Floor.ID)
	d, why, ok := shallow.Dish()
	require.True(t, ok, why)
	require.Greater(t, d.Takes(120).Likely, d.Takes(180).Likely)
}

// A hot stone or tray is never advised under a cold dish; in tin both are told
// of.
func TestNoHotStoneUnderAColdDish(t *testing.T) {
	f, tables := demoFormula(t, "seville-orange-tart.yaml")
	j := judge.New(tables)
	j.Readings, j.Remedies = 20, false
	base := func(dish string) []judge.Through {
		f.Dish = dish
		r, faults := j.Check(f)
		require.NoError(t, faults.Err())
		return r.Parts[0].Baking.Base
	}
	china, tin := base("soup plate"), base("tin plate")
	require.Len(t, china, 1)
	require.Equal(t, oven.Rack, china[0].On)
	require.Len(t, tin, len(oven.Floors))
	for i := 1; i < len(tin); i++ {
		require.Greater(t, tin[i].Chance, tin[i-1].Chance)
	}
	require.Less(t, china[0].Chance, tin[0].Chance)
}

// Only degrees of an oven are read out of the heat a class wants, each once,
// and every class that is baked tells some.
func TestClassesTellTheirHeat(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	told := 0
	for _, c := range tables.Classes {
		for _, h := range judge.Wants(c.Heat, tables) {
			require.GreaterOrEqual(t, h.C.Low, 90.0, c.ID)
			require.LessOrEqual(t, h.C.High, 290.0, c.ID)
			told++
		}
	}
	require.Greater(t, told, 60)
	heats := judge.Wants("hot, 220 C (425 F), for a quarter of an hour, then 180-190 C (350-375 F)", tables)
	require.Len(t, heats, 2)
	require.InDelta(t, 185, heats[1].C.Likely, .1)
	require.Empty(t, judge.Wants("stirred over gentle heat to 75-82 C (167-180 F); no oven", tables))
}

// Every class that an oven bakes tells how it is known to be done; of macaroons
// and dry meringues the eye tells, not a thermometer.
func TestClassesTellWhenTheyAreDone(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, c := range tables.Classes {
		kind := formula.Kind(c.Kind)
		if kind == formula.Pastry || kind == formula.Meringue || len(judge.Wants(c.Heat, tables)) == 0 {
			continue
		}
		d := oven.Done(tables, kind, []string{"egg", "curd", "cheese"}, c.ID, c.Name)
		require.NotNil(t, d.Set, c.ID)
		require.NotEmpty(t, d.Set.Signs, c.ID)
		require.NotEmpty(t, d.Set.Cooling, c.ID)
		require.NotNil(t, d.Floor, c.ID)
	}
}
