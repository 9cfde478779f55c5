package change

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// portions are the parts of a receipt that have a name.
var portions = []struct {
	of, in int64
	words  string
}{
	{1, 12, "a twelfth of it"}, {1, 10, "a tenth of it"}, {1, 8, "an eighth of it"}, {1, 6, "a sixth of it"}, {1, 5, "a fifth of it"},
	{1, 4, "a quarter of it"}, {1, 3, "a third of it"}, {3, 8, "three eighths of it"}, {2, 5, "two fifths of it"}, {1, 2, "half of it"},
	{5, 8, "five eighths of it"}, {2, 3, "two thirds of it"}, {3, 4, "three quarters of it"}, {5, 6, "five sixths of it"}, {7, 8, "seven eighths of it"},
	{1, 1, "the whole of it"}, {5, 4, "once and a quarter"}, {3, 2, "once and a half"},
	{2, 1, "twice as much"}, {3, 1, "three times as much"}, {4, 1, "four times as much"},
}

// Portion says a factor as a cook would: "a quarter of it", "twice as much",
// when a common part lies within 2 1/2 in 100 of it, and else in figures.
func Portion(by decimal.Decimal) string {
	const near = "0.025"
	best, words := decimal.RequireFromString(near), ""
	for _, p := range portions {
		part := decimal.NewFromInt(p.of).DivRound(decimal.NewFromInt(p.in), exactly)
		if off := by.DivRound(part, exactly).Sub(decimal.NewFromInt(1)).Abs(); off.LessThan(best) {
			best, words = off, p.words
		}
	}
	switch {
	case words == "" && by.LessThan(decimal.NewFromInt(1)):
		return by.Round(2).String() + " of it"
	case words == "":
		return fmt.Sprintf("%s times as much", by.Round(2))
	}
	return words
}
