package receipt

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

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

// places is how many decimals a third or a seventh is carried to.
const places = 12

func ratio(over, under decimal.Decimal) decimal.Decimal { return over.DivRound(under, places) }

// tokenize splits a text. A stop after the abbreviation of a measure is no mark.
func tokenize(text string, t *reference.Tables) phrase {
	runes := []rune(text)
	if !utf8.ValidString(text) {
		text = string(runes)
	}
	return scan(text, runes, 0, t)
}

// tokenizeLine splits a text in which no sentence ends: a stop after a word is no
// mark. The tables may be nil.
func tokenizeLine(text string, t *reference.Tables) phrase {
	runes := []rune(text)
	if !utf8.ValidString(text) {
		text = string(runes)
	}
	s := scanner{text: text, runes: runes, tables: t, unbroken: true}
	return s.all()
}

// scan splits characters that begin at a place of a longer text; text is the same
// characters.
func scan(text string, runes []rune, at int, t *reference.Tables) phrase {
	s := scanner{text: text, runes: runes, base: at, tables: t}
	return s.all()
}

func (s *scanner) all() phrase {
	s.out = make(phrase, 0, mostTokens(s.runes))
	for s.at < len(s.runes) {
		s.next()
	}
	return s.out
}

// mostTokens is how many tokens characters may come to: every run of letters or
// digits, and every sign.
func mostTokens(runes []rune) int {
	n, last := 0, ' '
	for _, r := range runes {
		if plain := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'; r != ' ' && !(plain && (last >= 'a' && last <= 'z' || last >= 'A' && last <= 'Z')) && !(isDigit(r) && isDigit(last)) {
			n++
		}
		last = r
	}
	return n
}

type scanner struct {
	text   string
	runes  []rune
	at     int // in the characters
	byte   int // in the text
	base   int // place of the first character in a longer text
	lead   string
	out    phrase
	tables *reference.Tables
	// unbroken takes every word for one that may be an abbreviation.
	unbroken bool
}

func (s *scanner) peek(n int) rune {
	if s.at+n < 0 || s.at+n >= len(s.runes) {
		return 0
	}
	return s.runes[s.at+n]
}

// take are the next characters as they stand; the scanner goes on behind them.
func (s *scanner) take(length int) string {
	from := s.byte
	for _, r := range s.runes[s.at : s.at+length] {
		if r < utf8.RuneSelf {
			s.byte++
		} else {
			s.byte += utf8.RuneLen(r)
		}
	}
	s.at += length
	return s.text[from:s.byte]
}

// emit adds a token of the next characters.
func (s *scanner) emit(t token, length int) {
	t.from = s.base + s.at + 1
	t.text = s.take(length)
	t.lead = s.lead
	s.lead = ""
	s.out = append(s.out, t)
}

// pass takes signs that are not words into the lead of the next token.
func (s *scanner) pass(as string) {
	switch {
	case s.lead == "":
		s.lead = as
	case as != " " || !strings.HasSuffix(s.lead, " "):
		s.lead += as
	}
	s.take(1)
}

// named is a word token of that key.
func (s *scanner) named(key string, old bool) token {
	t := token{kind: word, key: key, old: old, id: vocabulary[key]}
	if s.tables != nil {
		first, _, _ := strings.Cut(key, " ") // a word of two parts written as one sign
		t.opens = s.tables.Opening(first)
	}
	return t
}

func (s *scanner) next() {
	r := s.peek(0)
	switch {
	case isDigit(r), r == '.' && isDigit(s.peek(1)) && !isDigit(s.peek(-1)):
		s.figure()
	case r > 127 && vulgarFractions[r] != [2]int64{}:
		s.emit(token{kind: figure, vulgar: true}, 1)
	case r > 127 && apothecaries[r] != "":
		s.emit(s.named(apothecaries[r], true), 1)
	case isLetter(r):
		s.word()
	case r == '&':
		s.emit(s.named("and", false), 1)
	case r == '%' || r == '×':
		s.emit(s.named(string(r), false), 1)
	case r == '+':
		s.emit(s.named("plus", false), 1)
	case strings.ContainsRune(",;:=/⁄", r):
		s.mark(string(r))
	case r == '(' || r == '[':
		s.mark("(")
	case r == ')' || r == ']':
		s.mark(")")
	case r == '.':
		s.stop()
	case strings.ContainsRune("-‐‑‒–—―−", r):
		s.dash(r)
	case unicode.IsSpace(r):
		s.pass(" ")
	default: // marks of quoting and the like say nothing
		s.pass(" ")
	}
}

func (s *scanner) mark(key string) {
	if key == "⁄" {
		key = "/"
	}
	s.emit(token{kind: mark, key: key, id: vocabulary[key]}, 1)
}

// stop tells the point of an abbreviation, or of the last word, from one that
// ends a sentence.
func (s *scanner) stop() {
	n := 1
	for unicode.IsSpace(s.peek(n)) {
		n++
	}
	after := s.peek(n)
	if len(s.out) == 0 || after == 0 || unicode.IsLower(after) || strings.ContainsRune(",;:)].", after) {
		s.pass(".")
		return
	}
	if last := s.out[len(s.out)-1]; last.kind == word && (last.key == "no" && isDigit(after) || s.abbreviated(last) && (shortWord(last.text) || unicode.IsLower(after))) {
		s.pass(".")
		return
	}
	s.mark(".")
}

