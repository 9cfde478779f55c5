package weigh_test

import (
	"fmt"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/weigh"
	"assize/reference"
)

func household(t testing.TB, id, grams, place string) (weigh.Household, bool) {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	ing, ok := tables.Ingredient(id)
	require.True(t, ok, id)
	return weigh.HouseholdOf(ing, decimal.RequireFromString(grams), formula.Kitchen{Year: 2020, Place: place}, tables)
}

func ExampleHouseholdOf() {
	// USDA National Nutrient Database, release 28 (2015), weights: sugar,
	// granulated (19335), 1 cup 200 g; butter, salted (01001), 1 tbsp 14.2 g;
	// milk, whole (01077), 1 cup 244 g; cornstarch (20027), 1 cup 128 g.
	tables, _ := reference.Load()
	for _, w := range []struct{ id, grams string }{{"sugar_white", "200"}, {"butter_salted", "28.4"}, {"milk_whole", "122"}, {"cornflour", "8"}} {
		ing, _ := tables.Ingredient(w.id)
		h, _ := weigh.HouseholdOf(ing, decimal.RequireFromString(w.grams), formula.Kitchen{Year: 2020, Place: "usa"}, tables)
		fmt.Println(ing.Name+":", h.Words)
	}
	// Output:
	// sugar, white: 1 cup
	// butter, salted: 2 tablespoons
	// milk, whole: 1/2 cup
	// cornflour (maize starch): 1 tablespoon
}

// A British kitchen has spoons and no cups.
func TestHouseholdOfBritain(t *testing.T) {
	h, ok := household(t, "lemon_juice", "30", "england")
	require.True(t, ok)
	require.Equal(t, "2 tablespoons", h.Words)
	_, ok = household(t, "sugar_white", "500", "england")
	require.False(t, ok, "half a kilo is weighed")
}

// What has no density has no measure.
func TestHouseholdNeedsADensity(t *testing.T) {
	_, ok := household(t, "egg_whole", "0", "usa")
	require.False(t, ok)
}

// A household measure never strays over a twentieth.
func TestHouseholdIsClose(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	rapid.Check(t, func(r *rapid.T) {
		ing := &tables.Ingredients[rapid.IntRange(0, len(tables.Ingredients)-1).Draw(r, "row")]
		g := decimal.New(rapid.Int64Range(1, 200_000).Draw(r, "grams x 100"), -2)
		h, ok := weigh.HouseholdOf(ing, g, formula.Kitchen{Place: rapid.SampledFrom(reference.Places).Draw(r, "place")}, tables)
		if ok && h.Grams.Sub(g).Abs().Mul(decimal.NewFromInt(20)).GreaterThan(g.Mul(decimal.RequireFromString("1.0001"))) {
			r.Fatalf("%s of %s is %s: %s g", g, ing.ID, h.Words, h.Grams)
		}
	})
}
