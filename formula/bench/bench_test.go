package bench_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/bench"
	"assize/formula/book"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/reference"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const demo = "../../testdata/demo/millrace"

// weighed is a receipt of the demo book on the scales.
func weighed(t testing.TB, name string) *weigh.Weighed {
	t.Helper()
	f, _, faults := book.For(os.DirFS(demo), name, tables(t))
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables(t))
	require.NoError(t, faults.Err())
	return w
}

// A blank record of every demo receipt is read back, says nothing, and weighs
// what the receipt weighs.
func TestBlankSaysNothing(t *testing.T) {
	tab := tables(t)
	names, err := filepath.Glob(filepath.Join(demo, "*.yaml"))
	require.NoError(t, err)
	read := 0
	for _, name := range names {
		if base := filepath.Base(name); base == "book.yaml" || base == "kitchen.yaml" {
			continue
		}
		t.Run(filepath.Base(name), func(t *testing.T) {
			w := weighed(t, filepath.Base(name))
			text, err := bench.Blank(w, tab)
			require.NoError(t, err)
			require.True(t, bench.IsRecord(text))
			r, faults := bench.Read("record.yaml", text, tab)
			require.NoError(t, faults.Err(), string(text))
			require.Empty(t, r.Tastings)
			require.Empty(t, r.Departures)
			for _, p := range r.Parts {
				require.Empty(t, p.Used)
				require.Empty(t, p.Added)
				require.Empty(t, p.Done)
			}
			m, faults := r.Made(tab, receipt.NewMethodReader(tab))
			require.NoError(t, faults.Err())
			for i := range w.Parts {
				require.Len(t, m.Weighed.Parts[i].Items, len(w.Parts[i].Items))
				for j := range w.Parts[i].Items {
					a, b := w.Parts[i].Items[j], m.Weighed.Parts[i].Items[j]
					require.True(t, a.Grams.Likely.Equal(b.Grams.Likely), "%s", a.Ingredient.Name)
					require.True(t, a.Grams.Low.Equal(b.Grams.Low))
					require.True(t, a.Grams.High.Equal(b.Grams.High))
				}
				require.Equal(t, m.Written[i].Flags, m.Methods[i].Flags)
				require.Equal(t, m.Written[i].Bake, m.Methods[i].Bake)
			}
		})
		read++
	}
	require.GreaterOrEqual(t, read, 9)
}

// filled is the blank record of a receipt with some of its empty places filled.
func filled(t testing.TB, name string, fill ...string) *bench.Record {
	t.Helper()
	text, err := bench.Blank(weighed(t, name), tables(t))
	require.NoError(t, err)
	page := string(text)
	for i := 0; i < len(fill); i += 2 {
		require.Contains(t, page, fill[i])
		page = strings.Replace(page, fill[i], fill[i+1], 1)
	}
	r, faults := bench.Read("record.yaml", []byte(page), tables(t))
	require.NoError(t, faults.Err(), page)
	return r
}

func made(t testing.TB, r *bench.Record) *bench.Made {
	t.Helper()
	m, faults := r.Made(tables(t), receipt.NewMethodReader(tables(t)))
	require.NoError(t, faults.Err())
	return m
}

func grams(t testing.TB, m *bench.Made, part int, id string) reference.Span {
	t.Helper()
	for _, it := range m.Weighed.Parts[part].Items {
		if it.Ingredient.ID == id && it.Used(m.Weighed.Unknowns) {
			return it.Grams
		}
	}
	t.Fatalf("no %s", id)
	return reference.Span{}
}

// What is weighed is exact; the eggs left unweighed are taken as the same eggs.
func TestWeighedIsExact(t *testing.T) {
	before := made(t, filled(t, "rich-lemon-pudding.yaml"))
	require.False(t, grams(t, before, 0, "egg_yolk").IsExact())
	r := filled(t, "rich-lemon-pudding.yaml",
		"- line: 8 eggs, well beaten\n        grams:", "- line: 8 eggs, well beaten\n        grams: 400")
	m := made(t, r)
	require.Empty(t, m.Outside)
	eggs := grams(t, m, 1, "egg_whole")
	require.True(t, eggs.IsExact())
	require.Equal(t, "400", eggs.Likely.String())
	// The yolk of the paste is of an egg of 50 g, not of any medium egg.
	was, is := grams(t, before, 0, "egg_yolk"), grams(t, m, 0, "egg_yolk")
	require.True(t, is.High.Sub(is.Low).LessThan(was.High.Sub(was.Low)))
	for _, u := range m.Weighed.Unknowns {
		if strings.HasPrefix(u.ID, "size egg") {
			require.InDelta(t, 50, u.Span().Low.InexactFloat64(), .6)
			require.InDelta(t, 50, u.Span().High.InexactFloat64(), .6)
		}
	}
}

