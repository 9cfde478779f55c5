package worksheet

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

// Shopping is what to have in the house.
type Shopping struct {
	Wholes []Whole
	Goods  []Good
	// Paste is the paste made for a dish; what the dish takes of it is in the
	// sheet's fit.
	Paste []PasteMade
}

// Whole is something bought by the piece: eggs, lemons.
type Whole struct {
	Each  string // "egg", or the id of a fruit
	Name  string // as shown, in the singular
	Low   int    // how many, at the least and at the most; equal when it is sure
	High  int
	Wash  bool // one of them is for a wash or a glaze the sheet adds
	Spare []Spare
}

// Spare is what is left of things bought whole.
type Spare struct {
	What  string // white | yolk | juice | rind
	Count int    // of how many
	// Serves marks a spare white or yolk that does for the wash.
	Serves bool
}

// Good is something bought by weight.
type Good struct {
	Ingredient *reference.Ingredient
	Grams      reference.Span
	// State tells why some or all of it has no weight; Stated when all has.
	State formula.State
	Parts bool // only its proportion to the rest is known
}

// PasteMade is how much paste a part makes for a dish.
type PasteMade struct {
	Part string
	Made reference.Span
}

// shopping adds up what the parts need.
func (a *Assembler) shopping(w *weigh.Weighed, s *Sheet) Shopping {
	b := buying{a: a, w: w, counts: map[string]*count{}}
	for i := range w.Parts {
		for j := range w.Parts[i].Items {
			b.item(&w.Parts[i].Items[j])
		}
	}
	var out Shopping
	out.Wholes = b.wholes(addsWash(s.Phases))
	out.Goods = b.goods()
	for i := range s.Parts {
		if p := &s.Parts[i]; p.Of.Kind == formula.Pastry && p.Lay != "" && !p.Parts {
			out.Paste = append(out.Paste, PasteMade{Part: p.Of.Name, Made: p.Total})
		}
	}
	return out
}

// addsWash reports that the sheet has a wash or a glaze of egg that the receipt
// does not list.
func addsWash(phases []Phase) bool {
	for _, p := range phases {
		for _, s := range p.Steps {
			if s.Row != nil && s.Origin != Own && s.Row.ID == washStep {
				return true
			}
		}
	}
	return false
}

const washStep = "egg-wash-inside"

type buying struct {
	a      *Assembler
	w      *weigh.Weighed
	counts map[string]*count // by what is counted
	order  []string
	taken  []*weigh.Item // those bought whole
}

// count is how many of a thing each use of it takes.
type count struct {
	whole, white, yolk, juice, rind reference.Span
	fruit                           *reference.Fruit
	uses                            map[*reference.Span][]tally
}

// tally is one item's number, with the way of a line in doubt it belongs to.
type tally struct {
	n    reference.Span
	when *weigh.When
}

func (c *count) add(use *reference.Span, n reference.Span, it *weigh.Item) {
	if c.uses == nil {
		c.uses = map[*reference.Span][]tally{}
	}
	c.uses[use] = append(c.uses[use], tally{n, it.When})
}

// sum adds the tallies up. Of a line in doubt the fewest and the most of any way
// count.
func (c *count) sum(unknowns []weigh.Unknown) {
	for use, list := range c.uses {
		either := map[int][]reference.Span{}
		for _, t := range list {
			if t.when == nil {
				*use = use.Add(t.n)
				continue
			}
			ways := either[t.when.Unknown]
			if ways == nil {
				ways = make([]reference.Span, len(unknowns[t.when.Unknown].Ways))
				either[t.when.Unknown] = ways
			}
			ways[t.when.Way] = ways[t.when.Way].Add(t.n)
		}
		for u, ways := range either {
			s := ways[unknowns[u].Likeliest()]
			for _, w := range ways {
				s.Low, s.High = decimal.Min(s.Low, w.Low), decimal.Max(s.High, w.High)
			}
			*use = use.Add(s)
		}
	}
}

// item counts an item that comes of something bought whole.
func (b *buying) item(it *weigh.Item) {
	if it.State != formula.Stated || it.Amount.Parts {
		return
	}
	switch it.Ingredient.Kind {
	case "egg", "white", "yolk":
		if each := it.Amount.Each; each != "egg" && each != "" || it.Ingredient.ID == "egg_dried" {
			return
		}
		b.egg(it)
		return
	}
	b.fruit(it)
}

