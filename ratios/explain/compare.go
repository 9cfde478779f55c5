package explain

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/reference"
)

// Comparison is two bakes, or two receipts, side by side.
type Comparison struct {
	Two   [2]*Bake
	Parts []PartPair
	// Differ is everything that was otherwise, in the order of the parts, then
	// of the dish as a whole.
	Differ []Difference
}

// PartPair is a part of each, or -1 where one has none like it.
type PartPair struct{ A, B int }

// Difference is one thing that was otherwise.
type Difference struct {
	Part string // empty for the dish as a whole
	What string
	A, B string // what it was in each; empty when it was not there, or not said
}

// alike is how far two proportions may lie apart and be called the same, of the
// larger; a kitchen does not weigh finer.
var alike = decimal.RequireFromString("0.02")

// Compare sets two bakes side by side. Amounts are compared after the size of the
// batch, so that one twice as large is no difference but its size.
func Compare(a, b *Bake) *Comparison {
	c := &Comparison{Two: [2]*Bake{a, b}}
	c.pair()
	for _, p := range c.Parts {
		switch {
		case p.B < 0:
			c.differ(a.Formula().Parts[p.A].Name, "the part", "is made", "")
		case p.A < 0:
			c.differ(b.Formula().Parts[p.B].Name, "the part", "", "is made")
		default:
			c.amounts(p)
			c.methods(p)
		}
	}
	c.whole()
	c.sort()
	return c
}

// sort puts what is of the dish as a whole behind what is of its parts.
func (c *Comparison) sort() {
	slices.SortStableFunc(c.Differ, func(x, y Difference) int {
		switch {
		case (x.Part == "") == (y.Part == ""):
			return 0
		case x.Part == "":
			return 1
		}
		return -1
	})
}

func (c *Comparison) differ(part, what, a, b string) {
	c.Differ = append(c.Differ, Difference{part, what, a, b})
}

// pair puts parts of one kind together, those of one name first.
func (c *Comparison) pair() {
	a, b := c.Two[0].Formula().Parts, c.Two[1].Formula().Parts
	to := make([]int, len(a))
	taken := map[int]bool{}
	find := func(like func(x, y *formula.Part) bool) {
		for i := range a {
			for j := range b {
				if to[i] < 0 && !taken[j] && a[i].Kind == b[j].Kind && like(&a[i], &b[j]) {
					to[i], taken[j] = j, true
				}
			}
		}
	}
	for i := range to {
		to[i] = -1
	}
	find(func(x, y *formula.Part) bool { return reference.Key(x.Name) == reference.Key(y.Name) })
	find(func(*formula.Part, *formula.Part) bool { return true })
	for i, j := range to {
		c.Parts = append(c.Parts, PartPair{i, j})
	}
	for j := range b {
		if !taken[j] {
			c.Parts = append(c.Parts, PartPair{-1, j})
		}
	}
}

// batch is how many times as much one part is made of as the other: the factor
// most of the ingredients agree on, that nearest to one of equals.
func batch(x, y *puts) decimal.Decimal {
	one := decimal.NewFromInt(1)
	var factors []decimal.Decimal
	for _, id := range x.order {
		a, b := x.of[id].grams.Likely, y.of[id].grams.Likely
		if a.IsPositive() && b.IsPositive() {
			factors = append(factors, b.DivRound(a, 10))
		}
	}
	best, most := one, 0
	for _, f := range factors {
		agree := 0
		for _, g := range factors {
			if same(f, g) {
				agree++
			}
		}
		if agree > most || agree == most && f.Sub(one).Abs().LessThan(best.Sub(one).Abs()) {
			best, most = f, agree
		}
	}
	return best
}

