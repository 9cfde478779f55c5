package receipt_test

import (
	"fmt"
	"os"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

func bookOf1838() *receipt.Reader {
	tables, err := reference.Read(os.DirFS("../../reference/data"), nil)
	if err != nil {
		panic(err)
	}
	return &receipt.Reader{Tables: tables, Year: 1838, Place: "england"}
}

func print(line formula.Line, troubles []receipt.Trouble) {
	for _, it := range line.Items {
		a := it.Amount
		fmt.Printf("%s %s%s%s of %s (%s)\n", a.Number.Likely, a.Measure, a.Each, a.WeightOf, it.Ingredient, it.Form)
	}
	for _, n := range line.Notes {
		fmt.Println("note:", n)
	}
	for _, t := range troubles {
		fmt.Printf("trouble at %d: %s\n  hint: %s\n", t.Column, t.What, t.Hint)
	}
}

// Whites left out make two items of the eggs.
func ExampleReader_Line_eggs() {
	print(bookOf1838().Line("10 eggs, leaving out 4 of the whites, well beaten"))
	// Output:
	// 10 egg of egg_yolk (well beaten)
	// 6 egg of egg_white (well beaten)
	// note: taken as 10 egg yolks and 6 egg whites
}

// The words before a fruit say which part of it is meant, and how many fruits
// give each.
func ExampleReader_Line_fruit() {
	print(bookOf1838().Line("the grated rind of two lemons and the juice of three"))
	// Output:
	// 2 lemon of lemon_peel (rind, grated)
	// 3 lemon of lemon_juice_period (juice)
}

func ExampleReader_Line_weightOfEggs() {
	print(bookOf1838().Line("four eggs, their weight in sugar, and half their weight in flour"))
	// Output:
	// 4 egg of egg_whole ()
	// 4 egg of sugar_white ()
	// 2 egg of flour_period_soft ()
}

func ExampleReader_Line_bigness() {
	print(bookOf1838().Line("a bit of butter the size of a walnut, rolled in flour"))
	// Output:
	// 1 size of a walnut of butter_period_salted (rolled in flour)
}

// Both amounts are read, and held against each other.
func ExampleReader_Line_twoAmounts() {
	print(bookOf1838().Line("12 oz (300 g) plain flour"))
	// Output:
	// 12 ounce of flour_period_soft ()
	// note: the amounts given do not agree: 340.2 g against 300 g; the first is taken
}

// What cannot be read says where and why.
func ExampleReader_Line_trouble() {
	print(bookOf1838().Line("3 gils of milk"))
	// Output:
	// trouble at 3: unknown measure "gils"
	//   hint: did you mean "gals" or "gill" or "gills"?
}

func ExampleReader_Plain() {
	line, troubles := bookOf1838().Plain(receipt.Plain{Amount: "90", Unit: "ml", Of: "seville orange juice", Form: "strained"})
	fmt.Println(line.Text)
	print(line, troubles)
	// Output:
	// 90 ml seville orange juice, strained
	// 90 ml of seville_orange_juice (strained)
}

// Quantities woven into the method are read as a list is; the paste is a part
// to take from elsewhere in the book.
func ExampleReader_Receipt() {
	f, trace := bookOf1838().Receipt(`ORANGE PUDDING.

Beat six eggs and stir into them half a pound of melted butter, the same of
loaf sugar, and the juice of two oranges. Line a dish with puff paste, and bake
it in a quick oven half an hour.`, receipt.About{Source: "Millrace House manuscript, leaf 15"})
	fmt.Println(f.Title)
	for _, p := range f.Parts {
		fmt.Printf("%s: %s %q\n", p.Name, p.Kind, p.Take)
		for _, l := range p.Lines {
			fmt.Println("-", l.Text)
		}
	}
	fmt.Printf("oven: %s, bake: %s\n", f.Oven, f.Bake)
	for _, i := range trace.Read[2:3] {
		fmt.Printf("%d:%d %q: %s; %s\n", i.Line, i.Column, i.Words, i.Took, i.Why)
	}
	// Output:
	// Orange pudding
	// paste: pastry "puff paste"
	// filling: filling ""
	// - six eggs
	// - half a pound of melted butter
	// - 1/2 pound of loaf sugar
	// - the juice of two oranges
	// oven: quick, bake: half an hour
	// 3:65 "the same of loaf sugar": sugar, white, 1/2 pound; as much as of the butter; fixed by law or definition
}
