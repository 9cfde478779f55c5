package present

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"assize/ratios/readings"
	"assize/reference"
)

var (
	ten  = decimal.NewFromInt(10)
	tiny = decimal.RequireFromString("0.05")
)

// figure rounds an amount as finely as a kitchen knows it: whole from ten up,
// one place below, and never nothing for something.
func figure(d decimal.Decimal) string {
	switch {
	case d.IsPositive() && d.LessThan(tiny):
		return "under 0.1"
	case d.Round(1).LessThan(ten):
		return d.Round(1).String()
	}
	return d.Round(0).String()
}

// between is the range of a span as shown, empty when rounding leaves none.
func between(s reference.Span) string {
	low, likely, high := figure(s.Low), figure(s.Likely), figure(s.High)
	if low == likely && high == likely {
		return ""
	}
	return low + "-" + high
}

// partsUnit is what a part is weighed in when only proportions are known.
const partsUnit = "parts"

// weight is grams with their range: "320 g (264-376)".
func weight(s reference.Span, unit string) string {
	shown := figure(s.Likely)
	if shown == "1" && unit == partsUnit {
		unit = "part"
	}
	return ranged(shown+" "+unit, s)
}

// spanned is a bare figure with its range: "2 (2-3)".
func spanned(s reference.Span) string { return ranged(figure(s.Likely), s) }

// fine is a bare factor with its range, to two places.
func fine(s reference.Span) string { return ratio(s, 2) }

func ranged(shown string, s reference.Span) string {
	if b := between(s); b != "" {
		return shown + " (" + b + ")"
	}
	return shown
}

// volume is millilitres as a jug is read: "about 800 ml (740-860)".
func volume(s readings.Span) string {
	step := 10.0
	if s.Likely < 100 {
		step = 5
	}
	at := func(v float64) string { return fmt.Sprintf("%.0f", math.Round(v/step)*step) }
	out := "about " + at(s.Likely) + " ml"
	if at(s.Low) != at(s.High) {
		out += " (" + at(s.Low) + "-" + at(s.High) + ")"
	}
	return out
}

// Bounds of a share put in words: nothing is called certain.
const hardly, nearly = .05, .95

// settled is the share from which a texture is called the likeliest outright.
const settled = .60

// tenths is a share in tenths, 1 to 9. A share that leaves the verdict open is
// not rounded up to one that would settle it.
func tenths(share float64) int {
	n := min(9, max(1, int(math.Round(share*10))))
	if share < settled {
		n = min(n, 5)
	}
	return n
}

// outOfTen is a share in words: "about 8 in 10".
func outOfTen(share float64) string {
	switch {
	case share < hardly:
		return "hardly ever"
	case share >= nearly:
		return "nearly always"
	}
	return fmt.Sprintf("about %d in 10", tenths(share))
}

// fewestPlaces and mostPlaces are how finely a ratio is shown: the fewest that
// do, more only where rounding would belie the verdict.
const fewestPlaces, mostPlaces = 2, 6

// ratioPlaces is how many places a ratio and its range need so that the
// printed figures lie to each other as the exact ones do. verdict is below,
// within or above.
func ratioPlaces(value, low, high decimal.Decimal, verdict int) int32 {
	start := int32(fewestPlaces)
	switch largest := decimal.Max(value.Abs(), high.Abs()); {
	case largest.GreaterThanOrEqual(ten):
		start = 0
	case largest.LessThan(decimal.New(1, -1)):
		start = 3
	}
	for p := start; p < mostPlaces; p++ {
		v, l, h := value.Round(p), low.Round(p), high.Round(p)
		seen := 0
		switch {
		case v.LessThan(l):
			seen = -1
		case v.GreaterThan(h):
			seen = 1
		}
		if seen == verdict {
			return p
		}
	}
	return mostPlaces
}

// ratio is a ratio with its range, to so many places at most.
func ratio(s reference.Span, places int32) string {
	at := func(d decimal.Decimal) string { return d.Round(places).String() }
	low, likely, high := at(s.Low), at(s.Likely), at(s.High)
	switch {
	case low == likely && high == likely && s.High.IsZero():
		return "none"
	case low == likely && high == likely:
		return likely
	}
	return likely + " (" + low + "-" + high + ")"
}
