package bake

import (
	"cmp"
	"maps"
	"slices"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/crumb"
	"assize/ratios/setting"
)

// filling is what a method fixes of a filling, compiled once.
type filling struct {
	stove        bool // stirred on the fire and not baked
	heated       bool // stirred on the fire, then baked
	bath         bool
	minutes      float64
	baked        bool
	open         float64 // minutes stirred in an open pan; 0 when it is not
	boils        bool    // brought to the boil there
	starchBoiled bool
	stands       bool
	rennet       bool
	creamed      bool
	drains       bool // a sweet foam with no dough about it loses air before it sets
	icing        bool // creamed and eaten as it is: no oven that its air must outlast
	period       bool // creamed by hand, before machines
	whitesFolded bool
	whitesAlone  bool
	meringue     bool // whites and sugar beaten till stiff, cold or over hot water
	eggAndWater  bool
	unsaidSugar  int // slot: no sugar named in a milky mix, -1 when it is
	sugarRow     ratios.Mix
	careful      int   // slots of the spread of heat, 0 to 1 up the range
	heatWay      int   // slot: how hot the oven is, -1 when it is said
	heats        []hob // by way of heatWay, or one
	foldSlot     int   // slot: whether separated whites are whipped, -1 when it is said
	foldAir      int
	foldKept     int
	aloneAir     int
	aloneKept    int
	creamAir     int
	creamWay     int // slot: whether the butter is creamed, -1 when it is said
	cheeseAir    int
	eggAir       int         // slot whose value is a share up the range of its way
	eggRanges    []eggBeaten // by way of eggWay, or one
	eggWay       int         // slot: how the eggs are beaten, -1 when it is said
}

// hob is a heat as it bears on a filling.
type hob struct {
	spread setting.Spread
	hotDry float64
}

// eggBeaten is one row of the table of beaten eggs: ml of air to a gram.
type eggBeaten = crumb.Range

// Method flags the filling judge reads.
const (
	whitesFolded = formula.Flag("whites_folded")
	whitesMaybe  = formula.Flag("whites_maybe_folded")
	whitesBeaten = formula.Flag("whites_beaten")
	whitesOnTop  = formula.Flag("whites_on_top")
	eggsLight    = formula.Flag("eggs_very_light")
	eggsBeatenF  = formula.Flag("eggs_beaten")
	eggsSlightly = formula.Flag("eggs_slightly")
	milkOnEgg    = formula.Flag("milk_on_egg")
	creamedF     = formula.Flag("creamed")
	meltedFat    = formula.Flag("melted_fat")
	onHeat       = formula.Flag("on_heat")
	starchBoiled = formula.Flag("starch_boiled")
	bathF        = formula.Flag("bath")
	bakedF       = formula.Flag("baked")
	notBaked     = formula.Flag("not_baked")
	slowF        = formula.Flag("slow")
	hotF         = formula.Flag("hot")
	thenModerate = formula.Flag("then_moderate")
	microwaveF   = formula.Flag("microwave")
	standsF      = formula.Flag("stands_in_crust")
	bakedCase    = formula.Flag("baked_case")
	mixedF       = formula.Flag("mixed")
	allInOne     = formula.Flag("all_in_one")
)

// Fire tells how the heat reaches a part, from its method and bake.
type Fire struct {
	OnHeat, Baked, Stove, Bath, Slow, Hot, Microwave bool
}

// Cold reports that nothing heats the part.
func (f Fire) Cold() bool { return !f.OnHeat && !f.Baked && !f.Microwave }

// slowestC and hottestC are where an oven counts as slow and as hot, C.
const slowestC, hottestC = 150.5, 214.5

// FireOf reads the fire of a method. "Hot, then moderate" is moderate; a baked
// shell alone does not bake the filling.
func FireOf(m *formula.Method) Fire {
	f := Fire{OnHeat: m.Has(onHeat), Bath: m.Has(bathF), Microwave: m.Has(microwaveF)}
	f.OnHeat = f.OnHeat && !m.Has("warmed_only")
	f.Baked = m.Has(bakedF) || m.Bake.Said() || m.Has(slowF, hotF, "moderate") || !f.OnHeat
	if m.Has(notBaked) && !m.Bake.Said() {
		f.Baked = false
	}
	if m.Has(bakedCase) && f.OnHeat && !m.Bake.Said() && !m.Has(slowF, hotF, "moderate") {
		f.Baked = false
	}
	f.Stove = f.OnHeat && !f.Baked
	first, last := m.Bake.FirstC(), m.Bake.LastC()
	falls := last > 0 && last < first-10
	f.Slow = m.Has(slowF) || first > 0 && first <= slowestC
	f.Hot = (m.Has(hotF) || first >= hottestC) && !m.Has(thenModerate) && !falls
	return f
}

