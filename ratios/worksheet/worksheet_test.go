package worksheet_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/ratios/worksheet"
	"assize/reference"
)

const demo = "../../testdata/demo/millrace"

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

// demoSheet assembles a receipt of the demo book.
func demoSheet(t testing.TB, name string) *worksheet.Sheet {
	t.Helper()
	tab := tables(t)
	f, _, faults := book.For(os.DirFS(demo), name, tab)
	require.NoError(t, faults.Err())
	s, faults := worksheet.New(tab).Assemble(f)
	require.NoError(t, faults.Err())
	return s
}

// sheetOf assembles a receipt written out here, in a book that directs.
func sheetOf(t testing.TB, standing, text string) *worksheet.Sheet {
	t.Helper()
	tab := tables(t)
	fsys := fstest.MapFS{
		"book.yaml": {Data: []byte("title: A manuscript\nyear: 1838\nplace: england\nkitchen: {year: 2026, place: england, eggs: medium}\n" + standing), Mode: 0o644},
		"tart.yaml": {Data: []byte("title: A tart\n" + text), Mode: 0o644},
	}
	f, _, faults := book.For(fsys, "tart.yaml", tab)
	require.NoError(t, faults.Err())
	s, faults := worksheet.New(tab).Assemble(f)
	require.NoError(t, faults.Err())
	return s
}

// outline is the work in a line a step: phase, origin and the first words.
func outline(s *worksheet.Sheet) []string {
	var out []string
	for _, p := range s.Phases {
		for _, st := range p.Steps {
			words := strings.Fields(st.Text)
			out = append(out, fmt.Sprintf("%s %s: %s", p.ID, st.Origin, strings.Join(words[:min(4, len(words))], " ")))
		}
	}
	return out
}

// at is the place of the first step that begins so, -1 when there is none.
func at(s *worksheet.Sheet, begins string) int {
	return slices.IndexFunc(outline(s), func(l string) bool { return strings.Contains(l, ": "+begins) })
}

// The case of this pudding is missed by reading its page alone: the book prints
// the wash of egg among its observations, thirty leaves away.
func TestStandingDirectionInItsPlace(t *testing.T) {
	s := demoSheet(t, "rich-lemon-pudding.yaml")
	wash, laid, filled := at(s, "Before any wet filling"), at(s, "Roll it an eighth"), at(s, "Fill the case only")
	require.Positive(t, wash)
	require.Less(t, laid, wash)
	require.Less(t, wash, filled)
	require.Less(t, at(s, "Bake the case by"), wash, "part-baked first, then washed")
	require.Less(t, at(s, "Let all pastes lie"), laid)
	for _, p := range s.Phases {
		for _, st := range p.Steps {
			switch st.Origin {
			case worksheet.Elsewhere:
				require.NotEmpty(t, st.From)
			case worksheet.Taken:
				require.Equal(t, "Short paste for tarts (Millrace House manuscript, leaf 4)", st.From)
			case worksheet.Unsaid:
				require.NotNil(t, st.Row)
				require.NotEmpty(t, st.Row.Why)
			}
		}
	}
}

// Every step of the receipt stands on the sheet, in the order of its page.
func TestOwnStepsKeepTheirOrder(t *testing.T) {
	names, err := filepath.Glob(demo + "/*.yaml")
	require.NoError(t, err)
	for _, name := range names {
		if b := filepath.Base(name); b != "book.yaml" && b != "kitchen.yaml" {
			s := demoSheet(t, b)
			for i, p := range s.Formula.Parts {
				var got []string
				for _, ph := range s.Phases {
					for _, st := range ph.Steps {
						if st.Part == i && (st.Origin == worksheet.Own || st.Origin == worksheet.Taken) {
							got = append(got, reference.Words(st.Text)...)
						}
					}
				}
				last := 0
				for _, step := range p.Steps {
					for _, w := range reference.Words(step) {
						if w == "and" || w == "then" {
							continue // what stands between two pieces of work
						}
						n := slices.Index(got[last:], w)
						require.GreaterOrEqual(t, n, 0, "%s: %q of %q", b, w, step)
						last += n
					}
				}
			}
		}
	}
}

