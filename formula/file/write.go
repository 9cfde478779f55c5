package file

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

// Write gives the formula as a file in the house's own order of keys. Reading
// it gives the formula again, but for the places on the page and the file's
// name. A part taken from another receipt and resolved is written in full,
// with a comment that names the receipt; one not resolved keeps its `take`.
func Write(f *formula.Formula) ([]byte, error) { return WriteWith(f, Remarks{}) }

// Remarks are what a file says beside the formula, as comments: what a line was
// taken for, what could not be read. They are lost when the file is read.
type Remarks struct {
	Top   []string         // over the whole
	Parts map[int][]string // over a part, by its index
	Lines map[LineAt][]string
}

// LineAt is an ingredient line by the index of its part and its own.
type LineAt struct{ Part, Line int }

// WriteWith gives the formula as Write does, with remarks as comments.
func WriteWith(f *formula.Formula, remarks Remarks) ([]byte, error) {
	m := mapping()
	m.HeadComment = comment(remarks.Top)
	m.text("title", f.Title)
	m.text("source", f.Source)
	if f.Year != 0 {
		m.put("year", number(fmt.Sprint(f.Year)))
	}
	if f.Printed != 0 {
		m.put("printed", number(fmt.Sprint(f.Printed)))
	}
	m.text("place", f.Place)
	m.texts("also", f.Also)
	m.text("meant", f.Meant)
	m.text("permission", f.Permission)
	if a := ancestryNode(f.Ancestry); a != nil {
		m.put("ancestry", a)
	}
	if k := kitchenNode(f.Kitchen); k != nil {
		m.put("kitchen", k)
	}
	parts := &yaml.Node{Kind: yaml.SequenceNode}
	for i := range f.Parts {
		n, err := partNode(&f.Parts[i], func(line int) string { return comment(remarks.Lines[LineAt{i, line}]) })
		if err != nil {
			return nil, fmt.Errorf("writing %s: %w", f.Title, err)
		}
		n.HeadComment = joinedLines(n.HeadComment, comment(remarks.Parts[i]))
		parts.Content = append(parts.Content, n)
	}
	m.put("parts", parts)
	m.text("dish", f.Dish)
	m.text("oven", f.Oven)
	m.text("bake", f.Bake)
	if f.Text != "" {
		m.put("text", asCopied(f.Text))
	}

	var b bytes.Buffer
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	if err := errors.Join(e.Encode(m.Node), e.Close()); err != nil {
		return nil, fmt.Errorf("writing %s: %w", f.Title, err)
	}
	return b.Bytes(), nil
}

func partNode(p *formula.Part, remark func(line int) string) (*yaml.Node, error) {
	m := mapping()
	m.text("name", p.Name)
	m.text("kind", string(p.Kind))
	m.text("class", p.Class)
	if len(p.Lines) == 0 {
		m.text("take", p.Take)
	}
	m.text("lay", p.Lay)
	if len(p.Lines) > 0 {
		lines := &yaml.Node{Kind: yaml.SequenceNode}
		for i := range p.Lines {
			n, err := lineNode(&p.Lines[i])
			if err != nil {
				return nil, fmt.Errorf("%s, line %d: %w", p.Name, i+1, err)
			}
			n.HeadComment = remark(i)
			lines.Content = append(lines.Content, n)
		}
		m.put("lines", lines)
	}
	m.texts("method", p.Steps)
	m.texts("done", p.Done)
	if p.From != "" {
		m.HeadComment = "# from " + strings.Join(strings.Fields(p.From), " ")
	}
	return m.Node, nil
}

// comment are remarks as a comment of the file, one a line.
func comment(remarks []string) string {
	var out []string
	for _, r := range remarks {
		out = append(out, "# "+strings.Join(strings.Fields(r), " "))
	}
	return strings.Join(out, "\n")
}

func joinedLines(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "\n" + b
}

