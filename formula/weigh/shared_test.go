package weigh_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"assize/formula/weigh"
	"assize/reference"
)

// A gill in doubt between Scots and wine measure weighs the same after pints as before them.
func TestScotsGillAfterPint(t *testing.T) {
	alone := grams(1700, "scotland", "2 gills of milk")
	w := weighed(1700, "scotland", "2 pints of milk", "2 gills of milk")
	sameSpan(t, alone, w.Parts[0].Items[1].Grams, "2 gills")
}

// Eggs weighed out of their shells are taken apart as any others: the yolk is a
// third of one and the white the rest, and neither weighs as much as the whole.
func TestWeighedEggsAreTakenApart(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	f := weighed(1838, "england", "3 eggs", "the yolks of 3 eggs", "the whites of 3 eggs").Formula
	f.Kitchen.EggGrams = decimal.NewFromInt(50)
	w, faults := weigh.Weigh(f, tables)
	require.Empty(t, faults)
	items := w.Parts[0].Items
	whole, yolk, white := items[0].Grams, items[1].Grams, items[2].Grams
	require.True(t, whole.Likely.Equal(decimal.NewFromInt(150)))
	require.True(t, whole.Likely.Equal(yolk.Likely.Add(white.Likely)))
	require.InDelta(t, 50, yolk.Likely.InexactFloat64(), 7)
	require.True(t, yolk.Low.LessThan(yolk.High))
}
