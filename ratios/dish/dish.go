package dish

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"assize/ratios/readings"
	"assize/reference"
	"assize/reference/spell"
)

// Span is a figure with its range: smallest, likely and largest.
type Span = readings.Span

// Dish is a vessel made ready to be filled.
type Dish struct {
	Name string
	// Vessel is its row in the table, nil when the cook gave its size.
	Vessel *reference.Vessel
	// Given is a name with a size as the cook gave it, "soup plate, 17 x 2.5 cm";
	// empty for other dishes.
	Given string
	// DepthGuessed reports that only its width was told, or its two sides.
	DepthGuessed bool
	// Own reports that the kitchen has it.
	Own bool
	// Brimful and Usable are ml without paste: level full, and as a cook fills
	// it. Brimful is nothing when only what it takes is known.
	Brimful, Usable Span
	// Sizes are its inside at the smallest, the likely and the largest, without
	// a size where none is known.
	Sizes [3]Size
	// Rim is the width of a flat rim that paste is laid over, cm.
	Rim float64
	// true volume over that of the straight-walled shape: rounded corners and
	// curved walls of a dish that has been measured.
	rounded float64
}

// pasteRim is how far paste is laid over the edge of a dish without a flat
// rim, cm (judgement).
const pasteRim = 1.0

// Of makes the dish of a row.
func Of(v *reference.Vessel) Dish {
	d := Dish{
		Name: v.Names[0], Vessel: v, Brimful: spanOf(v.Brimful), Usable: spanOf(v.Usable),
		Rim: max(pasteRim, v.Rim.InexactFloat64()), rounded: 1,
	}
	if v.Depth.IsZero() || v.Top.IsZero() {
		return d
	}
	at := func(pick func(reference.Span) float64) Size {
		s := Size{Shape: Shape(v.Shape), Top: pick(v.Top), Bottom: pick(v.Bottom), Depth: pick(v.Depth)}
		if s.Shape != Round {
			s.TopSide, s.BottomSide = pick(v.TopSide), pick(v.BottomSide)
		}
		return s
	}
	d.Sizes = [3]Size{
		at(func(s reference.Span) float64 { return s.Low.InexactFloat64() }),
		at(func(s reference.Span) float64 { return s.Likely.InexactFloat64() }),
		at(func(s reference.Span) float64 { return s.High.InexactFloat64() }),
	}
	if full := d.Sizes[1].Brimful(); full > 0 && d.Brimful.Likely > 0 {
		d.rounded = d.Brimful.Likely / full
	}
	return d
}

func spanOf(s reference.Span) Span {
	return Span{Low: s.Low.InexactFloat64(), Likely: s.Likely.InexactFloat64(), High: s.High.InexactFloat64()}
}

// Sized reports whether the inside of the dish is known, so that depth and
// paste can be reckoned.
func (d *Dish) Sized() bool { return d.Sizes[1].Known() }

// Small reports a dish of which one batch fills several: patty-pans, cups,
// glasses, jars and other dishes under a quarter of a litre that are no plates.
func (d *Dish) Small() bool {
	if d.Vessel == nil {
		return d.Usable.Likely < smallest
	}
	switch d.Vessel.Kind {
	case "patty-pan", "cup", "glass", "jar":
		return true
	case "plate":
		return false
	}
	return d.Usable.Likely < smallest
}

// smallest is the least, ml, that one dish of a whole batch holds.
const smallest = 200

// Kitchen is whose dishes are meant: the year and place of the receipt, and
// what the kitchen that bakes it has.
type Kitchen struct {
	Year  int // of the receipt
	Place string
	Now   int // year of the kitchen, 0 when not said
	Own   []string
}

// now is the year dishes of the kitchen's own are from.
func (k Kitchen) now() int {
	if k.Now != 0 {
		return k.Now
	}
	return today
}

// today is the year of the edition of the tables, so that the same page comes
// out the same on any day.
const today = 2026

// All are the dishes there are: the kitchen's own first, then every row of the
// table that may be used, in its order.
func All(t *reference.Tables, k Kitchen) []Dish {
	var out []Dish
	for _, name := range k.Own {
		if d, err := find(t, name, k.now(), k.Place); err == nil {
			d.Own = true
			out = append(out, d.Dish)
		}
	}
	for i := range t.Vessels {
		v := &t.Vessels[i]
		taken := slices.ContainsFunc(out, func(d Dish) bool { return d.Vessel == v })
		if v.Refused == "" && !taken {
			out = append(out, Of(v))
		}
	}
	return out
}

