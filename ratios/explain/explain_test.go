package explain_test

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/bench"
	"assize/formula/book"
	"assize/formula/weigh"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const demo = "../../testdata/demo/millrace"

// page makes a receipt of the demo book ready.
func page(t testing.TB, name string) *explain.Bake {
	t.Helper()
	f, _, faults := book.For(os.DirFS(demo), name, tables(t))
	require.NoError(t, faults.Err())
	b, faults := explain.Receipt(judge.New(tables(t)), f)
	require.NoError(t, faults.Err())
	return b
}

// record is the blank record of a receipt of the demo book, filled in: each
// empty place given is put in place of the next.
func record(t testing.TB, name string, fill ...string) *explain.Bake {
	t.Helper()
	f, _, faults := book.For(os.DirFS(demo), name, tables(t))
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables(t))
	require.NoError(t, faults.Err())
	text, err := bench.Blank(w, tables(t))
	require.NoError(t, err)
	filled := string(text)
	for i := 0; i < len(fill); i += 2 {
		require.Contains(t, filled, fill[i])
		filled = strings.Replace(filled, fill[i], fill[i+1], 1)
	}
	r, faults := bench.Read("record.yaml", []byte(filled), tables(t))
	require.NoError(t, faults.Err(), filled)
	b, faults := explain.Record(judge.New(tables(t)), r)
	require.NoError(t, faults.Err())
	return b
}

// explained tells of the first result of some words.
func explained(t testing.TB, b *explain.Bake, words string) *explain.Explanation {
	t.Helper()
	seen, trouble := b.Tasted(words)
	require.Nil(t, trouble)
	require.NotEmpty(t, seen)
	e, err := b.Explain(seen[0])
	require.NoError(t, err)
	return e
}

// worked is one worked explanation of testdata.
type worked struct {
	Fault     string   `yaml:"fault" sheet:"required"`
	Published string   `yaml:"published" sheet:"required"`
	Tasted    string   `yaml:"tasted" sheet:"required"`
	Told      []string `yaml:"told" sheet:"required"`
	Where     string   `yaml:"where" sheet:"required"`
	Among     int      `yaml:"among" sheet:"required"`
	Says      string   `yaml:"says" sheet:"required"`

	reference.Provenance `yaml:",inline"`
}

// Each fault of texture is explained as the work named beside it explains it.
func TestWorkedExplanations(t *testing.T) {
	tab := tables(t)
	text, err := os.ReadFile("../../testdata/explained.yaml")
	require.NoError(t, err)
	var rows struct {
		Rows []worked `yaml:"rows"`
	}
	p := fault.NewPage("explained.yaml", text)
	sheet.Decode(p, &rows)
	require.Empty(t, p.Faults())
	told := map[string]bool{}
	for _, w := range rows.Rows {
		t.Run(w.Fault+"/"+w.Published, func(t *testing.T) {
			_, ok := tab.Source(w.Source)
			require.True(t, ok, w.Source)
			f := published(t, tab, w.Published)
			b, faults := explain.Receipt(judge.New(tab), f)
			require.NoError(t, faults.Err())
			e := explained(t, b, w.Tasted)
			require.True(t, e.Fault)
			list := e.Causes
			if w.Where == "might" {
				list = e.Might
			}
			at := slices.IndexFunc(list, func(c explain.Cause) bool { return slices.Contains(w.Told, c.ID) })
			require.True(t, at >= 0 && at < w.Among, "%s: %s\ntold: %s", w.Says, w.Source, changes(list))
			require.NotNil(t, list[at].Why, "no mechanism is written down")
		})
		told[w.Fault] = true
	}
	for _, f := range []string{"cakey", "curdles", "loose", "rubbery", "grainy", "starch-thin", "tough", "crumbly", "greasy", "soggy-base", "shrinks"} {
		require.True(t, told[f], f)
	}
}

func changes(list []explain.Cause) string {
	var out bytes.Buffer
	for _, c := range list {
		out.WriteString(c.ID + " (" + c.Done + "); ")
	}
	return out.String()
}

// published is a published formula by its id.
func published(t testing.TB, tab *reference.Tables, id string) *formula.Formula {
	t.Helper()
	i := slices.IndexFunc(tab.Published, func(p reference.Published) bool { return p.ID == id })
	require.GreaterOrEqual(t, i, 0, id)
	f, faults := trial.Formula(&tab.Published[i], tab)
	require.NoError(t, faults.Err())
	return f
}
