package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula"
	"assize/formula/file"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/variant"
	"assize/reference/fault"
)

const variantLong = `Variant finds the smallest set of changes, in kitchen measures, that answers what is
found against a part, and with --to brings it into what is usual for a class.
Fewest ingredients first, then fewest things done otherwise, then the least change;
whole eggs, amounts a cook can weigh or spoon, and the dish filled as before.

FILE is a receipt, or - for standard input.

  $ assize variant rich-lemon-pudding.yaml
  $ assize variant --against cakey --keep butter,lemon rich-lemon-pudding.yaml
  $ assize variant --to lemon-tart --most 4 --why rich-lemon-pudding.yaml

With --write NEW.yaml the changed receipt is kept in a file with its ancestry: the page
it comes from, what was in doubt, and what was changed. No file is ever written over.
"assize tables classes" lists the classes, --why shows all that was tried.`

// pageFormats are the formats of what is read as a page.
var pageFormats = []string{formatText, formatMarkdown, formatJSON}

type variantOptions struct {
	format   choice
	wish     variant.Wish
	why      bool
	write    string
	readings int
	seed     uint64
	kitchen  string
}

func newVariant(r *run) *cobra.Command {
	o := variantOptions{format: choice{known: pageFormats, value: formatText}}
	cmd := &cobra.Command{
		Use:   "variant FILE",
		Short: "find the smallest change that answers a fault or reaches a class",
		Long:  variantLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.variant(&o, args[0]) }),
	}
	f := cmd.Flags()
	f.StringVar(&o.wish.To, "to", "", "bring it into what is usual for this `CLASS`")
	f.StringSliceVar(&o.wish.Against, "against", nil, "answer these `FAULTS` and no others: cakey, loose, tough ...")
	f.StringSliceVar(&o.wish.Keep, "keep", nil, "leave these `INGREDIENTS` as they are")
	f.IntVar(&o.wish.Most, "most", variant.Usual, "change at most `N` ingredients")
	f.StringVar(&o.wish.Part, "part", "", "work on this `PART` of the receipt")
	f.BoolVar(&o.wish.AnyVolume, "any-volume", false, "let it come to more or less than the book makes")
	f.BoolVar(&o.why, "why", false, "show other ways, and all that was tried")
	f.StringVar(&o.write, "write", "", "keep the changed receipt in a new `FILE`")
	f.Var(&o.format, "format", "how the variant is shown")
	f.IntVar(&o.readings, "readings", readings.Usual, "try `N` ways of taking the receipt")
	f.Uint64Var(&o.seed, "seed", 0, "draw the ways anew from seed `N`")
	f.StringVar(&o.kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

func (r *run) variant(o *variantOptions, name string) error {
	if o.readings < 1 || o.readings > mostReadings {
		return usageError{fmt.Sprintf("--readings cannot be %d", o.readings), fmt.Sprintf("from 1 to %d", mostReadings)}
	}
	if o.wish.Most < 1 || o.wish.Most > variant.Most {
		return usageError{fmt.Sprintf("--most cannot be %d", o.wish.Most), fmt.Sprintf("from 1 to %d ingredients", variant.Most)}
	}
	in, err := r.reading(o.kitchen)
	if err != nil {
		return err
	}
	if _, err := os.Stat(o.write); o.write != "" && err == nil {
		return alreadyThere(o.write)
	}
	f, _ := in.read(name)
	if f == nil {
		return errFaults
	}
	j := judge.New(in.tables)
	j.Seed, j.Readings = o.seed, o.readings
	res, err := variant.Find(j, f, o.wish)
	if err != nil {
		return in.notUnderstood(err)
	}
	if err := r.showVariant(res, o, present.About{Version: version, Tables: in.tables, OwnTables: r.tables}); err != nil {
		return r.written(err)
	}
	if o.write == "" {
		return nil
	}
	if res.Variant == nil {
		fmt.Fprintf(r.Err, "assize: nothing is changed, so %s is not written\n", o.write)
		return nil
	}
	return r.keep(res.Variant, o.write)
}

func (r *run) showVariant(res *variant.Result, o *variantOptions, a present.About) error {
	switch o.format.value {
	case formatJSON:
		return present.VariantJSON(r.Out, res, a, o.why)
	case formatMarkdown:
		return present.Variant(res, a, o.why).Markdown(r.Out)
	}
	return present.Variant(res, a, o.why).Text(r.Out, r.layout())
}

// notUnderstood turns what went wrong with a wish into the error that ends the
// run; faults of the receipt are shown first.
func (in *receipts) notUnderstood(err error) error {
	if p, ok := errors.AsType[*variant.Problem](err); ok {
		hint := ""
		if len(p.Known) > 0 {
			hint = suggest(p.Word, p.Known, "one of "+strings.Join(p.Known, ", "))
		}
		return usageError{p.What, hint}
	}
	if faults, ok := errors.AsType[fault.List](err); ok {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	return err
}

func alreadyThere(name string) error {
	return unreadable{fmt.Sprintf("%q is there already and is not written over", name), "give another name, or move it away first"}
}

// keep writes a formula to a new file.
func (r *run) keep(f *formula.Formula, name string) error {
	text, err := file.Write(f)
	if err != nil {
		return err
	}
	out, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return alreadyThere(name)
	case err != nil:
		return unreadable{fmt.Sprintf("%q cannot be written: %v", name, cause(err)), ""}
	}
	_, err = out.Write(text)
	if err := errors.Join(err, out.Close()); err != nil {
		return unreadable{fmt.Sprintf("%q cannot be written: %v", name, cause(err)), ""}
	}
	fmt.Fprintf(r.Err, "assize: kept in %s\n", name)
	return nil
}
