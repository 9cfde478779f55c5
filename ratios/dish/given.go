package dish

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"assize/formula/receipt"
	"assize/reference"
)

// SizeError is a size that cannot be taken.
type SizeError struct {
	What, Hint string
	// Column is where the figure that is wrong stands in the words, in characters
	// from 1; 0 where no one figure is.
	Column int
}

func (e *SizeError) Error() string { return e.What }

// sizeHint shows how a size is written.
const sizeHint = `width by depth: "9 x 1.25 in" or "23 x 3 cm", or from one to another, "9.5-10 x 1.5-2 in"; an oblong or oval one has three figures: "12 x 8 x 2 in"; "9 x 1.25 in, 7 at the bottom" tells the slope`

const (
	// a figure, or a range of two
	figures = `\d[\d.,/¼½¾⅛⅜⅝⅞ -]*|[¼½¾⅛⅜⅝⅞]`
	aFigure = `((?:` + figures + `)(?:(?:to|or)\s+(?:` + figures + `))?)\s*`
	aUnit   = `(inches\b|inch\b|in\b\.?|"|''|cm\b|mm\b)?\s*`
)

var (
	begunSize = regexp.MustCompile(`^\s*(?:a |an |about |dish of )*\s*-?` + aFigure + aUnit + `(?:x|by)(?:[\s\d]|$)`)
	wholeSize = regexp.MustCompile(`^\s*(?:a |an |about |dish of )*\s*` + aFigure + aUnit + `(?:x|by)\s*` + aFigure + aUnit + `(?:(?:x|by)\s*` + aFigure + aUnit + `)?(?:deep\b)?(.*)$`)
	atBottom  = regexp.MustCompile(aFigure + aUnit + `(?:at the|across the|at its|across its)?\s*bottom`)
	saidDeep  = regexp.MustCompile(`^\s*(?:a |an |about |dish of )*\s*` + aFigure + aUnit + `([a-z][a-z -]*?)[\s,]*` + aFigure + aUnit + `deep\s*$`)
	bareMl    = regexp.MustCompile(`^\s*` + aFigure + `(ml|millilitres?|l|litres?)\s*$`)
)

// The sizes that are taken for a dish, cm, and for what one holds, ml.
const (
	narrowest, widest   = 2.0, 100.0
	shallowest, deepest = .5, 60.0
	leastHeld, mostHeld = 5.0, 100_000.0
	deepForWidth        = .52 // a dish deeper than this of its width has more likely lost a figure
	potForWidth         = 1.2 // and a basin or a mould than this
	quarterInch         = .635
	cmInInch, mlInL     = 2.54, 1000.0
	mostOfLeast         = 2.0 // a range that runs further is no size
)

// lean is how far the walls of a dish lean outward for each cm upward, from
// the most to the least.
type lean struct{ most, likely, least float64 }

// Walls that lean the same way whatever the depth, when the cook does not say.
var (
	upright = lean{.075, 0, 0}
	// Square and oblong pans, their corners round: printed volumes of eighteen
	// sizes come to 90 in 100 of the box, most of them rounded down to cups, and
	// two inches deep this is 93.
	oblongLean = lean{.3, .15, 0}
	// Loaf tins: one of 8 1/2 x 4 1/2 x 2.6 in. is printed with 7 1/2 x 3 1/2 at
	// the bottom, .19; deep tins for a square loaf are nearly upright.
	loafLean = lean{.25, .17, .05}
	// Tart tins lose about half a centimetre each side in an inch.
	tartLean = lean{.3, .2, 0}
	// Basins, and the cups of muffin and bun tins (trade practice).
	basinLean = lean{.5, .3, .1}
)

// leaning is how the walls of a pie plate lean, shallow ones more than deep: a
// 9 inch plate of 1 1/4 in. is 7 in. at the bottom, a deep dish of 2 in. loses
// 2 in. The least are of four plates of 9 and 9 1/2 in. that have been measured
// with a tape, .17 to .56.
func leaning(depth float64) lean {
	switch {
	case depth <= 3.3:
		return lean{1, .8, .45}
	case depth <= 4:
		return lean{.85, .6, .15}
	}
	return lean{.7, .5, .15}
}

