package file_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
)

// Each case is a list of lines and a method; what is named in the steps and
// not listed is given after "missing", what is listed and not named after
// "unused".
func TestNotListed(t *testing.T) {
	tab := tables(t)
	cases := []struct {
		name, lines, method string
		missing, unused     []string
	}{
		{name: "all there",
			lines:  "6 eggs; half a pound of loaf sugar; 8 oz of butter; rind and juice of 2 lemons",
			method: "Beat the butter and sugar to a cream. Whisk in the yolks, then the juice and rind; last the whites."},
		{name: "named by what it is",
			lines:  "8 oz of loaf sugar, pounded; 2 oz of castor sugar; 1 lb of fine flour; 1/2 lb of lard",
			method: "Rub the fat into the flour, and add the sugar."},
		{name: "brandy and nutmeg are missing",
			lines:   "6 eggs; 8 oz of sugar; 8 oz of butter",
			method:  "Beat the butter and sugar to a cream; add the eggs and a glass of brandy. Grate a little nutmeg over it.",
			missing: []string{"brandy", "nutmeg"}},
		{name: "once for a part",
			lines:   "6 eggs; 8 oz of sugar",
			method:  "Beat the eggs with the sugar and the cream. Pour the rest of the cream on it.",
			missing: []string{"cream"}},
		{name: "sugar forgotten in the method",
			lines:  "12 apples; 6 oz of moist sugar; 4 oz of butter; 4 eggs; 1 pint of bread crumbs",
			method: "Boil the apples to a pulp; add the butter, melted, and the eggs. Put in a layer of bread crumbs, then the apple.",
			unused: []string{"moist sugar"}},
		{name: "a terse method names nothing",
			lines:  "6 eggs; 8 oz of sugar; 8 oz of butter; 1 pint of cream",
			method: "Beat the eggs and bake it."},
		{name: "sweeping words take in the rest",
			lines:  "6 eggs; 8 oz of sugar; 8 oz of butter; salt",
			method: "Beat the eggs, sugar and butter with the rest of the ingredients."},
		{name: "tokens are no prose",
			lines:  "8 oz of flour; 4 oz of lard",
			method: "rubbed-in; melted-butter; cooked-starch"},
		{name: "verbs",
			lines:  "6 eggs; 8 oz of sugar; 1 pint of milk",
			method: "Butter the dish and flour it well. Beat the eggs, the sugar and the milk; salt it a little; butter and flour a tin."},
		{name: "a noun before the size of something",
			lines:   "6 eggs; 8 oz of sugar",
			method:  "Beat the eggs and sugar, and stir in butter the size of a walnut.",
			missing: []string{"butter"}},
		{name: "likenesses",
			lines:  "1 lb of sugar; 1 pint of milk",
			method: "Boil the sugar and milk till it is as thick as cream, the colour of honey, and make it into balls the size of an egg or a walnut."},
		{name: "to a cream, to oil",
			lines:  "8 oz of butter; 8 oz of sugar",
			method: "Beat the butter to a cream, or melt it to oil, and add the sugar."},
		{name: "water for the bath and the pan",
			lines:  "6 eggs; 1 pint of milk",
			method: "Mix the eggs with the milk. Set the dish in a pan of boiling water, or in a water-bath; fill the pan with hot water."},
		{name: "water to wet the paste",
			lines:   "1 lb of flour; 8 oz of butter",
			method:  "Rub the butter into the flour, and mix it to a paste with cold water.",
			missing: []string{"cold water"}},
		{name: "rose-water is not water",
			lines:   "1 lb of almonds; 8 oz of sugar",
			method:  "Pound the almonds with the sugar and a little rose-water.",
			missing: []string{"rose water"}},
		{name: "tools and measures",
			lines:  "6 eggs; 1 pint of milk; salt",
			method: "Beat the eggs with an egg-whisk; add a salt-spoon and an egg-cup of the milk; strain through a jelly-bag and a flour sieve, and salt."},
		{name: "dishes greased and glazed",
			lines:  "1 lb of flour; 8 oz of lard",
			method: "Rub the lard into the flour. Rub the tin with butter. Brush the paste over with the white of an egg."},
		{name: "what goes with it, and what might",
			lines:  "6 eggs; 1 pint of milk",
			method: "Beat the eggs with the milk. Serve with cream and sugar. Lemon may be added; a little brandy is an improvement."},
		{name: "paste, crust and custard",
			lines:  "6 eggs; 1 pint of milk",
			method: "Beat the eggs with the milk, pour the custard into a dish lined with puff paste, and cover it with crust."},
		{name: "fried in lard",
			lines:  "1 lb of flour; 1 pint of milk",
			method: "Mix the flour with the milk, and fry it in boiling lard."},
		{name: "milk-warm",
			lines:  "1 lb of flour; 1 gill of yeast",
			method: "Make the yeast milk-warm, and set it to the flour."},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var text strings.Builder
			text.WriteString("title: x\nyear: 1838\nplace: england\nparts:\n  - kind: filling\n    lines:\n")
			for _, l := range strings.Split(c.lines, "; ") {
				text.WriteString("      - " + l + "\n")
			}
			text.WriteString("    method:\n")
			for _, s := range strings.Split(c.method, ". ") {
				text.WriteString("      - \"" + s + "\"\n")
			}
			f, faults := file.Read("x.yaml", []byte(text.String()), tab)
			require.Empty(t, faults)
			var missing, unused []string
			for _, m := range file.NotListed(f, tab) {
				require.Equal(t, 0, m.Part)
				if m.InSteps {
					missing = append(missing, m.Name)
					require.Equal(t, f.Parts[0].Steps[m.Step], m.Words)
				} else {
					unused = append(unused, m.Name)
					require.Equal(t, f.Parts[0].Lines[m.Step].Text, m.Words)
				}
			}
			require.Equal(t, c.missing, missing, "named in the steps and not listed")
			require.Equal(t, c.unused, unused, "listed and not named")
		})
	}
}

// What another part lists is listed; a part still to be taken is left out.
func TestNotListedAcrossParts(t *testing.T) {
	tab := tables(t)
	f, faults := file.Read("x.yaml", []byte(`title: x
year: 1838
place: england
parts:
  - kind: pastry
    take: Paste No. 3
    method: wet it with brandy
  - kind: filling
    lines: [6 eggs, 1 pint of milk]
    method: mix the eggs with the milk and the sugar
  - kind: meringue
    lines: [4 whites of eggs, 8 oz of sugar]
`), tab)
	require.Empty(t, faults)
	require.Empty(t, file.NotListed(f, tab))
}
