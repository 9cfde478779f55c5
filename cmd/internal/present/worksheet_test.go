package present

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/ratios/readings"
	"assize/ratios/worksheet"
	"assize/reference"
)

// benchSheet is a sheet with something of everything a sheet may hold.
func benchSheet(t *testing.T) (*worksheet.Sheet, About) {
	t.Helper()
	s, a := sample(t)
	f := s.Report.Formula
	from := func(source, locator string, how reference.How) reference.Provenance {
		return reference.Provenance{Source: source, Locator: locator, How: how}
	}
	row := func(id, name, why string, year int) *reference.Step {
		r := &reference.Step{ID: id, Name: name, Why: why, Provenance: from("common-practice", name, reference.HowCommon)}
		if year > 0 {
			r.Found = reference.Found{Year: year, Provenance: from("brown-1840", "p. 12", reference.HowMemory)}
		}
		return r
	}
	bake := row("part-bake", "part-baking", "a wet filling on raw paste may leave the base soggy", 1832)
	bake.Stop, bake.Show = "the case keeps a day in a dry tin", "a case part-baked beforehand"
	ready := row("all-ready", "everything ready", "beaten eggs fall while they wait", 1840)
	ready.Provenance = from("brown-1840", "p. 3", reference.HowRead)
	ready.Found.Provenance = ready.Provenance
	try := row("doneness", "trying it", "no two ovens keep the same time", 0)
	done := &reference.Doneness{
		Name: "custard pie", C: three("77", "78", "82"), Signs: []string{"edges set, centre trembles", "a knife comes out clean"}, TooFar: "weeps", Provenance: from("green-1900", "p. 20", reference.HowRead),
	}
	ingredient := func(id string) *reference.Ingredient {
		ing, ok := a.Tables.Ingredient(id)
		require.True(t, ok, id)
		return ing
	}
	line := func(text string, items ...worksheet.Item) worksheet.Line {
		return worksheet.Line{Text: text, Items: items}
	}
	item := func(id string, g reference.Span, used bool) worksheet.Item {
		return worksheet.Item{Ingredient: ingredient(id), Grams: g, Used: used}
	}
	f.Parts[0].From = "Short <paste>"
	sheet := &worksheet.Sheet{
		Formula: f, Weighed: &weigh.Weighed{Formula: f, Unknowns: s.Report.Weighed.Unknowns, Notes: []string{"by the book's own word: this book's teacup is a gill"}},
		Parts: []worksheet.Part{
			{
				Of: &f.Parts[0], Lay: "lining", Total: three("681", "681", "681"),
				Lines: []worksheet.Line{line("1 lb of flour", item("flour", three("454", "454", "454"), true)), line("half a pound of butter", item("butter", three("227", "227", "227"), true)), {Text: "salt, to taste", Items: []worksheet.Item{{Ingredient: ingredient("salt"), State: formula.ToTaste, Used: true}}}},
			},
			{
				Of: &f.Parts[1], Total: three("386", "444", "614"),
				Lines: []worksheet.Line{
					line("8 eggs, well beaten", item("egg_whole", three("264", "320.4", "376"), true)),
					{Text: "4 oz or 8 oz of butter", Notes: []string{"in doubt: a blot"}, Items: []worksheet.Item{item("butter", three("113.4", "113.4", "113.4"), true), item("butter", three("227", "227", "227"), false)}},
				},
			},
		},
		Phases: []worksheet.Phase{
			{ID: "ready", Steps: []worksheet.Step{{Text: "Weigh out everything", Origin: worksheet.Unsaid, Row: ready}}},
			{ID: "paste", Part: "paste", Steps: []worksheet.Step{
				{Text: "Rub the butter in", Origin: worksheet.Taken, From: "Short <paste> (leaf 4)"}, {Text: "Wet it with *cold* water", Origin: worksheet.Taken, From: "Short <paste> (leaf 4)"},
			}},
			{ID: "case", Steps: []worksheet.Step{
				{Text: "Bake the case by itself", Origin: worksheet.Unsaid, Row: bake}, {Text: "Brush the case with egg & dry it", Origin: worksheet.Elsewhere, From: "leaf 31, observations"},
			}},
			{ID: "filling", Part: "filling", Steps: []worksheet.Step{{Text: "Beat the eggs", Origin: worksheet.Own}}},
			{ID: "oven", Steps: []worksheet.Step{
				{Text: "Bake in a quick oven", Origin: worksheet.Own}, {Text: "Try it before it comes out", Origin: worksheet.Unsaid, Row: try, Done: done},
			}},
			{ID: "finish", Steps: []worksheet.Step{{Text: "Serve cold", Origin: worksheet.Own}}},
		},
		Oven: worksheet.Oven{
			Baked: true, Words: "quick", Minutes: three("20", "30", "45"), Usual: done, Class: class(t, a.Tables, "rich"),
			Heats: []oven.Heat{
				{Sign: oven.Word, Words: "quick", C: oven.Range{Low: 190, Likely: 204, High: 232}, Row: &reference.Oven{Provenance: from("green-1900", "p. 30", reference.HowRead)}},
				{Sign: oven.Word, Words: "a quick oven", C: oven.Range{Low: 190, Likely: 204, High: 232}, Row: &reference.Oven{Provenance: from("green-1900", "p. 30", reference.HowRead)}},
			},
		},
		Plan: worksheet.Plan{
			Start: 250, Stops: []*reference.Step{bake}, Show: []*reference.Step{bake},
			Events: []worksheet.Event{
				{ID: worksheet.MakePaste, Part: "paste", At: 250, Minutes: 20}, {ID: worksheet.Rest, Part: "paste", At: 230, Minutes: 60, Waiting: true},
				{ID: worksheet.Lay, Part: "paste", At: 170, Minutes: 15}, {ID: worksheet.LightOven, At: 155, Minutes: 30, Waiting: true}, {ID: worksheet.CaseIn, Part: "paste", At: 125, Minutes: 20, Waiting: true},
				{ID: worksheet.MakeFilling, Part: "filling", At: 135, Minutes: 25}, {ID: worksheet.Fill, At: 110, Minutes: 5}, {ID: worksheet.DishIn, At: 105, Minutes: 45, Waiting: true, Usual: true},
				{ID: worksheet.DishOut, At: 60, Minutes: 60, Waiting: true}, {ID: worksheet.Serve},
			},
		},
		Shopping: worksheet.Shopping{
			Wholes: []worksheet.Whole{
				{Each: "egg", Name: "egg", Low: 9, High: 9, Wash: true}, {Each: "lemon", Name: "lemon", Low: 2, High: 3, Spare: []worksheet.Spare{{What: "rind", Count: 1}}},
			},
			Goods: []worksheet.Good{{Ingredient: ingredient("flour"), Grams: three("454", "454", "454")}, {Ingredient: ingredient("salt"), State: formula.ToTaste}, {Ingredient: ingredient("butter"), Grams: three("340", "340", "454")}},
			Paste: []worksheet.PasteMade{{Part: "paste", Made: three("681", "681", "681")}},
		},
		Aside:    []worksheet.Step{{Text: "Wash the case of a standing pie.", From: "leaf 33"}},
		Unlisted: []judge.Finding{{Code: "not-listed", Part: "filling", Says: "brandy is named in the steps and not listed, so it is not weighed"}},
	}
	sheet.InDish = &dish.Fit{Dish: dish.Dish{Name: "soup plate"}, Count: 1, PasteMade: just(681), PasteNeeded: just(240), PasteLeft: just(441), RoomML: just(400), FillingML: just(800), Verdict: dish.Overfills}
	for _, f := range s.Report.Findings {
		if isCaution(&f) {
			sheet.Cautions = append(sheet.Cautions, f)
		}
	}
	return sheet, a
}