// Found is a dish that words name, and how many of it.
type Found struct {
	Dish
	Count int // 1 unless the words say more
}

// UnknownError is a dish nobody told us of.
type UnknownError struct {
	Words string
	Hint  string // a near name, or how to say the size
}

func (e *UnknownError) Error() string { return "unknown dish " + `"` + e.Words + `"` }

// sizesHint says how a dish is given that has no row.
const sizesHint = `give its inside: "9 x 1.25 in" or "23 x 3 cm"; "assize tables vessels" lists the dishes that have names`

// longestWords is the most bytes the words for a dish may have.
const longestWords = 400

// Called finds the dish that words name: a size ("9 x 1.25 in"), one of the
// kitchen's own dishes, the dish the book means by the word, or else any of
// that name. Words about it ("buttered", "a small") may stand round the name.
// The error is an *UnknownError or a *SizeError.
func Called(t *reference.Tables, words string, k Kitchen) (Found, error) {
	if len(words) > longestWords {
		return Found{}, &UnknownError{Words: strings.ToValidUTF8(words[:longestWords/4], "") + " ...", Hint: sizesHint}
	}
	for _, own := range k.Own {
		if name, _ := sizeAfter(own); mentions(words, name) {
			if f, err := find(t, own, k.now(), k.Place); err == nil {
				f.Own, f.Count = true, countOf(words)
				return f, nil
			}
		}
	}
	return find(t, words, k.Year, k.Place)
}

var (
	// crossed is a cross written close: "9x13".
	crossed = regexp.MustCompile(`(?i)(\d)[x×](\d)`)
	// sidesOnly is a name that tells the two sides of a pan and not its depth.
	sidesOnly = regexp.MustCompile(`^\d+ x \d+ `)
)

// find takes a dish by its size or its name in a year and place.
func find(t *reference.Tables, words string, year int, place string) (Found, error) {
	// What follows a comma may tell of something else: "8 x 8 in pan, crust of 2 cups flour".
	head, _, clause := strings.Cut(crossed.ReplaceAllString(words, "$1 x $2"), ",")
	said := len(reference.Words(head))
	if countOf(head) > 1 {
		said--
	}
	if v, name := named(t, head, year, place); v != nil && sidesOnly.MatchString(name) && (clause || head != words) && len(reference.Words(name)) >= said {
		d := Of(v)
		d.Name = name
		return Found{Dish: d, Count: countOf(words)}, nil
	}
	if name, size := sizeAfter(words); size != "" {
		d, isSize, err := sizeOf(size + " " + name)
		if _, bare, _ := sizeOf(size); bare && !isSize { // millilitres take no words after them
			d, isSize, err = sizeOf(size)
		}
		if err == nil && isSize {
			d.Name, d.Given = name, words
			return Found{Dish: d, Count: countOf(words)}, nil
		}
	}
	v, name := named(t, words, year, place)
	if v == nil || len(reference.Words(name)) < len(reference.Words(words)) { // "9 x 13 inch pan" is a name
		d, isSize, err := sizeOf(words)
		if two, ok := sidesOf(t, words); ok && (err != nil || !isSize && v == nil) {
			return Found{Dish: two, Count: countOf(words)}, nil
		}
		if err != nil {
			return Found{}, err
		}
		if isSize {
			return Found{Dish: d, Count: countOf(words)}, nil
		}
	}
	if v == nil {
		if d, ok := acrossOnly(words); ok {
			return Found{Dish: d, Count: countOf(words)}, nil
		}
		if d, ok := holdingOf(words, place); ok {
			return Found{Dish: d, Count: 1}, nil // a number before it is of what it holds
		}
	}
	if v != nil {
		d := Of(v)
		d.Name = name
		return Found{Dish: d, Count: countOf(words)}, nil
	}
	hint := spell.Ask(words, names(t))
	if hint == "" {
		hint = sizesHint
	}
	return Found{}, &UnknownError{Words: words, Hint: hint}
}

// measuredName is a dish with its name before its size or what it takes: "soup
// plate, 17 x 2.5 cm", "blue dish 900 ml".
var measuredName = regexp.MustCompile(`(?i)^\s*([a-z][a-z' -]*?)[\s,:]+(\d.*(?:x|×|by).*|[\d.,]+\s*(?:ml|millilitres?|l|litres?))\s*$`)

// sizeAfter parts the name of a dish from the size that follows it; no size
// when none does.
func sizeAfter(words string) (name, size string) {
	if m := measuredName.FindStringSubmatch(words); m != nil {
		return m[1], m[2]
	}
	return words, ""
}

