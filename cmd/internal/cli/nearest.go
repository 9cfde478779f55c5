package cli

import (
	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/ratios/judge"
	"assize/ratios/variant"
)

const nearestLong = `Nearest shows for each part of a receipt the families of formulas it is most like
today and in the old books, with the proportions that keep it from each, and the
published formulas most like it, with where they are printed and how they came out.

FILE is a receipt, or - for standard input.

  $ assize nearest rich-lemon-pudding.yaml

"assize variant --to CLASS FILE" finds the smallest change that brings a part into one.`

func newNearest(r *run) *cobra.Command {
	format := choice{known: pageFormats, value: formatText}
	var kitchen string
	cmd := &cobra.Command{
		Use:   "nearest FILE",
		Short: "show the families and published formulas a receipt is most like",
		Long:  nearestLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.nearest(args[0], kitchen, format.value) }),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how it is shown")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

func (r *run) nearest(name, kitchen, format string) error {
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	f, _ := in.read(name)
	if f == nil {
		return errFaults
	}
	n, faults := variant.Near(judge.New(in.tables), f)
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	about := present.About{Version: version, Tables: in.tables, OwnTables: r.tables}
	if format == formatJSON {
		return r.written(present.NearestJSON(r.Out, n, about))
	}
	return r.page(present.Nearest(n, about), format)
}
