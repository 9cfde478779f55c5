package trial

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/judge"
	"assize/ratios/variant"
	"assize/reference"
)

// Answered is one predicted fault of a published formula and what the search
// for a variant made of it.
type Answered struct {
	ID, Texture string
	Share       float64
	Found       bool
	Passes      bool     // the written variant, read again, has no finding of it
	Whole       bool     // every egg counted is whole
	Ingredients int      // changed
	Changes     []string // of the variant, or of the closest
	Stands      int      // what still stands in the way when none was found
	Took        time.Duration
}

// Variants seeks a variant for every formula of the fit with a predicted fault
// that its class is not meant to have.
func Variants(t *reference.Tables, n int) ([]Answered, error) {
	j := judge.New(t)
	j.Readings, j.Remedies = n, false
	var out []Answered
	for _, kind := range []formula.Kind{formula.Filling, formula.Pastry} {
		items, err := Bench(t, kind, bake.Standard, Fit)
		if err != nil {
			return nil, err
		}
		for _, it := range items {
			list, err := answered(j, it.Published)
			if err != nil {
				return nil, fmt.Errorf("a variant of %s: %w", it.Published.ID, err)
			}
			out = append(out, list...)
		}
	}
	return out, nil
}

func answered(j *judge.Judge, p *reference.Published) ([]Answered, error) {
	f, faults := Formula(p, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	f.Parts[0].Class = p.Class
	report, faults := j.Check(f)
	if len(faults) > 0 {
		return nil, faults
	}
	var out []Answered
	for _, s := range report.Parts[0].Texture.Shares {
		if !s.Texture.Fault || s.Share < judge.May || !finds(report, s.Texture) {
			continue
		}
		begun := time.Now()
		r, err := variant.Find(j, f, variant.Wish{Against: []string{s.Texture.ID}})
		if err != nil {
			return nil, err
		}
		a := Answered{ID: p.ID, Texture: s.Texture.ID, Share: s.Share, Found: r.Found, Stands: len(r.Stands), Took: time.Since(begun), Whole: true}
		for i := range r.Changes {
			a.Changes = append(a.Changes, r.Changes[i].String())
			if r.Changes[i].Kind != variant.Done {
				a.Ingredients++
			}
		}
		if r.After != nil {
			a.Passes = r.Found && r.Reads && !finds(r.After, s.Texture)
			a.Whole = whole(r.After.Weighed)
		}
		out = append(out, a)
	}
	return out, nil
}

func finds(r *judge.Report, x *reference.Texture) bool {
	return slices.ContainsFunc(r.Findings, func(f judge.Finding) bool { return f.Code == x.Finding && f.Share > 0 })
}

// whole reports whether every egg that is counted is whole.
func whole(w *weigh.Weighed) bool {
	for _, it := range w.Parts[0].Items {
		egg := slices.Contains([]string{"egg", "white", "yolk"}, it.Ingredient.Kind)
		if egg && it.State == formula.Stated && it.Amount.Measure == "" && !it.Amount.Parts && it.Amount.WeightOf == "" && !it.Amount.Number.Likely.IsInteger() {
			return false
		}
	}
	return true
}

// Pair is a published formula that failed for its proportions, beside its good
// twin.
type Pair struct {
	ID, Twin, Outcome string
	Share             float64  // of that outcome, as the judge has it
	Differs           []string // ingredients and steps in which the twin differs
	Told              []string // the first three variants
	Hit               bool     // one of them changes what the twin changed, the same way
}

// mostTold is how many variants are looked at.
const mostTold = 3

// Pairs seeks variants for the failures of published pairs with a cause in the
// formula.
func Pairs(t *reference.Tables, n int) ([]Pair, error) {
	j := judge.New(t)
	j.Readings, j.Remedies = n, false
	var out []Pair
	for i := range t.Published {
		p := &t.Published[i]
		if p.PairOf == "" || !strings.HasPrefix(p.Cause, "formula") || p.Part != string(formula.Filling) && p.Part != string(formula.Pastry) {
			continue
		}
		k := slices.IndexFunc(t.Published, func(o reference.Published) bool { return o.ID == p.PairOf })
		if k < 0 {
			continue
		}
		one, err := paired(j, p, &t.Published[k])
		if err != nil {
			return nil, fmt.Errorf("a variant of %s: %w", p.ID, err)
		}
		out = append(out, *one)
	}
	return out, nil
}

func paired(j *judge.Judge, p, twin *reference.Published) (*Pair, error) {
	f, faults := Formula(p, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	good, faults := Formula(twin, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	report, faults := j.Check(f)
	if len(faults) > 0 {
		return nil, faults
	}
	out := &Pair{ID: p.ID, Twin: twin.ID, Outcome: p.Outcome}
	moves, err := movesTo(j, f, good)
	if err != nil {
		return nil, err
	}
	for _, m := range moves {
		out.Differs = append(out.Differs, m.String())
	}
	texture := Labels(j.Tables, formula.Kind(p.Part))[p.Outcome]
	for _, s := range report.Parts[0].Texture.Shares {
		if s.Texture.ID == texture && s.Texture.Fault {
			out.Share = s.Share
		}
	}
	if out.Share < judge.May {
		return out, nil
	}
	r, err := variant.Find(j, f, variant.Wish{Against: []string{texture}})
	if err != nil || !r.Found {
		return out, err
	}
	told := [][]variant.Change{r.Changes}
	for _, o := range r.Others {
		told = append(told, o.Changes)
	}
	for _, changes := range told[:min(len(told), mostTold)] {
		var said []string
		for i := range changes {
			said = append(said, changes[i].String())
			out.Hit = out.Hit || slices.ContainsFunc(moves, func(m move) bool { return m.is(&changes[i]) })
		}
		out.Told = append(out.Told, strings.Join(said, " + "))
	}
	return out, nil
}

// move is a way in which a good twin differs: more or less of a family of
// ingredients to the rest, or a word of method.
type move struct {
	family string
	by     float64 // over what it was, to the weight of the whole
	flag   formula.Flag
	raised bool
}

func (m move) String() string {
	switch {
	case m.flag != "" && m.raised:
		return "with " + string(m.flag)
	case m.flag != "":
		return "without " + string(m.flag)
	case m.by > 1:
		return "more " + m.family
	}
	return "less " + m.family
}

// is reports whether a change is the move: the same family the same way, or a
// step that says so.
func (m move) is(c *variant.Change) bool {
	if c.Kind == variant.Done {
		return m.flag != "" && strings.Contains(c.Text, map[formula.Flag]string{
			"microwave": "microwave", "water_too_little": "until it just holds", "water_more": "no more water", "kneaded": "as little as",
			"bath": "bath", "starch_boiled": "boil the flour",
		}[m.flag]) && m.flag != "on_heat"
	}
	if m.family == "" || family(c.Item) != m.family {
		return false
	}
	more := c.Kind == variant.Added || c.Kind == variant.Stated || c.Is.Grams.Likely.GreaterThan(c.Was.Grams.Likely)
	return more == (m.by > 1)
}

// family is what an ingredient is there for: its kind where that is an egg's,
// else its first role, starch and flour as one.
func family(ing *reference.Ingredient) string {
	switch {
	case slices.Contains([]string{"egg", "white", "yolk"}, ing.Kind):
		return "egg"
	case len(ing.Roles) == 0:
		return ing.ID
	case ing.Roles[0] == "meal":
		return "flour"
	}
	return ing.Roles[0]
}

// movesTo finds the moves from a formula to its good twin: families whose share
// of the whole differs by more than a twentieth, and flags of method.
func movesTo(j *judge.Judge, bad, good *formula.Formula) ([]move, error) {
	shares := func(f *formula.Formula) (map[string]float64, formula.Method, error) {
		w, faults := weigh.Weigh(f, j.Tables)
		if len(faults) > 0 {
			return nil, formula.Method{}, faults
		}
		total := w.Parts[0].Total(w.Unknowns).Likely.InexactFloat64()
		out := map[string]float64{}
		for _, it := range w.Parts[0].Items {
			out[family(it.Ingredient)] += it.Grams.Likely.InexactFloat64() / total
		}
		return out, j.Input(w, 0).Method, nil
	}
	was, before, err := shares(bad)
	if err != nil {
		return nil, err
	}
	is, after, err := shares(good)
	if err != nil {
		return nil, err
	}
	var out []move
	families := map[string]bool{}
	for f := range was {
		families[f] = true
	}
	for f := range is {
		families[f] = true
	}
	const same, trace = .05, .001
	for f := range families {
		by := max(is[f], trace) / max(was[f], trace)
		if by > 1+same || by < 1/(1+same) {
			out = append(out, move{family: f, by: by})
		}
	}
	for f := range before.Flags {
		if !after.Flags[f] {
			out = append(out, move{flag: f})
		}
	}
	for f := range after.Flags {
		if !before.Flags[f] {
			out = append(out, move{flag: f, raised: true})
		}
	}
	slices.SortFunc(out, func(a, b move) int { return strings.Compare(a.String(), b.String()) })
	return out, nil
}
