package variant

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/reference"
)

// item is an ingredient whose amount may be changed.
type item struct {
	at    int // among the part's items, those put in standing last
	on    *weigh.Item
	book  step
	steps []step // least change first
	added *addition
	unit  string
}

// step is one amount on the lattice.
type step struct {
	number decimal.Decimal // of the book's measure or count; nothing when it is left out
	grams  decimal.Decimal // likely
	stated bool            // the book gives no amount
	rel    float64         // relative change from the book
}

// The lattice of what is measured: eighths of the book's amount.
var eighths = []int64{2, 3, 4, 5, 6, 7, 9, 10, 11, 12, 13, 14, 15, 16, 20, 24}

// least and greatest are how far a number may go from the book's.
var least, greatest = decimal.RequireFromString("0.25"), decimal.NewFromInt(3)

// sixteenths of the flour that water not measured by the book may come to.
const leastWater, mostWater = 2, 10

// binder is the share of the part up to which flour or crumb may be left out.
const binder = .10

func div(a, b decimal.Decimal) decimal.Decimal { return a.DivRound(b, 24) }

// relative is the change from a to b, over the larger.
func relative(a, b decimal.Decimal) float64 {
	return a.Sub(b).Abs().Div(decimal.Max(a, b)).InexactFloat64()
}

// items makes the lattice of every ingredient that may be changed.
func (s *search) items(keep []string) error {
	kept := make([]bool, len(keep))
	part := &s.in.Weighed.Parts[s.in.Part]
	for i := range part.Items {
		it := &part.Items[i]
		held := false
		for k, word := range keep {
			if called(word, it) {
				kept[k], held = true, true
			}
		}
		a := s.addition(it)
		if held || it.When != nil || a == nil && !s.free(it) {
			continue
		}
		one := item{at: i, on: it, added: a, unit: unitOf(&it.Amount)}
		switch {
		case a != nil:
			s.stepsIn(&one)
		case it.State != formula.Stated:
			s.stepsOfWater(&one)
		default:
			s.stepsOf(&one)
		}
		if len(one.steps) == 0 {
			continue
		}
		sort.SliceStable(one.steps, func(a, b int) bool { return one.steps[a].rel < one.steps[b].rel })
		s.list = append(s.list, one)
	}
	for k, ok := range kept {
		if !ok {
			var known []string
			for i := range part.Items {
				if n := part.Items[i].Ingredient.Name; !slices.Contains(known, n) && s.addition(&part.Items[i]) == nil {
					known = append(known, n)
				}
			}
			return &Problem{What: fmt.Sprintf("there is no %q in the %s to keep", keep[k], part.Of.Name), Word: keep[k], Known: known}
		}
	}
	return nil
}

// called reports whether a word a person keeps an ingredient by means the item:
// its name, a word of it, or the ingredient it is a form of.
func called(word string, it *weigh.Item) bool {
	key := reference.Key(word)
	ing := it.Ingredient
	if key == reference.Key(ing.ID) || key == reference.Key(ing.Base) || key == reference.Key(ing.Name) {
		return true
	}
	for _, w := range slices.Concat(reference.Words(ing.Name), reference.Words(strings.ReplaceAll(ing.ID, "_", " "))) {
		if w == key || w+"s" == key || w == key+"s" {
			return true
		}
	}
	return false
}

func unitOf(a *formula.Amount) string {
	switch {
	case a.Measure != "":
		return a.Measure
	case a.WeightOf != "":
		return "weight of " + a.WeightOf + "s"
	case a.Parts:
		return "part"
	}
	return a.Each
}

// byNumber reports whether an amount is a number of things.
func byNumber(a *formula.Amount) bool { return a.Measure == "" && a.WeightOf == "" && !a.Parts }

// egg reports whether an item is egg, white or yolk.
func egg(it *weigh.Item) bool {
	return slices.Contains([]string{"egg", "white", "yolk"}, it.Ingredient.Kind)
}

// stepsOf is the lattice of something the book gives an amount of.
func (s *search) stepsOf(one *item) {
	it := one.on
	n := it.Amount.Number.Likely
	if !n.IsPositive() || !it.Grams.Likely.IsPositive() {
		return
	}
	one.book = step{number: n, grams: it.Grams.Likely}
	each := func(number decimal.Decimal) {
		if number.Equal(n) {
			return
		}
		one.steps = append(one.steps, step{
			number: number, grams: div(it.Grams.Likely.Mul(number), n), rel: relative(n, number),
		})
	}
	whole := func(n, by decimal.Decimal, as func(decimal.Decimal) decimal.Decimal) {
		from := decimal.Max(by, n.Mul(least).Div(by).Ceil().Mul(by))
		for m := from; m.LessThanOrEqual(n.Mul(greatest)); m = m.Add(by) {
			each(as(m))
		}
	}
	as := func(m decimal.Decimal) decimal.Decimal { return m }
	counted := byNumber(&it.Amount)
	switch {
	case egg(it) && counted:
		whole(n, decimal.NewFromInt(1), as)
	case egg(it):
		// Given by weight: whole ones of the weight that makes the book's amount a
		// whole number of them.
		eggs := decimal.Max(decimal.NewFromInt(1), it.Grams.Likely.Div(s.eggGrams(it)).Round(0))
		whole(eggs, decimal.NewFromInt(1), func(m decimal.Decimal) decimal.Decimal { return div(n.Mul(m), eggs) })
	case counted:
		whole(n, decimal.RequireFromString("0.5"), as)
	default:
		for _, e := range eighths {
			each(n.Mul(decimal.NewFromInt(e)).Shift(-3).Mul(decimal.NewFromInt(125)))
		}
	}
	if s.leavable(it) {
		share := it.Grams.Likely.Div(s.total).InexactFloat64()
		one.steps = append(one.steps, step{rel: 1 + share})
	}
}

