package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// bookLines are ingredient lines as older and newer books word them, with the
// ingredients they may come to. An empty list is a line that has to be refused.
var bookLines = []struct {
	text  string
	year  int
	place string
	ids   []string
}{
	{"half a pound of loaf sugar, pounded and sifted", 1838, "england", []string{"sugar_white", "sugar_loaf_powdered"}},
	{"three quarters of a pound of fine flour", 1838, "england", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"a quarter of a pound of fresh butter", 1838, "england", []string{"butter_salted", "butter_unsalted", "butter_period_salted"}},
	{"1 1/2 lb. of flour, well dried", 1838, "england", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"six ounces of butter melted to oil", 1838, "england", []string{"butter_salted", "butter_unsalted", "butter_period_salted", "butter_clarified"}},
	{"½ oz of powdered cinnamon", 1838, "england", []string{"spice_cinnamon"}},
	{"six eggs, yolks and whites beaten apart", 1838, "england", []string{"egg_whole"}},
	{"the yolks of eight eggs", 1838, "england", []string{"egg_yolk", "egg_yolk_hand_separated"}},
	{"the whites of four eggs whisked to a stiff froth", 1838, "england", []string{"egg_white", "egg_white_hand_separated"}},
	{"two or three eggs", 1838, "england", []string{"egg_whole"}},
	{"a dozen eggs", 1838, "england", []string{"egg_whole"}},
	{"the juice of two lemons", 1838, "england", []string{"lemon_juice", "lemon_juice_period"}},
	{"the grated rind of a lemon", 1838, "england", []string{"lemon_peel"}},
	{"rind and juice of 3 Seville oranges", 1838, "england", []string{"orange_peel", "seville_orange_juice", "orange_juice"}},
	{"a pint of new milk", 1838, "england", []string{"milk_whole"}},
	{"a pint of new milk", 1790, "england", []string{"milk_whole"}},
	{"half a pint of thick cream", 1838, "england", []string{"cream_single", "cream_whipping", "cream_double", "cream_period_plain", "cream_clotted"}},
	{"a gill of brandy", 1838, "england", []string{"brandy", "spirit_period"}},
	{"a gill of brandy", 1838, "usa", []string{"brandy", "spirit_period"}},
	{"a wine-glassful of sherry", 1838, "england", []string{"sherry", "sherry_period"}},
	{"a tea-cupful of treacle", 1838, "england", []string{"treacle", "molasses"}},
	{"two table-spoonfuls of rose-water", 1838, "england", []string{"rosewater"}},
	{"a dessert spoonful of flour", 1838, "england", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"a salt-spoonful of salt", 1838, "england", []string{"salt"}},
	{"a bit of butter the size of a walnut", 1838, "england", []string{"butter_salted", "butter_unsalted", "butter_period_salted"}},
	{"butter as big as an egg", 1838, "england", []string{"butter_salted", "butter_unsalted", "butter_period_salted"}},
	{"half a nutmeg, grated", 1838, "england", []string{"spice_nutmeg"}},
	{"a pinch of saffron", 1838, "england", []string{"spice_saffron"}},
	{"4 oz. of Jordan almonds, blanched and pounded", 1838, "england", []string{"almonds", "almonds_ground"}},
	{"a quarter of a peck of flour", 1838, "england", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"one pound and a half of currants, washed and picked", 1838, "england", []string{"currants_dried"}},
	{"the weight of four eggs in butter", 1838, "england", []string{"butter_salted", "butter_unsalted", "butter_period_salted"}},
	{"equal weights: their weight in sugar", 1838, "england", nil},
	{"1 quart of cream", 1838, "england", []string{"cream_single", "cream_whipping", "cream_double", "cream_period_plain", "cream_clotted"}},
	{"a mutchkin of milk", 1790, "scotland", []string{"milk_whole"}},
	{"a drachm of isinglass", 1838, "england", []string{"isinglass"}},
	{"crumb of a penny loaf, grated", 1838, "england", nil},
	{"yeast, a spoonful", 1838, "england", []string{"yeast_fresh", "yeast_dry"}},
	{"12 oz (340 g) plain flour", 1838, "england", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"250 ml double cream", 2020, "england", []string{"cream_single", "cream_whipping", "cream_double", "cream_period_plain", "cream_clotted"}},
	{"2 cups sugar", 1900, "usa", []string{"sugar_white", "sugar_loaf_powdered"}},
	{"1 cup butter", 1900, "usa", []string{"butter_salted", "butter_unsalted", "butter_period_salted"}},
	{"1 cup sifted flour", 1900, "usa", []string{"flour_all_purpose", "flour_pastry", "flour_period_soft", "flour_cake"}},
	{"3 tbsp cornstarch", 1930, "usa", []string{"cornflour"}},
	{"4 large eggs", 2015, "usa", []string{"egg_whole"}},
	{"4 large eggs", 2015, "england", []string{"egg_whole"}},
	{"10 eggs, leaving out 4 of the whites", 1838, "england", []string{"egg_whole", "egg_yolk", "egg_white", "egg_yolk_hand_separated", "egg_white_hand_separated"}},
	{"a quartern of cream", 1838, "england", []string{"cream_single", "cream_whipping", "cream_double", "cream_period_plain", "cream_clotted"}},
}

func TestBookLines(t *testing.T) {
	for _, c := range bookLines {
		t.Run(c.text, func(t *testing.T) {
			r := Reader{Tables: tables(t), Year: c.year, Place: c.place}
			line, troubles := r.Line(c.text)
			if len(c.ids) == 0 {
				require.NotEmpty(t, troubles)
				return
			}
			require.Empty(t, troubles)
			require.NotEmpty(t, line.Items)
			for _, it := range line.Items {
				require.Contains(t, c.ids, it.Ingredient)
			}
		})
	}
}
