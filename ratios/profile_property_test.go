package ratios_test

import (
	"fmt"
	"math/big"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/reference"
)

// anyReceipt draws a receipt of one part, by measures that hold one thing.
func anyReceipt(t *rapid.T) receipt {
	line := rapid.Custom(func(t *rapid.T) string {
		n := rapid.IntRange(2, 40).Draw(t, "number")
		switch rapid.IntRange(0, 4).Draw(t, "sort of line") {
		case 0:
			return fmt.Sprintf("%d eggs", n%11+2)
		case 1:
			return fmt.Sprintf("the %s of %d eggs", rapid.SampledFrom([]string{"yolks", "whites"}).Draw(t, "side"), n%11+2)
		case 2:
			what := rapid.SampledFrom([]string{"milk", "water", "cream", "lemon juice"}).Draw(t, "liquid")
			return fmt.Sprintf("%d %s of %s", n, rapid.SampledFrom([]string{"pints", "tablespoons", "ml"}).Draw(t, "measure"), what)
		default:
			what := rapid.SampledFrom([]string{"flour", "sugar", "butter", "lard", "cornflour", "ground almonds", "treacle", "salt"}).Draw(t, "solid")
			return fmt.Sprintf("%d %s of %s", n, rapid.SampledFrom([]string{"oz", "lb", "g", "tablespoons"}).Draw(t, "measure"), what)
		}
	})
	kind := rapid.SampledFrom(formula.Kinds).Draw(t, "kind")
	return receipt{
		year:  rapid.SampledFrom([]int{1880, 1935, 2026}).Draw(t, "year"),
		place: rapid.SampledFrom([]string{"england", "usa"}).Draw(t, "place"),
		kind:  string(kind),
		lines: rapid.SliceOfN(line, 1, 6).Draw(t, "lines"),
	}
}

// again weighs a formula whose numbers have been changed.
func again(t require.TestingT, w *weigh.Weighed, change func(line int, n *reference.Span)) *weigh.Weighed {
	f := *w.Formula
	f.Parts = slices.Clone(f.Parts)
	p := &f.Parts[0]
	p.Lines = slices.Clone(p.Lines)
	for i := range p.Lines {
		p.Lines[i].Items = slices.Clone(p.Lines[i].Items)
		for j := range p.Lines[i].Items {
			change(i, &p.Lines[i].Items[j].Amount.Number)
		}
	}
	out, faults := weigh.Weigh(&f, tables())
	require.Empty(t, faults)
	return out
}

func profileOf(w *weigh.Weighed) ratios.Profile { return ratios.ProfileOf(w, 0, tables(), "") }

func same(t require.TestingT, want, got decimal.Decimal, what string) {
	require.Zero(t, want.Round(8).Cmp(got.Round(8)), "%s: %s, then %s", what, want, got)
}

func sameRatios(t require.TestingT, a, b ratios.Profile) {
	require.Equal(t, len(a.Ratios), len(b.Ratios))
	for i, r := range a.Ratios {
		require.Equal(t, r.Row.ID, b.Ratios[i].Row.ID)
		same(t, r.Value.Low, b.Ratios[i].Value.Low, r.Row.ID+", low")
		same(t, r.Value.Likely, b.Ratios[i].Value.Likely, r.Row.ID)
		same(t, r.Value.High, b.Ratios[i].Value.High, r.Row.ID+", high")
	}
}

func TestProportionsDoNotDependOnTheBatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyReceipt(t).weighed()
		times := decimal.NewFromInt(rapid.Int64Range(2, 6).Draw(t, "times"))
		a := profileOf(w)
		b := profileOf(again(t, w, func(_ int, n *reference.Span) { *n = n.Mul(times) }))
		require.True(t, a.Total.Likely.Mul(times).Equal(b.Total.Likely))
		require.Equal(t, a.Basis.Of, b.Basis.Of)
		for i := range a.Percents {
			same(t, a.Percents[i], b.Percents[i], "percentage")
		}
		sameRatios(t, a, b)
	})
}

func TestProfileDoesNotDependOnTheOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyReceipt(t)
		mixed := r
		mixed.lines = rapid.Permutation(r.lines).Draw(t, "another order")
		a, b := r.profile(), mixed.profile()
		require.True(t, a.Total.Likely.Equal(b.Total.Likely))
		sameRatios(t, a, b)
		for i, line := range r.lines {
			same(t, a.Percents[i], b.Percents[slices.Index(mixed.lines, line)], line)
		}
	})
}

func TestPercentsAddUpToTheTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyReceipt(t).weighed()
		for _, basis := range append([]string{""}, ratios.Bases...) {
			p := ratios.ProfileOf(w, 0, tables(), basis)
			var lines, percents decimal.Decimal
			for i, it := range w.Parts[0].Items {
				lines = lines.Add(it.Grams.Likely)
				percents = percents.Add(p.Percents[i])
			}
			require.True(t, lines.Equal(p.Total.Likely), "the lines come to %s, the part to %s", lines, p.Total.Likely)
			back := percents.Mul(p.Basis.Grams.Likely).Shift(-2)
			require.True(t, back.Sub(p.Total.Likely).Abs().LessThan(decimal.New(1, -6).Mul(p.Total.Likely)), "%s: %s, not %s", p.Basis.Of, back, p.Total.Likely)
		}
	})
}

