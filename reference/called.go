package reference

import "strings"

// Called is what a name turned out to mean: an ingredient, or a fruit whose
// words still have to say which part of it.
type Called struct {
	Ingredient *Ingredient
	Fruit      *Fruit
	// Stripped are the words left aside as saying nothing of what it is
	// ("best", "finely").
	Stripped []string
}

// Words splits a name into lower-case words as names are compared: hyphens,
// apostrophes and stops do not count, accents are dropped.
func Words(s string) []string {
	if low, ok := oneWord(s); ok {
		return []string{low}
	}
	if s = strings.ToLower(s); !isPlain(s) {
		s = plain.Replace(s)
	}
	return strings.FieldsFunc(s, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '%' || r == '&' || r > 127)
	})
}

// plain takes accents and apostrophes off, so that "crème" and "creme",
// "confectioner's" and "confectioners" are one word. The long s is read as s.
var plain = strings.NewReplacer(
	"à", "a", "â", "a", "ä", "a", "ç", "c", "é", "e", "è", "e", "ê", "e", "ë", "e",
	"î", "i", "ï", "i", "ô", "o", "ö", "o", "œ", "oe", "û", "u", "ü", "u", "ù", "u", "ñ", "n",
	"ſ", "s", "'", "", "’", "", "‘", "",
)

// isPlain reports a text without accents, apostrophes or a long s.
func isPlain(s string) bool {
	for i := range len(s) {
		if s[i] == '\'' || s[i] > 127 {
			return false
		}
	}
	return true
}

// oneWord is the plainest case of Words: letters and nothing else.
func oneWord(s string) (string, bool) {
	if s == "" {
		return "", false
	}
	upper := false
	for i := range len(s) {
		c := s[i]
		switch {
		case c >= 'a' && c <= 'z':
		case c >= 'A' && c <= 'Z':
			upper = true
		default:
			return "", false
		}
	}
	if upper {
		s = strings.ToLower(s)
	}
	return s, true
}

// Key is the form in which names are compared.
func Key(name string) string {
	if low, ok := oneWord(name); ok {
		return low
	}
	if isKey(name) {
		return name
	}
	return strings.Join(Words(name), " ")
}

// isKey reports a name that is its own key: lower-case words, one space between
// any two.
func isKey(name string) bool {
	last := byte(' ')
	for i := range len(name) {
		c := name[i]
		if c == ' ' && last == ' ' || c != ' ' && !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9') {
			return false
		}
		last = c
	}
	return last != ' '
}

// longestKey is room for the key of nearly every name.
const longestKey = 80

// appendKey joins words to the key they make together.
func appendKey(to []byte, words []string) []byte {
	for i, w := range words {
		if i > 0 {
			to = append(to, ' ')
		}
		to = append(to, w...)
	}
	return to
}

// Ingredient returns the row with the id.
func (t *Tables) Ingredient(id string) (*Ingredient, bool) {
	i, ok := t.index.ingredient[id]
	if !ok {
		return nil, false
	}
	return &t.Ingredients[i], true
}

// When is a year and a place, and what stands beside a name in its receipt.
type When struct {
	Year   int
	Place  string
	Beside string // a role of something in the same receipt; empty where that is not asked
}

// Called finds what a name means in a book, bought by a kitchen. Words that
// say nothing of what a thing is may stand around the name; the longest name
// inside wins. It reports false when no known name is left.
func (t *Tables) Called(name string, book, kitchen When) (Called, bool) {
	return t.CalledBy(Words(name), book, kitchen)
}

// CalledBy is Called of a name that is in words already, as names are compared.
func (t *Tables) CalledBy(words []string, book, kitchen When) (Called, bool) {
	n := len(words)
	longest := 0
	for _, w := range words {
		if longest = max(longest, t.mayOpen(w)); longest >= n {
			break
		}
	}
	for length := min(n, longest); length > 0; length-- {
		for from := 0; from+length <= n; from++ {
			if t.mayOpen(words[from]) < length || !t.allModifiers(words[:from]) || !t.allModifiers(words[from+length:]) {
				continue
			}
			if c, ok := t.exactly(words[from:from+length], book, kitchen); ok {
				c.Stripped = append(append([]string(nil), words[:from]...), words[from+length:]...)
				return c, true
			}
		}
	}
	return Called{}, false
}

