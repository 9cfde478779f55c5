package present

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/book"
	"assize/ratios/judge"
	"assize/ratios/variant"
	"assize/reference"
)

// The demo pudding changed, and what is nearest to it, in every format.
func TestVariantGoldens(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	f, _, faults := book.For(os.DirFS("../../../testdata/demo/millrace"), "rich-lemon-pudding.yaml", tables)
	require.NoError(t, faults.Err())
	j := judge.New(tables)
	j.Readings = 500
	a := About{Version: "9.9.9", Tables: tables}
	tart, err := variant.Find(j, f, variant.Wish{To: "lemon-tart"})
	require.NoError(t, err)
	near, faults := variant.Near(j, f)
	require.NoError(t, faults.Err())
	none, err := variant.Find(j, f, variant.Wish{To: "starch-citrus", Most: 1})
	require.NoError(t, err)
	require.False(t, none.Found)
	for name, write := range map[string]func(*bytes.Buffer) error{
		"variant.txt":      func(b *bytes.Buffer) error { return Variant(tart, a, true).Text(b, Layout{Width: 100}) },
		"variant.md":       func(b *bytes.Buffer) error { return Variant(tart, a, false).Markdown(b) },
		"variant.json":     func(b *bytes.Buffer) error { return VariantJSON(b, tart, a, true) },
		"variant-none.txt": func(b *bytes.Buffer) error { return Variant(none, a, true).Text(b, Layout{Width: 80}) },
		"nearest.txt":      func(b *bytes.Buffer) error { return Nearest(near, a).Text(b, Layout{Width: 100}) },
		"nearest.json":     func(b *bytes.Buffer) error { return NearestJSON(b, near, a) },
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.NoError(t, write(&b))
			golden(t, name, b.Bytes())
		})
	}
}
