package explain

import (
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/reference"
)

// Kind tells what a cause lies in.
type Kind string

// The kinds of cause: in the proportions, in what was done and how it was
// baked, or in how the book's measures were taken.
const (
	InFormula Kind = "formula"
	InProcess Kind = "process"
	InReading Kind = "misreading"
)

// variation is one thing done otherwise, everything else as it was.
type variation struct {
	id      string // of the change, as the causes table names it
	kind    Kind
	done    string // what was done: "creaming the butter"
	instead string // what is done otherwise: "melting it"
	apply   func(bake.Input, *bake.Kernel) (bake.Input, *bake.Kernel, bool)
	// amount is 1 for as much of a thing as this, -1 for as little.
	amount int
	// undo is the change when it only leaves something out that was done.
	undo *change.Change
	// open marks a doubt taken one way: nobody has told what was done.
	open bool
}

// by applies a change of method or amounts.
func by(c change.Change) func(bake.Input, *bake.Kernel) (bake.Input, *bake.Kernel, bool) {
	return func(in bake.Input, _ *bake.Kernel) (bake.Input, *bake.Kernel, bool) {
		changed, ok := c.Apply(in)
		if !ok {
			return in, nil, false
		}
		return compiled(changed)
	}
}

func compiled(in bake.Input) (bake.Input, *bake.Kernel, bool) {
	k, err := bake.Compile(in)
	return in, k, err == nil
}

// settled takes a doubt one way.
func settled(s change.Settle) func(bake.Input, *bake.Kernel) (bake.Input, *bake.Kernel, bool) {
	return func(in bake.Input, k *bake.Kernel) (bake.Input, *bake.Kernel, bool) {
		out, ok := s.Apply(k)
		return in, out, ok
	}
}

// flags are flags of method, for a change.
func flags(f ...formula.Flag) []formula.Flag { return f }

// state is one answer to a question of method, with the flags that give it.
type state struct {
	done, instead string
	raise         []formula.Flag
	has           func(*formula.Method) bool
	heatC         float64
}

// answers varies a question of method: from the state that holds to each other.
func answers(id string, m *formula.Method, drop []formula.Flag, states []state) []variation {
	now := slices.IndexFunc(states, func(s state) bool { return s.has(m) })
	if now < 0 {
		return nil
	}
	var out []variation
	for i, s := range states {
		if i == now || s.instead == "" {
			continue
		}
		out = append(out, variation{
			id: id, kind: InProcess, done: states[now].done, instead: s.instead,
			apply: by(change.Change{Drop: drop, Raise: s.raise, HeatC: s.heatC}),
		})
	}
	return out
}

// has is a state that holds when any of the flags is raised; otherwise holds
// when nothing before it does.
func has(f ...formula.Flag) func(*formula.Method) bool {
	return func(m *formula.Method) bool { return m.Has(f...) }
}

func otherwise(*formula.Method) bool { return true }

// variations are all that is tried of a part: choices of method, choices of the
// oven, amounts, and doubts taken one way.
func variations(in bake.Input, k *bake.Kernel) []variation {
	mix := k.LikelyMix()
	var out []variation
	if k.Kind == formula.Pastry {
		out = append(pasteMethod(in), pasteAmounts(in, &mix)...)
	} else {
		out = append(fillingMethod(in, &mix), fillingAmounts(in, &mix)...)
	}
	return append(out, doubts(in, k)...)
}

// ovens are the heats tried, C: gentle, moderate and hot, as the ovens table
// has their middles.
const gentleC, moderateC, hotC = 150, 175, 220

var ovenFlags = flags("slow", "moderate", "hot", "very_hot", "then_moderate", "cool_oven")

