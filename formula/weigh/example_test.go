package weigh_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"assize/reference"
)

var (
	pound = decimal.RequireFromString("453.59237")
	grain = decimal.RequireFromString("0.06479891")
)

// per divides a weight by a unit, both in grams.
func per(s reference.Span, unit decimal.Decimal) reference.Span {
	return reference.Span{Low: s.Low.Div(unit), Likely: s.Likely.Div(unit), High: s.High.Div(unit)}
}

func Example_wineGallon() {
	// 5 Anne c. 27 (1706) s. 17, as given by Hebert, The Engineer's and Mechanic's
	// Encyclopaedia (1836), article Gallon: the wine gallon holds 231 cubic inches.
	fmt.Println(fixed(volume(1760, "england", "1 gallon"), 0), "cubic inches")
	// Output: 231 cubic inches
}

func Example_winePint() {
	// Hebert, The Engineer's and Mechanic's Encyclopaedia (1836), article Gallon:
	// eight pints to the wine gallon of 231 cubic inches, 28.875 each.
	fmt.Println(fixed(volume(1760, "england", "1 pint"), 3), "cubic inches")
	// Output: 28.875 cubic inches
}

func Example_wineGill() {
	// Hebert, The Engineer's and Mechanic's Encyclopaedia (1836), article Gallon:
	// four gills to the wine pint, 32 to the gallon of 231 cubic inches.
	fmt.Println(fixed(volume(1760, "england", "32 gills"), 0), "cubic inches")
	// Output: 231 cubic inches
}

func Example_imperialGallon() {
	// Weights and Measures Act 1824 (5 Geo. IV c. 74) s. 6: the imperial gallon
	// holds ten pounds avoirdupois of water, and is 277.274 cubic inches; the
	// gallon was measured again later as 277.42.
	fmt.Println(fixed(per(grams(1900, "england", "1 gallon of water"), pound), 1), "lb of water")
	fmt.Println(fixed(volume(1900, "england", "1 gallon"), 1), "cubic inches")
	// Output:
	// 10.0 lb of water
	// 277.4 (277.3 to 277.4) cubic inches
}

func Example_imperialQuart() {
	// Weights and Measures Act 1824 (5 Geo. IV c. 74) s. 6: a quart is the fourth
	// part of the gallon of ten pounds of water, two pounds and a half.
	fmt.Println(fixed(per(grams(1900, "england", "1 quart of water"), pound), 1), "lb of water")
	// Output: 2.5 lb of water
}

func Example_imperialPint() {
	// Weights and Measures Act 1824 (5 Geo. IV c. 74) s. 6: a pint is the eighth
	// part of the gallon of ten pounds of water, so 20 ounces.
	fmt.Println(fixed(per(grams(1900, "england", "1 pint of water"), pound).Mul(decimal.NewFromInt(16)), 0), "oz of water")
	// Output: 20 oz of water
}

func Example_imperialGill() {
	// Weights and Measures Act 1878 (41 & 42 Vict. c. 49), second schedule: the
	// gill is the fourth part of a pint, so 5 ounces of water.
	fmt.Println(fixed(per(grams(1900, "england", "1 gill of water"), pound).Mul(decimal.NewFromInt(16)), 0), "oz of water")
	// Output: 5 oz of water
}

func Example_imperialFluidOunce() {
	// British Pharmacopoeia (1898), weights and measures: a fluid ounce of water
	// weighs one ounce avoirdupois, and there are 20 to the pint.
	fmt.Println(fixed(per(grams(1900, "england", "1 fluid ounce of water"), pound).Mul(decimal.NewFromInt(16)), 1), "oz of water")
	fmt.Println(fixed(per(grams(1900, "england", "20 fluid ounces of water"), grams(1900, "england", "1 pint of water").Likely), 2), "pint")
	// Output:
	// 1.0 oz of water
	// 1.00 pint
}

