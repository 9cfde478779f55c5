package cli

import (
	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
)

const answersLong = `Answers makes the sheet for the public's questions of a dish: what is in it, the
foods people are allergic to by the European and the American list, whether it is
vegetarian, wheat and its kin, alcohol, raw egg, and what hides in bought things.

FILE is a receipt, a folder of receipts (a book), or - for standard input.

  $ assize answers rich-lemon-pudding.yaml
  $ assize answers --format html rich-lemon-pudding.yaml baked-custard.yaml

The sheet is an aid to the person who answers, who has read the packets. It never
clears a dish, and says what it does not know.`

func newAnswers(r *run) *cobra.Command {
	format := choice{known: withHTML, value: formatText}
	var kitchen string
	cmd := &cobra.Command{
		Use:   "answers FILE...",
		Short: "make the answer sheet for the public's questions",
		Long:  answersLong,
		Args:  someFiles,
		RunE: r.start(func(_ *cobra.Command, args []string) error {
			var pages []*present.Page
			how := judging{readings: ovenReadings}
			err := r.each(args, kitchen, how, func(p *printer, s *present.Sheet) error {
				if format.value == formatJSON {
					return present.AnswersJSON(p.out, s, p.about, p.several)
				}
				pages = append(pages, present.Answers(s, p.about))
				return nil
			}, format.value)
			return r.pages(pages, format.value, err)
		}),
	}
	f := cmd.Flags()
	f.Var(&format, "format", "how the sheet is written")
	f.StringVar(&kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}
