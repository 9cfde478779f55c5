package practice

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios/bake"
	"assize/reference"
)

// conditions are those of reference.StepConditions that hold for part i.
func (d *Dish) conditions(i int) map[string]bool {
	p, m := &d.Formula.Parts[i], &d.Methods[i]
	c := map[string]bool{}
	filling := d.filling()
	paste := d.paste()
	under := paste >= 0 && slices.Contains(underneath, d.Lay(paste)) || d.any("stands_in_crust", formula.Filling) && !d.any("rim_only", "")
	c["bottom-crust"] = under
	c["paste"] = paste >= 0 || under
	c["hot-water"] = m.Has("hot_water")
	c["layered"] = m.Has("laminated", "folded_turns", "flakes")
	c["hot-served"] = d.hotServed()
	c["filled-cold"] = d.ofMeat() && d.filledCold()
	c["till-cold"] = c["filled-cold"] || d.ofMeat() && d.tells(coldServed)
	c["eggs"] = d.has(p, egg...)
	c["yeast"] = d.has(p, "yeast")
	if p.Kind == formula.Pastry {
		lay := d.Lay(i)
		c["laid"] = filling >= 0
		c["lined"] = slices.Contains(underneath, lay)
		c["lidded"] = slices.Contains([]string{"lid", "lining and lid", "raised", "folded"}, lay)
		c["raised"] = lay == "raised"
		c["folded"], c["patty"] = lay == "folded", lay == "patty"
		if filling < 0 {
			return c
		}
		in := d.inCase(filling)
		c["baked"] = in || d.Formula.Bake != "" || d.Formula.Oven != "" || c["lined"]
		c["filled-raw"] = in
		c["wet-filling"] = d.wet(&d.Formula.Parts[filling])
		return c
	}
	fire := bake.FireOf(m)
	pot := m.Has("boiled_pudding", "steamed")
	c["pot"] = pot
	c["baked"] = fire.Baked && !pot && !d.unheated(p, m, c["paste"])
	c["in-tin"] = p.Kind == formula.Cake && c["baked"] && !d.small(m)
	c["loaf"] = p.Kind == formula.Bread && c["baked"] && !d.small(m)
	c["stove"] = fire.Stove
	c["cooked"] = c["baked"] || c["stove"] || pot
	c["sets-cold"] = p.Kind == formula.Filling && !c["baked"] && !pot && d.has(p, "setting")
	c["wet-filling"] = d.wet(p)
	c["filled-raw"] = d.inCase(i)
	c["egg-set"] = c["eggs"] && c["baked"]
	c["custard"] = c["eggs"] && !pot && d.has(p, "milk", "cream") && !m.Has("creamed", "whites_folded") &&
		!d.has(p, "flour", "crumb", "meal", "curd", "cheese", "dried", "nut", "pulp")
	return c
}

// underneath are the ways to lay a paste so that the filling lies on it.
var underneath = []string{"lining", "lining and lid", "patty", "raised"}

// egg are the roles of egg in any form.
var egg = []string{"egg", "white", "yolk"}

// filling is the part that goes into the paste: the first filling, -1 when the
// dish has none.
func (d *Dish) filling() int { return d.first(formula.Filling) }

// paste is the first paste of the dish, -1 when there is none.
func (d *Dish) paste() int { return d.first(formula.Pastry) }

func (d *Dish) first(k formula.Kind) int {
	return slices.IndexFunc(d.Formula.Parts, func(p formula.Part) bool { return p.Kind == k })
}

// any reports whether a flag is raised by any part of a kind, or of every kind
// when it is empty.
func (d *Dish) any(f formula.Flag, k formula.Kind) bool {
	for i := range d.Methods {
		if (k == "" || d.Formula.Parts[i].Kind == k) && d.Methods[i].Flags[f] {
			return true
		}
	}
	return false
}

