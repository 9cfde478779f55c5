package file

import (
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/reference"
	"assize/reference/fault"
)

// Root is the root of a page that holds a formula among other things, nil when
// it cannot be read. Slips of writing are told as they are of a formula file.
func Root(page *fault.Page) (*yaml.Node, fault.List) { return parse(page) }

// At reads a formula that stands at a node of a larger page. Faults are
// recorded on the page; the formula is nil when it has any.
func At(page *fault.Page, n *yaml.Node, t *reference.Tables) *formula.Formula {
	before := len(page.Faults())
	f := newReading(page, t).formula(n, Defaults{})
	if len(page.Faults()) > before {
		return nil
	}
	f.File = page.Name
	return f
}