func ovens(in bake.Input) []variation {
	fire := bake.FireOf(&in.Method)
	if !fire.Baked || fire.Bath {
		return nil
	}
	return answers("oven-heat", &in.Method, ovenFlags, []state{
		{"a gentle oven", "a gentle oven, 150 C", flags("slow"), func(*formula.Method) bool { return fire.Slow }, gentleC},
		{"a hot oven", "a hot oven, 220 C", flags("hot"), func(*formula.Method) bool { return fire.Hot }, hotC},
		{"a moderate oven", "a moderate oven, 175 C", flags("moderate"), otherwise, moderateC},
	})
}

// foldingWhites is the one step that makes another dish of a mix without it.
const foldingWhites = "folding in whisked whites"

func fillingMethod(in bake.Input, mix *ratios.Mix) []variation {
	m := &in.Method
	fire := bake.FireOf(m)
	var out []variation
	eggFlags := flags("eggs_very_light", "eggs_beaten", "eggs_slightly", "whites_folded", "whites_maybe_folded", "whites_beaten", "mixed")
	untold := in.Silent || bake.Unsaid(in.Weighed.Parts[in.Part].Of, m)
	if mix.EggMass() > 0 && !(untold && !m.Has(eggFlags...)) {
		whites := state{foldingWhites, "folding in the whites, whisked stiff", flags("whites_folded", "eggs_beaten"), has("whites_folded", "whites_maybe_folded"), 0}
		if mix[ratios.EggWhite] <= 0 || fire.OnHeat && !fire.Baked {
			whites.instead = ""
		}
		list := answers("eggs-air", m, eggFlags, []state{
			whites,
			{"beating the eggs very light", "beating the eggs very light", flags("eggs_very_light"), has("eggs_very_light"), 0},
			{"stirring the eggs without froth", "stirring the eggs only till they run together", flags("eggs_slightly"), has("eggs_slightly", "milk_on_egg"), 0},
			{"beating the eggs", "beating the eggs well", flags("eggs_beaten"), has("eggs_beaten"), 0},
			{"mixing the eggs in", "", nil, otherwise, 0},
		})
		for i := range list {
			if list[i].done == whites.done || list[i].instead == whites.instead {
				list[i].id = "whites"
			}
		}
		out = append(out, list...)
	}
	if holds(mix, ratios.Butter) > .01 && !fire.OnHeat && !(untold && !m.Has("creamed", "melted_fat", "all_in_one")) {
		out = append(out, answers("creaming", m, flags("creamed", "melted_fat", "all_in_one"), []state{
			{"creaming the butter", "creaming the butter with the sugar", flags("creamed"), has("creamed"), 0},
			{"melting the butter", "melting the butter", flags("melted_fat"), otherwise, 0},
		})...)
	}
	out = append(out, ovens(in)...)
	if fire.Baked && !judge.Lined(in) {
		out = append(out, answers("bath", m, flags("bath", "no_bath"), []state{
			{"a bath of water in the oven", "a bath of hot water round the dish", flags("bath"), has("bath"), 0},
			{"the dish bare in the oven", "baking without a bath of water", flags("no_bath"), otherwise, 0},
		})...)
	}
	if fire.Baked && !m.Has("steamed", "boiled_pudding") {
		out = append(out, answers("heat-first", m, flags("on_heat", "warmed_only"), []state{
			{"thickening it over heat first", "thickening it over heat first", flags("on_heat"), func(*formula.Method) bool { return fire.OnHeat }, 0},
			{"baking it from cold", "baking it from cold", nil, otherwise, 0},
		})...)
	}
	if fire.Stove {
		v := variation{id: "heat-first", kind: InProcess, done: "stirring it over the fire", instead: "baking it still in a gentle oven"}
		v.apply = by(change.Change{Drop: flags("on_heat", "not_baked", "microwave"), Raise: flags("baked", "slow"), HeatC: gentleC})
		out = append(out, v)
	}
	if holds(mix, ratios.Starch) > .005 {
		out = append(out, answers("starch-boiled", m, flags("starch_boiled"), []state{
			{"boiling the starch first", "boiling the starch in the liquid first", flags("starch_boiled"), has("starch_boiled"), 0},
			{"putting the starch in unboiled", "putting the starch in unboiled", nil, otherwise, 0},
		})...)
	}
	if fire.Baked && m.Bake.Minutes > 0 {
		for _, t := range []struct {
			times   float64
			instead string
		}{{2.0 / 3, "a third less time"}, {4.0 / 3, "a third more time"}} {
			out = append(out, variation{
				id: "minutes", kind: InProcess, done: fmt.Sprintf("%.0f minutes of it", m.Bake.Minutes), instead: t.instead,
				apply: func(in bake.Input, _ *bake.Kernel) (bake.Input, *bake.Kernel, bool) {
					return compiled(change.Longer(in, t.times))
				},
			})
		}
	}
	return out
}

