package bake

import (
	"slices"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/paste"
	"assize/ratios/setting"
)

type itemOf = weigh.Item

// Method flags the paste judge reads.
const (
	rubbed         = formula.Flag("rubbed")
	cutIn          = formula.Flag("cut_in")
	choppedIn      = formula.Flag("chopped_in")
	processor      = formula.Flag("processor")
	hotWater       = formula.Flag("hot_water")
	laminated      = formula.Flag("laminated")
	foldedTurns    = formula.Flag("folded_turns")
	flakes         = formula.Flag("flakes")
	kneadedLightly = formula.Flag("kneaded_lightly")
	kneaded        = formula.Flag("kneaded")
	kneadedHard    = formula.Flag("kneaded_hard")
	rolled         = formula.Flag("rolled")
	pressed        = formula.Flag("pressed")
	lightHand      = formula.Flag("light_hand")
	overmixed      = formula.Flag("overmixed")
	rolledOften    = formula.Flag("rolled_too_often")
	hardFat        = formula.Flag("hard_fat_too_hard")
	waterTooLittle = formula.Flag("water_too_little")
	waterMore      = formula.Flag("water_more")
	waterNotAll    = formula.Flag("water_not_all")
	waterLittle    = formula.Flag("little_water")
	stiffPaste     = formula.Flag("stiff_paste")
)

// pasteRules is what a method fixes of a paste, compiled once.
type pasteRules struct {
	kind        paste.Type
	coverage    int // slot
	water       int // slot of the water when none is named, -1 when it is
	waterFactor int // slot of "not all used", "a little more", -1 when not said
	protein     int // slot: factor on the flour's protein
	work        int // slot
	overwork    int // slot, -1 when not overworked
	usualMost   float64
	meltedFat   bool
	hard        bool // the butter was too hard to coat
	oil         bool
	oilRule     bool
}

// paste compiles the method of a paste.
func (c *compiler) paste() *pasteRules {
	m := &c.Method
	p := &pasteRules{water: -1, waterFactor: -1, overwork: -1, oilRule: c.Rules.OilPaste}
	flour, fat, raw, oil, suet, sugar := 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
	for _, it := range c.part.Items {
		g := it.Grams.Likely.InexactFloat64()
		row := ratios.Row(&it)
		flour += g * (row[ratios.Flour] + row[ratios.Meal] + row[ratios.Nut])
		f := g * (row[ratios.Fat] - row[ratios.FlourFat])
		if it.Ingredient.Kind == "cheese" {
			f /= 2
		}
		fat += f
		raw += g * row[ratios.WrittenFat]
		if row[ratios.Oil] > 0 {
			oil += f
		}
		if it.Ingredient.ID == "suet" || it.Ingredient.Base == "suet" {
			suet += f
		}
		sugar += g * row[ratios.Sugar]
	}
	if flour <= 0 {
		flour = 1
	}
	turns := m.Has(laminated, foldedTurns, flakes)
	p.kind = paste.Of(fat/flour, oil/max(fat, 1e-9), suet/max(fat, 1e-9), sugar/flour, m.Has(hotWater), turns)
	p.oil = p.kind == paste.OilPaste
	p.meltedFat = m.Has(meltedFat) && !turns && p.kind != paste.HotWater
	p.hard = m.Has(hardFat)
	low, high := coverage(p.kind, m, raw/flour >= .70)
	p.coverage = c.slot(even("coverage "+c.part.Of.Name, "how finely the fat was worked into the flour", low, high))
	c.pasteWater(p, raw/flour)
	p.protein = c.slot(even("flour strength", "how strong the flour was", .88, 1.12))
	if pr := c.Weighed.Formula.Kitchen.FlourProtein; pr.IsPositive() {
		p.protein = c.slot(even("flour strength", "how strong the flour was", .97, 1.03))
	}
	c.pasteWork(p)
	return p
}

// coverage is the range of how far the fat coats the flour, by type and method.
func coverage(t paste.Type, m *formula.Method, veryRich bool) (low, high float64) {
	switch t {
	case paste.NoFat:
		return 1, 1
	case paste.HotWater:
		return .65, .85
	case paste.OilPaste:
		return 1.2, 1.4
	case paste.Suet:
		return .4, .6
	case paste.Flaky:
		switch {
		case m.Has(rubbed, processor):
			return .50, .75
		case m.Has(cutIn, choppedIn):
			return .35, .60
		case veryRich:
			return .12, .28
		}
		return .35, .60
	}
	switch {
	case m.Has(cutIn, choppedIn):
		return .55, .85
	case m.Has(processor):
		return .70, .95
	}
	return .9, 1
}

