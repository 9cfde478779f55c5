package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
)

// partBriefs are the ingredient lines of a part on one line each.
func partBriefs(p formula.Part) []string {
	var out []string
	for _, l := range p.Lines {
		if len(l.Items) == 0 {
			out = append(out, "? "+l.Text)
		}
		for _, it := range l.Items {
			out = append(out, brief(it))
		}
	}
	return out
}

func TestReceiptOfParts(t *testing.T) {
	f, trace := reader(t).Receipt(receiptSeeds[0], About{Source: "Millrace House manuscript, leaf 12"})
	require.Equal(t, "Rich lemon pudding", f.Title)
	require.Equal(t, "Millrace House manuscript, leaf 12", f.Source)
	require.Equal(t, 1838, f.Year)
	require.Len(t, f.Parts, 2)
	require.Equal(t, "paste", f.Parts[0].Name)
	require.Equal(t, formula.Pastry, f.Parts[0].Kind)
	require.Equal(t, []string{"8 ounce flour_period_soft", "4 ounce butter_period_salted", "not given salt", "enough water"}, partBriefs(f.Parts[0]))
	require.Equal(t, []string{"6 x egg egg_whole: well beaten", "6 ounce sugar_white", "? 3 gils of milk", "1 glass spirit_period"}, partBriefs(f.Parts[1]))
	require.Equal(t, []string{"Beat the eggs with the sugar.", "Bake in a quick oven for 30 minutes."}, f.Parts[1].Steps)
	require.Equal(t, "quick", f.Oven)
	require.Equal(t, "30 minutes", f.Bake)
	require.Len(t, trace.Unread, 1)
	require.Equal(t, `unknown measure "gils"`, trace.Unread[0].Why)
	require.Equal(t, 12, trace.Unread[0].Line)
	require.False(t, trace.Whole())
}

func TestDoubtsComeThrough(t *testing.T) {
	f, trace := reader(t).Receipt(receiptSeeds[0], About{})
	filling := f.Parts[1]
	require.Equal(t, "6 eggs, well beaten [?]", filling.Lines[0].Text, "the sign stays on the line, so that the file keeps it")
	require.Contains(t, filling.Lines[0].Notes, "the book is hard to read here")
	require.Len(t, filling.Lines[1].Either, 2, "6 or 8 is one or the other, and nothing between")
	require.Equal(t, "8 oz of loaf sugar", filling.Lines[1].Either[1].Text)
	require.Equal(t, "the book has [6|8]", filling.Lines[1].Why)
	require.Contains(t, trace.Aside, Stretch{Words: "[struck: 4 oz suet]", Line: 13, Column: 1, Why: "struck out in the book", Part: -1, Index: -1})
	for _, l := range filling.Lines {
		require.NotContains(t, l.Text, "suet", "what was struck out is not put in")
	}
}

func TestWovenQuantities(t *testing.T) {
	f, trace := reader(t).Receipt(receiptSeeds[1], About{})
	require.True(t, trace.Whole())
	require.Equal(t, "A plain pudding", f.Title)
	require.Len(t, f.Parts, 2)
	require.Equal(t, "puff paste", f.Parts[0].Take)
	require.Equal(t, "lining", f.Parts[0].Lay)
	require.Equal(t, []string{
		"6 x egg egg_whole", "0.5 pound butter_period_salted: melted", "0.5 pound sugar_white", "1 x lemon lemon_juice_period: juice",
	}, partBriefs(f.Parts[1]))
}

func TestLineOfAListBroken(t *testing.T) {
	f, trace := reader(t).Receipt("A cake\n\n4 oz. white powdered\n  sugar\nhalf a pound of\nbutter\n1 pint milk\nchocolate\n6 eggs\n", About{})
	require.Equal(t, []string{"4 ounce sugar_loaf_powdered: powdered", "0.5 pound butter_period_salted", "1 pint milk_whole", "not given chocolate_dark", "6 x egg egg_whole"}, partBriefs(f.Parts[0]),
		"a name may go over the end of a line; milk is a whole name")
	require.True(t, trace.Whole())
	f, _ = reader(t).Receipt("A cake\n\nTake white pow-\ndered sugar.", About{})
	require.Equal(t, "A cake\n\nTake white pow-\ndered sugar.", f.Text, "the text is kept as it was copied")
}

func TestWordSets(t *testing.T) {
	require.True(t, glue.has("with"))
	require.False(t, glue.has("butter"))
	require.False(t, glue.has("no such word"))
	both := union(ditto, pith)
	require.ElementsMatch(t, []string{"ditto", "pith"}, both.list())
	require.False(t, phrase{{kind: figure, text: "2"}}.has(both), "a figure is no word")
	require.Equal(t, yolk, eggSides.of(reader(t).tokens("the yelks"), 1))
	require.Panics(t, func() { words("sets are made at the start") })
}

func TestChoiceOfTheBook(t *testing.T) {
	f, _ := reader(t).Receipt("A cream\n\nA gill of sack or white wine; a pint of cream, or of rich milk; 2 oz. of almonds or walnuts; half a pound of butter, or six ounces of lard.", About{})
	var got []string
	for _, l := range f.Parts[0].Lines {
		require.Equal(t, "the book leaves the choice", l.Why)
		for _, a := range l.Either {
			got = append(got, brief(a.Items[0]))
		}
	}
	require.Equal(t, []string{
		"1 gill sherry_period", "1 gill white_wine", "1 pint cream_period_plain", "1 pint x_milk_cream", "2 ounce almonds", "2 ounce walnuts",
		"0.5 pound butter_period_salted", "6 ounce lard",
	}, got)
	f, _ = reader(t).Receipt("A cream\n\n1 gill cream or milk\n6 eggs\n", About{})
	require.Len(t, f.Parts[0].Lines[0].Either, 2, "in a list as well")
}

func TestThingOfTheTitle(t *testing.T) {
	for _, c := range []struct {
		text  string
		items []string
		why   string
	}{
		{"Codlin tart\n\nScald the codlins, and take off the skin; six ounces of sugar.", []string{"not given apple_cooking", "6 ounce sugar_white"}, "the codlins are put in, though no line has them"},
		{"Tomato pie\n\nTake green tomatoes. Cut the tomatoes in slices; six ounces of sugar.", []string{"not given tomato_green", "6 ounce sugar_white"}, "the same tomatoes"},
		{"Almond cream\n\nBlanch the almonds, and pour the cream over them; six eggs.", []string{"not given almonds", "6 x egg egg_whole"}, "the cream is what is made"},
		{"Rice pudding\n\nWash the rice. Boil half a pound of rice with six eggs.", []string{"0.5 pound rice", "6 x egg egg_whole"}, "once, with its amount"},
	} {
		f, _ := reader(t).Receipt(c.text, About{})
		require.Equal(t, c.items, partBriefs(f.Parts[0]), c.why)
	}
}

func TestTablesWithoutRules(t *testing.T) {
	f, trace := reader(t).Receipt("A cake\n\nFlour      1 lb.\nButter     8 oz.\nSugar, loaf   6 oz.\nEggs       5\nJuice of one lemon\nGrated rind of two\n\nFlour      2 lb.\n1 \" currants\n", About{})
	require.Equal(t, []string{
		"1 pound flour_period_soft", "8 ounce butter_period_salted", "6 ounce sugar_white: loaf", "5 x egg egg_whole", "1 x lemon lemon_juice_period: juice", "2 x lemon lemon_peel: rind",
		"2 pound flour_period_soft", "1 pound currants_dried",
	}, partBriefs(f.Parts[0]), "the amount may stand on the right, a sign for what stood above it")
	require.True(t, trace.Whole())
}