func Example_aleGallon() {
	// Hebert, The Engineer's and Mechanic's Encyclopaedia (1836), article Gallon:
	// the beer gallon holds 282 cubic inches.
	fmt.Println(fixed(volume(1760, "england", "1 ale gallon"), 0), "cubic inches")
	// Output: 282 cubic inches
}

func Example_alePint() {
	// Hebert, The Engineer's and Mechanic's Encyclopaedia (1836), article Gallon:
	// eight pints to the beer gallon of 282 cubic inches. Ale is measured by it
	// without being told, water in the same receipt by the wine pint.
	water := per(grams(1760, "england", "1 pint of water"), grams(1760, "england", "1 ml of water").Likely)
	ale := per(grams(1760, "england", "1 pint of ale"), grams(1760, "england", "1 ml of ale").Likely)
	fmt.Println("water", fixed(per(water, cubicInch), 3))
	fmt.Println("ale", fixed(per(ale, cubicInch), 3))
	// Output:
	// water 28.875
	// ale 35.250
}

func Example_winchesterBushel() {
	// 13 & 14 Will. III c. 5 (1701): a round bushel 18 1/2 inches wide and 8 deep,
	// which is 2150.42 cubic inches.
	fmt.Println(fixed(volume(1760, "england", "1 bushel"), 2), "cubic inches")
	// Output: 2150.42 cubic inches
}

func Example_winchesterPeck() {
	// NIST Handbook 44, appendix C, units of dry volume: the bushel of 2150.42
	// cubic inches is four pecks of 537.605.
	fmt.Println(fixed(volume(2000, "usa", "1 peck"), 3), "cubic inches")
	fmt.Println(fixed(volume(2000, "usa", "4 pecks"), 2), "cubic inches")
	// Output:
	// 537.605 cubic inches
	// 2150.42 cubic inches
}

func Example_imperialBushel() {
	// Weights and Measures Act 1824 (5 Geo. IV c. 74) s. 6: eight gallons to the
	// bushel, so eighty pounds of water.
	fmt.Println(fixed(per(grams(1900, "england", "1 bushel of water"), pound), 0), "lb of water")
	// Output: 80 lb of water
}

func Example_irishPint() {
	// 9 Geo. II c. 9 (Ireland, 1735): the Irish gallon is 217.6 cubic inches, the
	// pint its eighth part, 27.2. English measure was in use beside it.
	fmt.Println(fixed(volume(1760, "ireland", "1 irish pint"), 1), "cubic inches")
	fmt.Println(fixed(volume(1760, "ireland", "1 pint"), 1), "cubic inches where the receipt does not say")
	// Output:
	// 27.2 cubic inches
	// 27.2 (27.2 to 28.9) cubic inches where the receipt does not say
}

func Example_scotsMutchkin() {
	// The Stirling jug or Scots pint of 103.404 cubic inches (Swinton, A Proposal
	// for Uniformity of Weights and Measures in Scotland, 1779, liquid measure):
	// the mutchkin is its fourth part, 25.85.
	m := volume(1780, "scotland", "1 mutchkin")
	fmt.Println(fixed(m, 1), "cubic inches")
	jug := decimal.RequireFromString("103.404")
	fmt.Println("holds the Stirling figure:", m.Mul(decimal.NewFromInt(4)).Low.LessThan(jug) && m.Mul(decimal.NewFromInt(4)).High.GreaterThan(jug))
	// Output:
	// 25.9 (25.8 to 26.1) cubic inches
	// holds the Stirling figure: true
}

func Example_scotsChopin() {
	// Swinton, A Proposal for Uniformity of Weights and Measures in Scotland
	// (1779), liquid measure: two mutchkins to the chopin, two chopins to the pint.
	fmt.Println(fixed(per(grams(1780, "scotland", "1 chopin of water"), grams(1780, "scotland", "1 mutchkin of water").Likely), 2), "mutchkins")
	fmt.Println(fixed(per(grams(1780, "scotland", "1 Scots pint of water"), grams(1780, "scotland", "1 chopin of water").Likely), 2), "chopins")
	// Output:
	// 2.00 (1.99 to 2.01) mutchkins
	// 2.00 (1.99 to 2.01) chopins
}

