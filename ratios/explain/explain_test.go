package explain_test

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/bench"
	"assize/formula/book"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const demo = "../../testdata/demo/millrace"

// page makes a receipt of the demo book ready.
func page(t testing.TB, name string) *explain.Bake {
	t.Helper()
	f, _, faults := book.For(os.DirFS(demo), name, tables(t))
	require.NoError(t, faults.Err())
	b, faults := explain.Receipt(judge.New(tables(t)), f)
	require.NoError(t, faults.Err())
	return b
}

// record is the blank record of a receipt of the demo book, filled in: each
// empty place given is put in place of the next.
func record(t testing.TB, name string, fill ...string) *explain.Bake {
	t.Helper()
	f, _, faults := book.For(os.DirFS(demo), name, tables(t))
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables(t))
	require.NoError(t, faults.Err())
	text, err := bench.Blank(w, tables(t))
	require.NoError(t, err)
	filled := string(text)
	for i := 0; i < len(fill); i += 2 {
		require.Contains(t, filled, fill[i])
		filled = strings.Replace(filled, fill[i], fill[i+1], 1)
	}
	r, faults := bench.Read("record.yaml", []byte(filled), tables(t))
	require.NoError(t, faults.Err(), filled)
	b, faults := explain.Record(judge.New(tables(t)), r)
	require.NoError(t, faults.Err())
	return b
}

// explained tells of the first result of some words.
func explained(t testing.TB, b *explain.Bake, words string) *explain.Explanation {
	t.Helper()
	seen, trouble := b.Tasted(words)
	require.Nil(t, trouble)
	require.NotEmpty(t, seen)
	e, err := b.Explain(seen[0])
	require.NoError(t, err)
	return e
}

// worked is one worked explanation of testdata.
type worked struct {
	Fault     string   `yaml:"fault" sheet:"required"`
	Published string   `yaml:"published" sheet:"required"`
	Tasted    string   `yaml:"tasted" sheet:"required"`
	Told      []string `yaml:"told" sheet:"required"`
	Where     string   `yaml:"where" sheet:"required"`
	Among     int      `yaml:"among" sheet:"required"`
	Says      string   `yaml:"says" sheet:"required"`

	reference.Provenance `yaml:",inline"`
}

// Each fault of texture is explained as the work named beside it explains it.
func TestWorkedExplanations(t *testing.T) {
	tab := tables(t)
	text, err := os.ReadFile("../../testdata/explained.yaml")
	require.NoError(t, err)
	var rows struct {
		Rows []worked `yaml:"rows"`
	}
	p := fault.NewPage("explained.yaml", text)
	sheet.Decode(p, &rows)
	require.Empty(t, p.Faults())
	told := map[string]bool{}
	for _, w := range rows.Rows {
		t.Run(w.Fault+"/"+w.Published, func(t *testing.T) {
			_, ok := tab.Source(w.Source)
			require.True(t, ok, w.Source)
			f := published(t, tab, w.Published)
			b, faults := explain.Receipt(judge.New(tab), f)
			require.NoError(t, faults.Err())
			e := explained(t, b, w.Tasted)
			require.True(t, e.Fault)
			list := e.Causes
			if w.Where == "might" {
				list = e.Might
			}
			at := slices.IndexFunc(list, func(c explain.Cause) bool { return slices.Contains(w.Told, c.ID) })
			require.True(t, at >= 0 && at < w.Among, "%s: %s\ntold: %s", w.Says, w.Source, changes(list))
			require.NotNil(t, list[at].Why, "no mechanism is written down")
		})
		told[w.Fault] = true
	}
	for _, f := range []string{"cakey", "curdles", "loose", "rubbery", "grainy", "starch-thin", "tough", "crumbly", "greasy", "soggy-base", "shrinks"} {
		require.True(t, told[f], f)
	}
}

func changes(list []explain.Cause) string {
	var out bytes.Buffer
	for _, c := range list {
		out.WriteString(c.ID + " (" + c.Done + "); ")
	}
	return out.String()
}

// published is a published formula by its id.
func published(t testing.TB, tab *reference.Tables, id string) *formula.Formula {
	t.Helper()
	i := slices.IndexFunc(tab.Published, func(p reference.Published) bool { return p.ID == id })
	require.GreaterOrEqual(t, i, 0, id)
	f, faults := trial.Formula(&tab.Published[i], tab)
	require.NoError(t, faults.Err())
	return f
}

