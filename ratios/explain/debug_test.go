package explain_test

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/book"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
)

func show(b *explain.Bake, e *explain.Explanation) {
	fmt.Printf("== %s: %s share %.2f (%.2f-%.2f) written %.2f %s asmeant %v\n", b.Formula().Title, b.Lead(e.Of), e.Share, e.Low, e.High, e.Written, e.Expected, e.AsMeant)
	for _, c := range e.Causes {
		why := ""
		if c.Why != nil {
			why = c.Why.ID
		}
		fmt.Printf("  cause %-12s %-10s %-50s -> %-45s %.2f -> %.2f open %v %s %s  %s\n", c.ID, c.Kind, c.Done, c.Instead, c.From, c.To, e.Slight, c.Least, c.Most, why)
	}
	for _, c := range e.Doubts {
		fmt.Printf("  doubt %-12s %-10s %-50s %.2f -> %.2f %s %s\n", c.ID, c.Kind, c.Done, c.From, c.To, c.Least, c.Most)
	}
	for _, c := range e.Might {
		fmt.Printf("  might %-12s %-10s %-40s -> %-45s %.2f -> %.2f\n", c.ID, c.Kind, c.Done, c.Instead, c.From, c.To)
	}
	for _, s := range e.Next {
		fmt.Printf("  next %v left %.2f answers %v n %d\n", s.Texts, s.Left, s.Answers, s.Ingredients)
	}
	fmt.Printf("  receipt %+v\n", e.Receipt)
}

func TestDebug(t *testing.T) {
	tables, _ := reference.Load()
	j := judge.New(tables)
	for _, c := range []struct{ name, tasted string }{{"rich-lemon-pudding.yaml", "cakey,soggy-base,smooth"}, {"baked-custard.yaml", "split,weeping"}, {"lemon-cheesecakes.yaml", "runny,grainy"}, {"seville-orange-tart.yaml", "loose,paste:tough,shrunk"}, {"arrowroot-lemon-tart.yaml", "starch-thin"}} {
		f, _, faults := book.For(os.DirFS("../../testdata/demo/millrace"), c.name, tables)
		require.NoError(t, faults.Err())
		b, faults := explain.Receipt(j, f)
		require.NoError(t, faults.Err())
		seen, tr := b.Tasted(c.tasted)
		if tr != nil {
			t.Fatal(tr)
		}
		for _, s := range seen {
			e, err := b.Explain(s)
			require.NoError(t, err)
			show(b, e)
		}
	}
}

func TestPairs(t *testing.T) {
	tables, _ := reference.Load()
	j := judge.New(tables)
	for i := range tables.Published {
		p := &tables.Published[i]
		if p.PairOf == "" || p.Part != "filling" && p.Part != "pastry" {
			continue
		}
		f, faults := trial.Formula(p, tables)
		require.NoError(t, faults.Err())
		b, faults := explain.Receipt(j, f)
		require.NoError(t, faults.Err())
		word := ""
		for _, x := range tables.Textures {
			for _, o := range x.Outcomes {
				if o == p.Outcome && x.Kind == p.Part {
					word = x.ID
				}
			}
		}
		seen, tr := b.Tasted(word)
		if tr != nil {
			fmt.Println(p.ID, tr)
			continue
		}
		for _, s := range seen {
			e, err := b.Explain(s)
			require.NoError(t, err)
			fmt.Println(p.ID, "pair of", p.PairOf, p.Cause, p.Outcome)
			show(b, e)
		}
	}
}
