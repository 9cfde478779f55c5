package weigh_test

import (
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

// unit is a measure and the largest number of it that a line may give.
type unit struct {
	name string
	most int
}

var (
	liquids = []string{"milk", "water", "cream", "lemon juice"}
	solids  = []string{"flour", "sugar", "butter", "currants", "lard"}
	wet     = []unit{{"pints", 6}, {"gills", 12}, {"quarts", 3}, {"ml", 900}, {"tablespoons", 12}}
	dry     = []unit{{"lb", 8}, {"oz", 40}, {"g", 900}, {"tablespoons", 12}, {"teaspoons", 20}}
)

// oneLine draws an ingredient line as a book words it.
func oneLine(t *rapid.T) string {
	switch rapid.IntRange(0, 4).Draw(t, "sort of line") {
	case 0:
		return fmt.Sprintf("%d eggs", rapid.IntRange(2, 12).Draw(t, "eggs"))
	case 1:
		return fmt.Sprintf("the juice of %d lemons", rapid.IntRange(2, 6).Draw(t, "lemons"))
	case 2:
		u := rapid.SampledFrom(wet).Draw(t, "measure")
		return fmt.Sprintf("%d %s of %s", rapid.IntRange(2, u.most+1).Draw(t, "number"), u.name, rapid.SampledFrom(liquids).Draw(t, "liquid"))
	default:
		u := rapid.SampledFrom(dry).Draw(t, "measure")
		return fmt.Sprintf("%d %s of %s", rapid.IntRange(2, u.most+1).Draw(t, "number"), u.name, rapid.SampledFrom(solids).Draw(t, "solid"))
	}
}

func lines(t *rapid.T) []string {
	return rapid.SliceOfN(rapid.Custom(oneLine), 1, 7).Draw(t, "lines")
}

func year(t *rapid.T) int {
	return rapid.SampledFrom([]int{1700, 1820, 1845, 1880, 1935, 2026}).Draw(t, "year")
}

func place(t *rapid.T) string { return rapid.SampledFrom(reference.Places).Draw(t, "place") }

func sameSpan(t require.TestingT, want, got reference.Span, what string) {
	require.True(t, want.Low.Equal(got.Low) && want.Likely.Equal(got.Likely) && want.High.Equal(got.High), "%s: %v, then %v", what, want, got)
}

func TestTotalIsTheSumOfTheLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := weighed(year(t), place(t), lines(t)...)
		var sum reference.Span
		for _, it := range w.Parts[0].Items {
			sum = sum.Add(it.Grams)
		}
		sameSpan(t, sum, w.Parts[0].Total(w.Unknowns), "total")
	})
}

func TestEveryWeightRunsLowLikelyHigh(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := weighed(year(t), place(t), lines(t)...)
		for _, it := range w.Parts[0].Items {
			g := it.Grams
			require.True(t, g.Low.IsPositive() && !g.Low.GreaterThan(g.Likely) && !g.Likely.GreaterThan(g.High), "%s: %v", it.Amount.Words, g)
		}
	})
}

// TestOrderOfLinesDoesNotMatter keeps to places where every measure of the
// older and the newer kind stands in one proportion, to six figures.
func TestOrderOfLinesDoesNotMatter(t *testing.T) {
	near := func(t require.TestingT, a, b reference.Span, what string) {
		for _, pair := range [][2]decimal.Decimal{{a.Low, b.Low}, {a.Likely, b.Likely}, {a.High, b.High}} {
			require.True(t, pair[0].Sub(pair[1]).Abs().LessThanOrEqual(pair[0].Shift(-5)), "%s: %v, then %v", what, a, b)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		y, p, ls := year(t), rapid.SampledFrom([]string{"england", "usa"}).Draw(t, "place"), lines(t)
		mixed := rapid.Permutation(ls).Draw(t, "another order")
		a, b := weighed(y, p, ls...), weighed(y, p, mixed...)
		near(t, a.Parts[0].Total(a.Unknowns), b.Parts[0].Total(b.Unknowns), "total")
		weights := func(w *weigh.Weighed) map[string]reference.Span {
			out := map[string]reference.Span{}
			for _, it := range w.Parts[0].Items {
				out[w.Parts[0].Of.Lines[it.Line].Text] = it.Grams
			}
			return out
		}
		other := weights(b)
		for text, g := range weights(a) {
			near(t, g, other[text], text)
		}
	})
}