// fire is the kind of fire that decides the spread of heat.
func (f Fire) fire() setting.Fire {
	switch {
	case f.Microwave:
		return setting.Microwave
	case f.Stove:
		return setting.Stirred
	case f.Bath:
		return setting.Bath
	case f.Slow:
		return setting.Slow
	case f.Hot:
		return setting.Hot
	}
	return setting.Moderate
}

// handCreaming is the first year that kitchens are taken to cream by machine
// and with caster sugar (judgement).
const handCreaming = 1930

func (c *compiler) filling() *filling {
	m := &c.Method
	fire := FireOf(m)
	f := &filling{
		stove: fire.Stove, heated: fire.OnHeat && fire.Baked, bath: fire.Bath, baked: fire.Baked,
		minutes:      m.Bake.Minutes,
		starchBoiled: m.Has(starchBoiled),
		stands:       m.Has(standsF) || c.inCrust(),
		rennet:       c.has("rennet"),
		eggAndWater:  c.Rules.EggAndWater,
		drains:       c.part.Of.Kind == formula.Filling,
		whitesFolded: m.Has(whitesFolded) && (!m.Has(whitesOnTop) || c.whitesInMix()),
		heats:        []hob{{setting.SpreadOf(fire.fire()), crumb.DryOven}},
		unsaidSugar:  -1, foldSlot: -1, creamWay: -1, eggWay: -1, heatWay: -1,
	}
	switch {
	case fire.Stove:
		f.heats[0].hotDry = crumb.NoOven
	case fire.Bath || fire.Slow:
		f.heats[0].hotDry = crumb.SoftHeat
	}
	if fire.Stove && !m.Has("boiled_pudding", "steamed") {
		f.open = cmp.Or(m.FireMinutes, setting.UnsaidFire)
		if f.boils = m.Boils; f.boils { // the way up to the boil is seldom in the minutes
			f.open = max(f.open, setting.UnsaidFire)
		}
	}
	if year := c.kitchenYear(); year < handCreaming {
		f.period = true
	}
	if c.Rules.UnsaidHeat && fire.unsaid(m) {
		c.drawHeat(f)
	}
	f.careful = c.slot(even("spread", "how evenly the heat is kept", 0, 1))
	c.air(f, fire)
	c.sugarNotNamed(f)
	return f
}

// unsaid reports that a dish is baked and nothing tells how hot.
func (f Fire) unsaid(m *formula.Method) bool {
	return f.Baked && !f.Bath && !f.Slow && !f.Hot && !f.Microwave && m.Bake.FirstC() == 0 && !m.Has("moderate", thenModerate, hotF)
}

// drawHeat draws the heat of an oven the receipt does not tell, with the odds
// its class states; else a moderate oven three times in six, a slow one twice
// and a hot one once (common practice: fillings set with egg are baked gently).
func (c *compiler) drawHeat(f *filling) {
	f.heats = []hob{
		{setting.SpreadOf(setting.Moderate), crumb.DryOven},
		{setting.SpreadOf(setting.Slow), crumb.SoftHeat},
		{setting.SpreadOf(setting.Hot), crumb.DryOven},
	}
	odds := c.odds([]formula.Flag{"moderate", slowF, hotF}, 3, 2, 1)
	f.heatWay = c.slot(Slot{ID: "heat unsaid", Words: "how hot the oven is (the receipt does not say)", Ways: []Way{
		{Words: "moderate", Odds: odds[0]}, {Words: "slow", Odds: odds[1]}, {Words: "hot", Odds: odds[2]},
	}})
}

func (c *compiler) kitchenYear() int {
	if y := c.Weighed.Formula.Kitchen.Year; y != 0 {
		return y
	}
	return c.Weighed.Formula.Year
}

