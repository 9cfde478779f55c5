package variant

import "slices"

// tenth is how far the volume of the part may move for the dish to count as
// filled as before.
const tenth = .10

// slack keeps the rounding of sums in floats from ruling out what lies on the
// end of a range; what it lets through is held against the range exactly.
const slack = 1e-9

// line is one straight bound on the amounts: the sum over the items of at times
// grams is at least zero.
type line struct {
	at    []float64
	size  []float64 // of what the rounding of at hangs on
	fixed float64   // the sum over the items not chosen
	wide  float64   // the size of that sum
	most  []float64 // the most that the chosen items from a place on can bring
	far   []float64
}

// fence is a choice of lines of which one at least has to hold whole: the
// ranges of one ratio.
type fence [][]line

// steps goes through every choice of steps of the chosen items that may be
// within the ranges and the dish. A branch is left as soon as no steps of the
// items still to come could bring it within.
func (s *search) steps(chosen []int, see func(point)) {
	fences := s.fences(chosen)
	p := point{n: len(chosen)}
	for i, c := range chosen {
		p.items[i] = uint8(c)
	}
	all := 1
	for _, c := range chosen {
		all *= len(s.list[c].steps)
	}
	s.count.Points += all * len(s.sets)
	sums := make([][]float64, len(chosen)+1)
	n := 0
	for _, f := range fences {
		for _, l := range f {
			n += len(l)
		}
	}
	for i := range sums {
		sums[i] = make([]float64, n)
	}
	at := 0
	for _, f := range fences {
		for _, l := range f {
			for _, one := range l {
				sums[0][at] = one.fixed
				at++
			}
		}
	}
	var branch func(depth int, rel float64)
	branch = func(depth int, rel float64) {
		if !open(fences, sums[depth], depth) {
			return
		}
		if depth == len(chosen) {
			p.rel = rel
			see(p)
			return
		}
		one := &s.list[chosen[depth]]
		for i := range one.steps {
			g := one.steps[i].grams.InexactFloat64()
			at := 0
			for _, f := range fences {
				for _, l := range f {
					for j := range l {
						sums[depth+1][at] = sums[depth][at] + l[j].at[depth]*g
						at++
					}
				}
			}
			p.steps[depth] = uint8(i + 1)
			branch(depth+1, rel+one.steps[i].rel)
		}
	}
	branch(0, 0)
}

// open reports whether every fence may still be passed.
func open(fences []fence, sums []float64, depth int) bool {
	at := 0
	for _, f := range fences {
		passed := len(f) == 0
		for _, lines := range f {
			whole := true
			for i := range lines {
				l := &lines[i]
				if sums[at]+l.most[depth] < -slack*(l.wide+l.far[0]) {
					whole = false
				}
				at++
			}
			passed = passed || whole
		}
		if !passed {
			return false
		}
	}
	return true
}

// fences are the bounds of the class and the dish, as seen by a choice of items.
func (s *search) fences(chosen []int) []fence {
	var out []fence
	for i := range s.bounds {
		b := &s.bounds[i]
		if b.single || len(b.open) > 0 || !s.divides(b, chosen) {
			continue // not to be ruled out by its range alone; see within
		}
		var f fence
		for _, r := range b.spans {
			low, high := r.Low.InexactFloat64(), r.High.InexactFloat64()
			above := make([]float64, len(b.ofF))
			below := make([]float64, len(b.ofF))
			size := make([]float64, len(b.ofF))
			for j := range b.ofF {
				above[j] = b.ofF[j] - low*b.toF[j]
				below[j] = high*b.toF[j] - b.ofF[j]
				size[j] = b.ofF[j] + high*b.toF[j]
			}
			f = append(f, []line{s.line(above, size, 0, chosen), s.line(below, size, 0, chosen)})
		}
		out = append(out, f)
	}
	if s.volume {
		full := 0.0
		less := make([]float64, len(s.fills))
		for i := range s.fills {
			full += s.fills[i] * s.grams[i]
			less[i] = -s.fills[i]
		}
		if s.kind == "pastry" {
			full += s.unmeasured(chosen)
		}
		out = append(out, fence{[]line{
			s.line(s.fills, s.fills, -(1-tenth)*full, chosen), s.line(less, s.fills, (1+tenth)*full, chosen),
		}})
	}
	return out
}

// unmeasured is what the water of a paste, that the book does not measure, is
// taken to fill when it is measured now: as much as will be put in at the
// middle of what is tried, so that measuring it is not taken for another size
// of paste.
func (s *search) unmeasured(chosen []int) float64 {
	for _, c := range chosen {
		if st := s.list[c].steps; st[0].stated {
			return st[len(st)/2].grams.InexactFloat64()
		}
	}
	return 0
}

// divides reports whether a ratio has something to divide by, whatever steps
// are taken.
func (s *search) divides(b *bound, chosen []int) bool {
	for i, g := range s.grams {
		if g > 0 && b.toF[i] > 0 && !s.goes(i, chosen) {
			return true
		}
	}
	for _, c := range chosen {
		one := &s.list[c]
		always := !slices.ContainsFunc(one.steps, func(st step) bool { return st.grams.IsZero() })
		if b.toF[one.at] > 0 && always {
			return true
		}
	}
	return false
}

// goes reports whether an item is among the chosen.
func (s *search) goes(at int, chosen []int) bool {
	for _, c := range chosen {
		if s.list[c].at == at {
			return true
		}
	}
	return false
}

// line makes a bound with the items not chosen summed up, and the most that the
// chosen ones can bring.
func (s *search) line(at, size []float64, constant float64, chosen []int) line {
	l := line{fixed: constant, wide: max(constant, -constant)}
	for i, g := range s.grams {
		if !s.goes(i, chosen) {
			l.fixed += at[i] * g
			l.wide += size[i] * g
		}
	}
	l.most, l.far = make([]float64, len(chosen)+1), make([]float64, len(chosen)+1)
	l.at, l.size = make([]float64, len(chosen)), make([]float64, len(chosen))
	for d := len(chosen) - 1; d >= 0; d-- {
		one := &s.list[chosen[d]]
		l.at[d], l.size[d] = at[one.at], size[one.at]
		best, far := at[one.at]*one.steps[0].grams.InexactFloat64(), 0.0
		for _, st := range one.steps {
			g := st.grams.InexactFloat64()
			best = max(best, at[one.at]*g)
			far = max(far, size[one.at]*g)
		}
		l.most[d], l.far[d] = l.most[d+1]+best, l.far[d+1]+far
	}
	return l
}