// Creaming the butter is what made the demo pudding cakey; what would have
// changed it is told by how far, each kind apart, the most first.
func TestCausesAreRanked(t *testing.T) {
	e := explained(t, page(t, "rich-lemon-pudding.yaml"), "cakey")
	require.Equal(t, explain.LookedFor, e.Expected)
	require.Empty(t, e.Slight)
	last := 1.0
	seen := map[string]bool{}
	for _, c := range e.Causes {
		require.Less(t, c.From, c.To)
		require.InDelta(t, e.Share, c.To, 1e-9, "each from where the dish was")
		require.LessOrEqual(t, c.Moves(), last)
		last = c.Moves()
		require.NotEmpty(t, c.Instead)
		seen[c.ID] = true
		if c.Why != nil {
			require.Equal(t, 2, strings.Count(c.Why.Says, "."), "two plain sentences: %s", c.Why.Says)
		}
	}
	for _, id := range []string{"creaming", "oven-heat", "eggs-air", "egg"} {
		require.True(t, seen[id], id)
	}
	require.False(t, seen["bath"], "no cook stands a lined dish in water")
	require.True(t, e.Low <= e.Share && e.Share <= e.High)
}

// An amount outside what is usual of the class it is said to be is told so, on
// the side that matters and on no other.
func TestUnusualAmounts(t *testing.T) {
	b := page(t, "baked-custard.yaml")
	f := *b.Formula()
	f.Parts = slices.Clone(f.Parts)
	f.Parts[0].Lines = slices.Clone(f.Parts[0].Lines)
	r := &receipt.Reader{Tables: tables(t), Year: f.Year, Place: f.Place, KitchenYear: 2026, KitchenPlace: "england"}
	one, troubles := r.Line("1 egg")
	require.Empty(t, troubles)
	f.Parts[0].Lines[1] = one
	b, faults := explain.Receipt(judge.New(tables(t)), &f)
	require.NoError(t, faults.Err())
	e := explained(t, b, "runny")
	at := slices.IndexFunc(e.Causes, func(c explain.Cause) bool { return c.ID == "egg" })
	require.GreaterOrEqual(t, at, 0)
	require.NotNil(t, e.Causes[at].Unusual)
	require.Equal(t, judge.Below, e.Causes[at].Unusual.Verdict)
	for _, c := range explained(t, page(t, "rich-lemon-pudding.yaml"), "cakey").Causes {
		require.Nil(t, c.Unusual, "it is of no class of today")
	}
}

// What is recorded takes the place of what is written: the same pudding with
// its butter melted in a gentle oven is not to be cakey, and a record that says
// so must not blame the creaming.
func TestRecordIsExplained(t *testing.T) {
	b := record(t, "rich-lemon-pudding.yaml",
		"  - part: filling\n", "  - part: filling\n    done: [the butter melted and stirred in, eggs slightly beaten]\n",
		"    added: # what the receipt does not list, as - {of: cornflour, grams: 8}\n      -\n    done: # how it was made where you did otherwise, or the receipt does not say\n      -\ndish", "dish",
		"oven: # readings, as - {minute: 0, heat: 200 C}\n  -", "oven: [{minute: 0, heat: 150 C}]")
	e := explained(t, b, "cakey")
	require.Equal(t, explain.NotExpected, e.Expected)
	require.Greater(t, e.Written, .9)
	for _, c := range e.Causes {
		require.NotEqual(t, "creaming", c.ID)
	}
	require.True(t, slices.ContainsFunc(e.Might, func(c explain.Cause) bool { return c.ID == "creaming" }), "had it been creamed after all")
	require.NotEmpty(t, e.Outside)
}

