package trial

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/book"
	"assize/formula/linked"
	"assize/formula/receipt"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

// InWords is one receipt in words with the formula a careful reader makes of
// it: the text as a cook would copy it out, and the key it is held against.
type InWords struct {
	File    string `yaml:"file" sheet:"required"`   // the text, below the folder of the key
	Source  string `yaml:"source" sheet:"required"` // id in the sources table, or Ours
	Locator string `yaml:"locator" sheet:"required"`
	Shape   string `yaml:"shape" sheet:"required"` // one of Shapes
	Refers  bool   `yaml:"refers,omitempty"`       // to a receipt or direction elsewhere in the book
	Doubts  bool   `yaml:"doubts,omitempty"`       // it has marks of doubt
	LongS   bool   `yaml:"long-s,omitempty"`
	// Methods are tokens of the methods table that the steps must come to.
	Methods []string `yaml:"methods,omitempty"`
	// Beside names what the text mentions and a reader may list or leave:
	// butter for the dish, flour for the board, sugar strewn at the table.
	Beside []string `yaml:"beside,omitempty"`

	Text []byte           `yaml:"-"`
	Want *formula.Formula `yaml:"-"` // takes not yet put in

	title map[string]string // every name in its folder, to the title of the receipt
	alike map[string]string // ingredients that count as one, to the first of them
}

// work is a book that the tables do not rest on.
type work struct {
	ID     string `yaml:"id" sheet:"required"`
	Author string `yaml:"author" sheet:"required"`
	Title  string `yaml:"title" sheet:"required"`
	Year   string `yaml:"year" sheet:"required"`
}

// Ours is the source of a receipt that is made up for the key.
const Ours = "ours"

// Shapes are the ways the texts are laid out: quantities woven into the
// sentences, a list with sentences after it, a list of today, a web page.
var Shapes = []string{"woven", "list", "modern list", "page"}

// Set is the folder a receipt lies in when it was not among those the reader was
// first made with: kept back then, or met later. The reader has been mended by
// these since: only the figures of their first reading, which DEVELOPERS.md
// holds, are of receipts it had not met. Empty for those it was made with.
func (w *InWords) Set() string {
	top, _, _ := strings.Cut(w.File, "/")
	if slices.Contains(Sets, top) {
		return top
	}
	return ""
}

// Sets are the folders of receipts the reader was not first made with.
var Sets = []string{"kept-back", "later"}

const keyFile = "key.yaml"

// ReadKey reads the key of a folder of receipts in words, with every text and
// the formula beside it. Each folder below is a book of its own. The error
// names every file that is missing or faulty.
func ReadKey(fsys fs.FS, t *reference.Tables) ([]InWords, error) {
	text, err := fs.ReadFile(fsys, keyFile)
	if err != nil {
		return nil, err
	}
	page := fault.NewPage(keyFile, text)
	var key struct {
		Works []work     `yaml:"works,omitempty"`
		Alike [][]string `yaml:"alike,omitempty"`
		Rows  []InWords  `yaml:"rows" sheet:"required"`
	}
	sheet.Decode(page, &key)
	works := map[string]bool{Ours: true}
	for _, w := range key.Works {
		works[w.ID] = true
	}
	var faults fault.List
	alike := map[string]string{}
	for _, group := range key.Alike {
		for _, id := range group {
			if _, ok := t.Ingredient(id); !ok {
				page.Add(0, 0, "", "there is no ingredient %q", id)
			}
			alike[id] = group[0]
		}
	}
	books := map[string]*book.Book{}
	for i := range key.Rows {
		w := &key.Rows[i]
		if _, ok := t.Source(w.Source); !ok && !works[w.Source] {
			page.Add(0, 0, "", "%s: there is no work %q", w.File, w.Source)
		}
		dir := path.Dir(w.File)
		if books[dir] == nil {
			sub, err := fs.Sub(fsys, dir)
			if err != nil {
				return nil, err
			}
			b, wrong := book.Open(sub, t)
			books[dir], faults = b, append(faults, wrong...)
		}
		if w.Text, err = fs.ReadFile(fsys, w.File); err != nil {
			faults = append(faults, fault.Fault{File: w.File, What: "there is no such text"})
		}
		name := strings.TrimSuffix(path.Base(w.File), path.Ext(w.File)) + ".yaml"
		w.title, w.alike = map[string]string{}, alike
		for _, f := range books[dir].Receipts {
			if f.File == name {
				w.Want = f
			}
			for _, n := range append([]string{f.Title}, f.Also...) {
				w.title[reference.Key(n)] = f.Title
			}
		}
		if w.Want == nil {
			faults = append(faults, fault.Fault{File: w.File, What: "there is no sound formula beside it"})
		}
	}
	return key.Rows, append(page.Faults(), faults...).Err()
}

