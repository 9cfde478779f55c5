package weigh_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestLegalMeasuresAgainstUnits holds the legal measures against those of GNU
// units, where that program is installed.
func TestLegalMeasuresAgainstUnits(t *testing.T) {
	units, err := exec.LookPath("units")
	if err != nil {
		t.Skip("the program units is not installed")
	}
	for _, c := range []struct {
		year     int
		place    string
		measure  string
		of, unit string // of what, and in what to compare
		theirs   string
	}{
		{1760, "england", "1 wine gallon", "water", "ml", "231 in^3"},
		{1760, "england", "1 wine pint", "water", "ml", "uspint"},
		{1760, "england", "1 wine gill", "water", "ml", "usgill"},
		{1760, "england", "1 ale gallon", "water", "ml", "282 in^3"},
		{1760, "england", "1 bushel", "water", "ml", "usbushel"},
		{1760, "england", "1 peck", "water", "ml", "uspeck"},
		{1760, "england", "1 dry pint", "water", "ml", "usbushel / 64"},
		{1760, "england", "1 dry quart", "water", "ml", "usbushel / 32"},
		{1760, "ireland", "1 irish gallon", "water", "ml", "217.6 in^3"},
		{1900, "england", "1 gallon", "water", "ml", "brgallon"},
		{1900, "england", "1 quart", "water", "ml", "brquart"},
		{1900, "england", "1 pint", "water", "ml", "brpint"},
		{1900, "england", "1 gill", "water", "ml", "brgill"},
		{1900, "england", "1 bushel", "water", "ml", "brbushel"},
		{1900, "england", "1 peck", "water", "ml", "brpeck"},
		{1900, "england", "1 fluid ounce", "water", "ml", "brfloz"},
		{2000, "usa", "1 gallon", "water", "ml", "usgallon"},
		{2000, "usa", "1 cup", "water", "ml", "uscup"},
		{2000, "usa", "1 tablespoon", "water", "ml", "ustablespoon"},
		{2000, "usa", "1 teaspoon", "water", "ml", "usteaspoon"},
		{2000, "usa", "1 fluid ounce", "water", "ml", "usfloz"},
		{1900, "england", "1 lb", "sugar", "g", "pound"},
		{1900, "england", "1 oz", "sugar", "g", "ounce"},
		{1900, "england", "1 stone", "sugar", "g", "stone"},
		{1900, "england", "1 cwt", "sugar", "g", "brhundredweight"},
		{1860, "england", "1 troy ounce", "salt", "g", "troyounce"},
		{1860, "england", "1 apothecaries ounce", "salt", "g", "apounce"},
		{1860, "england", "1 scruple", "salt", "g", "scruple"},
		{1860, "england", "100 grains", "salt", "g", "100 grain"},
		{1860, "england", "1 pennyweight", "salt", "g", "pennyweight"},
	} {
		out, err := exec.Command(units, "-t", "-o", "%.10f", c.theirs, c.unit).Output()
		require.NoError(t, err, c.theirs)
		theirs, err := decimal.NewFromString(strings.TrimSpace(string(out)))
		require.NoError(t, err, c.theirs)
		ours := grams(c.year, c.place, c.measure+" of "+c.of).Likely
		if c.unit == "ml" {
			ours = ours.Div(grams(c.year, c.place, "1000 ml of water").Likely.Shift(-3))
		}
		// The tables carry five figures or six.
		off := ours.Sub(theirs).Abs().Div(theirs)
		assert.Truef(t, off.LessThan(decimal.RequireFromString("0.00002")), "%s in %d, %s: %s, by units %s", c.measure, c.year, c.place, ours, theirs)
	}
}
