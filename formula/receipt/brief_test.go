package receipt

import (
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/reference"
)

var readTables = sync.OnceValues(func() (*reference.Tables, error) {
	return reference.Read(os.DirFS("../../reference/data"), nil)
})

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := readTables()
	require.NoError(t, err)
	return tab
}

// reader reads an English book of 1838.
func reader(t testing.TB) *Reader { return &Reader{Tables: tables(t), Year: 1838, Place: "england"} }

// brief is an item on one line: "6 x egg egg_whole: well beaten", "0.5 pound
// butter_salted", "to taste salt"; size and fill after the number.
func brief(it formula.Item) string {
	a := it.Amount
	var b []string
	switch a.State {
	case formula.ToTaste:
		b = append(b, "to taste")
	case formula.NotGiven:
		b = append(b, "not given")
	case formula.Enough:
		b = append(b, "enough")
	default:
		n := a.Number.Likely.String()
		if !a.Number.IsExact() {
			n = a.Number.Low.String() + "-" + a.Number.High.String()
		}
		b = append(b, n)
	}
	for _, s := range []string{a.Fill, a.Size, a.Measure} {
		if s != "" {
			b = append(b, s)
		}
	}
	switch {
	case a.Parts:
		b = append(b, "parts")
	case a.Each != "":
		b = append(b, "x", a.Each)
	case a.WeightOf != "":
		b = append(b, "weight of", a.WeightOf)
	}
	b = append(b, it.Ingredient)
	out := strings.Join(b, " ")
	if it.Form != "" {
		out += ": " + it.Form
	}
	return out
}

func briefs(items []formula.Item) []string {
	var out []string
	for _, it := range items {
		out = append(out, brief(it))
	}
	return out
}