func lineNode(l *formula.Line) (*yaml.Node, error) {
	if len(l.Either) == 0 || l.Text != eitherText(l.Either) {
		return alternativeNode(l.Text, l.Items, l.Notes)
	}
	m := mapping()
	m.Style = yaml.FlowStyle
	list := &yaml.Node{Kind: yaml.SequenceNode}
	odds := &yaml.Node{Kind: yaml.SequenceNode}
	even := true
	for _, a := range l.Either {
		n, err := alternativeNode(a.Text, a.Items, l.Notes)
		if err != nil {
			return nil, err
		}
		list.Content = append(list.Content, n)
		odds.Content = append(odds.Content, number(written(a.Odds)))
		even = even && written(a.Odds) == "1"
	}
	m.put("either", list)
	m.text("why", l.Why)
	if !even {
		m.put("odds", odds)
	}
	return m.Node, nil
}

// alternativeNode is one reading of a line: its words, or, for a line that was
// never in words, its one ingredient field by field.
func alternativeNode(words string, items []formula.Item, notes []string) (*yaml.Node, error) {
	if f, ok := notedFields(words, notes); ok {
		return plainNode(f), nil
	}
	if words != "" {
		return text(words), nil
	}
	if len(items) != 1 {
		return nil, fmt.Errorf("a line without words holds %d ingredients", len(items))
	}
	it := items[0]
	a := it.Amount
	if a.State == formula.ToTaste || a.State == formula.Enough || a.WeightOf != "" || a.Parts || a.Size != "" || a.Fill != "" {
		return nil, fmt.Errorf("the amount of %s cannot be written without its words", it.Name)
	}
	f := receipt.Plain{Of: it.Name, Form: it.Form}
	if a.State == formula.Stated {
		f.Amount, f.Unit = amount(a.Number), a.Measure
	}
	return plainNode(f), nil
}

func plainNode(f receipt.Plain) *yaml.Node {
	m := mapping()
	m.Style = yaml.FlowStyle
	if f.Amount != "" {
		m.put("amount", quoted(f.Amount))
	}
	m.text("unit", f.Unit)
	m.text("of", f.Of)
	m.text("form", f.Form)
	return m.Node
}

// amount is a number as it is written in a file. A range has its middle as
// likely when it is read again.
func amount(s reference.Span) string {
	if s.IsExact() {
		return written(s.Likely)
	}
	return written(s.Low) + " to " + written(s.High)
}

// mappingNode is a mapping being written, keys in the order they are put.
type mappingNode struct{ *yaml.Node }

func mapping() mappingNode { return mappingNode{&yaml.Node{Kind: yaml.MappingNode}} }

func (m mappingNode) put(key string, v *yaml.Node) {
	m.Content = append(m.Content, text(key), v)
}

// text puts a text unless it is empty.
func (m mappingNode) text(key, s string) {
	if s != "" {
		m.put(key, text(s))
	}
}

func (m mappingNode) texts(key string, list []string) {
	if len(list) == 0 {
		return
	}
	n := &yaml.Node{Kind: yaml.SequenceNode}
	for _, s := range list {
		n.Content = append(n.Content, text(s))
	}
	m.put(key, n)
}

// flow is a mapping of one key on one line.
func flow(key string, v *yaml.Node) *yaml.Node {
	m := mapping()
	m.Style = yaml.FlowStyle
	m.put(key, v)
	return m.Node
}

// text is a text node; the encoder quotes it where it could be taken for
// anything else, but for the sign of a merge.
func text(s string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: s}
	if s == "<<" {
		n.Style = yaml.DoubleQuotedStyle
	}
	return n
}

// asCopied is a text whose lines are kept.
func asCopied(s string) *yaml.Node {
	n := text(strings.TrimRight(s, "\n") + "\n")
	n.Style = yaml.LiteralStyle
	return n
}

// quoted is a text in quotes, so that no reader of YAML makes a number of it.
func quoted(s string) *yaml.Node {
	n := text(s)
	n.Style = yaml.DoubleQuotedStyle
	return n
}

func number(s string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!int", Value: s}
	if strings.Contains(s, ".") {
		n.Tag = "!!float"
	}
	return n
}
