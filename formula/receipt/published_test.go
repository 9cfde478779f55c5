package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference"
)

// fields is a published line as a person gives it field by field.
func fields(l reference.PublishedLine) Plain {
	p := Plain{Unit: l.Unit, Of: l.Of, Form: l.Form}
	if l.Amount != nil {
		p.Amount = l.Amount.String()
		if l.Max != nil {
			p.Amount += " to " + l.Max.String()
		}
	}
	return p
}

// Every line of the published formulas can be read.
func TestPublishedLines(t *testing.T) {
	tab := tables(t)
	require.NotEmpty(t, tab.Published)
	for _, p := range tab.Published {
		r := Reader{Tables: tab, Year: p.Year, Place: p.Place, KitchenYear: p.KitchenYear, KitchenPlace: p.Place}
		for _, l := range p.Lines {
			line, troubles := r.Plain(fields(l))
			require.Empty(t, troubles, "%s: %+v", p.ID, l)
			require.NotEmpty(t, line.Items, "%s: %+v", p.ID, l)
		}
	}
}

// The text that is put together from fields says the same when it is read as
// words. Left out are lines whose form names something that would be a thing of
// its own in words: those say so in a note.
func TestPublishedTextReadsBack(t *testing.T) {
	tab := tables(t)
	held, aside := 0, 0
	for _, p := range tab.Published {
		r := Reader{Tables: tab, Year: p.Year, Place: p.Place, KitchenYear: p.KitchenYear, KitchenPlace: p.Place}
		for _, l := range p.Lines {
			line, _ := r.Plain(fields(l))
			if notesAside(line.Notes) {
				aside++
				continue
			}
			again, troubles := r.Line(line.Text)
			require.Empty(t, troubles, line.Text)
			require.Len(t, again.Items, len(line.Items), line.Text)
			for i, it := range line.Items {
				got := again.Items[i]
				require.Equal(t, it.Ingredient, got.Ingredient, line.Text)
				a, b := it.Amount, got.Amount
				a.Words, b.Words = "", ""
				require.True(t, a.Number.Low.Equal(b.Number.Low) && a.Number.High.Equal(b.Number.High), line.Text)
				a.Number, b.Number = reference.Span{}, reference.Span{}
				require.Equal(t, a, b, line.Text)
			}
			held++
		}
	}
	require.Greater(t, held, 100*aside)
}

func notesAside(notes []string) bool {
	for _, n := range notes {
		if len(n) > 30 && n[len(n)-len("and not weighed"):] == "and not weighed" {
			return true
		}
	}
	return false
}
