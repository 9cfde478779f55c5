package change_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula/book"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

// kernel compiles a part of a receipt of the demo book.
func kernel(t testing.TB, name string, part int) *bake.Kernel {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	f, _, faults := book.For(os.DirFS("../../testdata/demo/millrace"), name, tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(judge.New(tables).Input(w, part))
	require.NoError(t, err)
	return k
}

// Every reading of a kernel with a doubt settled is one of the readings it had
// before: what is settled stays within what was open, for any draw.
func TestSettledIsOneOfTheWays(t *testing.T) {
	for _, name := range []string{"rich-lemon-pudding.yaml", "seville-orange-tart.yaml"} {
		k := kernel(t, name, 1)
		rapid.Check(t, func(t *rapid.T) {
			i := rapid.IntRange(0, len(k.Slots)-1).Draw(t, "slot")
			way := rapid.IntRange(0, len(k.Slots[i].Ways)-1).Draw(t, "way")
			s := change.To(k.Slots[i].ID, way)
			if rapid.Bool().Draw(t, "pinned") {
				w := k.Slots[i].Ways[way]
				s.At = w.Low + rapid.Float64Range(0, 1).Draw(t, "at")*(w.High-w.Low)
			}
			settled, ok := s.Apply(k)
			require.True(t, ok)
			values := make([]bake.Value, len(k.Slots))
			for j := range values {
				values[j] = settled.Slots[j].At(rapid.Float64Range(0, .999999).Draw(t, k.Slots[j].ID))
				v, open := values[j], k.Slots[j].Ways[values[j].Way]
				require.Positive(t, open.Odds)
				require.True(t, v.At >= open.Low-1e-9 && v.At <= open.High+1e-9)
			}
			require.Equal(t, way, values[i].Way)
			var a, b bake.Outcome
			k.Run(values, &a)
			settled.Run(values, &b)
			require.Equal(t, a, b)
		})
	}
}

func TestSettleWhatIsNotThere(t *testing.T) {
	k := kernel(t, "rich-lemon-pudding.yaml", 1)
	before := readings.LikelyReading(k)
	_, ok := change.To("no such slot", 0).Apply(k)
	require.False(t, ok)
	_, ok = change.To(k.Slots[0].ID, 99).Apply(k)
	require.False(t, ok)
	require.Equal(t, before, readings.LikelyReading(k))
}
