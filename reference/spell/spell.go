// Package spell finds the nearest known words to one that is not known. It only
// suggests; nothing is ever corrected silently.
package spell

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Suggest returns up to most of the candidates that are near enough to word to
// be worth asking about, nearest first: those within a third of its length and
// at most three slips, or, failing that, those that share a whole word with it.
func Suggest(word string, candidates []string, most int) []string {
	type guess struct {
		text  string
		slips int
	}
	word = strings.ToLower(word)
	limit := min(3, max(1, len([]rune(word))/3))
	var near, sharing []guess
	length, shared := utf8.RuneCountInString(word), longWords(word)
	var count counter
	for _, c := range candidates {
		low := strings.ToLower(c)
		if d := utf8.RuneCountInString(low) - length; d <= limit && -d <= limit {
			if d := count.slips(word, low, limit); d <= limit {
				near = append(near, guess{c, d})
				continue
			}
		}
		if sharesWord(shared, low) {
			sharing = append(sharing, guess{c, len(low)})
		}
	}
	if len(near) == 0 {
		near = sharing
	}
	slices.SortStableFunc(near, func(a, b guess) int {
		if a.slips != b.slips {
			return a.slips - b.slips
		}
		return strings.Compare(a.text, b.text)
	})
	var out []string
	for _, g := range near {
		if len(out) < most && !slices.ContainsFunc(out, func(s string) bool { return strings.EqualFold(s, g.text) }) {
			out = append(out, g.text)
		}
	}
	return out
}

// Ask turns suggestions into the end of a hint: `did you mean "a" or "b"?`.
// It is empty when there is nothing to suggest.
func Ask(word string, candidates []string) string {
	found := Suggest(word, candidates, 3)
	if len(found) == 0 {
		return ""
	}
	for i, f := range found {
		found[i] = `"` + f + `"`
	}
	return "did you mean " + strings.Join(found, " or ") + "?"
}

// longWords are the words of a name that are long enough to tell something.
func longWords(name string) []string {
	return slices.DeleteFunc(strings.FieldsFunc(name, separator), func(w string) bool { return len(w) <= 3 })
}

// sharesWord reports a name that has one of the words whole.
func sharesWord(words []string, name string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return strings.Contains(name, w) && slices.Contains(strings.FieldsFunc(name, separator), w)
	})
}

func separator(r rune) bool { return r == ' ' || r == '-' || r == '_' }

// Slips counts the letters to add, drop, change or swap with a neighbour to
// turn a into b; counting stops above limit. The method is the optimal string
// alignment distance (Damerau 1964, Communications of the ACM 7:171).
func Slips(a, b string, limit int) int {
	var c counter
	return c.slips(a, b, limit)
}

// counter keeps its rows from one count to the next.
type counter struct{ before, prev, row []int }

func (c *counter) slips(a, b string, limit int) int {
	s, t := []rune(a), []rune(b)
	if d := len(s) - len(t); d > limit || -d > limit {
		return limit + 1
	}
	if len(c.row) <= len(t) {
		c.before, c.prev, c.row = make([]int, 2*len(t)+1), make([]int, 2*len(t)+1), make([]int, 2*len(t)+1)
	}
	before, prev, row := c.before[:len(t)+1], c.prev[:len(t)+1], c.row[:len(t)+1]
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(s); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			row[j] = min(prev[j]+1, row[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
			least = min(least, row[j])
		}
		if least > limit {
			return limit + 1
		}
		before, prev, row = prev, row, before
	}
	return prev[len(t)]
}
