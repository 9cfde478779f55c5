package explain

import (
	"fmt"
	"maps"
	"slices"

	"assize/formula"
	"assize/formula/bench"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/variant"
	"assize/reference"
)

// Expectation is how far a result was looked for.
type Expectation string

// The expectations, by the share the result had as the dish was made.
const (
	LookedFor    Expectation = "looked for"       // half and over
	OneOfTheWays Expectation = "one of the ways"  // a quarter and over
	Unlikely     Expectation = "unlikely"         // a twentieth and over
	NotExpected  Expectation = "not expected"     // under that
	ByPractice   Expectation = "told by practice" // no share is reckoned of it
	NotForetold  Expectation = "not foretold"     // nothing is known of it
)

// leastExpected is the share under which a result was not expected at all.
const leastExpected = .05

// Seen is a result of a part and who saw it.
type Seen struct {
	Part    int
	Texture *reference.Texture
	By      []string // tasters, each as called; with the time when it is known
	Signs   []string // what was seen, in their words
}

// Explanation is what can be told of one result.
type Explanation struct {
	Of Seen
	// Judged is the texture whose share it is told by, which may be a coarser
	// one; empty when none is.
	Judged string
	In     Unit // what Share and the figures of the causes are of
	// Share is that of the result as the dish was made, and Low to High what it
	// runs through over the readings; Written is the share the page had.
	Share, Low, High float64
	Written          float64
	Expected         Expectation
	// AsMeant: the class of the part is meant to be so.
	AsMeant bool
	Class   *reference.Class
	// Fault: it is not what is wanted.
	Fault bool
	// Causes are what would have changed it, by how far, most first.
	Causes []Cause
	// Slight is set when the result was not expected and no cause moves it by as
	// much as a cook would notice; the causes are then those that move it most
	// for what little it is.
	Slight bool
	// Doubts are what nobody has told, with the least and the most it may have
	// made of it, most first.
	Doubts []Cause
	// Might are things that would have made it likelier, had they been done.
	Might []Cause
	// Outside are causes outside the formula, as common practice.
	Outside []*reference.Cause
	// Doneness is what the heat at the centre tells, nil when not measured.
	Doneness *Doneness
	// Receipt is what it says about the receipt.
	Receipt Receipts
	// Next are the least changes that answer it, smallest first.
	Next []Step
	// Variant is the smallest set of changes to the receipt as it is written that
	// answers it, sought where no step of Next does; nil when not sought or not
	// found.
	Variant *variant.Result
}

// Cause is one thing that moves the result.
type Cause struct {
	ID      string // of the change
	Kind    Kind
	Done    string // "creaming the butter"
	Instead string // "melting the butter"
	// From is the share with it done otherwise, To as it was done. Of a doubt they
	// are the least and the most it may make of it, and Least and Most say when.
	From, To    float64
	Least, Most string
	In          Unit
	Why         *reference.Cause // the mechanism, nil when none is written down
	// Unusual is the proportion behind an amount where it lies outside what is
	// usual of the class today, on the side of the cause; nil where it does not.
	Unusual *judge.RatioReading

	open   bool
	amount int
}

// Unit is what the figures of a cause are of.
type Unit string

// The units: shares of the readings, known reasons counted, or a measure.
const (
	Shares  Unit = "share"
	Reasons Unit = "reasons"
	Acid    Unit = "acid"  // in 100 of the whole, as citric
	Sugar   Unit = "sugar" // in 100 of the water and sugar
)

// Moves is how far the cause moves the share.
func (c *Cause) Moves() float64 { return c.To - c.From }

// leastMoved is how far a share must move to be worth telling.
const leastMoved = .03

// Results are what the tasters of a record saw, the faults first, each result
// once with all who saw it. Tasters are never averaged: those who saw otherwise
// have results of their own.
func (b *Bake) Results() []Seen {
	if b.Record == nil {
		return nil
	}
	return b.seen(b.Record.Tastings)
}

