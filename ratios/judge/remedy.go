package judge

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/readings"
	"assize/reference"
)

// remedy is a change a cook might make against a texture, with where it makes
// sense. What it does is computed each time.
type remedy struct {
	against []string // texture ids
	touches string   // what a change of method touches: of those that touch one thing only one is done
	text    string
	step    string // as a step of the receipt, for what is done otherwise
	change  change.Change
	fits    func(*situation) bool
}

// situation is what a remedy looks at to know whether it makes sense here.
type situation struct {
	method *formula.Method
	fire   bake.Fire
	mix    ratios.Mix
	lined  bool // put in a dish lined with paste
	silent bool // nothing is said of how it is mixed
}

func by(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// remedies in the order they are offered when they help alike. Nothing no cook
// would do is among them: no water bath for a dish lined with paste.
var remedies = []remedy{
	{
		against: []string{"cakey"}, touches: "butter", step: "Melt the butter and stir it in.", text: "melt the butter, cool it to blood heat and stir it in, instead of creaming it",
		change: change.Change{Drop: []formula.Flag{"creamed"}, Raise: []formula.Flag{"melted_fat"}},
		fits:   func(s *situation) bool { return s.method.Has("creamed") || s.silent && s.mix[ratios.ButterLike] > 0 },
	},
	{
		against: []string{"cakey"}, touches: "eggs", step: "Beat the eggs slightly.", text: "stir the eggs only till they run together, without froth",
		change: change.Change{Drop: []formula.Flag{"eggs_very_light", "eggs_beaten", "whites_folded", "whites_maybe_folded", "whites_beaten"}, Raise: []formula.Flag{"eggs_slightly"}},
		fits: func(s *situation) bool {
			return s.silent || s.method.Has("eggs_very_light", "eggs_beaten", "whites_folded", "whites_maybe_folded")
		},
	},
	{
		against: []string{"cakey", "curdy"}, touches: "fire", text: "bake it gently, 150 C (300 F), on the middle shelf",
		change: change.Change{Drop: []formula.Flag{"hot", "moderate"}, Raise: []formula.Flag{"slow"}, HeatC: 150},
		fits:   func(s *situation) bool { return s.fire.Baked && !s.fire.Slow && !s.fire.Bath },
	},
	{
		against: []string{"cakey", "curdy"}, touches: "fire", step: "Stand the dish in a water bath.", text: "stand the dish in a bath of hot water in the oven",
		change: change.Change{Raise: []formula.Flag{"bath"}},
		fits:   func(s *situation) bool { return s.fire.Baked && !s.fire.Bath && !s.lined },
	},
	{
		against: []string{"cakey"}, touches: "fire", step: "Thicken it over hot water.", text: "thicken the filling in a basin over hot water first, then fill a baked case with it",
		change: change.Change{Drop: []formula.Flag{"baked", "hot", "moderate", "slow", "bath"}, Raise: []formula.Flag{"on_heat", "not_baked"}},
		fits: func(s *situation) bool {
			return s.fire.Baked && !s.fire.OnHeat && s.mix.FlourAndMeal() < .02*s.mix[ratios.Total] && s.mix[ratios.Crumb] == 0
		},
	},
	{
		against: []string{"cakey", "rubbery"}, text: "take a quarter fewer eggs",
		change: change.Change{Times: []change.Times{{Role: "egg", By: by("0.75")}, {Role: "white", By: by("0.75")}, {Role: "yolk", By: by("0.75")}}},
		fits:   func(s *situation) bool { return s.mix.EggMass() > 150 },
	},
	{
		against: []string{"thin"}, text: "add one egg",
		change: change.Change{Add: []change.Addition{{Ingredient: "egg_whole", Grams: by("50")}}},
		fits:   func(s *situation) bool { return s.mix.EggMass() > 0 },
	},
	{
		against: []string{"thin"}, text: "add two yolks",
		change: change.Change{Add: []change.Addition{{Ingredient: "egg_yolk", Grams: by("34")}}},
	},
	{
		against: []string{"thin"}, text: "take a quarter less of the liquid",
		change: change.Change{Times: []change.Times{{Role: "milk", By: by("0.75")}, {Role: "cream", By: by("0.75")}, {Role: "liquid", By: by("0.75")}, {Role: "water", By: by("0.75")}, {Role: "juice", By: by("0.75")}}},
	},
	{
		against: []string{"thin", "curdy"}, text: "boil a level tablespoon of cornflour (8 g) in part of the liquid and stir it in",
		change: change.Change{Add: []change.Addition{{Ingredient: "cornflour", Grams: by("8")}}, Raise: []formula.Flag{"starch_boiled"}},
	},
	{
		against: []string{"thin"}, touches: "starch", step: "Boil the starch in part of the liquid.", text: "boil the flour or starch in part of the liquid until it is thick, before the rest goes in",
		change: change.Change{Raise: []formula.Flag{"starch_boiled"}},
		fits: func(s *situation) bool {
			return s.mix.FlourAndMeal() > 0 && !s.method.Has("starch_boiled")
		},
	},
	{
		against: []string{"curdy"}, touches: "fire", step: "Thicken it over hot water.", text: "stir it in a basin over hot water instead of in the microwave",
		change: change.Change{Drop: []formula.Flag{"microwave"}, Raise: []formula.Flag{"on_heat"}},
		fits:   func(s *situation) bool { return s.fire.Microwave },
	},
	{
		against: []string{"rubbery"}, text: "take a quarter less flour",
		change: change.Change{Times: []change.Times{{Role: "flour", By: by("0.75")}, {Role: "meal", By: by("0.75")}}},
		fits:   func(s *situation) bool { return s.mix.FlourAndMeal() > 0 },
	},
	{
		against: []string{"tough"}, text: "take half as much fat again",
		change: change.Change{Times: []change.Times{{Role: "butter", By: by("1.5")}, {Role: "hard_fat", By: by("1.5")}, {Role: "oil", By: by("1.5")}}},
	},
	{
		against: []string{"tough"}, text: "wet it with a quarter less water",
		change: change.Change{Times: []change.Times{{Role: "water", By: by("0.75")}, {Role: "milk", By: by("0.75")}}},
		fits:   func(s *situation) bool { return s.mix[ratios.NamedWater] > 0 },
	},
	{
		against: []string{"tough"}, touches: "hand", step: "Handle it lightly.", text: "handle it as little as will hold it together",
		change: change.Change{Drop: []formula.Flag{"kneaded", "kneaded_hard", "overmixed", "rolled_too_often"}, Raise: []formula.Flag{"light_hand"}},
		fits: func(s *situation) bool {
			return s.method.Has("kneaded", "kneaded_hard", "overmixed", "rolled_too_often")
		},
	},
	{
		against: []string{"tough"}, touches: "fat", step: "Rub the fat into the flour.", text: "rub the fat in fine",
		change: change.Change{Drop: []formula.Flag{"cut_in", "chopped_in"}, Raise: []formula.Flag{"rubbed"}},
		fits: func(s *situation) bool {
			return s.method.Has("cut_in", "chopped_in") && !s.method.Has("laminated", "folded_turns")
		},
	},
	{
		against: []string{"tough"}, touches: "water", text: "wet it with no more water than will just hold it together",
		change: change.Change{Drop: []formula.Flag{"water_more", "water_too_much"}},
		fits:   func(s *situation) bool { return s.method.Has("water_more", "water_too_much") },
	},
	{
		against: []string{"crumbly"}, touches: "water", text: "wet it until it just holds together",
		change: change.Change{Drop: []formula.Flag{"water_too_little", "little_water", "water_not_all", "stiff_paste"}},
		fits: func(s *situation) bool {
			return s.method.Has("water_too_little", "little_water", "water_not_all", "stiff_paste")
		},
	},
	{
		against: []string{"crumbly"}, text: "wet it with a third more water",
		change: change.Change{Times: []change.Times{{Role: "water", By: by("1.3333")}, {Role: "milk", By: by("1.3333")}}},
		fits:   func(s *situation) bool { return s.mix[ratios.NamedWater] > 0 },
	},
	{
		against: []string{"crumbly"}, text: "bind it with a yolk",
		change: change.Change{Add: []change.Addition{{Ingredient: "egg_yolk", Grams: by("17")}}},
	},
	{
		against: []string{"greasy"}, text: "take a quarter less fat",
		change: change.Change{Times: []change.Times{{Role: "butter", By: by("0.75")}, {Role: "hard_fat", By: by("0.75")}, {Role: "oil", By: by("0.75")}}},
	},
}

// helps is how far a remedy must lower a share to be worth naming, and most
// how many are named.
const (
	helps       = .10
	mostOffered = 3
)

// situationOf looks at a part as a remedy does.
func situationOf(in bake.Input, k *bake.Kernel) *situation {
	return &situation{
		method: &in.Method, fire: bake.FireOf(&in.Method), mix: k.LikelyMix(), lined: Lined(in),
		silent: in.Silent || bake.Unsaid(in.Weighed.Parts[in.Part].Of, &in.Method),
	}
}

// Way is a thing done otherwise, without another amount of anything, that a
// cook might do against some textures.
type Way struct {
	Against []string // texture ids
	Touches string   // of the ways that touch one thing only one is done
	Text    string
	Step    string // as a step of the receipt, read as the change
	Change  change.Change
}

// Ways are the changes of method and oven that make sense for a part.
func Ways(in bake.Input, k *bake.Kernel) []Way {
	return waysFor(situationOf(in, k))
}

// AllWays are the changes of method and oven for any part.
func AllWays() []Way { return waysFor(nil) }

// waysFor are the ways that make sense in a situation, all when there is none.
func waysFor(s *situation) []Way {
	var out []Way
	for _, r := range remedies {
		if r.touches != "" && (s == nil || r.fits == nil || r.fits(s)) {
			out = append(out, Way{Against: r.against, Touches: r.touches, Text: r.text, Step: r.step, Change: r.change})
		}
	}
	return out
}

// Faulty tells which of a kernel's textures would be findings if their shares
// were large enough: the faults, less what the class is meant to be and what
// such a paste is meant to do.
func Faulty(in bake.Input, k *bake.Kernel, meant string) []bool {
	out := make([]bool, len(k.Textures))
	for i, id := range k.Textures {
		fault := slices.ContainsFunc(in.Tables.Textures, func(x reference.Texture) bool { return x.ID == id && x.Kind == string(k.Kind) && x.Fault })
		out[i] = fault && id != meant && (id != "crumbly" || !sandy(in, k))
	}
	return out
}

// Unshared are the codes of the findings of a part that are told by an index
// or a word alone, without a share.
func (j *Judge) Unshared(in bake.Input, k *bake.Kernel) []string {
	likely := readings.LikelyReading(k)
	r := &readings.Result{Measures: map[bake.Measure]readings.Span{}}
	p := &Part{Measures: map[string]readings.Span{}}
	for _, m := range k.Measures {
		at := readings.Span{Low: likely.Measures[m], Likely: likely.Measures[m], High: likely.Measures[m]}
		r.Measures[m], p.Measures[m.String()] = at, at
	}
	var out []string
	for _, f := range j.indexFindings(in, k, p, r) {
		if f.Grade == Watch {
			out = append(out, f.Code)
		}
	}
	return out
}

// Effects lists what a change does to a part: the texture named first, then
// any other whose share moves, then the set, the room before curdling, the
// fill and the sweetness, or what answers to them in a paste.
func Effects(k *bake.Kernel, texture string, before, after map[string]float64, was, is *bake.Outcome) []Effect {
	return effects(k, texture, before, after, was, *is)
}

// remedies tries every remedy that makes sense against a texture on the same
// draws, and gives those that help most.
func (j *Judge) remedies(in bake.Input, k *bake.Kernel, texture string, r *readings.Result, o readings.Options) []Remedy {
	s := situationOf(in, k)
	in.Silent = s.silent // what a remedy does not speak of stays in doubt
	before := Sum(k.Textures, r.Shares)
	likely := readings.LikelyReading(k)
	type tried struct {
		remedy Remedy
		gain   float64
	}
	var good []tried
	for _, rem := range remedies {
		if !slices.Contains(rem.against, texture) || rem.fits != nil && !rem.fits(s) {
			continue
		}
		changed, ok := rem.change.Apply(in)
		if !ok {
			continue
		}
		k2, err := bake.Compile(changed)
		if err != nil {
			continue
		}
		shares, _ := readings.Shares(k2, o)
		after := Sum(k2.Textures, shares)
		if gain := before[texture] - after[texture]; gain >= helps {
			good = append(good, tried{Remedy{Text: rem.text, Effect: effects(k, texture, before, after, &likely, readings.LikelyReading(k2))}, gain})
		}
	}
	slices.SortStableFunc(good, func(a, b tried) int { return cmp.Compare(b.gain, a.gain) })
	var out []Remedy
	for _, g := range good[:min(len(good), mostOffered)] {
		out = append(out, g.remedy)
	}
	return out
}

// sideMeasures are the figures whose change is always told beside a remedy.
var sideMeasures = map[formula.Kind][]bake.Measure{
	formula.Filling: {bake.SetIndex, bake.CurdleMargin, bake.Volume, bake.SugarShare},
	formula.Pastry:  {bake.Toughness, bake.NetWater, bake.Volume},
}

// moved is how far another texture's share must move to be told.
const moved = .05

// effects lists what a change does: the texture it is against first, then any
// other whose share moves, then the side measures.
func effects(k *bake.Kernel, texture string, before, after map[string]float64, was *bake.Outcome, is bake.Outcome) []Effect {
	out := []Effect{{What: texture, Kind: "share", Before: before[texture], After: after[texture]}}
	seen := map[string]bool{texture: true}
	for _, id := range k.Textures {
		id = shownAs(id)
		if d := after[id] - before[id]; !seen[id] && (d >= moved || d <= -moved) {
			out = append(out, Effect{What: id, Kind: "share", Before: before[id], After: after[id]})
		}
		seen[id] = true
	}
	for _, m := range sideMeasures[k.Kind] {
		out = append(out, Effect{What: m.String(), Kind: "measure", Before: was.Measures[m], After: is.Measures[m]})
	}
	return out
}