func just(v float64) readings.Span { return readings.Span{Low: v, Likely: v, High: v} }

func worksheetRenderings(t *testing.T) map[string]string {
	t.Helper()
	s, a := benchSheet(t)
	out := map[string]string{}
	var text, narrow, markdown strings.Builder
	b := WorksheetOf(s, a, NoClock)
	require.NoError(t, Worksheet(b).Text(&text, Layout{Width: 100}))
	require.NoError(t, Worksheet(b).Text(&narrow, Layout{Width: 48}))
	require.NoError(t, Worksheet(b).Markdown(&markdown))
	page, err := WorksheetHTML([]*Bench{WorksheetOf(s, a, Clock(13*60))})
	require.NoError(t, err)
	out["worksheet.txt"], out["worksheet-narrow.txt"], out["worksheet.md"], out["worksheet.html"] = text.String(), narrow.String(), markdown.String(), page
	return out
}

func TestWorksheetGoldens(t *testing.T) {
	for name, got := range worksheetRenderings(t) {
		t.Run(name, func(t *testing.T) { golden(t, name, []byte(got)) })
	}
}

// Every renderer says the same: each step, its mark, each amount, each caution.
func TestWorksheetSaysTheSameEverywhere(t *testing.T) {
	s, a := benchSheet(t)
	b := WorksheetOf(s, a, NoClock)
	plain := func(s string) string {
		for _, cut := range []string{`\`, "&amp;", "&lt;", "&gt;", "&#34;", "&#39;", "&", "<", ">", `"`, "'", "*"} {
			s = strings.ReplaceAll(s, cut, "")
		}
		return strings.Join(strings.Fields(s), " ")
	}
	for name, text := range worksheetRenderings(t) {
		if name == "worksheet-narrow.txt" {
			continue // the words are broken over lines of a table
		}
		text = plain(text)
		var want []string
		for _, p := range b.Phases {
			for _, st := range p.Steps {
				want = append(want, st.Text, st.Mark)
			}
		}
		want = append(append(want, b.Cautions...), b.Deference)
		for _, w := range want {
			require.Contains(t, text, plain(w), name)
		}
		for _, p := range b.Parts {
			for _, l := range p.Lines {
				require.Contains(t, text, plain(l.Amount), name)
			}
		}
	}
}

