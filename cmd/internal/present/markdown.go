package present

import (
	"io"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/renderer"
)

// Markdown writes the page as Markdown with tables.
func (p *Page) Markdown(w io.Writer) error {
	var out strings.Builder
	if p.Title != "" {
		out.WriteString("# " + escape(p.Title) + "\n")
	}
	if p.Under != "" {
		out.WriteString("\n" + escape(p.Under) + "\n")
	}
	if p.Lead != "" {
		out.WriteString("\n**" + escape(p.Lead) + "**\n")
	}
	for _, s := range p.Sections {
		if s.Heading != "" {
			out.WriteString("\n## " + escape(s.Heading) + "\n")
		}
		for _, b := range s.Blocks {
			out.WriteByte('\n')
			if err := markdownBlock(&out, b); err != nil {
				return err
			}
		}
	}
	_, err := io.WriteString(w, strings.TrimLeft(out.String(), "\n"))
	return err
}

func markdownBlock(out *strings.Builder, b Block) error {
	switch b := b.(type) {
	case Paragraph:
		out.WriteString(escape(string(b)) + "\n")
	case List:
		markdownList(out, b)
	case Table:
		if b.Caption != "" {
			out.WriteString("**" + escape(b.Caption) + "**\n\n")
		}
		set, err := grid(escaped(b), tablewriter.WithRenderer(renderer.NewMarkdown()))
		if err != nil {
			return err
		}
		out.WriteString(set)
	case Ticks:
		markdownTicks(out, b)
	}
	return nil
}

// markdownTicks sets steps as boxes to tick, what is only to be looked for as a
// plain bullet.
func markdownTicks(out *strings.Builder, b Ticks) {
	out.WriteString("### " + escape(b.Heading) + "\n\n")
	for _, s := range b.Steps {
		tick := "- "
		if s.Tick {
			tick = "- [ ] "
		}
		out.WriteString(tick + escape(s.Text))
		if s.Mark != "" {
			out.WriteString(" *" + escape(s.Mark) + "*")
		}
		out.WriteByte('\n')
	}
}

// markdownList sets entries as bullets; entries that follow a labelled one and
// have no label of their own stand under it.
func markdownList(out *strings.Builder, l List) {
	under := ""
	for _, e := range l {
		depth := under
		if e.Label != "" {
			depth, under = "", "  "
			out.WriteString("- **" + escape(e.Label) + "** " + escape(e.Text) + "\n")
		} else {
			out.WriteString(depth + "- " + escape(e.Text) + "\n")
		}
		for _, m := range e.More {
			out.WriteString(depth + "  - " + escape(m) + "\n")
		}
	}
}

// escape keeps text from being read as markup: it comes from people's files.
func escape(s string) string {
	s = marks.Replace(s)
	if strings.IndexAny(s, "#>+-=~") == 0 {
		return `\` + s
	}
	return s
}

var marks = strings.NewReplacer(
	`\`, `\\`, `|`, `\|`, "`", "\\`", `*`, `\*`, `_`, `\_`, `<`, `\<`, `[`, `\[`, `]`, `\]`,
	"\r", " ", "\n", " ",
)

func escaped(b Table) Table {
	out := Table{Columns: make([]Column, len(b.Columns)), Rows: make([][]string, len(b.Rows))}
	for i, c := range b.Columns {
		out.Columns[i] = Column{escape(c.Name), c.Right}
	}
	for i, r := range b.Rows {
		out.Rows[i] = make([]string, len(r))
		for j, cell := range r {
			out.Rows[i][j] = escape(cell)
		}
	}
	return out
}
