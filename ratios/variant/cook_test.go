package variant

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/ratios/judge"
	"assize/reference"
)

const binderPudding = `title: TITLE
year: 1900
place: england
kitchen: {year: 2000, place: england}
parts:
  - kind: filling
    lines: [8 eggs, 220 g sugar, 220 g butter, 80 g lemon juice, 24 g flour]
    method: ["creamed, beaten"]
bake: 30 min at 210 C
`

func searchFor(t *testing.T, tables *reference.Tables, text string, w Wish) *search {
	t.Helper()
	f, faults := file.Read("pudding.yaml", []byte(text), tables)
	require.NoError(t, faults.Err())
	j := judge.New(tables)
	j.Readings, j.Remedies = 50, false
	before, faults := j.Check(f)
	require.NoError(t, faults.Err())
	g, err := goalOf(j, before, w)
	require.NoError(t, err)
	s, err := newSearch(j, before, g, w)
	require.NoError(t, err)
	return s
}

// A little flour may be left out, but not of what is called after it.
func TestNothingIsLeftOutThatGivesTheName(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for title, may := range map[string]bool{"Lemon pudding": true, "Flour pudding": false} {
		s := searchFor(t, tables, strings.Replace(binderPudding, "TITLE", title, 1), Wish{Against: []string{"cakey"}})
		i := slices.IndexFunc(s.list, func(one item) bool { return hasRole(one.on, "flour") && one.added == nil })
		require.GreaterOrEqual(t, i, 0)
		left := slices.ContainsFunc(s.list[i].steps, func(st step) bool { return st.number.IsZero() })
		require.Equal(t, may, left, title)
	}
}

// What a person keeps is not on the lattice, by whatever name; eggs on it are
// whole; and a dish lined with paste is not stood in water.
func TestNothingNoCookWouldDo(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	s := searchFor(t, tables, strings.Replace(binderPudding, "TITLE", "Pudding", 1), Wish{Against: []string{"cakey"}, Keep: []string{"butter", "eggs"}})
	for _, one := range s.list {
		require.False(t, one.added == nil && (egg(one.on) || hasRole(one.on, "butter")), one.on.Ingredient.Name)
	}
	bath := func(s *search) bool {
		return slices.ContainsFunc(s.wayTexts(), func(w string) bool { return strings.Contains(w, "bath of hot water") })
	}
	require.True(t, bath(s))
	lined := strings.Replace(binderPudding, "parts:\n", "parts:\n  - {kind: pastry, lines: [200 g flour, 100 g butter, 40 g water], method: [rubbed-in]}\n", 1)
	s = searchFor(t, tables, strings.Replace(lined, "TITLE", "Tart", 1), Wish{Against: []string{"cakey"}})
	require.False(t, bath(s))
	for _, one := range s.list {
		if egg(one.on) {
			for _, st := range one.steps {
				require.True(t, st.number.IsInteger())
			}
		}
	}
	paste := searchFor(t, tables, strings.Replace(lined, "TITLE", "Tart", 1), Wish{To: "shortcrust"})
	for _, one := range paste.list {
		require.False(t, hasRole(one.on, "flour"), "the flour of a paste is what the rest is reckoned on")
	}
}

// Of the parts that could have a fault the one likeliest to is worked on, and a
// fault that is meant is answered where it is asked against.
func TestToughPasteThatIsMeantIsAnswered(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	const pie = `title: Custard in a coffin
year: 1850
place: england
parts:
  - {name: crust, kind: pastry, lay: raised, lines: [2 lb of flour, 6 oz of lard, a pint of boiling water], method: [Knead it well and raise the crust.]}
  - {name: custard, kind: filling, lines: [1 pint of milk, 4 eggs, 2 oz of sugar], method: [Bake it.]}
oven: moderate
`
	s := searchFor(t, tables, pie, Wish{Against: []string{"tough"}})
	require.Equal(t, 0, s.goal.part)
	require.Empty(t, s.goal.meant)
	require.NotEmpty(t, s.missing(s.book()))
	require.Equal(t, "tough", searchFor(t, tables, pie, Wish{Part: "crust"}).goal.meant)
}
