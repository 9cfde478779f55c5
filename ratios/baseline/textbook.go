// Package baseline holds the judges any better judge must beat on the
// published formulas: the rules a textbook gives, and a plain regression on
// ratios and method words. The judge shows what the textbook rules say beside
// its own verdict and takes nothing from either.
package baseline

import (
	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
)

// Verdict is what a textbook rule says, and which rule decided.
type Verdict struct {
	Texture string // texture id; flaky and tender are told apart
	Rule    string // the rule that applied, in words
	Value   float64
	Limit   float64 // 0 when the rule is a word of method
}

// Textbook judges a part by the rules of the textbooks, the first that applies.
func Textbook(in bake.Input) (Verdict, error) {
	k, err := bake.Compile(in)
	if err != nil {
		return Verdict{}, err
	}
	m := k.LikelyMix()
	if in.Weighed.Parts[in.Part].Of.Kind == formula.Pastry {
		return textbookPaste(&m, &in.Method), nil
	}
	return textbookFilling(&m, &in.Method), nil
}

// Limits of the textbook rules (common practice, as school and trade books
// have them).
const (
	cakeFlour    = .06 // flour in the mix
	setStarch    = 1.0 // per cent starch in the water, cooked first
	thinEgg      = .16 // egg to the liquid
	thinStarch   = 2.0
	leanFat      = 1.0 / 3 // fat as written to flour
	crumblySugar = .25
)

func textbookFilling(m *ratios.Mix, method *formula.Method) Verdict {
	cooked := method.Has("starch_boiled") || method.Has("on_heat")
	starch := 100 * m[ratios.Starch] / max(m[ratios.Water], 1e-9)
	flour := m.FlourAndMeal() / max(m[ratios.Total], 1e-9)
	egg := m.EggMass() / max(m[ratios.FreeLiquid], 1e-9)
	switch {
	case method.Has("whites_folded"):
		return Verdict{Texture: "cakey", Rule: "whisked whites folded in make a cake"}
	case flour >= cakeFlour && !cooked:
		return Verdict{"cakey", "flour from 6 in 100 of the mix, not cooked first, makes a cake", flour, cakeFlour}
	case cooked && starch > setStarch:
		return Verdict{"starch-set", "starch cooked first sets the filling", starch, setStarch}
	case m[ratios.CurdMass] > 0:
		return Verdict{Texture: "curdy", Rule: "curd cheese keeps its grain"}
	case egg < thinEgg && starch < thinStarch:
		return Verdict{"thin", "too little egg for the liquid", egg, thinEgg}
	}
	return Verdict{"sets", "egg enough, and nothing to make it a cake", egg, thinEgg}
}

func textbookPaste(m *ratios.Mix, method *formula.Method) Verdict {
	flour := m.FlourAndMeal() + m[ratios.Nut]
	if flour <= 0 {
		return Verdict{Texture: "tender", Rule: "no flour to toughen"}
	}
	fat, sugar := m[ratios.WrittenFat]/flour, m[ratios.Sugar]/flour
	switch {
	case fat < leanFat:
		return Verdict{"tough", "under a third of fat to the flour toughens", fat, leanFat}
	case m[ratios.Oil] > 0:
		return Verdict{Texture: "crumbly", Rule: "oil makes a crumbling paste"}
	case sugar >= crumblySugar:
		return Verdict{"crumbly", "sugar from a quarter of the flour makes a crumbling paste", sugar, crumblySugar}
	case method.Has("laminated", "folded_turns", "flakes"):
		return Verdict{Texture: "flaky", Rule: "rolled and folded paste flakes"}
	}
	return Verdict{"tender", "fat enough, rubbed in", fat, leanFat}
}
