package reference

import "strings"

// Opening is what in the tables begins with a word: of each sort of name how many
// words the longest has that does, 0 when none does.
type Opening struct {
	Name    uint8 // of an ingredient; the word may be the plural of theirs
	Measure uint8
	Fill    uint8
	Aside   uint8 // words that say nothing of what a thing is
	Vessel  uint8 // the word may be the plural of theirs
}

// Opening returns what begins with a word, which is written as words are compared.
func (t *Tables) Opening(word string) Opening { return t.index.opening[word] }

// openings puts together what begins with each word.
func (x *index) openings() map[string]Opening {
	out := make(map[string]Opening, 4*len(x.name)/3)
	longer := func(key string, of func(*Opening) *uint8, forms ...string) {
		first, _, _ := strings.Cut(key, " ")
		n := uint8(min(strings.Count(key, " ")+1, 255))
		for _, w := range append(forms, first) {
			o := out[w]
			if at := of(&o); *at < n {
				*at = n
				out[w] = o
			}
		}
	}
	for k := range x.name {
		first, _, _ := strings.Cut(k, " ")
		forms := []string{first + "s", first + "es"}
		if stem, ok := strings.CutSuffix(first, "y"); ok {
			forms = append(forms, stem+"ies")
		}
		longer(k, func(o *Opening) *uint8 { return &o.Name }, forms...)
	}
	for k := range x.measure {
		longer(k, func(o *Opening) *uint8 { return &o.Measure })
	}
	for k := range x.fill {
		longer(k, func(o *Opening) *uint8 { return &o.Fill })
	}
	for k := range x.modifier {
		longer(k, func(o *Opening) *uint8 { return &o.Aside })
	}
	for k := range x.vessel {
		first, _, _ := strings.Cut(k, " ")
		longer(k, func(o *Opening) *uint8 { return &o.Vessel }, first+"s")
	}
	return out
}