func (c *compiler) has(id string) bool {
	return slices.ContainsFunc(c.part.Items, func(it itemOf) bool { return it.Ingredient.ID == id })
}

// inCrust reports whether another part is a paste this part is put in.
func (c *compiler) inCrust() bool {
	return slices.ContainsFunc(c.Weighed.Formula.Parts, func(p formula.Part) bool { return p.Kind == formula.Pastry })
}

// air sets up the slots of everything that is beaten in.
func (c *compiler) air(f *filling, fire Fire) {
	m := &c.Method
	white, yolk, whole := c.eggs()
	f.meringue = c.meringue()
	f.whitesFolded = f.whitesFolded || f.meringue
	if !f.whitesFolded && m.Has(whitesMaybe) {
		f.whitesFolded = true
		f.foldSlot = c.slot(Slot{ID: "whites apart", Words: "whether the separated whites are whipped stiff", Ways: []Way{
			{Words: "whipped", Odds: .8, Low: 1, Likely: 1, High: 1}, {Words: "not whipped", Odds: .2},
		}})
	}
	if f.whitesFolded {
		air, kept := crumb.WhitesFolded, crumb.FoldedKept
		if f.meringue {
			air, kept = crumb.Meringue, crumb.MeringueKept
		}
		f.foldAir = c.slot(even("whites air", "how stiff the whites were whisked", air.Low, air.High))
		f.foldKept = c.slot(even("whites kept", "how lightly the whites were folded in", kept.Low, kept.High))
	}
	f.whitesAlone = white && !yolk && !whole && !f.whitesFolded && !fire.OnHeat && m.Has(whitesBeaten, eggsBeatenF, eggsLight)
	if f.whitesAlone {
		f.aloneAir = c.slot(even("whites alone air", "how far the whites were beaten", crumb.WhitesAlone.Low, crumb.WhitesAlone.High))
		f.aloneKept = c.slot(even("whites alone kept", "how much of the whites' air was kept", crumb.AloneKept.Low, crumb.AloneKept.High))
	}
	f.creamed = m.Has(creamedF) && !fire.OnHeat
	f.icing = f.creamed && !m.Bake.Said() && !m.Has(bakedF, slowF, hotF, "moderate") && !slices.ContainsFunc(c.part.Items, func(it itemOf) bool {
		return slices.ContainsFunc(it.Ingredient.Roles, func(r string) bool { return slices.Contains(heatSets, r) })
	})
	f.creamAir = c.slot(even("creaming", "how long the butter and sugar were creamed", 0, 1))
	f.eggAir = c.slot(even("egg beating", "how well the eggs were beaten", 0, 1))
	f.cheeseAir = c.slot(even("cheese beating", "how far the cheese was beaten", crumb.CheeseMix.Low, crumb.CheeseMix.High))
	f.eggRanges = []eggBeaten{beaten(m, fire)}
	if c.Silent || Unsaid(c.part.Of, m) {
		c.drawMethod(f, fire)
	}
}

// meringue reports whether the part is whites and sugar beaten up together:
// nothing is folded in that would break the foam, and heat under it while it is
// beaten sets it (Swiss meringue, seven-minute icing).
func (c *compiler) meringue() bool {
	white, yolk, whole := c.eggs()
	return c.part.Of.Kind == formula.Meringue && white && !yolk && !whole && c.Method.Has(whitesFolded, whitesBeaten, eggsBeatenF, eggsLight)
}

// heatSets are the roles of what heat sets: a creamed part with none of them and
// no word of baking is an icing.
var heatSets = []string{"egg", "white", "yolk", "flour", "meal", "crumb", "curd", "cheese"}

// whitesInMix reports whether any white is left to be whipped into the mix when
// some is laid on top.
func (c *compiler) whitesInMix() bool {
	return slices.ContainsFunc(c.k.rows, func(r row) bool { return r.tags&whipped != 0 })
}

