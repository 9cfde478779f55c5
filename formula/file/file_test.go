package file_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/file"
	"assize/reference/fault/misprint"
)

const tart = `title: Seville orange tart
source: Millrace House manuscript, leaf 12
year: 1838
printed: 1861
place: England
also: [Orange tart, Tart of Seville oranges]
meant: firm enough to cut
kitchen:
  year: 2026
  place: england
  eggs: {grams: 54}
  flour: {protein: 9.5}
  butter: salted
  oven: fan
  dishes: [soup plate, patty tins]
parts:
  - name: paste
    kind: pastry
    take: paste no. 3
    lay: Lining
  - kind: filling
    class: lemon-tart
    lines:
      - 6 eggs, well beaten
      - {either: [4 oz butter, {amount: 8, unit: oz, of: butter}], why: blotted numeral, odds: [1, 2.5]}
      - {amount: "0.50", unit: lb, of: loaf sugar, form: pounded}
      - {amount: 2 to 3, of: lemons, form: juice}
      - {unit: ~, of: salt}
    method: beat the butter and sugar to a cream
dish: [soup plate, lined]
oven: quick
bake: 30
`

func TestRead(t *testing.T) {
	f, faults := file.Read("tart.yaml", []byte(tart), tables(t))
	require.Empty(t, faults)
	require.Equal(t, "tart.yaml", f.File)
	require.Equal(t, "Seville orange tart", f.Title)
	require.Equal(t, "Millrace House manuscript, leaf 12", f.Source)
	require.Equal(t, 1838, f.Year)
	require.Equal(t, 1861, f.Printed)
	require.Equal(t, "england", f.Place, "any case of letters will do")
	require.Equal(t, []string{"Orange tart", "Tart of Seville oranges"}, f.Also)
	require.Equal(t, "firm enough to cut", f.Meant)
	require.Equal(t, "soup plate, lined", f.Dish)
	require.Equal(t, "quick", f.Oven)
	require.Equal(t, "30 min", f.Bake, "a figure by itself is minutes")

	require.True(t, f.Kitchen.Given)
	require.Equal(t, 2026, f.Kitchen.Year)
	require.Equal(t, "54", f.Kitchen.EggGrams.String())
	require.Equal(t, "9.5", f.Kitchen.FlourProtein.String())
	require.Equal(t, []string{"soup plate", "patty tins"}, f.Kitchen.Dishes)

	require.Len(t, f.Parts, 2)
	paste, filling := f.Parts[0], f.Parts[1]
	require.Equal(t, "paste no. 3", paste.Take)
	require.Equal(t, "lining", paste.Lay)
	require.Equal(t, formula.Pos{Line: 17, Column: 5}, paste.Pos)
	require.Equal(t, "filling", filling.Name, "named by its kind")
	require.Equal(t, "lemon-tart", filling.Class)
	require.Equal(t, []string{"beat the butter and sugar to a cream"}, filling.Steps)

	require.Len(t, filling.Lines, 5)
	require.Equal(t, "6 eggs, well beaten", filling.Lines[0].Text)
	require.Equal(t, formula.Pos{Line: 24, Column: 9}, filling.Lines[0].Pos)
	require.Equal(t, "6", filling.Lines[0].Items[0].Amount.Number.Likely.String())
	either := filling.Lines[1]
	require.Equal(t, "blotted numeral", either.Why)
	require.Len(t, either.Either, 2)
	require.Equal(t, either.Either[0].Items, either.Items, "the first alternative stands for the line")
	require.Equal(t, "1", either.Either[0].Odds.String())
	require.Equal(t, "2.5", either.Either[1].Odds.String())
	require.Equal(t, "4", either.Either[0].Items[0].Amount.Number.Likely.String())
	require.Equal(t, "8", either.Either[1].Items[0].Amount.Number.Likely.String())
	require.True(t, filling.Lines[2].Items[0].Amount.Number.Likely.Equal(decimal.RequireFromString("0.5")))
	require.Equal(t, formula.NotGiven, filling.Lines[4].Items[0].Amount.State, "no amount is legal")
}