func Example_pintInDoubt() {
	// Weights and Measures Act 1824 (5 Geo. IV c. 74) s. 1 with 231 cubic inches
	// to the old gallon: for a while after it a written pint may be either, and
	// the pint and the gill of one book are in doubt together.
	w := weighed(1845, "england", "1 pint of water", "1 gill of water")
	items := w.Parts[0].Items
	fmt.Println("pint", fixed(per(items[0].Grams, pound), 2), "lb")
	fmt.Println("gill", fixed(per(items[1].Grams, pound), 2), "lb")
	fmt.Println("doubts:", len(w.Unknowns))
	// Output:
	// pint 1.25 (1.04 to 1.25) lb
	// gill 0.31 (0.26 to 0.31) lb
	// doubts: 1
}

func Example_americanCup() {
	// NIST Handbook 44, appendix C, units of liquid volume: 16 cups to the gallon
	// of 231 cubic inches, 8 fluid ounces of 1.8047 cubic inches each.
	fmt.Println(fixed(volume(2000, "usa", "1 cup"), 4), "cubic inches")
	fmt.Println(fixed(volume(2000, "usa", "16 cups"), 0), "cubic inches")
	// Output:
	// 14.4375 cubic inches
	// 231 cubic inches
}

func Example_americanTablespoon() {
	// NIST Handbook 44, appendix C, household measures: a tablespoon is half a
	// fluid ounce, 16 to the cup.
	fmt.Println(fixed(per(grams(2000, "usa", "16 tablespoons of water"), grams(2000, "usa", "1 cup of water").Likely), 2), "cup")
	// Output: 1.00 cup
}

func Example_americanTeaspoon() {
	// NIST Handbook 44, appendix C, household measures: a teaspoon is a third of a
	// tablespoon, 48 to the cup.
	fmt.Println(fixed(per(grams(2000, "usa", "48 teaspoons of water"), grams(2000, "usa", "1 cup of water").Likely), 2), "cup")
	// Output: 1.00 cup
}

func Example_avoirdupoisPound() {
	// Weights and Measures Act 1878 (41 & 42 Vict. c. 49) s. 14: the pound is 7000
	// grains.
	fmt.Println(fixed(per(grams(1900, "england", "1 lb of sugar"), grain), 0), "grains")
	// Output: 7000 grains
}

func Example_avoirdupoisOunce() {
	// Weights and Measures Act 1878 (41 & 42 Vict. c. 49) s. 14: the ounce is the
	// sixteenth part of the pound, 437 1/2 grains.
	fmt.Println(fixed(per(grams(1900, "england", "1 oz of sugar"), grain), 1), "grains")
	// Output: 437.5 grains
}

func Example_stone() {
	// Weights and Measures Act 1878 (41 & 42 Vict. c. 49) s. 14: a stone is 14
	// pounds and a hundredweight is eight stones.
	fmt.Println(fixed(per(grams(1900, "england", "1 stone of flour"), pound), 2), "lb")
	fmt.Println(fixed(per(grams(1900, "england", "1 cwt of flour"), pound), 2), "lb")
	// Output:
	// 14.00 lb
	// 112.00 lb
}

func Example_troyOunce() {
	// Weights and Measures Act 1878 (41 & 42 Vict. c. 49) s. 14: 480 grains are an
	// ounce troy. The ounce of the apothecaries is the same.
	fmt.Println(fixed(per(grams(1860, "england", "1 troy ounce of salt"), grain), 1), "grains")
	fmt.Println(fixed(per(grams(1860, "england", "1 apothecaries ounce of salt"), grain), 1), "grains")
	// Output:
	// 480.0 grains
	// 480.0 grains
}

func Example_scruple() {
	// NIST Handbook 44, appendix C, apothecaries units of mass: a scruple is 20
	// grains.
	fmt.Println(fixed(per(grams(1860, "england", "1 scruple of salt"), grain), 1), "grains")
	// Output: 20.0 grains
}

