package ratios

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula/weigh"
	"assize/reference"
)

// Quantity is something counted in a mix, in grams, linear in the grams of the
// lines. The first groups are those the ratios table may name; the last is for
// the mechanisms alone.
type Quantity int

// The quantities. Components are what the ingredients are made of, roles what
// they are there for.
const (
	// Total is everything in the part.
	Total Quantity = iota

	Water
	Protein
	Fat
	Sugars
	Starch
	Fibre
	OtherCarbohydrate
	Citric
	Malic
	Tartaric
	Lactic
	Acetic
	Alcohol
	SaltContent
	Ash

	Flour
	Meal
	Crumb
	Butter
	HardFat
	Oil
	Egg // whole eggs only; the white and yolk of them are in EggWhite and EggYolk
	White
	Yolk
	Sugar
	Syrup
	Juice
	Milk
	Cream
	Curd
	Cheese
	Liquid
	WaterAdded // water named as an ingredient
	Pulp
	Dried
	Nut
	Leaven
	Yeast
	Salt
	Setting
	Chocolate
	Flavour
	Meat

	Acid        // all acids as anhydrous citric, by milliequivalents
	NamedWater  // water of the liquids named, not of eggs or fat
	WrittenFat  // butter, lard, suet, oil as written, whole
	PulpWater   // water inside fruit, vegetables and nuts
	MilkProtein // protein of sweet milk, cream and butter

	WhiteProtein
	YolkProtein
	SourMilkProtein // soured milk, yogurt, curd and cheese
	FlourProtein    // flour and crumb
	OtherProtein
	EggWhite // white, from separated and from whole eggs
	EggYolk
	EggWater
	ButterWater  // water in butter and margarine
	StrongStarch // starch of cornflour, arrowroot, potato and cassava
	PulpStarch
	CrumbStarch // starch of crumb and nuts, already cooked or bound
	NutWeight   // nuts counted by how much they stiffen a mix: ground .35, chopped or whole .10
	CurdMass    // curd and cottage cheese by kind, whatever the role
	CheeseMass  // cream and hard cheese by kind
	SweetDairy  // sweet milk and cream
	FreeLiquid  // everything over half water that is not egg, pulp, nut, curd or cheese
	PulpMass    // fruit and vegetable by kind
	ButterLike  // butter and margarine
	FlourFat    // fat in flour and meal, which coats nothing
	FatWater    // water in butter, lard, suet and the like
	CheeseFat   // fat shut up in cheese
	PasteWater  // water that reaches the flour of a paste: of named liquids and eggs, half of cheese's, a tenth of pulp's
	Gluten      // protein of flour that makes gluten: wheat's, .7 of wholemeal's, .3 of rye's and barley's
	StrongIons  // mol: the strong-ion difference that gives each ingredient its own pH

	// NumQuantities is the length of a Mix.
	NumQuantities
)

// names of the quantities in the ratios table; the order is that of the
// constants.
var names = slices.Concat(
	[]string{"total"}, reference.Components,
	[]string{"flour", "meal", "crumb", "butter", "hard_fat", "oil", "egg", "white", "yolk", "sugar", "syrup", "juice",
		"milk", "cream", "curd", "cheese", "liquid", "water_added", "pulp", "dried", "nut", "leaven", "yeast", "salt",
		"setting", "chocolate", "flavour", "meat"},
	[]string{"acid", "named_water", "written_fat", "pulp_water", "milk_protein"},
)

// Named returns the quantity the ratios table calls by that name.
func Named(name string) (Quantity, bool) {
	if name == "pure_fat" {
		return Fat, true
	}
	if i := slices.Index(names, name); i >= 0 {
		return Quantity(i), true
	}
	return 0, false
}

// milliequivalents per gram of each acid: protons given up per mole over the
// molar mass (citric 3/192.12, malic 2/134.09, tartaric 2/150.09, lactic
// 1/90.08, acetic 1/60.05). Acids are compared by these, never by weight.
var milliequivalents = map[Quantity]decimal.Decimal{
	Citric:   decimal.NewFromInt(3000).DivRound(decimal.RequireFromString("192.12"), 8),
	Malic:    decimal.NewFromInt(2000).DivRound(decimal.RequireFromString("134.09"), 8),
	Tartaric: decimal.NewFromInt(2000).DivRound(decimal.RequireFromString("150.09"), 8),
	Lactic:   decimal.NewFromInt(1000).DivRound(decimal.RequireFromString("90.08"), 8),
	Acetic:   decimal.NewFromInt(1000).DivRound(decimal.RequireFromString("60.05"), 8),
}

var acids = []Quantity{Citric, Malic, Tartaric, Lactic, Acetic}

var (
	hundred = decimal.NewFromInt(100)
	half    = decimal.NewFromInt(50) // grams in 100: over half water
)

