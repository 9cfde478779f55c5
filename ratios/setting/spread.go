package setting

// Fire is how the heat reaches a filling.
type Fire int

// The fires, in the order they are told: the first that fits is taken.
const (
	Microwave Fire = iota
	Stirred
	Bath
	Slow
	Hot
	Moderate
)

// Spread is the difference between the just-set centre and the hottest part
// of a dish, C, as a range from a careful to a careless hand. The ranges are
// judgement, resting on how far edges run ahead of centres in slab heating.
type Spread struct {
	CarefulLow, CarefulHigh, CarelessLow, CarelessHigh float64
}

// spreads by Fire.
var spreads = [...]Spread{
	Microwave: {12, 22, 12, 22},
	Stirred:   {2, 5, 8, 14},
	Bath:      {3, 5, 5, 9},
	Slow:      {4, 6, 8, 12},
	Hot:       {6, 9, 14, 20},
	Moderate:  {5, 8, 10, 15},
}

// SpreadOf is the spread of a fire.
func SpreadOf(f Fire) Spread { return spreads[f] }
