package practice_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/ratios/practice"
	"assize/reference"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

// page writes a receipt of 1838 from the words of its parts.
func page(rest string, parts ...string) string {
	return "title: A receipt\nyear: 1838\nplace: england\nparts:\n" + strings.Join(parts, "") + rest
}

func part(kind, extra, lines, method string) string {
	out := fmt.Sprintf("  - kind: %s\n    lines: [%s]\n", kind, lines)
	if method != "" {
		out += fmt.Sprintf("    method: [%q]\n", method)
	}
	return out + extra
}

const (
	short   = "1 lb of flour, 8 oz of butter, a gill of water"
	custard = "1 pint of milk, 4 eggs, 2 oz of sugar"
	rich    = "8 eggs, 8 oz of sugar, 8 oz of butter, the juice of 2 lemons"
	fruit   = "2 lb of apples, 4 oz of sugar"
	meat    = "2 lb of veal, 4 oz of ham"
)

// Every step of the table with a receipt that wants it and one that does not,
// and, where words can tell it, one that has taken it.
var steps = map[string]struct{ wants, not, taken string }{
	"butter-soft": {
		wants: page("", part("filling", "", rich, "Beat the butter and sugar to a cream and bake it.")),
		not:   page("", part("filling", "", rich, "Melt the butter and bake it.")),
	},
	"all-ready": {
		wants: page("", part("filling", "", rich, "Whisk the eggs and bake it.")),
		not:   page("", part("filling", "", custard, "Stir it over the fire till it thickens.")),
	},
	"rest-paste": {
		wants: page("", part("pastry", "", short, "Rub the butter into the flour.")),
		not:   page("", part("pastry", "", "1 lb of flour, 4 oz of lard", "Pour boiling water and the lard on the flour: a raised paste.")),
		taken: page("", part("pastry", "", short, "Rub the butter into the flour. Let it lie an hour.")),
	},
	"rest-turns": {
		wants: page("", part("pastry", "", short, "Lay the butter on in pieces, fold it and roll it out six times.")),
		not:   page("", part("pastry", "", short, "Rub the butter into the flour.")),
		taken: page("", part("pastry", "", short, "Lay the butter on in pieces, fold it and roll it out. Let it lie in a cool place.")),
	},
	"stiffen-case": {
		wants: page("", part("pastry", "    lay: raised\n", short, "Boil the butter in the water and pour it on the flour: hot water paste.")),
		not:   page("", part("pastry", "    lay: raised\n", short, "Rub the butter into the flour.")),
		taken: page("", part("pastry", "    lay: raised\n", short, "Use hot water. Raise it and set it by.")),
	},
	"lay-lining": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "    lay: rim\n", short, ""), part("filling", "", rich, "Bake it.")),
		taken: page("", part("pastry", "", short, "Line a dish with it."), part("filling", "", rich, "Bake it.")),
	},
	"lay-rim": {
		wants: page("", part("pastry", "    lay: rim\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		taken: page("", part("pastry", "", short, "Put a paste round the rim of the dish."), part("filling", "", rich, "Bake it.")),
	},
	"lay-lid": {
		wants: page("", part("pastry", "    lay: lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining and lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: lid\n", short, "Put a border on the dish and cover it."), part("filling", "", fruit, "Bake it.")),
	},
	"first-rise": {
		wants: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Knead it. Bake it.")),
		not:   page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of baking powder", "Knead it. Bake it.")),
		taken: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Knead it, and let it rise an hour. Bake it.")),
	},
	"knock-back": {
		wants: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Set it to rise. Bake it.")),
		not:   page("", part("bread", "", "2 lb of flour, a pint of milk", "Knead it. Bake it.")),
		taken: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Set it to rise; knead it down and make it into loaves. Bake it.")),
	},
	"shape": {
		wants: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Knead it. Bake it.")),
		not:   page("", part("bread", "", "2 lb of flour, a pint of milk", "Knead it. Bake it.")),
		taken: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Knead it and make it into loaves. Bake it.")),
	},
	"prove": {
		wants: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Set it to rise. Bake it.")),
		not:   page("", part("bread", "", "2 lb of flour, a pint of milk", "Knead it. Bake it.")),
		taken: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Set it to rise; make it into buns, and let them rise again. Bake it.")),
	},
	"cool-loaf": {
		wants: page("", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Knead it. Bake it.")),
		not:   page("bake: 15 minutes\n", part("bread", "", "2 lb of flour, a pint of milk, 1 oz of yeast", "Make it into buns. Bake it.")),
	},
	"fold-over": {
		wants: page("", part("pastry", "    lay: folded\n", short, "Cut it in rounds."), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: lid\n", short, "Cut it in rounds."), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: folded\n", short, "Cut it in rounds; lay a spoonful on each and fold them over."), part("filling", "", fruit, "Bake it.")),
	},
	"lay-patty": {
		wants: page("", part("pastry", "    lay: patty\n", short, ""), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "", short, "Line the patty-pans with it."), part("filling", "", fruit, "Bake it.")),
	},
	"raise-case": {
		wants: page("", part("pastry", "    lay: raised\n", short, ""), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: raised\n", short, "Raise the pie."), part("filling", "", fruit, "Bake it.")),
	},
	"chill-case": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "    lay: lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
	},
	"light-oven": {
		wants: page("oven: slow\n", part("filling", "", custard, "")),
		not:   page("", part("filling", "", custard, "Stir it over the fire till it thickens.")),
	},
	"prick-empty": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Stir it over the fire till it thickens. Pour it into a baked case.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		taken: page("", part("pastry", "    lay: lining\n", short, "Prick it and bake it blind."), part("filling", "", custard, "Stir it over the fire till it thickens. Pour it into a baked case.")),
	},
	"weigh-down": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Stir it over the fire till it thickens. Pour it into a baked case.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
	},
	"no-pricking": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Stir it over the fire till it thickens. Pour it into a baked case.")),
	},
	"part-bake": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "    lay: rim\n", short, ""), part("filling", "", rich, "Bake it.")),
		taken: page("", part("pastry", "    lay: lining\n", short, "Half bake the case five minutes: it is partly baked."), part("filling", "", rich, "Bake it.")),
	},
	"egg-wash-inside": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Bake it.")),
		not:   page("", part("pastry", "    lay: lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: lining\n", short, "Brush the case within with beaten egg and dry it."), part("filling", "", custard, "Bake it.")),
	},
	"cool-butter": {
		wants: page("", part("filling", "", rich, "Melt the butter and stir in the eggs. Bake it.")),
		not:   page("", part("filling", "", rich, "Beat the butter and sugar to a cream. Bake it.")),
		taken: page("", part("filling", "", rich, "Melt the butter. When it is cold stir in the eggs. Bake it.")),
	},
	"strain": {
		wants: page("", part("filling", "", custard, "Beat the eggs and bake it.")),
		not:   page("", part("filling", "", rich, "Beat the butter and sugar to a cream. Bake it.")),
		taken: page("", part("filling", "", custard, "Beat the eggs, strain it and bake it.")),
	},
	"cold-filling": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Stir it over the fire till it thickens. Pour it into a baked case.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", rich, "Bake it.")),
		taken: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Stir it over the fire till it thickens. When it is cold pour it into a baked case.")),
	},
	"fill-last": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Bake it.")),
		not:   page("", part("filling", "", custard, "Bake it.")),
	},
	"seal-lid": {
		wants: page("", part("pastry", "    lay: lining and lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: lid\n", short, "Wet the edges."), part("filling", "", fruit, "Bake it.")),
	},
	"vent-lid": {
		wants: page("", part("pastry", "    lay: lid\n", short, ""), part("filling", "", fruit, "Bake it.")),
		not:   page("", part("pastry", "    lay: rim\n", short, ""), part("filling", "", fruit, "Bake it.")),
		taken: page("", part("pastry", "    lay: lid\n", short, "Cut a slit in the top."), part("filling", "", fruit, "Bake it.")),
	},
	"rim-glaze": {
		wants: page("", part("pastry", "    lay: rim\n", short, ""), part("filling", "", rich, "Bake it.")),
		not:   page("", part("pastry", "", short, "")),
		taken: page("", part("pastry", "    lay: rim\n", short, "Brush the rim with egg."), part("filling", "", rich, "Bake it.")),
	},
	"water-bath": {
		wants: page("", part("filling", "", custard, "Bake it.")),
		not:   page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Bake it.")),
		taken: page("", part("filling", "", custard, "Bake it in a pan of hot water.")),
	},
	"bake": {
		wants: page("", part("filling", "", rich, "Beat all together.")),
		not:   page("", part("filling", "", custard, "Stir it over the fire till it thickens.")),
		taken: page("", part("filling", "", rich, "Beat all together and bake it.")),
	},
	"no-water-bath": {
		wants: page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", custard, "Bake it.")),
		not:   page("", part("filling", "", custard, "Bake it.")),
	},
	"doneness": {
		wants: page("", part("filling", "", custard, "Bake it.")),
		not:   page("", part("pastry", "", short, "")),
		taken: page("", part("filling", "", custard, "Bake it till it no longer shakes.")),
	},
	"cool-to-cut": {
		wants: page("", part("filling", "", rich, "Bake it.")),
		not:   page("", part("filling", "", rich, "Bake it and send it to table hot.")),
	},
	"stand-hot": {
		wants: page("", part("filling", "", rich, "Bake it and send it to table hot.")),
		not:   page("", part("filling", "", rich, "Bake it.")),
	},
	"cool-cake": {
		wants: page("oven: moderate\n", part("cake", "", "1 lb of flour, 1 lb of butter, 8 eggs", "")),
		not:   page("", part("filling", "", rich, "Bake it.")),
	},
	"cool-pie": {
		wants: page("", part("filling", "", meat, "Bake it. When it is cold fill it up with jelly.")),
		not:   page("", part("filling", "", meat, "Bake it and fill it up with gravy.")),
	},
	"set-jelly": {
		wants: page("", part("filling", "", meat, "Bake it. When it is cold pour in good jelly.")),
		not:   page("", part("filling", "", meat, "Bake it. Serve it cold.")),
	},
	"set-mould": {
		wants: page("", part("filling", "", "1 pint of cream, 1 oz of isinglass", "Mix them and put it into a mould.")),
		not:   page("", part("filling", "", "1 pint of cream, 4 oz of sugar", "Whip it.")),
	},
	"line-tin": {
		wants: page("oven: moderate\n", part("cake", "", "1 lb of flour, 1 lb of butter, 8 eggs", "")),
		not:   page("", part("filling", "", rich, "Bake it.")),
	},
}

