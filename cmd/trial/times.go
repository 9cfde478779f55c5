package main

import (
	"fmt"
	"io"
	"math"
	"os"

	"assize/ratios/judge"
	"assize/ratios/trial"
	"assize/reference"
)

// times prints computed baking times beside printed ones, apart by whether the
// range was set from them.
func times(t *reference.Tables, out io.Writer) error {
	fmt.Fprint(out, "BAKING TIMES, minutes: printed, computed (range)\n")
	j := judge.New(t)
	j.Readings, j.Remedies = 20, false
	apart, ofApart := 0, 0
	for k, list := range []struct{ file, is string }{
		{"testdata/vectors/baking-times.yaml", "the range was set from these"},
		{"testdata/vectors/baking-times-apart.yaml", "these had no part in the range"},
		{"testdata/vectors/baking-times-later.yaml", "nor had these, set down later"},
	} {
		raw, err := os.ReadFile(list.file)
		if err != nil {
			return err
		}
		rows, err := trial.ReadTimes(raw)
		if err != nil {
			return fmt.Errorf("%s: %w", list.file, err)
		}
		within, of, ratio := map[bool]int{}, map[bool]int{}, 0.0
		chained, chains := 0, 0
		for i := range rows {
			p := &rows[i]
			m, err := p.Computed(t)
			if err != nil {
				return err
			}
			missed := "MISSED"
			of[p.Batter]++
			if p.Within(m) {
				within[p.Batter]++
				missed = ""
			}
			ratio += math.Log(p.Book() / m.Likely)
			chain := ""
			c, ok, err := p.Chained(t, j)
			if err != nil {
				return fmt.Errorf("%s: %w", p.ID, err)
			}
			if ok {
				chains++
				if p.Within(c) {
					chained++
				}
				chain = fmt.Sprintf("   from its formula %.0f (%.0f to %.0f)", c.Likely, c.Low, c.High)
				if !p.Within(c) {
					chain += " MISSED"
				}
			}
			fmt.Fprintf(out, "  %-22s %-72s %4.0f %4.0f (%.0f to %.0f)  %s%s\n", p.ID, p.What, p.Book(), m.Likely, m.Low, m.High, missed, chain)
		}
		n := len(rows)
		if k > 0 {
			apart, ofApart = apart+within[false]+within[true], ofApart+n
		}
		fmt.Fprintf(out, "  %s: %d of %d within (custards and tarts %d of %d, cakes %d of %d); printed are %.2f times the computed, by the geometric mean\n",
			list.is, within[false]+within[true], n, within[false], of[false], within[true], of[true], math.Exp(ratio/float64(n)))
		if chains > 0 {
			fmt.Fprintf(out, "  of these by the whole chain from a formula file: %d of %d within\n", chained, chains)
		}
	}
	fmt.Fprintf(out, "  all that had no part in the range: %d of %d within\n", apart, ofApart)
	all, err := trial.ChainedTimes(t, j)
	if err != nil {
		return err
	}
	chained := 0
	for i := range all {
		if all[i].Within() {
			chained++
			continue
		}
		b := all[i].Baking
		fmt.Fprintf(out, "  %-30s %.1f cm at %3.0f C: %3.0f in the book, %3.0f (%.0f to %.0f) computed  MISSED\n", all[i].ID, b.Depth.Likely, b.At.Likely, b.Book.Likely, b.Time.Likely, b.Time.Low, b.Time.High)
	}
	fmt.Fprintf(out, "  published formulas through the whole chain: %d of %d within\n\n", chained, len(all))
	return nil
}
