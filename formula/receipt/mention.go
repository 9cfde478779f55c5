package receipt

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/reference"
)

// Mention is an ingredient named in the steps and missing from the lines, or
// listed and never named in the steps.
type Mention struct {
	Part    int    // index of the part
	Name    string // the ingredient, in the page's words
	InSteps bool   // true: spokenName in the steps, missing from the lines
	Step    int    // index of the step when InSteps, else of the line
	Words   string // the words around it: the step, or the line
}

// MentionReader compares what steps name with what lines list. Make one with
// NewMentionReader and use it for many receipts.
type MentionReader struct {
	tables   *reference.Tables
	measures map[string]bool // names of measures of two words or more
}

// NewMentionReader prepares the names of the measures table.
func NewMentionReader(t *reference.Tables) *MentionReader {
	return &MentionReader{tables: t, measures: wordSets(t.MeasureNames())}
}

// NotListed is MentionReader.NotListed for one receipt.
func NotListed(f *formula.Formula, t *reference.Tables) []Mention {
	return NewMentionReader(t).NotListed(f)
}

// NotListed compares what the steps name with what the lines list. It is
// careful not to cry wolf: tools, measures, comparisons ("the size of an egg"),
// verbs ("butter the dish") and greased dishes are passed over, and a listed
// thing the steps do not name counts only when they name at least half of what
// is listed. Parts taken from another receipt and not yet resolved are left
// out. Lines of every part count as listed, since a method may speak of what
// another part holds.
func (r *MentionReader) NotListed(f *formula.Formula) []Mention {
	m := mentions{t: r.tables, f: f, measures: r.measures}
	m.book = reference.When{Year: f.Year, Place: f.Place}
	m.kitchen = m.book
	if k := f.Kitchen; k.Year != 0 {
		m.kitchen.Year = k.Year
	}
	if k := f.Kitchen; k.Place != "" {
		m.kitchen.Place = k.Place
	}
	for _, p := range f.Parts {
		for _, l := range p.Lines {
			m.list(l)
		}
	}
	var out []Mention
	for i, p := range f.Parts {
		if len(p.Lines) == 0 {
			continue
		}
		out = append(out, m.unlisted(i, p)...)
		out = append(out, m.unnamed(i, p)...)
	}
	return out
}

type mentions struct {
	t        *reference.Tables
	f        *formula.Formula
	book     reference.When
	kitchen  reference.When
	measures map[string]bool // names of measures of two words or more
	listed   []spoken
}

// thing is an ingredient with what it may be recognised by.
type spoken struct {
	id, base string
	roles    []string
	names    []string // what it is called, with what is counted of it
	words    []string // of its names, in the singular; told when first asked for
}

// tell are the words of what a thing is called, in the singular.
func (s *spoken) tell() []string {
	if s.words == nil {
		for _, n := range s.names {
			for _, w := range reference.Words(n) {
				s.words = append(s.words, stem(w))
			}
		}
	}
	return s.words
}

// telling are the roles that make one thing of different rows: any sugar in
// the lines is meant by "the sugar" in the steps. Roles that gather unlike
// things ("flavour") are not among them.
var telling = []string{"flour", "crumb", "butter", "hard_fat", "oil", "egg", "white", "yolk", "sugar", "syrup", "milk", "cream", "curd", "cheese", "water", "salt", "yeast", "leaven"}

// kin are roles whose things are thing of by one another's names.
var kin = [][]string{
	{"egg", "white", "yolk"},
	{"butter", "hard_fat", "oil"},
	{"sugar", "syrup"},
	{"milk", "cream"},
	{"flour", "meal"},
	{"curd", "cheese"},
}

func (m *mentions) list(l formula.Line) {
	items := l.Items
	for _, a := range l.Either {
		items = append(items[:len(items):len(items)], a.Items...)
	}
	for _, it := range items {
		m.listed = append(m.listed, m.spoken(it))
	}
}

