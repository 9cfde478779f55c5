package variant

import (
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/reference"
)

// Usual is how many ingredients may be changed unless told otherwise, and Most
// how many may ever be.
const (
	Usual = 3
	Most  = 4
)

// Wish is what is wanted of a variant. The zero value answers the findings of
// the first part that has any, and keeps to its class where the receipt names
// one.
type Wish struct {
	Part    string   // name of the part; empty for the first with something to answer
	To      string   // class to be brought into
	Against []string // textures to answer; empty for every one found
	Keep    []string // ingredients whose amounts stay as they are
	Most    int      // ingredients changed at most; 0 for Usual
	// AnyVolume lets the part come to more or less than a tenth beside what the
	// book makes; else the dish is taken to be filled as before.
	AnyVolume bool
}

// Problem is a wish that cannot be understood.
type Problem struct {
	What  string
	Word  string   // the word that is not known
	Known []string // words that would do
}

func (p *Problem) Error() string { return p.What }

// Result is what the search came to.
type Result struct {
	Formula *formula.Formula // as the book has it
	Part    int
	Class   *reference.Class // brought into, nil when none was asked
	Against []string         // textures to be answered
	Keep    []string
	Most    int // ingredients that might be changed

	Before *judge.Report
	// Found reports that every wish is met; Unchanged that the book's formula
	// meets them all itself.
	Found     bool
	Unchanged bool
	// Changes are those of the variant, or of the closest when none was found.
	Changes []Change
	// Effects are those of all changes together.
	Effects []judge.Effect
	// Variant is the changed formula and After its report, both nil when nothing
	// is changed.
	Variant *formula.Formula
	After   *judge.Report
	// Reads reports that the words of the variant are read as what is meant; where
	// they are not, its method is to be put right by hand.
	Reads bool
	// Otherwise are the questions of the making that the class answers otherwise
	// than the part as changed: fat, fire, air. The ranges say nothing of them.
	Otherwise []string
	// Stands is what still stands in the way when none was found.
	Stands []Obstacle
	// Others are the next best ways of another kind, smallest first.
	Others  []Other
	Lattice []Steps
	Ways    []string // what may be done otherwise
	Count   Count
}

// Kind of a change.
type Kind string

// The kinds of change.
const (
	Done    Kind = "done"    // done otherwise
	Amount  Kind = "amount"  // another amount
	Stated  Kind = "stated"  // an amount the book does not give
	Added   Kind = "added"   // put in
	LeftOut Kind = "leftout" // left out
)

// Change is one thing of a variant.
type Change struct {
	Kind Kind
	Text string // what is done otherwise
	Line int    // of the part, -1 for what is done or put in
	Item *reference.Ingredient
	Was  Quantity
	Is   Quantity
	// Why are the wishes that would not be met without this change.
	Why []Obstacle
	// Effects are those of this change by itself.
	Effects []judge.Effect
}

// Quantity is an amount as the kitchen measures it, and in grams.
type Quantity struct {
	Number  decimal.Decimal
	Measure string // measure or thing counted
	Counted bool   // eggs, fruit: by number, not by measure
	Grams   reference.Span
}

// Obstacle is a wish that is not met: a texture's share, or a ratio outside the
// class's range. Code is a finding told without a share that the change brings.
type Obstacle struct {
	Texture string
	Share   float64
	Ratio   *reference.Ratio
	Value   decimal.Decimal
	Ranges  []Range
	Code    string
	Volume  bool // more or less of it than the dish is filled with
}

// Range is one range of a ratio within which it serves.
type Range struct{ Low, High decimal.Decimal }

// Other is another variant that meets every wish.
type Other struct {
	Changes []Change
	Effects []judge.Effect
}

// Steps are the amounts of one ingredient that were tried.
type Steps struct {
	Item  *reference.Ingredient
	Unit  string
	Book  decimal.Decimal // nothing for what is put in
	Steps []decimal.Decimal
	Added bool
}

