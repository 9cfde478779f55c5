package main

import (
	"fmt"
	"io"
	"os"

	"assize/ratios/trial"
	"assize/reference"
)

// yieldFiles hold published fillings with what they make: those the reckoning
// was mended by, and those set down apart.
var yieldFiles = []struct{ file, is string }{
	{"testdata/vectors/filling-yields.yaml", "the reckoning was mended with these in view"},
	{"testdata/vectors/filling-yields-apart.yaml", "these were set down before any was reckoned"},
}

// yields prints reckoned volumes beside those published fillings are said to
// make.
func yields(t *reference.Tables, out io.Writer) error {
	for _, list := range yieldFiles {
		if err := yieldsOf(t, list.file, list.is, out); err != nil {
			return err
		}
	}
	return nil
}

func yieldsOf(t *reference.Tables, name, is string, out io.Writer) error {
	raw, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	list, err := trial.ReadYields(raw)
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	rows, err := trial.Yields(t, list)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "VOLUMES of published fillings, ml: told by the work, reckoned (nine in ten), out by; %s\n", is)
	for i := range rows {
		y := &rows[i]
		note := ""
		switch why := y.Cannot(); {
		case y.Usable == "no":
			note = "   not usable: " + y.Why
		case why != "":
			note = "   cannot be: " + why
		case !y.Within():
			note = "   MISSED"
		}
		fmt.Fprintf(out, "  %-26s %-30s %5.0f (%.0f-%.0f)  %+4.0f in 100%s\n", y.ID, y.Told, y.ML.Likely, y.ML.Low, y.ML.High, 100*y.Off, note)
	}
	plain, about, no := trial.Count(rows, "plain"), trial.Count(rows, "about"), trial.Count(rows, "no")
	for _, one := range []struct {
		told string
		trial.YieldCount
	}{{"told plainly", plain}, {"told as about, over or so", about}} {
		fmt.Fprintf(out, "  usable, %s: %d of %d within 15 in 100; %d more cannot be (with those %d of %d)\n",
			one.told, one.Within, one.Possible, one.Cannot, one.WithinOfAll, one.Possible+one.Cannot)
	}
	fmt.Fprintf(out, "  usable, both: %d of %d, %d more cannot be; not usable %d\n",
		plain.Within+about.Within, plain.Possible+about.Possible, plain.Cannot+about.Cannot, no.Possible+no.Cannot)
	fmt.Fprintf(out, "  besides, and not what is asked: %d of %d within 15 in 100 of what the figure may stand for, half of what it is told to (half a cup, a jar) either way\n\n",
		plain.WithinGrain+about.WithinGrain, plain.Possible+about.Possible)
	return nil
}
