package oven_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/ratios/oven"
	"assize/reference"
)

func load(t testing.TB) *reference.Tables {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	return tables
}

// Trade check value (common practice): a hand held to a count of twenty is an
// oven of about 375 to 400 F, and no nearer than 50 F either way.
func TestHandToTwenty(t *testing.T) {
	h, err := oven.Count(20, load(t))
	require.NoError(t, err)
	f := h.C.Fahrenheit()
	require.GreaterOrEqual(t, f.Likely, 375.0)
	require.LessOrEqual(t, f.Likely, 400.0)
	require.GreaterOrEqual(t, f.Likely-f.Low, 50-1e-9)
	require.GreaterOrEqual(t, f.High-f.Likely, 50-1e-9)
	require.GreaterOrEqual(t, len(h.Rows), 10)
}

func TestCountRefused(t *testing.T) {
	for _, n := range []float64{0, -3, .5, 121, math.NaN(), math.Inf(1)} {
		_, err := oven.Count(n, load(t))
		require.Error(t, err)
	}
}

// Every sign a book may use, as it is read.
func TestCalled(t *testing.T) {
	tables := load(t)
	old, now := oven.When{Year: 1861, Place: "england"}, oven.When{Year: 2000, Place: "england"}
	for _, c := range []struct {
		words           string
		when            oven.When
		sign, row       string
		low, like, high float64 // F
	}{
		{"a quick oven", old, oven.Word, "quick", 350, 400, 450},
		{"quick", now, oven.Word, "quick", 375, 400, 450},
		{"in a slow oven", old, oven.Word, "slow", 250, 300, 350},
		{"a moderately slow oven", now, oven.Word, "moderately-slow", 315, 325, 350},
		{"put it in after the bread is drawn", old, oven.Word, "after-bread", 250, 300, 375},
		{"rather quick, but not scorching", now, oven.Word, "moderately-hot", 365, 390, 415},
		{"350 F", now, oven.Degrees, "", 350, 350, 350},
		{"at 325-350°F", now, oven.Degrees, "", 325, 337.5, 350},
		{"180C", now, oven.Degrees, "", 356, 356, 356},
		{"160 C fan", now, oven.Degrees, "", 356, 356, 356},
		{"fan oven at 160 °C", now, oven.Degrees, "", 356, 356, 356},
		{"160 degrees Réaumur", now, oven.Degrees, "", 392, 392, 392},
		{"gas mark 4", now, oven.Gas, "gas-4", 350, 350, 350},
		{"Regulo 6", oven.When{Year: 1936}, oven.Gas, "gas-6-to-1949", 375, 400, 425},
		{"gas mark 6 for a tart of 1838", oven.When{Year: 1838}, oven.Gas, "gas-6", 400, 400, 400},
		{"gas ½", now, oven.Gas, "gas-half", 250, 250, 250},
		{"bear the hand in it while you count twenty", old, oven.Hand, "", 336, 395, 453},
		{"hold the hand in 20 seconds", old, oven.Hand, "", 336, 395, 453},
		{"white paper browns in half a minute", old, oven.Paper, "", 425, 475, 525},
		{"a sheet of white paper turns dark brown in 5 minutes", old, oven.Paper, "", 375, 425, 475},
	} {
		h, ok := oven.Called(c.words, tables, c.when)
		require.True(t, ok, c.words)
		require.Equal(t, c.sign, h.Sign, c.words)
		if c.row != "" {
			require.Equal(t, c.row, h.Row.ID, c.words)
		}
		f := h.C.Fahrenheit()
		require.InDelta(t, c.low, f.Low, 1, c.words)
		require.InDelta(t, c.like, f.Likely, 1, c.words)
		require.InDelta(t, c.high, f.High, 1, c.words)
	}
}

// Words that are no sign of heat are not taken for one.
func TestNotCalled(t *testing.T) {
	for _, words := range []string{"", "bake it", "half a pound of flour", "a brown paper bag", "15 minutes", "300 g", "when the hand is clean", "the shop is quickly found"} {
		_, ok := oven.Called(words, load(t), oven.When{})
		require.False(t, ok, words)
	}
}