// amount is a thing whose amount is varied.
type amount struct {
	id    string
	name  string
	roles []string
	share float64 // of the part
}

// leastVaried is the share of a part under which an amount is not varied: a
// pinch more or less of it is no choice.
const leastVaried = .01

var (
	quarterLess = decimal.RequireFromString("0.75")
	quarterMore = decimal.RequireFromString("1.25")
)

// amounts varies each thing by a quarter, the step a cook would take.
func amounts(list []amount) []variation {
	var out []variation
	for _, a := range list {
		if a.share < leastVaried {
			continue
		}
		for _, s := range []struct {
			by            decimal.Decimal
			amount        int
			done, instead string
		}{
			{quarterLess, 1, "as much " + a.name + " as this", "a quarter less " + a.name},
			{quarterMore, -1, "as little " + a.name + " as this", "a quarter more " + a.name},
		} {
			c := change.Change{}
			for _, r := range a.roles {
				c.Times = append(c.Times, change.Times{Role: r, By: s.by})
			}
			out = append(out, variation{id: a.id, kind: InFormula, done: s.done, instead: s.instead, apply: by(c), amount: s.amount})
		}
	}
	return out
}

func fillingAmounts(in bake.Input, mix *ratios.Mix) []variation {
	out := amounts([]amount{
		{"egg", "egg", []string{"egg", "white", "yolk"}, holds(mix, ratios.EggWhite, ratios.EggYolk)},
		{"butter", "butter", []string{"butter", "hard_fat", "oil"}, holds(mix, ratios.Butter, ratios.HardFat, ratios.Oil)},
		{"sugar", "sugar", []string{"sugar", "syrup"}, holds(mix, ratios.Sugar, ratios.Syrup)},
		{"liquid", "liquid", []string{"milk", "cream", "liquid", "water"}, holds(mix, ratios.Milk, ratios.Cream, ratios.Liquid, ratios.WaterAdded)},
		{"flour", "flour or starch", []string{"flour", "meal", "crumb"}, holds(mix, ratios.Flour, ratios.Meal, ratios.Crumb)},
		{"juice", "juice", []string{"juice"}, holds(mix, ratios.Juice)},
	})
	if whole := mix[ratios.Egg]; holds(mix, ratios.Egg) > leastVaried {
		// The yolks of the same eggs, a third of their weight, and no whites.
		yolks := decimal.NewFromInt(int64(math.Round(whole / 3)))
		out = append(out, variation{
			id: "white", kind: InFormula, done: "the whites of the eggs", instead: "their yolks alone",
			apply: by(change.Change{
				Times: []change.Times{{Role: "egg", By: decimal.Zero}},
				Add:   []change.Addition{{Ingredient: "egg_yolk", Grams: yolks}},
			}),
		})
	}
	return out
}

var workFlags = flags("kneaded_lightly", "kneaded", "kneaded_hard", "light_hand", "overmixed", "rolled_too_often")

