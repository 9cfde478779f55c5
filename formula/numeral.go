package formula

import (
	"fmt"

	"github.com/shopspring/decimal"
)

// Numeral is a number as a cook writes it: "2", "1/2", "1 1/4". Of fractions
// halves, thirds, quarters, eighths and sixteenths are known, none finer than
// the finest given; any other number stands in figures, to six places.
func Numeral(n decimal.Decimal, finest int64) string {
	if n.IsInteger() {
		return n.String()
	}
	for _, parts := range []int64{2, 3, 4, 8, 16} {
		m := n.Mul(decimal.NewFromInt(parts)).Round(5)
		if parts > finest || !m.IsInteger() {
			continue
		}
		whole := n.IntPart()
		rest := m.IntPart() - whole*parts
		if whole == 0 {
			return fmt.Sprintf("%d/%d", rest, parts)
		}
		return fmt.Sprintf("%d %d/%d", whole, rest, parts)
	}
	return n.Round(6).String()
}
