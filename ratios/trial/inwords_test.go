package trial

import (
	"os"
	"path"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/reference"
)

const wordsFolder = "../../testdata/receipts-in-words"

func wordsKey(t *testing.T, tables *reference.Tables) []InWords {
	t.Helper()
	key, err := ReadKey(os.DirFS(wordsFolder), tables)
	require.NoError(t, err)
	return key
}

// Every receipt of the key names a work of the sources table, and its formula
// is one that `check` takes: each thing known and weighed, each take found.
func TestKeyOfReceiptsInWordsIsSound(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	key := wordsKey(t, tables)
	books := map[string]int{}
	shapes := map[string]int{}
	refers, doubts, longS := 0, 0, 0
	seen := map[string]bool{}
	for i := range key {
		w := &key[i]
		require.False(t, seen[w.File], w.File)
		seen[w.File] = true
		require.NotEmpty(t, w.Locator, w.File)
		require.Contains(t, Shapes, w.Shape, w.File)
		shapes[w.Shape]++
		if w.Source != Ours {
			books[w.Source]++
		}
		for _, m := range w.Methods {
			_, ok := tables.Method(m)
			require.True(t, ok, "%s: method %s", w.File, m)
		}
		if w.Refers {
			refers++
			require.True(t, slices.ContainsFunc(w.Want.Parts, func(p formula.Part) bool { return p.Take != "" }), w.File)
		}
		if w.Doubts {
			doubts++
			require.Contains(t, string(w.Text), "[", w.File)
		}
		if w.LongS {
			longS++
			require.Contains(t, string(w.Text), "ſ", w.File)
		}
		f, _, faults := book.For(os.DirFS(wordsFolder), strings.TrimSuffix(w.File, path.Ext(w.File))+".yaml", tables)
		require.Empty(t, faults, w.File)
		_, faults = weigh.Weigh(f, tables)
		require.Empty(t, faults, w.File)
	}
	require.GreaterOrEqual(t, len(key), 36)
	require.GreaterOrEqual(t, shapes["woven"], 12)
	require.GreaterOrEqual(t, refers, 6)
	require.GreaterOrEqual(t, doubts, 5)
	require.GreaterOrEqual(t, longS, 2)
	require.GreaterOrEqual(t, shapes["modern list"], 5)
	require.GreaterOrEqual(t, shapes["page"], 3)
	require.GreaterOrEqual(t, len(books), 8)
}

// pair makes a key of one formula and reads another, to hold against it.
func pair(t *testing.T, want, got string, beside ...string) WordsScore {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	fsys := fstest.MapFS{
		"key.yaml":       {Data: []byte("alike: [[sugar_white, sugar_loaf_powdered]]\nrows:\n- {file: b/tart.txt, source: ours, locator: here, shape: woven}\n")},
		"b/tart.txt":     {Data: []byte("A tart.")},
		"b/tart.yaml":    {Data: []byte("title: Tart\nyear: 1840\nplace: england\n" + want)},
		"b/puff.yaml":    {Data: []byte("title: Puff paste\nalso: [No. 7]\nyear: 1840\nplace: england\nparts: [{kind: pastry, lines: [1 lb flour]}]\n")},
		"b/another.yaml": {Data: []byte("title: Cold paste\nyear: 1840\nplace: england\nparts: [{kind: pastry, lines: [1 lb flour]}]\n")},
	}
	key, err := ReadKey(fsys, tables)
	require.NoError(t, err)
	key[0].Beside = beside
	f, faults := file.Read("got.yaml", []byte("title: Tart\nyear: 1840\nplace: england\n"+got), tables)
	require.Empty(t, faults)
	return key[0].HoldAgainst(f, tables, receipt.NewMethodReader(tables))
}

func filling(lines string) string {
	return "parts:\n- kind: filling\n  lines: [" + lines + "]\n"
}

