// Package change applies one change to a weighed part - an amount, a method
// word, the heat - and gives the input for a new kernel. Remedies,
// explanations, variants and scaling all go through it, so that an effect is
// always computed and never asserted.
package change

import (
	"maps"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/reference"
)

// Change is one thing done otherwise. Its zero value changes nothing.
type Change struct {
	// Drop and Raise are flags of method taken away and put in.
	Drop, Raise []formula.Flag
	// HeatC sets the oven, C; 0 leaves it.
	HeatC float64
	// Scale makes more or less of the whole part, in proportion; nothing leaves it.
	Scale decimal.Decimal
	// Amounts give other amounts of single items.
	Amounts []Amount
	// Times multiplies the grams of items by role.
	Times []Times
	// Add puts in ingredients.
	Add []Addition
}

// Times multiplies the grams of every item of a role.
type Times struct {
	Role string
	By   decimal.Decimal
}

// Addition is an ingredient put in.
type Addition struct {
	Ingredient string // id
	Grams      decimal.Decimal
}

// Apply gives the input as changed; the one given is left as it was. It
// reports false when an addition names an ingredient the tables do not have.
func (c Change) Apply(in bake.Input) (bake.Input, bool) {
	out := in
	out.Method = c.method(in.Method)
	if c.Scale.IsZero() && len(c.Amounts) == 0 && len(c.Times) == 0 && len(c.Add) == 0 {
		return out, true
	}
	w := *in.Weighed
	w.Parts = slices.Clone(w.Parts)
	part := &w.Parts[in.Part]
	part.Items = c.amounts(&w, part.Items)
	for i := range part.Items {
		c.scale(&part.Items[i])
	}
	for _, a := range c.Add {
		ing, ok := in.Tables.Ingredient(a.Ingredient)
		if !ok {
			return in, false
		}
		part.Items = append(part.Items, weigh.Item{
			Line: -1, Ingredient: ing, Base: a.Grams, Grams: reference.Exact(a.Grams),
		})
	}
	out.Weighed = &w
	return out, true
}

func (c Change) scale(it *weigh.Item) {
	if !c.Scale.IsZero() {
		it.Base = it.Base.Mul(c.Scale)
		it.Grams = it.Grams.Mul(c.Scale)
	}
	for _, t := range c.Times {
		if slices.Contains(it.Ingredient.Roles, t.Role) {
			it.Base = it.Base.Mul(t.By)
			it.Grams = it.Grams.Mul(t.By)
		}
	}
}

func (c Change) method(m formula.Method) formula.Method {
	m.Flags = maps.Clone(m.Flags)
	m.LineFlags = slices.Clone(m.LineFlags)
	for i := range m.LineFlags {
		m.LineFlags[i] = maps.Clone(m.LineFlags[i])
	}
	if m.Flags == nil {
		m.Flags = map[formula.Flag]bool{}
	}
	for _, f := range c.Drop {
		delete(m.Flags, f)
		for i := range m.LineFlags {
			delete(m.LineFlags[i], f)
		}
	}
	for _, f := range c.Raise {
		m.Flags[f] = true
	}
	if c.HeatC > 0 {
		minutes := m.Bake.Minutes
		m.Bake = formula.Bake{Minutes: minutes, Stages: []formula.Stage{{
			LowMinutes: minutes, HighMinutes: minutes, LowC: c.HeatC, HighC: c.HeatC,
		}}}
	}
	return m
}
