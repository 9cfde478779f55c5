package bake

import (
	"fmt"
	"math"
	"slices"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/setting"
	"assize/reference"
)

// Rules are the parts of the judge that can be switched, so that their effect
// can be measured. The zero value has them all off.
type Rules struct {
	EggAndWater   bool // egg and plain water curdles
	TwoLayers     bool // whites folded into a thin mix part into sponge over sauce
	OilPaste      bool // oil counts 1.3 against leanness; pressed oil paste is meant to crumble
	HeavyBatter   bool // much flour and no air is gummy
	GreasyFilling bool // much butterfat and no starch is oily (a word only)
	UnsaidHeat    bool // an oven whose heat is not said is drawn, not taken as moderate
	Overshoot     bool // the edge of a deep dish runs further ahead of its centre: less room before it curdles (moves no share)
}

// Standard are the rules in force.
var Standard = Rules{EggAndWater: true, TwoLayers: true, OilPaste: true, HeavyBatter: true, GreasyFilling: true, UnsaidHeat: true, Overshoot: true}

// Kernel is one part made ready to be evaluated for many readings.
type Kernel struct {
	Kind     formula.Kind
	Textures []string // ids, in the order of Outcome.Shares
	Slots    []Slot
	Measures []Measure // those it computes

	rows    []row
	factors []factor
	links   []link
	heat    *link
	filling *filling
	paste   *pasteRules
	rules   Rules
}

// row is one item: what a gram of it brings and how its grams come about.
type row struct {
	per      ratios.Mix
	base     float64
	from, to int // its factors
	whenSlot int // -1: always used
	whenWay  int
	tags     tag
}

// tag marks items the mechanisms ask for by name.
type tag uint8

const (
	whipped     tag = 1 << iota // white beaten stiff, when whites are folded
	bakingPower                 // baking powder
	soda                        // soda, saleratus, pearlash
	selfRaising
)

// factor multiplies grams by a slot's value, or by what is left of 1.
type factor struct {
	slot  int
	rest  bool
	byWay []float64 // what each way of the slot comes to, in place of its value
}

type link struct {
	texture    int
	index      Measure
	mid, width float64
}

func (l *link) p(x float64) float64 { return 1 / (1 + math.Exp(-(x-l.mid)/l.width)) }

// indexNamed are the indices the links table may name.
var indexNamed = map[string]Measure{
	"thin": ThinIndex, "cakey": CakeyIndex, "curdle": CurdleIndex, "rubbery": RubberyIndex, "starch": StarchIndex,
	"heat": HeatIndex, "tough": ToughIndex, "greasy": GreasyIndex, "crumbly": CrumblyIndex, "flaky": FlakyIndex,
}

// rests is the texture that takes what the links have left, by kind of part.
var rests = map[formula.Kind]string{formula.Filling: "sets", formula.Pastry: "tender"}

// Judged reports whether parts of the kind are shared out among textures.
func Judged(kind formula.Kind) bool { _, ok := rests[kind]; return ok }

// Input is what a kernel is compiled from.
type Input struct {
	Weighed *weigh.Weighed
	Part    int
	Method  formula.Method
	Tables  *reference.Tables
	Rules   Rules
	// Class, where it is known, gives the odds of what the receipt leaves unsaid.
	Class *reference.Class
	// Silent marks a part of which the receipt says nothing of how it is mixed,
	// whatever Method has been told since: what is left untold stays drawn.
	Silent bool
}

// Compile makes the kernel of one part. Parts of a kind without mechanisms get
// a kernel that computes volume, density and the like only.
func Compile(in Input) (*Kernel, error) {
	p := &in.Weighed.Parts[in.Part]
	k := &Kernel{Kind: p.Of.Kind, rules: in.Rules}
	c := &compiler{Input: in, k: k, part: p, ions: map[string]float64{}}
	for i := range in.Weighed.Unknowns {
		k.Slots = append(k.Slots, slotOf(&in.Weighed.Unknowns[i]))
	}
	if err := c.rows(); err != nil {
		return nil, err
	}
	switch k.Kind {
	case formula.Pastry:
		k.Measures = ofPaste
		k.paste = c.paste()
	default:
		k.Measures = ofFilling
		k.filling = c.filling()
	}
	if rest, ok := rests[k.Kind]; ok {
		c.shares(rest)
	}
	return k, nil
}