func Example_grain() {
	// NIST Handbook 44, appendix C: the grain is 64.79891 milligrams in every
	// system of weight.
	fmt.Println(fixed(grams(1860, "england", "1 grain of salt").Mul(decimal.NewFromInt(1000)), 3), "mg")
	// Output: 64.799 mg
}

func Example_drachm() {
	// NIST Handbook 44, appendix C: the apothecaries' dram is 60 grains, the
	// avoirdupois 27.34. Cooks made it the eighth of the common ounce, 54.7; a
	// receipt that does not say may mean any of the three.
	fmt.Println(fixed(per(grams(1860, "england", "1 drachm of salt"), grain), 1), "grains")
	// Output: 54.7 (27.3 to 60.0) grains
}

func Example_tenEggsToThePound() {
	// Leslie, Directions for Cookery (1837), introductory hints: ten eggs weigh
	// one pound before they are broken.
	fmt.Println(fixed(per(grams(1840, "usa", "the weight of ten eggs in sugar"), pound), 1), "lb")
	// Output: 1.0 (0.8 to 1.2) lb
}

func Example_pintIsAPound() {
	// Common practice, the household sayings: a pint's a pound (the wine pint,
	// which the United States kept), and a pint of water weighs a pound and a
	// quarter (the imperial pint). The first is two thirds of an ounce short.
	fmt.Println(fixed(per(grams(1896, "usa", "1 pint of water"), pound), 2), "lb")
	fmt.Println(fixed(per(grams(1896, "england", "1 pint of water"), pound), 2), "lb")
	// Output:
	// 1.04 lb
	// 1.25 lb
}

func Example_cupsOfFlour() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter II, table of
	// measures and weights: 4 cups of flour are a pound.
	fmt.Println(fixed(per(grams(1896, "usa", "4 cups of flour"), pound), 2), "lb")
	// Output: 1.01 (0.87 to 1.21) lb
}

func Example_cupsOfButter() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter II, table of
	// measures and weights: 2 cups of butter packed solidly are a pound.
	fmt.Println(fixed(per(grams(1896, "usa", "2 cups of butter"), pound), 2), "lb")
	// Output: 0.99 (0.99 to 1.00) lb
}

func Example_cupsOfPowderedSugar() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter II, table of
	// measures and weights: 2 2/3 cups of powdered sugar are a pound.
	fmt.Println(fixed(per(grams(1896, "usa", "2 2/3 cups of powdered sugar"), pound), 2), "lb")
	// Output: 1.00 (0.96 to 1.06) lb
}

func Example_cupsOfGranulatedSugar() {
	// Farmer, The Boston Cooking-School Cook Book (1896), chapter II, table of
	// measures and weights: 2 cups of granulated sugar are a pound. The table is
	// round: a cup is 200 g by USDA SR28 (NDB 19335), which makes it 14 ounces.
	fmt.Println(fixed(per(grams(1896, "usa", "2 cups of granulated sugar"), pound).Mul(decimal.NewFromInt(16)), 1), "oz")
	// Output: 14.1 (13.8 to 14.1) oz
}

func Example_separatedEgg() {
	// USDA SR28 (2016), NDB 01124 and 01125: a large egg gives 33 g of white and 17
	// g of yolk.
	fmt.Println("white", fixed(grams(2016, "usa", "white of 1 large egg"), 1))
	fmt.Println("yolk", fixed(grams(2016, "usa", "yolk of 1 large egg"), 1))
	// Output:
	// white 33.5 (29.9 to 39.8)
	// yolk 16.5 (13.3 to 19.6)
}

func Example_stickOfButter() {
	// USDA SR28 (2016), NDB 01001: a stick of butter weighs 113 g, a quarter of a
	// pound.
	fmt.Println(fixed(per(grams(2016, "usa", "4 sticks of butter"), pound), 2), "lb")
	// Output: 1.00 lb
}
