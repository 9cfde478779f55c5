package reference

import (
	"slices"
	"strings"
)

// index finds rows without walking the tables.
type index struct {
	source     map[string]int
	ingredient map[string]int
	name       map[string]nameEntry
	modifier   map[string]bool
	measure    map[string][]*Measure // by key of each name
	sizes      map[string][]*Size    // by the family of what the count gives
	class      map[string]int        // by id and by the other spellings
	ratio      map[string]int
	method     map[string]int
	step       map[string]int
	tasted     map[string][]int    // textures by the key of each word of a taster
	sign       map[string][]int    // signs by the key of each word
	ranges     map[string][]*Range // by class

	measureNames []string // each once
	opening      map[string]Opening
	fill         map[string]int
	vessel       map[string]bool // names
	heat         map[string]bool // words for the heat of an oven
	names        []string        // that an ingredient may go by
}

type nameEntry struct {
	table nameTable
	row   int
}

type nameTable int

const (
	nameIngredient nameTable = iota
	nameFruit
	nameName
)

// build makes the index anew.
func (t *Tables) build() {
	x := index{
		source:     make(map[string]int, len(t.Sources)),
		ingredient: make(map[string]int, len(t.Ingredients)),
		name:       make(map[string]nameEntry, 8*len(t.Ingredients)),
		modifier:   map[string]bool{},
		measure:    make(map[string][]*Measure, 4*len(t.Measures)),
		class:      make(map[string]int, 4*len(t.Classes)),
		ratio:      make(map[string]int, len(t.Ratios)),
		method:     make(map[string]int, len(t.Methods)),
		step:       make(map[string]int, len(t.Steps)),
		tasted:     map[string][]int{},
		sign:       map[string][]int{},
		ranges:     make(map[string][]*Range, len(t.Classes)),
	}
	for i, s := range t.Sources {
		x.source[s.ID] = i
	}
	// A conditional name is the more careful one, so it stands over a plain one.
	for i, n := range t.Names {
		for _, name := range n.Names {
			x.name[Key(name)] = nameEntry{nameName, i}
		}
	}
	add := func(name string, e nameEntry) {
		if k := Key(name); k != "" {
			if _, taken := x.name[k]; !taken {
				x.name[k] = e
			}
		}
	}
	for i, f := range t.Fruits {
		for _, name := range f.Names {
			add(name, nameEntry{nameFruit, i})
		}
	}
	for i, ing := range t.Ingredients {
		x.ingredient[ing.ID] = i
		for _, name := range ing.Also {
			add(name, nameEntry{nameIngredient, i})
		}
	}
	// Ids and full names last: they must not take a name a cook uses from another row.
	for i, ing := range t.Ingredients {
		add(ing.Name, nameEntry{nameIngredient, i})
		add(strings.ReplaceAll(ing.ID, "_", " "), nameEntry{nameIngredient, i})
	}
	for _, m := range t.Modifiers {
		for _, w := range m.Words {
			x.modifier[Key(w)] = true
		}
	}
	named := map[string]bool{}
	for i := range t.Measures {
		m := &t.Measures[i]
		seen := map[string]bool{}
		for _, name := range m.Names {
			if !named[name] {
				named[name] = true
				x.measureNames = append(x.measureNames, name)
			}
			if k := Key(name); !seen[k] {
				seen[k] = true
				x.measure[k] = append(x.measure[k], m)
			}
		}
	}
	x.sizes = make(map[string][]*Size, len(t.Sizes))
	for i := range t.Sizes {
		s := &t.Sizes[i]
		if k, ok := x.ingredient[s.Of]; ok {
			f := t.Ingredients[k].Family()
			x.sizes[f] = append(x.sizes[f], s)
		}
	}
	for i, c := range t.Classes {
		x.class[c.ID] = i
	}
	for i, c := range t.Classes {
		for _, a := range c.Also {
			if _, taken := x.class[a]; !taken {
				x.class[a] = i
			}
		}
	}
	for i, r := range t.Ratios {
		x.ratio[r.ID] = i
	}
	for i, m := range t.Methods {
		x.method[m.ID] = i
	}
	for i := range t.Ranges {
		r := &t.Ranges[i]
		x.ranges[r.Class] = append(x.ranges[r.Class], r)
	}
	for i, s := range t.Steps {
		x.step[s.ID] = i
	}
	for i, tx := range t.Textures {
		seen := map[string]bool{}
		for _, w := range append([]string{tx.ID, tx.Shown}, tx.Tasted...) {
			if k := Key(w); !seen[k] {
				seen[k] = true
				x.tasted[k] = append(x.tasted[k], i)
			}
		}
	}
	for i, s := range t.Signs {
		for _, w := range s.Words {
			x.sign[Key(w)] = append(x.sign[Key(w)], i)
		}
	}
	x.fill = map[string]int{}
	for i := range t.Fills {
		for _, w := range t.Fills[i].Words {
			k := Key(w)
			if _, taken := x.fill[k]; !taken {
				x.fill[k] = i
			}
		}
	}
	x.vessel, x.heat = map[string]bool{}, map[string]bool{}
	for i := range t.Vessels {
		for _, n := range t.Vessels[i].Names {
			x.vessel[Key(n)] = true
		}
	}
	for i := range t.Ovens {
		if t.Ovens[i].Kind == "word" {
			for _, w := range t.Ovens[i].Words {
				x.heat[Key(w)] = true
			}
		}
	}
	x.opening = x.openings()
	x.names = t.ingredientNames()
	t.index = x
}

