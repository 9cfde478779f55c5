package file

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
	"assize/reference/spell"
)

// reading is one page being read.
type reading struct {
	sheet.Reader
	tables *reference.Tables
	rows   [][]rune // the page by lines, split when first asked for
}

func newReading(page *fault.Page, t *reference.Tables) *reading {
	return &reading{Reader: sheet.Reader{Page: page}, tables: t}
}

// longestText is the most characters a title, a name or an ingredient line may
// have. Nobody writes one of that length; a page with a lost line end has them.
const longestText = 500

// given returns the values of a mapping by key, leaving out those that are
// null: a key with nothing after it says nothing.
func (p *reading) given(n *yaml.Node, known []string) map[string]*yaml.Node {
	out := map[string]*yaml.Node{}
	p.Fields(n, known, func(key string, _, v *yaml.Node) {
		if v.Tag != "!!null" {
			out[key] = v
		}
	})
	return out
}

// words is the node's text on one line, its ends trimmed. It must say
// something, be of a bearable length and hold no control characters: those
// would reach the terminal.
func (p *reading) words(n *yaml.Node) (string, bool) {
	s, ok := p.long(n)
	if ok && utf8.RuneCountInString(s) > longestText {
		p.Add(n, "is a line end missing?", "the text is %d characters long; at most %d are read", utf8.RuneCountInString(s), longestText)
		return "", false
	}
	return s, ok
}

// long is words for texts of any length.
func (p *reading) long(n *yaml.Node) (string, bool) {
	if n.Kind == yaml.MappingNode {
		hint := ""
		if n.Style&yaml.FlowStyle == 0 {
			hint = "put quotes round text that holds a colon"
		}
		p.Add(n, hint, "words are wanted here, not keys and values")
		return "", false
	}
	s, ok := p.Text(n)
	if !ok {
		return "", false
	}
	if strings.ContainsFunc(s, unprintable) {
		p.Add(n, "", "the text holds a character that cannot be printed")
		return "", false
	}
	if s = strings.Join(strings.Fields(s), " "); s == "" {
		p.Add(n, "leave it out when there is nothing to say", "the text is empty")
		return "", false
	}
	return s, true
}

// asCopied is a text of any length with its lines kept: the receipt as it was
// copied out.
func (p *reading) asCopied(n *yaml.Node) string {
	if _, ok := p.long(n); !ok {
		return ""
	}
	return strings.TrimRight(n.Value, "\n")
}

func unprintable(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\t' }

// list is a list of texts; a single one counts as a list of one.
func (p *reading) list(n *yaml.Node) []string {
	if n.Kind != yaml.SequenceNode {
		if s, ok := p.words(n); ok {
			return []string{s}
		}
		return nil
	}
	var out []string
	for _, c := range n.Content {
		if s, ok := p.words(c); ok {
			out = append(out, s)
		}
	}
	return out
}

// oneOf is one of the known words, in any case of letters. What names it in
// the fault: "unknown place".
func (p *reading) oneOf(n *yaml.Node, what string, known []string) string {
	s, ok := p.words(n)
	if !ok {
		return ""
	}
	if low := strings.ToLower(s); slices.Contains(known, low) {
		return low
	}
	hint := spell.Ask(s, known)
	if hint == "" {
		hint = "known: " + strings.Join(known, ", ")
	}
	p.Add(n, hint, "unknown %s %q", what, s)
	return ""
}

// The years a receipt or a kitchen may have.
const earliest, latest = 1000, 2100

func (p *reading) year(n *yaml.Node) int {
	s, ok := p.words(n)
	if !ok {
		return 0
	}
	y, err := strconv.Atoi(s)
	switch {
	case err != nil:
		p.Add(n, "write one year in figures, the likeliest", "%q is not a year", s)
		return 0
	case y < earliest || y > latest:
		p.Add(n, "", "the year %d is not between %d and %d", y, earliest, latest)
		return 0
	}
	return y
}
