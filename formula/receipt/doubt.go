package receipt

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// doubtKind is what a mark in the text says of the page it was copied from.
type doubtKind int

const (
	uncertain doubtKind = iota // [?]: the word before it is hard to read
	either                     // [6|8]: one or the other
	illegible                  // [illegible]
	struck                     // [struck: ...]: crossed out in the book
	margin                     // [margin: ...]: added beside, in another hand
	corrected                  // [errata: ...]: put right at the end of the book
)

// doubt is one mark of doubt, by the characters it takes up.
type doubt struct {
	kind     doubtKind
	from, to int
	ways     []string // of an either
	// inner is where the words inside the mark stand.
	inner, innerTo int
	why            string
}

// doubtMarks are the marks a copyist may put in a text. The first word tells
// which it is; a bar inside parts the ways.
var doubtMarks = regexp.MustCompile(`(?i)\[\s*(?:(\?+)|(illegible|unreadable)|(struck|crossed out|margin|errata|corrected)\s*:\s*([^\[\]]*)|([^\[\]|\n]{1,60}(?:\|[^\[\]|\n]{1,60}){1,5}))\s*\]`)

// blottedNumbers finds "6 or 8, blotted": a number in doubt, told in words.
var blottedNumbers = regexp.MustCompile(`(?i)\b([0-9]+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve) or ([0-9]+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?:,? \(?(blotted|smudged|blurred|stained|doubtful|uncertain|illegible)\b\)?,?)`)

// blottedWords are the words of it that are looked for first.
var (
	blottedWords = []string{"blotted", "smudged", "blurred", "stained", "doubtful", "uncertain", "illegible"}
	blottedSet   = words(strings.Join(blottedWords, " "))
)

// findDoubts lists the marks of a text in their order. Places count characters.
func findDoubts(text string) []doubt {
	var out []doubt
	marks := strings.Contains(text, "[")
	told := slices.ContainsFunc(blottedWords, func(w string) bool { return strings.Contains(text, w) })
	if !marks && !told {
		return nil
	}
	at := runeAt(text)
	for _, m := range doubtMarks.FindAllStringSubmatchIndex(text, -1) {
		d := doubt{from: at(m[0]), to: at(m[1]), why: "the book has " + strings.Join(strings.Fields(text[m[0]:m[1]]), " ")}
		switch {
		case m[2] >= 0:
			d.kind, d.why = uncertain, "the book is hard to read here"
		case m[4] >= 0:
			d.kind, d.why = illegible, "the book cannot be read here: "+strings.ToLower(text[m[4]:m[5]])
		case m[6] >= 0:
			d.inner, d.innerTo = at(m[8]), at(m[9])
			switch strings.ToLower(text[m[6]:m[7]]) {
			case "margin":
				d.kind, d.why = margin, "from the margin, in another hand"
			case "errata", "corrected":
				d.kind, d.why = corrected, "as the book itself corrects it"
			default:
				d.kind, d.why = struck, "struck out in the book"
			}
		default:
			d.kind = either
			for _, w := range strings.Split(text[m[10]:m[11]], "|") {
				d.ways = append(d.ways, strings.Join(strings.Fields(w), " "))
			}
		}
		out = append(out, d)
	}
	if !told {
		return out
	}
	for _, m := range blottedNumbers.FindAllStringSubmatchIndex(text, -1) {
		if m[0] > 0 && strings.ContainsRune(".,/", rune(text[m[0]-1])) {
			continue // the end of a longer figure
		}
		out = append(out, doubt{
			kind: either, from: at(m[0]), to: at(m[1]), ways: []string{text[m[2]:m[3]], text[m[4]:m[5]]},
			why: "the book has " + text[m[0]:m[5]] + ", " + strings.ToLower(text[m[6]:m[7]]),
		})
	}
	slices.SortFunc(out, func(a, b doubt) int { return a.from - b.from })
	apart := out[:0]
	for _, d := range out {
		if len(apart) == 0 || d.from >= apart[len(apart)-1].to {
			apart = append(apart, d)
		}
	}
	return apart
}

// runeAt turns places in bytes into places in characters, asked in any order.
func runeAt(text string) func(int) int {
	byByte := make([]int32, len(text)+1)
	n := int32(-1)
	for i := range len(text) {
		if text[i]&0xC0 != 0x80 {
			n++
		}
		byByte[i] = max(n, 0)
	}
	byByte[len(text)] = n + 1
	return func(i int) int { return int(byByte[i]) }
}

// cleared is the text without its marks, character for character: of one thing
// or another the first stands, what was struck out and what the margin adds is
// gone, and a word that cannot be read is left as "illegible".
func cleared(given []rune, doubts []doubt) []rune {
	out := slices.Clone(given)
	for _, d := range doubts {
		keep := []rune(nil)
		switch d.kind {
		case either:
			keep = []rune(d.ways[0])
		case illegible:
			keep = []rune(unreadable)
		}
		for i := d.from; i < d.to; i++ {
			switch k := i - d.from - 1; {
			case given[i] == '\n':
			case k >= 0 && k < len(keep):
				out[i] = keep[k]
			default:
				out[i] = ' '
			}
		}
		if d.to < len(given) && dittoMark(given[d.to]) {
			out[d.to] = ' ' // a mark of quoting, behind a word that is gone
		}
	}
	return out
}

// unreadable stands for a word of the book that cannot be read.
const unreadable = "illegible"

// queried is the sign of a doubtful reading, with the space before it.
var queried = regexp.MustCompile(`\s*\[\s*\?+\s*\]`)

// withoutQuery makes the signs of a doubtful reading in a line blank, and
// reports whether there were any.
func withoutQuery(text string) (string, bool) {
	if !strings.Contains(text, "[") {
		return text, false
	}
	clear := queried.ReplaceAllStringFunc(text, func(s string) string { return strings.Repeat(" ", utf8.RuneCountInString(s)) })
	return clear, clear != text
}

// cannotRead are the words that stand for what the book no longer shows.
var cannotRead = words("illegible unreadable")
