package oven

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"assize/formula/receipt"
	"assize/reference"
)

// Range is a figure with its range: Low <= Likely <= High.
type Range struct{ Low, Likely, High float64 }

// Fahrenheit turns a range of degrees Celsius into Fahrenheit.
func (r Range) Fahrenheit() Range {
	return Range{fahrenheit(r.Low), fahrenheit(r.Likely), fahrenheit(r.High)}
}

// IsZero reports a range that was never given.
func (r Range) IsZero() bool { return r == Range{} }

func fahrenheit(c float64) float64 { return c*1.8 + 32 }
func celsius(f float64) float64    { return (f - 32) / 1.8 }

func inC(f Range) Range { return Range{celsius(f.Low), celsius(f.Likely), celsius(f.High)} }

// The signs a heat is told by.
const (
	Degrees = "degrees" // said in figures
	Word    = "word"
	Gas     = "gas"
	Hand    = "hand"
	Paper   = "paper"
	Flour   = "flour"
)

// Heat is what one sign of an oven's heat comes to.
type Heat struct {
	Sign  string // Degrees, Word, Gas, Hand, Paper, Flour
	Words string // as found
	C     Range  // of the oven's air; zero where no work gives degrees
	// Exact marks a heat said in degrees or by a gas mark of today.
	Exact bool
	Fan   bool // said of a fan oven; C is already what it does in a still one
	// Row is the row to go by, nil for degrees and for the hand, which is
	// reckoned over all its rows.
	Row *reference.Oven
	// Rows are the tables' readings of the sign, as they differ.
	Rows []*reference.Oven
}

// wideF is how far either side the heat of an old sign is shown at the least,
// degrees Fahrenheit: no table of degrees older than 1915 is known.
const wideF = 50

// thermometers is the year from which books may be taken to mean degrees by
// their oven words (the first gas range tables).
const thermometers = 1915

// FanC is how much hotter a still oven must be to do what a fan oven does, C
// (common practice).
const FanC = 20

// When is the year and the place of the words, which decide gas marks and how
// far an oven word can be trusted. The zero value is an old book anywhere.
type When struct {
	Year  int
	Place string
}

// Called reads the first sign of heat in the words: "a quick oven", "350 F",
// "gas mark 4", "count twenty with the hand in it", "paper browns in a minute".
// It reports false when there is none.
func Called(words string, t *reference.Tables, when When) (Heat, bool) {
	all := Read(words, t, when)
	if len(all) == 0 {
		return Heat{}, false
	}
	return all[0], true
}

// Read reads every sign of heat in the words, in the order they stand: "quick
// at first, then slow" is two.
func Read(words string, t *reference.Tables, when When) []Heat {
	var out []found
	out = append(out, degreesIn(words)...)
	out = append(out, gasIn(words, t, when)...)
	if f, ok := testIn(words, t); ok {
		out = append(out, f)
	}
	if len(out) == 0 || !slices.ContainsFunc(out, func(f found) bool { return f.heat.Sign == Hand || f.heat.Sign == Paper || f.heat.Sign == Flour }) {
		out = append(out, wordsIn(words, t, when)...)
	}
	slices.SortStableFunc(out, func(a, b found) int { return a.at - b.at })
	heats := make([]Heat, len(out))
	for i := range out {
		heats[i] = out[i].heat
	}
	return heats
}

type found struct {
	at   int // where in the words, for their order only
	heat Heat
}

var degreesRE = regexp.MustCompile(`(?i)(\bfan\s+(?:oven\s+)?(?:at\s+)?)?\b(\d{2,3})\s*(?:°|º|deg\.?|degrees?)?\s*[fc]?\s*(?:(?:-|–|to|or)\s*(\d{2,3})\s*)?(?:°|º|deg\.?|degrees?)?\s*(f|c|fahrenheit|celsius|centigrade|réaumur|reaumur)\b(\s*\(?\s*fan)?`)

// degreesIn finds degrees with their scale.
func degreesIn(words string) []found {
	var out []found
	for _, m := range degreesRE.FindAllStringSubmatchIndex(words, -1) {
		part := func(i int) string {
			if m[2*i] < 0 {
				return ""
			}
			return words[m[2*i]:m[2*i+1]]
		}
		low, _ := strconv.ParseFloat(part(2), 64) // two or three digits
		high := low
		if part(3) != "" {
			high, _ = strconv.ParseFloat(part(3), 64)
		}
		if high < low {
			low, high = high, low
		}
		to := func(v float64) float64 { return v }
		switch strings.ToLower(part(4))[0] {
		case 'f':
			to = celsius
		case 'r':
			to = func(v float64) float64 { return 1.25 * v }
		}
		h := Heat{Sign: Degrees, Words: strings.TrimSpace(words[m[0]:m[1]]), Exact: true, Fan: part(1) != "" || part(5) != ""}
		h.C = Range{to(low), to((low + high) / 2), to(high)}
		if h.Fan {
			h.C = Range{h.C.Low + FanC, h.C.Likely + FanC, h.C.High + FanC}
		}
		out = append(out, found{m[0], h})
	}
	return out
}

