package cli

import (
	"fmt"

	"github.com/spf13/cobra"

	"assize/formula/bench"
	"assize/formula/weigh"
)

const bakeLong = `Bake writes a bench record of a receipt, to fill in at the bench and at the table:
what was really weighed, how it was really made, dish, oven, minutes, and what each
taster saw. Everything in it is optional. What is filled in takes the place of a
doubt, what is left empty stays in doubt.

FILE is a receipt, or - for standard input. The record carries the receipt with it.

  $ assize bake rich-lemon-pudding.yaml

Keep it in a file: assize bake rich-lemon-pudding.yaml > first-trial.yaml. Once
filled in, "assize explain first-trial.yaml" tells what made it turn out so.`

func newBake(r *run) *cobra.Command {
	var kitchen string
	cmd := &cobra.Command{
		Use:   "bake FILE",
		Short: "write a bench record to fill in",
		Long:  bakeLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.bake(args[0], kitchen) }),
	}
	cmd.Flags().StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

// oneFile asks for one file and no more.
func oneFile(cmd *cobra.Command, args []string) error {
	if err := someFiles(cmd, args); err != nil {
		return err
	}
	if len(args) > 1 {
		return usageError{fmt.Sprintf("one file at a time, not %d", len(args)), fmt.Sprintf("`%s`", cmd.UseLine())}
	}
	return nil
}

func (r *run) bake(name, kitchen string) error {
	in, err := r.reading(kitchen)
	if err != nil {
		return err
	}
	f, _ := in.read(name)
	if f == nil {
		return errFaults
	}
	w, faults := weigh.Weigh(f, in.tables)
	if len(faults) > 0 {
		in.refuse(in.withLines(faults))
		return errFaults
	}
	text, err := bench.Blank(w, in.tables)
	if err != nil {
		return err
	}
	_, err = r.Out.Write(text)
	return r.written(err)
}