// share is how many grams of a quantity one gram of the item brings. It is the
// exact figure behind the ratios; the mechanisms use Row.
func share(it *weigh.Item, q Quantity) decimal.Decimal {
	ing := it.Ingredient
	per := func(d decimal.Decimal) decimal.Decimal { return d.Shift(-2) }
	when := func(yes bool) decimal.Decimal {
		if yes {
			return decimal.NewFromInt(1)
		}
		return decimal.Zero
	}
	of := func(yes bool, d decimal.Decimal) decimal.Decimal {
		if yes {
			return per(d)
		}
		return decimal.Zero
	}
	role := func(r ...string) bool {
		return slices.ContainsFunc(ing.Roles, func(s string) bool { return slices.Contains(r, s) })
	}
	kind := func(k ...string) bool { return slices.Contains(k, ing.Kind) }
	c := &ing.Per100
	switch {
	case q == Total:
		return when(true)
	case q >= Water && q <= Ash:
		return per(c.Of(names[q]))
	case q == WaterAdded:
		return when(role("water"))
	case q >= Flour && q <= Meat:
		return when(role(names[q]))
	}
	switch q {
	case Acid:
		sum := decimal.Zero
		for _, a := range acids {
			sum = sum.Add(c.Of(names[a]).Mul(milliequivalents[a]))
		}
		return per(sum.DivRound(milliequivalents[Citric], 10))
	case NamedWater:
		return of(role("water", "milk", "liquid", "juice", "cream"), c.Water)
	case WrittenFat:
		return when(role("butter", "hard_fat", "oil"))
	case PulpWater:
		return of(kind("pulp", "nut"), c.Water)
	case MilkProtein:
		return of(kind("milk"), c.Protein)
	case SourMilkProtein:
		return of(kind("sourmilk", "curd", "cheese"), c.Protein)
	case WhiteProtein, EggWhite:
		if q == EggWhite {
			return when(kind("white"))
		}
		return of(kind("white"), c.Protein)
	case YolkProtein, EggYolk:
		if q == EggYolk {
			return when(kind("yolk"))
		}
		return of(kind("yolk"), c.Protein)
	case FlourProtein:
		return of(kind("flour", "crumb"), c.Protein)
	case OtherProtein:
		return of(kind("meal", "nut", "pulp", "dried", "other"), c.Protein)
	case EggWater:
		return of(kind("white", "yolk", "egg"), c.Water)
	case ButterWater:
		return of(butterLike(ing), c.Water)
	case ButterLike:
		return when(butterLike(ing))
	case StrongStarch:
		return of(pureStarch(ing), c.Starch)
	case PulpStarch:
		return of(kind("pulp"), c.Starch)
	case CrumbStarch:
		return of(kind("crumb", "nut"), c.Starch)
	case NutWeight:
		switch {
		case !kind("nut"):
			return decimal.Zero
		case ground(it):
			return decimal.RequireFromString("0.35")
		}
		return decimal.RequireFromString("0.10")
	case CurdMass:
		return when(kind("curd"))
	case CheeseMass:
		return when(kind("cheese"))
	case SweetDairy:
		return when(kind("milk") && !butterLike(ing))
	case FreeLiquid:
		return when(c.Water.GreaterThan(half) && !kind("white", "yolk", "egg", "pulp", "nut", "curd", "cheese"))
	case PulpMass:
		return when(kind("pulp"))
	case FlourFat:
		return of(role("flour", "meal", "nut"), c.Fat)
	case FatWater:
		return of(role("butter", "hard_fat", "oil"), c.Water)
	case CheeseFat:
		return of(kind("cheese"), c.Fat)
	case PasteWater:
		switch {
		case role("water", "milk", "cream", "liquid", "juice", "egg", "white", "yolk"):
			return per(c.Water)
		case kind("cheese", "curd"):
			return per(c.Water).Div(decimal.NewFromInt(2))
		case kind("pulp"):
			return per(c.Water).Shift(-1)
		}
	case Gluten:
		return of(kind("flour"), c.Protein).Mul(glutenShare(ing.ID))
	}
	return decimal.Zero
}

// glutenShare is how much of a flour's protein makes gluten (trade judgement:
// bran cuts it, rye and barley make little).
func glutenShare(id string) decimal.Decimal {
	switch id {
	case "flour_wholemeal":
		return decimal.RequireFromString("0.7")
	case "rye_flour", "barley_flour":
		return decimal.RequireFromString("0.3")
	}
	return decimal.NewFromInt(1)
}

// butterLike reports whether the ingredient is butter or margarine: the fat of
// milk, or made to be like it, with its water.
func butterLike(ing *reference.Ingredient) bool {
	return ing.Kind == "milk" && ing.Per100.Fat.GreaterThan(half)
}

// pureStarch reports whether a meal is starch washed out of its grain or root
// (cornflour, arrowroot, potato, cassava), told by its want of protein.
func pureStarch(ing *reference.Ingredient) bool {
	return ing.Kind == "meal" && ing.Per100.Protein.LessThan(decimal.NewFromInt(1))
}

// ground reports whether nuts are fine enough to stiffen a mix.
func ground(it *weigh.Item) bool {
	text := it.Ingredient.ID + " " + strings.ToLower(it.Form)
	return slices.ContainsFunc([]string{"ground", "pounded", "grated", "coconut", "shredded", "beaten", "paste"}, func(w string) bool {
		return strings.Contains(text, w)
	})
}