// leanOf is how the walls lean of a dish of so many figures that the words name.
func leanOf(sides int, depth float64, words string) lean {
	in := strings.FieldsFunc(words, func(r rune) bool { return !unicode.IsLetter(r) })
	said := func(list ...string) bool {
		return slices.ContainsFunc(in, func(w string) bool {
			return slices.Contains(list, w) || slices.Contains(list, strings.TrimSuffix(w, "s"))
		})
	}
	switch {
	case said("straight", "springform", "ring", "hoop", "pullman", "souffle", "soufflé", "casserole", "ramekin"):
		return upright
	case said("loaf", "bread"):
		return loafLean
	case sides == 3:
		return oblongLean
	case said("tart", "tartlet", "flan", "quiche"):
		return tartLean
	case said("muffin", "patty", "bun", "gem", "cup", "basin", "bowl", "pot", "jar"):
		return basinLean
	case said("pie"):
		return leaning(depth)
	case said("tin", "cake", "mould", "mold"):
		return upright
	}
	return leaning(depth)
}

// sizeOf reads a size the cook gives; false when the words are none.
func sizeOf(words string) (Dish, bool, error) {
	text := strings.ToLower(dashes.Replace(words))
	if m := saidDeep.FindStringSubmatch(text); m != nil { // "26 cm tart tin 2.5 cm deep"
		text = m[1] + m[2] + " x " + m[4] + m[5] + m[3]
	}
	if m := bareMl.FindStringSubmatch(text); m != nil {
		return held(words, m)
	}
	if !begunSize.MatchString(text) {
		return Dish{}, false, nil
	}
	failAt := func(column int, what string, args ...any) (Dish, bool, error) {
		return Dish{}, true, &SizeError{fmt.Sprintf("%q is no size of a dish: ", words) + fmt.Sprintf(what, args...), sizeHint, column}
	}
	fail := func(what string, args ...any) (Dish, bool, error) { return failAt(0, what, args...) }
	m := wholeSize.FindStringSubmatch(text)
	if m == nil {
		return fail("a figure is missing")
	}
	scale, ok := unitOf(m[2], m[4], m[6])
	if !ok {
		return fail("inches or centimetres are not said, or both are")
	}
	var cm []Span
	var at []int
	for _, f := range []string{m[1], m[3], m[5]} {
		if f = bare(f); f == "" {
			continue
		}
		after := 0
		if len(at) > 0 {
			after = at[len(at)-1]
		}
		column := columnOf(words, f, after)
		n, err := figureOf(f, scale)
		if err != nil {
			return failAt(column, "%s", err)
		}
		cm, at = append(cm, n), append(at, column)
	}
	last := len(cm) - 1
	depth := cm[last]
	limit := deepForWidth
	if saysAny(m[7], "deep", "basin", "mould", "mold", "souffl", "bowl", "pot", "jar", "cup", "ramekin") {
		limit = potForWidth
	}
	for i, w := range cm[:last] {
		if w.Low < narrowest || w.High > widest {
			return failAt(at[i], "it cannot be %s cm wide", told(w))
		}
	}
	switch {
	case depth.Low < shallowest || depth.High > deepest:
		return failAt(at[last], "it cannot be %s cm deep", told(depth))
	case len(cm) == 2 && (depth.Likely > limit*cm[0].Likely || saysAny(m[7], "loaf", "square", "oblong", "oval")):
		return failAt(at[last], "it would be %s cm deep and %s wide; is a third figure left out?", told(depth), told(cm[0]))
	}
	rest := m[7]
	var below Span
	if b := atBottom.FindStringSubmatch(rest); b != nil {
		one := scale
		if u, ok := unitOf(b[2]); ok {
			one = u
		}
		column := columnOf(words, bare(b[1]), at[last])
		n, err := figureOf(bare(b[1]), one)
		if err != nil {
			return failAt(column, "%s", err)
		}
		if below = n; below.Low <= 0 || below.High > cm[0].Likely*1.2 {
			return failAt(column, "its bottom cannot be %s cm wide", told(below))
		}
	}
	return made(words, cm, rest, below), true, nil
}

// dashes are the ways a cross and a dash are written.
var dashes = strings.NewReplacer("×", " x ", "–", "-", "—", "-", "−", "-", "‐", "-", "‑", "-", "‒", "-", "―", "-")

