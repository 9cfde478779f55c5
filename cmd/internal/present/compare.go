package present

import (
	"fmt"
	"io"
	"strings"

	"assize/ratios/explain"
	"assize/reference"
)

// Headings of a comparison.
const (
	headDiffered = "What differed"
	headForetold = "What was to be looked for"
	headTasters  = "What the tasters saw"
)

// letters name the two that are compared.
var letters = [2]string{"A", "B"}

// Compare is the page of two bakes side by side.
func Compare(c *explain.Comparison, a About) *Page {
	v := &comparing{c, a.Tables}
	p := &Page{Title: "A and B", Lead: v.lead()}
	p.section("", v.names())
	p.section(headDiffered, v.differed())
	p.section(headForetold, v.foretold())
	p.section(headTasters, v.tasted())
	return p
}

type comparing struct {
	*explain.Comparison
	tables *reference.Tables
}

func (v *comparing) lead() string {
	switch n := v.Count(); {
	case len(v.Differ) == 0:
		return "Nothing that we know of differed. If the result did, look to the oven, the handling and the ingredients."
	case n == 0:
		return "Nothing differed that should tell in the result."
	case n == 1:
		return "One thing differed, so a difference in the result may be laid to it."
	default:
		return sentence(fmt.Sprintf("%s things differed, so a difference in the result cannot be laid to any one of them: change one thing at a time", small(n)))
	}
}

func (v *comparing) names() List {
	var out List
	for i, b := range v.Two {
		words := b.Formula().Title
		if b.Record != nil {
			words += ", " + b.Record.File
			if b.Record.Baked != "" {
				words += ", baked " + b.Record.Baked
			}
		} else {
			words += " (as the page has it)"
		}
		out = append(out, Entry{Label: letters[i], Text: words})
	}
	return out
}

func (v *comparing) differed() Table {
	t := Table{Columns: []Column{{Name: "part"}, {Name: "what"}, {Name: "A"}, {Name: "B"}}}
	last := ""
	for i, d := range v.Differ {
		part := d.Part
		if i > 0 && part == last {
			part = ""
		}
		last = d.Part
		t.Rows = append(t.Rows, []string{part, d.What, orDash(d.A), orDash(d.B)})
	}
	return t
}

// orDash marks what is not there, or not said.
func orDash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// foretold sets the chances beside each other, those that either gave a chance
// worth naming.
func (v *comparing) foretold() Table {
	t := Table{Columns: []Column{{Name: "part"}, {Name: "texture"}, {Name: "A"}, {Name: "B"}}}
	for _, p := range v.Parts {
		label := ""
		var rows []explain.Prediction
		for i, at := range [2]int{p.A, p.B} {
			rows = append(rows, explain.Prediction{})
			if at < 0 {
				continue
			}
			label = v.Two[i].Formula().Parts[at].Name
			for _, x := range explain.Predictions(v.Two[i].Report) {
				if x.Part == label {
					rows[i] = x
				}
			}
		}
		if p.A >= 0 {
			label = v.Two[0].Formula().Parts[p.A].Name
		}
		from := rows[0]
		if len(from.Shares) == 0 {
			from = rows[1]
		}
		for _, s := range from.Shares {
			a, b, told := chance(rows[0], s.Texture.ID), chance(rows[1], s.Texture.ID), false
			for _, x := range []float64{a, b} {
				told = told || x >= hardly
			}
			if told {
				t.Rows = append(t.Rows, []string{label, s.Texture.Shown, chanceWords(a), chanceWords(b)})
				label = ""
			}
		}
	}
	return t
}

// chance is what a prediction gives a texture, under nothing when it has none.
func chance(p explain.Prediction, id string) float64 {
	for _, s := range p.Shares {
		if s.Texture.ID == id {
			return s.Share
		}
	}
	return -1
}

func chanceWords(share float64) string {
	if share < 0 {
		return "-"
	}
	return outOfTen(share)
}

// tasted are the tasters of both, apart.
func (v *comparing) tasted() List {
	var out List
	for i, b := range v.Two {
		if b.Record == nil {
			continue
		}
		label := letters[i]
		for _, t := range b.Record.Tastings {
			var saw []string
			for _, n := range t.Results() {
				p := &b.Formula().Parts[n.Part]
				if x, ok := v.tables.Texture(string(p.Kind), n.Texture); ok {
					words := x.Shown
					if len(b.Formula().Parts) > 1 {
						words += " (" + p.Name + ")"
					}
					saw = append(saw, words)
				}
			}
			who := t.By
			if t.When != "" {
				who += ", " + t.When
			}
			e := Entry{Label: label, Text: who + ": " + strings.Join(saw, "; ")}
			if t.Words != "" {
				e.More = []string{"said: " + quoted(t.Words)}
			}
			out = append(out, e)
			label = ""
		}
	}
	return out
}

// compareDoc is a comparison as JSON has it.
type compareDoc struct {
	Schema  int             `json:"schema"`
	Assize  assizeDoc       `json:"assize"`
	A       sideDoc         `json:"a"`
	B       sideDoc         `json:"b"`
	Differ  []differenceDoc `json:"differ"`
	Counted int             `json:"things_that_may_tell"`
}

type sideDoc struct {
	File      string       `json:"file"`
	Title     string       `json:"title"`
	Record    bool         `json:"record"`
	Baked     string       `json:"baked,omitempty"`
	Predicted []partShares `json:"predicted"`
	Tasted    []tasterDoc  `json:"tasted"`
}

type differenceDoc struct {
	Part string `json:"part,omitempty"`
	What string `json:"what"`
	A    string `json:"a,omitempty"`
	B    string `json:"b,omitempty"`
}

// CompareJSON writes a comparison as one indented JSON object.
func CompareJSON(w io.Writer, c *explain.Comparison, a About) error {
	d := compareDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		A: sideDocOf(c.Two[0]), B: sideDocOf(c.Two[1]), Differ: []differenceDoc{}, Counted: c.Count(),
	}
	for _, x := range c.Differ {
		d.Differ = append(d.Differ, differenceDoc{x.Part, x.What, x.A, x.B})
	}
	return writeJSON(w, d, false)
}

func sideDocOf(b *explain.Bake) sideDoc {
	d := sideDoc{File: b.Formula().File, Title: b.Formula().Title, Predicted: sharesOf(b.Report), Tasted: []tasterDoc{}}
	if b.Record == nil {
		return d
	}
	d.Record, d.Baked = true, b.Record.Baked
	for _, t := range b.Record.Tastings {
		td := tasterDoc{By: t.By, When: t.When, Results: []partIsDoc{}, Words: t.Words}
		for _, n := range t.Results() {
			td.Results = append(td.Results, partIsDoc{b.Formula().Parts[n.Part].Name, n.Texture})
		}
		d.Tasted = append(d.Tasted, td)
	}
	return d
}
