package file

import (
	"strings"

	"gopkg.in/yaml.v3"

	"assize/reference/fault"
)

// spot finds where on the page character number column (from 1) of a text
// stands. Quotes, escapes and folded lines are walked over; where the walk
// loses the text, the start of the node is given.
func (p *reading) spot(n *yaml.Node, column int) (line, col int) {
	if p.rows == nil {
		for _, row := range fault.Lines(string(p.Page.Text)) {
			p.rows = append(p.rows, []rune(row))
		}
	}
	w := walk{rows: p.rows, row: n.Line - 1, col: n.Column - 1, style: n.Style}
	switch {
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		w.enterBlock()
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		w.col++
	}
	for i, r := range []rune(n.Value) {
		if !w.rest() {
			return n.Line, n.Column
		}
		if i == column-1 {
			break
		}
		if !w.over(r) {
			return n.Line, n.Column
		}
	}
	return w.row + 1, w.col + 1
}

// walk is a place on the page, counted from nought, inside a text.
type walk struct {
	rows     [][]rune
	row, col int
	style    yaml.Style
	indent   int // of a block text
}

// rest reports whether the walk is still on the page.
func (w *walk) rest() bool { return w.row < len(w.rows) && w.col <= len(w.rows[w.row]) }

func (w *walk) atEnd() bool { return strings.TrimSpace(string(w.rows[w.row][w.col:])) == "" }

func (w *walk) enterBlock() {
	w.nextRow()
	if w.row < len(w.rows) {
		w.indent = w.col
	}
}

// nextRow goes to the first character of the next line that has one.
func (w *walk) nextRow() {
	for w.row++; w.row < len(w.rows); w.row++ {
		row := w.rows[w.row]
		for w.col = 0; w.col < len(row); w.col++ {
			if row[w.col] != ' ' && row[w.col] != '\t' {
				return
			}
		}
	}
	w.col = 0
}

// over steps over one character of the text, and reports whether it was there.
func (w *walk) over(r rune) bool {
	if (r == ' ' || r == '\n') && w.atEnd() {
		w.nextRow()
		return true
	}
	row := w.rows[w.row]
	if w.col >= len(row) {
		return r == '\n' // one of several blank lines already passed
	}
	switch {
	case w.style&yaml.DoubleQuotedStyle != 0 && row[w.col] == '\\':
		return w.overEscape()
	case row[w.col] != r:
		return false
	case w.style&yaml.SingleQuotedStyle != 0 && r == '\'':
		w.col++ // written twice
	}
	w.col++
	return true
}

func (w *walk) overEscape() bool {
	row := w.rows[w.row]
	if w.col+1 >= len(row) {
		return false // a line joined to the next
	}
	switch row[w.col+1] {
	case 'x':
		w.col += 4
	case 'u':
		w.col += 6
	case 'U':
		w.col += 10
	default:
		w.col += 2
	}
	return w.col <= len(row)
}
