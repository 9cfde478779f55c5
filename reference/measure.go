package reference

import "github.com/shopspring/decimal"

// Measure is one reading of a measure's name: what it held, when and where.
// The same name in the same year and place may have several rows; that is a
// doubt, and Odds weighs the rows against each other.
type Measure struct {
	ID       string   `yaml:"id" sheet:"required"`
	Names    []string `yaml:"names" sheet:"required"` // singular and plural, abbreviations with and without stop
	Unit     string   `yaml:"unit" sheet:"required"`  // ml | g
	Span     `yaml:",inline"`
	Validity `yaml:",inline"`
	// For limits the row to ingredients with one of these roles or ids; empty is all.
	For []string `yaml:"for,omitempty"`
	// Grade is exact (law or definition), printed (a table of the time) or custom (usage).
	Grade string `yaml:"grade" sheet:"required"`
	// Odds against other rows of the same name that hold at the same time; 0 counts as 1.
	Odds decimal.Decimal `yaml:"odds,omitempty"`
	// Heap multiplies dry powders and sugar measured in it, for spoons that were heaped unless level was said.
	Heap Span `yaml:"heap,omitempty"`
	// Shared names the doubt that all measures of one kind share ("pint"): they are all one reading.
	Shared     string `yaml:"shared,omitempty"`
	Provenance `yaml:",inline"`
}

// Size is what one counted thing gives: an egg out of its shell, the juice of
// a lemon, a nutmeg.
type Size struct {
	ID         string `yaml:"id" sheet:"required"`
	Each       string `yaml:"each" sheet:"required"` // what is counted: egg, lemon, nutmeg
	Of         string `yaml:"of" sheet:"required"`   // ingredient id the count gives
	Size       string `yaml:"size,omitempty"`        // small | medium | large | very large; empty when unsaid
	Unit       string `yaml:"unit" sheet:"required"` // g | ml
	Span       `yaml:",inline"`
	Validity   `yaml:",inline"`
	Provenance `yaml:",inline"`
}

// Fill is a word that says how full a measure was, or how big a thing: scant,
// heaped, level, packed, small.
type Fill struct {
	ID         string           `yaml:"id" sheet:"required"`
	Words      []string         `yaml:"words" sheet:"required"`
	Span       `yaml:",inline"` // factor on the amount
	Level      bool             `yaml:"level,omitempty"` // overrules heaping
	Provenance `yaml:",inline"`
}
