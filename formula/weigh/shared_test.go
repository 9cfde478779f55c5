package weigh_test

import "testing"

// A gill in doubt between Scots and wine measure weighs the same after pints as before them.
func TestScotsGillAfterPint(t *testing.T) {
	alone := grams(1700, "scotland", "2 gills of milk")
	w := weighed(1700, "scotland", "2 pints of milk", "2 gills of milk")
	sameSpan(t, alone, w.Parts[0].Items[1].Grams, "2 gills")
}