// What a file leaves out comes from the book and the kitchen it lies in; what
// it says itself holds.
func TestDefaults(t *testing.T) {
	text := []byte("title: Custard\nkitchen: {eggs: small}\nparts:\n  - kind: filling\n    lines: [6 eggs]\n")
	book := file.Defaults{
		Year: 1838, Place: "scotland", Source: "Millrace House manuscript",
		Kitchen: formula.Kitchen{Given: true, Year: 2026, EggSize: "large", Butter: "salted", Oven: "fan"},
	}
	f, faults := file.ReadWith("custard.yaml", text, tables(t), book)
	require.Empty(t, faults)
	require.Equal(t, 1838, f.Year)
	require.Equal(t, "scotland", f.Place)
	require.Equal(t, "Millrace House manuscript", f.Source)
	require.Equal(t, "small", f.Kitchen.EggSize, "the receipt's own kitchen stands over the folder's")
	require.Equal(t, "salted", f.Kitchen.Butter)

	book.KitchenOver = formula.Kitchen{Given: true, EggGrams: decimal.NewFromInt(54)}
	f, faults = file.ReadWith("custard.yaml", text, tables(t), book)
	require.Empty(t, faults)
	require.Empty(t, f.Kitchen.EggSize, "a weight stands in place of a size")
	require.Equal(t, "54", f.Kitchen.EggGrams.String())
	require.Equal(t, "fan", f.Kitchen.Oven)

	own := append([]byte("year: 1747\nplace: usa\nsource: leaf 3\n"), text...)
	f, faults = file.ReadWith("custard.yaml", own, tables(t), book)
	require.Empty(t, faults)
	require.Equal(t, 1747, f.Year)
	require.Equal(t, "usa", f.Place)
	require.Equal(t, "leaf 3", f.Source)

	untitled := []byte("parts:\n  - kind: filling\n    lines: [6 eggs]\n")
	book.Title = "Untitled"
	f, faults = file.ReadWith("custard.yaml", untitled, tables(t), book)
	require.Empty(t, faults)
	require.Equal(t, "Untitled", f.Title)
}

// Old spellings of a class are taken and kept under its present id.
func TestClassByItsOldSpelling(t *testing.T) {
	tab := tables(t)
	for _, c := range tab.Classes {
		if len(c.Also) == 0 || c.Kind != "filling" {
			continue
		}
		text := "title: x\nyear: 1838\nplace: england\nparts:\n  - kind: filling\n    class: " + c.Also[0] + "\n    lines: [6 eggs]\n"
		f, faults := file.Read("x.yaml", []byte(text), tab)
		require.Empty(t, faults)
		require.Equal(t, c.ID, f.Parts[0].Class)
		return
	}
	t.Skip("no filling class has another spelling")
}

func TestTooLarge(t *testing.T) {
	text := append([]byte("title: Long\n"), bytes.Repeat([]byte("# nothing\n"), 2<<20/10)...)
	f, faults := file.Read("long.yaml", text, tables(t))
	require.Nil(t, f)
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Error(), "at most 1048576 are read")
}

func TestReadKitchen(t *testing.T) {
	k, faults := file.ReadKitchen("kitchen.yaml", []byte("year: 2026\nplace: scotland\neggs: Very large\nflour: {protein: 10}\ndishes: soup plate\n"))
	require.Empty(t, faults)
	require.Equal(t, "very large", k.EggSize)
	require.Equal(t, []string{"soup plate"}, k.Dishes)
	require.True(t, k.Given)
	k, faults = file.ReadKitchen("kitchen.yaml", []byte("{}\n"))
	require.Empty(t, faults)
	require.False(t, k.Given)
}

func TestReadBook(t *testing.T) {
	b, faults := file.ReadBook("book.yaml", []byte(`title: Millrace House manuscript
year: 1838
place: england
kitchen: {eggs: small}
measures: ["A gill is a quarter of a pint: so the book says on leaf 2."]
standing:
  - say: Glaze the case before a wet filling goes in.
    for: [pastry]
    where: leaf 31
  - {say: Strain it., for: lemon-tart, dishes: soup plate}
  - say: Weigh everything.
`), tables(t))
	require.Empty(t, faults)
	require.Len(t, b.Standing, 3)
	require.Equal(t, []formula.Kind{formula.Pastry}, b.Standing[0].Kinds)
	require.Equal(t, []string{"lemon-tart"}, b.Standing[1].Classes)
	require.Equal(t, "small", b.Kitchen.EggSize)
	require.Len(t, b.Measures, 1)

	f := &formula.Formula{Dish: "a deep Soup-plate", Parts: []formula.Part{
		{Kind: formula.Pastry}, {Kind: formula.Filling, Class: "lemon-tart"}, {Kind: formula.Filling},
	}}
	holds := func(s int) (out []bool) {
		for i := range f.Parts {
			out = append(out, b.Standing[s].Holds(f, i))
		}
		return out
	}
	require.Equal(t, []bool{true, false, false}, holds(0))
	require.Equal(t, []bool{false, true, false}, holds(1))
	require.Equal(t, []bool{true, true, true}, holds(2))
	f.Dish = "tin"
	require.Equal(t, []bool{false, false, false}, holds(1))
}

