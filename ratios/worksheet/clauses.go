package worksheet

import (
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"assize/formula"
	"assize/formula/receipt"
	"assize/ratios/practice"
	"assize/reference"
)

// clauses breaks a step as written into things that are done one by one: at the
// end of a sentence, and where filling or baking begins. Nothing is dropped but
// the "and" between.
func clauses(step string) []string {
	var out []string
	for _, s := range sentences(step) {
		for {
			head, tail, ok := cut(s)
			if !ok {
				break
			}
			out = append(out, sentence(head))
			s = tail
		}
		out = append(out, sentence(openJoint(strings.TrimSpace(s))))
	}
	return slices.DeleteFunc(out, func(s string) bool { return s == "" })
}

// risings breaks a clause of a dough where its rising, its shaping and its second
// rising follow one another: what a cook does between them has its place there.
func risings(d *practice.Dish, part int, clause string) []string {
	if !d.Holds(part, "yeast") {
		return []string{clause}
	}
	stages := []string{"rise", "shape", "prove"}
	var out []string
	last, start := -1, 0 // the stage in hand, and where it begins
	at := 0              // where the piece in hand begins
	for _, piece := range joined(clause) {
		stage := slices.Index(stages, stageOf(d, part, piece))
		if stage == 0 && last == 1 {
			stage = 2 // what is shaped already rises a second time
		}
		if stage > last && last >= 0 {
			out = append(out, sentence(openJoint(trimJoint(clause[start:at]))))
			start = at
		}
		last = max(last, stage)
		at += len(piece)
	}
	return append(out, sentence(openJoint(clause[start:])))
}

// joined are the pieces of a clause with what joins them: they make the clause
// again.
func joined(clause string) []string {
	var out []string
	rest := clause
	for {
		cut := -1
		for _, j := range []string{", ", " and then ", " then ", " and "} {
			if i := strings.Index(lower(rest), j); i > 0 && (cut < 0 || i < cut) {
				cut = i
			}
		}
		if cut < 0 {
			return append(out, rest)
		}
		n := cut + 1
		for rest[n] == ' ' {
			n++
		}
		out = append(out, rest[:n])
		rest = rest[n:]
	}
}

// trimJoint takes off what joins a piece to the next, openJoint what joins it to
// the one before.
func trimJoint(s string) string {
	s = strings.TrimRight(s, ", ")
	for _, j := range []string{" and then", " then", " and"} {
		s = strings.TrimSuffix(s, j)
	}
	return strings.TrimRight(s, ", ")
}

func openJoint(s string) string {
	for _, j := range []string{"and then ", "then ", "and "} {
		if strings.HasPrefix(lower(s), j) {
			return s[len(j):]
		}
	}
	return s
}

// sentences splits at stops that end a sentence, not at those of "lb." or of a
// decimal: a small letter or a figure goes on.
func sentences(s string) []string {
	var out []string
	start := 0
	for i, r := range s {
		if r != '.' && r != ';' && r != '\n' {
			continue
		}
		rest := strings.TrimLeft(s[i+1:], " ")
		next, _ := utf8.DecodeRuneInString(rest)
		if r == '.' && rest != "" && !unicode.IsUpper(next) {
			continue
		}
		out = append(out, s[start:i])
		start = i + 1
	}
	return append(out, s[start:])
}

// joints are the words at which a sentence is cut: what comes after them is
// another piece of work.
var joints = []struct{ words, keeps string }{
	{", and then bake ", "bake "}, {", and bake ", "bake "}, {" and bake ", "bake "}, {", then bake ", "bake "}, {", bake ", "bake "},
	{", and put it in the oven", "put it in the oven"}, {", and put it into the oven", "put it into the oven"},
	{", and pour it into ", "pour it into "}, {", pour it into ", "pour it into "}, {" and pour it into ", "pour it into "},
	{", and fill ", "fill "}, {", then fill ", "fill "}, {", and strain it", "strain it"}, {", then strain it", "strain it"},
	{", and serve ", "serve "}, {", and send ", "send "},
}

// cut splits a sentence at its first joint.
func cut(s string) (head, tail string, ok bool) {
	at := -1
	for _, j := range joints {
		// The joint's own words are ASCII: lower-casing moves no byte of them.
		if i := strings.Index(lower(s), j.words); i > 0 && (at < 0 || i < at) {
			at, head, tail, ok = i, s[:i], s[i+len(j.words)-len(j.keeps):], true
		}
	}
	return head, tail, ok
}

// lower makes ASCII letters small and leaves every other byte where it is.
func lower(s string) string {
	b := []byte(s)
	for i, c := range b {
		if 'A' <= c && c <= 'Z' {
			b[i] = c + 'a' - 'A'
		}
	}
	return string(b)
}

func sentence(s string) string {
	s = strings.Trim(strings.TrimSpace(s), ",")
	if s == "" {
		return ""
	}
	first, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[n:]
}

// toldMinutes is how long the words of a part say a stage of work takes, the
// middle of a range; nothing when they do not say.
func toldMinutes(d *practice.Dish, part int, stage string) int {
	told := 0.0
	for _, step := range d.Formula.Parts[part].Steps {
		for _, clause := range clauses(step) {
			last := ""
			for _, piece := range pieces(clause) {
				at := stageOf(d, part, piece)
				if at == "make" && bareTime(piece) { // "let it rise, covered, two hours"
					at = last
				}
				if at == stage {
					told += receipt.ReadBake(piece).Minutes
				}
				if at != "make" || !bareTime(piece) && len(reference.Words(piece)) > 1 {
					last = at
				}
			}
		}
	}
	return int(math.Round(told))
}