// inCase reports that a filling is cooked in its case: it is baked, and not
// poured ready cooked into a case that is.
func (d *Dish) inCase(filling int) bool {
	fire := bake.FireOf(&d.Methods[filling])
	return d.Formula.Parts[filling].Kind == formula.Filling && fire.Baked && !d.Methods[filling].Has("boiled_pudding", "steamed")
}

// unheated reports a cream or a jelly of which no word tells any heat: it holds
// no egg to set it, or is set by something else, and no paste is about it.
func (d *Dish) unheated(p *formula.Part, m *formula.Method, paste bool) bool {
	told := m.Has("baked", "slow", "moderate", "hot", "bath") || m.Bake.Said() || d.Formula.Oven != "" || d.Formula.Bake != ""
	if p.Kind == formula.Batter && !told {
		return d.fried(p)
	}
	return p.Kind == formula.Filling && !told && !paste && (!d.has(p, egg...) || d.has(p, "setting"))
}

// Unheated reports a part whose steps tell no heat and that has nothing in it to
// be set by heat: a syllabub, a cream. Of one without steps nothing is known.
func (d *Dish) Unheated(i int) bool {
	p := &d.Formula.Parts[i]
	return len(p.Steps) > 0 && d.unheated(p, &d.Methods[i], d.holds[i]["paste"]) && !d.has(p, "egg", "white", "yolk", "flour", "starch", "crumb", "meal")
}

// fried reports a batter that goes into a pan, by its name or its steps.
func (d *Dish) fried(p *formula.Part) bool {
	for _, text := range append(slices.Clone(p.Steps), d.Formula.Title) {
		for _, w := range reference.Words(text) {
			if strings.HasPrefix(w, "pancake") || strings.HasPrefix(w, "fritter") || strings.HasPrefix(w, "waf") || slices.Contains([]string{"fry", "fried", "griddle", "crumpets", "pan"}, w) {
				return true
			}
		}
	}
	return false
}

// small reports cakes baked one by one and not in a tin: by their time, or where
// none is told by their name.
func (d *Dish) small(m *formula.Method) bool {
	const shortBake = 30 // minutes
	if m.Bake.Minutes > 0 {
		return m.Bake.Minutes < shortBake
	}
	return slices.ContainsFunc(reference.Words(d.Formula.Title), func(w string) bool {
		return strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss")
	})
}

// OnSheet reports a dish that is shaped, and baked piece by piece on a tin, a
// sheet or papers: buns and rolls, biscuits and drops. What is baked in tins or
// patty-pans is not.
func (d *Dish) OnSheet() bool {
	sheet := false
	for i := range d.Formula.Parts {
		p := &d.Formula.Parts[i]
		switch p.Kind {
		case formula.Filling, formula.Pastry, formula.Batter:
			return false
		case formula.Meringue: // on paper or a board, where it is not laid on something
			sheet = sheet || len(d.Formula.Parts) == 1 && d.holds[i]["baked"]
		case formula.Bread:
			sheet = sheet || d.holds[i]["baked"] && d.small(&d.Methods[i])
		case formula.Cake:
			sheet = sheet || d.holds[i]["baked"] && d.small(&d.Methods[i]) && d.laidOut(p)
		}
	}
	return sheet && !d.tells([]string{"patty pans", "pattypans", "patty tins", "in tins", "in small tins", "muffin tins", "in rings", "in hoops", "in cups", "in moulds", "into tins", "into cups", "into moulds", "into patty pans"})
}

// laidOut reports a cake whose name or steps have it rolled and cut, or dropped, or
// laid on tins or papers.
func (d *Dish) laidOut(p *formula.Part) bool {
	for _, text := range append(slices.Clone(p.Steps), d.Formula.Title) {
		for _, w := range reference.Words(text) {
			if slices.Contains(laidOutWords, w) {
				return true
			}
		}
	}
	return false
}

var laidOutWords = []string{
	"biscuits", "biscuit", "jumbles", "cracknels", "wafers", "snaps", "nuts", "macaroons", "ratafias", "drops", "drop", "cookies", "kisses", "scones", "rocks",
	"cutter", "rounds", "sheet", "sheets", "papers", "paper",
}

