package oven

import "math"

// Floor is what a dish stands on.
type Floor int

// The floors, from the least heat from below to the most.
const (
	Rack  Floor = iota
	Tray        // a baking tray heated with the oven
	Deck        // the iron floor of a range or a deck oven
	Stone       // a stone or the brick floor, heated through
)

// String names the floor as a cook would.
func (f Floor) String() string {
	return [...]string{"the rack", "a hot tray", "the iron floor", "a hot stone or the brick floor"}[f]
}

// Floors lists them in order.
var Floors = []Floor{Rack, Tray, Deck, Stone}

// Base is a paste under a filling.
type Base struct {
	Raw        bool    // filled raw: the oven must bake the base through the filling's cold
	Sealed     bool    // part-baked, washed with egg or strewn with crumb
	Wet        float64 // water in the filling, per cent of the whole
	Depth      float64 // of the filling, cm; 0 when not known
	Oven       float64 // C
	Flaky      bool    // a flaky base takes up more than a mealy one
	ColdDish   bool    // earthenware, china or thick glass, put in cold
	On         Floor
	LowFilling bool // the filling sets so low that little time is left to the base
}

// Points counts what keeps a base from baking through, after science by
// judgement: a raw case 2, no seal 1, a wet filling 1 and a very wet one 2, a
// deep one 1, an oven under 170 C 1, a cold ceramic dish 1, a flaky base 1;
// bottom heat takes off 1 for a hot tray, 1 1/2 for iron and 2 for stone, but
// half of that under a dish that keeps the heat off.
func (b Base) Points() float64 {
	p := 0.0
	add := func(yes bool, n float64) {
		if yes {
			p += n
		}
	}
	add(b.Raw, 2)
	add(!b.Sealed, 1)
	add(b.Wet > 60, 1)
	add(b.Wet > 75, 1)
	add(b.Depth > 2.5, 1)
	add(b.Oven > 0 && b.Oven < 170, 1)
	add(b.ColdDish, 1)
	add(b.Flaky, 1)
	add(b.LowFilling, .5)
	off := [...]float64{0, 1, 1.5, 2}[b.On]
	if b.ColdDish {
		off /= 2
	}
	return p - off
}

// soggyFrom is the number of points at which a base is as likely soggy as not
// (four, where it is likely; half a point under it), and perPoint how many
// points turn the odds by e. Low confidence: the points are judgement.
const soggyFrom, perPoint = 3.5, 1.0

// Through is the chance that the base bakes through, 0 to 1. A base part-baked
// and sealed in a hot oven nears 1 and never is it.
func (b Base) Through() float64 {
	return 1 / (1 + math.Exp((b.Points()-soggyFrom)/perPoint))
}
