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

// KeepTasting adds what a taster saw later of a bake kept already, at the end of
// the day-book. Everything that stands in the book is copied byte for byte. A
// book that cannot be read is left as it is, and so is one that has no such
// bake; what is wrong is the error, a fault.List.
func KeepTasting(path string, bake int, later Tasted, t *reference.Tables) error {
	return keepTasting(machine{}, path, bake, later, t)
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
	err = add(d, path, t, []byte(head), func(was *Book) (string, error) {
		e.Bake = len(was.Entries) + 1
		return e.entry()
	}, func(was, is *Book) bool { return len(is.Entries) == len(was.Entries)+1 })
	if err != nil {
		return 0, err
	}
	return e.Bake, nil
}

func keepTasting(d disk, path string, bake int, later Tasted, t *reference.Tables) error {
	return add(d, path, t, nil, func(was *Book) (string, error) {
		if bake < 1 || bake > len(was.Entries) {
			return "", fault.List{{File: path, What: fmt.Sprintf("there is no bake %d", bake), Hint: fmt.Sprintf("the day-book has %d", len(was.Entries))}}
		}
		return later.later(bake), nil
	}, func(was, is *Book) bool {
		return len(is.Entries) == len(was.Entries) && len(is.Entries[bake-1].Tasted) == len(was.Entries[bake-1].Tasted)+1
	})
}

// add writes something at the end of the book, which begins with fresh where
// there is none yet; with no fresh page there must be a book. What comes of it
// must be as wished.
func add(d disk, path string, t *reference.Tables, fresh []byte, write func(was *Book) (string, error), wished func(was, is *Book) bool) (err error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // a link goes on pointing at the book
	}
	dir := filepath.Dir(path)
	unlock, err := d.lock(dir)
	if err != nil {
		return fmt.Errorf("waiting for the day-book: %w", err)
	}
	defer func() { err = errors.Join(err, unlock()) }()

	old, err := d.read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && fresh != nil:
		old = fresh
	case err != nil:
		return err
	}
	was, faults := Read(path, old, t)
	if err := faults.Err(); err != nil {
		return err
	}
	text, err := write(was)
	if err != nil {
		return err
	}
	added := string(old)
	if added != "" && !strings.HasSuffix(added, "\n") {
		added += "\n"
	}
	added += text
	if err := sound(path, added, was, wished, t); err != nil {
		return err
	}
	return replace(d, dir, path, added)
}

// sound reads the book as it would be, so that nothing is ever written that
// could not be read again.
func sound(path, text string, was *Book, wished func(was, is *Book) bool, t *reference.Tables) error {
	is, faults := Read(path, []byte(text), t)
	if len(faults) > 0 {
		first := faults[0]
		first.Hint = "the day-book was left as it is"
		first.What = "this cannot be kept: " + first.What
		return fault.List{first}
	}
	if !wished(was, is) {
		return fault.List{{File: path, What: "this cannot be kept: the book would not read as one thing more", Hint: "the day-book was left as it is"}}
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
