package variant

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/weigh"
	"assize/ratios/judge"
	"assize/reference"
)

func quick(tables *reference.Tables) *judge.Judge {
	j := judge.New(tables)
	j.Readings, j.Remedies = 50, false
	return j
}

// custard is a formula by number of eggs and grams, all taken so many times.
func custard(eggs, milk, sugar, flour, times int) string {
	text := fmt.Sprintf(`title: custard
year: 2000
place: england
kitchen: {year: 2000, place: england}
parts:
  - kind: filling
    lines:
      - %d eggs
      - %d g milk
      - %d g sugar
`, eggs*times, milk*times, sugar*times)
	if flour > 0 {
		text += fmt.Sprintf("      - %d g flour\n", flour*times)
	}
	return text + "    method: [beaten]\nbake: 40 min at 170 C\n"
}

// A formula already inside a class and free of findings is returned unchanged.
func TestInsideIsLeftAsItIs(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	inside := 0
	rapid.Check(t, func(t *rapid.T) {
		text := custard(rapid.IntRange(2, 8).Draw(t, "eggs"), 8*rapid.IntRange(40, 110).Draw(t, "milk"), rapid.IntRange(20, 120).Draw(t, "sugar"), 0, 1)
		f, faults := file.Read("custard.yaml", []byte(text), tables)
		require.NoError(t, faults.Err())
		j := quick(tables)
		f.Parts[0].Class = "baked-custard"
		report, faults := j.Check(f)
		require.NoError(t, faults.Err())
		sound := true
		for _, r := range report.Parts[0].Ratios {
			sound = sound && r.Verdict != judge.Below && r.Verdict != judge.Above
		}
		for _, s := range report.Parts[0].Texture.Shares {
			sound = sound && (!s.Texture.Fault || s.Share < judge.May)
		}
		r, err := Find(j, f, Wish{To: "baked-custard"})
		require.NoError(t, err)
		require.Equal(t, sound, r.Unchanged, text)
		if sound {
			inside++
			require.True(t, r.Found)
			require.Empty(t, r.Changes)
			require.Nil(t, r.Variant)
		}
	})
	require.Positive(t, inside)
}

// bestOf is the best point of a wish, nil when there is none.
func bestOf(t require.TestingT, tables *reference.Tables, text string, w Wish, loosen float64) *point {
	f, faults := file.Read("custard.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	j := quick(tables)
	before, faults := j.Check(f)
	require.NoError(t, faults.Err())
	g, err := goalOf(j, before, w)
	require.NoError(t, err)
	s, err := newSearch(j, before, g, w)
	require.NoError(t, err)
	for i := range s.bounds {
		for k := range s.bounds[i].spans {
			r := &s.bounds[i].spans[k]
			by := decimal.NewFromFloat(loosen)
			r.Low, r.High = r.Low.Sub(r.Low.Mul(by)), r.High.Add(r.High.Mul(by))
		}
	}
	best, _ := s.run()
	return best
}

// The variant of a formula taken a whole number of times is the variant taken
// as many times, or better.
func TestManyTimesOver(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	answered := 0
	rapid.Check(t, func(t *rapid.T) {
		eggs, milk := rapid.IntRange(1, 5).Draw(t, "eggs"), rapid.IntRange(60, 700).Draw(t, "milk")
		sugar, flour := rapid.IntRange(5, 200).Draw(t, "sugar"), rapid.IntRange(0, 90).Draw(t, "flour")
		times := rapid.IntRange(2, 5).Draw(t, "times")
		w := Wish{Most: 2}
		if rapid.Bool().Draw(t, "to a class") {
			w.To = "baked-custard"
		}
		one, many := bestOf(t, tables, custard(eggs, milk, sugar, flour, 1), w, 0), bestOf(t, tables, custard(eggs, milk, sugar, flour, times), w, 0)
		if one == nil {
			return
		}
		answered++
		require.NotNil(t, many)
		require.False(t, one.n < many.n || one.n == many.n && cheaper(one, many) && many.rel-one.rel > 1e-9, "%+v, %d times over %+v", one, times, many)
	})
	require.Positive(t, answered)
}

// A looser range never needs a larger change.
func TestLooserRanges(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		text := custard(rapid.IntRange(1, 6).Draw(t, "eggs"), 8*rapid.IntRange(10, 110).Draw(t, "milk"), rapid.IntRange(5, 200).Draw(t, "sugar"), 0, 1)
		w := Wish{To: "baked-custard", Most: 2}
		tight, loose := bestOf(t, tables, text, w, 0), bestOf(t, tables, text, w, rapid.Float64Range(.01, .5).Draw(t, "looser"))
		if tight == nil {
			return
		}
		require.NotNil(t, loose)
		require.False(t, cheaper(tight, loose), "%s: %+v, looser %+v", text, tight, loose)
	})
}

// What is found is what the written formula weighs and does: it is read again
// from its words, its eggs are whole, and its own check finds nothing of what
// was to be answered.
func TestWrittenVariantPassesItsOwnCheck(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	r := rand.New(rand.NewPCG(1, 7))
	written := 0
	for range 60 {
		p := randomProblem(r)
		p.wish.Most = 3
		f, faults := file.Read("problem.yaml", []byte(p.text), tables)
		require.NoError(t, faults.Err())
		j := quick(tables)
		res, err := Find(j, f, p.wish)
		require.NoError(t, err)
		if !res.Found || res.Unchanged {
			continue
		}
		written++
		require.True(t, res.Reads, "%s\n%v", p.text, res.Variant.Parts[0].Steps)
		text, err := file.Write(res.Variant)
		require.NoError(t, err)
		again, faults := file.Read("variant.yaml", text, tables)
		require.NoError(t, faults.Err(), string(text))
		require.Equal(t, res.Variant.Ancestry, again.Ancestry)
		report, faults := j.Check(again)
		require.NoError(t, faults.Err())
		for _, s := range report.Parts[0].Texture.Shares {
			for _, id := range res.Against {
				if s.Texture.ID == id {
					require.Less(t, s.Share, judge.May, "%s\n%s", p.text, text)
				}
			}
		}
		w, faults := weigh.Weigh(again, tables)
		require.NoError(t, faults.Err())
		for _, it := range w.Parts[0].Items {
			if egg(&it) && byNumber(&it.Amount) && it.State == formula.Stated {
				require.True(t, it.Amount.Number.Likely.IsInteger(), string(text))
			}
		}
	}
	require.Greater(t, written, 15)
}

// Ratios are held against their ranges exactly: what lies on the end of a
// range is within it, and what lies a hair outside is not.
func TestEndsOfRanges(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	row, ok := tables.Ratio("sugar-to-egg")
	require.True(t, ok)
	b := bound{ratio: row, spans: []Range{{decimal.RequireFromString("0.5"), decimal.RequireFromString("1")}}}
	d := decimal.RequireFromString
	require.True(t, b.within(d("50"), d("100")))
	require.True(t, b.within(d("100"), d("100")))
	require.False(t, b.within(d("49.9999999999999999"), d("100")))
	require.False(t, b.within(d("100.0000000000000001"), d("100")))
	require.True(t, b.within(d("7"), d("0")), "nothing to divide by")
}
