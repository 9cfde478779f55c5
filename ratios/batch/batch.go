// Package batch makes more or less of a receipt: to fill a dish, to a number of
// eggs, by a factor, to a weight, or the smallest trial that is worth baking.
// Every batch is measured out as a kitchen would, written as a file, read back
// and judged before it is given.
package batch

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/change"
	"assize/ratios/dish"
	"assize/ratios/judge"
)

// Tolerance is how far a proportion may be out by measuring, a share, unless
// told otherwise.
const Tolerance = .05

// The bounds of a factor: beyond them a figure has been misread.
var (
	Least = decimal.RequireFromString("0.01")
	Most  = decimal.NewFromInt(100)
)

// Wish is the batch that is wanted: one of a number of eggs, a factor, a weight
// or a trial; else as much as fills the dish.
type Wish struct {
	Eggs  int
	By    decimal.Decimal
	Grams decimal.Decimal // of the filling; of the paste where there is no other part
	Trial bool
	// Dish is the dish to fill, nil for none. A trial takes it for the full-size
	// one.
	Dish *dish.Found
	// Tolerance is the most a proportion may be out by, a share; 0 for the usual.
	Tolerance float64
}

// Batch is a receipt made larger or smaller.
type Batch struct {
	change.Batch
	By decimal.Decimal // of the filling, or of the only part
	// PasteBy is the factor of the paste, which follows the dish.
	PasteBy decimal.Decimal
	Report  *judge.Report
	// In is the batch in its dish, nil when none is known.
	In        *dish.Fit
	Tolerance float64
	Trial     *Trial // nil for other batches
}

// Within reports whether every proportion keeps to the tolerance.
func (b *Batch) Within() bool { return b.Worst <= b.Tolerance }

// Error is a batch that cannot be made as wished.
type Error struct{ What, Hint string }

func (e *Error) Error() string { return e.What }

// Make makes a batch of a judged receipt.
func Make(j *judge.Judge, r *judge.Report, w Wish) (*Batch, error) {
	own := *j
	own.Readings, own.Remedies = min(j.Readings, fewReadings), false
	m := &maker{j: &own, r: r, wish: w}
	if m.wish.Tolerance <= 0 {
		m.wish.Tolerance = Tolerance
	}
	if m.main = r.MainPart(); m.main < 0 {
		m.main = 0
	}
	if w.Trial {
		return m.trial()
	}
	by, err := m.factor()
	if err != nil {
		return nil, err
	}
	paste := by
	if fit := m.inDish(); fit != nil && m.fills() {
		paste = m.pasteFor(fit, by)
	}
	b, err := m.make(by, paste)
	if err != nil {
		return nil, err
	}
	b.In = b.Report.InDish
	if w.Dish != nil {
		fit := dish.Into(w.Dish.Dish, w.Dish.Count, b.Report.LoadOf())
		b.In = &fit
	}
	return b, nil
}

// fewReadings are enough for volumes and their ranges.
const fewReadings = 300

type maker struct {
	j    *judge.Judge
	r    *judge.Report
	wish Wish
	main int
}

// fills reports that the batch is to fill the dish, and nothing else is said.
func (m *maker) fills() bool {
	return m.wish.Dish != nil && m.wish.Eggs == 0 && m.wish.By.IsZero() && m.wish.Grams.IsZero()
}

func (m *maker) inDish() *dish.Fit {
	if m.wish.Dish == nil {
		return nil
	}
	fit := dish.Into(m.wish.Dish.Dish, m.wish.Dish.Count, m.r.LoadOf())
	return &fit
}

// places is how finely a factor is carried: far finer than a kitchen weighs.
const places = 6

