package daybook

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"assize/reference"
	"assize/reference/fault"
)

// Keep adds a bake at the end of the day-book, which is begun when there is
// none, and returns its number. What stands in the book is copied byte for byte.
// A book that cannot be read is left as it is; its faults are the error, a
// fault.List.
func Keep(path string, e Entry, t *reference.Tables) (bake int, err error) {
	return keep(machine{}, path, e, t)
}

// Load reads the day-book of a file. Its faults are the error, a fault.List.
func Load(path string, t *reference.Tables) (*Book, error) {
	text, err := machine{}.read(path)
	if err != nil {
		return nil, err
	}
	b, faults := Read(path, text, t)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return b, nil
}

// disk is what keeping a day-book asks of the machine.
type disk interface {
	// lock waits until no other run adds to a book of the folder. The lock goes
	// with the run that holds it, however it ends.
	lock(dir string) (unlock func() error, err error)
	read(path string) ([]byte, error)
	create(path string, like fs.FileMode) (sink, error)
	rename(from, to string) error
	// settle makes the names of a folder last.
	settle(dir string) error
}

type sink interface {
	io.Writer
	Sync() error
	Close() error
}

// usualMode is that of a new book, before the person's own mask.
const usualMode fs.FileMode = 0o644

func keep(d disk, path string, e Entry, t *reference.Tables) (bake int, err error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // a link goes on pointing at the book
	}
	dir := filepath.Dir(path)
	unlock, err := d.lock(dir)
	if err != nil {
		return 0, fmt.Errorf("waiting for the day-book: %w", err)
	}
	defer func() { err = errors.Join(err, unlock()) }()

	old, err := d.read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		old = []byte(head)
	case err != nil:
		return 0, err
	}
	was, faults := Read(path, old, t)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	e.Bake = len(was.Entries) + 1
	text, err := e.entry()
	if err != nil {
		return 0, err
	}
	added := string(old)
	if added != "" && !strings.HasSuffix(added, "\n") {
		added += "\n"
	}
	added += text
	if err := sound(path, added, e.Bake, t); err != nil {
		return 0, err
	}
	return e.Bake, replace(d, dir, path, added)
}

// sound reads the book as it would be, so that nothing is ever written that
// could not be read again.
func sound(path, text string, bakes int, t *reference.Tables) error {
	is, faults := Read(path, []byte(text), t)
	if len(faults) > 0 {
		first := faults[0]
		first.Hint = "the day-book was left as it is"
		first.What = "this bake cannot be kept: " + first.What
		return fault.List{first}
	}
	if len(is.Entries) != bakes {
		return fault.List{{File: path, What: fmt.Sprintf("this bake cannot be kept: the book would read as %d bakes, not %d", len(is.Entries), bakes), Hint: "the day-book was left as it is"}}
	}
	return nil
}

// replace writes the book to a file beside it and puts that in its place. The
// file beside it has a name of its own, so that what an ended run has left is
// written over by the next.
func replace(d disk, dir, path, text string) error {
	mode := usualMode
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	beside := filepath.Join(dir, "."+filepath.Base(path)+".new")
	f, err := d.create(beside, mode)
	if err != nil {
		return err
	}
	_, err = io.WriteString(f, text)
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return fmt.Errorf("writing the day-book: %w", err)
	}
	if err := d.rename(beside, path); err != nil {
		return fmt.Errorf("writing the day-book: %w", err)
	}
	if err := d.settle(dir); err != nil {
		return fmt.Errorf("writing the day-book: %w", err)
	}
	return nil
}

// machine is the disk of this machine.
type machine struct{}

func (machine) read(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close() // nothing was written
	if info, err := f.Stat(); err == nil && !info.Mode().IsRegular() {
		return nil, &fs.PathError{Op: "open", Path: path, Err: errors.New("it is not a plain file")}
	}
	return io.ReadAll(io.LimitReader(f, MaxSize+1))
}

func (machine) create(path string, like fs.FileMode) (sink, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, like)
}

func (machine) rename(from, to string) error { return os.Rename(from, to) }
