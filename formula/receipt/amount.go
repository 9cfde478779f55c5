package receipt

import (
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/reference"
)

// amount is how much a line says, before it is known of what.
type amount struct {
	formula.Amount
	said     bool // something is said of how much
	numbered bool // with a number, or "a"
	measured bool // in a measure, parts or the weight of things
	implied  bool // the number is one because none is given
	plural   bool // the measure is: "spoonfuls"
	jumbo    bool
	written  string // the measure as written
	fills    []fill
	also     []amount // to be added: "1 lb 4 oz"
	beside   []amount // the same again in other measures: "(340 g)"
	each     bool     // beside is of each piece
	from     int      // column
	found    found    // notes and troubles met on the way
}

// amountAt reads the amount the phrase begins with and returns how many tokens
// it takes, 0 when it begins with none. Words of size before a counted thing
// are left to the thing's name.
func (r *Reader) amountAt(ts phrase) (amount, int) {
	if !mayBeAmount(ts) {
		return amount{}, 0
	}
	a := amount{from: ts.column()}
	i := r.head(ts, &a)
	switch m := r.measureAt(ts[i:]); {
	case a.measured: // a weight that stands before a tin
	case m > 0 && (a.numbered || len(a.fills) > 0 || ts.key(i+m) == "of" || pinches.has(r.measureName(ts[i:i+m].String()))):
		r.take(ts, i, m, &a)
		i += m
	case a.numbered && (ts.key(i) == "part" || ts.key(i) == "parts"):
		a.Parts, a.measured = true, true
		i++
	case a.numbered && (ts.key(i) == "%" || ts.key(i) == "percent"):
		a.Parts, a.measured = true, true
		i++
	case a.numbered && ts.key(i) == "per" && ts.key(i+1) == "cent":
		a.Parts, a.measured = true, true
		i += 2
	case a.numbered:
		a.implied = false
	default:
		return amount{}, 0
	}
	if a.Measure != "" {
		i += r.tail(ts[i:], &a)
	}
	a.said = true
	a.Words = ts[:i].String()
	return a, i
}

// mayBeAmount reports a phrase that begins as an amount may: with a number, a
// measure or how full it is.
func mayBeAmount(ts phrase) bool {
	if len(ts) == 0 {
		return false
	}
	t := &ts[0]
	return t.kind == figure || t.opens.Measure > 0 || t.opens.Fill > 0 || t.is(amountOpens)
}

// take makes the measure at ts[i:i+m] that of the amount.
func (r *Reader) take(ts phrase, i, m int, a *amount) {
	written := ts[i : i+m].String()
	a.Measure, a.written, a.measured = r.measureName(ts[i:i+m].modern()), written, true
	last := ts.key(i + m - 1)
	a.plural = len(last) > 2 && last[len(last)-1] == 's' && last != "glass"
	if !a.numbered {
		a.Number, a.implied = reference.Exact(one), true
	}
}

// head reads what stands before the measure: words of fullness and the number,
// in either order, and "2 x" or a weight in brackets before a tin.
func (r *Reader) head(ts phrase, a *amount) int {
	i, afterNumber, before := 0, 0, 0
	for i < len(ts) {
		if !a.numbered || a.article() {
			if n := r.numberAt(ts[i:], a); n > 0 {
				i += n
				if f, n := r.fillAt(ts[i:]); n > 0 && ts.key(i) == "or" { // "a dozen or so"
					a.fills = append(a.fills, f)
					i += n
				}
				afterNumber, before = i, len(a.fills)
				continue
			}
		}
		if a.numbered && !a.article() {
			if n := r.times(ts[i:], a); n > 0 {
				return i + n
			}
		}
		if r.measureAt(ts[i:]) > 0 && (r.measureAt(ts[i:]) > 1 || a.numbered) {
			return i
		}
		f, n := r.fillAt(ts[i:])
		if n == 0 {
			break
		}
		a.fills = append(a.fills, f)
		i += n
	}
	if a.numbered && r.measureAt(ts[i:]) == 0 {
		i, a.fills = afterNumber, a.fills[:before]
	}
	return i
}

// article reports an amount whose number so far is only "a".
func (a *amount) article() bool { return a.numbered && a.implied }

// numberAt reads a number into the amount. After a mere "a" another number may
// follow: "a scant half cup".
func (r *Reader) numberAt(ts phrase, a *amount) int {
	if few, ok := fewWords.at(ts, 0); ok && r.measureAt(ts) < 2 && r.measureAt(ts[1:]) > 0 {
		a.Number, a.numbered, a.implied = few, true, false
		a.found.note("%q is taken as %s to %s", ts.key(0), few.Low, few.High)
		return 1
	}
	n := number(ts)
	if n.used == 0 || n.article && a.numbered {
		return 0
	}
	if n.article {
		a.Number, a.numbered, a.implied = n.span, true, true
		return n.used
	}
	if n.err != nil {
		a.found.trouble(ts.column(), "", "%s", n.err)
		n.span = reference.Exact(one)
	}
	a.Number, a.numbered, a.implied = n.span, true, false
	return n.used
}

