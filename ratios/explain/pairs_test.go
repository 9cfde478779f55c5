package explain_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/ratios/explain"
	"assize/ratios/judge"
)

type twin struct {
	id, change string
	causes     []string
	step       string
}

// twins are the published pairs whose failure lies in the formula, with the
// change the good twin made, read off the two formulas: as changes that
// explain would name it by, or a word of the step it would advise. An empty
// change is one explain has no name for.
var twins = []twin{
	{"lemoncream-2and2", "four yolks for two", []string{"egg", "yolk"}, "yolks"},
	{"whole-lemon-two", "one lemon for two", []string{"juice"}, ""},
	{"custard-ration-1egg", "two eggs for one, and a water bath", []string{"egg"}, "egg"},
	{"far-floury", "half the flour", []string{"flour"}, "less flour"},
	{"curd-microwave-scrambled", "half the juice to the egg, and the stove for the microwave", []string{"juice", "egg"}, "microwave"},
	{"pie-officebroccoli-tapioca", "cornflour for tapioca", nil, ""},
	{"twd-split-nostarch", "cornflour put in", []string{"flour"}, "cornflour"},
	{"dorie-gfae-shrank", "less sugar and fat, cut in by hand", []string{"sugar", "fat", "fat-in"}, ""},
	{"leslie-plain-wet", "as little water as will do", []string{"water"}, "water"},
	{"vodka-dough-all-water", "half the water, and spirit", []string{"water"}, "water"},
	{"oil-bakeorbuy-watered", "no water, and not kneaded", []string{"water", "work"}, "water"},
	{"fyf-short-dry", "the water it wanted", []string{"water"}, "water"},
	{"unshrinkable-too-hard", "the same formula, weighted", []string{"weights"}, ""},
}

// Of the published pairs with a cause in the formula, the change that the good
// twin made is among the first three that explain tells, as a cause or as a step
// for next time, for two thirds at least. The table is printed by go test -v.
func TestGoodTwins(t *testing.T) {
	tab := tables(t)
	hits := 0
	for _, p := range tab.Published {
		if p.PairOf != "" && strings.HasPrefix(p.Cause, "formula") && (p.Part == string(formula.Filling) || p.Part == string(formula.Pastry)) {
			require.True(t, slices.ContainsFunc(twins, func(w twin) bool { return w.id == p.ID }), "a pair that is not looked at: %s", p.ID)
		}
	}
	for _, w := range twins {
		f := published(t, tab, w.id)
		b, faults := explain.Receipt(judge.New(tab), f)
		require.NoError(t, faults.Err())
		outcome := ""
		for _, p := range tab.Published {
			if p.ID == w.id {
				outcome = p.Outcome
			}
		}
		seen, trouble := b.Tasted(textureOf(t, b, outcome))
		require.Nil(t, trouble)
		e, err := b.Explain(seen[0])
		require.NoError(t, err)
		var told []string
		for _, c := range e.Causes[:min(3, len(e.Causes))] {
			told = append(told, c.ID)
		}
		hit := slices.ContainsFunc(told, func(id string) bool { return slices.Contains(w.causes, id) })
		for _, s := range e.Next {
			told = append(told, strings.Join(s.Texts, " + "))
			hit = hit || w.step != "" && strings.Contains(strings.Join(s.Texts, " "), w.step)
		}
		if hit {
			hits++
		}
		t.Logf("%-5v %-28s %-10s %.2f  %s | %s", hit, w.id, outcome, e.Share, w.change, strings.Join(told, "; "))
	}
	t.Logf("%d of %d", hits, len(twins))
	require.GreaterOrEqual(t, 3*hits, 2*len(twins))
}

// textureOf is the texture an outcome of the published table stands for.
func textureOf(t *testing.T, b *explain.Bake, outcome string) string {
	t.Helper()
	for _, x := range b.Tables().Textures {
		if x.Kind == string(b.Formula().Parts[0].Kind) && slices.Contains(x.Outcomes, outcome) {
			return x.ID
		}
	}
	t.Fatalf("no texture for %q", outcome)
	return ""
}