// What is done in the file or told by its words is not told again.
func TestTakenStepsAreNotToldAgain(t *testing.T) {
	paste := "parts:\n  - {kind: pastry, lay: lining, lines: [1 lb of flour, 8 oz of butter, a gill of water], method: [%q]%s}\n" +
		"  - {kind: filling, lines: [1 pint of milk, 4 eggs, 2 oz of sugar], method: [Beat the eggs and bake it.]}\n"
	s := sheetOf(t, "", fmt.Sprintf(paste, "Rub the butter in.", ""))
	require.GreaterOrEqual(t, at(s, "Bake the case by"), 0)
	require.GreaterOrEqual(t, at(s, "Do not prick this"), 0)
	require.Negative(t, at(s, "Prick the base all"))
	require.Negative(t, at(s, "Stand the dish in"), "never a water bath round a crust")
	require.GreaterOrEqual(t, at(s, "No water round this"), 0)

	s = sheetOf(t, "", fmt.Sprintf(paste, "Rub the butter in.", ", done: [part-bake, rest-paste]"))
	require.Negative(t, at(s, "Bake the case by"))
	require.Negative(t, at(s, "Cover the paste and"))

	s = sheetOf(t, "", fmt.Sprintf(paste, "Rub the butter in. Let it lie an hour. Line the dish and bake the case blind.", ""))
	require.Less(t, at(s, "Bake the case blind"), at(s, "Brush the inside of"))
	require.Negative(t, at(s, "Bake the case by"))
	require.Negative(t, at(s, "Roll it an eighth"))
}

// A custard with no crust beneath stands in water; pricking is only for a case
// that is baked empty.
func TestNoCrustBeneath(t *testing.T) {
	s := sheetOf(t, "", "parts:\n  - {kind: filling, lines: [1 pint of milk, 4 eggs], method: [Beat the eggs and bake it.]}\n")
	require.GreaterOrEqual(t, at(s, "Stand the dish in"), 0)
	require.GreaterOrEqual(t, at(s, "Pass it through a"), 0)

	s = demoSheet(t, "arrowroot-lemon-tart.yaml")
	require.GreaterOrEqual(t, at(s, "Prick the base all"), 0)
	require.Negative(t, at(s, "Do not prick this"))
}

// How the paste lies is as the file says, as the words say where the file does
// not, and known not to be told where neither does.
func TestLay(t *testing.T) {
	text := "parts:\n  - {kind: pastry%s, lines: [1 lb of flour, 8 oz of butter], method: [%q]}\n  - {kind: filling, lines: [8 eggs, 8 oz of sugar], method: [Bake it.]}\n"
	for _, c := range []struct {
		given, words, lay string
		said              bool
	}{
		{", lay: rim", "Rub it in.", "rim", true},
		{"", "Lay a paste round the edge of the dish.", "rim", true},
		{"", "Rub it in.", "lining", false},
		{", lay: raised", "Rub it in.", "raised", true},
	} {
		s := sheetOf(t, "", fmt.Sprintf(text, c.given, c.words))
		require.Equal(t, c.lay, s.Parts[0].Lay)
		require.Equal(t, c.said, s.Parts[0].Given)
		if c.lay == "rim" {
			require.Negative(t, at(s, "Bake the case by"), "there is no case")
		}
	}
}

