package present

import (
	"io"
	"strings"
	"unicode/utf8"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/tw"
)

// Layout is how text is set out.
type Layout struct {
	Width int  // columns of the terminal
	Bold  bool // whether headings may be set bold
}

// The measures of a page, in columns: the narrowest and widest that lines are
// set to, and the widest a label may be before the text goes under it.
const (
	narrowest = 40
	widest    = 120
	indent    = 2
	labelMost = 16
)

// Text writes the page for a terminal or a plain file.
func (p *Page) Text(w io.Writer, l Layout) error {
	t := &setter{width: min(widest, max(narrowest, l.Width)), bold: l.Bold}
	t.title(p)
	if p.Lead != "" {
		t.wrap(p.Lead, 0, 0)
	}
	for _, s := range p.Sections {
		t.line("")
		if s.Heading != "" {
			t.line(t.strong(s.Heading))
		}
		for i, b := range s.Blocks {
			if i > 0 {
				t.line("")
			}
			if err := t.block(b); err != nil {
				return err
			}
		}
	}
	_, err := io.WriteString(w, t.out.String())
	return err
}

// setter sets lines one under another.
type setter struct {
	out   strings.Builder
	width int
	bold  bool
}

func (t *setter) line(s string) {
	t.out.WriteString(strings.TrimRight(s, " "))
	t.out.WriteByte('\n')
}

func (t *setter) strong(s string) string {
	if !t.bold {
		return s
	}
	return "\x1b[1m" + s + "\x1b[0m"
}

// title sets the title with its origin at the right, or under it when there is
// no room.
func (t *setter) title(p *Page) {
	room := t.width - wide(p.Title) - wide(p.Under)
	if p.Under != "" && room > gap {
		t.line(t.strong(p.Title) + strings.Repeat(" ", room) + p.Under)
		return
	}
	if p.Title != "" {
		t.line(t.strong(p.Title))
	}
	if p.Under != "" {
		t.wrap(p.Under, 0, 0)
	}
}

func wide(s string) int { return utf8.RuneCountInString(s) }

// wrap sets running text: the first line from one column, the rest from
// another.
func (t *setter) wrap(s string, first, rest int) {
	t.wrapAfter(strings.Repeat(" ", first), s, rest)
}

