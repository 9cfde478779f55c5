package receipt

import (
	"slices"
	"strings"
	"unicode"

	"assize/formula"
	"assize/reference"
)

// MethodReader finds tokens of method in words. Make one with NewMethodReader
// and use it for many receipts.
type MethodReader struct {
	tables *reference.Tables
	// wordings by their first word; those that begin with a gap are not allowed.
	wordings map[string][]wording
}

// wording is one way of saying a token: words, with gaps between some.
type wording struct {
	method int
	words  []string // "" stands for a gap of up to longestGap words
	weight int      // literal words: the more, the surer
}

// longestGap is how many words may stand where a wording has "...": enough for
// "the butter and the sugar well together to a cream", too few to leap from
// one action to the next.
const longestGap = 8

// NewMethodReader prepares the wordings of the methods table.
func NewMethodReader(t *reference.Tables) *MethodReader {
	m := &MethodReader{tables: t, wordings: map[string][]wording{}}
	for i, row := range t.Methods {
		for _, text := range row.Words {
			w := wording{method: i}
			for j, piece := range strings.Split(text, "...") {
				if j > 0 {
					w.words = append(w.words, "")
				}
				for _, word := range reference.Words(piece) {
					w.words = append(w.words, word)
					w.weight++
				}
			}
			if w.weight > 0 {
				m.wordings[w.words[0]] = append(m.wordings[w.words[0]], w)
			}
		}
	}
	for _, list := range m.wordings {
		slices.SortStableFunc(list, func(a, b wording) int { return b.weight - a.weight })
	}
	return m
}

// Read finds what was done to part p of a formula: the words on its
// ingredient lines, its steps, and the dish and oven of the formula.
func (m *MethodReader) Read(f *formula.Formula, p *formula.Part) formula.Method {
	out := formula.Method{Flags: map[formula.Flag]bool{}, LineFlags: make([]map[formula.Flag]bool, len(p.Lines))}
	take := func(text string, where formula.Where, line int, scopes ...string) {
		for _, tok := range m.tokens(text, string(p.Kind), scopes) {
			tok.Where, tok.Line = where, line
			out.Tokens = append(out.Tokens, tok)
			for _, flag := range m.flags(tok) {
				if where == formula.OnLine && !m.speaksOf(flag, &p.Lines[line]) {
					continue
				}
				out.Flags[flag] = true
				if where == formula.OnLine {
					if out.LineFlags[line] == nil {
						out.LineFlags[line] = map[formula.Flag]bool{}
					}
					out.LineFlags[line][flag] = true
				}
			}
		}
	}
	for i, l := range p.Lines {
		take(l.Text, formula.OnLine, i, "line")
		m.whitesAlone(&out, &p.Lines[i], i)
	}
	for i, s := range p.Steps {
		take(s, formula.InSteps, i, "steps")
	}
	for _, id := range p.Done {
		if step, ok := m.tables.Step(id); ok && len(step.Takes) > 0 {
			out.Flags[formula.Flag(step.Takes[0])] = true
		}
	}
	for _, text := range []string{f.Dish, f.Oven, f.Bake} {
		take(text, formula.InBake, 0, "bake")
	}
	for _, s := range p.Steps {
		out.FireMinutes += fireInStep(s)
		out.Boils = out.Boils || boilsInStep(s)
	}
	out.Bake = ReadBake(f.Bake)
	if !out.Bake.Said() {
		for _, s := range p.Steps {
			if b := bakeInStep(s); b.Said() {
				out.Bake = b
			}
		}
	}
	if heat := ReadBake(f.Oven); heat.FirstC() > 0 && out.Bake.FirstC() == 0 {
		out.Bake = withHeat(out.Bake, heat)
	}
	return out
}

// Said is what a text by itself tells of a part of that kind, as one of its
// steps would: the tokens in their order and the flags they raise.
func (m *MethodReader) Said(text string, kind formula.Kind) ([]formula.Token, map[formula.Flag]bool) {
	tokens := m.tokens(text, string(kind), []string{"steps"})
	flags := map[formula.Flag]bool{}
	for i := range tokens {
		tokens[i].Where = formula.InSteps
		for _, f := range m.flags(tokens[i]) {
			flags[f] = true
		}
	}
	return tokens, flags
}

func (m *MethodReader) flags(tok formula.Token) []formula.Flag {
	row, ok := m.tables.Method(tok.Method)
	if !ok {
		return nil
	}
	out := make([]formula.Flag, len(row.Sets))
	for i, s := range row.Sets {
		out[i] = formula.Flag(s)
	}
	return out
}

// lineRoles says which ingredients a flag on a line can speak of: beaten eggs,
// melted butter, scalded milk. Flags of no group speak of any.
var lineRoles = []struct {
	flags []formula.Flag
	kinds []string // ingredient kinds
	roles []string
}{
	{
		flags: []formula.Flag{"whites_folded", "whites_maybe_folded", "whites_beaten", "whites_on_top", "eggs_very_light", "eggs_beaten", "eggs_slightly", "milk_on_egg"},
		kinds: []string{"egg", "white", "yolk"},
	},
	{flags: []formula.Flag{"melted_fat"}, roles: []string{"butter", "hard_fat", "oil", "chocolate"}},
	{flags: []formula.Flag{"scalded"}, roles: []string{"milk", "cream", "liquid", "water"}},
	{
		flags: []formula.Flag{"hot_water", "stiff_paste", "soft_paste", "water_too_little", "water_more", "water_not_all", "little_water"},
		roles: []string{"water", "milk", "cream", "liquid"},
	},
}

