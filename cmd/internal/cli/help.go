package cli

import (
	"fmt"
	"io"
	"io/fs"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"assize/cmd/internal/present"
)

// topic is a page of help that belongs to no command.
type topic struct{ name, short, text string }

// topics are the pages of help in the order they are listed.
func topics() []topic {
	return []topic{
		{"exit-codes", "how a run ends", exitCodes},
		{"readings", "what \"about 8 in 10\" rests on", readingsTopic},
		{"format", "how a receipt file is written", formatTopic},
		{"bench", "how a bench record and a tasting sheet are filled in", benchTopic},
		{schemaTopic, "the JSON Schema of a report, or of the page of a command it is given", present.Schema},
	}
}

// schemaTopic is the topic that may be given the name of a command.
const schemaTopic = "schema"

// schemaOf is the JSON Schema of the page a command writes.
func schemaOf(command string) (string, error) {
	text, err := fs.ReadFile(present.Schemas, command+".schema.json")
	if err == nil {
		return string(text), nil
	}
	files, err := fs.Glob(present.Schemas, "*.schema.json")
	if err != nil {
		return "", err
	}
	var known []string
	for _, f := range files {
		name, _, _ := strings.Cut(f, ".")
		known = append(known, name)
	}
	return "", usageError{fmt.Sprintf("there is no schema of %q", command), suggest(command, known, "there are schemas of "+strings.Join(known, ", "))}
}

const exitCodes = `How a run ends, for scripts and makefiles:

   0  done; findings are part of the report and no failure
   1  a finding reached the grade given with --stop-at
   2  the command line could not be understood
   3  something could not be read, or is not as it must be; receipts that
      could be read were reported all the same
  70  a fault of ours

The report goes to standard output, everything else to standard error.

  $ assize check --stop-at decide baked-custard.yaml
`

const readingsTopic = `Old receipts leave things open: how big the eggs were, which pint is meant, how
far the eggs were beaten. Instead of choosing for you, assize bakes the receipt
on paper many times over (2000 unless --readings says otherwise), each time
taking every open thing in one of the ways it may be taken: small eggs with the
old pint, large eggs with the new one, and so on, the commoner ways more often.
These are the ways of taking the receipt.

"About 8 in 10" means: over all those ways, a filling of this kind would be
called cakey about eight times in ten. Nothing is ever called certain. Under one
time in twenty is "hardly ever", over nineteen in twenty "nearly always". When no
outcome reaches six in ten, it "could go either way".

"Settle first" names what the doubt hangs on. Settle that - weigh an egg, look
the measure up in the front of the book, decide how you will beat - write it into
the file, and run again.

The same receipt always gives the same answer. --seed draws the ways anew, to see
how little that matters.

  $ assize check --readings 500 --seed 7 rich-lemon-pudding.yaml
`

const formatTopic = `A receipt is a short file in YAML: a word, a colon, and what it is. Lines that
begin with a dash are lists. Keep the words of the book; assize reads them.

` + formatExample + `
Only title, year, place, and parts with a kind and their lines must be there.

  kind     pastry, filling, cake, batter, bread, meringue or sauce
  year     decides which measures hold; with "printed: 1861" for a receipt
           copied into a later book, measures of both years are weighed
  place    england, scotland, ireland or usa
  lines    as the book has them, or field by field:
             - {amount: "90", unit: ml, of: seville orange juice, form: strained}
           and where a line is one thing or another and nothing between:
             - {either: [4 oz butter, 8 oz butter], why: blotted, odds: [1, 2]}
           no amount is an amount too: "salt, to taste", "flour, enough to make
           a stiff paste"
  method   the steps in words; how eggs and butter are beaten matters most
  take     instead of lines: the title of another receipt in the same folder
  lay      lining, rim, lid, lining and lid, raised, patty, or folded (as
           turnovers are), for a paste; left out, it is read from the steps
           or the title, and else taken as a lining, which the sheet says
  done     steps that were taken though no words of the receipt say so, under a
           part: [part-bake, rest-paste]; "assize tables steps" lists them
  class    what it is meant to be; "assize tables classes" lists them
  permission  leave to print from the book, in its owner's words
  kitchen  the kitchen that bakes it now: year, place, eggs: large or
           {grams: 54}, flour: {protein: 9.5}, butter: salted or unsalted,
           oven, dishes: [soup plate, "blue dish, 22 x 4 cm"]
  dish     what it is baked in, by name or by its inside: 9 x 1.25 in

A folder is a book. A book.yaml in it gives title, year and place for all its
receipts and the directions the book prints once for all:

  measures: [this book's teacup is a gill]
  standing:
    - say: Brush the case with beaten egg and dry it before it is filled.
      for: [pastry]
      where: leaf 31

"for" names kinds of part or classes, "dishes" the dishes a direction is for, and
"step" the step it is where its words do not tell. A direction counts as taken
when the receipt says the like in its own words, or names the step under "done".

A kitchen.yaml beside it holds the keys of "kitchen". Nothing outside the folder
is read.

  $ assize check seville-orange-tart.yaml
`

