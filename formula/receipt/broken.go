package receipt

import (
	"slices"
	"unicode"

	"assize/reference"
)

// mendBroken puts together the words that the page broke at the end of a line,
// "pow-/dered", and takes out the soft hyphens. It works on the characters in
// their place: what was between the halves goes behind the word. A hyphen that
// parts two words, each of which is known ("rose-/water"), stays.
func mendBroken(given []rune, t *reference.Tables) (mended bool) {
	for i := 1; i+1 < len(given); i++ {
		if given[i] == softHyphen && isLetter(given[i-1]) && isLetter(given[i+1]) {
			end := wordEnd(given, i+1)
			given[i] = ' '
			turn(given[i:end], 1)
			mended = true
			continue
		}
		if !brokenAt(given[i]) || !isLetter(given[i-1]) {
			continue
		}
		next := i + 1
		for next < len(given) && given[next] != '\n' && unicode.IsSpace(given[next]) {
			next++
		}
		if next >= len(given) || given[next] != '\n' {
			continue
		}
		for next++; next < len(given) && given[next] != '\n' && unicode.IsSpace(given[next]); next++ {
		}
		if next >= len(given) || !unicode.IsLower(given[next]) {
			continue
		}
		from, end := i, wordEnd(given, next)
		for from > 0 && isLetter(given[from-1]) {
			from--
		}
		first, second := string(given[from:i]), string(given[next:end])
		cut := i // where the second half goes
		if knownWord(first, t) && (knownWord(second, t) || !knownWord(first+second, t)) {
			cut = i + 1 // the hyphen is the word's own
		}
		for end < len(given) && !unicode.IsSpace(given[end]) {
			end++ // the stop behind it goes with it
		}
		if cut == i {
			given[i] = ' '
		}
		turn(given[cut:end], next-cut)
		mended = true
	}
	return mended
}

// softHyphen is a hyphen that shows only where a line breaks.
const softHyphen = '\u00AD'

// turn brings what stands from n on to the front, and what stood there behind it.
func turn(s []rune, n int) {
	slices.Reverse(s[:n])
	slices.Reverse(s[n:])
	slices.Reverse(s)
}

// brokenAt reports the sign a word is broken with.
func brokenAt(r rune) bool { return r == '-' || r == '‐' || r == softHyphen || r == '¬' }

func wordEnd(s []rune, i int) int {
	for i < len(s) && isLetter(s[i]) {
		i++
	}
	return i
}

// knownWord reports a word that the tables or the rules know.
func knownWord(w string, t *reference.Tables) bool {
	key := reference.Key(w)
	return vocabulary[key] != 0 || t.Opening(key) != reference.Opening{}
}
