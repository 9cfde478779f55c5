package batch

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/dish"
	"assize/ratios/judge"
)

// Trial is what a trial batch can tell.
type Trial struct {
	// Full is the whole receipt in its dish, whose depth a trial should keep;
	// nil when no dish is near it.
	Full *dish.Fit
	// Named reports that the receipt or the cook names that dish.
	Named bool
	// KeepsDepth reports that the trial stands as deep in its dish as the whole
	// receipt does in its own. Where it does not, it tests flavour and set only.
	KeepsDepth bool
	// Least is the thing that is least clear, nil when all ways come to much the
	// same; Ways are the ways it may be taken, in words.
	Least *judge.Doubt
	Ways  []string
	// Parted reports that an egg or a yolk has to be beaten and weighed: no
	// smaller batch leaves them whole.
	Parted bool
}

// sameDepth is how far the depth of a trial may lie from the whole receipt's: a
// quarter, which moves the time of baking by about as much as ovens differ.
const sameDepth = .25

// fractions are the batches tried of a receipt without eggs by number.
var fractions = []int64{12, 10, 8, 6, 5, 4, 3, 2}

// leastMeasured is the least that is weighed on a fine balance or told by a
// quarter of a teaspoon, g.
const leastMeasured = 1.0

// trial is the smallest batch with whole eggs and amounts that can be measured.
func (m *maker) trial() (*Batch, error) {
	full, named := m.full()
	wish := m.wish
	m.wish.Dish = nil
	defer func() { m.wish = wish }()
	for _, by := range m.sizes() {
		b, err := m.make(by, by)
		if err != nil {
			return nil, err
		}
		if !b.Within() || !m.measurable(b) {
			continue
		}
		t := &Trial{Full: full, Named: named, Parted: m.parted(b)}
		fit, keeps := m.dishFor(b, full)
		if t.KeepsDepth = keeps; fit != nil {
			paste := m.pasteFor(m.needs(fit), by)
			m.wish.Dish = &dish.Found{Dish: fit.Dish, Count: fit.Count}
			if b, err = m.make(by, paste); err != nil {
				return nil, err
			}
			in := dish.Into(fit.Dish, fit.Count, b.Report.LoadOf())
			b.In = &in
		}
		t.Least, t.Ways = m.leastClear()
		b.Trial = t
		return b, nil
	}
	return nil, &Error{
		"no batch smaller than the whole has whole eggs, amounts that can be measured and the same proportions",
		"let the proportions be further out (--within 10), or bake the whole",
	}
}

// parted reports that a batch weighs what the receipt counts in eggs.
func (m *maker) parted(b *Batch) bool {
	n := 0
	for _, l := range b.Formula.Parts[m.main].Lines {
		for _, it := range l.Items {
			if it.Amount.Each == "egg" && it.Amount.Measure == "" {
				n++
			}
		}
	}
	return n < len(m.counts(m.main))
}

// needs is the whole receipt's paste against a small dish.
func (m *maker) needs(small *dish.Fit) *dish.Fit {
	f := *small
	f.PasteMade = m.r.LoadOf().Paste
	return &f
}

// sizes are the factors a trial may have, least first: those that leave every
// egg, yolk and white whole, then those that leave only the most numerous so.
func (m *maker) sizes() []decimal.Decimal {
	var out []decimal.Decimal
	one := decimal.NewFromInt(1)
	eggs := m.counts(m.main)
	if len(eggs) == 0 {
		for _, n := range fractions {
			out = append(out, one.DivRound(decimal.NewFromInt(n), 2*places))
		}
		return out
	}
	most := decimal.Zero
	for _, it := range eggs {
		most = decimal.Max(most, it.Amount.Number.Likely)
	}
	var parted []decimal.Decimal
	for n := one; n.LessThan(most); n = n.Add(one) {
		by := n.DivRound(most, 2*places)
		whole := !slices.ContainsFunc(eggs, func(it formula.Item) bool {
			k := it.Amount.Number.Likely.Mul(by)
			return k.Sub(k.Round(0)).Abs().GreaterThan(decimal.New(1, -places))
		})
		if whole {
			out = append(out, by)
		} else {
			parted = append(parted, by)
		}
	}
	if most.LessThanOrEqual(one) { // of one egg there is no whole smaller batch
		half := one.DivRound(decimal.NewFromInt(2), places)
		parted = append(parted, half)
	}
	return append(out, parted...)
}

