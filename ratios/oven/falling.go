package oven

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Reading is one look at the thermometer in a falling oven: minutes since the
// first, and the heat, C.
type Reading struct{ Minutes, C float64 }

// Line is how a fired oven falls: above the room its heat lessens by the same
// part in every hour (Newton's law of cooling), so that the logarithm of its
// heat over the room's is a straight line.
type Line struct {
	Room   float64 // C
	First  float64 // heat of the line at the first reading, C
	PerMin float64 // part of the heat over the room lost a minute
	// Spread is how far the readings lie from the line, as a part of the heat
	// over the room; never less than the spread of a thermometer and of one
	// place in an oven against another.
	Spread float64
	// Few marks a line through two readings: it tells nothing of its own error,
	// which is then by judgement.
	Few      bool
	Last     float64 // minutes of the last reading
	mean, sx float64
	n        float64
}

// Errors a falling oven's line is never better than: a tenth where only two
// readings tell it, else three in a hundred, for the thermometer and for the
// floor against the crown (judgement).
const (
	leastSpread = .03
	fewSpread   = .10
)

// What can be wrong with readings.
var (
	errFewReadings = errors.New("two readings or more are wanted, some time apart")
	errOneTime     = errors.New("all readings are of one time")
	errRising      = errors.New("the oven is not falling: draw the fire and shut it up, then read again")
)

// mostC is the hottest an oven of brick is read, C, and leastOver how far over
// the room a reading must be to tell anything.
const mostC, leastOver = 700.0, 10.0

// Fit lays the line through readings, room degrees C about the oven. Readings
// must be of more than one time and fall on the whole.
func Fit(readings []Reading, room float64) (Line, error) {
	l := Line{Room: room}
	if len(readings) < 2 {
		return l, errFewReadings
	}
	var x, y []float64
	from := slices.MinFunc(readings, func(a, b Reading) int { return int(math.Copysign(1, a.Minutes-b.Minutes)) }).Minutes
	for _, r := range readings {
		if !(r.C >= room+leastOver && r.C <= mostC) {
			return l, fmt.Errorf("a reading of %.0f C cannot be used: from %.0f to %.0f", r.C, room+leastOver, mostC)
		}
		x = append(x, r.Minutes-from)
		y = append(y, math.Log(r.C-room))
		l.Last = max(l.Last, r.Minutes-from)
	}
	a, b, spread, err := straight(x, y)
	if err != nil {
		return l, errOneTime
	}
	if b >= 0 {
		return l, errRising
	}
	l.First, l.PerMin, l.Spread = room+math.Exp(a), -b, max(leastSpread, spread)
	if len(readings) == 2 {
		l.Few, l.Spread = true, fewSpread
	}
	l.n = float64(len(x))
	for _, v := range x {
		l.mean += v / l.n
	}
	for _, v := range x {
		l.sx += (v - l.mean) * (v - l.mean)
	}
	return l, nil
}

// At is the oven's heat so many minutes after the first reading, with the
// range eight in ten readings would lie in. The further from the readings, the
// wider it is.
func (l Line) At(minutes float64) Range {
	over := (l.First - l.Room) * math.Exp(-l.PerMin*minutes)
	by := l.err(minutes)
	return Range{l.Room + over*math.Exp(-by), l.Room + over, l.Room + over*math.Exp(by)}
}

// err is the error of the line at a time, as a part of the heat over the room.
func (l Line) err(minutes float64) float64 {
	return eightInTen * l.Spread * math.Sqrt(1+1/l.n+(minutes-l.mean)*(minutes-l.mean)/l.sx)
}

// When is the time at which the oven has fallen to a heat, minutes after the
// first reading; before it, when less than nothing. Endless for a heat the
// room itself has.
func (l Line) When(c float64) float64 {
	if c <= l.Room {
		return math.Inf(1)
	}
	return math.Log((l.First-l.Room)/(c-l.Room)) / l.PerMin
}

// Halves is how long the oven takes to lose half its heat over the room's,
// minutes.
func (l Line) Halves() float64 { return math.Ln2 / l.PerMin }