// The plan ends at the table; each thing ends no later than the next that hangs
// on it begins.
func TestPlan(t *testing.T) {
	for _, name := range []string{"rich-lemon-pudding.yaml", "seville-orange-tart.yaml", "arrowroot-lemon-tart.yaml", "pound-cake.yaml", "baked-custard.yaml", "paste-no-1.yaml"} {
		s := demoSheet(t, name)
		ev := s.Plan.Events
		require.True(t, slices.IsSortedFunc(ev, func(a, b worksheet.Event) int { return b.At - a.At }), name)
		require.Equal(t, worksheet.Serve, ev[len(ev)-1].ID)
		require.Equal(t, ev[0].At, s.Plan.Start)
		ends := func(id string) (int, bool) {
			for _, e := range ev {
				if e.ID == id {
					return e.At - e.Minutes, true
				}
			}
			return 0, false
		}
		begins := func(id string) int {
			for _, e := range ev {
				if e.ID == id {
					return e.At
				}
			}
			return 0
		}
		for _, pair := range [][2]string{
			{worksheet.MakePaste, worksheet.Rest}, {worksheet.Rest, worksheet.Lay}, {worksheet.Lay, worksheet.Chill}, {worksheet.Chill, worksheet.CaseIn},
			{worksheet.CaseIn, worksheet.Fill}, {worksheet.MakeFilling, worksheet.Fill}, {worksheet.Fill, worksheet.DishIn}, {worksheet.DishIn, worksheet.DishOut},
			{worksheet.ButterOut, worksheet.MakeFilling}, {worksheet.LightOven, worksheet.CaseIn}, {worksheet.LightOven, worksheet.DishIn}, {worksheet.CoolFilling, worksheet.Fill},
		} {
			if end, ok := ends(pair[0]); ok && begins(pair[1]) > 0 {
				require.GreaterOrEqual(t, end, begins(pair[1]), "%s: %s before %s", name, pair[0], pair[1])
			}
		}
	}
	s := demoSheet(t, "seville-orange-tart.yaml")
	require.Contains(t, fmt.Sprint(s.Plan.Events), "{dish-in  100 40 true false}", "40 minutes as the receipt says, an hour to cool")
}

// Risings are as long as the words say, and else as is usual; what is made with
// powder does not wait.
func TestPlanOfADough(t *testing.T) {
	dough := "parts:\n  - {name: buns, kind: bread, lines: [1 lb of flour, a gill of milk, 1 oz of %s], method: [%q]}\noven: quick\nbake: 20 minutes\n"
	plan := func(raises, words string) string {
		return fmt.Sprint(sheetOf(t, "", fmt.Sprintf(dough, raises, words)).Plan.Events)
	}
	said := plan("yeast", "Knead it. Set it two hours to rise. Make it into buns, let them rise again half an hour. Bake them.")
	for _, event := range []string{"{rise buns 185 120 true false}", "{shape buns 65 15 false true}", "{prove buns 50 30 true false}", "{dish-in  20 20 true false}"} {
		require.Contains(t, said, event)
	}
	for words, rising := range map[string]string{
		"Knead it well, let it rise two hours by the fire, knead it again, make it into a loaf, and bake it.": "120 true false",
		"Knead it twenty minutes and set it to rise an hour and a half. Bake it.":                             "90 true false",
		"Set it to rise, covered, two hours. Bake it.":                                                        "120 true false",
		"Set it to rise, then knead it ten minutes. Bake it.":                                                 "75 true true",
	} {
		require.Regexp(t, `{rise buns \d+ `+rising+`}`, plan("yeast", words), words)
		require.Contains(t, plan("yeast", words), "15 false true}", "shaping takes what it takes")
	}
	unsaid := plan("yeast", "Knead it. Bake it.")
	for _, event := range []string{"{rise buns 150 75 true true}", "{prove buns 60 40 true true}"} {
		require.Contains(t, unsaid, event)
	}
	require.NotContains(t, plan("baking powder", "Knead it. Bake it."), "rise")
}

// A raised pie that is filled up with jelly when cold does not go to table from
// the oven: it cools, the jelly goes in, and sets.
func TestPlanOfAPieFilledCold(t *testing.T) {
	pie := "parts:\n  - {name: crust, kind: pastry, lay: raised, lines: [1 lb of flour, 6 oz of lard, half a pint of boiling water], method: [Raise the crust.]}\n" +
		"  - {name: veal, kind: filling, lines: [2 lb of veal, half a pint of good jelly], method: [%q]}\noven: moderate\nbake: 2 hours\n"
	s := sheetOf(t, "", fmt.Sprintf(pie, "Lay in the meat. Bake it. When it is cold pour in the jelly at the top."))
	require.Contains(t, fmt.Sprint(s.Plan.Events), "{dish-out  420 180 true false} {fill-cold  240 240 true true} {serve  0 0 false false}")
	last := s.Phases[len(s.Phases)-1]
	require.Equal(t, "finish", last.ID)
	var texts []string
	for _, step := range last.Steps {
		texts = append(texts, step.Text)
	}
	require.Len(t, texts, 3)
	require.Contains(t, texts[0], "Let it stand till it is cold")
	require.Contains(t, texts[1], "pour in the jelly")
	require.Contains(t, texts[2], "till the jelly is set")
	hot := sheetOf(t, "", fmt.Sprintf(pie, "Lay in the meat. Bake it. When it is drawn pour in the jelly at the top."))
	require.Contains(t, fmt.Sprint(hot.Plan.Events), "{dish-out  0 0 true false} {serve  0 0 false false}")
}