// What a silent receipt leaves open of its method stays open when part of it is
// told.
func TestWhatIsNotToldStaysOpen(t *testing.T) {
	tab := tables(t)
	text := "parts:\n  - {part: filling, done: beat the eggs}\nformula:\n"
	for l := range strings.Lines(open[0].formula) {
		text += "  " + l
	}
	r, faults := bench.Read("record.yaml", []byte(text), tab)
	require.NoError(t, faults.Err())
	b, faults := explain.Record(judge.New(tab), r)
	require.NoError(t, faults.Err())
	e := explained(t, b, "cakey")
	at := slices.IndexFunc(e.Doubts, func(c explain.Cause) bool {
		return strings.HasPrefix(c.Done, "whether the butter was creamed or melted")
	})
	require.GreaterOrEqual(t, at, 0)
	require.Equal(t, "creamed", e.Doubts[at].Most)
	require.Equal(t, "melted", e.Doubts[at].Least)
	require.False(t, slices.ContainsFunc(e.Doubts, func(c explain.Cause) bool { return strings.HasPrefix(c.Done, "how the eggs were beaten (") }))
}

// The least that answers comes first, and everything that is told was computed.
func TestNextIsSmallestFirst(t *testing.T) {
	e := explained(t, page(t, "rich-lemon-pudding.yaml"), "cakey")
	require.NotEmpty(t, e.Next)
	require.True(t, e.Next[0].Answers)
	for i, s := range e.Next {
		require.Less(t, s.Left, e.Share)
		require.Equal(t, "cakey", s.Effect[0].What)
		require.InDelta(t, s.Left, s.Effect[0].After, 1e-9)
		require.GreaterOrEqual(t, len(s.Effect), 5, "the set, the room before curdling, the fill and the sweetness too")
		for _, other := range e.Next[:i] {
			require.False(t, s.Answers && !other.Answers)
			if s.Answers == other.Answers {
				require.GreaterOrEqual(t, s.Ingredients, other.Ingredients, "method and oven before ingredients")
			}
		}
	}
}

// Where no few steps answer, the least change to the page that does is sought.
func TestVariantWhereStepsDoNotAnswer(t *testing.T) {
	tab := tables(t)
	b, faults := explain.Receipt(judge.New(tab), published(t, tab, "far-floury"))
	require.NoError(t, faults.Err())
	e := explained(t, b, "rubbery")
	require.NotEmpty(t, e.Next)
	for _, s := range e.Next {
		require.False(t, s.Answers)
	}
	require.NotNil(t, e.Variant)
	require.True(t, e.Variant.Found)
	require.Less(t, e.Variant.Effects[0].After, judge.May)
	require.Nil(t, explained(t, page(t, "rich-lemon-pudding.yaml"), "cakey").Variant)
}

// What the kind is meant to be is not to be mended.
func TestAsMeant(t *testing.T) {
	tab := tables(t)
	i := slices.IndexFunc(tab.Classes, func(c reference.Class) bool { return c.Kind == "filling" && c.Meant == "cakey" && c.Era == "modern" })
	require.GreaterOrEqual(t, i, 0)
	b := page(t, "rich-lemon-pudding.yaml")
	f := *b.Formula()
	f.Parts = slices.Clone(f.Parts)
	f.Parts[1].Class = tab.Classes[i].ID
	b, faults := explain.Receipt(judge.New(tab), &f)
	require.NoError(t, faults.Err())
	e := explained(t, b, "spongy")
	require.True(t, e.AsMeant)
	require.Equal(t, tab.Classes[i].ID, e.Class.ID)
	require.Empty(t, e.Next)
}

// doubtful is a custard of which the cream is a matter of how the book is read.
func doubtful(t testing.TB, head, meant string) *explain.Bake {
	t.Helper()
	text := head + `formula:
  title: A custard
  year: 1838
  place: england
  meant: ` + meant + `
  kitchen: {year: 2026, place: england, eggs: {grams: 50}}
  parts:
    - name: custard
      kind: filling
      lines:
        - {either: [1 egg, 4 eggs], why: a blot}
        - 500 g of milk
        - 60 g of sugar
      method:
        - Beat the eggs slightly and bake in a slow oven, the dish set in water.
`
	r, faults := bench.Read("record.yaml", []byte(text), tables(t))
	require.NoError(t, faults.Err())
	b, faults := explain.Record(judge.New(tables(t)), r)
	require.NoError(t, faults.Err())
	return b
}