// Two heats are read in the order they stand.
func TestReadInOrder(t *testing.T) {
	heats := oven.Read("a hot oven at first, then slow", load(t), oven.When{})
	require.Len(t, heats, 2)
	require.Equal(t, "hot", heats[0].Row.ID)
	require.Equal(t, "slow", heats[1].Row.ID)
	heats = oven.Read("450 F ten minutes, then 350 F", load(t), oven.When{})
	require.Len(t, heats, 2)
	require.Greater(t, heats[0].C.Likely, heats[1].C.Likely)
}

// Every wording of every working row is read as that row, and its range holds
// what the tables beside it say of their likely heat, or the row's note tells.
func TestEveryWordIsRead(t *testing.T) {
	tables := load(t)
	for i := range tables.Ovens {
		r := &tables.Ovens[i]
		if r.Kind != "word" || !r.Working {
			continue
		}
		for _, w := range r.Words {
			h, ok := oven.Called(w, tables, oven.When{})
			require.True(t, ok, w)
			require.Equal(t, r.ID, h.Row.ID, w)
			f := h.C.Fahrenheit()
			require.LessOrEqual(t, f.Low, f.Likely-50+1e-9, w)
			require.GreaterOrEqual(t, f.High, f.Likely+50-1e-9, w)
		}
	}
}

func bakes(t *rapid.T) oven.Bake {
	return oven.Bake{
		Depth: rapid.Float64Range(.3, 12).Draw(t, "depth"), Width: rapid.SampledFrom([]float64{0, 7, 15, 25}).Draw(t, "width"),
		Set: rapid.Float64Range(60, 105).Draw(t, "set"), Start: rapid.Float64Range(1, 60).Draw(t, "start"),
		Oven: rapid.Float64Range(80, 280).Draw(t, "oven"), Bath: rapid.Bool().Draw(t, "bath"), Batter: rapid.Bool().Draw(t, "batter"),
		Paste: rapid.Float64Range(0, 1).Draw(t, "paste"), Wall: rapid.Float64Range(0, 1).Draw(t, "wall"), Density: rapid.SampledFrom([]float64{0, .4, 1, 1.2}).Draw(t, "density"),
	}
}

// atLeast holds one time against another; what never bakes is the longest.
func atLeast(t *rapid.T, longer, shorter oven.Minutes) {
	const hair = 1e-9
	if shorter.Never && !longer.Never {
		t.Fatalf("%+v is done and %+v never", longer, shorter)
	}
	if longer.Never || shorter.Never {
		return
	}
	if longer.Low < shorter.Low*(1-hair) || longer.Likely < shorter.Likely*(1-hair) || longer.High < shorter.High*(1-hair) {
		t.Fatalf("%+v is quicker than %+v", longer, shorter)
	}
}

// A deeper dish never bakes faster, a hotter oven never slower, a bath never
// faster than none; and a time is in order and more than nothing.
func TestBakingTimeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bakes(t)
		m := b.Time()
		if b.Set > b.Start && !m.Never && !(m.Low > 0 && m.Low <= m.Likely && m.Likely <= m.High) {
			t.Fatalf("%+v", m)
		}
		deeper := b
		deeper.Depth += rapid.Float64Range(.01, 8).Draw(t, "deeper")
		atLeast(t, deeper.Time(), m)
		hotter := b
		hotter.Oven += rapid.Float64Range(.1, 100).Draw(t, "hotter")
		atLeast(t, m, hotter.Time())
		bare, bath := b, b
		bare.Bath, bath.Bath = false, true
		atLeast(t, bath.Time(), bare.Time())
		under := b
		under.Paste += .5
		atLeast(t, under.Time(), m)
		thick := b
		thick.Wall += .5
		atLeast(t, thick.Time(), m)
	})
}

// A range of ovens and depths is wider than one of each, keeps its likely time,
// and is narrower than the worst of all at once.
func TestOverARange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bakes(t)
		b.Bath, b.Set, b.Oven = false, rapid.Float64Range(62, 90).Draw(t, "set"), rapid.Float64Range(130, 230).Draw(t, "mid")
		heat := oven.Range{Low: b.Oven - rapid.Float64Range(0, 20).Draw(t, "under"), Likely: b.Oven, High: b.Oven + rapid.Float64Range(0, 40).Draw(t, "over")}
		depth := oven.Range{Low: .8 * b.Depth, Likely: b.Depth, High: 1.3 * b.Depth}
		got, one := b.Over(heat, depth), b.Time()
		worst := b
		worst.Oven, worst.Depth = heat.Low, depth.High
		if got.Likely != one.Likely || got.Low > one.Low || got.High < one.High || got.High > worst.Time().High*(1+1e-9) {
			t.Fatalf("%+v against %+v", got, one)
		}
	})
}

