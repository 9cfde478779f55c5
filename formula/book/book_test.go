package book_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
)

func folder(files map[string]string) fstest.MapFS {
	out := fstest.MapFS{}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644}
	}
	return out
}

const (
	manuscript = "title: Millrace House manuscript\nyear: 1838\nplace: england\n"
	shortPaste = "title: Short paste\nalso: [Paste No. 3]\nparts:\n  - name: the paste\n    kind: pastry\n    class: shortcrust\n    lay: rim\n    lines:\n      - 1 lb of flour\n      - 8 oz of butter\n    method: [rub the butter in]\n"
	lemonTart  = "title: Lemon tart\nparts:\n  - name: case\n    kind: pastry\n    take: paste-no 3\n    method: [line the dish with it]\n  - name: filling\n    kind: filling\n    lines: [6 eggs]\n"
)

func TestFor(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml":    manuscript + "standing:\n  - {say: Glaze the case., for: pastry}\n",
		"kitchen.yaml": "year: 2026\neggs: large\n",
		"tart.yaml":    lemonTart,
		"paste.yaml":   shortPaste,
		"broken.yaml":  "title: Something else\nparts: nothing\n",
	})
	f, b, faults := book.For(fsys, "tart.yaml", tables(t))
	require.Empty(t, faults, "a broken receipt that is not taken does not matter")
	require.Equal(t, 1838, f.Year)
	require.Equal(t, "england", f.Place)
	require.Equal(t, "Millrace House manuscript", f.Source)
	require.Equal(t, "large", f.Kitchen.EggSize)

	paste := f.Parts[0]
	require.Equal(t, "case", paste.Name, "the taker's name is kept")
	require.Equal(t, "rim", paste.Lay, "the lay is the taken part's when the taker gives none")
	require.Equal(t, "shortcrust", paste.Class)
	require.Equal(t, "Short paste", paste.From)
	require.Empty(t, paste.Take)
	require.Equal(t, []string{"rub the butter in", "line the dish with it"}, paste.Steps)
	require.Len(t, paste.Lines, 2)
	require.Equal(t, "1 lb of flour", paste.Lines[0].Text)
	require.Equal(t, formula.Pos{Line: 5, Column: 11}, paste.Lines[0].Pos, "where the taker names it")

	require.Len(t, b.Directions(f, 0), 1)
	require.Empty(t, b.Directions(f, 1))
}

// The taker's lay and class stand over the taken part's.
func TestTakerDecides(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": manuscript, "paste.yaml": shortPaste,
		"tart.yaml": strings.Replace(lemonTart, "    take:", "    lay: lid\n    class: puff\n    take:", 1),
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.Empty(t, faults)
	require.Equal(t, "lid", f.Parts[0].Lay)
	require.Equal(t, "puff", f.Parts[0].Class)
}

func TestTakenTwiceOver(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml":  manuscript,
		"tart.yaml":  strings.Replace(lemonTart, "paste-no 3", "Paste for tarts", 1),
		"paste.yaml": shortPaste,
		"tarts.yaml": "title: Paste for tarts\nparts:\n  - kind: pastry\n    take: Short-Paste\n    method: [roll it thin]\n",
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.Empty(t, faults)
	require.Equal(t, "Short paste", f.Parts[0].From, "where the lines stand")
	require.Equal(t, []string{"rub the butter in", "roll it thin", "line the dish with it"}, f.Parts[0].Steps)
}

func TestOpen(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": manuscript, "tart.yaml": lemonTart, "paste.yaml": shortPaste,
		".hidden.yaml": "nonsense", "notes.txt": "nonsense", "inner/other.yaml": "nonsense",
	})
	b, faults := book.Open(fsys, tables(t))
	require.Empty(t, faults)
	require.Len(t, b.Receipts, 2)
	require.Equal(t, "Short paste", b.Receipts[0].Title, "in the order of the files")

	taker := b.Receipts[1]
	resolved, faults := b.Resolve(taker)
	require.Empty(t, faults)
	require.Len(t, resolved.Parts[0].Lines, 2)
	require.Empty(t, taker.Parts[0].Lines, "the formula given is not changed")
	require.Equal(t, formula.Pos{Line: 9, Column: 9}, b.Receipts[0].Parts[0].Lines[0].Pos, "nor the one taken from")
}

// A receipt in a folder below is read with what stands beside it there, and
// is called as the person calls it.
func TestFolderBelow(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": "year: 1700\nplace: usa\n", "house/book.yaml": manuscript,
		"house/tart.yaml": lemonTart, "house/paste.yaml": shortPaste, "house/bad.yaml": "titel: x\n",
	})
	f, _, faults := book.For(fsys, "house/tart.yaml", tables(t))
	require.Empty(t, faults)
	require.Equal(t, 1838, f.Year)
	_, _, faults = book.For(fsys, "house/bad.yaml", tables(t))
	require.NotEmpty(t, faults)
	require.Equal(t, "house/bad.yaml", faults[0].File)
}

func TestNoSuchFile(t *testing.T) {
	_, _, faults := book.For(folder(map[string]string{"tart.yaml": lemonTart, "book.yaml": manuscript}), "trat.yaml", tables(t))
	require.Len(t, faults, 1)
	require.Equal(t, "there is no such file", faults[0].What)
	require.Equal(t, `did you mean "tart.yaml"?`, faults[0].Hint)

	_, _, faults = book.For(folder(map[string]string{"house/tart.yaml": lemonTart}), "house", tables(t))
	require.Len(t, faults, 1)
	require.Equal(t, "this is a folder", faults[0].What)
}

