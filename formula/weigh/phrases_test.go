package weigh_test

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/formula/file"
	"assize/formula/weigh"
	"assize/reference"
)

// Every line of testdata/vectors/phrases.yaml comes to its ingredients and
// within its grams; one without a fixed weight is refused with its reason, or
// weighed over a range that is told.
func TestPhrases(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/vectors/phrases.yaml")
	require.NoError(t, err)
	var list struct {
		Rows []struct {
			Line    string
			Year    int
			Place   string
			Is      []string
			Grams   []float64
			Unclear bool
		}
	}
	require.NoError(t, yaml.Unmarshal(raw, &list))
	require.Len(t, list.Rows, 48)
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, row := range list.Rows {
		t.Run(fmt.Sprintf("%s, %s %d", row.Line, row.Place, row.Year), func(t *testing.T) {
			text := fmt.Sprintf("title: One line\nyear: %d\nplace: %s\nkitchen: {year: %d, place: %s}\nparts:\n  - kind: filling\n    lines:\n      - %q\n",
				row.Year, row.Place, row.Year, row.Place, row.Line)
			f, faults := file.Read("phrase.yaml", []byte(text), tables)
			if row.Unclear && len(faults) > 0 {
				require.NotEmpty(t, faults[0].What)
				require.NotEmpty(t, faults[0].Hint)
				return
			}
			require.Empty(t, faults)
			w, faults := weigh.Weigh(f, tables)
			require.Empty(t, faults)
			likely, low, high := decimal.Zero, decimal.Zero, decimal.Zero
			for _, it := range w.Parts[0].Items {
				require.True(t, slices.Contains(row.Is, it.Ingredient.ID), "it is %s", it.Ingredient.ID)
				likely, low, high = likely.Add(it.Grams.Likely), low.Add(it.Grams.Low), high.Add(it.Grams.High)
			}
			require.NotEmpty(t, w.Parts[0].Items)
			if row.Unclear {
				require.True(t, low.LessThan(high), "it has no fixed weight and is told as %s g", likely)
				require.NotEmpty(t, w.Unknowns)
				return
			}
			require.Len(t, row.Grams, 2)
			require.GreaterOrEqual(t, likely.InexactFloat64(), row.Grams[0], "grams")
			require.LessOrEqual(t, likely.InexactFloat64(), row.Grams[1], "grams")
		})
	}
}