// bare is a formula without what Write does not keep: where things stand on
// the page and what the page is called.
func bare(t testing.TB, f *formula.Formula) string {
	t.Helper()
	c := *f
	c.File = ""
	c.Parts = nil
	for _, p := range f.Parts {
		p.Pos, p.From = formula.Pos{}, ""
		lines := p.Lines
		p.Lines, p.TakeAt = nil, formula.Pos{}
		for _, l := range lines {
			l.Pos = formula.Pos{}
			p.Lines = append(p.Lines, l)
		}
		c.Parts = append(c.Parts, p)
	}
	out, err := yaml.Marshal(c)
	require.NoError(t, err)
	return string(out)
}

func requireRoundTrip(t testing.TB, f *formula.Formula) {
	t.Helper()
	text, err := file.Write(f)
	require.NoError(t, err)
	again, faults := file.Read("again.yaml", text, tables(t))
	require.Empty(t, faults, "%s", text)
	require.Equal(t, bare(t, f), bare(t, again), "%s", text)
	twice, err := file.Write(again)
	require.NoError(t, err)
	require.Equal(t, string(text), string(twice), "one formula has one canonical file")
}

func TestWrite(t *testing.T) {
	f, faults := file.Read("tart.yaml", []byte(tart), tables(t))
	require.Empty(t, faults)
	requireRoundTrip(t, f)
}

// A part that was taken and resolved is written in full, and says whence.
func TestWriteResolved(t *testing.T) {
	f, faults := file.Read("paste.yaml", []byte("title: Tart\nyear: 1838\nplace: england\nparts:\n  - kind: pastry\n    lines: [1 lb of flour]\n"), tables(t))
	require.Empty(t, faults)
	f.Parts[0].From = "Paste No. 3"
	text, err := file.Write(f)
	require.NoError(t, err)
	require.Contains(t, string(text), "# from Paste No. 3\n")
	require.NotContains(t, string(text), "take:")
	again, faults := file.Read("again.yaml", text, tables(t))
	require.Empty(t, faults)
	require.Equal(t, bare(t, f), bare(t, again))
}

// A line made by a change has no words of its own; it is written field by
// field, and what cannot be said that way is refused rather than lost.
func TestWriteWithoutWords(t *testing.T) {
	f, faults := file.Read("x.yaml", []byte("title: x\nyear: 1838\nplace: england\nparts:\n  - kind: filling\n    lines: [12.50 oz of butter, 2 to 3 oz of loaf sugar]\n"), tables(t))
	require.Empty(t, faults)
	for i := range f.Parts[0].Lines {
		f.Parts[0].Lines[i].Text = ""
	}
	text, err := file.Write(f)
	require.NoError(t, err)
	require.Contains(t, string(text), `amount: "2 to 3"`)
	again, faults := file.Read("x.yaml", text, tables(t))
	require.Empty(t, faults)
	for i, l := range again.Parts[0].Lines {
		require.Equal(t, f.Parts[0].Lines[i].Items[0].Ingredient, l.Items[0].Ingredient)
		require.True(t, f.Parts[0].Lines[i].Items[0].Amount.Number.High.Equal(l.Items[0].Amount.Number.High))
		require.True(t, f.Parts[0].Lines[i].Items[0].Amount.Number.Low.Equal(l.Items[0].Amount.Number.Low))
	}

	f.Parts[0].Lines[0].Items[0].Amount.State = formula.ToTaste
	_, err = file.Write(f)
	require.ErrorContains(t, err, "cannot be written without its words")
}