// beaten is how the eggs that were not whipped apart were beaten, by the first
// row that fits.
func beaten(m *formula.Method, fire Fire) eggBeaten {
	creamed := m.Has(creamedF)
	switch {
	case m.Has(eggsLight) && !fire.OnHeat:
		return crumb.EggsVeryLight
	case m.Has(eggsSlightly, milkOnEgg):
		return crumb.EggsSlightly
	case m.Has(eggsBeatenF, eggsLight) && creamed:
		return crumb.BeatenCreamed
	case m.Has(eggsBeatenF, eggsLight):
		return crumb.EggsBeaten
	case creamed:
		return crumb.CreamedUnsaid
	}
	return crumb.EggsUnsaid
}

// Unsaid reports that the receipt tells nothing of how a part is mixed: no
// word on a line or in a step that the air would depend on.
func Unsaid(part *formula.Part, m *formula.Method) bool {
	if len(part.Steps) > 0 || m.Has(onHeat, bathF) {
		return false
	}
	return !m.Has(creamedF, meltedFat, eggsBeatenF, eggsSlightly, eggsLight, milkOnEgg, whitesFolded, whitesMaybe, mixedF, allInOne)
}

// drawMethod draws what a receipt without a word of method leaves open, with
// the odds its class states; for a class that states none, eggs beaten as a
// matter of course and butter as often creamed as melted (common practice).
// What a bench record has told since is taken as told, by the same ranges.
func (c *compiler) drawMethod(f *filling, fire Fire) {
	m := &c.Method
	if m.Has(eggsBeatenF, eggsSlightly, eggsLight, milkOnEgg, whitesFolded, whitesMaybe, mixedF, allInOne) {
		told := *m
		told.Flags = maps.Clone(m.Flags)
		delete(told.Flags, creamedF)
		f.eggRanges = []eggBeaten{beaten(&told, fire)}
	} else {
		f.eggRanges = []eggBeaten{crumb.EggsBeaten, crumb.EggsUnsaid, crumb.EggsVeryLight}
		eggs := c.odds([]formula.Flag{eggsBeatenF, mixedF, eggsLight}, 3, 2, 1)
		f.eggWay = c.slot(Slot{ID: "eggs unsaid", Words: "how the eggs were beaten (the receipt does not say)", Ways: []Way{
			{Words: "beaten", Odds: eggs[0]}, {Words: "only mixed", Odds: eggs[1]}, {Words: "beaten very light", Odds: eggs[2]},
		}})
	}
	if m.Has(creamedF, meltedFat, allInOne) || fire.OnHeat {
		return
	}
	if butter := c.mass(func(it itemOf) bool { return slices.Contains(it.Ingredient.Roles, "butter") }); butter > 0 {
		f.creamed = true
		ways := c.odds([]formula.Flag{creamedF, meltedFat}, 1, 1)
		f.creamWay = c.slot(Slot{ID: "butter unsaid", Words: "whether the butter was creamed or melted (the receipt does not say)", Ways: []Way{
			{Words: "creamed", Odds: ways[0]}, {Words: "melted", Odds: ways[1]},
		}})
	}
}

// odds are what the class states for the ways something left unsaid may have
// been done; the usual where it states none of them.
func (c *compiler) odds(ways []formula.Flag, usual ...float64) []float64 {
	if c.Class == nil {
		return usual
	}
	stated, sum := make([]float64, len(ways)), 0.0
	for i, flag := range ways {
		stated[i] = c.Class.Unsaid[string(flag)].InexactFloat64()
		sum += stated[i]
	}
	if sum == 0 {
		return usual
	}
	return stated
}

// eggs reports which eggs the part has lines of.
func (c *compiler) eggs() (white, yolk, whole bool) {
	for i := range c.part.Items {
		switch c.part.Items[i].Ingredient.Kind {
		case "white":
			white = true
		case "yolk":
			yolk = true
		case "egg":
			whole = true
		}
	}
	return
}

func (c *compiler) mass(of func(itemOf) bool) float64 {
	sum := 0.0
	for _, it := range c.part.Items {
		if of(it) {
			sum += it.Grams.Likely.InexactFloat64()
		}
	}
	return sum
}

