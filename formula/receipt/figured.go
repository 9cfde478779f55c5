package receipt

import (
	"strconv"

	"github.com/shopspring/decimal"
)

// rounded is a figure to three places that count.
func rounded(d decimal.Decimal) string {
	if d.Exponent() >= 0 {
		return d.String()
	}
	keep := int32(0)
	switch {
	case d.LessThan(one):
		keep = 2
	case d.LessThan(hundred):
		keep = 1
	}
	if n, ok := grains(d); ok {
		unit := int64(grain)
		for range keep {
			unit /= 10
		}
		return decimal.New((n+unit/2)/unit, -keep).String()
	}
	return d.Round(keep).String()
}

var hundred = decimal.NewFromInt(100)

// grain is how many of the smallest parts a number is carried to make one.
const grain = 1_000_000_000_000

// grains is a number in those parts, when it is above nothing and not so great
// that they cannot be counted.
func grains(d decimal.Decimal) (int64, bool) {
	const most = 18 // digits
	e := int(d.Exponent())
	if e > 0 || e < -places || d.NumDigits()+places+e > most || !d.IsPositive() {
		return 0, false
	}
	n := d.CoefficientInt64()
	for range places + e {
		n *= 10
	}
	return n, true
}

// fractions are the figures a cook writes for parts of one.
var fractions = []struct {
	over, under int64
	text        string
}{
	{1, 8, "1/8"}, {1, 6, "1/6"}, {1, 4, "1/4"}, {1, 3, "1/3"}, {3, 8, "3/8"}, {1, 2, "1/2"}, {5, 8, "5/8"}, {2, 3, "2/3"}, {3, 4, "3/4"}, {7, 8, "7/8"},
}

// figured is one number as a cook writes it: 2, 1 1/2, 0.45.
func figured(d decimal.Decimal) string {
	if d.Exponent() == 0 {
		return d.String()
	}
	if d.Exponent() < -places {
		d = d.Round(places)
	}
	n, ok := grains(d)
	if !ok {
		return d.Round(4).String()
	}
	whole, rest := n/grain, n%grain
	if rest == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for _, f := range fractions {
		const near = 1000 // a thousand-millionth
		if off := rest - f.over*grain/f.under; off > -near && off < near {
			if whole == 0 {
				return f.text
			}
			return strconv.FormatInt(whole, 10) + " " + f.text
		}
	}
	return d.Round(4).String()
}
