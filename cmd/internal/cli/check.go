package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula"
	"assize/formula/bench"
	"assize/formula/book"
	"assize/ratios"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/ratios/readings"
	"assize/reference/fault"
)

const checkLong = `Check weighs each receipt, holds its proportions against published ones, and says
how it is likely to turn out, why, and what small change would help.

FILE is a receipt, a folder of receipts (a book), or - for standard input.

  $ assize check seville-orange-tart.yaml
  $ assize check --brief rich-lemon-pudding.yaml baked-custard.yaml
  $ assize check --format json pound-cake.yaml

With --bench a receipt is judged as it was made, by the bench record of a bake: steps
done at the bench are not missed, and what was weighed is in doubt no longer.

  $ assize check --bench bench/rich-lemon-pudding-first.yaml rich-lemon-pudding.yaml

With --format json one receipt is one indented object; several are one object a
line. "assize help readings" tells what "about 8 in 10" rests on.`

type checkOptions struct {
	format   choice
	stopAt   choice
	basis    choice
	readings int
	seed     uint64
	brief    bool
	all      bool
	kitchen  string
	bench    string
}

func newCheck(r *run) *cobra.Command {
	o := checkOptions{
		format: choice{known: formats, value: formatText},
		stopAt: choice{known: []string{string(judge.Watch), string(judge.Decide)}},
		basis:  choice{known: ratios.Bases},
	}
	cmd := &cobra.Command{
		Use:   "check FILE...",
		Short: "weigh a receipt and judge how it will turn out",
		Long:  checkLong,
		Args:  someFiles,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.check(&o, args) }),
	}
	f := cmd.Flags()
	f.Var(&o.format, "format", "how the report is written")
	f.Var(&o.stopAt, "stop-at", "end with exit code 1 when a finding reaches this grade")
	f.Var(&o.basis, "basis", "what parts to the hundred are reckoned on, where the part has it")
	f.IntVar(&o.readings, "readings", readings.Usual, "try `N` ways of taking the receipt")
	f.Uint64Var(&o.seed, "seed", 0, "draw the ways anew from seed `N`")
	f.BoolVar(&o.brief, "brief", false, "leave the remedies untried, which is quicker")
	f.BoolVar(&o.all, "all", false, "show proportions without a published range too")
	f.StringVar(&o.kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	f.StringVar(&o.bench, "bench", "", "judge the receipt as it was made, by the bench record in `FILE`")
	return cmd
}

// someFiles asks for at least one file.
func someFiles(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return usageError{"no receipt is named", fmt.Sprintf("`%s FILE`, a folder of receipts, or - for standard input", cmd.CommandPath())}
	}
	return nil
}

// mostReadings bounds --readings: more would only take time.
const mostReadings = 100_000

func (r *run) check(o *checkOptions, args []string) error {
	if o.readings < 1 || o.readings > mostReadings {
		return usageError{fmt.Sprintf("--readings cannot be %d", o.readings), fmt.Sprintf("from 1 to %d", mostReadings)}
	}
	j := judging{seed: o.seed, readings: o.readings, basis: o.basis.value, remedies: !o.brief, bench: o.bench}
	reached := stopError{}
	err := r.each(args, o.kitchen, j, func(p *printer, s *present.Sheet) error {
		if f := reaching(s.Report, judge.Grade(o.stopAt.value)); f != nil && reached.what == "" {
			reached.what = fmt.Sprintf("stopped at %s: %s, %s: %s", o.stopAt.value, s.Report.Formula.Title, f.Part, f.Says)
		}
		return p.checked(s, present.Wish{AllRatios: o.all, Brief: o.brief})
	}, o.format.value)
	if err != nil {
		return err
	}
	if reached.what != "" {
		return reached
	}
	return nil
}

// reaching is the first finding of a grade or over, nil when there is none or
// no grade is asked for.
func reaching(r *judge.Report, grade judge.Grade) *judge.Finding {
	for i := range r.Findings {
		switch f := &r.Findings[i]; {
		case grade == judge.Watch && (f.Grade == judge.Watch || f.Grade == judge.Decide),
			grade == judge.Decide && f.Grade == judge.Decide:
			return f
		}
	}
	return nil
}

// judging is how receipts are judged.
type judging struct {
	seed     uint64
	readings int
	basis    string
	remedies bool
	depth    oven.Range // of the filling in its dish, cm
	width    float64    // of the dish, cm
	bench    string     // file of a bench record of the one receipt, empty for none
}

// judged is one receipt as the judge has it.
type judged struct {
	formula *formula.Formula
	book    *book.Book
	report  *judge.Report
	record  *bench.Record // it was judged by, nil for none
	faults  fault.List
}

// each reads, judges and prints every receipt the arguments name. Receipts
// with faults are left out; they make the run end as invalid.
func (r *run) each(args []string, kitchen string, how judging, print func(*printer, *present.Sheet) error, format string) error {
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	files, err := r.files(args)
	if err != nil {
		return err
	}
	var record *bench.Record
	if how.bench != "" {
		if len(files) > 1 {
			return usageError{fmt.Sprintf("--bench is of one receipt, not of %d", len(files)), "name the receipt that was baked"}
		}
		if record, err = in.record(how.bench); err != nil {
			return err
		}
	}
	j := judge.New(in.tables)
	j.Seed, j.Readings, j.Basis, j.Remedies = how.seed, how.readings, how.basis, how.remedies
	j.Depth, j.Width = how.depth, how.width
	p := r.printer(format, len(files) > 1, present.About{Version: version, Tables: in.tables, OwnTables: r.tables})
	bar := &progress{r: r, of: len(files)}
	show := func(d judged) error {
		bar.step()
		if len(d.faults) > 0 {
			in.refuse(in.withLines(d.faults))
			return nil
		}
		return print(p, &present.Sheet{Report: d.report, Directions: directions(d.formula, d.book), Record: d.record})
	}
	var c crew[judged]
	for _, name := range files {
		f, b := in.read(name)
		if f == nil {
			bar.step()
			continue
		}
		made := record
		if record != nil {
			var same bool
			if made, same = record.Of(f); !same {
				return unreadable{fmt.Sprintf("%q is no record of %s as it stands now", how.bench, f.Title), "a record carries its receipt as it stood: `assize explain " + how.bench + "` goes by that"}
			}
		}
		d, ok := c.take(func() judged {
			if made != nil {
				baked, faults := explain.Record(j, made)
				if len(faults) > 0 {
					return judged{faults: faults}
				}
				return judged{f, b, baked.Report, made, nil}
			}
			report, faults := j.Check(f)
			return judged{f, b, report, nil, faults}
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
	if in.faulty {
		return errFaults
	}
	return nil
}

// directions are the book's standing directions for each part.
func directions(f *formula.Formula, b *book.Book) [][]book.Standing {
	if b == nil {
		return nil
	}
	out := make([][]book.Standing, len(f.Parts))
	for i := range f.Parts {
		out[i] = b.Directions(f, i)
	}
	return out
}
