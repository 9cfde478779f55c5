package file

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/reference/fault"
	"assize/reference/sheet"
)

// parse returns the root of the page, nil when it cannot be read. What the
// YAML reader says of a page it cannot read is often of another line and
// seldom of the slip itself, so the page is looked over for the slips people
// make, and the first one found is reported in its stead.
func parse(page *fault.Page) (*yaml.Node, fault.List) {
	root := sheet.Parse(page)
	faults := page.Faults()
	if root != nil || len(faults) != 1 || !strings.Contains(faults[0].What, "cannot be read as YAML") {
		return root, faults
	}
	if strings.Contains(faults[0].What, "exceeded max depth") {
		faults[0].What, faults[0].Hint = "the page is nested too deep to be read", "is it a receipt at all?"
		return nil, faults
	}
	if s, ok := findSlip(string(page.Text)); ok {
		own := fault.NewPage(page.Name, page.Text)
		own.Add(s.line, s.column, s.hint, "%s", s.what)
		return nil, own.Faults()
	}
	return nil, faults
}

// slip is a likely reason why a page is not YAML.
type slip struct {
	line, column int
	what, hint   string
}

// findSlip looks for the first slip of a page that could not be read.
func findSlip(text string) (slip, bool) {
	rows := fault.Lines(text)
	var levels indents
	for i := 0; i < len(rows); i++ {
		row := []rune(rows[i])
		at := slip{line: i + 1}
		for j, r := range row {
			if unprintable(r) {
				at.column, at.what = j+1, fmt.Sprintf("a character that cannot be printed (%U)", r)
				at.hint = "is it a text file?"
				return at, true
			}
		}
		e := enter(row)
		switch {
		case e.tab > 0:
			at.column, at.what, at.hint = e.tab, "the line is indented with a tab", "indent with spaces; YAML takes no tabs there"
			return at, true
		case e.blank:
			continue
		case !levels.accept(e):
			at.column, at.what = e.columns[0], "the line is indented like none of those above it"
			at.hint = "lines that belong together begin in the same column"
			return at, true
		}
		s, more := valueSlip(row, e, rows[i+1:])
		if s.what != "" {
			s.line = i + 1
			return s, true
		}
		i += more // lines the text goes on over
	}
	return slip{}, false
}

// entry is how a line begins: the columns of its dashes and of its key or
// text, and where its value starts.
type entry struct {
	blank   bool
	tab     int   // column of a tab in the indenting
	columns []int // from 1
	value   int   // index of the value's first character; len(row) when none
	key     bool
	opens   bool // nothing stands after the key or the dash
}

func enter(row []rune) entry {
	i := 0
	for i < len(row) && (row[i] == ' ' || row[i] == '\t') {
		if row[i] == '\t' {
			return entry{tab: i + 1}
		}
		i++
	}
	if i == len(row) || row[i] == '#' || i == 0 && strings.HasPrefix(string(row), "---") {
		return entry{blank: true}
	}
	e := entry{columns: []int{i + 1}}
	for i < len(row) && row[i] == '-' && (i+1 == len(row) || row[i+1] == ' ') {
		for i++; i < len(row) && row[i] == ' '; i++ {
		}
		if i < len(row) {
			e.columns = append(e.columns, i+1)
		}
	}
	e.value = i
	if k := keyEnd(row[i:]); k > 0 {
		e.key = true
		for i += k; i < len(row) && row[i] == ' '; i++ {
		}
		e.value = i
	}
	e.opens = e.value == len(row) || row[e.value] == '#'
	return e
}

// keyEnd is how many characters a plain key and its colon take, 0 when the
// text does not begin with one.
func keyEnd(row []rune) int {
	for i, r := range row {
		switch {
		case i == 0 && strings.ContainsRune("\"'[{&*!|>%@`", r):
			return 0
		case r == ':' && (i+1 == len(row) || row[i+1] == ' '):
			return i + 1
		case r == '#' && i > 0 && row[i-1] == ' ':
			return 0
		}
	}
	return 0
}

// indents are the columns in use, outermost first.
type indents struct {
	columns []int
	opened  bool // the line before ends with a key or a dash and wants something under it
}

// accept takes the line's columns in, and reports whether it stands where a
// line may stand.
func (l *indents) accept(e entry) bool {
	first := e.columns[0]
	n := len(l.columns)
	for n > 0 && l.columns[n-1] > first {
		n--
	}
	popped := n < len(l.columns)
	known := n > 0 && l.columns[n-1] == first
	if len(l.columns) > 0 && !known {
		if popped || e.key && !l.opened {
			return false
		}
		if !l.opened {
			return true // the text of the line before goes on
		}
	}
	l.columns = append(l.columns[:n:n], e.columns...)
	if known {
		l.columns = append(l.columns[:n:n], e.columns[1:]...)
	}
	l.opened = e.opens
	return true
}