// Read reads the text as `assize read` does, by the year and place of the key.
// The formula is nil when the text cannot be read at all.
func (w *InWords) Read(t *reference.Tables) *formula.Formula {
	text, about := string(w.Text), receipt.About{Year: w.Want.Year, Place: w.Want.Place}
	if linked.Is(w.File, w.Text) {
		l, _ := linked.Read(w.File, w.Text)
		if l == nil {
			return nil
		}
		text, about.Title = l.Text, l.Title
	}
	r := receipt.Reader{Tables: t, KitchenYear: w.Want.Kitchen.Year, KitchenPlace: w.Want.Kitchen.Place}
	f, _ := r.Receipt(text, about)
	return f
}

// WordsScore counts how a formula that was read from words agrees with its key,
// thing by thing. Scores of several receipts add up.
type WordsScore struct {
	Receipts int
	Whole    int // receipts with nothing missing, invented or wrong

	Expected int // ingredients of the key
	Read     int // ingredients of the reading, those that may be left out aside
	Found    int // ingredients of the key that were read
	Right    int // of those, with the amount the key has
	Placed   int // of those, in the right part

	Parts, PartsRead, PartsRight int
	Takes, TakesRead, TakesRight int // parts taken from elsewhere in the book
	Doubts, DoubtsKept           int // lines of the key that are one thing or another
	Said, SaidRight              int // oven, baking, dish and how the paste is laid
	Methods, MethodsFound        int

	Faults []string // what is missing, invented or wrong, for people
}

// Add counts another score into this one.
func (s *WordsScore) Add(o WordsScore) {
	s.Receipts += o.Receipts
	s.Whole += o.Whole
	s.Expected += o.Expected
	s.Read += o.Read
	s.Found += o.Found
	s.Right += o.Right
	s.Placed += o.Placed
	s.Parts += o.Parts
	s.PartsRead += o.PartsRead
	s.PartsRight += o.PartsRight
	s.Takes += o.Takes
	s.TakesRead += o.TakesRead
	s.TakesRight += o.TakesRight
	s.Doubts += o.Doubts
	s.DoubtsKept += o.DoubtsKept
	s.Said += o.Said
	s.SaidRight += o.SaidRight
	s.Methods += o.Methods
	s.MethodsFound += o.MethodsFound
	s.Faults = append(s.Faults, o.Faults...)
}

func (s *WordsScore) fault(format string, args ...any) {
	s.Faults = append(s.Faults, fmt.Sprintf(format, args...))
}

// HoldAgainst holds what was read from the words against the key. A nil formula
// is a receipt that could not be read at all.
func (w *InWords) HoldAgainst(got *formula.Formula, t *reference.Tables, methods *receipt.MethodReader) WordsScore {
	if got == nil {
		got = &formula.Formula{}
	}
	s := WordsScore{Receipts: 1}
	want, read := w.things(w.Want), w.things(got)
	partner := w.align(w.Want, got)
	s.parts(w, got, partner)
	s.lines(w, want, read, partner, t)
	s.said(w.Want, got, partner)
	s.steps(w, got, methods)
	if len(s.Faults) == 0 {
		s.Whole = 1
	}
	return s
}

// thing is one ingredient of a formula, with every way of taking it when its
// line is in doubt.
type thing struct {
	part int
	text string
	ways []formula.Item
}

func (a *thing) is(ingredient string) bool {
	return slices.ContainsFunc(a.ways, func(it formula.Item) bool { return it.Ingredient == ingredient })
}

