package trial_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
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
	within, of := 0, 0
	for i := range tables.Published {
		p := &tables.Published[i]
		if p.Dish == "" || p.Part != string(formula.Filling) && p.Part != string(formula.Cake) {
			continue
		}
		f, faults := trial.Formula(p, tables)
		require.NoError(t, faults.Err(), p.ID)
		r, faults := j.Check(f)
		require.NoError(t, faults.Err(), p.ID)
		b := r.Parts[0].Baking
		if b == nil || b.Book.IsZero() || b.Time.IsZero() && !b.Time.Never {
			continue
		}
		in := !b.Time.Never && b.Book.Likely >= b.Time.Low && b.Book.Likely <= b.Time.High
		of++
		if in {
			within++
		}
		t.Logf("%-30s %.1f cm at %3.0f C: %3.0f min in the book, %3.0f (%.0f to %.0f) computed, within: %t",
			p.ID, b.Depth.Likely, b.At.Likely, b.Book.Likely, b.Time.Likely, b.Time.Low, b.Time.High, in)
	}
	t.Logf("within: %d of %d", within, of)
	require.GreaterOrEqual(t, of, 15)
	require.GreaterOrEqual(t, float64(within)/float64(of), .6)
}
