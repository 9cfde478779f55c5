package dish

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"assize/formula/receipt"
)

// SizeError is a size that cannot be taken.
type SizeError struct {
	What, Hint string
}

func (e *SizeError) Error() string { return e.What }

// sizeHint shows how a size is written.
const sizeHint = `width by depth: "9 x 1.25 in" or "23 x 3 cm"; an oblong or oval one has three figures: "12 x 8 x 2 in"; "9 x 1.25 in, 7 at the bottom" tells the slope`

const (
	aFigure = `(\d[\d.,/¼½¾⅛⅜⅝⅞ -]*|[¼½¾⅛⅜⅝⅞])\s*`
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
	narrowest, widest     = 2.0, 100.0
	shallowest, deepest   = .5, 60.0
	leastHeld, mostHeld   = 5.0, 100_000.0
	deepForWidth          = .52 // a dish deeper than this of its width has more likely lost a figure
	potForWidth           = 1.2 // and a basin or a mould than this
	quarterInch           = .635
	cmInInch, mlInL       = 2.54, 1000.0
	straightLean, sidesIn = 0.0, .15
)

// leaning are how far walls lean outward for each cm upward, from the most to
// the least, when the cook does not say: those of pie plates, shallow ones more
// than deep (a 9 inch plate of 1 1/4 in. is 7 in. at the bottom, a deep dish of
// 2 in. loses 2 in.).
func leaning(depth float64) (most, likely, least float64) {
	switch {
	case depth <= 3.3:
		return 1, .8, .5
	case depth <= 4:
		return .85, .6, .35
	}
	return .7, .5, .2
}

var straightWords = []string{"straight", "tin", "springform", "cake", "ring", "hoop", "loaf", "souffle", "soufflé", "mould", "mold", "square", "casserole"}

// sizeOf reads a size the cook gives; false when the words are none.
func sizeOf(words string) (Dish, bool, error) {
	text := strings.ToLower(strings.ReplaceAll(words, "×", " x "))
	if m := saidDeep.FindStringSubmatch(text); m != nil { // "26 cm tart tin 2.5 cm deep"
		text = m[1] + m[2] + " x " + m[4] + m[5] + m[3]
	}
	if m := bareMl.FindStringSubmatch(text); m != nil {
		return held(words, m)
	}
	if !begunSize.MatchString(text) {
		return Dish{}, false, nil
	}
	fail := func(what string, args ...any) (Dish, bool, error) {
		return Dish{}, true, &SizeError{fmt.Sprintf("%q is no size of a dish: ", words) + fmt.Sprintf(what, args...), sizeHint}
	}
	m := wholeSize.FindStringSubmatch(text)
	if m == nil {
		return fail("a figure is missing")
	}
	scale, ok := unitOf(m[2], m[4], m[6])
	if !ok {
		return fail("inches or centimetres are not said, or both are")
	}
	var cm []float64
	for _, f := range []string{m[1], m[3], m[5]} {
		if strings.TrimSpace(f) == "" {
			continue
		}
		n, err := receipt.ParseNumber(strings.TrimSpace(strings.TrimRight(f, " -,")))
		if err != nil {
			return fail("%s", err)
		}
		cm = append(cm, n.Likely.InexactFloat64()*scale)
	}
	depth := cm[len(cm)-1]
	limit := deepForWidth
	if saysAny(m[7], "deep", "basin", "mould", "mold", "souffl", "bowl", "pot", "jar", "cup", "ramekin") {
		limit = potForWidth
	}
	for _, w := range cm[:len(cm)-1] {
		if w < narrowest || w > widest {
			return fail("it cannot be %.3g cm wide", w)
		}
	}
	switch {
	case depth < shallowest || depth > deepest:
		return fail("it cannot be %.3g cm deep", depth)
	case len(cm) == 2 && (depth > limit*cm[0] || saysAny(m[7], "loaf", "square", "oblong", "oval")):
		return fail("it would be %.3g cm deep and %.3g wide; is a third figure left out?", depth, cm[0])
	}
	rest := m[7]
	below := 0.0
	if b := atBottom.FindStringSubmatch(rest); b != nil {
		n, err := receipt.ParseNumber(strings.TrimSpace(strings.TrimRight(b[1], " -,")))
		if err != nil {
			return fail("%s", err)
		}
		one := scale
		if u, ok := unitOf(b[2]); ok {
			one = u
		}
		below = n.Likely.InexactFloat64() * one
		if below <= 0 || below > cm[0]*1.2 {
			return fail("its bottom cannot be %.3g cm wide", below)
		}
	}
	return made(words, cm, rest, below), true, nil
}

// held is a dish of which only what it takes is known.
func held(words string, m []string) (Dish, bool, error) {
	n, err := receipt.ParseNumber(strings.TrimSpace(m[1]))
	if err != nil {
		return Dish{}, true, &SizeError{fmt.Sprintf("%q is no size of a dish: %s", words, err), sizeHint}
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
		return Dish{}, &SizeError{fmt.Sprintf("no dish takes %.4g ml", ml), "from 5 ml to 100 litres"}
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

// made is the dish of a size. What is not said of its walls is taken for
// those of a pie plate, or straight for a tin; a round dish unless three
// figures make it oblong.
func made(words string, cm []float64, rest string, below float64) Dish {
	depth := cm[len(cm)-1]
	said := func(list ...string) bool { return saysAny(rest, list...) }
	most, likely, least := leaning(depth)
	switch {
	case said(straightWords...) && !said("pie tin", "pie plate"):
		most, likely, least = sidesIn/2, straightLean, straightLean
	case len(cm) == 3:
		most, likely, least = 2*sidesIn, sidesIn, straightLean
	}
	if below > 0 {
		likely = (cm[0] - below) / 2 / depth
		most, least = likely, likely
	}
	at := func(lean float64) Size {
		in := 2 * lean * depth
		s := Size{Shape: Round, Top: cm[0], Bottom: max(cm[0]/4, cm[0]-in), Depth: depth}
		if len(cm) == 3 {
			s.Shape, s.TopSide, s.BottomSide = Oblong, cm[1], max(cm[1]/4, cm[1]-in)
			if said("oval") {
				s.Shape = Oval
			}
		}
		return s
	}
	d := Dish{Name: sizedName + strings.TrimPrefix(strings.Join(strings.Fields(words), " "), sizedName), Rim: pasteRim, rounded: 1}
	d.Sizes = [3]Size{at(most), at(likely), at(least)}
	d.Brimful = Span{Low: d.Sizes[0].Brimful(), Likely: d.Sizes[1].Brimful(), High: d.Sizes[2].Brimful()}
	// As a cook fills it: to a quarter of an inch under the rim, an eighth to
	// three eighths.
	under := func(s Size, gap float64) float64 { return s.Volume(max(depth/2, depth-gap)) }
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
			return made(words, []float64{wide, min(depth, deepForWidth*wide)}, rest, 0)
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
