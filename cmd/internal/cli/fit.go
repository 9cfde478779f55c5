package cli

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula/receipt"
	"assize/ratios/batch"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/readings"
)

const fitLong = `Fit holds what a receipt comes to, in millilitres, against the dishes: which take
it, how deep it stands, how much paste they need and what is left. With --dish or --ml
it makes as much as fills that one. The dishes of your kitchen are looked at first.

FILE is a receipt, or - for standard input.

  $ assize fit rich-lemon-pudding.yaml
  $ assize fit --dish soup-plate rich-lemon-pudding.yaml
  $ assize fit --dish 9x1.25in rich-lemon-pudding.yaml
  $ assize fit --eggs 3 rich-lemon-pudding.yaml
  $ assize fit --trial rich-lemon-pudding.yaml

A dish has a name ("assize tables vessels" lists them) or a size, inside: width by
depth, "9 x 1.25 in" or "23 x 3 cm"; three figures for an oblong one; a range where you
are not sure, "9.5-10 x 1.5-2 in". --eggs, --by, --grams and --trial make another batch,
measured out in whole eggs, measures and grams, with the error of each rounding. --trial
is the smallest batch with whole eggs that keeps every proportion, in a dish that keeps
the depth of the whole. --write keeps the batch in a new file; no file is ever written
over.`

type fitOptions struct {
	format   choice
	dish     string
	ml       string
	eggs     string
	by       string
	grams    string
	within   string
	trial    bool
	all      bool
	write    string
	kitchen  string
	readings int
	seed     uint64
}

