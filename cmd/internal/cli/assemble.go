package cli

import (
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/ratios/worksheet"
	"assize/reference/fault"
)

const assembleLong = `Assemble gathers a receipt from all over its book into one sheet for the bench:
what to weigh, by parts; every step in working order, those printed elsewhere in
the book in their place and those it leaves unsaid, each marked with where it comes
from and why; when to begin; where you may stop; and what to have in the house.

FILE is a receipt, a folder of receipts (a book), or - for standard input.

  $ assize assemble rich-lemon-pudding.yaml
  $ assize assemble --serve 13:00 --format html rich-lemon-pudding.yaml

Without --serve the times are hours before it goes to table. A step that was taken
though no words say so is named in the file, under its part: "done: [part-bake]".
"assize tables steps" lists the steps.`

const formatHTML = "html"

func newAssemble(r *run) *cobra.Command {
	format := choice{known: []string{formatText, formatMarkdown, formatHTML}, value: formatText}
	var kitchen, serve string
	cmd := &cobra.Command{
		Use:   "assemble FILE...",
		Short: "gather a receipt from all over its book into one sheet for the bench",
		Long:  assembleLong,
		Args:  someFiles,
		RunE: r.start(func(_ *cobra.Command, args []string) error {
			clock := present.NoClock
			if serve != "" {
				at, err := time.Parse("15:04", strings.ReplaceAll(serve, ".", ":"))
				if err != nil {
					return usageError{fmt.Sprintf("--serve cannot be %q", serve), "a time of day, as 13:00"}
				}
				clock = present.Clock(at.Hour()*60 + at.Minute())
			}
			return r.assemble(args, kitchen, clock, format.value)
		}),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how the sheet is written")
	f.StringVar(&serve, "serve", "", "work the time back from `HH:MM`, when it goes to table")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

// assembled is the sheet of one receipt, and its page where it is not HTML.
type assembled struct {
	bench  *present.Bench
	page   []byte
	faults fault.List
	err    error // of setting the page out
}

// assemble writes the sheet of every receipt the arguments name. Receipts with
// faults are left out; they make the run end as invalid.
func (r *run) assemble(args []string, kitchen string, serve present.Clock, format string) error {
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	files, err := r.files(args)
	if err != nil {
		return err
	}
	about := present.About{Version: version, Tables: in.tables, OwnTables: r.tables}
	a := worksheet.New(in.tables)
	p := r.printer(format, len(files) > 1, about)
	var sheets []*present.Bench
	show := func(d assembled) error {
		switch {
		case len(d.faults) > 0:
			in.refuse(in.withLines(d.faults))
		case d.err != nil:
			return d.err
		case format == formatHTML:
			sheets = append(sheets, d.bench)
		default:
			return p.rendered(d.page)
		}
		return nil
	}
	var c crew[assembled]
	for _, name := range files {
		f, _ := in.read(name)
		if f == nil {
			continue
		}
		d, ok := c.take(func() assembled {
			s, faults := a.Assemble(f)
			if len(faults) > 0 {
				return assembled{faults: faults}
			}
			d := assembled{bench: present.WorksheetOf(s, about, serve)}
			if format != formatHTML {
				d.page, d.err = p.render(present.Worksheet(d.bench))
			}
			return d
		})
		if !ok {
			continue
		}
		if err := show(d); err != nil {
			return r.written(err)
		}
	}
	if err := c.rest(show); err != nil {
		return r.written(err)
	}
	if len(sheets) > 0 {
		page, err := present.WorksheetHTML(sheets)
		if err != nil {
			return err
		}
		if _, err := io.WriteString(r.Out, page); err != nil {
			return r.written(err)
		}
	}
	if in.faulty {
		return errFaults
	}
	return nil
}
