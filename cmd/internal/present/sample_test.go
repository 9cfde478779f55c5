package present

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/ratios/readings"
	"assize/reference"
)

// fewTables are tables small enough to know by heart, so that the pages of
// these tests change only with this package.
func fewTables(t *testing.T) *reference.Tables {
	t.Helper()
	from := func(source, locator string) reference.Provenance {
		return reference.Provenance{Source: source, Locator: locator, How: reference.HowRead}
	}
	few := &reference.Tables{
		Sources: []reference.Source{
			{ID: "green-1900", Author: "A. Green", Title: "Tarts | and Puddings", Year: "1900", Kind: "cookery book"},
			{ID: "brown-1840", Author: "B. Brown", Title: "The Larder", Year: "1840", Edition: "2nd", Kind: "cookery book"},
			{ID: "egg-office", Title: "Advice on eggs", Kind: "web page", Address: "https://example.org/eggs"},
		},
		Ingredients: []reference.Ingredient{
			{ID: "flour", Name: "flour", Kind: "flour", Provenance: from("green-1900", "p. 1")},
			{ID: "butter", Name: "butter", Kind: "milk", Provenance: from("green-1900", "p. 1")},
			{ID: "egg_whole", Name: "egg", Kind: "egg", AllergensEU: []string{"eggs"}, AllergensUS: []string{"eggs"}, Provenance: from("green-1900", "p. 1")},
			{ID: "sugar", Name: "sugar", Kind: "other", Provenance: from("green-1900", "p. 1")},
			{ID: "salt", Name: "salt", Kind: "other", Provenance: from("green-1900", "p. 1")},
		},
		Classes: []reference.Class{
			{ID: "rich", Name: "Rich pudding", Kind: "filling", Era: "modern", About: "A pudding that is a tart.", Provenance: from("green-1900", "p. 2")},
			{ID: "old-rich", Name: "Rich pudding of the old books", Kind: "filling", Era: "period", Provenance: from("brown-1840", "p. 3")},
			{ID: "short", Name: "Short crust", Kind: "pastry", Era: "modern", Provenance: from("green-1900", "p. 4")},
		},
		Methods: []reference.Method{
			{ID: "creamed", Meaning: "butter and sugar worked soft and light", Sets: []string{"creamed"}, Words: []string{"to a cream"}, Scope: []string{"steps"}, Provenance: from("green-1900", "p. 5")},
			{ID: "grated", Meaning: "how it was cut up", Words: []string{"grated"}, Scope: []string{"line"}, Provenance: from("green-1900", "p. 5")},
			{ID: "quick", Meaning: "hot oven", Sets: []string{"hot"}, Words: []string{"quick"}, Scope: []string{"bake"}, Provenance: from("green-1900", "p. 5")},
		},
		Sizes: []reference.Size{
			{ID: "egg-now", Each: "egg", Of: "egg_whole", Unit: "g", Span: three("45", "50", "55"), Provenance: from("egg-office", "sizes")},
		},
		Ovens: []reference.Oven{
			{ID: "quick", Kind: "word", Words: []string{"quick"}, Working: true, F: three("375", "400", "450"), C: three("191", "204", "232"), DegreesHow: reference.HowRead, Use: "puffs | tarts", Provenance: reference.Provenance{Source: "green-1900", Locator: "p. 20", How: reference.HowRead, Note: "brisk & bright"}},
			{ID: "modern", Kind: "oven", Words: []string{"oven of today"}, Working: true, Means: "by a thermometer <on> the shelf", Provenance: from("green-1900", "p. 25")},
			{ID: "fan", Kind: "oven", Words: []string{"oven with a fan"}, Working: true, Means: "a little less", Provenance: from("green-1900", "p. 26")},
			{ID: "quick-old", Kind: "word", Words: []string{"quick"}, Sign: "hot but not <intense>", Provenance: from("brown-1840", "p. 21")},
		},
		Doneness: []reference.Doneness{
			{ID: "egg-floor", Name: "egg", Kind: "filling", For: []string{"egg"}, Floor: true, C: three("71", "71", "71"), F: three("160", "160", "160"), Provenance: from("egg-office", "floor")},
			{ID: "pudding", Name: "pudding", Kind: "filling", For: []string{"pudding"}, C: three("66", "68", "70"), F: three("150", "154", "158"), Signs: []string{"the middle trembles"}, TooFar: "it weeps", Carry: three("1", "2", "4"), Cooling: "on a rack", Provenance: from("green-1900", "p. 22")},
		},
		Allergens: []reference.Allergen{
			{ID: "eu-eggs", List: "eu", Group: "eggs", Shown: "eggs", Provenance: from("egg-office", "list, 3")},
			{ID: "us-eggs", List: "us", Group: "eggs", Shown: "eggs", Provenance: from("egg-office", "the nine")},
		},
		Answers: []reference.Answer{
			{ID: "butter", Question: "vegetarian", Ingredients: []string{"butter"}, Answer: "ask", Says: "it may be mixed with lard", Provenance: from("green-1900", "p. 23")},
			{ID: "flour", Question: "hidden", Ingredients: []string{"flour"}, Answer: "against", Says: "it holds <bran>", Provenance: from("green-1900", "p. 24")},
		},
		Measures: []reference.Measure{
			{ID: "gill-old", Names: []string{"gill", "gills"}, Unit: "ml", Span: three("140", "142", "142"), Grade: "exact", Provenance: from("brown-1840", "p. 9")},
		},
	}
	raw, err := few.Snapshot()
	require.NoError(t, err)
	out, err := reference.Decode(raw)
	require.NoError(t, err)
	return out
}

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

