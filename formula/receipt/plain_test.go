package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestPlain(t *testing.T) {
	for _, c := range []struct {
		plain Plain
		text  string
		items []string
		notes []string
	}{
		{Plain{"90", "ml", "seville orange juice", "strained"}, "90 ml seville orange juice, strained", []string{"90 ml seville_orange_juice: strained"}, nil},
		{Plain{"2", "each", "egg yolk", ""}, "2 egg yolks", []string{"2 x egg egg_yolk"}, nil},
		{Plain{"6", "", "egg", "large"}, "6 eggs, large", []string{"6 large x egg egg_whole: large"}, nil},
		{Plain{"1/2", "lb", "loaf sugar", ""}, "1/2 lb loaf sugar", []string{"0.5 pound sugar_white"}, nil},
		{Plain{"half a", "pint", "cream", ""}, "half a pint cream", []string{"0.5 pint cream_period_plain"}, nil},
		{Plain{"2 to 3", "fl_oz", "water", ""}, "2 to 3 fl oz water", []string{"2-3 fluid ounce water"}, nil},
		{Plain{"4 oz", "", "butter", ""}, "4 oz butter", []string{"4 ounce butter_period_salted"}, nil},
		{Plain{"about 6", "", "egg", ""}, "about 6 eggs", []string{"6 about x egg egg_whole"}, nil},
		{Plain{"2", "heaped tablespoons", "flour", ""}, "2 heaped tablespoons flour", []string{"2 heaped tablespoon flour_period_soft"}, nil},
		{Plain{"1", "cup", "butter", "small cup"}, "1 cup butter, small cup", []string{"1 small cup butter_period_salted: small cup"}, nil},
		{Plain{"1", "pint", "milk", "scant"}, "1 pint milk, scant", []string{"1 scant pint milk_whole: scant"}, nil},
		{Plain{"1", "cup", "flour", "rounding"}, "1 cup flour, rounding", []string{"1 rounded-cup cup flour_period_soft: rounding"}, nil},
		{Plain{"8", "oz", "curd", "loose"}, "8 oz curd, loose", []string{"8 ounce curd_new_milk_period: loose"}, nil},

		// units that are no measures
		{Plain{"4 to 5", "weight-of-eggs", "flour", ""}, "the weight of 4 to 5 eggs in flour", []string{"4-5 weight of egg flour_period_soft"}, nil},
		{Plain{"65", "part", "water", ""}, "65 parts water", []string{"65 parts water"}, nil},
		{Plain{"65", "percent", "water", ""}, "65 per cent water", []string{"65 parts water"}, nil},
		{Plain{"3", "unit", "rice bowls milk", ""}, "3 rice bowls milk", []string{"3 rice bowl milk_whole"}, nil},
		{Plain{"2", "", "yeast cake", ""}, "2 yeast cakes", []string{"2 x yeast-cake yeast_fresh"}, nil},
		{Plain{"1", "glass", "sherry", ""}, "1 glass sherry", []string{"1 glass sherry_period"}, nil},

		// no amount
		{Plain{"", "", "water", ""}, "water, quantity not given", []string{"not given water"}, nil},
		{Plain{"", "pinch", "salt", ""}, "a pinch of salt", []string{"1 pinch salt"}, nil},
		{Plain{"", "cup", "lemon juice", ""}, "lemon juice by the cup, quantity not given", []string{"not given lemon_juice_period"}, []string{"no number is given: how much by the cup is not said"}},
		{Plain{"to taste", "", "salt", ""}, "to taste salt", []string{"to taste salt"}, nil},
		{Plain{"", "", "cold water", "enough for a stiff paste"}, "cold water, enough for a stiff paste", []string{"enough water: enough for a stiff paste"}, nil},
		{Plain{"", "", "cold water", "as little as will make a stiff dough"}, "cold water, as little as will make a stiff dough", []string{"enough water: as little as will make a stiff dough"}, nil},
		{Plain{"", "", "milk", "to mix"}, "milk, to mix", []string{"enough milk_whole: to mix"}, nil},
		{Plain{"", "", "water", "to dough"}, "water, to dough", []string{"enough water: to dough"}, nil},
		{Plain{"", "", "cold water", "too little"}, "cold water, too little", []string{"not given water: too little"}, nil},
		{Plain{"", "", "butter", "marble size"}, "butter, marble size", []string{"1 size of a marble butter_period_salted: marble size"}, nil},
		{Plain{"", "", "juice of 2 lemons", ""}, "juice of 2 lemons, quantity not given", []string{"2 x lemon lemon_juice_period: juice"}, nil},

		// fruit, eggs, two things
		{Plain{"2", "each", "lemon", "large, juice and grated rind"}, "2 lemons, large, juice and grated rind",
			[]string{"2 large x lemon lemon_juice_period: juice, large", "2 large x lemon lemon_peel: rind, grated, large"}, nil},
		{Plain{"10", "", "egg", "leaving out 4 of the whites"}, "10 eggs, leaving out 4 of the whites",
			[]string{"10 x egg egg_yolk", "6 x egg egg_white"}, []string{"taken as 10 egg yolks and 6 egg whites"}},
		{Plain{"1", "pint", "brandy and water", "equal parts"}, "1 pint brandy and water, equal parts",
			[]string{"0.5 pint spirit_period: equal parts", "0.5 pint water: equal parts"}, nil},
		{Plain{"3", "each", "egg white", "stiff, 2 tsp sugar"}, "3 egg whites, stiff, 2 tsp sugar",
			[]string{"3 x egg egg_white: stiff, 2 tsp sugar"}, []string{`"2 tsp sugar" is left as said of it, and not weighed`}},
		{Plain{"4", "tbsp", "butter", "unsalted, melted"}, "4 tbsp butter, unsalted, melted",
			[]string{"4 tablespoon butter_unsalted: unsalted, melted"}, []string{"taken as unsalted butter"}},
	} {
		t.Run(c.text, func(t *testing.T) {
			line, troubles := reader(t).Plain(c.plain)
			require.Empty(t, troubles)
			require.Equal(t, c.text, line.Text)
			require.Equal(t, c.items, briefs(line.Items))
			require.Equal(t, c.notes, line.Notes)
		})
	}
}

