package bake

import (
	"hash/fnv"
	"math"

	"assize/formula/weigh"
)

// Slot is one unknown of a kernel: something drawn anew for each reading.
// Slots of different parts with the same ID are drawn alike.
type Slot struct {
	ID    string
	Words string // for the cook: "how the eggs were beaten"
	Ways  []Way
}

// Way is one way of taking a slot. Within it the value runs from Low to High,
// most often at Likely, or evenly when Even is set.
type Way struct {
	Words             string
	Odds              float64 // against the other ways
	Low, Likely, High float64
	Even              bool
}

// Value is a slot's value in one reading.
type Value struct {
	At  float64
	Way int
}

// even makes a slot that runs evenly over one range.
func even(id, words string, low, high float64) Slot {
	return Slot{ID: id, Words: words, Ways: []Way{{Odds: 1, Low: low, Likely: (low + high) / 2, High: high, Even: true}}}
}

// peaked makes a slot with a likely value between its ends.
func peaked(id, words string, low, likely, high float64) Slot {
	return Slot{ID: id, Words: words, Ways: []Way{{Odds: 1, Low: low, Likely: likely, High: high}}}
}

// slotOf turns an unknown of the scales into a slot.
func slotOf(u *weigh.Unknown) Slot {
	s := Slot{ID: u.ID, Words: u.Words}
	for _, w := range u.Ways {
		s.Ways = append(s.Ways, Way{
			Words: w.Words, Odds: w.Odds.InexactFloat64(),
			Low: w.Low.InexactFloat64(), Likely: w.Likely.InexactFloat64(), High: w.High.InexactFloat64(),
		})
	}
	return s
}

// Likely is the slot's value in the likely reading: the way with the best odds
// at its likely value.
func (s *Slot) Likely() Value {
	best := 0
	for i, w := range s.Ways {
		if w.Odds > s.Ways[best].Odds {
			best = i
		}
	}
	return Value{At: s.Ways[best].Likely, Way: best}
}

// below1 is the largest number under 1.
const below1 = 1 - 0x1p-53

// At is the slot's value for a number u from 0 up to 1, by which ways and
// values within a way come out in their odds.
func (s *Slot) At(u float64) Value {
	way := 0
	if len(s.Ways) > 1 {
		total := 0.0
		for i := range s.Ways {
			total += s.Ways[i].Odds
		}
		u *= total
		for way < len(s.Ways)-1 && u >= s.Ways[way].Odds && s.after(way) {
			u -= s.Ways[way].Odds
			way++
		}
		// Taking the odds off one by one may leave a hair over 1.
		u = min(u/s.Ways[way].Odds, below1)
	}
	return Value{At: s.Ways[way].at(u), Way: way}
}

// after reports whether a way behind this one has any odds at all.
func (s *Slot) after(way int) bool {
	for _, w := range s.Ways[way+1:] {
		if w.Odds > 0 {
			return true
		}
	}
	return false
}

func (w *Way) at(u float64) float64 {
	width := w.High - w.Low
	switch {
	case width == 0:
		return w.Low
	case w.Even:
		return w.Low + u*width
	}
	// The triangular distribution, inverted.
	peak := (w.Likely - w.Low) / width
	if u < peak {
		return w.Low + math.Sqrt(u*width*(w.Likely-w.Low))
	}
	return w.High - math.Sqrt((1-u)*width*(w.High-w.Likely))
}

// Stream is the sequence of numbers a slot is drawn by. It depends on the seed
// and the slot's ID alone, so that a change to a receipt leaves the draws of
// everything it does not touch as they were.
func (s *Slot) Stream(seed uint64) uint64 {
	h := fnv.New64a()
	h.Write([]byte(s.ID))
	return mix(h.Sum64() ^ mix(seed))
}

// Draw is the number, 0 up to 1, of a stream for a reading.
func Draw(stream uint64, reading int) float64 {
	const golden = 0x9e3779b97f4a7c15
	return float64(mix(stream+uint64(reading+1)*golden)>>11) / (1 << 53)
}

// mix is the finishing step of SplitMix64 (Steele, Lea and Flood 2014).
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