// A bun whose words tell one rising and a loaf whose words tell none: the other
// risings are on the sheet as unsaid, the plan is worked back over them, and the
// night in the cold is a stopping point.
func TestBunAndLoaf(t *testing.T) {
	tab := tables(t)
	sheet := func(name string) *worksheet.Sheet {
		f, _, faults := book.For(os.DirFS("../../testdata/receipts"), name, tab)
		require.NoError(t, faults.Err())
		s, faults := worksheet.New(tab).Assemble(f)
		require.NoError(t, faults.Err())
		return s
	}
	stops := func(s *worksheet.Sheet) string {
		var ids []string
		for _, row := range s.Plan.Stops {
			ids = append(ids, row.ID)
		}
		return strings.Join(ids, " ")
	}
	bun := sheet("saffron-buns.yaml")
	require.Negative(t, at(bun, "Cover the dough and"), "its words have it set to rise")
	require.Less(t, at(bun, "Set it an hour"), at(bun, "Knead it down a"))
	require.Less(t, at(bun, "Knead it down a"), at(bun, "Make it into buns"))
	require.Less(t, at(bun, "Make it into buns"), at(bun, "Cover what is shaped"))
	require.Less(t, at(bun, "Cover what is shaped"), at(bun, "Bake them"))
	require.Contains(t, fmt.Sprint(bun.Plan.Events), "{rise buns 135 60 true false} {shape buns 75 15 false true} {prove buns 60 40 true true}")
	require.Equal(t, "first-rise prove", stops(bun))

	loaf := sheet("mill-loaf.yaml")
	for _, step := range []string{"Cover the dough and", "Knead it down a", "Make it into loaves", "Cover what is shaped"} {
		require.GreaterOrEqual(t, at(loaf, step), 0, step)
	}
	require.Equal(t, "first-rise prove", stops(loaf))
	require.GreaterOrEqual(t, at(loaf, "Turn it out at"), 0)
	require.Negative(t, at(bun, "Turn it out at"), "buns are eaten warm")
	baked := 90 + 50 + 40 + 15 + 75 // to get cold, in the oven, and the risings before it
	require.Contains(t, fmt.Sprint(loaf.Plan.Events), fmt.Sprintf("{rise loaf %d 75 true true}", baked))
}

// What the words leave to stand stands in the plan, and a curd gets cold.
func TestPlanOfWhatStands(t *testing.T) {
	plan := func(lines, words string) string {
		return fmt.Sprint(sheetOf(t, "", fmt.Sprintf("parts:\n  - {name: cream, kind: filling, lines: [%s], method: [%q]}\n", lines, words)).Plan.Events)
	}
	cream := "1 pint of cream, half a pint of wine, 4 oz of sugar"
	require.Contains(t, plan(cream, "Whip it. Let it stand till the next day."), "{stand cream 720 720 true false}")
	require.Contains(t, plan(cream, "Whip it. Let it stand two hours."), "{stand cream 120 120 true false}")
	require.NotContains(t, plan(cream, "Whip it and fill the glasses."), "stand")
	curd := "4 eggs, 8 oz of sugar, 4 oz of butter"
	require.Contains(t, plan(curd, "Stir it over the fire till it thickens. Put it up when cold."), "{cool-filling cream 60 60 true true}")
	require.NotContains(t, plan(curd, "Stir it over the fire till it thickens."), "cool-filling")
}

