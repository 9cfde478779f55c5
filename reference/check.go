package reference

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/reference/spell"
)

// check holds the rows against each other and against what a table may hold.
// Faults are recorded on the pages the rows were read from; rows of base
// tables, which have no page, are taken as sound.
func (t *Tables) check(origins map[string][]origin) {
	c := checker{t: t, origins: origins, used: map[string]bool{}}
	c.sources()
	c.ingredients()
	c.names()
	c.measures()
	c.methods()
	c.classes()
	c.rest()
	c.kitchen()
	c.steps()
	c.tasting()
	c.unusedSources()
}

type checker struct {
	t       *Tables
	origins map[string][]origin
	used    map[string]bool
}

// report records a fault at row i of a table.
func (c *checker) report(table string, i int, hint, format string, args ...any) {
	if o := c.origins[table]; i < len(o) && o[i].page != nil {
		o[i].page.Add(o[i].line, o[i].column, hint, format, args...)
	}
}

// provenance checks where a row says it comes from.
func (c *checker) provenance(table string, i int, p Provenance) {
	if _, ok := c.t.Source(p.Source); !ok {
		c.report(table, i, spell.Ask(p.Source, keys(c.t.index.source)), "unknown source %q", p.Source)
	}
	c.used[p.Source] = true
	if strings.TrimSpace(p.Locator) == "" {
		c.report(table, i, "name the page, table or row", "the locator is empty")
	}
	if !slices.Contains([]How{HowRead, HowMemory, HowCommon}, p.How) {
		c.report(table, i, "", "how is %q; it must be read, memory or common practice", p.How)
	}
}

func (c *checker) oneOf(table string, i int, what, got string, known []string) {
	if !slices.Contains(known, got) {
		hint := spell.Ask(got, known)
		if hint == "" {
			hint = "known: " + strings.Join(known, ", ")
		}
		c.report(table, i, hint, "unknown %s %q", what, got)
	}
}

func (c *checker) span(table string, i int, what string, s Span) {
	if s.Low.GreaterThan(s.Likely) || s.Likely.GreaterThan(s.High) || s.Low.IsNegative() {
		c.report(table, i, "", "%s must run low, likely, high: %s, %s, %s", what, s.Low, s.Likely, s.High)
	}
}

func (c *checker) validity(table string, i int, v Validity) {
	if v.From != 0 && v.To != 0 && v.From > v.To {
		c.report(table, i, "", "valid from %d to %d is no time at all", v.From, v.To)
	}
	for _, p := range v.Places {
		c.oneOf(table, i, "place", p, Places)
	}
}

func (c *checker) ingredientID(table string, i int, id string) {
	if _, ok := c.t.Ingredient(id); !ok {
		c.report(table, i, spell.Ask(id, keys(c.t.index.ingredient)), "unknown ingredient %q", id)
	}
}

func (c *checker) sources() {
	for i, s := range c.t.Sources {
		c.oneOf("sources", i, "kind of source", s.Kind, sourceKinds)
	}
}

var hundred = decimal.NewFromInt(100)

// tooMuch is the most a row may add up to: analyses joined from several tables
// may run over 100 by their errors, not further.
var tooMuch = decimal.NewFromInt(108)

func (c *checker) ingredients() {
	for i, ing := range c.t.Ingredients {
		c.provenance("ingredients", i, ing.Provenance)
		c.oneOf("ingredients", i, "kind", ing.Kind, ingredientKinds)
		for _, r := range ing.Roles {
			c.oneOf("ingredients", i, "role", r, Roles)
		}
		if ing.Base != "" {
			c.ingredientID("ingredients", i, ing.Base)
		}
		sum := decimal.Zero
		for _, name := range Components {
			v := ing.Per100.Of(name)
			if v.IsNegative() || v.GreaterThan(hundred) {
				c.report("ingredients", i, "", "%s is %s in 100 g", name, v)
			}
			if name != "salt_content" { // counted within ash
				sum = sum.Add(v)
			}
		}
		if sum.GreaterThan(tooMuch) {
			c.report("ingredients", i, "", "the components add up to %s g in 100 g", sum)
		}
		for name, s := range ing.Doubts {
			c.oneOf("ingredients", i, "component", name, Components)
			c.span("ingredients", i, name, s)
		}
		if !ing.Density.Loose.IsZero() {
			c.span("ingredients", i, "loose density", ing.Density.Loose)
		}
	}
}

