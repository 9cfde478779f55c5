package reference_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference"
)

func TestArticle(t *testing.T) {
	for name, want := range map[string]string{
		"ounce": "an ounce", "pint": "a pint", "imperial gill": "an imperial gill", "8 inch tin": "an 8 inch tin", "18 cm souffle dish": "an 18 cm souffle dish",
		"11 inch tin": "an 11 inch tin", "1 pint pie dish": "a 1 pint pie dish", "hour": "an hour", "Almond filling": "an Almond filling", "one-hole tin": "a one-hole tin",
		"usual oven": "a usual oven", "unsalted butter": "an unsalted butter", "": "",
	} {
		require.Equal(t, want, reference.A(name))
	}
}

// Every measure and every thing that is counted has a plural a cook would write.
func TestPlural(t *testing.T) {
	for name, want := range map[string]string{
		"ounce": "ounces", "glass": "glasses", "inch": "inches", "pinch": "pinches", "leaf": "leaves", "loaf": "loaves", "cherry": "cherries", "strawberry": "strawberries",
		"potato": "potatoes", "lump of sugar": "lumps of sugar", "race of ginger": "races of ginger", "size of an egg": "size of an egg", "half the size of an egg": "half the size of an egg",
		"on a sixpence": "on a sixpence", "g": "g", "ml": "ml", "kg": "kg", "dag": "dag", "stone": "stone", "wineglass": "wineglasses", "patty-pan": "patty-pans",
		"syllabub glass": "syllabub glasses", "box": "boxes", "tray": "trays", "half-mutchkin": "half-mutchkins", "oats": "oats", "peeled lemon": "peeled lemons",
	} {
		require.Equal(t, want, reference.Plural(name))
	}
	require.Equal(t, "whole Seville orange", reference.Piece("whole-seville"))
	require.Equal(t, "leaf of gelatine", reference.Piece("leaf-of-gelatine"))
}
