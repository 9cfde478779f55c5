package reference

import "github.com/shopspring/decimal"

// Class is a family of formulas with published proportions.
type Class struct {
	ID    string   `yaml:"id" sheet:"required"`
	Name  string   `yaml:"name" sheet:"required"` // as shown
	Kind  string   `yaml:"kind" sheet:"required"` // part kind: pastry filling cake batter bread meringue sauce
	Era   string   `yaml:"era" sheet:"required"`  // modern | period
	Also  []string `yaml:"also,omitempty"`        // other spellings of the same class in older lists
	About string   `yaml:"about,omitempty"`       // one line: what it is, traps of meaning
	Meant string   `yaml:"meant,omitempty"`       // texture id the class is meant to have when not plainly set or sound
	Heat  string   `yaml:"heat,omitempty"`        // what heat it wants today, in words and degrees
	// Made is how it is made, by what is asked of the making: the flags of method
	// that are an answer of its own. A question left out is open.
	Made Named[[]string] `yaml:"made,omitempty"`
	// Odds for what a receipt of this class leaves unsaid, by method flag.
	Unsaid     Named[decimal.Decimal] `yaml:"unsaid,omitempty"`
	Provenance `yaml:",inline"`
}

// Range is one published proportion of a class. Ranges of different sources
// stay separate rows.
type Range struct {
	Class string `yaml:"class" sheet:"required"`
	Ratio string `yaml:"ratio" sheet:"required"`
	// Kind is range (a published range), point (one formula) or rule (a stated rule).
	Kind       string          `yaml:"kind" sheet:"required"`
	Era        string          `yaml:"era" sheet:"required"` // modern, or the year or years
	Low        decimal.Decimal `yaml:"low"`
	Typical    decimal.Decimal `yaml:"typical"`
	High       decimal.Decimal `yaml:"high"`
	Below      string          `yaml:"below,omitempty"` // what a cook may notice below the range
	Above      string          `yaml:"above,omitempty"`
	Provenance `yaml:",inline"`
}

// Ratio is a named proportion: the sum of some quantities over the sum of
// others. A new ratio is a new row, never new code.
type Ratio struct {
	ID   string `yaml:"id" sheet:"required"`
	Name string `yaml:"name" sheet:"required"` // as shown: "fat to flour"
	Of   []Term `yaml:"of" sheet:"required"`
	To   []Term `yaml:"to" sheet:"required"`
	// Scale multiplies the quotient: 1 for a fraction, 100 for per cent, 1000 for grams per kilogram.
	Scale      decimal.Decimal `yaml:"scale" sheet:"required"`
	Unit       string          `yaml:"unit,omitempty"`           // shown after the figure: "%", "g per kg"
	Counted    string          `yaml:"counted" sheet:"required"` // how it is counted, in words: "fat as written, butter whole"
	Kinds      []string        `yaml:"kinds" sheet:"required"`   // part kinds it is shown for
	Provenance `yaml:",inline"`
}

// Term is one weighted quantity of a ratio.
type Term struct {
	Quantity string          `yaml:"quantity" sheet:"required"` // see Quantities
	Times    decimal.Decimal `yaml:"times,omitempty"`           // 0 counts as 1
}

// Quantities are what a ratio may count: every role mass, every component of
// the composition, and the sums below. Each is grams, linear in the grams of
// the lines.
//
//	total          everything in the part
//	water_added    water named as an ingredient (water alone is the component)
//	acid           all acids as citric, by milliequivalents
//	protein        all protein
//	milk_protein   protein of milk, cream and butter
//	pulp_water     water inside fruit, vegetables and nuts
//	named_water    water of the liquids named (water, milk, juice, wine ...), not of eggs or fat
//	pure_fat       fat by composition (same as fat)
//	written_fat    butter, lard, suet, oil ... as written, whole
var Sums = []string{"total", "water_added", "acid", "named_water", "pure_fat", "written_fat", "pulp_water", "milk_protein"}

// Components are the names of the composition's figures, as ratios use them.
var Components = []string{
	"water", "protein", "fat", "sugars", "starch", "fibre", "other_carbohydrate",
	"citric", "malic", "tartaric", "lactic", "acetic", "alcohol", "salt_content", "ash",
}
