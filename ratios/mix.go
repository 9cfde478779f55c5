package ratios

import (
	"assize/formula/weigh"
)

// Mix is what is in one part in one reading, in grams, by Quantity. The
// mechanisms are functions of a Mix.
type Mix [NumQuantities]float64

// Row is what one gram of an item brings to a mix. A whole egg must be split
// into white and yolk first; see bake.
func Row(it *weigh.Item) Mix {
	var m Mix
	for q := range m {
		m[q] = share(it, Quantity(q)).InexactFloat64()
	}
	return m
}

// Add adds grams of an item to the mix.
func (m *Mix) Add(grams float64, row *Mix) {
	for q := range m {
		m[q] += grams * row[q]
	}
}

// AllProtein is every protein, by kind of source.
func (m *Mix) AllProtein() float64 {
	return m[WhiteProtein] + m[YolkProtein] + m[MilkProtein] + m[SourMilkProtein] + m[FlourProtein] + m[OtherProtein]
}

// EggMass is white and yolk together.
func (m *Mix) EggMass() float64 { return m[EggWhite] + m[EggYolk] }

// FlourAndMeal is all that is milled: flour, meal and starch.
func (m *Mix) FlourAndMeal() float64 { return m[Flour] + m[Meal] }

// FreeStarch is starch that is neither inside pulp nor bound in crumb or nuts.
func (m *Mix) FreeStarch() float64 {
	return max(0, m[Starch]-m[PulpStarch]-m[CrumbStarch])
}

// SugarShare is sugar in the water of the mix, per cent of the two together.
func (m *Mix) SugarShare() float64 { return percent(m[Sugars], m[Sugars]+m[Water]) }

// FatShare is fat in the whole, per cent.
func (m *Mix) FatShare() float64 { return percent(m[Fat], m[Total]) }

// WhiteShare is the share of egg protein that comes from white.
func (m *Mix) WhiteShare() float64 {
	if egg := m[WhiteProtein] + m[YolkProtein]; egg > 0 {
		return m[WhiteProtein] / egg
	}
	return 0
}

// FreeWater is the water not held by fruit, vegetable or nuts, which keep nine
// parts in ten of their own; at least .15 of all the water (judgement).
func (m *Mix) FreeWater() float64 {
	return max(m[Water]-.9*m[PulpWater], .15*m[Water])
}

func percent(a, b float64) float64 {
	if b <= 0 {
		return 0
	}
	return 100 * a / b
}