// A turnover is neither lined nor part-baked; its paste rests before it is
// rolled. A raised case of fat boiled in water does not lie in the cold first.
func TestFoldedAndRaised(t *testing.T) {
	s := sheetOf(t, "", `parts:
  - {kind: pastry, lines: [1 lb of flour, 8 oz of butter, a gill of water], method: ["Rub the butter into the flour, and wet it. Roll it out and cut it in rounds."]}
  - {kind: filling, lines: [1 lb of plums, 3 eggs, a gill of cream], method: ["Lay a spoonful on one half of each round, and turn the paste over. Bake them."]}
oven: brisk
bake: 25 minutes
`)
	require.Equal(t, "folded", s.Parts[0].Lay)
	require.True(t, s.Parts[0].Given)
	require.Negative(t, at(s, "Bake the case by"))
	require.Negative(t, at(s, "Roll it an eighth"))
	require.Less(t, at(s, "Cover the paste and"), at(s, "Roll it out"))
	require.Equal(t, "ready", s.Phases[0].ID)
	require.Contains(t, outline(s), "oven own: Roll it out and", "the filling is made before it is rolled")
	events := fmt.Sprint(s.Plan.Events)
	require.NotContains(t, events, worksheet.CaseIn)
	require.Contains(t, events, "{make-filling filling 125 25 false false}")
	require.Contains(t, events, "{lay pastry 100 15 false false}", "filled as it is rolled, when the filling is made")

	s = sheetOf(t, "", `parts:
  - {kind: pastry, lay: patty, lines: [1 lb of flour, 8 oz of butter, a gill of water]}
  - {kind: filling, lines: [4 eggs, 8 oz of sugar], method: [Fill and bake them.]}
oven: moderate
bake: 20 minutes
`)
	require.Negative(t, at(s, "Bake the case by"), "small and thin, it bakes with its filling")
	require.Negative(t, at(s, "Brush the inside"))
	require.Negative(t, at(s, "Roll it an eighth"))
	require.GreaterOrEqual(t, at(s, "Roll it thin, a"), 0)

	s = sheetOf(t, "", `parts:
  - {kind: pastry, lines: [2 lb of flour, 6 oz of lard, half a pint of water], method: ["Boil six ounces of lard in half a pint of water, and pour it on the flour. Raise the pie with your hands."]}
  - {kind: filling, lines: [2 lb of veal], method: ["Fill it, put on the lid and bake it."]}
oven: moderate
bake: 2 hours
`)
	require.Equal(t, "raised", s.Parts[0].Lay)
	require.Negative(t, at(s, "Cover the paste and"), "it is worked warm")
	require.GreaterOrEqual(t, at(s, "Let the case, raised"), 0)
}

// A time nobody knows is not made up.
func TestPlanWithoutATime(t *testing.T) {
	s := sheetOf(t, "", "parts:\n  - {kind: bread, lines: [1 lb of flour, a gill of water], method: [Knead it and bake it.]}\n")
	if s.Oven.Minutes.High.IsZero() {
		require.True(t, s.Plan.OvenOpen)
	} else {
		require.False(t, s.Oven.Said)
	}
}

