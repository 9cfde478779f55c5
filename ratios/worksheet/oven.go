package worksheet

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/ratios/practice"
	"assize/reference"
)

// Oven is what is known of the baking of a dish.
type Oven struct {
	Baked bool
	Pot   bool        // boiled or steamed in cloth, basin or mould
	Words string      // of the oven, as written beside the steps
	Time  string      // of the time, as written beside the steps
	Heats []oven.Heat // what the receipt's words come to
	// Minutes in the oven; Said when the receipt gives them. Else they are
	// reckoned for the dish, or the usual ones of how such a thing is done, and
	// nothing when none are known.
	Minutes  reference.Span
	Said     bool
	Reckoned bool
	Usual    *reference.Doneness // where the minutes come from when neither said nor reckoned
	// Class is what the part is, given or the nearest, for the heat it wants
	// today; nil when nothing is like it.
	Class *reference.Class
	Given bool
	Done  oven.Doneness
	Bath  bool
}

// sketch is the report of a dish without its readings.
func (a *Assembler) sketch(w *weigh.Weighed, d *practice.Dish) *judge.Report {
	inputs := make([]bake.Input, len(w.Parts))
	for i := range inputs {
		inputs[i] = bake.Input{Weighed: w, Part: i, Tables: a.tables, Rules: bake.Standard, Method: d.Methods[i]}
	}
	return a.judge.Sketch(w, inputs, d)
}

// oven gathers what is known of the baking.
func (a *Assembler) oven(r *judge.Report, d *practice.Dish) Oven {
	f := d.Formula
	at := mainPart(d)
	kind := f.Parts[at].Kind
	p, m := &r.Parts[at], &d.Methods[at]
	o := Oven{Baked: d.Holds(at, "baked") || kind == formula.Pastry && (f.Bake != "" || f.Oven != ""), Done: p.Done, Heats: r.Said}
	if kind != formula.Pastry {
		id, given := p.Near()
		if c, ok := a.tables.Class(id); ok {
			o.Class, o.Given = c, given
		}
		o.Done = a.done(p, d, at)
	}
	o.Pot = d.Holds(at, "pot")
	if !o.Baked {
		o.Heats = nil
	}
	if !o.Baked && !o.Pot {
		return o
	}
	o.Words, o.Time, o.Bath = f.Oven, f.Bake, m.Has("bath")
	switch {
	case m.Bake.Minutes > 0:
		o.Said = true
		low, high := 0.0, 0.0
		for _, s := range m.Bake.Stages {
			low, high = low+s.LowMinutes, high+s.HighMinutes
		}
		o.Minutes = reference.Span{Low: whole(low), Likely: whole(m.Bake.Minutes), High: whole(high)}
	case p.Baking != nil && p.Baking.Time.Likely > 0 && !p.Baking.Time.Never && !p.Baking.Time.MayNever:
		t := p.Baking.Time
		o.Minutes, o.Reckoned = reference.Span{Low: whole(t.Low), Likely: whole(t.Likely), High: whole(t.High)}, true
	case o.Baked && o.Done.Set != nil && o.Done.Set.Minutes.High.IsPositive():
		o.Minutes, o.Usual = o.Done.Set.Minutes, o.Done.Set
	}
	return o
}

// done is how part i is known to be done. A filling set on the fire goes by the
// signs of one, whatever its name is the name of elsewhere.
func (a *Assembler) done(p *judge.Part, d *practice.Dish, i int) oven.Doneness {
	of := &d.Formula.Parts[i]
	roles := a.roles(of)
	switch {
	case d.Holds(i, "stove"):
		name := "" // what starch sets is boiled, and that is told
		if d.Holds(i, "eggs") && !d.Methods[i].Has("starch_boiled") {
			name = "stirred custard"
		}
		return oven.Done(a.tables, of.Kind, roles, name)
	case p.Class != nil && p.Class.Given && p.Done.Set != nil:
		return p.Done
	}
	// The name a receipt goes by tells more of how it is cooked than the class
	// its proportions come near.
	if own := oven.Done(a.tables, of.Kind, roles, d.Formula.Title, of.Name); own.Set != nil {
		return own
	}
	switch {
	case p.Done.Set != nil:
		return p.Done
	case d.Holds(i, "egg-set", "bottom-crust"):
		return oven.Done(a.tables, of.Kind, roles, "custard tart")
	case d.Holds(i, "custard"):
		return oven.Done(a.tables, of.Kind, roles, "baked custard")
	}
	return p.Done
}

func (a *Assembler) roles(p *formula.Part) []string {
	var out []string
	for _, l := range p.Lines {
		for _, it := range l.Items {
			if ing, ok := a.tables.Ingredient(it.Ingredient); ok {
				out = append(out, ing.Roles...)
			}
		}
	}
	return out
}

// beside is what stands beside the steps of oven and time and is not in them.
func (o *Oven) beside(steps []Step, d *practice.Dish) string {
	words, time := o.Words, o.Time
	for _, s := range steps {
		if s.Stage != "oven" {
			continue
		}
		_, flags := d.Reader().Said(s.Text, d.Formula.Parts[s.Part].Kind)
		if flags["slow"] || flags["moderate"] || flags["hot"] || flags["very_hot"] {
			words = ""
		}
		if slices.ContainsFunc(reference.Words(s.Text), func(w string) bool { return slices.Contains(lengths, w) }) {
			time = ""
		}
	}
	switch {
	case o.Pot:
		return strings.Trim(words+", "+time, ", ")
	case words != "" && !strings.Contains(words, "oven"):
		words = "bake in a " + words + " oven"
	case words != "":
		words = "bake in " + words
	case time != "":
		return "bake " + time
	}
	if time != "" {
		words += ", " + time
	}
	return words
}

// lengths are words of a length of time.
var lengths = []string{"minute", "minutes", "min", "mins", "hour", "hours", "hr", "hrs", "quarter", "half", "till", "until"}

func whole(minutes float64) decimal.Decimal { return decimal.NewFromFloat(minutes).Round(0) }
