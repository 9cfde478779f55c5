package book

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
	"assize/reference/spell"
)

const (
	bookFile    = "book.yaml"
	kitchenFile = "kitchen.yaml"
	suffix      = ".yaml"
)

// Open reads the whole folder as a book. Receipts with faults are left out of
// it; their faults, those of the book's own files, and names that two receipts
// answer to are all returned together. When the book's own page has faults that
// hide its year or place, the receipts wait until it is mended.
func Open(fsys fs.FS, t *reference.Tables) (*Book, fault.List) {
	b, faults, sure := context(fsys, ".", t)
	if !sure {
		return b, faults
	}
	faults = append(faults, b.readPages(fsys, ".", "")...)
	for _, p := range b.pages {
		faults = append(faults, p.faults...)
	}
	return b, append(faults, b.doubles()...)
}

// For reads one receipt as a page of its folder: the book and the kitchen
// beside it fill in what it leaves out, and parts it takes from other receipts
// are put in. Those receipts are read only when there is something to take,
// and their faults count only when they are taken. The formula is nil when
// there is any fault; the book always has what its own files hold.
func For(fsys fs.FS, name string, t *reference.Tables) (*formula.Formula, *Book, fault.List) {
	return ForKitchen(fsys, name, t, formula.Kitchen{})
}

// ForKitchen is For with a kitchen that stands over the folder's and over the
// receipt's own.
func ForKitchen(fsys fs.FS, name string, t *reference.Tables, k formula.Kitchen) (*formula.Formula, *Book, fault.List) {
	dir := path.Dir(name)
	b, faults, sure := context(fsys, dir, t)
	b.kitchenOver = k
	text, trouble := readFile(fsys, name)
	if trouble != nil {
		return nil, b, append(faults, *trouble)
	}
	if !sure {
		return nil, b, faults
	}
	own := &page{name: name, text: text}
	b.read(own)
	if faults = append(faults, own.faults...); len(faults) > 0 {
		return nil, b, faults
	}
	f := own.formula
	if !slices.ContainsFunc(f.Parts, func(p formula.Part) bool { return p.Take != "" }) {
		return f, b, nil
	}
	if faults = b.readPages(fsys, dir, name); len(faults) > 0 {
		return nil, b, faults
	}
	b.add(own)
	f, faults = b.Resolve(f)
	return f, b, faults
}

// context reads what holds for every receipt of a folder. It is not sure when
// faults of the book's page leave its year or place unread: then nothing can be
// said of receipts that rest on them.
func context(fsys fs.FS, dir string, t *reference.Tables) (b *Book, faults fault.List, sure bool) {
	b, sure = &Book{tables: t}, true
	name := path.Join(dir, bookFile)
	text, trouble := readFile(fsys, name)
	switch {
	case trouble == nil:
		var own file.BookPage
		own, faults = file.ReadBook(name, text, t)
		b.Title, b.Year, b.Place = own.Title, own.Year, own.Place
		b.Kitchen, b.Measures, b.Standing = own.Kitchen, own.Measures, own.Standing
		sure = len(faults) == 0 || b.Year != 0 && b.Place != ""
	case trouble.What != missing:
		faults, sure = append(faults, *trouble), false
	}
	name = path.Join(dir, kitchenFile)
	text, trouble = readFile(fsys, name)
	switch {
	case trouble == nil:
		k, wrong := file.ReadKitchen(name, text)
		faults = append(faults, wrong...)
		b.Kitchen = file.Over(b.Kitchen, k)
	case trouble.What != missing:
		faults = append(faults, *trouble)
	}
	return b, faults, sure
}

// readPages reads every receipt of the folder but the one named, in the order of
// their names. What is returned are faults of the folder; each page keeps its own.
func (b *Book) readPages(fsys fs.FS, dir, but string) fault.List {
	entries, err := fs.ReadDir(fsys, dir)
	if err != nil {
		return fault.List{{File: dir, What: "the folder cannot be read: " + cause(err)}}
	}
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		if e.IsDir() || !isReceipt(e.Name()) || name == but {
			continue
		}
		p := &page{name: name}
		if text, trouble := readFile(fsys, name); trouble != nil {
			p.faults = fault.List{*trouble}
		} else {
			p.text = text
			b.read(p)
		}
		b.add(p)
	}
	return nil
}

func isReceipt(name string) bool {
	return strings.HasSuffix(name, suffix) && !strings.HasPrefix(name, ".") && name != bookFile && name != kitchenFile
}

const missing = "there is no such file"

// readFile reads one file of the folder, refusing links and anything that is
// not a plain file, and never more than is allowed.
func readFile(fsys fs.FS, name string) ([]byte, *fault.Fault) {
	wrong := func(hint, format string, args ...any) ([]byte, *fault.Fault) {
		return nil, &fault.Fault{File: name, What: fmt.Sprintf(format, args...), Hint: hint}
	}
	info, err := fs.Lstat(fsys, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return wrong(nearNames(fsys, name), missing)
	case err != nil:
		return wrong("", "the file cannot be read: %s", cause(err))
	case info.IsDir():
		return wrong("name a receipt in it", "this is a folder")
	case info.Mode()&fs.ModeSymlink != 0:
		return wrong("put the file itself there: nothing outside the folder is read", "this is a link to another file")
	case !info.Mode().IsRegular():
		return wrong("", "this is not a plain file")
	case info.Size() > sheet.MaxSize:
		return wrong("split it: one receipt a file", "the file is %d bytes; at most %d are read", info.Size(), sheet.MaxSize)
	}
	f, err := fsys.Open(name)
	if err != nil {
		return wrong("", "the file cannot be read: %s", cause(err))
	}
	defer f.Close() // nothing was written
	text, err := io.ReadAll(io.LimitReader(f, sheet.MaxSize+1))
	if err != nil {
		return wrong("", "the file cannot be read: %s", cause(err))
	}
	return text, nil
}

// cause is what went wrong, without the path the system puts before it.
func cause(err error) string {
	if pe, ok := errors.AsType[*fs.PathError](err); ok {
		return pe.Err.Error()
	}
	return err.Error()
}

func nearNames(fsys fs.FS, name string) string {
	entries, err := fs.ReadDir(fsys, path.Dir(name))
	if err != nil {
		return ""
	}
	var known []string
	for _, e := range entries {
		if isReceipt(e.Name()) {
			known = append(known, e.Name())
		}
	}
	return spell.Ask(path.Base(name), known)
}
