package book_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/weigh"
)

// grams is what the only line of a receipt comes to, "low likely high", in a
// book that says so of its measures.
func grams(t *testing.T, measures, line string) (string, []string) {
	t.Helper()
	fsys := folder(map[string]string{
		"book.yaml": manuscript + measures,
		"tart.yaml": "title: Tart\nparts:\n  - kind: filling\n    lines: [" + line + "]\n",
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables(t))
	require.NoError(t, faults.Err())
	g := w.Parts[0].Items[0].Grams
	return fmt.Sprintf("%s %s %s", g.Low.Round(1), g.Likely.Round(1), g.High.Round(1)), w.Notes
}

// What a book says of its own measures stands in place of what such measures
// held elsewhere.
func TestOwnMeasures(t *testing.T) {
	gill, _ := grams(t, "", "a gill of water")
	cup, _ := grams(t, "", "a teacupful of water")
	require.NotEqual(t, gill, cup)

	own, notes := grams(t, "measures: this book's teacup is a gill\n", "a teacupful of water")
	require.Equal(t, gill, own)
	require.Contains(t, notes, "by the book's own word: this book's teacup is a gill")

	two, _ := grams(t, "", "2 gills of water")
	own, _ = grams(t, "measures: [the tea-cup holds a gill.]\n", "2 teacupfuls of water")
	require.Equal(t, two, own)

	own, _ = grams(t, "measures: [the wineglass is 2 to 3 fl oz]\n", "2 wineglasses of water")
	four, _ := grams(t, "", "4 to 6 fl oz of water")
	require.Equal(t, four, own)

	// Other measures are left as they are, and nothing is said of a measure
	// that was not met.
	again, notes := grams(t, "measures: [this book's teacup is a gill]\n", "a gill of water")
	require.Equal(t, gill, again)
	require.NotContains(t, fmt.Sprint(notes), "own word")
}

// Steps taken from another receipt say where they stand.
func TestStepsSayWhereTheyStand(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml":  manuscript,
		"tart.yaml":  "title: Tart\nparts:\n  - kind: pastry\n    take: Paste for tarts\n    method: [line the dish]\n    done: [part-bake]\n",
		"paste.yaml": "title: Short paste\nsource: leaf 4\nparts:\n  - {kind: pastry, lines: [1 lb of flour], method: [rub it], done: rest-paste}\n",
		"tarts.yaml": "title: Paste for tarts\nsource: leaf 9\nparts:\n  - {kind: pastry, take: Short paste, method: [roll it]}\n",
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.NoError(t, faults.Err())
	p := f.Parts[0]
	require.Equal(t, []string{"rub it", "roll it", "line the dish"}, p.Steps)
	require.Equal(t, []string{"Short paste (leaf 4)", "Paste for tarts (leaf 9)", ""}, p.StepsFrom)
	require.Equal(t, []string{"rest-paste", "part-bake"}, p.Done)
}

// A direction goes with the parts, classes and dishes it is for.
func TestDirectionsGoWithTheParts(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": manuscript + "standing:\n" +
			"  - {say: Rest it., for: pastry, step: rest-paste, where: leaf 3}\n" +
			"  - {say: Sift sugar over it., for: [lemon-tart, bread]}\n" +
			"  - {say: Butter it., dishes: [soup plate]}\n",
		"tart.yaml":  "title: Tart\ndish: a soup-plate\nparts:\n  - {kind: pastry, take: Short paste}\n  - {kind: filling, class: lemon-tart, lines: [6 eggs]}\n",
		"paste.yaml": "title: Short paste\nparts:\n  - {kind: pastry, lines: [1 lb of flour]}\n",
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.NoError(t, faults.Err())
	require.Equal(t, []formula.Direction{{Text: "Rest it.", Where: "leaf 3", Step: "rest-paste"}, {Text: "Butter it."}}, f.Parts[0].Standing)
	require.Equal(t, []formula.Direction{{Text: "Sift sugar over it."}, {Text: "Butter it."}}, f.Parts[1].Standing)
}

// A folder reads each of its files once, and gives each receipt as it would be
// given alone.
func TestFolderReadsAsFor(t *testing.T) {
	const dir = "../../testdata/demo/millrace"
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	d := book.NewFolder(os.DirFS(dir), ".", tables(t), formula.Kitchen{})
	for _, e := range entries {
		if e.Name() == "book.yaml" || e.Name() == "kitchen.yaml" || !strings.HasSuffix(e.Name(), ".yaml") {
			continue
		}
		want, _, faults := book.For(os.DirFS(dir), e.Name(), tables(t))
		require.NoError(t, faults.Err())
		got, _, faults := d.Receipt(e.Name())
		require.NoError(t, faults.Err())
		require.Equal(t, want, got, e.Name())
	}
}

// A thousand receipts of one book, each with a paste taken from another page.
func BenchmarkFolder(b *testing.B) {
	files := map[string]string{"book.yaml": manuscript, "paste.yaml": shortPaste}
	for i := range 999 {
		files[fmt.Sprintf("r%04d.yaml", i)] = fmt.Sprintf("title: Lemon tart %d\nparts:\n  - {name: case, kind: pastry, take: paste no 3}\n  - {name: filling, kind: filling, lines: [6 eggs, half a pound of sugar]}\n", i)
	}
	fsys, t := folder(files), tables(b)
	for b.Loop() {
		d := book.NewFolder(fsys, ".", t, formula.Kitchen{})
		for name := range files {
			if name == "book.yaml" {
				continue
			}
			if _, _, faults := d.Receipt(name); len(faults) > 0 {
				b.Fatal(faults)
			}
		}
	}
}
