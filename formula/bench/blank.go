package bench

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/weigh"
	"assize/reference"
)

// Blank writes a bench record of a weighed formula to be filled in. Every value
// is left empty; beside each line stands what the receipt comes to.
func Blank(w *weigh.Weighed, t *reference.Tables) ([]byte, error) {
	f := w.Formula
	receipt, err := file.Write(f)
	if err != nil {
		return nil, fmt.Errorf("writing the bench record: %w", err)
	}
	b := &page{}
	b.line(0, "# Bench record of %s: what was really done.", oneLine(f.Title))
	b.line(0, "# Fill in what you know after the colons and leave the rest: what is filled in")
	b.line(0, "# takes the place of a doubt, what is left empty stays in doubt.")
	b.key(0, "baked", "the day, as 2026-11-07")
	b.key(0, "eggs", "weighed together out of their shells, as {number: 4, grams: 208}")
	b.line(0, "parts:")
	for i := range w.Parts {
		b.part(w, i, t)
	}
	b.key(0, "dish", "")
	b.line(0, "oven: # readings, as - {minute: 0, heat: 200 C}")
	b.line(0, "  -")
	b.key(0, "centre", "heat in the middle when it came out, as 78 C")
	b.key(0, "minutes", "in the oven, or over the fire")
	b.line(0, "departures: # anything else done otherwise, in your words")
	b.line(0, "  -")
	b.key(0, "meant", "how it should be, if you know better than the receipt says")
	b.line(0, "tasted: # what was seen, in a word or two; each taster under a dash of their own")
	b.line(0, "  - by:")
	b.key(4, "when", strings.Join(Times, ", "))
	for _, look := range reference.Looks {
		if look != "crust" || slices.ContainsFunc(f.Parts, func(p formula.Part) bool { return p.Kind == formula.Pastry }) {
			b.key(4, look, looks[look])
		}
	}
	b.key(4, "words", "anything else, as it was said")
	b.line(0, "formula: # as it stood; leave it be")
	for l := range strings.Lines(string(receipt)) {
		b.line(2, "%s", strings.TrimRight(l, "\n"))
	}
	return b.Bytes(), nil
}

// looks say what to look for at each place of the tasting sheet.
var looks = map[string]string{
	"cut":    "how it looks where it is cut",
	"wobble": "how it shakes",
	"crumb":  "crumb, bubbles or layers",
	"liquid": "what has run out after ten minutes",
	"spoon":  "what it does on the spoon",
	"mouth":  "how it feels in the mouth",
	"crust":  "the paste",
	"rim":    "",
	"centre": "",
	"top":    "",
	"base":   "",
}

type page struct{ bytes.Buffer }

func (b *page) line(indent int, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if text != "" {
		b.WriteString(strings.Repeat(" ", indent))
	}
	b.WriteString(text + "\n")
}

// remarkAt is the column remarks stand in, where the key leaves room.
const remarkAt = 26

// key writes a key to be filled in, with a remark beside it.
func (b *page) key(indent int, key, remark string) {
	text := strings.Repeat(" ", indent) + key + ":"
	if remark != "" {
		text += strings.Repeat(" ", max(1, remarkAt-len(text))) + "# " + remark
	}
	b.line(0, "%s", text)
}

func (b *page) part(w *weigh.Weighed, i int, t *reference.Tables) {
	p := &w.Parts[i]
	b.line(2, "- part: %s", scalar(p.Of.Name))
	b.line(4, "used: # what was really weighed")
	for l := range p.Of.Lines {
		list := ingredientsOf(&p.Of.Lines[l])
		for _, id := range list {
			b.line(6, "- line: %s", scalar(p.Of.Lines[l].Text))
			if len(list) > 1 {
				if ing, ok := t.Ingredient(id); ok {
					b.line(8, "of: %s", scalar(ing.Name))
				}
			}
			b.key(8, "grams", byReceipt(w, p, l, id))
		}
	}
	b.line(4, "added: # what the receipt does not list, as - {of: cornflour, grams: 8}")
	b.line(6, "-")
	b.line(4, "done: # how it was made where you did otherwise, or the receipt does not say")
	b.line(6, "-")
}

// byReceipt is what the receipt comes to on a line, for the remark.
func byReceipt(w *weigh.Weighed, p *weigh.Part, line int, id string) string {
	var said []string
	for i := range p.Items {
		it := &p.Items[i]
		if it.Line != line || it.Ingredient.ID != id {
			continue
		}
		switch {
		case it.State != formula.Stated:
			return "the receipt gives no amount"
		case it.Amount.Parts:
			said = append(said, it.Grams.Likely.String()+" parts")
		case it.Grams.IsExact():
			said = append(said, it.Grams.Likely.Round(1).String())
		default:
			said = append(said, fmt.Sprintf("%s (%s-%s)", it.Grams.Likely.Round(0), it.Grams.Low.Round(0), it.Grams.High.Round(0)))
		}
	}
	return strings.Join(said, " or ") + " by the receipt"
}

// scalar is a text as YAML takes it back.
func scalar(s string) string {
	out, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: oneLine(s)})
	if err != nil {
		return fmt.Sprintf("%q", oneLine(s)) // no text fails to be written; a quoted one is good YAML
	}
	// The encoder breaks long texts; joined again they are one plain text.
	return strings.Join(strings.Fields(string(out)), " ")
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