func read(t testing.TB, text string) *practice.Dish {
	t.Helper()
	tab := tables(t)
	f, faults := file.Read("receipt.yaml", []byte(text), tab)
	require.NoError(t, faults.Err(), text)
	return practice.Read(f, tab, receipt.NewMethodReader(tab))
}

// of is the step among those expected, nil when it is not.
func of(d *practice.Dish, id string) *practice.Expected {
	for _, x := range d.Expected() {
		if x.Step.ID == id {
			return &x
		}
	}
	return nil
}

func TestEveryStep(t *testing.T) {
	for _, step := range tables(t).Steps {
		t.Run(step.ID, func(t *testing.T) {
			c, ok := steps[step.ID]
			require.True(t, ok, "a receipt that wants it, and one that does not")
			x := of(read(t, c.wants), step.ID)
			require.NotNil(t, x)
			require.False(t, x.Taken)
			require.Nil(t, of(read(t, c.not), step.ID))
			if c.taken == "" {
				return
			}
			x = of(read(t, c.taken), step.ID)
			require.NotNil(t, x)
			require.True(t, x.Taken)
		})
	}
}

// A step the table can ask for can be taken in words, and any can be taken in
// the file.
func TestStepsCanBeTaken(t *testing.T) {
	for _, step := range tables(t).Steps {
		if step.Grade != "" {
			require.NotEmpty(t, step.Takes, step.ID)
		}
		c := steps[step.ID]
		text := strings.Replace(c.wants, "    lines:", "    done: ["+step.ID+"]\n    lines:", 1)
		text = strings.Replace(text, "  - kind: filling\n    lines:", "  - kind: filling\n    done: ["+step.ID+"]\n    lines:", 1)
		x := of(read(t, text), step.ID)
		require.NotNil(t, x, step.ID)
		require.True(t, x.Taken, step.ID)
	}
}

