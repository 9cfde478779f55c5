package judge_test

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/formula/file"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/reference"
)

// shortReceipt is one receipt of testdata/vectors/cautions.yaml.
type shortReceipt struct {
	Title, Kind, Class, Dish, Oven, Bake, Place string
	Year                                        int
	Lines, Method                               []string
}

func (s *shortReceipt) text(t *testing.T) []byte {
	t.Helper()
	or := func(v, otherwise string) string {
		if v == "" {
			return otherwise
		}
		return v
	}
	part := map[string]any{"name": "it", "kind": or(s.Kind, "filling"), "lines": s.Lines, "method": s.Method}
	page := map[string]any{"title": or(s.Title, "Receipt"), "year": 1850, "place": or(s.Place, "england"), "parts": []any{part}}
	if s.Year != 0 {
		page["year"] = s.Year
	}
	for key, v := range map[string]string{"dish": s.Dish, "oven": s.Oven, "bake": s.Bake} {
		if v != "" {
			page[key] = v
		}
	}
	if s.Class != "" {
		part["class"] = s.Class
	}
	raw, err := yaml.Marshal(page)
	require.NoError(t, err)
	return raw
}

type cautionPair struct {
	Caution       string
	Raises, Quiet *shortReceipt
}

func cautionPairs(t *testing.T) []cautionPair {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/vectors/cautions.yaml")
	require.NoError(t, err)
	var list struct{ Rows []cautionPair }
	require.NoError(t, yaml.Unmarshal(raw, &list))
	return list.Rows
}

func checked(t *testing.T, tables *reference.Tables, s *shortReceipt) *judge.Report {
	t.Helper()
	f, faults := file.Read("receipt", s.text(t), tables)
	require.NoError(t, faults.Err(), "%s", s.text(t))
	j := judge.New(tables)
	j.Readings, j.Remedies = 1, false
	r, faults := j.Check(f)
	require.NoError(t, faults.Err())
	return r
}

func raised(r *judge.Report, caution string) bool {
	return slices.ContainsFunc(r.Findings, func(f judge.Finding) bool { return f.Caution == caution })
}

// Every caution has a receipt that raises it and one that must not.
func TestEveryCautionHasItsPair(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	pairs := map[string][]cautionPair{}
	for _, p := range cautionPairs(t) {
		pairs[p.Caution] = append(pairs[p.Caution], p)
	}
	for _, c := range tables.Cautions {
		t.Run(c.ID, func(t *testing.T) {
			require.NotEmpty(t, pairs[c.ID], "give the caution %q a pair in testdata/vectors/cautions.yaml", c.ID)
			for _, p := range pairs[c.ID] {
				require.NotNil(t, p.Raises)
				require.NotNil(t, p.Quiet)
				r := checked(t, tables, p.Raises)
				require.True(t, raised(r, c.ID), "must raise it: %v", p.Raises)
				require.False(t, raised(checked(t, tables, p.Quiet), c.ID), "must not raise it: %v", p.Quiet)
				for _, f := range r.Findings {
					if f.Caution == c.ID {
						require.Empty(t, f.Grade, "a caution is not graded")
						require.NotEmpty(t, f.Because[0].Limit, "a caution names its authority")
						require.NotNil(t, f.Because[0].Source)
					}
				}
			}
		})
		delete(pairs, c.ID)
	}
	require.Empty(t, pairs, "pairs of no caution")
}

// clears are words that would clear a dish. None of ours may use them.
var clears = regexp.MustCompile(`(?i)\b(?:safe|safely|harmless|free (?:of|from)|[a-z]+-free|suitable for|no risk)\b`)

// No word of the tables that the public is shown clears anything.
func TestTablesClearNothing(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, name := range []string{"cautions", "answers", "allergens", "doneness"} {
		rows, ok := tables.Rows(name)
		require.True(t, ok)
		for _, row := range rows {
			raw, err := yaml.Marshal(row)
			require.NoError(t, err)
			for line := range strings.Lines(string(raw)) {
				require.NotRegexp(t, clears, line, "%s: %v", name, row)
			}
		}
	}
}

