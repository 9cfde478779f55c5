//go:build !unix

package daybook

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// How long another run is waited for, and how often it is looked for.
const (
	patience = 10 * time.Second
	glance   = 20 * time.Millisecond
)

// lock holds a file of the folder. A run ended while it wrote leaves the file
// behind; then the person must take it away.
func (machine) lock(dir string) (func() error, error) {
	name := filepath.Join(dir, ".day-book.lock")
	for waited := time.Duration(0); ; waited += glance {
		f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
		if err == nil {
			return func() error { return errors.Join(f.Close(), os.Remove(name)) }, nil
		}
		if !errors.Is(err, fs.ErrExist) {
			return nil, err
		}
		if waited >= patience {
			return nil, &fs.PathError{Op: "lock", Path: name, Err: errors.New("another run has the day-book, or was ended while it wrote; take this file away if none runs")}
		}
		time.Sleep(glance)
	}
}

// settle does nothing: these systems keep names by themselves.
func (machine) settle(string) error { return nil }
