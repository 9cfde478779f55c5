package trial_test

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
)

// The range of a computed time was set from the first list (oven/minutes.go), so
// that it can only show how well it fits; the others were set down before any of
// them was reckoned, and had no part in the range. Of the last, those with a
// formula file are taken through the whole chain as well: 12 of 16 came out
// within at the first reckoning, before words for a whisked sponge and warm milk
// were learnt from them. A time is within only where the range has an upper end.
func TestPrintedTimes(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	j := judge.New(tables)
	j.Readings, j.Remedies = 20, false
	for _, list := range []struct {
		file                  string
		within, rows          int
		chained, chainsOfRows int
	}{
		{"baking-times.yaml", 29, 34, 0, 0},
		{"baking-times-apart.yaml", 23, 27, 0, 0},
		{"baking-times-later.yaml", 16, 18, 14, 16},
	} {
		raw, err := os.ReadFile("../../testdata/vectors/" + list.file)
		require.NoError(t, err)
		rows, err := trial.ReadTimes(raw)
		require.NoError(t, err)
		require.Len(t, rows, list.rows)
		within, chained, chains := 0, 0, 0
		for i := range rows {
			p := &rows[i]
			require.NotEmpty(t, p.Work, p.ID)
			require.NotEmpty(t, p.Locator, p.ID)
			m, err := p.Computed(tables)
			require.NoError(t, err)
			require.False(t, math.IsInf(m.High, 1), p.ID)
			if p.Within(m) {
				within++
			}
			c, ok, err := p.Chained(tables, j)
			require.NoError(t, err, p.ID)
			if ok {
				chains++
			}
			if ok && p.Within(c) {
				chained++
			}
		}
		require.GreaterOrEqual(t, within, list.within, list.file)
		require.GreaterOrEqual(t, chained, list.chained, list.file)
		require.Equal(t, list.chainsOfRows, chains, list.file)
	}
	_, err = trial.ReadTimes([]byte("rows: [{id: x, minuets: [1, 2]}]"))
	require.Error(t, err)
}