// Water at 80 C never sets what sets at 85 (McGee 2004: below 85 a mix may
// never set).
func TestBathThatNeverSets(t *testing.T) {
	m := oven.BakingTime(4, 88, 150, true, 20)
	require.True(t, m.Never)
	require.True(t, oven.BakingTime(4, 88, 85, false, 20).Never, "nor does an oven cooler than the set")
	m = oven.BakingTime(4, 82, 175, true, 20)
	require.True(t, m.MayNever)
	require.False(t, m.Never)
	// Of the baths in which it does, the coolest is a degree over its set: the time
	// has an upper end.
	require.Greater(t, m.High, m.Likely)
	require.Less(t, m.High, 6*m.Likely)
	over := oven.Bake{Depth: 4, Set: 79, Start: 20, Oven: 150, Bath: true}.Over(oven.Range{Low: 110, Likely: 150, High: 165}, oven.Range{Low: 3.5, Likely: 4, High: 4.5})
	require.True(t, over.MayNever)
	require.False(t, math.IsInf(over.High, 1))
	require.True(t, math.IsInf(oven.Bake{Depth: 4, Set: 79, Oven: 100}.Over(oven.Range{Low: 70, Likely: 100, High: 120}, oven.Range{Low: 4, Likely: 4, High: 4}).High, 1),
		"an oven that may be cooler than the set has none")
}

// A dish that stands in water warms through its wall: a thick one is slower.
func TestWallInABath(t *testing.T) {
	cup := oven.Bake{Depth: 3.2, Width: 8.2, Set: 79, Start: 60, Oven: 175, Bath: true}
	china := cup
	china.Wall = .5
	require.Greater(t, china.Time().Likely, 1.1*cup.Time().Likely)
	// Trade check value (common practice): a cheesecake two inches deep in a 9 in tin
	// takes an hour to an hour and a half in a bath at 325 F.
	cheesecake := oven.Bake{Depth: 5, Width: 22.9, Set: 66, Start: 20, Oven: 163, Bath: true}
	require.InDelta(t, 70, cheesecake.Time().Likely, 15)
}

// A falling oven of known cooling is found again from its readings, and the
// range about the line holds it.
func TestCoolingFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start, k, room := rapid.Float64Range(200, 400).Draw(t, "start"), rapid.Float64Range(.001, .01).Draw(t, "k"), rapid.Float64Range(5, 30).Draw(t, "room")
		n := rapid.IntRange(2, 8).Draw(t, "n")
		var rs []oven.Reading
		for i := range n {
			m := float64(i) * 20
			rs = append(rs, oven.Reading{Minutes: m, C: room + (start-room)*math.Exp(-k*m)})
		}
		l, err := oven.Fit(rs, room)
		if err != nil {
			if rs[n-1].C < room+10 {
				return
			}
			t.Fatal(err)
		}
		if math.Abs(l.PerMin-k) > 1e-9 || math.Abs(l.First-start) > 1e-6 || l.Few != (n == 2) {
			t.Fatalf("%+v", l)
		}
		at := rapid.Float64Range(0, 600).Draw(t, "at")
		r := l.At(at)
		if !(r.Low <= r.Likely && r.Likely <= r.High) || math.Abs(l.When(r.Likely)-at) > 1e-3 && r.Likely > room+.01 {
			t.Fatalf("%+v at %g, when %g", r, at, l.When(r.Likely))
		}
		if later := l.At(at + 10); later.Likely > r.Likely {
			t.Fatal("it rises")
		}
	})
}

