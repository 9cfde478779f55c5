package receipt

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
)

// wovenCases are sentences of an English book of 1838, the ingredients they come
// to, and why.
var wovenCases = []struct {
	text  string
	items []string
	why   string
}{
	{"Beat six eggs and stir into them half a pound of melted butter.", []string{"6 x egg egg_whole", "0.5 pound butter_period_salted: melted"}, "amounts in the midst of an order"},
	{"Take a pound of flour, and six ounces of butter; bake it a quarter of an hour.", []string{"1 pound flour_period_soft", "6 ounce butter_period_salted"}, "a quarter of an hour is no ingredient"},
	{"Mix it in a quart basin with a pint of milk.", []string{"1 pint milk_whole"}, "a quart basin is no quart"},
	{"Put six eggs into it, when it is as thick as cream.", []string{"6 x egg egg_whole"}, "what it is likened to is not put in"},
	{"Cut half a pound of citron into two pieces.", []string{"0.5 pound candied_peel"}, "two pieces are no amount"},
	{"Beat six eggs. Stir in the eggs with a spoonful of flour.", []string{"6 x egg egg_whole", "1 spoonful flour_period_soft"}, "spoken of again, it is not a second line"},
	{"Butter a dish, and flour the board; put in six eggs.", []string{"6 x egg egg_whole"}, "what is done to the dish and the board is not put in"},

	// by what was named before
	{"Six ounces of butter and the same of sugar.", []string{"6 ounce butter_period_salted", "6 ounce sugar_white"}, "the same: as of the butter"},
	{"Half a pound of butter, half as much sugar.", []string{"0.5 pound butter_period_salted", "0.25 pound sugar_white"}, "half as much, reckoned out"},
	{"Take six eggs, their weight in sugar, and half their weight in flour.", []string{"6 x egg egg_whole", "6 weight of egg sugar_white", "3 weight of egg flour_period_soft"}, "weighed against the eggs"},
	{"Weigh twelve eggs against sugar.", []string{"12 x egg egg_whole", "12 weight of egg sugar_white"}, "weighed against the eggs"},
	{"The weight of 4 eggs in sugar, the weight of 7 in flour.", []string{"4 weight of egg sugar_white", "7 weight of egg flour_period_soft"}, "of 7 is of 7 eggs"},
	{"Two spoonfuls of brandy and three of rose-water.", []string{"2 spoonful spirit_period", "3 spoonful rosewater"}, "three spoonfuls"},
	{"Three quarters of a pound of sugar, three quarters of butter.", []string{"0.75 pound sugar_white", "0.75 pound butter_period_salted"}, "of a pound"},
	{"½ lb. flour, ¼ do. butter.", []string{"0.5 pound flour_period_soft", "0.25 pound butter_period_salted"}, "ditto"},
	{"Half a pound of sweet almonds and 3 oz. of bitter.", []string{"0.5 pound almonds_ground", "3 ounce almonds_bitter"}, "bitter almonds"},
	{"A quarter of a pound of sweet almonds, 4 bitter ones.", []string{"0.25 pound almonds_ground", "4 x bitter-almond almonds_bitter"}, "ones are of the thing named before"},
	{"Take 4 lb. of loaf flour, and a pound of butter.", []string{"4 pound flour_period_soft", "1 pound butter_period_salted"}, "flour for loaves, and no loaf"},
	{"Take a pound of flour and 1 qrt. of milk.", []string{"1 pound flour_period_soft", "1 quart milk_whole"}, "a quart, shortened"},
	{"Take half a pound of flour, and 4 ounces of white powdered\nsugar.", []string{"0.5 pound flour_period_soft", "4 ounce sugar_loaf_powdered: powdered"}, "a name may go over the end of a line"},
	{"Take half a pound of flour, and 4 ounces of white pow-\ndered sugar.", []string{"0.5 pound flour_period_soft", "4 ounce sugar_loaf_powdered: powdered"}, "a word may be broken at the end of a line"},
	{"4 ounces of white pow-\ndered sugar, half a pound of but-\nter; mix.", []string{"4 ounce sugar_loaf_powdered: powdered", "0.5 pound butter_period_salted"}, "at the start of the text as well"},
	{"Take two spoonfuls of rose-\nwater, and half a pound of sugar.", []string{"2 spoonful rosewater", "0.5 pound sugar_white"}, "the hyphen of rose-water is its own"},
	{"Take half a pound of su\u00ADgar and 6 ounces of but\u00AD\nter.", []string{"0.5 pound sugar_white", "6 ounce butter_period_salted"}, "a soft hyphen is no part of a word"},
	{"4 ounces of white powdered sugar beaten with six eggs.", []string{"4 ounce sugar_loaf_powdered: powdered, beaten", "6 x egg egg_whole"}, "what is said behind the name does not hide what stands in it"},
	{"Take a pound of muffin flour, 2 oz. of pie flour and 3 oz. of rice flour.", []string{"1 pound flour_period_soft", "2 ounce flour_period_soft", "3 ounce rice_flour"}, "flour for muffins, for pies, but rice flour is of rice"},
	{"Four ounces of butter, and as much white powdered sugar.", []string{"4 ounce butter_period_salted", "4 ounce sugar_loaf_powdered: powdered"}, "white is of the sugar, and no white of egg"},
	{"Break a cocoa-nut, and grate half a pound of the nut.", []string{"0.5 pound coconut_fresh"}, "the nut is the cocoa-nut"},

	{"Six ounces of butter, half as much sugar as butter, and the same weight of almonds as of sugar.", []string{"6 ounce butter_period_salted", "3 ounce sugar_white", "3 ounce almonds"}, "by another thing that is named"},
	{"Take as much sugar as the weight of three eggs.", []string{"3 weight of egg sugar_white"}, "by the weight of eggs"},
	{"Rub in as much lard as a walnut.", []string{"1 size of a walnut lard"}, "as big as a walnut"},
	{"Weigh five eggs; take their weight in flour and in sugar.", []string{"5 x egg egg_whole", "5 weight of egg flour_period_soft", "5 weight of egg sugar_white"}, "in each of them"},
	{"A pound of rice, the same of raisins, and of clean currants.", []string{"1 pound rice", "1 pound raisins", "1 pound currants_dried"}, "the same of both"},
	{"Three pounds of flour, two of raisins and one of suet.", []string{"3 pound flour_period_soft", "2 pound raisins", "1 pound suet"}, "two pounds, and not two raisins"},
	{"A pound of sugar, and a dozen of walnuts.", []string{"1 pound sugar_white", "12 x walnut walnuts"}, "a dozen is counted"},
	{"A gill of sack, ditto of cream.", []string{"1 gill sherry_period", "1 gill cream_period_plain"}, "as much of the cream"},

	// the book leaves the choice: the first stands in the items
	{"A gill of sack or white wine.", []string{"1 gill sherry_period"}, "one or the other"},

	{"Cream together two ounces each of lard and sugar.", []string{"2 ounce lard", "2 ounce sugar_white"}, "creaming is done, and no cream put in"},

	{"Beat three eggs, and put to them as much lard melted as will make it fit to roll.", []string{"3 x egg egg_whole", "enough lard: melted"}, "as much as will, and not as much as of the eggs"},

	{"Take a pint of cream, a blade of mace or two, a Naples biscuit or two grated, and six eggs.", []string{"1 pint cream_period_plain", "1-2 blade spice_mace", "1-2 x naples-biscuit sponge_biscuit_crumb", "6 x egg egg_whole"}, "one or two"},

	{"Put in six eggs, a nutmeg, sugar, a little salt.", []string{"6 x egg egg_whole", "1 x nutmeg spice_nutmeg", "not given sugar_white", "not given salt"}, "what stands behind a comma is not what is sugared"},

	// parts of eggs and fruits
	{"Squeeze the juice of two lemons and three oranges into a pint of milk and six eggs.", []string{"2 x lemon lemon_juice_period: juice", "3 x orange orange_juice: juice", "1 pint milk_whole", "6 x egg egg_whole"}, "the juice of both, the eggs whole"},
	{"Take six eggs, juice two oranges, outward rind one lemon.", []string{"6 x egg egg_whole", "2 x orange orange_juice: juice", "1 x lemon lemon_peel: rind, outward"}, "the number in words behind the part"},
	{"Beat the yolks of nine and whites of four eggs.", []string{"9 x egg egg_yolk", "4 x egg egg_white"}, "nine are of the yolks"},
	{"Take six eggs, and two yolks.", []string{"6 x egg egg_whole", "2 x egg egg_yolk"}, "two yolks more"},
	{"Take the yolks of ten eggs and the whites of half of them.", []string{"10 x egg egg_yolk", "5 x egg egg_white"}, "half of them are five"},
	{"Two-and-twenty eggs.", []string{"22 x egg egg_whole"}, "the tens last"},
	{"Eggs, seven; lemons, two; sugar, a pound.", []string{"7 x egg egg_whole", "2 x lemon lemon_juice_period: juice", "2 x lemon lemon_peel: rind", "1 pound sugar_white"}, "the number behind the name"},
	{"A pound of sugar, of eggs five.", []string{"1 pound sugar_white", "5 x egg egg_whole"}, "eggs are counted, and not weighed"},
	{"Orange, lemon and citron, of each an ounce.", []string{"1 ounce candied_peel", "1 ounce candied_peel", "1 ounce candied_peel"}, "peels all of them"},
	{"The rind of two lemons, grated; squeeze in the juice.", []string{"2 x lemon lemon_peel: rind, grated", "2 x lemon lemon_juice_period: juice"}, "the juice of those lemons"},
	{"Grate the rind of six lemons; press out the juice of three.", []string{"6 x lemon lemon_peel: rind", "3 x lemon lemon_juice_period: juice"}, "of three lemons"},
	{"Grate the rind of a lemon, and squeeze it.", []string{"1 x lemon lemon_peel: rind", "1 x lemon lemon_juice_period: juice"}, "squeezing gives the juice"},
	{"Half the rind of a lemon.", []string{"0.5 x lemon lemon_peel"}, "the rind of half a lemon"},
	{"Whip the whites of four eggs; add the yolks.", []string{"4 x egg egg_white", "4 x egg egg_yolk"}, "the yolks of the same eggs"},
	{"The yolks of seven eggs and the whites of but two of them.", []string{"7 x egg egg_yolk", "2 x egg egg_white"}, "but two: only two"},
	{"Of 12 eggs whip the whites alone to a froth.", []string{"12 x egg egg_white"}, "the yolks are not put in"},
	{"Ten eggs, leaving out half the whites, well beaten.", []string{"10 x egg egg_yolk: well beaten", "5 x egg egg_white: well beaten"}, "half the whites left out"},
	{"Seven eggs, but of the whites only four.", []string{"7 x egg egg_yolk", "4 x egg egg_white"}, "the number may stand behind the whites"},
	{"Ten eggs, and of the whites but four.", []string{"10 x egg egg_yolk", "4 x egg egg_white"}, "but four: only four"},
	{"Ten eggs, leaving out three of the whites.", []string{"10 x egg egg_yolk", "7 x egg egg_white"}, "three left out of ten"},

	// of each, and in proportion
	{"A glass each of wine and brandy.", []string{"1 glass white_wine", "1 glass spirit_period"}, "a glass of each"},
	{"Sugar, butter and flour, a pound of each.", []string{"1 pound sugar_white", "1 pound butter_period_salted", "1 pound flour_period_soft"}, "a pound of each"},
	{"Of each one glass: white wine, brandy and rose water.", []string{"1 glass white_wine", "1 glass spirit_period", "1 glass rosewater"}, "a glass of each"},
	{"Strong coffee and hot milk, of each half a pint.", []string{"0.5 pint coffee_brewed", "0.5 pint milk_whole"}, "half a pint of the one and of the other"},
	{"Take of hot milk and of coffee, made strong, each half a pint.", []string{"0.5 pint milk_whole", "0.5 pint coffee_brewed"}, "a clause may stand between the names and what they share"},
	{"To every pound of flour put half a pound of butter.", []string{"1 pound flour_period_soft", "0.5 pound butter_period_salted"}, "reckoned on one pound"},

	// the amount behind the name
	{"Flour, half a pound; suet, chopped fine, twelve ounces.", []string{"0.5 pound flour_period_soft", "12 ounce suet: chopped fine"}, "name first"},
	{"Of milk there is a pint, of butter melted the same weight.", []string{"1 pint milk_whole", "1 pint butter_period_salted"}, "there is, and the same"},
	{"Of flour sift half a pound.", []string{"0.5 pound flour_period_soft"}, "an order between"},

	{"Put as much water as will bring a pound of flour to a paste.", []string{"enough water", "1 pound flour_period_soft"}, "the flour has an amount of its own"},
	{"Sweeten a quart of cream to your palate.", []string{"to taste sugar_white", "1 quart cream_period_plain"}, "the cream is put in as well"},
	{"A stick of cinnamon and a few bitter almonds.", []string{"1 stick spice_cinnamon", "not given almonds_bitter"}, "a stick is a piece here"},
	{"Fill the case with stewed plums made sweet with sugar.", []string{"not given plums: stewed", "not given sugar_white"}, "what fills it is put in"},
	{"A lump of butter the size of an egg; a pound of flour.", []string{"1 size of an egg butter_period_salted", "1 pound flour_period_soft"}, "the bigness tells more than the lump"},
	{"Six eggs, and a tea-spoonful of mace and cloves.", []string{"6 x egg egg_whole", "0.5 teaspoon spice_mace: equal parts", "0.5 teaspoon spice_cloves: equal parts"}, "spices have the spoonful between them"},
	{"Pare some pears, weigh two pounds, and slice them.", []string{"2 pound pears"}, "two pounds of the pears"},
	{"Two ounces of sweet and one of bitter almonds.", []string{"2 ounce almonds_ground", "1 ounce almonds_bitter"}, "almonds, both"},
	{"Six ounces of sweet almonds, and an ounce of shelled bitter ones.", []string{"6 ounce almonds_ground", "1 ounce almonds_bitter: shelled"}, "ones behind an of"},
	{"Half a pound, or a pint, of flour; six eggs.", []string{"0.5 pound flour_period_soft", "6 x egg egg_whole"}, "one amount told two ways"},
	{"Six eggs. Add mace, nutmeg, or cinnamon.", []string{"6 x egg egg_whole", "not given spice_mace"}, "one of the three"},
	{"It is sweetened to the palate; six eggs.", []string{"to taste sugar_white", "6 x egg egg_whole"}, "sweetened with sugar"},
	{"Six eggs, and the crumb of a penny loaf.", []string{"6 x egg egg_whole", "not given breadcrumbs_fresh"}, "a loaf has no fixed weight"},
	{"Six sponge biscuits, and six eggs; make it into three loaves.", []string{"not given sponge_biscuit_crumb", "6 x egg egg_whole"}, "what one weighs is not known; the loaves are what comes of it"},
	{"Roll two oranges under the hand, and squeeze them; throw away the skins, leaving out the peel; six eggs.", []string{"2 x orange orange_juice: juice", "2 x orange orange_peel: rind", "6 x egg egg_whole"}, "skins are spoken of: both parts stand"},
	{"Squeeze three limes over it; six eggs.", []string{"3 x lime lime_juice: juice", "6 x egg egg_whole"}, "squeezed, and of no rind a word"},
	{"Six eggs, a little sack, and sugar it to your taste.", []string{"6 x egg egg_whole", "not given sherry_period", "to taste sugar_white"}, "the taste is of the sugar"},
	{"Currants, if liked, one pound; six eggs.", []string{"1 pound currants_dried: if liked", "6 x egg egg_whole"}, "a clause may stand between"},
	{"Lay them in a dish with currants; rub the mould with butter; six eggs.", []string{"not given currants_dried", "6 x egg egg_whole"}, "laid with currants, rubbed with butter"},
	{"Two ounces of orange and citron cut thin; six eggs.", []string{"2 ounce candied_peel", "6 x egg egg_whole"}, "peels, two ounces of them"},
	{"The grated meat of one cocoanut; six eggs.", []string{"1 x coconut coconut_fresh", "6 x egg egg_whole"}, "the meat is what is used"},
	{"Boil it with nine sweet and four bitter almonds.", []string{"9 x almond almonds_ground", "4 x bitter-almond almonds_bitter"}, "almonds, both"},
	{"Four pounds of beef; apples, twice as much as beef.", []string{"4 pound beef", "8 pound apple_cooking"}, "eight pounds"},
	{"Five eggs, reserving the whites of two for the icing.", []string{"5 x egg egg_whole: reserving the whites of two for the icing"}, "they are put in after all"},
	{"Six eggs. Spread raspberry jam between the layers.", []string{"6 x egg egg_whole", "not given jam"}, "the jam is put in"},
	{"Strain saffron into it, to your taste; a pint of milk.", []string{"to taste spice_saffron: into it", "1 pint milk_whole"}, "to taste, of the saffron"},

	// no figure
	{"Add as much flour as will make it a stiff paste.", []string{"enough flour_period_soft"}, "enough for its purpose"},
	{"Add sugar by degrees, as much as will make it very sweet.", []string{"enough sugar_white: by degrees"}, "how it is put in says nothing of how much"},
	{"Beat six eggs with as much cold water, put in by degrees, as makes a paste.", []string{"6 x egg egg_whole", "enough water"}, "as much as makes a paste, and not as much as of the eggs"},
	{"Sweeten it to your taste.", []string{"to taste sugar_white"}, "to taste"},
	{"Sweeten it with loaf sugar to your taste.", []string{"to taste sugar_white"}, "to taste, of the sugar named"},
	{"Sweeten it with loaf sugar pounded, and make it hot.", []string{"to taste sugar_loaf_powdered"}, "what sweetens, and no amount, is to taste"},
	{"Put in a little salt and some currants.", []string{"not given salt", "not given currants_dried"}, "named, with no amount"},
	{"A bit of butter the size of a walnut.", []string{"1 size of a walnut butter_period_salted"}, "by its bigness"},
	{"Wet it with a little cold water.", []string{"not given water"}, "a little water is put in"},
	{"A pound of flour. Draw it together with cold water, as soft as dough.", []string{"1 pound flour_period_soft", "not given water"}, "water that draws a paste together is put in"},

	// the apothecaries' signs
	{"Add ℥ij of ginger and ʒ iv of mace, with ℥ss. of cinnamon.", []string{"2 troy ounce spice_ginger", "4 drachm spice_mace", "0.5 troy ounce spice_cinnamon"}, "ij is two, ss a half"},

	// not put in
	{"Take six eggs. Serve it with half a pint of cream.", []string{"6 x egg egg_whole"}, "set beside the dish"},
	{"Six eggs, or a spoonful of flour.", []string{"6 x egg egg_whole"}, "the one for the other"},
	{"Six eggs. If you have no cream, substitute a quarter of a pound of butter.", []string{"6 x egg egg_whole"}, "one thing instead of another"},
	{"Six eggs, and a pound of butter washed free of its salt.", []string{"6 x egg egg_whole", "1 pound butter_unsalted"}, "the salt is washed out"},
	{"Six eggs. Wash it in two cold waters, or three boiling waters.", []string{"6 x egg egg_whole"}, "what it is washed in"},
	{"Six eggs. Tie it in a cloth, and boil it in plenty of water.", []string{"6 x egg egg_whole"}, "what it is boiled in"},
	{"Six eggs; plums and cherries are done in the same way.", []string{"6 x egg egg_whole"}, "of another dish"},
	{"Six eggs. Fry them in hot lard or drippings.", []string{"6 x egg egg_whole"}, "what they are fried in"},
	{"Six eggs, with sugar-plums and dough-nuts.", []string{"6 x egg egg_whole"}, "a hyphen makes another word"},
	{"Six eggs. Eat it with cream; or with butter and sugar beaten together.", []string{"6 x egg egg_whole"}, "set beside the dish, both"},
	{"Six eggs. Roll it into a long roll, and cut it into rounds.", []string{"6 x egg egg_whole"}, "a shape, and no bread"},
	{"Six eggs. It is good for a veal or mutton pie.", []string{"6 x egg egg_whole"}, "what it is good for"},
	{"Six eggs. It makes a pudding, with sack and honey, for sauce.", []string{"6 x egg egg_whole"}, "what the sauce is of"},
	{"Take the crumb of a roll, and six eggs.", []string{"not given breadcrumbs_fresh", "6 x egg egg_whole"}, "crumb of bread"},
	{"Pare and quarter a dozen pippins.", []string{"12 x apple apple_cooking"}, "quarter is what is done"},

	// met in the receipts that were read first when all the rest stood
	{"Slice a loaf; sprinkle some sugar and nutmeg on each layer.", []string{"not given breadcrumbs_fresh", "not given sugar_white", "not given spice_nutmeg"}, "strewn between layers, it is put in"},
	{"Six eggs. Strew sugar over the top.", []string{"6 x egg egg_whole"}, "strewn over the top, it is not"},
	{"Six eggs, with three spoonfuls of grated cheese, pepper and salt.", []string{"6 x egg egg_whole", "3 spoonful x_cheese_hard", "not given spice_pepper", "not given salt"}, "pepper and salt are two"},
	{"Make six eggs and a pint of milk into a thick batter with flour.", []string{"6 x egg egg_whole", "1 pint milk_whole", "not given flour_period_soft"}, "what thickens it is put in"},
	{"Put six eggs in a pan with water and sugar enough to cover them.", []string{"6 x egg egg_whole", "enough water", "enough sugar_white"}, "enough of both"},
	{"The yolks of seven eggs, (omitting all the whites except two,) beaten well.", []string{"7 x egg egg_yolk: beaten well", "2 x egg egg_white"}, "all but two are left out"},
	{"The yolks of six eggs; a pint of milk; the whites of the six eggs beaten to a froth.", []string{"6 x egg egg_yolk", "1 pint milk_whole", "6 x egg egg_white"}, "the whites of those"},
	{"Six eggs, a pint of milk; the whites of the six eggs beaten to a froth.", []string{"6 x egg egg_whole", "1 pint milk_whole"}, "the whites of eggs that are listed whole"},
	{"The weight of six eggs in sugar, and of three in flour.", []string{"6 weight of egg sugar_white", "3 weight of egg flour_period_soft"}, "the second weight leans on the first"},
	{"A pint of milk, yolks of 3 eggs, pinch salt.", []string{"1 pint milk_whole", "3 x egg egg_yolk", "1 pinch salt"}, "a pinch without its article"},
	{"Candied orange and citron, an ounce of each.", []string{"1 ounce candied_peel", "1 ounce candied_peel"}, "two peels"},
	{"Half a pint of milk or cold water.", []string{"0.5 pint milk_whole"}, "the one or the other"},
	{"Half a pound each of Indian meal and flour.", []string{"0.5 pound cornmeal", "0.5 pound flour_period_soft"}, "two, though the words between make a third"},
	{"Two whole eggs, and the yolk of a third.", []string{"2 x egg egg_whole", "1 x egg egg_yolk"}, "one yolk besides"},
	{"Four eggs (whites and yolks beaten together).", []string{"4 x egg egg_whole"}, "both sides are the whole"},
	{"Take a nutmeg, three eggs or four, and two tablespoonfulls of sugar.", []string{"1 x nutmeg spice_nutmeg", "3-4 x egg egg_whole", "2 tablespoon sugar_white"}, "a number behind the name"},
	{"A pint of water, a ¼ lb. of butter and a little spice.", []string{"1 pint water", "0.25 pound butter_period_salted", "not given spice_mixed"}, "a quarter with an article before it"},
	{"The yolks of six eggs with the whites of two only.", []string{"6 x egg egg_yolk", "2 x egg egg_white"}, "two whites besides"},
	{"Sixteen eggs--leave four whites out.", []string{"16 x egg egg_yolk", "12 x egg egg_white"}, "behind a dash"},
	{"Beat six eggs till thick, leaving out the whites.", []string{"6 x egg egg_yolk"}, "left out later in the sentence"},
	{"Six eggs, and half a pound of currants washed and dredged with flour.", []string{"6 x egg egg_whole", "0.5 pound currants_dried: washed and dredged"}, "what they are dredged with"},
	{"If you wish to make it rich, take six eggs.", []string{"6 x egg egg_whole"}, "a wish leaves nothing open"},
	{"If you like, put in six eggs; take a pint of milk.", []string{"1 pint milk_whole"}, "a liking does"},
	{"Half a pound of candied orange, the same of candied lemon.", []string{"0.5 pound candied_peel", "0.5 pound candied_peel"}, "two things, though they are weighed alike"},
	{"One tablespoonful, each, of cloves and cinnamon.", []string{"1 tablespoon spice_cloves", "1 tablespoon spice_cinnamon"}, "commas round each"},
	{"Half a pound of butter, 1/4 citron.", []string{"0.5 pound butter_period_salted", "0.25 pound candied_peel"}, "a quarter of a pound"},
	{"Four pounds of flour; to every pound of flour put two eggs.", []string{"4 pound flour_period_soft", "8 x egg egg_whole"}, "so many for each of the four"},
	{"Take the outward rinds of two Seville oranges boiled.", []string{"2 x seville orange_peel: rind, outward"}, "boiled is said of the rinds"},
	{"One cocoa-nut grated.", []string{"1 x coconut coconut_fresh"}, "a cocoa-nut is a coconut"},
	{"Weigh twelve eggs. Add raisins and currants.", []string{"12 x egg egg_whole", "not given raisins", "not given currants_dried"}, "two dried fruits, each by itself"},
	{"Six eggs, and some coriander or allspice.", []string{"6 x egg egg_whole", "not given spice_coriander"}, "a choice of things not weighed"},
	{"A pint of currants and raisins mixed.", []string{"0.5 pint currants_dried", "0.5 pint raisins: mixed"}, "half a pint of each"},
	{"Nutmeg and cloves finely ground 1 oz. each.", []string{"1 ounce spice_nutmeg", "1 ounce spice_cloves"}, "the amount behind both"},
	{"Two cupfuls of unwashed butter.", []string{"2 cup butter_period_salted: unwashed"}, "a participle the tables do not know"},
	{"A spoonful of mixed spice, consisting of mace and cloves.", []string{"1 spoonful spice_mixed"}, "what it consists of is weighed already"},
	{"A spoonful of mixed spice (mace and cloves).", []string{"1 spoonful spice_mixed"}, "told in a bracket"},
	{"Eggs.............3. Milk..............1 pint.", []string{"3 x egg egg_whole", "1 pint milk_whole"}, "dots that lead to the figure"},
	{"Beat the yolks half an hour; add six eggs.", []string{"6 x egg egg_whole"}, "a time is no number of yolks"},
	{"Nine eggs, the yolks and whites apart, quarter of a pound of almonds.", []string{"9 x egg egg_whole", "0.25 pound almonds"}, "a quarter of a pound"},
	{"A pound of orange, lemon and citron peel.", []string{"1 pound candied_peel"}, "peels, all of them"},
	{"Six eggs, free from salt or sour milk.", []string{"6 x egg egg_whole"}, "what it must be free from"},
	{"Three quarters of a pound of the flour of potatoes.", []string{"0.75 pound potato_starch"}, "starch"},
	{"Half a tea-cup of white brandy.", []string{"0.5 teacup spirit_period"}, "no white of egg"},
	{"Six table-spoonfuls of raspberry or currant jelly.", []string{"6 tablespoon jelly"}, "a jelly of either"},
	{"A quart of milk and twelve yolks of eggs, and no whites.", []string{"1 quart milk_whole", "12 x egg egg_yolk"}, "none"},
	{"A pint of milk; a quart of the best cream.", []string{"1 pint milk_whole", "1 quart cream_period_plain"}, "the best cream is not the milk"},
	{"Add to the half pint two ounces of almonds.", []string{"2 ounce almonds"}, "two ounces, and no half pint more"},
	{"Six eggs. Stick a clove in each.", []string{"6 x egg egg_whole"}, "stuck on"},
	{"Six eggs; half a pound of raisins will be a pleasant addition.", []string{"6 x egg egg_whole"}, "an addition that may be left out"},
	{"Take four eggs, the weight of the eggs in sugar and in flour.", []string{"4 x egg egg_whole", "4 weight of egg sugar_white", "4 weight of egg flour_period_soft"}, "of those four"},
	{"Cream half a pound of butter.", []string{"0.5 pound butter_period_salted"}, "an order"},
	{"Dissolve six eggs in three parts of a pint of warm water.", []string{"6 x egg egg_whole", "0.75 pint water"}, "three parts of four"},
	{"Stir in a bowl the yolks of two eggs.", []string{"2 x egg egg_yolk"}, "a bowl to stir in is no measure"},
	{"The juice of one orange, and grate one-half of the peel.", []string{"1 x orange orange_juice: juice", "0.5 x orange orange_peel: rind, peel"}, "half of the peel"},
	{"Juice of one lemon, and half the peel.", []string{"1 x lemon lemon_juice_period: juice", "0.5 x lemon lemon_peel: rind, peel"}, "half of it"},
	{"Six ounces of dry, pounded, and sifted sugar.", []string{"6 ounce sugar_loaf_powdered: pounded, dry"}, "dry sugar"},
	{"Half an ounce of Cooper's gelatine.", []string{"0.5 ounce gelatine"}, "whose make it is"},
	{"Put the whole to one and a quarter of a pound of flour.", []string{"1.25 pound flour_period_soft"}, "a pound and a quarter"},
	{"A spoonful of double-refin'd sugar, and butter melt'd.", []string{"1 spoonful sugar_white", "not given butter_period_salted"}, "the old way of writing -ed"},
	{"Six eggs; spice it to your taste.", []string{"6 x egg egg_whole", "to taste spice_mixed"}, "an order to spice"},
	{"One tablespoonful each of water and milk, the white of one egg.", []string{"1 tablespoon water", "1 tablespoon milk_whole", "1 x egg egg_white"}, "the white has a number of its own"},
	{"A teaspoonful of soda in half a cup of sour cream.", []string{"1 teaspoon baking_soda", "0.5 cup sour_cream"}, "a second amount"},
	{"A pint of raisins, rubbed in flour.", []string{"1 pint raisins: rubbed in flour"}, "what they are rubbed in"},
	{"Mix together wine, water, sugar and nutmeg; six eggs.", []string{"not given white_wine", "not given water", "not given sugar_white", "not given spice_nutmeg", "6 x egg egg_whole"}, "water in a list"},
	{"Six ounces of moist sugar, six ounces of white.", []string{"6 ounce sugar_muscovado", "6 ounce sugar_white"}, "white sugar"},
	{"Six eggs. Mix it as a pound cake is mixed.", []string{"6 x egg egg_whole"}, "how it is mixed"},
	{"Ten ounces of butter; two ounces more will make it very rich.", []string{"10 ounce butter_period_salted"}, "what would make it richer"},
	{"Six eggs (lemon would improve it), a pint of milk.", []string{"6 x egg egg_whole", "1 pint milk_whole"}, "said of the lemon alone"},
	{"Half an ounce of nutmeg, and the same of mace, cloves and cinnamon.", []string{"0.5 ounce spice_nutmeg", "0.5 ounce spice_mace", "0.5 ounce spice_cloves", "0.5 ounce spice_cinnamon"}, "the same of each"},
}

