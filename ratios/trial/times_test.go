package trial_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/trial"
	"assize/reference"
)

// The range of a computed time was set from the first list (oven/minutes.go), so
// that it can only show how well it fits; the second was set down before any of
// it was reckoned, and had no part in the range.
func TestPrintedTimes(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, list := range []struct {
		file         string
		within, rows int
	}{
		{"baking-times.yaml", 29, 34},
		{"baking-times-apart.yaml", 23, 27},
	} {
		raw, err := os.ReadFile("../../testdata/vectors/" + list.file)
		require.NoError(t, err)
		rows, err := trial.ReadTimes(raw)
		require.NoError(t, err)
		require.Len(t, rows, list.rows)
		within := 0
		for i := range rows {
			p := &rows[i]
			require.NotEmpty(t, p.Work, p.ID)
			require.NotEmpty(t, p.Locator, p.ID)
			m, err := p.Computed(tables)
			require.NoError(t, err)
			if p.Within(m) {
				within++
			}
		}
		require.GreaterOrEqual(t, within, list.within, list.file)
	}
	_, err = trial.ReadTimes([]byte("rows: [{id: x, minuets: [1, 2]}]"))
	require.Error(t, err)
}