func TestReadingsRefused(t *testing.T) {
	for _, c := range []struct {
		what string
		rs   []oven.Reading
		says string
	}{
		{"one", []oven.Reading{{0, 300}}, "two readings"},
		{"one time", []oven.Reading{{5, 300}, {5, 290}}, "one time"},
		{"rising", []oven.Reading{{0, 200}, {30, 260}}, "not falling"},
		{"at room heat", []oven.Reading{{0, 200}, {30, 21}}, "cannot be used"},
		{"no oven is so hot", []oven.Reading{{0, 2000}, {30, 1000}}, "cannot be used"},
	} {
		_, err := oven.Fit(c.rs, 20)
		require.ErrorContains(t, err, c.says, c.what)
	}
}

// Dishes go in hottest first, none before the first reading, and the mean heat
// of a stay is the heat the dish wants.
func TestPlan(t *testing.T) {
	l, err := oven.Fit([]oven.Reading{{0, 300}, {60, 250}, {120, 210}}, 20)
	require.NoError(t, err)
	takes := func(float64) oven.Minutes { return oven.Minutes{Range: oven.Range{Low: 30, Likely: 40, High: 60}} }
	plan := oven.Plan(l, []oven.Dish{
		{Name: "meringues", C: oven.Range{Low: 93, Likely: 110, High: 120}, Takes: takes},
		{Name: "bread", C: oven.Range{Low: 218, Likely: 246, High: 288}, Takes: takes},
		{Name: "custard", C: oven.Range{Low: 140, Likely: 150, High: 160}, Takes: takes},
		{Name: "tart", C: oven.Range{Low: 190, Likely: 204, High: 230}},
		{Name: "pizza", C: oven.Range{Low: 400, Likely: 430, High: 450}, Takes: takes},
	})
	var order []string
	for _, p := range plan {
		order = append(order, p.Dish.Name)
		require.GreaterOrEqual(t, p.In, 0.0)
	}
	require.Equal(t, []string{"pizza", "bread", "tart", "custard", "meringues"}, order)
	require.True(t, plan[0].Late)
	require.False(t, plan[1].Late)
	require.InDelta(t, 246, (plan[1].Heat.Likely+plan[1].Left)/2, 5)
	require.Equal(t, plan[2].Heat.Likely, plan[2].Left)
}

func TestDone(t *testing.T) {
	tables := load(t)
	for _, c := range []struct {
		kind  formula.Kind
		names []string
		set   string
	}{
		{formula.Filling, []string{"baked-custard", "Baked custard"}, "custard-cups"},
		{formula.Filling, []string{"Lemon curd"}, "stirred-custard"},
		{formula.Cake, []string{"pound-cake"}, "butter-cake"},
		{formula.Filling, []string{"custard tart"}, "custard-pie"},
		{formula.Bread, []string{"lean bread"}, "lean-bread"},
	} {
		d := oven.Done(tables, c.kind, []string{"egg"}, c.names...)
		require.NotNil(t, d.Set, c.names)
		require.Equal(t, c.set, d.Set.ID)
		require.NotNil(t, d.Floor, "egg has a floor, apart from its set")
		require.NotEqual(t, d.Set.ID, d.Floor.ID)
	}
	d := oven.Done(tables, formula.Filling, []string{"yolk", "curd"}, "cheesecake")
	require.True(t, d.Under, "a cheesecake sets under the floor for egg")
	require.Nil(t, oven.Done(tables, formula.Filling, []string{"egg"}, "Lemon cheesecakes").Set, "a cheesecake of lemon holds no curd")
	require.Equal(t, "meat-floor", oven.Done(tables, formula.Filling, []string{"meat", "egg"}, "pork pie").Floor.ID)
	require.Nil(t, oven.Done(tables, formula.Bread, []string{"flour"}, "lean bread").Floor)
}

// Bottom heat helps a base, less under a dish that keeps it off; nothing is
// certain.
func TestBaseThrough(t *testing.T) {
	raw := oven.Base{Raw: true, Wet: 70, Depth: 3, Oven: 160}
	last := -1.0
	for _, f := range oven.Floors {
		b := raw
		b.On = f
		require.Greater(t, b.Through(), last, f)
		last = b.Through()
		cold := b
		cold.ColdDish = true
		require.Less(t, cold.Through(), b.Through())
	}
	require.Less(t, raw.Through(), .25, "science: four points and more are likely soggy")
	sealed := oven.Base{Sealed: true, Wet: 50, Oven: 200}
	require.Greater(t, sealed.Through(), .9)
	require.Less(t, sealed.Through(), 1.0)
}

