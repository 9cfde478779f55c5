package cli

import (
	"github.com/spf13/cobra"

	"assize/ratios"
)

const weighLong = `Weigh puts each receipt on the scales: what every line comes to in grams, lowest,
likely and highest, and to the hundred of flour (baker's percentages), of egg, or
of the whole. What was taken for what stands below.

FILE is a receipt, a folder of receipts (a book), or - for standard input.

  $ assize weigh rich-lemon-pudding.yaml
  $ assize weigh --basis total --format csv baked-custard.yaml`

func newWeigh(r *run) *cobra.Command {
	format := choice{known: formats, value: formatText}
	basis := choice{known: ratios.Bases}
	var kitchen string
	cmd := &cobra.Command{
		Use:   "weigh FILE...",
		Short: "put a receipt on the scales",
		Long:  weighLong,
		Args:  someFiles,
		RunE: r.start(func(_ *cobra.Command, args []string) error {
			// One reading: the weights do not hang on how many are taken.
			how := judging{readings: 1, basis: basis.value}
			return r.each(args, kitchen, how, (*printer).weighed, format.value)
		}),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how the weights are written")
	f.Var(&basis, "basis", "what parts to the hundred are reckoned on, where the part has it")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}
