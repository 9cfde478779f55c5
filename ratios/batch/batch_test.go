package batch_test

import (
	"errors"
	"os"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/file"
	"assize/formula/weigh"
	"assize/ratios/batch"
	"assize/ratios/change"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/reference"
)

const millrace = "../../testdata/demo/millrace"

var demo = []string{
	"rich-lemon-pudding.yaml", "seville-orange-tart.yaml", "pound-cake.yaml", "baked-custard.yaml", "arrowroot-lemon-tart.yaml",
	"raised-pie-paste.yaml", "lemon-cheesecakes.yaml", "paste-no-1.yaml", "paste-no-3.yaml",
}

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	out, err := reference.Load()
	require.NoError(t, err)
	return out
}

func read(t testing.TB, name string, tb *reference.Tables) *formula.Formula {
	t.Helper()
	f, _, faults := book.For(os.DirFS(millrace), name, tb)
	require.Empty(t, faults)
	return f
}

func judged(t testing.TB, name string) (*judge.Judge, *judge.Report) {
	t.Helper()
	tb := tables(t)
	j := judge.New(tb)
	j.Readings, j.Remedies = 300, false
	r, faults := j.Check(read(t, name, tb))
	require.Empty(t, faults)
	return j, r
}

func called(t testing.TB, r *judge.Report, words string) *dish.Found {
	t.Helper()
	d, err := dish.Called(tables(t), words, judge.KitchenOf(r.Formula))
	require.NoError(t, err)
	return &d
}

func every(f *formula.Formula, by decimal.Decimal) []decimal.Decimal {
	out := make([]decimal.Decimal, len(f.Parts))
	for i := range out {
		out[i] = by
	}
	return out
}

// Scaling twice is scaling once by the product, to the last figure.
func TestScalingTwice(t *testing.T) {
	tb := tables(t)
	var all []*formula.Formula
	for _, name := range demo {
		all = append(all, read(t, name, tb))
	}
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(all).Draw(t, "receipt")
		factor := func(label string) decimal.Decimal {
			return decimal.New(rapid.Int64Range(1, 5000).Draw(t, label), -3)
		}
		a, b := factor("a"), factor("b")
		twice := change.Exactly(change.Exactly(f, every(f, a)), every(f, b))
		once := change.Exactly(f, every(f, a.Mul(b)))
		w2, faults := weigh.Weigh(twice, tb)
		require.Empty(t, faults)
		w1, faults := weigh.Weigh(once, tb)
		require.Empty(t, faults)
		for i := range w1.Parts {
			for k := range w1.Parts[i].Items {
				x, y := w1.Parts[i].Items[k].Grams, w2.Parts[i].Items[k].Grams
				require.True(t, x.Low.Equal(y.Low) && x.Likely.Equal(y.Likely) && x.High.Equal(y.High), "%s and %s", x.Likely, y.Likely)
			}
		}
	})
}

// Fitting to a dish and reading the volume gives what the dish takes.
func TestFittedToADishItFillsIt(t *testing.T) {
	j, r := judged(t, "rich-lemon-pudding.yaml")
	names := []string{"9 x 1.25 in", "soup plate", "pie dish", "23 cm tart tin", "1000 ml", "9 x 13 inch pan", "12 x 8 x 2 in"}
	rapid.Check(t, func(rt *rapid.T) {
		d := called(t, r, rapid.SampledFrom(names).Draw(rt, "dish"))
		fit := dish.Into(d.Dish, 1, r.LoadOf())
		by := decimal.NewFromFloat(1 / fit.Full)
		f := change.Exactly(r.Formula, every(r.Formula, by))
		again, faults := j.Check(f)
		require.Empty(rt, faults)
		require.InEpsilon(rt, fit.RoomML.Likely, again.LoadOf().Filling.Likely, 1e-6)
	})
	for _, name := range names { // and measured out, within the tolerance
		b, err := batch.Make(j, r, batch.Wish{Dish: called(t, r, name)})
		require.NoError(t, err, name)
		require.True(t, b.Within(), name)
		require.Equal(t, dish.Fits, b.In.Verdict, name)
		require.InEpsilon(t, b.In.RoomML.Likely, b.In.FillingML.Likely, batch.Tolerance, name)
	}
}

