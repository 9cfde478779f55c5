package reference

// How says how a fact came into a table.
type How string

// The three ways a fact may be known.
const (
	// HowRead marks a figure read in the work its source names.
	HowRead How = "read"
	// HowMemory marks trade knowledge set down without the work in hand.
	HowMemory How = "memory"
	// HowCommon marks what working cooks generally do, with no single source.
	HowCommon How = "common practice"
)

// Provenance says where a row comes from. Every row of every table has one;
// the loader refuses a row without it.
type Provenance struct {
	Source  string `yaml:"source" sheet:"required"`  // id in the sources table
	Locator string `yaml:"locator" sheet:"required"` // page, table, row or section of the work
	How     How    `yaml:"how" sheet:"required"`     // read | memory | common practice
	Note    string `yaml:"note,omitempty"`           // doubts, disagreements, conversions
}

// Source is one work the tables rest on. The work is cited, not the copy it
// was read in; Address is kept only where the work itself is a web page.
type Source struct {
	ID      string `yaml:"id" sheet:"required"`
	Author  string `yaml:"author,omitempty"`
	Title   string `yaml:"title" sheet:"required"`
	Year    string `yaml:"year,omitempty"` // text, since "c. 1907" is honest
	Edition string `yaml:"edition,omitempty"`
	Kind    string `yaml:"kind" sheet:"required"` // see SourceKinds
	Licence string `yaml:"licence,omitempty"`     // with the attribution it asks for
	Address string `yaml:"address,omitempty"`
	Note    string `yaml:"note,omitempty"`
}

// SourceKinds are the kinds of work a source may be.
var sourceKinds = []string{
	"statute", "standard", "handbook", "textbook", "paper", "period book",
	"trade book", "cookery book", "data set", "web page", "common practice", "memory",
}