// awkward are texts that YAML would take for something else.
var awkward = []string{
	"Lemon tart", "No", "1838", "1e3", "~", "null", "- a dash", "a: colon", "a # hash", "#1", "'quoted'", `"double"`, "*star", "&and",
	"[list]", "{map}", "50% cream", "@home", "tab", "half\u00a0hard", "Crème brûlée", "½ oz", "ſ long s", "true", "2026-11-25", "0x1F", ".5", "|", ">", "?", "! bang",
	"trailing colon:", "\u2028line", "emoji \U0001F34B", "ends with \\", "%50", "`tick`", "=", "<<",
}

var listed = []string{
	"6 eggs, well beaten", "half a pound of loaf sugar, pounded", "4 oz butter", "two or three eggs", "1 1/2 lb. of flour", "½ oz of powdered cinnamon",
	"the juice of two lemons", "rind and juice of a lemon", "salt, to taste", "a gill of cream", "the yolks of eight eggs", "1 pint of new milk",
}

func mappedLine() *rapid.Generator[map[string]any] {
	return rapid.Custom(func(t *rapid.T) map[string]any {
		m := map[string]any{"of": rapid.SampledFrom([]string{"butter", "loaf sugar", "flour", "cream", "fresh butter", "egg yolks", "lemon juice", "almonds"}).Draw(t, "of")}
		switch rapid.IntRange(0, 5).Draw(t, "shape") {
		case 0:
			m["amount"] = rapid.IntRange(1, 900).Draw(t, "whole")
		case 1:
			m["amount"] = rapid.SampledFrom([]string{"1/2", "2 to 3", "1 1/2", "0.50", "12.25", "two or three"}).Draw(t, "written")
		case 2:
			m["amount"] = float64(rapid.IntRange(1, 900).Draw(t, "tenths")) / 10
		case 3:
			return m
		case 4:
			return map[string]any{
				"amount": rapid.IntRange(1, 12).Draw(t, "count"), "of": rapid.SampledFrom([]string{"egg", "eggs", "lemon", "egg yolk", "nutmeg"}).Draw(t, "thing"),
				"unit": rapid.SampledFrom([]any{nil, "each", "whole"}).Draw(t, "count unit"),
			}
		}
		m["unit"] = rapid.SampledFrom([]string{"oz", "lb", "g", "pint", "pints", "cup", "tablespoon", "tsp.", "part", "parts", "%", "ml", "gill", "breakfast cup", "weight of eggs"}).Draw(t, "unit")
		if rapid.Bool().Draw(t, "formed") {
			m["form"] = rapid.SampledFrom([]string{"melted", "cold"}).Draw(t, "form")
		}
		return m
	})
}

func someLine(t *rapid.T, doubts bool) any {
	switch rapid.IntRange(0, 2).Draw(t, "kind of line") {
	case 0:
		return map[string]any(mappedLine().Draw(t, "mapped"))
	case 1:
		if doubts {
			n := rapid.IntRange(2, 3).Draw(t, "alternatives")
			m := map[string]any{}
			var list, odds []any
			for range n {
				list = append(list, someLine(t, false))
				odds = append(odds, rapid.SampledFrom([]any{1, 2, 2.5, "0.50"}).Draw(t, "odds"))
			}
			m["either"] = list
			if rapid.Bool().Draw(t, "odd") {
				m["odds"] = odds
			}
			if rapid.Bool().Draw(t, "said why") {
				m["why"] = rapid.SampledFrom(awkward).Draw(t, "why")
			}
			return m
		}
	}
	return rapid.SampledFrom(listed).Draw(t, "words")
}