// The wash inside serves where part-baking is not said, and the reverse is not
// so: a wash the book directs is asked for.
func TestWashSparesPartBaking(t *testing.T) {
	d := read(t, page("", part("pastry", "    lay: lining\n", short, "Brush the case within with beaten egg and dry it."), part("filling", "", rich, "Bake it.")))
	x := of(d, "part-bake")
	require.NotNil(t, x)
	require.True(t, x.Spared)
	require.False(t, x.Taken)
}

const manuscript = "title: A manuscript\nyear: 1838\nplace: england\nstanding:\n"

// standing reads the one receipt of a book and what the book directs for it.
func standing(t *testing.T, directions, receiptText string) []practice.Standing {
	t.Helper()
	tab := tables(t)
	fsys := fstest.MapFS{
		"book.yaml": {Data: []byte(manuscript + directions), Mode: 0o644},
		"tart.yaml": {Data: []byte(receiptText), Mode: 0o644},
	}
	f, _, faults := book.For(fsys, "tart.yaml", tab)
	require.NoError(t, faults.Err())
	return practice.Read(f, tab, receipt.NewMethodReader(tab)).Standing()
}

func TestStanding(t *testing.T) {
	const wash = "  - {say: Brush every case within with beaten egg before it is filled., for: pastry, where: leaf 31}\n"
	tart := func(method string) string {
		return page("", part("pastry", "    lay: lining\n", short, method), part("filling", "", rich, "Bake it."))
	}
	for name, c := range map[string]struct {
		directions, receipt string
		held, taken         bool
	}{
		"not taken":                     {wash, tart(""), true, false},
		"taken in other words":          {wash, tart("Wash it inside with egg."), true, true},
		"taken in the file":             {wash, strings.Replace(tart(""), "    lay: lining\n", "    lay: lining\n    done: egg-wash-inside\n", 1), true, true},
		"no place for it":               {wash, page("", part("pastry", "    lay: lid\n", short, ""), part("filling", "", fruit, "Bake it.")), false, false},
		"a paste by itself":             {wash, page("", part("pastry", "", short, "")), false, false},
		"named by its step":             {"  - {say: See to the case., for: pastry, step: egg-wash-inside}\n", tart(""), true, false},
		"named by its step, and taken":  {"  - {say: See to the case., for: pastry, step: egg-wash-inside}\n", tart("Brush the inside with egg."), true, true},
		"of no step we know":            {"  - {say: Strew fine flour on the slab before you begin., for: pastry}\n", tart(""), true, false},
		"of no step we know, and taken": {"  - {say: Strew fine flour on the slab before you begin., for: pastry}\n", tart("Strew fine flour on your slab before you begin it."), true, true},
		"for another kind":              {"  - {say: Let it rise in a warm place., for: bread}\n", tart(""), false, false},
		"for a class":                   {"  - {say: Sift sugar over it when it is done., for: lemon-tart}\n", strings.Replace(tart(""), "kind: filling\n", "kind: filling\n    class: lemon-tart\n", 1), true, false},
		"for another dish":              {"  - {say: Butter the basin well., dishes: [basin]}\n", tart("") + "dish: soup plate\n", false, false},
	} {
		t.Run(name, func(t *testing.T) {
			got := standing(t, c.directions, c.receipt)
			if !c.held && len(got) == 0 {
				return // it is for something else
			}
			require.Len(t, got, 1)
			require.Equal(t, !c.held, got[0].Idle)
			require.Equal(t, c.taken, got[0].Taken)
		})
	}
}