// named is the row whose name stands in the words: the longest name first,
// then one that holds in the year and place, then the first.
func named(t *reference.Tables, words string, year int, place string) (*reference.Vessel, string) {
	var best *reference.Vessel
	name, longest, holds := "", 0, false
	for i := range t.Vessels {
		v := &t.Vessels[i]
		if v.Refused != "" {
			continue
		}
		for _, n := range v.Names {
			long := len(reference.Words(n))
			if long < longest || !mentions(words, n) {
				continue
			}
			if h := v.Holds(year, place); long > longest || h && !holds {
				best, name, longest, holds = v, n, long, h
			}
		}
	}
	return best, name
}

// mentions reports whether a name stands in the words, whole words together,
// in the singular or the plural, and everything round it is only said about
// the dish: a "soop plate" is no plate, and a "26 cm tart tin" not the usual
// one.
func mentions(words, name string) bool {
	in, want := singular(reference.Words(words)), singular(reference.Words(name))
	for from := 0; from+len(want) <= len(in); from++ {
		if len(want) > 0 && slices.Equal(in[from:from+len(want)], want) {
			before := in[:from]
			if counted(in) > 1 && from > 0 {
				before = in[1:from]
			}
			round := append(slices.Clone(before), in[from+len(want):]...)
			return !slices.ContainsFunc(round, func(w string) bool { return !about[w] })
		}
	}
	return false
}

// about are words that may stand round the name of a dish.
var about = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(`a an the of or in with and for one lined lining buttered greased ungreased unbuttered fatted floured oiled
		baked unbaked raw bought small large big little deep shallow round oval flat plain your my our own old good common ordinary usual
		earthen earthenware china tin metal glass iron stone white brown hot cold warm well covered dry nice pretty
		paste puff thin thick crust pastry shell case rich bottom top edged edge round-bottomed laid
		water boiling bath stewpan pan half full no frozen piecrust short shortcrust individual medium mini loose based fluted cover covered on`) {
		out[w] = true
	}
	return out
}()

// singular takes the plural off each word, for comparing only.
func singular(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		switch {
		case strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"):
			w = strings.TrimSuffix(w, "es")
		case len(w) > 1 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
			w = strings.TrimSuffix(w, "s")
		}
		if w == "inche" || w == "inch" {
			w = "in"
		}
		out[i] = w
	}
	return out
}

// SaysPaste reports that the words about a dish speak of paste in it: "a dish
// lined with puff paste", "a baked shell".
func SaysPaste(words string) bool {
	return slices.ContainsFunc(reference.Words(words), func(w string) bool {
		return slices.Contains([]string{"paste", "pastry", "crust", "crusts", "shell", "shells", "case", "cases", "lined", "piecrust"}, w)
	})
}

// numbers are the numbers of dishes a receipt says in words.
var numbers = map[string]int{"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "dozen": 12, "pair": 2}

// mostDishes is how many of a dish one batch is taken to fill at the most.
const mostDishes = 500

// countOf is how many dishes the words begin by naming, 1 when none is said.
func countOf(words string) int { return counted(reference.Words(words)) }

func counted(list []string) int {
	for len(list) > 0 && (list[0] == "a" || list[0] == "or") {
		list = list[1:]
	}
	if len(list) < 2 {
		return 1
	}
	if n := numbers[list[0]]; n > 0 {
		return n
	}
	next := list[1]
	if unitWord(next) || next == "x" || next == "by" || next[0] >= '0' && next[0] <= '9' {
		return 1
	}
	if n, err := strconv.Atoi(list[0]); err == nil && n > 1 && n <= mostDishes {
		return n
	}
	return 1
}

func unitWord(w string) bool {
	return slices.Contains([]string{"in", "inch", "inches", "cm", "mm", "pint", "pints", "quart", "quarts", "ml", "lb", "oz", "hole"}, w)
}

// names lists every name of a dish, for suggestions.
func names(t *reference.Tables) []string {
	var out []string
	for i := range t.Vessels {
		out = append(out, t.Vessels[i].Names...)
	}
	return out
}

// Words name the dish so that Called finds it again.
func (f *Found) Words() string {
	name := strings.TrimPrefix(f.Name, sizedName)
	if f.Given != "" {
		name = f.Given
	}
	if f.Count > 1 {
		return fmt.Sprintf("%d of %s", f.Count, name)
	}
	return name
}