// pasteWater sets up the water: as named, with what the words say of it, or
// drawn about what the type usually takes when none is named.
func (c *compiler) pasteWater(p *pasteRules, rawFat float64) {
	m := &c.Method
	low, likely, high := p.kind.Usual(rawFat)
	p.usualMost = high
	named := 0.0
	for i := range c.part.Items {
		it := &c.part.Items[i]
		if it.State == formula.Stated && slices.ContainsFunc(it.Ingredient.Roles, func(r string) bool {
			return slices.Contains([]string{"water", "milk", "cream", "liquid", "egg", "white", "yolk"}, r)
		}) {
			named += it.Grams.Likely.InexactFloat64()
		}
	}
	unsaid := slices.ContainsFunc(c.part.Items, func(it itemOf) bool {
		return it.State != formula.Stated && slices.ContainsFunc(it.Ingredient.Roles, func(r string) bool {
			return r == "water" || r == "milk" || r == "liquid"
		})
	})
	id, words := "water "+c.part.Of.Name, "how much water the paste was given (the receipt does not say)"
	switch {
	case !unsaid && named == 0 && p.kind == paste.Sweet:
		// A sweet paste may be bound by its butter alone; with no liquid on the
		// page it is taken to have none.
	case unsaid || named == 0:
		switch {
		case m.Has(waterTooLittle, waterLittle):
			low, likely, high = low*.4, low*.575, low*.75
		case m.Has(stiffPaste):
			high = likely
			likely = (low + high) / 2
		case m.Has("water_too_much", waterMore):
			low, likely, high = high, high*1.15, high*1.3
		}
		p.water = c.slot(peaked(id, words, low, likely, high))
	case m.Has(waterNotAll):
		p.waterFactor = c.slot(even(id, "how much of the water was used", .6, .9))
	case m.Has(waterMore):
		p.waterFactor = c.slot(even(id, "how much more water was used", 1.02, 1.25))
	}
}

// pasteWork sets up how hard the paste is worked.
func (c *compiler) pasteWork(p *pasteRules) {
	m := &c.Method
	low, high := .95, 1.15
	switch {
	case m.Has(kneadedHard):
		low, high = 1.4, 1.8
	case m.Has(kneadedLightly):
		low, high = 1.1, 1.4
	case m.Has(kneaded):
		low, high = 1.4, 1.8
	case p.kind == paste.Flaky:
		low, high = 1.0, 1.4
	case m.Has(pressed, lightHand):
		low, high = .8, 1.0
	case m.Has(rolled):
		low, high = 1.0, 1.25
	}
	if p.kind == paste.HotWater { // hot water hinders gluten: half the excess counts
		low, high = 1+(low-1)/2, 1+(high-1)/2
	}
	p.work = c.slot(even("working "+c.part.Of.Name, "how much the paste was worked", low, high))
	if m.Has(overmixed, rolledOften) {
		p.overwork = c.slot(even("overworking "+c.part.Of.Name, "how far it was overworked", 1.5, 2))
	}
}

// run evaluates a paste.
func (p *pasteRules) run(m *ratios.Mix, t *tagged, values []Value, out *Outcome) {
	o := &out.Measures
	flour := m.FlourAndMeal() + m[ratios.Nut]
	if flour <= 0 {
		return
	}
	s := paste.State{
		Type: p.kind, PureFat: (m[ratios.Fat] - m[ratios.FlourFat] - m[ratios.CheeseFat]/2) / flour, Sugar: m[ratios.Sugar] / flour,
		Coverage: values[p.coverage].At, Water: m[ratios.PasteWater] / flour, FatWater: m[ratios.FatWater] / flour,
		Work: values[p.work].At, UsualMost: p.usualMost,
		Acid: m[ratios.Acid] >= .006*flour, Leavened: t.powder >= .01*flour,
	}
	if p.meltedFat {
		s.Coverage = max(1, s.Coverage)
	}
	if p.hard {
		s.Coverage *= .6
	}
	if p.water >= 0 {
		s.Water += values[p.water].At
		m[ratios.Water] += values[p.water].At * flour
		m[ratios.Total] += values[p.water].At * flour
	}
	if p.waterFactor >= 0 {
		s.Water *= values[p.waterFactor].At
	}
	if p.overwork >= 0 {
		s.Work *= values[p.overwork].At
	}
	s.Protein = 100 * m[ratios.Gluten] / flour * values[p.protein].At
	s.Lean = 1
	if p.oil && p.oilRule {
		s.Lean = 1.3
	}
	o[Toughness], o[ToughIndex], o[GreasyIndex] = s.Toughness(), s.Tough(), s.Greasy()
	o[CrumblyIndex], o[FlakyIndex] = s.Crumbly(), s.Flakes()
	o[PureFat], o[NetWater], o[WorkedWater], o[Coverage] = s.PureFat, s.NetWater(), s.Water, s.Coverage
	o[Volume], o[Density] = setting.Volume(m), setting.Density(m, 0)
	o[WaterActivity] = setting.WaterActivity(m)
}
