package judge

import (
	"slices"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/reference"
)

// LikelyMeant is the class whose habits are taken where the receipt is silent,
// nil when none is known.
func LikelyMeant(fit *ClassFit) *reference.Class { return likelyMeant(fit) }

// ShownAs is the texture a kernel's texture counts as.
func ShownAs(id string) string { return shownAs(id) }

// Fitting is a remedy that makes sense for a part, not yet tried.
type Fitting struct {
	Text    string
	Touches string // of those that touch one thing only one is done; empty for amounts
	Change  change.Change
}

// FittingFor lists the remedies a cook might take against a texture of the part,
// in the order they are offered.
func FittingFor(in bake.Input, k *bake.Kernel, texture string) []Fitting {
	s := situationOf(in, k)
	var out []Fitting
	for _, rem := range remedies {
		if slices.Contains(rem.against, texture) && (rem.fits == nil || rem.fits(s)) {
			out = append(out, Fitting{rem.text, rem.touches, rem.change})
		}
	}
	return out
}

// Lined reports whether the part is put in a dish lined with paste: then no cook
// stands it in a bath of water.
func Lined(in bake.Input) bool {
	return slices.ContainsFunc(in.Weighed.Formula.Parts, func(p formula.Part) bool { return p.Kind == formula.Pastry }) ||
		in.Method.Has("stands_in_crust")
}
