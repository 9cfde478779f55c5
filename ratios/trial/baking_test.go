package trial_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
)

// Published formulas that name a dish whose size is known, an oven and a time,
// taken through the whole chain: volume, dish, depth, oven words, baking time.
// Some print two heats or bake to a colour, and an old "very slow" is anybody's
// guess; six in ten within the computed range is what may be looked for, against
// more than eight where depth and oven are printed (ratios/oven).
func TestBookTimesThroughTheWholeChain(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	j := judge.New(tables)
	j.Readings, j.Remedies = 20, false
	all, err := trial.ChainedTimes(tables, j)
	require.NoError(t, err)
	within, of := 0, len(all)
	for i := range all {
		b := all[i].Baking
		if all[i].Within() {
			within++
		}
		t.Logf("%-30s %.1f cm at %3.0f C: %3.0f min in the book, %3.0f (%.0f to %.0f) computed, within: %t",
			all[i].ID, b.Depth.Likely, b.At.Likely, b.Book.Likely, b.Time.Likely, b.Time.Low, b.Time.High, all[i].Within())
	}
	t.Logf("within: %d of %d", within, of)
	require.GreaterOrEqual(t, of, 15)
	require.GreaterOrEqual(t, float64(within)/float64(of), .6)
}
