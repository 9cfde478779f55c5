package weigh

import (
	"github.com/shopspring/decimal"

	"assize/reference"
)

// Unknown is something the receipt leaves open that weights depend on. It has
// one or more ways of being taken; within a way its value lies in a span,
// most likely at the span's likely.
type Unknown struct {
	ID    string // "egg size"; lines with the same unknown share it
	Words string // for the cook: "the size of the eggs"
	Ways  []Way
	// Number marks how many of a thing are meant, which belongs to one line alone.
	Number bool
}

// Way is one way of taking an unknown. Odds are against the other ways.
type Way struct {
	Words string // "wine pint, 473 ml"; empty when there is only one way
	Odds  decimal.Decimal
	reference.Span
	Source *reference.Provenance // where the figure comes from, nil for the person's own
}

// Span is the unknown's whole range: the lowest and highest of any way, and
// the likely value of the likeliest way.
func (u *Unknown) Span() reference.Span {
	s := u.Ways[u.Likeliest()].Span
	for _, w := range u.Ways {
		if w.Odds.IsZero() && u.open() > 0 {
			continue
		}
		s.Low = decimal.Min(s.Low, w.Low)
		s.High = decimal.Max(s.High, w.High)
	}
	return s
}

// open is how many ways have any odds.
func (u *Unknown) open() int {
	n := 0
	for _, w := range u.Ways {
		if w.Odds.IsPositive() {
			n++
		}
	}
	return n
}

// Likeliest is the index of the way with the best odds, the first of equals.
func (u *Unknown) Likeliest() int {
	best := 0
	for i, w := range u.Ways {
		if w.Odds.GreaterThan(u.Ways[best].Odds) {
			best = i
		}
	}
	return best
}

// Factor is one factor of a weight: the value of an unknown, or what is left
// of 1 when it is taken away (white = egg x (1 - yolk's share)).
type Factor struct {
	Unknown int // index in Weighed.Unknowns
	Rest    bool
	// ByWay, when set, is what each way of the unknown comes to on this line,
	// in place of the unknown's own value: a pint and a gill share the question
	// of wine or imperial measure, each with its own sizes.
	ByWay []reference.Span
}

// of returns the factor's span.
func (f Factor) of(u *Unknown) reference.Span {
	if f.ByWay != nil {
		s := f.ByWay[u.Likeliest()]
		for i, w := range f.ByWay {
			if u.Ways[i].Odds.IsZero() && u.open() > 0 {
				continue
			}
			s.Low = decimal.Min(s.Low, w.Low)
			s.High = decimal.Max(s.High, w.High)
		}
		return s
	}
	s := u.Span()
	if !f.Rest {
		return s
	}
	one := decimal.NewFromInt(1)
	return reference.Span{Low: one.Sub(s.High), Likely: one.Sub(s.Likely), High: one.Sub(s.Low)}
}
