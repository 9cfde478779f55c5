package bake

import (
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
)

// sets are the roles of what may set a filling or thicken it.
var sets = append([]string{"flour", "meal", "crumb", "curd", "cheese", "setting", "milk", "cream", "leaven"}, eggs...)

// eggs are the roles of egg in any form.
var eggs = []string{"egg", "white", "yolk"}

// meaty is the part of a filling that is meat, fowl, game or fish from which it
// is a filling of meat. A savoury custard with bacon in it has less.
var meaty = decimal.RequireFromString("0.25")

// OfMeat reports a filling of meat, fowl, game or fish: a quarter of its likely
// weight or more, or meat of which no amount is given. The classes and the
// mechanisms of sweet fillings have nothing to say of it, but what egg in it
// does.
func OfMeat(part *weigh.Part) bool {
	if part.Of.Kind != formula.Filling {
		return false
	}
	var meat, all decimal.Decimal
	open := false
	for i := range part.Items {
		it := &part.Items[i]
		all = all.Add(it.Grams.Likely)
		if slices.Contains(it.Ingredient.Roles, "meat") {
			meat = meat.Add(it.Grams.Likely)
			open = open || it.State != formula.Stated
		}
	}
	return open || meat.IsPositive() && meat.GreaterThanOrEqual(all.Mul(meaty))
}

// HoldsItself reports a filling that nothing in it sets or is meant to: fruit,
// meat, nuts or dried fruit for half its weight or more, and no egg, starch,
// flour, crumb, milk, curd or jelly, in any amount; or one of meat without egg,
// whatever is poured about it. It keeps together by its own substance, and the
// mechanisms of setting have nothing to say of it.
func HoldsItself(in Input, k *Kernel) bool {
	part := &in.Weighed.Parts[in.Part]
	if part.Of.Kind != formula.Filling {
		return false
	}
	of := sets
	if OfMeat(part) {
		of = eggs
	}
	for i := range part.Items {
		if slices.ContainsFunc(part.Items[i].Ingredient.Roles, func(r string) bool { return slices.Contains(of, r) }) {
			return false
		}
	}
	if OfMeat(part) {
		return true
	}
	m := k.LikelyMix()
	solid := m[ratios.PulpMass] + m[ratios.Dried] + m[ratios.Nut] + m[ratios.Meat]
	return solid > 0 && solid >= m[ratios.Total]/2
}
