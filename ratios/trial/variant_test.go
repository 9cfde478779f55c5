package trial

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference"
)

// For every formula of the fit with a predicted fault a variant is found that
// passes its own check, or what stands in the way is said: four in five at
// least, of those four in five with three ingredients changed at most, and
// every egg whole.
func TestVariantsAnswer(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	list, err := Variants(tables, 400)
	require.NoError(t, err)
	require.Greater(t, len(list), 10)
	passes, few := 0, 0
	for _, a := range list {
		require.True(t, a.Whole, a.ID)
		if !a.Found {
			require.Positive(t, a.Stands, a.ID)
			continue
		}
		if a.Passes {
			passes++
		}
		if a.Ingredients <= 3 {
			few++
		}
	}
	require.GreaterOrEqual(t, 5*passes, 4*len(list))
	require.GreaterOrEqual(t, 5*few, 4*passes)
}

// The change a good twin made is among the first three variants for two thirds
// of the pairs that were expected to fail.
func TestPairsAnswer(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	list, err := Pairs(tables, 400)
	require.NoError(t, err)
	hits, of := 0, 0
	for _, p := range list {
		if len(p.Told) == 0 {
			continue
		}
		of++
		if p.Hit {
			hits++
		}
	}
	require.Greater(t, of, 3)
	require.GreaterOrEqual(t, 3*hits, 2*of)
}

// How a thing is made helps to tell which class it is nearest to, and never
// puts fewer formulas nearest to their own.
func TestMakingTellsClasses(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	first, made := 0, 0
	for _, c := range ClassesFound(tables) {
		require.GreaterOrEqual(t, c.FirstMade, c.First, c.Kind)
		first, made = first+c.First, made+c.FirstMade
	}
	require.Greater(t, made, first)
}