// mean heat of a time in the oven.
func (l Line) over(from, minutes float64) float64 {
	if minutes <= 0 {
		return l.At(from).Likely
	}
	k := l.PerMin
	return l.Room + (l.First-l.Room)*(math.Exp(-k*from)-math.Exp(-k*(from+minutes)))/(k*minutes)
}

// Dish is one thing to go into a falling oven.
type Dish struct {
	Name string
	Kind string // Bread, Pies, Tarts, Custards, Biscuits, Meringues; empty for other
	C    Range  // the heat it wants
	// Takes tells how long it stays in an oven of a heat; it may be nil, and is
	// then not known.
	Takes func(c float64) Minutes
}

// The old order of a falling oven, hottest first.
const (
	Bread     = "bread"
	Pies      = "pies"
	Tarts     = "tarts"
	Biscuits  = "biscuits"
	Cakes     = "cakes"
	Custards  = "custards"
	Meringues = "meringues"
)

// Placing is when a dish goes in and what oven it meets.
type Placing struct {
	Dish *Dish
	In   float64 // minutes after the first reading
	Heat Range   // of the oven as it goes in
	Stay Minutes // how long, by the mean heat of the stay
	Left float64 // heat when it comes out, C
	// Late marks a dish whose heat had passed before the first reading: it is
	// put in at once, and may want the oven fired again. Slow marks one the
	// oven leaves too cool for before it is done.
	Late, Slow bool
}

// Plan puts dishes in the order they go in, the hottest wanted first, each at
// the time that the mean heat of its stay is the heat it wants. Dishes that
// want the same heat go in together. No dish goes in before the first reading.
func Plan(l Line, dishes []Dish) []Placing {
	out := make([]Placing, len(dishes))
	for i := range dishes {
		out[i] = place(l, &dishes[i])
	}
	slices.SortStableFunc(out, func(a, b Placing) int {
		switch {
		case a.In < b.In:
			return -1
		case a.In > b.In:
			return 1
		case a.Dish.C.Likely > b.Dish.C.Likely:
			return -1
		case a.Dish.C.Likely < b.Dish.C.Likely:
			return 1
		}
		return 0
	})
	return out
}

func place(l Line, d *Dish) Placing {
	p := Placing{Dish: d}
	var stay Minutes
	if d.Takes != nil {
		stay = d.Takes(d.C.Likely)
	}
	m := stay.Likely
	if math.IsInf(m, 1) || stay.Never {
		m = 0
	}
	// The mean over the stay falls with the time it starts: halve the time the
	// answer lies in until it is found to the minute.
	low, high := 0.0, max(0, l.When(d.C.Likely))
	switch {
	case l.over(0, m) <= d.C.Likely:
		p.In = 0
		p.Late = l.At(0).Likely < d.C.Low
	default:
		for high-low > .5 {
			mid := (low + high) / 2
			if l.over(mid, m) > d.C.Likely {
				low = mid
			} else {
				high = mid
			}
		}
		p.In = math.Round((low + high) / 2)
	}
	p.Heat, p.Stay = l.At(p.In), stay
	if d.Takes != nil {
		p.Stay = d.Takes(l.over(p.In, m))
	}
	out := p.Stay.Likely
	if math.IsInf(out, 1) {
		out = 0
	}
	p.Left = l.At(p.In + out).Likely
	p.Slow = p.Stay.Never || math.IsInf(p.Stay.Likely, 1) || p.Left < d.C.Low-slack
	return p
}

// slack is how far under the heat it wants an oven may fall before a dish is
// done, C, before that is said.
const slack = 30.0

// Order is the old order of a falling oven, with the heat each was put in at
// (common practice, drawn over the ovens and the doneness of the tables).
var Order = []Dish{
	{Name: Bread, Kind: Bread, C: Range{218, 246, 288}},
	{Name: "pies and large pastry", Kind: Pies, C: Range{200, 215, 232}},
	{Name: "tarts and small pastry", Kind: Tarts, C: Range{190, 204, 220}},
	{Name: Cakes, Kind: Cakes, C: Range{165, 177, 190}},
	{Name: "custards and milk puddings", Kind: Custards, C: Range{140, 152, 163}},
	{Name: "biscuits to crisp, rusks", Kind: Biscuits, C: Range{120, 135, 150}},
	{Name: "meringues, fruit to dry", Kind: Meringues, C: Range{80, 100, 120}},
}
