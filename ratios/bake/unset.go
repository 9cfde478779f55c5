package bake

import (
	"slices"

	"assize/formula"
	"assize/ratios"
)

// sets are the roles of what may set a filling or thicken it.
var sets = []string{"egg", "white", "yolk", "flour", "meal", "crumb", "curd", "cheese", "setting", "milk", "cream", "leaven"}

// HoldsItself reports a filling that nothing in it sets or is meant to: fruit,
// meat, nuts or dried fruit for half its weight or more, and no egg, starch,
// flour, crumb, milk, curd or jelly, in any amount. It keeps together by its
// own substance, and the mechanisms of setting have nothing to say of it.
func HoldsItself(in Input, k *Kernel) bool {
	part := &in.Weighed.Parts[in.Part]
	if part.Of.Kind != formula.Filling {
		return false
	}
	for i := range part.Items {
		if slices.ContainsFunc(part.Items[i].Ingredient.Roles, func(r string) bool { return slices.Contains(sets, r) }) {
			return false
		}
	}
	m := k.LikelyMix()
	solid := m[ratios.PulpMass] + m[ratios.Dried] + m[ratios.Nut] + m[ratios.Meat]
	return solid > 0 && solid >= m[ratios.Total]/2
}