// The switches of the judge leave every caution as it was: brief or not, few
// readings or many, rules on or off.
func TestNothingSwitchesACautionOff(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, p := range cautionPairs(t)[:6] {
		f, faults := file.Read("receipt", p.Raises.text(t), tables)
		require.NoError(t, faults.Err())
		for _, remedies := range []bool{true, false} {
			j := judge.New(tables)
			j.Readings, j.Remedies = 3, remedies
			if !remedies {
				j.Rules = bake.Rules{}
			}
			r, faults := j.Check(f)
			require.NoError(t, faults.Err())
			require.True(t, raised(r, p.Caution), fmt.Sprint(p.Caution, remedies))
		}
	}
}

// The allergens of a receipt are told by both lists, of lines without an amount
// too.
func TestAllergensByBothLists(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	r := checked(t, tables, &shortReceipt{Lines: []string{"3 eggs", "2 oz barley flour", "1 oz candied peel", "almonds, to taste"}, Oven: "slow"})
	got := map[string][]string{}
	for _, a := range r.Allergens {
		require.NotEmpty(t, a.From)
		got[a.Row.List] = append(got[a.Row.List], a.Row.Group)
	}
	require.Equal(t, map[string][]string{
		"eu": {"cereals containing gluten", "eggs", "nuts", "sulphites"}, // barley and sulphites are on the European list alone
		"us": {"eggs", "tree nuts"},
	}, got)
}

// What is sour by its composition raises the cautions of metal without a word
// of theirs for it; what is sweet does not.
func TestSourByComposition(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	in := func(what string) *judge.Report {
		return checked(t, tables, &shortReceipt{Lines: []string{what, "1 lb sugar"}, Method: []string{"Boil it in a copper pan."}})
	}
	require.True(t, raised(in("1 lb damsons"), "copper"))
	require.True(t, raised(in("1 pint verjuice"), "copper"))
	require.False(t, raised(in("1 pint milk"), "copper"))
	require.False(t, raised(in("1 lb butter"), "copper"))
}

// Every answer is brought up by each of its ingredients and by each of its
// words, and none by sugar and water.
func TestEveryAnswerIsBroughtUp(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	up := func(s *shortReceipt) []string {
		var ids []string
		for _, a := range checked(t, tables, s).Answers(tables) {
			require.NotZero(t, len(a.From)+len(a.Named))
			ids = append(ids, a.Row.ID)
		}
		return ids
	}
	require.Empty(t, up(&shortReceipt{Lines: []string{"1 lb sugar", "1 pint water"}, Method: []string{"Boil it."}}))
	for _, a := range tables.Answers {
		t.Run(a.ID, func(t *testing.T) {
			require.NotEmpty(t, append(slices.Clone(a.Ingredients), a.Words...))
			for _, id := range a.Ingredients {
				ing, ok := tables.Ingredient(id)
				require.True(t, ok)
				name := strings.ReplaceAll(id, "_", " ")
				if len(ing.Also) > 0 {
					name = ing.Also[0]
				}
				f, faults := file.Read("receipt", (&shortReceipt{Lines: []string{"4 oz " + name}}).text(t), tables)
				require.NoError(t, faults.Err(), id)
				f.Parts[0].Lines[0].Items[0].Ingredient = id // whatever the year makes of its name
				j := judge.New(tables)
				j.Readings, j.Remedies = 1, false
				r, faults := j.Check(f)
				require.NoError(t, faults.Err(), id)
				require.True(t, slices.ContainsFunc(r.Answers(tables), func(x judge.Answer) bool { return x.Row.ID == a.ID }), id)
			}
			for _, word := range a.Words {
				require.Contains(t, up(&shortReceipt{Lines: []string{"1 lb sugar"}, Method: []string{"Then " + word + " it."}}), a.ID, word)
			}
		})
	}
}

// What a thing is tells the least of its allergens: eggs hold egg, milk milk,
// wheat flour gluten. Where one does not, the name says why.
func TestKindsHoldTheirAllergens(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	groups := map[string]string{"egg": "eggs", "white": "eggs", "yolk": "eggs", "milk": "milk", "sourmilk": "milk", "curd": "milk", "cheese": "milk"}
	spared := []string{"soya_milk"} // plant milk has the kind of milk by what it does
	for _, ing := range tables.Ingredients {
		if g := groups[ing.Kind]; g != "" && !slices.Contains(spared, ing.ID) {
			require.Contains(t, ing.AllergensEU, g, ing.ID)
			require.Contains(t, ing.AllergensUS, g, ing.ID)
		}
		if slices.Contains(ing.AllergensUS, "wheat") {
			require.Contains(t, ing.AllergensEU, "cereals containing gluten", ing.ID)
		}
	}
}
