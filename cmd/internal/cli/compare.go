package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/ratios/readings"
)

const compareLong = `Compare sets two bakes, or two receipts, side by side: everything that differed, what
was foretold of each, and what the tasters saw. When more than one thing differed it
warns that the difference in the result cannot be laid to any one of them.

A and B are bench records or receipts, or one of each; "assize daybook --bake N" writes
a record back out of the day-book.

  $ assize compare bench/rich-lemon-pudding-first.yaml bench/rich-lemon-pudding-second.yaml
  $ assize compare rich-lemon-pudding.yaml seville-orange-tart.yaml`

func newCompare(r *run) *cobra.Command {
	format := choice{known: pageFormats, value: formatText}
	n := readings.Usual
	var kitchen string
	cmd := &cobra.Command{
		Use:   "compare A B",
		Short: "set two bakes or two receipts side by side",
		Long:  compareLong,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 2 {
				return usageError{fmt.Sprintf("two are compared, not %d", len(args)), fmt.Sprintf("`%s`", cmd.UseLine())}
			}
			return nil
		},
		RunE: r.start(func(_ *cobra.Command, args []string) error { return r.compare(args, format.value, kitchen, n) }),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how the comparison is written")
	f.IntVar(&n, "readings", readings.Usual, "try `N` ways of taking each")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipts say")
	return cmd
}

func (r *run) compare(args []string, format, kitchen string, n int) error {
	if n < 1 || n > mostReadings {
		return usageError{fmt.Sprintf("--readings cannot be %d", n), fmt.Sprintf("from 1 to %d", mostReadings)}
	}
	if args[0] == "-" && args[1] == "-" {
		return usageError{"standard input is named twice", `give "-" once`}
	}
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	j := judge.New(in.tables)
	j.Readings, j.Remedies = n, false
	var two [2]*explain.Bake
	for i, name := range args {
		// Faults of both are told in one run.
		if two[i], err = in.baked(j, name); err != nil && !errors.Is(err, errFaults) {
			return err
		}
	}
	if in.faulty {
		return errFaults
	}
	c := explain.Compare(two[0], two[1])
	p := r.printer(format, false, present.About{Version: version, Tables: in.tables, OwnTables: r.tables})
	if format == formatJSON {
		return r.written(present.CompareJSON(r.Out, c, p.about))
	}
	return r.written(p.page(present.Compare(c, p.about)))
}