// A custard that should stand and did not: of one egg and four, four is what
// the receipt must mean, and one is what was in the bowl.
func TestWhatItSaysOfTheReceipt(t *testing.T) {
	e := explained(t, doubtful(t, "", "stiff as a jelly"), "runny")
	r := e.Receipt
	require.Equal(t, "custard-set", r.Texture.ID)
	require.False(t, r.AsMeant)
	require.True(t, r.Tells)
	require.Len(t, r.Doubts, 1)
	one, four := r.Doubts[0].Ways[0], r.Doubts[0].Ways[1]
	require.Contains(t, one.Words, "1 egg")
	require.Less(t, one.After, one.Before)
	require.Greater(t, four.After, .7)
	require.Greater(t, one.InBowl, .7)

	// When it came out as it should, the two are one.
	e = explained(t, doubtful(t, "", "stiff as a jelly"), "like a custard")
	require.True(t, e.Receipt.AsMeant)
	require.Equal(t, e.Receipt.Doubts[0].Ways[1].After, e.Receipt.Doubts[0].Ways[1].InBowl)
	require.Greater(t, e.Receipt.Doubts[0].Ways[1].After, .7)
}

// What was weighed is never reasoned about, nor is anything where nobody says
// how the dish should be, or says it in words that cannot be told.
func TestNothingIsSaidOfWhatWasWeighed(t *testing.T) {
	weighed := "parts:\n  - part: custard\n    used:\n      - {line: 1 egg or 4 eggs, grams: 52}\n"
	e := explained(t, doubtful(t, weighed, "stiff as a jelly"), "runny")
	require.NotNil(t, e.Receipt.Texture)
	require.Empty(t, e.Receipt.Doubts)
	require.False(t, e.Receipt.Tells)

	e = explained(t, doubtful(t, "", "very elegant"), "runny")
	require.Equal(t, "very elegant", e.Receipt.Meant)
	require.Nil(t, e.Receipt.Texture)
	require.Empty(t, e.Receipt.Doubts)

	e = explained(t, page(t, "baked-custard.yaml"), "runny")
	require.Empty(t, e.Receipt.Meant)
}

// Where every way of taking the receipt makes the dish as it should be, the
// tasting cannot tell between them.
func TestWhenTheTastingCannotTell(t *testing.T) {
	e := explained(t, page(t, "lemon-cheesecakes.yaml"), "like lemon curd")
	require.True(t, e.Receipt.AsMeant)
	require.NotEmpty(t, e.Receipt.Doubts)
	require.False(t, e.Receipt.Tells)
}

// Tasters are kept apart: each result has those who saw it, and no other.
func TestTastersAreKeptApart(t *testing.T) {
	b := record(t, "baked-custard.yaml", "  - by:\n", "  - {by: Anne, cut: small holes}\n  - {by: Ben, when: hot, cut: [clean, small holes], liquid: a pool}\n  - by:\n")
	var got []string
	for _, s := range b.Results() {
		got = append(got, s.Texture.ID+": "+strings.Join(s.By, " and "))
	}
	require.Equal(t, []string{"cakey: Anne and Ben, hot", "weeps: Ben, hot", "sets: Ben, hot"}, got)
}

// A case is readied wherever the receipt says so: of the paste, or of what is
// poured into it.
func TestCaseIsReadiedAnywhere(t *testing.T) {
	e := explained(t, page(t, "rich-lemon-pudding.yaml"), "soggy bottom")
	require.Equal(t, explain.ByPractice, e.Expected)
	require.Equal(t, 1.0, e.Share)
	e = explained(t, page(t, "arrowroot-lemon-tart.yaml"), "soggy bottom")
	require.Zero(t, e.Share, "it is poured into a baked case")
	require.NotEmpty(t, e.Outside)
}

// A taste is told by what is sour and sweet in it, without odds.
func TestTasteIsNotForetold(t *testing.T) {
	e := explained(t, page(t, "rich-lemon-pudding.yaml"), "too sour")
	require.Equal(t, explain.NotForetold, e.Expected)
	require.Equal(t, explain.Acid, e.In)
	require.Equal(t, "juice", e.Causes[0].ID)
	for _, c := range e.Causes {
		require.Contains(t, []string{"juice", "sugar"}, c.ID)
	}
	require.Less(t, e.Next[0].Left, e.Share)
	require.Equal(t, explain.Sugar, explained(t, page(t, "rich-lemon-pudding.yaml"), "cloying").In)
}

