package ratios_test

import "fmt"

func Example_pieDough321() {
	// Ruhlman, Ratio (2009), pie dough, 3 parts flour : 2 parts fat : 1 part water.
	receipt{2009, "usa", "pastry", []string{"12 oz flour", "8 oz butter", "4 oz water"}}.percents(1)
	// Output:
	// 100.0 12 oz flour
	// 66.7 8 oz butter
	// 33.3 4 oz water
}

func Example_cookieDough123() {
	// Ruhlman, Ratio (2009), cookie dough, 1 part sugar : 2 parts fat : 3 parts
	// flour.
	r := receipt{2009, "usa", "pastry", []string{"9 oz flour", "6 oz butter", "3 oz sugar"}}
	fmt.Println("sugar to flour", r.ratio("sugar-to-flour").StringFixed(3))
	fmt.Println("fat to flour", r.ratio("fat-to-flour").StringFixed(3))
	// Output:
	// sugar to flour 0.333
	// fat to flour 0.667
}

func Example_poundCake() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter XXXI, pound
	// cake: a pound each of butter, sugar and flour, and ten eggs. With the eggs
	// weighed as a fourth pound all four stand equal.
	receipt{1896, "usa", "cake", []string{"1 lb flour", "1 lb butter", "1 lb sugar", "1 lb eggs"}}.percents(0)
	// Output:
	// 100 1 lb flour
	// 100 1 lb butter
	// 100 1 lb sugar
	// 100 1 lb eggs
}

func Example_poundCakeOfTenEggs() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter XXXI, pound
	// cake, as printed: ten eggs of 1896, out of the shell, are short of a pound.
	r := receipt{1896, "usa", "cake", []string{"1 lb butter", "1 lb sugar", "10 eggs", "1 lb flour"}}
	fmt.Println("egg to flour", r.ratio("egg-to-flour").StringFixed(2))
	fmt.Println("sugar to flour", r.ratio("sugar-to-flour").StringFixed(2))
	// Output:
	// egg to flour 0.97
	// sugar to flour 1.00
}

func Example_halfFatToFlour() {
	// Beeton, Household Management (revised ed. of about 1907), introduction to
	// pastry: ordinary short crust has half as much fat as flour by weight.
	r := receipt{1907, "england", "pastry", []string{"1 lb flour", "1/4 lb butter", "1/4 lb lard"}}
	fmt.Println("fat to flour", r.ratio("fat-to-flour").StringFixed(2))
	// Output: fat to flour 0.50
}

func Example_veryGoodShortCrust() {
	// Beeton, Household Management (ed. of 1865), no. 1210, very good short crust:
	// half a pound of butter and a third of a pint of water to the pound of flour.
	r := receipt{1865, "england", "pastry", []string{"1 lb flour", "1/2 lb butter", "1 tablespoon sifted sugar", "1/3 pint of water"}}
	fmt.Println("fat to flour", r.ratio("fat-to-flour").StringFixed(2))
	fmt.Println("added water to flour", r.ratio("added-water-to-flour").StringFixed(2))
	// Output:
	// fat to flour 0.50
	// added water to flour 0.42
}

func Example_puffPaste() {
	// Beeton, Household Management (ed. of 1865), no. 1205, very good puff paste:
	// a pound of butter to a pound of flour and not quite half a pint of water.
	receipt{1865, "england", "pastry", []string{"1 lb flour", "1 lb butter", "1/2 pint water"}}.percents(0)
	// Output:
	// 100 1 lb flour
	// 100 1 lb butter
	// 63 1/2 pint water
}

func Example_suetCrust() {
	// Beeton, Household Management (ed. of 1865), no. 1215, suet crust: five or
	// six ounces of suet to the pound of flour, and half a pint of water.
	receipt{1865, "england", "pastry", []string{"1 lb flour", "6 oz suet", "1/2 pint water"}}.percents(1)
	// Output:
	// 100.0 1 lb flour
	// 37.5 6 oz suet
	// 62.5 1/2 pint water
}

func Example_scotchShortbread() {
	// Beeton, Household Management (ed. of 1865), no. 1780, Scotch shortbread: two
	// pounds of flour, one of butter, a quarter of sugar.
	receipt{1865, "england", "pastry", []string{"2 lb flour", "1 lb butter", "1/4 lb sugar"}}.percents(1)
	// Output:
	// 100.0 2 lb flour
	// 50.0 1 lb butter
	// 12.5 1/4 lb sugar
}

