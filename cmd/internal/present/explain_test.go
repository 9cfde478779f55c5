package present

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/bench"
	"assize/formula/daybook"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/reference"
)

const demoBench = "../../../testdata/demo/millrace/bench"

// bakeOf makes a bench record of the demo book ready.
func bakeOf(t *testing.T, name string) *explain.Bake {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	text, err := os.ReadFile(filepath.Join(demoBench, name))
	require.NoError(t, err)
	r, faults := bench.Read(name, text, tables)
	require.NoError(t, faults.Err())
	j := judge.New(tables)
	j.Readings, j.Remedies = 500, false
	b, faults := explain.Record(j, r)
	require.NoError(t, faults.Err())
	return b
}

// The demo bakes explained, set side by side, and the day-book they stand in, in
// every format.
func TestBakeGoldens(t *testing.T) {
	first, second := bakeOf(t, "rich-lemon-pudding-first.yaml"), bakeOf(t, "rich-lemon-pudding-second.yaml")
	a := About{Version: "9.9.9", Tables: first.Tables()}
	x := &Explained{Bake: first, Kept: "bake 1 of day-book.yaml"}
	for _, s := range first.Results() {
		e, err := first.Explain(s)
		require.NoError(t, err)
		x.Results = append(x.Results, e)
	}
	c := explain.Compare(first, second)
	text, err := os.ReadFile(filepath.Join(demoBench, "day-book.yaml"))
	require.NoError(t, err)
	book, faults := daybook.Read("day-book.yaml", text, a.Tables)
	require.NoError(t, faults.Err())
	d := &DayBook{Book: book, Fare: book.Fared(a.Tables)}
	d.Adjustment, d.Adjusts = book.Adjustment(a.Tables)
	require.True(t, d.Adjusts)
	for name, write := range map[string]func(*bytes.Buffer) error{
		"explain.txt":  func(b *bytes.Buffer) error { return Explain(x, a).Text(b, Layout{Width: 100}) },
		"explain.md":   func(b *bytes.Buffer) error { return Explain(x, a).Markdown(b) },
		"explain.json": func(b *bytes.Buffer) error { return ExplainJSON(b, x, a) },
		"compare.txt":  func(b *bytes.Buffer) error { return Compare(c, a).Text(b, Layout{Width: 100}) },
		"compare.md":   func(b *bytes.Buffer) error { return Compare(c, a).Markdown(b) },
		"compare.json": func(b *bytes.Buffer) error { return CompareJSON(b, c, a) },
		"daybook.txt":  func(b *bytes.Buffer) error { return DayBookPage(d, a).Text(b, Layout{Width: 100}) },
		"daybook.md":   func(b *bytes.Buffer) error { return DayBookPage(d, a).Markdown(b) },
		"daybook.json": func(b *bytes.Buffer) error { return DayBookJSON(b, d, a) },
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.NoError(t, write(&b))
			golden(t, name, b.Bytes())
		})
	}
}

// Shares are put in words as they lie: nothing is called certain, and a move
// that does not show in tenths is called small.
func TestMovesInWords(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     string
	}{
		{.3, .9, "from 3 in 10 to 9"},
		{.02, .4, "from hardly ever to 4 in 10"},
		{.4, .97, "from 4 in 10 to nearly always"},
		{.31, .34, "a little oftener, about 3 in 10"},
		{.01, .02, "a little oftener, though still hardly ever"},
	} {
		require.Equal(t, c.want, sharesFromTo(c.from, c.to))
	}
}