const benchTopic = `A bench record tells what was really done. "assize bake FILE" writes one with every
place empty; fill in what you know and leave the rest. What is filled in takes the
place of a doubt, what is left empty stays in doubt.

  baked       the day, as 2026-11-07
  eggs        weighed together out of their shells: {number: 4, grams: 208}
  parts       of each part
    used        grams really used of each line; a line of several things has an
                entry for each
    added       what the receipt does not list: - {of: cornflour, grams: 8}
    done        how it was made where you did otherwise, or the receipt does not
                say, in the words of a receipt: - melt the butter
  dish        what it was baked in
  oven        readings: - {minute: 0, heat: 200 C}
  centre      heat in the middle when it came out: 78 C or 172 F
  minutes     in the oven, or over the fire
  departures  anything else done otherwise; kept and shown, nothing is reckoned
              from it
  meant       how it should be, if you know better than the receipt says
  tasted      the tasting sheet, each taster under a dash of their own
  formula     the receipt as it stood that day; leave it be

On the tasting sheet say what was seen, not how good it was: by and when (hot, cool
or next day), then in a word or two at the cut, wobble, crumb, liquid (what has run
out after ten minutes), spoon, mouth, crust, rim, centre, top and base. "words"
takes anything else and is kept as it stands. Tasters are kept apart and never
averaged. A word that may mean several things is asked about.

  $ assize bake rich-lemon-pudding.yaml
  $ assize tables signs
  $ assize explain bench/rich-lemon-pudding-first.yaml
`

const formatExample = `  title: Orange tart
  source: Millrace House manuscript, leaf 14
  year: 1838
  place: england
  parts:
    - name: paste
      kind: pastry
      lay: lining
      lines:
        - half a pound of flour
        - a quarter of a pound of butter
        - 3 tablespoonfuls of cold water
      method:
        - Rub the butter into the flour and wet it with the water.
    - name: filling
      kind: filling
      lines:
        - 6 eggs, well beaten
        - half a pound of loaf sugar, pounded
        - the juice and grated rind of 2 oranges
      method:
        - Mix all together and bake in a quick oven half an hour.
  oven: quick
  bake: half an hour
`

func newHelp(r *run) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND or TOPIC]",
		Short: "help on a command or a topic",
		Args:  cobra.MaximumNArgs(2),
		RunE: r.start(func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			if len(args) == 0 {
				return root.Help()
			}
			if len(args) == 2 {
				if args[0] != schemaTopic {
					return usageError{"help is on one thing at a time", "`assize help " + args[0] + "`"}
				}
				text, err := schemaOf(args[1])
				if err != nil {
					return err
				}
				_, err = io.WriteString(r.Out, text)
				return r.written(err)
			}
			known := commandNames(root)
			for _, c := range root.Commands() {
				if c.Name() == args[0] {
					return c.Help()
				}
			}
			for _, t := range topics() {
				if t.name == args[0] {
					_, err := io.WriteString(r.Out, t.text)
					return r.written(err)
				}
				known = append(known, t.name)
			}
			return usageError{fmt.Sprintf("no help on %q", args[0]), suggest(args[0], known, "there is help on "+strings.Join(known, ", "))}
		}),
	}
}

// helpOf is the help page of a command.
func helpOf(cmd *cobra.Command) string {
	var b strings.Builder
	text := cmd.Long
	if text == "" {
		text = upper(cmd.Short) + "."
	}
	fmt.Fprintf(&b, "%s\n\nUsage: %s\n", text, usageLine(cmd))
	if !cmd.HasParent() {
		for _, g := range cmd.Groups() {
			fmt.Fprintf(&b, "\n%s\n", g.Title)
			for _, c := range cmd.Commands() {
				if c.GroupID == g.ID {
					fmt.Fprintf(&b, "  %-12s %s\n", c.Name(), c.Short)
				}
			}
		}
		b.WriteString("\nTopics of help\n")
		for _, t := range topics() {
			fmt.Fprintf(&b, "  %-12s %s\n", t.name, t.short)
		}
	}
	b.WriteString("\nFlags\n")
	b.WriteString(flagsOf(cmd))
	return b.String()
}

func usageLine(cmd *cobra.Command) string {
	if !cmd.HasParent() {
		return "assize COMMAND"
	}
	return "assize " + cmd.Use
}

// flagsOf lists the flags of a command, one a line.
func flagsOf(cmd *cobra.Command) string {
	var names, words []string
	longest := 0
	add := func(f *pflag.Flag) {
		kind, usage := pflag.UnquoteUsage(f)
		name := "--" + f.Name
		if kind != "" {
			name += " " + kind
		}
		if f.DefValue != "" && f.DefValue != "false" && f.DefValue != "0" {
			usage += " (" + f.DefValue + ")"
		}
		names, words = append(names, name), append(words, usage)
		longest = max(longest, len(name))
	}
	cmd.LocalFlags().VisitAll(add)
	cmd.InheritedFlags().VisitAll(add)
	var b strings.Builder
	for i, n := range names {
		fmt.Fprintf(&b, "  %-*s  %s\n", longest, n, words[i])
	}
	return b.String()
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
