package judge_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/receipt"
	"assize/ratios/judge"
)

func finding(r *judge.Report, code string) *judge.Finding {
	i := slices.IndexFunc(r.Findings, func(f judge.Finding) bool { return f.Code == code })
	if i < 0 {
		return nil
	}
	return &r.Findings[i]
}

// The demo pudding is one of the egg-rich fillings cooks report to set cakey;
// every remedy offered must lower that share and tell its other effects.
func TestRichPuddingIsToldOf(t *testing.T) {
	f, tables := demoFormula(t, "rich-lemon-pudding.yaml")
	r, faults := judge.New(tables).Check(f)
	require.NoError(t, faults.Err())
	cakey := finding(r, "cakey")
	require.NotNil(t, cakey)
	require.Equal(t, judge.Decide, cakey.Grade)
	require.NotEmpty(t, cakey.Because)
	require.NotEmpty(t, cakey.Remedies)
	for _, rem := range cakey.Remedies {
		require.Equal(t, "cakey", rem.Effect[0].What)
		require.Less(t, rem.Effect[0].After, rem.Effect[0].Before)
		require.GreaterOrEqual(t, len(rem.Effect), 5, "the set, the room before curdling, the fill and the sweetness too")
		require.NotContains(t, rem.Text, "bath of hot water", "never for a dish lined with paste")
	}
	missing := finding(r, "step-missing")
	require.NotNil(t, missing, "the wash of egg printed among the observations")
	require.Equal(t, judge.Watch, missing.Grade)
	require.Contains(t, missing.Says, "brush the case within")
}

// Two runs of one receipt give the same figures to the last bit.
func TestSameReceiptSameFigures(t *testing.T) {
	f, tables := demoFormula(t, "seville-orange-tart.yaml")
	j := judge.New(tables)
	a, faults := j.Check(f)
	require.NoError(t, faults.Err())
	b, faults := j.Check(f)
	require.NoError(t, faults.Err())
	require.Equal(t, a.Parts[1].Texture, b.Parts[1].Texture)
	require.Equal(t, a.Parts[1].Measures, b.Parts[1].Measures)
}

// Every demo receipt is judged; shares sum to 1, cautions carry no grade, and a
// range alone never raises a finding over a note.
func TestDemoBook(t *testing.T) {
	for _, name := range []string{
		"arrowroot-lemon-tart.yaml", "baked-custard.yaml", "lemon-cheesecakes.yaml", "paste-no-1.yaml", "paste-no-3.yaml",
		"pound-cake.yaml", "raised-pie-paste.yaml", "rich-lemon-pudding.yaml", "seville-orange-tart.yaml",
	} {
		t.Run(name, func(t *testing.T) {
			f, tables := demoFormula(t, name)
			j := judge.New(tables)
			j.Readings, j.Remedies = 200, false
			r, faults := j.Check(f)
			require.NoError(t, faults.Err())
			for _, p := range r.Parts {
				if p.Kind != formula.Filling && p.Kind != formula.Pastry {
					require.Nil(t, p.Texture)
					continue
				}
				sum := 0.0
				for _, s := range p.Texture.Shares {
					sum += s.Share
				}
				require.InDelta(t, 1, sum, 1e-9)
			}
			for _, f := range r.Findings {
				for _, e := range f.Because {
					if e.Layer == judge.LayerRange {
						require.Equal(t, judge.Note, f.Grade)
					}
				}
			}
		})
	}
}

// A paste for a standing pie is meant hard: that is no fault of it.
func TestStandingPasteIsMeantHard(t *testing.T) {
	f, tables := demoFormula(t, "raised-pie-paste.yaml")
	r, faults := judge.New(tables).Check(f)
	require.NoError(t, faults.Err())
	require.Nil(t, finding(r, "tough"))
}

// A short paste whose proportions a standing paste could have is not taken for
// one, or its hardness would pass as meant.
func TestShortPasteIsNoStandingPaste(t *testing.T) {
	f, tables := demoFormula(t, "paste-no-3.yaml")
	r, faults := judge.New(tables).Check(f)
	require.NoError(t, faults.Err())
	require.NotEqual(t, "tough", r.Parts[0].Class.Class.Meant)
	require.NotEqual(t, "tough", r.Parts[0].Class.Period.Class.Meant)
}

// What is done otherwise is put into a receipt as a step, which must be read as
// just that change, or the changed receipt would be judged as another.
func TestStepsOfRemediesReadAsMeant(t *testing.T) {
	_, tables := demoFormula(t, "rich-lemon-pudding.yaml")
	methods := receipt.NewMethodReader(tables)
	seen := 0
	for _, w := range judge.AllWays() {
		if w.Step == "" {
			require.Empty(t, w.Change.Raise[:max(0, len(w.Change.Raise)-1)], "%s: more than the oven, and no step", w.Text)
			continue
		}
		kind := formula.Filling
		if slices.Contains(w.Against, "tough") || slices.Contains(w.Against, "crumbly") {
			kind = formula.Pastry
		}
		f := &formula.Formula{Parts: []formula.Part{{Kind: kind, Steps: []string{w.Step}}}}
		m := methods.Read(f, &f.Parts[0])
		for _, flag := range w.Change.Raise {
			if flag != "not_baked" {
				require.True(t, m.Has(flag), "%q is not read as %s", w.Step, flag)
			}
		}
		for flag := range m.Flags {
			require.Contains(t, append(w.Change.Raise, "mixed", "baked"), flag, w.Step)
		}
		seen++
	}
	require.Greater(t, seen, 6)
}
