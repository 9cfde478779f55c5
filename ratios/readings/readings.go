package readings

import (
	"cmp"
	"hash/fnv"
	"math"
	"slices"

	"assize/ratios/bake"
)

// Usual is how many readings are taken unless told otherwise.
const Usual = 2000

// Options say how many readings and from which seed.
type Options struct {
	N    int
	Seed uint64
}

// SeedOf makes a seed from a receipt's title, so that each receipt has draws
// of its own and always the same.
func SeedOf(title string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(title))
	return h.Sum64()
}

// Span is a measure over the readings: the likely reading's figure, and the
// range that nine readings in ten fall into.
type Span struct{ Low, Likely, High float64 }

// Result is what the readings of one part come to.
type Result struct {
	Shares   []float64 // mean share by texture, in the order of the kernel's
	Likely   []float64 // shares of the likely reading
	Heat     float64
	Measures map[bake.Measure]Span
	Doubts   []Doubt
	// Variance of the shares over the readings, summed over the textures: how
	// much there is to settle.
	Variance float64
}

// Doubt is an unknown with how much of the verdict's uncertainty it carries.
type Doubt struct {
	Slot  string // ID
	Words string
	Part  float64 // first-order share of the variance of the verdict, 0 to 1
}

// Run evaluates the kernel over the readings.
func Run(k *bake.Kernel, o Options) *Result {
	w := newWork(k, o)
	for i := range o.N {
		w.draw(i)
		k.Run(w.values, &w.out)
		w.keep(i)
	}
	return w.result()
}

// Each evaluates every reading and shows it to see, which must not keep it.
func Each(k *bake.Kernel, o Options, see func(*bake.Outcome)) {
	w := newWork(k, Options{Seed: o.Seed})
	for i := range o.N {
		w.draw(i)
		k.Run(w.values, &w.out)
		see(&w.out)
	}
}

// Shares evaluates only the mean shares, without measures or doubts: what a
// remedy needs.
func Shares(k *bake.Kernel, o Options) (shares []float64, heat float64) {
	shares = make([]float64, len(k.Textures))
	n := float64(max(1, o.N))
	Each(k, o, func(out *bake.Outcome) {
		for t := range shares {
			shares[t] += out.Shares[t] / n
		}
		heat += out.Heat / n
	})
	return shares, heat
}

// LikelyReading evaluates the one reading with every unknown at its likeliest.
func LikelyReading(k *bake.Kernel) bake.Outcome {
	values := make([]bake.Value, len(k.Slots))
	for i := range k.Slots {
		values[i] = k.Slots[i].Likely()
	}
	var out bake.Outcome
	k.Run(values, &out)
	return out
}

// work is the memory of one run, made once.
type work struct {
	k       *bake.Kernel
	o       Options
	streams []uint64
	us      []float64 // the numbers drawn for the current reading, by slot
	values  []bake.Value
	out     bake.Outcome

	shares   []float64
	heat     float64
	measured [][]float64 // by measure, every reading
	// bins hold, by slot and texture, the sums of shares of the readings whose
	// draw fell into each bin; sums and squares those of all.
	bins    [][numBins][bake.MostShares]float64
	counts  [][numBins]int
	squares []float64
}

// numBins divides a slot's draws to see how the verdict moves with it.
const numBins = 16

func newWork(k *bake.Kernel, o Options) *work {
	w := &work{
		k: k, o: o,
		streams: make([]uint64, len(k.Slots)),
		us:      make([]float64, len(k.Slots)),
		values:  make([]bake.Value, len(k.Slots)),
		shares:  make([]float64, len(k.Textures)),
		squares: make([]float64, len(k.Textures)),
	}
	for i := range k.Slots {
		w.streams[i] = k.Slots[i].Stream(o.Seed)
	}
	if o.N > 0 {
		w.measured = make([][]float64, len(k.Measures))
		flat := make([]float64, len(k.Measures)*o.N)
		for i := range w.measured {
			w.measured[i] = flat[i*o.N : (i+1)*o.N]
		}
		w.bins = make([][numBins][bake.MostShares]float64, len(k.Slots))
		w.counts = make([][numBins]int, len(k.Slots))
	}
	return w
}

func (w *work) draw(reading int) {
	for i := range w.streams {
		u := bake.Draw(w.streams[i], reading)
		w.us[i] = u
		w.values[i] = w.k.Slots[i].At(u)
	}
}

func (w *work) keep(reading int) {
	for t := range w.shares {
		s := w.out.Shares[t]
		w.shares[t] += s
		w.squares[t] += s * s
	}
	w.heat += w.out.Heat
	for i, m := range w.k.Measures {
		w.measured[i][reading] = w.out.Measures[m]
	}
	for i, u := range w.us {
		b := int(u * numBins)
		w.counts[i][b]++
		bin := &w.bins[i][b]
		for t := range w.shares {
			bin[t] += w.out.Shares[t]
		}
	}
}

func (w *work) result() *Result {
	n := float64(max(1, w.o.N))
	r := &Result{Shares: make([]float64, len(w.shares)), Heat: w.heat / n, Measures: map[bake.Measure]Span{}}
	for t := range w.shares {
		r.Shares[t] = w.shares[t] / n
	}
	likely := LikelyReading(w.k)
	r.Likely = append(r.Likely, likely.Shares[:len(w.shares)]...)
	for i, m := range w.k.Measures {
		s := w.measured[i]
		slices.Sort(s)
		r.Measures[m] = Span{Low: quantile(s, .05), Likely: likely.Measures[m], High: quantile(s, .95)}
	}
	r.Variance, r.Doubts = w.doubts(r.Shares)
	return r
}

// quantile reads a sorted list at a share of its length.
func quantile(sorted []float64, p float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	return sorted[int(p*float64(len(sorted)-1)+.5)]
}

// doubts ranks the unknowns by the first-order share of the verdict's variance
// they carry (Sobol 1993), summed over the textures: the variance, over bins of
// an unknown's draws, of the mean share, less what chance alone would give.
func (w *work) doubts(mean []float64) (total float64, out []Doubt) {
	n := float64(w.o.N)
	for t := range mean {
		total += w.squares[t]/n - mean[t]*mean[t]
	}
	const nothing = 1e-9
	if total < nothing || n < 4*numBins {
		return total, nil
	}
	for i := range w.k.Slots {
		between := 0.0
		for t := range mean {
			for b := range numBins {
				if c := float64(w.counts[i][b]); c > 0 {
					d := w.bins[i][b][t]/c - mean[t]
					between += c / n * d * d
				}
			}
		}
		chance := total * (numBins - 1) / n
		if part := (between - chance) / total; part > .01 {
			out = append(out, Doubt{Slot: w.k.Slots[i].ID, Words: w.k.Slots[i].Words, Part: min(1, part)})
		}
	}
	slices.SortStableFunc(out, func(a, b Doubt) int { return cmp.Compare(b.Part, a.Part) })
	return total, out
}
