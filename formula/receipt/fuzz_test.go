package receipt

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
)

// FuzzLine holds the reader to three things, whatever it is given: it does not
// fall over, its troubles point inside the text, and a line read without
// trouble has lost no word. Every word of it stands in the name, the form or
// the amount of an item, or in a note; only the words that hold a line together
// ("of", "the", "and") may go.
func FuzzLine(f *testing.F) {
	for _, c := range lineCases {
		f.Add(c.text)
	}
	for _, c := range refused {
		f.Add(c.text)
	}
	for _, c := range bookLines {
		f.Add(c.text)
	}
	r := reader(f)
	f.Fuzz(func(t *testing.T, text string) { holds(t, r, text) })
}

// holds checks one line against the promises of FuzzLine.
func holds(t require.TestingT, r *Reader, text string) {
	line, troubles := r.Line(text)
	for _, tr := range troubles {
		require.True(t, tr.Column >= 1 && tr.Column <= max(1, utf8.RuneCountInString(text)), "%q: column %d is outside the text: %s", text, tr.Column, tr.What)
		require.NotEmpty(t, tr.What, text)
	}
	if len(troubles) > 0 {
		require.Empty(t, line.Items, "%q: refused and yet read", text)
		return
	}
	require.NotEmpty(t, line.Items, "%q: nothing read and nothing said of it", text)
	kept := map[string]bool{}
	keep := func(s string) {
		for _, tok := range r.tokens(s) {
			kept[tok.spelled()] = true
		}
	}
	for _, it := range line.Items {
		_, ok := r.Tables.Ingredient(it.Ingredient)
		require.True(t, ok, "%q: an item of no ingredient: %+v", text, it)
		if a := it.Amount; a.State == formula.Stated {
			require.True(t, a.Number.Low.IsPositive(), "%q: %+v", text, it)
			require.True(t, a.Parts || a.Measure != "" || a.Each != "" || a.WeightOf != "", "%q: a number of nothing: %+v", text, it)
		}
		keep(it.Name)
		keep(it.Form)
		keep(it.Amount.Words)
	}
	for _, n := range line.Notes {
		keep(n)
	}
	for _, tok := range r.tokens(text) {
		if w := tok.spelled(); tok.kind != mark && w != "" && !tok.is(glue) {
			require.True(t, kept[w], "%q: the word %q is lost: %+v %q", text, tok.text, line.Items, line.Notes)
		}
	}
}

// TestSalad holds lines put together at random from the words of the kitchen to
// the promises of FuzzLine: they are nonsense of the right sort.
func TestSalad(t *testing.T) {
	r := reader(t)
	menu := strings.FieldsFunc(`half a|a|an|two|2|3/4|1 1/2|a few|two or three|a dozen|pound|lb.|oz|pints|cup|teaspoonful|tin|(340 g)|/8 oz|heaped|scant|good|
large|small|of|of each|each|the|and|or|,|,|;|with|in|to|from|leaving out|without|only|half the|eggs|egg|yolks|whites|butter|flour|loaf sugar|sugar|milk|
cream|lemon|lemons|Seville oranges|juice|rind|grated rind|zest|whole|salt|nutmeg|brandy|bread crumbs|yeast cake|penny loaf|as much as will make a paste|
to taste|enough|a little|to mix|quantity not given|the size of|as big as|a walnut|an egg|the weight of|their weight|weight|parts|%|x|well beaten|melted|
pounded|sifted|fine|fresh|white|brown|equal parts|nonesuch|same|ditto|less|plus|about|nearly|or so|part`, func(r rune) bool { return r == '|' || r == '\n' })
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.SampledFrom(menu), 1, 14).Draw(t, "words")
		holds(t, r, strings.Join(words, " "))
	})
}

// FuzzNumber holds the number reader to its bounds.
func FuzzNumber(f *testing.F) {
	for _, s := range []string{"1 1/2", "half a dozen", "2 to 3", "1e400", "0", "½", "a quarter of a", "1,000", "1/3 or 2/3", "two hundred and fifty"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseNumber(text)
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if !s.Low.IsPositive() || s.Low.GreaterThan(s.Likely) || s.Likely.GreaterThan(s.High) || s.High.GreaterThan(most) {
			t.Fatalf("%q: %v", text, s)
		}
	})
}
