package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"assize/reference"
	"assize/reference/spell"
)

const rootLong = `Assize weighs an old receipt, holds its proportions against published ones,
and says before anything is in the bowl how paste and filling are likely to turn
out, why, and what small change would help.

  $ assize check seville-orange-tart.yaml
  $ assize weigh rich-lemon-pudding.yaml
  $ assize tables measures gill

A receipt is a short file; "assize help format" shows how to write one.`

func newRoot(r *run) *cobra.Command {
	root := &cobra.Command{
		Use:           "assize",
		Short:         "weigh old receipts and judge how they will turn out",
		Long:          rootLong,
		Version:       fmt.Sprintf("%s, tables %s", version, reference.Edition),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return usageError{fmt.Sprintf("unknown command %q", args[0]), suggest(args[0], commandNames(cmd), "`assize help` lists the commands")}
		},
		RunE: r.start(func(cmd *cobra.Command, _ []string) error { return cmd.Help() }),
	}
	root.SetIn(r.In)
	root.SetOut(r.Out)
	root.SetErr(r.Err)
	root.SetVersionTemplate("assize {{.Version}}\n")
	root.CompletionOptions.DisableDefaultCmd = true
	root.SetFlagErrorFunc(flagError)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { fmt.Fprint(r.Out, helpOf(cmd)) })
	flags := root.PersistentFlags()
	flags.StringVar(&r.tables, "tables", "", "lay tables of your own in `DIR` over ours")
	flags.BoolVar(&r.plain, "plain", false, "plain text on a terminal too: nothing set bold")
	flags.BoolP("help", "h", false, "show help")
	root.Flags().Bool("version", false, "show the version and the edition of the tables")
	for _, g := range []struct {
		title    string
		commands []*cobra.Command
	}{
		{"Before it is made", []*cobra.Command{newRead(r), newCheck(r), newWeigh(r), newAssemble(r)}},
		{"Dish, oven and table", []*cobra.Command{newFit(r), newOven(r), newAnswers(r)}},
		{"After tasting", []*cobra.Command{newBake(r), newExplain(r), newDaybook(r), newCompare(r)}},
		{"In a new form", []*cobra.Command{newNearest(r), newVariant(r), newCard(r)}},
		{"Besides", []*cobra.Command{newTables(r)}},
	} {
		root.AddGroup(&cobra.Group{ID: g.title, Title: g.title})
		for _, c := range g.commands {
			c.GroupID = g.title
			root.AddCommand(c)
		}
	}
	root.SetHelpCommand(newHelp(r))
	return root
}

// start marks the command line as understood before the command runs.
func (r *run) start(f func(*cobra.Command, []string) error) func(*cobra.Command, []string) error {
	return func(cmd *cobra.Command, args []string) error {
		r.started = true
		return f(cmd, args)
	}
}

func commandNames(root *cobra.Command) []string {
	var out []string
	for _, c := range root.Commands() {
		out = append(out, c.Name())
	}
	return out
}

// suggest is a near name, or else the hint given.
func suggest(got string, known []string, otherwise string) string {
	if s := spell.Ask(got, known); s != "" {
		return s
	}
	return otherwise
}

// flagError says what is wrong with a flag and what was probably meant.
func flagError(cmd *cobra.Command, err error) error {
	hint := fmt.Sprintf("`%s --help` lists the flags", cmd.CommandPath())
	var unknown *pflag.NotExistError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		name := "--" + unknown.GetSpecifiedName()
		var known []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, "--"+f.Name) })
		return usageError{fmt.Sprintf("unknown flag %q", name), suggest(name, known, hint)}
	case errors.As(err, &invalid):
		what := fmt.Sprintf("--%s cannot be %q", invalid.GetFlag().Name, invalid.GetValue())
		if c, ok := invalid.GetFlag().Value.(*choice); ok {
			return usageError{what, suggest(invalid.GetValue(), c.known, "one of "+strings.Join(c.known, ", "))}
		}
		return usageError{what, "it takes a whole number"}
	}
	return usageError{err.Error(), hint}
}

// choice is a flag that takes one of a few words.
type choice struct {
	value string
	known []string
}

func (c *choice) String() string { return c.value }
func (c *choice) Type() string   { return strings.Join(c.known, "|") }

// Set takes one of the known words.
func (c *choice) Set(s string) error {
	for _, k := range c.known {
		if s == k {
			c.value = s
			return nil
		}
	}
	return fmt.Errorf("one of %s", strings.Join(c.known, ", "))
}