func ExampleCalled() {
	// Gas range oven chart (1935): hot is 400 to 450 F; the working row reads a
	// little wider.
	tables, err := reference.Load()
	if err != nil {
		panic(err)
	}
	h, _ := oven.Called("a hot oven", tables, oven.When{Year: 1935, Place: "usa"})
	f := h.C.Fahrenheit()
	fmt.Printf("%.0f to %.0f F, likely %.0f\n", f.Low, f.High, f.Likely)
	// Output: 380 to 475 F, likely 425
}

func ExampleBakingTime() {
	// A custard 4 cm deep from a cool larder, set at 79 C, in a slow oven of 150 C:
	// bare, and with the dish in hot water.
	bare := oven.BakingTime(4, 79, 150, false, 15)
	bath := oven.BakingTime(4, 79, 150, true, 15)
	fmt.Printf("bare %.0f minutes (%.0f to %.0f)\n", bare.Likely, bare.Low, bare.High)
	fmt.Println("in water it may never set:", bath.MayNever)
	// Output:
	// bare 85 minutes (53 to 136)
	// in water it may never set: true
}

func ExampleFit() {
	// Newton's law of cooling: an oven that loses a tenth of its heat over the
	// room's in half an hour halves it in 197 minutes.
	l, err := oven.Fit([]oven.Reading{{0, 320}, {30, 290}, {60, 263}}, 20)
	if err != nil {
		panic(err)
	}
	fmt.Printf("halves in %.0f minutes, falls to 204 C in %.0f\n", l.Halves(), l.When(204))
	// Output: halves in 197 minutes, falls to 204 C in 139
}

func TestReadReadings(t *testing.T) {
	got, faults := oven.ReadReadings("r", []byte("14:05 290 C, 14:35 262 C  # shut up\n\n15.05 482 F\n"))
	require.NoError(t, faults.Err())
	require.Equal(t, 14*60+5, got.First)
	require.Len(t, got.Readings, 3)
	require.Equal(t, oven.Reading{Minutes: 30, C: 262}, got.Readings[1])
	require.InDelta(t, 250, got.Readings[2].C, .01)
	require.Equal(t, "16:05", got.Clock(120))
	require.Equal(t, "00:05 (day 2)", got.Clock(600))
	got, faults = oven.ReadReadings("r", []byte("23:30 300C, 00:15 270C, 01:00 240C"))
	require.NoError(t, faults.Err())
	require.Equal(t, 90.0, got.Readings[2].Minutes)
	got, faults = oven.ReadReadings("r", []byte("10 min 300 C\n40 270 C"))
	require.NoError(t, faults.Err())
	require.Equal(t, []oven.Reading{{Minutes: 0, C: 300}, {Minutes: 30, C: 270}}, got.Readings)
	require.Equal(t, "1 h 05 min on", got.Clock(65))
}

// Every fault of a list of readings is told with its place and what to write.
func TestReadingsFaults(t *testing.T) {
	for text, want := range map[string]string{
		"":                         "r:1:1: error: there is no reading",
		"14:05":                    `r:1:1: error: no heat is told with "14:05"`,
		"14:05 290":                `r:1:1: error: "290" is no heat with its scale`,
		"14:05 290 C, 14:61 280 C": `r:1:14: error: "14:61" is no time of day`,
		"hot 290 C":                `r:1:1: error: "hot 290 C" does not begin with a time`,
		"14:05 290 C\n14:05 280 C": `r:2:1: error: "14:05 280 C" is no later than the reading before it`,
		"14:05 290 C\n30 280 C":    `r:2:1: error: "30 280 C" is told another way than the first`,
		"\xff":                     "r:1:1: error: the readings are no text",
	} {
		_, faults := oven.ReadReadings("r", []byte(text))
		require.NotEmpty(t, faults, text)
		require.Equal(t, want, faults[0].Error(), text)
	}
}

