package trial_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/ratios/trial"
	"assize/reference"
)

func yields(t *testing.T) []trial.Reckoned {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/vectors/filling-yields.yaml")
	require.NoError(t, err)
	var rows struct {
		Rows []trial.Yield `yaml:"rows"`
	}
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	require.NoError(t, dec.Decode(&rows))
	tables, err := reference.Load()
	require.NoError(t, err)
	out, err := trial.Yields(tables, rows.Rows)
	require.NoError(t, err)
	return out
}

// TestYields: a yield that can be one is reckoned within 15 per cent; the others
// are shown as what they are, and counted.
func TestYields(t *testing.T) {
	within, published, not := 0, 0, 0
	for _, y := range yields(t) {
		require.NotEmpty(t, y.Source, y.ID)
		require.Equalf(t, y.Is == "within", y.Possible(), "%s: %.0f g in %v ml", y.ID, y.Grams, y.Yield.ML)
		if y.Is != "within" {
			require.NotEmpty(t, y.Why, y.ID)
			not++
			continue
		}
		require.InDeltaf(t, 0, y.Off, .15, "%s: told %v ml, reckoned %.0f", y.ID, y.Yield.ML, y.ML.Likely)
		within++
		if y.Published != "" {
			published++
		}
	}
	t.Logf("%d yields within 15 per cent, %d of them of formulas in the table; %d cannot be yields of what goes in", within, published, not)
	require.GreaterOrEqual(t, within, 2*published, "as many more as the table has")
	require.GreaterOrEqual(t, published, 3)
}
