package judge

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/bake"
	"assize/reference"
)

// cautions are raised by what is in the pot, what is done to it, what it is
// kept in and how it is set. They are never graded, nothing switches them off,
// and they never clear anything.
func cautions(r *Report, inputs []bake.Input, t *reference.Tables) []Finding {
	page := &cautionPage{Report: r, inputs: inputs, tables: t, text: pageWords(r.Formula)}
	var out []Finding
	for i := range t.Cautions {
		c := &t.Cautions[i]
		part, raised := page.raises(c)
		if !raised {
			continue
		}
		e := Evidence{What: c.Name, Limit: c.Authority, Layer: LayerPractice, Source: sourceOf(t, c.Source), Locator: c.Locator}
		if !c.Limit.IsZero() {
			e.Value = c.Limit.Likely.String() + " " + c.Unit
		}
		says := c.Says + "; " + c.Instead
		if c.Allergens {
			says = page.allergens() + "; " + c.Instead
		}
		out = append(out, Finding{Code: c.Code, Part: part, Says: says, Because: []Evidence{e}, Caution: c.ID})
	}
	return out
}

// cautionPage is what a caution may look at of one receipt.
type cautionPage struct {
	*Report
	inputs []bake.Input
	tables *reference.Tables
	text   string
}

// raises reports whether a caution applies, and to which part when it is one
// part that raises it.
func (p *cautionPage) raises(c *reference.Caution) (part string, yes bool) {
	switch {
	case hasAny(p.text, c.Unless), len(c.With) > 0 && !hasAny(p.text, c.With) && !(c.Sour && p.sour()):
		return "", false
	case c.Allergens:
		return "", len(p.Allergens) > 0
	case len(c.Walls) > 0 && p.bakedIn(c.Walls):
		return "", true
	}
	for i := range p.Weighed.Parts {
		if of := p.Weighed.Parts[i].Of; p.fits(c, i) && p.inPart(c, i) {
			return of.Name, true
		}
	}
	// Words alone raise it, unless they only help a role, or it hangs on a part.
	onPart := len(c.Roles) > 0 || c.Uncooked || c.Egg || c.Under || len(c.Kinds) > 0
	return "", !onPart && hasAny(p.text, c.Words)
}

// fits reports whether part i is of the kind, and as cooked, as the caution
// asks.
func (p *cautionPage) fits(c *reference.Caution, i int) bool {
	of := p.Weighed.Parts[i].Of
	switch {
	case len(c.Kinds) > 0 && !slices.Contains(c.Kinds, string(of.Kind)),
		c.Uncooked && cooked(p.Weighed.Formula, &p.inputs[i]),
		c.Under && (i >= len(p.Parts) || !p.Parts[i].Done.Under || !cooked(p.Weighed.Formula, &p.inputs[i])):
		return false
	}
	return true
}

// inPart reports whether something in part i raises the caution: what is listed,
// and by its role what its directions put to it.
func (p *cautionPage) inPart(c *reference.Caution, i int) bool {
	role := func(ing *reference.Ingredient) bool {
		return slices.ContainsFunc(ing.Roles, func(r string) bool { return slices.Contains(c.Roles, r) }) &&
			(len(c.Words) == 0 || hasAny(p.text, c.Words))
	}
	for _, it := range p.Weighed.Parts[i].Items {
		switch {
		case slices.Contains(c.Ingredients, it.Ingredient.ID),
			c.Egg && isEgg(it.Ingredient),
			role(it.Ingredient):
			return true
		}
	}
	return slices.ContainsFunc(p.Named, func(n Named) bool {
		return n.Part == i && n.Place != InPractice && (slices.Contains(c.Ingredients, n.Ingredient.ID) || role(n.Ingredient))
	})
}

func isEgg(ing *reference.Ingredient) bool {
	return slices.Contains([]string{"egg", "white", "yolk"}, ing.Kind)
}

// sourFrom is the acid in 100 g from which a thing is sour enough to take up
// metal: under lemon and gooseberries by far, over sweet milk and ripe pears.
var sourFrom = decimal.RequireFromString("0.4")

// sour reports that something sour by its composition is in the pot.
func (p *cautionPage) sour() bool {
	return slices.ContainsFunc(holds(p.Weighed), func(ing *reference.Ingredient) bool {
		c := &ing.Per100
		return decimal.Sum(c.Citric, c.Malic, c.Tartaric, c.Acetic, c.Lactic).GreaterThanOrEqual(sourFrom)
	})
}

// bakedIn reports that the receipt goes into an oven in a dish of such walls.
func (p *cautionPage) bakedIn(walls []string) bool {
	baked := false
	for i := range p.inputs {
		baked = baked || p.Weighed.Formula.Parts[i].Kind != formula.Sauce && bake.FireOf(&p.inputs[i].Method).Baked && cooked(p.Weighed.Formula, &p.inputs[i])
	}
	if !baked {
		return false
	}
	return slices.ContainsFunc(wallsOf(p.Weighed.Formula, p.tables), func(w string) bool { return slices.Contains(walls, w) })
}