// names checks that no name stands for two things.
func (c *checker) names() {
	taken := map[string]string{}
	claim := func(table string, i int, name, owner string) {
		k := Key(name)
		if k == "" {
			c.report(table, i, "", "an empty name")
			return
		}
		if other, ok := taken[k]; ok && other != owner {
			c.report(table, i, "a name that depends on year or place belongs in the names table", "the name %q already stands for %s", name, other)
		}
		taken[k] = owner
	}
	readings := func(table string, i int, rs []NameReading) {
		for _, r := range rs {
			c.ingredientID(table, i, r.Is)
			c.validity(table, i, r.Validity)
			if r.Beside != "" {
				c.oneOf(table, i, "role", r.Beside, Roles)
			}
		}
	}
	for i, n := range c.t.Names {
		c.provenance("names", i, n.Provenance)
		for _, name := range n.Names {
			claim("names", i, name, fmt.Sprintf("the names row of %q", n.Names[0]))
		}
		readings("names", i, n.Readings)
	}
	for i, f := range c.t.Fruits {
		c.provenance("fruits", i, f.Provenance)
		for _, name := range f.Names {
			claim("fruits", i, name, f.ID)
		}
		readings("fruits", i, f.Juice)
		readings("fruits", i, f.Rind)
		readings("fruits", i, f.Whole)
		for _, d := range f.Default {
			c.oneOf("fruits", i, "part of a fruit", d, []string{"juice", "rind", "whole"})
		}
	}
	for i, ing := range c.t.Ingredients {
		for _, name := range ing.Also {
			claim("ingredients", i, name, ing.ID)
		}
	}
	for i, m := range c.t.Modifiers {
		c.provenance("modifiers", i, m.Provenance)
	}
}

func (c *checker) measures() {
	for i, m := range c.t.Measures {
		c.provenance("measures", i, m.Provenance)
		c.oneOf("measures", i, "unit", m.Unit, []string{"g", "ml"})
		c.oneOf("measures", i, "grade", m.Grade, []string{"exact", "printed", "custom"})
		c.span("measures", i, m.ID, m.Span)
		c.validity("measures", i, m.Validity)
		for _, f := range m.For {
			if _, ok := c.t.Ingredient(f); !ok {
				c.oneOf("measures", i, "role or ingredient", f, Roles)
			}
		}
		if !m.Low.IsPositive() {
			c.report("measures", i, "", "%s holds nothing", m.ID)
		}
	}
	for i, s := range c.t.Sizes {
		c.provenance("sizes", i, s.Provenance)
		c.ingredientID("sizes", i, s.Of)
		c.oneOf("sizes", i, "unit", s.Unit, []string{"g", "ml", "share"})
		c.span("sizes", i, s.ID, s.Span)
		c.validity("sizes", i, s.Validity)
	}
	for i, f := range c.t.Fills {
		c.provenance("fills", i, f.Provenance)
		c.span("fills", i, f.ID, f.Span)
	}
}

func (c *checker) methods() {
	for i, m := range c.t.Methods {
		c.provenance("methods", i, m.Provenance)
		for _, s := range m.Scope {
			c.oneOf("methods", i, "scope", s, []string{"line", "steps", "bake"})
		}
		for _, p := range m.Parts {
			c.oneOf("methods", i, "kind of part", p, partKinds)
		}
	}
	for i, x := range c.t.Textures {
		c.provenance("textures", i, x.Provenance)
		c.oneOf("textures", i, "kind of part", x.Kind, partKinds)
	}
}

var partKinds = []string{"pastry", "filling", "cake", "batter", "bread", "meringue", "sauce"}

// unsaid are the flags of method a class may give odds for.
var unsaid = []string{"eggs_beaten", "mixed", "eggs_very_light", "creamed", "melted_fat", "slow", "moderate", "hot"}

// raised reports whether some method raises a flag.
func (c *checker) raised(flag string) bool {
	return slices.ContainsFunc(c.t.Methods, func(m Method) bool { return slices.Contains(m.Sets, flag) })
}

