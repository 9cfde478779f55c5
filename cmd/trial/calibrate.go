package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/trial"
	"assize/reference"
)

// calibrate fits every link to the published table and writes the links file.
// The same table gives the same file.
func calibrate(t *reference.Tables, file string, out io.Writer) error {
	var links []reference.Link
	for _, kind := range []formula.Kind{formula.Filling, formula.Pastry} {
		items, err := trial.Bench(t, kind, bake.Standard, trial.Fit)
		if err != nil {
			return err
		}
		fitted, err := trial.Calibrate(t, string(kind), items)
		if err != nil {
			return err
		}
		said, err := trial.Trust(t, kind, items)
		if err != nil {
			return err
		}
		for i := range fitted {
			fitted[i].Said, fitted[i].Right = said[fitted[i].ID][0], said[fitted[i].ID][1]
		}
		links = append(links, fitted...)
		if kind == formula.Filling {
			heat, err := trial.HeatBench(t, bake.Standard)
			if err != nil {
				return err
			}
			l, err := trial.CalibrateHeat(t, heat)
			if err != nil {
				return err
			}
			links = append(links, l)
		}
	}
	raw, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	head, _, _ := strings.Cut(string(raw), "rows:\n")
	var b strings.Builder
	b.WriteString(head + "rows:\n")
	for _, l := range links {
		row := linkRow(l)
		b.WriteString(row)
		fmt.Fprint(out, row)
	}
	return os.WriteFile(file, []byte(b.String()), 0o644)
}

func linkRow(l reference.Link) string {
	prior := ""
	if l.MostlyPrior {
		prior = ", mostly_prior: true"
	}
	said := ""
	if l.Said > 0 {
		said = fmt.Sprintf(", said: %d, right: %d", l.Said, l.Right)
	}
	return fmt.Sprintf("- {id: %s, kind: %s, index: %s, order: %d, mid: %.3f, width: %.3f, cases: %d%s%s, fitted: %q, corpus: %q, prior_mid: %v, prior_mid_sd: %v, prior_width: %v, prior_width_sd: %v, source: %s, locator: %q, how: %s}\n",
		l.ID, l.Kind, l.Index, l.Order, float64(l.Mid), float64(l.Width), l.Cases, prior, said, reference.Edition, reference.Edition,
		float64(l.PriorMid), float64(l.PriorMidSD), float64(l.PriorWidth), float64(l.PriorWidthSD), l.Source, l.Locator, l.How)
}