func TestWoven(t *testing.T) {
	r := reader(t)
	for _, c := range wovenCases {
		t.Run(c.text, func(t *testing.T) {
			f, trace := r.Receipt("A pudding\n\n"+c.text+"\n", About{})
			require.NotNil(t, f, "%+v", trace.Unread)
			var got []string
			for _, p := range f.Parts {
				got = append(got, partBriefs(p)...)
			}
			require.Equal(t, c.items, got, c.why)
		})
	}
}

// What is taken from elsewhere in the book is a part; what is made here, or is
// only in hand, is none.
func TestCrossReferences(t *testing.T) {
	for _, c := range []struct{ text, take, lay, why string }{
		{"Beat six eggs. Line a dish with puff paste.", "puff paste", "lining", "lined with paste"},
		{"Beat six eggs, and bake it in a paste.", "paste", "lining", "baked in paste"},
		{"Beat six eggs. Lay a rim of puff paste round the dish.", "puff paste", "rim", "a rim only"},
		{"Beat six eggs. Line the dish with paste No. 3.", "paste no. 3", "lining", "by its number"},
		{"Beat six eggs. Line patty-pans with good short crust (see No. 1211).", "no. 1211", "patty", "by its number alone"},
		{"Beat six eggs to a stiff paste.", "", "", "a paste that is in hand"},
		{"Beat six eggs. Make a short crust, and fill it.", "short crust", "", "made by another page"},
		{"Line a dish with paste. Beat six eggs. Put an upper crust on it.", "paste", "lining and lid", "a second sentence tells of the lid"},
		{"Put a crust in a dish. Beat six eggs. Put on a crust and bake it.", "crust", "lining and lid", "a crust put on"},
		{"Line a dish with paste. Beat six eggs. Cover it, and bake.", "paste", "lining and lid", "covered and baked"},
		{"Beat six eggs. Pour it into a paste and bake it.", "paste", "lining", "poured into a paste"},
		{"Beat six eggs. With a nice paste line your dish.", "paste", "lining", "the paste before the lining"},
		{"Beat six eggs. Cover it with tart paste (No. 4), press it round the rim, and close it.", "no. 4", "lid", "pressed round the rim of the lid"},
		{"Beat six eggs, and when cold ice it with No. 84.", "no. 84", "", "an icing by its number"},
		{"Make it in a paste with the whites of two eggs.", "", "", "what is in hand is made into a paste"},
		{"Make a paste of a pound of flour and half a pound of butter. Line a dish with the paste. Beat six eggs.", "", "", "a paste that is made here"},
	} {
		t.Run(c.text, func(t *testing.T) {
			f, _ := reader(t).Receipt("A pudding\n\n"+c.text+"\n", About{})
			require.NotNil(t, f)
			take, lay := "", ""
			for _, p := range f.Parts {
				if p.Take != "" {
					take, lay = p.Take, p.Lay
				}
			}
			require.Equal(t, c.take, take, c.why)
			require.Equal(t, c.lay, lay, c.why)
		})
	}
}