// pageOf draws a receipt a person might have written.
func pageOf(t *rapid.T) map[string]any {
	words := rapid.SampledFrom(awkward)
	some := func(name string) bool { return rapid.Bool().Draw(t, name) }
	page := map[string]any{
		"title": words.Draw(t, "title"),
		"year":  rapid.IntRange(1700, 2000).Draw(t, "year"),
		"place": rapid.SampledFrom([]string{"england", "scotland", "ireland", "usa"}).Draw(t, "place"),
	}
	for _, key := range []string{"source", "meant", "dish", "oven"} {
		if some(key) {
			text := words.Draw(t, key)
			if key == "oven" {
				text = "quick " + text // a figure by itself is refused
			}
			page[key] = text
		}
	}
	if some("also") {
		page["also"] = rapid.SliceOfN(words, 1, 3).Draw(t, "also names")
	}
	if some("bake") {
		page["bake"] = rapid.SampledFrom([]any{30, "half an hour", []string{"15 min at 220 C", "then 30 min at 180 C"}}).Draw(t, "bake")
	}
	if some("kitchen") {
		page["kitchen"] = rapid.SampledFrom([]map[string]any{
			{"year": 2026}, {"eggs": "small", "place": "usa"}, {"eggs": map[string]any{"grams": 54.5}, "dishes": []string{"soup plate"}},
			{"flour": map[string]any{"protein": "9.50"}, "butter": "unsalted", "oven": "gas"},
		}).Draw(t, "the kitchen")
	}
	var parts []map[string]any
	for i := range rapid.IntRange(1, 3).Draw(t, "parts") {
		p := map[string]any{"kind": string(formula.Kinds[i]), "name": strings.Repeat("x", i) + words.Draw(t, "name")}
		if i == 0 && some("taken") {
			p["take"] = words.Draw(t, "take")
		} else {
			var lines []any
			for range rapid.IntRange(1, 4).Draw(t, "lines") {
				lines = append(lines, someLine(t, true))
			}
			p["lines"] = lines
		}
		if some("method") {
			p["method"] = rapid.SliceOfN(words, 1, 3).Draw(t, "steps")
		}
		if some("laid") {
			p["lay"] = rapid.SampledFrom(formula.Lays).Draw(t, "lay")
		}
		parts = append(parts, p)
	}
	page["parts"] = parts
	return page
}

// Reading what was written gives the formula again, whatever stands in it.
func TestRoundTrip(t *testing.T) {
	tab := tables(t)
	rapid.Check(t, func(r *rapid.T) {
		text, err := json.Marshal(pageOf(r)) // which is YAML, with every text in quotes
		require.NoError(t, err)
		f, faults := file.Read("page.yaml", text, tab)
		require.Empty(t, faults, "%s", text)
		requireRoundTrip(t, f)
	})
}

// The published formulas, given field by field, can be read and written as
// well: a few hundred real lists of ingredients.
func TestPublished(t *testing.T) {
	tab := tables(t)
	for _, p := range tab.Published {
		var lines []any
		for _, l := range p.Lines {
			m := map[string]any{"of": l.Of}
			if l.Amount != nil {
				m["amount"] = l.Amount.String()
				if l.Max != nil {
					m["amount"] = l.Amount.String() + " to " + l.Max.String()
				}
			}
			if l.Unit != "" {
				m["unit"] = l.Unit
			}
			if l.Form != "" {
				m["form"] = l.Form
			}
			lines = append(lines, m)
		}
		part := map[string]any{"kind": p.Part, "class": p.Class, "lines": lines}
		if len(p.Method) > 0 {
			part["method"] = p.Method
		}
		page := map[string]any{"title": p.Title, "year": p.Year, "place": p.Place, "parts": []any{part}}
		for key, text := range map[string]string{"dish": p.Dish, "oven": p.Oven, "bake": p.Bake} {
			if text != "" {
				page[key] = text
			}
		}
		if p.KitchenYear != 0 {
			page["kitchen"] = map[string]any{"year": p.KitchenYear}
		}
		text, err := json.Marshal(page)
		require.NoError(t, err)
		f, faults := file.Read(p.ID, text, tab)
		if !assert.Empty(t, faults, p.ID) {
			continue
		}
		requireRoundTrip(t, f)
	}
}

func FuzzRead(f *testing.F) {
	for _, pattern := range []string{malformed + "/*.yaml", "../../testdata/demo/*/*.yaml"} {
		names, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, name := range names {
			text, err := os.ReadFile(name)
			require.NoError(f, err)
			if len(text) < 4096 { // mutating the deep ones tells nothing more
				f.Add(text)
			}
		}
	}
	f.Add([]byte(tart))
	tab := tables(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		got, faults := file.Read("page.yaml", text, tab)
		require.Equal(t, got == nil, len(faults) > 0)
		misprint.Inside(t, text, faults)
		require.NoError(t, faults.Write(&bytes.Buffer{}))
		if got != nil {
			requireRoundTrip(t, got)
		}
		_, faults = file.ReadKitchen("kitchen.yaml", text)
		misprint.Inside(t, text, faults)
		_, faults = file.ReadBook("book.yaml", text, tab)
		misprint.Inside(t, text, faults)
		file.Names(text)
	})
}