// abbreviated reports a word that may be the abbreviation of a measure.
func (s *scanner) abbreviated(t token) bool {
	return s.unbroken || t.opens.Measure > 0 && s.tables.MeasuresKeyed(t.key)
}

// shortWord reports the abbreviation of a measure, by its length or for want of
// a vowel: after "spoon." a sentence may begin, after "oz." or "tbsp." none does.
func shortWord(w string) bool {
	return len(w) <= 3 || !strings.ContainsAny(strings.ToLower(w), "aeiou") || strings.HasSuffix(strings.ToLower(w), "sp")
}

// dash tells a hyphen inside a word or a range from a dash between clauses.
func (s *scanner) dash(r rune) {
	joined := !unicode.IsSpace(s.peek(-1)) && s.peek(-1) != 0 && !unicode.IsSpace(s.peek(1)) && s.peek(1) != 0
	if joined && (r != '—' && r != '―') && s.peek(1) != r {
		s.pass("-")
		return
	}
	s.mark("-")
}

func (s *scanner) word() {
	n := 1
	for isLetter(s.peek(n)) || isApostrophe(s.peek(n)) && isLetter(s.peek(n+1)) || unicode.IsMark(s.peek(n)) {
		n++
	}
	if isApostrophe(s.peek(n)) { // "lemons' juice"
		n++
	}
	place, lead := s.base+s.at+1, s.lead
	text := s.take(n)
	t := s.named(reference.Key(text), false)
	if modern, old := oldSpellings.at(phrase{t}, 0); old {
		t = s.named(modern, true)
	}
	t.text, t.from, t.lead, s.lead = text, place, lead, ""
	s.out = append(s.out, t)
}

// apothecaries are the signs of the apothecaries' weights, which older receipts
// use for spices and drugs.
var apothecaries = map[rune]string{'℥': "apothecaries ounce", 'ʒ': "drachm", '℈': "scruple", '℔': "pound"}

// oldSpellings are words whose spelling alone is old.
var oldSpellings = mapped(map[string]string{
	"ye": "the", "yt": "that", "ym": "them", "wth": "with", "wch": "which", "halfe": "half", "egges": "eggs", "spoonsfull": "spoonfuls", "spoonfull": "spoonful", "spoonfulls": "spoonfuls", "glassfull": "glassful", "cupfull": "cupful",
	"litle": "little", "boyl": "boil", "boyle": "boil", "boyled": "boiled", "qr": "quarter", "qrs": "quarters",
	"qtr": "quarter", "qtrs": "quarters", "pounde": "pound", "creame": "cream", "milke": "milk",
})

// longestFigure is how many digits a figure may have.
const longestFigure = 12

func (s *scanner) figure() {
	n, digits := 0, 0
	for isDigit(s.peek(n)) {
		n++
	}
	if after := s.peek(n); n < 10 && after != '.' && after != ',' { // the common case
		s.emit(token{kind: figure, opens: s.opening(n)}, n)
		return
	}
	n = 0
	point := false
scan:
	for {
		r := s.peek(n)
		switch {
		case isDigit(r):
			digits++
		case r == '.' && isDigit(s.peek(n+1)) && !point:
			point = true
		case r == ',' && s.thousands(n):
			// the comma of 1,000 is no part of the value
		default:
			break scan
		}
		n++
	}
	t := token{kind: figure}
	switch {
	case digits > longestFigure:
		t.fault = tooLong
	case s.peek(n) == ',' && isDigit(s.peek(n+1)):
		for s.peek(n) == ',' && isDigit(s.peek(n+1)) {
			n++
			for isDigit(s.peek(n)) {
				n++
			}
		}
		t.fault = decimalComma
	case s.peek(n) == '.' && isDigit(s.peek(n+1)):
		for s.peek(n) == '.' && isDigit(s.peek(n+1)) || isDigit(s.peek(n)) {
			n++
		}
		t.fault = twoPoints
	}
	t.opens = s.opening(n)
	s.emit(t, n)
}

// opening is what in the tables begins with the figure of the next characters:
// "00 flour" is a name.
func (s *scanner) opening(n int) reference.Opening {
	if s.tables == nil {
		return reference.Opening{}
	}
	return s.tables.Opening(s.text[s.byte : s.byte+n])
}

// thousands reports a comma that parts the thousands: three digits and no more
// after it.
func (s *scanner) thousands(n int) bool {
	return isDigit(s.peek(n+1)) && isDigit(s.peek(n+2)) && isDigit(s.peek(n+3)) && !isDigit(s.peek(n+4)) && s.peek(n-1) != '.' && n > 0 && n <= 3 ||
		n > 3 && isDigit(s.peek(n+1)) && isDigit(s.peek(n+2)) && isDigit(s.peek(n+3)) && !isDigit(s.peek(n+4)) && s.peek(n-4) == ','
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isLetter(r rune) bool { return unicode.IsLetter(r) || r == 'ª' }

func isApostrophe(r rune) bool { return r == '\'' || r == '’' || r == '‘' }
