package main

import (
	"bytes"
	"fmt"
	"io"
	"os"

	"gopkg.in/yaml.v3"

	"assize/ratios/trial"
	"assize/reference"
)

// yieldsFile holds published fillings with what they make.
const yieldsFile = "testdata/vectors/filling-yields.yaml"

// yields prints reckoned volumes beside those published fillings are said to
// make.
func yields(t *reference.Tables, out io.Writer) error {
	raw, err := os.ReadFile(yieldsFile)
	if err != nil {
		return err
	}
	var file struct {
		Rows []trial.Yield `yaml:"rows"`
	}
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	if err := dec.Decode(&file); err != nil {
		return fmt.Errorf("%s: %w", yieldsFile, err)
	}
	rows, err := trial.Yields(t, file.Rows)
	if err != nil {
		return err
	}
	fmt.Fprint(out, "VOLUMES of published fillings, ml: told by the work, reckoned (nine in ten), out by\n")
	within, possible := 0, 0
	for _, y := range rows {
		note := ""
		switch {
		case !y.Possible():
			note = "   cannot be: " + y.Why
		case y.Off >= -.15 && y.Off <= .15:
			possible, within = possible+1, within+1
		default:
			possible++
		}
		fmt.Fprintf(out, "  %-22s %-26s %5.0f (%.0f-%.0f)  %+4.0f in 100%s\n", y.ID, y.Told, y.ML.Likely, y.ML.Low, y.ML.High, 100*y.Off, note)
	}
	fmt.Fprintf(out, "  within 15 in 100: %d of %d that can be measurements; %d cannot\n\n", within, possible, len(rows)-possible)
	return nil
}
