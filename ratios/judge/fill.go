package judge

import (
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/dish"
	"assize/ratios/oven"
	"assize/ratios/practice"
	"assize/ratios/readings"
	"assize/reference"
)

// KitchenOf is whose dishes a formula's words mean.
func KitchenOf(f *formula.Formula) dish.Kitchen {
	return dish.Kitchen{Year: f.Year, Place: f.Place, Now: f.Kitchen.Year, Own: f.Kitchen.Dishes}
}

// LoadOf is what a judged receipt puts in a dish: its fillings, cakes and
// batters together, and its pastes. A sauce is served beside and a meringue
// laid on top. Parts of which only proportions are known have no volume.
func (r *Report) LoadOf() dish.Load {
	var l dish.Load
	lining, lid := false, false
	for i := range r.Parts {
		p := &r.Parts[i]
		if partsOnly(r, i) {
			continue
		}
		switch p.Kind {
		case formula.Pastry:
			l.Paste = plus(l.Paste, spanOf(p.Profile.Total))
			if d, ok := p.Measures[bake.Density.String()]; ok && d.Likely > 0 {
				l.Density = d.Likely
			}
			switch lay := dish.Lay(p.Lay); lay {
			case dish.NoPaste, dish.Lining:
				lining = true
			case dish.Lid:
				lid = true
			default:
				l.Lay = lay
			}
		case formula.Filling, formula.Cake, formula.Batter, formula.Bread:
			if v, ok := p.Measures[bake.Volume.String()]; ok && known(v) {
				l.Cake = l.Cake || p.Kind == formula.Cake || p.Kind == formula.Bread
				l.Filling, l.Risen = plus(l.Filling, v), plus(l.Risen, p.Measures[bake.Risen.String()])
			}
		}
	}
	l.Stands = r.stands
	l.Turned = slices.ContainsFunc(holds(r.Weighed), func(ing *reference.Ingredient) bool { return slices.Contains(ing.Roles, "setting") })
	switch {
	case l.Lay != dish.NoPaste:
	case lining && lid:
		l.Lay = dish.LiningAndLid
	case lining:
		l.Lay = dish.Lining
	case lid:
		l.Lay = dish.Lid
	case r.inShell:
		l.Lay = dish.Lining
	}
	return l
}

// standing is where a dish stands that goes into no baking dish.
func standing(d *practice.Dish, inputs []bake.Input) dish.Stand {
	if d.OnSheet() {
		return dish.OnSheet
	}
	out := dish.InDish
	for i := range inputs {
		fire := bake.FireOf(&inputs[i].Method)
		switch {
		case d.Formula.Parts[i].Kind != formula.Filling:
			return dish.InDish
		case d.Unheated(i) || fire.Cold():
			if out == dish.InDish {
				out = dish.Cold
			}
		case fire.Stove && !fire.Baked:
			out = dish.Potted
		default:
			return dish.InDish
		}
	}
	return out
}

func partsOnly(r *Report, i int) bool {
	for _, it := range r.Weighed.Parts[i].Items {
		if it.Amount.Parts {
			return true
		}
	}
	return false
}

func known(v readings.Span) bool { return v.Likely > 0 && !math.IsNaN(v.Low) && !math.IsNaN(v.High) }

func plus(a, b readings.Span) readings.Span {
	return readings.Span{Low: a.Low + b.Low, Likely: a.Likely + b.Likely, High: a.High + b.High}
}

func spanOf(s reference.Span) readings.Span {
	return readings.Span{Low: s.Low.InexactFloat64(), Likely: s.Likely.InexactFloat64(), High: s.High.InexactFloat64()}
}

// fill puts the receipt into the dish it names, and says whether it overfills
// or underfills it. A dish that is not known is told of in the notes.
func (j *Judge) fill(r *Report, inputs []bake.Input) []Finding {
	f := r.Formula
	r.inShell = j.inShell(f, inputs)
	if f.Dish == "" || r.stands == dish.OnSheet {
		return nil
	}
	found, err := dish.Called(j.Tables, f.Dish, KitchenOf(f))
	if err != nil {
		r.Notes = append(r.Notes, fmt.Sprintf("what the dish %q holds is not known; give its inside (`dish: 9 x 1.25 in`) and what it comes to is held against it", f.Dish))
		return nil
	}
	load := r.LoadOf()
	if load.Lay == dish.Folded {
		return nil // it lies on the dish or sheet, and does not fill it
	}
	if !known(load.Filling) && load.Paste.Likely == 0 {
		return nil
	}
	fit := dish.Into(found.Dish, max(found.Count, found.Number(load)), load)
	r.InDish = &fit
	return j.filled(r, &fit, inputs)
}

