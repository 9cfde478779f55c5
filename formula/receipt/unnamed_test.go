package receipt_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

// What is rolled or raised and then filled is paste and filling, though no word
// calls it paste; a cake that is rolled and covered with nothing is one thing.
func TestPasteThatNoWordNames(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, c := range []struct {
		text  string
		parts []formula.Kind
		lines []int
	}{
		{"A Cornish Pasty.\nRub six ounces of lard into a pound of flour, wet it with a gill of water and roll it out. Lay on it half a pound of beef cut small with an onion, fold it over, and bake it an hour.",
			[]formula.Kind{formula.Pastry, formula.Filling}, []int{3, 2}},
		{"Damson Dumplings.\nWork half a pound of suet with a pound of flour and a little water; roll it thin, fill it with a pint of damsons and two ounces of sugar, and boil it two hours.",
			[]formula.Kind{formula.Pastry, formula.Filling}, []int{3, 2}},
		{"A Quince Pie.\nMake a crust of a pound of flour and six ounces of lard. Slice two pounds of quinces into a pie-dish with six ounces of sugar; cover it with the crust and bake it two hours.",
			[]formula.Kind{formula.Pastry, formula.Filling}, []int{2, 2}},
		{"A Batter Pudding.\nMix six ounces of flour with a pint of milk, four eggs, and two ounces of butter; cover it and boil it an hour.",
			[]formula.Kind{formula.Filling}, []int{4}},
		{"A Bread Pudding.\nPour a pint of milk upon half a pound of crumbs, add two ounces of butter, three eggs and two ounces of flour, lay a plate over it, and bake it.",
			[]formula.Kind{formula.Filling}, []int{5}},
	} {
		f, _ := (&receipt.Reader{Tables: tables, Year: 1838, Place: "england"}).Receipt(c.text, receipt.About{})
		require.NotNil(t, f, c.text)
		var kinds []formula.Kind
		var lines []int
		for i := range f.Parts {
			kinds, lines = append(kinds, f.Parts[i].Kind), append(lines, len(f.Parts[i].Lines))
		}
		require.NotEmpty(t, f.Parts[0].Steps, c.text)
		if len(c.parts) > 1 {
			require.Equal(t, c.parts, kinds, c.text)
		} else {
			require.Len(t, kinds, 1, c.text)
		}
		require.Equal(t, c.lines, lines, c.text)
	}
}

// A paste keeps the sentence that rests or rolls it; what is made of the filling
// stays the filling's.
func TestPasteKeepsItsResting(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for text, want := range map[string][2]int{
		"Turnovers.\nMake a paste of half a pound of flour and four ounces of butter. Let it rest an hour. Roll it out; peel four apples, lay some on each with three ounces of sugar, fold it over and bake.": {2, 1},
		"Turnovers.\nMake a paste of half a pound of flour and four ounces of butter. Let it rest an hour. Roll it thin and cut it in rounds. Lay on each some of a pound of apples, fold it over and bake.":   {3, 1},
		"A tart.\nMake a paste of half a pound of flour and four ounces of butter. For the inside let it stand warm. Beat six eggs with half a pound of sugar and bake it.":                                    {1, 2},
	} {
		f, _ := (&receipt.Reader{Tables: tables, Year: 1838, Place: "england"}).Receipt(text, receipt.About{})
		require.NotNil(t, f, text)
		require.Len(t, f.Parts, 2, text)
		require.Equal(t, formula.Pastry, f.Parts[0].Kind)
		require.Equal(t, want, [2]int{len(f.Parts[0].Steps), len(f.Parts[1].Steps)}, "%s: %q", text, f.Parts)
	}
}
