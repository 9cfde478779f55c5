package explain

import (
	"slices"

	"assize/formula"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/variant"
)

// Step is what to do next time: one change, or the least number of them that
// answer together, with all that they do.
type Step struct {
	Texts []string
	// Ingredients is how many amounts it changes; method and oven are changed
	// before ingredients are.
	Ingredients int
	Effect      []judge.Effect // none where no share is reckoned
	Left        float64        // share of the result that is left
	Answers     bool           // it is then no longer one of the ways
	In          Unit           // what Left is of
}

// mostNext is how many ways are told, mostTogether how many changes are tried
// together, and helps how far a share must fall to be called a help.
const (
	mostNext     = 3
	mostTogether = 3
	helps        = .10
)

// next searches the judge's remedies, then two and three of them together, for
// the least that answer the result: method and oven before ingredients, fewer
// changes before more, the greater help first.
func (b *Bake) next(in bake.Input, k *bake.Kernel, o readings.Options, g gauge, of Seen, share float64, shares []float64) []Step {
	if g.judged == "" {
		return byPractice(in, k, o, g, share)
	}
	fitting := judge.FittingFor(in, k, g.judged)
	for _, v := range variations(in, k) {
		if v.undo != nil && !undone(fitting, *v.undo) {
			fitting = append(fitting, judge.Fitting{Text: v.instead + " in place of " + v.done, Change: *v.undo})
		}
	}
	var best []Step
	for n := 1; n <= mostTogether; n++ {
		var found []Step
		for _, set := range choose(len(fitting), n) {
			if s, ok := tried(in, k, o, g, share, shares, fitting, set); ok {
				found = append(found, s)
			}
		}
		rank(found)
		if slices.ContainsFunc(found, func(s Step) bool { return s.Answers }) {
			if n > 1 {
				found = slices.DeleteFunc(found, func(s Step) bool { return !s.Answers })
			}
			best = append(found, best...)
			break
		}
		if n == 1 {
			best = found // what helps by itself is told even where it takes more to answer
		}
	}
	return best[:min(len(best), mostNext)]
}

// mostChanged is how many ingredients a variant sought here may change: more is a
// search of its own.
const mostChanged = 2

// variant is the smallest set of changes to the page that answers a result, where
// the page has it coming and a step helps but none answers; nil when there is
// none.
func (b *Bake) variant(e *Explanation) *variant.Result {
	if e.In != Shares || e.Written < judge.May || e.Share < judge.May || len(e.Next) == 0 || slices.ContainsFunc(e.Next, func(s Step) bool { return s.Answers }) {
		return nil
	}
	f := b.Written.Formula
	r, err := variant.Find(b.judge, f, variant.Wish{Part: f.Parts[e.Of.Part].Name, Against: []string{e.Judged}, Most: mostChanged})
	if err != nil || !r.Found || r.Unchanged {
		return nil // a wish the search cannot meet leaves the steps as they are
	}
	return r
}

// undone reports that one of the remedies already leaves out what a change would.
func undone(fitting []judge.Fitting, c change.Change) bool {
	return slices.ContainsFunc(fitting, func(f judge.Fitting) bool {
		return slices.ContainsFunc(c.Drop, func(flag formula.Flag) bool { return slices.Contains(f.Change.Drop, flag) })
	})
}

// rank puts the smallest first: those that answer, then the fewest ingredients
// changed, then the least that is left.
func rank(list []Step) {
	slices.SortStableFunc(list, func(a, b Step) int {
		switch {
		case a.Answers != b.Answers:
			if a.Answers {
				return -1
			}
			return 1
		case a.Ingredients != b.Ingredients:
			return a.Ingredients - b.Ingredients
		case a.Left < b.Left:
			return -1
		case a.Left > b.Left:
			return 1
		}
		return 0
	})
}

// tried is a set of remedies done together; false when it is no help, or when
// one of them undoes another.
func tried(in bake.Input, k *bake.Kernel, o readings.Options, g gauge, share float64, shares []float64, fitting []judge.Fitting, set []int) (Step, bool) {
	changed, s := in, Step{}
	raised, dropped, touched := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, i := range set {
		c := fitting[i].Change
		if touches := fitting[i].Touches; touches != "" {
			if touched[touches] {
				return s, false
			}
			touched[touches] = true
		}
		for _, f := range c.Drop {
			if raised[string(f)] {
				return s, false
			}
			dropped[string(f)] = true
		}
		for _, f := range c.Raise {
			if dropped[string(f)] {
				return s, false
			}
			raised[string(f)] = true
		}
		var ok bool
		if changed, ok = c.Apply(changed); !ok {
			return s, false
		}
		s.Texts = append(s.Texts, fitting[i].Text)
		s.Ingredients += ingredients(c)
	}
	k2, err := bake.Compile(changed)
	if err != nil {
		return s, false
	}
	left, after := g.told(changed, k2, o)
	if share-left < helps {
		return s, false
	}
	s.Left, s.Answers, s.In = left, left < judge.May, Shares
	was, is := readings.LikelyReading(k), readings.LikelyReading(k2)
	s.Effect = judge.Effects(k, g.judged, judge.Sum(k.Textures, shares), judge.Sum(k2.Textures, after), &was, &is)
	return s, true
}

// ingredients is how many things a change alters the amount of.
func ingredients(c change.Change) int {
	n := len(c.Add)
	if len(c.Times) > 0 {
		n++
	}
	return n
}

// choose lists the sets of n out of so many, in order.
func choose(of, n int) [][]int {
	var out [][]int
	var pick func(from int, set []int)
	pick = func(from int, set []int) {
		if len(set) == n {
			out = append(out, slices.Clone(set))
			return
		}
		for i := from; i < of; i++ {
			pick(i+1, append(set, i))
		}
	}
	pick(0, nil)
	return out
}

// byPractice are the steps that take away a reason for a texture no share is
// reckoned of.
func byPractice(in bake.Input, k *bake.Kernel, o readings.Options, g gauge, reasons float64) []Step {
	var out []Step
	seen := map[string]bool{} // changes told: one way of each will do
	for _, v := range variations(in, k) {
		changed, k2, ok := v.apply(in, k)
		if !ok || v.open || seen[v.id+v.done] || !g.minds(v.id) {
			continue
		}
		if left, _ := g.told(changed, k2, o); reasons-left >= g.least(reasons) {
			s := Step{Texts: []string{v.instead}, Left: left, Answers: left == 0, In: g.unit()}
			if v.kind == InFormula {
				s.Ingredients = 1
			}
			seen[v.id+v.done] = true
			out = append(out, s)
		}
	}
	rank(out)
	return out[:min(len(out), mostNext)]
}
