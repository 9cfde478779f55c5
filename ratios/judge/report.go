// Package judge holds a weighed formula against published ranges, readings and
// practice, and says what it found: the shares each texture has, the findings
// with their evidence, and remedies whose effects have been computed.
package judge

import (
	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/dish"
	"assize/ratios/oven"
	"assize/ratios/readings"
	"assize/reference"
)

// Report is everything found of one receipt. Renderers show it; nothing in it
// is formatted beyond plain sentences.
type Report struct {
	Formula  *formula.Formula
	Weighed  *weigh.Weighed
	Parts    []Part
	Findings []Finding
	Notes    []string // assumptions, traps of meaning, what could not be computed
	// Named is what the directions put to the dish and no line lists.
	Named []Named
	// Allergens are the groups of foods people are allergic to, of both lists.
	Allergens []Allergen
	// Settle are the unknowns that carry most of the doubt, most first.
	Settle []Doubt
	// Said is the heat the receipt's own words come to, in the order they stand.
	Said []oven.Heat
	// Readings is how many readings the shares rest on.
	Readings int
	// InDish is the receipt in the dish it names, nil when it names none that is
	// known.
	InDish *dish.Fit
	// inShell tells that it goes into a shell the receipt gives no paste for.
	inShell bool
	// stands is where it stands when that is in no baking dish.
	stands dish.Stand
}

// Part is one part of the receipt as judged.
type Part struct {
	Name    string
	Kind    formula.Kind
	From    string // title of the receipt it was taken from
	Lay     string // how a paste is laid, see practice.Dish.LaidBy; empty when nothing tells it
	Lines   []Line
	Profile ratios.Profile
	Ratios  []RatioReading
	Class   *ClassFit // nil when no class of its kind shares two ratios with it
	Words   []MethodWord
	// Measures are the computed figures by name, see bake.Measure.
	Measures map[string]readings.Span
	Texture  *Texture // nil for kinds without mechanisms, and where the part is Cold or Unset
	Cold     bool     // nothing heats it, so neither egg nor starch sets in it
	Unset    bool     // nothing in it is there to set: fruit, meat or mincemeat by itself
	// Baseline is what the textbook rules say, for comparison.
	Baseline *Baseline
	// Done is how a cook tells that it is done.
	Done oven.Doneness
	// Baking is the oven it wants and how long it takes there; nil for what the
	// oven does not bake.
	Baking *Baking
}

// Line is one line of the receipt with what it came to.
type Line struct {
	Text  string
	Items []Item
	Notes []string
}

// Item is one ingredient on the scales.
type Item struct {
	Ingredient *reference.Ingredient
	Form       string
	Grams      reference.Span
	Percent    decimal.Decimal // of the part's basis
	State      formula.State
	Used       bool // false for the less likely side of an either-or line
}

// MethodWord is a piece of method that was recognised, and what it was taken for.
type MethodWord struct {
	Words, Token, Meaning string
	Where                 formula.Where
}

// RatioReading is a ratio against the ranges of the part's class.
type RatioReading struct {
	Ratio   ratios.Ratio
	Verdict string // below | within | above | no-range, by the class's modern ranges
	Ranges  []RangeReading
}

// RangeReading is a ratio against one published range.
type RangeReading struct {
	Range   *reference.Range
	Verdict string
}

// ClassFit says which family of formulas a part belongs to.
type ClassFit struct {
	Class    *reference.Class
	Distance float64 // 0 inside all ranges shared
	Shared   int     // ratios held against a range
	Given    bool    // said by the receipt, not found
	Others   []ClassDistance
	// Period is the nearest class of the old books, nil when none fits.
	Period *ClassDistance
}

// ClassDistance is how far a part is from a class.
type ClassDistance struct {
	Class    *reference.Class
	Distance float64
	Shared   int
	// Made tells, by question, whether it is made as the class is; see Made.
	Made map[string]bool
}

// Texture is how a part is likely to turn out.
type Texture struct {
	Likeliest string  // texture id
	Undecided bool    // no texture reaches six in ten
	Word      string  // smooth, tender, flaky ...: told by an index, without a share
	Shares    []Share // in the order of the textures table; they sum to 1
	Heat      float64 // chance that careless heat spoils it; a caution
	// Said counts the published formulas of which the judge, fitted without
	// them, said that the likeliest texture was likely, Right those on which it
	// was so. Zero where that is not counted.
	Said, Right int
}

// Share is one texture's share of probability.
type Share struct {
	Texture *reference.Texture
	Share   float64
}

// Baseline is the verdict of the textbook rules.
type Baseline struct {
	Texture string
	Rule    string
}

// Grade of a finding.
type Grade string

// The grades. Note is for what is unusual or missing evidence and never more.
const (
	Sound  Grade = "sound"
	Note   Grade = "note"
	Watch  Grade = "watch"
	Decide Grade = "decide"
)

// Finding is a risk, a missing step or a caution.
type Finding struct {
	Code     string
	Part     string // name of the part, empty for the whole dish
	Grade    Grade  // empty for cautions, which are not graded
	Share    float64
	Says     string
	Because  []Evidence
	Remedies []Remedy
	Caution  string // id of the row of cautions it was raised by, empty for others
	Base     bool   // that the base of a case may stay soggy
}

// Evidence is one reason for a finding. Layer is range, mechanism or practice.
type Evidence struct {
	What       string
	Value      string
	Limit      string
	Layer      string
	Source     *reference.Source
	Locator    string
	Confidence string // high | medium | low
}

// The three layers of judgement.
const (
	LayerRange     = "range"
	LayerMechanism = "mechanism"
	LayerPractice  = "practice"
)

// Remedy is a change that answers a finding, with all its computed effects.
type Remedy struct {
	Text   string
	Effect []Effect
}

// Effect is how one figure moves: a share by texture id, or a measure by name.
type Effect struct {
	What   string // as shown: "cakey", "set"
	Kind   string // share | measure
	Before float64
	After  float64
}

// Doubt is an unknown of the receipt with its part of the verdict's uncertainty.
type Doubt struct {
	Words string
	Part  float64 // of the verdict's uncertainty on that part of the receipt
	Of    string  // the part of the receipt it bears on
	// Weight ranks the doubts of all parts: Part times how much there is to
	// settle.
	Weight float64
}
