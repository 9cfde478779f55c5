package variant

import (
	"maps"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/change"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

// missing are the wishes a point does not meet.
func (s *search) missing(p point) []Obstacle {
	var out []Obstacle
	for i := range s.bounds {
		b := &s.bounds[i]
		if of, to := s.sides(b, &p); !s.within(b, &p) {
			out = append(out, Obstacle{Ratio: b.ratio, Value: of.DivRound(to, 10), Ranges: b.spans})
		}
	}
	in, k, err := s.kernel(&p)
	if err != nil {
		return out
	}
	shares, _ := readings.Shares(k, s.opts)
	meant := s.goal.meant
	for i, limit := range s.limits(in, k, meant) {
		if shares[i] >= limit {
			out = append(out, Obstacle{Texture: k.Textures[i], Share: shares[i]})
		}
	}
	if m := s.meantAt(in); m != meant && len(out) == 0 {
		for i, limit := range s.limits(in, k, m) {
			if shares[i] >= limit {
				out = append(out, Obstacle{Texture: k.Textures[i], Share: shares[i]})
			}
		}
	}
	for _, code := range s.judge.Unshared(in, k) {
		if !slices.Contains(s.codes, code) {
			out = append(out, Obstacle{Code: code})
		}
	}
	if s.volume && !s.filled(&p) {
		out = append(out, Obstacle{Volume: true})
	}
	return out
}

// filled reports whether the dish is filled as before at a point.
func (s *search) filled(p *point) bool {
	chosen := make([]int, p.n)
	for i := range chosen {
		chosen[i] = int(p.items[i])
	}
	bounds := s.bounds
	s.bounds = nil
	fences := s.fences(chosen)
	s.bounds = bounds
	for _, l := range fences[0][0] {
		sum := l.fixed
		for i, c := range chosen {
			sum += l.at[i] * s.list[c].steps[p.steps[i]-1].grams.InexactFloat64()
		}
		if sum < -slack*(l.wide+l.far[0]) {
			return false
		}
	}
	return true
}

// without is a point with its i-th ingredient as the book has it.
func (p point) without(i int) point {
	copy(p.items[i:], p.items[i+1:p.n])
	copy(p.steps[i:], p.steps[i+1:p.n])
	p.n--
	p.items[p.n], p.steps[p.n] = 0, 0
	return p
}

// alone is a point with its i-th ingredient changed and nothing else.
func (p point) alone(i int) point {
	out := point{n: 1}
	out.items[0], out.steps[0] = p.items[i], p.steps[i]
	return out
}

// changes tells a point, what is done otherwise first; with why, each with the
// reason for it and what it does by itself.
func (s *search) changes(p point, why bool) []Change {
	var out []Change
	for i, w := range s.ways {
		if p.ways>>i&1 == 0 {
			continue
		}
		c := Change{Kind: Done, Text: w.Text, Line: -1}
		if why {
			rest := p
			rest.ways &^= 1 << i
			c.Why, c.Effects = s.missing(rest), s.effects(point{ways: 1 << i})
		}
		out = append(out, c)
	}
	for i := range p.n {
		one := &s.list[p.items[i]]
		st := one.steps[p.steps[i]-1]
		c := Change{Kind: Amount, Line: one.on.Line, Item: one.on.Ingredient}
		c.Was = Quantity{Number: one.book.number, Measure: one.unit, Counted: byNumber(&one.on.Amount), Grams: one.on.Grams}
		c.Is = Quantity{Number: st.number, Measure: one.unit, Counted: byNumber(&one.on.Amount) && !st.stated}
		switch {
		case one.added != nil:
			c.Kind, c.Line, c.Was = Added, -1, Quantity{}
			c.Is.Grams = s.gramsOf(one, st)
		case st.stated:
			c.Kind, c.Was = Stated, Quantity{}
			c.Is.Grams = reference.Exact(st.grams)
		case st.number.IsZero():
			c.Kind = LeftOut
		default:
			c.Is.Grams = s.gramsOf(one, st)
		}
		if why {
			c.Why, c.Effects = s.missing(p.without(i)), s.effects(p.alone(i))
		}
		out = append(out, c)
	}
	return out
}

// gramsOf is what a step weighs, with what is left open of its measure.
func (s *search) gramsOf(one *item, st step) reference.Span {
	c := change.Change{Amounts: []change.Amount{{Item: one.at, Number: st.number}}}
	in, ok := c.Apply(s.in)
	if !ok {
		return reference.Exact(st.grams)
	}
	return in.Weighed.Parts[in.Part].Items[one.at].Grams
}

// effects are what a point does to the part, the texture to be answered first.
func (s *search) effects(p point) []judge.Effect {
	book := s.book()
	_, was, err := s.kernel(&book)
	if err != nil {
		return nil
	}
	_, is, err := s.kernel(&p)
	if err != nil || len(is.Textures) == 0 {
		return nil
	}
	first := ""
	if len(s.goal.against) > 0 {
		first = s.goal.against[0]
	}
	sharesWas, _ := readings.Shares(was, s.opts)
	sharesIs, _ := readings.Shares(is, s.opts)
	before, after := judge.Sum(was.Textures, sharesWas), judge.Sum(is.Textures, sharesIs)
	if first == "" {
		for _, id := range slices.Sorted(maps.Keys(before)) {
			if first == "" || before[id] > before[first] {
				first = id
			}
		}
	}
	likelyWas, likelyIs := readings.LikelyReading(was), readings.LikelyReading(is)
	return judge.Effects(was, first, before, after, &likelyWas, &likelyIs)
}

// lattice tells the amounts that are tried.
func (s *search) lattice() []Steps {
	var out []Steps
	for i := range s.list {
		one := &s.list[i]
		l := Steps{Item: one.on.Ingredient, Unit: one.unit, Book: one.book.number, Added: one.added != nil}
		for _, st := range one.steps {
			l.Steps = append(l.Steps, st.number)
		}
		slices.SortFunc(l.Steps, decimal.Decimal.Cmp)
		out = append(out, l)
	}
	return out
}

func (s *search) wayTexts() []string {
	var out []string
	for _, w := range s.ways {
		out = append(out, w.Text)
	}
	return out
}

// How many points the search for the closest looks at by their likely reading,
// and how many of the nearest it puts to all readings.
const (
	mostNear  = 4000
	putToTest = 12
)

// closest is the point nearest to the wishes when none meets them all: nearest
// by the distance from the class's ranges, then by the faults that are left,
// then the one with the least change; of those with no more than the usual
// number of ingredients changed.
func (s *search) closest() *point {
	type near struct {
		p    point
		away float64
	}
	var list []near
	bounds := s.bounds
	s.bounds = nil // the dish alone, so that every distance is seen
	counted := s.count
	for n := 0; n <= min(s.most, Usual); n++ {
		s.choose(n, func(chosen []int) {
			s.steps(chosen, func(p point) {
				list = append(list, near{p, s.away(bounds, &p)})
			})
		})
		if len(bounds) == 0 && len(list)*len(s.sets) > mostNear {
			break
		}
	}
	s.bounds, s.count = bounds, counted
	slices.SortStableFunc(list, func(a, b near) int { return sign(a.away - b.away) })
	var most []near
	for i := range list {
		if list[i].away > list[0].away+slack || len(most) >= mostNear {
			break
		}
		for _, set := range s.sets {
			one := list[i]
			one.p.ways = set
			in, k, err := s.kernel(&one.p)
			if err != nil {
				continue
			}
			out := readings.LikelyReading(k)
			one.away = s.over(in, k, out.Shares[:len(k.Textures)])
			most = append(most, one)
		}
	}
	slices.SortStableFunc(most, func(a, b near) int { return sign(a.away - b.away) })
	best := near{away: math.Inf(1)}
	for _, one := range most[:min(len(most), putToTest)] {
		in, k, err := s.kernel(&one.p)
		if err != nil {
			continue
		}
		shares, _ := readings.Shares(k, s.opts)
		if one.away = s.over(in, k, shares); one.away < best.away-slack {
			best = one
		}
	}
	// What is hardly any better than the book is no answer.
	book := s.book()
	if in, k, err := s.kernel(&book); err == nil && len(bounds) == 0 {
		shares, _ := readings.Shares(k, s.opts)
		if s.over(in, k, shares)-best.away < worthWhile {
			return &book
		}
	}
	return &best.p
}

// worthWhile is how far the closest must bring the faults down to be worth
// telling.
const worthWhile = .05

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// away is how far a point is from the ranges: the sum of the squares of what
// its ratios lie outside, in logs.
func (s *search) away(bounds []bound, p *point) float64 {
	sum := 0.0
	var chosen [64]float64
	for i := range p.n {
		one := &s.list[p.items[i]]
		chosen[one.at] = one.steps[p.steps[i]-1].grams.InexactFloat64()
	}
	for i := range bounds {
		b := &bounds[i]
		of, to := 0.0, 0.0
		for j, g := range s.grams {
			for n := range p.n {
				if s.list[p.items[n]].at == j {
					g = chosen[j]
				}
			}
			of += b.ofF[j] * g
			to += b.toF[j] * g
		}
		if x := b.excess(of, to); x > slack {
			sum += x * x
		}
	}
	return sum
}

// over is how much the shares are over their limits, all together.
func (s *search) over(in bake.Input, k *bake.Kernel, shares []float64) float64 {
	sum := 0.0
	for i, limit := range s.limits(in, k, s.goal.meant) {
		sum += max(0, shares[i]-limit)
	}
	return sum
}

// lineItems are the places of the part's items that stand on a line.
func lineItems(p *weigh.Part, line int) []int {
	var out []int
	for i := range p.Items {
		if p.Items[i].Line == line {
			out = append(out, i)
		}
	}
	return out
}