// eggGrams is what one of its kind is taken to weigh where the book gives eggs
// by weight: yolk a third and white two thirds of an egg.
func (s *search) eggGrams(it *weigh.Item) decimal.Decimal {
	switch it.Ingredient.Kind {
	case "yolk":
		return kitchenEgg.Div(decimal.NewFromInt(3))
	case "white":
		return kitchenEgg.Mul(decimal.NewFromInt(2)).Div(decimal.NewFromInt(3))
	}
	return kitchenEgg
}

// leavable reports whether an ingredient may be left out: a little flour or
// crumb that gives the dish no name.
func (s *search) leavable(it *weigh.Item) bool {
	little := it.Grams.Likely.LessThan(s.total.Mul(decimal.NewFromFloat(binder)))
	return little && hasRole(it, "flour", "meal", "crumb") && !s.named(it)
}

// named reports whether the title names the ingredient.
func (s *search) named(it *weigh.Item) bool {
	return slices.ContainsFunc(reference.Words(s.in.Weighed.Formula.Title), func(w string) bool { return called(w, it) })
}

func hasRole(it *weigh.Item, roles ...string) bool {
	return slices.ContainsFunc(it.Ingredient.Roles, func(r string) bool { return slices.Contains(roles, r) })
}

// stepsOfWater is the lattice of the water of a paste that the book does not
// measure.
func (s *search) stepsOfWater(one *item) {
	if s.kind != formula.Pastry || !hasRole(one.on, "water", "milk") || !s.flour.IsPositive() {
		return
	}
	one.unit = "g"
	for n := int64(leastWater); n <= mostWater; n++ {
		g := s.flour.Mul(decimal.NewFromInt(n)).Mul(decimal.RequireFromString("0.0625"))
		one.steps = append(one.steps, step{number: g, grams: g, stated: true, rel: 1 + g.Div(s.total).InexactFloat64()})
	}
}

// stepsIn is the lattice of something put in.
func (s *search) stepsIn(one *item) {
	it := one.on
	grams := it.Grams.Likely
	if !grams.IsPositive() {
		return
	}
	most := int64(math.Floor(s.total.InexactFloat64() * one.added.most / grams.InexactFloat64()))
	n := it.Amount.Number.Likely
	for i := int64(1); i <= most; i++ {
		g := grams.Mul(decimal.NewFromInt(i))
		one.steps = append(one.steps, step{number: n.Mul(decimal.NewFromInt(i)), grams: g, rel: 1 + g.Div(s.total).InexactFloat64()})
	}
}

// free reports whether the amount of an ingredient may be changed: it must bear
// on what is wanted, and be something a cook would change for it. The flour of
// a paste is what the rest is reckoned on, and stays.
func (s *search) free(it *weigh.Item) bool {
	if s.kind == formula.Pastry && hasRole(it, "flour") {
		return false
	}
	if it.State != formula.Stated {
		return s.kind == formula.Pastry && hasRole(it, "water", "milk") && s.bears(it)
	}
	if s.bears(it) {
		return true
	}
	for i := range s.bounds {
		row := s.bounds[i].ratio
		for _, terms := range [][]reference.Term{row.Of, row.To} {
			for _, t := range terms {
				if q, ok := ratios.Named(t.Quantity); ok && q != ratios.Total && counts(it, t) {
					return true
				}
			}
		}
	}
	return false
}

// counts reports whether an item is counted by a term of a ratio.
func counts(it *weigh.Item, t reference.Term) bool {
	row := &reference.Ratio{Of: []reference.Term{t}, To: []reference.Term{t}, Scale: decimal.NewFromInt(1)}
	of, _ := ratios.Counts(it, row)
	return of.IsPositive()
}

// bears reports whether the ingredient is one that a cook changes against a
// texture to be answered.
func (s *search) bears(it *weigh.Item) bool {
	return slices.ContainsFunc(s.goal.against, func(texture string) bool { return hasRole(it, bearing[texture]...) })
}

// bearing are the roles whose amounts a cook changes against a texture: what
// sets or fixes, what it is set in, and what stands in the way of either
// (common practice).
var bearing = map[string][]string{
	"cakey":   {"egg", "white", "yolk", "butter", "sugar", "flour", "meal", "crumb", "leaven", "milk", "cream", "liquid", "water"},
	"thin":    {"egg", "white", "yolk", "flour", "meal", "crumb", "milk", "cream", "liquid", "water", "juice"},
	"curdy":   {"egg", "white", "yolk", "flour", "meal", "sugar", "milk", "cream", "liquid", "water", "juice"},
	"rubbery": {"egg", "white", "yolk", "flour", "meal", "sugar", "milk", "cream", "liquid", "water"},
	"tough":   {"butter", "hard_fat", "oil", "water", "milk", "liquid", "sugar"},
	"crumbly": {"butter", "hard_fat", "oil", "water", "milk", "liquid", "egg", "yolk"},
	"greasy":  {"butter", "hard_fat", "oil"},
}
