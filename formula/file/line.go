package file

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
	"assize/reference/spell"
)

var (
	plainKeys  = []string{"amount", "unit", "of", "form"}
	eitherKeys = []string{"either", "why", "odds"}
)

func (p *reading) lines(n *yaml.Node, readers []*receipt.Reader) []formula.Line {
	if n.Kind != yaml.SequenceNode {
		p.Add(n, "begin each line with a dash: `- 6 eggs`", "a list of ingredient lines is wanted here")
		return nil
	}
	if len(n.Content) == 0 {
		p.Add(n, "", "there are no lines: there is nothing to weigh")
	}
	var out []formula.Line
	for _, c := range n.Content {
		l := p.line(c, readers)
		l.Pos = formula.Pos{Line: c.Line, Column: c.Column}
		out = append(out, l)
	}
	return out
}

// line reads one ingredient line: words, a plain mapping, or a doubt between
// alternatives.
func (p *reading) line(n *yaml.Node, readers []*receipt.Reader) formula.Line {
	if isEither(n) {
		return p.either(n, readers)
	}
	return p.single(n, readers)
}

func isEither(n *yaml.Node) bool {
	if n.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "either" {
			return true
		}
	}
	return false
}

// single reads a line that is one thing: words or a plain mapping.
func (p *reading) single(n *yaml.Node, readers []*receipt.Reader) formula.Line {
	if n.Kind == yaml.MappingNode {
		return p.plain(n, readers)
	}
	return p.inWords(n, readers)
}

// inWords reads a line as the book words it. Its text keeps its characters one
// for one, so that the reader's columns can be found on the page.
func (p *reading) inWords(n *yaml.Node, readers []*receipt.Reader) formula.Line {
	if n.Kind == yaml.SequenceNode {
		p.Add(n, "one ingredient a line, each after a dash", "an ingredient line is wanted here, not a list")
		return formula.Line{}
	}
	if n.Tag == "!!null" {
		p.Add(n, "write the ingredient after the dash, or take the dash away", "the line is empty")
		return formula.Line{}
	}
	if _, ok := p.words(n); !ok {
		return formula.Line{}
	}
	text := strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' {
			return ' '
		}
		return r
	}, n.Value)
	before := utf8.RuneCountInString(text) - utf8.RuneCountInString(strings.TrimLeft(text, " "))
	text = strings.TrimSpace(text)
	l, troubles := best(readers, func(r *receipt.Reader) (formula.Line, []receipt.Trouble) { return r.Line(text) })
	for _, tr := range troubles {
		line, column := p.spot(n, before+max(1, tr.Column))
		p.Page.Add(line, column, tr.Hint, "%s", tr.What)
	}
	return l
}

// plain reads a line given field by field. What an amount may be is the line
// reader's to say; here it only has to be a single value.
func (p *reading) plain(n *yaml.Node, readers []*receipt.Reader) formula.Line {
	if p.colonSlip(n) {
		return formula.Line{}
	}
	has := p.given(n, plainKeys)
	sound := true
	text := func(key string) string {
		v, ok := has[key]
		if !ok {
			return ""
		}
		if key == "amount" && v.Kind != yaml.ScalarNode {
			p.Add(v, "write a range as \"2 to 3\"", "an amount is a single value")
			sound = false
			return ""
		}
		s, ok := p.words(v)
		sound = sound && ok
		return s
	}
	fields := receipt.Plain{Amount: text("amount"), Unit: text("unit"), Of: text("of"), Form: text("form")}
	if _, ok := has["of"]; !ok {
		p.Add(n, "`of:` names the ingredient", "the line does not say what it is of")
		sound = false
	}
	if !sound {
		return formula.Line{}
	}
	l, troubles := best(readers, func(r *receipt.Reader) (formula.Line, []receipt.Trouble) {
		l, troubles := r.Plain(fields)
		if len(troubles) > 0 {
			return l, troubles
		}
		// The words it is shown with are as good as the fields when they come to
		// the same; then there is one way to write the line.
		if w, troubles := r.Line(l.Text); len(troubles) == 0 && sameWeights(l.Items, w.Items) {
			return w, nil
		}
		l.Notes = append(l.Notes, FieldsNote(l.Text, fields))
		return l, nil
	})
	for _, tr := range troubles {
		at, column := concerned(n, has, l.Text, fields, tr)
		line, column := p.spot(at, column)
		p.Page.Add(line, column, tr.Hint, "%s", tr.What)
	}
	return l
}

// byFields stands in the note on a text that was given field by field and
// would not be read alike in words. It is written again from the note.
const byFields = ", given field by field: "

// FieldsNote is the note on a line given field by field that its words alone
// would not be read as; with it the line is written field by field again.
func FieldsNote(text string, f receipt.Plain) string {
	return text + byFields + strings.Join([]string{f.Amount, f.Unit, f.Of, f.Form}, " | ")
}

// notedFields finds the fields of a text in the notes of its line.
func notedFields(text string, notes []string) (receipt.Plain, bool) {
	for _, note := range notes {
		list, ok := strings.CutPrefix(note, text+byFields)
		if f := strings.Split(list, " | "); ok && len(f) == 4 {
			return receipt.Plain{Amount: f[0], Unit: f[1], Of: f[2], Form: f[3]}, true
		}
	}
	return receipt.Plain{}, false
}

// sameWeights reports whether two readings come to the same things in the same
// amounts, whatever they are called.
func sameWeights(a, b []formula.Item) bool {
	return slices.EqualFunc(a, b, func(a, b formula.Item) bool {
		n, m := a.Amount, b.Amount
		n.Words, m.Words = "", ""
		same := n.Number.Low.Equal(m.Number.Low) && n.Number.Likely.Equal(m.Number.Likely) && n.Number.High.Equal(m.Number.High)
		n.Number, m.Number = reference.Span{}, reference.Span{}
		return same && n == m && a.Ingredient == b.Ingredient && a.Form == b.Form
	})
}