// columnOf is where a figure stands in the words after a column, in characters
// from 1; 0 when it is not there.
func columnOf(words, figure string, after int) int {
	plain := func(text string) []rune {
		out := []rune(text)
		for i, r := range out {
			if one := dashes.Replace(string(r)); one != string(r) {
				r = rune(strings.TrimSpace(one)[0])
			}
			out[i] = unicode.ToLower(r)
		}
		return out
	}
	in, want := plain(words), plain(figure)
	for i := after; len(want) > 0 && i+len(want) <= len(in); i++ {
		if slices.Equal(in[i:i+len(want)], want) {
			return i + 1
		}
	}
	return 0
}

// bare is a figure without what stands round it.
func bare(figure string) string { return strings.TrimSpace(strings.TrimRight(figure, " -,")) }

// figureOf is a figure or a range of two, in cm.
func figureOf(figure string, scale float64) (Span, error) {
	n, err := receipt.ParseNumber(figure)
	if err != nil {
		return Span{}, err
	}
	s := times(spanOf(n), scale)
	if s.High > mostOfLeast*s.Low {
		return Span{}, fmt.Errorf("%q runs too far to be reckoned with", figure)
	}
	return s, nil
}

// told is a figure, or a range of two, for a message.
func told(s Span) string {
	if s.Low == s.High {
		return fmt.Sprintf("%.3g", s.Likely)
	}
	return fmt.Sprintf("%.3g-%.3g", s.Low, s.High)
}

// held is a dish of which only what it takes is known.
func held(words string, m []string) (Dish, bool, error) {
	n, err := receipt.ParseNumber(strings.TrimSpace(m[1]))
	if err != nil {
		return Dish{}, true, &SizeError{fmt.Sprintf("%q is no size of a dish: %s", words, err), sizeHint, columnOf(words, bare(m[1]), 0)}
	}
	ml := n.Likely.InexactFloat64()
	if strings.HasPrefix(m[2], "l") {
		ml *= mlInL
	}
	d, err := Holding(ml)
	return d, true, err
}

// Holding is a dish of which the cook knows only what it takes, ml, filled as
// she would fill it.
func Holding(ml float64) (Dish, error) {
	if !(ml >= leastHeld && ml <= mostHeld) { // NaN too
		return Dish{}, &SizeError{fmt.Sprintf("no dish takes %.4g ml", ml), "from 5 ml to 100 litres", 0}
	}
	return Dish{Name: fmt.Sprintf(sizedName+"%.0f ml", ml), Usable: Span{Low: ml, Likely: ml, High: ml}, Rim: pasteRim, rounded: 1}, nil
}

// unitOf is cm to the unit the figures of a size are in; false when none is
// said, or two.
func unitOf(units ...string) (float64, bool) {
	found := 0.0
	for _, u := range units {
		one := 0.0
		switch strings.TrimRight(u, ". ") {
		case "":
			continue
		case "cm":
			one = 1
		case "mm":
			one = .1
		default:
			one = cmInInch
		}
		if found != 0 && found != one {
			return 0, false
		}
		found = one
	}
	return found, found != 0
}

// sizedName stands before the size in the name of a dish that has no other.
const sizedName = "dish of "

// saysAny reports whether any of the words stands in a text.
func saysAny(text string, words ...string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(text, w) })
}

// made is the dish of a size. What is not said of its walls is taken for those
// of the kind of dish the words name, a pie plate when they name none; a round
// dish unless three figures make it oblong.
func made(words string, cm []Span, rest string, below Span) Dish {
	depth := cm[len(cm)-1]
	l := leanOf(len(cm), depth.Likely, rest)
	at := func(pick func(Span) float64, lean float64) Size {
		wide, deep := pick(cm[0]), pick(depth)
		in := 2 * lean * deep
		if below.Likely > 0 {
			in = wide - pick(below)
		}
		s := Size{Shape: Round, Top: wide, Bottom: max(wide/4, wide-in), Depth: deep}
		if len(cm) == 3 {
			side := pick(cm[1])
			s.Shape, s.TopSide, s.BottomSide = Oblong, side, max(side/4, side-in)
			if saysAny(rest, "oval") {
				s.Shape = Oval
			}
		}
		return s
	}
	d := Dish{Name: sizedName + strings.TrimPrefix(strings.Join(strings.Fields(words), " "), sizedName), Rim: pasteRim, rounded: 1}
	d.Sizes = [3]Size{
		at(func(s Span) float64 { return s.Low }, l.most),
		at(func(s Span) float64 { return s.Likely }, l.likely),
		at(func(s Span) float64 { return s.High }, l.least),
	}
	d.Brimful = Span{Low: d.Sizes[0].Brimful(), Likely: d.Sizes[1].Brimful(), High: d.Sizes[2].Brimful()}
	// As a cook fills it: to a quarter of an inch under the rim, an eighth to
	// three eighths.
	under := func(s Size, gap float64) float64 { return s.Volume(max(s.Depth/2, s.Depth-gap)) }
	d.Usable = Span{Low: under(d.Sizes[0], 1.5*quarterInch), Likely: under(d.Sizes[1], quarterInch), High: under(d.Sizes[2], quarterInch/2)}
	return d
}