func TestLay(t *testing.T) {
	filling := part("filling", "", rich, "Bake it.")
	for want, text := range map[string]string{
		"lining": page("", part("pastry", "", short, ""), filling),
		"rim":    page("", part("pastry", "", short, "Lay a paste round the edge of the dish."), filling),
		"lid":    page("", part("pastry", "    lay: lid\n", short, ""), filling),
		"":       page("", part("pastry", "", short, "")),
	} {
		require.Equal(t, want, read(t, text).Lay(0))
	}
}

// Every condition the table may name is met by some receipt and missed by
// another.
func TestConditions(t *testing.T) {
	all := map[string]*practice.Dish{}
	for id, c := range steps {
		for _, text := range []string{c.wants, c.not, c.taken} {
			if text != "" {
				all[id+text] = read(t, text)
			}
		}
	}
	all["pot"] = read(t, page("", part("filling", "", custard, "Boil it two hours in a mould.")))
	for _, name := range reference.StepConditions {
		met, missed := false, false
		for _, d := range all {
			for i := range d.Formula.Parts {
				met = met || d.Holds(i, name)
				missed = missed || d.Holds(i, "no-"+name)
			}
		}
		require.True(t, met, name)
		require.True(t, missed, name)
	}
}

// A pie is cold before it is filled up with jelly or served cold; a tart with
// jelly poured over is no pie of meat, and gravy poured into a hot one waits for
// nothing.
func TestTillCold(t *testing.T) {
	for words, want := range map[string][2]bool{
		"Bake it. When it is cold fill it up with good jelly.":      {true, true},
		"Bake it. When nearly cold, pour the jelly in at the hole.": {true, true},
		"Bake it. Let it cool; then pour in the gravy.":             {false, false}, // told in two sentences: not known
		"Bake it. When it is drawn fill it up with gravy.":          {false, false},
		"Bake it and serve it cold.":                                {false, true},
		"Bake it and serve it hot or cold.":                         {false, false},
	} {
		d := read(t, page("", part("filling", "", meat, words)))
		require.Equal(t, want, [2]bool{d.Holds(0, "filled-cold"), d.Holds(0, "till-cold")}, words)
		require.False(t, read(t, page("", part("filling", "", fruit, words))).Holds(0, "till-cold"))
	}
}

