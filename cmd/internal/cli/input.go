package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

// standardInput is what a receipt read there is called.
const standardInput = "standard input"

// loadTables reads the tables, the person's own laid over ours when there are
// any.
func (r *run) loadTables() (*reference.Tables, error) {
	t, err := reference.Load()
	if err != nil || r.tables == "" {
		return t, err
	}
	found, err := filepath.Glob(filepath.Join(r.tables, "*.yaml"))
	if err != nil || len(found) == 0 {
		return nil, unreadable{fmt.Sprintf("there are no tables in %q", r.tables), "name a folder with files like measures.yaml; `assize tables` lists the names"}
	}
	t, err = reference.Read(os.DirFS(r.tables), t)
	if faults, ok := errors.AsType[fault.List](err); ok {
		return nil, r.show(inFolder(faults, r.tables))
	}
	if err != nil {
		return nil, unreadable{what: err.Error()}
	}
	return t, nil
}

// show prints faults and gives the error that ends a run after them.
func (r *run) show(faults fault.List) error {
	if err := faults.Write(r.Err); err != nil {
		return unreadable{what: "the faults cannot be shown: " + err.Error()}
	}
	return errFaults
}

// inFolder names the files of faults by the folder the person gave.
func inFolder(faults fault.List, dir string) fault.List {
	out := slices.Clone(faults)
	for i := range out {
		out[i].File = filepath.Join(dir, filepath.FromSlash(out[i].File))
	}
	return out
}

// receipts reads the receipts of a run.
type receipts struct {
	*run
	tables  *reference.Tables
	kitchen formula.Kitchen
	shown   map[fault.Fault]bool
	faulty  bool
	folders map[string]*book.Folder // each read once, by their names
	// standard is what was read from standard input.
	standard []byte
}

// reading starts reading receipts, with the kitchen of a file over every
// other when one is given.
func (r *run) reading(kitchenFile string) (*receipts, error) {
	t, err := r.loadTables()
	if err != nil {
		return nil, err
	}
	in := &receipts{run: r, tables: t, shown: map[fault.Fault]bool{}, folders: map[string]*book.Folder{}}
	if kitchenFile == "" {
		return in, nil
	}
	text, err := readFile(kitchenFile)
	if err != nil {
		return nil, unreadable{fmt.Sprintf("the kitchen %q cannot be read: %v", kitchenFile, cause(err)), ""}
	}
	k, faults := file.ReadKitchen(kitchenFile, text)
	if len(faults) > 0 {
		return nil, r.show(faults)
	}
	in.kitchen = k
	return in, nil
}

// readFile reads a file of bearable size.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close() // nothing was written
	return io.ReadAll(io.LimitReader(f, sheet.MaxSize+1))
}

// cause is what went wrong, without the path the system puts before it.
func cause(err error) error {
	if pe, ok := errors.AsType[*fs.PathError](err); ok {
		return pe.Err
	}
	return err
}

// files lists the receipts that the arguments name: files, every receipt of a
// folder, and standard input as "-".
func (r *run) files(args []string) ([]string, error) {
	var out []string
	for _, a := range args {
		if a == "-" {
			if slices.Contains(out, "-") {
				return nil, usageError{"standard input is named twice", `give "-" once`}
			}
			out = append(out, "-")
			continue
		}
		info, err := os.Stat(a)
		if err != nil || !info.IsDir() {
			out = append(out, a) // a file that is not there is a fault of its own
			continue
		}
		found, err := os.ReadDir(a)
		if err != nil {
			return nil, unreadable{fmt.Sprintf("the folder %q cannot be read: %v", a, cause(err)), ""}
		}
		before := len(out)
		for _, e := range found {
			if isReceipt(e) {
				out = append(out, filepath.Join(a, e.Name()))
			}
		}
		if len(out) == before {
			return nil, unreadable{fmt.Sprintf("there is no receipt in the folder %q", a), "receipts are files that end in .yaml; book.yaml and kitchen.yaml are none"}
		}
	}
	return out, nil
}

// isReceipt tells the receipts of a folder from the book's own pages.
func isReceipt(e fs.DirEntry) bool {
	name := e.Name()
	return !e.IsDir() && strings.HasSuffix(name, ".yaml") && !strings.HasPrefix(name, ".") && name != "book.yaml" && name != "kitchen.yaml"
}

// read reads one receipt with its book, which is nil for standard input. The
// formula is nil when there were faults; they have been shown.
func (in *receipts) read(name string) (*formula.Formula, *book.Book) {
	if name == "-" {
		return in.readStandard(), nil
	}
	dir, base := filepath.Split(name)
	from := dir
	if from == "" {
		from = "."
	}
	d := in.folders[from]
	if d == nil {
		d = book.NewFolder(os.DirFS(from), ".", in.tables, in.kitchen)
		in.folders[from] = d
	}
	f, b, faults := d.Receipt(base)
	if len(faults) > 0 {
		in.refuse(orRecord(name, inFolder(faults, dir)))
		return nil, nil
	}
	f.File = name
	return f, b
}

func (in *receipts) readStandard() *formula.Formula {
	text, err := io.ReadAll(io.LimitReader(in.In, sheet.MaxSize+1))
	if err != nil {
		in.refuse(fault.List{{File: standardInput, What: fmt.Sprintf("it cannot be read: %v", cause(err))}})
		return nil
	}
	in.standard = text
	f, faults := file.ReadWith(standardInput, text, in.tables, file.Defaults{KitchenOver: in.kitchen})
	if len(faults) > 0 {
		in.refuse(faults)
		return nil
	}
	for _, p := range f.Parts {
		if p.Take != "" {
			faults = append(faults, fault.Fault{
				File: standardInput, Line: p.Pos.Line, Column: p.Pos.Column,
				What: fmt.Sprintf("%q cannot be taken: a receipt on standard input stands in no book", p.Take),
				Hint: "put the file beside the receipt it takes from, and name the file",
			})
		}
	}
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return nil
	}
	return f
}

// refuse shows the faults of a receipt that have not been shown before, as
// those of a book's own page are with every receipt of it.
func (in *receipts) refuse(faults fault.List) {
	in.faulty = true
	var fresh fault.List
	for _, f := range faults {
		if !in.shown[f] {
			in.shown[f] = true
			fresh = append(fresh, f)
		}
	}
	if err := fresh.Write(in.Err); err != nil {
		return // there is nowhere left to say so; the exit code tells
	}
}

// withLines puts the text of its line to each fault that has none: what is found
// on the scales knows the place and not the page.
func (in *receipts) withLines(faults fault.List) fault.List {
	out := slices.Clone(faults)
	for i, f := range out {
		if f.Source != "" || f.Line == 0 {
			continue
		}
		text := in.standard
		if f.File != standardInput {
			text, _ = readFile(f.File) // a page gone since it was read shows no line
		}
		if lines := fault.Lines(string(text)); f.Line <= len(lines) {
			out[i].Source = lines[f.Line-1]
		}
	}
	return out
}
