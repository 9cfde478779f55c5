package trial

import (
	"assize/formula"
	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
)

// Formula reads a published formula the way a person's file is read.
func Formula(p *reference.Published, t *reference.Tables) (*formula.Formula, fault.List) {
	return file.Published(p, t)
}
