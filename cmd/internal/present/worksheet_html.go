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

// tall is how many lines of the page's print a sheet may come to before it is
// set smaller, so that it stays on one side of A4 (measured on the demo book).
const tall = 62

// Long reports a sheet that must be set small to print on one page: the taller
// of its columns, with what stands above and below them, in lines.
func (b *Bench) Long() bool {
	const (
		tickLine, markLine, cells = 1.1, .9, 62.0 // a step; its mark, of so many letters a line
		foot                      = 100.0         // letters to a line of the notes below, which stand in two columns
	)
	steps, weigh, below := 0.0, 0.0, 0.0
	for _, p := range b.Phases {
		steps += 1.6
		for _, s := range p.Steps {
			steps += tickLine*lines(s.Text, cells) + markLine*lines(s.Mark, 1.25*cells)
		}
	}
	for _, p := range b.Parts {
		weigh += 2.6 + 2*float64(len(p.Lines)) + float64(len(p.Notes))
	}
	weigh += 2*float64(len(b.Oven)) + float64(len(b.Time)) + 1.4*float64(len(b.Buy)) + 6
	for _, texts := range [][]string{b.Stops, b.Show, b.Aside, b.Assumed} {
		for _, t := range texts {
			below += lines(t, foot)
		}
	}
	for _, e := range b.Sources {
		below += lines(e.Text, foot)
	}
	above := 4.0 + 2*float64(len(b.Cautions))
	return above+max(steps, weigh)+below/2+3 > tall
}

// lines is how many lines so many letters take.
func lines(s string, letters float64) float64 { return math.Ceil(float64(wide(s)) / letters) }
