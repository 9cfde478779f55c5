package formula

// Flag is something a method did that masses cannot say. The methods table
// raises flags; the judge reads them.
type Flag string

// Token is one piece of method recognised in the words of a receipt.
type Token struct {
	Method string // id in the methods table
	Words  string // the words it was taken from
	Where  Where
	Line   int // index of the ingredient line or step
}

// Where a token of method was found.
type Where string

// The places a method word may stand.
const (
	OnLine  Where = "line"
	InSteps Where = "steps"
	InBake  Where = "bake"
)

// Method is what was done to one part, as far as the words say.
type Method struct {
	Tokens []Token
	Flags  map[Flag]bool
	// LineFlags are the flags raised by the words on each ingredient line.
	LineFlags []map[Flag]bool
	Bake      Bake
	// FireMinutes is how long the steps stir it open on the fire, the middle of
	// a printed range; 0 when they do not say.
	FireMinutes float64
	// Boils reports that the steps bring the part itself to the boil, not its milk
	// alone nor water under it.
	Boils bool
}

// Has reports whether any of the flags was raised.
func (m *Method) Has(flags ...Flag) bool {
	for _, f := range flags {
		if m.Flags[f] {
			return true
		}
	}
	return false
}

// OnLine reports whether the words on ingredient line i raised the flag.
func (m *Method) OnLine(i int, f Flag) bool {
	return i >= 0 && i < len(m.LineFlags) && m.LineFlags[i][f]
}

// Bake is the baking record of a receipt in figures: stages in order. A zero
// figure is not said.
type Bake struct {
	Stages  []Stage
	Minutes float64 // all stages together, the middle of a printed range
}

// Stage is one heat for one length of time.
type Stage struct {
	LowMinutes, HighMinutes float64
	LowC, HighC             float64
}

// Said reports whether a time or a temperature was given.
func (b Bake) Said() bool { return len(b.Stages) > 0 }

// FirstC is the temperature the dish goes in at, the middle of a range; 0 when
// no temperature is given.
func (b Bake) FirstC() float64 {
	for _, s := range b.Stages {
		if s.HighC > 0 {
			return (s.LowC + s.HighC) / 2
		}
	}
	return 0
}

// LastC is the temperature of the last stage that has one.
func (b Bake) LastC() float64 {
	for i := len(b.Stages) - 1; i >= 0; i-- {
		if s := b.Stages[i]; s.HighC > 0 {
			return (s.LowC + s.HighC) / 2
		}
	}
	return 0
}