func (b *buying) of(each string) *count {
	c := b.counts[each]
	if c == nil {
		c = &count{}
		b.counts[each] = c
		b.order = append(b.order, each)
	}
	return c
}

// egg counts eggs: by number where they are numbered, by the weight of one
// where they are weighed.
func (b *buying) egg(it *weigh.Item) {
	n := it.Amount.Number
	if it.Amount.Each != "egg" || it.Amount.WeightOf != "" || it.Amount.Measure != "" {
		one, ok := b.oneOf("egg", it)
		if !ok {
			return
		}
		n = divide(it.Grams, one)
	}
	c := b.of("egg")
	switch it.Ingredient.Kind {
	case "white":
		c.add(&c.white, n, it)
	case "yolk":
		c.add(&c.yolk, n, it)
	default:
		c.add(&c.whole, n, it)
	}
	b.taken = append(b.taken, it)
}

// oneOf is what one egg's part comes to in this kitchen, grams.
func (b *buying) oneOf(each string, it *weigh.Item) (reference.Span, bool) {
	k := b.w.Formula.Kitchen
	egg := reference.Exact(k.EggGrams)
	if !k.EggGrams.IsPositive() {
		row := b.sizeRow(each, "egg_whole", k.EggSize)
		if row == nil {
			return reference.Span{}, false
		}
		egg = row.Span
	}
	share := b.sizeRow("yolk-share", "egg_yolk", "")
	switch {
	case it.Ingredient.Kind == "egg":
		return egg, true
	case share == nil:
		return reference.Span{}, false
	case it.Ingredient.Kind == "yolk":
		return egg.Mul(share.Likely), true
	}
	return egg.Mul(decimal.NewFromInt(1).Sub(share.Likely)), true
}

// sizeRow is the size that holds in the kitchen that buys.
func (b *buying) sizeRow(each, of, size string) *reference.Size {
	year, place := b.w.Formula.Kitchen.Year, b.w.Formula.Kitchen.Place
	if year == 0 {
		year = weigh.Today
	}
	if place == "" {
		place = b.w.Formula.Place
	}
	var plain *reference.Size
	for i := range b.a.tables.Sizes {
		r := &b.a.tables.Sizes[i]
		if r.Each != each || r.Of != of || !r.Holds(year, place) {
			continue
		}
		if r.Size == size {
			return r
		}
		if r.Size == "" && plain == nil {
			plain = r
		}
	}
	return plain
}

// fruit counts fruits: juice and rind of one lemon are one lemon.
func (b *buying) fruit(it *weigh.Item) {
	for i := range b.a.tables.Fruits {
		f := &b.a.tables.Fruits[i]
		use := ""
		switch {
		case b.gives(f.Juice, it):
			use = "juice"
		case b.gives(f.Rind, it):
			use = "rind"
		case b.gives(f.Whole, it):
			use = "whole"
		default:
			continue
		}
		if it.Amount.Each != "" && it.Amount.Each != f.ID && it.Amount.Each != "whole-"+f.ID {
			continue
		}
		n := it.Amount.Number
		if it.Amount.Each == "" {
			if use != "juice" || it.Amount.Measure == "" {
				continue // rind by weight: a pinch of it says nothing of how many
			}
			row := b.sizeRow(f.ID, it.Ingredient.ID, "")
			if row == nil || row.Unit != "ml" || !it.Ingredient.Density.Liquid.IsPositive() {
				continue
			}
			n = divide(it.Grams, row.Span.Mul(it.Ingredient.Density.Liquid))
		}
		c := b.of(f.ID)
		c.fruit = f
		switch use {
		case "juice":
			c.add(&c.juice, n, it)
		case "rind":
			c.add(&c.rind, n, it)
		default:
			c.add(&c.whole, n, it)
		}
		b.taken = append(b.taken, it)
		return
	}
}

// gives reports whether one of the readings of a part of a fruit is the item's
// ingredient.
func (b *buying) gives(list []reference.NameReading, it *weigh.Item) bool {
	return slices.ContainsFunc(list, func(r reference.NameReading) bool { return r.Is == it.Ingredient.ID })
}

