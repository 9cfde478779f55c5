package file

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/spell"
)

// BookPage is what a book.yaml says of the receipts beside it.
type BookPage struct {
	Title    string
	Year     int // 0 when not said
	Place    string
	Kitchen  formula.Kitchen
	Measures []formula.OwnMeasure
	Standing []Standing
}

// Standing is a direction a book prints once and means to hold wherever it
// fits: "glaze the case before any wet filling goes in".
type Standing struct {
	Text    string
	Kinds   []formula.Kind // of the parts it holds for
	Classes []string       // ids of classes it holds for
	Dishes  []string       // dishes it holds for, in words
	Where   string         // where the book prints it
	Step    string         // id of the step it is, empty when its words must tell
	Pos     formula.Pos
}

// Direction is the standing direction as a part carries it.
func (s *Standing) Direction() formula.Direction {
	return formula.Direction{Text: s.Text, Where: s.Where, Step: s.Step}
}

// Holds reports whether the direction holds for part i of the formula: its
// kind or class is one of those named, if any are, and the formula's dish is
// one of those named, if any are.
func (s *Standing) Holds(f *formula.Formula, i int) bool {
	p := &f.Parts[i]
	if len(s.Kinds)+len(s.Classes) > 0 && !slices.Contains(s.Kinds, p.Kind) && !slices.Contains(s.Classes, p.Class) {
		return false
	}
	if len(s.Dishes) == 0 {
		return true
	}
	dish := " " + reference.Key(f.Dish) + " "
	return slices.ContainsFunc(s.Dishes, func(d string) bool { return strings.Contains(dish, " "+reference.Key(d)+" ") })
}

var (
	bookKeys     = []string{"title", "year", "place", "kitchen", "measures", "standing"}
	standingKeys = []string{"say", "for", "dishes", "where", "step"}
)

// ReadBook reads a book.yaml. What could be read is returned with the faults.
func ReadBook(name string, text []byte, t *reference.Tables) (BookPage, fault.List) {
	page := fault.NewPage(name, text)
	root, faults := parse(page)
	if root == nil {
		return BookPage{}, faults
	}
	p := newReading(page, t)
	var b BookPage
	for key, v := range p.given(root, bookKeys) {
		switch key {
		case "title":
			b.Title, _ = p.words(v)
		case "year":
			b.Year = p.year(v)
		case "place":
			b.Place = p.oneOf(v, "place", reference.Places)
		case "kitchen":
			b.Kitchen = p.kitchen(v)
		case "measures":
			b.Measures = p.ownMeasures(v)
		case "standing":
			b.Standing = p.standing(v)
		}
	}
	return b, page.Faults()
}

func (p *reading) standing(n *yaml.Node) []Standing {
	if n.Kind != yaml.SequenceNode {
		p.Add(n, "begin each direction with a dash: `- say: glaze the case with egg`", "a list of standing directions is wanted here")
		return nil
	}
	var out []Standing
	for _, c := range n.Content {
		s := Standing{Pos: formula.Pos{Line: c.Line, Column: c.Column}}
		if c.Kind != yaml.MappingNode {
			p.Add(c, "write it as `- say: glaze the case with egg`", "a standing direction is wanted here, with keys and values")
			continue
		}
		has := p.given(c, standingKeys)
		if v, ok := has["say"]; ok {
			s.Text, _ = p.long(v)
		} else {
			p.Add(c, "", "the direction has no `say`")
		}
		if v, ok := has["for"]; ok {
			s.Kinds, s.Classes = p.appliesTo(v)
		}
		if v, ok := has["dishes"]; ok {
			s.Dishes = p.list(v)
		}
		if v, ok := has["where"]; ok {
			s.Where, _ = p.words(v)
		}
		if v, ok := has["step"]; ok {
			s.Step = p.stepID(v)
		}
		out = append(out, s)
	}
	return out
}

// stepID reads the id of a step a working cook knows.
func (p *reading) stepID(n *yaml.Node) string {
	s, ok := p.words(n)
	if !ok {
		return ""
	}
	if step, ok := p.tables.Step(strings.ToLower(s)); ok {
		return step.ID
	}
	var known []string
	for i := range p.tables.Steps {
		known = append(known, p.tables.Steps[i].ID)
	}
	hint := spell.Ask(s, known)
	if hint == "" {
		hint = "`assize tables steps` lists them"
	}
	p.Add(n, hint, "unknown step %q", s)
	return ""
}

// ownMeasures reads what the book says its own measures hold: "this book's
// teacup is a gill", one or a list.
func (p *reading) ownMeasures(n *yaml.Node) []formula.OwnMeasure {
	list := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		list = n.Content
	}
	var out []formula.OwnMeasure
	for _, c := range list {
		text, ok := p.long(c)
		if !ok {
			continue
		}
		m, hint, what := receipt.OwnMeasure(text, p.tables)
		if what != "" {
			p.Add(c, hint, "%s", what)
			continue
		}
		if i := slices.IndexFunc(out, func(o formula.OwnMeasure) bool { return o.Name == m.Name }); i >= 0 {
			p.Add(c, "keep one of the two", "what a %s holds is said twice", m.Name)
			continue
		}
		out = append(out, m)
	}
	return out
}

// appliesTo reads kinds of part and classes, one or a list.
func (p *reading) appliesTo(n *yaml.Node) (ks []formula.Kind, classes []string) {
	list := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		list = n.Content
	}
	for _, c := range list {
		s, ok := p.words(c)
		if !ok {
			continue
		}
		low := strings.ToLower(s)
		if slices.Contains(kinds(), low) {
			ks = append(ks, formula.Kind(low))
			continue
		}
		if class, ok := p.tables.Class(low); ok {
			classes = append(classes, class.ID)
			continue
		}
		known := kinds()
		for _, class := range p.tables.Classes {
			known = append(append(known, class.ID), class.Also...)
		}
		hint := spell.Ask(s, known)
		if hint == "" {
			hint = "a kind (" + strings.Join(kinds(), ", ") + ") or a class (`assize tables classes`)"
		}
		p.Add(c, hint, "%q is neither a kind of part nor a class", s)
	}
	return ks, classes
}
