package judge

import (
	"fmt"
	"math"
	"strconv"

	"assize/formula"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/ratios/setting"
	"assize/reference"
)

// textureFindings are the findings that rest on computed indices: the faults
// the shares speak of, and those told by an index alone.
func (j *Judge) textureFindings(in bake.Input, k *bake.Kernel, p *Part, r *readings.Result, o readings.Options) []Finding {
	var out []Finding
	meant := ""
	if p.Class != nil {
		meant = p.Class.Class.Meant
	}
	for _, s := range p.Texture.Shares {
		if !s.Texture.Fault || s.Texture.ID == meant || s.Share < May || s.Texture.ID == "crumbly" && sandy(in, k) {
			continue
		}
		f := Finding{
			Code: s.Texture.Finding, Part: p.Name, Grade: gradeOf(s.Share), Share: s.Share,
			Says: s.Texture.Shown, Because: j.because(s.Texture.ID, p, r),
		}
		if j.Remedies {
			f.Remedies = j.remedies(in, k, s.Texture.ID, r, o)
		}
		out = append(out, f)
	}
	if p.Texture.Heat >= HeatFrom && k.Kind == formula.Filling {
		out = append(out, Finding{
			Code: "heat-care", Part: p.Name, Share: p.Texture.Heat,
			Says:    "a fierce fire could curdle or toughen it: keep the heat gentle and take it off while the centre still trembles",
			Because: []Evidence{j.mechanism("heat", "room between set and curdled, in careful hands", "", fmt.Sprintf("%.0f C", r.Measures[bake.CurdleMargin].Likely), "low")},
		})
	}
	return append(out, j.indexFindings(in, k, p, r)...)
}

// sandy reports a paste that is meant to fall to crumbs in the mouth: sugar
// from a quarter of its flour, or oil pressed into the dish.
func sandy(in bake.Input, k *bake.Kernel) bool {
	m := k.LikelyMix()
	flour := m.FlourAndMeal() + m[ratios.Nut]
	return m[ratios.Sugar] >= .25*flour || m[ratios.Oil] > .5*m[ratios.WrittenFat] && in.Method.Has("pressed")
}

func gradeOf(share float64) Grade {
	if share >= LikelyFrom {
		return Decide
	}
	return Watch
}

// mechanism is evidence from a computed index, with the work it rests on.
func (j *Judge) mechanism(link, what, limit, value, confidence string) Evidence {
	e := Evidence{What: what, Value: value, Limit: limit, Layer: LayerMechanism, Confidence: confidence}
	for _, l := range j.Tables.Links {
		if l.ID == link {
			if s, ok := j.Tables.Source(l.Source); ok {
				e.Source, e.Locator = s, l.Locator
			}
		}
	}
	return e
}

// because names the figures behind a texture's share.
func (j *Judge) because(texture string, p *Part, r *readings.Result) []Evidence {
	figure := func(m bake.Measure, unit string) string {
		s := r.Measures[m]
		likely, low, high := twoFigures(s.Likely), twoFigures(s.Low), twoFigures(s.High)
		if low == high {
			return likely + unit
		}
		return fmt.Sprintf("%s%s (%s to %s)", likely, unit, low, high)
	}
	switch texture {
	case "cakey":
		return []Evidence{
			j.mechanism("cakey", "air beaten in, of the volume", "from about 10 in 100 it shows as crumb", figure(bake.Air, " in 100"), "medium"),
			j.mechanism("cakey", "flour and egg to fix the air (1 is plenty)", "from about 1", figure(bake.Structure, ""), "medium"),
			j.mechanism("cakey", "liquid added, to the water in the eggs", "a custard has 3 to 6", figure(bake.AddedLiquid, ""), "medium"),
		}
	case "thin":
		return []Evidence{j.mechanism("thin", "set, against what the dish needs", figure(bake.Need, ""), figure(bake.SetIndex, ""), "low")}
	case "curdy":
		return []Evidence{j.mechanism("curdy", "degrees between set and curdled, in careful hands", "under 0 it curdles", figure(bake.CurdleMargin, " C"), "low")}
	case "rubbery":
		return []Evidence{j.mechanism("rubbery", "set from egg and starch", "from about 6 it is rubbery or gummy", figure(bake.SetIndex, ""), "low")}
	case "tough":
		return []Evidence{
			j.mechanism("tough", "fat to flour, pure", "under about 0.3 a paste hardens", figure(bake.PureFat, ""), "medium"),
			j.mechanism("tough", "toughness (1 is an English short paste)", "from about 2.3", figure(bake.Toughness, ""), "medium"),
		}
	case "crumbly":
		return []Evidence{j.mechanism("crumbly", "water that reaches the flour, to one of flour", "under about 0.14 it falls apart", figure(bake.NetWater, ""), "low")}
	case "greasy":
		return []Evidence{j.mechanism("greasy", "fat to flour, pure", "over about 0.8, worked right in", figure(bake.PureFat, ""), "low")}
	}
	return nil
}

// twoFigures writes a measure as finely as the mechanisms know it.
func twoFigures(v float64) string {
	size := math.Floor(math.Log10(math.Abs(v)))
	if v == 0 || size > 0 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', 1-int(max(size, -1)), 64)
}

