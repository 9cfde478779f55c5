package book

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
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
	faults = append(faults, b.readPages(fsys, ".")...)
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
	return NewFolder(fsys, path.Dir(name), t, k).Receipt(name)
}

// Folder reads the receipts of one folder one by one as For does, and each of
// its files once, however many receipts take from it. It is for one goroutine.
type Folder struct {
	fsys   fs.FS
	dir    string
	book   *Book // its own pages alone
	faults fault.List
	sure   bool
	whole  *Book // with every receipt; nil until one takes from another
}

// NewFolder makes ready to read a folder. The kitchen stands over the folder's
// and over the receipts' own.
func NewFolder(fsys fs.FS, dir string, t *reference.Tables, k formula.Kitchen) *Folder {
	d := &Folder{fsys: fsys, dir: dir}
	d.book, d.faults, d.sure = context(fsys, dir, t)
	d.book.kitchenOver = k
	return d
}

// Receipt reads one receipt of the folder, see For.
func (d *Folder) Receipt(name string) (*formula.Formula, *Book, fault.List) {
	own := d.known(name)
	if own == nil {
		text, trouble := readFile(d.fsys, name)
		if trouble != nil {
			return nil, d.book, slices.Concat(d.faults, fault.List{*trouble})
		}
		own = &page{name: name, text: text}
	}
	if !d.sure {
		return nil, d.book, d.faults
	}
	if own.formula == nil && own.faults == nil {
		d.book.read(own)
	}
	if faults := slices.Concat(d.faults, own.faults); len(faults) > 0 {
		return nil, d.book, faults
	}
	b := d.book
	if slices.ContainsFunc(own.formula.Parts, func(p formula.Part) bool { return p.Take != "" }) {
		if wrong := d.readAll(); len(wrong) > 0 {
			return nil, d.book, wrong
		}
		b = d.whole
		if d.known(name) == nil { // called by a name no receipt of a book has
			b = &Book{}
			*b = *d.whole
			b.byName = maps.Clone(d.whole.byName)
			b.add(own)
		}
	}
	f, faults := b.Resolve(own.formula)
	return f, b, faults
}

// known is the page of that name when it has been read, nil else.
func (d *Folder) known(name string) *page {
	if d.whole == nil {
		return nil
	}
	i, ok := slices.BinarySearchFunc(d.whole.pages, name, func(p *page, n string) int { return strings.Compare(p.name, n) })
	if !ok {
		return nil
	}
	return d.whole.pages[i]
}

// readAll reads every receipt of the folder.
func (d *Folder) readAll() fault.List {
	if d.whole != nil {
		return nil
	}
	whole := *d.book
	if faults := whole.readPages(d.fsys, d.dir); len(faults) > 0 {
		return faults
	}
	slices.SortStableFunc(whole.pages, func(a, b *page) int { return strings.Compare(a.name, b.name) })
	d.whole = &whole
	return nil
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

// readPages reads every receipt of the folder in the order of their names. What is returned are faults of the folder; each page keeps its own.
func (b *Book) readPages(fsys fs.FS, dir string) fault.List {
	entries, err := fs.ReadDir(fsys, dir)
	if err != nil {
		return fault.List{{File: dir, What: "the folder cannot be read: " + cause(err)}}
	}
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		if e.IsDir() || !isReceipt(e.Name()) {
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
