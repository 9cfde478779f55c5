package weigh

import (
	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// Household is a weight as a kitchen without scales would measure it.
type Household struct {
	Words string          // "2 1/2 tablespoons"
	Grams decimal.Decimal // what that measure weighs, level
}

// householdMeasures are what a kitchen measures with, largest first: the cup
// where cups are the custom, level spoons everywhere.
var householdMeasures = []struct {
	name  string
	cups  bool // only where cups are the custom
	least decimal.Decimal
	most  decimal.Decimal
	parts []int64 // whole, halves, thirds or quarters that are made for it
}{
	{"cup", true, decimal.RequireFromString("0.25"), decimal.NewFromInt(12), []int64{1, 2, 4, 3}},
	{"tablespoon", false, decimal.NewFromInt(1), decimal.NewFromInt(8), []int64{1, 2}},
	{"teaspoon", false, decimal.RequireFromString("0.25"), decimal.NewFromInt(4), []int64{1, 2, 4}},
}

// closeEnough is how far a household measure may lie from the weight it stands
// for, as a part of it (judgement: no further than a level spoon is sure).
var closeEnough = decimal.RequireFromString("0.05")

// near is where no smaller measure is tried for a better one.
var near = decimal.RequireFromString("0.025")

// HouseholdOf is the household measure of a weight in a kitchen's year and
// place: the largest and plainest that comes near, else the nearest. It reports
// false where none comes within a twentieth, or what a measure of the thing
// weighs is not known.
func HouseholdOf(ing *reference.Ingredient, grams decimal.Decimal, k formula.Kitchen, t *reference.Tables) (Household, bool) {
	density := ing.Density.Liquid
	if density.IsZero() {
		density = ing.Density.Loose.Likely
	}
	if !density.IsPositive() || !grams.IsPositive() {
		return Household{}, false
	}
	year, place := k.Year, k.Place
	if year == 0 {
		year = Today
	}
	if place == "" {
		place = "england"
	}
	best, found, off := Household{}, false, closeEnough
	for _, h := range householdMeasures {
		if h.cups && place != "usa" {
			continue
		}
		ml, ok := measureHolds(t, h.name, year, place)
		if !ok {
			continue
		}
		one := ml.Mul(density)
		for _, part := range h.parts {
			p := decimal.NewFromInt(part)
			n := grams.Mul(p).DivRound(one, 0)
			number := n.DivRound(p, 6)
			if number.LessThan(h.least) || number.GreaterThan(h.most) {
				continue
			}
			weighs := n.Mul(one).DivRound(p, 10)
			d := weighs.Sub(grams).Abs().DivRound(grams, 10)
			if d.GreaterThan(off) || found && d.Equal(off) {
				continue
			}
			name := h.name
			if number.GreaterThan(decimal.NewFromInt(1)) {
				name = reference.Plural(name)
			}
			best, found, off = Household{Words: formula.Numeral(number, part) + " " + name, Grams: weighs}, true, d
			if d.LessThanOrEqual(near) {
				return best, true
			}
		}
	}
	return best, found
}

// measureHolds is what a measure of that name holds then and there, ml.
func measureHolds(t *reference.Tables, name string, year int, place string) (decimal.Decimal, bool) {
	for _, m := range t.MeasuresCalled(name) {
		if m.Unit == "ml" && len(m.For) == 0 && m.Holds(year, place) {
			return m.Likely, true
		}
	}
	return decimal.Zero, false
}