func TestFormulasHeldAgainstTheKey(t *testing.T) {
	for _, c := range []struct {
		name, want, got string
		beside          []string
		// expected, read, found, right
		counts [4]int
		whole  bool
	}{
		{name: "all as it should be", want: filling("6 eggs, half a pound of sugar"), got: filling("half a pound of sugar, 6 eggs"), counts: [4]int{2, 2, 2, 2}, whole: true},
		{name: "half a pound is eight ounces", want: filling("half a pound of sugar"), got: filling("8 oz of sugar"), counts: [4]int{1, 1, 1, 1}, whole: true},
		{name: "half a pound is not half a pint", want: filling("half a pint of sugar"), got: filling("half a pound of sugar"), counts: [4]int{1, 1, 1, 0}},
		{name: "missing", want: filling("6 eggs, half a pound of sugar"), got: filling("6 eggs"), counts: [4]int{2, 1, 1, 1}},
		{name: "invented", want: filling("6 eggs"), got: filling("6 eggs, 1 lb of currants"), counts: [4]int{1, 2, 1, 1}},
		{name: "no matter", want: filling("6 eggs"), got: filling("6 eggs, a little butter"), beside: []string{"butter"}, counts: [4]int{1, 1, 1, 1}, whole: true},
		{name: "wrong number", want: filling("6 eggs"), got: filling("8 eggs"), counts: [4]int{1, 1, 1, 0}},
		{name: "two or three are not two", want: filling("2 or 3 eggs"), got: filling("2 eggs"), counts: [4]int{1, 1, 1, 0}},
		{name: "large lemons are not lemons", want: filling("juice of 2 large lemons"), got: filling("juice of 2 lemons"), counts: [4]int{1, 1, 1, 0}},
		{name: "enough is not a little", want: filling("enough milk to mix"), got: filling("a little milk"), counts: [4]int{1, 1, 1, 0}},
		{name: "weight of eggs", want: filling("the weight of 4 eggs in sugar"), got: filling("the weight of 5 eggs in sugar"), counts: [4]int{1, 1, 1, 0}},
		{name: "the same thing twice", want: filling("8 eggs, 2 eggs"), got: filling("2 eggs, 8 eggs"), counts: [4]int{2, 2, 2, 2}, whole: true},
		{name: "pounded or not", want: filling("half a pound of pounded sugar"), got: filling("half a pound of sugar"), counts: [4]int{1, 1, 1, 1}, whole: true},
		{name: "another ingredient", want: filling("1 lb of butter"), got: filling("1 lb of lard"), counts: [4]int{1, 1, 0, 0}},
		{
			name: "one or the other", want: filling("{either: [5 eggs, 6 eggs]}"), got: filling("{either: [6 eggs, 5 eggs]}"),
			counts: [4]int{1, 1, 1, 1}, whole: true,
		},
		{name: "two weights of one thing are their sum", want: filling("10 oz of sugar"), got: filling("half a pound and 2 oz of sugar"), counts: [4]int{1, 1, 1, 1}, whole: true},
		{name: "a wrong sum is wrong", want: filling("11 oz of sugar"), got: filling("half a pound and 2 oz of sugar"), counts: [4]int{1, 1, 1, 0}},
		{name: "on lines of their own they are not summed", want: filling("10 oz of sugar"), got: filling("half a pound of sugar, 2 oz of sugar"), counts: [4]int{1, 2, 1, 0}},
		{name: "grams and ounces are not summed", want: filling("10 oz of sugar"), got: filling("half a pound and 57 g of sugar"), counts: [4]int{1, 2, 1, 0}},
		{name: "cups are not summed", want: filling("2 cups of sugar"), got: filling("1 cup and 1 cup of sugar"), counts: [4]int{1, 2, 1, 0}},
		{name: "a doubt lost", want: filling("{either: [5 eggs, 6 eggs]}"), got: filling("5 eggs"), counts: [4]int{1, 1, 1, 0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := pair(t, c.want, c.got, c.beside...)
			require.Equal(t, c.counts, [4]int{s.Expected, s.Read, s.Found, s.Right}, "%v", s.Faults)
			require.Equal(t, c.whole, s.Whole == 1, "%v", s.Faults)
			require.Equal(t, c.whole, len(s.Faults) == 0)
		})
	}
}

