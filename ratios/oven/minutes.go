package oven

import "math"

// What heat meets in an oven. Sources in the comments; the rest is judgement.
const (
	// How fast heat spreads in a custard, m2/s (1.3-1.5e-7; Choi and Okos 1986 for
	// 80 in 100 of water). That of a batter is taken as the same: it holds less
	// water, which slows it, and air, whose steam carries heat.
	diffusivity = 1.35e-7
	// wetHeat is what warms a gram of custard a degree, J; batterHeat the same of
	// a batter, a third of it water, with the steam made within it.
	wetHeat, batterHeat = 3.43, 3.2
	// custardWeighs and batterWeighs are grams to the ml where it is not said.
	custardWeighs, batterWeighs = 1.05, .9
	// fromPan and fromAir are what an oven gives through the pan and to the top,
	// W/(m2 K). Of the top's, the steam of a wet top takes steams, W/m2: about
	// two kilograms of water a square metre an hour, as a custard loses a
	// twentieth of its weight in the baking. In a slow oven that is nearly all.
	fromPan, fromAir, steams = 15.0, 20.0, 1300.0
	// wetEdge and cakeEdge are where the outside stands while the middle comes
	// up, C: a wet edge near the boil, a cake's drier and over it.
	wetEdge, cakeEdge = 95.0, 112.0
	// caseHeat warms paste and dish, J/(m3 K); throughPaste and throughWall let
	// heat through them, W/(m K).
	caseHeat, throughPaste, throughWall = 2.4e6, .3, 1.2
	// In a bath the wall and the water along it keep heat off besides: still water
	// in a tin gives about 300 W/(m2 K) (textbooks of heat: free convection in water
	// 100 to 1000), and custard itself lets .49 W/(m K) through, its diffusivity
	// times its heat.
	fromWater, throughCustard = 300.0, .49
	// Usual start of a mixture, C: as it leaves the bowl.
	room = 20.0
)

// Error of a baking time: a factor of 1.6 either way. Of the published times in
// testdata/vectors/baking-times.yaml that holds rather more than eight in ten,
// and 39 of the 45 of baking-times-apart.yaml and baking-times-later.yaml, which
// had no part in it; ovens, dishes, the heat a mixture goes in at and what each
// book calls done differ by as much. What misses is nearly all too short, and most
// of that shallow: a batter under an inch takes some minutes more than it needs to
// be warmed through, while the oven comes back from the opened door.
const shortest, longest = 1 / 1.6, 1.6

// Minutes is how long a thing takes in the oven.
type Minutes struct {
	Range
	// Never marks what will not come to its heat at all: the oven, or the water
	// in the bath, is not hot enough. The range is then nothing.
	Never bool
	// MayNever marks what may not come to it: in the coolest bath it never does. The
	// range is then of the baths in which it does, to the coolest of those; in an
	// open oven whose heat is unclear it has no upper end.
	MayNever bool
}

// Bake is a thing in an oven.
type Bake struct {
	Depth float64 // of the mixture, cm
	Width float64 // of the dish across, cm; 0 is so wide that its sides do not count
	// Set is the heat at the centre when it is done, Start that of the mixture
	// as it goes in (0: 20), Oven the heat of the oven's air.
	Set, Start, Oven float64
	Bath             bool
	Batter           bool // a cake's: its outside comes over the boil
	// Density, grams to the ml with the air in it; 0: 1.05, of a batter .9.
	Density float64
	// Paste and Wall are the thickness of the paste about it and of the dish, cm,
	// which are warmed with it and keep heat off it: a lining is about .4, a
	// china or glass dish .6.
	Paste, Wall float64
}

// BakingTime is how long a filling takes, from its depth in cm, the heat at its
// centre when it is set, the oven's and the mixture's as it goes in, C. Bath is
// for a dish that stands in hot water. See Bake.Time.
func BakingTime(depth, set, oven float64, bath bool, start float64) Minutes {
	return Bake{Depth: depth, Set: set, Oven: oven, Bath: bath, Start: start}.Time()
}

// Time is how long the centre takes to come to its heat. In the open oven what
// the oven can give sets the pace, and half the time of a slab whose outside
// stands at the heat of its edge is added; in a bath the outside stands at the
// water's heat. A bath is never quicker than none. The range is by judgement
// and the published times in the tests; depth, dish and oven are taken as
// known.
func (b Bake) Time() Minutes {
	if b.Start == 0 {
		b.Start = room
	}
	bare := b.bare()
	switch {
	case math.IsInf(bare, 1):
		return Minutes{Never: true}
	case !b.Bath:
		return spread(bare, bare, bare)
	}
	cool, likely, warm := bathC(b.Oven)
	if warm < b.Set+1 {
		return Minutes{Never: true}
	}
	at := func(water float64) float64 { return max(bare, b.inBath(max(water, b.Set+1))) }
	m := spread(at(warm), at(likely), at(cool))
	m.MayNever = cool < b.Set+1
	return m
}

func spread(low, likely, high float64) Minutes {
	return Minutes{Range: Range{low * shortest, likely, high * longest}}
}

