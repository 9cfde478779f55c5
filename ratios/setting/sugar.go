package setting

import (
	"math"

	"assize/ratios"
)

// Solubility is the sucrose that 100 g of water holds at a temperature from 0
// to 100 C, grams; between the points of Antokolskaya's table (in Mohos 2010,
// appendix 2) it is read off straight.
func Solubility(celsius float64) float64 {
	points := solubility
	if celsius <= points[0][0] {
		return points[0][1]
	}
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; celsius <= b[0] {
			return a[1] + (b[1]-a[1])*(celsius-a[0])/(b[0]-a[0])
		}
	}
	return points[len(points)-1][1]
}

var solubility = [][2]float64{
	{0, 179.2}, {10, 190.5}, {20, 203.9}, {25, 211.4}, {30, 219.5}, {40, 238.1},
	{50, 260.4}, {60, 287.3}, {70, 320.5}, {80, 362.1}, {90, 415.7}, {100, 487.2},
}

// Saturation is the sugar in the water against what it can hold at 20 C.
// Over 1 the filling may grain on standing; from .85 if it is kept cold or its
// crust dries.
func Saturation(m *ratios.Mix) float64 {
	if m[ratios.Water] <= 0 {
		return 0
	}
	return 100 * m[ratios.Sugars] / m[ratios.Water] / Solubility(20)
}

// SugarToAcid is grams of sugar to a gram of acid as citric; 0 without acid.
// It is shown beside the range of its class, without a verdict: too sour and
// too sweet cannot be foretold.
func SugarToAcid(m *ratios.Mix) float64 {
	if m[ratios.Acid] <= 0 {
		return 0
	}
	return m[ratios.Sugars] / m[ratios.Acid]
}

// WaterActivity is the water activity of the water phase by the equation of
// Norrish (1966), a = x exp(-K x_s^2), with x the mole fraction of water and
// x_s of sucrose, K = 6.47; salt is taken by Raoult's law as two ions. Protein
// and fat are left out. It gives the boiling points of syrups within .6 C to
// 66 Brix and 1 C at 70.
// Never a clearance for keeping anything.
func WaterActivity(m *ratios.Mix) float64 {
	water, sugar := m[ratios.Water]/18.015, m[ratios.Sugars]/342.3
	salt, alcohol := 2*m[ratios.SaltContent]/58.44, m[ratios.Alcohol]/46.07
	if water <= 0 {
		return 0
	}
	xs := sugar / (water + sugar)
	norrish := water / (water + sugar) * math.Exp(-6.47*xs*xs)
	return norrish * water / (water + salt + alcohol)
}
