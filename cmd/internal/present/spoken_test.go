package present

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
)

// Words as they are said: articles, kinds, classes and proportions in a sentence.
func TestAsItIsSaid(t *testing.T) {
	require.Equal(t, "bread", formula.Bread.A())
	require.Equal(t, "a paste", formula.Pastry.A())
	require.Equal(t, "a filling", formula.Filling.A())
	require.Equal(t, "crème brûlée and pots de crème", plainly("Crème brûlée and pots de crème"))
	require.Equal(t, "rich citrus pudding", plainly("Rich citrus pudding (butter, sugar and eggs)"))
	require.Equal(t, "Yorkshire pudding and popover", plainly("Yorkshire pudding and popover"))
	require.Equal(t, "creaming the butter rather than melting it", rather("creaming the butter", "melting it"))
	require.Equal(t, "as much egg as this rather than a quarter less", rather("as much egg as this", "a quarter less egg"))
	require.Equal(t, "a quarter less egg", rather("a quarter less egg", "as much egg as this"))
	what, of := inWhole("egg, part of the whole")
	require.Equal(t, []string{"egg", " of the whole"}, []string{what, of})
	what, of = inWhole("sugar to egg")
	require.Equal(t, []string{"sugar to egg", ""}, []string{what, of})
	require.Equal(t, "0 in 100", inTheHundred(-.001))
}
