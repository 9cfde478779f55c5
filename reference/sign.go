package reference

import (
	"slices"
	"strings"
)

// Sign is something a taster sees or feels, with the textures it points to. An
// unclear sign is a word of which one must ask what was seen.
type Sign struct {
	ID      string   `yaml:"id" sheet:"required"`
	Look    string   `yaml:"look,omitempty"`         // where on the tasting sheet, one of Looks; none = anywhere
	Words   []string `yaml:"words" sheet:"required"` // words a taster may use
	Points  []string `yaml:"points,omitempty"`       // textures as kind/id; none = a sign of nothing, known all the same
	Unclear bool     `yaml:"unclear,omitempty"`      // the word may be any of the textures: ask
	Ask     string   `yaml:"ask,omitempty"`          // what to ask, when it is unclear
	Says    string   `yaml:"says,omitempty"`         // why it points there, in a line

	Provenance `yaml:",inline"`
}

// Looks are the places of a tasting sheet, in the order they are filled in.
var Looks = []string{"cut", "wobble", "crumb", "liquid", "spoon", "mouth", "crust", "rim", "centre", "top", "base"}

// Cause is why a change moves a texture, or what may bring a texture about
// that no formula tells.
type Cause struct {
	ID string `yaml:"id" sheet:"required"`
	// Change is the change that is explained, by its id; empty for a cause
	// outside the formula.
	Change string `yaml:"change,omitempty"`
	// Textures are those it brings about, as kind/id.
	Textures []string `yaml:"textures" sheet:"required"`
	Kind     string   `yaml:"kind" sheet:"required"` // one of CauseKinds
	What     string   `yaml:"what,omitempty"`        // a cause outside the formula, as it is named
	Says     string   `yaml:"says" sheet:"required"` // the mechanism in two plain sentences
	// Fire is heated where it holds only of what something heats, cold where only
	// of what nothing does, jelly where only of that with gelatine or isinglass to
	// set it; empty where it holds of any.
	Fire string `yaml:"fire,omitempty"`

	Provenance `yaml:",inline"`
}

// CauseKinds are what a cause may lie in.
var CauseKinds = []string{"formula", "method", "oven", "handling", "ingredients"}

// Texture finds a texture by its kind of part and its id.
func (t *Tables) Texture(kind, id string) (*Texture, bool) {
	for i := range t.Textures {
		if x := &t.Textures[i]; x.ID == id && x.Kind == kind {
			return x, true
		}
	}
	return nil, false
}

// TextureNamed finds a texture by "kind/id", as signs and causes name it.
func (t *Tables) TextureNamed(name string) (*Texture, bool) {
	for i := range t.Textures {
		if x := &t.Textures[i]; x.Kind+"/"+x.ID == name {
			return x, true
		}
	}
	return nil, false
}

// Tasted is what a taster's word turned out to mean.
type Tasted struct {
	Textures []*Texture // those it points to; of two kinds of part when it may be either
	Sign     *Sign      // the sign it was taken for, nil when it is the name of a texture
	Words    string     // the words that were known
	Unclear  bool       // it must be asked what was seen
}

// TastedAs finds what a word or a few words of a taster mean, on a place of the
// tasting sheet (empty for none) of a dish with parts of the kinds. Words known
// whole come first; else the longest known words among them count, unless they
// are denied ("no holes"). It reports false when nothing of them is known.
func (t *Tables) TastedAs(words, look string, kinds []string) (Tasted, bool) {
	all := Words(words)
	for length := len(all); length > 0; length-- {
		for from := 0; from+length <= len(all); from++ {
			if length < len(all) && denied(all[:from]) {
				continue
			}
			if got, ok := t.tastedWhole(strings.Join(all[from:from+length], " "), look, kinds); ok {
				got.Words = strings.Join(all[from:from+length], " ")
				return got, true
			}
		}
	}
	return Tasted{}, false
}

// denials turn the word after them round.
var denials = []string{"no", "not", "without", "never", "hardly", "neither", "nor", "nothing"}

func denied(before []string) bool {
	return slices.ContainsFunc(before, func(w string) bool { return slices.Contains(denials, w) })
}

func (t *Tables) tastedWhole(key, look string, kinds []string) (Tasted, bool) {
	// A sign of the place is nearer than a sign of any place.
	places := []string{look, ""}
	if look == "" {
		places = places[:1]
	}
	for _, place := range places {
		for _, i := range t.index.sign[key] {
			s := &t.Signs[i]
			if s.Look != place {
				continue
			}
			got := Tasted{Sign: s, Unclear: s.Unclear}
			for _, name := range s.Points {
				if x, ok := t.TextureNamed(name); ok && slices.Contains(kinds, x.Kind) {
					got.Textures = append(got.Textures, x)
				}
			}
			if len(got.Textures) == 0 && len(s.Points) > 0 {
				continue // a sign of a part the dish has not
			}
			got.Unclear = s.Unclear && len(got.Textures) > 1
			return got, true
		}
	}
	var got Tasted
	for _, i := range t.index.tasted[key] {
		if x := &t.Textures[i]; slices.Contains(kinds, x.Kind) {
			got.Textures = append(got.Textures, x)
		}
	}
	if len(got.Textures) > 0 {
		return got, true
	}
	// A sign of another place is better than none.
	for _, i := range t.index.sign[key] {
		s := &t.Signs[i]
		if s.Look == look || s.Look == "" || len(s.Points) == 0 || look == "" && !strings.Contains(key, " ") {
			continue // one word by itself ("none", "wet") hangs on its place
		}
		got := Tasted{Sign: s}
		for _, name := range s.Points {
			if x, ok := t.TextureNamed(name); ok && slices.Contains(kinds, x.Kind) {
				got.Textures = append(got.Textures, x)
			}
		}
		if len(got.Textures) > 0 {
			got.Unclear = s.Unclear && len(got.Textures) > 1
			return got, true
		}
	}
	return Tasted{}, false
}

// TastedWords are all words a taster may use of parts of the kinds, for
// suggestions.
func (t *Tables) TastedWords(kinds []string) []string {
	var out []string
	for i := range t.Textures {
		if x := &t.Textures[i]; slices.Contains(kinds, x.Kind) {
			out = append(append(out, x.ID), x.Tasted...)
		}
	}
	for i := range t.Signs {
		out = append(out, t.Signs[i].Words...)
	}
	return out
}
