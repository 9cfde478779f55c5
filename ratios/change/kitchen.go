package change

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/reference"
)

// Exactly is a formula with every amount of each part multiplied, to the last
// figure. by holds a factor for each part. The words of the lines are left as
// they were; see ForKitchen.
func Exactly(f *formula.Formula, by []decimal.Decimal) *formula.Formula {
	out := *f
	out.Parts = slices.Clone(f.Parts)
	for i := range out.Parts {
		p := &out.Parts[i]
		p.Lines = slices.Clone(p.Lines)
		for k := range p.Lines {
			l := &p.Lines[k]
			l.Items = multiplied(l.Items, by[i])
			l.Either = slices.Clone(l.Either)
			for a := range l.Either {
				l.Either[a].Items = multiplied(l.Either[a].Items, by[i])
			}
		}
	}
	return &out
}

func multiplied(items []formula.Item, by decimal.Decimal) []formula.Item {
	out := slices.Clone(items)
	for i := range out {
		out[i].Amount.Number = out[i].Amount.Number.Mul(by)
	}
	return out
}

// Rounded is one ingredient of a batch as a kitchen measures it out.
type Rounded struct {
	Part int
	Name string
	Text string // the line as written
	// Exact and Is are grams by the factor and as measured out; both nothing
	// where the receipt gives no amount.
	Exact, Is reference.Span
	Counted   bool // eggs, lemons: by number
	// Trifle is under 1 part in 100 of its part, as spice is: how finely it is
	// measured changes no proportion worth the name.
	Trifle bool
	// NotGiven marks what the receipt gives no amount of.
	NotGiven bool
}

// Off is the error of the rounding, a share: .02 is 2 in 100 too much.
func (r *Rounded) Off() float64 {
	if !r.Exact.Likely.IsPositive() {
		return 0
	}
	return r.Is.Likely.DivRound(r.Exact.Likely, exactly).InexactFloat64() - 1
}

// Batch is a formula made larger or smaller and measured out.
type Batch struct {
	Formula *formula.Formula
	Text    []byte // its file
	Weighed *weigh.Weighed
	Items   []Rounded
	// Worst is the most that any proportion of two ingredients of a part is out
	// by, a share, trifles left aside: no ratio of a part can be out by more.
	Worst float64
}

// trifle is the share of its part under which an ingredient is one.
const trifle = .01

// ForKitchen measures out a formula that was multiplied: whole eggs where they
// come out whole, the book's measures where a common part of one will do, and
// else grams as a balance shows them. What it gives has been written as a file
// and read back. exact must weigh without fault; finest is the error, a share,
// up to which an egg or a measure is rather rounded than weighed.
func ForKitchen(exact *formula.Formula, t *reference.Tables, finest float64) (*Batch, error) {
	w, faults := weigh.Weigh(exact, t)
	if len(faults) > 0 {
		return nil, faults
	}
	r := &rounding{t: t, f: exact, finest: finest, reader: &receipt.Reader{
		Tables: t, Year: exact.Year, Place: exact.Place, KitchenYear: exact.Kitchen.Year, KitchenPlace: exact.Kitchen.Place,
	}}
	out := *exact
	out.Parts = slices.Clone(exact.Parts)
	for i := range out.Parts {
		p := &out.Parts[i]
		lines, err := r.lines(p, w.Parts[i].Items)
		if err != nil {
			return nil, err
		}
		p.Lines, p.Take = lines, ""
	}
	text, err := file.Write(&out)
	if err != nil {
		return nil, err
	}
	back, faults := file.ReadWith(exact.File, text, t, file.Defaults{})
	if len(faults) > 0 {
		return nil, fmt.Errorf("the batch cannot be written so that it is read again: %w", faults)
	}
	back.Kitchen, back.Measures = exact.Kitchen, exact.Measures
	for i := range back.Parts {
		back.Parts[i].From = exact.Parts[i].From
	}
	again, faults := weigh.Weigh(back, t)
	if len(faults) > 0 {
		return nil, faults
	}
	b := &Batch{Formula: back, Text: text, Weighed: again}
	if err := b.compare(w); err != nil {
		return nil, err
	}
	return b, nil
}