func three(low, likely, high string) reference.Span {
	return reference.Span{Low: dec(low), Likely: dec(likely), High: dec(high)}
}

// sample is a report with something of everything a report may hold.
func sample(t *testing.T) (*Sheet, About) {
	t.Helper()
	few := fewTables(t)
	ingredient := func(id string) *reference.Ingredient {
		ing, ok := few.Ingredient(id)
		require.True(t, ok, id)
		return ing
	}
	source := func(id string) *reference.Source {
		s, ok := few.Source(id)
		require.True(t, ok, id)
		return s
	}
	f := &formula.Formula{
		File: "pudding.yaml", Title: "Rich <b>pudding</b> | one", Source: "The *old* book, leaf 2.", Year: 1838, Printed: 1861, Place: "england",
		Meant:   "light & rich",
		Kitchen: formula.Kitchen{Given: true, Year: 2026, Place: "scotland", EggSize: "medium", Butter: "salted"},
		Parts: []formula.Part{
			{Name: "paste", Kind: formula.Pastry, Lay: "lining", From: "Short paste"},
			{Name: "filling", Kind: formula.Filling},
		},
	}
	items := func(ids ...string) []weigh.Item {
		var out []weigh.Item
		for _, id := range ids {
			out = append(out, weigh.Item{Ingredient: ingredient(id)})
		}
		return out
	}
	w := &weigh.Weighed{
		Formula: f,
		Parts:   []weigh.Part{{Of: &f.Parts[0], Items: items("flour", "butter", "salt")}, {Of: &f.Parts[1], Items: items("egg_whole", "butter", "butter", "sugar")}},
		Unknowns: []weigh.Unknown{
			{ID: "size egg", Words: "the size of the eggs", Ways: []weigh.Way{{Words: "as today's", Span: few.Sizes[0].Span, Source: &few.Sizes[0].Provenance}}},
			{ID: "measures", Words: "which gill is meant", Ways: []weigh.Way{{Words: "gill-old", Span: three("1", "1", "1"), Source: &few.Measures[0].Provenance}}},
			{ID: "either", Words: `which is meant by "4 oz or 8 oz"`, Ways: []weigh.Way{{Words: "4 oz"}, {Words: "8 oz"}}},
			{ID: "number", Words: "how many are meant", Ways: []weigh.Way{{Span: three("2", "2.5", "3")}}},
		},
	}
	item := func(id, form string, g reference.Span, percent string, used bool) judge.Item {
		return judge.Item{Ingredient: ingredient(id), Form: form, Grams: g, Percent: dec(percent), Used: used}
	}
	texture := func(id, kind, shown, finding string, fault bool) *reference.Texture {
		return &reference.Texture{ID: id, Kind: kind, Shown: shown, Finding: finding, Fault: fault, Judged: true}
	}
	fatToFlour := &reference.Ratio{ID: "fat-to-flour", Name: "fat to flour"}
	sugarToEgg := &reference.Ratio{ID: "sugar-to-egg", Name: "sugar to egg"}
	eggPart := &reference.Ratio{ID: "egg-to-total", Name: "egg, part of the whole", Unit: "%"}
	unranged := &reference.Ratio{ID: "salt-to-flour", Name: "salt to flour"}
	published := func(class, ratio, kind, low, high, src, at string) *reference.Range {
		return &reference.Range{
			Class: class, Ratio: ratio, Kind: kind, Era: "modern", Low: dec(low), Typical: dec(low), High: dec(high),
			Provenance: reference.Provenance{Source: src, Locator: at, How: reference.HowRead},
		}
	}
	r := &judge.Report{
		Formula: f, Weighed: w, Readings: 2000,
		Notes: []string{"the gill is taken as the old one"},
		Settle: []judge.Doubt{
			{Words: "how the eggs were beaten", Part: .62, Of: "filling"},
			{Words: "the size of the eggs", Part: .14, Of: "filling"},
			{Words: "how strong the flour was", Part: .97, Of: "paste"},
		},
	}
	for i := range few.Allergens {
		r.Allergens = append(r.Allergens, judge.Allergen{Row: &few.Allergens[i], From: []*reference.Ingredient{ingredient("egg_whole")}})
	}
	r.Parts = []judge.Part{
		{
			Name: "paste", Kind: formula.Pastry, From: "Short paste", Lay: "lining",
			Lines: []judge.Line{
				{Text: "1 lb of flour", Items: []judge.Item{item("flour", "", three("454", "454", "454"), "100", true)}},
				{Text: "half a pound of butter", Items: []judge.Item{item("butter", "", three("227", "227", "227"), "50", true)}},
				{Text: "salt, to taste", Items: []judge.Item{{Ingredient: ingredient("salt"), State: formula.ToTaste, Used: true}}, Notes: []string{"salt: to taste, so not weighed"}},
			},
			Profile: ratios.Profile{Basis: ratios.Basis{Of: "flour", Grams: three("454", "454", "454")}, Total: three("681", "681", "681")},
			Ratios: []judge.RatioReading{
				{
					Ratio: ratios.Ratio{Row: fatToFlour, Value: three("0.5", "0.5", "0.5"), Of: dec("227"), To: dec("454")}, Verdict: judge.Within,
					Ranges: []judge.RangeReading{{Range: published("short", "fat-to-flour", "range", "0.25", "0.75", "green-1900", "p. 6"), Verdict: judge.Within}},
				},
				{Ratio: ratios.Ratio{Row: unranged, Value: three("0", "0", "0"), To: dec("454")}, Verdict: judge.NoRange},
			},
			Class:    &judge.ClassFit{Class: class(t, few, "short"), Distance: .01},
			Measures: map[string]readings.Span{"toughness": {Low: .8, Likely: 1, High: 1.2}},
			Texture: &judge.Texture{Likeliest: "sound", Word: "tender", Shares: []judge.Share{
				{Texture: texture("sound", "pastry", "sound", "", false), Share: .88},
				{Texture: texture("tough", "pastry", "tough or hard", "tough", true), Share: .09},
				{Texture: texture("crumbly", "pastry", "falls to crumbs", "crumbly", true), Share: .02},
				{Texture: texture("greasy", "pastry", "greasy", "greasy", true), Share: .01},
			}},
			Baseline: &judge.Baseline{Texture: "sound", Rule: "fat enough, rubbed in"},
		},
		{
			Name: "filling", Kind: formula.Filling,
			Lines: []judge.Line{
				{Text: "8 eggs, well beaten", Items: []judge.Item{item("egg_whole", "well beaten", three("264", "320.4", "376"), "100", true)}},
				{Text: "4 oz or 8 oz of butter", Items: []judge.Item{
					item("butter", "", three("113.4", "113.4", "113.4"), "35.39", true), item("butter", "", three("227", "227", "227"), "70.85", false),
				}, Notes: []string{"in doubt: a blot"}},
				{Text: "3 or 4 oz of sugar", Items: []judge.Item{item("sugar", "", three("8.36", "9.96", "11.2"), "3.11", true)}},
			},
			Profile: ratios.Profile{Basis: ratios.Basis{Of: "egg", Grams: three("264", "320.4", "376")}, Total: three("386", "444", "614")},
			Ratios: []judge.RatioReading{
				{
					Ratio: ratios.Ratio{Row: sugarToEgg, Value: three("0.6", "0.6296", "0.86"), Of: dec("0.6296"), To: dec("1")}, Verdict: judge.Below,
					Ranges: []judge.RangeReading{
						{Range: published("rich", "sugar-to-egg", "range", "0.63", "1.47", "green-1900", "p. 7"), Verdict: judge.Below},
						{Range: published("rich", "sugar-to-egg", "rule", "0.5", "0.5", "brown-1840", "p. 8"), Verdict: judge.Above},
						{Range: published("old-rich", "sugar-to-egg", "point", "0.71", "0.71", "brown-1840", "p. 8"), Verdict: judge.Below},
					},
				},
				{
					Ratio: ratios.Ratio{Row: eggPart, Value: three("55.2", "72.1", "80"), Of: dec("72.1"), To: dec("1")}, Verdict: judge.Above,
					Ranges: []judge.RangeReading{{Range: published("rich", "egg-to-total", "range", "17", "33", "green-1900", "p. 7"), Verdict: judge.Above}},
				},
			},
			Class: &judge.ClassFit{
				Class: class(t, few, "rich"), Distance: .3, Others: []judge.ClassDistance{{Class: class(t, few, "rich"), Distance: .4}},
				Period: &judge.ClassDistance{Class: class(t, few, "old-rich"), Distance: .02},
			},
			Words: []judge.MethodWord{
				{Words: "to a cream", Token: "creamed", Meaning: "butter and sugar worked soft and light", Where: formula.InSteps},
				{Words: "grated", Token: "grated", Meaning: "how it was cut up", Where: formula.OnLine},
				{Words: "quick", Token: "quick", Meaning: "hot oven", Where: formula.InBake},
			},
			Measures: map[string]readings.Span{"volume_ml": {Low: 742, Likely: 801, High: 858}, "set_index": {Low: 2.1, Likely: 2.73456, High: 3.3}},
			Texture: &judge.Texture{Likeliest: "cakey", Shares: []judge.Share{
				{Texture: texture("sets", "filling", "sets smooth", "", false), Share: .15},
				{Texture: texture("starch-set", "filling", "sets with starch", "", false), Share: .01},
				{Texture: texture("cakey", "filling", "sets cakey", "cakey", true), Share: .82},
				{Texture: texture("curdy", "filling", "curdles", "curdles", true), Share: .02},
				{Texture: texture("thin", "filling", "stays loose or weeps", "loose", true)},
				{Texture: texture("rubbery", "filling", "sets rubbery", "rubbery", true)},
			}},
			Baseline: &judge.Baseline{Texture: "sets", Rule: "egg enough"},
		},
	}
	row := func(id string) *reference.Doneness {
		for i := range few.Doneness {
			if few.Doneness[i].ID == id {
				return &few.Doneness[i]
			}
		}
		return nil
	}
	quick, ok := oven.Called("quick", few, oven.When{Year: 1838})
	require.True(t, ok)
	gentle, ok := oven.Called("150 C", few, oven.When{})
	require.True(t, ok)
	r.Said = []oven.Heat{quick}
	r.Parts[0].Baking = &judge.Baking{At: quick.C, AtBook: true, Base: []judge.Through{{On: oven.Rack, Chance: .32}, {On: oven.Stone, Chance: .77}}}
	r.Parts[1].Done = oven.Doneness{Set: row("pudding"), Floor: row("egg-floor"), Under: true}
	r.Parts[1].Baking = &judge.Baking{
		Class: class(t, few, "rich"), Says: "gentle, 150 C", Wants: []oven.Heat{gentle}, At: quick.C, AtBook: true,
		Depth: oven.Range{Low: 2.5, Likely: 3, High: 3.5}, Time: oven.Minutes{Range: oven.Range{Low: 22, Likely: 36, High: 71}},
		Today: oven.Minutes{Range: oven.Range{Low: 31, Likely: 52, High: 88}},
		Book:  oven.Range{Low: 30, Likely: 30, High: 30},
	}
	r.Findings = []judge.Finding{
		{
			Code: "cakey", Part: "filling", Grade: judge.Decide, Share: .82, Says: "sets cakey",
			Because: []judge.Evidence{{What: "air beaten in", Value: "18 in 100 (12 to 22)", Limit: "from about 10 in 100", Layer: judge.LayerMechanism, Source: source("green-1900"), Locator: "p. 11", Confidence: "medium"}},
			Remedies: []judge.Remedy{{Text: "melt the butter, cool it to blood heat, stir it in", Effect: []judge.Effect{
				{What: "cakey", Kind: "share", Before: .82, After: .31}, {What: "sets", Kind: "share", Before: .15, After: .66},
				{What: "set_index", Kind: "measure", Before: 2.7, After: 2.2}, {What: "volume_ml", Kind: "measure", Before: 800, After: 790},
				{What: "curdle_margin_c", Kind: "measure", Before: 7, After: 9}, {What: "sugar_share", Kind: "measure", Before: 38, After: 38.4},
			}}},
		},
		{Code: "soggy-base", Part: "paste", Grade: judge.Watch, Says: "a wet filling on raw paste may leave the base soggy", Because: []judge.Evidence{{What: "part-baking", Value: "not said", Limit: "common practice; in print by 1832", Layer: judge.LayerPractice, Confidence: "medium"}}},
		{Code: "not-listed", Part: "filling", Grade: judge.Watch, Says: "brandy is named in the steps and not listed", Because: []judge.Evidence{{What: "brandy", Layer: judge.LayerPractice}}},
		{Code: "heat-care", Part: "filling", Share: .4, Says: "keep the heat gentle", Because: []judge.Evidence{{What: "room between set and curdled", Value: "8 C", Layer: judge.LayerMechanism, Source: source("green-1900"), Locator: "p. 12", Confidence: "low"}}},
		{Code: "raw-egg", Part: "filling", Says: "egg not heated through can carry disease; cook it through", Because: []judge.Evidence{{What: "raw egg", Limit: "the egg office: 71 C", Layer: judge.LayerPractice, Source: source("egg-office"), Locator: "raw egg"}}},
	}
	s := &Sheet{Report: r, Directions: [][]book.Standing{{{Text: "Brush the case with egg.", Where: "leaf 31"}}, nil}}
	return s, About{Version: "9.9.9", Tables: few}
}

func class(t *testing.T, tables *reference.Tables, id string) *reference.Class {
	t.Helper()
	c, ok := tables.Class(id)
	require.True(t, ok, id)
	return c
}
