package readings

import "assize/ratios/bake"

// Bands is how many bands the range of a slot with a single way is looked at
// in: its smaller, middle and larger third.
const Bands = 3

// Likelier tells how an outcome weighs the ways of one slot.
type Likelier struct {
	Slot   int       // its place in the kernel
	Before []float64 // share of the readings by way, or by band when there is one way
	After  []float64 // the same, each reading counted by how likely it makes the outcome
}

// mostWays is the most ways of a slot that are looked at.
const mostWays = 12

// Posterior weighs the ways of the slots by an outcome, over the same readings
// that Run takes: a way that makes it often has become likelier. at gives the
// outcome's share in a reading. It also returns the mean share. Slots with more
// ways than a cook could choose between are passed over.
func Posterior(k *bake.Kernel, o Options, slots []int, at func(*bake.Outcome) float64) (out []Likelier, mean float64) {
	w := newWork(k, Options{Seed: o.Seed})
	sums := make([][mostWays]float64, len(slots))
	counts := make([][mostWays]float64, len(slots))
	total := 0.0
	for i := range o.N {
		w.draw(i)
		k.Run(w.values, &w.out)
		p := at(&w.out)
		total += p
		for n, s := range slots {
			b := w.values[s].Way
			if len(k.Slots[s].Ways) == 1 {
				b = int(w.us[s] * Bands)
			}
			if b < mostWays {
				sums[n][b] += p
				counts[n][b]++
			}
		}
	}
	for n, s := range slots {
		ways := len(k.Slots[s].Ways)
		if ways == 1 {
			ways = Bands
		}
		if ways > mostWays {
			continue
		}
		l := Likelier{Slot: s, Before: make([]float64, ways), After: make([]float64, ways)}
		for b := range ways {
			l.Before[b] = counts[n][b] / max(1, float64(o.N))
			if total > 0 {
				l.After[b] = sums[n][b] / total
			}
		}
		out = append(out, l)
	}
	return out, total / max(1, float64(o.N))
}

// Range is the least and the most of something over the readings.
func Range(k *bake.Kernel, o Options, of func(*bake.Outcome) float64) (low, high float64) {
	first := true
	Each(k, o, func(out *bake.Outcome) {
		v := of(out)
		if first || v < low {
			low = v
		}
		if first || v > high {
			high = v
		}
		first = false
	})
	return low, high
}
