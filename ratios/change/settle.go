package change

import (
	"math"
	"slices"

	"assize/formula"
	"assize/ratios/bake"
)

// Settle takes a doubt one way: an unclear amount, or a method the receipt does
// not tell. Draws of everything else stay as they were.
type Settle struct {
	Slot string // ID of the slot
	Way  int
	// At pins the value within the way; NaN leaves it drawn.
	At float64
}

// To settles a slot to a way, its value left drawn.
func To(slot string, way int) Settle { return Settle{Slot: slot, Way: way, At: math.NaN()} }

// Apply gives a kernel with the doubt settled; the one given is left as it was.
// It reports false when the kernel has no such slot or way.
func (s Settle) Apply(k *bake.Kernel) (*bake.Kernel, bool) {
	i := slices.IndexFunc(k.Slots, func(o bake.Slot) bool { return o.ID == s.Slot })
	if i < 0 || s.Way < 0 || s.Way >= len(k.Slots[i].Ways) {
		return k, false
	}
	out := *k
	out.Slots = slices.Clone(k.Slots)
	ways := slices.Clone(k.Slots[i].Ways)
	for w := range ways {
		if w != s.Way {
			ways[w].Odds = 0
		}
	}
	way := &ways[s.Way]
	way.Odds = max(way.Odds, 1)
	if !math.IsNaN(s.At) {
		way.Low, way.Likely, way.High = s.At, s.At, s.At
	}
	out.Slots[i].Ways = ways
	return &out, true
}

// Longer is the input baked for so many times the minutes it was.
func Longer(in bake.Input, times float64) bake.Input {
	out := in
	b := formula.Bake{Minutes: in.Method.Bake.Minutes * times, Stages: slices.Clone(in.Method.Bake.Stages)}
	for i := range b.Stages {
		b.Stages[i].LowMinutes *= times
		b.Stages[i].HighMinutes *= times
	}
	out.Method.Bake = b
	return out
}
