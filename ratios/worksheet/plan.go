package worksheet

import (
	"slices"

	"assize/formula"
	"assize/ratios/practice"
	"assize/reference"
)

// Plan is the work in time, worked back from the moment of serving.
type Plan struct {
	Events []Event // in the order they happen
	// Start is how many minutes before serving the work begins.
	Start int
	// Stops are the steps after which the work may be left, Show those worth
	// having ready made where people look on.
	Stops, Show []*reference.Step
	// OvenOpen marks a plan whose baking time is not known: nothing before the
	// oven is reckoned.
	OvenOpen bool
}

// Event is something that begins at a time.
type Event struct {
	ID      string // one of the Events constants
	Part    string // the part it is done to, empty for the dish
	At      int    // minutes before serving at which it begins
	Minutes int    // how long it takes; 0 when it is done in a moment
	Waiting bool   // the hands are free
	// Usual marks a length of time the receipt does not give.
	Usual bool
}

// What may begin.
const (
	ButterOut   = "butter-out"
	MakePaste   = "make-paste"
	Rest        = "rest"
	Rise        = "rise"
	Shape       = "shape"
	Prove       = "prove"
	Stand       = "stand"
	Lay         = "lay"
	Chill       = "chill"
	LightOven   = "light-oven"
	CaseIn      = "case-in"
	CoolCase    = "cool-case"
	MakeFilling = "make-filling"
	CoolFilling = "cool-filling"
	Fill        = "fill"
	DishIn      = "dish-in"
	DishOut     = "dish-out"
	FillCold    = "fill-cold"
	Serve       = "serve"
)

// What hands take, in minutes: kitchen allowances, not printed figures.
const (
	pasteMinutes   = 20 // weighing, rubbing in, wetting
	layeredMinutes = 40 // with the turns, without their rests
	fillingMinutes = 25
	cakeMinutes    = 30
	fillMinutes    = 5
	coolMinutes    = 60 // what is stirred on the fire, till it is cold
)

// plan works the time back from serving: first what happens last. Lengths of
// waiting are the likely ones, of baking the longest, so that the dish is not
// late.
func plan(d *practice.Dish, o ordered, oven *Oven) Plan {
	p := planning{d: d, minutes: map[string]int{}}
	for _, x := range o.expected {
		if x.Spared {
			continue
		}
		if !x.Step.Minutes.IsZero() {
			p.minutes[x.Step.ID] = max(p.minutes[x.Step.ID], int(x.Step.Minutes.Likely.IntPart()))
		}
		if x.Step.Stop != "" {
			p.out.Stops = add(p.out.Stops, x.Step)
		}
		if x.Step.Show != "" {
			p.out.Show = add(p.out.Show, x.Step)
		}
	}
	byStage := func(a, b *reference.Step) int { return rank(a.Stage) - rank(b.Stage) }
	slices.SortStableFunc(p.out.Stops, byStage)
	slices.SortStableFunc(p.out.Show, byStage)
	p.reckon(oven)
	return p.out
}