// Kinds of dish of which a width alone is often told, with the depth they
// commonly have, cm, least, likely and most (trade practice).
var acrossKinds = []struct {
	words    []string
	depth    Span
	straight bool
}{
	{[]string{"tart", "flan", "quiche"}, Span{Low: 2, Likely: 2.5, High: 3.5}, true},
	{[]string{"pie", "pies", "shell", "shells", "crust", "case", "plate"}, Span{Low: 2.5, Likely: 3.2, High: 4.5}, false},
	{[]string{"springform", "cake", "tin", "tins", "square", "hoop"}, Span{Low: 3.8, Likely: 5, High: 7.5}, true},
}

func exactly(n float64) Span { return Span{Low: n, Likely: n, High: n} }

// deeper is how much deeper a dish called deep is than others of its kind.
const deeper = 1.4

var acrossFigure = regexp.MustCompile(`^\s*(?:a |an |about |one |two |three |four )*` + aFigure + `(inches\b|inch\b|in\b\.?|"|cm\b)\s*(?:x\s*` + aFigure + `(?:inches\b|inch\b|in\b\.?|"|cm\b)?)?([a-z ,-]+)$`)

// acrossOnly is a dish of which only the width is told, "9 in unbaked shell",
// with the depth dishes of that kind have.
func acrossOnly(words string) (Dish, bool) {
	m := acrossFigure.FindStringSubmatch(strings.ToLower(words))
	if m == nil || strings.TrimSpace(m[3]) != "" {
		return Dish{}, false
	}
	n, err := receipt.ParseNumber(strings.TrimSpace(m[1]))
	scale, ok := unitOf(m[2])
	if err != nil || !ok {
		return Dish{}, false
	}
	wide := n.Likely.InexactFloat64() * scale
	if wide < narrowest || wide > widest {
		return Dish{}, false
	}
	for _, kind := range acrossKinds {
		if !slices.ContainsFunc(strings.FieldsFunc(m[4], func(r rune) bool { return r == ' ' || r == ',' || r == '-' }), func(w string) bool { return slices.Contains(kind.words, w) }) {
			continue
		}
		at := func(depth float64) Dish {
			rest := m[4]
			if kind.straight {
				rest += " straight"
			}
			return made(words, []Span{exactly(wide), exactly(min(depth, deepForWidth*wide))}, rest, Span{})
		}
		depth := kind.depth
		if strings.Contains(m[4], "deep") {
			depth = times(depth, deeper)
		}
		low, likely, high := at(depth.Low), at(depth.Likely), at(depth.High)
		d := likely
		d.Name, d.DepthGuessed = strings.Join(strings.Fields(words), " "), true
		d.Sizes = [3]Size{low.Sizes[0], likely.Sizes[1], high.Sizes[2]}
		d.Brimful = Span{Low: low.Brimful.Low, Likely: likely.Brimful.Likely, High: high.Brimful.High}
		d.Usable = Span{Low: low.Usable.Low, Likely: likely.Usable.Likely, High: high.Usable.High}
		return d, true
	}
	return Dish{}, false
}

// Kinds of pan of which the two sides alone are often told, with the depth they
// commonly have, cm, least, likely and most: American baking pans and dishes are
// two inches deep, loaf tins 2 1/2 to 3, sheets an inch (trade practice).
var sidesKinds = []struct {
	words []string
	depth Span
}{
	{[]string{"loaf", "bread"}, Span{Low: 6, Likely: 6.7, High: 7.6}},
	{[]string{"sheet", "tray", "roll", "traybake"}, Span{Low: 1.9, Likely: 2.5, High: 3.8}},
	{nil, Span{Low: 3.8, Likely: 5, High: 6.4}},
}

