// Package file reads and writes the formula file: one receipt as strict YAML.
//
// Reading finds everything wrong in one run and gives a formula only when
// there is nothing. The ingredient lines are read by the line grammar of
// package receipt; this package knows the keys, what each may hold, and where
// on the page a thing stands.
package file

import (
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

// Defaults are what a file need not say because something else does: the book
// it lies in, the kitchen it is baked in, or the command that reads it.
type Defaults struct {
	Year    int
	Place   string
	Title   string
	Source  string
	Kitchen formula.Kitchen
	// Measures are what the book says its own measures hold.
	Measures []formula.OwnMeasure
	// KitchenOver stands over the file's own kitchen: what it says holds
	// whatever the file says.
	KitchenOver formula.Kitchen
}

// Read reads a formula file that stands by itself. The name is what the person
// calls the file. The formula is nil when there is any fault.
func Read(name string, text []byte, t *reference.Tables) (*formula.Formula, fault.List) {
	return ReadWith(name, text, t, Defaults{})
}

// ReadWith reads a formula file, taking from the defaults what it leaves out.
// The formula is nil when there is any fault.
func ReadWith(name string, text []byte, t *reference.Tables, d Defaults) (*formula.Formula, fault.List) {
	page := fault.NewPage(name, text)
	root, faults := parse(page)
	if root == nil {
		return nil, faults
	}
	p := newReading(page, t)
	f := p.formula(root, d)
	if faults := page.Faults(); len(faults) > 0 {
		return nil, faults
	}
	f.File = name
	return f, nil
}

// ReadKitchen reads a kitchen.yaml: the keys of `kitchen:` at the top level.
func ReadKitchen(name string, text []byte) (formula.Kitchen, fault.List) {
	page := fault.NewPage(name, text)
	root, faults := parse(page)
	if root == nil {
		return formula.Kitchen{}, faults
	}
	k := newReading(page, nil).kitchen(root)
	if faults := page.Faults(); len(faults) > 0 {
		return formula.Kitchen{}, faults
	}
	return k, nil
}

// Names finds the title and the other names of a receipt whatever else is
// wrong with its file. It is empty when the file cannot be read as a sheet.
func Names(text []byte) []string {
	page := fault.NewPage("", text)
	root := sheet.Parse(page)
	if root == nil || root.Kind != yaml.MappingNode {
		return nil
	}
	var out []string
	p := newReading(page, nil)
	p.Fields(root, topKeys, func(key string, _, v *yaml.Node) {
		switch key {
		case "title":
			if s, ok := p.words(v); ok {
				out = append(out, s)
			}
		case "also":
			out = append(out, p.list(v)...)
		}
	})
	return out
}
