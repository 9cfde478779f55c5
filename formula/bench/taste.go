package bench

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
	"assize/reference/spell"
)

// Trouble is a taster's word that cannot be taken for anything, or for more
// than one thing: then the hint asks what was seen.
type Trouble struct {
	What, Hint string

	may  []*reference.Texture // what an unclear word may be
	sign Sign
}

// Error is what is wrong.
func (t *Trouble) Error() string { return t.What }

// Taste takes a taster's words on a place of the tasting sheet (empty for
// none) for signs of the formula's parts. Several are parted by commas; "paste:
// tough" says which part is meant.
func Taste(words, look string, f *formula.Formula, t *reference.Tables) ([]Sign, *Trouble) {
	var out []Sign
	var asked []*Trouble
	for piece := range strings.SplitSeq(words, ",") {
		if piece = strings.TrimSpace(piece); piece == "" {
			continue
		}
		s, trouble := taste(piece, look, f, t)
		switch {
		case trouble == nil:
			out = append(out, s)
		case len(trouble.may) == 0:
			return nil, trouble
		default:
			asked = append(asked, trouble)
		}
	}
	// What is asked of an unclear word may be answered by another beside it:
	// "springs back, full of holes".
	for _, q := range asked {
		i := slices.IndexFunc(out, func(s Sign) bool {
			return slices.ContainsFunc(q.may, func(x *reference.Texture) bool {
				return x.ID == s.Texture && x.Kind == string(f.Parts[s.Part].Kind)
			})
		})
		if i < 0 {
			return nil, q
		}
		q.sign.Part, q.sign.Texture = out[i].Part, out[i].Texture
		out = append(out, q.sign)
	}
	return out, nil
}

func taste(piece, look string, f *formula.Formula, t *reference.Tables) (Sign, *Trouble) {
	s := Sign{Look: look, Words: piece, Part: -1}
	parts := tastable(f)
	if len(parts) == 0 {
		return s, &Trouble{What: "nothing in this receipt is told by tasting yet", Hint: "textures of fillings and pastes are known; write it under `words`, which is kept as it stands"}
	}
	if before, after, ok := strings.Cut(piece, ":"); ok {
		i := slices.IndexFunc(parts, func(i int) bool {
			p := &f.Parts[i]
			return reference.Key(p.Name) == reference.Key(before) || string(p.Kind) == reference.Key(before)
		})
		if i < 0 {
			return s, &Trouble{What: fmt.Sprintf("there is no part %q to taste", strings.TrimSpace(before)), Hint: "the parts are " + strings.Join(namesOf(f, parts), ", ")}
		}
		parts, piece = parts[i:i+1], strings.TrimSpace(after)
	}
	return read(s, piece, look, f, parts, t)
}

// read takes a piece for a sign of one of the parts. On the tasting sheet the
// crust and the base are looked at for the paste first, all else for the
// filling; a word given by itself that fits both must be told apart.
func read(s Sign, piece, look string, f *formula.Formula, parts []int, t *reference.Tables) (Sign, *Trouble) {
	kinds := kindsOf(f, parts, look)
	tried := [][]string{kinds}
	if look != "" {
		tried = nil
		for _, k := range kinds {
			tried = append(tried, []string{k})
		}
	}
	for _, some := range tried {
		got, ok := t.TastedAs(piece, look, some)
		if !ok {
			continue
		}
		if got.Sign != nil {
			s.Row = got.Sign.ID
		}
		switch {
		case got.Unclear:
			return s, &Trouble{What: fmt.Sprintf("%q may mean more than one thing", piece), Hint: got.Sign.Ask + " Write " + named(got.Textures), may: got.Textures, sign: s}
		case len(got.Textures) == 0:
			return s, nil
		case twoKinds(got.Textures):
			return s, &Trouble{What: fmt.Sprintf("%q may be said of either part", piece), Hint: "write " + either(piece, f, parts, got.Textures)}
		}
		x := got.Textures[0]
		s.Texture = x.ID
		s.Part = parts[slices.IndexFunc(parts, func(i int) bool { return string(f.Parts[i].Kind) == x.Kind })]
		return s, nil
	}
	hint := spell.Ask(strings.ToLower(piece), t.TastedWords(kinds))
	if hint == "" {
		hint = "say what was seen at the cut: " + strings.Join(examples(kinds), ", ") + "; `assize tables textures` has every word, and `words` on the sheet takes any"
	}
	return s, &Trouble{What: fmt.Sprintf("no sign is known by %q", piece), Hint: hint}
}

// tastable are the parts textures are known of.
func tastable(f *formula.Formula) []int {
	var out []int
	for i := range f.Parts {
		if k := f.Parts[i].Kind; k == formula.Filling || k == formula.Pastry {
			out = append(out, i)
		}
	}
	return out
}

// kindsOf are the kinds of the parts, that which the place is looked at for
// first.
func kindsOf(f *formula.Formula, parts []int, look string) []string {
	first, second := string(formula.Filling), string(formula.Pastry)
	if look == "crust" || look == "base" {
		first, second = second, first
	}
	var out []string
	for _, kind := range []string{first, second} {
		if slices.ContainsFunc(parts, func(i int) bool { return string(f.Parts[i].Kind) == kind }) {
			out = append(out, kind)
		}
	}
	return out
}

func twoKinds(list []*reference.Texture) bool {
	return slices.ContainsFunc(list, func(x *reference.Texture) bool { return x.Kind != list[0].Kind })
}

func namesOf(f *formula.Formula, parts []int) []string {
	var out []string
	for _, i := range parts {
		out = append(out, f.Parts[i].Name)
	}
	return out
}

// either offers the words with each part they may be said of.
func either(piece string, f *formula.Formula, parts []int, list []*reference.Texture) string {
	var out []string
	for _, x := range list {
		for _, i := range parts {
			if string(f.Parts[i].Kind) == x.Kind {
				out = append(out, fmt.Sprintf("%q (%s)", f.Parts[i].Name+": "+piece, x.Shown))
			}
		}
	}
	return strings.Join(out, " or ")
}

// named offers textures by the words that name them.
func named(list []*reference.Texture) string {
	var out []string
	for _, x := range list {
		out = append(out, fmt.Sprintf("%s (%s)", x.ID, x.Shown))
	}
	return strings.Join(out, ", ")
}

// examples are words to choose from, by kind of part.
func examples(kinds []string) []string {
	var out []string
	for _, k := range kinds {
		if k == string(formula.Filling) {
			out = append(out, "smooth", "spongy", "split", "weeping", "runny", "rubbery", "grainy")
		} else {
			out = append(out, "short", "flaky", "hard", "falls apart", "greasy", "soggy", "shrunk")
		}
	}
	return out
}
