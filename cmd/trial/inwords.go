package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"assize/formula/receipt"
	"assize/ratios/trial"
	"assize/reference"
)

// wordsFolder holds the receipts in words, from where the checks are run.
const wordsFolder = "testdata/receipts-in-words"

// inWords prints how the reader of words does on the receipts of the key: those
// it was made with and those it met afterwards and has learnt from since, apart.
func inWords(t *reference.Tables, out io.Writer) error {
	key, err := trial.ReadKey(os.DirFS(wordsFolder), t)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "RECEIPTS IN WORDS: %d, read and held against the formulas a careful reader makes of them\n", len(key))
	methods := receipt.NewMethodReader(t)
	for _, set := range []struct {
		name, folder string
	}{
		{"developed on", ""},
		{"kept back at first, learnt from since (DEVELOPERS.md has the first reading)", "kept-back"},
		{"met later, learnt from since (DEVELOPERS.md has the first reading)", "later"},
	} {
		var total trial.WordsScore
		var faults []string
		shapes := map[string]int{}
		for i := range key {
			w := &key[i]
			if w.Set() != set.folder {
				continue
			}
			shapes[w.Shape]++
			s := w.HoldAgainst(w.Read(t), t, methods)
			for _, f := range s.Faults {
				faults = append(faults, w.File+": "+f)
			}
			total.Add(s)
		}
		if total.Receipts == 0 {
			continue
		}
		var kinds []string
		for _, s := range trial.Shapes {
			if shapes[s] > 0 {
				kinds = append(kinds, fmt.Sprintf("%d %s", shapes[s], s))
			}
		}
		fmt.Fprintf(out, "  %s: %d receipts (%s)\n", set.name, total.Receipts, strings.Join(kinds, ", "))
		for _, row := range total.Rows() {
			low, high := trial.Wilson(row.Right, row.Of)
			fmt.Fprintf(out, "      %-44s %4d of %4d = %.3f (%.3f to %.3f)\n", row.Name, row.Right, row.Of, float64(row.Right)/float64(max(1, row.Of)), low, high)
		}
		for _, f := range faults {
			fmt.Fprintf(out, "        %s\n", f)
		}
	}
	fmt.Fprintln(out)
	return nil
}
