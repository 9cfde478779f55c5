// Package fault describes what is wrong with a page a person wrote: where,
// what, and what to write instead. Faults are collected, so that one run shows
// them all.
package fault

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// Fault is one thing wrong at one place. Line and Column count from 1, columns
// in characters; a zero Line means the page as a whole.
type Fault struct {
	File   string
	Line   int
	Column int
	What   string // lower case, no final stop
	Hint   string // what to write instead; may be empty
	Source string // the text of the line
}

// Error is the fault on one line: file:line:column: error: what.
func (f Fault) Error() string {
	switch {
	case f.Line == 0:
		return fmt.Sprintf("%s: error: %s", f.File, f.What)
	case f.Column == 0:
		return fmt.Sprintf("%s:%d: error: %s", f.File, f.Line, f.What)
	}
	return fmt.Sprintf("%s:%d:%d: error: %s", f.File, f.Line, f.Column, f.What)
}

// List is every fault found, an error when it is not empty.
type List []Fault

// Error is the first fault and a count of the others.
func (l List) Error() string {
	switch len(l) {
	case 0:
		return "no fault"
	case 1:
		return l[0].Error()
	}
	return fmt.Sprintf("%s (and %d more)", l[0].Error(), len(l)-1)
}

// Err is the list as an error, nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	return l
}

// Write prints each fault with its source line, a caret under the place, and
// the hint.
func (l List) Write(w io.Writer) error {
	var b strings.Builder
	for _, f := range l {
		fmt.Fprintln(&b, f.Error())
		if f.Source != "" {
			shown, column := excerpt(f.Source, f.Column)
			fmt.Fprintf(&b, "    %s\n", shown)
			if column > 0 {
				fmt.Fprintf(&b, "    %s^\n", strings.Repeat(" ", column-1))
			}
		}
		if f.Hint != "" {
			fmt.Fprintf(&b, "  hint: %s\n", f.Hint)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// widest is how much of a source line is shown; longer lines are cut around
// the fault so that the caret stays beside what it points at.
const widest = 100

func excerpt(line string, column int) (string, int) {
	clean := []rune(strings.Map(func(r rune) rune {
		if r == '\t' || r < ' ' || r == utf8.RuneError {
			return ' '
		}
		return r
	}, line))
	if len(clean) <= widest {
		return string(clean), min(column, len(clean)+1)
	}
	from := max(0, column-widest/2)
	to := min(len(clean), from+widest)
	shown := string(clean[from:to])
	column -= from
	if from > 0 {
		shown, column = "..."+shown, column+3
	}
	if to < len(clean) {
		shown += "..."
	}
	return shown, column
}

// Page is a text being read, with the faults found in it so far.
type Page struct {
	Name   string
	Text   []byte
	lines  []string
	faults List
}

// NewPage starts a page. The name is what the person calls the file.
func NewPage(name string, text []byte) *Page {
	return &Page{Name: name, Text: text}
}

// Add records a fault at a line and column, with an optional hint. A place
// behind the end, where something was missed, is taken as the end.
func (p *Page) Add(line, column int, hint, format string, args ...any) {
	if p.lines == nil {
		p.lines = Lines(string(p.Text))
	}
	if line > len(p.lines) {
		line = len(p.lines)
		column = utf8.RuneCountInString(p.lines[line-1]) + 1
	}
	p.faults = append(p.faults, Fault{
		File: p.Name, Line: line, Column: column,
		What: fmt.Sprintf(format, args...), Hint: hint, Source: p.line(line),
	})
}

// line is the text of a line, numbered from 1.
func (p *Page) line(n int) string {
	if n < 1 || n > len(p.lines) {
		return ""
	}
	return p.lines[n-1]
}

// Faults lists what was found, in the order of the page.
func (p *Page) Faults() List {
	slices.SortStableFunc(p.faults, func(a, b Fault) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	return p.faults
}
