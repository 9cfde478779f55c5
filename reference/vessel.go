package reference

import "github.com/shopspring/decimal"

// Vessel is a dish a receipt may be baked or set in. Measures are inside, the
// depth upright; a round dish has no second side.
type Vessel struct {
	ID    string   `yaml:"id" sheet:"required"`
	Names []string `yaml:"names" sheet:"required"` // as a book or a cook calls it
	Kind  string   `yaml:"kind" sheet:"required"`  // see VesselKinds
	Shape string   `yaml:"shape" sheet:"required"` // round | oval | oblong

	// Centimetres. Nothing where no size is known.
	Top        Span            `yaml:"top,omitempty"`         // width at the top, the longer side of an oblong or oval
	TopSide    Span            `yaml:"top_side,omitempty"`    // the shorter side at the top
	Bottom     Span            `yaml:"bottom,omitempty"`      // width at the bottom, the longer side
	BottomSide Span            `yaml:"bottom_side,omitempty"` // the shorter side at the bottom
	Depth      Span            `yaml:"depth,omitempty"`
	Rim        decimal.Decimal `yaml:"rim,omitempty"` // width of a flat rim that paste is laid over

	Brimful Span   `yaml:"brimful,omitempty"`       // ml, level full
	Usable  Span   `yaml:"usable" sheet:"required"` // ml, as a cook fills it, no paste in it
	Volume  string `yaml:"volume" sheet:"required"` // read | reckoned | memory: how the millilitres are known
	Lining  Span   `yaml:"lining,omitempty"`        // grams of paste an eighth of an inch thick that line it
	Walls   string `yaml:"walls,omitempty"`         // tin | earthenware | china | glass | iron | paste, where it matters to the heat

	Refused string `yaml:"refused,omitempty"` // why the figures must not be used for the dish of that name

	Validity   `yaml:",inline"`
	Provenance `yaml:",inline"`
}

// VesselKinds are the families of dishes.
var VesselKinds = []string{"pie plate", "pie dish", "tart tin", "patty-pan", "cup", "basin", "mould", "pie mould", "cake tin", "loaf tin", "baking dish", "plate", "glass", "jar"}