// valueSlip looks at the text of a line. When there is nothing wrong with it,
// it tells how many of the lines below the text goes on over.
func valueSlip(row []rune, e entry, below []string) (s slip, more int) {
	if e.opens {
		return slip{}, 0
	}
	s = slip{column: e.value + 1}
	switch r := row[e.value]; r {
	case '"', '\'':
		end, bad := closing(row, e.value)
		if end < 0 && bad == 0 {
			if more = closedBelow(r, below); more > 0 {
				return slip{}, more
			}
		}
		switch {
		case bad > 0:
			s.column, s.what = bad, "a backslash inside double quotes"
			s.hint = "put single quotes round the text instead"
		case end < 0:
			s.what, s.hint = "the quote is opened here and not closed", "close it at the end of the text"
			if r == '\'' {
				s.hint += "; if it is an apostrophe, put double quotes round the text"
			}
		case trails(row[end+1:]):
			s.column, s.what = end+2+spaces(row[end+1:]), "the text goes on after the closing quote"
			s.hint = "put quotes round the whole of it, single ones when it holds double ones"
		}
	case '[', '{':
		var closed bool
		if more, closed = balanced(string(row[e.value:]), below); !closed {
			s.what, s.hint = "the bracket is opened here and not closed", "close it with "+string(r+2)
		}
	case '*', '&', '!', '%', '@', '`':
		s.what, s.hint = fmt.Sprintf("a text cannot begin with %c", r), "put quotes round it"
	case '|', '>':
		return slip{}, blockRows(e, below)
	default:
		for i := e.value; i < len(row) && !(row[i] == '#' && row[i-1] == ' '); i++ {
			if row[i] == ':' && (i+1 == len(row) || row[i+1] == ' ') {
				s.column, s.what = i+1, "a second colon in one line"
				s.hint = "put quotes round text that holds a colon"
				break
			}
		}
	}
	return s, more
}

// closing is the index of the quote that closes the one at from, -1 when the
// line has none; bad is the column of a backslash that starts no escape.
func closing(row []rune, from int) (end, bad int) {
	quote := row[from]
	for i := from + 1; i < len(row); i++ {
		switch {
		case quote == '"' && row[i] == '\\':
			if i+1 < len(row) && !strings.ContainsRune("0abtnvfre \"/\\N_LPxuU\t", row[i+1]) {
				return -1, i + 1
			}
			i++
		case row[i] == quote && quote == '\'' && i+1 < len(row) && row[i+1] == quote:
			i++
		case row[i] == quote:
			return i, 0
		}
	}
	return -1, 0
}

// closedBelow is how many lines below a quoted text goes on over until it is
// closed, 0 when it is not closed before the next key.
func closedBelow(quote rune, below []string) int {
	for i, row := range below {
		if keyEnd([]rune(strings.TrimLeft(row, " -"))) > 0 {
			return 0
		}
		if strings.ContainsRune(row, quote) {
			return i + 1
		}
	}
	return 0
}

func spaces(row []rune) int {
	n := 0
	for n < len(row) && row[n] == ' ' {
		n++
	}
	return n
}

// trails reports text after a closing quote that may not stand there.
func trails(row []rune) bool {
	n := spaces(row)
	if n == len(row) {
		return false
	}
	return !strings.ContainsRune(":,]}", row[n]) && !(row[n] == '#' && n > 0)
}

// balanced reports whether every bracket of a text is closed before the next
// line that begins with a key at the margin, and over how many lines below the
// brackets go on.
func balanced(text string, below []string) (more int, closed bool) {
	depth, quote := 0, rune(0)
	for {
		for _, r := range text {
			switch {
			case quote != 0:
				if r == quote {
					quote = 0
				}
			case r == '"':
				quote = r
			case r == '[' || r == '{':
				depth++
			case r == ']' || r == '}':
				depth--
			}
		}
		if depth <= 0 {
			return more, true
		}
		if more == len(below) {
			return more, false
		}
		text = below[more]
		if text != "" && text[0] != ' ' && keyEnd([]rune(text)) > 0 {
			return more, false
		}
		more++
	}
}

// blockRows is how many of the lines below belong to the block text the line
// opens with | or >.
func blockRows(e entry, below []string) int {
	for n, row := range below {
		trimmed := strings.TrimLeft(row, " ")
		if strings.TrimSpace(trimmed) != "" && len(row)-len(trimmed) < e.columns[0] {
			return n
		}
	}
	return len(below)
}