// colonSlip reports words that YAML took for a mapping because of a colon in
// them: "butter: the size of an egg".
func (p *reading) colonSlip(n *yaml.Node) bool {
	if len(n.Content) != 2 || n.Style&yaml.FlowStyle != 0 {
		return false
	}
	k := n.Content[0]
	if k.Kind != yaml.ScalarNode || n.Content[1].Kind != yaml.ScalarNode ||
		slices.Contains(plainKeys, k.Value) || spell.Ask(k.Value, plainKeys) != "" {
		return false
	}
	p.Add(k, "put quotes round the line: the colon makes a key of the words before it", "unknown key %q", k.Value)
	return true
}

// best reads with each reader until one finds no trouble, and gives the first
// of those that found the least.
func best(readers []*receipt.Reader, read func(*receipt.Reader) (formula.Line, []receipt.Trouble)) (formula.Line, []receipt.Trouble) {
	line, least := read(readers[0])
	for _, r := range readers[1:] {
		if len(least) == 0 {
			break
		}
		if l, tr := read(r); len(tr) < len(least) {
			line, least = l, tr
		}
	}
	return line, least
}

// concerned finds the field a trouble speaks of, and where in it: the field
// its column falls in, counted in the text that was put together from the
// fields. What stands before the name there is the amount, when the trouble
// quotes something of it, and else the unit.
func concerned(n *yaml.Node, has map[string]*yaml.Node, text string, fields receipt.Plain, tr receipt.Trouble) (*yaml.Node, int) {
	amount, unit := has["amount"], has["unit"]
	for _, q := range quotations.FindAllStringSubmatch(tr.What, -1) {
		switch {
		case unit != nil && q[1] == fields.Unit:
			return unit, 1
		case amount != nil && strings.Contains(fields.Amount, q[1]):
			return amount, 1
		}
	}
	if v, ok := has["form"]; ok {
		if from := utf8.RuneCountInString(text) - utf8.RuneCountInString(fields.Form); tr.Column > from {
			return v, tr.Column - from
		}
	}
	before, _, found := strings.Cut(text, fields.Of)
	if from := utf8.RuneCountInString(before); found && tr.Column > from {
		return has["of"], tr.Column - from
	}
	return orElse(unit, orElse(amount, n)), 1
}

var quotations = regexp.MustCompile(`"([^"]+)"`)

// either reads a line that is one thing or another and nothing between.
func (p *reading) either(n *yaml.Node, readers []*receipt.Reader) formula.Line {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if key := n.Content[i].Value; slices.Contains(plainKeys, key) {
			p.Add(n.Content[i], "put it inside one of the alternatives: {amount: 4, unit: oz, of: butter}", "%q cannot stand beside `either`", key)
		}
	}
	has := p.given(n, append(eitherKeys[:len(eitherKeys):len(eitherKeys)], plainKeys...))
	list, ok := has["either"]
	if !ok || list.Kind != yaml.SequenceNode {
		p.Add(orElse(list, n), "{either: [4 oz butter, 8 oz butter], why: blotted numeral}", "`either` is a list of the alternatives")
		return formula.Line{}
	}
	if len(list.Content) < 2 {
		p.Add(list, "write the line by itself when there is no doubt", "`either` wants at least two alternatives, not %d", len(list.Content))
	}
	var out formula.Line
	for _, c := range list.Content {
		if isEither(c) {
			p.Add(c, "list each as an alternative of its own", "an alternative cannot be in doubt itself")
			continue
		}
		l := p.single(c, readers)
		if len(l.Either) > 0 {
			p.Add(c, "list each as an alternative of its own", "an alternative is in doubt itself: %q", l.Text)
		}
		out.Either = append(out.Either, formula.Alternative{Text: l.Text, Items: l.Items, Odds: decimal.NewFromInt(1)})
		for _, note := range l.Notes {
			if !slices.Contains(out.Notes, note) {
				out.Notes = append(out.Notes, note)
			}
		}
	}
	if v, ok := has["why"]; ok {
		out.Why, _ = p.words(v)
	}
	if v, ok := has["odds"]; ok {
		p.odds(v, out.Either)
	}
	if len(out.Either) > 0 {
		out.Text, out.Items = eitherText(out.Either), out.Either[0].Items
	}
	return out
}

func (p *reading) odds(n *yaml.Node, alternatives []formula.Alternative) {
	if n.Kind != yaml.SequenceNode {
		p.Add(n, "one figure for each alternative: odds: [1, 2]", "the odds are a list of figures")
		return
	}
	if len(n.Content) != len(alternatives) {
		p.Add(n, "one figure for each alternative", "%s for %s", count(len(n.Content), "figure"), count(len(alternatives), "alternative"))
	}
	for i, c := range n.Content {
		d, ok := p.Decimal(c)
		switch {
		case ok && !d.IsPositive():
			p.Add(c, "leave out an alternative that cannot be", "the odds of an alternative cannot be %s", d)
		case ok && i < len(alternatives):
			alternatives[i].Odds = d
		}
	}
}

func count(n int, what string) string {
	if n == 1 {
		return fmt.Sprintf("1 %s", what)
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// eitherText is how a line in doubt is shown when it was not given in words.
func eitherText(alternatives []formula.Alternative) string {
	texts := make([]string, len(alternatives))
	for i, a := range alternatives {
		texts[i] = a.Text
	}
	return strings.Join(texts, " or ")
}

func orElse(n, other *yaml.Node) *yaml.Node {
	if n != nil {
		return n
	}
	return other
}
