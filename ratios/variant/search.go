package variant

import (
	"math/bits"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/ratios/setting"
)

// search is the lattice of one part, and what is wanted on it.
type search struct {
	judge  *judge.Judge
	goal   goal
	most   int
	volume bool // the dish is to be filled as before

	in    bake.Input // the part, with one step of everything that may be put in
	kind  formula.Kind
	lines int // of the book; those put in stand behind
	extra []addition
	ways  []judge.Way
	sets  []uint32 // of ways that may be done together, fewest first
	list  []item
	total decimal.Decimal // the book's, grams
	flour decimal.Decimal
	opts  readings.Options

	bounds []bound
	fills  []float64 // ml to a gram of each item
	grams  []float64 // of each item in the book, likely
	shares map[string]float64
	codes  []string // of the book's findings without a share
	count  Count
}

// point is a place on the lattice: which ways are done, and the step of each
// item, 0 for as the book has it.
type point struct {
	ways  uint32
	n     int
	items [Most]uint8 // places in the list, rising
	steps [Most]uint8 // places among the item's steps, from 1
	rel   float64
}

func newSearch(j *judge.Judge, before *judge.Report, g goal, w Wish) (*search, error) {
	s := &search{
		judge: j, goal: g, most: w.Most, volume: !w.AnyVolume, kind: before.Formula.Parts[g.part].Kind,
		lines: len(before.Formula.Parts[g.part].Lines), opts: j.Options(before.Formula), shares: map[string]float64{},
	}
	if s.most == 0 {
		s.most = Usual
	}
	book := j.Input(before.Weighed, g.part)
	book.Silent = book.Silent || s.kind == formula.Filling && bake.Unsaid(book.Weighed.Parts[g.part].Of, &book.Method)
	s.in = book
	for i := range book.Weighed.Parts[g.part].Items {
		it := &book.Weighed.Parts[g.part].Items[i]
		if it.Used(book.Weighed.Unknowns) {
			s.total = s.total.Add(it.Grams.Likely)
			if hasRole(it, "flour", "meal") {
				s.flour = s.flour.Add(it.Grams.Likely)
			}
		}
	}
	s.bounds = boundsOf(g.class, j.Tables, string(s.kind))
	profile := ratios.ProfileOf(before.Weighed, g.part, j.Tables, "")
	s.bounds = slices.DeleteFunc(s.bounds, func(b bound) bool {
		return slices.ContainsFunc(profile.Ratios, func(r ratios.Ratio) bool { return r.Row == b.ratio && judge.Seasons(&r) })
	})
	if !s.total.IsPositive() {
		return nil, &Problem{What: "nothing of the " + before.Formula.Parts[g.part].Name + " is weighed, so that nothing can be changed"}
	}
	k, err := bake.Compile(j.Ready(book))
	if err != nil {
		return nil, err
	}
	if len(w.Against) == 0 {
		s.goal.against = s.found(book, k)
	}
	shares, _ := readings.Shares(k, s.opts)
	for i, id := range k.Textures {
		s.shares[id] = shares[i]
	}
	s.codes = j.Unshared(book, k)
	s.waysOf(book, k)
	if err := s.extend(book); err != nil {
		return nil, err
	}
	if err := s.items(w.Keep); err != nil {
		return nil, err
	}
	for i := range s.bounds {
		s.bounds[i].weighIn(s)
	}
	s.fillsOf()
	return s, nil
}

// found are the faults of the book's formula that are to be answered when none
// is named.
func (s *search) found(in bake.Input, k *bake.Kernel) []string {
	shares, _ := readings.Shares(k, s.opts)
	var out []string
	for i, faulty := range judge.Faulty(in, k, s.goal.meant) {
		if faulty && shares[i] >= judge.May {
			out = append(out, k.Textures[i])
		}
	}
	return out
}

// waysOf finds the ways that make sense against what is to be answered, and
// every set of them that touches each thing once.
func (s *search) waysOf(in bake.Input, k *bake.Kernel) {
	for _, w := range judge.Ways(in, k) {
		if slices.ContainsFunc(w.Against, func(x string) bool { return slices.Contains(s.goal.against, x) }) {
			s.ways = append(s.ways, w)
		}
	}
	for set := range uint32(1) << len(s.ways) {
		touched := map[string]bool{}
		ok := true
		for i, w := range s.ways {
			if set>>i&1 == 1 {
				ok = ok && !touched[w.Touches]
				touched[w.Touches] = true
			}
		}
		if ok {
			s.sets = append(s.sets, set)
		}
	}
	slices.SortStableFunc(s.sets, func(a, b uint32) int { return bits.OnesCount32(a) - bits.OnesCount32(b) })
}