func (m *mentions) spoken(it formula.Item) spoken {
	th := spoken{id: it.Ingredient, names: []string{it.Name, it.Amount.Each}}
	if ing, ok := m.t.Ingredient(it.Ingredient); ok {
		th.base, th.roles = ing.Base, ing.Roles
		th.names = append(th.names, ing.Name)
	}
	return th
}

// unlisted finds what the steps of a part name and no line lists.
func (m *mentions) unlisted(i int, p formula.Part) []Mention {
	var out []Mention
	seen := map[string]bool{}
	for s, step := range p.Steps {
		if m.token(step) {
			continue
		}
		for _, clause := range stopped(step) {
			if overlaps(clause, advice) {
				continue
			}
			for _, n := range m.names(clause) {
				if seen[n.key()] || m.isListed(n) {
					continue
				}
				seen[n.key()] = true
				out = append(out, Mention{Part: i, Name: n.name, InSteps: true, Step: s, Words: step})
			}
		}
	}
	return out
}

// unnamed finds the lines of a part that its steps never name.
func (m *mentions) unnamed(i int, p formula.Part) []Mention {
	spoken := map[string]bool{}
	said := 0
	for _, step := range p.Steps {
		words := reference.Words(step)
		said += len(words)
		if sweeping(words) {
			return nil
		}
		for _, w := range stems(words) {
			spoken[w] = true
		}
	}
	var out []Mention
	for j, l := range p.Lines {
		named := false
		for _, it := range l.Items {
			named = named || m.spokenOf(it, spoken)
		}
		if !named && len(l.Items) > 0 {
			out = append(out, Mention{Part: i, Name: l.Items[0].Name, Step: j, Words: l.Text})
		}
	}
	if said < tersest*len(p.Lines) || 2*len(out) > len(p.Lines) {
		return nil // a terse method names little; its silence says nothing
	}
	return out
}

// tersest is how many words a line a method must spend before its silence
// about one of them says anything.
const tersest = 4

// sweeping reports words that take in whatever is listed: "mix all together",
// "then add the rest".
func sweeping(words []string) bool {
	for i, w := range words {
		switch w {
		case "all", "rest", "ingredients", "everything", "remaining", "remainder", "others":
			return true
		case "whole":
			if i > 0 && words[i-1] == "the" {
				return true
			}
		}
	}
	return false
}

// spokenAs are further words by which things of a role are spoken of.
var spokenAs = map[string][]string{
	"egg": {"yolk", "white"}, "white": {"egg", "froth"}, "yolk": {"egg"},
	"sugar": {"sweeten", "syrup", "caramel"}, "syrup": {"sweeten"},
	"butter": {"fat", "shortening"}, "hard_fat": {"fat", "shortening"}, "oil": {"fat"},
	"flour": {"meal", "dredge"}, "meal": {"starch", "thicken"}, "crumb": {"bread"},
	"liquid": {"wine", "spirit", "brandy", "liquor", "liquid"}, "juice": {"acid", "juice"},
	"pulp": {"fruit", "pulp"}, "dried": {"fruit"}, "nut": {"nut"},
	"flavour": {"spice", "season", "seasoning", "flavour", "flavouring", "flavor", "flavoring", "peel", "rind", "zest"},
	"salt":    {"season", "seasoning"}, "leaven": {"powder", "soda"}, "yeast": {"barm", "leaven", "sponge"},
	"setting": {"jelly"},
}

func (m *mentions) spokenOf(it formula.Item, spoken map[string]bool) bool {
	th := m.spoken(it)
	for _, w := range th.tell() {
		if spoken[w] && !slices.Contains(idle, w) {
			return true
		}
	}
	for _, r := range th.roles {
		for _, w := range append(spokenAs[r], stem(r)) {
			if spoken[w] {
				return true
			}
		}
	}
	return false
}

// idle are words of a name that do not tell what the thing is.
var idle = []string{"of", "a", "an", "the", "and", "or", "with", "in", "for", "fresh", "whole", "plain", "raw", "dry", "dried", "ground", "powdered", "period", "hand", "fine", "large", "small", "water", "white", "cold", "half", "before", "british", "old", "spirit"}

