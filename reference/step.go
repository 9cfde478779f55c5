package reference

// Step is something a working cook does whether the receipt says so or not:
// resting a paste, part-baking a case, straining a custard. A receipt that does
// not speak of it has not left it undone; it has left it unsaid.
type Step struct {
	ID    string `yaml:"id" sheet:"required"`
	Name  string `yaml:"name" sheet:"required"` // "part-baking the case"
	Says  string `yaml:"says" sheet:"required"` // what to do, for the cook
	Why   string `yaml:"why" sheet:"required"`
	Stage string `yaml:"stage" sheet:"required"` // where it stands in the working order, see StepStages

	// Kinds of part it is for, and what must be so (StepConditions). Flags are
	// flags of the part's method of which one must be raised.
	Kinds []string `yaml:"kinds" sheet:"required"`
	When  []string `yaml:"when,omitempty"`
	Flags []string `yaml:"flags,omitempty"`
	// Unless are conditions under which nobody expects the step unsaid, though it
	// has its place where the words or the book tell it.
	Unless []string `yaml:"unless,omitempty"`

	// Takes are flags of method any of which shows the step taken. Spares are
	// flags of another way to the same end: then it is not asked for.
	Takes  []string `yaml:"takes,omitempty"`
	Spares []string `yaml:"spares,omitempty"`
	// Anywhere marks a step that the words of any part of the receipt may tell.
	Anywhere bool `yaml:"anywhere,omitempty"`
	// Once marks a step of the whole dish: it is told once, not for each part.
	Once bool `yaml:"once,omitempty"`

	// Grade is how a check reports it when it is not taken: watch or note.
	// Empty: it stands on the worksheet only.
	Grade string `yaml:"grade,omitempty"`

	Minutes Span   `yaml:"minutes,omitempty"` // how long it takes
	Waiting bool   `yaml:"waiting,omitempty"` // whether the hands are free meanwhile
	Stop    string `yaml:"stop,omitempty"`    // what may be left here, and how long
	Show    string `yaml:"show,omitempty"`    // what to have ready made where people look on

	// Found is the earliest print in which we have found it; nothing when we
	// have not found it or not looked.
	Found Found `yaml:"found,omitempty"`

	Provenance `yaml:",inline"`
}

// Found is a print in which a practice stands. It is the earliest we know of,
// never the earliest there is.
type Found struct {
	Year       int `yaml:"year" sheet:"required"`
	Provenance `yaml:",inline"`
}

// StepStages are the stages of work in the order they are done.
var StepStages = []string{
	"ready", "make", "rest", "rise", "shape", "prove", "lay", "chill", "case", "wash", "strain", "fill", "rim", "oven", "done", "cool", "set",
}

// StepConditions are what a step may hang on. A condition that begins with
// "no-" holds where the other does not.
//
//	lined         the paste lines the dish: the filling lies on it
//	lidded        a lid of paste goes on
//	folded        the paste is folded over its filling: its own lid
//	patty         the paste lines small pans
//	raised        the case stands by itself, raised by hand
//	laid          the paste is laid in or on a dish with a filling
//	baked         it goes into an oven
//	filled-raw    the filling goes into the case before it is cooked, and is baked in it
//	wet-filling   the filling it goes with holds egg, milk, cream, juice, wine or water
//	bottom-crust  there is paste under it
//	paste         there is paste about it, under it or at the rim
//	pot           it is boiled or steamed in cloth, basin or mould
//	loaf          a bread baked whole, not buns or rolls
//	in-tin        a cake baked in a tin, not small ones on a sheet
//	hot-water     the paste is made with hot liquid and worked warm
//	yeast         yeast, barm or leaven raises it
//	layered       the paste is folded and rolled with its fat in sheets
//	eggs          egg is in it
//	custard       smooth milk or cream that egg alone sets
//	egg-set       egg sets it
//	stove         it is cooked on the fire, and not baked
//	cooked        it is baked, cooked on the fire, boiled or steamed, as far as is known
//	hot-served    the receipt sends it to table hot
//	filled-cold   a pie of meat that jelly or gravy is poured into when it has cooled
//	sets-cold     gelatine or isinglass sets it, without an oven
//	till-cold     a pie of meat that is to be cold before it is filled up or sent to table
var StepConditions = []string{
	"lined", "lidded", "folded", "patty", "raised", "laid", "baked", "filled-raw", "wet-filling", "bottom-crust", "paste", "pot", "loaf", "in-tin", "hot-water", "layered",
	"eggs", "yeast", "custard", "egg-set", "stove", "cooked", "hot-served", "filled-cold", "till-cold", "sets-cold",
}

// ReckonedFlags are flags of method that no wording raises: they are reckoned
// from what the wordings raise and the words beside them.
var ReckonedFlags = []string{"doneness_told", "laid_told"}