var gasRE = regexp.MustCompile(`(?i)\b(?:gas(?:\s+mark)?|mark|regulo)(?:\s+no\.?)?\s*(1/4|1/2|¼|½|[1-9])\b|\b(?:gas(?:\s+mark)?|mark|regulo)\s*(¼|½)`)

// gasIn finds gas marks. Before 1950 a maker's mark may be a step off.
func gasIn(words string, t *reference.Tables, when When) []found {
	var out []found
	for _, m := range gasRE.FindAllStringSubmatchIndex(words, -1) {
		mark := words[max(m[2], 0):max(m[3], 0)]
		if mark == "" {
			mark = words[m[4]:m[5]]
		}
		mark = strings.NewReplacer("¼", "1/4", "½", "1/2").Replace(mark)
		row := gasRow(t, "gas mark "+mark, when)
		if row == nil {
			continue
		}
		out = append(out, found{m[0], Heat{
			Sign: Gas, Words: words[m[0]:m[1]], C: spanOf(row.F, true), Exact: row.F.IsExact(), Row: row, Rows: []*reference.Oven{row},
		}})
	}
	return out
}

// gasRow is the row of a mark for the year, today's where none is given.
func gasRow(t *reference.Tables, mark string, when When) *reference.Oven {
	year := when.Year
	if year < 1923 { // no book before the first regulated taps has a mark; a kitchen of today has
		year = 2000
	}
	for i := range t.Ovens {
		r := &t.Ovens[i]
		if r.Kind == Gas && (r.From == 0 || year >= r.From) && (r.To == 0 || year <= r.To) && slices.Contains(r.Words, mark) {
			return r
		}
	}
	return nil
}

// spanOf is a table's span of degrees, Fahrenheit when asked, as Celsius.
func spanOf(s reference.Span, isF bool) Range {
	r := Range{s.Low.InexactFloat64(), s.Likely.InexactFloat64(), s.High.InexactFloat64()}
	if isF {
		return inC(r)
	}
	return r
}

// wordsIn finds the oven words of the working rows, the longest wording that
// fits a place before a shorter one.
func wordsIn(words string, t *reference.Tables, when When) []found {
	ws := reference.Words(words)
	lower := strings.ToLower(words)
	var out []found
	at := 0
	for i := 0; i < len(ws); {
		if n := strings.Index(lower[at:], ws[i]); n >= 0 {
			at += n
		}
		row, n := longestWording(ws[i:], t)
		if row == nil {
			i++
			continue
		}
		out = append(out, found{at, wordHeat(strings.Join(ws[i:i+n], " "), row, t, when)})
		i += n
	}
	return out
}

func longestWording(ws []string, t *reference.Tables) (*reference.Oven, int) {
	var best *reference.Oven
	most := 0
	for i := range t.Ovens {
		r := &t.Ovens[i]
		if r.Kind != Word || !r.Working {
			continue
		}
		for _, w := range r.Words {
			if w == "" || w[0]|0x20 != ws[0][0] { // spares taking apart what cannot fit
				continue
			}
			parts := reference.Words(w)
			if len(parts) > most && len(parts) <= len(ws) && slices.Equal(parts, ws[:len(parts)]) {
				best, most = r, len(parts)
			}
		}
	}
	return best, most
}

// wordHeat is the heat of an oven word, with every table that has the word
// beside it. Words of before thermometers are widened.
func wordHeat(words string, row *reference.Oven, t *reference.Tables, when When) Heat {
	h := Heat{Sign: Word, Words: words, Row: row}
	f := Range{row.F.Low.InexactFloat64(), row.F.Likely.InexactFloat64(), row.F.High.InexactFloat64()}
	if when.Year < thermometers {
		f = Range{min(f.Low, f.Likely-wideF), f.Likely, max(f.High, f.Likely+wideF)}
	}
	h.C = inC(f)
	h.Rows = append(h.Rows, row)
	for i := range t.Ovens {
		r := &t.Ovens[i]
		if r.Kind != Word || r.Working {
			continue
		}
		for _, w := range r.Words {
			if slices.ContainsFunc(row.Words, func(o string) bool { return reference.Key(o) == reference.Key(w) }) {
				h.Rows = append(h.Rows, r)
				break
			}
		}
	}
	return h
}

