package judge

import (
	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// surely is the share below which no texture is called the likeliest without
// a word of doubt.
const surely = .60

// Thresholds of the words and grades: "may" and watch from a quarter, "likely"
// and decide from a half.
const (
	May        = .25
	LikelyFrom = .50
	// HeatFrom is where the caution about careless heat is printed.
	HeatFrom = .35
)

// shownAs is the texture a kernel's texture counts as. The evidence cannot
// tell flaky from tender, so they are reported together as sound.
func shownAs(id string) string {
	if id == "flaky" || id == "tender" {
		return "sound"
	}
	return id
}

// textureOf turns the readings of a part into shares.
func textureOf(k *bake.Kernel, r *readings.Result, t *reference.Tables) *Texture {
	if len(k.Textures) == 0 {
		return nil
	}
	shares := Sum(k.Textures, r.Shares)
	out := &Texture{Heat: r.Heat}
	best := -1.0
	for i := range t.Textures {
		x := &t.Textures[i]
		if !x.Judged || x.Kind != string(k.Kind) {
			continue
		}
		s := shares[x.ID]
		out.Shares = append(out.Shares, Share{Texture: x, Share: s})
		if s > best {
			best, out.Likeliest = s, x.ID
		}
	}
	out.Undecided = best < surely
	for _, l := range t.Links {
		if l.Kind == string(k.Kind) && l.ID == out.Likeliest {
			out.Said, out.Right = l.Said, l.Right
		}
	}
	out.Word = word(k, out.Likeliest, r)
	return out
}

// Sum adds up a kernel's shares by the textures they are shown as.
func Sum(textures []string, shares []float64) map[string]float64 {
	out := map[string]float64{}
	for i, id := range textures {
		out[shownAs(id)] += shares[i]
	}
	return out
}

// Limits of the words beside a share: how firm a set is by the set index (four
// eggs to the pint, to turn out, are 1.6; over 4 is firm), how a sound paste
// eats by the fat left in layers.
const (
	tenderSet = 1.2
	firmSet   = 3.0
	flakyFat  = .123
)

// word says what the evidence cannot put a share on: how firm a set, whether a
// sound paste is flaky or tender. Sandy is said of rich sweet paste, as meant.
func word(k *bake.Kernel, likeliest string, r *readings.Result) string {
	kind := k.Kind
	switch {
	case kind == formula.Filling && likeliest == "sets":
		switch s := r.Measures[bake.SetIndex].Likely; {
		case s < tenderSet:
			return "tender"
		case s > firmSet:
			return "firm"
		}
		return "smooth"
	case kind == formula.Pastry && likeliest == "sound":
		if r.Measures[bake.FlakyIndex].Likely >= flakyFat {
			return "flaky"
		}
		return "tender"
	}
	return ""
}