func (c *checker) classes() {
	spelled := map[string]string{}
	for i, k := range c.t.Classes {
		c.provenance("classes", i, k.Provenance)
		c.oneOf("classes", i, "kind of part", k.Kind, partKinds)
		c.oneOf("classes", i, "era", k.Era, []string{"modern", "period"})
		for _, flags := range k.Made {
			for _, f := range flags {
				if !c.raised(f) {
					c.report("classes", i, "", "it is made by %q, which no method raises", f)
				}
			}
		}
		for flag, odds := range k.Unsaid {
			c.oneOf("classes", i, "thing left unsaid", flag, unsaid)
			if odds.IsNegative() {
				c.report("classes", i, "", "the odds of %s are less than nothing", flag)
			}
		}
		for _, a := range append([]string{k.ID}, k.Also...) {
			if other, ok := spelled[a]; ok && other != k.ID {
				c.report("classes", i, "", "%q already stands for the class %s", a, other)
			}
			spelled[a] = k.ID
		}
	}
	quantities := slices.Concat(Roles, Components, Sums)
	for i, r := range c.t.Ratios {
		c.provenance("ratios", i, r.Provenance)
		for _, term := range slices.Concat(r.Of, r.To) {
			c.oneOf("ratios", i, "quantity", term.Quantity, quantities)
		}
		for _, k := range r.Kinds {
			c.oneOf("ratios", i, "kind of part", k, partKinds)
		}
		if !r.Scale.IsPositive() {
			c.report("ratios", i, "", "the scale must be more than nothing")
		}
	}
	for i, r := range c.t.Ranges {
		c.provenance("ranges", i, r.Provenance)
		if k, ok := c.t.index.class[r.Class]; !ok || c.t.Classes[k].ID != r.Class {
			c.oneOf("ranges", i, "class", r.Class, keys(c.t.index.class))
		}
		if _, ok := c.t.Ratio(r.Ratio); !ok {
			c.oneOf("ranges", i, "ratio", r.Ratio, keys(c.t.index.ratio))
		}
		c.oneOf("ranges", i, "kind of range", r.Kind, []string{"range", "point", "rule"})
		c.span("ranges", i, r.Class+" "+r.Ratio, Span{r.Low, r.Typical, r.High})
	}
}

func (c *checker) rest() {
	outcomes := map[string]bool{}
	for _, x := range c.t.Textures {
		for _, o := range x.Outcomes {
			outcomes[o] = true
		}
	}
	for i, p := range c.t.Published {
		c.provenance("published", i, p.Provenance)
		c.oneOf("published", i, "place", p.Place, Places)
		c.oneOf("published", i, "kind of part", p.Part, partKinds)
		if _, ok := c.t.Class(p.Class); !ok {
			c.oneOf("published", i, "class", p.Class, keys(c.t.index.class))
		}
		if !outcomes[p.Outcome] {
			c.oneOf("published", i, "outcome", p.Outcome, keys(outcomes))
		}
		c.oneOf("published", i, "evidence", p.Evidence, []string{"tester", "source", "process", "class"})
	}
	for i, l := range c.t.Links {
		c.provenance("links", i, l.Provenance)
		if l.Width <= 0 {
			c.report("links", i, "", "the width of a link must be more than nothing")
		}
	}
}

// kitchen checks the tables of ovens, dishes, cautions and doneness.
func (c *checker) kitchen() {
	for i, o := range c.t.Ovens {
		c.provenance("ovens", i, o.Provenance)
		c.oneOf("ovens", i, "kind of sign", o.Kind, OvenKinds)
		c.span("ovens", i, o.ID, o.C)
		c.span("ovens", i, o.ID, o.F)
		c.validity("ovens", i, o.Validity)
	}
	for i, v := range c.t.Vessels {
		c.provenance("vessels", i, v.Provenance)
		c.oneOf("vessels", i, "kind of vessel", v.Kind, VesselKinds)
		c.span("vessels", i, v.ID, v.Usable)
		c.validity("vessels", i, v.Validity)
	}
	for i, k := range c.t.Cautions {
		c.provenance("cautions", i, k.Provenance)
		for _, id := range k.Ingredients {
			c.ingredientID("cautions", i, id)
		}
		for _, r := range k.Roles {
			c.oneOf("cautions", i, "role", r, Roles)
		}
		for _, p := range k.Kinds {
			c.oneOf("cautions", i, "kind of part", p, partKinds)
		}
		for _, w := range k.Walls {
			c.oneOf("cautions", i, "wall of a dish", w, walls)
		}
		if !k.Allergens && !k.Egg && len(k.Ingredients)+len(k.Roles)+len(k.Words)+len(k.Walls) == 0 {
			c.report("cautions", i, "name an ingredient, a role, a word or a wall", "nothing raises the caution %q", k.ID)
		}
	}
	c.answers()
	for i, d := range c.t.Doneness {
		c.provenance("doneness", i, d.Provenance)
		c.oneOf("doneness", i, "kind of part", d.Kind, partKinds)
		c.span("doneness", i, d.ID, d.C)
		c.span("doneness", i, d.ID+", carry", d.Carry)
		for _, r := range d.Roles {
			c.oneOf("doneness", i, "role", r, Roles)
		}
	}
}