// whipped reports whether a row of white is among the whites whipped apart:
// the lines that say so, else separate white lines, else all the white.
func (c *compiler) whipped(it *itemOf, fromWhole bool) bool {
	m := &c.Method
	if c.meringue() {
		return it.Ingredient.Kind == "white"
	}
	if !m.Has(whitesFolded, whitesMaybe) || c.onTop(it, fromWhole) {
		return false
	}
	saidOnLine := false
	for i := range m.LineFlags {
		if m.OnLine(i, whitesFolded) || m.OnLine(i, whitesMaybe) {
			saidOnLine = true
		}
	}
	if saidOnLine {
		return m.OnLine(it.Line, whitesFolded) || m.OnLine(it.Line, whitesMaybe)
	}
	if white, _, _ := c.eggs(); white {
		return !fromWhole
	}
	return true
}

// onTop reports whether white belongs to a meringue laid on the part and not to
// its mix: the line that says so, else the lines of white alone.
func (c *compiler) onTop(it *itemOf, fromWhole bool) bool {
	m := &c.Method
	if !m.Has(whitesOnTop) || it.Ingredient.Kind != "white" && !fromWhole {
		return false
	}
	for i := range m.LineFlags {
		if m.OnLine(i, whitesOnTop) {
			return m.OnLine(it.Line, whitesOnTop)
		}
	}
	return !fromWhole
}

// sugarNotNamed draws the sugar of a milky mix that names sugar without an
// amount: 5 to 16 parts to the hundred of liquid, as custards have it.
func (c *compiler) sugarNotNamed(f *filling) {
	for i := range c.part.Items {
		it := &c.part.Items[i]
		if it.State != formula.Stated && slices.Contains(it.Ingredient.Roles, "sugar") {
			f.unsaidSugar = c.slot(even("sugar unsaid", "how much sugar was meant", .05, .16))
			f.sugarRow = ratios.Row(it)
			return
		}
	}
}

// run evaluates a filling. The order follows the argument: what is in the mix,
// how it sets, what curdles it, what air it holds, what fixes the air.
func (f *filling) run(m *ratios.Mix, t *tagged, values []Value, out *Outcome) {
	o := &out.Measures
	if f.unsaidSugar >= 0 {
		m.Add(values[f.unsaidSugar].At*m[ratios.FreeLiquid], &f.sugarRow)
	}
	if m[ratios.Total] <= 0 || m[ratios.Water] <= 0 {
		return
	}
	o[Volume] = setting.Volume(m)
	m[ratios.Water] *= 1 - setting.Evaporated(f.baked, f.minutes, f.bath)

	ph := setting.PH(m)
	egg := setting.EggProtein(m)
	starch := setting.Starch(m)
	cookedFirst := f.starchBoiled || (f.stove || f.heated) && starch >= 2
	starchSet := setting.StarchSet(starch, setting.ExtraStarch(m), setting.AcidThinning(ph, cookedFirst))
	set := setting.Set(m, egg, setting.MilkCurd(m, ph, f.rennet), starchSet)
	need := setting.Need(f.stove, starch, f.stands)
	window := setting.Window(m, starch)
	heat := f.heats[0]
	if f.heatWay >= 0 {
		heat = f.heats[values[f.heatWay].Way]
	}
	up, spread := values[f.careful].At, heat.spread
	careful := spread.CarefulLow + up*(spread.CarefulHigh-spread.CarefulLow)
	careless := spread.CarelessLow + up*(spread.CarelessHigh-spread.CarelessLow)

	floury := crumb.Floury(m)
	eggStructure := crumb.EggStructure(m, egg, heat.hotDry)
	structure := crumb.Structure(floury, eggStructure)
	air := crumb.Share(f.airIn(m, t, values, structure, floury), setting.Volume(m))

	o[PH], o[EggProtein], o[SetIndex], o[Need] = ph, egg, set, need
	o[StarchShare], o[SugarShare], o[FatShare] = starch, m.SugarShare(), m.FatShare()
	o[AcidShare] = 100 * m[ratios.Acid] / m[ratios.Total]
	o[SugarToAcid], o[Saturation], o[WaterActivity] = setting.SugarToAcid(m), setting.Saturation(m), setting.WaterActivity(m)
	o[ThinIndex] = setting.Thin(set, need)
	plain := f.eggAndWater && setting.PlainWater(m)
	o[CurdleIndex] = setting.Curdle(careful, window, setting.Clots(m, ph, starch), plain, starch, egg)
	o[CurdleMargin] = window - careful
	o[HeatIndex] = setting.Heat(m, careless, window, starch)
	o[Air], o[Structure], o[AddedLiquid], o[Floury], o[EggStructure] = air, structure, crumb.AddedLiquid(m), floury, eggStructure
	o[CakeyIndex] = crumb.Cakey(air, structure, f.stove)
	o[RubberyIndex] = setting.Rubbery(egg, starchSet, air)
	o[StarchIndex] = setting.StarchPart(m, starchSet, set, cookedFirst)
	o[Density] = setting.Density(m, air)
	f.dry(m, o)
	o[Volume] /= 1 - air/100
	o[Risen] = o[Volume]
	if !f.stove {
		o[Risen] *= setting.Rise(air, setting.FixedAt(up))
	}
	out.curd = m[ratios.CurdMass] >= .25*m[ratios.Total]
}