// inShell reports a filling that goes into paste the receipt does not give. The
// name of a dish tells nothing of it: a pie plate may hold a custard bare.
func (j *Judge) inShell(f *formula.Formula, inputs []bake.Input) bool {
	if slices.ContainsFunc(f.Parts, func(p formula.Part) bool { return p.Kind == formula.Pastry }) {
		return false
	}
	for _, in := range inputs {
		for _, tok := range in.Method.Tokens {
			row, ok := j.Tables.Method(tok.Method)
			if ok && slices.Contains(row.Sets, "stands_in_crust") && (tok.Where != formula.InBake || dish.SaysPaste(f.Dish)) {
				return true
			}
		}
	}
	return false
}

// filled is the finding of a dish too small or too large for what goes in it.
func (j *Judge) filled(r *Report, fit *dish.Fit, inputs []bake.Input) []Finding {
	at := r.MainPart()
	if at < 0 || fit.Verdict != dish.Overfills && fit.Verdict != dish.Underfills {
		return nil
	}
	f := Finding{Code: string(fit.Verdict), Part: r.Parts[at].Name, Grade: Watch}
	takes := fmt.Sprintf("%.0f ml (%.0f to %.0f)", tens(fit.RoomML.Likely), tens(fit.RoomML.Low), tens(fit.RoomML.High))
	switch {
	case fit.Boils:
		f.Says = fmt.Sprintf("goes into the %s, but may rise over its rim: leave some out, or stand a tray under it", fit.Name)
	case fit.Verdict == dish.Overfills:
		if fit.FillingML.Low > fit.RoomML.High {
			f.Grade = Decide
		}
		f.Says = fmt.Sprintf("too much for the %s by about %.0f ml", fit.Name, tens(fit.Over()))
		if n := math.Round(fit.Full); n >= 2 && fit.Count == 1 {
			f.Says += fmt.Sprintf(": it would fill about %.0f", n)
		}
	default:
		f.Says = fmt.Sprintf("hardly fills the %s: about %.0f ml short", fit.Name, tens(-fit.Over()))
	}
	e := Evidence{What: "what it takes", Value: takes, Limit: fmt.Sprintf("the filling comes to %.0f ml", tens(fit.FillingML.Likely)), Layer: LayerMechanism, Confidence: "medium"}
	if v := fit.Vessel; v != nil {
		e.Source, e.Locator = sourceOf(j.Tables, v.Source), v.Locator
		if v.How == reference.HowMemory || v.Volume == "memory" {
			e.Confidence = "low"
		}
	}
	f.Because = []Evidence{e}
	if rem, ok := toFit(fit, inputs[at]); ok && !fit.Boils {
		f.Remedies = []Remedy{rem}
	}
	return []Finding{f}
}

// tens rounds millilitres as a jug is read.
func tens(ml float64) float64 { return math.Round(ml/10) * 10 }

// MainPart is the place of the part that most of what goes in the dish comes
// from; -1 when there is none.
func (r *Report) MainPart() int {
	at, most := -1, 0.0
	for i := range r.Parts {
		p := &r.Parts[i]
		if v := p.Measures[bake.Volume.String()]; p.Kind != formula.Pastry && p.Kind != formula.Sauce && p.Kind != formula.Meringue && v.Likely > most {
			at, most = i, v.Likely
		}
	}
	return at
}

// toFit is the cure of an ill fit: as much as the dish takes, with what that
// does to the volume.
func toFit(fit *dish.Fit, in bake.Input) (Remedy, bool) {
	by := decimal.NewFromFloat(1 / fit.Full).Round(2)
	if !by.IsPositive() {
		return Remedy{}, false
	}
	changed, ok := change.Change{Scale: by}.Apply(in)
	if !ok {
		return Remedy{}, false
	}
	before, err := bake.Compile(in)
	if err != nil {
		return Remedy{}, false
	}
	after, err := bake.Compile(changed)
	if err != nil {
		return Remedy{}, false
	}
	was, is := readings.LikelyReading(before), readings.LikelyReading(after)
	return Remedy{
		Text:   "make " + change.Portion(by),
		Effect: []Effect{{What: bake.Volume.String(), Kind: "measure", Before: was.Measures[bake.Volume], After: is.Measures[bake.Volume]}},
	}, true
}

// inDish is the judge with the depth and width of the dish the receipt names,
// where it was told of none.
func (j *Judge) inDish(r *Report) *Judge {
	if r.InDish == nil || !(r.InDish.Depth.Low > 0) || !j.Depth.IsZero() {
		return j
	}
	own := *j
	d := r.InDish.Depth
	own.Depth = oven.Range{Low: d.Low, Likely: d.Likely, High: d.High}
	own.Width = r.InDish.Sizes[1].Top
	return &own
}
