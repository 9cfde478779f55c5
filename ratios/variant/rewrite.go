package variant

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/reference"
)

// rewrite is the formula of a point: the book's, with the lines and steps that
// are changed written anew, and its ancestry kept.
func (s *search) rewrite(p point) (*formula.Formula, error) {
	book := s.in.Weighed.Formula
	f := *book
	f.Parts = slices.Clone(f.Parts)
	part := &f.Parts[s.in.Part]
	part.Lines = slices.Clone(part.Lines[:s.lines])
	part.Steps = slices.Clone(part.Steps)
	c := s.change(&p)
	r := &rewriter{search: s, c: c, reader: &receipt.Reader{
		Tables: s.judge.Tables, Year: book.Year, Place: book.Place, KitchenYear: book.Kitchen.Year, KitchenPlace: book.Kitchen.Place,
	}}
	lines, err := r.lines(part.Lines, p)
	if err != nil {
		return nil, err
	}
	part.Lines = lines
	part.Steps = r.steps(part.Steps, p)
	r.fire(&f)
	f.Ancestry = ancestry(book)
	for _, ch := range s.changes(p, false) {
		f.Ancestry.Change = append(f.Ancestry.Change, ch.String())
	}
	f.Title = f.Ancestry.Of + ", changed"
	// It stands in no book any more: what it took from another receipt it holds.
	return &f, nil
}

// ancestry is that of the book's formula, begun when it has none.
func ancestry(book *formula.Formula) *formula.Ancestry {
	if a := book.Ancestry; a != nil {
		out := *a
		out.Change = slices.Clone(a.Change)
		return &out
	}
	a := &formula.Ancestry{Of: book.Title, Page: book.Source}
	for i := range book.Parts {
		for _, l := range book.Parts[i].Lines {
			if l.Why != "" {
				a.Doubt = append(a.Doubt, fmt.Sprintf("%s: %s", l.Text, l.Why))
			}
		}
	}
	return a
}

// String tells a change in a few words: "butter: 10 oz instead of 8 oz".
func (c *Change) String() string {
	switch c.Kind {
	case Done:
		return c.Text
	case Added:
		return fmt.Sprintf("%s put in: %s", c.Item.Name, c.Is)
	case Stated:
		return fmt.Sprintf("%s: %s, where the book gives no amount", c.Item.Name, c.Is)
	case LeftOut:
		return fmt.Sprintf("%s: left out, instead of %s", c.Item.Name, c.Was)
	}
	return fmt.Sprintf("%s: %s instead of %s", c.Item.Name, c.Is, c.Was)
}

// String is the amount as the kitchen measures it.
func (q Quantity) String() string {
	n, measure := told(q.Number, q.Measure, q.Grams.Likely)
	if q.Counted && measure == "egg" || measure == "" {
		return n
	}
	if n != "1" && !strings.Contains(n, "/") || strings.Contains(n, " ") {
		measure = reference.Plural(measure)
	}
	return n + " " + measure
}

// Bare is the number alone, as a cook would say it.
func (q Quantity) Bare() string {
	if q.Measure == "g" {
		return toTheGram(q.Number)
	}
	return formula.Numeral(q.Number, 16)
}

// told is an amount as a cook measures it: in the book's measure where the
// number is one that can be measured out by it, else weighed out to the gram,
// and what is under ten grams to the half.
func told(n decimal.Decimal, measure string, grams decimal.Decimal) (string, string) {
	switch measure {
	case "":
		return formula.Numeral(n, 16), ""
	case "g":
		return toTheGram(n), "g"
	}
	if f, ok := finer[measure]; ok && !n.IsInteger() {
		n, measure = n.Mul(decimal.NewFromInt(f.times)), f.as
	}
	parts, ok := broken[measure]
	if !ok {
		parts = 2
	}
	if n.Mul(decimal.NewFromInt(parts)).IsInteger() || !grams.IsPositive() {
		return formula.Numeral(n, 16), measure
	}
	return toTheGram(grams), "g"
}