func TestTwiceTheNumberIsTwiceTheWeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, p := year(t), place(t)
		n := rapid.IntRange(2, 20).Draw(t, "number")
		times := rapid.IntRange(2, 9).Draw(t, "times")
		what := rapid.SampledFrom([]string{"oz of flour", "pints of milk", "eggs", "tablespoons of sugar", "gills of cream"}).Draw(t, "what")
		once := grams(y, p, fmt.Sprintf("%d %s", n, what))
		more := grams(y, p, fmt.Sprintf("%d %s", n*times, what))
		sameSpan(t, once.Mul(decimal.NewFromInt(int64(times))), more, what)
	})
}

// TestWiderAmountIsNeverSurer: an amount whose range grows at both ends gives
// a weight whose range grows at both ends or stays.
func TestWiderAmountIsNeverSurer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := weighed(year(t), place(t), lines(t)...)
		wider := *w.Formula
		wider.Parts = []formula.Part{w.Formula.Parts[0]}
		wider.Parts[0].Lines = append([]formula.Line(nil), w.Formula.Parts[0].Lines...)
		i := rapid.IntRange(0, len(wider.Parts[0].Lines)-1).Draw(t, "line")
		l := &wider.Parts[0].Lines[i]
		l.Items = append([]formula.Item(nil), l.Items...)
		n := &l.Items[0].Amount.Number
		n.Low = n.Low.Mul(decimal.New(int64(rapid.IntRange(1, 100).Draw(t, "low")), -2))
		n.High = n.High.Mul(decimal.New(int64(rapid.IntRange(100, 300).Draw(t, "high")), -2))

		tab, err := reference.Load()
		require.NoError(t, err)
		got, faults := weigh.Weigh(&wider, tab)
		require.Empty(t, faults)
		before, after := w.Parts[0].Total(w.Unknowns), got.Parts[0].Total(got.Unknowns)
		require.False(t, after.Low.GreaterThan(before.Low), "low rose from %s to %s", before.Low, after.Low)
		require.False(t, after.High.LessThan(before.High), "high fell from %s to %s", before.High, after.High)
		require.True(t, after.Likely.Equal(before.Likely))
	})
}

// TestWhiteAndYolkMakeTheEgg: an egg taken apart weighs what it weighed whole,
// at its likely size, and the two parts share one doubt about its size.
func TestWhiteAndYolkMakeTheEgg(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, p, n := year(t), place(t), rapid.IntRange(2, 24).Draw(t, "eggs")
		size := rapid.SampledFrom([]string{"", "large ", "small "}).Draw(t, "size")
		whole := grams(y, p, fmt.Sprintf("%d %seggs", n, size))
		w := weighed(y, p, fmt.Sprintf("the whites of %d %seggs", n, size), fmt.Sprintf("the yolks of %d %seggs", n, size))
		items := w.Parts[0].Items
		require.Len(t, items, 2)
		require.Len(t, w.Unknowns, 2, "size of the eggs and share of yolk")
		require.True(t, whole.Likely.Equal(items[0].Grams.Likely.Add(items[1].Grams.Likely)))

		// At the same yolk's share the parts make the whole at each end too.
		for _, egg := range []func(reference.Span) decimal.Decimal{
			func(s reference.Span) decimal.Decimal { return s.Low },
			func(s reference.Span) decimal.Decimal { return s.High },
		} {
			sum := decimal.Zero
			for _, it := range items {
				g := it.Base
				for _, f := range it.Factors {
					s := w.Unknowns[f.Unknown].Span()
					switch {
					case f.Rest:
						g = g.Mul(decimal.NewFromInt(1).Sub(s.Likely))
					case w.Unknowns[f.Unknown].Words == "the size of the eggs":
						g = g.Mul(egg(s))
					default:
						g = g.Mul(s.Likely)
					}
				}
				sum = sum.Add(g)
			}
			require.True(t, egg(whole).Equal(sum), "%s, in parts %s", egg(whole), sum)
		}
	})
}
