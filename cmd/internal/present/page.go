package present

// Page is something to read: a title, the most important sentences, and
// sections. It knows nothing of how it is set out.
type Page struct {
	Title    string
	Under    string // where the receipt comes from
	Lead     string // the most important, said first
	Sections []Section
}

// Section is a heading with what stands under it.
type Section struct {
	Heading string
	Blocks  []Block
}

// Block is a Paragraph, a List, a Table or Ticks.
type Block interface{ block() }

// Paragraph is running text.
type Paragraph string

// List is entries one under another, labelled or not.
type List []Entry

// Entry is one entry of a list. More stands under it, one thing a line.
type Entry struct {
	Label string
	Text  string
	More  []string
}

// Table is columns of short cells. Rows must have a cell for every column.
type Table struct {
	Caption string // what the table is of, empty when the heading tells
	Columns []Column
	Rows    [][]string
}

// Column is a column's heading and whether its cells stand to the right, as
// figures do.
type Column struct {
	Name  string
	Right bool
}

// Ticks are steps to be ticked off, under a heading of their own.
type Ticks struct {
	Heading string
	Steps   []BenchStep
}

func (Paragraph) block() {}
func (List) block()      {}
func (Table) block()     {}
func (Ticks) block()     {}

// section adds a section unless nothing stands under its heading.
func (p *Page) section(heading string, blocks ...Block) {
	var kept []Block
	for _, b := range blocks {
		switch b := b.(type) {
		case Paragraph:
			if b == "" {
				continue
			}
		case List:
			if len(b) == 0 {
				continue
			}
		case Table:
			if len(b.Rows) == 0 {
				continue
			}
		}
		kept = append(kept, b)
	}
	if len(kept) > 0 {
		p.Sections = append(p.Sections, Section{heading, kept})
	}
}
