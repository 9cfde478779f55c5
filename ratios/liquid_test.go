package ratios_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// liquid-to-flour counts liquids by weight: half the flour's weight of water is 0.5.
func TestLiquidToFlour(t *testing.T) {
	r := receipt{1990, "england", "bread", []string{"500 g flour", "250 g water"}}
	require.Equal(t, "0.50", r.ratio("liquid-to-flour").StringFixed(2))
	milk := receipt{1990, "england", "bread", []string{"500 g flour", "250 g milk"}}
	require.Equal(t, "0.50", milk.ratio("liquid-to-flour").StringFixed(2))
}