// factor is what the filling is multiplied by.
func (m *maker) factor() (decimal.Decimal, error) {
	var by decimal.Decimal
	switch w := m.wish; {
	case w.Eggs > 0:
		n := m.eggs()
		if !n.IsPositive() {
			return by, &Error{fmt.Sprintf("there is no egg by number in the %s", m.r.Parts[m.main].Name), "scale it --by a factor or to --grams"}
		}
		by = decimal.NewFromInt(int64(w.Eggs)).DivRound(n, 2*places)
	case !w.By.IsZero():
		by = w.By
	case !w.Grams.IsZero():
		total := m.r.Parts[m.main].Profile.Total.Likely
		if !total.IsPositive() {
			return by, &Error{fmt.Sprintf("nothing in the %s has a weight", m.r.Parts[m.main].Name), ""}
		}
		by = w.Grams.DivRound(total, 2*places)
	case w.Dish != nil:
		fit := m.inDish()
		switch {
		case fit.Verdict == dish.NotKnown:
			return by, &Error{"what the filling comes to is not known, so it cannot be made to fill a dish", "a receipt in baker's parts, or of paste alone, has no volume"}
		case !(fit.RoomML.Likely > 0):
			return by, &Error{fmt.Sprintf("lined with paste the %s has no room left", fit.Name), ""}
		}
		by = decimal.NewFromFloat(1 / fit.Full).Round(places)
	default:
		return by, errors.New("no batch is wished for")
	}
	if by.LessThan(Least) || by.GreaterThan(Most) {
		return by, &Error{fmt.Sprintf("that would be %s times the receipt", by.Round(4)), fmt.Sprintf("from %s to %s times", Least, Most)}
	}
	return by, nil
}

// eggs is how many eggs, or yolks or whites where there are no whole ones, the
// filling takes by number: the most that one line names.
func (m *maker) eggs() decimal.Decimal {
	most := decimal.Zero
	whole := false
	for _, it := range m.counts(m.main) {
		is := it.Ingredient == "egg_whole"
		if is && !whole {
			whole, most = true, decimal.Zero
		}
		if is == whole {
			most = decimal.Max(most, it.Amount.Number.Likely)
		}
	}
	return most
}

// counts are the eggs, yolks and whites of a part that are given by number.
func (m *maker) counts(part int) []formula.Item {
	var out []formula.Item
	for _, l := range m.r.Formula.Parts[part].Lines {
		for _, it := range l.Items {
			if it.Amount.State == formula.Stated && it.Amount.Each == "egg" && it.Amount.Measure == "" {
				out = append(out, it)
			}
		}
	}
	return out
}

// pasteFor is the factor of the paste for what a dish needs.
func (m *maker) pasteFor(fit *dish.Fit, otherwise decimal.Decimal) decimal.Decimal {
	if !(fit.PasteNeeded.Likely > 0 && fit.PasteMade.Likely > 0) {
		return otherwise
	}
	by := decimal.NewFromFloat(fit.PasteNeeded.Likely / fit.PasteMade.Likely).Round(places)
	return decimal.Max(Least, decimal.Min(by, Most))
}

// make measures a batch out and judges it.
func (m *maker) make(by, paste decimal.Decimal) (*Batch, error) {
	f := m.r.Formula
	list := make([]decimal.Decimal, len(f.Parts))
	for i := range list {
		list[i] = by
		if f.Parts[i].Kind == formula.Pastry && i != m.main {
			list[i] = paste
		}
	}
	exact := change.Exactly(f, list)
	exact.Title, exact.Ancestry = descent(f, by)
	if m.wish.Dish != nil {
		exact.Dish = m.wish.Dish.Words()
	}
	// Two roundings, one up and one down, must keep to the tolerance together.
	k, err := change.ForKitchen(exact, m.j.Tables, m.wish.Tolerance*.45)
	if err != nil {
		return nil, err
	}
	report, faults := m.j.Check(k.Formula)
	if len(faults) > 0 {
		return nil, fmt.Errorf("the batch was written and cannot be checked: %w", faults)
	}
	return &Batch{Batch: *k, By: by, PasteBy: paste, Report: report, Tolerance: m.wish.Tolerance}, nil
}

// descent is the title of a batch and where it comes from.
func descent(f *formula.Formula, by decimal.Decimal) (string, *formula.Ancestry) {
	a := &formula.Ancestry{Of: f.Title, Page: f.Source}
	if was := f.Ancestry; was != nil {
		c := *was
		c.Change = append([]string(nil), was.Change...)
		a = &c
	}
	a.Change = append(a.Change, "made "+change.Portion(by))
	return a.Of + ", " + change.Portion(by), a
}