// HandLine is the line through every published count of the hand: degrees
// Fahrenheit against the logarithm of the seconds, with the spread of the rows
// about it.
type HandLine struct {
	At1, PerLog, Spread float64
	Rows                []*reference.Oven
}

// HandLineOf fits the line to the rows of the table that give a count with
// degrees. All count alike: none was measured with a thermometer in a room of
// the time, and cooks' hands differ.
func HandLineOf(t *reference.Tables) (HandLine, error) {
	var l HandLine
	var x, y []float64
	for i := range t.Ovens {
		if r := &t.Ovens[i]; r.Kind == Hand && !r.F.IsZero() && r.Seconds.Likely.IsPositive() {
			l.Rows = append(l.Rows, r)
			x = append(x, math.Log(r.Seconds.Likely.InexactFloat64()))
			y = append(y, r.F.Likely.InexactFloat64())
		}
	}
	a, b, spread, err := straight(x, y)
	if err != nil {
		return l, fmt.Errorf("counts of the hand: %w", err)
	}
	l.At1, l.PerLog, l.Spread = a, b, spread
	return l, nil
}

// eightInTen is how many spreads either side of a line hold eight in ten of
// what is scattered about it in the usual way.
const eightInTen = 1.28

// MostCount is the longest count of the hand that is read.
const MostCount = 120

// Count is the heat at which the hand can be borne for so many seconds, as the
// cooks who wrote it down would have it: at least 50 F either way, whatever
// they say. For the oven that is already hot; nobody is to try it.
func Count(seconds float64, t *reference.Tables) (Heat, error) {
	if !(seconds >= 1 && seconds <= MostCount) {
		return Heat{}, fmt.Errorf("a count of %g is none that cooks used; from 1 to %d", seconds, MostCount)
	}
	l, err := HandLineOf(t)
	if err != nil {
		return Heat{}, err
	}
	f := l.At1 + l.PerLog*math.Log(seconds)
	by := max(wideF, eightInTen*l.Spread)
	return Heat{Sign: Hand, Words: fmt.Sprintf("a count of %g", seconds), C: inC(Range{f - by, f, f + by}), Rows: l.Rows}, nil
}

var (
	handRE = regexp.MustCompile(`(?i)\b(?:hand|hands|arm|fingers?)\b`)
	// countRE takes what follows a word of counting, or stands before "seconds".
	countRE   = regexp.MustCompile(`(?i)\b(?:count(?:s|ed|ing)?|tell(?:ing)?|number)\s+(?:of\s+|to\s+|up\s+to\s+|till\s+)?((?:[a-z0-9-]+\s*){1,3})`)
	secondsRE = regexp.MustCompile(`(?i)\b(half\s+a|[a-z0-9½¼/.-]+)\s+(seconds?|minutes?)\b(\s+and\s+a\s+half)?`)
	paperRE   = regexp.MustCompile(`(?i)\b(?:paper|note-paper|notepaper)\b`)
	flourRE   = regexp.MustCompile(`(?i)\bflour\b`)
)

// testIn finds a count of the hand, or the test of paper or flour.
func testIn(words string, t *reference.Tables) (found, bool) {
	if at := handRE.FindStringIndex(words); at != nil {
		for _, s := range countIn(words) {
			if h, err := Count(s, t); err == nil {
				h.Words = strings.TrimSpace(words)
				return found{at[0], h}, true
			}
		}
		if m := secondsIn(words); m > 0 {
			if h, err := Count(m, t); err == nil {
				h.Words = strings.TrimSpace(words)
				return found{at[0], h}, true
			}
		}
		return found{}, false
	}
	for _, test := range []struct {
		kind string
		re   *regexp.Regexp
	}{{Paper, paperRE}, {Flour, flourRE}} {
		if at := test.re.FindStringIndex(words); at != nil {
			if h, ok := tested(test.kind, words, t); ok {
				return found{at[0], h}, true
			}
		}
	}
	return found{}, false
}