// bare is the time in the open oven, minutes; endless when the oven is no
// hotter than the centre must be.
func (b Bake) bare() float64 {
	switch {
	case b.Set <= b.Start, b.Depth <= 0:
		return 0
	case b.Oven <= b.Set+1:
		return math.Inf(1)
	}
	d := b.Depth / 100
	perGram, weighs, edge := wetHeat, custardWeighs, wetEdge
	if b.Batter {
		perGram, weighs, edge = batterHeat, batterWeighs, cakeEdge
	}
	if b.Density > 0 {
		weighs = b.Density
	}
	heat := perGram * weighs * 1e6 // J/(m3 K)
	edge = min(edge, b.Oven)
	if b.Set > edge-2 {
		edge = min(b.Oven, b.Set+2)
	}
	mean := (b.Set + b.Start) / 2
	about := 1.0 // the dish about it, to a bottom of 1: the sides warm as the bottom does
	if b.Width > 0 {
		about += 4 * b.Depth / b.Width
	}
	pan := about / (1/fromPan + b.Paste/100/throughPaste + b.Wall/100/throughWall)
	flux := pan*(b.Oven-mean) + max(0, fromAir*(b.Oven-mean)-steams)
	warm := heat*d*(b.Set-b.Start) + about*caseHeat*(b.Paste+b.Wall)/100*(b.Set-min(b.Start, room))
	seconds := warm/flux + .5*b.slab(d, edge)
	return seconds / 60
}

// slab is how long the middle of a slab, warmed from both faces that stand at
// a heat, takes to come to its own, seconds: the first term of the series
// (Carslaw and Jaeger 1959, 3.4). A narrow dish is a short cylinder, by the
// product of the two.
func (b Bake) slab(d, face float64) float64 {
	theta := (face - b.Set) / (face - b.Start)
	if theta <= 0 {
		return math.Inf(1)
	}
	rate, shape := math.Pi*math.Pi/(d*d), 4/math.Pi
	if b.Width > 0 {
		r := b.Width / 200
		rate += 5.783 / (r * r)
		shape *= 1.602
	}
	return max(0, math.Log(shape/theta)/(diffusivity*rate))
}

// bathC is the heat of the water about a dish, C, coolest, likely and warmest
// pan: 80 in steel, 83 in glass and 87 in iron in a moderate oven of 175 C
// (McGee 2004), a degree less for every 15 the oven is cooler (judgement).
func bathC(oven float64) (cool, likely, warm float64) {
	less := max(-2, (175-oven)/15)
	return min(80-less, oven), min(83-less, oven), min(87-less, oven)
}

// inBath is the time with the dish in water of a heat, minutes; endless when
// the water is no hotter than what must be reached. What the wall and the water
// along it keep off is put on as so much custard more at the bottom and the
// sides, which takes the heat as long to come through.
func (b Bake) inBath(water float64) float64 {
	if b.Set <= b.Start || b.Depth <= 0 {
		return 0
	}
	more := throughCustard * (1/fromWater + b.Paste/100/throughPaste + b.Wall/100/throughWall)
	x := b
	if b.Width > 0 {
		x.Width += 2 * 100 * more
	}
	return x.slab(b.Depth/100+more, water) / 60
}

// Over is the time over a range of ovens and a range of depths, for the likely
// of each. What is unclear of oven, of depth and of the reckoning itself is
// taken to be unclear apart: their factors are put together as independent
// errors are, not the worst of all at once.
func (b Bake) Over(heat, depth Range) Minutes {
	at := func(c, d float64) Minutes {
		x := b
		x.Oven, x.Depth = c, d
		return x.Time()
	}
	m := at(heat.Likely, depth.Likely)
	hot, cool := at(heat.High, depth.Likely), at(heat.Low, depth.Likely)
	shallow, deep := at(heat.Likely, depth.Low), at(heat.Likely, depth.High)
	if m.Never || m.Likely <= 0 {
		return m
	}
	apart := func(parts ...float64) float64 {
		sum := 0.0
		for _, p := range parts {
			l := math.Log(p / m.Likely)
			sum += l * l
		}
		return math.Exp(math.Sqrt(sum))
	}
	out := Minutes{Range: Range{m.Likely / apart(m.Low, hot.Likely, shallow.Likely), m.Likely, math.Inf(1)}}
	out.MayNever = m.MayNever || cool.Never || cool.MayNever || deep.Never || deep.MayNever
	switch {
	case cool.Never && !b.Bath || deep.Never:
		return out
	case cool.Never: // the coolest bath in which it sets
		cool.Likely = m.High / longest
	}
	out.High = m.Likely * apart(m.High, cool.Likely, deep.Likely)
	return out
}

// overDepth and overPerCm say how far the edge runs ahead of the centre of a
// deep dish, C for every cm beyond 3 (judgement).
const overDepth, overPerCm = 3.0, 1.0

// Overshoot is what the edge of a deep filling is heated beyond that of a
// shallow one while its centre comes up, C.
func Overshoot(depth float64) float64 { return max(0, depth-overDepth) * overPerCm }
