package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/formula"
	"assize/formula/bench"
	"assize/formula/daybook"
	"assize/ratios/explain"
	"assize/reference"
	"assize/reference/fault"
)

const daybookLong = `Daybook lists what was baked and tasted, and shows how what was foretold has fared:
how often a thing said to be about 8 in 10 came so. From eight bakes on it says how
the odds would be drawn in or spread for this kitchen, and how that is undone.

FILE is a day-book; "assize explain --keep FILE" adds to it. --bake N writes the bench
record of bake N as it was kept, to explain it or to compare it again.

  $ assize daybook bench/day-book.yaml
  $ assize daybook --bake 2 bench/day-book.yaml

What somebody saw later of a bake, the next day say, is added to it in this way:

  assize daybook --bake 2 --by Anne --when "next day" --tasted weeping FILE

It is a plain file, one bake after another, and never written over: a later tasting
stands at the end, and what was tasted first is kept.`

type daybookOptions struct {
	format choice
	bake   int
	tasted string
	words  string
	by     string
	when   choice
}

func newDaybook(r *run) *cobra.Command {
	o := daybookOptions{format: choice{known: pageFormats, value: formatText}, when: choice{known: bench.Times}}
	cmd := &cobra.Command{
		Use:   "daybook FILE",
		Short: "list what was baked, and how what was foretold has fared",
		Long:  daybookLong,
		Args:  oneFile,
		RunE:  r.start(func(_ *cobra.Command, args []string) error { return r.daybook(&o, args[0]) }),
	}
	f := cmd.Flags()
	f.Var(&o.format, "format", "how the day-book is shown")
	f.IntVar(&o.bake, "bake", 0, "write the bench record of bake `N`, or add a later tasting to it")
	f.StringVar(&o.tasted, "tasted", "", "add what was tasted later of the bake, in `WORDS` parted by commas")
	f.StringVar(&o.words, "words", "", "what the taster said of it, in `WORDS` kept as they are")
	f.StringVar(&o.by, "by", notNamed, "who tasted it later: the `NAME` of a taster")
	f.Var(&o.when, "when", "when it was tasted later")
	return cmd
}

func (r *run) daybook(o *daybookOptions, name string) error {
	t, err := r.loadTables()
	if err != nil {
		return err
	}
	b, err := daybook.Load(name, t)
	if err != nil {
		return r.daybookError(name, err)
	}
	later := o.tasted != "" || o.words != ""
	if !later && (o.by != notNamed || o.when.value != "") {
		return usageError{"nothing was tasted", "`--tasted cakey`, or `--words` with what the taster said"}
	}
	if o.bake != 0 || later {
		text, ok := b.Record(o.bake)
		switch {
		case o.bake == 0:
			return usageError{"it is not said which bake was tasted", "`--bake N`; `assize daybook FILE` lists them"}
		case !ok:
			return usageError{fmt.Sprintf("there is no bake %d", o.bake), fmt.Sprintf("the day-book has %d", len(b.Entries))}
		case later:
			return r.tastedLater(o, name, &b.Entries[o.bake-1], t)
		}
		_, err := r.Out.Write(text)
		return r.written(err)
	}
	x := &present.DayBook{Book: b, Fare: b.Fared(t)}
	x.Adjustment, x.Adjusts = b.Adjustment(t)
	p := r.printer(o.format.value, false, present.About{Version: version, Tables: t, OwnTables: r.tables})
	if o.format.value == formatJSON {
		return r.written(present.DayBookJSON(r.Out, x, p.about))
	}
	return r.written(p.page(present.DayBookPage(x, p.about)))
}

// tastedLater adds what was tasted later of a bake to the day-book.
func (r *run) tastedLater(o *daybookOptions, name string, e *daybook.Entry, t *reference.Tables) error {
	f := e.Record.Formula
	signs, trouble := bench.Taste(o.tasted, "", f, t)
	if trouble != nil {
		return usageError{trouble.What, trouble.Hint}
	}
	seen := bench.Tasting{By: o.by, When: o.when.value, Words: o.words, Signs: signs}
	if err := daybook.KeepTasting(name, e.Bake, tastedOf(&seen, f), t); err != nil {
		return r.daybookError(name, err)
	}
	_, err := fmt.Fprintln(r.Out, present.KeptLater(e.Bake, name))
	return r.written(err)
}