func pasteMethod(in bake.Input) []variation {
	m := &in.Method
	out := answers("work", m, workFlags, []state{
		{"rolling it too often", "", nil, has("rolled_too_often"), 0},
		{"working it too much", "", nil, has("overmixed"), 0},
		{"kneading it", "kneading it", flags("kneaded"), has("kneaded", "kneaded_hard"), 0},
		{"kneading it lightly", "", nil, has("kneaded_lightly"), 0},
		{"handling it little", "handling it as little as will hold it together", flags("light_hand"), has("light_hand"), 0},
		{"the usual handling", "", nil, otherwise, 0},
	})
	layers := m.Has("laminated", "folded_turns", "flakes")
	if !layers && !m.Has("hot_water") {
		out = append(out, answers("fat-in", m, flags("rubbed", "cut_in", "chopped_in", "processor", "melted_fat", "creamed"), []state{
			{"melting the fat", "", nil, has("melted_fat"), 0},
			{"leaving the fat in pieces", "leaving the fat in pieces", flags("cut_in"), has("cut_in", "chopped_in"), 0},
			{"the fat worked in by machine", "", nil, has("processor"), 0},
			{"rubbing the fat in fine", "rubbing the fat in fine", flags("rubbed"), otherwise, 0},
		})...)
		for i := range out {
			if out[i].done == "melting the fat" {
				out[i].id = "melted"
			}
		}
	}
	single := func(id, done, instead string, f ...formula.Flag) {
		if m.Has(f...) {
			c := change.Change{Drop: f}
			out = append(out, variation{id: id, kind: InProcess, done: done, instead: instead, apply: by(c), undo: &c})
		}
	}
	single("fat-in", "butter too hard to mix in", "butter soft enough to coat the flour", "hard_fat_too_hard")
	single("melted", "butter that had oiled", "butter kept cold and firm", "melted_fat")
	single("work", "beating it with the rolling-pin", "rolling it lightly", "beaten_with_roller")
	single("water", "too little water", "the usual water", "water_too_little", "little_water")
	single("water", "more water than it needed", "the usual water", "water_more", "water_too_much")
	out = append(out, ovens(in)...)
	if fire := bake.FireOf(m); !fire.Baked || m.Has("cool_oven") {
		single("oven-heat", "too cool an oven", "an oven hot from the start", "cool_oven")
	}
	readied := flags("blind_baked", "part_baked", "baked_case", "egg_wash_inside")
	if !m.Has(readied...) {
		out = append(out, variation{
			id: "case", kind: InProcess, done: "filling the case raw", instead: "part-baking the case, or a wash of egg dried inside it",
			apply: by(change.Change{Drop: flags("raw_case"), Raise: flags("part_baked")}),
		})
	}
	single("case", "a warm or juicy filling put in", "letting the filling cool and thicken", "warm_filling", "juicy_filling")
	single("weights", "baking it empty without weights", "paper and dried beans in it", "blind_no_weights")
	if !m.Has("rested", "chilled") {
		out = append(out, variation{
			id: "rest", kind: InProcess, done: "no rest that is told of", instead: "an hour's rest in the cold",
			apply: by(change.Change{Raise: flags("rested")}),
		})
	}
	return out
}

func pasteAmounts(in bake.Input, mix *ratios.Mix) []variation {
	list := []amount{
		{"water", "water", []string{"water", "milk", "liquid"}, holds(mix, ratios.WaterAdded, ratios.Milk, ratios.Liquid)},
		{"fat", "fat", []string{"butter", "hard_fat", "oil"}, holds(mix, ratios.Butter, ratios.HardFat, ratios.Oil)},
		{"sugar", "sugar", []string{"sugar", "syrup"}, holds(mix, ratios.Sugar, ratios.Syrup)},
		{"egg", "egg", []string{"egg", "white", "yolk"}, holds(mix, ratios.EggWhite, ratios.EggYolk)},
	}
	return amounts(list)
}

// edge is how far into a range its ends are tried: the last twentieth is left.
const edge = .05