// compare sets every item as measured out beside what the factor makes it.
func (b *Batch) compare(w *weigh.Weighed) error {
	for i := range b.Weighed.Parts {
		is, was := b.Weighed.Parts[i].Items, w.Parts[i].Items
		if len(is) != len(was) {
			return fmt.Errorf("%s: %d ingredients were written and %d are read", b.Formula.Parts[i].Name, len(was), len(is))
		}
		total := w.Parts[i].Total(w.Unknowns).Likely.InexactFloat64()
		least, most := math.Inf(1), math.Inf(-1)
		for k := range is {
			if is[k].Ingredient != was[k].Ingredient || is[k].State != was[k].State {
				return fmt.Errorf("%s: %s was written and %s is read", b.Formula.Parts[i].Name, was[k].Ingredient.Name, is[k].Ingredient.Name)
			}
			one := Rounded{
				Part: i, Name: is[k].Ingredient.Name, Text: textOf(&b.Formula.Parts[i].Lines[is[k].Line], is[k].When), Exact: was[k].Grams, Is: is[k].Grams,
				Counted: is[k].Amount.Measure == "" && is[k].Amount.WeightOf == "" && !is[k].Amount.Parts, NotGiven: is[k].State != formula.Stated,
			}
			one.Trifle = one.NotGiven || was[k].Grams.Likely.InexactFloat64() < trifle*total
			if !one.Trifle && was[k].Used(w.Unknowns) {
				least, most = min(least, one.Off()), max(most, one.Off())
			}
			b.Items = append(b.Items, one)
		}
		if most > least {
			b.Worst = max(b.Worst, (1+most)/(1+least)-1)
		}
	}
	return nil
}

// textOf is the line an item stands on, or its side of a line in doubt.
func textOf(l *formula.Line, when *weigh.When) string {
	switch {
	case when == nil:
		return l.Text
	case when.Way == 0:
		return l.Either[0].Text
	}
	return "or " + l.Either[when.Way].Text
}

type rounding struct {
	t      *reference.Tables
	f      *formula.Formula
	reader *receipt.Reader
	finest float64
}

// lines writes the lines of a part anew, one ingredient a line; a line in doubt
// stays in doubt.
func (r *rounding) lines(p *formula.Part, items []weigh.Item) ([]formula.Line, error) {
	var out []formula.Line
	at := 0
	for _, l := range p.Lines {
		if len(l.Either) == 0 {
			for _, it := range l.Items {
				one, err := r.line(l.Text, it, &items[at], len(l.Items) == 1)
				if err != nil {
					return nil, err
				}
				out = append(out, one)
				at++
			}
			continue
		}
		doubt := formula.Line{Why: l.Why}
		for _, a := range l.Either {
			if len(a.Items) != 1 {
				return nil, fmt.Errorf("%q is in doubt between several ingredients at once; write a line for each, then it can be scaled", l.Text)
			}
			one, err := r.line(a.Text, a.Items[0], &items[at], true)
			if err != nil {
				return nil, err
			}
			at++
			doubt.Either = append(doubt.Either, formula.Alternative{Text: one.Text, Items: one.Items, Odds: a.Odds})
		}
		texts := make([]string, len(doubt.Either))
		for i, a := range doubt.Either {
			texts[i] = a.Text
		}
		doubt.Text, doubt.Items = strings.Join(texts, " or "), doubt.Either[0].Items
		out = append(out, doubt)
	}
	return out, nil
}

// line writes one ingredient as a kitchen measures it.
func (r *rounding) line(book string, it formula.Item, on *weigh.Item, alone bool) (formula.Line, error) {
	if it.Amount.State != formula.Stated {
		return r.unstated(book, it, alone)
	}
	for _, a := range r.ways(&it, on) {
		want := it
		want.Amount = a
		want.Amount.Words = it.Amount.Words
		if l, ok := r.worded(book, want, on.Ingredient, alone); ok {
			return l, nil
		}
	}
	return formula.Line{}, fmt.Errorf("%s of %q cannot be put in words that are read so", on.Ingredient.Name, book)
}

func (r *rounding) unstated(book string, it formula.Item, alone bool) (formula.Line, error) {
	if alone {
		return formula.Line{Text: book, Items: []formula.Item{it}}, nil
	}
	for _, text := range []string{it.Name + ", to taste", it.Name + ", quantity not given", it.Name} {
		if l, troubles := r.reader.Line(text); len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) {
			return l, nil
		}
	}
	return formula.Line{}, fmt.Errorf("%s of %q cannot be written by itself", it.Name, book)
}

