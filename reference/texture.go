package reference

// Texture ties together the judge's classes, the outcome words of published
// formulas, the finding codes, the words shown and the words accepted after a
// tasting.
type Texture struct {
	ID         string   `yaml:"id" sheet:"required"`   // sets, starch-set, cakey ...
	Kind       string   `yaml:"kind" sheet:"required"` // filling | pastry
	Judged     bool     `yaml:"judged,omitempty"`      // one of the classes that share out a part's probability
	Fault      bool     `yaml:"fault,omitempty"`
	Finding    string   `yaml:"finding,omitempty"`      // code raised when it is likely
	Shown      string   `yaml:"shown" sheet:"required"` // "sets cakey"
	About      string   `yaml:"about,omitempty"`        // what it looks like at the cut, in plain words
	Counts     string   `yaml:"counts,omitempty"`       // the judged class an unjudged outcome counts as when scoring
	Outcomes   []string `yaml:"outcomes,omitempty"`     // words of the published table
	Tasted     []string `yaml:"tasted,omitempty"`       // words accepted after tasting
	Provenance `yaml:",inline"`
}