// extend weighs the part anew with one step of everything that may be put in.
func (s *search) extend(book bake.Input) error {
	s.extra = s.wanted()
	f := *book.Weighed.Formula
	f.Parts = slices.Clone(f.Parts)
	p := &f.Parts[s.goal.part]
	if s.goal.class != nil {
		p.Class = s.goal.class.ID
	}
	p.Lines = slices.Clone(p.Lines)
	for i := range s.extra {
		p.Lines = append(p.Lines, s.extra[i].line(s.judge.Tables))
	}
	w, faults := weigh.Weigh(&f, s.judge.Tables)
	if len(faults) > 0 {
		return faults
	}
	// The method is the book's: what is put in has no words of its own.
	s.in.Weighed = w
	return nil
}

// fillsOf is how many ml a gram of each item comes to. Volume is a sum over the
// items, so that each can be told by itself.
func (s *search) fillsOf() {
	items := s.in.Weighed.Parts[s.in.Part].Items
	s.fills, s.grams = make([]float64, len(items)), make([]float64, len(items))
	for i := range items {
		it := &items[i]
		if it.State != formula.Stated || !it.Used(s.in.Weighed.Unknowns) {
			if s.kind == formula.Pastry && hasRole(it, "water", "milk") {
				s.fills[i] = 1
			}
			continue
		}
		alone := s.in
		w := *s.in.Weighed
		w.Parts = slices.Clone(w.Parts)
		w.Parts[s.in.Part].Items = []weigh.Item{*it}
		alone.Weighed = &w
		k, err := bake.Compile(alone)
		if g := it.Grams.Likely.InexactFloat64(); err == nil && g > 0 {
			mix := k.LikelyMix()
			s.fills[i] = setting.Volume(&mix) / g
			if s.addition(it) == nil {
				s.grams[i] = g
			}
		}
	}
}

// book is the point at which nothing is changed.
func (s *search) book() point { return point{} }

func (s *search) same(p point) bool { return p.ways == 0 && p.n == 0 }

// gramsAt are the likely grams of every item at a point, exactly.
func (s *search) gramsAt(p *point) []decimal.Decimal {
	items := s.in.Weighed.Parts[s.in.Part].Items
	out := make([]decimal.Decimal, len(items))
	for i := range items {
		it := &items[i]
		if s.addition(it) == nil && it.State == formula.Stated && it.Used(s.in.Weighed.Unknowns) {
			out[i] = it.Grams.Likely
		}
	}
	for i := range p.n {
		one := &s.list[p.items[i]]
		out[one.at] = one.steps[p.steps[i]-1].grams
	}
	return out
}

// change is what a point comes to.
func (s *search) change(p *point) change.Change {
	var c change.Change
	for i, w := range s.ways {
		if p.ways>>i&1 == 1 {
			c.Drop = append(c.Drop, w.Change.Drop...)
			c.Raise = append(c.Raise, w.Change.Raise...)
			c.HeatC = max(c.HeatC, w.Change.HeatC)
		}
	}
	var in [64]bool
	for i := range p.n {
		one := &s.list[p.items[i]]
		st := one.steps[p.steps[i]-1]
		a := change.Amount{Item: one.at, Number: st.number}
		if st.stated {
			a.Grams = st.grams
		}
		c.Amounts = append(c.Amounts, a)
		if one.added != nil {
			in[one.at] = true
			c.Raise = append(c.Raise, one.added.raise...)
		}
	}
	for i := range s.in.Weighed.Parts[s.in.Part].Items {
		if s.addition(&s.in.Weighed.Parts[s.in.Part].Items[i]) != nil && !in[i] {
			c.Amounts = append(c.Amounts, change.Amount{Item: i})
		}
	}
	return c
}

// kernel is the part at a point, made ready.
func (s *search) kernel(p *point) (bake.Input, *bake.Kernel, error) {
	in, err := applied(s.in, s.change(p))
	if err != nil {
		return in, nil, err
	}
	in = s.judge.Ready(in)
	k, err := bake.Compile(in)
	return in, k, err
}

// clear is by how much a share is kept under the limit: the variant as it is
// written out may draw its doubts in another order than the search did, and a
// share is known no finer.
const clear = .005

// limits are what each share must stay under: those to be answered clear of a
// quarter, the other faults too unless the book's formula already has more.
func (s *search) limits(in bake.Input, k *bake.Kernel, meant string) []float64 {
	const none = 2
	out := make([]float64, len(k.Textures))
	for i, faulty := range judge.Faulty(in, k, meant) {
		out[i] = none
		if !faulty {
			continue
		}
		out[i] = judge.May - clear
		if id := k.Textures[i]; !slices.Contains(s.goal.against, id) && s.shares[id] >= judge.May-clear {
			const same = 1e-9
			out[i] = s.shares[id] + same
		}
	}
	return out
}

// serves reports whether a point meets every wish.
func (s *search) serves(p *point) bool {
	for i := range s.bounds {
		if !s.within(&s.bounds[i], p) {
			return false
		}
	}
	return s.sound(p)
}