func TestPartsAndTakesHeldAgainstTheKey(t *testing.T) {
	two := func(take, lay, lines string) string {
		return "parts:\n- {kind: pastry, take: " + take + ", lay: " + lay + "}\n- kind: filling\n  lines: [" + lines + "]\n"
	}
	want := two("puff paste", "rim", "6 eggs")

	s := pair(t, want, two("No. 7", "rim", "6 eggs"))
	require.Equal(t, 1, s.Whole, "%v", s.Faults)
	require.Equal(t, [3]int{1, 1, 1}, [3]int{s.Takes, s.TakesRead, s.TakesRight})

	s = pair(t, want, two("cold paste", "rim", "6 eggs"))
	require.Zero(t, s.TakesRight, "another receipt of the book")

	s = pair(t, want, two("puff paste", "lid", "6 eggs"))
	require.Equal(t, [2]int{1, 0}, [2]int{s.Said, s.SaidRight})

	s = pair(t, want, filling("6 eggs"))
	require.Equal(t, [3]int{2, 1, 1}, [3]int{s.Parts, s.PartsRead, s.PartsRight})
	require.Equal(t, [4]int{1, 1, 1, 1}, [4]int{s.Expected, s.Read, s.Found, s.Placed})

	// An ingredient in the wrong part is found, and out of place.
	both := func(a, b string) string {
		return "parts:\n- kind: pastry\n  lines: [" + a + "]\n- kind: filling\n  lines: [" + b + "]\n"
	}
	s = pair(t, both("1 lb flour, 4 oz butter", "6 eggs, 8 oz butter"), both("1 lb flour, 4 oz butter, 8 oz butter", "6 eggs"))
	require.Equal(t, [4]int{4, 4, 4, 3}, [4]int{s.Expected, s.Found, s.Right, s.Placed}, "%v", s.Faults)
}

func TestBakingHeldAgainstTheKey(t *testing.T) {
	lines := filling("6 eggs")
	for _, c := range []struct {
		want, got string
		right     int
	}{
		{"oven: slow\nbake: half an hour\n", "oven: a slow oven\nbake: 30 minutes\n", 2},
		{"oven: slow\nbake: half an hour\n", "oven: quick\nbake: an hour\n", 0},
		{"bake: 20 to 30 minutes\n", "bake: 20 minutes\n", 0},
		{"bake: 35 min at 140 C\n", "oven: 140 C\nbake: 35 min\n", 1},
		{"oven: 140 C\nbake: 35 min\n", "bake: 35 min at 140 C\n", 2},
		{"dish: a shallow dish\n", "", 0},
	} {
		require.Equal(t, c.right, pair(t, lines+c.want, lines+c.got).SaidRight, c.want+" / "+c.got)
	}
}

func TestReceiptThatIsNotReadMissesEverything(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	w := wordsKey(t, tables)[0]
	s := w.HoldAgainst(nil, tables, receipt.NewMethodReader(tables))
	require.Positive(t, s.Expected)
	require.Zero(t, s.Found+s.Read+s.PartsRight+s.Whole)
}

// The floors that the reader of words has reached: on the receipts it was
// developed on, and on those kept back at first and learnt from since. They may
// rise; a change that lets one sink is a fault.
func TestReaderOfWordsHoldsItsFloors(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	methods := receipt.NewMethodReader(tables)
	sets := map[string]*WordsScore{"": {}, "kept-back": {}, "later": {}}
	for _, w := range wordsKey(t, tables) {
		s := w.HoldAgainst(w.Read(tables), tables, methods)
		sets[w.Set()].Add(s)
	}
	require.GreaterOrEqual(t, sets["kept-back"].Receipts, 8)
	for _, half := range []struct {
		score  *WordsScore
		floors map[string]float64
	}{{sets[""], developedFloor}, {sets["kept-back"], keptBackFloor}} {
		for _, row := range half.score.Rows() {
			floor, held := half.floors[row.Name]
			if !held {
				continue
			}
			share := float64(row.Right) / float64(row.Of)
			require.GreaterOrEqual(t, share, floor, "%s: %d of %d\n%s", row.Name, row.Right, row.Of, strings.Join(half.score.Faults, "\n"))
		}
	}
}

var (
	developedFloor = map[string]float64{
		"ingredients, recall":                          .99,
		"ingredients, precision":                       .99,
		"ingredients with their amount, recall":        .98,
		"ingredients with their amount, precision":     .98,
		"ingredients found that are in the right part": .99,
		"parts, recall":                                .97,
		"parts, precision":                             .97,
		"parts taken from elsewhere in the book":       .94,
	}
	keptBackFloor = map[string]float64{
		"ingredients, recall":                          .95,
		"ingredients, precision":                       .95,
		"ingredients with their amount, recall":        .90,
		"ingredients with their amount, precision":     .90,
		"ingredients found that are in the right part": .98,
	}
)

// A name of a figure that is held must be one that is printed.
func TestFloorNamesFiguresThatAreScored(t *testing.T) {
	names := map[string]bool{}
	for _, row := range (&WordsScore{}).Rows() {
		names[row.Name] = true
	}
	for _, floors := range []map[string]float64{developedFloor, keptBackFloor} {
		for name := range floors {
			require.True(t, names[name], name)
		}
	}
}
