package dish

import (
	"math"
	"slices"
)

// Lay is how a paste is laid; see formula.Lays. Nothing is no paste.
type Lay string

// The ways paste is laid.
const (
	NoPaste      Lay = ""
	Lining       Lay = "lining"
	RimOnly      Lay = "rim"
	Lid          Lay = "lid"
	LiningAndLid Lay = "lining and lid"
	Raised       Lay = "raised"
	Patty        Lay = "patty"
	Folded       Lay = "folded" // over its filling: it lies in no dish
)

// thickness of paste as it is rolled, cm: an eighth of an inch, a little under
// to a little over, in a dish; a case raised by hand or in a mould a third of
// an inch (a quarter to a half). Trade practice.
func (l Lay) thickness() Span {
	if l == Raised {
		return Span{Low: .64, Likely: .85, High: 1.27}
	}
	return Span{Low: .28, Likely: .3175, High: .40}
}

// lines reports whether the paste is inside the dish and takes room from it.
func (l Lay) lines() bool { return l == Lining || l == LiningAndLid || l == Raised || l == Patty }

// rimStrip is how wide a strip of paste round the rim is cut, cm: an inch.
const rimStrip = 2.54

// area is the paste laid over a dish, square cm.
func (l Lay) area(s Size, rim float64) float64 {
	inside := s.BottomArea() + s.WallArea() + s.RimArea(rim)
	lid := s.TopArea() + s.RimArea(rim)
	switch l {
	case Lining, Patty:
		return inside
	case RimOnly:
		return s.RimArea(max(rim, rimStrip))
	case Lid:
		return lid + s.RimArea(rim) // a strip goes under the lid
	case LiningAndLid:
		return inside + lid
	case Raised:
		return s.BottomArea() + s.WallArea() + lid
	}
	return 0
}

// trimmed is what is rolled out over what stays on the dish: trimmings are a
// seventh, a tenth to a quarter (judgement).
var trimmed = Span{Low: 1.10, Likely: 1.15, High: 1.25}

// Load is what is to be put in a dish.
type Load struct {
	Filling Span // ml as poured
	Risen   Span // ml at its height in the oven; as poured when nothing rises
	Lay     Lay
	Paste   Span    // g made, nothing when there is none
	Density float64 // of the paste, g/ml; 0 for that of a short paste
	Cake    bool    // a cake or a loaf, which is not baked in a pie plate
	Stands  Stand   // where it stands, when that is in no baking dish
	Turned  bool    // it sets so that it can be turned out of a mould
}

// Stand is where a load stands that goes into no baking dish.
type Stand string

// The ways of standing. The first is in a dish in the oven.
const (
	InDish  Stand = ""
	OnSheet Stand = "on a sheet" // shaped, and baked each by itself
	Cold    Stand = "not baked"  // poured into glasses, bowls or a mould and not heated
	Potted  Stand = "potted"     // cooked on the fire and poured off to keep or to serve
)

// shortPaste is the density of a short paste, g/ml.
const shortPaste = 1.2

// Verdict is how a filling lies in a dish.
type Verdict string

// The verdicts.
const (
	Fits       Verdict = "fits"
	Overfills  Verdict = "overfills"
	Underfills Verdict = "underfills"
	NotKnown   Verdict = "not known" // nothing is known of the filling's volume
)

// Where a filling stops fitting: over the room by a tenth, which is the error
// of a spoon and a rim, or under seven tenths of it, where a case looks half
// empty and bakes dry (judgement).
const (
	tooMuch   = 1.10
	tooLittle = .70
	// domes is how far over the brim a filling may rise and not run: its edge
	// sets first and holds the middle (judgement).
	domes = 1.20
)

// Fit is a filling in a dish.
type Fit struct {
	Dish
	// Count is how many of the dish are filled.
	Count int
	// RoomML is what the dishes take once the paste is in; BrimML level full.
	RoomML, BrimML Span
	FillingML      Span
	// Depth of the filling, cm, at most that of the room. Nothing where the
	// dish's size is not known.
	Depth Span
	// Paste in grams; nothing where there is none or the size is not known.
	PasteMade, PasteNeeded, PasteLeft Span
	Verdict                           Verdict
	// Full is the filling over the room, 1 when it just fits.
	Full float64
	// Boils reports that it has room as poured, and rises over the rim.
	Boils bool
}

// Over is how many ml are too much, less than nothing when they are too few.
func (f *Fit) Over() float64 { return f.FillingML.Likely - f.RoomML.Likely }

