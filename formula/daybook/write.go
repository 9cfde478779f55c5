package daybook

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula/file"
)

// head is what a new day-book begins with.
const head = `# Day-book: what was baked, what was foretold of it, and what the tasters saw.
# One bake after another, and what was tasted later of one. It is added to by
# the program and never rewritten.
`

// entry writes one bake as it stands in the book.
func (e *Entry) entry() (string, error) {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("- bake: %d", e.Bake)
	if e.Baked != "" {
		line("  baked: %s", scalar(e.Baked))
	}
	line("  title: %s", scalar(e.Title))
	line("  version: %s", scalar(e.Version))
	line("  tables: %s", scalar(e.Tables))
	line("  readings: %d", e.Readings)
	if len(e.Predicted) > 0 {
		line("  predicted:")
		for _, p := range e.Predicted {
			line("    - part: %s", scalar(p.Part))
			line("      kind: %s", scalar(p.Kind))
			line("      likeliest: %s", scalar(p.Likeliest))
			var shares []string
			for _, s := range p.Shares {
				shares = append(shares, fmt.Sprintf("%s: %s", scalar(s.Texture), s.Share.Round(3)))
			}
			line("      shares: {%s}", strings.Join(shares, ", "))
		}
	}
	if len(e.Tasted) > 0 {
		line("  tasted:")
		for i := range e.Tasted {
			b.WriteString(e.Tasted[i].taster())
		}
	}
	line("  record:")
	record, err := e.record()
	if err != nil {
		return "", err
	}
	for l := range strings.Lines(record) {
		if l = strings.TrimRight(l, "\r\n"); strings.TrimSpace(l) == "" {
			line("")
		} else {
			line("    %s", l)
		}
	}
	return b.String(), nil
}

// later writes what was tasted later as it stands in the book.
func (t *Tasted) later(bake int) string {
	return fmt.Sprintf("- later: %d\n  tasted:\n", bake) + t.taster()
}

// taster writes one taster of a list of them.
func (t *Tasted) taster() string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("    - by: %s", scalar(t.By))
	if t.When != "" {
		line("      when: %s", scalar(t.When))
	}
	if len(t.Results) > 0 {
		line("      results:")
		for _, x := range t.Results {
			line("        - {part: %s, texture: %s}", flowed(x.Part), flowed(x.Texture))
		}
	}
	if t.Words != "" {
		line("      words: %s", scalar(t.Words))
	}
	return b.String()
}

// record is the bench record word for word, or, where there is none, the
// receipt alone as one.
func (e *Entry) record() (string, error) {
	if text := e.Record.Text(); len(text) > 0 {
		s := strings.TrimPrefix(string(text), "\ufeff")
		return strings.TrimRight(strings.TrimPrefix(s, "---\n"), "\n") + "\n", nil
	}
	receipt, err := file.Write(e.Record.Formula)
	if err != nil {
		return "", fmt.Errorf("writing the receipt into the day-book: %w", err)
	}
	var b strings.Builder
	b.WriteString("formula:\n")
	for l := range strings.Lines(string(receipt)) {
		b.WriteString("  " + l)
	}
	return b.String(), nil
}

// scalar is a text as YAML takes it back.
func scalar(s string) string {
	out, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: strings.Join(strings.Fields(s), " ")})
	if err != nil {
		return fmt.Sprintf("%q", s) // no text fails to be written; a quoted one is good YAML
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

// flowed is a text inside a mapping on one line, where commas and brackets tell.
func flowed(s string) string {
	if strings.ContainsAny(s, ",[]{}") {
		return fmt.Sprintf("%q", s)
	}
	return scalar(s)
}