// No page of readings makes the reader fall over, and what it accepts is in
// order of time.
func FuzzReadReadings(f *testing.F) {
	f.Add("14:05 290 C, 14:35 262 C")
	f.Add("0 300 C\n30 min 280 C # x")
	f.Add("23:59 300C\n00:01 299C")
	f.Fuzz(func(t *testing.T, text string) {
		got, faults := oven.ReadReadings("r", []byte(text))
		for _, x := range faults {
			if x.Line < 1 || x.Column < 1 || x.What == "" {
				t.Fatalf("%+v", x)
			}
		}
		for i := 1; i < len(got.Readings); i++ {
			if got.Readings[i].Minutes <= got.Readings[i-1].Minutes {
				t.Fatalf("%q: %v", text, got.Readings)
			}
		}
	})
}

func ExampleRead_paper() {
	// Standard Brands, A Guide to Royal Success in Baking (c. 1940), paper test:
	// paper that browns in a minute and a half is a moderate oven, 375 F.
	tables, err := reference.Load()
	if err != nil {
		panic(err)
	}
	for _, h := range oven.Read("white paper browns in a minute and a half", tables, oven.When{Year: 1940, Place: "usa"}) {
		f := h.C.Fahrenheit()
		fmt.Printf("%s: %.0f F, shown as %.0f to %.0f\n", h.Rows[0].Means, f.Likely, f.Low, f.High)
	}
	// Output: moderate: 375 F, shown as 325 to 425
}

func ExampleCalled_gasMark() {
	// Gas marks, conversion table: mark 7 is 425 F; in a book of 1936 a step
	// either way.
	tables, err := reference.Load()
	if err != nil {
		panic(err)
	}
	for _, year := range []int{1975, 1936} {
		h, _ := oven.Called("Regulo 7", tables, oven.When{Year: year, Place: "england"})
		f := h.C.Fahrenheit()
		fmt.Printf("%d: %.0f F (%.0f to %.0f)\n", year, f.Likely, f.Low, f.High)
	}
	// Output:
	// 1975: 425 F (425 to 425)
	// 1936: 425 F (400 to 450)
}

func ExampleDone() {
	// USDA Food Safety and Inspection Service, Shell Eggs from Farm to Table: egg
	// mixtures, 160 F. A baked custard sets above that, a cheesecake below.
	tables, err := reference.Load()
	if err != nil {
		panic(err)
	}
	for _, class := range []string{"baked-custard", "curd-cheesecake"} {
		d := oven.Done(tables, formula.Filling, []string{"egg", "curd"}, class)
		fmt.Printf("%s: set at %s F, the floor %s F, sets below it: %t\n", class, d.Set.F.Likely, d.Floor.F.Likely, d.Under)
	}
	// Output:
	// baked-custard: set at 175 F, the floor 160 F, sets below it: false
	// curd-cheesecake: set at 150 F, the floor 160 F, sets below it: true
}

// No words make the reader fall over, and every heat it reads is in order.
func FuzzRead(f *testing.F) {
	tables, err := reference.Load()
	if err != nil {
		f.Fatal(err)
	}
	for _, s := range []string{"a quick oven, then slow", "gas ½", "fan 160°C to 180 C", "count twenty with the hand", "paper browns in half a minute", "150 Réaumur", "mark 4 regulo"} {
		f.Add(s, 1838)
	}
	f.Fuzz(func(t *testing.T, words string, year int) {
		for _, h := range oven.Read(words, tables, oven.When{Year: year}) {
			if h.Sign == "" || h.Words == "" || !(h.C.Low <= h.C.Likely && h.C.Likely <= h.C.High) {
				t.Fatalf("%q: %+v", words, h)
			}
		}
	})
}

func ExampleBake_cup() {
	// A cup of custard, 7 cm across and 5 deep, in water in an oven of 175 C, by
	// the first terms for slab and cylinder (Carslaw and Jaeger 1959) and what the
	// water along it keeps off: 41 minutes from 55 C, 53 from 20 (38 and 49 with the
	// outside at the water's heat). A school's work sheet bakes such cups 40 to 50.
	cup := oven.Bake{Depth: 5, Width: 7, Set: 79, Oven: 175, Bath: true}
	for _, start := range []float64{55, 20} {
		cup.Start = start
		fmt.Printf("from %.0f C: %.0f minutes\n", start, cup.Time().Likely)
	}
	// Output:
	// from 55 C: 41 minutes
	// from 20 C: 53 minutes
}
