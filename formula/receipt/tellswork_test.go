package receipt_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/receipt"
	"assize/reference"
)

// A list in running words ends where the next paragraph tells the work, with a
// heading of its own or without.
func TestListInWordsEnds(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	const list = "A Plain Cake.\n\nIngredients: a pound of flour, half a pound of butter, six eggs, a little salt.\n\n"
	for _, work := range []string{
		"Sprinkle the salt over the flour. Cream the butter, and stir in the eggs. Roll it out and bake it half an hour.",
		"The butter is creamed, and the eggs are beaten and stirred to it; then the flour goes in.",
		"Mode: Cream the butter; stir in the eggs, then the flour.",
	} {
		f, trace := (&receipt.Reader{Tables: tables, Year: 1838, Place: "england"}).Receipt(list+work, receipt.About{})
		require.NotNil(t, f, work)
		require.Len(t, f.Parts, 1, work)
		require.Len(t, f.Parts[0].Lines, 4, work)
		require.NotEmpty(t, f.Parts[0].Steps, work)
		require.Empty(t, trace.Unread, work)
	}
	f, _ := (&receipt.Reader{Tables: tables, Year: 1838, Place: "england"}).Receipt(list+"Also a pint of milk, two ounces of sugar.", receipt.About{})
	require.NotNil(t, f)
	require.Len(t, f.Parts[0].Lines, 6)
}
