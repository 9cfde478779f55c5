package bake_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/reference"
)

// Fruit or meat by itself is not judged by how it sets; a spoonful of flour, an
// egg, or more syrup than fruit, and it is.
func TestHoldsItself(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for lines, holds := range map[string]bool{
		"[1 lb of apples, 4 oz of sugar]": true,
		"[2 lb of pork, salt]":            true,
		"[1 lb of raisins, 1 lb of suet, 1 lb of apples, a glass of brandy]": true,
		"[2 lb of veal, half a pint of good jelly, pepper and salt]":         true,
		"[1 lb of chicken, a pint of cream, 1 oz of flour]":                  true,
		"[1 lb of chicken, a pint of cream, 4 eggs]":                         false,
		"[4 oz of bacon, a pint of cream, 4 eggs]":                           false,
		"[2 oz of ham, a pint of cream, 1 oz of flour]":                      false,
		"[1 lb of apples, 4 oz of sugar, a tablespoonful of flour]":          false,
		"[1 lb of apples, 4 oz of sugar, 2 eggs]":                            false,
		"[4 oz of apples, 1 lb of sugar, a pint of water]":                   false,
		"[a pint of milk, 4 oz of sugar]":                                    false,
		"[8 eggs, 8 oz of butter, 8 oz of sugar, the juice of 2 lemons]":     false,
		"[1 lb of apples, 2 oz of bread crumbs, 4 oz of sugar]":              false,
		"[1 lb of gooseberries, 4 oz of sugar, isinglass enough to set it]":  false,
	} {
		f, faults := file.Read("x.yaml", []byte("title: X\nyear: 1840\nplace: england\nparts:\n  - kind: filling\n    lines: "+lines+"\n    method: [Bake it.]\n"), tables)
		require.Empty(t, faults, lines)
		w, faults := weigh.Weigh(f, tables)
		require.Empty(t, faults, lines)
		in := bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])}
		k, err := bake.Compile(in)
		require.NoError(t, err)
		require.Equal(t, holds, bake.HoldsItself(in, k), lines)
	}
}
