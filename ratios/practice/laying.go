package practice

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// Lay is how a paste is laid: as the file says, else as the words say, by the
// title or by the kind of paste; where nothing tells, it is taken as a lining if
// the dish has a filling. Empty where it has none.
func (d *Dish) Lay(i int) string {
	if lay := d.LaidBy(i); lay != "" {
		return lay
	}
	if d.filling() < 0 {
		return ""
	}
	return "lining"
}

// LaidBy is how the file, the words, the title or the kind of paste tell that
// paste i is laid, empty when nothing tells it.
func (d *Dish) LaidBy(i int) string {
	p := &d.Formula.Parts[i]
	if p.Lay != "" {
		return p.Lay
	}
	if p.Kind != formula.Pastry || d.filling() < 0 {
		return ""
	}
	if lay := layOf(d.laidIn(i)); lay != "" {
		return lay
	}
	if d.any("rim_only", "") {
		return "rim"
	}
	title := reference.Words(d.Formula.Title)
	for _, name := range named {
		if slices.ContainsFunc(title, func(w string) bool { return slices.Contains(name.words, w) }) {
			return name.lay
		}
	}
	if d.raisedClass(p) {
		return "raised"
	}
	return ""
}

// named are names of dishes by which a paste is known to be laid.
var named = []struct {
	lay   string
	words []string
}{
	{"raised", []string{"raised", "standing"}},
	{"folded", []string{"turnover", "turnovers", "pasty", "pasties", "puffs"}},
	{"patty", []string{"patty", "patties", "tartlet", "tartlets", "cheesecakes", "maids"}},
}

// raisedClass reports a paste that is made to stand by itself.
func (d *Dish) raisedClass(p *formula.Part) bool {
	return p.Class == "hot-water" || p.Class == "period-raised-paste"
}

// laidIn are the ways of laying told by the words about paste i: those of its
// own steps, and of the other parts' where they name a paste.
func (d *Dish) laidIn(i int) map[string]bool {
	told := map[string]bool{}
	for j := range d.Formula.Parts {
		p := &d.Formula.Parts[j]
		if j != i && p.Kind == formula.Pastry {
			continue // another paste
		}
		for _, step := range p.Steps {
			for _, clause := range strings.FieldsFunc(step, func(r rune) bool { return r == '.' || r == ';' || r == ':' }) {
				readLaying(reference.Words(clause), j == i, told)
			}
		}
	}
	return told
}

// layOf is the way of laying that the ways told come to together.
func layOf(told map[string]bool) string {
	for _, lay := range []string{"raised", "folded", "patty"} {
		if told[lay] {
			return lay
		}
	}
	switch {
	case told["lining"] && told["lid"]:
		return "lining and lid"
	case told["lining"]:
		return "lining"
	case told["lid"]:
		return "lid" // a strip round the edge goes under it
	case told["rim"]:
		return "rim"
	}
	return ""
}

// readLaying adds the ways of laying that one clause tells. A clause of the
// paste's own steps need not name it.
func readLaying(words []string, own bool, told map[string]bool) {
	has := func(list ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(list, w) })
	}
	paste := has("paste", "pastes", "crust", "crusts", "pastry")
	if has("paper", "butter", "lard", "sheet") && !paste {
		return // a dish lined with paper, a paste folded over its butter
	}
	speaks := paste || own
	making := has("butter", "lard", "times", "again", "thirds", "roll", "rolled") && !has("half", "filling", "fruit", "edge", "edges")
	switch {
	case has("turnover", "turnovers"), speaks && !making && has("over") && has(folding...) && has("fold", "folded", "half", "paste", "crust", "edge", "edges", "side", "sides"):
		told["folded"] = true
	case speaks && has("raise", "raised", "raising") && has("paste", "crust", "pie", "pies", "case", "cases", "wall", "walls", "side", "sides", "coffin", "it", "hand"), has("coffin"):
		told["raised"] = true
	case has("pattypans", "pattypan", "patty") && (speaks || has("line", "lined")):
		told["patty"] = true
	}
	rim := has("rim", "edge", "edges", "border") && (paste || has("strip", "border"))
	switch {
	case speaks && has("line", "lined", "lining") && !rim, paste && has("bottom", "under", "underneath") && !has("no", "without"):
		told["lining"] = true
	case rim && has("round", "around", "border", "strip") && speaks:
		told["rim"] = true
	}
	if has("without", "uncovered") {
		return
	}
	if has("lid") || has("top", "upper") && has("crust", "crusts", "paste") && !has("no") || speaks && coversFilling(words) {
		told["lid"] = true
	}
}

// coversFilling reports words that have a paste over what is in the dish: "cover
// it with paste", "lay the paste over". To cover a dish is to line it in many
// old books, so those words tell nothing.
func coversFilling(words []string) bool {
	for i, w := range words {
		switch w {
		case "cover", "covered", "covering":
			with := slices.Index(words[i:], "with")
			if with < 0 {
				continue
			}
			if at := words[i+with:]; !slices.ContainsFunc(at[:min(len(at), 6)], func(w string) bool { return slices.Contains([]string{"paste", "crust", "pastry"}, w) }) {
				continue
			}
			return !slices.ContainsFunc(words[i:i+with], func(w string) bool { return slices.Contains(vessels, w) })
		case "lay", "laid", "put", "spread":
			over := slices.Index(words[i:], "over")
			if over <= 0 || !slices.ContainsFunc(words[i:i+over], func(w string) bool { return slices.Contains([]string{"paste", "crust", "pastry", "it"}, w) }) {
				continue
			}
			return !slices.ContainsFunc(words[i+over:], func(w string) bool { return slices.Contains(vessels, w) })
		}
	}
	return false
}

// vessels are what a paste that covers them lines.
var vessels = []string{"dish", "dishes", "plate", "plates", "tin", "tins", "pan", "pans", "pattypans", "bottom", "mould", "moulds"}

// tellsLaid reports that the words say how the paste goes into the dish.
func tellsLaid(steps []string) bool {
	return slices.ContainsFunc(steps, func(step string) bool {
		return slices.ContainsFunc(strings.FieldsFunc(step, func(r rune) bool { return r == '.' || r == ';' || r == ':' }), Lays)
	})
}

// Lays reports whether the words of one sentence say that a paste is laid in or on its dish, or
// raised.
func Lays(step string) bool {
	words := reference.Words(step)
	if slices.Contains(words, "over") && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(folding, w) }) {
		return true
	}
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(laying, w) }) &&
		!slices.Contains(words, "flour") && !slices.Contains(words, "butter")
}

// folding are words of closing a paste over its filling, with "over".
var folding = []string{"fold", "folded", "double", "doubled", "turn", "turned"}

// laying are words of laying a paste.
var laying = []string{"line", "lined", "lining", "raise", "raised", "rim", "border", "edge", "patty", "patties", "coffin"}
