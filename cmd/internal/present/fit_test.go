package present

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/ratios/batch"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/reference"
)

const lemonPage = `title: Lemon pudding
source: leaf 9
year: 1838
place: england
kitchen: {year: 2026, place: england, eggs: {grams: 50}, dishes: [9 inch pie plate]}
parts:
  - name: paste
    kind: pastry
    lay: lining
    lines: [200 g flour, 100 g butter, 50 g water]
  - name: filling
    kind: filling
    lines:
      - 8 eggs, well beaten
      - {either: [4 oz butter, 8 oz butter], why: a blot}
      - half a pound of sugar
      - the juice and grated rind of 2 lemons
      - nutmeg, to taste
    method: [Beat the butter and sugar to a cream., Bake in a quick oven half an hour.]
dish: soup plate
`

// fitted is a receipt against the dishes, with a batch when one is wished.
func fitted(t *testing.T, w *batch.Wish) (*Fitting, About) {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	f, faults := file.Read("lemon.yaml", []byte(lemonPage), tables)
	require.Empty(t, faults)
	j := judge.New(tables)
	j.Readings, j.Remedies = 300, false
	r, faults := j.Check(f)
	require.Empty(t, faults)
	out := &Fitting{Report: r, Given: r.InDish, Every: dish.Every(dish.All(tables, judge.KitchenOf(f)), r.LoadOf())}
	if w != nil {
		b, err := batch.Make(j, r, *w)
		require.NoError(t, err)
		out.Batch = b
	}
	return out, About{Version: "9.9.9", Tables: tables}
}

func TestFitGoldens(t *testing.T) {
	put := func(name string, write func(*bytes.Buffer) error) {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.NoError(t, write(&b))
			golden(t, name, b.Bytes())
		})
	}
	plain, a := fitted(t, nil)
	put("fit.txt", func(b *bytes.Buffer) error { return Fit(plain, a).Text(b, Layout{Width: 100}) })
	put("fit-narrow.txt", func(b *bytes.Buffer) error { return Fit(plain, a).Text(b, Layout{Width: 48}) })
	put("fit.md", func(b *bytes.Buffer) error { return Fit(plain, a).Markdown(b) })
	eggs, a := fitted(t, &batch.Wish{Eggs: 3})
	put("fit-eggs.txt", func(b *bytes.Buffer) error { return Fit(eggs, a).Text(b, Layout{Width: 100}) })
	trial, a := fitted(t, &batch.Wish{Trial: true})
	put("fit-trial.txt", func(b *bytes.Buffer) error { return Fit(trial, a).Text(b, Layout{Width: 100}) })
}

// The JSON of a fit names every dish with its room, best first, and the batch.
func TestFitJSON(t *testing.T) {
	f, a := fitted(t, &batch.Wish{Trial: true})
	var b bytes.Buffer
	require.NoError(t, FitJSON(&b, f, a))
	var got struct {
		Dish struct {
			Verdict string
			Room    struct{ Likely float64 } `json:"room_ml"`
		}
		Dishes []struct{ Name, Verdict string }
		Batch  struct {
			By    float64
			Trial bool
			Lines []struct{ Text string }
		}
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	require.Equal(t, "overfills", got.Dish.Verdict)
	require.Positive(t, got.Dish.Room.Likely)
	require.Greater(t, len(got.Dishes), 50)
	require.True(t, got.Batch.Trial)
	require.InDelta(t, .125, got.Batch.By, 1e-9)
	require.NotEmpty(t, got.Batch.Lines)
}
