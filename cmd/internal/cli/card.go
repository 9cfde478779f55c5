package cli

import (
	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula/daybook"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/worksheet"
)

const cardLong = `Card writes a page to publish: where the receipt comes from and whose leave there is
to print it; what it makes; grams, and the cups and spoons of a kitchen; every step,
those not in the book marked; the oven and how it is known to be done; what was
changed from the book and why; how often it was baked; and the cautions, which no card
leaves out.

FILE is a receipt, or - for standard input. A file written by "assize variant --write"
or "assize fit --write" keeps what was changed.

  $ assize card rich-lemon-pudding.yaml
  $ assize card --daybook bench/day-book.yaml rich-lemon-pudding.yaml

Without a day-book it says "worked out, not yet baked". "permission:" in the file
holds the leave to print, in the owner's words.`

func newCard(r *run) *cobra.Command {
	format := choice{known: []string{formatMarkdown, formatText, formatHTML}, value: formatMarkdown}
	var kitchen, kept string
	cmd := &cobra.Command{
		Use:   "card FILE",
		Short: "write a page of it to publish",
		Long:  cardLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.card(args[0], kitchen, kept, format.value) }),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how the card is written")
	f.StringVar(&kept, "daybook", "", "tell how often it was baked from the day-book in `FILE`")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

func (r *run) card(name, kitchen, kept, format string) error {
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	c := &present.CardSheet{}
	if kept != "" {
		if c.Book, err = daybook.Load(kept, in.tables); err != nil {
			return r.daybookError(kept, err)
		}
	}
	f, _ := in.read(name)
	if f == nil {
		return errFaults
	}
	j := judge.New(in.tables)
	j.Readings, j.Remedies = readings.Usual, false
	report, faults := j.Check(f)
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	c.Sheet = &present.Sheet{Report: report}
	if c.Bench, faults = worksheet.New(in.tables).Assemble(f); len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	about := present.About{Version: version, Tables: in.tables, OwnTables: r.tables}
	return r.pages([]*present.Page{present.Card(c, about)}, format, nil)
}
