package reference

import "github.com/shopspring/decimal"

// Published is one published formula with what is known of its texture: facts
// restated, for comparing and for calibrating the judge.
type Published struct {
	ID          string `yaml:"id" sheet:"required"`
	Title       string `yaml:"title" sheet:"required"`
	Year        int    `yaml:"year" sheet:"required"`
	YearApprox  bool   `yaml:"year_approx,omitempty"`
	Place       string `yaml:"place" sheet:"required"`
	KitchenYear int    `yaml:"kitchen_year,omitempty"` // of the kitchen that reports the outcome, when not the book's
	Part        string `yaml:"part" sheet:"required"`
	Class       string `yaml:"class" sheet:"required"` // our class id

	Lines  []PublishedLine `yaml:"lines" sheet:"required"`
	Method []string        `yaml:"method,omitempty"`
	Dish   string          `yaml:"dish,omitempty"`
	Oven   string          `yaml:"oven,omitempty"`
	Bake   string          `yaml:"bake,omitempty"`
	Yield  string          `yaml:"yield,omitempty"`

	Outcome      string `yaml:"outcome" sheet:"required"`
	OutcomeBasis string `yaml:"outcome_basis,omitempty"`
	Evidence     string `yaml:"evidence" sheet:"required"` // tester | source | process | class
	Confidence   string `yaml:"confidence,omitempty"`
	Cause        string `yaml:"cause,omitempty"` // formula | formula-and-heat | heat | handling | dish
	PairOf       string `yaml:"pair_of,omitempty"`
	Scored       bool   `yaml:"scored,omitempty"`
	Fit          bool   `yaml:"fit,omitempty"`
	Fold         string `yaml:"fold,omitempty"` // 0 to 4, empty when not used to fit; cross-validation by source, pairs together

	Provenance `yaml:",inline"`
}

// PublishedLine is one ingredient of a published formula, in the published unit.
type PublishedLine struct {
	Amount *decimal.Decimal `yaml:"amount,omitempty"` // nil = not given
	Max    *decimal.Decimal `yaml:"max,omitempty"`    // the other end of a printed range
	Unit   string           `yaml:"unit,omitempty"`
	Of     string           `yaml:"of" sheet:"required"`
	Form   string           `yaml:"form,omitempty"`
}
