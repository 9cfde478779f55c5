package file_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
)

// A receipt that was read whole from its words makes a file that is read again
// as the same formula, words and all; one that was not makes a file with a
// fault for every line that could not be read.
func TestWordsMakeAFile(t *testing.T) {
	names, err := filepath.Glob("../../testdata/receipts-in-words/*/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			words, err := os.ReadFile(name)
			require.NoError(t, err)
			r := receipt.Reader{Tables: tables(t), Year: 1838, Place: "england"}
			f, trace := r.Receipt(string(words), receipt.About{})
			require.NotNil(t, f)
			text, err := file.WriteWith(f, file.Remarks{Top: []string{"read from words"}, Parts: map[int][]string{0: {"a part"}}, Lines: map[file.LineAt][]string{{Part: 0, Line: 0}: {"a line"}}})
			require.NoError(t, err)
			got, faults := file.Read(name, text, tables(t))
			unread := 0
			for _, u := range trace.Unread {
				if u.Index >= 0 {
					unread++
				}
			}
			if unread > 0 {
				require.NotEmpty(t, faults, "a line that could not be read passes:\n%s", text)
				return
			}
			require.NoError(t, faults.Err(), "%s", text)
			require.Equal(t, f.Text, got.Text)
			require.Equal(t, f.Title, got.Title)
			require.Len(t, got.Parts, len(f.Parts))
			for i, p := range f.Parts {
				q := got.Parts[i]
				require.Equal(t, p.Take, q.Take)
				require.Equal(t, p.Steps, q.Steps)
				require.Len(t, q.Lines, len(p.Lines))
				for j, l := range p.Lines {
					require.Equal(t, ingredients(l.Items), ingredients(q.Lines[j].Items), l.Text)
					require.Len(t, q.Lines[j].Either, len(l.Either), l.Text)
				}
			}
		})
	}
}

// ingredients are the items of a line as far as they are weighed.
func ingredients(items []formula.Item) []string {
	var out []string
	for _, it := range items {
		a := it.Amount
		out = append(out, it.Ingredient+" "+a.Number.Low.String()+" "+a.Number.High.String()+" "+a.Measure+a.Each+a.WeightOf+" "+a.Size+a.Fill)
	}
	return out
}