// The page stands by itself: it fetches nothing and runs nothing.
func TestWorksheetHTMLStandsByItself(t *testing.T) {
	page := worksheetRenderings(t)["worksheet.html"]
	for _, bad := range []string{"<script", "src=", "<link", "@import", "url(", "onclick"} {
		require.NotContains(t, page, bad)
	}
	for _, want := range []string{`<html lang="en-GB">`, "viewport", "default-src 'none'", "prefers-color-scheme: dark", "@page { size: A4", `type="checkbox"`, "<title>Rich &lt;b&gt;pudding&lt;/b&gt; | one</title>"} {
		require.Contains(t, page, want)
	}
	require.NotContains(t, page, "Rich <b>")
}

func TestWhen(t *testing.T) {
	for _, c := range []struct {
		serve  Clock
		before int
		want   string
	}{
		{NoClock, 0, "0:00"}, {NoClock, 245, "4:05"}, {13 * 60, 0, "13:00"}, {13 * 60, 65, "11:55"},
		{9 * 60, 10 * 60, "the day before, 23:00"}, {0, 24 * 60, "the day before, 0:00"},
	} {
		w := &benching{serve: c.serve}
		require.Equal(t, c.want, w.when(c.before))
	}
}

func TestWordsOfTheWorksheet(t *testing.T) {
	require.Equal(t, "Two steps are printed elsewhere in the book; one step is left unsaid by it.", putIn(2, 1))
	require.Equal(t, "Fourteen steps are left unsaid by the book.", strings.Replace(putIn(0, 14), "14", "Fourteen", 1))
	require.Equal(t, "One step is printed elsewhere in the book.", putIn(1, 0))
	require.Empty(t, putIn(0, 0))
	require.Equal(t, "35 min", hours(35))
	require.Equal(t, "2 h", hours(120))
	require.Equal(t, "1 h 5 min", hours(65))
	require.Equal(t, "cherries", pluralOf("cherry", 3))
	require.Equal(t, "peaches", pluralOf("peach", 2))
	require.Equal(t, "egg", pluralOf("egg", 1))
	made := &worksheet.PasteMade{Made: three("500", "500", "500")}
	require.Equal(t, "makes 500 g; how much the dish takes is not known", pasteOver(made, "lining", nil, true))
	require.Equal(t, "makes 500 g, all of it for folding over", pasteOver(made, "folded", nil, true))
	require.Equal(t, "makes 500 g, case and lid", pasteOver(made, "raised", nil, true))
	plate := &dish.Fit{Dish: dish.Dish{Name: "soup plate"}, Count: 1, PasteMade: just(500), PasteNeeded: just(240), PasteLeft: just(260), RoomML: just(400), FillingML: just(1068), Verdict: dish.Overfills}
	require.Equal(t, "makes 500 g; needs 240 g for the soup plate, left about 260 g", pasteOver(made, "lining", plate, true))
	require.Equal(t, "makes 500 g", pasteOver(made, "lining", plate, false))
	require.Equal(t, "The soup plate takes 400 ml; this comes to about 1070 ml: too much by about 670 ml.", fills(plate))
}
