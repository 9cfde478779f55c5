// Package formula holds the types of a receipt on its way to the scales: the
// formula with its parts, lines, amounts and method. It reads nothing and
// weighs nothing; the packages below it do.
package formula

import (
	"github.com/shopspring/decimal"

	"assize/reference"
)

// Formula is a receipt as parts of ingredient lines and steps.
type Formula struct {
	File    string // the name the person calls the page by
	Title   string
	Source  string // shelfmark, page, edition, in the person's words
	Year    int    // of the receipt; decides which measures hold
	Printed int    // of the later book that copied it, 0 when none
	Place   string // one of reference.Places
	Also    []string
	Meant   string // how the receipt says it should turn out
	Kitchen Kitchen
	Parts   []Part
	Dish    string // as written, empty when not said
	Oven    string
	Bake    string
	// Measures are what the book says its own measures hold.
	Measures []OwnMeasure
	// Permission is leave to print from the book, in the owner's words.
	Permission string
	// Ancestry tells what a changed formula comes from, nil for a receipt.
	Ancestry *Ancestry
	// Text is the receipt as it was copied out, for comparison; empty when the
	// file does not keep it.
	Text string
}

// OwnMeasure is a book's remark on a measure of its own: "this book's teacup is
// a gill".
type OwnMeasure struct {
	Name    string         // of the measure, as the measures table knows it
	Number  reference.Span // how many of Measure it holds
	Measure string
	Words   string // the remark as written
}

// Ancestry is where a changed formula comes from, step by step.
type Ancestry struct {
	Of     string   // title of the receipt
	Page   string   // its source: shelfmark, page, edition
	Doubt  []string // what was in doubt in taking it from the page
	Trial  string   // which baking of it the changes answer, in the person's words
	Change []string // what was changed, oldest first
}

// Kitchen is the kitchen that bakes the receipt now. What is not given is left
// at its zero value and drawn as a doubt.
type Kitchen struct {
	Given        bool
	Year         int
	Place        string
	EggSize      string          // small | medium | large | very large
	EggGrams     decimal.Decimal // one egg out of its shell, when weighed
	FlourProtein decimal.Decimal // grams in 100 g
	Butter       string          // salted | unsalted
	Oven         string
	Dishes       []string
}

// Kind is the kind of a part.
type Kind string

// The kinds of part.
const (
	Pastry   Kind = "pastry"
	Filling  Kind = "filling"
	Cake     Kind = "cake"
	Batter   Kind = "batter"
	Bread    Kind = "bread"
	Meringue Kind = "meringue"
	Sauce    Kind = "sauce"
)

// Kinds lists the kinds of part in the order they are offered.
var Kinds = []Kind{Pastry, Filling, Cake, Batter, Bread, Meringue, Sauce}

// A is the kind as it is spoken of with its article: "a filling", "a paste",
// "bread".
func (k Kind) A() string {
	switch k {
	case Bread:
		return "bread"
	case Pastry:
		return "a paste"
	}
	return reference.A(string(k))
}

// Lays are the ways a paste may be laid; folded is one folded over its filling
// and baked on a sheet, as turnovers and puffs are.
var Lays = []string{"lining", "rim", "lid", "lining and lid", "raised", "patty", "folded"}

// Part is one thing made in a bowl of its own: a paste, a filling, an icing.
type Part struct {
	Name  string
	Kind  Kind
	Class string // id of the class it is meant to be, empty when not said
	Take  string // title of the receipt in the same book it is taken from
	Lay   string // one of Lays, empty when not said
	Lines []Line
	Steps []string // as written
	Pos   Pos

	// Done are ids in the steps table: steps the file says were taken, whatever
	// its words tell.
	Done []string

	// From is the title of the receipt a taken part came from.
	From string
	// StepsFrom says of each step which receipt it was taken from, by its
	// title and where that stands; empty for the part's own. It is as long as
	// Steps, or nothing when the part was not taken.
	StepsFrom []string
	// TakeAt is where the page names what it takes.
	TakeAt Pos
	// Standing are the directions the book prints elsewhere that hold here.
	Standing []Direction
}

// StepFrom is the receipt that step i was taken from, empty for the part's own.
func (p *Part) StepFrom(i int) string {
	if i < len(p.StepsFrom) {
		return p.StepsFrom[i]
	}
	return ""
}

// Direction is something a book says once and means wherever it fits.
type Direction struct {
	Text  string
	Where string // where the book prints it, empty when not said
	Step  string // id in the steps table, empty when the book page names none
}

// Pos is a place on the page, counted from 1; zero when there is none.
type Pos struct{ Line, Column int }

// Line is one ingredient line. A line may hold several things ("rind and juice
// of a lemon") and may be in doubt between whole readings of it.
type Line struct {
	Text  string // as the book has it
	Items []Item // what it comes to; the first alternative when there are Either
	// Either holds the alternatives of a line that is one thing or another and
	// nothing between. Empty for a plain line.
	Either []Alternative
	Why    string // why it is in doubt
	Pos    Pos
	Notes  []string // what was taken for what, for the cook to check
}

// Alternative is one reading of a line in doubt.
type Alternative struct {
	Text  string
	Items []Item
	Odds  decimal.Decimal // against the other alternatives
}

// Item is one ingredient of a line with its amount.
type Item struct {
	Name       string // as written
	Ingredient string // id in the ingredients table
	Form       string // words about its state: "melted", "whites only"
	Amount     Amount
}

// State says what kind of amount a line gives.
type State int

// The states of an amount. The zero value is a stated figure.
const (
	Stated   State = iota
	ToTaste        // "to taste": weighs nothing and says so
	NotGiven       // named without an amount
	Enough         // "enough to make a stiff paste"
)

// Amount is how much of a thing, before it is weighed.
type Amount struct {
	State   State
	Number  reference.Span // how many; low < high when the book says "two or three"
	Measure string         // name of a measure ("gill"); empty when counted
	Each    string         // what is counted ("egg", "lemon"), as the sizes table calls it
	Size    string         // small | medium | large | very large; empty when not said
	Fill    string         // id in the fills table: scant, heaped ...; empty when not said
	Words   string         // the amount as written
	// WeightOf is set in "the weight of four eggs in sugar": Number counts
	// things of this kind in the shell, and the amount is what they weigh.
	WeightOf string
	// Parts marks baker's parts: only the proportion to the other lines is known.
	Parts bool
}
