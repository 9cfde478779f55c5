package present

import (
	_ "embed"
	"html/template"
	"math"
	"strings"
)

//go:embed worksheet.html
var worksheetHTML string

// worksheetPage is parsed once; a fault in it is ours and shows in every test.
var worksheetPage = template.Must(template.New("worksheet").Funcs(template.FuncMap{
	"heading": func(name string) string { return worksheetHeadings[name] },
}).Parse(worksheetHTML))

// worksheetHeadings are the headings of the page by the names it uses.
var worksheetHeadings = map[string]string{
	"cautions": headCautions, "first": headFirst, "weigh": headWeigh, "oven": headBake, "steps": headSteps, "time": headTime,
	"stops": headStops, "show": headShow, "buy": headBuy, "aside": headNotPut, "assumed": headHanging, "sources": headSources,
}

// WorksheetHTML is one page with a sheet for each receipt: it stands by itself,
// needs no scripts, and prints a sheet to a page.
func WorksheetHTML(sheets []*Bench) (string, error) {
	var out strings.Builder
	title := sheets[0].Title
	if len(sheets) > 1 {
		title = "Worksheets"
	}
	err := worksheetPage.Execute(&out, struct {
		Title  string
		Sheets []*Bench
	}{title, sheets})
	return out.String(), err
}

// tall is how many lines of its usual print a sheet may come to before it is
// set smaller, so that it stays on one side of A4: found on the demo book.
const tall = 130

// Long reports a sheet that must be set small to print on one page: what stands
// in its two columns, in lines.
func (b *Bench) Long() bool {
	const (
		letters = 66.0 // of a line in a column
		small   = .72  // a line of the small print against one of the usual
	)
	n := 0.0
	for _, p := range b.Phases {
		n += 1.7
		for _, s := range p.Steps {
			n += .2 + lines(s.Text, letters) + small*lines(s.Mark, letters/small)
		}
	}
	for _, p := range b.Parts {
		n += 2.8 + small*float64(len(p.Notes))
		for _, l := range p.Lines {
			n += 1.2
			if l.Book != "" || l.Between != "" {
				n += small
			}
		}
	}
	for _, texts := range [][]string{b.Oven, b.First} {
		n += 1.7
		for _, t := range texts {
			n += lines(t, letters)
		}
	}
	n += 4 + 1.2*float64(len(b.Time))
	for _, x := range b.Buy {
		n += 1.2 + small*lines(x.Note, letters)
	}
	for _, texts := range [][]string{b.Stops, b.Show, b.Aside, b.Assumed} {
		n += 1.7
		for _, t := range texts {
			n += small * lines(t, letters/small)
		}
	}
	for _, e := range b.Sources {
		n += small * lines(e.Text, letters/small)
	}
	for _, t := range append(b.Cautions, b.Deference) {
		n += 2 * lines(t, 2*letters) // they run over both
	}
	return n > tall
}

// lines is how many lines so many letters take.
func lines(s string, letters float64) float64 { return math.Ceil(float64(wide(s)) / letters) }
