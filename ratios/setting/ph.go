package setting

import (
	"math"

	"assize/ratios"
)

// Charge balance of acids and food proteins. The pH is where the strong-ion
// difference, the charges of proteins and acids, and water's own ions cancel.
//
// Groups per kg of protein: egg 1.15 mol carboxyl (pKa 4.2) and .20 imidazole
// (6.6), yolk .30 phosphate more (6.2, phosvitin); milk 1.25 carboxyl (4.4),
// .20 imidazole (6.5), .75 phosphate and citrate (6.0). From the amino acids of
// ovalbumin (Cannan 1941, number from memory) and common dairy chemistry.
// Apparent pKa at the ionic strength of food. Lysine and arginine stay charged
// below pH 8 and are part of the strong-ion difference. Claim: within .3 pH.
const (
	eggCarboxyl, eggCarboxylK   = 1.15, 4.2
	eggImidazole, eggImidazoleK = .20, 6.6
	yolkPhosphate, yolkK        = .30, 6.2
	milkCarboxyl, milkCarboxylK = 1.25, 4.4
	milkImidazole, milkImidK    = .20, 6.5
	milkPhosphate, milkPhosK    = .75, 6.0
)

// dissociation holds an acid's constants (as 10^-pKa) and molar mass.
type dissociation struct {
	k1, k2, k3 float64
	molar      float64
}

var (
	citric   = dissociation{tenTo(-2.94), tenTo(-4.38), tenTo(-5.70), 192.12}
	malic    = dissociation{tenTo(-3.26), tenTo(-4.87), 0, 134.09}
	tartaric = dissociation{tenTo(-2.85), tenTo(-4.10), 0, 150.09}
	lactic   = dissociation{tenTo(-3.80), 0, 0, 90.08}
	acetic   = dissociation{tenTo(-4.65), 0, 0, 60.05}

	kEggCarboxyl  = tenTo(-eggCarboxylK)
	kEggImidazole = tenTo(-eggImidazoleK)
	kYolk         = tenTo(-yolkK)
	kMilkCarboxyl = tenTo(-milkCarboxylK)
	kMilkImid     = tenTo(-milkImidK)
	kMilkPhos     = tenTo(-milkPhosK)
)

// tenTo is 10 to the power x.
func tenTo(x float64) float64 { return math.Exp(x * math.Ln10) }

// charge is the mean negative charge of one mole of the acid at h mol/l.
func (d *dissociation) charge(h float64) float64 {
	a := d.k1 * h * h
	b := d.k1 * d.k2 * h
	c := d.k1 * d.k2 * d.k3
	return (a + 2*b + 3*c) / (h*h*h + a + b + c)
}

// netCharge is the charge of the mix at h mol/l, strong ions left out, mol.
func netCharge(m *ratios.Mix, h float64) float64 {
	const waterK = 1e-14
	egg := (m[ratios.WhiteProtein] + m[ratios.YolkProtein]) / 1000
	yolk := m[ratios.YolkProtein] / 1000
	milk := (m[ratios.MilkProtein] + m[ratios.SourMilkProtein]) / 1000
	q := (h - waterK/h) * m[ratios.Water] / 1000
	if egg > 0 {
		q += egg*(eggImidazole*h/(h+kEggImidazole)-eggCarboxyl*kEggCarboxyl/(h+kEggCarboxyl)) -
			yolk*yolkPhosphate*kYolk/(h+kYolk)
	}
	if milk > 0 {
		q += milk * (milkImidazole*h/(h+kMilkImid) - milkCarboxyl*kMilkCarboxyl/(h+kMilkCarboxyl) - milkPhosphate*kMilkPhos/(h+kMilkPhos))
	}
	for _, a := range [...]struct {
		grams float64
		acid  *dissociation
	}{
		{m[ratios.Citric], &citric}, {m[ratios.Malic], &malic}, {m[ratios.Tartaric], &tartaric},
		{m[ratios.Lactic], &lactic}, {m[ratios.Acetic], &acetic},
	} {
		if a.grams > 0 {
			q -= a.grams / a.acid.molar * a.acid.charge(h)
		}
	}
	return q
}

// StrongIons is the strong-ion difference, mol, that gives a mix its known pH:
// what the minerals of an ingredient bring. Solved once for each ingredient.
func StrongIons(m *ratios.Mix, ph float64) float64 {
	return -netCharge(m, tenTo(-ph))
}

// PH is the pH of the mix, between 1.5 and 10. Checked against the equilibrium
// pH 3.7 of the National Center for Home Food Preservation's lemon curd. Never
// use it to clear anything for keeping.
func PH(m *ratios.Mix) float64 {
	low, high := 1.5, 10.0
	for range 15 { // halves 8.5 to .0003
		mid := (low + high) / 2
		// Charge falls as pH rises: still positive means the balance lies higher.
		if m[ratios.StrongIons]+netCharge(m, tenTo(-mid)) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