// pieces breaks a clause where one thing done follows another: at its commas and
// at "and". Half of "an hour and a half" is no piece of its own.
func pieces(clause string) []string {
	var out []string
	for _, s := range strings.FieldsFunc(clause, func(r rune) bool { return r == ',' || r == ':' }) {
		for n, p := range strings.Split(s, " and ") {
			if words := reference.Words(p); n > 0 && len(words) > 0 && slices.Contains([]string{"a", "an", "half", "quarter", "three"}, words[0]) {
				out[len(out)-1] += " and " + p
				continue
			}
			out = append(out, p)
		}
	}
	return out
}

// bareTime reports words that are a length of time and nothing done.
func bareTime(piece string) bool {
	words := reference.Words(piece)
	return len(words) <= 5 && receipt.ReadBake(piece).Minutes > 0 &&
		!slices.ContainsFunc(words, func(w string) bool {
			return slices.Contains([]string{"knead", "work", "beat", "bake", "stir", "stand", "lie", "rub", "whisk"}, w)
		})
}

// toldStanding is how long the words have a part stand between its making and
// the oven or the table, minutes; a night counts as twelve hours. A dough's
// risings are no standing.
func toldStanding(d *practice.Dish, part int) int {
	const night = 12 * 60
	p := &d.Formula.Parts[part]
	if p.Kind == formula.Pastry || d.Holds(part, "yeast") {
		return 0
	}
	told := 0.0
	for _, step := range p.Steps {
		for _, clause := range clauses(step) {
			if stageOf(d, part, clause) == "oven" {
				return int(math.Round(told))
			}
			words := reference.Words(clause)
			if !slices.ContainsFunc(words, func(w string) bool { return w == "stand" || w == "stands" || w == "standing" || w == "lie" }) {
				continue
			}
			if text := " " + strings.Join(words, " ") + " "; slices.ContainsFunc(overnight, func(w string) bool { return strings.Contains(text, w) }) {
				told += night
			} else {
				told += receipt.ReadBake(clause).Minutes
			}
		}
	}
	return int(math.Round(told))
}

// overnight are words for a night.
var overnight = []string{" overnight ", " over night ", " all night ", " a night ", " next day ", " next morning ", " till the morrow ", " till morning ", " until morning "}

// stageOf is the stage of work a clause of a part speaks of.
func stageOf(d *practice.Dish, part int, clause string) string {
	p := &d.Formula.Parts[part]
	_, flags := d.Reader().Said(clause, p.Kind)
	has := func(list ...formula.Flag) bool {
		return slices.ContainsFunc(list, func(f formula.Flag) bool { return flags[f] })
	}
	words := reference.Words(clause)
	first := ""
	if len(words) > 0 {
		first = words[0]
	}
	stove := d.Holds(part, "stove")
	switch {
	case slices.Contains([]string{"serve", "send", "eat", "garnish", "dust", "draw"}, first), first == "take" && slices.Contains(words, "oven") && slices.Contains(words, "out"), first == "sift" && slices.Contains(words, "over"), first == "turn" && slices.Contains(words, "out"):
		return "cool"
	case slices.Contains([]string{"put", "lay", "cover", "close"}, first) && (slices.Contains(words, "lid") || slices.Contains(words, "lids")):
		return "rim"
	case first == "fill" && p.Kind == formula.Filling && d.Holds(part, "bottom-crust"):
		return "fill"
	case p.Kind == formula.Pastry:
		switch {
		case has("egg_wash_inside"):
			return "wash"
		case has("docked", "part_baked", "blind_baked", "baked_case"):
			return "case"
		case has("sealed", "vented", "glazed"):
			return "rim"
		case has("raw_case") && first != "bake" && practice.Lays(clause):
			return "lay" // a dish lined with it goes in raw, but not yet
		case has("raw_case") && first == "line":
			return "make" // "line a dish with a paste of flour and butter": what it is made of
		case has("baked", "hot", "slow", "moderate"):
			return "oven"
		case practice.Lays(clause):
			return "lay"
		case first == "roll" && d.Holds(part, "laid", "no-layered") && !has("laminated", "folded_turns"):
			return "lay"
		case has("rested", "chilled") && !has("laminated", "folded_turns"):
			return "rest"
		}
		return "make"
	case d.Holds(part, "yeast") && has("proved"):
		return "prove"
	case d.Holds(part, "yeast") && has("shaped"):
		return "shape"
	case d.Holds(part, "yeast") && has("risen"):
		return "rise"
	case first == "pour" && has("stands_in_crust", "baked_case"), slices.Contains([]string{"fill", "pour", "turn", "put"}, first) && intoDish(words):
		return "fill"
	case !stove && has("baked", "bath") || first == "bake", d.Holds(part, "pot") && has("boiled_pudding", "steamed"):
		return "oven"
	case first == "strain":
		return "strain"
	case has("sealed", "vented", "glazed"):
		return "rim"
	case practice.Lays(clause) && d.Holds(part, "bottom-crust"):
		return "fill"
	}
	return "make"
}

// intoDish reports words that speak of a vessel or a case being filled.
func intoDish(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"dish", "case", "cases", "crust", "shell", "shells", "cups", "tin", "mould", "moulds", "patty", "patties", "plate", "plates", "saucers"}, w)
	})
}