// What is bought whole is counted whole, and what is left of it is told.
func TestShopping(t *testing.T) {
	text := func(lines string) string {
		return "parts:\n  - {kind: filling, lines: [" + lines + "], method: [Stir it over the fire till it thickens.]}\n"
	}
	for name, c := range map[string]struct {
		lines, each string
		low, high   int
		spare       []worksheet.Spare
	}{
		"eggs":                  {"6 eggs", "egg", 6, 6, nil},
		"two or three":          {"2 or 3 eggs", "egg", 2, 3, nil},
		"yolks":                 {"3 eggs, the yolks of 4 eggs", "egg", 7, 7, []worksheet.Spare{{What: "white", Count: 4}}},
		"whites":                {"the whites of 3 eggs", "egg", 3, 3, []worksheet.Spare{{What: "yolk", Count: 3}}},
		"whites and yolks":      {"the whites of 3 eggs, the yolks of 5 eggs", "egg", 5, 5, []worksheet.Spare{{What: "white", Count: 2}}},
		"blotted":               {"{either: [6 eggs, 8 eggs]}", "egg", 6, 8, nil},
		"juice and rind":        {"the juice and grated rind of 2 lemons", "lemon", 2, 2, nil},
		"more juice than rind":  {"the juice of 3 lemons, the grated rind of 2 lemons", "lemon", 3, 3, []worksheet.Spare{{What: "rind", Count: 1}}},
		"rind alone":            {"the grated rind of 2 lemons", "lemon", 2, 2, []worksheet.Spare{{What: "juice", Count: 2}}},
		"juice by the measure":  {"100 ml lemon juice", "lemon", 0, 0, []worksheet.Spare{}},
		"eggs by their weight":  {"300 g eggs", "egg", 0, 0, []worksheet.Spare{}},
		"oranges, not sevilles": {"the juice of 2 oranges", "orange", 2, 2, []worksheet.Spare{{What: "rind", Count: 2}}},
	} {
		t.Run(name, func(t *testing.T) {
			s := sheetOf(t, "", text(c.lines))
			i := slices.IndexFunc(s.Shopping.Wholes, func(w worksheet.Whole) bool { return w.Each == c.each })
			require.GreaterOrEqual(t, i, 0)
			w := s.Shopping.Wholes[i]
			if c.high > 0 {
				require.Equal(t, []int{c.low, c.high}, []int{w.Low, w.High})
				require.Equal(t, c.spare, w.Spare)
				require.Empty(t, s.Shopping.Goods, "bought once")
				return
			}
			require.Positive(t, w.Low)
			require.Greater(t, w.High, w.Low, "sizes differ")
			require.Less(t, w.High, 12)
		})
	}
}

// The wash takes a spare white before it takes an egg of its own.
func TestEggForTheWash(t *testing.T) {
	s := demoSheet(t, "rich-lemon-pudding.yaml")
	require.Equal(t, []worksheet.Spare{{What: "white", Count: 1, Serves: true}}, s.Shopping.Wholes[0].Spare)
	require.Equal(t, 9, s.Shopping.Wholes[0].High)

	plain := "parts:\n  - {kind: pastry, lay: lining, lines: [1 lb of flour, 8 oz of butter]}\n  - {kind: filling, lines: [8 eggs, 8 oz of sugar], method: [Bake it.]}\n"
	w := sheetOf(t, "", plain).Shopping.Wholes[0]
	require.True(t, w.Wash)
	require.Equal(t, 9, w.High)
}

// Goods of one kind are bought once for all parts; water is not bought.
func TestGoodsAddUp(t *testing.T) {
	s := demoSheet(t, "rich-lemon-pudding.yaml")
	var butter []string
	for _, g := range s.Shopping.Goods {
		require.NotContains(t, g.Ingredient.Roles, "water")
		if slices.Contains(g.Ingredient.Roles, "butter") {
			butter = append(butter, g.Grams.Likely.Round(0).String())
		}
	}
	require.Equal(t, []string{"454"}, butter, "half a pound twice over")
}

// A direction with no place in the dish is set aside and said so.
func TestAside(t *testing.T) {
	s := sheetOf(t, "standing:\n  - {say: Brush the case within with egg., for: pastry, where: leaf 31}\n",
		"parts:\n  - {kind: pastry, lay: lid, lines: [1 lb of flour]}\n  - {kind: filling, lines: [2 lb of apples], method: [Bake it.]}\n")
	require.Len(t, s.Aside, 1)
	require.Equal(t, "leaf 31", s.Aside[0].From)
	require.Negative(t, at(s, "Brush the case within"))
}

// Cautions are on every sheet that has cause for one.
func TestCautions(t *testing.T) {
	s := sheetOf(t, "", "parts:\n  - {kind: filling, lines: [4 eggs, 1 pint of cream], method: [\"Whisk all together, uncooked.\"]}\n")
	require.NotEmpty(t, s.Cautions)
	for _, c := range s.Cautions {
		require.Empty(t, c.Grade)
	}
}