// Every batch reads back, passes a check, and keeps its proportions.
func TestBatchesKeepTheirProportions(t *testing.T) {
	for _, name := range demo {
		j, r := judged(t, name)
		for _, w := range []batch.Wish{
			{By: decimal.RequireFromString("0.5")}, {By: decimal.RequireFromString("0.37")}, {By: decimal.NewFromInt(3)}, {Grams: decimal.NewFromInt(450)},
		} {
			b, err := batch.Make(j, r, w)
			require.NoError(t, err, name)
			require.Truef(t, b.Within(), "%s by %s is out by %.3f", name, b.By, b.Worst)
			f, faults := file.Read(name, b.Text, tables(t))
			require.Empty(t, faults, name)
			weighed, faults := weigh.Weigh(f, tables(t))
			require.Empty(t, faults, name)
			for i := range weighed.Parts {
				was, is := r.Weighed.Parts[i].Total(r.Weighed.Unknowns).Likely, weighed.Parts[i].Total(weighed.Unknowns).Likely
				require.InEpsilon(t, was.Mul(b.By).InexactFloat64(), is.InexactFloat64(), .04, name)
			}
		}
	}
}

func TestToANumberOfEggs(t *testing.T) {
	j, r := judged(t, "rich-lemon-pudding.yaml")
	b, err := batch.Make(j, r, batch.Wish{Eggs: 3})
	require.NoError(t, err)
	require.Equal(t, "0.375", b.By.Round(6).String())
	require.Contains(t, string(b.Text), "3 eggs, well beaten")
	_, paste := judged(t, "raised-pie-paste.yaml")
	_, err = batch.Make(j, paste, batch.Wish{Eggs: 3})
	wrong, ok := errors.AsType[*batch.Error](err)
	require.True(t, ok)
	require.Contains(t, wrong.What, "no egg")
}

func TestBatchesThatCannotBe(t *testing.T) {
	j, r := judged(t, "rich-lemon-pudding.yaml")
	for _, w := range []batch.Wish{
		{By: decimal.RequireFromString("0.001")}, {By: decimal.NewFromInt(1000)}, {By: decimal.NewFromInt(-1)}, {Eggs: 100_000}, {Grams: decimal.NewFromInt(90_000_000)}, {},
	} {
		_, err := batch.Make(j, r, w)
		require.Error(t, err, "%+v", w)
	}
}

// A trial spends the fewest whole eggs there are, tells what it can tell, and
// what to try in it.
func TestTrials(t *testing.T) {
	for _, c := range []struct {
		name, by string
		eggs     string
	}{
		{"rich-lemon-pudding.yaml", "0.125", "1 egg, well beaten"},
		{"seville-orange-tart.yaml", "0.166667", "1 egg"},
		{"baked-custard.yaml", "0.25", "1 egg"},
		{"pound-cake.yaml", "0.1", "1 egg, well beaten"},
		{"arrowroot-lemon-tart.yaml", "0.333333", "the yolk of 1 egg"},
	} {
		j, r := judged(t, c.name)
		b, err := batch.Make(j, r, batch.Wish{Trial: true})
		require.NoError(t, err, c.name)
		require.Equal(t, c.by, b.By.Round(6).String(), c.name)
		require.Contains(t, string(b.Text), c.eggs, c.name)
		require.True(t, b.Within())
		require.NotNil(t, b.Trial)
		if b.Trial.KeepsDepth {
			require.NotNil(t, b.In)
			require.InEpsilon(t, b.Trial.Full.Depth.Likely, b.In.Depth.Likely, .3, c.name)
		}
		t.Logf("%s: %s, %.3f out, in %+v, keeps depth %v, try %v", c.name, b.By, b.Worst, b.In != nil, b.Trial.KeepsDepth, b.Trial.Ways)
	}
}
