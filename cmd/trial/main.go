// Trial holds the judge against the published formulas, and fits its links.
//
//	go run ./cmd/trial validate
//	go run ./cmd/trial calibrate FILE
package main

import (
	"fmt"
	"io"
	"os"

	"assize/reference"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "trial:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	t, err := reference.Load()
	if err != nil {
		return err
	}
	switch {
	case len(args) == 1 && args[0] == "validate":
		return validate(t, out)
	case len(args) == 2 && args[0] == "calibrate":
		return calibrate(t, args[1], out)
	}
	return fmt.Errorf("usage: trial validate | trial calibrate FILE")
}