// things lists the ingredients of a formula. A line in doubt is as many things
// as its first alternative holds, each with the ways the others put it.
func (w *InWords) things(f *formula.Formula) []thing {
	var out []thing
	known := func(it formula.Item) formula.Item {
		it.Ingredient = w.one(it.Ingredient)
		return it
	}
	for i := range f.Parts {
		for _, l := range f.Parts[i].Lines {
			if len(l.Either) == 0 {
				from := len(out)
				for _, it := range l.Items {
					it = known(it)
					if len(out) > from && summed(&out[len(out)-1].ways[0], it) { // "half a pound and two ounces"
						continue
					}
					out = append(out, thing{i, l.Text, []formula.Item{it}})
				}
				continue
			}
			most := 0
			for _, a := range l.Either {
				most = max(most, len(a.Items))
			}
			for k := range most {
				th := thing{part: i, text: l.Text}
				for _, a := range l.Either {
					if k < len(a.Items) {
						th.ways = append(th.ways, known(a.Items[k]))
					}
				}
				out = append(out, th)
			}
		}
	}
	return out
}

// summed adds a further amount of one thing to the amount before it on the line,
// where both are in measures that are so many of another, and reports that it
// did: half a pound and two ounces are ten ounces.
func summed(to *formula.Item, it formula.Item) bool {
	a, b := to.Amount, it.Amount
	u, v := smaller[a.Measure], smaller[b.Measure]
	if to.Ingredient != it.Ingredient || to.Name != it.Name || a.State != formula.Stated || b.State != formula.Stated || u.of == "" || u.of != v.of {
		return false
	}
	to.Amount.Number = a.Number.Mul(decimal.NewFromInt(u.times)).Add(b.Number.Mul(decimal.NewFromInt(v.times)))
	to.Amount.Measure = u.of
	return true
}

// one is the ingredient that an id counts as.
func (w *InWords) one(id string) string {
	if first, ok := w.alike[id]; ok {
		return first
	}
	return id
}

// align pairs the parts of the key with those read: each with the part of its
// kind that shares the most with it. -1 stands for none.
func (w *InWords) align(want, got *formula.Formula) []int {
	out := make([]int, len(want.Parts))
	for i := range out {
		out[i] = -1
	}
	used := map[int]bool{}
	for range want.Parts {
		bestI, bestJ, best := -1, -1, -1
		for i := range want.Parts {
			if out[i] >= 0 {
				continue
			}
			for j := range got.Parts {
				if used[j] {
					continue
				}
				if n := w.likeness(&want.Parts[i], &got.Parts[j]); n > best {
					bestI, bestJ, best = i, j, n
				}
			}
		}
		if best <= 0 {
			return out
		}
		out[bestI], used[bestJ] = bestJ, true
	}
	return out
}

// likeness is how much two parts share: their kind, and each ingredient.
func (w *InWords) likeness(a, b *formula.Part) int {
	n := 0
	if a.Kind == b.Kind {
		n++
	}
	if (a.Take != "") != (b.Take != "") {
		n--
	}
	have := map[string]int{}
	for _, l := range b.Lines {
		for _, it := range l.Items {
			have[w.one(it.Ingredient)]++
		}
	}
	for _, l := range a.Lines {
		for _, it := range l.Items {
			if id := w.one(it.Ingredient); have[id] > 0 {
				have[id]--
				n += 2
			}
		}
	}
	return n
}

func (s *WordsScore) parts(w *InWords, got *formula.Formula, partner []int) {
	s.Parts, s.PartsRead = len(w.Want.Parts), len(got.Parts)
	for i := range w.Want.Parts {
		p, q := &w.Want.Parts[i], (*formula.Part)(nil)
		if partner[i] >= 0 {
			q = &got.Parts[partner[i]]
		}
		if q != nil && p.Kind == q.Kind {
			s.PartsRight++
		} else {
			s.fault("part: the %s %q is not there", p.Kind, p.Name)
		}
		if p.Take == "" {
			continue
		}
		s.Takes++
		switch {
		case q == nil || q.Take == "":
			s.fault("take: %q is not taken from the book", p.Take)
		case w.same(p.Take, q.Take):
			s.TakesRight++
		default:
			s.fault("take: %q is taken, and not %q", q.Take, p.Take)
		}
	}
	for j := range got.Parts {
		if got.Parts[j].Take != "" {
			s.TakesRead++
		}
		if !slices.Contains(partner, j) {
			s.fault("part: the %s %q is too many", got.Parts[j].Kind, got.Parts[j].Name)
		}
	}
}

// same reports two names for one receipt of the book.
func (w *InWords) same(a, b string) bool {
	a, b = reference.Key(a), reference.Key(b)
	return a == b || w.title[a] != "" && w.title[a] == w.title[b]
}