// wet reports a filling that runs when it goes into the case.
func (d *Dish) wet(p *formula.Part) bool {
	return d.has(p, "egg", "white", "yolk", "milk", "cream", "juice", "liquid", "water")
}

// has reports whether a part holds something of one of the roles.
func (d *Dish) has(p *formula.Part, roles ...string) bool {
	for _, l := range p.Lines {
		for _, it := range l.Items {
			ing, ok := d.tables.Ingredient(it.Ingredient)
			if ok && slices.ContainsFunc(ing.Roles, func(r string) bool { return slices.Contains(roles, r) }) {
				return true
			}
		}
	}
	return false
}

// hotServed reports that the receipt sends the dish to table hot.
func (d *Dish) hotServed() bool { return d.tells(hotServed) }

// Words that send a dish to table.
var (
	hotServed  = []string{"serve hot", "serve it hot", "served hot", "serve very hot", "to table hot", "to the table hot", "send it hot", "eat it hot", "eaten hot", "serve quickly", "serve immediately", "serve at once"}
	coldServed = []string{"serve cold", "serve it cold", "served cold", "to table cold", "to the table cold", "send it cold", "eat it cold", "eaten cold", "to be cold before it is cut", "when cold serve", "when cold cut", "do not cut it till cold", "not to be cut till cold", "eaten the next day", "eat it the next day"}
)

// tells reports that a step of any part has one of the wordings.
func (d *Dish) tells(wordings []string) bool {
	for _, p := range d.Formula.Parts {
		for _, s := range p.Steps {
			text := " " + reference.Key(s) + " "
			if slices.ContainsFunc(wordings, func(w string) bool { return strings.Contains(text, " "+w+" ") }) {
				return true
			}
		}
	}
	return false
}

// ofMeat reports a dish with meat, fowl, game or fish in it.
func (d *Dish) ofMeat() bool {
	return slices.ContainsFunc(d.Formula.Parts, func(p formula.Part) bool { return d.has(&p, "meat") })
}

// filledCold reports that jelly, gravy or the like goes into the dish when it has
// cooled: "when it is cold fill it up with good jelly".
func (d *Dish) filledCold() bool {
	for _, p := range d.Formula.Parts {
		for _, s := range p.Steps {
			for _, sentence := range strings.FieldsFunc(s, func(r rune) bool { return r == '.' || r == ';' }) {
				words := reference.Words(sentence)
				has := func(list []string) bool {
					return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(list, w) })
				}
				if has(pours) && has(poured) && has([]string{"cold", "cool", "cooled", "cooling"}) {
					return true
				}
			}
		}
	}
	return false
}

// pours and poured are the words by which a pie is filled up, and with what.
var (
	pours  = []string{"pour", "poured", "fill", "filled", "run", "put", "add"}
	poured = []string{"jelly", "gravy", "aspic", "stock", "liquor", "consomme"}
)

// tellsDone reports that the words say how it is known to be done: a heat with
// "till" or "until" behind it, and not till it is cold.
func (d *Dish) tellsDone(steps []string) bool {
	texts := append(slices.Clone(steps), d.Formula.Bake)
	for _, text := range texts {
		for _, clause := range strings.FieldsFunc(text, func(r rune) bool { return r == '.' || r == ';' || r == ':' }) {
			words := reference.Words(clause)
			at := slices.IndexFunc(words, func(w string) bool { return w == "till" || w == "until" })
			if at < 0 || at+1 >= len(words) || slices.ContainsFunc(words[at:], func(w string) bool { return w == "cold" || w == "cool" || w == "wanted" }) {
				continue
			}
			if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(heating, w) }) {
				return true
			}
		}
	}
	return false
}

// heating are words by which a clause is known to speak of cooking.
var heating = []string{"bake", "baked", "baking", "oven", "boil", "boiled", "simmer", "heat", "fire", "cook", "cooked", "thickens", "thicken", "thick", "stew", "hob", "steam"}
