package present

import (
	"fmt"
	"slices"
	"strings"

	"assize/reference"
)

// citations numbers the works a page rests on in the order it names them.
type citations struct {
	tables *reference.Tables
	cited  []cited
}

type cited struct {
	source   *reference.Source
	locators []string
}

// cite gives the mark to set beside a figure, "[3]", and keeps where in the
// work it stands. A source the tables do not have gives no mark.
func (c *citations) cite(p reference.Provenance) string {
	s, ok := c.tables.Source(p.Source)
	if !ok {
		return ""
	}
	at := p.Locator
	if p.How == reference.HowMemory && s.Kind != "memory" {
		at += " (from memory)"
	}
	return c.work(s, at)
}

// work is cite for a work already at hand.
func (c *citations) work(s *reference.Source, locator string) string {
	i := slices.IndexFunc(c.cited, func(n cited) bool { return n.source.ID == s.ID })
	if i < 0 {
		i = len(c.cited)
		c.cited = append(c.cited, cited{source: s})
	}
	if locator != "" && !slices.Contains(c.cited[i].locators, locator) {
		c.cited[i].locators = append(c.cited[i].locators, locator)
	}
	return fmt.Sprintf("[%d]", i+1)
}

// list is the sources as numbered, each with where in it was looked.
func (c *citations) list() List {
	var out List
	for i, n := range c.cited {
		e := Entry{Label: fmt.Sprintf("[%d]", i+1), Text: work(n.source)}
		if len(n.locators) > 0 {
			e.Text += ": " + strings.Join(n.locators, "; ")
		}
		out = append(out, e)
	}
	return out
}

// work is a source as it is cited in a list.
func work(s *reference.Source) string {
	out := s.Title
	if s.Author != "" {
		out = s.Author + ", " + out
	}
	var after []string
	if s.Edition != "" {
		after = append(after, s.Edition)
	}
	if s.Year != "" {
		after = append(after, s.Year)
	}
	if len(after) > 0 {
		out += " (" + strings.Join(after, ", ") + ")"
	}
	if s.Address != "" {
		out += ", " + s.Address
	}
	return out
}