func (b *Bake) seen(list []bench.Tasting) []Seen {
	var out []Seen
	for i := range list {
		t := &list[i]
		by := t.By
		if t.When != "" {
			by += ", " + t.When
		}
		for _, n := range t.Results() {
			at := slices.IndexFunc(out, func(s Seen) bool { return s.Part == n.Part && s.Texture.ID == n.Texture })
			if at < 0 {
				x, ok := b.Tables().Texture(string(b.Formula().Parts[n.Part].Kind), n.Texture)
				if !ok {
					continue
				}
				out = append(out, Seen{Part: n.Part, Texture: x})
				at = len(out) - 1
			}
			out[at].By = append(out[at].By, by)
			for _, s := range t.Signs {
				if s.Part == n.Part && s.Texture == n.Texture && !slices.Contains(out[at].Signs, s.Words) {
					out[at].Signs = append(out[at].Signs, s.Words)
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Seen) int {
		switch {
		case a.Texture.Fault == b.Texture.Fault:
			return 0
		case a.Texture.Fault:
			return -1
		}
		return 1
	})
	return out
}

// Tasted takes results given in a word or two, `--tasted cakey,soggy-base`, as
// those of one taster who is not named.
func (b *Bake) Tasted(words string) ([]Seen, *bench.Trouble) {
	signs, trouble := bench.Taste(words, "", b.Formula(), b.Tables())
	if trouble != nil {
		return nil, trouble
	}
	out := b.seen([]bench.Tasting{{Signs: signs}})
	for i := range out {
		out[i].By = nil
	}
	return out, nil
}

// Explain tells what can be told of a result.
func (b *Bake) Explain(of Seen) (*Explanation, error) {
	e := &Explanation{Of: of, Fault: of.Texture.Fault}
	in, o := b.inCase(of.Part), b.options()
	k, err := bake.Compile(in)
	if err != nil {
		return nil, fmt.Errorf("explaining %s: %w", of.Texture.Shown, err)
	}
	if c := b.Report.Parts[of.Part].Class; c != nil {
		e.Class = judge.LikelyMeant(c)
		if c.Given || c.Distance <= farOff {
			e.Class = c.Class
		}
		e.AsMeant = e.Class != nil && e.Class.Meant != "" &&
			(e.Class.Meant == of.Texture.ID || e.Class.Meant == of.Texture.Counts) && near(c, e.Class)
	}
	e.Outside = b.outside(of)
	e.Doneness = b.doneness(of)
	g, ok := gaugeOf(of.Texture)
	if !ok || b.Report.Parts[of.Part].Texture == nil {
		e.Expected = NotForetold
		return e, nil
	}
	e.Judged = g.judged
	share, shares := g.told(in, k, o)
	e.Share = share
	e.In = g.unit()
	switch e.In {
	case Reasons:
		e.Expected = ByPractice
	case Acid, Sugar:
		e.Expected = NotForetold
	case Shares:
		e.Expected = expectation(share)
		e.Low, e.High = readings.Range(k, o, g.of(k))
		e.Written = b.written(of.Part, g)
	}
	b.causes(e, in, k, o, g)
	e.Receipt = b.receipts(k, o, g, of)
	if e.Fault && !e.AsMeant {
		e.Next = b.next(in, k, o, g, of, share, shares)
		e.Variant = b.variant(e)
	}
	return e, nil
}

// ofCase are flags of how a case was readied and filled; a receipt tells them of
// the paste or of what goes into it.
var ofCase = []formula.Flag{"raw_case", "baked_case", "part_baked", "blind_baked", "egg_wash_inside", "warm_filling", "juicy_filling", "cooled"}

// inCase is the input of a part, a paste's with what is told of its case
// elsewhere in the dish.
func (b *Bake) inCase(part int) bake.Input {
	in := b.inputs[part]
	if b.Formula().Parts[part].Kind != formula.Pastry {
		return in
	}
	in.Method.Flags = maps.Clone(in.Method.Flags)
	for i := range b.inputs {
		for _, f := range ofCase {
			if b.inputs[i].Method.Has(f) {
				in.Method.Flags[f] = true
			}
		}
	}
	return in
}

// farOff is the distance from which a class is no longer called like (see the
// report of a check).
const farOff = .1

// near reports whether the part is held to be of the class.
func near(fit *judge.ClassFit, c *reference.Class) bool {
	switch {
	case fit.Given && fit.Class == c:
		return true
	case fit.Class == c:
		return fit.Distance <= farOff
	}
	return fit.Period != nil && fit.Period.Class == c && fit.Period.Distance <= farOff
}

func expectation(share float64) Expectation {
	switch {
	case share >= judge.LikelyFrom:
		return LookedFor
	case share >= judge.May:
		return OneOfTheWays
	case share >= leastExpected:
		return Unlikely
	}
	return NotExpected
}

// written is the share the result had by the page.
func (b *Bake) written(part int, g gauge) float64 {
	t := b.Written.Parts[part].Texture
	if t == nil {
		return 0
	}
	for _, s := range t.Shares {
		if s.Texture.ID == g.judged {
			return s.Share
		}
	}
	return 0
}

// causes varies everything one at a time on the same draws, and ranks what
// moves the result.
func (b *Bake) causes(e *Explanation, in bake.Input, k *bake.Kernel, o readings.Options, g gauge) {
	least := g.least(e.Share)
	var all []Cause
	for _, v := range variations(in, k) {
		if v.id == "whites" && v.done != foldingWhites && g.judged != "cakey" {
			continue // stiff whites make another dish of it
		}
		if !g.minds(v.id) {
			continue
		}
		changed, kernel, ok := v.apply(in, k)
		if !ok {
			continue
		}
		s, _ := g.told(changed, kernel, o)
		c := Cause{ID: v.id, Kind: v.kind, Done: v.done, Instead: v.instead, From: s, To: e.Share, In: g.unit(), open: v.open, amount: v.amount}
		switch {
		case v.open:
			e.Doubts = widen(e.Doubts, c, s)
		case s <= e.Share:
			all = keep(all, c)
		case s-e.Share >= least:
			c.From, c.To = e.Share, s
			e.Might = keep(e.Might, c)
		}
	}
	if fire := bake.FireOf(&in.Method); g.unit() == Shares && !fire.Cold() && k.Kind == formula.Filling && slices.Contains([]string{"curdy", "thin", "rubbery"}, g.judged) && e.Of.Texture.ID != "no-set" {
		_, heat := readings.Shares(k, o)
		if to := e.Share + (1-e.Share)*heat; to-e.Share >= least {
			e.Might = append(e.Might, Cause{ID: "heat-spread", Kind: InProcess, Done: "even, gentle heat", Instead: "a fierce fire, or left too long", From: e.Share, To: to, In: Shares})
		}
	}
	e.Doubts = slices.DeleteFunc(e.Doubts, func(c Cause) bool { return c.Moves() < least })
	for _, c := range all {
		if c.Moves() >= least {
			e.Causes = append(e.Causes, c)
		}
	}
	if len(e.Causes) == 0 && g.unit() == Shares && e.Share < judge.May {
		for _, c := range all {
			if c.From <= slightly*c.To {
				e.Causes, e.Slight = append(e.Causes, c), true
			}
		}
	}
	for i := range e.Causes {
		e.Causes[i].Unusual = b.unusual(e.Of.Part, &e.Causes[i])
	}
	for _, list := range [][]Cause{e.Causes, e.Might, e.Doubts} {
		for i := range list {
			list[i].Why = b.why(list[i].ID, e.Of.Texture)
		}
		slices.SortStableFunc(list, func(a, b Cause) int {
			switch {
			case a.Moves() > b.Moves():
				return -1
			case a.Moves() < b.Moves():
				return 1
			}
			return 0
		})
	}
}

// proportions are the ratios an amount is looked for in, the most telling first.
var proportions = map[formula.Kind]map[string][]string{
	formula.Filling: {
		"egg": {"egg-to-total", "egg-to-dairy"}, "butter": {"fat-to-total", "fat-to-egg"},
		"sugar": {"sugar-to-total", "sugar-to-egg", "sugar-to-dairy", "sugar-to-liquid"}, "liquid": {"dairy-to-egg"},
		"flour": {"flour-to-total", "starch-to-total", "crumb-to-total", "flour-to-dairy"}, "juice": {"juice-to-total", "juice-to-egg"},
	},
	formula.Pastry: {
		"water": {"added-water-to-flour", "total-water-to-flour"}, "fat": {"fat-to-flour", "pure-fat-to-flour"},
		"sugar": {"sugar-to-flour"}, "egg": {"egg-to-flour"},
	},
}

// unusual is the proportion behind a cause where the part's class is known and
// the proportion lies outside its published range on the cause's side.
func (b *Bake) unusual(part int, c *Cause) *judge.RatioReading {
	p := &b.Report.Parts[part]
	if c.amount == 0 || p.Class == nil || !p.Class.Given && p.Class.Distance > farOff {
		return nil // of a class it is hardly like, nothing is usual
	}
	side := judge.Above
	if c.amount < 0 {
		side = judge.Below
	}
	for _, id := range proportions[p.Kind][c.ID] {
		for i := range p.Ratios {
			if r := &p.Ratios[i]; r.Ratio.Row.ID == id && r.Verdict == side {
				return r
			}
		}
	}
	return nil
}

// slightly is how far a share hardly anybody would notice must fall to be told
// of at all: to nine parts in ten of it.
const slightly = .9

// keep adds a cause, or puts it in the place of a smaller one of the same
// change: of several ways to do it otherwise the one that moves most is told.
func keep(list []Cause, c Cause) []Cause {
	for i := range list {
		if !list[i].open && list[i].ID == c.ID && list[i].Done == c.Done {
			if c.Moves() > list[i].Moves() {
				list[i] = c
			}
			return list
		}
	}
	return append(list, c)
}

// widen adds one way of taking a doubt to what its ways come to.
func widen(list []Cause, c Cause, share float64) []Cause {
	for i := range list {
		o := &list[i]
		if !o.open || o.Done != c.Done || o.ID != c.ID {
			continue
		}
		if share < o.From {
			o.From, o.Least = share, c.Instead
		}
		if share > o.To {
			o.To, o.Most = share, c.Instead
		}
		return list
	}
	c.open, c.From, c.To, c.Least, c.Most, c.Instead = true, share, share, c.Instead, c.Instead, ""
	return append(list, c)
}

// why is the row that tells how a change brings a texture about, or the coarser
// texture it counts as.
func (b *Bake) why(change string, x *reference.Texture) *reference.Cause {
	for _, id := range []string{x.ID, x.Counts} {
		if id == "" {
			continue
		}
		for i := range b.Tables().Causes {
			c := &b.Tables().Causes[i]
			if c.Change == change && slices.Contains(c.Textures, x.Kind+"/"+id) {
				return c
			}
		}
	}
	return nil
}

// outside are the causes no formula tells, those of the texture itself before
// those of the coarser one.
func (b *Bake) outside(of Seen) []*reference.Cause {
	var out []*reference.Cause
	in := &b.inputs[of.Part]
	fire := bake.FireOf(&in.Method)
	cold := b.Report.Parts[of.Part].Cold || of.Texture.Kind == string(formula.Filling) && fire.Cold()
	jelly := slices.ContainsFunc(in.Weighed.Parts[in.Part].Items, func(it weigh.Item) bool { return slices.Contains(it.Ingredient.Roles, "setting") })
	unbaked := cold || of.Texture.Kind == string(formula.Filling) && !fire.Baked
	for _, id := range []string{of.Texture.ID, of.Texture.Counts} {
		for i := range b.Tables().Causes {
			c := &b.Tables().Causes[i]
			if unbaked && c.Kind == "oven" {
				continue // no oven had a hand in it
			}
			switch c.Fire {
			case "heated":
				if cold {
					continue
				}
			case "cold":
				if !cold || jelly {
					continue
				}
			case "jelly":
				if !cold || !jelly {
					continue
				}
			}
			if id != "" && c.What != "" && slices.Contains(c.Textures, of.Texture.Kind+"/"+id) && !slices.Contains(out, c) {
				out = append(out, c)
			}
		}
	}
	return out
}
