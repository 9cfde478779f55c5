package receipt_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/receipt"
	"assize/reference"
)

// What a line was taken for is told as a cook would say it: articles and plurals.
func TestTookIsSaidAsACookWould(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for words, want := range map[string][2]string{
		"two ounces of butter":      {"butter, salted, before 1900, 2 ounces", "an ounce is 28.3 g"},
		"half a pound of sugar":     {"sugar, white, 1/2 pound", "a pound is 454 g"},
		"six eggs":                  {"6 eggs", "one gives 33-47 g, likely 40"},
		"one egg":                   {"1 egg", "one gives 33-47 g, likely 40"},
		"the juice of four lemons":  {"lemon juice, before about 1915, of 4 lemons", "one gives 20-40 ml, likely 28"},
		"the juice of half a lemon": {"lemon juice, before about 1915, of 1/2 of a lemon", "one gives 20-40 ml, likely 28"},
		"the whites of four eggs":   {"egg white, of 4 eggs", ""},
		"a wineglass of brandy":     {"", ""},
		"two wineglasses of brandy": {"", ""},
		"three strawberries":        {"", ""},
	} {
		r := &receipt.Reader{Tables: tables, Year: 1850, Place: "england"}
		_, trace := r.Receipt("A receipt\n\nTake "+words+". Bake it.\n", receipt.About{Title: "A receipt"})
		require.NotEmpty(t, trace.Read, words)
		require.NotRegexp(t, `\ba [aeio]|\ban [bcdfgjklmnpqrstvwxyz]|\b[2-9] (ounce|egg|lemon|wineglass|strawberry)\b`, trace.Read[0].Took+"; "+trace.Read[0].Range)
		if want[0] != "" {
			require.Equal(t, want, [2]string{trace.Read[0].Took, trace.Read[0].Range}, words)
		}
	}
}