// speaksOf reports whether a flag raised on a line fits what the line holds.
func (m *MethodReader) speaksOf(flag formula.Flag, l *formula.Line) bool {
	for _, g := range lineRoles {
		if slices.Contains(g.flags, flag) {
			return m.holds(l, g.kinds, g.roles)
		}
	}
	return true
}

func (m *MethodReader) holds(l *formula.Line, kinds, roles []string) bool {
	return slices.ContainsFunc(l.Items, func(it formula.Item) bool {
		ing, ok := m.tables.Ingredient(it.Ingredient)
		return ok && (slices.Contains(kinds, ing.Kind) || overlap(ing.Roles, roles))
	})
}

// whitesAlone settles the words on a line of whites alone: beaten to a froth
// is whipped, merely beaten is beaten. On other lines beaten whites are no
// whites of their own.
func (m *MethodReader) whitesAlone(out *formula.Method, l *formula.Line, i int) {
	flags := out.LineFlags[i]
	if flags == nil {
		return
	}
	if !m.holds(l, []string{"white"}, nil) || m.holds(l, []string{"egg", "yolk"}, nil) {
		delete(flags, "whites_beaten")
		return
	}
	switch {
	case flags["whites_folded"] || flags["whites_beaten"]:
	case flags["eggs_very_light"]:
		flags["whites_folded"], out.Flags["whites_folded"] = true, true
	case flags["eggs_beaten"]:
		flags["whites_beaten"], out.Flags["whites_beaten"] = true, true
	}
}

// tokens scans the text from left to right. At each word the wording with the
// most words that fits there wins and its words are used up, so that a longer
// wording ("no water-bath") keeps a shorter one ("water-bath") from being seen.
func (m *MethodReader) tokens(text, kind string, scopes []string) []formula.Token {
	var out []formula.Token
	for _, sentence := range sentences(text) {
		for i := 0; i < len(sentence); {
			w, used := m.longest(sentence[i:], kind, scopes)
			if used == 0 {
				i++
				continue
			}
			row := m.tables.Methods[w.method]
			out = append(out, formula.Token{Method: row.ID, Words: strings.Join(sentence[i:i+used], " ")})
			i += used
		}
	}
	return out
}

func (m *MethodReader) longest(words []string, kind string, scopes []string) (wording, int) {
	for _, w := range m.wordings[words[0]] {
		row := &m.tables.Methods[w.method]
		if len(row.Parts) > 0 && !slices.Contains(row.Parts, kind) || !overlap(row.Scope, scopes) {
			continue
		}
		if n := fit(w.words, words); n > 0 {
			return w, n
		}
	}
	return wording{}, 0
}

func overlap(a, b []string) bool {
	return slices.ContainsFunc(a, func(s string) bool { return slices.Contains(b, s) })
}

// fit returns how many of the words the pattern covers from their start, 0
// when it does not fit. The shortest filling of each gap is taken.
func fit(pattern, words []string) int {
	if len(pattern) == 0 {
		return 0
	}
	at := 0
	for i := 0; i < len(pattern); i++ {
		if pattern[i] != "" {
			if at >= len(words) || words[at] != pattern[i] {
				return 0
			}
			at++
			continue
		}
		if i+1 == len(pattern) {
			return at
		}
		for skip := 0; ; skip++ {
			if skip > longestGap || at+skip >= len(words) {
				return 0
			}
			if rest := fit(pattern[i+1:], words[at+skip:]); rest > 0 {
				return at + skip + rest
			}
		}
	}
	return at
}

// sentences splits a text where one action ends: at stops and semicolons, not
// at commas, nor at the point of a decimal or an abbreviation such as "lb.".
func sentences(text string) [][]string {
	var out [][]string
	var b strings.Builder
	flush := func() {
		if w := reference.Words(b.String()); len(w) > 0 {
			out = append(out, w)
		}
		b.Reset()
	}
	runes := []rune(strings.ReplaceAll(text, "--", ";"))
	for i, r := range runes {
		switch {
		case r == ';' || r == ':' || r == '\n':
			flush()
		case r == '.' && (i+1 == len(runes) || unicode.IsSpace(runes[i+1])):
			if i+2 < len(runes) && unicode.IsLower(runes[i+2]) {
				b.WriteRune(' ') // an abbreviation: the sentence goes on in small letters
				continue
			}
			flush()
		default:
			b.WriteRune(r)
		}
	}
	flush()
	return out
}

// withHeat puts the temperatures of an oven text beside the times of a bake
// text, stage by stage.
func withHeat(bake, heat formula.Bake) formula.Bake {
	if !bake.Said() {
		return heat
	}
	out := formula.Bake{Minutes: bake.Minutes, Stages: slices.Clone(bake.Stages)}
	for i := range out.Stages {
		from := heat.Stages[min(i, len(heat.Stages)-1)]
		out.Stages[i].LowC, out.Stages[i].HighC = from.LowC, from.HighC
	}
	return out
}
