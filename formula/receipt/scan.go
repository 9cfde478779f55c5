package receipt

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"assize/reference"
)

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
	case r == '.' && s.peek(1) == '.': // dots that lead from a name to its figure
		n := 1
		for s.peek(n) == '.' {
			n++
		}
		s.emit(token{kind: mark, key: ",", id: vocabulary[","]}, n)
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
	case dittoMark(r) && s.peek(-1) == ' ' && s.figureBefore() && unicode.IsSpace(s.peek(1)):
		s.emit(s.named("ditto", true), 1)
	default: // marks of quoting and the like say nothing
		s.pass(" ")
	}
}

// figureBefore reports that nothing but space stands between a figure and the sign.
func (s *scanner) figureBefore() bool {
	n := -1
	for s.peek(n) == ' ' {
		n--
	}
	return isDigit(s.peek(n)) || vulgarFractions[s.peek(n)] != [2]int64{}
}

// dittoMark reports the sign that stands behind a number, under a measure that is to
// be said again.
func dittoMark(r rune) bool { return r == '"' || r == '”' || r == '„' || r == '″' || r == '〃' }

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
	for isLetter(s.peek(n)) || isApostrophe(s.peek(n)) && isLetter(s.peek(n+1)) || s.peek(n) > unicode.MaxLatin1 && unicode.IsMark(s.peek(n)) {
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
	} else if stem, cut := strings.CutSuffix(text, "d"); cut && len(stem) > 4 && strings.HasSuffix(stem, "'") || strings.HasSuffix(stem, "’") { // "butter'd"
		t = s.named(reference.Key(strings.TrimRight(stem, "'’")+"ed"), true)
	}
	t.text, t.from, t.lead, s.lead = text, place, lead, ""
	s.out = append(s.out, t)
}

// apothecaries are the signs of the apothecaries' weights, which older receipts
// use for spices and drugs.
var apothecaries = map[rune]string{'℥': "apothecaries ounce", 'ʒ': "drachm", '℈': "scruple", '℔': "pound"}

// oldSpellings are words whose spelling alone is old.
var oldSpellings = mapped(map[string]string{
	"ye": "the", "yt": "that", "ym": "them", "wth": "with", "wch": "which", "halfe": "half", "egges": "eggs", "spoonsfull": "spoonfuls", "spoonfull": "spoonful", "spoonfulls": "spoonfuls", "tablespoonfull": "tablespoonful", "tablespoonfulls": "tablespoonfuls", "teaspoonfull": "teaspoonful", "teaspoonfulls": "teaspoonfuls", "glassfull": "glassful", "cupfull": "cupful",
	"litle": "little", "boyl": "boil", "boyle": "boil", "boyled": "boiled", "qr": "quarter", "qrs": "quarters",
	"qtr": "quarter", "qtrs": "quarters", "pounde": "pound", "creame": "cream", "milke": "milk", "candid": "candied", "pippens": "pippins", "bisket": "biscuit", "biskets": "biscuits", "bisquet": "biscuit", "currans": "currants",
	"carraway": "caraway", "carraways": "caraways", "lemmon": "lemon", "lemmons": "lemons", "cinamon": "cinnamon", "sinamon": "cinnamon", "pudden": "pudding", "flowr": "flour",
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

func isLetter(r rune) bool {
	if r < utf8.RuneSelf {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	}
	return unicode.IsLetter(r) || r == 'ª'
}

func isApostrophe(r rune) bool { return r == '\'' || r == '’' || r == '‘' }
