package main

import (
	"fmt"
	"io"
	"os"

	"assize/ratios/trial"
	"assize/reference"
)

// pansFile holds printed volumes of pans beside their sizes.
const pansFile = "testdata/vectors/pan-volumes.yaml"

// pans prints what pans hold by their sizes beside what works print.
func pans(t *reference.Tables, out io.Writer) error {
	raw, err := os.ReadFile(pansFile)
	if err != nil {
		return err
	}
	file, err := trial.ReadPans(raw)
	if err != nil {
		return fmt.Errorf("%s: %w", pansFile, err)
	}
	rows, err := trial.Pans(t, file.Rows)
	if err != nil {
		return err
	}
	fmt.Fprint(out, "PANS by their printed sizes, ml: printed, to the brim by reckoning, out by\n")
	is := map[string]int{}
	for _, p := range rows {
		is[p.Is]++
		note := p.Is
		if p.Why != "" {
			note += ": " + p.Why
		}
		fmt.Fprintf(out, "  %-19s %-38s %-8s %-16s %6.0f %6.0f  %+4.0f in 100  %s\n", p.Source, p.Words, p.Measured, p.Holds, p.ML, p.Reckoned, 100*p.Off(), note)
	}
	fmt.Fprintf(out, "  rows told to the brim: %d within 10 in 100; %d printed less and %d more, which such a pan can hold; %d which none can; told as filled for use: %d; without an inside size: %d\n",
		is[trial.PanBrim], is[trial.PanUnder], is[trial.PanOver], is[trial.PanCannot], is[trial.PanUsable], is[trial.PanNoSize])
	counts := trial.PanCounts(rows)
	for _, line := range []struct{ key, words string }{
		{"said", "filled by the work itself"},
		{"full", "said to be what the pan holds in all"},
		{"told how", "printed under directions to fill with water"},
		{"measured", "these three together"},
		{"not said", "with no word of how"},
	} {
		c := counts[line.key]
		fmt.Fprintf(out, "  different pans, %-44s %2d of %2d within 10 in 100 (rows %d of %d)\n", line.words+":", c.AtBrim, c.Pans, c.RowsAtBrim, c.Rows)
	}
	fmt.Fprintln(out)
	return nil
}
