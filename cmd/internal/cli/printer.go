package cli

import (
	"bytes"
	"io"
	"strconv"
	"strings"

	"assize/cmd/internal/present"
)

// The formats a report may be written in.
const (
	formatText     = "text"
	formatMarkdown = "markdown"
	formatJSON     = "json"
	formatCSV      = "csv"
)

var formats = []string{formatText, formatMarkdown, formatJSON, formatCSV}

// withHTML are the formats of what is printed and hung up in a kitchen.
var withHTML = []string{formatText, formatMarkdown, formatHTML, formatJSON}

// usualWidth is taken when nothing tells how wide the terminal is.
const usualWidth = 100

// layout is how text is set out on this run's output.
func (r *run) layout() present.Layout {
	l := present.Layout{Width: usualWidth}
	if r.Columns > 0 {
		l.Width = r.Columns
	}
	if n, err := strconv.Atoi(r.Env("COLUMNS")); err == nil && n > 0 {
		l.Width = n
	}
	l.Bold = r.Terminal && !r.plain && r.Env("NO_COLOR") == "" && r.Env("TERM") != "dumb"
	return l
}

// written is the error of writing to the run's output, said for the person.
func (r *run) written(err error) error {
	if err == nil {
		return nil
	}
	return unreadable{what: "the output cannot be written: " + cause(err).Error()}
}

// printer writes the reports of one run one after another.
type printer struct {
	out     io.Writer
	format  string
	several bool
	about   present.About
	layout  present.Layout
	csv     *present.CSV
	printed int
}

func (r *run) printer(format string, several bool, about present.About) *printer {
	return &printer{out: r.Out, format: format, several: several, about: about, layout: r.layout(), csv: present.NewCSV(r.Out)}
}

// checked writes a judged receipt.
func (p *printer) checked(s *present.Sheet, w present.Wish) error {
	switch p.format {
	case formatJSON:
		return present.CheckJSON(p.out, s, p.about, p.several)
	case formatCSV:
		return p.csv.Checked(s)
	}
	return p.page(present.Check(s, p.about, w))
}

// weighed writes a weighed receipt.
func (p *printer) weighed(s *present.Sheet) error {
	switch p.format {
	case formatJSON:
		return present.WeighJSON(p.out, s, p.about, p.several)
	case formatCSV:
		return p.csv.Weighed(s)
	}
	return p.page(present.Weigh(s, p.about))
}

// page writes a page, with a rule before every page but the first.
func (p *printer) page(page *present.Page) error {
	set, err := p.render(page)
	if err != nil {
		return err
	}
	return p.rendered(set)
}

// render sets a page out; it may be done side by side with others.
func (p *printer) render(page *present.Page) ([]byte, error) {
	var b bytes.Buffer
	if p.format == formatMarkdown {
		err := page.Markdown(&b)
		return b.Bytes(), err
	}
	err := page.Text(&b, p.layout)
	return b.Bytes(), err
}

// rendered writes a page that is set out.
func (p *printer) rendered(page []byte) error {
	p.printed++
	rule := ""
	if p.printed > 1 {
		rule = "\n" + strings.Repeat("-", p.layout.Width) + "\n\n"
		if p.format == formatMarkdown {
			rule = "\n---\n\n"
		}
	}
	if _, err := io.WriteString(p.out, rule); err != nil {
		return err
	}
	_, err := p.out.Write(page)
	return err
}

// pages writes pages in text, Markdown or HTML, and then gives the error their
// receipts were read with: those without faults are reported all the same.
func (r *run) pages(pages []*present.Page, format string, err error) error {
	if format == formatJSON || len(pages) == 0 {
		return err
	}
	if format == formatHTML {
		if e := r.written(present.HTML(r.Out, pages)); e != nil {
			return e
		}
		return err
	}
	p := r.printer(format, len(pages) > 1, present.About{})
	for _, page := range pages {
		if e := r.written(p.page(page)); e != nil {
			return e
		}
	}
	return err
}