// Links could lead out of the folder; none is followed.
func TestLinksAreRefused(t *testing.T) {
	outside, dir := t.TempDir(), t.TempDir()
	write := func(name, text string) { require.NoError(t, os.WriteFile(name, []byte(text), 0o644)) }
	write(filepath.Join(outside, "paste.yaml"), shortPaste)
	write(filepath.Join(dir, "book.yaml"), manuscript)
	write(filepath.Join(dir, "tart.yaml"), lemonTart)
	require.NoError(t, os.Symlink(filepath.Join(outside, "paste.yaml"), filepath.Join(dir, "paste.yaml")))

	_, faults := book.Open(os.DirFS(dir), tables(t))
	require.Len(t, faults, 1)
	require.Equal(t, "paste.yaml: error: this is a link to another file", faults[0].Error())

	_, _, faults = book.For(os.DirFS(dir), "tart.yaml", tables(t))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Hint, "paste.yaml cannot be read and may hold it")

	_, _, faults = book.For(os.DirFS(dir), "paste.yaml", tables(t))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].What, "link")

	require.NoError(t, os.Remove(filepath.Join(dir, "book.yaml")))
	require.NoError(t, os.Symlink(filepath.Join(outside, "nowhere.yaml"), filepath.Join(dir, "book.yaml")))
	_, _, faults = book.For(os.DirFS(dir), "tart.yaml", tables(t))
	require.Len(t, faults, 1)
	require.Equal(t, "book.yaml", faults[0].File)
}

func TestTooLarge(t *testing.T) {
	fsys := folder(map[string]string{"book.yaml": manuscript, "tart.yaml": lemonTart})
	fsys["paste.yaml"] = &fstest.MapFile{Data: bytes.Repeat([]byte("# x\n"), 1<<19)}
	_, faults := book.Open(fsys, tables(t))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].What, "at most 1048576 are read")
}

// A kitchen named on the command line stands over the folder's and over the
// receipt's own, in what it says.
func TestForKitchen(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": manuscript, "kitchen.yaml": "year: 2026\noven: fan\neggs: large\n",
		"custard.yaml": "title: Custard\nkitchen: {eggs: small, oven: gas}\nparts:\n  - kind: filling\n    lines: [6 eggs]\n",
	})
	f, _, faults := book.ForKitchen(fsys, "custard.yaml", tables(t), formula.Kitchen{Given: true, EggGrams: decimal.NewFromInt(54)})
	require.Empty(t, faults)
	require.Equal(t, "54", f.Kitchen.EggGrams.String())
	require.Empty(t, f.Kitchen.EggSize)
	require.Equal(t, "gas", f.Kitchen.Oven)
	require.Equal(t, 2026, f.Kitchen.Year)
}

// What a lemon means goes by the kitchen that bakes the tart, in a part taken
// from a receipt with a kitchen of its own as well.
func TestTakenPartFollowsTheKitchen(t *testing.T) {
	fsys := folder(map[string]string{
		"book.yaml": manuscript,
		"tart.yaml": "title: Tart\nkitchen: {year: 2026, place: england}\nparts:\n  - kind: filling\n    take: Curd\n",
		"curd.yaml": "title: Curd\nkitchen: {year: 1838, place: england}\nparts:\n  - kind: filling\n    lines: [the juice of 3 lemons]\n",
	})
	f, b, faults := book.For(fsys, "tart.yaml", tables(t))
	require.Empty(t, faults)
	require.Equal(t, "lemon_juice", f.Parts[0].Lines[0].Items[0].Ingredient)
	for _, r := range b.Receipts {
		if r.Title == "Curd" {
			require.Equal(t, "lemon_juice_period", r.Parts[0].Lines[0].Items[0].Ingredient)
		}
	}
}

// The wine pint of a receipt of 1810 is not the pint of 1900, by whose
// measures the whole is weighed: the line says so.
func TestTakenFromAnotherTime(t *testing.T) {
	fsys := folder(map[string]string{
		"tart.yaml": "title: Tart\nyear: 1900\nplace: england\nparts:\n  - kind: filling\n    take: Custard\n",
		"old.yaml":  "title: Custard\nyear: 1810\nplace: england\nparts:\n  - kind: filling\n    lines: [1 pint of milk, 3 eggs]\n",
	})
	f, _, faults := book.For(fsys, "tart.yaml", tables(t))
	require.Empty(t, faults)
	notes := f.Parts[0].Lines[0].Notes
	require.NotEmpty(t, notes)
	require.Contains(t, notes[len(notes)-1], `measured as in 1900, england; "Custard" is of 1810, england`)
	require.Empty(t, f.Parts[0].Lines[1].Notes)
}

// The demonstration book holds together.
func TestDemonstrationBook(t *testing.T) {
	dirs, err := filepath.Glob("../../testdata/demo/*")
	require.NoError(t, err)
	require.NotEmpty(t, dirs)
	for _, dir := range dirs {
		b, faults := book.Open(os.DirFS(dir), tables(t))
		require.Empty(t, faults, dir)
		for _, f := range b.Receipts {
			_, faults := b.Resolve(f)
			require.Empty(t, faults, f.File)
			_, _, faults = book.For(os.DirFS(dir), f.File, tables(t))
			require.Empty(t, faults, f.File)
		}
	}
}
