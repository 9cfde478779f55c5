package reference

// Caution is a hazard a receipt may carry and what to say of it. It is raised
// when the receipt names one of Ingredients or Words, or one of Roles together
// with one of Words, and, where they are given, one of With as well, and none
// of Unless. It is information for the cook, never a verdict on safety: every
// caution gives way to the food-safety authority of the place where the food
// is served.
type Caution struct {
	ID   string `yaml:"id" sheet:"required"`
	Code string `yaml:"code" sheet:"required"` // finding code: raw-egg, acid-metal, poison-plant ...
	Name string `yaml:"name" sheet:"required"` // the hazard, as shown

	Ingredients []string `yaml:"ingredients,omitempty"` // ingredient ids
	Roles       []string `yaml:"roles,omitempty"`
	Words       []string `yaml:"words,omitempty"`     // in lines, steps, dish or title
	With        []string `yaml:"with,omitempty"`      // words that must stand beside them: a vessel, a method, a keeping
	Unless      []string `yaml:"unless,omitempty"`    // words that take the hazard away
	Kinds       []string `yaml:"kinds,omitempty"`     // only in parts of these kinds
	Egg         bool     `yaml:"egg,omitempty"`       // raised by egg in the part, whatever else is said
	Uncooked    bool     `yaml:"uncooked,omitempty"`  // only where nothing cooks the part: not baked, not on heat
	Under       bool     `yaml:"under,omitempty"`     // only where the part is set before its centre reaches the floor for egg
	Walls       []string `yaml:"walls,omitempty"`     // of the dish it is baked in: earthenware, china, glass
	Sour        bool     `yaml:"sour,omitempty"`      // something sour in the pot does as well as a word of With
	Allergens   bool     `yaml:"allergens,omitempty"` // raised by the allergen columns of the ingredients

	Says      string `yaml:"says" sheet:"required"`    // the danger, in a sentence
	Instead   string `yaml:"instead" sheet:"required"` // what to do
	Authority string `yaml:"authority" sheet:"required"`
	Limit     Span   `yaml:"limit,omitempty"` // the figure the authority names
	Unit      string `yaml:"unit,omitempty"`  // of the limit

	Provenance `yaml:",inline"`
}

// Deference is said with every caution.
const Deference = "an old receipt is evidence, not advice: follow the food-safety authority of the place where the food is served, and people qualified in it"