// spokenName is an ingredient as a step names it.
type spokenName struct {
	name string
	spoken
	fruit *reference.Fruit
}

func (n spokenName) key() string {
	if n.fruit != nil {
		return n.fruit.ID
	}
	return n.id
}

// isListed reports whether any line holds what the step names: the same row, a
// form of it, a thing of the same role, or one that shares a telling word.
func (m *mentions) isListed(n spokenName) bool {
	return m.holds(&n) || n.fruit == nil && slices.ContainsFunc(n.tell(), m.called)
}

// holds reports a line with the same row, a form of it or a thing of its role.
func (m *mentions) holds(n *spokenName) bool {
	for i := range m.listed {
		l := &m.listed[i]
		if n.fruit != nil {
			if fruitHolds(n.fruit, l) {
				return true
			}
			continue
		}
		if n.id == l.id || n.base != "" && (n.base == l.id || n.base == l.base) || l.base == n.id {
			return true
		}
		for _, r := range n.roles {
			if slices.Contains(telling, r) && related(r, l.roles) {
				return true
			}
		}
	}
	return false
}

// called reports a line whose name has the word, when that tells what a thing is.
func (m *mentions) called(word string) bool {
	if slices.Contains(idle, word) {
		return false
	}
	for i := range m.listed {
		if slices.Contains(m.listed[i].tell(), word) {
			return true
		}
	}
	return false
}

func related(role string, roles []string) bool {
	if slices.Contains(roles, role) {
		return true
	}
	for _, k := range kin {
		if slices.Contains(k, role) && slices.ContainsFunc(roles, func(r string) bool { return slices.Contains(k, r) }) {
			return true
		}
	}
	return false
}

func fruitHolds(f *reference.Fruit, l *spoken) bool {
	for _, rs := range [][]reference.NameReading{f.Juice, f.Rind, f.Whole} {
		for _, r := range rs {
			if r.Is == l.id {
				return true
			}
		}
	}
	for _, name := range f.Names {
		if words := stems(reference.Words(name)); containsAll(l.tell(), words) {
			return true
		}
	}
	return false
}

func containsAll(all, some []string) bool {
	for _, w := range some {
		if !slices.Contains(all, w) {
			return false
		}
	}
	return len(some) > 0
}

// longestSpoken is the most words an ingredient's name is looked for in.
const longestSpoken = 4

// names finds the ingredients a clause names. The longest name at a place
// wins, so that rose-water is not water.
func (m *mentions) names(words []string) []spokenName {
	var out []spokenName
	for i := 0; i < len(words); {
		if n := m.measureAt(words, i); n > 0 {
			i += n
			continue
		}
		n, length := m.nameAt(words, i)
		if length == 0 {
			i++
			continue
		}
		if !passedOver(words, i, i+length, i) {
			out = append(out, n)
		}
		i += length
	}
	return out
}

func (m *mentions) measureAt(words []string, i int) int {
	for length := min(3, len(words)-i); length > 1; length-- {
		if m.measures[strings.Join(stems(words[i:i+length]), " ")] {
			return length
		}
	}
	return 0
}

func (m *mentions) nameAt(words []string, i int) (spokenName, int) {
	for length := min(longestSpoken, len(words)-i); length > 0; length-- {
		phrase := words[i : i+length]
		if length == 1 && slices.Contains(notNames, phrase[0]) {
			continue
		}
		c, ok := m.t.Called(strings.Join(phrase, " "), m.book, m.kitchen)
		if !ok || len(c.Stripped) > 0 {
			continue
		}
		if c.Ingredient != nil && len(c.Ingredient.Roles) == 0 || onlyIdle(phrase) {
			continue // a paste or a custard, not what it is made of
		}
		n := spokenName{name: strings.Join(phrase, " "), fruit: c.Fruit}
		n.names = phrase
		if c.Ingredient != nil {
			n.id, n.base, n.roles = c.Ingredient.ID, c.Ingredient.Base, c.Ingredient.Roles
		}
		return n, length
	}
	return spokenName{}, 0
}