// More than the receipt can mean is a departure: the weight holds, and nothing
// else is concluded from it.
func TestDepartureNarrowsNothing(t *testing.T) {
	before := made(t, filled(t, "rich-lemon-pudding.yaml"))
	m := made(t, filled(t, "rich-lemon-pudding.yaml",
		"- line: 8 eggs, well beaten\n        grams:", "- line: 8 eggs, well beaten\n        grams: 900"))
	require.Equal(t, []string{"8 eggs, well beaten"}, m.Outside)
	require.Equal(t, "900", grams(t, m, 1, "egg_whole").Likely.String())
	require.Equal(t, grams(t, before, 0, "egg_yolk").Likely.String(), grams(t, m, 0, "egg_yolk").Likely.String())
}

// A line that is one thing or another is settled by what was weighed of it.
func TestEitherIsSettled(t *testing.T) {
	m := made(t, filled(t, "seville-orange-tart.yaml",
		"4 oz butter or 8 oz butter\n        grams:", "4 oz butter or 8 oz butter\n        grams: 225"))
	b := grams(t, m, 1, "butter_salted")
	require.Equal(t, "225", b.Likely.String())
	for i := range m.Weighed.Parts[1].Items {
		it := &m.Weighed.Parts[1].Items[i]
		if it.When != nil {
			u := m.Weighed.Unknowns[it.When.Unknown]
			require.Equal(t, it.When.Way == u.Likeliest(), u.Ways[it.When.Way].Odds.IsPositive())
		}
	}
}

// What was done takes the place of what is written, question by question.
func TestDoneReplaces(t *testing.T) {
	r := filled(t, "rich-lemon-pudding.yaml",
		"- part: filling", "- part: filling\n    done: [melt the butter and stir it in, eggs slightly beaten]\n    added: [{of: cornflour, grams: 8}]",
		"    added: # what the receipt does not list, as - {of: cornflour, grams: 8}\n      -\n    done: # how it was made where you did otherwise, or the receipt does not say\n      -\ndish", "dish",
		"oven: # readings, as - {minute: 0, heat: 200 C}\n  -", "oven: [{minute: 0, heat: 320 F}, {minute: 20, heat: 150 C}]",
		"minutes:", "minutes: 40 #", "centre: ", "centre: 172 F ")
	m := made(t, r)
	f := m.Methods[1]
	require.True(t, f.Has("melted_fat"))
	require.False(t, f.Has("creamed"))
	require.True(t, f.Has("eggs_slightly"))
	require.False(t, f.Has("eggs_beaten"))
	require.False(t, f.Has("hot"), "the readings stand for the word")
	require.Equal(t, 40.0, f.Bake.Minutes)
	require.InDelta(t, 160, f.Bake.FirstC(), .1)
	require.True(t, m.Written[1].Has("creamed"), "what is written stays known")
	require.Equal(t, "8", grams(t, m, 1, "cornflour").Likely.String())
	require.Equal(t, "77.8", r.Centre.String())
	require.True(t, m.Methods[0].Has("rubbed"), "the paste is as written")
}

// Eggs weighed together are the eggs of every line.
func TestEggsWeighed(t *testing.T) {
	m := made(t, filled(t, "rich-lemon-pudding.yaml", "eggs:", "eggs: {number: 3, grams: 162} #"))
	require.Equal(t, "432", grams(t, m, 1, "egg_whole").Likely.String())
	require.True(t, grams(t, m, 1, "egg_whole").IsExact())
}