// Count is how much was tried.
type Count struct {
	Points int // points of the lattice gone through or ruled out, up to the answer
	Ranged int // within the ranges and the dish, exactly
	Judged int // of those, put to the readings
}

// Find finds the smallest variant of a formula that meets the wish. The error
// is a *Problem when the wish cannot be understood, and a fault.List when the
// formula cannot be weighed.
func Find(j *judge.Judge, f *formula.Formula, w Wish) (*Result, error) {
	quick := *j
	quick.Remedies = false
	before, faults := quick.Check(f)
	if len(faults) > 0 {
		return nil, faults
	}
	g, err := goalOf(&quick, before, w)
	if err != nil {
		return nil, err
	}
	s, err := newSearch(&quick, before, g, w)
	if err != nil {
		return nil, err
	}
	r := &Result{Formula: f, Part: g.part, Class: g.class, Against: s.goal.against, Keep: w.Keep, Most: s.most, Before: before}
	r.Lattice, r.Ways = s.lattice(), s.wayTexts()
	book := s.book()
	if len(s.missing(book)) == 0 {
		r.Found, r.Unchanged = true, true
		r.Otherwise = otherwiseMade(r.Class, &s.in.Method, s.judge.Tables)
		return r, nil
	}
	best, others := s.run()
	if best == nil {
		best = s.closest()
		r.Stands = s.missing(*best)
	} else {
		r.Found = true
	}
	r.Count = s.count
	if !s.same(*best) {
		if err := s.describe(r, *best, others); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// otherwiseMade are the questions of the making that a class answers otherwise
// than the words of a receipt.
func otherwiseMade(c *reference.Class, m *formula.Method, t *reference.Tables) []string {
	if c == nil {
		return nil
	}
	var out []string
	for question, same := range judge.Made(c, m, t) {
		if !same {
			out = append(out, question)
		}
	}
	slices.Sort(out)
	return out
}

// describe tells the changes of a point with their reasons and effects, and
// writes and checks the variant.
func (s *search) describe(r *Result, p point, others []point) error {
	r.Changes = s.changes(p, true)
	r.Effects = s.effects(p)
	for _, o := range others {
		r.Others = append(r.Others, Other{Changes: s.changes(o, false), Effects: s.effects(o)})
	}
	v, err := s.rewrite(p)
	if err != nil {
		return fmt.Errorf("writing the variant of %s: %w", r.Formula.Title, err)
	}
	r.Variant = v
	in, err := inputOf(s.judge, v, s.in.Part)
	if err != nil {
		return fmt.Errorf("weighing the variant of %s: %w", r.Formula.Title, err)
	}
	want, err := applied(s.in, s.change(&p))
	if err != nil {
		return err
	}
	r.Otherwise = otherwiseMade(r.Class, &want.Method, s.judge.Tables)
	r.Reads = read(&want.Method, &in.Method)
	after, faults := s.judge.Check(v)
	if len(faults) > 0 {
		return fmt.Errorf("checking the variant of %s: %w", r.Formula.Title, faults)
	}
	r.After = after
	return nil
}

// kitchenEgg is what an egg is taken to weigh where eggs are given by weight,
// grams out of the shell.
var kitchenEgg = decimal.NewFromInt(50)

// inputOf is the part as the judge takes it, with the formula given.
func inputOf(j *judge.Judge, f *formula.Formula, part int) (bake.Input, error) {
	w, faults := weigh.Weigh(f, j.Tables)
	if len(faults) > 0 {
		return bake.Input{}, faults
	}
	return j.Input(w, part), nil
}

// applied is a change put to an input.
func applied(in bake.Input, c change.Change) (bake.Input, error) {
	out, ok := c.Apply(in)
	if !ok {
		return in, fmt.Errorf("a change names an ingredient the tables do not have")
	}
	return out, nil
}