// Into puts a load into so many of a dish.
func Into(d Dish, count int, l Load) Fit {
	count = max(1, count)
	f := Fit{Dish: d, Count: count, FillingML: l.Filling, PasteMade: l.Paste}
	n := float64(count)
	room, brim := d.Room(l.Lay)
	f.RoomML, f.BrimML = times(room, n), times(brim, n)
	f.Depth = d.depth(l, n)
	if l.Lay != NoPaste && d.Sized() {
		f.PasteNeeded = times(d.Paste(l.Lay, l.Density), n)
		if l.Paste.Likely > 0 {
			f.PasteLeft = Span{
				Low: l.Paste.Low - f.PasteNeeded.High, Likely: l.Paste.Likely - f.PasteNeeded.Likely, High: l.Paste.High - f.PasteNeeded.Low,
			}
		}
	}
	f.judge(l)
	return f
}

func (f *Fit) judge(l Load) {
	if !(f.FillingML.Likely > 0 && f.RoomML.Likely > 0) {
		f.Verdict = NotKnown
		return
	}
	f.Full = f.FillingML.Likely / f.RoomML.Likely
	if f.Vessel != nil && f.Vessel.Walls == "paste" && f.FillingML.Likely >= f.RoomML.Low && f.FillingML.Likely <= f.RoomML.High {
		f.Full = 1 // a case of paste is raised as large as it is wanted
	}
	f.Boils = f.BrimML.Likely > 0 && l.Risen.Likely > domes*f.BrimML.Likely && f.Full <= tooMuch
	switch {
	case f.Full > tooMuch || f.Boils:
		f.Verdict = Overfills
	case f.Full < tooLittle:
		f.Verdict = Underfills
	default:
		f.Verdict = Fits
	}
}

// Room is what a dish takes with a paste laid in it, ml: as a cook fills it,
// and to the brim. A dish whose size is not known loses the share a dish of
// that volume would.
func (d *Dish) Room(l Lay) (usable, brim Span) {
	if !l.lines() {
		return d.Usable, d.Brimful
	}
	if !d.Sized() {
		kept := keptOf(d.Usable.Likely, l)
		return Span{Low: d.Usable.Low * kept.Low, Likely: d.Usable.Likely * kept.Likely, High: d.Usable.High * kept.High},
			Span{Low: d.Brimful.Low * kept.Low, Likely: d.Brimful.Likely * kept.Likely, High: d.Brimful.High * kept.High}
	}
	thick := l.thickness()
	at := func(i int, thick, usable, full float64) (float64, float64) {
		s := d.Sizes[i]
		level := s.Depth
		if full > 0 { // the height a cook fills it to without paste
			level = s.DepthOf(s.Brimful() * min(1, usable/full))
		}
		in := s.Lined(thick)
		if !in.Known() {
			return 0, 0
		}
		return d.rounded * in.Volume(level-thick), d.rounded * in.Brimful()
	}
	usable.Low, brim.Low = at(0, thick.High, d.Usable.Low, d.Brimful.Low)
	usable.Likely, brim.Likely = at(1, thick.Likely, d.Usable.Likely, d.Brimful.Likely)
	usable.High, brim.High = at(2, thick.Low, d.Usable.High, d.Brimful.High)
	usable.Low, usable.High = min(usable.Low, usable.Likely), max(usable.High, usable.Likely)
	brim.Low, brim.High = min(brim.Low, brim.Likely), max(brim.High, brim.Likely)
	return usable, brim
}

// keptOf is the share of a dish of unknown shape that paste leaves: that of a
// plain round dish three times as wide as deep.
func keptOf(ml float64, l Lay) Span {
	depth := math.Cbrt(4 * ml / (9 * math.Pi))
	s := Size{Shape: Round, Top: 3 * depth, Bottom: 3 * depth, Depth: depth}
	thick := l.thickness()
	at := func(t float64) float64 { return s.Lined(t).Brimful() / s.Brimful() }
	return Span{Low: at(thick.High), Likely: at(thick.Likely), High: at(thick.Low)}
}

// depth is how deep the filling stands in one of n dishes, cm: at most to the
// height they are filled to.
func (d *Dish) depth(l Load, n float64) Span {
	if !d.Sized() || !(l.Filling.Likely > 0) {
		return Span{}
	}
	thick := Span{}
	if l.Lay.lines() {
		thick = l.Lay.thickness()
	}
	room, _ := d.Room(l.Lay)
	at := func(i int, thick, ml, room float64) float64 {
		in := d.Sizes[i].Lined(thick)
		if !in.Known() {
			return 0
		}
		return in.DepthOf(min(ml/n, max(room, 0)) / d.rounded)
	}
	out := Span{
		Low:    at(2, thick.Low, l.Filling.Low, room.High),
		Likely: at(1, thick.Likely, l.Filling.Likely, room.Likely),
		High:   at(0, thick.High, l.Filling.High, room.Low),
	}
	// A wide dish may be the deep one too: the ends are those of the three.
	list := []float64{out.Low, out.Likely, out.High}
	slices.Sort(list)
	return Span{Low: list[0], Likely: out.Likely, High: list[2]}
}

