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
// C: stirred to thicken with egg, and with starch till thick. Judgement.
const (
	UnsaidFire  = 10.0
	longestFire = 40.0
	thickened   = 70.0
	thick       = 85.0
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
func Steamed(ml, minutes float64, starch bool) float64 {
	c := thickened
	if starch {
		c = thick
	}
	pressure := (steam(c) - steam(20)/2) / 10 // kPa
	return 1000 * .089 / (2501 - 2.36*c) * pressure * panArea(ml) * 60 * min(minutes, longestFire)
}

// boilsOff is what goes off a pan that is brought to the boil, g a square metre
// a minute of the time it is on the fire. There the fire sets the pace, and two
// figures stand far apart. The least is still air over boiling water, 220 by
// Carrier's formula. The most is custard as food tables have it (CoFID 2015,
// custard made up with whole milk: 4.0 g of protein, 4.2 of fat and 16.3 of
// carbohydrate in 100, so that by all three 441 to 447 g are left of the 565 put in,
// 500 ml of milk and 25 g each of sugar and custard powder, amounts from memory):
// 600 over UnsaidFire, what sticks to pan and spoon with it. Taken is the middle
// of the two, as a factor; good to about 1.6 either way.
const boilsOff = 360.0

// BoiledOff is the water that leaves ml of a filling that is brought to the boil in
// an open pan, over so many minutes on the fire, g. The pan is as for Steamed.
func BoiledOff(ml, minutes float64) float64 {
	return boilsOff * panArea(ml) * min(minutes, longestFire)
}

// panArea is the mouth of a pan that receipts choose for ml, square metres.
func panArea(ml float64) float64 {
	width := math.Cbrt(24*ml/math.Pi) / 100
	return math.Pi * width * width / 4
}