// countIn are the numbers after a word of counting, the longest reading first.
func countIn(words string) []float64 {
	m := countRE.FindStringSubmatch(words)
	if m == nil {
		return nil
	}
	ws := strings.Fields(m[1])
	for n := len(ws); n > 0; n-- {
		if s, err := receipt.ParseNumber(strings.Join(ws[:n], " ")); err == nil {
			return []float64{s.Likely.InexactFloat64()}
		}
	}
	return nil
}

// secondsIn is a time in words, in seconds; nought when there is none.
func secondsIn(words string) float64 {
	m := secondsRE.FindStringSubmatch(words)
	if m == nil {
		return 0
	}
	v := 0.0
	switch n, err := receipt.ParseNumber(m[1]); {
	case err == nil:
		v = n.Likely.InexactFloat64()
	case m[1] == "a" || m[1] == "an":
		v = 1
	case strings.HasPrefix(strings.ToLower(m[1]), "half"):
		v = .5
	default:
		return 0
	}
	if m[3] != "" {
		v += .5
	}
	if strings.HasPrefix(strings.ToLower(m[2]), "minute") {
		v *= 60
	}
	return v
}

// likeTime is how far apart two times of a test may be and still be told as
// the same, as a factor.
const likeTime = 1.25

// tested reads the test of paper or flour: the rows whose sign or time is the
// one said. Degrees are taken over the rows that give them.
func tested(kind string, words string, t *reference.Tables) (Heat, bool) {
	seconds := secondsIn(words)
	colour := colourIn(words)
	h := Heat{Sign: kind, Words: strings.TrimSpace(words)}
	best := -1
	for i := range t.Ovens {
		r := &t.Ovens[i]
		if r.Kind != kind {
			continue
		}
		score := 0
		if rc := colourIn(r.Sign); colour != "" && rc != "" {
			if rc != colour {
				continue
			}
			score += 2
		}
		if rs := r.Seconds.Likely.InexactFloat64(); seconds > 0 && rs > 0 {
			if rs > seconds*likeTime || rs < seconds/likeTime {
				continue
			}
			score++
		}
		switch {
		case score == 0:
		case score > best:
			best, h.Rows = score, []*reference.Oven{r}
		case score == best:
			h.Rows = append(h.Rows, r)
		}
	}
	if len(h.Rows) == 0 {
		return h, false
	}
	h.C = over(h.Rows)
	return h, true
}

// colours of the test of paper, from the hottest; "browns" alone names none.
var colours = []string{"black", "blazes", "chocolate", "dark brown", "light brown", "golden", "dark yellow", "light yellow", "tinged", "curl"}

func colourIn(s string) string {
	k := strings.ToLower(s)
	for _, c := range colours {
		if strings.Contains(k, c) {
			switch c {
			case "blazes":
				return "black"
			case "chocolate":
				return "dark brown"
			}
			return c
		}
	}
	return ""
}

// over is the heat that rows with degrees come to together: from the lowest to
// the highest, likely in their middle, and never narrower than an old sign is.
// It is nothing when none gives degrees.
func over(rows []*reference.Oven) Range {
	var f Range
	n := 0.0
	for _, r := range rows {
		if r.F.IsZero() || r.Refused != "" {
			continue
		}
		low, likely, high := r.F.Low.InexactFloat64(), r.F.Likely.InexactFloat64(), r.F.High.InexactFloat64()
		if n == 0 {
			f = Range{low, 0, high}
		}
		f.Low, f.High = min(f.Low, low), max(f.High, high)
		f.Likely += likely
		n++
	}
	if n == 0 {
		return Range{}
	}
	f.Likely /= n
	return inC(Range{min(f.Low, f.Likely-wideF), f.Likely, max(f.High, f.Likely+wideF)})
}

// straight fits a straight line by least squares: y = a + b x, with the spread
// of the points about it.
func straight(x, y []float64) (a, b, spread float64, err error) {
	n := float64(len(x))
	if len(x) < 2 {
		return 0, 0, 0, fmt.Errorf("a line needs two points, there are %d", len(x))
	}
	var mx, my, sxx, sxy float64
	for i := range x {
		mx += x[i] / n
		my += y[i] / n
	}
	for i := range x {
		sxx += (x[i] - mx) * (x[i] - mx)
		sxy += (x[i] - mx) * (y[i] - my)
	}
	if sxx == 0 {
		return 0, 0, 0, fmt.Errorf("all points stand at one place")
	}
	b = sxy / sxx
	a = my - b*mx
	if len(x) > 2 {
		sum := 0.0
		for i := range x {
			d := y[i] - a - b*x[i]
			sum += d * d
		}
		spread = math.Sqrt(sum / (n - 2))
	}
	return a, b, spread, nil
}