// The finest common part of a measure that a kitchen measures out.
var partsOf = map[string]int64{
	"pint": 4, "quart": 8, "gallon": 8, "cup": 8, "gill": 2, "tablespoon": 2, "teaspoon": 4, "wineglass": 4, "glass": 4, "teacup": 4, "breakfastcup": 4,
}

// weights are measures of weight, in grams for one; they are told in grams when
// they do not come out even.
var weights = map[string]bool{"ounce": true, "pound": true, "drachm": true, "g": true, "kg": true, "ml": false}

// ways are the amounts an item may be measured out as, the best first.
func (r *rounding) ways(it *formula.Item, on *weigh.Item) []formula.Amount {
	var out []formula.Amount
	a := it.Amount
	with := func(parts int64) {
		n := reference.Span{Low: nearest(a.Number.Low, parts), Likely: nearest(a.Number.Likely, parts), High: nearest(a.Number.High, parts)}
		off := math.Inf(1)
		if n.Low.IsPositive() {
			off = math.Abs(n.Likely.DivRound(a.Number.Likely, exactly).InexactFloat64() - 1)
		}
		if off <= r.finest {
			b := a
			b.Number = n
			out = append(out, b)
		}
	}
	switch {
	case a.Parts:
		b := a
		b.Number = reference.Span{Low: plain(a.Number.Low.Round(4)), Likely: plain(a.Number.Likely.Round(4)), High: plain(a.Number.High.Round(4))}
		return append(out, b)
	case a.WeightOf != "":
		with(1)
	case a.Measure == "":
		with(1)
		if a.Each != "egg" {
			with(2)
			with(4)
		}
	case a.Measure == "g" || a.Measure == "kg" || a.Measure == "ml" || a.Measure == "litre":
	default:
		parts, ok := partsOf[a.Measure]
		switch {
		case ok:
			with(1)
			with(2)
			with(4)
			with(parts)
		case weights[a.Measure]:
			with(1) // a pound, two ounces: the book's own where it comes out even
		default:
			with(1)
			with(2)
			with(4)
		}
	}
	// By weight, with the doubt there is of it only where the number is in doubt.
	g := formula.Amount{Measure: "g", Number: rounded(reference.Span{Low: on.Grams.Likely, Likely: on.Grams.Likely, High: on.Grams.Likely})}
	if !a.Number.IsExact() && a.Number.Likely.IsPositive() {
		each := on.Grams.Likely.DivRound(a.Number.Likely, exactly)
		g.Number = rounded(a.Number.Mul(each))
	}
	return append(out, g)
}

// nearest is the nearest of so many parts of 1.
func nearest(n decimal.Decimal, parts int64) decimal.Decimal {
	p := decimal.NewFromInt(parts)
	return plain(n.Mul(p).Round(0).DivRound(p, 3)) // an eighth has three places
}

// plain is a number without noughts at its end.
func plain(n decimal.Decimal) decimal.Decimal { return decimal.RequireFromString(n.String()) }

// rounded is grams as a balance shows them: to five from 200 g, to one from 20,
// to a half from 10, to a tenth from 1, to half of that below.
func rounded(s reference.Span) reference.Span {
	at := func(g decimal.Decimal) decimal.Decimal {
		step := decimal.RequireFromString("0.05")
		for _, from := range []struct{ g, step string }{{"1", "0.1"}, {"10", "0.5"}, {"20", "1"}, {"200", "5"}} {
			if g.GreaterThanOrEqual(decimal.RequireFromString(from.g)) {
				step = decimal.RequireFromString(from.step)
			}
		}
		out := g.DivRound(step, exactly).Round(0).Mul(step)
		if out.IsZero() {
			return step
		}
		return out
	}
	return reference.Span{Low: at(s.Low), Likely: at(s.Likely), High: at(s.High)}
}

