package receipt

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"assize/reference"
)

// The bounds of a number of measures or things.
var most = decimal.NewFromInt(1_000_000)

var (
	zero = decimal.Zero
	one  = decimal.NewFromInt(1)
	two  = decimal.NewFromInt(2)
	half = decimal.RequireFromString("0.5")
)

// longestNumber is the most characters a number in words may have.
const longestNumber = 100

// ParseNumber reads a number as cooks write it: in figures ("2", "1.5", "3/4",
// "1 1/2", "½"), in words ("three quarters of a", "one and a half", "half a
// dozen", "a score") or as a range ("2 to 3", "two or three"). A range has its
// middle as likely. The number must be more than nothing and at most a million,
// and all of the text must be read.
func ParseNumber(text string) (reference.Span, error) {
	trimmed := strings.TrimSpace(text)
	switch {
	case trimmed == "":
		return reference.Span{}, errors.New("no number is given")
	case len(trimmed) > longestNumber:
		return reference.Span{}, errors.New("the number is too long to read")
	}
	ts := tokenizeLine(trimmed, nil)
	if ts.key(0) == "-" {
		return reference.Span{}, fmt.Errorf("%q is less than nothing", trimmed)
	}
	n := number(ts)
	switch {
	case n.used > 0 && n.err != nil:
		return reference.Span{}, n.err
	case n.used == 0 || n.used < len(ts):
		return reference.Span{}, fmt.Errorf("%q is not a number", trimmed)
	}
	return n.span, nil
}

// counted is a number found at the start of a phrase.
type counted struct {
	span reference.Span
	used int // tokens; 0 when the phrase begins with no number
	// article marks a number that is only "a" or "an".
	article bool
	// fraction marks one that is only a fraction: "half", "two thirds".
	fraction bool
	err      error
}

// number reads the longest number or range the phrase begins with.
func number(ts phrase) counted {
	if len(ts) == 0 || ts[0].kind != figure && !ts[0].is(numberOpens) {
		return counted{}
	}
	if ts[0].is(articleWords) && (len(ts) == 1 || !ts[1].is(articleGoesOn) && ts[1].kind != figure && !strings.HasSuffix(ts[1].lead, "-")) {
		return counted{span: reference.Exact(one), used: 1, article: true}
	}
	i, between := 0, false
	switch ts.key(0) {
	case "from":
		i = 1
	case "between":
		i, between = 1, true
	}
	first := quantity(ts[i:])
	if first.used == 0 {
		return counted{}
	}
	i += first.used
	end, span := i, reference.Exact(first.value)
	second, used := rangeEnd(ts[i:], between)
	if used > 0 && second.err == nil && first.err == nil {
		end, i = i+used, i+used
		span = spread(first.value, second.value)
		first.article = false
		first.fraction = first.fraction && second.fraction
		first.open = second.open
	} else if i > first.used { // "from" or "between" with no range after it
		return counted{}
	}
	if first.open {
		end += ofA(ts[end:])
	}
	out := counted{span: span, used: end, article: first.article, fraction: first.fraction, err: first.err}
	if used > 0 && second.err != nil {
		out.used, out.err = i+used, second.err
	}
	if out.err == nil {
		out.err = bounded(span, ts[:end])
	}
	return out
}

// bounded checks that a number is one a receipt may give.
func bounded(s reference.Span, written phrase) error {
	const digits = 6 // of a number under the most
	switch {
	case !s.Low.IsPositive():
		return fmt.Errorf("%q is no amount: nothing is nought of a thing", written.String())
	case s.High.NumDigits()+int(s.High.Exponent()) > digits && s.High.GreaterThan(most):
		return fmt.Errorf("%q is more than any kitchen weighs", written.String())
	}
	return nil
}

// spread is the range between two numbers, the likely one in the middle.
func spread(a, b decimal.Decimal) reference.Span {
	if a.GreaterThan(b) {
		a, b = b, a
	}
	return reference.Span{Low: a, Likely: a.Add(b).Mul(half), High: b}
}

// rangeEnd reads "to 3", "or three", "-3" after the first end of a range.
func rangeEnd(ts phrase, between bool) (value, int) {
	n := 0
	switch k := ts.key(0); {
	case k == "to", k == "or", k == "-", k == "till", between && k == "and":
		n = 1
		if k == "or" && ts.key(1) == "even" || k == "or" && ts.key(1) == "perhaps" {
			n = 2
		}
	case len(ts) > 0 && strings.HasSuffix(ts[0].lead, "-"):
	default:
		return value{}, 0
	}
	v := quantity(ts[n:])
	if v.used == 0 || v.article {
		return value{}, 0
	}
	return v, n + v.used
}

