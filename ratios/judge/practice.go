package judge

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/reference"
)

// practice are the steps a working cook would expect and does not find.
func practice(f *formula.Formula, inputs []bake.Input) []Finding {
	var out []Finding
	lined := slices.IndexFunc(f.Parts, func(p formula.Part) bool {
		return p.Kind == formula.Pastry && (p.Lay == "" || p.Lay == "lining" || p.Lay == "lining and lid" || p.Lay == "patty")
	})
	filling := slices.IndexFunc(f.Parts, func(p formula.Part) bool { return p.Kind == formula.Filling })
	if lined < 0 || filling < 0 {
		return nil
	}
	paste, wet := &inputs[lined].Method, &inputs[filling].Method
	if !bake.FireOf(wet).Baked {
		return nil
	}
	readied := []formula.Flag{"blind_baked", "part_baked", "baked_case", "egg_wash_inside"}
	if !paste.Has(readied...) && !wet.Has(readied...) && !paste.Has("raw_case", "warm_filling", "juicy_filling", "cool_oven") {
		out = append(out, Finding{
			Code: "soggy-base", Part: f.Parts[lined].Name, Grade: Watch,
			Says: "nothing is said of readying the case, and a wet filling on raw paste may leave the base soggy: part-bake it, or dry a wash of egg inside it before it is filled",
			Because: []Evidence{{
				What: "part-baking the case", Value: "not in the receipt", Layer: LayerPractice, Confidence: "medium",
				Limit: "common practice; the earliest we have found in print is 1832",
			}},
		})
	}
	return out
}

// mentions are things named in the steps and not listed, or the reverse, and
// lines that do not belong in their part.
func mentions(f *formula.Formula, t *reference.Tables) []Finding {
	var out []Finding
	for _, m := range file.NotListed(f, t) {
		says := fmt.Sprintf("%s is listed and never named in the steps", m.Name)
		if m.InSteps {
			says = fmt.Sprintf("%s is named in the steps and not listed, so it is not weighed", m.Name)
		}
		out = append(out, Finding{
			Code: "not-listed", Part: f.Parts[m.Part].Name, Grade: Watch, Says: says,
			Because: []Evidence{{What: m.Name, Value: m.Words, Layer: LayerPractice, Confidence: "medium"}},
		})
	}
	return out
}

// cautions are raised by what is in the pot, what is done to it and what it is
// kept in. They are never graded and never clear anything as safe.
func cautions(w *weigh.Weighed, inputs []bake.Input, t *reference.Tables) []Finding {
	text := pageWords(w.Formula)
	var out []Finding
	for i := range t.Cautions {
		c := &t.Cautions[i]
		part, raised := raises(c, w, inputs, text)
		if !raised {
			continue
		}
		e := Evidence{What: c.Name, Limit: c.Authority, Layer: LayerPractice, Source: sourceOf(t, c.Source), Locator: c.Locator}
		if !c.Limit.IsZero() {
			e.Value = c.Limit.Likely.String() + " " + c.Unit
		}
		out = append(out, Finding{Code: c.Code, Part: part, Says: c.Says + "; " + c.Instead, Because: []Evidence{e}})
	}
	return out
}

// raises reports whether a caution applies, and to which part when it is one
// part's ingredient that raises it.
func raises(c *reference.Caution, w *weigh.Weighed, inputs []bake.Input, text string) (part string, yes bool) {
	if hasAny(text, c.Unless) || len(c.With) > 0 && !hasAny(text, c.With) {
		return "", false
	}
	for i := range w.Parts {
		p := &w.Parts[i]
		if c.Uncooked && cooked(w.Formula, &inputs[i]) {
			continue
		}
		for _, it := range p.Items {
			if slices.Contains(c.Ingredients, it.Ingredient.ID) ||
				slices.ContainsFunc(it.Ingredient.Roles, func(r string) bool { return slices.Contains(c.Roles, r) }) {
				if len(c.Words) > 0 && (len(c.Ingredients) > 0 || len(c.Roles) > 0) && needsWords(c) && !hasAny(text, c.Words) {
					continue
				}
				return p.Of.Name, true
			}
		}
	}
	if len(c.Roles) == 0 && !c.Uncooked && hasAny(text, c.Words) {
		return "", true
	}
	return "", false
}

// needsWords reports whether a caution's roles are too common to raise it
// alone: eggs are in everything, so keeping them in jars must be said.
func needsWords(c *reference.Caution) bool { return len(c.Roles) > 0 }

// cooked reports that something heats the part: its own fire, or the oven the
// dish goes into.
func cooked(f *formula.Formula, in *bake.Input) bool {
	if in.Method.Has("not_baked") || in.Method.Has("uncooked") {
		return false
	}
	fire := bake.FireOf(&in.Method)
	return fire.Baked || fire.OnHeat || f.Bake != "" || f.Oven != ""
}

// pageWords is every word of the page a caution may look at, with single
// spaces and a space at each end.
func pageWords(f *formula.Formula) string {
	var b strings.Builder
	add := func(s string) { b.WriteString(" " + reference.Key(s) + " .") }
	add(f.Title)
	add(f.Dish)
	add(f.Oven)
	add(f.Bake)
	for _, p := range f.Parts {
		for _, l := range p.Lines {
			add(l.Text)
		}
		for _, s := range p.Steps {
			add(s)
		}
	}
	return b.String() + " "
}

func hasAny(text string, words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return strings.Contains(text, " "+reference.Key(w)+" ")
	})
}