// wallsOf are the walls the dish of a receipt may have, by the longest name of
// a vessel that stands in its words; nothing when no dish is said or known.
func wallsOf(f *formula.Formula, t *reference.Tables) []string {
	dish := " " + reference.Key(f.Dish) + " "
	most, out := 0, []string(nil)
	for i := range t.Vessels {
		v := &t.Vessels[i]
		if !v.Holds(f.Year, f.Place) {
			continue
		}
		for _, name := range v.Names {
			switch k := reference.Key(name); {
			case !strings.Contains(dish, " "+k+" "), len(k) < most:
			case len(k) > most:
				most, out = len(k), []string{v.Walls}
			default:
				out = append(out, v.Walls)
			}
		}
	}
	return out
}

// Allergen is one group of a list with what brings it in: ingredients, and what
// the directions name that no line lists.
type Allergen struct {
	Row   *reference.Allergen
	From  []*reference.Ingredient
	Named []Named
}

// allergensOf are the groups of both lists that a receipt brings in, in the
// order of the table: by every line, whether its amount is given or not, by
// either side of a line in doubt, and by what is named in the directions.
// Nothing follows from a group that is not among them: what is bought may hold
// more.
func allergensOf(r *Report, t *reference.Tables) []Allergen {
	var out []Allergen
	for i := range t.Allergens {
		a := Allergen{Row: &t.Allergens[i]}
		brings := func(ing *reference.Ingredient) bool {
			groups := ing.AllergensEU
			if a.Row.List == "us" {
				groups = ing.AllergensUS
			}
			return slices.Contains(groups, a.Row.Group)
		}
		for _, ing := range holds(r.Weighed) {
			if brings(ing) {
				a.From = append(a.From, ing)
			}
		}
		for _, n := range r.Named {
			told := slices.ContainsFunc(a.From, func(ing *reference.Ingredient) bool { return sameKind(ing, n.Ingredient) }) ||
				slices.ContainsFunc(a.Named, func(m Named) bool { return sameKind(m.Ingredient, n.Ingredient) })
			if brings(n.Ingredient) && !told {
				a.Named = append(a.Named, n)
			}
		}
		if len(a.From)+len(a.Named) > 0 {
			out = append(out, a)
		}
	}
	return out
}

// sameKind reports that whoever is told of one thing has been told of the other:
// it is a form of it, or counts as the same. Nuts, meats and fish are named each
// by itself.
func sameKind(listed, named *reference.Ingredient) bool {
	kind := func(ing *reference.Ingredient) string {
		if ing.Base != "" {
			return ing.Base
		}
		return ing.ID
	}
	return kind(listed) == kind(named) || isEgg(listed) && isEgg(named) ||
		slices.ContainsFunc(named.Roles, func(r string) bool { return r != "nut" && r != "meat" && slices.Contains(listed.Roles, r) })
}

// allergens names the groups of both lists in a sentence, and which of them no
// line lists.
func (p *cautionPage) allergens() string {
	by := map[string][]string{}
	var only, added []string
	for _, a := range p.Allergens {
		by[a.Row.List] = append(by[a.Row.List], a.Row.Group)
		if len(a.From) > 0 {
			continue
		}
		list := &only
		if !slices.ContainsFunc(a.Named, func(n Named) bool { return n.Place != InPractice }) {
			list = &added
		}
		if !slices.Contains(*list, a.Row.Group) {
			*list = append(*list, a.Row.Group)
		}
	}
	said := func(list string) string {
		if len(by[list]) == 0 {
			return "nothing known to us"
		}
		return strings.Join(by[list], ", ")
	}
	out := fmt.Sprintf("holds, by the European list, %s; by the American, %s", said("eu"), said("us"))
	if len(only) > 0 {
		out += "; not listed but named in the directions: " + strings.Join(only, ", ")
	}
	if len(added) > 0 {
		out += "; brought in by a step the worksheet adds: " + strings.Join(added, ", ")
	}
	return out
}

// heats are words of a step that heat a sauce or an icing, which the oven of
// the dish does not.
var heats = []string{"bake", "baked", "oven", "boil", "boiled", "boiling", "simmer", "fire", "scald", "cook", "cooked", "heat", "hot", "stove", "thickens"}

// cooked reports that something heats the part: its own fire, or the oven the
// dish goes into. A sauce or an icing is laid on afterwards, so that only its
// own steps count.
func cooked(f *formula.Formula, in *bake.Input) bool {
	if in.Method.Has("not_baked") || in.Method.Has("uncooked") {
		return false
	}
	if of := &f.Parts[in.Part]; of.Kind == formula.Sauce {
		return hasAny(partWords(of), heats)
	}
	fire := bake.FireOf(&in.Method)
	return fire.Baked || fire.OnHeat || f.Bake != "" || f.Oven != ""
}

func partWords(p *formula.Part) string {
	var b strings.Builder
	for _, l := range p.Lines {
		addWords(&b, l.Text)
	}
	for _, s := range p.Steps {
		addWords(&b, s)
	}
	return b.String() + " "
}

func addWords(b *strings.Builder, s string) { b.WriteString(" " + reference.Key(s) + " .") }

// pageWords is every word of the page a caution may look at, with single
// spaces and a space at each end.
func pageWords(f *formula.Formula) string {
	var b strings.Builder
	for _, s := range []string{f.Title, f.Dish, f.Oven, f.Bake} {
		addWords(&b, s)
	}
	for i := range f.Parts {
		b.WriteString(partWords(&f.Parts[i]))
	}
	return b.String() + " "
}

func hasAny(text string, words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return strings.Contains(text, " "+reference.Key(w)+" ")
	})
}
