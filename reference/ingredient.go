package reference

import "github.com/shopspring/decimal"

// Ingredient is one row of the ingredients table: what 100 g of the edible
// part is made of, how dense it is, and what it counts as in a mix.
type Ingredient struct {
	ID    string   `yaml:"id" sheet:"required"`
	Name  string   `yaml:"name" sheet:"required"` // as shown to the cook
	Also  []string `yaml:"also,omitempty"`        // other names that always mean this row
	Base  string   `yaml:"base,omitempty"`        // the row this is a period or practical form of
	Kind  string   `yaml:"kind" sheet:"required"` // see IngredientKinds: how its protein and solids behave
	Roles []string `yaml:"roles,omitempty"`       // role masses it counts towards, see Roles

	Per100 Composition `yaml:"per100" sheet:"required"`
	Doubts Named[Span] `yaml:"doubts,omitempty"` // components of per100 known only as a range

	PH      decimal.Decimal `yaml:"ph,omitempty"` // its own pH in use; 0 = not known, counts as none
	Density Density         `yaml:"density,omitempty"`

	AllergensEU []string `yaml:"allergens_eu,omitempty"` // Regulation (EU) 1169/2011 Annex II groups
	AllergensUS []string `yaml:"allergens_us,omitempty"` // the nine major food allergens

	Provenance `yaml:",inline"`
}

// Composition is grams per 100 g of the edible part. Salt is sodium chloride
// apart from other ash. Acids are anhydrous. The figures need not add to 100:
// rows join analyses.
type Composition struct {
	Water             decimal.Decimal `yaml:"water" sheet:"required"`
	Protein           decimal.Decimal `yaml:"protein,omitempty"`
	Fat               decimal.Decimal `yaml:"fat,omitempty"`
	Sugars            decimal.Decimal `yaml:"sugars,omitempty"` // mono- and disaccharides as they stand
	Starch            decimal.Decimal `yaml:"starch,omitempty"`
	Fibre             decimal.Decimal `yaml:"fibre,omitempty"`
	OtherCarbohydrate decimal.Decimal `yaml:"other_carbohydrate,omitempty"` // dextrins, gums and what difference leaves
	Citric            decimal.Decimal `yaml:"citric,omitempty"`
	Malic             decimal.Decimal `yaml:"malic,omitempty"`
	Tartaric          decimal.Decimal `yaml:"tartaric,omitempty"`
	Lactic            decimal.Decimal `yaml:"lactic,omitempty"`
	Acetic            decimal.Decimal `yaml:"acetic,omitempty"`
	Alcohol           decimal.Decimal `yaml:"alcohol,omitempty"` // by weight
	Salt              decimal.Decimal `yaml:"salt,omitempty"`
	Ash               decimal.Decimal `yaml:"ash,omitempty"` // all ash, salt included
}

// Density holds the three densities a kitchen meets, g/ml. A missing one is zero.
type Density struct {
	// Loose is what a measured spoon or cup of it weighs, with its packing.
	Loose Span `yaml:"loose,omitempty"`
	// Liquid is the density of a pourable ingredient.
	Liquid decimal.Decimal `yaml:"liquid,omitempty"`
	// Particle is the density of the stuff itself without air between, for volumes of mixes.
	Particle decimal.Decimal `yaml:"particle,omitempty"`
}

// ingredientKinds are how an ingredient's protein and solids are counted.
var ingredientKinds = []string{
	"white", "yolk", "egg", "milk", "sourmilk", "curd", "cheese",
	"flour", "meal", "crumb", "nut", "pulp", "dried", "other",
}

// Roles are the role masses of a mix: what a cook calls the ingredient's job.
var Roles = []string{
	"flour", "meal", "crumb", "butter", "hard_fat", "oil", "egg", "white", "yolk",
	"sugar", "syrup", "juice", "milk", "cream", "curd", "cheese", "liquid", "water",
	"pulp", "dried", "nut", "leaven", "yeast", "salt", "setting", "chocolate", "flavour", "meat",
}

// Name is a name that means different rows in different years and places,
// or that needs the words beside it: "flour", "cream", "powdered sugar".
type Name struct {
	Names      []string      `yaml:"names" sheet:"required"`
	Readings   []NameReading `yaml:"readings" sheet:"required"`
	Goods      bool          `yaml:"goods,omitempty"` // the year that counts is the kitchen's that buys it, not the book's
	Provenance `yaml:",inline"`
}

// NameReading is one meaning of a name; the first that holds is taken.
type NameReading struct {
	Validity `yaml:",inline"`
	Beside   string `yaml:"beside,omitempty"`    // only where something of this role stands in the receipt
	Is       string `yaml:"is" sheet:"required"` // ingredient id
}

// Fruit is a thing bought whole and used in parts, where the words beside it
// say which: the juice, the grated rind, the whole fruit.
type Fruit struct {
	ID         string        `yaml:"id" sheet:"required"` // also the `each` of the sizes table
	Names      []string      `yaml:"names" sheet:"required"`
	Juice      []NameReading `yaml:"juice,omitempty"`
	Rind       []NameReading `yaml:"rind,omitempty"`
	Whole      []NameReading `yaml:"whole,omitempty"`
	Default    []string      `yaml:"default" sheet:"required"` // juice, rind, whole: meant when nothing is said
	Provenance `yaml:",inline"`
}

// Of returns a component by its name in Components, grams per 100 g; zero for
// a name that is none.
func (c *Composition) Of(name string) decimal.Decimal {
	switch name {
	case "water":
		return c.Water
	case "protein":
		return c.Protein
	case "fat":
		return c.Fat
	case "sugars":
		return c.Sugars
	case "starch":
		return c.Starch
	case "fibre":
		return c.Fibre
	case "other_carbohydrate":
		return c.OtherCarbohydrate
	case "citric":
		return c.Citric
	case "malic":
		return c.Malic
	case "tartaric":
		return c.Tartaric
	case "lactic":
		return c.Lactic
	case "acetic":
		return c.Acetic
	case "alcohol":
		return c.Alcohol
	case "salt_content":
		return c.Salt
	case "ash":
		return c.Ash
	}
	return decimal.Zero
}

// Family is the row an ingredient is a form of, itself when it is none.
func (i *Ingredient) Family() string {
	if i.Base != "" {
		return i.Base
	}
	return i.ID
}
