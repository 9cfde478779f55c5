package judge_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/reference"
)

// custardIn judges a custard of a litre of milk in a dish, lined or not.
func custardIn(t *testing.T, in string, lined bool) *judge.Report {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	paste := ""
	if lined {
		paste = `
  - kind: pastry
    lay: lining
    lines: [200 g flour, 100 g butter, 50 g water]`
	}
	page := fmt.Sprintf(`title: Custard
year: 1990
place: england
kitchen: {year: 2026, place: england, eggs: medium}
parts:%s
  - kind: filling
    lines: [800 ml milk, 4 eggs, 80 g sugar]
    method: [Beat the eggs slightly and pour the milk on them., Bake in a slow oven.]
dish: %s
`, paste, in)
	f, faults := file.Read("custard.yaml", []byte(page), tables)
	require.Empty(t, faults)
	j := judge.New(tables)
	j.Readings, j.Remedies = 200, false
	r, faults := j.Check(f)
	require.Empty(t, faults)
	return r
}

func fillFinding(r *judge.Report) *judge.Finding {
	for i := range r.Findings {
		if c := r.Findings[i].Code; c == "overfills" || c == "underfills" {
			return &r.Findings[i]
		}
	}
	return nil
}

// The custard comes to about a litre.
func TestFindingsOfTheDish(t *testing.T) {
	for _, c := range []struct {
		dish, code string
		grade      judge.Grade
	}{
		{"1 litre", "", ""},
		{"24 x 3 cm", "overfills", judge.Watch},
		{"soup plate", "overfills", judge.Decide},
		{"9 x 13 inch pan", "underfills", judge.Watch},
		{"three 9 inch pie plates", "underfills", judge.Watch},
		{"custard cups", "", ""}, // as many as it fills
		{"earthen pan", "", ""},
	} {
		r := custardIn(t, c.dish, false)
		f := fillFinding(r)
		if c.code == "" {
			require.Nil(t, f, c.dish)
			continue
		}
		require.NotNil(t, f, c.dish)
		require.Equal(t, c.code, f.Code, c.dish)
		require.Equal(t, c.grade, f.Grade, c.dish)
		require.NotEmpty(t, f.Because[0].Value)
	}
}

func TestDishNotKnownIsSaid(t *testing.T) {
	r := custardIn(t, "earthen pan", false)
	require.Nil(t, r.InDish)
	require.Contains(t, strings.Join(r.Notes, "\n"), `what the dish "earthen pan" holds is not known`)
}

// What a dish is overfilled by is what its cure takes away.
func TestCureOfAnIllFitFillsTheDish(t *testing.T) {
	r := custardIn(t, "9 inch pie plate", true)
	f := fillFinding(r)
	require.NotNil(t, f)
	e := f.Remedies[0].Effect[0]
	require.InEpsilon(t, r.InDish.RoomML.Likely, e.After, .02, "to two places of the factor")
	require.InEpsilon(t, r.InDish.FillingML.Likely, e.Before, .001)
}

func TestPasteOfADish(t *testing.T) {
	r := custardIn(t, "9 inch pie plate", true)
	require.Equal(t, dish.Lining, r.LoadOf().Lay)
	require.InDelta(t, 350, r.InDish.PasteMade.Likely, 1)
	require.InDelta(t, r.InDish.PasteMade.Likely-r.InDish.PasteNeeded.Likely, r.InDish.PasteLeft.Likely, 1e-9)
	bare := custardIn(t, "9 inch pie plate", false)
	require.Zero(t, bare.InDish.PasteNeeded)
	require.Less(t, r.InDish.RoomML.Likely, bare.InDish.RoomML.Likely)
}

// The oven is told the depth the dish gives.
func TestDepthReachesTheOven(t *testing.T) {
	r := custardIn(t, "9 x 13 inch pan", false)
	require.InDelta(t, 1.4, r.InDish.Depth.Likely, .3)
	require.Equal(t, r.InDish.Depth.Likely, r.Parts[0].Baking.Depth.Likely)
}
