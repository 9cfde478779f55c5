package trial_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"assize/ratios/change"
	"assize/ratios/trial"
	"assize/reference"
)

// Every published formula, made more or less of and measured out, is written so
// that it is read again, and no proportion of it is out by more than 5 in 100.
func TestBatchesOfPublishedFormulas(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	factors := []string{"0.25", "0.37", "2.5"}
	made := 0
	for i := range tables.Published {
		p := &tables.Published[i]
		f, faults := trial.Formula(p, tables)
		require.Empty(t, faults, p.ID)
		by := decimal.RequireFromString(factors[i%len(factors)])
		list := make([]decimal.Decimal, len(f.Parts))
		for k := range list {
			list[k] = by
		}
		b, err := change.ForKitchen(change.Exactly(f, list), tables, .0225)
		require.NoError(t, err, "%s times %s", p.ID, by)
		require.LessOrEqual(t, b.Worst, .05, "%s times %s", p.ID, by)
		made++
	}
	require.Greater(t, made, 300)
}