func newFit(r *run) *cobra.Command {
	o := fitOptions{format: choice{known: pageFormats, value: formatText}}
	cmd := &cobra.Command{
		Use:   "fit FILE",
		Short: "find the dish it fills, or make as much as fills one",
		Long:  fitLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.fit(&o, args[0]) }),
	}
	f := cmd.Flags()
	f.StringVar(&o.dish, "dish", "", "the `DISH` to fill, by its name or its size")
	f.StringVar(&o.ml, "ml", "", "a dish that takes `N` ml")
	f.StringVar(&o.eggs, "eggs", "", "make it with `N` eggs in the filling")
	f.StringVar(&o.by, "by", "", "make `F` times the receipt: 1/2, 0.4, 3")
	f.StringVar(&o.grams, "grams", "", "make `N` grams of the filling, or of the only part")
	f.BoolVar(&o.trial, "trial", false, "make the smallest batch worth trying")
	f.StringVar(&o.within, "within", "5", "let a proportion be out by `N` in 100 at most")
	f.BoolVar(&o.all, "all", false, "show every dish there is")
	f.StringVar(&o.write, "write", "", "keep the batch in a new `FILE`")
	f.Var(&o.format, "format", "how it is shown")
	f.IntVar(&o.readings, "readings", readings.Usual, "try `N` ways of taking the receipt")
	f.Uint64Var(&o.seed, "seed", 0, "draw the ways anew from seed `N`")
	f.StringVar(&o.kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

func (r *run) fit(o *fitOptions, name string) error {
	if o.readings < 1 || o.readings > mostReadings {
		return usageError{fmt.Sprintf("--readings cannot be %d", o.readings), fmt.Sprintf("from 1 to %d", mostReadings)}
	}
	wish, err := o.wish()
	if err != nil {
		return err
	}
	if _, err := os.Stat(o.write); o.write != "" && err == nil {
		return alreadyThere(o.write)
	}
	in, err := r.reading(o.kitchen)
	if err != nil {
		return err
	}
	f, _ := in.read(name)
	if f == nil {
		return errFaults
	}
	if err := o.find(in, &wish, judge.KitchenOf(f)); err != nil {
		return err
	}
	j := judge.New(in.tables)
	j.Seed, j.Readings, j.Remedies = o.seed, o.readings, false
	report, faults := j.Check(f)
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	show := &present.Fitting{Report: report, All: o.all, Given: report.InDish}
	load := report.LoadOf()
	show.Every = dish.Every(dish.All(in.tables, judge.KitchenOf(f)), load)
	if d := wish.Dish; d != nil {
		if d.Count == 1 {
			d.Count = d.Number(load)
		}
		given := dish.Into(d.Dish, d.Count, load)
		show.Given = &given
	}
	if o.makes() {
		b, err := batch.Make(j, report, wish)
		if wrong, ok := errors.AsType[*batch.Error](err); ok {
			return usageError{wrong.What, wrong.Hint}
		}
		if err != nil {
			return unreadable{"it cannot be made more or less of: " + err.Error(), ""}
		}
		show.Batch = b
	}
	a := present.About{Version: version, Tables: in.tables, OwnTables: r.tables}
	switch o.format.value {
	case formatJSON:
		err = present.FitJSON(r.Out, show, a)
	case formatMarkdown:
		err = present.Fit(show, a).Markdown(r.Out)
	default:
		err = present.Fit(show, a).Text(r.Out, r.layout())
	}
	if err != nil {
		return r.written(err)
	}
	if o.write == "" {
		return nil
	}
	return r.keep(show.Batch.Formula, o.write)
}

// makes reports whether a batch is asked for.
func (o *fitOptions) makes() bool {
	return o.dish != "" || o.ml != "" || o.eggs != "" || o.by != "" || o.grams != "" || o.trial
}

// wish reads the batch that is asked for; the dish is found later, with the
// receipt at hand.
func (o *fitOptions) wish() (batch.Wish, error) {
	var w batch.Wish
	var asked []string
	number := func(flag, text, hint string) (decimal.Decimal, error) {
		if text == "" {
			return decimal.Zero, nil
		}
		asked = append(asked, flag)
		n, err := receipt.ParseNumber(text)
		if err != nil || !n.IsExact() || !n.Likely.IsPositive() {
			return decimal.Zero, usageError{fmt.Sprintf("%s cannot be %q", flag, text), hint}
		}
		return n.Likely, nil
	}
	eggs, err := number("--eggs", o.eggs, "a whole number of eggs, from 1")
	if err != nil {
		return w, err
	}
	if !eggs.IsInteger() || eggs.GreaterThan(decimal.NewFromInt(mostEggs)) {
		return w, usageError{fmt.Sprintf("--eggs cannot be %q", o.eggs), fmt.Sprintf("a whole number of eggs, from 1 to %d", mostEggs)}
	}
	w.Eggs = int(eggs.IntPart())
	if w.By, err = number("--by", o.by, "a factor over nought: 1/2, 0.4, 3"); err != nil {
		return w, err
	}
	if w.Grams, err = number("--grams", o.grams, "a weight in grams over nought"); err != nil {
		return w, err
	}
	if w.Trial = o.trial; w.Trial {
		asked = append(asked, "--trial")
	}
	if len(asked) > 1 {
		return w, usageError{strings.Join(asked, " and ") + " cannot go together", "one of them says how much is made"}
	}
	if o.dish != "" && o.ml != "" {
		return w, usageError{"--dish and --ml cannot go together", "both say which dish is filled"}
	}
	if o.write != "" && !o.makes() {
		return w, usageError{"there is nothing to keep with --write", "say how much to make: --dish, --ml, --eggs, --by, --grams or --trial"}
	}
	within, err := receipt.ParseNumber(o.within)
	if err != nil || !within.IsExact() || within.Likely.GreaterThan(decimal.NewFromInt(mostWithin)) {
		return w, usageError{fmt.Sprintf("--within cannot be %q", o.within), fmt.Sprintf("so many in 100, over nought and up to %d", mostWithin)}
	}
	w.Tolerance = within.Likely.InexactFloat64() / 100
	return w, nil
}

// mostEggs bounds --eggs, and mostWithin --within: beyond it nothing is kept.
const mostEggs, mostWithin = 1000, 50

// find finds the dish that is asked for.
func (o *fitOptions) find(in *receipts, w *batch.Wish, k dish.Kitchen) error {
	var found dish.Found
	var err error
	flag, words := "--dish", o.dish
	switch {
	case o.ml != "":
		flag, words = "--ml", o.ml
		n, wrong := receipt.ParseNumber(o.ml)
		if wrong != nil || !n.IsExact() {
			return usageError{fmt.Sprintf("--ml cannot be %q", o.ml), "what the dish takes, in millilitres: 1000"}
		}
		found.Count = 1
		found.Dish, err = dish.Holding(n.Likely.InexactFloat64())
	case o.dish != "":
		found, err = dish.Called(in.tables, o.dish, k)
	default:
		return nil
	}
	if size, ok := errors.AsType[*dish.SizeError](err); ok {
		return usageAt{usageError{fmt.Sprintf("%s: %s", flag, size.What), size.Hint}, words, size.Column}
	}
	if unknown, ok := errors.AsType[*dish.UnknownError](err); ok {
		return usageError{fmt.Sprintf("%s: unknown dish %q", flag, words), unknown.Hint}
	}
	if err != nil {
		return err
	}
	w.Dish = &found
	return nil
}
