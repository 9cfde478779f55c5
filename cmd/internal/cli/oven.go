package cli

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/reference"
)

const ovenLong = `Oven reads how hot an oven was meant, in F and C, with what each work says of it.

WORDS are those of a book: an oven word, degrees, a gas mark, a count of the hand,
what paper or flour does.

  $ assize oven a quick oven
  $ assize oven after the bread is drawn
  $ assize oven white paper browns in a minute
  $ assize oven --count 20

With receipts it tells the oven each asks for and wants today, how long it takes
and how you know that it is done; give the depth of the mixture for the time.

  $ assize oven --depth 3 baked-custard.yaml

With --readings it lays the line of a falling brick oven through timed readings,
and tells when each dish goes in. Readings are a file, one reading a line, or stand
on the command line with commas between: a time, = or a space, and degrees.

  $ assize oven --readings 14:00=300C,14:30=275C,15:00=252C
  $ assize oven --readings 14:00=300C,14:30=275C,15:00=252C .`

// The ovens a cook may have.
var ovensHad = []string{"brick", "range", "modern"}

type ovenOptions struct {
	format   choice
	in       choice
	place    choice
	count    string
	readings string
	depth    string
	across   string
	room     float64
	year     int
	kitchen  string
}

func newOven(r *run) *cobra.Command {
	o := ovenOptions{
		format: choice{known: withHTML, value: formatText},
		in:     choice{known: ovensHad},
		place:  choice{known: reference.Places},
	}
	cmd := &cobra.Command{
		Use:   "oven [WORDS... | FILE...]",
		Short: "read how hot an oven was meant, when a dish goes in and when it is done",
		Long:  ovenLong,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.oven(&o, args) }),
	}
	f := cmd.Flags()
	f.Var(&o.format, "format", "how it is written")
	f.StringVar(&o.count, "count", "", "how long the hand is borne: a count of `N`")
	f.StringVar(&o.readings, "readings", "", "timed readings of a falling oven, a `FILE` or list")
	f.Float64Var(&o.room, "room", 18, "heat of the room, in `C`")
	f.StringVar(&o.depth, "depth", "", "depth of the mixture, in `CM` or a range like 2.5-3")
	f.StringVar(&o.across, "across", "", "width of the dish, in `CM`")
	f.Var(&o.in, "in", "the oven you have")
	f.IntVar(&o.year, "year", 0, "`YEAR` of the words")
	f.Var(&o.place, "place", "where the words are from")
	f.StringVar(&o.kitchen, "kitchen", "", "the kitchen in `FILE` holds, whatever the receipt says")
	return cmd
}

// mostDepth and mostAcross bound a mixture in its dish, cm.
const mostDepth, mostAcross = 30, 100

func (r *run) oven(o *ovenOptions, args []string) error {
	depth, err := centimetres("--depth", o.depth, mostDepth)
	if err != nil {
		return err
	}
	across, err := centimetres("--across", o.across, mostAcross)
	if err != nil {
		return err
	}
	words, files := wordsAndFiles(args)
	switch {
	case len(words) > 0 && len(files) > 0:
		return usageError{fmt.Sprintf("%q is no receipt and %q is one", words[0], files[0]), "give either words of an oven or receipts, not both"}
	case o.count != "" && len(args) > 0, o.count != "" && o.readings != "":
		return usageError{"--count stands by itself", "`assize oven --count 20`"}
	case o.readings != "" && len(words) > 0:
		return usageError{fmt.Sprintf("--readings is for receipts, and %q is none", words[0]), "name receipts or a folder of them, or nothing"}
	case len(words) > 0 && o.depth != "":
		return usageError{"--depth is for receipts", "`assize oven --depth 3 FILE`"}
	case o.count != "":
		return r.ovenCount(o)
	case o.readings != "":
		return r.ovenPlan(o, files, depth, across.Likely)
	case len(files) > 0:
		return r.ovenOf(o, files, depth, across.Likely)
	case len(words) > 0:
		return r.ovenWords(o, strings.Join(words, " "))
	}
	return usageError{"nothing is asked of the oven", "`assize oven a quick oven`, `assize oven --count 20`, or `assize oven FILE`"}
}

// wordsAndFiles parts the words of an oven from receipts: what ends in .yaml,
// a folder, or standard input.
func wordsAndFiles(args []string) (words, files []string) {
	for _, a := range args {
		info, err := os.Stat(a)
		if a == "-" || strings.HasSuffix(a, ".yaml") || err == nil && info.IsDir() {
			files = append(files, a)
			continue
		}
		words = append(words, a)
	}
	return words, files
}

// centimetres reads a length or a range of lengths of a flag.
func centimetres(flag, s string, most float64) (oven.Range, error) {
	if s == "" {
		return oven.Range{}, nil
	}
	hint := fmt.Sprintf("a length in centimetres up to %g, or a range like 2.5-3; an inch is 2.54", most)
	low, high, ranged := strings.Cut(strings.TrimSuffix(strings.TrimSpace(s), "cm"), "-")
	if !ranged {
		high = low
	}
	a, errA := strconv.ParseFloat(strings.TrimSpace(low), 64)
	b, errB := strconv.ParseFloat(strings.TrimSpace(high), 64)
	if errA != nil || errB != nil || !(a > 0 && a <= b && b <= most) {
		return oven.Range{}, usageError{fmt.Sprintf("%s cannot be %q", flag, s), hint}
	}
	return oven.Range{Low: a, Likely: (a + b) / 2, High: b}, nil
}