// Source returns the work with the id.
func (t *Tables) Source(id string) (*Source, bool) {
	i, ok := t.index.source[id]
	if !ok {
		return nil, false
	}
	return &t.Sources[i], true
}

// Class returns the class with the id or one of its other spellings.
func (t *Tables) Class(id string) (*Class, bool) {
	i, ok := t.index.class[id]
	if !ok {
		return nil, false
	}
	return &t.Classes[i], true
}

// Ratio returns the ratio with the id.
func (t *Tables) Ratio(id string) (*Ratio, bool) {
	i, ok := t.index.ratio[id]
	if !ok {
		return nil, false
	}
	return &t.Ratios[i], true
}

// Method returns the token of method with the id.
func (t *Tables) Method(id string) (*Method, bool) {
	i, ok := t.index.method[id]
	if !ok {
		return nil, false
	}
	return &t.Methods[i], true
}

// Step returns the step of work with the id.
func (t *Tables) Step(id string) (*Step, bool) {
	i, ok := t.index.step[id]
	if !ok {
		return nil, false
	}
	return &t.Steps[i], true
}

// RangesOf are the published proportions of a class, by its id. The list is
// shared.
func (t *Tables) RangesOf(class string) []*Range { return t.index.ranges[class] }

// SameMeasure reports whether two names call the same measure: some row answers
// to both.
func (t *Tables) SameMeasure(a, b string) bool {
	for _, m := range t.index.measure[Key(a)] {
		if slices.Contains(t.index.measure[Key(b)], m) {
			return true
		}
	}
	return false
}

// SizesOf returns what is counted of an ingredient and its forms, by the id of the
// family. The list is shared.
func (t *Tables) SizesOf(family string) []*Size { return t.index.sizes[family] }

// MeasuresCalled returns every row of that name, whenever and wherever it held.
// The list is shared.
func (t *Tables) MeasuresCalled(name string) []*Measure { return t.index.measure[Key(name)] }

// MeasureNames lists every name of a measure once, for suggestions. The list is
// shared.
func (t *Tables) MeasureNames() []string { return t.index.measureNames }

// MeasuresKeyed reports whether any measure has a name of that key.
func (t *Tables) MeasuresKeyed(key string) bool { return len(t.index.measure[key]) > 0 }

// FillKeyed returns the id of the fill with that key.
func (t *Tables) FillKeyed(key string) (string, bool) {
	i, ok := t.index.fill[key]
	if !ok {
		return "", false
	}
	return t.Fills[i].ID, true
}

// IsVessel reports the key of a vessel's name, singular or plural.
func (t *Tables) IsVessel(name string) bool {
	single, plural := strings.CutSuffix(name, "s")
	return t.index.vessel[name] || plural && t.index.vessel[single]
}

// IsHeat reports the key of a word for the heat of an oven.
func (t *Tables) IsHeat(words string) bool { return t.index.heat[words] }