// A book of a thousand receipts is assembled in at most one second: the
// weighing, the steps and the plan, of receipts already read.
func BenchmarkAssemble(b *testing.B) {
	tab := tables(b)
	dir := book.NewFolder(os.DirFS(demo), ".", tab, formula.Kitchen{})
	var pages []*formula.Formula
	for _, n := range []string{"rich-lemon-pudding", "seville-orange-tart", "arrowroot-lemon-tart", "baked-custard", "lemon-cheesecakes", "pound-cake", "paste-no-1", "paste-no-3", "raised-pie-paste"} {
		f, _, faults := dir.Receipt(n + ".yaml")
		require.NoError(b, faults.Err())
		pages = append(pages, f)
	}
	a := worksheet.New(tab)
	b.ReportAllocs()
	for b.Loop() {
		for i := range 1000 {
			if _, faults := a.Assemble(pages[i%len(pages)]); len(faults) > 0 {
				b.Fatal(faults)
			}
		}
	}
}

// A dough's rising, kneading down, shaping and second rising stand in their order
// though the page tells them in one breath; what is drawn is tried before.
func TestStepsOfADoughInOrder(t *testing.T) {
	texts := func(words string) []string {
		s := sheetOf(t, "", fmt.Sprintf("parts:\n  - {name: buns, kind: bread, lines: [1 lb of flour, a gill of milk, 1 oz of yeast], method: [%q]}\noven: quick\nbake: 20 minutes\n", words))
		var out []string
		for _, p := range s.Phases {
			for _, step := range p.Steps {
				out = append(out, step.Text)
			}
		}
		return out
	}
	inOrder := func(got []string, want ...string) {
		t.Helper()
		at := -1
		for _, w := range want {
			i := slices.IndexFunc(got, func(s string) bool { return strings.Contains(s, w) })
			require.Greater(t, i, at, "%q in %q", w, got)
			at = i
		}
	}
	inOrder(texts("Let it rise an hour and a half, then make it into buns and let them rise twenty minutes. Bake them. Draw them with a peel."),
		"Let it rise an hour and a half", "Knead it down", "Make it into buns", "Let them rise twenty minutes", "Bake them", "Try it", "Draw them")
	inOrder(texts("Set it to rise. Roll it thick, cut it in rounds. Bake them."), "Set it to rise", "Knead it down", "cut it in rounds", "let it rise again", "Bake them")
	got := texts("Knead it well; and let it rise an hour. Bake it.")
	require.Contains(t, got, "Let it rise an hour", "an \"and\" opens no step")
}

// What stands among the steps of a filling and rolls the paste is done when the
// paste is laid.
func TestRollingAmongTheSteps(t *testing.T) {
	s := sheetOf(t, "", `parts:
  - {name: paste, kind: pastry, lines: [8 oz of flour, 4 oz of butter], method: [Make it into a paste., Let it rest an hour.]}
  - {name: apples, kind: filling, lines: [1 lb of apples, 3 oz of sugar], method: ["Roll it out thin, cut it in rounds; lay some on each, fold the paste over. Bake it."]}
oven: quick
`)
	var lines []string
	for _, p := range s.Phases {
		for _, step := range p.Steps {
			if step.Origin == worksheet.Own {
				lines = append(lines, p.ID+": "+step.Text)
			}
		}
	}
	require.Equal(t, []string{
		"paste: Make it into a paste", "paste: Let it rest an hour", "oven: Roll it out thin, cut it in rounds", "oven: Lay some on each, fold the paste over", "oven: Bake it",
	}, lines[:5])
}

// A paste that the page lines a dish with is made and laid before it is baked.
func TestLiningIsNoBaking(t *testing.T) {
	for words, want := range map[string]string{
		"Line the dish with the paste.": "case",
		"Line a dish with a paste of half a pound of flour and a quarter of a pound of butter.": "paste",
	} {
		s := sheetOf(t, "", fmt.Sprintf(`parts:
  - {name: paste, kind: pastry, lay: lining, lines: [8 oz of flour, 4 oz of butter], method: [%q]}
  - {name: custard, kind: filling, lines: [1 pint of cream, 4 eggs], method: [Beat them; fill the case, and bake it.]}
oven: slow
`, words))
		for _, p := range s.Phases {
			for _, step := range p.Steps {
				if step.Part == 0 && step.Origin == worksheet.Own {
					require.Equal(t, want, p.ID, words)
				}
			}
		}
	}
}