// Two runs give the same answers to the last bit.
func TestSameAnswersEveryTime(t *testing.T) {
	a, b := explained(t, page(t, "seville-orange-tart.yaml"), "smooth"), explained(t, page(t, "seville-orange-tart.yaml"), "smooth")
	require.Equal(t, a.Causes, b.Causes)
	require.Equal(t, a.Doubts, b.Doubts)
	require.Equal(t, a.Share, b.Share)
}

// The heat that was measured is held against what the thing wants.
func TestCentre(t *testing.T) {
	for heat, verdict := range map[string]string{"60 C": "under", "80 C": "within", "98 C": "over"} {
		b := record(t, "baked-custard.yaml", "centre:   ", "centre: "+heat+" ")
		d := explained(t, b, "weeping").Doneness
		require.NotNil(t, d)
		require.Equal(t, verdict, d.Verdict, heat)
	}
	require.Nil(t, explained(t, record(t, "baked-custard.yaml"), "weeping").Doneness)
}

// Two records that differ in one thing differ in that alone; a batch twice as
// large is no difference but its size.
func TestCompare(t *testing.T) {
	same := explain.Compare(page(t, "rich-lemon-pudding.yaml"), page(t, "rich-lemon-pudding.yaml"))
	require.Empty(t, same.Differ)
	melted := record(t, "baked-custard.yaml", "  - part: custard\n", "  - part: custard\n    added: [{of: cornflour, grams: 10}]\n",
		"    added: # what the receipt does not list, as - {of: cornflour, grams: 8}\n      -\n", "")
	c := explain.Compare(page(t, "baked-custard.yaml"), melted)
	require.Len(t, c.Differ, 1)
	require.Equal(t, 1, c.Count())
	require.Equal(t, "cornflour (maize starch)", c.Differ[0].What)
	require.Empty(t, c.Differ[0].A)
	require.Contains(t, c.Differ[0].B, "10 g")

	double := record(t, "baked-custard.yaml",
		"- line: 1 pint of new milk\n        grams:", "- line: 1 pint of new milk\n        grams: 1172 #",
		"- line: 4 eggs\n        grams:", "- line: 4 eggs\n        grams: 424 #",
		"- line: 2 oz of loaf sugar\n        grams:", "- line: 2 oz of loaf sugar\n        grams: 113.4 #")
	single := record(t, "baked-custard.yaml",
		"- line: 1 pint of new milk\n        grams:", "- line: 1 pint of new milk\n        grams: 586 #",
		"- line: 4 eggs\n        grams:", "- line: 4 eggs\n        grams: 212 #",
		"- line: 2 oz of loaf sugar\n        grams:", "- line: 2 oz of loaf sugar\n        grams: 56.7 #")
	c = explain.Compare(single, double)
	var what []string
	for _, d := range c.Differ {
		what = append(what, d.What)
	}
	require.Contains(t, what, "how much is made")
	require.NotContains(t, what, "egg")
}

// Explain at 2,000 readings: at most a second.
func BenchmarkExplain(b *testing.B) {
	x := page(b, "rich-lemon-pudding.yaml")
	seen, _ := x.Tasted("cakey")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := x.Explain(seen[0]); err != nil {
			b.Fatal(err)
		}
	}
}

// What is allocated does not grow with the readings.
func TestNothingIsAllocatedPerReading(t *testing.T) {
	f := page(t, "seville-orange-tart.yaml").Formula()
	allocs := func(n int) float64 {
		j := judge.New(tables(t))
		j.Readings = n
		b, faults := explain.Receipt(j, f)
		require.NoError(t, faults.Err())
		seen, trouble := b.Tasted("cakey")
		require.Nil(t, trouble)
		return testing.AllocsPerRun(3, func() {
			_, err := b.Explain(seen[0])
			require.NoError(t, err)
		})
	}
	few, many := allocs(100), allocs(2000)
	require.InDelta(t, few, many, .02*few)
}

// The same where no few steps answer and the least change to the page is sought.
func BenchmarkExplainWithVariant(b *testing.B) {
	x, faults := explain.Receipt(judge.New(tables(b)), published(b, tables(b), "far-floury"))
	require.NoError(b, faults.Err())
	seen, _ := x.Tasted("rubbery")
	b.ReportAllocs()
	for b.Loop() {
		if e, err := x.Explain(seen[0]); err != nil || e.Variant == nil {
			b.Fatal(err)
		}
	}
}