func toTheGram(g decimal.Decimal) string {
	if g.LessThan(decimal.NewFromInt(10)) {
		return g.Mul(decimal.NewFromInt(2)).Round(0).Div(decimal.NewFromInt(2)).String()
	}
	return g.Round(0).String()
}

// finer are measures whose broken numbers are better told in a smaller one.
var finer = map[string]struct {
	as    string
	times int64
}{"pound": {"ounce", 16}}

// broken is into how many parts a kitchen measures out a measure.
var broken = map[string]int64{
	"ounce": 4, "pound": 1, "ml": 1, "cup": 8, "pint": 4, "quart": 8, "gill": 2, "tablespoon": 2, "teaspoon": 4,
}

type rewriter struct {
	*search
	c      change.Change
	reader *receipt.Reader
}

// lines are the lines of the part as changed, those put in at the end.
func (r *rewriter) lines(book []formula.Line, p point) ([]formula.Line, error) {
	wp := &r.in.Weighed.Parts[r.in.Part]
	at := map[int]step{}
	for i := range p.n {
		one := &r.list[p.items[i]]
		at[one.at] = one.steps[p.steps[i]-1]
	}
	var out []formula.Line
	for i, l := range book {
		items := lineItems(wp, i)
		changed := slices.ContainsFunc(items, func(n int) bool { _, ok := at[n]; return ok })
		if !changed {
			out = append(out, r.undone(l, i))
			continue
		}
		for place, n := range items {
			it := l.Items[place]
			st, ok := at[n]
			grams := decimal.Zero
			if ok {
				grams = st.grams
			}
			switch {
			case ok && st.stated:
				it.Amount = formula.Amount{Number: reference.Exact(st.grams), Measure: "g"}
			case ok && st.number.IsZero():
				continue
			case ok:
				it.Amount.Number = reference.Exact(st.number)
			}
			one, err := r.line(l, it, wp.Items[n].Ingredient, grams, len(items) == 1, i)
			if err != nil {
				return nil, err
			}
			out = append(out, one)
		}
	}
	for _, n := range slices.Sorted(maps.Keys(at)) {
		st := at[n]
		if wp.Items[n].Line < len(book) {
			continue
		}
		a := r.addition(&wp.Items[n])
		l := a.line(r.judge.Tables)
		it := l.Items[0]
		it.Amount.Number = reference.Exact(st.number)
		one, err := r.line(l, it, wp.Items[n].Ingredient, st.grams, true, -1)
		if err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// line writes one ingredient with its amount, in words that are read as it.
func (r *rewriter) line(book formula.Line, it formula.Item, ing *reference.Ingredient, grams decimal.Decimal, whole bool, at int) (formula.Line, error) {
	n, measure := formula.Numeral(it.Amount.Number.Likely, 16), it.Amount.Measure
	switch {
	case !it.Amount.Number.IsExact():
		n = formula.Numeral(it.Amount.Number.Low, 16) + " to " + formula.Numeral(it.Amount.Number.High, 16)
	case grams.IsPositive():
		n, measure = told(it.Amount.Number.Likely, measure, grams)
		if measure != it.Amount.Measure || measure == "g" {
			number, err := receipt.ParseNumber(n)
			if err != nil {
				return formula.Line{}, err
			}
			it.Amount.Number, it.Amount.Measure, it.Amount.Fill, it.Amount.Size = number, measure, "", ""
		}
	}
	form := it.Form
	if form != "" {
		form = ", " + form
	}
	var tries []string
	if words := it.Amount.Words; whole && words != "" {
		amount := n
		if measure != "" {
			amount += " " + measure
			if n != "1" && (!strings.Contains(n, "/") || strings.Contains(n, " ")) {
				amount = n + " " + reference.Plural(measure)
			}
		}
		for _, text := range r.phrasings(book.Text, at) {
			tries = append(tries, strings.Replace(text, words, amount, 1), strings.Replace(text, words, n, 1))
		}
	}
	many := n != "1" && !(strings.Contains(n, "/") && !strings.Contains(n, " "))
	switch {
	case measure != "":
		if many {
			m := reference.Plural(measure)
			tries = append(tries, n+" "+m+" of "+it.Name+form, n+" "+m+" "+it.Name+form)
		}
		tries = append(tries, n+" "+measure+" of "+it.Name+form, n+" "+measure+" "+it.Name+form, n+" "+measure+" of "+ing.Name+form, n+" "+measure+" of "+ing.Name)
	case it.Amount.WeightOf != "":
		tries = append(tries, fmt.Sprintf("the weight of %s %ss in %s", n, it.Amount.WeightOf, it.Name))
	case it.Amount.Parts:
		tries = append(tries, n+" parts "+it.Name+form)
	default:
		each := it.Amount.Each
		if many {
			tries = append(tries, n+" "+it.Name+"s"+form)
		}
		tries = append(tries, n+" "+it.Name+form, n+" "+it.Name+"s"+form, n+" "+ing.Name+form, n+" "+ing.Name+"s",
			"the juice of "+n+" "+each+"s", "the grated rind of "+n+" "+each+"s", "the rind of "+n+" "+each+"s",
			"the juice of "+n+" "+each, "the grated rind of "+n+" "+each,
			n+" yolks of eggs", n+" whites of eggs", n+" "+each+"s", n+" "+each)
	}
	for _, text := range tries {
		if strings.Contains(text, "(") {
			continue // brackets are for asides, and a name in them is no name
		}
		l, troubles := r.reader.Line(text)
		if len(troubles) == 0 && len(l.Items) == 1 && same(&l.Items[0], &it) {
			return l, nil
		}
	}
	for _, form := range []string{it.Form, ""} {
		unit := measure
		if unit == "" {
			unit = "each"
		}
		for _, of := range []string{it.Name, ing.Name, strings.ReplaceAll(ing.ID, "_", " ")} {
			fields := receipt.Plain{Amount: n, Unit: unit, Of: of, Form: form}
			l, troubles := r.reader.Plain(fields)
			if len(troubles) > 0 || len(l.Items) != 1 || !same(&l.Items[0], &it) {
				continue
			}
			l.Notes = nil
			if again, troubles := r.reader.Line(l.Text); len(troubles) > 0 || !sameAll(again.Items, l.Items) {
				l.Notes = []string{file.FieldsNote(l.Text, fields)}
			}
			return l, nil
		}
	}
	return formula.Line{}, fmt.Errorf("%s of %s cannot be put in words that are read so", n, it.Name)
}

// same reports whether a line read means the item wanted.
func same(got, want *formula.Item) bool {
	a, b := &got.Amount, &want.Amount
	if b.State != formula.Stated {
		return got.Ingredient == want.Ingredient && a.State == b.State
	}
	if got.Ingredient != want.Ingredient || a.State != b.State || a.WeightOf != b.WeightOf || a.Parts != b.Parts {
		return false
	}
	if a.Measure != b.Measure || a.Each != b.Each || a.Fill != b.Fill || a.Size != b.Size {
		return false
	}
	const near = 6
	return a.Number.Likely.Sub(b.Number.Likely).Abs().LessThan(decimal.New(1, -near))
}

// drops reports whether a token of method raises a flag that is taken away.
func (r *rewriter) drops(method string) bool {
	row, ok := r.judge.Tables.Method(method)
	return ok && slices.ContainsFunc(row.Sets, func(f string) bool { return slices.Contains(r.c.Drop, formula.Flag(f)) })
}

// phrasings are the words of a line with what is not done any more taken out,
// then as they are.
func (r *rewriter) phrasings(text string, line int) []string {
	out := text
	for _, tok := range r.in.Method.Tokens {
		if tok.Where == formula.OnLine && tok.Line == line && r.drops(tok.Method) {
			out = cut(out, tok.Words)
		}
	}
	if out == text {
		return []string{text}
	}
	return []string{out, text}
}

// cut takes words out of a text, with the comma before them.
func cut(text, words string) string {
	i := strings.Index(strings.ToLower(text), strings.ToLower(words))
	if i < 0 {
		return text
	}
	before := strings.TrimRight(text[:i], " ,(")
	after := strings.TrimLeft(text[i+len(words):], " )")
	return strings.TrimSpace(before + " " + after)
}

// undone is a line whose amount stays, without words of what is not done any
// more.
func (r *rewriter) undone(l formula.Line, at int) formula.Line {
	if len(l.Either) > 0 {
		return l
	}
	if !slices.ContainsFunc(r.in.Method.Tokens, func(tok formula.Token) bool {
		return tok.Where == formula.OnLine && tok.Line == at && r.drops(tok.Method)
	}) {
		return l
	}
	if text := r.phrasings(l.Text, at)[0]; text != l.Text {
		if got, troubles := r.reader.Line(text); len(troubles) == 0 && sameAll(got.Items, l.Items) {
			return got
		}
	}
	if len(l.Items) != 1 {
		return l
	}
	switch it := &l.Items[0]; it.Amount.State {
	case formula.NotGiven:
		fields := receipt.Plain{Of: it.Name}
		if got, troubles := r.reader.Plain(fields); len(troubles) == 0 && sameAll(got.Items, l.Items) {
			got.Notes = []string{file.FieldsNote(got.Text, fields)}
			return got
		}
	case formula.Enough:
		if got, troubles := r.reader.Line("enough " + it.Name); len(troubles) == 0 && sameAll(got.Items, l.Items) {
			return got
		}
	}
	return l
}

func sameAll(got, want []formula.Item) bool {
	return slices.EqualFunc(got, want, func(a, b formula.Item) bool { return same(&a, &b) })
}

// steps are the steps with what is done otherwise in the place of what was.
func (r *rewriter) steps(book []string, p point) []string {
	var anew []string
	for i, w := range r.ways {
		if p.ways>>i&1 == 1 && w.Step != "" {
			anew = append(anew, w.Step)
		}
	}
	boiled := slices.Contains(r.c.Raise, "starch_boiled") && !r.in.Method.Has("starch_boiled")
	if boiled && len(anew) == 0 {
		anew = append(anew, "Boil the starch in part of the liquid.")
	}
	var out []string
	put := false
	for i, step := range book {
		var kept []string
		dropped := false
		for _, tok := range r.in.Method.Tokens {
			if tok.Where != formula.InSteps || tok.Line != i {
				continue
			}
			if r.drops(tok.Method) {
				dropped = true
				continue
			}
			if row, ok := r.judge.Tables.Method(tok.Method); ok && len(row.Sets) > 0 {
				kept = append(kept, tok.Words)
			}
		}
		if !dropped {
			out = append(out, step)
			continue
		}
		if !put {
			out, put = append(out, anew...), true
		}
		if len(kept) > 0 {
			out = append(out, strings.Join(kept, "; "))
		}
	}
	if !put {
		out = append(out, anew...)
	}
	return out
}

// fire writes the oven of the changed formula.
func (r *rewriter) fire(f *formula.Formula) {
	m := r.in.Method
	for _, tok := range m.Tokens {
		if tok.Where == formula.InBake && r.drops(tok.Method) && strings.Contains(reference.Key(f.Oven), reference.Key(tok.Words)) {
			f.Oven = ""
		}
	}
	if r.c.HeatC == 0 {
		return
	}
	f.Oven = ""
	f.Bake = fmt.Sprintf("at %g C", r.c.HeatC)
	if m.Bake.Minutes > 0 {
		f.Bake = fmt.Sprintf("%g minutes at %g C", m.Bake.Minutes, r.c.HeatC)
	}
}

// read reports whether the words of a changed part are read as the change: the
// same fire, and the same of everything else that was done.
func read(want, got *formula.Method) bool {
	if bake.FireOf(want) != bake.FireOf(got) {
		return false
	}
	// The oven is told by the fire; that something is mixed changes nothing where
	// anything is said of it.
	silent := []formula.Flag{"mixed", "baked", "hot", "very_hot", "moderate", "slow", "then_moderate", "not_baked", "careless", "careful"}
	for _, pair := range [][2]*formula.Method{{want, got}, {got, want}} {
		for f, yes := range pair[0].Flags {
			if yes && !pair[1].Flags[f] && !slices.Contains(silent, f) {
				return false
			}
		}
	}
	return true
}
