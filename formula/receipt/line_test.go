package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// lineCases are lines in an English book of 1838, what they come to (see brief)
// and what is said of it.
var lineCases = []struct {
	text  string
	items []string
	notes []string
}{
	// the common line
	{"6 eggs, well beaten", []string{"6 x egg egg_whole: well beaten"}, nil},
	{"half a pound of loaf sugar", []string{"0.5 pound sugar_white"}, nil},
	{"1 1/2 lb. of flour, well dried", []string{"1.5 pound flour_period_soft: well dried"}, nil},
	{"six ounces of butter melted to oil", []string{"6 ounce butter_period_salted: melted to oil"}, nil},
	{"12OZ. FLOUR", []string{"12 ounce flour_period_soft"}, nil},
	{"half a pint of thick cream", []string{"0.5 pint cream_whipping"}, nil},
	{"a pint and a half of cream", []string{"1.5 pint cream_period_plain"}, nil},
	{"one pound and a quarter of sugar", []string{"1.25 pound sugar_white"}, nil},
	{"two pounds and a half butter", []string{"2.5 pound butter_period_salted"}, nil},
	{"a quarter of a peck of flour", []string{"0.25 peck flour_period_soft"}, nil},
	{"half a quarter of a pound of butter", []string{"0.125 pound butter_period_salted"}, nil},
	{"2 half-pints cream", []string{"1 pint cream_period_plain"}, nil},
	{"three half pints of cream", []string{"1.5 pint cream_period_plain"}, nil},
	{"a wine-glassful of sherry", []string{"1 wineglass sherry_period"}, nil},
	{"a tea-cupful of treacle", []string{"1 teacup treacle"}, nil},
	{"two table-spoonfuls of rose-water", []string{"2 tablespoon rosewater"}, nil},
	{"a few drops of essence of lemon", []string{"2-5 drop lemon_extract"}, []string{`"few" is taken as 2 to 5`}},
	{"1 lb 4 oz flour", []string{"1 pound flour_period_soft", "4 ounce flour_period_soft"}, nil},
	{"1 cup plus 2 tablespoons sugar", []string{"1 cup sugar_white", "2 tablespoon sugar_white"}, nil},
	{"half a pound and two ounces of butter", []string{"0.5 pound butter_period_salted", "2 ounce butter_period_salted"}, nil},
	{"Take half a pound of sugar", []string{"0.5 pound sugar_white"}, nil},
	{"- 6 eggs", []string{"6 x egg egg_whole"}, nil},
	{"4 oz caſter ſugar", []string{"4 ounce sugar_white"}, nil},
	{"crème fraîche 200ml", []string{"200 ml creme_fraiche"}, nil},
	{"00 flour, 500 g", []string{"500 g flour_all_purpose"}, nil},
	{"500 g 00 flour", []string{"500 g flour_all_purpose"}, nil},
	{"1 pint 2% milk", []string{"1 pint x_half_milk"}, nil},

	// a range
	{"two or three eggs", []string{"2-3 x egg egg_whole"}, nil},
	{"from 2 to 3 oz butter", []string{"2-3 ounce butter_period_salted"}, nil},
	{"half a pint to a pint of cream", []string{"0.5-1 pint cream_period_plain"}, nil},
	{"a spoonful or two of sugar", []string{"1-2 spoonful sugar_white"}, nil},

	// amount after the name
	{"flour 8 oz", []string{"8 ounce flour_period_soft"}, nil},
	{"yeast, a spoonful", []string{"1 spoonful yeast_fresh"}, nil},
	{"butter: half a pound, melted", []string{"0.5 pound butter_period_salted: melted"}, nil},
	{"flour, sifted, 1 lb", []string{"1 pound flour_period_soft: sifted"}, nil},
	{"eggs, 6", []string{"6 x egg egg_whole"}, nil},
	{"lemon juice 90 ml", []string{"90 ml lemon_juice_period"}, nil},

	// words between
	{"white pounded sugar, 4 oz", []string{"4 ounce sugar_loaf_powdered: pounded"}, []string{"taken as pounded white sugar"}},
	{"finely pounded sugar, 4 oz", []string{"4 ounce sugar_loaf_powdered"}, nil},
	{"sugar, brown, 1 lb", []string{"1 pound sugar_muscovado: brown"}, []string{"taken as brown sugar"}},
	{"almonds, bitter, 1 oz", []string{"1 ounce almonds_bitter: bitter"}, []string{"taken as bitter almonds"}},
	{"butter for the dish", []string{"not given butter_period_salted: for the dish"}, nil},

	// the same amount twice
	{"12 oz (340 g) plain flour", []string{"12 ounce flour_period_soft"}, nil},
	{"12 oz (300 g) plain flour", []string{"12 ounce flour_period_soft"}, []string{"the amounts given do not agree: 340.2 g against 300 g; the first is taken"}},
	{"225g/8oz plain flour", []string{"225 g flour_period_soft"}, nil},
	{"8oz or 225g flour", []string{"8 ounce flour_period_soft"}, nil},
	{"1 (400 g) tin condensed milk", []string{"400 g condensed_milk"}, nil},
	{"2 x 400 g tins condensed milk", []string{"800 g condensed_milk"}, nil},
	{"1 15-oz can pumpkin", []string{"15 ounce pumpkin_stewed"}, nil},
	{"1 package (8 oz) cream cheese", []string{"8 ounce cream_cheese"}, []string{`"8 oz" is what counts, not the package`}},
	{"1 butternut squash (600 g)", []string{"600 g squash_winter: 600 g"}, []string{`"600 g" is what counts, not the number`}},
	{"3 carrots (300 g)", []string{"3 x carrot carrot_raw: 300 g"}, []string{`"300 g" is also given; the number is what is taken`}},

	// how full, how big
	{"scant pint of milk", []string{"1 scant pint milk_whole"}, []string{"no number is given: taken as one pint"}},
	{"2 heaped tablespoons flour", []string{"2 heaped tablespoon flour_period_soft"}, nil},
	{"2 tablespoons (heaped) flour", []string{"2 heaped tablespoon flour_period_soft"}, nil},
	{"1 rounded cup flour", []string{"1 rounded-cup cup flour_period_soft"}, nil},
	{"a good half pint of cream", []string{"0.5 good pint cream_period_plain"}, nil},
	{"a scant half cup of milk", []string{"0.5 scant cup milk_whole"}, nil},
	{"1 cup packed brown sugar", []string{"1 packed cup sugar_muscovado"}, nil},
	{"8 oz curd, packed", []string{"8 ounce curd_new_milk_period: packed"}, nil},
	{"about 6 eggs", []string{"6 about x egg egg_whole"}, nil},
	{"a dozen or so eggs", []string{"12 about x egg egg_whole"}, nil},
	{"2 large eggs", []string{"2 large x egg egg_whole"}, nil},
	{"2 small nutmegs", []string{"2 small x nutmeg spice_nutmeg"}, nil},
	{"a large spoonful of flour", []string{"1 great spoon flour_period_soft"}, nil},

	// things counted
	{"a dozen eggs", []string{"12 x egg egg_whole"}, nil},
	{"half a nutmeg, grated", []string{"0.5 x nutmeg spice_nutmeg: grated"}, nil},
	{"3 mace blades", []string{"3 x blade-of-mace spice_mace"}, nil},
	{"2 yeast cakes", []string{"2 x yeast-cake yeast_fresh"}, nil},
	{"6 pippins", []string{"6 x apple apple_cooking"}, nil},
	{"1 small sponge cake", []string{"1 x small-sponge-cake sponge_cake_crumb"}, nil},
	{"3 duck eggs", []string{"3 x duck-egg egg_duck"}, nil},

	// eggs in part
	{"the yolks of eight eggs", []string{"8 x egg egg_yolk"}, nil},
	{"the whites of four eggs whisked to a stiff froth", []string{"4 x egg egg_white: whisked to a stiff froth"}, nil},
	{"8 yolks and 6 whites of eggs", []string{"8 x egg egg_yolk", "6 x egg egg_white"}, nil},
	{"the yolks of six and the whites of three eggs", []string{"6 x egg egg_yolk", "3 x egg egg_white"}, nil},
	{"four eggs, yolks and whites beaten apart", []string{"4 x egg egg_whole: yolks and whites beaten apart"}, nil},
	{"10 eggs, leaving out 4 of the whites", []string{"10 x egg egg_yolk", "6 x egg egg_white"}, []string{"taken as 10 egg yolks and 6 egg whites"}},
	{"ten eggs, half the whites", []string{"10 x egg egg_yolk", "5 x egg egg_white"}, []string{"taken as 10 egg yolks and 5 egg whites"}},
	{"6 eggs without the whites", []string{"6 x egg egg_yolk"}, []string{"taken as 6 egg yolks"}},
	{"6 eggs, whites only", []string{"6 x egg egg_white"}, []string{"taken as 6 egg whites"}},
	{"2 eggs and the yolk of another", []string{"2 x egg egg_whole", "1 x egg egg_yolk"}, nil},
	{"2 eggs plus 2 yolks", []string{"2 x egg egg_whole", "2 x egg egg_yolk"}, nil},

	// fruit in part
	{"the juice of two lemons", []string{"2 x lemon lemon_juice_period: juice"}, nil},
	{"grated rind of 2 Seville oranges", []string{"2 x seville orange_peel: rind, grated"}, nil},
	{"rind and juice of a lemon", []string{"1 x lemon lemon_peel: rind", "1 x lemon lemon_juice_period: juice"}, nil},
	{"the juice of 4 lemons, the rinds of 2", []string{"4 x lemon lemon_juice_period: juice", "2 x lemon lemon_peel: rind"}, nil},
	{"rind of 1 and juice of 2 lemons", []string{"1 x lemon lemon_peel: rind", "2 x lemon lemon_juice_period: juice"}, nil},
	{"1 lemon", []string{"1 x lemon lemon_juice_period: juice", "1 x lemon lemon_peel: rind"}, []string{"taken as the juice and the grated rind"}},
	{"2 lemons, grated rind and juice of one", []string{"2 x lemon lemon_peel: rind, grated", "1 x lemon lemon_juice_period: juice, of one"}, nil},
	{"4 lemons, 150 ml juice", []string{"150 ml lemon_juice_period: juice"}, []string{`"150 ml" is what counts, not the number of lemons`}},
	{"2 lemons, grated whole, rind of two thirds", []string{"2 x peeled-lemon lemon_whole_flesh: flesh, grated", "1.333333333334 x lemon lemon_peel: rind, of two thirds"}, []string{`"rind of two thirds" is taken as of the whole number`}},
	{"2 lemons, boiled whole and pounded", []string{"2 x lemon lemon_juice_period: whole, boiled, pounded", "2 x lemon lemon_whole_flesh: whole, boiled, pounded", "2 x whole-lemon lemon_peel: whole, boiled, pounded"}, nil},
	{"1 lemon, peeled and sliced", []string{"1 x peeled-lemon lemon_whole_flesh: flesh, peeled, sliced"}, nil},
	{"2 lemons, without the rind", []string{"2 x peeled-lemon lemon_whole_flesh: flesh, without the rind"}, []string{"taken as the flesh of lemons"}},
	{"4 tbsp lemon", []string{"4 tablespoon lemon_juice_period: juice"}, []string{"lemon by measure is taken as its juice"}},
	{"the grated rind of lemon, a teaspoonful", []string{"1 teaspoon lemon_peel: grated"}, nil},
	{"lemon or orange juice, 2 oz", []string{"2 ounce lemon_juice_period"}, []string{`"lemon or orange juice": taken as lemon juice`}},

	// by bigness
	{"butter the size of an egg", []string{"1 size of an egg butter_period_salted"}, nil},
	{"a bit of butter the size of a walnut", []string{"1 size of a walnut butter_period_salted"}, nil},
	{"butter as big as an egg", []string{"1 size of an egg butter_period_salted"}, nil},
	{"butter the size of two eggs", []string{"2 size of an egg butter_period_salted"}, nil},
	{"walnut-sized piece of butter", []string{"1 size of a walnut butter_period_salted"}, nil},
	{"half the size of an egg of butter", []string{"0.5 size of an egg butter_period_salted"}, nil},

	// the weight of eggs
	{"the weight of four eggs in butter", []string{"4 weight of egg butter_period_salted"}, nil},
	{"the weight of 4 eggs in sugar and flour", []string{"4 weight of egg sugar_white", "4 weight of egg flour_period_soft"}, nil},
	{"the weight of five eggs in flour, of four in sugar", []string{"5 weight of egg flour_period_soft", "4 weight of egg sugar_white"}, nil},
	{"4 eggs, their weight in butter, sugar and flour", []string{"4 x egg egg_whole", "4 weight of egg butter_period_salted", "4 weight of egg sugar_white", "4 weight of egg flour_period_soft"}, nil},
	{"half the weight of 4 eggs in flour", []string{"2 weight of egg flour_period_soft"}, nil},

	// several things
	{"half a pound each of butter and sugar", []string{"0.5 pound butter_period_salted", "0.5 pound sugar_white"}, nil},
	{"butter and sugar, of each half a pound", []string{"0.5 pound butter_period_salted", "0.5 pound sugar_white"}, nil},
	{"butter and sugar, 4 oz each", []string{"4 ounce butter_period_salted", "4 ounce sugar_white"}, nil},
	{"4 oz of butter and 2 oz of sugar", []string{"4 ounce butter_period_salted", "2 ounce sugar_white"}, nil},
	{"4 egg yolks, well beaten with 2 oz sugar", []string{"4 x egg egg_yolk: well beaten", "2 ounce sugar_white"}, nil},
	{"8 oz fat, half lard half butter", []string{"4 ounce lard", "4 ounce butter_period_salted"}, []string{`"fat" is taken as half lard half butter`}},
	{"wine and brandy, half a pint", []string{"0.5 pint x_wine_brandy"}, nil},
	{"1 pint of milk or cold tea", []string{"1 pint milk_whole"}, []string{`"milk or cold tea": taken as milk`}},

	// no amount
	{"butter", []string{"not given butter_period_salted"}, nil},
	{"salt, to taste", []string{"to taste salt"}, nil},
	{"salt and nutmeg, to taste", []string{"to taste salt", "to taste spice_nutmeg"}, nil},
	{"a little salt", []string{"not given salt"}, nil},
	{"season to taste", []string{"to taste spice_pepper"}, []string{"taken as pepper, black or white"}},
	{"water, quantity not given", []string{"not given water"}, nil},
	{"flour, enough to make a stiff paste", []string{"enough flour_period_soft"}, nil},
	{"enough water to make a stiff paste", []string{"enough water"}, nil},
	{"as much flour as will make it a stiff paste", []string{"enough flour_period_soft"}, nil},
	{"milk to mix", []string{"enough milk_whole"}, nil},
	{"pinch of salt", []string{"1 pinch salt"}, []string{"no number is given: taken as one pinch"}},

	// as fields are written
	{"2 each lemon, zest and juice", []string{"2 x lemon lemon_peel: rind, zest", "2 x lemon lemon_juice_period: juice"}, nil},
	{"4 weight-of-eggs sugar", []string{"4 weight of egg sugar_white"}, nil},
	{"2 each of lemons and limes, juice only", []string{"2 x lemon lemon_juice_period: juice, only", "2 x lime lime_juice: juice, only"}, nil},

	// parts
	{"2 parts flour, 1 part butter", []string{"2 parts flour_period_soft", "1 parts butter_period_salted"}, nil},
	{"2 parts flour", []string{"2 parts flour_period_soft"}, nil},
	{"65% water", []string{"65 parts water"}, nil},
}

