package explain_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula/bench"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/readings"
)

// open are receipts that leave amounts, measures and method in doubt.
var open = []struct{ name, formula string }{
	{"silent", `title: Silent
year: 1845
place: england
parts:
  - kind: filling
    lines:
      - 6 eggs
      - half a pound of butter
      - half a pound of sugar
      - the juice of 2 lemons
bake: 30 min
`},
	{"custard", `title: Custard
year: 1830
place: england
parts:
  - kind: filling
    lines:
      - 1 pint of milk
      - 3 or 4 eggs, well beaten
      - 2 oz of sugar
      - 2 yolks of eggs
    method:
      - Mix them and bake in a slow oven.
`},
	{"blotted", `title: Blotted
year: 1838
place: england
parts:
  - kind: filling
    lines:
      - 6 eggs, well beaten
      - half a pound of sugar
      - {either: [4 oz butter, 8 oz butter], why: blotted}
      - a wineglass of cream
    method:
      - Melt the butter and mix all together.
`},
}

// done are words that tell what a receipt without a word of method leaves open.
var done = []string{"beat the eggs", "beat the eggs till they are very light", "stir all together", "cream the butter and sugar", "melt the butter"}

// What is filled in within what the receipt allows takes the place of a doubt
// and never widens the range of any share: whatever is weighed or told, the
// shares run through no more than they did.
func TestRecordNeverWidens(t *testing.T) {
	tab := tables(t)
	methods := receipt.NewMethodReader(tab)
	j := judge.New(tab)
	for _, o := range open {
		t.Run(o.name, func(t *testing.T) {
			read := func(t require.TestingT, head string) *bench.Record {
				var text strings.Builder
				text.WriteString(head + "formula:\n")
				for l := range strings.Lines(o.formula) {
					text.WriteString("  " + l)
				}
				r, faults := bench.Read("record.yaml", []byte(text.String()), tab)
				require.NoError(t, faults.Err(), text.String())
				return r
			}
			blank := read(t, "")
			w, faults := weigh.Weigh(blank.Formula, tab)
			require.NoError(t, faults.Err())
			written, err := bake.Compile(j.Ready(j.Input(w, 0)))
			require.NoError(t, err)
			low, high := ranges(written, 6000)
			rapid.Check(t, func(t *rapid.T) {
				// One way of taking the receipt, and what it comes to on the scales.
				values := make([]decimal.Decimal, len(w.Unknowns))
				ways := make([]int, len(w.Unknowns))
				for u := range w.Unknowns {
					ways[u] = rapid.IntRange(0, len(w.Unknowns[u].Ways)-1).Draw(t, w.Unknowns[u].ID)
					way := w.Unknowns[u].Ways[ways[u]]
					share := decimal.New(int64(rapid.IntRange(0, 100).Draw(t, "share")), -2)
					values[u] = way.Low.Add(way.High.Sub(way.Low).Mul(share))
				}
				head := "parts:\n  - part: filling\n    used:\n      -\n"
				for i := range w.Parts[0].Items {
					it := &w.Parts[0].Items[i]
					if it.When != nil && it.When.Way != ways[it.When.Unknown] || !rapid.Bool().Draw(t, "weighed") {
						continue
					}
					g := it.Base
					for _, f := range it.Factors {
						switch {
						case f.ByWay != nil:
							g = g.Mul(f.ByWay[ways[f.Unknown]].Likely)
						case f.Rest:
							g = g.Mul(decimal.NewFromInt(1).Sub(values[f.Unknown]))
						default:
							g = g.Mul(values[f.Unknown])
						}
					}
					head += fmt.Sprintf("      - {line: %q, grams: %s}\n", blank.Formula.Parts[0].Lines[it.Line].Text, g.Round(2))
				}
				if o.name == "silent" {
					words := done[:0:0]
					if e := rapid.IntRange(-1, 2).Draw(t, "eggs"); e >= 0 {
						words = append(words, done[e])
					}
					if b := rapid.IntRange(-1, 1).Draw(t, "butter"); b >= 0 {
						words = append(words, done[3+b])
					}
					if len(words) > 0 {
						head += "    done: [" + strings.Join(words, ", ") + "]\n"
					}
				}
				r := read(t, head)
				m, faults := r.Made(tab, methods)
				require.NoError(t, faults.Err())
				require.Empty(t, m.Outside, head)
				in := j.Input(m.Weighed, 0)
				in.Method = m.Methods[0]
				in.Silent = bake.Unsaid(m.Weighed.Parts[0].Of, &m.Written[0])
				made, err := bake.Compile(j.Ready(in))
				require.NoError(t, err)
				l, h := ranges(made, 300)
				for i := range l {
					require.GreaterOrEqual(t, l[i], low[i]-slack, "%s\n%s", made.Textures[i], head)
					require.LessOrEqual(t, h[i], high[i]+slack, "%s\n%s", made.Textures[i], head)
				}
			})
		})
	}
}

// slack is for the very ends of the ranges, which draws only come near to.
const slack = .03

// ranges are the least and the most of each share over readings, with those in
// which every doubt is at one of its ends or its middle.
func ranges(k *bake.Kernel, n int) (low, high []float64) {
	low, high = make([]float64, len(k.Textures)), make([]float64, len(k.Textures))
	for i := range low {
		low[i] = math.Inf(1)
	}
	see := func(out *bake.Outcome) {
		for i := range low {
			low[i], high[i] = min(low[i], out.Shares[i]), max(high[i], out.Shares[i])
		}
	}
	readings.Each(k, readings.Options{N: n, Seed: 3}, see)
	values := make([]bake.Value, len(k.Slots))
	var out bake.Outcome
	for r := range n {
		for s := range values {
			u := bake.Draw(k.Slots[s].Stream(77), r)
			ends := [...]float64{0, .25, .5, .75, .999999}
			values[s] = k.Slots[s].At(ends[int(u*float64(len(ends)))])
		}
		k.Run(values, &out)
		see(&out)
	}
	return low, high
}