// fewWords are numbers nobody counted.
var fewWords = mapped(map[string]reference.Span{
	"few":     {Low: two, Likely: decimal.NewFromInt(3), High: decimal.NewFromInt(5)},
	"several": {Low: decimal.NewFromInt(3), Likely: decimal.NewFromInt(5), High: decimal.NewFromInt(7)},
})

// times reads "x 400 g" or "(400 g) tin" after a number: so many of a weight.
func (r *Reader) times(ts phrase, a *amount) int {
	open, bare := ts.key(0) == "(", len(ts) > 0 && ts[0].kind == figure
	i := 1
	switch {
	case bare: // "1 15-oz can"
		i = 0
	case !open && ts.key(0) != "x" && ts.key(0) != "×":
		return 0
	}
	b, n := r.amountAt(ts[i:])
	if n == 0 || b.Measure == "" || b.implied {
		return 0
	}
	i += n
	if open {
		if ts.key(i) != ")" {
			return 0
		}
		i++
	}
	m := r.measureAt(ts[i:])
	if (open || bare) && (m == 0 || !ts.is(i+m-1, containers)) {
		return 0
	}
	if m > 0 && ts.is(i+m-1, containers) {
		i += m
	}
	a.Number = multiply(a.Number, b.Number)
	a.Measure, a.written, a.measured, a.implied = b.Measure, b.written, true, false
	a.fills = append(a.fills, b.fills...)
	return i
}

func multiply(a, b reference.Span) reference.Span {
	return reference.Span{
		Low: a.Low.Mul(b.Low).Round(places), Likely: a.Likely.Mul(b.Likely).Round(places), High: a.High.Mul(b.High).Round(places),
	}
}

// tail reads what may follow a measure before the name: a fraction more, the
// other end of a range, the same amount in another measure, a further amount,
// how full the measure was.
func (r *Reader) tail(ts phrase, a *amount) int {
	i := 0
	for {
		n := r.andHalf(ts[i:], a)
		if n == 0 {
			n = r.upTo(ts[i:], a)
		}
		if n == 0 {
			n = r.besides(ts[i:], a)
		}
		if n == 0 {
			n = r.further(ts[i:], a)
		}
		if n == 0 {
			n = r.packed(ts[i:], a)
		}
		if n == 0 {
			return i
		}
		i += n
	}
}

// andHalf reads "and a half" after "a pint".
func (r *Reader) andHalf(ts phrase, a *amount) int {
	if ts.key(0) != "and" || len(a.also) > 0 {
		return 0
	}
	f := fraction(ts[1:])
	next := 1 + f.used
	if f.used == 0 || f.err != nil || r.measureAt(ts[next+ofA(ts[next:]):]) > 0 || ts.key(next) == "the" || ts.key(next+1) == "the" && !strings.HasSuffix(ts.key(next+2), "est") {
		return 0
	}
	a.Number = a.Number.Add(reference.Exact(f.value))
	a.numbered, a.implied = true, false
	return next
}

// ends reports that the amount may end before token i: nothing, a mark or "of"
// stands there.
func ends(ts phrase, i int) bool { return i >= len(ts) || ts[i].kind == mark || ts.key(i) == "of" }

// upTo reads the other end of a range after the measure: "or two", "to 6 oz".
func (r *Reader) upTo(ts phrase, a *amount) int {
	sep := ts.key(0)
	if sep == "," && ts.key(1) == "or" && len(a.also) == 0 { // "a pound, or a pint and a half, of flour"
		b, n := r.amountAt(ts[2:])
		k := 2 + n
		if ts.key(k) == "," {
			k++
		}
		if n > 0 && b.numbered && b.Measure != "" && b.Measure != a.Measure && ts.key(k) == "of" {
			a.beside = append(a.beside, b)
			return k
		}
	}
	if sep != "to" && sep != "or" && sep != "-" || len(a.also) > 0 {
		return 0
	}
	b, n := r.amountAt(ts[1:])
	if n == 0 || b.implied && !b.numbered {
		return 0
	}
	switch {
	case !b.measured && !a.plural && sep == "or" && ends(ts, 1+n):
		b.Measure = a.Measure
	case b.Measure == "":
		return 0
	case b.Measure != a.Measure && sep == "or":
		a.beside = append(a.beside, b)
		return 1 + n
	case b.Measure != a.Measure:
		a.found.trouble(ts.column(), "give both ends of the range in one measure", "%q and %q are different measures", a.Measure, b.Measure)
		return 1 + n
	}
	a.Number = spread(a.Number.Low, b.Number.High)
	a.numbered, a.implied = true, false
	a.also = append(a.also, b.also...)
	return 1 + n
}