// What is laid over what was baked, and an icing, are parts of their own.
func TestToppings(t *testing.T) {
	for _, c := range []struct{ text, part, items, why string }{
		{"A cake\n\nA pound of flour, a pound of butter and eight eggs. Bake it, and ice it with the whites of two eggs and half a pound of fine sugar.", "icing", "2 x egg egg_white, 0.5 pound sugar_white", "iced with"},
		{"A cake\n\nA pound of flour, a pound of butter and eight eggs. Bake it. Make an icing of the whites of two eggs and half a pound of sugar.", "icing", "2 x egg egg_white, 0.5 pound sugar_white", "an icing of"},
		{"A pie\n\nFour eggs, a pint of milk, half a cup of sugar. Beat the yolks with the sugar and bake in a crust. Beat the whites to a froth with two tablespoonfuls of sugar, and spread over the top.", "meringue", "4 x egg egg_white, 2 tablespoon sugar_white", "the whites of eggs that were counted whole"},
		{"A pie\n\nThe yolks of five eggs, a pint of milk. Bake it. Whip the whites of the five eggs with a teacup of sugar. Put this over the pudding.", "meringue", "5 x egg egg_white, 1 teacup sugar_white", "whites with a line of their own"},
		{"A pie\n\n3 eggs.\n3/4 cup white sugar.\nJuice of 1 lemon.\n\nStir in the beaten yolks and the lemon, and bake. Beat the whites to a stiff meringue with three tablespoonfuls powdered sugar. When the pies are done, spread it over the top.", "meringue", "3 x egg egg_white, 3 tablespoon sugar_loaf_powdered", "sugar besides that of the list"},
		{"A pudding\n\nSix eggs and a pint of milk; lay lightly over the top the whites of three eggs and three spoonfuls of sugar.", "icing", "3 x egg egg_white, 3 spoonful sugar_white", "laid over the top"},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, _ := reader(t).Receipt(c.text+"\n", About{})
			require.NotNil(t, f)
			for _, p := range f.Parts {
				if p.Name == c.part {
					require.Equal(t, c.items, strings.Join(partBriefs(p), ", "))
					return
				}
			}
			t.Errorf("no part %q", c.part)
		})
	}
}

