package receipt_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

// Paste and paper are folded over, and jars are tied down: no whites go in, no
// paste is turned, and nothing is boiled in a cloth.
func TestFoldedAndTied(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	m := receipt.NewMethodReader(tables)
	for _, c := range []struct {
		words string
		kind  formula.Kind
		flag  formula.Flag
		want  bool
	}{
		{"Lay some on each, fold the paste over, press the edges and brush with white of egg.", formula.Filling, "whites_folded", false},
		{"Fold one half over the other.", formula.Filling, "whites_folded", false},
		{"Fold a buttered paper round the dish.", formula.Filling, "whites_folded", false},
		{"Serve it in a folded napkin.", formula.Filling, "whites_folded", false},
		{"Fold it.", formula.Filling, "whites_folded", true},
		{"Whip the whites and fold them in.", formula.Filling, "whites_folded", true},
		{"Fold the whites in lightly and bake it over water.", formula.Filling, "whites_folded", true},
		{"Fold the paste over the apples.", formula.Pastry, "folded_turns", false},
		{"Cut it in rounds, fold it over the jam and press the edges.", formula.Pastry, "folded_turns", false},
		{"Roll it out, fold it over and roll it again.", formula.Pastry, "folded_turns", true},
		{"Fold it in three and roll it again.", formula.Pastry, "folded_turns", true},
		{"Pour it into small jars and tie it down.", formula.Filling, "boiled_pudding", false},
		{"When cold tie it down with bladder.", formula.Filling, "boiled_pudding", false},
		{"Tie them close with paper.", formula.Filling, "boiled_pudding", false},
		{"Tie it down close and boil it two hours.", formula.Filling, "boiled_pudding", true},
		{"Tie it in a floured cloth.", formula.Filling, "boiled_pudding", true},
		{"Tie it up loosely and boil it.", formula.Filling, "boiled_pudding", true},
	} {
		_, flags := m.Said(c.words, c.kind)
		require.Equal(t, c.want, flags[c.flag], c.words)
	}
}
