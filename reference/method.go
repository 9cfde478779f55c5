package reference

// Method is one token of method: what a cook did, whatever words the book had
// for it.
type Method struct {
	ID      string `yaml:"id" sheet:"required"`
	Meaning string `yaml:"meaning" sheet:"required"` // one line for the cook
	// Words are wordings, modern and period. "..." stands for up to eight words.
	// The longest wording that fits a place wins, so that "no water-bath" is
	// never a water-bath.
	Words []string `yaml:"words" sheet:"required"`
	// Scope says where the wording may stand: line, steps, bake.
	Scope []string `yaml:"scope" sheet:"required"`
	// Sets are the flags of a method the token raises, see MethodFlags.
	Sets []string `yaml:"sets,omitempty"`
	// Parts limits the token to part kinds; empty is all.
	Parts      []string `yaml:"parts,omitempty"`
	Provenance `yaml:",inline"`
}

// Modifier is a word that may stand before or after an ingredient's name
// without changing what it is: "fresh", "best", "finely".
type Modifier struct {
	Words      []string `yaml:"words" sheet:"required"`
	Provenance `yaml:",inline"`
}