// lines pairs the ingredients. The same ingredient may stand several times, so
// pairs that agree in amount and part are made first.
func (s *WordsScore) lines(w *InWords, want, read []thing, partner []int, t *reference.Tables) {
	pair := make([]int, len(want))
	for i := range pair {
		pair[i] = -1
	}
	used := make([]bool, len(read))
	for round := range 4 {
		for i := range want {
			for j := 0; j < len(read) && pair[i] < 0; j++ {
				if used[j] || !alike(&want[i], &read[j]) {
					continue
				}
				placed := partner[want[i].part] == read[j].part
				if right := agree(&want[i], &read[j]); (round&1 == 0) == placed && (round&2 == 0) == right {
					pair[i], used[j] = j, true
				}
			}
		}
	}
	s.Expected = len(want)
	for i := range want {
		doubt := len(want[i].ways) > 1
		if doubt {
			s.Doubts++
		}
		j := pair[i]
		if j < 0 {
			s.fault("missing: %s (%s)", want[i].text, want[i].ways[0].Ingredient)
			continue
		}
		s.Found++
		s.Read++
		if agree(&want[i], &read[j]) {
			s.Right++
		} else {
			s.fault("amount: %s is read as %q: %s", want[i].text, read[j].text, amounts(&read[j]))
		}
		if doubt && len(read[j].ways) == len(want[i].ways) {
			s.DoubtsKept++
		}
		if partner[want[i].part] == read[j].part {
			s.Placed++
		} else {
			s.fault("place: %s is not in the %s", want[i].text, w.Want.Parts[want[i].part].Name)
		}
	}
	for j := range read {
		if !used[j] && !w.beside(&read[j], t) {
			s.Read++
			s.fault("invented: %q, read as %s: %s", read[j].text, read[j].ways[0].Ingredient, amounts(&read[j]))
		}
	}
}

// beside reports a thing that may be listed or left.
func (w *InWords) beside(th *thing, t *reference.Tables) bool {
	when := reference.When{Year: w.Want.Year, Place: w.Want.Place}
	return slices.ContainsFunc(w.Beside, func(name string) bool {
		if c, ok := t.Called(name, when, when); ok && c.Ingredient != nil && th.is(w.one(c.Ingredient.ID)) {
			return true
		}
		return slices.ContainsFunc(th.ways, func(it formula.Item) bool { return reference.Key(it.Name) == reference.Key(name) })
	})
}

func alike(a, b *thing) bool {
	return slices.ContainsFunc(a.ways, func(it formula.Item) bool { return b.is(it.Ingredient) })
}

// agree reports the same amounts: each way of taking the one is a way of taking
// the other.
func agree(a, b *thing) bool {
	in := func(it formula.Item, list []formula.Item) bool {
		return slices.ContainsFunc(list, func(o formula.Item) bool { return it.Ingredient == o.Ingredient && sameAmount(it.Amount, o.Amount) })
	}
	return !slices.ContainsFunc(a.ways, func(it formula.Item) bool { return !in(it, b.ways) }) &&
		!slices.ContainsFunc(b.ways, func(it formula.Item) bool { return !in(it, a.ways) })
}

// sameAmount compares number, measure, what is counted and how big or full it
// is. Two measures of fixed weight may say it differently: half a pound is
// eight ounces.
func sameAmount(a, b formula.Amount) bool {
	if a.State != b.State {
		return false
	}
	if a.State != formula.Stated {
		return true
	}
	if a.Each != b.Each || a.Size != b.Size || a.Fill != b.Fill || a.WeightOf != b.WeightOf || a.Parts != b.Parts {
		return false
	}
	x, y := a.Number, b.Number
	if a.Measure != b.Measure {
		u, v := smaller[a.Measure], smaller[b.Measure]
		if u.of == "" || u.of != v.of {
			return false
		}
		x, y = x.Mul(decimal.NewFromInt(u.times)), y.Mul(decimal.NewFromInt(v.times))
	}
	return x.Low.Equal(y.Low) && x.Likely.Equal(y.Likely) && x.High.Equal(y.High)
}

// smaller are measures that are always so many of another, so that half a
// pound and eight ounces are one amount.
var smaller = map[string]struct {
	times int64
	of    string
}{
	"pound": {16, "ounce"}, "ounce": {1, "ounce"}, "kg": {1000, "g"}, "g": {1, "g"}, "l": {1000, "ml"}, "ml": {1, "ml"},
}

var stateNames = map[formula.State]string{
	formula.ToTaste: "to taste", formula.NotGiven: "quantity not given", formula.Enough: "enough",
}