// amounts compares what went in, for batches of one size.
func (c *Comparison) amounts(p PartPair) {
	x, y := sums(c.Two[0].Report.Weighed, p.A), sums(c.Two[1].Report.Weighed, p.B)
	name := c.Two[0].Formula().Parts[p.A].Name
	times := batch(x, y)
	ids := slices.Clone(x.order)
	for _, id := range y.order {
		if !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	for _, id := range ids {
		in, on := x.of[id], y.of[id]
		if same(in.grams.Likely.Mul(times), on.grams.Likely) && in.open == on.open {
			continue
		}
		c.differ(name, x.name(id, y), in.String(), on.String())
	}
	if !same(times, decimal.NewFromInt(1)) {
		c.differ(name, "how much is made", x.total.Round(0).String()+" g", y.total.Round(0).String()+" g")
	}
}

// same reports that two amounts are as good as equal.
func same(a, b decimal.Decimal) bool {
	return a.Sub(b).Abs().LessThanOrEqual(decimal.Max(a, b).Mul(alike))
}

// put is what went in of one ingredient.
type put struct {
	grams reference.Span
	part  decimal.Decimal // in 100 of the part, likely
	open  bool            // without an amount
}

// String is the amount as it is told: grams, and in 100 of the part.
func (p put) String() string {
	switch {
	case p.open:
		return "no amount"
	case p.grams.IsZero():
		return ""
	}
	grams := p.grams.Likely.Round(0).String()
	if !p.grams.IsExact() {
		grams += fmt.Sprintf(" (%s-%s)", p.grams.Low.Round(0), p.grams.High.Round(0))
	}
	return fmt.Sprintf("%s g, %s in 100", grams, p.part.Round(1))
}

// puts are the ingredients of a part, each once.
type puts struct {
	order []string
	names map[string]string
	of    map[string]put
	total decimal.Decimal
}

func (p *puts) name(id string, other *puts) string {
	if n, ok := p.names[id]; ok {
		return n
	}
	return other.names[id]
}

func sums(w *weigh.Weighed, part int) *puts {
	p := &puts{names: map[string]string{}, of: map[string]put{}}
	for i := range w.Parts[part].Items {
		it := &w.Parts[part].Items[i]
		if !it.Used(w.Unknowns) {
			continue
		}
		id := it.Ingredient.ID
		if _, ok := p.names[id]; !ok {
			p.order, p.names[id] = append(p.order, id), it.Ingredient.Name
		}
		x := p.of[id]
		if it.State != formula.Stated {
			x.open = true
		} else {
			x.grams = x.grams.Add(it.Grams)
			p.total = p.total.Add(it.Grams.Likely)
		}
		p.of[id] = x
	}
	if p.total.IsPositive() {
		for id, x := range p.of {
			x.part = x.grams.Likely.Mul(decimal.NewFromInt(100)).DivRound(p.total, 6)
			p.of[id] = x
		}
	}
	return p
}

// questions are what may be done one way or another, by the flags that answer
// them; each that was answered otherwise is a difference of its own.
var questions = []question{
	{"how the eggs were beaten", []string{"whites_folded", "whites_maybe_folded", "whites_beaten", "eggs_very_light", "eggs_slightly", "milk_on_egg", "eggs_beaten", "mixed"}},
	{"how the butter went in", []string{"creamed", "melted_fat", "all_in_one"}},
	{"the fire", []string{"on_heat", "not_baked", "warmed_only", "microwave", "steamed", "boiled_pudding"}},
	{"the starch", []string{"starch_boiled"}},
	{"a bath of water", []string{"bath", "no_bath"}},
	{"how the fat went in", []string{"rubbed", "cut_in", "chopped_in", "processor", "laminated", "folded_turns", "flakes", "hot_water"}},
	{"the handling", []string{"kneaded_lightly", "kneaded", "kneaded_hard", "light_hand", "overmixed", "rolled_too_often", "pressed", "rolled", "beaten_with_roller"}},
	{"the rest", []string{"rested", "chilled"}},
	{"the case", []string{"raw_case", "baked_case", "part_baked", "blind_baked", "blind_no_weights", "egg_wash_inside"}},
	{"what else was done", nil},
}

type question struct {
	what  string
	flags []string // none: whatever answers no other
}

// methods compares what was done, by the meanings of the words it was read from.
func (c *Comparison) methods(p PartPair) {
	a, b := &c.Two[0].inputs[p.A], &c.Two[1].inputs[p.B]
	name := c.Two[0].Formula().Parts[p.A].Name
	x, y := c.meanings(0, a), c.meanings(1, b)
	for _, q := range questions {
		if in, on := x[q.what], y[q.what]; in != on {
			c.differ(name, q.what, in, on)
		}
	}
	if in, on := ovenOf(a), ovenOf(b); in != on {
		c.bake("the oven", in, on)
	}
	if in, on := minutesOf(a), minutesOf(b); in != on {
		c.bake("minutes", in, on)
	}
}

// bake adds a difference of the baking, which all parts of a dish share.
func (c *Comparison) bake(what, a, b string) {
	if d := (Difference{"", what, a, b}); !slices.Contains(c.Differ, d) {
		c.Differ = append(c.Differ, d)
	}
}

// heatFlags are told as the oven, in degrees where they are known.
var heatFlags = []string{"slow", "moderate", "hot", "very_hot", "then_moderate", "cool_oven", "baked"}

// meanings are what was done to a part, by the question it answers: the meanings
// of the method rows whose flags hold. What was done in place of what is written
// has taken its flags away.
func (c *Comparison) meanings(which int, in *bake.Input) map[string]string {
	lists := map[string][]string{}
	for _, tok := range in.Method.Tokens {
		row, ok := c.Two[which].Tables().Method(tok.Method)
		if !ok {
			continue
		}
		for _, flag := range row.Sets {
			if slices.Contains(heatFlags, flag) || !in.Method.Has(formula.Flag(flag)) {
				continue
			}
			i := slices.IndexFunc(questions, func(q question) bool { return q.flags == nil || slices.Contains(q.flags, flag) })
			what := questions[i].what
			if !slices.Contains(lists[what], row.Meaning) {
				lists[what] = append(lists[what], row.Meaning)
			}
			break
		}
	}
	out := map[string]string{}
	for what, list := range lists {
		slices.Sort(list)
		out[what] = strings.Join(list, "; ")
	}
	return out
}

// ovenOf is the heat of a part as it is told.
func ovenOf(in *bake.Input) string {
	m := &in.Method
	var heats []string
	for _, s := range m.Bake.Stages {
		if s.HighC > 0 {
			if h := fmt.Sprintf("%.0f C", (s.LowC+s.HighC)/2); len(heats) == 0 || heats[len(heats)-1] != h {
				heats = append(heats, h)
			}
		}
	}
	if len(heats) > 0 {
		return strings.Join(heats, ", then ")
	}
	fire := bake.FireOf(m)
	switch {
	case !fire.Baked:
		return ""
	case fire.Slow:
		return "slow"
	case fire.Hot:
		return "hot"
	case m.Has("moderate", "then_moderate"):
		return "moderate"
	}
	return ""
}

func minutesOf(in *bake.Input) string {
	if in.Method.Bake.Minutes <= 0 {
		return ""
	}
	return fmt.Sprintf("%.0f", in.Method.Bake.Minutes)
}

// whole compares what is of the dish and of the kitchen.
func (c *Comparison) whole() {
	a, b := c.Two[0], c.Two[1]
	x, y := a.Formula(), b.Formula()
	say := func(what, in, on string) {
		if reference.Key(in) != reference.Key(on) {
			c.differ("", what, in, on)
		}
	}
	say("the dish", x.Dish, y.Dish)
	if !x.Kitchen.EggGrams.IsPositive() || !y.Kitchen.EggGrams.IsPositive() || !same(x.Kitchen.EggGrams, y.Kitchen.EggGrams) {
		say("the eggs", eggsOf(&x.Kitchen), eggsOf(&y.Kitchen))
	}
	say("the protein of the flour", positive(x.Kitchen.FlourProtein), positive(y.Kitchen.FlourProtein))
	say("heat at the centre", centre(a), centre(b))
	for _, d := range departed(a, b) {
		c.differ("", "done otherwise", d, "")
	}
	for _, d := range departed(b, a) {
		c.differ("", "done otherwise", "", d)
	}
}

func eggsOf(k *formula.Kitchen) string {
	if k.EggGrams.IsPositive() {
		return k.EggGrams.Round(0).String() + " g each"
	}
	return k.EggSize
}

func positive(d decimal.Decimal) string {
	if !d.IsPositive() {
		return ""
	}
	return d.String()
}

func centre(b *Bake) string {
	if b.Record == nil || !b.Record.Centre.IsPositive() {
		return ""
	}
	return b.Record.Centre.Round(0).String() + " C"
}

// departed are the departures of one bake that the other does not have.
func departed(a, b *Bake) []string {
	if a.Record == nil {
		return nil
	}
	var out []string
	for _, d := range a.Record.Departures {
		if b.Record == nil || !slices.ContainsFunc(b.Record.Departures, func(o string) bool { return reference.Key(o) == reference.Key(d) }) {
			out = append(out, d)
		}
	}
	return out
}

// Count is how many things differed that may have made a difference: a larger
// batch of the same, and what was only measured of the result, do not count.
func (c *Comparison) Count() int {
	n := 0
	for _, d := range c.Differ {
		if d.What != "how much is made" && d.What != "heat at the centre" {
			n++
		}
	}
	return n
}