// value is one number without a range.
type value struct {
	value    decimal.Decimal
	used     int
	article  bool
	fraction bool
	// open marks a fraction that may go on with "of a": a quarter of a pound.
	open bool
	err  error
}

// quantity reads a whole number, a fraction, or both, in dozens or not.
func quantity(ts phrase) value {
	if len(ts) > 1 && ts[0].is(articleWords) && ts[1].vulgar { // "a ¼ lb."
		v := quantity(ts[1:])
		v.used++
		return v
	}
	v := fraction(ts)
	if v.used > 0 {
		// "half a quarter of a pound" is an eighth.
		if n := ofA(ts[v.used:]); n > 0 || ts.is(v.used, fractionSet) {
			if f := fraction(ts[v.used+n:]); f.used > 0 && !f.numeric(ts[v.used+n:]) {
				v.value, v.used = v.value.Mul(f.value).Round(places), v.used+n+f.used
			}
		}
	} else {
		v = whole(ts)
		if size, ok := groupWords.at(ts, 0); ok && v.used == 0 {
			return value{value: wholeNumber(size), used: 1} // "dozen" by itself
		}
		if v.used == 0 || v.err != nil {
			return v
		}
		if f, n := mixed(ts[v.used:]); n > 0 {
			v.value, v.used, v.article = v.value.Add(f.value), v.used+n, false
			v.err, v.open = f.err, f.open // "one and a quarter of a pound"
		}
	}
	return groups(ts, v)
}

// groups multiplies by the dozen, score or pair that follows.
func groups(ts phrase, v value) value {
	skip := 0
	if v.fraction {
		skip = ofA(ts[v.used:])
	}
	size, ok := groupWords.at(ts, v.used+skip)
	if !ok {
		return v
	}
	g := wholeNumber(size)
	v.value, v.used = v.value.Mul(g), v.used+skip+1
	v.article, v.fraction, v.open = false, false, false
	if ts.key(v.used) == "and" {
		if f := fraction(ts[v.used+1:]); f.used > 0 && ofA(ts[v.used+1+f.used:]) == 0 {
			v.value, v.used = v.value.Add(f.value.Mul(g)), v.used+1+f.used
		}
	}
	return v
}

// mixed reads the fraction after a whole number: "1 1/2", "1½", "one and a
// half", "1-1/2".
func mixed(ts phrase) (value, int) {
	n := 0
	if ts.key(0) == "and" {
		n = 1
	}
	f := fraction(ts[n:])
	if f.used == 0 {
		return value{}, 0
	}
	if n == 0 && !f.numeric(ts) {
		return value{}, 0
	}
	return f, n + f.used
}

// numeric reports a fraction written in figures.
func (v value) numeric(ts phrase) bool { return v.used > 0 && ts[0].kind == figure }

// fraction reads "1/2", "½", "half", "a quarter", "three quarters", "2 thirds".
func fraction(ts phrase) value {
	if len(ts) == 0 {
		return value{}
	}
	if ts[0].kind == figure {
		if ts[0].vulgar {
			return value{value: ts[0].value(), used: 1, fraction: true, open: true}
		}
		if ts.key(1) == "/" && len(ts) > 2 && ts[2].kind == figure && !ts[2].vulgar {
			return overUnder(ts)
		}
	}
	switch k := ts.key(0); {
	case k == "a" || k == "an":
		if part, ok := fractionWords.at(ts, 1); ok {
			return value{value: part.value, used: 2, fraction: true, open: true}
		}
		return value{}
	case ts.is(0, fractionSet):
		return value{value: fractionWords.of(ts, 0).value, used: 1, fraction: true, open: true}
	case ts[0].kind == word && !ts[0].is(numberWordSet):
		return value{}
	}
	w := whole(ts)
	if n := w.value.IntPart(); w.err == nil && n >= 2 && n <= 4 && ts.key(w.used) == "parts" && ofA(ts[w.used+1:]) > 0 {
		return value{value: ratio(w.value, decimal.NewFromInt(n+1)), used: w.used + 1, fraction: true, open: true} // "three parts of a pint"
	}
	part, ok := fractionWords.at(ts, w.used)
	if w.used == 0 || w.err != nil || !ok {
		return value{}
	}
	return value{value: ratio(w.value, part.under), used: w.used + 1, fraction: true, open: true}
}

// overUnder reads a fraction in figures, the phrase being known to begin so.
func overUnder(ts phrase) value {
	v := value{used: 3, fraction: true, open: true}
	for _, t := range []token{ts[0], ts[2]} {
		if t.fault != sound {
			v.err = fmt.Errorf("%q %s", t.text, t.fault)
			return v
		}
	}
	under := ts[2].value()
	if under.IsZero() {
		v.err = fmt.Errorf("%q divides by nothing", ts[:3].String())
		return v
	}
	v.value = ratio(ts[0].value(), under)
	return v
}

