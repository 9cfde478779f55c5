package paste

// Type is the kind of paste a method and its fat make. It decides how much of
// the flour the fat coats and what water is usual.
type Type int

// The types, in the order they are told: the first that fits is taken.
const (
	NoFat Type = iota
	HotWater
	OilPaste
	Suet
	Flaky // laminated, folded, turned or flaked
	Sweet // sugar from .08 of the flour
	Short
)

// State is a paste in one reading, all figures to one of flour.
type State struct {
	Type      Type
	PureFat   float64 // F: fat by composition, cheese fat half
	Sugar     float64
	Coverage  float64 // eta: share of the fat that coats flour
	Water     float64 // water worked in: named liquids and eggs
	FatWater  float64 // water in butter
	Protein   float64 // of the flour, per cent
	Work      float64 // how much it is worked; 1 is careful
	Acid      bool    // acid at least .6 per cent of the flour
	Leavened  bool    // baking powder at least 1 per cent of the flour
	Lean      float64 // what fat counts against leanness: 1, more for oil, which leaves no flour bare
	UsualMost float64 // upper end of the usual water for the type
}

// Of tells the type of a paste.
func Of(fat, oilShare, suetShare, sugar float64, hotWater, laminated bool) Type {
	switch {
	case fat < .05:
		return NoFat
	case hotWater && !laminated:
		return HotWater
	case oilShare > .5:
		return OilPaste
	case suetShare > .5:
		return Suet
	case laminated:
		return Flaky
	case sugar >= .08:
		return Sweet
	}
	return Short
}

// Usual is the water a paste of the type is usually made with when the receipt
// names none: low, likely, high to one of flour. Never nothing. Trade ranges;
// very rich flaky paste takes more.
func (t Type) Usual(rawFat float64) (low, likely, high float64) {
	switch t {
	case Sweet:
		return .05, .10, .20
	case OilPaste:
		return .15, .20, .25
	case Flaky:
		if rawFat >= .70 {
			return .35, .45, .50
		}
		return .25, .35, .50
	case Suet:
		return .50, .58, .63
	case HotWater:
		return .375, .45, .51
	case NoFat:
		return .35, .45, .55
	}
	return .15, .20, .30
}

// butterWater is how much of the butter's water reaches the flour.
func (t Type) butterWater() float64 {
	switch t {
	case Sweet, OilPaste, HotWater:
		return .9
	case Flaky:
		return .3
	case Suet:
		return .2
	}
	return .6
}
