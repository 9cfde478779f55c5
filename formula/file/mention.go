package file

import (
	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

// Mention is an ingredient named in the steps and missing from the lines, or
// listed and never named in the steps.
type Mention = receipt.Mention

// NotListed compares what the steps name with what the lines list.
func NotListed(f *formula.Formula, t *reference.Tables) []Mention { return receipt.NotListed(f, t) }