// The oven and the dish, in other words than the tables have.
// What goes in and how it is handled tell the kind where the title would have it another.
func TestKindByMakings(t *testing.T) {
	for _, c := range []struct {
		text string
		kind formula.Kind
		why  string
	}{
		{"Plum cake\n\nTwo quarts of flour, a teacup of yeast, a pint of milk, half a pound of sugar and four eggs. Let it rise, and bake it.", formula.Bread, "it rises with yeast"},
		{"Plum cake\n\nTwo pounds of flour, a pound of butter, half a pound of sugar and four eggs. Bake it.", formula.Cake, "it does not"},
		{"Buckwheat cakes\n\nA quart of buckwheat meal, a teaspoonful of salt and two spoonfuls of yeast. Bake them on a griddle.", formula.Batter, "baked on a griddle"},
		{"Clear cakes\n\nA pound of gooseberries and a pound of sugar. Boil it, and dry it in a stove.", formula.Filling, "neither flour nor eggs"},
		{"Cherry paste\n\nTwo pounds of morello cherries and two pounds of sugar. Heat it, and dry it in a stove.", formula.Filling, "a paste of fruit"},
		{"Eggs and bread\n\nHalf a pint of breadcrumbs, a gill of milk and ten eggs. Beat it, and boil it.", formula.Filling, "the bread is put in"},
		{"Rolled jelly\n\nTwo eggs, a cup of sugar, a cup of flour and a teaspoon of baking powder. Beat it, and bake it.", formula.Cake, "flour that is raised"},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, _ := reader(t).Receipt(c.text+"\n", About{})
			require.NotNil(t, f)
			require.Len(t, f.Parts, 1)
			require.Equal(t, c.kind, f.Parts[0].Kind)
		})
	}
}