// amounts is what was read, for people.
func amounts(th *thing) string {
	var out []string
	for _, it := range th.ways {
		a := it.Amount
		if a.State != formula.Stated {
			out = append(out, stateNames[a.State])
			continue
		}
		n := a.Number.Likely.String()
		if !a.Number.Low.Equal(a.Number.High) {
			n = a.Number.Low.String() + " to " + a.Number.High.String()
		}
		words := []string{n}
		for _, w := range []string{a.Fill, a.Size, a.Measure, a.Each} {
			if w != "" {
				words = append(words, w)
			}
		}
		if a.WeightOf != "" {
			words = append(words, "weight of "+a.WeightOf)
		}
		out = append(out, strings.Join(words, " "))
	}
	return strings.Join(out, " or ")
}

// said compares what is given of the oven, the baking, the dish and how the
// paste is laid.
func (s *WordsScore) said(want, got *formula.Formula, partner []int) {
	check := func(what, want, got string, right bool) {
		if want == "" {
			return
		}
		s.Said++
		if right {
			s.SaidRight++
			return
		}
		s.fault("%s: %q is read as %q", what, want, got)
	}
	heat := got.Oven + " " + got.Bake // a heat may be said with either
	check("oven", want.Oven, strings.TrimSpace(heat), within(want.Oven, heat))
	check("dish", want.Dish, got.Dish, within(want.Dish, got.Dish))
	check("bake", want.Bake, got.Bake, sameBake(want.Bake, got.Oven+", "+got.Bake))
	for i := range want.Parts {
		lay := ""
		if j := partner[i]; j >= 0 {
			lay = got.Parts[j].Lay
		}
		check("lay", want.Parts[i].Lay, lay, want.Parts[i].Lay == lay)
	}
}

// sameBake compares times and heats, each in order.
func sameBake(a, b string) bool {
	list := func(text string) (minutes, heats [][2]float64) {
		for _, st := range receipt.ReadBake(text).Stages {
			if st.HighMinutes > 0 {
				minutes = append(minutes, [2]float64{st.LowMinutes, st.HighMinutes})
			}
			if h := [2]float64{st.LowC, st.HighC}; h[1] > 0 && !slices.Contains(heats, h) {
				heats = append(heats, h)
			}
		}
		return minutes, heats
	}
	am, ah := list(a)
	bm, bh := list(b)
	return slices.Equal(am, bm) && (len(ah) == 0 || slices.Equal(ah, bh))
}

// within reports that every word of the one is in the other: "slow" is said in
// "a slow oven".
func within(want, got string) bool {
	have := reference.Words(got)
	return !slices.ContainsFunc(reference.Words(want), func(w string) bool { return !slices.Contains(have, w) })
}

// steps looks for the methods that the words must come to.
func (s *WordsScore) steps(w *InWords, got *formula.Formula, methods *receipt.MethodReader) {
	found := map[string]bool{}
	for i := range got.Parts {
		for _, tok := range methods.Read(got, &got.Parts[i]).Tokens {
			found[tok.Method] = true
		}
	}
	for _, m := range w.Methods {
		s.Methods++
		if found[m] {
			s.MethodsFound++
		} else {
			s.fault("method: %s is not in the steps", m)
		}
	}
}

// Row is one figure of a score: how many of how many.
type Row struct {
	Name      string
	Right, Of int
}

// Rows are the figures of the score, for people. Precision is of what was read,
// recall of what the key has.
func (s *WordsScore) Rows() []Row {
	return []Row{
		{"ingredients, recall", s.Found, s.Expected},
		{"ingredients, precision", s.Found, s.Read},
		{"ingredients with their amount, recall", s.Right, s.Expected},
		{"ingredients with their amount, precision", s.Right, s.Read},
		{"ingredients found that are in the right part", s.Placed, s.Found},
		{"parts, recall", s.PartsRight, s.Parts},
		{"parts, precision", s.PartsRight, s.PartsRead},
		{"parts taken from elsewhere in the book", s.TakesRight, s.Takes},
		{"lines that are one thing or another", s.DoubtsKept, s.Doubts},
		{"oven, baking, dish and how the paste is laid", s.SaidRight, s.Said},
		{"methods in the steps", s.MethodsFound, s.Methods},
		{"receipts with no fault at all", s.Whole, s.Receipts},
	}
}
