package receipt_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/receipt"
	"assize/reference"
)

// A book's note on its own cups, as household books print them among their
// remarks.
func ExampleOwnMeasure() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	m, hint, what := receipt.OwnMeasure("this book's teacup is a gill", tables)
	fmt.Println(m.Name, m.Number.Likely, m.Measure, what == "", hint == "")
	_, hint, what = receipt.OwnMeasure("the teacup is old", tables)
	fmt.Println(what)
	fmt.Println(hint)
	// Output:
	// teacup 1 gill true true
	// "old" gives no amount
	// write it as `this book's teacup is a gill`; keep other remarks in a comment
}

func TestOwnMeasure(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for text, want := range map[string]string{
		"the wineglass holds 2 fl oz": "wineglass 2",
		"A tea-cup is half a gill.":   "teacup 0.5",
		"our wineglasses are 3 fl oz": "wineglass 3",
	} {
		m, _, what := receipt.OwnMeasure(text, tables)
		require.Empty(t, what, text)
		require.Equal(t, want, m.Name+" "+m.Number.Likely.String(), text)
		require.Equal(t, text, m.Words)
	}
	for _, text := range []string{"", "is", "teacup", "teacup is", "is a gill", "a teacup is a teacup", "a teacup is big", "a bucketful is a gill", "a teacup is a", "a teacup is 0 gills"} {
		_, hint, what := receipt.OwnMeasure(text, tables)
		require.NotEmpty(t, what, text)
		require.NotEmpty(t, hint, text)
	}
}