// Nothing is baked that no word sends to an oven and nothing in it would set.
func TestBaked(t *testing.T) {
	for text, baked := range map[string]bool{
		page("", part("filling", "", custard, "")):                                                                                 true,
		page("", part("filling", "", custard, "Boil it two hours in a mould.")):                                                    false,
		page("", part("filling", "", custard, "Stir it over the fire till it thickens.")):                                          false,
		page("", part("filling", "", "1 pint of cream, 1 oz of isinglass", "Mix them.")):                                           false,
		page("", part("filling", "", "1 pint of cream, 4 oz of sugar", "Bake it.")):                                                true,
		page("", part("filling", "", "1 pint of cream, 4 oz of sugar", "Mix them.")):                                               false,
		page("", part("pastry", "    lay: lining\n", short, ""), part("filling", "", "1 pint of cream, 4 oz of sugar", "Mix it.")): true,
	} {
		d := read(t, text)
		require.Equal(t, baked, d.Holds(len(d.Formula.Parts)-1, "baked"), text)
	}
}

// What is fried is not baked.
func TestFried(t *testing.T) {
	batter := page("", part("batter", "", "4 eggs, 1 pint of milk, 8 oz of flour", "Beat it smooth."))
	require.True(t, read(t, batter).Holds(0, "baked"))
	require.False(t, read(t, strings.Replace(batter, "A receipt", "A quire of paper pancakes", 1)).Holds(0, "baked"))
	require.False(t, read(t, strings.Replace(batter, "Beat it smooth.", "Beat it smooth and fry it in lard.", 1)).Holds(0, "baked"))
}

// Small cakes are not turned out of a tin.
func TestInTin(t *testing.T) {
	cake := part("cake", "", "1 lb of flour, 1 lb of butter, 8 eggs", "")
	require.True(t, read(t, page("oven: moderate\n", cake)).Holds(0, "in-tin"))
	require.True(t, read(t, page("bake: an hour\n", cake)).Holds(0, "in-tin"))
	require.False(t, read(t, page("bake: 12 min\n", cake)).Holds(0, "in-tin"))
	require.False(t, read(t, strings.Replace(page("oven: moderate\n", cake), "A receipt", "Ginger biscuits", 1)).Holds(0, "in-tin"))
}

// A step done in the file counts with the judge as if the words had said it.
func TestDoneRaisesTheFlag(t *testing.T) {
	d := read(t, page("", part("pastry", "    lay: lining\n    done: [part-bake]\n", short, ""), part("filling", "", rich, "Bake it.")))
	require.True(t, d.Methods[0].Flags[formula.Flag("blind_baked")])
}

// Small patties bake through with their filling: nobody part-bakes them unsaid,
// but a book that directs a wash inside every case means theirs too.
func TestPattiesAreNotPartBaked(t *testing.T) {
	tab := tables(t)
	text := page("", part("pastry", "    lay: patty\n", short, ""), part("filling", "", rich, "Bake it."))
	f, _, faults := book.For(fstest.MapFS{
		"a.yaml":    {Data: []byte(text), Mode: 0o644},
		"book.yaml": {Data: []byte("title: A book\nyear: 1838\nplace: england\nstanding:\n  - {say: Brush the inside of every case with beaten egg and dry it before it is filled., for: [pastry]}\n"), Mode: 0o644},
	}, "a.yaml", tab)
	require.NoError(t, faults.Err())
	d := practice.Read(f, tab, receipt.NewMethodReader(tab))
	for _, x := range d.Expected() {
		require.NotContains(t, []string{"part-bake", "egg-wash-inside", "lay-lining"}, x.Step.ID)
	}
	require.Len(t, d.Standing(), 1)
	require.False(t, d.Standing()[0].Idle)
	require.False(t, d.Standing()[0].Taken)
}