var twoSides = regexp.MustCompile(`^\s*(?:a |an |about |one |two |three |four |five |six )*` + aFigure + aUnit + `(?:x|by)\s*` + aFigure + `(inches\b|inch\b|in\b\.?|"|''|cm\b)([^,;(]*)`)

// sidesOf is a pan of which the two sides are told and not the depth, "10 x 13
// in casserole", with the depth pans of that kind have. A word for a dish must
// stand behind, so that a third figure left out is still asked for.
func sidesOf(t *reference.Tables, words string) (Dish, bool) {
	m := twoSides.FindStringSubmatch(strings.ToLower(dashes.Replace(words)))
	if m == nil {
		return Dish{}, false
	}
	said := singular(reference.Words(m[5]))
	if !slices.ContainsFunc(said, func(w string) bool { return w == "casserole" || dishWord(t, w) }) ||
		slices.ContainsFunc(said, func(w string) bool { return slices.Contains(roundOnly, w) }) {
		return Dish{}, false
	}
	scale, ok := unitOf(m[2], m[4])
	if !ok {
		return Dish{}, false
	}
	long, err := figureOf(bare(m[1]), scale)
	if err != nil {
		return Dish{}, false
	}
	short, err := figureOf(bare(m[3]), scale)
	if err != nil || short.Likely < deepForWidth*long.Likely && !slices.Contains(said, "loaf") {
		return Dish{}, false // the second figure may be the depth
	}
	if long.Likely < short.Likely {
		long, short = short, long
	}
	if short.Low < narrowest || long.High > widest {
		return Dish{}, false
	}
	for _, kind := range sidesKinds {
		if kind.words != nil && !slices.ContainsFunc(said, func(w string) bool { return slices.Contains(kind.words, w) }) {
			continue
		}
		d := made(words, []Span{long, short, kind.depth}, m[5], Span{})
		d.Name, d.DepthGuessed = strings.Join(strings.Fields(words), " "), true
		return d, true
	}
	return Dish{}, false
}

// roundOnly are words for dishes that have no two sides.
var roundOnly = []string{"pie", "plate", "cup", "basin", "ring", "hoop", "springform", "ramekin", "bowl"}

// dishWord reports whether a word ends the name of a row: pan, tin, dish, mould.
func dishWord(t *reference.Tables, word string) bool {
	return slices.ContainsFunc(t.Vessels, func(v reference.Vessel) bool {
		return slices.ContainsFunc(v.Names, func(name string) bool {
			in := singular(reference.Words(name))
			return len(in) > 0 && in[len(in)-1] == word
		})
	})
}

var capacity = regexp.MustCompile(`^\s*(?:a |an |about )*(` + aFigure + `|one |two |three |four |half )\s*-?(cup|pint|quart|litre|liter)s?\b[ -]*(.*)$`)

// capacities in ml by their names, in America and elsewhere (the imperial
// measures; a cup is half an American pint).
var capacities = map[string][2]float64{"cup": {236.6, 236.6}, "pint": {473.2, 568.3}, "quart": {946.4, 1136.5}, "litre": {1000, 1000}, "liter": {1000, 1000}}

// holdingOf is a dish named by what it holds to the brim: "1 litre basin", "one
// quart casserole".
func holdingOf(words, place string) (Dish, bool) {
	m := capacity.FindStringSubmatch(strings.ToLower(words))
	if m == nil || !slices.ContainsFunc(strings.Fields(m[4]), func(w string) bool {
		return slices.Contains([]string{"basin", "dish", "dishes", "casserole", "mould", "mold", "ramekin", "ramekins", "bowl", "pan", "tin", "jar"}, strings.TrimRight(w, ","))
	}) {
		return Dish{}, false
	}
	n, err := receipt.ParseNumber(strings.TrimSpace(m[1]))
	if err != nil {
		return Dish{}, false
	}
	one := capacities[m[3]][1]
	if place == "usa" {
		one = capacities[m[3]][0]
	}
	ml := n.Likely.InexactFloat64() * one
	if ml < leastHeld || ml > mostHeld {
		return Dish{}, false
	}
	// Filled to between four fifths and nineteen twentieths, as basins are.
	return Dish{
		Name: strings.Join(strings.Fields(words), " "), Brimful: Span{Low: ml, Likely: ml, High: ml},
		Usable: Span{Low: .8 * ml, Likely: .85 * ml, High: .95 * ml}, Rim: pasteRim, rounded: 1,
	}, true
}