func TestLine(t *testing.T) {
	r := reader(t)
	for _, c := range lineCases {
		t.Run(c.text, func(t *testing.T) {
			line, troubles := r.Line(c.text)
			require.Empty(t, troubles)
			require.Equal(t, c.text, line.Text)
			require.Equal(t, c.items, briefs(line.Items))
			require.Equal(t, c.notes, line.Notes)
		})
	}
}

// refused are lines that cannot be read, where in them the trouble lies and
// what is said of it.
var refused = []struct {
	text   string
	column int
	what   string
	hint   string
}{
	// nothing to read
	{"", 1, "the line is empty", "6 eggs"},
	{",,,", 1, "the line is empty", ""},
	{"half a pound of", 1, "does not say what it is of", ""},
	{"a", 1, "does not say what it is of", ""},

	// numbers
	{"0 eggs", 1, `"0" is no amount`, ""},
	{"-6 eggs", 1, "less than nothing", ""},
	{"1/0 lb flour", 1, "divides by nothing", ""},
	{"1,5 l milk", 1, "after a point, not a comma", ""},
	{"1.2.3 g flour", 1, "two points", ""},
	{"99999999999999 eggs", 1, "more digits", ""},
	{"5000000 g flour", 1, "more than any kitchen weighs", ""},

	// names
	{"2 oz of purslance", 9, `unknown ingredient "purslance"`, "purslane"},
	{"6 oz buter", 6, `unknown ingredient "buter"`, "butter"},
	{"some nonsuch", 6, `unknown ingredient "nonsuch"`, ""},
	{"8 oz butter candle", 6, `unknown ingredient "butter candle"`, "butter"},

	// measures
	{"3 gils of milk", 3, `unknown measure "gils"`, "gill"},
	{"2 tblspoons sugar", 3, `unknown measure "tblspoons"`, "tablespoons"},
	{"a lippie of flour", 1, `the measure "lippie" is not known for 1838 in england`, "in scotland"},
	{"a bottle of vinegar", 1, `what a "bottle" of vinegar comes to is not known`, "wine"},
	{"1 oz to a pint of milk", 6, "different measures", "in one measure"},
	{"1 cup less 1 tablespoon sugar", 7, "not worked out here", "reckon it out"},
	{"butter the size of a teacup", 8, `how big "teacup" is, is not known`, "size of"},

	// things nobody can weigh one of
	{"3 flour", 3, "how much is one flour?", "give a weight or a measure"},
	{"crumb of a penny loaf, grated", 1, "no fixed weight", "weigh the crumb"},
	{"half a stale loaf", 8, "no fixed weight", "weigh the crumb"},
	{"the juice of 2 onions", 16, "how much is the juice of one onion?", ""},
	{"the weight of 2 lemons in sugar", 17, `what "lemons" weigh is not known`, "8 oz"},
	{"4 eggs, leaving out 5 of the whites", 9, "more than there are in 4 eggs", "check"},

	// amounts that hang on something else
	{"their weight in sugar", 1, `"their weight" leans on another line`, "write the weight"},
	{"equal weights: their weight in sugar", 1, "leans on another line", "write the weight"},
	{"of each a pound", 1, `"of each" leans on another line`, "butter and sugar, of each"},
	{"as much butter", 1, `"as much" leans on another line`, ""},
	{"2 ditto of sugar", 1, `"ditto" leans on another line`, "write the name"},
	{"To every lb. of flour, 8 oz. of butter", 1, "a proportion and not an amount", "reckon it out"},
	{"4 oz of butter and sugar", 9, "one amount between them", "of each"},

	// a second thing that would be lost as a remark on the first
	{"6 eggs, puff paste", 9, `"puff paste" looks like a thing of its own`, "a line of its own"},
	{"2 oz of butter, pepper and salt to taste", 17, "looks like a thing of its own", ""},
	{"4 oz. of almonds, 6 bitter ones", 19, "looks like a thing of its own", ""},
	{"salt, and sufficient warm water to make a dough", 11, "looks like a thing of its own", ""},
}