// Paste is what is rolled out for one dish, grams; nothing where its size is
// not known. Density is that of the paste, g/ml, 0 for a short paste.
func (d *Dish) Paste(l Lay, density float64) Span {
	if !d.Sized() || l == NoPaste {
		return Span{}
	}
	if density <= 0 {
		density = shortPaste
	}
	thick := l.thickness()
	at := func(i int, thick, trim float64) float64 { return l.area(d.Sizes[i], d.Rim) * thick * density * trim }
	return Span{Low: at(0, thick.Low, trimmed.Low), Likely: at(1, thick.Likely, trimmed.Likely), High: at(2, thick.High, trimmed.High)}
}

// Number is how many of a dish a load is meant to fill when one is named: one,
// or of a small dish as many as it fills.
func (d *Dish) Number(l Load) int {
	room, _ := d.Room(l.Lay)
	if !d.Small() || !(room.Likely > 0 && l.Filling.Likely > 0) {
		return 1
	}
	return max(1, int(math.Round(l.Filling.Likely/room.Likely)))
}

// Every is a load tried in every dish of a list: one of each, or of small ones
// as many as it fills. The kitchen's own come first, then the best fits: dishes
// that fit before those that do not, and then the nearest to full.
func Every(dishes []Dish, l Load) []Fit {
	out := make([]Fit, 0, len(dishes))
	for _, d := range dishes {
		out = append(out, Into(d, d.Number(l), l))
	}
	slices.SortStableFunc(out, func(a, b Fit) int {
		switch x, y := rank(&a, &l), rank(&b, &l); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
	return out
}

// rank orders fits: less is better.
func rank(f *Fit, l *Load) float64 {
	if f.Verdict == NotKnown {
		return math.Inf(1)
	}
	r := math.Abs(math.Log(f.Full))
	if f.Verdict != Fits {
		r += 10
	}
	if f.Small() != (l.Lay == Patty || (l.Stands == Cold || l.Stands == Potted) && !l.Turned) { // a batch for one dish goes into small ones last
		r += 5
	}
	if !l.Suits(f) {
		r += 3
	}
	if f.Vessel != nil && (l.Stands == Cold && f.Vessel.Kind == "glass" && !l.Turned || l.Stands == Cold && f.Vessel.Kind == "mould" && l.Turned && !f.Small() || l.Stands == Potted && f.Vessel.Kind == "jar" || l.Lay == Raised && f.Vessel.Kind == "pie mould") {
		r-- // what such a thing is poured into before anything else
	}
	if f.Own { // what is in the kitchen is looked at first
		r -= 100
	}
	return r
}

// deepTin is how deep a tin is, cm, in which a raised pie stands.
const deepTin = 6

// Suits reports that such a load is put in dishes of that kind: nobody lines a
// loaf tin for a tart or bakes a cake in a plate, and a raised crust is its own
// dish.
func (l *Load) Suits(f *Fit) bool {
	if f.Vessel == nil {
		return true
	}
	kind, bare, raised := f.Vessel.Kind, l.Lay == NoPaste, l.Lay == Raised
	switch {
	case f.Vessel.Walls == "paste":
		return raised
	case raised: // what stands open at its foot or opens at its side
		return !f.Small() && f.Vessel.Shape != "oblong" && (kind == "cake tin" && f.Sizes[1].Depth >= deepTin || kind == "pie mould")
	case bare && (l.Stands == Cold || l.Stands == Potted):
		return slices.Contains([]string{"glass", "basin", "cup"}, kind) || kind == "jar" && l.Stands == Potted || kind == "mould" && l.Turned
	case kind == "glass" || kind == "jar":
		return false
	case l.Cake:
		return kind == "cake tin" || kind == "loaf tin" || kind == "mould" || kind == "patty-pan"
	}
	switch kind {
	case "loaf tin", "basin", "cup", "mould", "cake tin":
		return bare
	}
	return true
}

func times(s Span, by float64) Span {
	return Span{Low: s.Low * by, Likely: s.Likely * by, High: s.High * by}
}