// whole reads a whole number, or a figure with decimals.
func whole(ts phrase) value {
	if len(ts) == 0 {
		return value{}
	}
	if ts[0].kind == figure {
		if ts[0].vulgar {
			return value{}
		}
		v := value{used: 1}
		if ts[0].fault != sound {
			v.err = fmt.Errorf("%q %s", ts[0].text, ts[0].fault)
			return v
		}
		v.value = ts[0].value()
		return v
	}
	var sum decimal.Decimal
	used, article := 0, false
	switch k := ts.key(0); k {
	case "a", "an":
		sum, used, article = one, 1, true
	default:
		n, ok := numberWords.at(ts, 0)
		if !ok {
			return value{}
		}
		sum, used = wholeNumber(n), 1
		if tens, ok := numberWords.at(ts, 2); ok && n < 10 && ts.key(1) == "and" && tens >= 20 { // "five and twenty"
			sum, used = wholeNumber(n+tens), 3
		} else if unit, ok := numberWords.at(ts, 1); ok && n >= 20 && n%10 == 0 && n < 100 && unit < 10 {
			sum, used = wholeNumber(n+unit), 2
		}
	}
	if ts.key(used) == "hundred" {
		sum, used, article = sum.Mul(wholeNumber(100)), used+1, false
		n := used
		if ts.key(n) == "and" {
			n++
		}
		if rest, ok := numberWords.at(ts, n); ok && rest < 100 {
			sum, used = sum.Add(wholeNumber(rest)), n+1
		}
	}
	return value{value: sum, used: used, article: article}
}

// value is what a figure without fault stands for.
func (t *token) value() decimal.Decimal {
	if t.vulgar {
		r, _ := utf8.DecodeRuneInString(t.text)
		return vulgarValues[r]
	}
	n := int64(0)
	for i := range len(t.text) {
		if !isDigit(rune(t.text[i])) { // a point, or the comma of 1,000
			v, _ := decimal.NewFromString(strings.ReplaceAll(t.text, ",", ""))
			return v
		}
		n = 10*n + int64(t.text[i]-'0')
	}
	return wholeNumber(n)
}

// ofA counts the words between a fraction and what it is of: "a", "of a".
func ofA(ts phrase) int {
	n := 0
	if ts.key(0) == "of" {
		n = 1
	}
	switch ts.key(n) {
	case "a", "an":
		return n + 1
	case "one":
		if n == 1 {
			return 2
		}
	}
	return 0
}

var numberWords = mapped(map[string]int64{
	"one": 1, "another": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
	"eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17,
	"eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60,
	"seventy": 70, "eighty": 80, "ninety": 90,
})

// The words a fraction may begin with, a number, and an amount.
var (
	fractionSet   = fractionWords.set
	numberWordSet = numberWords.set
	articleWords  = words("a an")
	articleGoesOn = union(fractionSet, groupWords.set, words("hundred and to or till -")) // what may follow "a" in a number
	numberOpens   = union(words("a an from between"), numberWordSet, fractionSet, groupWords.set)
	amountOpens   = union(numberOpens, words("about"), fewWords.set)
)

// fractionWords are one part of so many; "half" also stands for "halves".
var fractionWords = mapped(map[string]fractional{
	"half": part(2), "halves": part(2), "third": part(3), "thirds": part(3), "quarter": part(4), "quarters": part(4), "fourth": part(4), "fourths": part(4),
	"fifth": part(5), "fifths": part(5), "sixth": part(6), "sixths": part(6), "eighth": part(8), "eighths": part(8), "tenth": part(10), "tenths": part(10),
	"twelfth": part(12), "sixteenth": part(16), "sixteenths": part(16),
})

// fractional is one part of so many.
type fractional struct{ under, value decimal.Decimal }

func part(of int64) fractional {
	under := decimal.NewFromInt(of)
	return fractional{under, ratio(one, under)}
}

// wholeNumber is a number as a decimal; small ones are shared.
func wholeNumber(n int64) decimal.Decimal {
	if n >= 0 && n < int64(len(wholeNumbers)) {
		return wholeNumbers[n]
	}
	return decimal.NewFromInt(n)
}

var wholeNumbers = func() (out [145]decimal.Decimal) {
	for i := range out {
		out[i] = decimal.NewFromInt(int64(i))
	}
	return out
}()

var groupWords = mapped(map[string]int64{
	"dozen": 12, "dozens": 12, "doz": 12, "score": 20, "couple": 2, "pair": 2, "brace": 2, "gross": 144,
})
