package setting

import "assize/ratios"

// Volume is the volume of the mix without air, ml: the volumes of what it is
// made of, added. Water .998 g/ml; dissolved sugar takes .626 ml/g (from the
// density of saturated syrup, 1.333 at 20 C, Antokolskaya's table); the others
// from Choi and Okos (1986).
func Volume(m *ratios.Mix) float64 {
	return m[ratios.Water]/.998 + .626*m[ratios.Sugars] + .75*m.AllProtein() + 1.085*m[ratios.Fat] +
		.65*m[ratios.Starch] + .60*m[ratios.Acid] + 1.2*m[ratios.Alcohol]
}

// Density is grams per ml of the mix, air (per cent of the volume) counted.
func Density(m *ratios.Mix, air float64) float64 {
	v := Volume(m)
	if v <= 0 {
		return 0
	}
	return m[ratios.Total] / v * (1 - air/100)
}
