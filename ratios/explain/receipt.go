package explain

import (
	"slices"

	"assize/formula/bench"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// Receipts is what a tasting says about the receipt's own doubts.
type Receipts struct {
	// Meant is how the dish should be, in the words of the receipt or of
	// somebody who knows; By says whose. Empty when nobody says.
	Meant, By string
	// Texture is what those words point to, nil when they cannot be told.
	Texture *reference.Texture
	// AsMeant: it came out so.
	AsMeant bool
	// Doubts are the interpretations that have become likelier, for every
	// amount that nobody weighed. Empty when every amount was weighed.
	Doubts []Reading
	// Tells is whether any of them tells anything.
	Tells bool
}

// Reading is one doubt of the receipt with its ways.
type Reading struct {
	Words string
	Ways  []WayOf
	Tells bool // whether any way has moved far enough to be told
}

// WayOf is one way of taking a doubt.
type WayOf struct {
	Words string
	// Before is how likely it was, After how likely it is in the light of how
	// the dish should be, and InBowl in the light of how it came out. The two
	// are the same when it came out as it should.
	Before, After, InBowl float64
}

// tells is how far a way's odds must move to say anything.
const tells = .10

// bandWords name the thirds of the range of a doubt with a single way.
var bandWords = [readings.Bands]string{"the smaller third of its range", "the middle", "the larger third of its range"}

// receipts weighs the ways of taking the amounts nobody weighed. It says
// nothing where nothing is known of how the dish should be.
func (b *Bake) receipts(k *bake.Kernel, o readings.Options, g gauge, of Seen) Receipts {
	r := b.meant(of)
	if r.Texture == nil || g.judged == "" {
		return r
	}
	mg, ok := gaugeOf(r.Texture)
	if !ok || mg.judged == "" {
		return r
	}
	r.AsMeant = mg.judged == g.judged
	slots := b.openSlots(of.Part)
	if len(slots) == 0 {
		return r
	}
	meant, _ := readings.Posterior(k, o, slots, mg.of(k))
	bowl := meant
	if !r.AsMeant {
		bowl, _ = readings.Posterior(k, o, slots, g.of(k))
	}
	for i, l := range meant {
		s := &k.Slots[l.Slot]
		d := Reading{Words: s.Words}
		for w := range l.Before {
			words := bandWords[min(w, readings.Bands-1)]
			if len(s.Ways) > 1 {
				words = wayName(b.Tables(), &s.Ways[w])
			}
			if l.Before[w] <= 0 {
				continue
			}
			d.Ways = append(d.Ways, WayOf{words, l.Before[w], l.After[w], bowl[i].After[w]})
			if moved(l.Before[w], l.After[w]) {
				d.Tells, r.Tells = true, true
			}
		}
		r.Doubts = append(r.Doubts, d)
	}
	return r
}

func moved(before, after float64) bool { return after-before >= tells || before-after >= tells }

// meant is how the dish should be, as far as anybody says. Words that cannot be
// told are kept, and nothing is concluded from them.
func (b *Bake) meant(of Seen) Receipts {
	r := Receipts{Meant: b.Formula().Meant, By: "the receipt"}
	switch {
	case b.Meant != "":
		r.Meant, r.By = b.Meant, "the taster"
	case b.Record != nil && b.Record.Meant != "":
		r.Meant, r.By = b.Record.Meant, "the record"
	}
	if r.Meant == "" {
		return Receipts{}
	}
	f := b.Formula()
	for _, look := range append([]string{""}, reference.Looks...) {
		signs, trouble := bench.Taste(r.Meant, look, f, b.Tables())
		if trouble != nil {
			continue
		}
		i := slices.IndexFunc(signs, func(s bench.Sign) bool { return s.Part == of.Part })
		if i < 0 {
			continue
		}
		if x, ok := b.Tables().Texture(of.Texture.Kind, signs[i].Texture); ok {
			r.Texture = x
			return r
		}
	}
	return r
}