// measurable reports that everything but trifles can be counted or weighed on a
// fine balance.
func (m *maker) measurable(b *Batch) bool {
	for _, it := range b.Items {
		if it.Part != m.main || it.Trifle || it.Counted {
			continue
		}
		if it.Is.Likely.InexactFloat64() < leastMeasured {
			return false
		}
	}
	return true
}

// full is the whole receipt in the dish it is meant for: the cook's, the
// receipt's own, or the one of the table it fits best.
func (m *maker) full() (fit *dish.Fit, named bool) {
	load := m.r.LoadOf()
	if m.wish.Dish != nil {
		f := dish.Into(m.wish.Dish.Dish, m.wish.Dish.Count, load)
		return &f, true
	}
	if m.r.InDish != nil {
		return m.r.InDish, true
	}
	list := dish.Every(dish.All(m.j.Tables, judge.KitchenOf(m.r.Formula)), load)
	for i := range list {
		if f := &list[i]; f.Verdict == dish.Fits && f.Depth.Likely > 0 && !f.Small() && load.Suits(f) {
			return f, false
		}
	}
	return nil, false
}

// dishFor is the dish for a trial: one it fits that keeps the depth, the
// kitchen's own first and then the nearest in depth; else the one it fits best.
func (m *maker) dishFor(b *Batch, full *dish.Fit) (*dish.Fit, bool) {
	load := b.Report.LoadOf()
	list := dish.Every(dish.All(m.j.Tables, judge.KitchenOf(m.r.Formula)), load)
	var best, any *dish.Fit
	score := math.Inf(1)
	for i := range list {
		f := &list[i]
		if f.Verdict != dish.Fits || !load.Suits(f) {
			continue
		}
		if any == nil || any.Own == f.Own && any.Count > 1 && f.Count == 1 {
			any = f
		}
		if full == nil || !(full.Depth.Likely > 0 && f.Depth.Likely > 0) {
			continue
		}
		off := math.Abs(f.Depth.Likely/full.Depth.Likely - 1)
		if off > sameDepth {
			continue
		}
		s := off + .05*float64(f.Count-1)
		if f.Own {
			s--
		}
		if !sameWalls(f, full) {
			s += .1
		}
		if s < score {
			best, score = f, s
		}
	}
	if best != nil {
		return best, true
	}
	return any, false
}

// sameWalls reports that two dishes let the heat through alike, as far as is
// known.
func sameWalls(a, b *dish.Fit) bool {
	return a.Vessel == nil || b.Vessel == nil || a.Vessel.Walls == "" || b.Vessel.Walls == "" || a.Vessel.Walls == b.Vessel.Walls
}

// worthTrying is the part of the doubt from which a thing is worth trying.
const worthTrying = .1

// leastClear is what hangs most on the filling, with the ways it may be taken.
func (m *maker) leastClear() (*judge.Doubt, []string) {
	name := m.r.Parts[m.main].Name
	for i := range m.r.Settle {
		d := &m.r.Settle[i]
		if d.Of != name || d.Part < worthTrying {
			continue
		}
		k, err := bake.Compile(m.j.Ready(m.j.Input(m.r.Weighed, m.main)))
		if err != nil {
			return d, nil
		}
		var ways []string
		for _, s := range k.Slots {
			if s.Words != d.Words || len(s.Ways) < 2 {
				continue
			}
			for _, w := range s.Ways {
				if w.Odds > 0 && w.Words != "" {
					ways = append(ways, w.Words)
				}
			}
		}
		return d, ways
	}
	// Nothing moves how it turns out; a line that is one thing or another still
	// moves what it is.
	for i := range m.r.Weighed.Unknowns {
		u := &m.r.Weighed.Unknowns[i]
		uses := slices.ContainsFunc(m.r.Weighed.Parts[m.main].Items, func(it weigh.Item) bool { return it.When != nil && it.When.Unknown == i })
		if !uses {
			continue
		}
		var ways []string
		for _, w := range u.Ways {
			ways = append(ways, w.Words)
		}
		return &judge.Doubt{Words: u.Words, Of: name}, ways
	}
	return nil, nil
}