// worded finds words for an ingredient that are read as just that, the book's
// own with another amount where they will do.
func (r *rounding) worded(book string, it formula.Item, ing *reference.Ingredient, alone bool) (formula.Line, bool) {
	n := formula.Numeral(it.Amount.Number.Likely, 8)
	if it.Amount.Measure == "g" {
		n = it.Amount.Number.Likely.String()
	}
	if !it.Amount.Number.IsExact() {
		n = it.Amount.Number.Low.String() + " to " + it.Amount.Number.High.String()
	}
	measure := it.Amount.Measure
	amount := n
	single := !it.Amount.Number.High.GreaterThan(decimal.NewFromInt(1))
	if measure != "" {
		amount += " " + plural(measure, it.Amount.Number.High)
	}
	form := ""
	if it.Form != "" {
		form = ", " + it.Form
	}
	var tries []string
	if words := it.Amount.Words; alone && words != "" && strings.Contains(book, words) {
		if strings.Contains(book, words+". ") { // the stop of "lb." goes with it
			words += "."
		}
		if each := it.Amount.Each; measure == "" && each != "" && single { // "1 egg", not "1 eggs"
			tries = append(tries, strings.Replace(strings.Replace(book, words, amount, 1), each+"s", each, 1))
		}
		tries = append(tries, strings.Replace(book, words, amount, 1), strings.Replace(book, words, amount+" of", 1))
	}
	switch {
	case it.Amount.WeightOf != "":
		tries = append(tries, fmt.Sprintf("the weight of %s eggs in %s", n, it.Name))
	case it.Amount.Parts:
		tries = append(tries, n+" parts "+it.Name+form)
	case measure != "":
		for _, name := range []string{it.Name, ing.Name} {
			tries = append(tries, amount+" of "+name+form, amount+" "+name+form)
		}
		tries = append(tries, amount+" of the "+it.Form+" of "+it.Name, amount+" of "+it.Form+" of "+it.Name)
	default:
		each := it.Amount.Each
		named := it.Name
		if single {
			named = strings.TrimSuffix(named, "s")
		} else {
			each += "s"
		}
		for _, many := range []string{named, each} {
			if it.Form != "" && !strings.Contains(it.Form, ",") {
				tries = append(tries, "the "+it.Form+" of "+n+" "+many)
			}
			tries = append(tries, "the juice of "+n+" "+many, "the grated rind of "+n+" "+many, "the rind of "+n+" "+many)
		}
		yolk, white := "the yolks of ", "the whites of "
		if single {
			yolk, white = "the yolk of ", "the white of "
		}
		tries = append(tries, yolk+n+" "+each, white+n+" "+each, n+" "+named+form, n+" "+each+form, n+" "+it.Name+form, n+" "+ing.Name+form)
	}
	for _, text := range tries {
		if l, troubles := r.reader.Line(text); len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) && l.Items[0].Form == it.Form {
			return formula.Line{Text: l.Text, Items: l.Items}, true
		}
	}
	// Field by field: then it stands so in the file too.
	figures := it.Amount.Number.Likely.String()
	if !it.Amount.Number.IsExact() {
		figures = n
	}
	for _, of := range []string{it.Name, ing.Name, strings.ReplaceAll(ing.ID, "_", " ")} {
		if it.Amount.Size != "" || it.Amount.Fill != "" {
			break // for which there is no field
		}
		p := receipt.Plain{Amount: figures, Unit: measure, Of: of, Form: it.Form}
		if l, troubles := r.reader.Plain(p); len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) {
			fields := it
			fields.Name = of
			return formula.Line{Items: []formula.Item{fields}}, true
		}
	}
	// The words about it may be what does not go with a weight.
	for _, text := range tries {
		if l, troubles := r.reader.Line(text); len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) {
			return formula.Line{Text: l.Text, Items: l.Items}, true
		}
	}
	for _, name := range []string{it.Name, ing.Name} {
		if l, troubles := r.reader.Line(amount + " of " + name); len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) {
			return formula.Line{Text: l.Text, Items: l.Items}, true
		}
	}
	return formula.Line{}, false
}

// plural is a measure of more than one; short forms have none.
func plural(measure string, n decimal.Decimal) string {
	if n.LessThanOrEqual(decimal.NewFromInt(1)) {
		return measure
	}
	return reference.Plural(measure)
}

// same reports whether a line read means the item wanted.
func same(got, want *formula.Item) bool {
	a, b := &got.Amount, &want.Amount
	return got.Ingredient == want.Ingredient && a.State == b.State && a.WeightOf == b.WeightOf && a.Parts == b.Parts &&
		a.Measure == b.Measure && (a.Each == b.Each || b.Measure != "") && a.Fill == b.Fill && a.Size == b.Size &&
		near(a.Number.Low, b.Number.Low) && near(a.Number.High, b.Number.High)
}

func near(a, b decimal.Decimal) bool { return a.Sub(b).Abs().LessThan(decimal.New(1, -6)) }
