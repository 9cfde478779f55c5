package receipt

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/reference"
)

// kind tells words, figures and marks apart.
type kind uint8

const (
	word kind = iota
	figure
	mark
)

// token is one word, figure or mark of a text.
type token struct {
	text string // as written
	key  string // a word as words are compared, a mark as itself
	lead string // what stood between it and the token before: a space, a hyphen, a stop
	from int    // column of its first character, from 1

	id     uint16 // of the key in the vocabulary, 0 when the rules have no such word
	kind   kind
	vulgar bool              // a figure written as one sign: ½
	old    bool              // a word whose spelling is old; its key is the modern one
	fault  figureFault       // why a figure cannot be read
	opens  reference.Opening // what in the tables begins with the word
}

// figureFault is why a figure cannot be read.
type figureFault uint8

const (
	sound figureFault = iota
	tooLong
	decimalComma
	twoPoints
)

func (f figureFault) String() string {
	return [...]string{
		tooLong: "has more digits than any kitchen weighs", decimalComma: "is no figure: write the decimals after a point, not a comma",
		twoPoints: "is no figure: it has two points",
	}[f]
}

// plainWord is a word that stands in no text.
func plainWord(w string, from int) token {
	return token{kind: word, text: w, key: w, from: from, id: vocabulary[w]}
}

// phrase is a run of tokens.
type phrase []token

// String is the phrase as it was written.
func (p phrase) String() string {
	if len(p) == 1 {
		return p[0].text
	}
	n := 0
	for i := range p {
		n += len(p[i].lead) + len(p[i].text)
	}
	var b strings.Builder
	b.Grow(n)
	for i := range p {
		if i > 0 {
			b.WriteString(p[i].lead)
		}
		b.WriteString(p[i].text)
	}
	return b.String()
}

// modern is the phrase with old spellings made new, to look names up by.
func (p phrase) modern() string {
	for i := range p {
		if p[i].old {
			out := slices.Clone(p)
			for j := range out {
				if out[j].old {
					out[j].text = out[j].key
				}
			}
			return out.String()
		}
	}
	return p.String()
}

// joinedKey is the phrase as names are compared.
func (p phrase) joinedKey() string {
	if len(p) == 1 && p[0].kind == word {
		return p[0].key
	}
	if key, ok := p.appendKey(nil); ok {
		return string(key)
	}
	return reference.Key(p.modern())
}

// appendKey puts the key of a phrase behind some bytes; ok is false when it is
// not all words.
func (p phrase) appendKey(to []byte) (key []byte, ok bool) {
	for i := range p {
		if p[i].kind != word {
			return to, false
		}
		if i > 0 {
			to = append(to, ' ')
		}
		to = append(to, p[i].key...)
	}
	return to, true
}

// key is the word at i, empty beyond the end and for a figure.
func (p phrase) key(i int) string {
	if i < 0 || i >= len(p) || p[i].kind == figure {
		return ""
	}
	return p[i].key
}

// column is where the phrase begins; of an empty one it is that of whatever
// stands before it.
func (p phrase) column() int {
	if len(p) == 0 {
		return 1
	}
	return p[0].from
}

// splice puts one phrase after another, as if nothing had stood between them.
func splice(a, b phrase) phrase {
	out := append(a[:len(a):len(a)], b...)
	if len(a) > 0 && len(b) > 0 && out[len(a)].lead == "" {
		out[len(a)].lead = " "
	}
	return out
}

// begins returns how many tokens of the phrase the words cover from its start,
// 0 when it begins otherwise.
func (p phrase) begins(words string) int {
	if len(p) == 0 || p[0].key == "" || words == "" || p[0].key[0] != words[0] {
		return 0
	}
	n := 0
	for words != "" {
		w, rest, _ := strings.Cut(words, " ")
		if n >= len(p) || p[n].kind == figure || p[n].key != w {
			return 0
		}
		words = rest
		n++
	}
	return n
}

// vulgarFractions are the fractions that have a sign of their own.
var vulgarFractions = map[rune][2]int64{
	'½': {1, 2}, '⅓': {1, 3}, '⅔': {2, 3}, '¼': {1, 4}, '¾': {3, 4},
	'⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
	'⅐': {1, 7}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8}, '⅑': {1, 9}, '⅒': {1, 10},
}

// vulgarValues are the same as numbers.
var vulgarValues = func() map[rune]decimal.Decimal {
	out := map[rune]decimal.Decimal{}
	for r, v := range vulgarFractions {
		out[r] = ratio(decimal.NewFromInt(v[0]), decimal.NewFromInt(v[1]))
	}
	return out
}()

// places is how many decimals a third or a seventh is carried to.
const places = 12

func ratio(over, under decimal.Decimal) decimal.Decimal { return over.DivRound(under, places) }