type compiler struct {
	Input
	k    *Kernel
	part *weigh.Part
	ions map[string]float64 // strong ions per gram, by ingredient
}

// slot adds a slot, or finds the one with its ID, and returns its place.
func (c *compiler) slot(s Slot) int {
	if i := slices.IndexFunc(c.k.Slots, func(o Slot) bool { return o.ID == s.ID }); i >= 0 {
		return i
	}
	c.k.Slots = append(c.k.Slots, s)
	return len(c.k.Slots) - 1
}

// shares sets up the links and the textures they give.
func (c *compiler) shares(rest string) {
	var mine []reference.Link
	for _, l := range c.Tables.Links {
		if l.Kind == string(c.k.Kind) {
			mine = append(mine, l)
		}
	}
	slices.SortStableFunc(mine, func(a, b reference.Link) int { return a.Order - b.Order })
	for _, l := range mine {
		lk := link{index: indexNamed[l.Index], mid: float64(l.Mid), width: float64(l.Width)}
		if l.Order == 0 {
			c.k.heat = &lk
			continue
		}
		lk.texture = len(c.k.Textures)
		c.k.Textures = append(c.k.Textures, l.ID)
		c.k.links = append(c.k.links, lk)
	}
	c.k.Textures = append(c.k.Textures, rest)
}

// rows compiles the items; a whole egg becomes white and yolk, in the share
// that is itself a slot.
func (c *compiler) rows() error {
	for i := range c.part.Items {
		it := &c.part.Items[i]
		if it.State != formula.Stated || c.onTop(it, false) {
			continue
		}
		if it.Ingredient.Kind != "egg" {
			c.row(it, it.Ingredient, -1)
			continue
		}
		white, okW := c.Tables.Ingredient("egg_white")
		yolk, okY := c.Tables.Ingredient("egg_yolk")
		if !okW || !okY {
			return fmt.Errorf("the ingredients table has no egg_white or egg_yolk to part %s into", it.Ingredient.ID)
		}
		share := c.yolkShare()
		c.row(it, white, share)
		c.row(it, yolk, share)
	}
	return nil
}

// yolkShare is the slot of how much of an egg out of its shell is yolk: .36
// before 1920, .33 since, after the sizes table.
func (c *compiler) yolkShare() int {
	f := c.Weighed.Formula
	year, place := f.Kitchen.Year, f.Kitchen.Place
	if year == 0 {
		year = f.Year
	}
	if place == "" {
		place = f.Place
	}
	for _, s := range c.Tables.Sizes {
		if s.Each == "yolk-share" && s.Holds(year, place) {
			return c.slot(peaked("size yolk-share egg_yolk", "how much of the egg is yolk",
				s.Low.InexactFloat64(), s.Likely.InexactFloat64(), s.High.InexactFloat64()))
		}
	}
	return c.slot(peaked("size yolk-share egg_yolk", "how much of the egg is yolk", .29, .33, .39))
}