// doubts are the unknowns of the kernel, each way of them and both ends of each
// range: those of the scales are readings of the book, the others are of the
// work nobody has told of.
func doubts(in bake.Input, k *bake.Kernel) []variation {
	var out []variation
	for i := range k.Slots {
		s := &k.Slots[i]
		id, kind := doubtOf(in, i, s.ID)
		if id == "" {
			continue
		}
		add := func(instead string, settle change.Settle) {
			out = append(out, variation{id: id, kind: kind, done: s.Words, instead: instead, open: true, apply: settled(settle)})
		}
		ways := 0
		for _, w := range s.Ways {
			if w.Odds > 0 {
				ways++
			}
		}
		for w := range s.Ways {
			way := &s.Ways[w]
			if way.Odds <= 0 {
				continue
			}
			if ways > 1 {
				add(wayName(in.Tables, way), change.To(s.ID, w))
				continue
			}
			if way.High > way.Low {
				low, high := s.At(edge), s.At(1-edge)
				add("less", change.Settle{Slot: s.ID, Way: w, At: low.At})
				add("more", change.Settle{Slot: s.ID, Way: w, At: high.At})
			}
		}
	}
	return out
}

// wayName is a way of taking a doubt as it is told: of measures, which row calls
// by an id of its own, what it holds.
func wayName(t *reference.Tables, way *bake.Way) string {
	for i := range t.Measures {
		if m := &t.Measures[i]; m.ID == way.Words {
			return fmt.Sprintf("the %s of %s %s", m.Names[0], m.Likely.Round(0), m.Unit)
		}
	}
	return way.Words
}

// ofWork are the doubts about the work, by the ID their slots begin with, and
// the change each belongs to.
var ofWork = []struct{ begins, change string }{
	{"spread", "heat-spread"}, {"creaming", "creaming"}, {"egg beating", "eggs-air"}, {"eggs unsaid", "eggs-air"},
	{"butter unsaid", "creaming"}, {"whites", "whites"}, {"cheese beating", "eggs-air"}, {"sugar unsaid", "sugar"},
	{"coverage", "fat-in"}, {"water", "water"}, {"flour strength", "strength"}, {"working", "work"}, {"overworking", "work"},
}

// doubtOf tells what a slot's doubt is of: the change it belongs to and its
// kind; empty for a slot that nothing of the part hangs on.
func doubtOf(in bake.Input, slot int, id string) (string, Kind) {
	if slot < len(in.Weighed.Unknowns) {
		p := &in.Weighed.Parts[in.Part]
		for i := range p.Items {
			it := &p.Items[i]
			if it.Hangs(slot) && in.Weighed.Unknowns[slot].Open() {
				return changeOf(it.Ingredient.Roles, p.Of.Kind), InReading
			}
		}
		return "", ""
	}
	for _, w := range ofWork {
		if len(id) >= len(w.begins) && id[:len(w.begins)] == w.begins {
			if w.change == "sugar" {
				return w.change, InReading
			}
			return w.change, InProcess
		}
	}
	if id == "size yolk-share egg_yolk" {
		return "yolk", InReading
	}
	return "", ""
}

// changeOf is the change that varies things of the roles in a part of the kind.
func changeOf(roles []string, kind formula.Kind) string {
	for _, x := range []struct {
		change string
		roles  []string
	}{
		{"egg", []string{"egg", "white", "yolk"}}, {"butter", []string{"butter"}}, {"fat", []string{"hard_fat", "oil"}},
		{"sugar", []string{"sugar", "syrup"}}, {"juice", []string{"juice"}}, {"flour", []string{"flour", "meal", "crumb"}},
		{"liquid", []string{"milk", "cream", "liquid", "water"}},
	} {
		if !slices.ContainsFunc(roles, func(r string) bool { return slices.Contains(x.roles, r) }) {
			continue
		}
		if kind == formula.Pastry {
			switch x.change {
			case "butter":
				return "fat"
			case "liquid":
				return "water"
			}
		}
		return x.change
	}
	return "other"
}