// wrapAfter sets running text after something that already stands on its first
// line.
func (t *setter) wrapAfter(line, s string, rest int) {
	empty := true
	for _, word := range strings.Fields(s) {
		if !empty && wide(line)+1+wide(word) > t.width {
			t.line(line)
			line, empty = strings.Repeat(" ", rest), true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	t.line(line)
}

func (t *setter) block(b Block) error {
	switch b := b.(type) {
	case Paragraph:
		t.wrap(string(b), indent, indent)
	case List:
		t.list(b)
	case Table:
		return t.table(b)
	case Ticks:
		t.ticks(b)
	}
	return nil
}

// ticks sets steps with a box before each and their marks under them.
func (t *setter) ticks(b Ticks) {
	t.line(strings.Repeat(" ", indent) + b.Heading)
	for _, s := range b.Steps {
		start := box
		if !s.Tick {
			start = strings.Repeat(" ", len(box))
		}
		at := indent + len(box) + 1
		t.wrapAfter(strings.Repeat(" ", indent)+start+" ", s.Text, at)
		if s.Mark != "" {
			t.wrap(s.Mark, at+indent, at+2*indent)
		}
	}
}

// list sets entries with their labels in a column of their own.
func (t *setter) list(l List) {
	labels := 0
	for _, e := range l {
		labels = max(labels, min(labelMost, wide(e.Label)))
	}
	at := indent
	if labels > 0 {
		at += labels + 2
	}
	for _, e := range l {
		start := strings.Repeat(" ", indent) + e.Label
		if wide(e.Label) > labels {
			t.line(start)
			start = ""
		}
		start += strings.Repeat(" ", max(0, at-wide(start)))
		rest := at
		if labels == 0 {
			rest += indent
		}
		t.wrapAfter(start, e.Text, rest)
		for _, m := range e.More {
			t.wrap(m, at+2*indent, at+3*indent)
		}
	}
}

// table sets a table in columns, wrapping its words where it must, or row by
// row where the columns do not fit even so.
func (t *setter) table(b Table) error {
	if b.Caption != "" {
		t.line(strings.Repeat(" ", indent) + b.Caption)
	}
	fitted, ok := fit(b, t.width-indent)
	if !ok {
		t.records(b)
		return nil
	}
	set, err := grid(fitted, plainTable...)
	if err != nil {
		return err
	}
	for l := range strings.Lines(set) {
		t.line(strings.Repeat(" ", indent) + strings.TrimRight(l, "\n"))
	}
	return nil
}

// gap is the room between two columns, and leastWrapped the narrowest a column
// of words is wrapped to.
const (
	gap          = 2
	leastWrapped = 18
)

// fit wraps the cells of the widest columns of words until the table is no
// wider than the room; false when it cannot be.
func fit(b Table, room int) (Table, bool) {
	widths, floors := make([]int, len(b.Columns)), make([]int, len(b.Columns))
	total := gap * (len(b.Columns) - 1)
	for i, c := range b.Columns {
		widths[i], floors[i] = wide(c.Name), wide(c.Name)
		for _, row := range b.Rows {
			widths[i] = max(widths[i], wide(row[i]))
			for _, word := range strings.Fields(row[i]) {
				floors[i] = max(floors[i], wide(word))
			}
		}
		if c.Right {
			floors[i] = widths[i]
		}
		floors[i] = max(floors[i], min(widths[i], leastWrapped))
		total += widths[i]
	}
	for ; total > room; total-- {
		widest := -1
		for i := range widths {
			if widths[i] > floors[i] && (widest < 0 || widths[i] > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return b, false
		}
		widths[widest]--
	}
	out := Table{Columns: b.Columns, Rows: make([][]string, len(b.Rows))}
	for i, row := range b.Rows {
		out.Rows[i] = make([]string, len(row))
		for j, cell := range row {
			out.Rows[i][j] = wrapped(cell, widths[j])
		}
	}
	return out, true
}

// wrapped breaks words into lines no wider than asked.
func wrapped(s string, width int) string {
	if wide(s) <= width {
		return s
	}
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		switch {
		case line == "":
			line = word
		case wide(line)+1+wide(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return strings.Join(append(lines, line), "\n")
}

// records sets each row of a table as a list of its columns, leaving out the
// empty ones.
func (t *setter) records(b Table) {
	names := 0
	for _, c := range b.Columns {
		names = max(names, wide(c.Name))
	}
	for i, row := range b.Rows {
		if i > 0 && row[0] != "" {
			t.line("")
		}
		for j, cell := range row {
			if cell == "" {
				continue
			}
			start := strings.Repeat(" ", indent) + b.Columns[j].Name
			start += strings.Repeat(" ", indent+names+gap-wide(start))
			t.wrapAfter(start, cell, indent+names+gap)
		}
	}
}

// plainTable is a table without a frame: a rule under the headings and no more.
var plainTable = []tablewriter.Option{
	tablewriter.WithPadding(tw.Padding{Left: tw.Empty, Right: strings.Repeat(" ", gap), Overwrite: true}),
	tablewriter.WithRendition(tw.Rendition{
		Borders: tw.BorderNone,
		Symbols: tw.NewSymbols(tw.StyleASCII),
		Settings: tw.Settings{
			Separators: tw.Separators{BetweenColumns: tw.Off},
			Lines:      tw.Lines{ShowHeaderLine: tw.On},
		},
	}),
}

// grid sets a table in columns by the options given. Headings are left as they
// are written, nothing is wrapped, figures stand to the right.
func grid(b Table, options ...tablewriter.Option) (string, error) {
	align := make(tw.Alignment, len(b.Columns))
	heads := make([]string, len(b.Columns))
	for i, c := range b.Columns {
		align[i], heads[i] = tw.AlignLeft, c.Name
		if c.Right {
			align[i] = tw.AlignRight
		}
	}
	var out strings.Builder
	tab := tablewriter.NewTable(&out, append([]tablewriter.Option{
		tablewriter.WithHeaderAutoFormat(tw.Off),
		tablewriter.WithHeaderAutoWrap(tw.WrapNone),
		tablewriter.WithRowAutoWrap(tw.WrapNone),
		tablewriter.WithAlignment(align),
	}, options...)...)
	tab.Header(heads)
	for _, r := range b.Rows {
		if err := tab.Append(r); err != nil {
			return "", err
		}
	}
	if err := tab.Render(); err != nil {
		return "", err
	}
	return out.String(), nil
}