// divide is how many of one come to all: fewest when each is largest.
func divide(all, one reference.Span) reference.Span {
	q := func(a, b decimal.Decimal) decimal.Decimal {
		if !b.IsPositive() {
			return decimal.Zero
		}
		return a.DivRound(b, 4)
	}
	return reference.Span{Low: q(all.Low, one.High), Likely: q(all.Likely, one.Likely), High: q(all.High, one.Low)}
}

func up(d decimal.Decimal) int { return int(d.Ceil().IntPart()) }

// wholes are the things bought by the piece, in the order they are met.
func (b *buying) wholes(wash bool) []Whole {
	var out []Whole
	for _, each := range b.order {
		c := b.counts[each]
		c.sum(b.w.Unknowns)
		if c.fruit != nil {
			use := c.whole
			most := func(get func(reference.Span) decimal.Decimal) int {
				return up(get(use).Add(decimal.Max(get(c.juice), get(c.rind))))
			}
			w := Whole{Each: each, Name: c.fruit.Names[0], Low: most(func(s reference.Span) decimal.Decimal { return s.Low }), High: most(func(s reference.Span) decimal.Decimal { return s.High })}
			if over := up(c.juice.Low) - up(c.rind.High); over > 0 {
				w.Spare = append(w.Spare, Spare{What: "rind", Count: over})
			}
			if over := up(c.rind.Low) - up(c.juice.High); over > 0 {
				w.Spare = append(w.Spare, Spare{What: "juice", Count: over})
			}
			out = append(out, w)
			continue
		}
		out = append(out, c.eggs(wash))
		wash = false
	}
	if wash {
		c := &count{}
		out = append(out, c.eggs(true))
	}
	return out
}

// eggs is how many eggs are bought and what is left of them. A wash takes a
// spare white or yolk before it takes an egg of its own.
func (c *count) eggs(wash bool) Whole {
	w := Whole{
		Each: "egg", Name: "egg",
		Low:  up(c.whole.Low.Add(decimal.Max(c.white.Low, c.yolk.Low))),
		High: up(c.whole.High.Add(decimal.Max(c.white.High, c.yolk.High))),
	}
	yolks, whites := up(c.yolk.High)-up(c.white.High), up(c.white.High)-up(c.yolk.High)
	if yolks > 0 {
		w.Spare = append(w.Spare, Spare{What: "white", Count: yolks})
	}
	if whites > 0 {
		w.Spare = append(w.Spare, Spare{What: "yolk", Count: whites})
	}
	switch {
	case !wash:
	case len(w.Spare) > 0:
		w.Spare[0].Serves = true
	default:
		w.Low, w.High, w.Wash = w.Low+1, w.High+1, true
	}
	return w
}

// goods are the things bought by weight, in the order they are met, each added
// up over all parts. Of a line in doubt between two amounts the range tells.
func (b *buying) goods() []Good {
	var out []Good
	for i := range b.w.Parts {
		p := &b.w.Parts[i]
		for j := range p.Items {
			it := &p.Items[j]
			if slices.Contains(b.taken, it) || waterOf(it) && it.State != formula.Stated {
				continue
			}
			at := slices.IndexFunc(out, func(g Good) bool { return g.Ingredient == it.Ingredient })
			if at < 0 {
				at = len(out)
				out = append(out, Good{Ingredient: it.Ingredient, Grams: b.grams(it.Ingredient)})
			}
			if it.State != formula.Stated {
				out[at].State = it.State
			}
			out[at].Parts = out[at].Parts || it.Amount.Parts
		}
	}
	return slices.DeleteFunc(out, func(g Good) bool { return slices.Contains(g.Ingredient.Roles, "water") })
}

func waterOf(it *weigh.Item) bool { return slices.Contains(it.Ingredient.Roles, "water") }

// grams is all there is of an ingredient that is bought by weight.
func (b *buying) grams(of *reference.Ingredient) reference.Span {
	var sum reference.Span
	for i := range b.w.Parts {
		sum = sum.Add(b.w.Parts[i].Sum(b.w.Unknowns, func(it *weigh.Item) decimal.Decimal {
			if it.Ingredient == of && !slices.Contains(b.taken, it) {
				return decimal.NewFromInt(1)
			}
			return decimal.Zero
		}))
	}
	return sum
}
