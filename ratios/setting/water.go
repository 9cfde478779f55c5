package setting

import "math"

// Evaporated is the share of water lost in a long bake:
//
//	min(.40, .10 (minutes - 45) / 60), halved in a water bath
//
// for a dish baked longer than an hour, else nothing. Confidence medium;
// judgement: an open pudding dish dries at about a tenth of its water an hour.
func Evaporated(baked bool, minutes float64, bath bool) float64 {
	if !baked || minutes <= 60 {
		return 0
	}
	lost := min(.40, .10*(minutes-45)/60)
	if bath {
		lost /= 2
	}
	return lost
}

// How long, in minutes, a filling stirred on the fire is taken to be there when
// the receipt does not say (modern receipts for curds and creams that do say
// run from 3 to 20, most of them about 10), and the longest the formula is
// trusted for. What the pan stands at on the way up and after, the middle of it,
// C: stirred to thicken with egg, and brought to the boil. Judgement.
const (
	UnsaidFire  = 10.0
	longestFire = 40.0
	thickened   = 70.0
	boiledUp    = 85.0
)

// Steamed is the water that leaves ml of a filling stirred in an open pan for
// so many minutes, g:
//
//	(.089 / L) (p - p air) area time
//
// by Carrier's formula for still air (1918; kg, s, m2, kPa, and L the heat of
// evaporation, kJ/kg), in a room at 20 C half full of damp. The pan is twice as
// wide as deep and holds three times the batch, as receipts choose it (2 to 3
// quarts for about 3 cups). The physics is sound; that air in a kitchen is
// still and a thick skin as wet as water makes it good to about a third.
func Steamed(ml, minutes float64, boiled bool) float64 {
	c := thickened
	if boiled {
		c = boiledUp
	}
	width := math.Cbrt(24*ml/math.Pi) / 100 // m
	area := math.Pi * width * width / 4
	pressure := (steam(c) - steam(20)/2) / 10 // kPa
	return 1000 * .089 / (2501 - 2.36*c) * pressure * area * 60 * min(minutes, longestFire)
}