// Signs are read by their place, and tasters stay apart.
func TestTasters(t *testing.T) {
	r := filled(t, "rich-lemon-pudding.yaml",
		"  - by:\n", "  - by: the baker\n    when: cold\n    cut: [open and springy, small holes]\n    liquid: none\n    base: wet\n  - cut: clean\n    wobble: trembles\n    words: very good\n  - by:\n")
	require.Len(t, r.Tastings, 2)
	a, b := r.Tastings[0], r.Tastings[1]
	require.Equal(t, "cool", a.When)
	require.Equal(t, []bench.Named{{Part: 1, Texture: "cakey"}, {Part: 0, Texture: "soggy-base"}}, a.Results())
	require.Equal(t, "taster 2", b.By)
	require.Equal(t, []bench.Named{{Part: 1, Texture: "sets"}, {Part: 1, Texture: "custard-set"}}, b.Results())
	require.Equal(t, "very good", b.Words)
}

func TestTaste(t *testing.T) {
	f := weighed(t, "rich-lemon-pudding.yaml").Formula
	custard := weighed(t, "baked-custard.yaml").Formula
	for _, c := range []struct {
		words, look string
		of          *formula.Formula
		texture     string
		part        int
		asks        string
	}{
		{words: "spongy", of: f, texture: "cakey", part: 1},
		{words: "like a soufflé", of: f, texture: "cakey", part: 1},
		{words: "split", of: f, texture: "curdy", part: 1},
		{words: "weeping", of: f, texture: "weeps", part: 1},
		{words: "soggy-base", of: f, texture: "soggy-base", part: 0},
		{words: "a bit like rubber at the edge", of: custard, texture: "rubbery", part: 0},
		{words: "no holes", of: custard, texture: "smooth", part: 0},
		{words: "not spongy", of: custard, asks: "no sign is known"},
		{words: "none", of: custard, asks: "no sign is known"},
		{words: "springs back, full of holes", look: "wobble", of: custard, texture: "cakey", part: 0},
		{words: "springs back", look: "wobble", of: custard, asks: "may mean more than one thing"},
		{words: "tough", of: f, asks: `"tough" may be said of either part`},
		{words: "tough", of: custard, texture: "rubbery", part: 0},
		{words: "paste: tough", of: f, texture: "tough", part: 0},
		{words: "pastry: tough", of: f, texture: "tough", part: 0},
		{words: "lid: tough", of: f, asks: `no part "lid"`},
		{words: "wet", of: f, asks: `"wet" may mean more than one thing`},
		{words: "eggy", look: "mouth", of: f, asks: `may mean more than one thing`},
		{words: "tough", look: "crust", of: f, texture: "tough", part: 0},
		{words: "tough", look: "mouth", of: f, texture: "rubbery", part: 1},
		{words: "none", look: "liquid", of: f, texture: "", part: -1},
		{words: "spungy", of: f, asks: "no sign is known"},
	} {
		signs, trouble := bench.Taste(c.words, c.look, c.of, tables(t))
		if c.asks != "" {
			require.NotNil(t, trouble, c.words)
			require.Contains(t, trouble.What, c.asks)
			require.NotEmpty(t, trouble.Hint)
			continue
		}
		require.Nil(t, trouble, c.words)
		require.NotEmpty(t, signs)
		require.Equal(t, c.texture, signs[0].Texture, c.words)
		require.Equal(t, c.part, signs[0].Part, c.words)
	}
}

func TestEach(t *testing.T) {
	require.True(t, bench.Eggs{}.Each().IsZero())
	require.Equal(t, "52", bench.Eggs{Number: 4, Grams: decimal.NewFromInt(208)}.Each().String())
}

// Water the receipt gives no amount of, and that was weighed, is weighed; what
// the words make of it counts no longer.
func TestWaterThatWasWeighed(t *testing.T) {
	r, faults := bench.Read("paste.yaml", []byte(`
parts:
  - part: paste
    used: [{line: "cold water, more than it needs", grams: 110}]
formula:
  title: Paste
  year: 1845
  place: england
  parts:
    - name: paste
      kind: pastry
      lines: [8 oz of flour, 4 oz of butter, "cold water, more than it needs"]
      method: Rub in the butter and wet it with more water than is wanted.
`), tables(t))
	require.NoError(t, faults.Err())
	m := made(t, r)
	w := grams(t, m, 0, "water")
	require.True(t, w.IsExact())
	require.Equal(t, "110", w.Likely.String())
	for _, it := range m.Weighed.Parts[0].Items {
		require.Equal(t, formula.Stated, it.State)
	}
	require.False(t, m.Methods[0].Has("water_more"))
}
