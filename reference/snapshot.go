//go:build ignore

// Snapshot writes the compact form of the tables that the program loads.
package main

import (
	"errors"
	"fmt"
	"os"

	"assize/reference"
	"assize/reference/fault"
)

func main() {
	if err := write(); err != nil {
		var faults fault.List
		if errors.As(err, &faults) {
			faults.Write(os.Stderr)
		} else {
			fmt.Fprintln(os.Stderr, err)
		}
		os.Exit(1)
	}
}

func write() error {
	t, err := reference.Read(os.DirFS("data"), nil)
	if err != nil {
		return err
	}
	raw, err := t.Snapshot()
	if err != nil {
		return err
	}
	return os.WriteFile("data/tables.gob", raw, 0o644)
}
