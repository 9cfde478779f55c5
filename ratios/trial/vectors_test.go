package trial

import (
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/formula/receipt"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// vector is one formula of testdata/vectors/textures.yaml.
type vector struct {
	ID         string         `yaml:"id"`
	Part       string         `yaml:"part"`
	Components map[string]any `yaml:"components"`
	Indices    map[string]any `yaml:"indices"`
	Likely     map[string]any `yaml:"shares_likely_reading"`
	Mean       map[string]any `yaml:"shares_mean_of_400"`
}

// worked are the link values the vectors were worked out with.
var worked = map[string][2]float64{
	"thin": {.141, .253}, "cakey": {.861, .343}, "curdy": {.864, 1.114}, "rubbery": {-.011, .100}, "starch-set": {.421, .051},
	"tough": {.832, .264}, "greasy": {.022, .046}, "crumbly": {1.960, .166}, "flaky": {.123, .028},
}

// differs are vectors whose grams we hold to be wrong, each with the reason.
var differs = map[string]string{
	"chess-buttermilk-william": "its cup of buttermilk weighs as much as a cup of butter; buttermilk is 1.04 g/ml",
	"jstookey-crisco":          "its cup of shortening weighs as much as butter; published cups of shortening are 187-205 g",
	"pudding-farmer-rice":      "its rice is measured as rice flour; a cup of whole rice weighs 185-200 g",
	"pie-tribune-1897":         "two lemons grated whole are taken here as their whole flesh, not as juice and what is left of the flesh",
	"custard-ration-1egg":      "its egg is 44 g, smaller than the British table of 2000 gives (53 g)",
	"custard-ration-2egg":      "its egg is 44 g, smaller than the British table of 2000 gives (53 g)",
}

// wetterButter are vectors that take unsalted or washed butter for salted. Here
// it is a row of its own with more water, so the butter's water and what hangs
// on it alone are not compared.
var wetterButter = map[string][]string{
	"magic-4akid": {"butw"}, "whole-lemon-one": {"butw"}, "twd-split-hand": {"butw"}, "puff-farmer": {"crumbly"},
}

// withoutFibre are vectors that leave fibre and dextrin out of the volume, so
// that the same air is a larger share of it.
var withoutFibre = map[string][]string{"pie-impossible-coconut": {"phi"}}

var componentOf = map[string]ratios.Quantity{
	"M": ratios.Total, "w": ratios.Water, "pw": ratios.WhiteProtein, "py": ratios.YolkProtein, "pm": ratios.MilkProtein,
	"pc": ratios.SourMilkProtein, "pf": ratios.FlourProtein, "f": ratios.Fat, "s": ratios.Sugars, "st": ratios.Starch,
	"ca": ratios.Acid, "eggw": ratios.EggWater, "butw": ratios.ButterWater, "pulpw": ratios.PulpWater, "white": ratios.EggWhite,
	"yolk": ratios.EggYolk, "crumb": ratios.Crumb, "nut": ratios.Nut, "curd": ratios.CurdMass, "dairy": ratios.SweetDairy,
}

var indexOf = map[string]bake.Measure{
	"pH": bake.PH, "S": bake.SugarShare, "fat": bake.FatShare, "Ee": bake.EggProtein, "STf": bake.StarchShare, "SET": bake.SetIndex,
	"need": bake.Need, "thin": bake.ThinIndex, "curdle": bake.CurdleIndex, "heat": bake.HeatIndex, "D": bake.AddedLiquid,
	"FL": bake.Floury, "Q": bake.EggStructure, "Bst": bake.Structure, "phi": bake.Air, "K": bake.CakeyIndex, "q": bake.StarchIndex,
	"rub": bake.RubberyIndex, "F": bake.PureFat, "wat": bake.WorkedWater, "Wn": bake.NetWater, "eta": bake.Coverage,
	"tau": bake.Toughness, "tough": bake.ToughIndex, "crumbly": bake.CrumblyIndex, "greasy": bake.GreasyIndex, "flaky": bake.FlakyIndex,
}

func TestVectors(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	raw, err := os.ReadFile("../../testdata/vectors/textures.yaml")
	require.NoError(t, err)
	var vectors []vector
	require.NoError(t, yaml.Unmarshal(raw, &vectors))

	as := *tables
	as.Links = append([]reference.Link(nil), tables.Links...)
	for i, l := range as.Links {
		if v, ok := worked[l.ID]; ok {
			as.Links[i].Mid, as.Links[i].Width = reference.Float(v[0]), reference.Float(v[1])
		}
	}
	methods := receipt.NewMethodReader(tables)
	published := map[string]*reference.Published{}
	for i := range tables.Published {
		published[tables.Published[i].ID] = &tables.Published[i]
	}
	for _, v := range vectors {
		p := published[v.ID]
		if p == nil {
			continue // the check formulas stand in TestCheckFormulas
		}
		t.Run(v.ID, func(t *testing.T) {
			if why, ok := differs[v.ID]; ok {
				t.Skip(why)
			}
			it, err := ready(p, &as, methods, bake.Rules{})
			require.NoError(t, err)
			mix, likely := it.Kernel.LikelyMix(), readings.LikelyReading(it.Kernel)
			for name, want := range v.Components {
				if q, ok := componentOf[name]; ok && !slices.Contains(wetterButter[v.ID], name) {
					near(t, name, mix[q], want, .01, .05)
				}
			}
			for name, want := range v.Indices {
				if m, ok := indexOf[name]; ok && !slices.Contains(wetterButter[v.ID], name) && !slices.Contains(withoutFibre[v.ID], name) {
					near(t, name, likely.Measures[m], want, .02, .02)
				}
			}
			mean := it.Shares(400)
			for i, id := range it.Kernel.Textures {
				key := id
				if id == "starch-set" {
					key = "starch"
				}
				near(t, "likely share "+id, likely.Shares[i], v.Likely[key], 0, .02)
				near(t, "mean share "+id, mean[id], v.Mean[key], 0, .04)
			}
		})
	}
}

func near(t *testing.T, name string, got float64, want any, relative, absolute float64) {
	t.Helper()
	var w float64
	if _, err := fmt.Sscan(fmt.Sprint(want), &w); err != nil {
		return
	}
	if math.Abs(got-w) > math.Max(relative*math.Abs(w), absolute) {
		t.Errorf("%s is %.4g, the vector has %.4g", name, got, w)
	}
}
