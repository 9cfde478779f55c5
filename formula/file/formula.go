package file

import (
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

var topKeys = []string{
	"title", "source", "year", "printed", "place", "also", "meant",
	"permission", "ancestry", "kitchen", "parts", "dish", "oven", "bake", "text",
}

func (p *reading) formula(root *yaml.Node, d Defaults) *formula.Formula {
	if root.Kind != yaml.MappingNode {
		p.Add(root, "begin with a title: `title: Seville orange tart`", "a receipt is keys and values, and this is neither")
		return nil
	}
	has := p.given(root, append(topKeys[:len(topKeys):len(topKeys)], p.strays(root)...))
	text := func(key, otherwise string) string {
		if n, ok := has[key]; ok {
			s, _ := p.words(n)
			return s
		}
		return otherwise
	}
	f := &formula.Formula{
		Title: text("title", d.Title), Source: text("source", d.Source), Meant: text("meant", ""), Permission: text("permission", ""),
		Year: d.Year, Place: d.Place, Kitchen: d.Kitchen, Measures: d.Measures,
	}
	if _, ok := has["title"]; !ok && d.Title == "" {
		p.Add(root, "", "`title` is missing")
	}
	if n, ok := has["year"]; ok {
		f.Year = p.year(n)
	} else if d.Year == 0 {
		p.Add(root, "`year: 1838`, or once for all receipts in a book.yaml beside them", "`year` is missing: it decides which measures hold")
	}
	if n, ok := has["place"]; ok {
		f.Place = p.oneOf(n, "place", reference.Places)
	} else if d.Place == "" {
		p.Add(root, "one of "+strings.Join(reference.Places, ", ")+", or once for all in book.yaml", "`place` is missing: it decides whose measures hold")
	}
	if n, ok := has["printed"]; ok {
		f.Printed = p.year(n)
		if f.Printed != 0 && f.Year != 0 && f.Printed < f.Year {
			p.Add(n, "`year` is the receipt's own; `printed` is the later book that copied it", "printed in %d, before the receipt was written in %d", f.Printed, f.Year)
		}
	}
	if n, ok := has["also"]; ok {
		f.Also = p.list(n)
	}
	if n, ok := has["ancestry"]; ok {
		f.Ancestry = p.ancestry(n)
	}
	if n, ok := has["kitchen"]; ok {
		f.Kitchen = Over(f.Kitchen, p.kitchen(n))
	}
	f.Kitchen = Over(f.Kitchen, d.KitchenOver)
	if n, ok := has["dish"]; ok {
		f.Dish = strings.Join(p.list(n), ", ")
	}
	if n, ok := has["oven"]; ok {
		f.Oven = p.oven(n)
	}
	if n, ok := has["bake"]; ok {
		f.Bake = p.bake(n)
	}
	if n, ok := has["text"]; ok {
		f.Text = p.asCopied(n)
	}
	if n, ok := has["parts"]; ok {
		f.Parts = p.parts(n, lineReaders(p.tables, f))
		receipt.Beside(f, p.tables)
	} else {
		p.Add(root, "write at least one part with its kind and its lines", "`parts` is missing: there is nothing to weigh")
	}
	return f
}

// strays reports keys that belong in a part and stand at the top, and returns
// them, so that they are not called unknown as well.
func (p *reading) strays(root *yaml.Node) []string {
	var out []string
	for i := 0; i+1 < len(root.Content); i += 2 {
		switch key := root.Content[i].Value; key {
		case "kind", "class", "take", "lay", "lines", "method", "done":
			p.Add(root.Content[i], "put it in a part: `parts:`, then `- kind: filling` and the rest under it", "%q belongs to a part", key)
			out = append(out, key)
		}
	}
	return out
}

// oven is the heat in words or degrees. A figure by itself does not say
// which degrees.
func (p *reading) oven(n *yaml.Node) string {
	s := strings.Join(p.list(n), ", ")
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		p.Add(n, fmt.Sprintf("write %s C or %s F", s, s), "an oven at %s of which degrees?", s)
	}
	return s
}

// mostBareMinutes is the longest bake taken from a figure by itself; a larger
// one may as well be degrees.
const mostBareMinutes = 120

// bake is the baking in words. A figure by itself is minutes.
func (p *reading) bake(n *yaml.Node) string {
	s := strings.Join(p.list(n), ", ")
	minutes, err := strconv.ParseFloat(s, 64)
	switch {
	case err != nil:
		return s
	case minutes > mostBareMinutes:
		p.Add(n, fmt.Sprintf("write %s min, or %s C or F", s, s), "%s minutes, or degrees?", s)
	case !(minutes > 0):
		p.Add(n, "write it as `30 min`", "%s is no time to bake", s)
	}
	return s + " min"
}

// lineReaders returns the reader of the formula's lines. When the year or the
// place is not known, the page has a fault already; then there are several, so
// that only what no time or place could read is reported besides.
func lineReaders(t *reference.Tables, f *formula.Formula) []*receipt.Reader {
	years, places := []int{f.Year}, []string{f.Place}
	if f.Year == 0 {
		years = []int{1840, 2000, 1900, 1800, 1750, 1600}
	}
	if f.Place == "" {
		places = reference.Places
	}
	var out []*receipt.Reader
	for _, y := range years {
		for _, pl := range places {
			out = append(out, &receipt.Reader{
				Tables: t, Year: y, Place: pl,
				KitchenYear: f.Kitchen.Year, KitchenPlace: f.Kitchen.Place,
			})
		}
	}
	return out
}
