package variant

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/reference"
)

// goal is what a variant of one part has to meet.
type goal struct {
	part    int
	class   *reference.Class // nil when no ranges are to be met
	against []string         // textures to be brought under judge.May
	meant   string           // texture that is no fault here
}

func goalOf(j *judge.Judge, before *judge.Report, w Wish) (goal, error) {
	g := goal{part: -1}
	f := before.Formula
	if w.Most < 0 || w.Most > Most {
		return g, &Problem{What: fmt.Sprintf("%d ingredients cannot be changed", w.Most), Known: nil}
	}
	if w.Part != "" {
		var names []string
		for i := range f.Parts {
			names = append(names, f.Parts[i].Name)
			if strings.EqualFold(f.Parts[i].Name, w.Part) {
				g.part = i
			}
		}
		if g.part < 0 {
			return g, &Problem{What: fmt.Sprintf("the receipt has no part %q", w.Part), Word: w.Part, Known: names}
		}
	}
	if w.To != "" {
		c, err := classCalled(j.Tables, w.To)
		if err != nil {
			return g, err
		}
		g.class = c
		if g.part < 0 {
			g.part = slices.IndexFunc(f.Parts, func(p formula.Part) bool { return string(p.Kind) == c.Kind })
		}
		if g.part < 0 || string(f.Parts[g.part].Kind) != c.Kind {
			return g, &Problem{What: fmt.Sprintf("%s is %s, and the receipt has none to bring into it", c.Name, formula.Kind(c.Kind).A())}
		}
	}
	asked, err := textures(j.Tables, w.Against)
	if err != nil {
		return g, err
	}
	if g.part < 0 {
		g.part = partFor(before, asked)
	}
	kind := f.Parts[g.part].Kind
	if !bake.Judged(kind) && g.class == nil {
		return g, &Problem{What: fmt.Sprintf("how %s turns out is not judged yet, so that nothing can be answered; name a class to bring it into", kind.A())}
	}
	if p := &before.Parts[g.part]; len(asked) > 0 && p.Texture == nil && bake.Judged(kind) {
		return g, &Problem{What: fmt.Sprintf("how the %s turns out is not foretold, since nothing in it is there to set; nothing can be answered", p.Name)}
	}
	if c, ok := j.Tables.Class(f.Parts[g.part].Class); ok && g.class == nil && len(w.Against) == 0 {
		g.class = c
	}
	g.meant = meant(before, &g)
	for _, x := range asked {
		if x.Kind == string(kind) && !slices.Contains(g.against, x.ID) {
			g.against = append(g.against, x.ID)
		}
	}
	if slices.Contains(g.against, g.meant) {
		g.meant = "" // whoever asks to be rid of it does not mean it
	}
	if len(asked) > 0 && len(g.against) == 0 {
		return g, &Problem{What: fmt.Sprintf("%s cannot come out %s", kind.A(), w.Against[0]), Word: w.Against[0], Known: faultWords(j.Tables, string(kind))}
	}
	return g, nil
}

// meant is the texture that is no fault: that of the class asked for, else of
// the class the part was found to belong to.
func meant(before *judge.Report, g *goal) string {
	if g.class != nil {
		return g.class.Meant
	}
	if c := before.Parts[g.part].Class; c != nil {
		return c.Class.Meant
	}
	return ""
}

func warned(before *judge.Report, part string, x *reference.Texture) bool {
	return slices.ContainsFunc(before.Findings, func(f judge.Finding) bool { return f.Part == part && f.Code == x.Finding })
}

// partFor is the part to work on when none is named: of those that could have one
// of the textures asked for the one likeliest to, else the first that was warned
// of, else the first that is judged; fillings before pastes.
func partFor(before *judge.Report, asked []*reference.Texture) int {
	var order []int
	for _, fillings := range []bool{true, false} {
		for i := range before.Parts {
			if (before.Parts[i].Kind == formula.Filling) == fillings {
				order = append(order, i)
			}
		}
	}
	best, most := -1, 0.0
	for _, i := range order {
		p := &before.Parts[i]
		for _, x := range asked {
			if x.Kind != string(p.Kind) {
				continue
			}
			share := 0.0
			if p.Texture != nil {
				share = shareOf(p.Texture, x.ID)
			}
			if best < 0 || share > most && share >= judge.May {
				best, most = i, share
			}
		}
	}
	if best >= 0 {
		return best
	}
	for _, i := range order {
		p := &before.Parts[i]
		if p.Texture != nil && slices.ContainsFunc(p.Texture.Shares, func(s judge.Share) bool {
			return s.Texture.Fault && s.Share >= judge.May && warned(before, p.Name, s.Texture)
		}) {
			return i
		}
	}
	for _, i := range order {
		if before.Parts[i].Texture != nil {
			return i
		}
	}
	return order[0]
}

func shareOf(t *judge.Texture, id string) float64 {
	i := slices.IndexFunc(t.Shares, func(s judge.Share) bool { return s.Texture.ID == id })
	if i < 0 {
		return 0
	}
	return t.Shares[i].Share
}

func classCalled(t *reference.Tables, word string) (*reference.Class, error) {
	key := func(s string) string { return strings.NewReplacer(" ", "-", "_", "-").Replace(strings.ToLower(s)) }
	var known []string
	for i := range t.Classes {
		c := &t.Classes[i]
		known = append(known, c.ID)
		if key(c.ID) == key(word) || key(c.Name) == key(word) || slices.ContainsFunc(c.Also, func(a string) bool { return key(a) == key(word) }) {
			return c, nil
		}
	}
	return nil, &Problem{What: fmt.Sprintf("no class is called %q", word), Word: word, Known: known}
}

// textures are the faults a person names by id, finding or word of the tasting.
func textures(t *reference.Tables, words []string) ([]*reference.Texture, error) {
	var out []*reference.Texture
	for _, w := range words {
		key := reference.Key(w)
		n := len(out)
		for i := range t.Textures {
			x := judged(t, &t.Textures[i])
			if x == nil || !x.Fault {
				continue
			}
			if x := &t.Textures[i]; key == reference.Key(x.ID) || key == reference.Key(x.Finding) ||
				slices.ContainsFunc(x.Tasted, func(s string) bool { return reference.Key(s) == key }) {
				out = append(out, judged(t, x))
			}
		}
		if len(out) == n {
			return nil, &Problem{What: fmt.Sprintf("%q is no fault that is judged", w), Word: w, Known: faultWords(t, "")}
		}
	}
	return out, nil
}

// judged is the texture a finer one counts as, itself when it is judged, nil
// when it counts as none.
func judged(t *reference.Tables, x *reference.Texture) *reference.Texture {
	if x.Judged {
		return x
	}
	for i := range t.Textures {
		if y := &t.Textures[i]; y.Judged && y.Kind == x.Kind && y.ID == x.Counts {
			return y
		}
	}
	return nil
}

func faultWords(t *reference.Tables, kind string) []string {
	var out []string
	for _, x := range t.Textures {
		if x.Judged && x.Fault && (kind == "" || x.Kind == kind) {
			out = append(out, x.ID)
		}
	}
	return out
}