func TestPlainRefuses(t *testing.T) {
	for _, c := range []struct {
		plain Plain
		what  string
		hint  string
	}{
		{Plain{"2", "gils", "milk", ""}, `unknown measure "gils"`, "gill"},
		{Plain{"2", "furlongs", "milk", ""}, `unknown measure "furlongs"`, ""},
		{Plain{"2", "lippie", "flour", ""}, `the measure "lippie" is not known for 1838 in england`, "scotland"},
		{Plain{"1e400", "g", "flour", ""}, `"1e400" is not a number`, "2 to 3"},
		{Plain{"0", "g", "flour", ""}, "no amount", ""},
		{Plain{"2", "oz", "buter", ""}, `unknown ingredient "buter"`, "butter"},
		{Plain{"2", "oz", "", ""}, "does not say what it is of", ""},
		{Plain{"3", "", "flour", ""}, "how much is one flour?", "give a weight or a measure"},
		{Plain{"4", "oz", "butter and sugar", ""}, "one amount between them", "of each"},
	} {
		t.Run(c.what, func(t *testing.T) {
			line, troubles := reader(t).Plain(c.plain)
			require.NotEmpty(t, troubles, "%v", briefs(line.Items))
			require.Empty(t, line.Items)
			require.Contains(t, troubles[0].What, c.what)
			require.Contains(t, troubles[0].Hint, c.hint)
			require.Positive(t, troubles[0].Column)
			require.LessOrEqual(t, troubles[0].Column, len(line.Text)+1)
		})
	}
}
