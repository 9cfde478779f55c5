//go:build unix

package daybook

import (
	"errors"
	"os"
	"syscall"
)

// lock holds the folder itself: nothing is left behind, and the system lets go
// of it when the run ends in whatever way.
func (machine) lock(dir string) (func() error, error) {
	f, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	for {
		err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX)
		if !errors.Is(err, syscall.EINTR) {
			break
		}
	}
	if err != nil {
		return nil, errors.Join(&os.PathError{Op: "lock", Path: dir, Err: err}, f.Close())
	}
	return f.Close, nil
}

func (machine) settle(dir string) error {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}