// mayOpen is how many words the longest name has that begins with the word or its
// singular, 0 when none does.
func (t *Tables) mayOpen(word string) int {
	return int(t.index.opening[word].Name)
}

func (t *Tables) allModifiers(words []string) bool {
	for len(words) > 0 {
		n := t.SetAside(words)
		if n == 0 {
			return false
		}
		words = words[n:]
	}
	return true
}

// exactly looks the words up as they are, then with the last word made
// singular, then the first ("yolks of egg").
func (t *Tables) exactly(words []string, book, kitchen When) (Called, bool) {
	var room, other [longestKey]byte
	key := appendKey(room[:0], words)
	if c, ok := t.keyed(key, book, kitchen); ok {
		return c, true
	}
	last := len(words) - 1
	stem := key[:len(key)-len(words[last])]
	for _, e := range plurals {
		if single, ok := e.single(words[last]); ok {
			if c, ok := t.keyed(append(append(append(other[:0], stem...), single...), e.add...), book, kitchen); ok {
				return c, true
			}
		}
	}
	if last == 0 {
		return Called{}, false
	}
	rest := key[len(words[0]):]
	for _, e := range plurals {
		if single, ok := e.single(words[0]); ok {
			if c, ok := t.keyed(append(append(append(other[:0], single...), e.add...), rest...), book, kitchen); ok {
				return c, true
			}
		}
	}
	return Called{}, false
}

// keyed looks a key up as it is.
func (t *Tables) keyed(key []byte, book, kitchen When) (Called, bool) {
	e, ok := t.index.name[string(key)]
	if !ok {
		return Called{}, false
	}
	switch e.table {
	case nameIngredient:
		return Called{Ingredient: &t.Ingredients[e.row]}, true
	case nameFruit:
		return Called{Fruit: &t.Fruits[e.row]}, true
	}
	n := &t.Names[e.row]
	when := book
	if n.Goods {
		when = kitchen
	}
	return t.reading(n.Readings, when)
}

// plural is an ending of a plural and what the singular has instead.
type plural struct{ end, add string }

var plurals = [...]plural{{"ies", "y"}, {"es", ""}, {"s", ""}}

// single is a word without the ending.
func (p plural) single(w string) (string, bool) { return strings.CutSuffix(w, p.end) }

// Begins finds the longest name the words begin with, none of them set aside,
// and how many of them it takes: 0 when they begin with none.
func (t *Tables) Begins(words []string, book, kitchen When) (Called, int) {
	if len(words) == 0 {
		return Called{}, 0
	}
	for n := min(t.mayOpen(words[0]), len(words)); n > 0; n-- {
		if c, ok := t.exactly(words[:n], book, kitchen); ok {
			return c, n
		}
	}
	return Called{}, 0
}

// SetAside counts the words at the start that say nothing of what a thing is
// ("best", "cut in pieces"), taken as one way of saying so: 0 when there is none.
func (t *Tables) SetAside(words []string) int {
	if len(words) == 0 {
		return 0
	}
	for n := min(int(t.index.opening[words[0]].Aside), len(words)); n > 0; n-- {
		var room [longestKey]byte
		if t.index.modifier[string(appendKey(room[:0], words[:n]))] {
			return n
		}
	}
	return 0
}

func (t *Tables) reading(readings []NameReading, w When) (Called, bool) {
	for _, r := range readings {
		if r.Holds(w.Year, w.Place) && (r.Beside == "" || r.Beside == w.Beside) {
			ing, ok := t.Ingredient(r.Is)
			return Called{Ingredient: ing}, ok
		}
	}
	return Called{}, false
}

// Reading returns the ingredient a conditional name stands for then and there.
func (t *Tables) Reading(readings []NameReading, w When) (*Ingredient, bool) {
	c, ok := t.reading(readings, w)
	return c.Ingredient, ok
}

// IngredientNames lists every name an ingredient may go by, for suggestions. The
// list is the tables' own and must not be changed.
func (t *Tables) IngredientNames() []string { return t.index.names }

func (t *Tables) ingredientNames() []string {
	out := make([]string, 0, 8*len(t.Ingredients))
	for _, ing := range t.Ingredients {
		out = append(append(out, ing.Name), ing.Also...)
	}
	for _, n := range t.Names {
		out = append(out, n.Names...)
	}
	for _, f := range t.Fruits {
		out = append(out, f.Names...)
	}
	return out
}
