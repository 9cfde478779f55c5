// Package spell finds the nearest known words to one that is not known. It only
// suggests; nothing is ever corrected silently.
package spell

import (
	"slices"
	"strings"
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
	seen := map[string]bool{}
	for _, c := range candidates {
		low := strings.ToLower(c)
		if seen[low] {
			continue
		}
		seen[low] = true
		if d := Slips(word, low, limit); d <= limit {
			near = append(near, guess{c, d})
		} else if shareWord(word, low) {
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
	for _, g := range near[:min(most, len(near))] {
		out = append(out, g.text)
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

func shareWord(a, b string) bool {
	words := strings.FieldsFunc(b, separator)
	for _, w := range strings.FieldsFunc(a, separator) {
		if len(w) > 3 && slices.Contains(words, w) {
			return true
		}
	}
	return false
}

func separator(r rune) bool { return r == ' ' || r == '-' || r == '_' }

// Slips counts the letters to add, drop, change or swap with a neighbour to
// turn a into b; counting stops above limit. The method is the optimal string
// alignment distance (Damerau 1964, Communications of the ACM 7:171).
func Slips(a, b string, limit int) int {
	s, t := []rune(a), []rune(b)
	if d := len(s) - len(t); d > limit || -d > limit {
		return limit + 1
	}
	before, prev, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
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
