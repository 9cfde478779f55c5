package present

import (
	"html"
	"io"
	"strings"
)

// HTML writes pages as one document that stands by itself: nothing is fetched,
// nothing runs. It follows the reader's light or dark, and each page starts a
// sheet of its own in print.
func HTML(w io.Writer, pages []*Page) error {
	var b strings.Builder
	title := "Assize"
	if len(pages) == 1 && pages[0].Title != "" {
		title = pages[0].Title
	}
	b.WriteString("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n" +
		"<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n" +
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n")
	b.WriteString("<title>" + html.EscapeString(title) + "</title>\n<style>\n" + pageStyle + "</style>\n</head>\n<body>\n")
	for _, p := range pages {
		p.article(&b)
	}
	b.WriteString("</body>\n</html>\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// pageStyle sets a page: one column as wide as lines are easily read, tables
// that scroll by themselves on a narrow screen, plain black on white in print.
const pageStyle = `:root { --ink: #1d1a16; --paper: #fbf9f4; --faint: #6a6257; --rule: #d8d1c3; --mark: #7a1f14; }
@media (prefers-color-scheme: dark) { :root { --ink: #ece7dd; --paper: #1c1a17; --faint: #a89f91; --rule: #454037; --mark: #f0a08f; } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1.05rem/1.5 Georgia, "Times New Roman", serif; }
article { max-width: 46rem; margin: 0 auto; padding: 1.5rem 1.25rem 3rem; }
article + article { border-top: 3px double var(--rule); }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .25rem; }
h2 { font-size: 1.15rem; margin: 1.8rem 0 .5rem; padding-bottom: .2rem; border-bottom: 1px solid var(--rule); }
p { margin: .5rem 0; }
.under { color: var(--faint); margin-top: 0; }
.lead { font-weight: bold; border-left: .3rem solid var(--mark); padding-left: .8rem; }
dl { display: grid; grid-template-columns: minmax(6rem, max-content) 1fr; gap: .35rem 1rem; margin: .5rem 0; }
dt { font-weight: bold; overflow-wrap: anywhere; }
dd { margin: 0; min-width: 0; overflow-wrap: anywhere; }
dd p, li p { margin: 0; color: var(--faint); font-size: .95em; }
ul { margin: .5rem 0; padding-left: 1.2rem; }
li { margin: .25rem 0; overflow-wrap: anywhere; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: .95em; }
caption { text-align: left; font-weight: bold; padding: .3rem 0; }
th, td { text-align: left; vertical-align: top; padding: .3rem .8rem .3rem 0; border-bottom: 1px solid var(--rule); }
th { color: var(--faint); font-weight: normal; white-space: nowrap; }
.right { text-align: right; white-space: nowrap; }
@media (max-width: 34rem) { dl { grid-template-columns: 1fr; gap: .1rem; } dd { margin-bottom: .5rem; } body { font-size: 1rem; } }
@media print {
  :root { --ink: #000; --paper: #fff; --faint: #333; --rule: #999; --mark: #000; }
  body { font-size: 10.5pt; } article { max-width: none; padding: 0; break-after: page; } article + article { border: 0; }
  article:last-child { break-after: auto; } h2 { break-after: avoid; } tr, dd, li { break-inside: avoid; } .wide { overflow: visible; }
}
`

func (p *Page) article(b *strings.Builder) {
	b.WriteString("<article>\n")
	element(b, "h1", "", p.Title)
	element(b, "p", "under", p.Under)
	element(b, "p", "lead", p.Lead)
	for _, s := range p.Sections {
		b.WriteString("<section>\n")
		element(b, "h2", "", s.Heading)
		for _, block := range s.Blocks {
			htmlBlock(b, block)
		}
		b.WriteString("</section>\n")
	}
	b.WriteString("</article>\n")
}

// element writes an element with text in it, nothing when there is none.
func element(b *strings.Builder, name, class, text string) {
	if text == "" {
		return
	}
	b.WriteString("<" + name)
	if class != "" {
		b.WriteString(` class="` + class + `"`)
	}
	b.WriteString(">" + html.EscapeString(text) + "</" + name + ">\n")
}

func htmlBlock(b *strings.Builder, block Block) {
	switch block := block.(type) {
	case Paragraph:
		element(b, "p", "", string(block))
	case List:
		htmlList(b, block)
	case Table:
		htmlTable(b, block)
	}
}

// htmlList sets a list whose entries are labelled as terms with what is said of
// each, and one without labels as bullets.
func htmlList(b *strings.Builder, l List) {
	labelled := false
	for _, e := range l {
		labelled = labelled || e.Label != ""
	}
	outer, inner := "ul", "li"
	if labelled {
		outer, inner = "dl", "dd"
	}
	b.WriteString("<" + outer + ">\n")
	for _, e := range l {
		if labelled {
			if e.Label == "" {
				b.WriteString("<dt></dt>\n")
			} else {
				element(b, "dt", "", e.Label)
			}
		}
		b.WriteString("<" + inner + ">" + html.EscapeString(e.Text))
		for _, m := range e.More {
			b.WriteString("<p>" + html.EscapeString(m) + "</p>")
		}
		b.WriteString("</" + inner + ">\n")
	}
	b.WriteString("</" + outer + ">\n")
}

func htmlTable(b *strings.Builder, t Table) {
	b.WriteString("<div class=\"wide\"><table>\n")
	element(b, "caption", "", t.Caption)
	b.WriteString("<thead><tr>")
	for _, c := range t.Columns {
		b.WriteString("<th scope=\"col\"" + rightClass(c) + ">" + html.EscapeString(c.Name) + "</th>")
	}
	b.WriteString("</tr></thead>\n<tbody>\n")
	for _, row := range t.Rows {
		b.WriteString("<tr>")
		for i, cell := range row {
			b.WriteString("<td" + rightClass(t.Columns[i]) + ">" + html.EscapeString(cell) + "</td>")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody></table></div>\n")
}

func rightClass(c Column) string {
	if !c.Right {
		return ""
	}
	return ` class="right"`
}
