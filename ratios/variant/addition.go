package variant

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

// addition is something a cook puts in that the receipt has not.
type addition struct {
	against    []string // textures; empty when a class wants it
	kind       formula.Kind
	ingredient string
	number     string // of the measure or thing, for one step
	measure    string
	each       string
	most       float64 // of the weight of the part
	unless     []string
	raise      []formula.Flag
}

// additions a cook thinks of first (common practice): what sets, what binds,
// and for a paste without a drop of anything wet, water.
var additions = []addition{
	{against: []string{"thin"}, kind: formula.Filling, ingredient: "egg_whole", number: "1", each: "egg", most: .25, unless: []string{"egg"}},
	{against: []string{"thin"}, kind: formula.Filling, ingredient: "egg_yolk", number: "1", each: "egg", most: .12, unless: []string{"yolk"}},
	{against: []string{"thin", "curdy"}, kind: formula.Filling, ingredient: "cornflour", number: "8", measure: "g", most: .06, raise: []formula.Flag{"starch_boiled"}},
	{against: []string{"cakey", "rubbery"}, kind: formula.Filling, ingredient: "milk_whole", number: "30", measure: "g", most: .30, unless: []string{"milk", "cream"}},
	{against: []string{"crumbly"}, kind: formula.Pastry, ingredient: "egg_yolk", number: "1", each: "egg", most: .10, unless: []string{"yolk", "egg"}},
	{against: []string{"crumbly"}, kind: formula.Pastry, ingredient: "water", number: "15", measure: "g", most: .25, unless: []string{"water", "milk"}},
}

// wanted are the additions worth trying for a goal: those against its textures,
// and what stands in every other published formula of its class and has a role
// the part is without.
func (s *search) wanted() []addition {
	part := &s.in.Weighed.Parts[s.in.Part]
	has := func(roles ...string) bool {
		return slices.ContainsFunc(part.Items, func(it weigh.Item) bool { return hasRole(&it, roles...) })
	}
	var out []addition
	for _, a := range additions {
		answers := slices.ContainsFunc(a.against, func(x string) bool { return slices.Contains(s.goal.against, x) })
		if a.kind == s.kind && answers && (len(a.unless) == 0 || !has(a.unless...)) && s.known(a.ingredient) {
			out = append(out, a)
		}
	}
	if s.goal.class == nil {
		return out
	}
	for _, role := range lacking {
		if has(role.roles...) || !s.asksFor(role.counted) || !s.known(role.ingredient) {
			continue
		}
		out = append(out, addition{kind: s.kind, ingredient: role.ingredient, number: role.number, measure: role.measure, each: role.each, most: .5})
	}
	return out
}

// lacking are the ingredients taken for a role that a class asks for and the
// part is without, by how its ratios count them, in steps a cook can spoon or
// weigh.
var lacking = []struct {
	roles, counted                    []string
	ingredient, number, measure, each string
}{
	{[]string{"egg", "white", "yolk"}, []string{"egg", "white", "yolk"}, "egg_whole", "1", "", "egg"},
	{[]string{"milk", "cream"}, []string{"milk", "cream"}, "cream_double", "30", "g", ""},
	{[]string{"juice"}, []string{"juice", "acid"}, "lemon_juice", "15", "g", ""},
	{[]string{"sugar"}, []string{"sugar"}, "sugar_white", "25", "g", ""},
	{[]string{"butter", "hard_fat", "oil"}, []string{"written_fat", "pure_fat"}, "butter_unsalted", "25", "g", ""},
	{[]string{"flour", "meal"}, []string{"flour", "meal"}, "cornflour", "8", "g", ""},
	{[]string{"water", "milk", "liquid"}, []string{"water_added", "named_water", "liquid"}, "water", "15", "g", ""},
}

// asksFor reports whether a range of the class starts above nothing for a ratio
// that counts one of the quantities on top.
func (s *search) asksFor(quantities []string) bool {
	for i := range s.bounds {
		b := &s.bounds[i]
		counted := slices.ContainsFunc(b.ratio.Of, func(t reference.Term) bool { return slices.Contains(quantities, t.Quantity) })
		above := !b.single && !slices.ContainsFunc(b.spans, func(r Range) bool { return !r.Low.IsPositive() })
		if counted && above {
			return true
		}
	}
	return false
}

func (s *search) known(id string) bool {
	_, ok := s.judge.Tables.Ingredient(id)
	return ok
}

// line is the addition as a line of the receipt, one step of it.
func (a *addition) line(t *reference.Tables) formula.Line {
	ing, _ := t.Ingredient(a.ingredient)
	name, _, _ := strings.Cut(ing.Name, " (")
	n := decimal.RequireFromString(a.number)
	text := a.number + " " + name
	if a.measure != "" {
		text = a.number + " " + a.measure + " " + name
	}
	return formula.Line{Text: text, Items: []formula.Item{{
		Name: name, Ingredient: a.ingredient,
		Amount: formula.Amount{Number: reference.Exact(n), Measure: a.measure, Each: a.each, Words: a.number},
	}}}
}

// addition is what an item was put in as, nil when it is the book's own.
func (s *search) addition(it *weigh.Item) *addition {
	if n := it.Line - s.lines; n >= 0 {
		return &s.extra[n]
	}
	return nil
}
