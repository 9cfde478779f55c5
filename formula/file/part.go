package file

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference/spell"
)

var partKeys = []string{"name", "kind", "class", "take", "lay", "lines", "method", "done"}

func (p *reading) parts(n *yaml.Node, readers []*receipt.Reader) []formula.Part {
	if n.Kind != yaml.SequenceNode {
		p.Add(n, "begin each part with a dash: `- kind: filling`", "a list of parts is wanted here")
		return nil
	}
	if len(n.Content) == 0 {
		p.Add(n, "write at least one part with its kind and its lines", "there are no parts: there is nothing to weigh")
	}
	var out []formula.Part
	named := map[string]bool{}
	for _, c := range n.Content {
		part, at := p.part(c, readers)
		if part.Name != "" && named[strings.ToLower(part.Name)] {
			p.Add(at, "give each part a `name` of its own", "two parts are called %q", part.Name)
		}
		named[strings.ToLower(part.Name)] = true
		out = append(out, part)
	}
	return out
}

// part reads one part. The node returned is where its name stands, or the part
// itself when it takes its name from its kind.
func (p *reading) part(n *yaml.Node, readers []*receipt.Reader) (formula.Part, *yaml.Node) {
	part, at := formula.Part{Pos: formula.Pos{Line: n.Line, Column: n.Column}}, n
	if n.Kind != yaml.MappingNode {
		p.Add(n, "a part is `kind:` with `lines:` or `take:` under it", "a part is wanted here, with keys and values")
		return part, at
	}
	has := p.given(n, partKeys)
	if v, ok := has["kind"]; ok {
		part.Kind = p.kind(v)
	} else {
		p.Add(n, "one of "+strings.Join(kinds(), ", "), "the part has no `kind`")
	}
	part.Name = string(part.Kind)
	if v, ok := has["name"]; ok {
		part.Name, _ = p.words(v)
		at = v
	}
	if v, ok := has["class"]; ok {
		part.Class = p.class(v, part.Kind)
	}
	if v, ok := has["lay"]; ok {
		part.Lay = p.oneOf(v, "way to lay a paste", formula.Lays)
	}
	take, taken := has["take"]
	lines, listed := has["lines"]
	switch {
	case taken && listed:
		p.Add(take, "keep `take` when the book has the part elsewhere, `lines` when it stands here", "the part has both `take` and `lines`")
	case !taken && !listed:
		p.Add(n, "list what goes into it under `lines`, or name the receipt it comes from with `take`", "the part has neither `lines` nor `take`")
	}
	if taken {
		part.Take, _ = p.words(take)
		part.TakeAt = formula.Pos{Line: take.Line, Column: take.Column}
	}
	if listed {
		part.Lines = p.lines(lines, readers)
	}
	if v, ok := has["method"]; ok {
		part.Steps = p.steps(v)
	}
	if v, ok := has["done"]; ok {
		part.Done = p.done(v)
	}
	return part, at
}

// done reads the ids of steps that were taken whatever the words tell.
func (p *reading) done(n *yaml.Node) []string {
	list := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		list = n.Content
	}
	var out []string
	for _, c := range list {
		if id := p.stepID(c); id != "" {
			out = append(out, id)
		}
	}
	return out
}

// meantKinds are words a cook may well write for a kind.
var meantKinds = map[string]formula.Kind{
	"paste": formula.Pastry, "crust": formula.Pastry, "case": formula.Pastry, "shell": formula.Pastry,
	"custard": formula.Filling, "curd": formula.Filling, "pudding": formula.Filling, "tart": formula.Filling,
	"dough": formula.Bread, "loaf": formula.Bread, "icing": formula.Meringue, "sponge": formula.Cake,
}

func (p *reading) kind(n *yaml.Node) formula.Kind {
	if k, ok := meantKinds[strings.ToLower(n.Value)]; ok && n.Kind == yaml.ScalarNode {
		p.Add(n, fmt.Sprintf("did you mean %q?", k), "unknown kind of part %q", n.Value)
		return ""
	}
	return formula.Kind(p.oneOf(n, "kind of part", kinds()))
}

func kinds() []string {
	out := make([]string, len(formula.Kinds))
	for i, k := range formula.Kinds {
		out[i] = string(k)
	}
	return out
}

// class reads the class a part is meant to be, by its id or one of its older
// spellings.
func (p *reading) class(n *yaml.Node, kind formula.Kind) string {
	s, ok := p.words(n)
	if !ok {
		return ""
	}
	c, ok := p.tables.Class(strings.ToLower(s))
	if !ok {
		var known []string
		for _, c := range p.tables.Classes {
			if kind == "" || string(kind) == c.Kind {
				known = append(append(known, c.ID), c.Also...)
			}
		}
		hint := spell.Ask(s, known)
		if hint == "" {
			hint = "`assize tables classes` lists them; without a class the nearest is found"
		}
		p.Add(n, hint, "unknown class %q", s)
		return ""
	}
	if kind != "" && string(kind) != c.Kind {
		p.Add(n, "change the kind, or leave the class out", "the class %q is a %s, and this part is a %s", s, c.Kind, kind)
	}
	return c.ID
}

// steps reads the method: one text a step, in words or tokens.
func (p *reading) steps(n *yaml.Node) []string {
	list := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		list = n.Content
	}
	var out []string
	for _, c := range list {
		if s, ok := p.long(c); ok {
			out = append(out, s)
		}
	}
	return out
}