// row adds one row. With a yolk-share slot the item is a whole egg and ing the
// side of it that the row stands for.
func (c *compiler) row(it *weigh.Item, ing *reference.Ingredient, share int) {
	as := *it
	as.Ingredient = ing
	r := row{per: ratios.Row(&as), base: it.Base.InexactFloat64(), from: len(c.k.factors), whenSlot: -1}
	if share >= 0 {
		c.k.factors = append(c.k.factors, factor{slot: share, rest: ing.Kind == "white"})
	}
	for _, f := range it.Factors {
		one := factor{slot: f.Unknown, rest: f.Rest}
		for _, w := range f.ByWay {
			one.byWay = append(one.byWay, w.Likely.InexactFloat64())
		}
		c.k.factors = append(c.k.factors, one)
	}
	r.to = len(c.k.factors)
	if it.When != nil {
		r.whenSlot, r.whenWay = it.When.Unknown, it.When.Way
	}
	r.per[ratios.StrongIons] = c.strongIons(ing, &r.per)
	switch ing.ID {
	case "baking_powder":
		r.tags |= bakingPower
	case "baking_soda", "saleratus", "pearlash":
		r.tags |= soda
	case "flour_self_raising":
		r.tags |= selfRaising
	}
	if p := c.Weighed.Formula.Kitchen.FlourProtein; p.IsPositive() && ing.Kind == "flour" && ing.Per100.Protein.IsPositive() {
		r.per[ratios.Gluten] *= p.Div(ing.Per100.Protein).InexactFloat64()
	}
	if ing.Kind == "white" && c.whipped(it, share >= 0) {
		r.tags |= whipped
	}
	c.k.rows = append(c.k.rows, r)
}

func (c *compiler) strongIons(ing *reference.Ingredient, per *ratios.Mix) float64 {
	if !ing.PH.IsPositive() {
		return 0
	}
	if v, ok := c.ions[ing.ID]; ok {
		return v
	}
	v := setting.StrongIons(per, ing.PH.InexactFloat64())
	c.ions[ing.ID] = v
	return v
}

// Run evaluates one reading. values must be as long as Slots; out is
// overwritten.
func (k *Kernel) Run(values []Value, out *Outcome) {
	var m ratios.Mix
	var t tagged
	k.fill(values, &m, &t)
	*out = Outcome{}
	if k.paste != nil {
		k.paste.run(&m, &t, values, out)
	} else {
		k.filling.run(&m, &t, values, out)
	}
	k.share(out)
}

// fill weighs out one reading.
func (k *Kernel) fill(values []Value, m *ratios.Mix, t *tagged) {
	for i := range k.rows {
		r := &k.rows[i]
		if r.whenSlot >= 0 && values[r.whenSlot].Way != r.whenWay {
			continue
		}
		g := r.base
		for _, f := range k.factors[r.from:r.to] {
			switch v := values[f.slot]; {
			case f.byWay != nil:
				g *= f.byWay[v.Way]
			case f.rest:
				g *= 1 - v.At
			default:
				g *= v.At
			}
		}
		m.Add(g, &r.per)
		if r.tags != 0 {
			t.add(r.tags, g)
		}
	}
}

// LikelyMix is the mix of the likely reading, as weighed out.
func (k *Kernel) LikelyMix() ratios.Mix {
	values := make([]Value, len(k.Slots))
	for i := range k.Slots {
		values[i] = k.Slots[i].Likely()
	}
	var m ratios.Mix
	var t tagged
	k.fill(values, &m, &t)
	return m
}

// tagged are the masses of tagged items, grams.
type tagged struct {
	whippedWhite, powder, soda, selfRaising float64
}

func (t *tagged) add(tags tag, g float64) {
	if tags&whipped != 0 {
		t.whippedWhite += g
	}
	if tags&bakingPower != 0 {
		t.powder += g
	}
	if tags&soda != 0 {
		t.soda += g
	}
	if tags&selfRaising != 0 {
		t.selfRaising += g
	}
}

// share turns the indices into shares: each link takes its part of what the
// ones before it have left.
func (k *Kernel) share(out *Outcome) {
	if len(k.Textures) == 0 {
		return
	}
	left := 1.0
	for i := range k.links {
		l := &k.links[i]
		p := l.p(out.Measures[l.index])
		out.Shares[l.texture] = left * p
		left *= 1 - p
	}
	out.Shares[len(k.Textures)-1] = left
	if k.heat != nil {
		out.Heat = k.heat.p(out.Measures[k.heat.index])
	}
	if k.filling != nil {
		k.filling.adjust(k, out)
	}
}

// Links gives the index each link reads, in their order; the texture of link i
// is Textures[i]. Calibration needs them.
func (k *Kernel) Links() []Measure {
	out := make([]Measure, len(k.links))
	for i, l := range k.links {
		out[i] = l.index
	}
	return out
}
