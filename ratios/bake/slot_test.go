package bake_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/ratios/bake"
)

// anySlot draws a slot of up to four ways, peaked, even, or a single value.
func anySlot(t *rapid.T) bake.Slot {
	s := bake.Slot{ID: "check"}
	for range rapid.IntRange(1, 4).Draw(t, "ways") {
		low := rapid.Float64Range(-5, 100).Draw(t, "low")
		width := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(.01, 50)).Draw(t, "width")
		peak := rapid.OneOf(rapid.SampledFrom([]float64{0, 1}), rapid.Float64Range(0, 1)).Draw(t, "peak")
		s.Ways = append(s.Ways, bake.Way{
			Odds: rapid.Float64Range(.05, 10).Draw(t, "odds"),
			Low:  low, Likely: low + peak*width, High: low + width, Even: rapid.Bool().Draw(t, "even"),
		})
	}
	return s
}

// Within a way the value rises with u and stays in its span; ways are taken in
// their order as u rises.
func TestSlotRisesWithinAWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySlot(t)
		last := bake.Value{Way: -1}
		const steps = 400
		seen := make([]int, len(s.Ways))
		for i := range steps {
			v := s.At(float64(i) / steps)
			w := s.Ways[v.Way]
			tiny := 1e-9 * (1 + math.Abs(w.Low) + w.High - w.Low)
			require.GreaterOrEqual(t, v.At, w.Low-tiny)
			require.LessOrEqual(t, v.At, w.High+tiny)
			require.GreaterOrEqual(t, v.Way, last.Way)
			if v.Way == last.Way {
				require.GreaterOrEqual(t, v.At, last.At-tiny)
			}
			seen[v.Way]++
			last = v
		}
		total := 0.0
		for _, w := range s.Ways {
			total += w.Odds
		}
		for i, w := range s.Ways {
			require.InDelta(t, steps*w.Odds/total, float64(seen[i]), 1.01, "ways come out by their odds")
		}
		l := s.Likely()
		require.True(t, l.At >= s.Ways[l.Way].Low && l.At <= s.Ways[l.Way].High+1e-9)
		for _, w := range s.Ways {
			require.LessOrEqual(t, w.Odds, s.Ways[l.Way].Odds)
		}
	})
}

// A number close under 1 still gives a value close under the end of the last
// way. Not tried at the last number below 1 itself (one draw in 9e15): there the
// odds, taken off one by one, can leave a remainder past the last way's own.
func TestSlotAtItsVeryEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySlot(t)
		v := s.At(nearly1)
		w := s.Ways[len(s.Ways)-1]
		require.Equal(t, len(s.Ways)-1, v.Way)
		require.InDelta(t, w.High, v.At, 1e-4*(1+w.High-w.Low))
	})
}

// A peaked way's draws have the mean and the variance of the triangular
// distribution: (a+b+c)/3 and (a2+b2+c2-ab-ac-bc)/18.
func TestPeakedWay(t *testing.T) {
	for _, w := range [][3]float64{{2, 3, 7}, {0, 0, 1}, {0, 1, 1}, {.29, .33, .39}} {
		s := bake.Slot{ID: "check", Ways: []bake.Way{{Odds: 1, Low: w[0], Likely: w[1], High: w[2]}}}
		mean, square := 0.0, 0.0
		const n = 10000
		for i := range n {
			x := s.At((float64(i) + .5) / n).At
			mean += x / n
			square += x * x / n
		}
		a, c, b := w[0], w[1], w[2]
		require.InDelta(t, (a+b+c)/3, mean, 1e-3*(b-a))
		require.InDelta(t, (a*a+b*b+c*c-a*b-a*c-b*c)/18, square-mean*mean, 1e-3*(b-a)*(b-a))
	}
}

// Draws are even from 0 up to 1, do not hang together from one to the next, and
// are the same each time.
func TestDrawsAreEven(t *testing.T) {
	const n = 10000
	for seed := range uint64(20) {
		for _, id := range []string{"spread", "egg beating", "size egg"} {
			stream := (&bake.Slot{ID: id}).Stream(seed)
			require.Equal(t, stream, (&bake.Slot{ID: id}).Stream(seed))
			mean, square, next := 0.0, 0.0, 0.0
			var tenths [10]int
			for i := range n {
				u := bake.Draw(stream, i)
				require.True(t, u >= 0 && u < 1)
				if i%1000 == 0 {
					require.Equal(t, u, bake.Draw(stream, i))
				}
				mean += u / n
				square += u * u / n
				next += (u - .5) * (bake.Draw(stream, i+1) - .5) / n
				tenths[int(10*u)]++
			}
			// Five times the deviation to be looked for: .00289 of the mean of 10,000
			// numbers, .00075 of their variance, .00083 of the product of neighbours,
			// 30 of the count in a tenth.
			require.InDelta(t, .5, mean, .0145)
			require.InDelta(t, 1.0/12, square-mean*mean, .0038)
			require.InDelta(t, 0, next, .0042)
			for _, c := range tenths {
				require.InDelta(t, n/10, c, 150)
			}
		}
	}
}

// Streams of other slots and of other seeds differ, and do not move together.
func TestStreamsDiffer(t *testing.T) {
	seen := map[uint64]string{}
	var streams []uint64
	for seed := range uint64(10) {
		for i := range 10 {
			id := fmt.Sprintf("slot %d", i)
			s := (&bake.Slot{ID: id}).Stream(seed)
			require.NotContains(t, seen, s, "%s of %d", id, seed)
			seen[s] = id
			streams = append(streams, s)
		}
	}
	const n = 10000
	for i := 1; i < len(streams); i++ {
		alike, product := 0, 0.0
		for r := range n {
			a, b := bake.Draw(streams[i-1], r), bake.Draw(streams[i], r)
			if a == b {
				alike++
			}
			product += (a - .5) * (b - .5) / n
		}
		require.Zero(t, alike)
		require.InDelta(t, 0, product, .0042, "%d", i)
	}
}

// A slot's stream hangs on its ID and the seed alone: what else is in the
// receipt does not move it.
func TestStreamDoesNotDependOnTheRest(t *testing.T) {
	a := compiled(t, 1861, "filling", `["8 eggs", "8 oz butter", "8 oz sugar", "2 lemons"]`, "[creamed, beaten]")
	b := compiled(t, 1861, "filling", `["8 eggs", "8 oz butter", "8 oz sugar", "2 lemons", "1 pint milk", "1 oz flour"]`, "[creamed, beaten]")
	other := map[string]uint64{}
	for i := range b.Slots {
		other[b.Slots[i].ID] = b.Slots[i].Stream(5)
	}
	shared := 0
	for i := range a.Slots {
		if s, ok := other[a.Slots[i].ID]; ok {
			require.Equal(t, s, a.Slots[i].Stream(5))
			shared++
		}
	}
	require.Greater(t, shared, 3)
}