// Limits of the findings told by an index alone, without a share.
const (
	oilyFat        = 25.0 // per cent butterfat in a filling without starch
	gummyFlour     = 15.0 // per cent flour and crumb
	gummyAir       = 3.0  // per cent of the volume
	partsLiquid    = 2.0  // added liquid to the water of the eggs, whites folded in
	grains         = 1.0  // sugar against what the water holds
	lateStarch     = 55.0 // per cent sugar in the water at which starch swells late
	minimumToBlame = 1.0
)

// indexFindings are risks told by an index without a share: at most watch.
func (j *Judge) indexFindings(in bake.Input, k *bake.Kernel, p *Part, r *readings.Result) []Finding {
	if k.Kind != formula.Filling {
		return pasteWords(in, p)
	}
	var out []Finding
	add := func(code, says string, e Evidence) {
		out = append(out, Finding{Code: code, Part: p.Name, Grade: Watch, Says: says, Because: []Evidence{e}})
	}
	at := func(m bake.Measure) float64 { return r.Measures[m].Likely }
	fire := bake.FireOf(&in.Method)
	if j.Rules.TwoLayers && in.Method.Has("whites_folded") && at(bake.AddedLiquid) >= partsLiquid {
		says := "will part in the oven: sponge above, sauce below"
		if at(bake.SetIndex) < at(bake.Need) {
			says += "; the sauce stays loose"
		}
		out = append(out, Finding{Code: "parts", Part: p.Name, Grade: Note, Says: says, Because: []Evidence{
			j.mechanism("cakey", "liquid added, to the water in the eggs, with whites folded in", "from 2", fmt.Sprintf("%.1f", at(bake.AddedLiquid)), "medium"),
		}})
	}
	if j.Rules.GreasyFilling && at(bake.FatShare) > oilyFat && at(bake.StarchShare) < minimumToBlame && !in.Method.Has("creamed") {
		add("oily", "may let its butter go and eat oily", j.mechanism("greasy", "fat in the whole, with no starch to hold it", "over 25 in 100", fmt.Sprintf("%.0f in 100", at(bake.FatShare)), "low"))
	}
	if j.Rules.HeavyBatter && at(bake.Floury) >= gummyFlour && at(bake.Air) < gummyAir {
		add("heavy", "may eat heavy or gummy: much flour and no air in it", j.mechanism("rubbery", "flour and crumb, of the whole", "15 in 100 with hardly any air", fmt.Sprintf("%.0f in 100", at(bake.Floury)), "low"))
	}
	if at(bake.Saturation) > grains {
		add("grainy", "holds more sugar than its water can: it may grain on standing", j.mechanism("thin", "sugar against what the water holds at 20 C", "over 1", fmt.Sprintf("%.2f", at(bake.Saturation)), "high"))
	}
	if at(bake.SugarShare) > lateStarch && at(bake.StarchIndex) > .3 {
		add("starch-thin", "starch swells late in so much sugar: cook it in part of the liquid before all the sugar goes in", j.mechanism("starch-set", "sugar in the water phase", "over 55 in 100", fmt.Sprintf("%.0f in 100", at(bake.SugarShare)), "medium"))
	}
	if mix := k.LikelyMix(); fire.Stove && setting.Amylase(&mix, in.Method.Has("starch_boiled")) {
		add("starch-thin", "bring it to the boil once the yolks are in, or it may thin on standing", j.mechanism("starch-set", "yolk with starch, and no word of a boil", "85 C and over", "not said", "medium"))
	}
	return out
}

// pasteWords are the faults of a paste told by the words of its method; they
// have no share.
func pasteWords(in bake.Input, p *Part) []Finding {
	var out []Finding
	m := &in.Method
	add := func(code, says, what string) {
		out = append(out, Finding{Code: code, Part: p.Name, Grade: Watch, Says: says, Because: []Evidence{
			{What: what, Value: "said in the receipt", Layer: LayerPractice, Confidence: "medium"},
		}})
	}
	switch {
	case m.Has("raw_case"):
		add("soggy-base", "the case goes in raw under a wet filling: its base may stay soggy", "a case filled raw")
	case m.Has("warm_filling", "juicy_filling"):
		add("soggy-base", "a warm or juicy filling on raw paste: its base may stay soggy", "a warm or juicy filling")
	case m.Has("cool_oven"):
		add("soggy-base", "too cool an oven leaves the base soggy", "a cool oven")
	}
	turns := m.Has("laminated", "folded_turns", "flakes")
	if turns && m.Has("melted_fat") || m.Has("beaten_with_roller") {
		add("heavy", "may come out heavy: the layers are lost", "melted fat or beating in a layered paste")
	}
	if m.Has("blind_no_weights") || m.Has("blind_baked") && !m.Has("rested") && p.Measures[bake.WorkedWater.String()].Likely > .28 {
		add("shrinks", "may shrink from the sides: it is baked empty with much water in it and no rest or weights", "baked empty, unweighted or unrested")
	}
	return out
}

// sourceOf finds a work by its id, nil when there is none.
func sourceOf(t *reference.Tables, id string) *reference.Source {
	s, ok := t.Source(id)
	if !ok {
		return nil
	}
	return s
}
