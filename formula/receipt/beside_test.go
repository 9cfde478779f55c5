package receipt_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/receipt"
	"assize/reference"
)

// Jelly beside meat is stock; jelly of a named fruit stays what it is, and so
// does jelly where there is no meat.
func TestJellyBesideMeat(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for words, want := range map[string]string{
		"Two pounds of veal, half a pint of good jelly. Bake it.":             "calfs_foot_jelly",
		"Two pounds of salmon, half a pint of jelly. Bake it.":                "calfs_foot_jelly",
		"Two pounds of venison, half a pint of currant jelly. Bake it.":       "jelly",
		"Six eggs, half a pint of good jelly, four ounces of sugar. Bake it.": "jelly",
	} {
		r := &receipt.Reader{Tables: tables, Year: 1850, Place: "england"}
		f, trace := r.Receipt("A pie\n\n"+words+"\n", receipt.About{Title: "A pie"})
		require.NotNil(t, f)
		got := ""
		for _, l := range f.Parts[0].Lines {
			for _, it := range l.Items {
				if it.Ingredient == "jelly" || it.Ingredient == "calfs_foot_jelly" {
					got = it.Ingredient
				}
			}
		}
		require.Equal(t, want, got, words)
		told := false
		for _, i := range trace.Read {
			told = told || strings.Contains(i.Why, "beside meat is taken as")
		}
		require.Equal(t, want == "calfs_foot_jelly", told, words)
	}
}