// sound reports whether the readings of a point meet every wish.
func (s *search) sound(p *point) bool {
	in, k, err := s.kernel(p)
	if err != nil {
		return false
	}
	for _, code := range s.judge.Unshared(in, k) {
		if !slices.Contains(s.codes, code) {
			return false
		}
	}
	if !readings.Under(k, s.opts, s.limits(in, k, s.goal.meant)) {
		return false
	}
	// Where no class is named the changed part may be nearest to another, which
	// must not be meant to be something else: a fault is not answered by a name.
	if m := s.meantAt(in); m != s.goal.meant {
		return readings.Under(k, s.opts, s.limits(in, k, m))
	}
	return true
}

// meantAt is the texture that is no fault of the part as changed.
func (s *search) meantAt(in bake.Input) string {
	if s.goal.class != nil {
		return s.goal.meant
	}
	p := ratios.ProfileOf(in.Weighed, in.Part, s.judge.Tables, "")
	if fit := judge.ClassOf(in, &p); fit != nil && !slices.Contains(s.goal.against, fit.Class.Meant) {
		return fit.Class.Meant
	}
	return ""
}

// mostOthers is how many further ways of another kind are looked for, and
// mostFurther how many points may be judged for them.
const (
	mostOthers  = 3
	mostFurther = 400
)

// run goes through the lattice in the order of cost and gives the first point
// that serves, nil when none does, and the next ones of other kinds.
func (s *search) run() (*point, []point) {
	var best *point
	var others, found []point
	further := mostFurther
	for n := 0; n <= s.most; n++ {
		for from := 0; from < len(s.sets); {
			to := from
			for to < len(s.sets) && bits.OnesCount32(s.sets[to]) == bits.OnesCount32(s.sets[from]) {
				to++
			}
			level := s.level(n, s.sets[from:to])
			from = to
			level = slices.DeleteFunc(level, func(q point) bool {
				return slices.ContainsFunc(found, func(p point) bool { return q.holds(&p) })
			})
			for len(level) > 0 {
				if best != nil && further <= 0 {
					return best, others
				}
				limit := len(level)
				if best != nil {
					limit = min(limit, further)
				}
				i := s.first(level[:limit])
				judged := limit
				if i >= 0 {
					judged = i + 1
				}
				if best == nil {
					s.count.Judged += judged
				} else {
					further -= judged
				}
				if i < 0 {
					break
				}
				p := level[i]
				found = append(found, p)
				level = slices.DeleteFunc(level[i+1:], func(q point) bool { return q.holds(&p) })
				if best == nil {
					best = &p
					continue
				}
				if others = append(others, p); len(others) >= mostOthers {
					return best, others
				}
			}
		}
		if best != nil && n >= best.n+1 {
			break // what changes two ingredients more is no near second
		}
	}
	return best, others
}

// holds reports whether a point changes everything another changes, in whatever
// amount: where the other serves, this one is it with another amount or with
// something needless besides.
func (p *point) holds(q *point) bool {
	if p.ways&q.ways != q.ways {
		return false
	}
	for _, i := range q.items[:q.n] {
		if !slices.Contains(p.items[:p.n], i) {
			return false
		}
	}
	return true
}

// level lists the points with n ingredients changed, under each of some sets of
// ways, that are within the ranges and the dish, least change first.
func (s *search) level(n int, sets []uint32) []point {
	var out []point
	s.choose(n, func(chosen []int) {
		s.steps(chosen, func(p point) {
			for _, set := range sets {
				p.ways = set
				out = append(out, p)
			}
		})
	})
	s.count.Ranged += len(out)
	slices.SortStableFunc(out, func(a, b point) int {
		switch {
		case a.rel < b.rel:
			return -1
		case a.rel > b.rel:
			return 1
		}
		return 0
	})
	return out
}

// choose goes through every choice of n of the items.
func (s *search) choose(n int, see func([]int)) {
	chosen := make([]int, n)
	var go1 func(at, from int)
	go1 = func(at, from int) {
		if at == n {
			see(chosen)
			return
		}
		for i := from; i < len(s.list); i++ {
			chosen[at] = i
			go1(at+1, i+1)
		}
	}
	go1(0, 0)
}

// first is the place of the first point of a list that serves, -1 when none
// does. The list is judged by as many hands as the machine has; which is first
// does not hang on how many.
func (s *search) first(list []point) int {
	var next, found atomic.Int64
	found.Store(int64(len(list)))
	var hands sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		hands.Go(func() {
			for {
				i := next.Add(1) - 1
				if i >= found.Load() {
					return
				}
				if !s.serves(&list[i]) {
					continue
				}
				for {
					was := found.Load()
					if i >= was || found.CompareAndSwap(was, i) {
						break
					}
				}
			}
		})
	}
	hands.Wait()
	if i := found.Load(); i < int64(len(list)) {
		return int(i)
	}
	return -1
}