// A list may begin on the line of its heading.
func TestListBesideItsHeading(t *testing.T) {
	f, _ := reader(t).Receipt("Short crust\n\nIngredients--1 lb. of flour.\n   3/4 lb. of butter.\n   A pinch of salt.\n\nMethod.--Rub the butter into the flour.\n", About{})
	require.NotNil(t, f)
	require.Equal(t, []string{"1 pound flour_period_soft", "0.75 pound butter_period_salted", "1 pinch salt"}, partBriefs(f.Parts[0]))
}

func TestOvenAndDishInOtherWords(t *testing.T) {
	for _, c := range []struct{ text, oven, dish string }{
		{"Bake it in rather a hot oven.", "rather hot", ""},
		{"Bake it in a moderate-heated oven.", "moderate", ""},
		{"Set it in an oven moderately heated and bake it.", "moderate", ""},
		{"Bake it slowly half an hour.", "slow", ""},
		{"Bake it in cups or saucers.", "", "cups or saucers"},
		{"Bake it in tin pie-plates.", "", "tin pie-plates"},
		{"Bake it on a baking-sheet.", "", "baking-sheet"},
		{"Put it in a hoop and bake it.", "", "hoop"},
		{"Cover it with a sheet of paper and bake it.", "", ""},
		{"Bake it well, the oven being slow.", "slow", ""},
		{"Bake it in shallow pans, the oven slow.", "slow", "shallow pans"},
		{"Bake it at 350 degrees.", "350 F", ""},
	} {
		t.Run(c.text, func(t *testing.T) {
			f, _ := reader(t).Receipt("A pudding\n\nSix eggs. "+c.text+"\n", About{})
			require.NotNil(t, f)
			require.Equal(t, []string{c.oven, c.dish}, []string{f.Oven, f.Dish})
		})
	}
}
