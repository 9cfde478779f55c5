package judge_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/file"
	"assize/ratios/judge"
	"assize/reference"
)

// What is brushed, strewn, rubbed or served with a dish and stands on no line is
// told with where it is named; a likeness, a tool or a verb is not taken for it.
func TestNamedInTheDirections(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	apples := []string{"1 lb apples", "4 oz sugar"}
	for step, want := range map[string][]string{
		"Brush the lid with beaten egg and bake it.":              {"beaten egg"},
		"Wash them with white of egg, sift sugar over and bake.":  {"white of egg"},
		"Brush over with milk before they go in the oven.":        {"milk"},
		"Bake it, and strew blanched almonds over.":               {"blanched almonds"},
		"Butter the dish, and bake it an hour.":                   {"butter"},
		"Bake it in a buttered dish.":                             {"buttered"},
		"Flour the board. Bake it.":                               {"flour"},
		"Bake it in a floured tin.":                               {"floured"},
		"Serve, when baked, with cream, or if you like almonds.":  {"cream", "almonds"},
		"Glaze the crust with the yolk of an egg beaten in milk.": {"yolk of an egg", "milk"},
		"Garnish the baked dish with prawns and oysters.":         {"prawns", "oysters"},
		"glazed-with-white":                                       {"white of egg"},
		"Beat it to a cream, as thick as good cream, and bake.":   nil,
		"Bake it in pieces the size of a walnut or an egg.":       {"egg"}, // of two ways the one that warns
		"Stir with an egg whisk in a milk pan; bake in a tart.":   nil,
		"Fish them out and cream them together, and bake.":        nil,
		"Bake it in a piece the bigness of a hen's egg.":          nil,
		"Cut it like macaroni, and bake.":                         nil,
	} {
		r := checked(t, tables, &shortReceipt{Lines: apples, Method: []string{step}, Oven: "moderate"})
		var got []string
		for _, n := range r.Named {
			if n.Place == judge.InDirections && len(n.Ingredient.AllergensEU)+len(n.Ingredient.AllergensUS) > 0 {
				got = append(got, n.Words)
			}
		}
		assert.Equal(t, want, got, step)
	}
}

func groupsOf(r *judge.Report) (listed, named []string) {
	for _, a := range r.Allergens {
		if a.Row.List != "eu" {
			continue
		}
		if len(a.From) > 0 {
			listed = append(listed, a.Row.Group)
		}
		for _, n := range a.Named {
			named = append(named, a.Row.Group+" "+string(n.Place))
		}
	}
	return listed, named
}

// A wash counts among the allergens wherever it is told: in the steps, in what
// the book says once for all, in what the worksheet adds. A nut beside another
// is named by itself; butter beside butter is not.
func TestAllergensOfWhatIsNotListed(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	read := func(step string) *judge.Report {
		f, faults := file.Read("tart", []byte(`title: Apple tart
year: 1850
place: england
parts:
  - {name: paste, kind: pastry, lay: lining and lid, lines: [1 lb flour, 8 oz butter, 4 oz almonds], method: [`+step+`]}
  - {name: apples, kind: filling, lines: [2 lb apples, 4 oz sugar], method: [Bake it an hour.]}
oven: moderate
`), tables)
		require.NoError(t, faults.Err())
		j := judge.New(tables)
		j.Readings, j.Remedies = 1, false
		r, faults := j.Check(f)
		require.NoError(t, faults.Err())
		return r
	}
	listed, named := groupsOf(read("Brush the lid with white of egg; butter the tin; strew pistachios over."))
	require.Equal(t, []string{"cereals containing gluten", "milk", "nuts"}, listed)
	require.Equal(t, []string{"eggs directions", "nuts directions"}, named)

	// The worksheet adds a glaze of egg where nothing is said.
	_, named = groupsOf(read("Lay the lid on."))
	require.Equal(t, []string{"eggs practice"}, named)

	r := read("Lay the lid on.")
	i := slices.IndexFunc(r.Findings, func(f judge.Finding) bool { return f.Caution == "allergen" })
	require.GreaterOrEqual(t, i, 0)
	require.Contains(t, r.Findings[i].Says, "; brought in by a step the worksheet adds: eggs;")
	r = read("Brush the lid with white of egg.")
	i = slices.IndexFunc(r.Findings, func(f judge.Finding) bool { return f.Caution == "allergen" })
	require.Contains(t, r.Findings[i].Says, "; not listed but named in the directions: eggs;")
}

// What the book directs once for all counts as its own steps do.
func TestAllergensOfStandingDirections(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	f, faults := file.Read("tart", []byte(`title: Apple tart
year: 1850
place: england
parts:
  - {name: apples, kind: filling, lines: [2 lb apples, 4 oz sugar], method: [Bake it an hour.]}
oven: moderate
`), tables)
	require.NoError(t, faults.Err())
	f.Parts[0].Standing = append(f.Parts[0].Standing, formula.Direction{Text: "Send cream to table with every dish of apples.", Where: "leaf 3"})
	j := judge.New(tables)
	j.Readings, j.Remedies = 1, false
	r, faults := j.Check(f)
	require.NoError(t, faults.Err())
	_, named := groupsOf(r)
	require.Equal(t, []string{"milk elsewhere"}, named)
}

// Every meat, fowl, game, fish and shellfish of the table raises that it is to be
// hot to the middle and kept in the cold; fish and shellfish name themselves among the allergens.
func TestEveryMeatHasItsCautions(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	groups := map[string]string{"fish_white": "fish", "fish_oily": "fish", "shellfish": "crustaceans", "oysters": "molluscs"}
	meats := 0
	for _, ing := range tables.Ingredients {
		if !slices.Contains(ing.Roles, "meat") {
			continue
		}
		meats++
		f, faults := file.Read("pie", (&shortReceipt{Title: "Pie", Lines: []string{"2 lb veal"}, Method: []string{"Bake it two hours."}}).text(t), tables)
		require.NoError(t, faults.Err())
		f.Parts[0].Lines[0].Items[0].Ingredient = ing.ID
		j := judge.New(tables)
		j.Readings, j.Remedies = 1, false
		r, faults := j.Check(f)
		require.NoError(t, faults.Err())
		require.True(t, slices.ContainsFunc(r.Findings, func(f judge.Finding) bool { return f.Code == "raw-meat" }), ing.ID)
		require.True(t, raised(r, "meat-kept"), ing.ID)
		if g := groups[ing.ID]; g != "" {
			listed, _ := groupsOf(r)
			require.Contains(t, listed, g)
		}
	}
	require.GreaterOrEqual(t, meats, 16)
}
