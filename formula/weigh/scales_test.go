package weigh_test

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula/file"
	"assize/formula/weigh"
	"assize/reference"
)

// cubicInch is a cubic inch in millilitres: 2.54 cubed.
var cubicInch = decimal.RequireFromString("16.387064")

// weighed reads a receipt of the given year and place from the text of a
// formula file and puts it on the scales.
func weighed(year int, place string, lines ...string) *weigh.Weighed {
	text := fmt.Sprintf("title: Worked example\nyear: %d\nplace: %s\nkitchen: {year: %d, place: %s}\n"+
		"parts:\n  - kind: filling\n    lines:\n", year, place, year, place)
	for _, l := range lines {
		text += "      - " + l + "\n"
	}
	t, err := reference.Load()
	if err != nil {
		panic(err)
	}
	f, faults := file.Read("example.yaml", []byte(text), t)
	if len(faults) > 0 {
		panic(faults.Error())
	}
	w, faults := weigh.Weigh(f, t)
	if len(faults) > 0 {
		panic(faults.Error())
	}
	return w
}

// grams is what one line weighs.
func grams(year int, place, line string) reference.Span {
	items := weighed(year, place, line).Parts[0].Items
	if len(items) != 1 {
		panic(line + " is not one thing")
	}
	return items[0].Grams
}

// volume is what a measure holds in cubic inches: what it holds of water, over
// the weight of a cubic inch of water in the same tables.
func volume(year int, place, measure string) reference.Span {
	each := grams(year, place, "100 ml of water").Likely.Shift(-2)
	g := grams(year, place, measure+" of water")
	inches := func(d decimal.Decimal) decimal.Decimal { return d.Div(each).Div(cubicInch) }
	return reference.Span{Low: inches(g.Low), Likely: inches(g.Likely), High: inches(g.High)}
}

// fixed writes a range with the given places; one figure when both ends round
// to it.
func fixed(s reference.Span, places int32) string {
	low, likely, high := s.Low.StringFixed(places), s.Likely.StringFixed(places), s.High.StringFixed(places)
	if low == high {
		return likely
	}
	return strings.Join([]string{likely, "(" + low, "to", high + ")"}, " ")
}
