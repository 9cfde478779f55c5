package reference

// Oven is one reading of a sign of an oven's heat: the word a book uses, how
// long a hand bears it, what it does to paper or flour, a mark on a gas tap,
// the heat a dish wants. Tables that disagree are rows of their own beside the
// working row.
type Oven struct {
	ID   string `yaml:"id" sheet:"required"`
	Kind string `yaml:"kind" sheet:"required"` // see OvenKinds
	// Words are the wordings of the sign: "quick", "brisk"; "gas mark 4"; for a
	// test what is done; for a dish what is baked.
	Words []string `yaml:"words" sheet:"required"`
	// Working marks the row to go by; the others are the tables it was drawn
	// over, kept to be shown.
	Working bool `yaml:"working,omitempty"`

	F Span `yaml:"f,omitempty"` // degrees Fahrenheit; nothing when the table gives none
	C Span `yaml:"c,omitempty"` // the same in Celsius, to a whole degree
	// DegreesHow says how the degrees are known, which may be less well than the sign.
	DegreesHow How `yaml:"degrees_how,omitempty"`
	// ThenF and ThenC are the heat of the second stage where the oven is let fall.
	ThenF Span `yaml:"then_f,omitempty"`
	ThenC Span `yaml:"then_c,omitempty"`

	Seconds Span   `yaml:"seconds,omitempty"` // how long the hand bears it, or until the sign shows
	Sign    string `yaml:"sign,omitempty"`    // what is seen: "dark yellow", "browns"
	Means   string `yaml:"means,omitempty"`   // the oven word or judgement the book draws from it
	Use     string `yaml:"use,omitempty"`     // what is baked in it
	Minutes Span   `yaml:"minutes,omitempty"` // baking time given with it
	Refused string `yaml:"refused,omitempty"` // why the figure must not be taken as the heat of the air

	Validity   `yaml:",inline"`
	Provenance `yaml:",inline"`
}

// OvenKinds are the signs an oven's heat is told by.
var OvenKinds = []string{"word", "gas", "hand", "paper", "flour", "paste", "dial", "dish", "oven"}
