package present

import (
	"slices"

	"assize/formula"
	"assize/formula/bench"
	"assize/formula/book"
	"assize/ratios/judge"
	"assize/reference"
)

// Sheet is one receipt's report with what the book says of it elsewhere.
type Sheet struct {
	Report *judge.Report
	// Directions are the standing directions of the book that hold for each
	// part, by the part's place.
	Directions [][]book.Standing
	// Record is the bench record the receipt was judged by, as it was made; nil
	// when it was judged as written.
	Record *bench.Record
}

// madeBy says by which bench record a receipt was judged; empty when it was
// judged as written.
func (s *Sheet) madeBy() string {
	if s.Record == nil {
		return ""
	}
	words := "As it was made, by the bench record " + s.Record.File
	if s.Record.Baked != "" {
		words += " of " + s.Record.Baked
	}
	return words + ". "
}

// About is what every page says of the program and its tables.
type About struct {
	Version string
	Tables  *reference.Tables
	// OwnTables is the folder of the person's own tables, empty when none.
	OwnTables string
}

// Wish is how much of a report is wanted.
type Wish struct {
	AllRatios bool // ratios without a published range too
	Brief     bool // remedies were not tried
}

// unit is what part i is weighed in: grams, or parts when the receipt gives
// only proportions.
func (s *Sheet) unit(i int) string {
	if s.partsOnly(i) {
		return partsUnit
	}
	return "g"
}

// partsOnly reports that only the proportions of part i are known.
func (s *Sheet) partsOnly(i int) bool {
	for _, it := range s.Report.Weighed.Parts[i].Items {
		if it.Amount.Parts {
			return true
		}
	}
	return false
}

// heatCare is the one finding told by the mechanisms that carries no grade.
const heatCare = "heat-care"

// isCaution reports whether a finding is a caution: not graded, and raised by
// the table of cautions.
func isCaution(f *judge.Finding) bool { return f.Grade == "" && f.Code != heatCare }

// textureOf is the texture of the finding's part that it warns of, nil when it
// is a finding of another kind.
func (s *Sheet) textureOf(f *judge.Finding) *reference.Texture {
	if f.Grade == "" || f.Share == 0 {
		return nil
	}
	for i := range s.Report.Parts {
		p := &s.Report.Parts[i]
		if p.Name != f.Part || p.Texture == nil {
			continue
		}
		for _, sh := range p.Texture.Shares {
			if sh.Texture.Finding == f.Code {
				return sh.Texture
			}
		}
	}
	return nil
}

// findingOf is the finding that warns of a texture of a part, nil when none
// does.
func (s *Sheet) findingOf(p *judge.Part, x *reference.Texture) *judge.Finding {
	for i := range s.Report.Findings {
		if f := &s.Report.Findings[i]; f.Part == p.Name && x.Fault && s.textureOf(f) == x {
			return f
		}
	}
	return nil
}

// judged are the parts whose textures were worked out, fillings first.
func (s *Sheet) judged() []*judge.Part {
	var out []*judge.Part
	for i := range s.Report.Parts {
		if p := &s.Report.Parts[i]; p.Texture != nil {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b *judge.Part) int { return partRank(a) - partRank(b) })
	return out
}

func partRank(p *judge.Part) int {
	if p.Kind == formula.Filling {
		return 0
	}
	return 1
}