// onlyIdle reports a name that says what is done to a thing or which part of
// it, and not what it is: "grated rind".
func onlyIdle(phrase []string) bool {
	if len(phrase) == 2 && phrase[0] == "mixed" && phrase[1] == "spice" {
		return false
	}
	if n := len(phrase); n > 1 && slices.Contains(compounds, phrase[n-1]) && !strings.HasSuffix(phrase[n-2], "ed") {
		return false // "corn meal"
	}
	for _, w := range phrase {
		if !slices.Contains(notNames, w) && !strings.HasSuffix(w, "ed") {
			return false
		}
	}
	return true
}

// compounds end names of two words that say what the thing is, though neither does.
var compounds = []string{"meal", "crumbs", "pepper"}

// notNames are words that name an ingredient in a list and mostly something
// else in a method: what is being made, a part of a fruit already listed, a
// colour, a heat, a thing done.
var notNames = []string{
	"paste", "pastes", "crust", "crusts", "pastry", "dough", "batter", "custard", "custards", "sponge", "icing", "curd", "curds", "whey",
	"cake", "cakes", "biscuit", "biscuits", "roll", "rolls", "bread", "loaf", "pudding", "jam", "jams", "jelly", "jellies", "marmalade", "preserve", "preserves",
	"crumb", "crumbs", "rind", "rinds", "peel", "zest", "juice", "pulp", "fruit", "fruits", "syrup", "liquor", "liquid", "stock", "froth", "gravy", "sauce",
	"white", "brown", "red", "green", "yellow", "orange", "ice", "powder", "leaf", "leaves", "wash", "must", "date", "dripping", "shot", "spirit", "spirits",
	"fat", "flavouring", "flavourings", "flavoring", "seasoning", "spice", "spices", "colouring", "coloring", "leaven", "starter", "straw", "meal", "snow", "mint",
	"mince", "spread", "glaze", "seed", "seeds", "kernel", "kernels", "pepper", "bay", "tongue", "sole", "corn", "pea", "peas", "tea", "coffee", "wafers", "flowers", "bun", "buns", "loaves", "toast", "toasts", "meat", "bones", "pattypans", "extract", "grease", "game", "creams",
}

// token reports a step that is a token of the methods table and no prose.
func (m *mentions) token(step string) bool {
	if _, ok := m.t.Method(strings.ToLower(strings.TrimSpace(step))); ok {
		return true
	}
	return !strings.Contains(strings.TrimSpace(step), " ")
}

// clauses splits a step at its stops; what stands before a stop says nothing
// about what stands after it.
func stopped(step string) [][]string {
	var out [][]string
	for _, part := range strings.FieldsFunc(step, func(r rune) bool { return r == '.' || r == ';' || r == ':' }) {
		if w := reference.Words(part); len(w) > 0 {
			out = append(out, w)
		}
	}
	return out
}

func wordSets(names []string) map[string]bool {
	out := map[string]bool{}
	for _, n := range names {
		if w := stems(reference.Words(n)); len(w) > 1 {
			out[strings.Join(w, " ")] = true
		}
	}
	return out
}

func stems(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = stem(w)
	}
	return out
}

// stem takes the plural off, roughly: it is only used to hold words against
// each other.
func stem(w string) string {
	switch {
	case len(w) > 4 && strings.HasSuffix(w, "ies"):
		return w[:len(w)-3] + "y"
	case len(w) > 4 && (strings.HasSuffix(w, "oes") || strings.HasSuffix(w, "ches") || strings.HasSuffix(w, "shes") || strings.HasSuffix(w, "sses")):
		return w[:len(w)-2]
	case len(w) > 3 && strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
		return w[:len(w)-1]
	}
	return w
}
