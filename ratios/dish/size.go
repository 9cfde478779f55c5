package dish

import "math"

// Shape is the shape of a dish seen from above.
type Shape string

// The shapes. An oval is taken as an ellipse.
const (
	Round  Shape = "round"
	Oval   Shape = "oval"
	Oblong Shape = "oblong"
)

// Size is the inside of a dish, cm: widths at the top and the bottom, the
// shorter sides of an oval or oblong one, and the depth upright. Walls are
// taken as straight, so that a round dish is a frustum of a cone or a cylinder
// and an oblong one a box or a hopper.
type Size struct {
	Shape              Shape
	Top, TopSide       float64
	Bottom, BottomSide float64
	Depth              float64
}

// Known reports whether the size can be reckoned with.
func (s Size) Known() bool { return s.Top > 0 && s.Bottom > 0 && s.Depth > 0 }

// widths are the two widths a share z of the depth up from the bottom.
func (s Size) widths(z float64) (long, short float64) {
	at := func(bottom, top float64) float64 { return bottom + z*(top-bottom) }
	long = at(s.Bottom, s.Top)
	if s.Shape == Round {
		return long, long
	}
	return long, at(s.BottomSide, s.TopSide)
}

// area is the surface of a filling a share z of the depth up, square cm.
func (s Size) area(z float64) float64 {
	long, short := s.widths(z)
	if s.Shape == Oblong {
		return long * short
	}
	return math.Pi / 4 * long * short
}

// Brimful is what the dish holds level full, ml.
func (s Size) Brimful() float64 { return s.Volume(s.Depth) }

// Volume is what the dish holds filled to a depth, ml; a depth over its own
// counts as its own. The area of straight-walled dishes is a square of the
// height, so Simpson's rule gives it without error: the prismatoid formula,
// which for a round dish is depth/3 x (top area + bottom area + the root of
// their product).
func (s Size) Volume(depth float64) float64 {
	depth = min(depth, s.Depth)
	if depth <= 0 {
		return 0
	}
	z := depth / s.Depth
	return depth / 6 * (s.area(0) + 4*s.area(z/2) + s.area(z))
}

// DepthOf is how deep so many ml stand in the dish, cm; its own depth when
// they run over.
func (s Size) DepthOf(ml float64) float64 {
	if ml >= s.Brimful() {
		return s.Depth
	}
	low, high := 0.0, s.Depth
	for range 60 { // halving leaves less than a hair
		if mid := (low + high) / 2; s.Volume(mid) < ml {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// leans is how far a wall goes outward for each cm upward, by the longer and
// the shorter width.
func (s Size) leans() (long, short float64) {
	long = (s.Top - s.Bottom) / 2 / s.Depth
	if s.Shape == Round {
		return long, long
	}
	return long, (s.TopSide - s.BottomSide) / 2 / s.Depth
}

// Lined is what is left inside when the bottom and the walls are lined with
// paste so many cm thick, measured square to the wall. It has no size when
// nothing is left.
func (s Size) Lined(thick float64) Size {
	if thick <= 0 {
		return s
	}
	leanLong, leanShort := s.leans()
	// Level with the new bottom the wall has moved outward by its lean, and the
	// paste, square to a leaning wall, takes more than its thickness sideways.
	inset := func(lean float64) (bottom, top float64) {
		side := thick * math.Sqrt(1+lean*lean)
		return 2 * (thick*lean - side), -2 * side
	}
	bottom, top := inset(leanLong)
	out := Size{Shape: s.Shape, Top: s.Top + top, Bottom: s.Bottom + bottom, Depth: s.Depth - thick}
	if s.Shape != Round {
		bottom, top = inset(leanShort)
		out.TopSide, out.BottomSide = s.TopSide+top, s.BottomSide+bottom
	}
	if out.Depth <= 0 || out.Bottom <= 0 || out.Top <= 0 || out.Shape != Round && (out.BottomSide <= 0 || out.TopSide <= 0) {
		return Size{}
	}
	return out
}

// BottomArea is the bottom of the dish, square cm.
func (s Size) BottomArea() float64 { return s.area(0) }

// TopArea is the mouth of the dish, square cm.
func (s Size) TopArea() float64 { return s.area(1) }

// WallArea is the walls, square cm. For an oval it goes by Ramanujan's figure
// for the way round an ellipse, and its mean lean.
func (s Size) WallArea() float64 {
	leanLong, leanShort := s.leans()
	slantLong, slantShort := s.Depth*math.Sqrt(1+leanLong*leanLong), s.Depth*math.Sqrt(1+leanShort*leanShort)
	if s.Shape == Oblong {
		// The long sides lean across the short way, and the other way about.
		return (s.Top+s.Bottom)*slantShort + (s.TopSide+s.BottomSide)*slantLong
	}
	return (s.around(1) + s.around(0)) / 2 * (slantLong + slantShort) / 2
}

// around is the way round the dish a share z of the depth up, cm.
func (s Size) around(z float64) float64 {
	long, short := s.widths(z)
	if s.Shape == Oblong {
		return 2 * (long + short)
	}
	a, b := long/2, short/2
	return math.Pi * (3*(a+b) - math.Sqrt((3*a+b)*(a+3*b)))
}

// RimArea is a rim so many cm wide all round the mouth, square cm.
func (s Size) RimArea(wide float64) float64 {
	corners := math.Pi * wide * wide
	if s.Shape == Oblong {
		corners = 4 * wide * wide
	}
	return s.around(1)*wide + corners
}