// tastedOf is a tasting as the day-book keeps it.
func tastedOf(from *bench.Tasting, f *formula.Formula) daybook.Tasted {
	t := daybook.Tasted{By: from.By, When: from.When, Words: from.Words}
	for _, n := range from.Results() {
		t.Results = append(t.Results, daybook.Result{Part: f.Parts[n.Part].Name, Texture: n.Texture})
	}
	return t
}

// daybookError tells what is wrong with a day-book: its faults, or that it
// cannot be read or written.
func (r *run) daybookError(name string, err error) error {
	if faults, ok := errors.AsType[fault.List](err); ok {
		return r.show(faults)
	}
	if errors.Is(err, fs.ErrNotExist) {
		return unreadable{fmt.Sprintf("there is no day-book %q", name), "`assize explain FILE --tasted cakey --keep " + name + "` begins one"}
	}
	return unreadable{fmt.Sprintf("the day-book %q: %v", name, cause(err)), ""}
}

// entryOf is a bake as the day-book keeps it: what was foretold of it as it was
// made, and what each taster saw. Words given on the command line are those of
// a taster who is not named.
func entryOf(b *explain.Bake, said []explain.Seen) daybook.Entry {
	e := daybook.Entry{
		Title: b.Formula().Title, Version: version, Tables: reference.Edition, Readings: b.Report.Readings, Record: b.Record,
	}
	if e.Record == nil {
		e.Record = &bench.Record{Formula: b.Formula()}
	}
	e.Baked = e.Record.Baked
	for _, p := range explain.Predictions(b.Report) {
		x := daybook.Predicted{Part: p.Part, Kind: string(p.Kind), Likeliest: p.Likeliest}
		for _, s := range p.Shares {
			x.Shares = append(x.Shares, daybook.Share{Texture: s.Texture.ID, Share: thousandths(s.Share)})
		}
		e.Predicted = append(e.Predicted, x)
	}
	if len(said) > 0 {
		t := daybook.Tasted{By: notNamed}
		for _, s := range said {
			t.Results = append(t.Results, daybook.Result{Part: b.Formula().Parts[s.Part].Name, Texture: s.Texture.ID})
		}
		e.Tasted = append(e.Tasted, t)
	}
	for i := range e.Record.Tastings {
		e.Tasted = append(e.Tasted, tastedOf(&e.Record.Tastings[i], b.Formula()))
	}
	return e
}

// keptAlready is the number a bench record has in the day-book, word for word; 0
// when it is not there. A page without a record may be baked as often as one
// likes.
func (r *run) keptAlready(name string, b *explain.Bake, t *reference.Tables) int {
	if b.Record == nil {
		return 0
	}
	book, err := daybook.Load(name, t)
	if err != nil {
		return 0 // keeping tells what is wrong with it
	}
	for i := range book.Entries {
		if kept, ok := book.Record(i + 1); ok && strings.TrimSpace(string(kept)) == strings.TrimSpace(string(b.Record.Text())) {
			return i + 1
		}
	}
	return 0
}

// thousandths is a chance to three places, as it is kept.
func thousandths(share float64) decimal.Decimal {
	return decimal.New(int64(math.Round(share*1000)), -3)
}

// notNamed is what a taster is called whose words stand on the command line.
const notNamed = "not named"

// ofKitchen is the odds of a kitchen by its day-book, when it has bakes enough;
// nil when it has not, or there is no book yet.
func (r *run) ofKitchen(name string, t *reference.Tables) (*daybook.Adjustment, error) {
	b, err := daybook.Load(name, t)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, r.daybookError(name, err)
	}
	if a, ok := b.Adjustment(t); ok {
		return &a, nil
	}
	return nil, nil
}