func add(list []*reference.Step, s *reference.Step) []*reference.Step {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

type planning struct {
	d       *practice.Dish
	minutes map[string]int // of the steps expected
	out     Plan
}

func (p *planning) event(e Event) { p.out.Events = append(p.out.Events, e) }

func (p *planning) reckon(oven *Oven) {
	d := p.d
	paste := slices.IndexFunc(d.Formula.Parts, func(x formula.Part) bool { return x.Kind == formula.Pastry })
	main := mainPart(d)
	alone := d.Formula.Parts[main].Kind == formula.Pastry // a paste by itself
	p.event(Event{ID: Serve})
	if alone {
		wait := p.minutes["stiffen-case"]
		if wait > 0 {
			p.event(Event{ID: Chill, Part: d.Formula.Parts[paste].Name, At: wait, Minutes: wait, Waiting: true})
		}
		p.paste(paste, wait)
		p.finish()
		return
	}
	set := p.minutes["set-jelly"]
	if set > 0 {
		p.event(Event{ID: FillCold, At: set, Minutes: set, Waiting: true, Usual: true})
	}
	cool := p.minutes["cool-pie"] + p.minutes["cool-to-cut"] + p.minutes["stand-hot"] + p.minutes["cool-cake"] + p.minutes["cool-loaf"]
	at := set + cool
	if wait := p.minutes["set-mould"]; wait > 0 && toldStanding(d, main) == 0 {
		at += wait
		p.event(Event{ID: Stand, Part: d.Formula.Parts[main].Name, At: at, Minutes: wait, Waiting: true, Usual: true})
	}
	if oven.Baked || oven.Pot {
		bake := int(oven.Minutes.High.Round(0).IntPart())
		if !oven.Said { // what is reckoned is known no finer than five minutes
			bake = (bake + 4) / 5 * 5
		}
		if bake == 0 {
			p.out.OvenOpen = true
			if at > 0 {
				p.event(Event{ID: DishOut, At: at, Minutes: cool, Waiting: true})
			}
			p.finish()
			return
		}
		p.event(Event{ID: DishOut, At: at, Minutes: cool, Waiting: true})
		at += bake
		p.event(Event{ID: DishIn, At: at, Minutes: bake, Waiting: true, Usual: !oven.Said})
	}
	heat := at // when the oven must be hot
	laid := paste >= 0 && d.Holds(paste, "laid")
	folded := paste >= 0 && d.Holds(paste, "laid", "folded")
	if folded { // it is filled as it is rolled: both must be ready before
		at += p.minutes["fold-over"]
		p.event(Event{ID: Lay, Part: d.Formula.Parts[paste].Name, At: at, Minutes: p.minutes["fold-over"]})
	} else if laid {
		at += fillMinutes
		p.event(Event{ID: Fill, At: at, Minutes: fillMinutes})
	}
	ready := at
	// The filling.
	making := fillingMinutes
	if k := d.Formula.Parts[main].Kind; k == formula.Cake || k == formula.Bread {
		making = cakeMinutes
	}
	begin := ready
	if wait := p.minutes["cold-filling"]; wait > 0 {
		begin += wait
		p.event(Event{ID: CoolFilling, Part: d.Formula.Parts[main].Name, At: begin, Minutes: wait, Waiting: true})
	}
	begin = p.risings(main, begin)
	if wait := toldStanding(d, main); wait > 0 {
		begin += wait
		p.event(Event{ID: Stand, Part: d.Formula.Parts[main].Name, At: begin, Minutes: wait, Waiting: true})
	} else if !laid && d.Holds(main, "stove") && d.Methods[main].Has("cooled", "chilled") {
		begin += coolMinutes
		p.event(Event{ID: CoolFilling, Part: d.Formula.Parts[main].Name, At: begin, Minutes: coolMinutes, Waiting: true, Usual: true})
	}
	making += p.minutes["strain"] + p.minutes["cool-butter"]
	begin += making
	p.event(Event{ID: MakeFilling, Part: d.Formula.Parts[main].Name, At: begin, Minutes: making})
	if wait := p.minutes["butter-soft"]; wait > 0 {
		p.event(Event{ID: ButterOut, At: begin + wait, Minutes: wait, Waiting: true})
	}
	// The case.
	if folded {
		p.paste(paste, ready)
	} else if laid {
		at = ready
		if wait := p.minutes["weigh-down"]; wait > 0 {
			if cold := p.minutes["cold-filling"]; cold > 0 {
				at += cold
				p.event(Event{ID: CoolCase, Part: d.Formula.Parts[paste].Name, At: at, Minutes: cold, Waiting: true})
			}
			at += wait
			p.event(Event{ID: CaseIn, Part: d.Formula.Parts[paste].Name, At: at, Minutes: wait, Waiting: true})
			heat = at
		} else if work := p.minutes["part-bake"] + p.minutes["egg-wash-inside"]; work > 0 {
			at += work
			p.event(Event{ID: CaseIn, Part: d.Formula.Parts[paste].Name, At: at, Minutes: work, Waiting: true})
			heat = at
		}
		if wait := p.minutes["chill-case"] + p.minutes["stiffen-case"]; wait > 0 {
			at += wait
			p.event(Event{ID: Chill, Part: d.Formula.Parts[paste].Name, At: at, Minutes: wait, Waiting: true})
		}
		work := p.minutes["lay-lining"] + p.minutes["lay-patty"] + p.minutes["lay-rim"] + p.minutes["lay-lid"] + p.minutes["raise-case"]
		at += work
		p.event(Event{ID: Lay, Part: d.Formula.Parts[paste].Name, At: at, Minutes: work})
		p.paste(paste, at)
	}
	if wait := p.minutes["light-oven"]; wait > 0 && (oven.Baked || heat > ready) {
		p.event(Event{ID: LightOven, At: heat + wait, Minutes: wait, Waiting: true})
	}
	p.finish()
}

// risings reckons the two risings of a dough that must be ready at a time, and
// its shaping between: as long as the words say, else as is likely.
func (p *planning) risings(part, at int) int {
	name := p.d.Formula.Parts[part].Name
	for _, e := range []struct {
		id, step, stage string
		waiting         bool
	}{{Prove, "prove", "prove", true}, {Shape, "shape", "shape", false}, {Rise, "first-rise", "rise", true}} {
		minutes := p.minutes[e.step]
		if e.id == Shape {
			minutes += p.minutes["knock-back"]
		}
		if minutes == 0 {
			continue
		}
		told := 0
		if e.waiting {
			told = toldMinutes(p.d, part, e.stage)
		}
		if told > 0 {
			minutes = told
		}
		at += minutes
		p.event(Event{ID: e.id, Part: name, At: at, Minutes: minutes, Waiting: e.waiting, Usual: told == 0})
	}
	return at
}

// paste reckons the making and resting of a paste that must be ready at a time.
func (p *planning) paste(part, at int) {
	name := p.d.Formula.Parts[part].Name
	making := pasteMinutes
	if p.d.Holds(part, "layered") {
		making = layeredMinutes
	}
	if wait := p.minutes["rest-paste"] + p.minutes["rest-turns"]; wait > 0 {
		at += wait
		p.event(Event{ID: Rest, Part: name, At: at, Minutes: wait, Waiting: true})
	}
	at += making
	p.event(Event{ID: MakePaste, Part: name, At: at, Minutes: making})
}

// finish sets the events in the order they happen.
func (p *planning) finish() {
	slices.Reverse(p.out.Events) // they were reckoned from the last
	slices.SortStableFunc(p.out.Events, func(a, b Event) int { return b.At - a.At })
	p.out.Start = p.out.Events[0].At
}
