package present

import (
	"encoding/csv"
	"io"
	"strconv"

	"assize/formula"
	"assize/ratios/judge"
)

// csvHead names the columns: one table for every kind of record, which the
// first column names.
//
//	item     one ingredient on the scales, in grams or parts, and to the hundred
//	total    a part's weight
//	ratio    a ratio with its verdict
//	share    a texture's share, in likely
//	finding  its code as name, grade as verdict, share in likely
var csvHead = []string{"record", "receipt", "part", "line", "name", "form", "unit", "low", "likely", "high", "percent", "verdict", "says"}

// CSV writes reports as records, one a row. Make one for all the receipts of a
// run.
type CSV struct {
	w       *csv.Writer
	started bool
}

// NewCSV starts records on w.
func NewCSV(w io.Writer) *CSV { return &CSV{w: csv.NewWriter(w)} }

// record is one row by its columns.
type record struct {
	record, receipt, part, line, name, form, unit, low, likely, high, percent, verdict, says string
}

func (c *CSV) write(r record) {
	// Errors of the writer are kept and returned by Flush.
	_ = c.w.Write([]string{r.record, r.receipt, r.part, r.line, r.name, r.form, r.unit, r.low, r.likely, r.high, r.percent, r.verdict, r.says})
}

func (c *CSV) begin() {
	if !c.started {
		_ = c.w.Write(csvHead)
		c.started = true
	}
}

func (c *CSV) end() error {
	c.w.Flush()
	return c.w.Error()
}

// Weighed writes the items and totals of a receipt.
func (c *CSV) Weighed(s *Sheet) error {
	c.begin()
	c.items(s)
	return c.end()
}

// Checked writes all that was found of a receipt.
func (c *CSV) Checked(s *Sheet) error {
	c.begin()
	c.items(s)
	title := s.Report.Formula.Title
	for i := range s.Report.Parts {
		p := &s.Report.Parts[i]
		for j := range p.Ratios {
			r := &p.Ratios[j]
			v := span(r.Ratio.Value, ratioPlacesJ)
			c.write(record{
				record: "ratio", receipt: title, part: p.Name, name: r.Ratio.Row.ID, unit: r.Ratio.Row.Unit,
				low: v.Low.String(), likely: v.Likely.String(), high: v.High.String(), verdict: r.Verdict,
			})
		}
		if p.Texture == nil {
			continue
		}
		for _, x := range p.Texture.Shares {
			c.write(record{
				record: "share", receipt: title, part: p.Name, name: x.Texture.ID,
				likely: number(x.Share, sharePlaces).String(), says: x.Texture.Shown,
			})
		}
	}
	for i := range s.Report.Findings {
		c.finding(title, &s.Report.Findings[i])
	}
	return c.end()
}

func (c *CSV) finding(title string, f *judge.Finding) {
	r := record{record: "finding", receipt: title, part: f.Part, name: f.Code, verdict: string(f.Grade), says: f.Says}
	if f.Share > 0 {
		r.likely = number(f.Share, sharePlaces).String()
	}
	c.write(r)
}

func (c *CSV) items(s *Sheet) {
	title := s.Report.Formula.Title
	for i := range s.Report.Parts {
		p := &s.Report.Parts[i]
		unit := s.unit(i)
		for n, l := range p.Lines {
			for _, it := range l.Items {
				r := record{
					record: "item", receipt: title, part: p.Name, line: strconv.Itoa(n + 1),
					name: it.Ingredient.ID, form: it.Form, unit: unit, says: l.Text,
				}
				if it.State == formula.Stated {
					g := span(it.Grams, gramPlaces)
					r.low, r.likely, r.high = g.Low.String(), g.Likely.String(), g.High.String()
					r.percent = it.Percent.Round(percentPlaces).String()
				} else {
					r.verdict = stateNames[it.State]
				}
				if !it.Used {
					r.verdict = "alternative"
				}
				c.write(r)
			}
		}
		t := span(p.Profile.Total, gramPlaces)
		c.write(record{
			record: "total", receipt: title, part: p.Name, unit: unit,
			low: t.Low.String(), likely: t.Likely.String(), high: t.High.String(),
		})
	}
}