func TestWiderAmountNeverNarrowsARatio(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyReceipt(t).weighed()
		which := rapid.IntRange(0, len(w.Formula.Parts[0].Lines)-1).Draw(t, "line")
		down := decimal.New(rapid.Int64Range(1, 100).Draw(t, "down"), -2)
		up := decimal.New(rapid.Int64Range(100, 400).Draw(t, "up"), -2)
		a := profileOf(w)
		b := profileOf(again(t, w, func(line int, n *reference.Span) {
			if line == which {
				n.Low, n.High = n.Low.Mul(down), n.High.Mul(up)
			}
		}))
		require.False(t, b.Total.Low.GreaterThan(a.Total.Low))
		require.False(t, b.Total.High.LessThan(a.Total.High))
		require.Equal(t, len(a.Ratios), len(b.Ratios))
		for i, r := range a.Ratios {
			v := b.Ratios[i].Value
			require.False(t, v.Low.GreaterThan(r.Value.Low), "%s: low from %s to %s", r.Row.ID, r.Value.Low, v.Low)
			require.False(t, v.High.LessThan(r.Value.High), "%s: high from %s to %s", r.Row.ID, r.Value.High, v.High)
			same(t, r.Value.Likely, v.Likely, r.Row.ID)
		}
	})
}

func TestWhiteAndYolkAreTheEggInAProfile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "eggs")
		r := receipt{1880, "england", "cake", []string{"1 lb flour", fmt.Sprintf("%d eggs", n)}}
		apart := r
		apart.lines = []string{"1 lb flour", fmt.Sprintf("the whites of %d eggs", n), fmt.Sprintf("the yolks of %d eggs", n)}
		whole, parts := r.profile(), apart.profile()
		same(t, whole.Percents[1], parts.Percents[1].Add(parts.Percents[2]), "egg")
		same(t, r.ratio("egg-to-flour"), apart.ratio("egg-to-flour"), "egg to flour")
	})
}

// inOneGram is what one gram of an ingredient brings of a quantity of the
// ratios table, reckoned by itself in whole fractions; false for the few
// quantities that are not a component or a role.
func inOneGram(ing *reference.Ingredient, quantity string) (*big.Rat, bool) {
	yes := func(is bool) *big.Rat {
		if is {
			return big.NewRat(1, 1)
		}
		return new(big.Rat)
	}
	role := func(list ...string) bool {
		return slices.ContainsFunc(list, func(r string) bool { return slices.Contains(ing.Roles, r) })
	}
	component := func(name string) *big.Rat { return new(big.Rat).Quo(ing.Per100.Of(name).Rat(), big.NewRat(100, 1)) }
	switch {
	case quantity == "total":
		return yes(true), true
	case quantity == "pure_fat":
		return component("fat"), true
	case slices.Contains(reference.Components, quantity):
		return component(quantity), true
	case quantity == "written_fat":
		return yes(role("butter", "hard_fat", "oil")), true
	case quantity == "water_added":
		return yes(role("water")), true
	case quantity == "named_water":
		return new(big.Rat).Mul(yes(role("water", "milk", "liquid", "juice", "cream")), component("water")), true
	case slices.Contains(reference.Roles, quantity):
		return yes(role(quantity)), true
	}
	return nil, false
}

func sideOf(ing *reference.Ingredient, terms []reference.Term) (*big.Rat, bool) {
	sum := new(big.Rat)
	for _, term := range terms {
		s, ok := inOneGram(ing, term.Quantity)
		if !ok {
			return nil, false
		}
		if !term.Times.IsZero() {
			s = new(big.Rat).Mul(s, term.Times.Rat())
		}
		sum.Add(sum, s)
	}
	return sum, true
}

// TestRatiosInWholeFractions works every ratio out a second time in fractions
// of whole numbers: the likely value, and its ends by trying every line at its
// lightest and at its heaviest.
func TestRatiosInWholeFractions(t *testing.T) {
	compared := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		w := anyReceipt(t).weighed()
		items := w.Parts[0].Items
		for _, r := range profileOf(w).Ratios {
			of, to := make([]*big.Rat, len(items)), make([]*big.Rat, len(items))
			known := true
			for i := range items {
				var a, b bool
				of[i], a = sideOf(items[i].Ingredient, r.Row.Of)
				to[i], b = sideOf(items[i].Ingredient, r.Row.To)
				known = known && a && b
			}
			if !known {
				continue
			}
			quotient := func(grams func(i int) decimal.Decimal) *big.Rat {
				above, below := new(big.Rat), new(big.Rat)
				for i := range items {
					g := grams(i).Rat()
					above.Add(above, new(big.Rat).Mul(of[i], g))
					below.Add(below, new(big.Rat).Mul(to[i], g))
				}
				above.Mul(above, r.Row.Scale.Rat())
				return above.Quo(above, below)
			}
			agree := func(ours decimal.Decimal, theirs *big.Rat, what string) {
				off := new(big.Rat).Sub(ours.Rat(), theirs)
				require.LessOrEqual(t, off.Abs(off).Cmp(big.NewRat(1, 2e10)), 0, "%s, %s: %s, in fractions %s", r.Row.ID, what, ours, theirs.FloatString(12))
			}
			agree(r.Value.Likely, quotient(func(i int) decimal.Decimal { return items[i].Grams.Likely }), "likely")
			var low, high *big.Rat
			for corner := range 1 << len(items) {
				q := quotient(func(i int) decimal.Decimal {
					if corner>>i&1 == 1 {
						return items[i].Grams.High
					}
					return items[i].Grams.Low
				})
				if low == nil || q.Cmp(low) < 0 {
					low = q
				}
				if high == nil || q.Cmp(high) > 0 {
					high = q
				}
			}
			agree(r.Value.Low, low, "low")
			agree(r.Value.High, high, "high")
			compared[r.Row.ID] = true
		}
	})
	require.Greater(t, len(compared), 25, "most ratios of the table are reached")
}
