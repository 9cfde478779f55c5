package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula/file"
	"assize/formula/linked"
	"assize/formula/receipt"
	"assize/reference"
	"assize/reference/fault"
)

const readLong = `Read turns a receipt in words, as you copy it out of the book, into a receipt
file: a heading, a list or sentences or both, in old spelling or new. The file
goes to standard output. How each thing was taken, with its reason and its range,
goes to standard error, and into the file as comments. The words themselves stay
in the file under "text".

  $ assize read --year 1838 --place england orange-pudding.txt

FILE is a text, a schema.org Recipe in JSON-LD (.json), a saved page that holds
one (.html), or - for standard input. Year and place come from a book.yaml beside
FILE when there is one.

Mark in the text what the page leaves in doubt:

  [?]            after a word that is hard to read
  [6|8] eggs     one or the other
  [illegible]    a word that cannot be read
  [struck: ...]  crossed out;  [margin: ...]  added in another hand
  [errata: ...]  put right elsewhere in the book

What could not be read is marked in the file; check stops there until you have
mended it, and read ends with exit code 3.`

type readOptions struct {
	year  int
	place choice
	title string
}

func newRead(r *run) *cobra.Command {
	o := readOptions{place: choice{known: reference.Places}}
	cmd := &cobra.Command{
		Use:   "read [FILE]",
		Short: "turn a receipt in words into a receipt file",
		Long:  readLong,
		Args:  cobra.MaximumNArgs(1),
		RunE: r.start(func(_ *cobra.Command, args []string) error {
			name := "-"
			if len(args) > 0 {
				name = args[0]
			}
			return r.readWords(&o, name)
		}),
	}
	f := cmd.Flags()
	f.IntVar(&o.year, "year", 0, "the year `Y` it was written: decides its measures")
	f.Var(&o.place, "place", "where it was written")
	f.StringVar(&o.title, "title", "", "call the receipt `NAME`, whatever its heading")
	return cmd
}

// The years a receipt may have.
const earliestYear, latestYear = 1000, 2100

func (r *run) readWords(o *readOptions, name string) error {
	if o.year != 0 && (o.year < earliestYear || o.year > latestYear) {
		return usageError{fmt.Sprintf("--year cannot be %d", o.year), fmt.Sprintf("from %d to %d", earliestYear, latestYear)}
	}
	tables, err := r.loadTables()
	if err != nil {
		return err
	}
	shown, raw, err := r.copied(name)
	if err != nil {
		return err
	}
	about := receipt.About{Title: o.title, Year: o.year, Place: o.place.value}
	if err := r.fromBook(name, tables, &about); err != nil {
		return err
	}
	text := string(raw)
	if linked.Is(name, raw) {
		found, faults := linked.Read(shown, raw)
		if len(faults) > 0 {
			return r.show(faults)
		}
		text = found.Text
		about.Title, about.Source = orElse(about.Title, found.Title), orElse(about.Source, found.Source)
		if about.Year == 0 {
			about.Year = found.Year
		}
		shown += ", as read"
	} else if f := notText(shown, raw); f != nil {
		return r.show(fault.List{*f})
	}
	switch {
	case about.Year == 0:
		return usageError{"the year of the receipt is not known, and it decides which measures hold", "--year 1838, or a book.yaml beside the file"}
	case about.Place == "":
		return usageError{"the place of the receipt is not known, and it decides whose measures hold", "--place england, or a book.yaml beside the file"}
	}
	return r.writeRead(tables, shown, text, about)
}

// writeRead reads the words and writes the file.
func (r *run) writeRead(tables *reference.Tables, shown, text string, about receipt.About) error {
	reader := &receipt.Reader{Tables: tables, Year: about.Year, Place: about.Place}
	f, trace := reader.Receipt(text, about)
	faults := present.ReadFaults(shown, text, &trace)
	if f == nil {
		return r.show(faults)
	}
	out, err := file.WriteWith(f, present.ReadRemarks(&trace))
	if err != nil {
		return err
	}
	if _, err := r.Out.Write(out); err != nil {
		return r.written(err)
	}
	if err := present.ReadTrace(r.Err, f, &trace); err != nil {
		return r.written(err)
	}
	if len(faults) > 0 {
		return r.show(faults)
	}
	return nil
}

func orElse(s, otherwise string) string {
	if s != "" {
		return s
	}
	return otherwise
}

// copied is the text to be read, and what its file is called.
func (r *run) copied(name string) (shown string, text []byte, err error) {
	if name == "-" {
		text, err = io.ReadAll(io.LimitReader(r.In, linked.MaxSize+1))
		shown = standardInput
	} else {
		text, err = readFile(name)
		shown = name
	}
	if err != nil {
		return "", nil, unreadable{fmt.Sprintf("%q cannot be read: %v", shown, cause(err)), ""}
	}
	return shown, text, nil
}

// fromBook fills in year and place by the book.yaml beside a file.
func (r *run) fromBook(name string, tables *reference.Tables, about *receipt.About) error {
	if name == "-" {
		return nil
	}
	page := filepath.Join(filepath.Dir(name), "book.yaml")
	text, err := os.ReadFile(page)
	if err != nil {
		return nil // a file that stands in no book
	}
	b, faults := file.ReadBook(page, text, tables)
	if len(faults) > 0 {
		return r.show(faults)
	}
	if about.Year == 0 {
		about.Year = b.Year
	}
	about.Place, about.Source = orElse(about.Place, b.Place), b.Title
	return nil
}

// notText says why a file is no text, nil when it is one.
func notText(name string, text []byte) *fault.Fault {
	f := fault.Fault{File: name}
	switch {
	case len(text) > linked.MaxSize:
		f.What, f.Hint = fmt.Sprintf("the file is larger than %d bytes; no receipt is", linked.MaxSize), "give one receipt at a time"
	case len(bytes.TrimSpace(text)) == 0:
		f.What = "the file is empty"
	case bytes.IndexByte(text, 0) >= 0:
		f.What, f.Hint = "this is no text", "give the words of the receipt: a .txt file, a Recipe in JSON-LD, or a saved page"
	case !utf8.Valid(text):
		f.What, f.Hint = "the text is not UTF-8", "save the file as UTF-8"
	case strings.ContainsFunc(string(text), func(c rune) bool { return unicode.IsControl(c) && !unicode.IsSpace(c) && c != '\uFEFF' }):
		f.What, f.Hint = "the text holds characters that cannot be printed", "give the words of the receipt as plain text"
	default:
		return nil
	}
	return &f
}
