package file

import (
	"gopkg.in/yaml.v3"

	"assize/formula"
)

var ancestryKeys = []string{"of", "page", "doubt", "trial", "change"}

// ancestry reads where a changed formula comes from. It must name the receipt
// and say what was changed; the rest is left out where there is none.
func (p *reading) ancestry(n *yaml.Node) *formula.Ancestry {
	if n.Kind != yaml.MappingNode {
		p.Add(n, "`of:` the receipt it comes from, `change:` what was changed", "an ancestry is keys and values")
		return nil
	}
	has := p.given(n, ancestryKeys)
	text := func(key string) string {
		v, ok := has[key]
		if !ok {
			return ""
		}
		s, _ := p.words(v)
		return s
	}
	a := &formula.Ancestry{Of: text("of"), Page: text("page"), Trial: text("trial")}
	if _, ok := has["of"]; !ok {
		p.Add(n, "`of: Rich lemon pudding`, the title of the receipt it comes from", "the ancestry does not say what it comes from")
	}
	if v, ok := has["doubt"]; ok {
		a.Doubt = p.list(v)
	}
	if v, ok := has["change"]; ok {
		a.Change = p.list(v)
	} else {
		p.Add(n, "`change:` and under it, each after a dash, what is not as in the receipt", "the ancestry does not say what was changed")
	}
	return a
}

// ancestryNode is an ancestry being written, nil when there is none.
func ancestryNode(a *formula.Ancestry) *yaml.Node {
	if a == nil {
		return nil
	}
	m := mapping()
	m.text("of", a.Of)
	m.text("page", a.Page)
	m.texts("doubt", a.Doubt)
	m.text("trial", a.Trial)
	m.texts("change", a.Change)
	return m.Node
}
