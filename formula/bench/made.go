package bench

import (
	"maps"
	"slices"

	"assize/formula"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/reference"
	"assize/reference/fault"
)

// Made is a bake as it was really made: the formula on the scales with what
// was weighed, and the method of each part with what was done.
type Made struct {
	Weighed *weigh.Weighed
	Methods []formula.Method
	// Written are the methods as the receipt has them.
	Written []formula.Method
	// Outside names the lines of which something was used that no way of
	// taking the receipt allows.
	Outside []string
}

// Made weighs the record: eggs that were weighed are so everywhere, lines that
// were weighed are in doubt no longer, the rest is as the receipt leaves it.
func (r *Record) Made(t *reference.Tables, methods *receipt.MethodReader) (*Made, fault.List) {
	f := r.formula()
	w, faults := weigh.Weigh(f, t)
	if len(faults) > 0 {
		return nil, faults
	}
	asWritten := w
	w = w.Clone()
	m := &Made{Weighed: w}
	for i := range r.Parts {
		for _, u := range r.Parts[i].Used {
			w.Pin(i, u.Line, u.Ingredient, u.Grams)
			// What the receipt can mean is asked of the receipt alone, whatever
			// else was weighed.
			if asWritten.Clone().Pin(i, u.Line, u.Ingredient, u.Grams).Outside {
				m.Outside = append(m.Outside, f.Parts[i].Lines[u.Line].Text)
			}
		}
		written := methods.Read(f, &f.Parts[i])
		m.Written = append(m.Written, written)
		m.Methods = append(m.Methods, r.method(methods, i, written))
	}
	return m, nil
}

// formula is the receipt with what was added and the eggs and dish as they
// were.
func (r *Record) formula() *formula.Formula {
	f := *r.Formula
	f.File = r.File
	f.Parts = slices.Clone(f.Parts)
	for i := range r.Parts {
		f.Parts[i].Lines = slices.Concat(f.Parts[i].Lines, r.Parts[i].Added)
	}
	if r.Eggs.Number > 0 {
		f.Kitchen.Given = true
		f.Kitchen.EggSize, f.Kitchen.EggGrams = "", r.Eggs.Each().Round(2)
	}
	if r.Dish != "" {
		f.Dish = r.Dish
	}
	return &f
}

// choices are flags that answer one question; what was done answers it in
// place of what is written.
var choices = [][]formula.Flag{
	{"whites_folded", "whites_maybe_folded", "whites_beaten", "eggs_very_light", "eggs_beaten", "eggs_slightly", "mixed"},
	{"creamed", "melted_fat", "all_in_one"},
	{"baked", "not_baked"},
	{"bath", "no_bath"},
	heats,
	{"careful", "careless"},
	{"rubbed", "cut_in", "chopped_in", "processor", "pressed"},
	{"laminated", "folded_turns", "flakes"},
	{"kneaded_lightly", "kneaded", "kneaded_hard", "light_hand", "overmixed", "rolled_too_often"},
	{"raw_case", "baked_case", "part_baked", "blind_baked", "egg_wash_inside"},
	wets,
	{"warm_filling", "cooled"},
}

var (
	heats = []formula.Flag{"slow", "moderate", "hot", "very_hot", "then_moderate", "cool_oven"}
	wets  = []formula.Flag{"water_too_little", "water_too_much", "water_more", "water_not_all", "little_water", "stiff_paste", "soft_paste"}
)

// method is the method of a part as written, with what was done in its place.
func (r *Record) method(methods *receipt.MethodReader, part int, written formula.Method) formula.Method {
	out := written
	out.Flags = maps.Clone(written.Flags)
	out.LineFlags = slices.Clone(written.LineFlags)
	for i := range out.LineFlags {
		out.LineFlags[i] = maps.Clone(written.LineFlags[i])
	}
	out.Tokens = slices.Clone(written.Tokens)
	drop := func(flags []formula.Flag) {
		for _, f := range flags {
			delete(out.Flags, f)
			for i := range out.LineFlags {
				delete(out.LineFlags[i], f)
			}
		}
	}
	if done := r.Parts[part].Done; len(done) > 0 {
		d := doneMethod(methods, r.Formula, part, done)
		for _, c := range choices {
			if d.Has(c...) {
				drop(c)
			}
		}
		maps.Copy(out.Flags, d.Flags)
		out.Tokens = append(out.Tokens, d.Tokens...)
		if d.Bake.Said() {
			out.Bake = d.Bake
		}
	}
	if r.weighedWet(part) {
		drop(wets) // the water was weighed, whatever the words make of it
	}
	if len(r.Oven) > 0 {
		drop(heats)
		out.Bake = formula.Bake{Minutes: out.Bake.Minutes, Stages: r.stages(out.Bake.Minutes)}
	}
	if r.Minutes.IsPositive() {
		out.Bake = withMinutes(out.Bake, r.Minutes.InexactFloat64())
	}
	return out
}

// doneMethod reads what was done as the steps of the part.
func doneMethod(methods *receipt.MethodReader, f *formula.Formula, part int, done []string) formula.Method {
	alone := formula.Part{Kind: f.Parts[part].Kind, Steps: done}
	return methods.Read(&formula.Formula{}, &alone)
}

// weighedWet reports that liquid a paste is wetted with was weighed.
func (r *Record) weighedWet(part int) bool {
	if r.Formula.Parts[part].Kind != formula.Pastry {
		return false
	}
	return slices.ContainsFunc(r.Parts[part].Used, func(u Used) bool {
		return slices.Contains([]string{"water", "milk_whole", "milk_skim", "buttermilk"}, u.Ingredient)
	})
}

// stages are the readings of the oven as stages of the bake. The minutes are
// those between readings; the last runs to the end of the bake.
func (r *Record) stages(minutes float64) []formula.Stage {
	if r.Minutes.IsPositive() {
		minutes = r.Minutes.InexactFloat64()
	}
	var out []formula.Stage
	for i, h := range r.Oven {
		from, to := h.Minute.InexactFloat64(), minutes
		if i+1 < len(r.Oven) {
			to = r.Oven[i+1].Minute.InexactFloat64()
		}
		s := formula.Stage{LowC: h.C.InexactFloat64(), HighC: h.C.InexactFloat64()}
		s.LowMinutes = max(0, to-from)
		s.HighMinutes = s.LowMinutes
		out = append(out, s)
	}
	return out
}

// withMinutes is the bake over another length of time.
func withMinutes(b formula.Bake, minutes float64) formula.Bake {
	out := formula.Bake{Minutes: minutes, Stages: slices.Clone(b.Stages)}
	if len(out.Stages) == 0 {
		out.Stages = []formula.Stage{{LowMinutes: minutes, HighMinutes: minutes}}
	}
	return out
}