func TestLineRefuses(t *testing.T) {
	r := reader(t)
	for _, c := range refused {
		t.Run(c.text, func(t *testing.T) {
			line, troubles := r.Line(c.text)
			require.NotEmpty(t, troubles, "%v", briefs(line.Items))
			require.Empty(t, line.Items)
			require.Contains(t, troubles[0].What, c.what)
			require.Equal(t, c.column, troubles[0].Column)
			require.Contains(t, troubles[0].Hint, c.hint)
			require.NotRegexp(t, `^[A-Z]|\.$`, troubles[0].What)
		})
	}
}

// The same words mean other things in another book or another kitchen.
func TestLineByYearAndPlace(t *testing.T) {
	for _, c := range []struct {
		text   string
		reader Reader
		items  []string
	}{
		{"a mutchkin of milk", Reader{Year: 1790, Place: "scotland"}, []string{"1 mutchkin milk_whole"}},
		{"a lippie of flour", Reader{Year: 1790, Place: "scotland"}, []string{"1 lippie flour_period_soft"}},
		{"1 cup powdered sugar", Reader{Year: 1900, Place: "usa"}, []string{"1 cup sugar_loaf_powdered"}},
		{"1 cup powdered sugar", Reader{Year: 1950, Place: "usa"}, []string{"1 cup sugar_icing"}},
		{"1 cup flour", Reader{Year: 1950, Place: "usa"}, []string{"1 cup flour_all_purpose"}},
		{"2 oz corn flour", Reader{Year: 1930, Place: "england"}, []string{"2 ounce cornflour"}},
		{"2 oz corn flour", Reader{Year: 1930, Place: "usa"}, []string{"2 ounce maize_flour"}},
		{"juice of a lemon", Reader{Year: 1838, Place: "england"}, []string{"1 x lemon lemon_juice_period: juice"}},
		{"juice of a lemon", Reader{Year: 1838, Place: "england", KitchenYear: 2026, KitchenPlace: "england"}, []string{"1 x lemon lemon_juice: juice"}},
	} {
		c.reader.Tables = tables(t)
		line, troubles := c.reader.Line(c.text)
		require.Empty(t, troubles, c.text)
		require.Equal(t, c.items, briefs(line.Items), c.text)
	}
}

// What an item keeps of the words: the amount as written, the name as written,
// and the rest as its form.
func TestLineKeepsTheWords(t *testing.T) {
	line, troubles := reader(t).Line("a bit of fresh butter about the size of a walnut, melted")
	require.Empty(t, troubles)
	it := line.Items[0]
	require.Equal(t, "a bit about the size of a walnut", it.Amount.Words)
	require.Equal(t, "fresh butter", it.Name)
	require.Equal(t, "melted", it.Form)
	require.Equal(t, "size of a walnut", it.Amount.Measure)
}

func TestLineTooLong(t *testing.T) {
	long := make([]byte, 2000)
	for i := range long {
		long[i] = "egg "[i%4]
	}
	_, troubles := reader(t).Line(string(long))
	require.Len(t, troubles, 1)
	require.Contains(t, troubles[0].What, "too long")
}
