package present

import (
	"fmt"
	"io"
	"strings"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/reference/fault"
)

// ReadRemarks are the comments of a file that was read from words: how each line
// was taken, beside it, and what could not be read.
func ReadRemarks(t *receipt.Trace) file.Remarks {
	out := file.Remarks{Parts: map[int][]string{}, Lines: map[file.LineAt][]string{}}
	out.Top = append(out.Top, "Read from the words below, under `text`. Hold each line against them.")
	if n := len(t.Unread); n > 0 {
		out.Top = append(out.Top, fmt.Sprintf("NOT READ: %s. `assize check` stops at them until they are mended.", places(n)))
	}
	for _, i := range t.Read {
		says := taken(i)
		switch {
		case i.Part < 0:
			out.Top = append(out.Top, fmt.Sprintf("%q, line %d: %s", i.Words, i.Line, says))
		case i.Index < 0:
			out.Parts[i.Part] = append(out.Parts[i.Part], says)
		default:
			at := file.LineAt{Part: i.Part, Line: i.Index}
			if len(out.Lines[at]) == 0 {
				says = fmt.Sprintf("%q, line %d: %s", i.Words, i.Line, says)
			} else {
				says = "  and " + says
			}
			out.Lines[at] = append(out.Lines[at], says)
		}
	}
	for _, u := range t.Unread {
		says := "NOT READ: " + u.Why
		if u.Hint != "" {
			says += "; " + u.Hint
		}
		if u.Part >= 0 {
			at := file.LineAt{Part: u.Part, Line: u.Index}
			out.Lines[at] = append(out.Lines[at], says)
			continue
		}
		out.Top = append(out.Top, fmt.Sprintf("%q, line %d: %s", u.Words, u.Line, says))
	}
	for _, a := range t.Aside {
		if !a.Furniture() {
			out.Top = append(out.Top, fmt.Sprintf("%q, line %d: left out: %s", a.Words, a.Line, a.Why))
		}
	}
	return out
}

func places(n int) string { return several(n, "place") }

// taken is what words were taken for, between what bounds, and why.
func taken(i receipt.Interpretation) string {
	s := i.Took
	if i.Range != "" {
		s += " (" + i.Range + ")"
	}
	if i.Why != "" {
		s += ": " + i.Why
	}
	return s
}

// ReadTrace tells on the terminal how a receipt was read: first how much of it,
// then every line with the words it came from.
func ReadTrace(w io.Writer, f *formula.Formula, t *receipt.Trace) error {
	var b strings.Builder
	lines := 0
	for _, p := range f.Parts {
		lines += len(p.Lines)
	}
	fmt.Fprintf(&b, "%s: %s read", f.Title, several(lines, "ingredient line"))
	if n := len(t.Unread); n > 0 {
		fmt.Fprintf(&b, ", and %s not understood; they are marked in the file", places(n))
	}
	b.WriteString(".\n")
	line, words := 0, ""
	for _, i := range t.Read {
		if i.Line != line || i.Words != words {
			fmt.Fprintf(&b, "%6s  %s\n", fmt.Sprintf("%d:%d", i.Line, i.Column), i.Words)
			line, words = i.Line, i.Words
		}
		fmt.Fprintf(&b, "          %s\n", taken(i))
	}
	for _, a := range t.Aside {
		if !a.Furniture() {
			fmt.Fprintf(&b, "%6s  %s\n          left out: %s\n", fmt.Sprintf("%d:%d", a.Line, a.Column), a.Words, a.Why)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func several(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// ReadFaults are the places that could not be read, as faults of the text.
func ReadFaults(name, text string, t *receipt.Trace) fault.List {
	lines := fault.Lines(text)
	var out fault.List
	for _, u := range t.Unread {
		f := fault.Fault{File: name, Line: u.Line, Column: u.Column, What: u.Why, Hint: u.Hint}
		if u.Line >= 1 && u.Line <= len(lines) {
			f.Source = lines[u.Line-1]
		}
		out = append(out, f)
	}
	return out
}
