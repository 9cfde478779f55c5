package practice_test

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"assize/formula/book"
	"assize/formula/receipt"
	"assize/ratios/practice"
)

// How a paste is laid comes from the file, the words, the title or the kind of
// paste; where nothing tells it, it is taken as a lining and known not to be told.
func TestLaidBy(t *testing.T) {
	tab := tables(t)
	for _, x := range []struct{ title, paste, filling, by string }{
		{"A tart", "Rub the butter in.", "Bake it.", ""},
		{"A tart", "Line a dish with it.", "Bake it.", "lining"},
		{"A tart", "Rub the butter in.", "Line the dish with the paste, fill it and bake it.", "lining"},
		{"A tart", "Rub the butter in.", "Put a paste under it and bake it.", "lining"},
		{"A pie", "Line the dish with it and put on a lid.", "Bake it.", "lining and lid"},
		{"A pie", "Rub the butter in.", "Fill the dish, cover it with paste and bake it.", "lid"},
		{"A pie", "Rub the butter in.", "Lay the paste over, and bake it.", "lid"},
		{"A pie", "Put a strip round the edge of the dish.", "Cover it with the crust and bake it.", "lid"},
		{"A pudding", "Rub the butter in.", "Put a border of paste round the dish and bake it.", "rim"},
		{"A pie", "Raise the sides with your hands.", "Bake it.", "raised"},
		{"Raised pork pie", "Rub the butter in.", "Bake it.", "raised"},
		{"Apple turnovers", "Rub the butter in.", "Bake them.", "folded"},
		{"Small pies", "Cut it in rounds, lay on the fruit and fold the paste over.", "Bake them.", "folded"},
		{"Small pies", "Cut it in rounds.", "Lay some on each, and turn one half over the other.", ""},
		{"Lemon patties", "Rub the butter in.", "Bake them.", "patty"},
		{"Small tarts", "Line the pattypans with it.", "Bake them.", "patty"},
		// What is no laying of the paste.
		{"A tart", "Lay on the butter, fold it over and roll it out again.", "Bake it.", ""},
		{"A tart", "Rub the butter in.", "Line the tin with buttered paper and bake it.", ""},
		{"A tart", "Rub the butter in.", "Cover the dish with paste and bake it.", ""},
	} {
		f, _, faults := book.For(fstest.MapFS{"a.yaml": {Data: []byte("title: " + x.title + "\nyear: 1838\nplace: england\nparts:\n" +
			part("pastry", "", short, x.paste) + part("filling", "", fruit, x.filling)), Mode: 0o644}}, "a.yaml", tab)
		require.NoError(t, faults.Err())
		d := practice.Read(f, tab, receipt.NewMethodReader(tab))
		require.Equal(t, x.by, d.LaidBy(0), "%s: %s %s", x.title, x.paste, x.filling)
		if x.by == "" {
			require.Equal(t, "lining", d.Lay(0))
		}
	}
}