// besides reads the same amount in another measure: "(340 g)", "/8 oz", "= 340 g".
func (r *Reader) besides(ts phrase, a *amount) int {
	switch ts.key(0) {
	case "/", "=":
		b, n := r.amountAt(ts[1:])
		if n == 0 || b.Measure == "" || !b.numbered {
			return 0
		}
		a.beside = append(a.beside, b)
		return 1 + n
	case "(":
		b, n := r.amountAt(ts[1:])
		if n == 0 || b.Measure == "" || !b.numbered {
			return 0
		}
		i := 1 + n
		if ts.key(i) == "each" {
			a.each = true
			i++
		}
		if ts.key(i) != ")" && i < len(ts) {
			return 0
		}
		a.beside = append(a.beside, b)
		return min(i+1, len(ts))
	}
	return 0
}

// further reads an amount to be added: "1 lb 4 oz", "1 cup plus 2 tablespoons".
func (r *Reader) further(ts phrase, a *amount) int {
	i := 0
	less := ts.key(0) == "less" || ts.key(0) == "minus"
	switch ts.key(0) {
	case "and", "plus", "+", "less", "minus":
		i = 1
	}
	b, n := r.amountAt(ts[i:])
	if n == 0 || b.Measure == "" || !b.numbered || i == 0 && (b.implied || a.Measure != "" && !containers.has(a.Measure) && r.isWeight(a.Measure) != r.isWeight(b.Measure)) {
		return 0 // "to the half pint two ounces of almonds"
	}
	if less {
		a.found.trouble(ts.column(), "reckon it out and write what is left", "an amount less another is not worked out here")
		return i + n
	}
	if i == 0 && containers.has(a.Measure) {
		a.beside = append(a.beside, b)
		return n
	}
	a.also = append(append(a.also, b), b.also...)
	b.also = nil
	return i + n
}

// packed reads how full the measure was, when that stands after it: "1 cup
// packed". Words that could as well speak of the thing are left to it.
func (r *Reader) packed(ts phrase, a *amount) int {
	if k := ts.key(0); k == "(" || k == "," { // "2 tablespoons (heaped) flour", "a cup, scant, of milk"
		f, n := r.fillAt(ts[1:])
		if end := ts.key(1 + n); n == 0 || end != ")" && end != "," || k == "," && ts.key(2+n) != "of" {
			return 0
		}
		a.fills = append(a.fills, f)
		return n + 2
	}
	f, n := r.fillAt(ts)
	if n == 0 || !fullness.has(f.id) && f.id != "scant" || n == 1 && ts.is(0, ofTheThing) || r.isWeight(a.Measure) {
		return 0
	}
	a.fills = append(a.fills, f)
	return n
}

var ofTheThing = words("pressed loose full even heap shallow bare piled struck spooned")

// compare holds the amount against those given beside it and notes what does
// not agree: the first is always taken.
func (r *Reader) compare(f *found, a amount, ing *reference.Ingredient) {
	for _, b := range a.beside {
		x, xu, ok := r.bulk(a, ing)
		y, yu, ok2 := r.bulk(b, ing)
		if !ok || !ok2 || xu != yu {
			f.note("%q is also given; %q is what is taken", b.Words, a.Words)
			continue
		}
		if a.each {
			y = y.Mul(a.Number.Likely)
		}
		if x.Sub(y).Abs().GreaterThan(x.Mul(tolerance)) {
			f.note("the amounts given do not agree: %s %s against %s %s; the first is taken", x.Round(1), xu, y.Round(1), yu)
		}
	}
}

// tolerance is how far two amounts given for one may be apart unsaid, as a
// share of the first: books round an ounce to 25, 28 or 30 g.
var tolerance = decimal.RequireFromString("0.05")

// bulk is the likely size of an amount in grams or millilitres.
func (r *Reader) bulk(a amount, ing *reference.Ingredient) (decimal.Decimal, string, bool) {
	sum, unit := zero, ""
	for _, part := range append([]amount{a}, a.also...) {
		rows := r.holding(part.Measure, ing)
		if part.Measure == "" || len(rows) == 0 || unit != "" && rows[0].Unit != unit {
			return zero, "", false
		}
		unit = rows[0].Unit
		sum = sum.Add(part.Number.Likely.Mul(rows[0].Likely))
	}
	return sum, unit, true
}

// scaled is the amount multiplied by a factor.
func (a amount) scaled(by decimal.Decimal) amount {
	a.Number = a.Number.Mul(by)
	more := make([]amount, len(a.also))
	for i, b := range a.also {
		more[i] = b.scaled(by)
	}
	a.also = more
	return a
}
