package linked_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"assize/formula/linked"
)

func ExampleRead() {
	r, faults := linked.Read("cake.json", []byte(`{
  "@context": "https://schema.org", "@type": "Recipe", "name": "Lemon cake",
  "author": {"@type": "Person", "name": "The Millrace kitchen"},
  "recipeIngredient": ["200 g butter", "4 large eggs"],
  "recipeInstructions": [{"@type": "HowToStep", "text": "Cream the butter &amp; beat in the eggs."}],
  "cookTime": "PT1H15M"
}`))
	fmt.Print(r.Source, "\n\n", r.Text, len(faults), " faults\n")
	// Output:
	// The Millrace kitchen
	//
	// Lemon cake
	//
	// Ingredients
	// - 200 g butter
	// - 4 large eggs
	//
	// Method
	// Cream the butter & beat in the eggs.
	//
	// Time: 75 minutes.
	// 0 faults
}

const smallest = `{"@type": "Recipe", "recipeIngredient": ["6 eggs"]}`

func TestWhereAReceiptIsFound(t *testing.T) {
	for name, text := range map[string]string{
		"by itself":               smallest,
		"in a list":               `[{"@type": "WebSite"}, ` + smallest + `]`,
		"in a graph":              `{"@graph": [` + smallest + `]}`,
		"as the main thing":       `{"@type": "WebPage", "mainEntity": ` + smallest + `}`,
		"of several types":        `{"@type": ["Thing", "Recipe"], "recipeIngredient": ["6 eggs"]}`,
		"type in full":            `{"@type": "https://schema.org/Recipe", "recipeIngredient": ["6 eggs"]}`,
		"older name of the list":  `{"@type": "Recipe", "ingredients": ["6 eggs"]}`,
		"ingredients as one text": `{"@type": "Recipe", "recipeIngredient": "6 eggs<br>"}`,
		"in a page":               `<html><script type="application/ld+json">` + smallest + `</script></html>`,
		"in the second block":     `<script type='application/ld+json'>{"@type":"Person"}</script><SCRIPT id=x type=application/ld+json>` + smallest + `</SCRIPT>`,
		"beside a broken block":   `<script type="application/ld+json">{</script><script type="application/ld+json">` + smallest + `</script>`,
		"after a mark of order":   "\uFEFF" + smallest,
	} {
		t.Run(name, func(t *testing.T) {
			r, faults := linked.Read("x", []byte(text))
			require.NoError(t, faults.Err())
			require.NotNil(t, r)
			require.Contains(t, r.Text, "- 6 eggs\n")
		})
	}
}

func TestNoReceipt(t *testing.T) {
	for _, c := range []struct{ name, text, fault string }{
		{"no json", `{"@type": "Recipe",`, "x:1:20: error: this is no JSON: unexpected EOF"},
		{"a slip", "{\n\"@type\": Recipe}", "x:2:10: error: this is no JSON: invalid character 'R' looking for beginning of value"},
		{"something else", `{"@type": "Person"}`, "x: error: there is no receipt in it"},
		{"no ingredients", `{"@type": "Recipe", "name": "Cake"}`, "x:1:1: error: the Recipe has no ingredients"},
		{"a page without", `<html>Take six eggs</html>`, "x: error: the page has no linked data, and so no receipt that can be told from the rest"},
		{"a page with another thing", `<script type="application/ld+json">{"@type":"Person"}</script>`, "x: error: the page has no receipt among its linked data"},
		{"nested 10,000 deep", strings.Repeat("[", 10_000) + strings.Repeat("]", 10_000), "x:1:61: error: it is nested more than 60 deep, and no receipt is"},
		{"too large", `{"a": "` + strings.Repeat("a", linked.MaxSize) + `"}`, "x: error: the file is 1048585 bytes; at most 1048576 are read"},
		{"not UTF-8", "{\"\xff\"}", "x: error: the text is not UTF-8"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, faults := linked.Read("x", []byte(c.text))
			require.Nil(t, r)
			require.NotEmpty(t, faults)
			require.Equal(t, c.fault, faults[0].Error())
		})
	}
}

func TestDirections(t *testing.T) {
	r, faults := linked.Read("x", []byte(`{"@type": "Recipe", "name": "Tart", "datePublished": "1996-04-02", "recipeIngredient": ["6 eggs"], "recipeInstructions": [
		{"@type": "HowToSection", "name": "For the filling", "itemListElement": [{"@type": "HowToStep", "text": "Beat the eggs."}]},
		"Bake <b>it</b>."]}`))
	require.NoError(t, faults.Err())
	require.Equal(t, 1996, r.Year)
	require.Contains(t, r.Text, "Method\nFor the filling:\nBeat the eggs.\nBake it .\n")
}

// FuzzRead holds the reader to this, whatever it is given: it does not fall
// over, it gives a receipt or says why not, and what it says points inside the
// page.
func FuzzRead(f *testing.F) {
	f.Add([]byte(smallest))
	f.Add([]byte(`<script type="application/ld+json">` + smallest + `</script>`))
	f.Add([]byte(`{"@graph": [{"@type": ["Recipe"], "name": 3, "recipeIngredient": [1, null, {"name": "x"}], "recipeInstructions": {"itemListElement": [[["a"]]]}, "cookTime": "PT9999H"}]}`))
	f.Add([]byte("\uFEFF[]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		r, faults := linked.Read("x", text)
		if (r == nil) == (len(faults) == 0) {
			t.Fatalf("%q: %v, %v", text, r, faults)
		}
		lines := strings.Split(string(text), "\n")
		for _, x := range faults {
			if x.Line > len(lines) || x.Line > 0 && x.Column > utf8.RuneCountInString(lines[x.Line-1])+1 {
				t.Fatalf("%q: %d:%d is outside the page", text, x.Line, x.Column)
			}
		}
		if r != nil {
			if strings.ContainsRune(r.Title, '\n') || !strings.Contains(r.Text, "\n- ") {
				t.Fatalf("%q: %q", text, r.Text)
			}
		}
	})
}
