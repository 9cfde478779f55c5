package reference

// Allergen is one group of one list of foods that must be named to those who
// eat. The columns AllergensEU and AllergensUS of the ingredients use its group.
type Allergen struct {
	ID         string `yaml:"id" sheet:"required"`
	List       string `yaml:"list" sheet:"required"`  // see AllergenLists
	Group      string `yaml:"group" sheet:"required"` // as the ingredients name it
	Shown      string `yaml:"shown" sheet:"required"` // as it is written out
	Counts     string `yaml:"counts,omitempty"`       // what it takes in and leaves out
	Provenance `yaml:",inline"`
}

// AllergenLists are the two lists a group may stand on.
var AllergenLists = []string{"eu", "us"}

// Answer is what an ingredient or a word says to one of the questions the
// public asks. None speaks for a dish: the table never clears one.
type Answer struct {
	ID          string   `yaml:"id" sheet:"required"`
	Question    string   `yaml:"question" sheet:"required"` // see Questions
	Ingredients []string `yaml:"ingredients,omitempty"`
	Words       []string `yaml:"words,omitempty"` // on the page
	Unless      []string `yaml:"unless,omitempty"`
	Answer      string   `yaml:"answer" sheet:"required"` // against | ask
	Says        string   `yaml:"says" sheet:"required"`
	Provenance  `yaml:",inline"`
}

// Questions are those the public asks beside allergens.
var Questions = []string{"vegetarian", "coeliac", "alcohol", "hidden"}