// walls are what a dish may be made of, as far as it matters to heat.
var walls = []string{"tin", "earthenware", "china", "glass", "iron", "paste"}

// answers checks the groups of allergens, that every ingredient names none but
// those, and the answers to the public's other questions.
func (c *checker) answers() {
	groups := map[string][]string{}
	for i, a := range c.t.Allergens {
		c.provenance("allergens", i, a.Provenance)
		c.oneOf("allergens", i, "list of allergens", a.List, AllergenLists)
		groups[a.List] = append(groups[a.List], a.Group)
	}
	for i, ing := range c.t.Ingredients {
		for _, g := range ing.AllergensEU {
			c.oneOf("ingredients", i, "allergen", g, groups["eu"])
		}
		for _, g := range ing.AllergensUS {
			c.oneOf("ingredients", i, "allergen", g, groups["us"])
		}
	}
	for i, a := range c.t.Answers {
		c.provenance("answers", i, a.Provenance)
		c.oneOf("answers", i, "question", a.Question, Questions)
		c.oneOf("answers", i, "answer", a.Answer, []string{"against", "ask"})
		for _, id := range a.Ingredients {
			c.ingredientID("answers", i, id)
		}
	}
}

// steps checks the steps a working cook expects. The flags they hang on must be
// raised by some row of the methods.
func (c *checker) steps() {
	raised := map[string]bool{}
	for _, m := range c.t.Methods {
		for _, f := range m.Sets {
			raised[f] = true
		}
	}
	for _, f := range ReckonedFlags {
		raised[f] = true
	}
	for i, s := range c.t.Steps {
		c.provenance("steps", i, s.Provenance)
		c.oneOf("steps", i, "stage", s.Stage, StepStages)
		for _, k := range s.Kinds {
			c.oneOf("steps", i, "kind of part", k, partKinds)
		}
		for _, w := range slices.Concat(s.When, s.Unless) {
			c.oneOf("steps", i, "condition", strings.TrimPrefix(w, "no-"), StepConditions)
		}
		for _, f := range slices.Concat(s.Flags, s.Takes, s.Spares) {
			c.oneOf("steps", i, "flag of method", f, keys(raised))
		}
		if s.Grade != "" {
			c.oneOf("steps", i, "grade", s.Grade, []string{"watch", "note"})
		}
		c.span("steps", i, "minutes", s.Minutes)
		if s.Found.Year != 0 {
			c.provenance("steps", i, s.Found.Provenance)
		}
	}
}

// tasting checks the tables of signs and causes.
func (c *checker) tasting() {
	named := func(table string, i int, name string) {
		if _, ok := c.t.TextureNamed(name); !ok {
			c.report(table, i, "write it as filling/cakey or pastry/tough", "unknown texture %q", name)
		}
	}
	taken := map[string]string{}
	for i, s := range c.t.Signs {
		c.provenance("signs", i, s.Provenance)
		if s.Look != "" {
			c.oneOf("signs", i, "place of the tasting sheet", s.Look, Looks)
		}
		for _, name := range s.Points {
			named("signs", i, name)
		}
		if s.Unclear && (len(s.Points) < 2 || s.Ask == "") {
			c.report("signs", i, "name two textures and what to ask", "%s is unclear between nothing", s.ID)
		}
		for _, w := range s.Words {
			k := s.Look + "/" + Key(w)
			if other, ok := taken[k]; ok && other != s.ID {
				c.report("signs", i, "", "%q already stands for %s", w, other)
			}
			taken[k] = s.ID
		}
	}
	for i, k := range c.t.Causes {
		c.provenance("causes", i, k.Provenance)
		c.oneOf("causes", i, "kind of cause", k.Kind, CauseKinds)
		if k := c.t.Causes[i].Fire; k != "" {
			c.oneOf("causes", i, "fire", k, []string{"heated", "cold", "jelly"})
		}
		for _, name := range k.Textures {
			named("causes", i, name)
		}
		if (k.Change == "") == (k.What == "") {
			c.report("causes", i, "`change` names a change that is tried, `what` a cause outside the formula", "%s needs one of change and what", k.ID)
		}
	}
}

// unusedSources reports works no row rests on; they are clutter or a slip.
func (c *checker) unusedSources() {
	for i, s := range c.t.Sources {
		if !c.used[s.ID] {
			c.report("sources", i, "", "no row rests on the source %q", s.ID)
		}
	}
}

func keys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
