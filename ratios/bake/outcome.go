package bake

// Measure is a figure of one reading, shown beside the shares.
type Measure int

// The measures. Which are computed depends on the kind of part.
const (
	PH Measure = iota
	SetIndex
	Need
	CurdleMargin // C between the hottest part of a carefully kept dish and curdling
	Air          // per cent of the volume
	Structure
	CakeyIndex
	EggProtein  // per cent of the water phase
	SugarShare  // sugar in the water phase, per cent
	FatShare    // fat in the whole, per cent
	StarchShare // working starch, per cent of the free water
	AcidShare   // acid as citric, per cent of the whole
	SugarToAcid
	Saturation
	WaterActivity
	Density
	Volume // ml, air counted and steam off an open pan taken off
	ThinIndex
	CurdleIndex
	HeatIndex
	RubberyIndex
	StarchIndex
	AddedLiquid
	Floury
	EggStructure
	Risen // ml at its height in the oven

	Toughness
	ToughIndex
	GreasyIndex
	CrumblyIndex
	FlakyIndex
	PureFat
	NetWater
	WorkedWater
	Coverage

	NumMeasures
)

// measureNames as reports call them.
var measureNames = [NumMeasures]string{
	"ph", "set_index", "set_needed", "curdle_margin_c", "air", "structure", "cakey_index", "egg_protein",
	"sugar_share", "fat_share", "starch_share", "acid_share", "sugar_to_acid", "sugar_saturation", "water_activity",
	"density_g_ml", "volume_ml", "thin_index", "curdle_index", "heat_index", "rubbery_index", "starch_index",
	"added_liquid", "floury", "egg_structure", "risen_ml",
	"toughness", "tough_index", "greasy_index", "crumbly_index", "flaky_index", "fat_to_flour", "net_water",
	"worked_water", "fat_coverage",
}

// String is the measure's name in reports.
func (m Measure) String() string { return measureNames[m] }

// ofFilling and ofPaste are the measures each kind computes.
var (
	ofFilling = span(PH, Risen)
	ofPaste   = append(span(Toughness, Coverage), WaterActivity, Density, Volume)
)

func span(from, to Measure) []Measure {
	var out []Measure
	for m := from; m <= to; m++ {
		out = append(out, m)
	}
	return out
}

// MostShares is the most textures a part can be shared out among.
const MostShares = 8

// Outcome is what one reading comes to. Shares are in the order of
// Kernel.Textures and sum to 1.
type Outcome struct {
	Shares   [MostShares]float64
	Heat     float64 // chance of harm by careless heat; a caution, not a share
	Measures [NumMeasures]float64
	curd     bool
}

// Fixed reports that the shares were not left to the links: a filling of curd
// is of curd texture, as meant.
func (o *Outcome) Fixed() bool { return o.curd }
