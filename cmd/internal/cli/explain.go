package cli

import (
	"bytes"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula"
	"assize/formula/bench"
	"assize/formula/daybook"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference/fault"
	"assize/reference/sheet"
)

const explainLong = `Explain tells, after a tasting, what made a bake turn out as it did: what would have
changed it and by how far, what it says about the receipt's own doubts, and what is
the least to do next time.

FILE is a bench record ("assize bake" writes one), a receipt when there is none, or -
for standard input. What was seen stands in the record; --tasted is the short way,
in a word or two of a taster's, parted by commas.

  $ assize explain rich-lemon-pudding.yaml --tasted cakey
  $ assize explain rich-lemon-pudding.yaml --tasted spongy,soggy-base
  $ assize explain bench/rich-lemon-pudding-first.yaml

A word that fits both paste and filling is told apart by the part: "paste: tough".`

type explainOptions struct {
	format   choice
	tasted   string
	meant    string
	keep     string
	daybook  string
	readings int
	seed     uint64
	kitchen  string
}

func newExplain(r *run) *cobra.Command {
	o := explainOptions{format: choice{known: pageFormats, value: formatText}}
	cmd := &cobra.Command{
		Use:   "explain FILE",
		Short: "tell what made a bake turn out as it did",
		Long:  explainLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.explain(&o, args[0]) }),
	}
	f := cmd.Flags()
	f.Var(&o.format, "format", "how the explanation is written")
	f.StringVar(&o.tasted, "tasted", "", "what was tasted, in `WORDS` parted by commas")
	f.StringVar(&o.meant, "meant", "", "how it should be, in `WORDS`, when the taster knows")
	f.StringVar(&o.keep, "keep", "", "add the bake to the day-book in `FILE`, or begin one")
	f.StringVar(&o.daybook, "daybook", "", "tell the odds of this kitchen too, by the day-book in `FILE`")
	f.IntVar(&o.readings, "readings", readings.Usual, "try `N` ways of taking the receipt")
	f.Uint64Var(&o.seed, "seed", 0, "draw the ways anew from seed `N`")
	f.StringVar(&o.kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

func (r *run) explain(o *explainOptions, name string) error {
	if o.readings < 1 || o.readings > mostReadings {
		return usageError{fmt.Sprintf("--readings cannot be %d", o.readings), fmt.Sprintf("from 1 to %d", mostReadings)}
	}
	in, err := r.reading(o.kitchen)
	if err != nil {
		return err
	}
	j := judge.New(in.tables)
	j.Seed, j.Readings, j.Remedies = o.seed, o.readings, false
	b, err := in.baked(j, name)
	if err != nil {
		return err
	}
	b.Meant = o.meant
	var said []explain.Seen
	if o.tasted != "" {
		var trouble *bench.Trouble
		if said, trouble = b.Tasted(o.tasted); trouble != nil {
			return usageError{trouble.What, trouble.Hint}
		}
	}
	seen := slices.Concat(said, b.Results())
	if len(seen) == 0 {
		return usageError{"nothing was tasted", "`--tasted cakey`, or fill in `tasted` in the bench record"}
	}
	x := &present.Explained{Bake: b}
	for _, s := range seen {
		e, err := b.Explain(s)
		if err != nil {
			return err
		}
		x.Results = append(x.Results, e)
	}
	if o.daybook != "" {
		if x.Kitchen, err = r.ofKitchen(o.daybook, in.tables); err != nil {
			return err
		}
	}
	if o.keep != "" {
		if n := r.keptAlready(o.keep, b, in.tables); n > 0 {
			return usageError{fmt.Sprintf("this is bake %d of %s already", n, o.keep), fmt.Sprintf("leave out --keep; `assize daybook --bake %d --tasted WORDS %s` adds a later tasting", n, o.keep)}
		}
		n, err := daybook.Keep(o.keep, entryOf(b, said), in.tables)
		if err != nil {
			return r.daybookError(o.keep, err)
		}
		x.Kept = fmt.Sprintf("bake %d of %s", n, o.keep)
	}
	p := r.printer(o.format.value, false, present.About{Version: version, Tables: in.tables, OwnTables: r.tables})
	if p.format == formatJSON {
		return r.written(present.ExplainJSON(r.Out, x, p.about))
	}
	return r.written(p.page(present.Explain(x, p.about)))
}

// baked reads a bench record, or a receipt when the file is none, and makes it
// ready to be explained.
func (in *receipts) baked(j *judge.Judge, name string) (*explain.Bake, error) {
	record, f, err := in.recordOrReceipt(name)
	if err != nil {
		return nil, err
	}
	if record != nil {
		b, faults := explain.Record(j, record)
		if len(faults) > 0 {
			in.refuse(in.withLines(faults))
			return nil, errFaults
		}
		return b, nil
	}
	b, faults := explain.Receipt(j, f)
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return nil, errFaults
	}
	return b, nil
}

// recordOrReceipt reads a file as a bench record when it is one, else as a
// receipt.
func (in *receipts) recordOrReceipt(name string) (*bench.Record, *formula.Formula, error) {
	text, err := in.text(name)
	if err == nil && bench.IsRecord(text) {
		shown := name
		if name == "-" {
			shown = standardInput
		}
		record, faults := bench.Read(shown, text, in.tables)
		if len(faults) > 0 {
			in.refuse(faults)
			return nil, nil, errFaults
		}
		return record, nil, nil
	}
	// A file that cannot be read is a fault of the receipt, told as such.
	f, _ := in.read(name)
	if f == nil {
		return nil, nil, errFaults
	}
	return nil, f, nil
}

// record reads a file that must be a bench record.
func (in *receipts) record(name string) (*bench.Record, error) {
	text, err := in.text(name)
	if err != nil {
		return nil, unreadable{fmt.Sprintf("the bench record %q cannot be read: %v", name, cause(err)), ""}
	}
	if !bench.IsRecord(text) {
		return nil, unreadable{fmt.Sprintf("%q is not a bench record", name), "`assize bake FILE` writes one to fill in"}
	}
	record, faults := bench.Read(name, text, in.tables)
	if len(faults) > 0 {
		in.refuse(faults)
		return nil, errFaults
	}
	return record, nil
}

// orRecord are the faults of a page that was read as a receipt, unless it is a
// bench record: then that alone is said.
func orRecord(name string, faults fault.List) fault.List {
	text, err := readFile(name)
	if err != nil || !bench.IsRecord(text) {
		return faults
	}
	return fault.List{{File: name, What: "this is a bench record and not a receipt", Hint: "`assize explain` tells what made it turn out so, `assize compare` sets it beside another"}}
}

// text is the page of a file, or standard input, which is kept to be read again.
func (in *receipts) text(name string) ([]byte, error) {
	if name != "-" {
		return readFile(name)
	}
	text, err := io.ReadAll(io.LimitReader(in.In, sheet.MaxSize+1))
	rest := io.Reader(bytes.NewReader(text))
	if err != nil {
		rest = io.MultiReader(rest, failing{err})
	}
	in.In, in.standard = rest, text
	return text, err
}

// failing is the end of an input that could not be read to its end.
type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }
