package book

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
	"assize/reference/spell"
)

// Resolve puts in place of every part that is only taken from another receipt
// of the book the part it takes. The part keeps the name, the class and the
// lay its taker gives it; the taker's own steps follow those taken; its lines
// stand where the taker names them, so that what is said of them is said of
// the taker's page. Each part is given the standing directions that hold for
// it. The formula given is not changed. It is returned nil when anything cannot
// be taken.
func (b *Book) Resolve(f *formula.Formula) (*formula.Formula, fault.List) {
	out := *f
	out.Parts = slices.Clone(f.Parts)
	var faults fault.List
	for i, p := range f.Parts {
		if p.Take == "" {
			continue
		}
		part, wrong := b.take(f, i, nil)
		out.Parts[i] = part
		faults = append(faults, wrong...)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	for i := range out.Parts {
		p := &out.Parts[i]
		p.Standing = nil
		for _, s := range b.Directions(&out, i) {
			p.Standing = append(p.Standing, s.Direction())
		}
	}
	return &out, nil
}

// hop is one receipt taking a part from another.
type hop struct {
	title, take, file string
	at                formula.Pos
}

// take finds the part that part i of f takes. The hops are those that led
// here; meeting one of their receipts again is a circle.
func (b *Book) take(f *formula.Formula, i int, hops []hop) (formula.Part, fault.List) {
	want := f.Parts[i]
	here := hop{f.Title, want.Take, f.File, takeAt(&want)}
	hops = append(hops, here)
	wrong := func(hint, format string, args ...any) (formula.Part, fault.List) {
		return formula.Part{}, b.at(here, hint, format, args...)
	}

	found := b.called(want.Take)
	switch {
	case len(found) == 0:
		hint := b.suggest(f, want.Take)
		return wrong(hint, "no receipt of the book is called %q", want.Take)
	case len(found) > 1:
		return wrong("take it by a name only one of them has", "%d receipts answer to %q: %s", len(found), want.Take, places(found, want.Take))
	}
	from := found[0]
	if from.formula == nil {
		_, faults := wrong("", "%q cannot be taken: %s has faults of its own", want.Take, from.name)
		return formula.Part{}, append(faults, from.faults...)
	}
	if slices.ContainsFunc(hops, func(h hop) bool { return h.file == from.name }) {
		return formula.Part{}, b.at(hops[0], "write the lines out in one of them", "the parts are taken in a circle: %s", circle(hops))
	}
	taken, ofKind := b.inKitchen(from, f.Kitchen), []int(nil)
	for j, p := range taken.Parts {
		if p.Kind == want.Kind {
			ofKind = append(ofKind, j)
		}
	}
	if len(ofKind) != 1 {
		return wrong(wantedHint(want.Kind, len(ofKind)), "%q has %s: %s", want.Take, countKind(len(ofKind), want.Kind), listParts(from.name, taken.Parts))
	}
	got, title := taken.Parts[ofKind[0]], taken.Title
	if got.Take != "" {
		deeper, faults := b.take(taken, ofKind[0], hops)
		if len(faults) > 0 {
			return formula.Part{}, faults
		}
		got, title = deeper, deeper.From
	}
	return b.put(want, got, here.at, f, taken, title), nil
}

// put makes the taken part the taker's.
func (b *Book) put(want, got formula.Part, at formula.Pos, f, taken *formula.Formula, title string) formula.Part {
	got.Name, got.Take, got.From, got.Pos = want.Name, "", title, want.Pos
	if want.Lay != "" {
		got.Lay = want.Lay
	}
	if want.Class != "" {
		got.Class = want.Class
	}
	got.StepsFrom = stepsFrom(&got, taken, len(want.Steps))
	got.Steps = slices.Concat(got.Steps, want.Steps)
	got.Done = slices.Concat(got.Done, want.Done)
	got.Lines = slices.Clone(got.Lines)
	for i := range got.Lines {
		l := &got.Lines[i]
		l.Pos = at
		if note := b.measuredAs(l, f, taken); note != "" {
			l.Notes = append(slices.Clip(l.Notes), note)
		}
	}
	return got
}

// stepsFrom says of each step of a part on its way to its taker where it was
// printed: what the part has no word for itself is the taken receipt's own.
func stepsFrom(got *formula.Part, taken *formula.Formula, own int) []string {
	label := taken.Title
	if taken.Source != "" {
		label += " (" + taken.Source + ")"
	}
	out := make([]string, 0, len(got.Steps)+own)
	for i := range got.Steps {
		from := got.StepFrom(i)
		if from == "" {
			from = label
		}
		out = append(out, from)
	}
	return append(out, make([]string, own)...)
}

// measuredAs remarks on a line whose measure was another when the receipt it
// is taken from was written: it is weighed by the taker's year and place.
func (b *Book) measuredAs(l *formula.Line, f, taken *formula.Formula) string {
	if b.tables == nil || f.Year == taken.Year && f.Place == taken.Place {
		return ""
	}
	for _, it := range l.Items {
		for _, m := range b.tables.MeasuresCalled(it.Amount.Measure) {
			if m.Holds(f.Year, f.Place) != m.Holds(taken.Year, taken.Place) {
				return fmt.Sprintf("measured as in %d, %s; %q is of %d, %s, and its %s may not be the same",
					f.Year, f.Place, taken.Title, taken.Year, taken.Place, it.Amount.Measure)
			}
		}
	}
	return ""
}

// inKitchen is the page's formula as the taker's kitchen buys for it: what a
// lemon means goes by the kitchen.
func (b *Book) inKitchen(p *page, k formula.Kitchen) *formula.Formula {
	own := p.formula.Kitchen
	if k.Year == 0 || k.Year == own.Year && k.Place == own.Place || p.text == nil {
		return p.formula
	}
	d := b.defaults()
	d.KitchenOver = k
	f, _ := file.ReadWith(p.name, p.text, b.tables, d)
	if f == nil {
		return p.formula // read well enough by its own kitchen
	}
	return f
}

// called finds the pages that answer to a name. Case, hyphens, spaces and
// stops do not count.
func (b *Book) called(name string) []*page { return b.byName[nameKey(name)] }

func sameName(a, b string) bool { return nameKey(a) == nameKey(b) }

func nameKey(s string) string { return strings.Join(reference.Words(s), "") }

// suggest offers names near to one nothing answers to, and says which files
// could not be looked into.
func (b *Book) suggest(f *formula.Formula, name string) string {
	var known, shut []string
	for _, p := range b.pages {
		if p.name != f.File {
			known = append(known, p.names...)
		}
		if len(p.names) == 0 {
			shut = append(shut, p.name)
		}
	}
	var out []string
	if len(shut) > 0 {
		out = append(out, strings.Join(shut, ", ")+" cannot be read and may hold it")
	}
	ask := spell.Ask(name, known)
	switch {
	case ask != "":
		out = append(out, ask)
	case len(known) > 0:
		out = append(out, "the book has "+quoted(known))
	case len(shut) == 0:
		out = append(out, "it is looked for by its title in the *.yaml files beside this one")
	}
	return strings.Join(out, "; ")
}

func quoted(names []string) string {
	const most = 12
	var out []string
	for i, n := range names {
		if i == most {
			out = append(out, "...")
			break
		}
		out = append(out, fmt.Sprintf("%q", n))
	}
	return strings.Join(out, ", ")
}

// circle tells a circle hop by hop.
func circle(hops []hop) string {
	out := make([]string, len(hops))
	for i, h := range hops {
		out[i] = fmt.Sprintf("%q takes %q (%s:%d)", h.title, h.take, h.file, h.at.Line)
	}
	return strings.Join(out, ", ")
}

func countKind(n int, kind formula.Kind) string {
	if n == 0 {
		return fmt.Sprintf("no part of the kind %s", kind)
	}
	return fmt.Sprintf("%d parts of the kind %s", n, kind)
}

func wantedHint(kind formula.Kind, n int) string {
	if n == 0 {
		return fmt.Sprintf("take it from a receipt that has a %s, or change the `kind` here", kind)
	}
	return "put the one that is meant into a receipt of its own"
}

func listParts(name string, parts []formula.Part) string {
	var out []string
	for _, p := range parts {
		out = append(out, fmt.Sprintf("%q (%s, %s:%d)", p.Name, p.Kind, name, p.Pos.Line))
	}
	return strings.Join(out, ", ")
}

// places lists where the pages bear the name.
func places(pages []*page, name string) string {
	var out []string
	for _, p := range pages {
		out = append(out, fmt.Sprintf("%s:%d", p.name, p.nameAt(name).Line))
	}
	return strings.Join(out, " and ")
}

// doubles reports names that two receipts of the book answer to, at the second
// and every further place.
func (b *Book) doubles() fault.List {
	var out fault.List
	seen := map[string]bool{}
	for _, p := range b.pages {
		for _, n := range p.names {
			if k := nameKey(n); k == "" || seen[k] {
				continue
			} else {
				seen[k] = true
			}
			found := b.called(n)
			for _, q := range found[min(1, len(found)):] {
				at := q.nameAt(n)
				out = append(out, b.at(hop{file: q.name, at: at}, "give each its own title and its own names in `also`",
					"%d receipts answer to %q: %s", len(found), n, places(found, n))...)
			}
		}
	}
	return out
}

// at is one fault at a place of one of the book's pages.
func (b *Book) at(h hop, hint, format string, args ...any) fault.List {
	var text []byte
	for _, p := range b.pages {
		if p.name == h.file {
			text = p.text
		}
	}
	page := fault.NewPage(h.file, text)
	page.Add(h.at.Line, h.at.Column, hint, format, args...)
	return page.Faults()
}

// takeAt is where a part names what it takes; the place of the part when it was
// not read from a page.
func takeAt(p *formula.Part) formula.Pos {
	if p.TakeAt != (formula.Pos{}) {
		return p.TakeAt
	}
	return p.Pos
}

// nameAt is where the page bears the name.
func (p *page) nameAt(name string) formula.Pos {
	top := root(p.text)
	nodes := []*yaml.Node{value(top, "title")}
	if also := value(top, "also"); also != nil {
		nodes = append(append(nodes, also), also.Content...)
	}
	for _, n := range nodes {
		if n != nil && sameName(n.Value, name) {
			return formula.Pos{Line: n.Line, Column: n.Column}
		}
	}
	return formula.Pos{}
}

// root is the top of a page read before, nil when it cannot be read.
func root(text []byte) *yaml.Node { return sheet.Parse(fault.NewPage("", text)) }

// value is what a mapping has under a key, nil when it has nothing.
func value(n *yaml.Node, key string) *yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}