func (r *run) ovenCount(o *ovenOptions) error {
	t, err := r.loadTables()
	if err != nil {
		return err
	}
	n, err := strconv.ParseFloat(o.count, 64)
	if err != nil || math.IsNaN(n) {
		return usageError{fmt.Sprintf("--count cannot be %q", o.count), fmt.Sprintf("a number from 1 to %d", oven.MostCount)}
	}
	h, err := oven.Count(n, t)
	if err != nil {
		return usageError{err.Error(), fmt.Sprintf("a number from 1 to %d", oven.MostCount)}
	}
	return r.ovenPage(o, &present.OvenSheet{Asked: h.Words, Heats: []oven.Heat{h}, Kind: o.in.value}, t)
}

func (r *run) ovenWords(o *ovenOptions, words string) error {
	t, err := r.loadTables()
	if err != nil {
		return err
	}
	when := oven.When{Year: o.year, Place: o.place.value}
	heats := oven.Read(words, t, when)
	if len(heats) == 0 {
		return usageError{fmt.Sprintf("%q tells no heat that we know", words), suggest(words, ovenWords(t), "an oven word like quick, degrees like 350 F, gas mark 4, a count of the hand, paper or flour; `assize tables ovens` lists them")}
	}
	return r.ovenPage(o, &present.OvenSheet{Asked: words, Heats: heats, Kind: o.in.value, When: when}, t)
}

// ovenWords are the oven words of the tables, for suggestions.
func ovenWords(t *reference.Tables) []string {
	var out []string
	for _, row := range t.Ovens {
		if row.Kind == oven.Word && row.Working {
			out = append(out, row.Words...)
		}
	}
	return out
}

func (r *run) ovenPage(o *ovenOptions, s *present.OvenSheet, t *reference.Tables) error {
	about := present.About{Version: version, Tables: t, OwnTables: r.tables}
	if o.format.value == formatJSON {
		return r.written(present.OvenJSON(r.Out, s, about))
	}
	return r.page(present.Oven(s, about), o.format.value)
}

// ovenJudged judges receipts for their ovens: few readings are enough, since
// nothing of the textures is told.
func (r *run) ovenJudged(o *ovenOptions, args []string, depth oven.Range, across float64, show func(*printer, *present.Sheet) error) error {
	how := judging{readings: ovenReadings, depth: depth, width: across}
	return r.each(args, o.kitchen, how, show, o.format.value)
}

// ovenReadings is how many readings a density and a class are taken over.
const ovenReadings = 100

func (r *run) ovenOf(o *ovenOptions, files []string, depth oven.Range, across float64) error {
	var pages []*present.Page
	err := r.ovenJudged(o, files, depth, across, func(p *printer, s *present.Sheet) error {
		if o.format.value == formatJSON {
			return present.BakingJSON(p.out, s, p.about, p.several)
		}
		pages = append(pages, present.Baking(s, p.about))
		return nil
	})
	return r.pages(pages, o.format.value, err)
}

func (r *run) ovenPlan(o *ovenOptions, files []string, depth oven.Range, across float64) error {
	timed, line, err := r.ovenLine(o)
	if err != nil {
		return err
	}
	sheet := &present.PlanSheet{Line: line, Clock: timed.Clock}
	var dishes []oven.Dish
	var caution []judge.Finding
	if len(files) > 0 {
		err := r.ovenJudged(o, files, depth, across, func(_ *printer, s *present.Sheet) error {
			d, why, ok := s.Report.Dish()
			if !ok {
				sheet.Others = append(sheet.Others, s.Report.Formula.Title+": "+why)
				return nil
			}
			dishes = append(dishes, d)
			for _, f := range s.Report.Findings {
				if f.Caution != "" {
					caution = append(caution, f)
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
		sheet.Plan = oven.Plan(line, dishes)
	}
	t, err := r.loadTables()
	if err != nil {
		return err
	}
	sheet.Cautions = caution
	about := present.About{Version: version, Tables: t, OwnTables: r.tables}
	if o.format.value == formatJSON {
		return r.written(present.PlanJSON(r.Out, sheet, about))
	}
	return r.page(present.Plan(sheet, about), o.format.value)
}

// ovenLine reads the readings, a file where there is one of that name, and
// lays the line through them.
func (r *run) ovenLine(o *ovenOptions) (oven.Timed, oven.Line, error) {
	if !(o.room > -20 && o.room < 60) {
		return oven.Timed{}, oven.Line{}, usageError{fmt.Sprintf("--room cannot be %g", o.room), "the heat of the room in C, about 18"}
	}
	name, text := "--readings", []byte(strings.ReplaceAll(o.readings, "=", " "))
	if info, err := os.Stat(o.readings); err == nil && !info.IsDir() {
		raw, err := readFile(o.readings)
		if err != nil {
			return oven.Timed{}, oven.Line{}, unreadable{fmt.Sprintf("the readings %q cannot be read: %v", o.readings, cause(err)), ""}
		}
		name, text = o.readings, raw
	}
	timed, faults := oven.ReadReadings(name, text)
	if len(faults) > 0 {
		return timed, oven.Line{}, r.show(faults)
	}
	line, err := oven.Fit(timed.Readings, o.room)
	if err != nil {
		return timed, line, unreadable{fmt.Sprintf("no line can be laid through the readings: %v", err), "read the shut oven twice or more, half an hour apart: 14:00 300 C, 14:30 275 C"}
	}
	return timed, line, nil
}