func Example_eggToACup() {
	// McGee, On Food and Cooking (2004), chapter 2, custards: one or two eggs to
	// 250 ml of milk, a fifth to two fifths of an egg's weight to one of milk.
	one := receipt{2004, "usa", "filling", []string{"250 ml milk", "1 large egg", "30 g sugar"}}
	two := receipt{2004, "usa", "filling", []string{"250 ml milk", "2 large eggs", "30 g sugar"}}
	fmt.Println("one egg", one.ratio("egg-to-dairy").StringFixed(2))
	fmt.Println("two eggs", two.ratio("egg-to-dairy").StringFixed(2))
	fmt.Println("sugar", one.ratio("sugar-to-dairy").StringFixed(2))
	// Output:
	// one egg 0.19
	// two eggs 0.39
	// sugar 0.12
}

func Example_freeStandingCustard() {
	// Ruhlman, Ratio (2009), free-standing custard, 2 parts liquid : 1 part egg.
	r := receipt{2009, "usa", "filling", []string{"16 oz milk", "8 oz eggs", "4 oz sugar"}}
	fmt.Println("egg to dairy", r.ratio("egg-to-dairy").StringFixed(2))
	fmt.Println("dairy to egg", r.ratio("dairy-to-egg").StringFixed(2))
	// Output:
	// egg to dairy 0.50
	// dairy to egg 2.00
}

func Example_yolksToACup() {
	// McGee, On Food and Cooking (2004), chapter 2, custards: three yolks to 250
	// ml, the least that stands by itself.
	r := receipt{2004, "usa", "filling", []string{"250 ml milk", "3 large egg yolks"}}
	fmt.Println("yolk to dairy", r.ratio("yolk-to-dairy").StringFixed(2))
	// Output: yolk to dairy 0.19
}

func Example_lemonCurd() {
	// McGee, On Food and Cooking (2004), chapter 2, fruit curds: 375 g of sugar
	// and 125 ml each of juice and butter to four eggs. To the hundred of egg.
	r := receipt{2004, "usa", "filling", []string{"4 large eggs", "375 g sugar", "125 ml lemon juice", "125 ml butter"}}
	fmt.Println("basis", r.profile().Basis.Of)
	fmt.Println("sugar to egg", r.ratio("sugar-to-egg").StringFixed(2))
	fmt.Println("juice to egg", r.ratio("juice-to-egg").StringFixed(2))
	// Output:
	// basis egg
	// sugar to egg 1.88
	// juice to egg 0.65
}

func Example_pastryCream() {
	// McGee, On Food and Cooking (2004), chapter 2, pastry cream: 10 to 20 g of
	// flour thicken 250 ml of milk.
	least := receipt{2004, "usa", "filling", []string{"250 ml milk", "10 g flour", "2 large egg yolks"}}
	most := receipt{2004, "usa", "filling", []string{"250 ml milk", "20 g flour", "2 large egg yolks"}}
	fmt.Println("flour, g to the kg of milk:", least.ratio("flour-to-dairy").StringFixed(0), "to", most.ratio("flour-to-dairy").StringFixed(0))
	// Output: flour, g to the kg of milk: 39 to 78
}

func Example_meringue() {
	// Beeton, Household Management (ed. of 1865), no. 1451, meringues: half a
	// pound of sugar to the whites of four eggs, near 2 to 1 with the eggs of then.
	r := receipt{1865, "england", "meringue", []string{"the whites of 4 eggs", "1/2 lb pounded sugar"}}
	fmt.Println("sugar to white", r.ratio("sugar-to-white").StringFixed(1))
	// Output: sugar to white 2.2
}

func Example_savoyCake() {
	// Beeton, Household Management (ed. of 1865), no. 1782, Savoy cake: the weight
	// of four eggs in sugar, of seven in flour. Whatever an egg weighs, sugar is
	// four sevenths of the flour.
	r := receipt{1865, "england", "cake", []string{"7 eggs", "the weight of 4 eggs in sugar", "the weight of 7 eggs in flour"}}
	fmt.Println("sugar to flour", r.ratio("sugar-to-flour").StringFixed(10))
	// Output: sugar to flour 0.5714285714
}

func Example_commonBread() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter IV, water bread:
	// a pint and a quarter cup of water to six cups of flour, which by its table of
	// weights are a pound and a half.
	r := receipt{1896, "usa", "bread", []string{"2 cups water", "1/4 cup water", "6 cups flour", "1 1/2 teaspoons salt"}}
	fmt.Println("added water to flour", r.ratio("added-water-to-flour").StringFixed(2))
	// Output: added water to flour 0.77
}
