package setting

import (
	"math"

	"assize/ratios"
)

// Volume is the volume of the mix without air, ml: the volumes of what it is
// made of, added. Water .998 g/ml; dissolved sugar takes .626 ml/g (from the
// density of saturated syrup, 1.333 at 20 C, Antokolskaya's table); the others
// from Choi and Okos (1986). What is left of the weight - dextrin, fibre, salt
// and ash - is taken as carbohydrate, 1.59 g/ml there.
func Volume(m *ratios.Mix) float64 {
	protein := m.AllProtein()
	rest := m[ratios.Total] - m[ratios.Water] - m[ratios.Sugars] - protein - m[ratios.Fat] - m[ratios.Starch] - m[ratios.Acid] - m[ratios.Alcohol]
	return m[ratios.Water]/.998 + .626*m[ratios.Sugars] + .75*protein + 1.085*m[ratios.Fat] +
		.65*m[ratios.Starch] + .60*m[ratios.Acid] + 1.2*m[ratios.Alcohol] + .63*rest
}

// Density is grams per ml of the mix, air (per cent of the volume) counted.
func Density(m *ratios.Mix, air float64) float64 {
	v := Volume(m)
	if v <= 0 {
		return 0
	}
	return m[ratios.Total] / v * (1 - air/100)
}

// The heat at which a mix stands and its bubbles are fixed, C: gentle and
// fierce (custards set about 75 to 80, richer mixes to 85). Medium.
const gentlyFixed, fiercelyFixed = 75.0, 85.0

// FixedAt is the heat at which bubbles are fixed, C, a share u (0 to 1) of the
// way from a gentle fire to a fierce one.
func FixedAt(u float64) float64 { return gentlyFixed + u*(fiercelyFixed-gentlyFixed) }

// Rise is how many times its volume a mix comes to at its height in the oven:
// its bubbles swell with the heat and with the steam that fills them, until the
// mix sets about them. Air (per cent of the volume) was beaten in at 20 C; c is
// the heat at which it sets. By Gay-Lussac's law and Magnus's formula for the
// pressure of steam (as Murray 1967 has it) a bubble at 80 C is 2.3 times what
// it was, at 85 C 2.9 times. That is physics; that no bubble bursts or drains is
// not true, and a mix that is left to cool falls back near where it was.
func Rise(air, c float64) float64 {
	const atmosphere, made = 1013.25, 20.0 // hPa; C
	warm := (273.15 + c) / (273.15 + made)
	return 1 + air/100*(warm*atmosphere/(atmosphere-steam(c))*(atmosphere-steam(made))/atmosphere-1)
}

// steam is the pressure of steam over water, hPa, by Magnus's formula.
func steam(c float64) float64 { return 6.1078 * math.Exp(17.2693882*c/(c+237.3)) }