// A syllabub of which no word tells any heat is eaten as mixed; a filling with
// something in it for heat to set, or of which nothing is told, is not taken so.
func TestUnheated(t *testing.T) {
	cream := "1 pint of cream, 4 oz of sugar"
	for text, cold := range map[string]bool{
		page("", part("filling", "", cream, "Whip it and fill the glasses.")):                                      true,
		page("", part("filling", "", cream, "")):                                                                   false,
		page("", part("filling", "", cream, "Bake it.")):                                                           false,
		page("oven: slow\n", part("filling", "", cream, "Whip it.")):                                               false,
		page("", part("filling", "", cream+", 4 eggs", "Whip it.")):                                                false,
		page("", part("filling", "", cream+", 2 oz of flour", "Whip it.")):                                         false,
		page("", part("filling", "", cream, "Whip it."), part("pastry", "    lay: lining\n", short, "Rub it in.")): false,
	} {
		tab := tables(t)
		f, _, faults := book.For(fstest.MapFS{"a.yaml": {Data: []byte(text), Mode: 0o644}}, "a.yaml", tab)
		require.NoError(t, faults.Err())
		require.Equal(t, cold, practice.Read(f, tab, receipt.NewMethodReader(tab)).Unheated(0), text)
	}
}

// A bench record tells what was done in the past tense: it is read as the
// direction it answers.
func TestDoneIsReadAsDirected(t *testing.T) {
	reader := receipt.NewMethodReader(tables(t))
	for directed, done := range map[string]string{
		"Brush the inside with egg.":             "brushed the inside of the case with beaten egg",
		"Wash it inside with egg.":               "washed it inside with egg",
		"Bake the case blind.":                   "baked the case blind",
		"Let it rest an hour in the cold.":       "rested it an hour in the cold",
		"Prick the bottom.":                      "pricked the bottom",
		"Strain the custard through a sieve.":    "strained the custard through a sieve",
		"Set it in a pan of water in the oven.":  "stood it in a pan of water in the oven",
		"Let it rise two hours.":                 "left it to rise two hours",
		"Rub in the butter.":                     "rubbed in the butter",
		"Make a hole in the top.":                "made a hole in the top",
		"Stir it over the fire till it is thick": "stirred it over the fire till thick",
	} {
		for _, kind := range []formula.Kind{formula.Pastry, formula.Filling, formula.Bread} {
			_, want := reader.Said(directed, kind)
			_, got := reader.Said(done, kind)
			for flag := range want {
				require.True(t, got[flag], "%s: %q", flag, done)
			}
		}
	}
}

// Buns and biscuits are baked on a sheet; loaves, cakes in tins and what is baked
// in patty-pans are not.
func TestOnSheet(t *testing.T) {
	dough := part("bread", "", "1 lb of flour, 1 oz of yeast, a gill of milk", "Let it rise, make it up and bake it.")
	cake := part("cake", "", "1 lb of flour, 8 oz of butter, 8 oz of sugar, 4 eggs", "Mix it and bake it.")
	for text, want := range map[string]bool{
		page("oven: slow\n", part("meringue", "", "4 whites of egg, 8 oz of sugar", "Whisk it and drop it on paper.")): true,
		strings.Replace(page("", dough), "A receipt", "Plain buns", 1):                                                 true,
		page("bake: 15 min\n", dough):  true,
		page("bake: an hour\n", dough): false,
		strings.Replace(page("oven: moderate\n", cake), "A receipt", "Rice biscuits", 1):      true,
		strings.Replace(page("oven: moderate\n", cake), "A receipt", "Queen cakes", 1):        false,
		strings.Replace(page("bake: an hour\n", cake), "A receipt", "Biscuit cake", 1):        false,
		page("", part("pastry", "", short, ""), part("filling", "", fruit, "Bake it.")):       false,
		page("bake: 15 min\n", strings.Replace(dough, "bake it", "bake it in patty-pans", 1)): false,
	} {
		require.Equal(t, want, read(t, text).OnSheet(), text)
	}
}