// dry takes the water that goes off an open pan from the volume and the
// density, and from nothing else: how fillings set and curdle was fitted on
// what goes in.
func (f *filling) dry(m *ratios.Mix, o *[NumMeasures]float64) {
	if f.open == 0 {
		return
	}
	lost := setting.Steamed(o[Volume], f.open, f.starchBoiled)
	if f.boils { // fruit, nuts and raisins are mostly put in when it has boiled
		solid := (m[ratios.PulpMass] + m[ratios.Dried] + m[ratios.Nut]) / m[ratios.Total]
		lost = max(lost, setting.BoiledOff(o[Volume]*(1-solid), f.open))
	}
	lost = min(lost, .4*m[ratios.Water])
	was := o[Volume]
	o[Volume] -= lost / .998
	o[Density] *= (1 - lost/m[ratios.Total]) * was / o[Volume]
}

// airIn is the air in the mix, ml.
func (f *filling) airIn(m *ratios.Mix, t *tagged, values []Value, structure, floury float64) float64 {
	liquid := m[ratios.FreeLiquid]
	drain := 1.0
	if f.drains {
		drain = crumb.Drain(m)
	}
	whites, beaten := 0.0, 0.0
	rest := m.EggMass()
	if f.whitesFolded && (f.foldSlot < 0 || values[f.foldSlot].Way == 0) {
		whites = t.whippedWhite * values[f.foldAir].At * values[f.foldKept].At
		rest -= t.whippedWhite
	}
	if f.whitesAlone {
		whites += m[ratios.EggWhite] * values[f.aloneAir].At * values[f.aloneKept].At
		rest = 0
	}
	if f.stove && !f.meringue {
		whites *= crumb.StoveKeptWhites
	}
	curds := m[ratios.CurdMass] + m[ratios.CheeseMass]
	if f.creamed && curds == 0 && (f.creamWay < 0 || values[f.creamWay].Way == 0) {
		base := crumb.CreamedBase(m)
		by := crumb.CreamedBy1930
		if f.period {
			by = crumb.CreamedByHand
		}
		keeps := drain * crumb.Fixed(structure)
		if f.icing {
			keeps = 1
		}
		beaten += base * by.At(values[f.creamAir].At) * crumb.Diluted(base, liquid) * keeps
	}
	if rest > 0 {
		eggs := f.eggRanges[0]
		if f.eggWay >= 0 {
			eggs = f.eggRanges[values[f.eggWay].Way]
		}
		beaten += rest * eggs.At(values[f.eggAir].At) * crumb.WhiteHelp(m) * crumb.Diluted(rest, liquid) * drain * crumb.Break(m)
	}
	if curds > .15*m[ratios.Total] {
		beaten += .6 * m[ratios.Total] * values[f.cheeseAir].At
	}
	switch {
	case f.stove:
		beaten *= crumb.StoveKept
	case f.heated:
		beaten *= crumb.HeatedKept
	}
	return whites + beaten + crumb.Leaven(t.powder, t.soda, t.selfRaising, floury)
}

// adjust makes the shares say what the links cannot: a filling a quarter of
// which is curd is of curd texture, as meant.
func (f *filling) adjust(k *Kernel, out *Outcome) {
	if !out.curd {
		return
	}
	for i, id := range k.Textures {
		out.Shares[i] = 0
		if id == "curdy" {
			out.Shares[i] = 1
		}
	}
}
