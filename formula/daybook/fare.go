package daybook

import (
	"math"
	"slices"

	"assize/reference"
)

// Fare is how predictions have fared: what was said, held against what was
// tasted.
type Fare struct {
	Bakes int // bakes of which something was both foretold and tasted
	Cases int // parts of them that count
	// Apart are parts that do not count: the tasters saw different things, or
	// one saw several.
	Apart int
	// Brier is the mean over the cases of the squares of what was missed,
	// summed over the textures: 0 when everything was foreseen for certain, 2
	// when the wrong thing always was (Brier 1950). Alike is what calling all
	// textures alike would have had.
	Brier, Alike float64
	Bands        []Band
}

// Band is a band of chances: how often something in it was said, and how often
// it came so.
type Band struct {
	Low, High  float64
	Said, Came int
	Mean       float64 // of what was said
}

// edges part the chances into bands, as they are worded: hardly ever, now and
// then, one of the ways, likely, very likely, nearly always.
var edges = []float64{0, .05, .25, .5, .75, .95, 1}

// scored is one part of a bake that counts.
type scored struct {
	bake   int
	shares []float64
	came   int // place of what was tasted among the shares
}

// Fared works out how the predictions of a book have fared. A part counts once,
// when all its tasters saw the same: cold where it was tasted cold, as it is cut.
func (b *Book) Fared(t *reference.Tables) Fare {
	var f Fare
	cases, apart := b.cases(t)
	f.Cases, f.Apart = len(cases), apart
	for i := range len(edges) - 1 {
		f.Bands = append(f.Bands, Band{Low: edges[i], High: edges[i+1]})
	}
	last := 0
	for _, c := range cases {
		if c.bake != last {
			f.Bakes++
			last = c.bake
		}
		n := float64(len(c.shares))
		for i, p := range c.shares {
			came := 0.0
			if i == c.came {
				came = 1
			}
			f.Brier += (p - came) * (p - came) / float64(len(cases))
			f.Alike += (1/n - came) * (1/n - came) / float64(len(cases))
			band := &f.Bands[bandOf(p)]
			band.Said++
			band.Mean += p
			band.Came += int(came)
		}
	}
	for i := range f.Bands {
		if f.Bands[i].Said > 0 {
			f.Bands[i].Mean /= float64(f.Bands[i].Said)
		}
	}
	return f
}

func bandOf(p float64) int {
	for i := 1; i < len(edges)-1; i++ {
		if p < edges[i] {
			return i - 1
		}
	}
	return len(edges) - 2
}

// cases are the parts of the book that count, in order, and how many do not.
func (b *Book) cases(t *reference.Tables) (out []scored, apart int) {
	for i := range b.Entries {
		e := &b.Entries[i]
		for _, p := range e.Predicted {
			seen := e.seen(p, t)
			switch len(seen) {
			case 0:
				continue
			case 1:
			default:
				apart++
				continue
			}
			c := scored{bake: e.Bake, came: -1}
			for n, s := range p.Shares {
				c.shares = append(c.shares, s.Share.InexactFloat64())
				if s.Texture == seen[0] {
					c.came = n
				}
			}
			if c.came >= 0 {
				out = append(out, c)
			} else {
				apart++
			}
		}
	}
	return out, apart
}

// seen are the judged textures the tasters saw a part have, each once. Where
// anybody tasted it cold, or at no time they told, only they count.
func (e *Entry) seen(p Predicted, t *reference.Tables) []string {
	of := func(cold bool) []string {
		var out []string
		for _, taster := range e.Tasted {
			if cold && taster.When != "cool" && taster.When != "" {
				continue
			}
			for _, r := range taster.Results {
				id := judged(p.Kind, r.Texture, t)
				if r.Part == p.Part && id != "" && !slices.Contains(out, id) {
					out = append(out, id)
				}
			}
		}
		return out
	}
	if cold := of(true); len(cold) > 0 {
		return cold
	}
	return of(false)
}

// judged is the judged texture an outcome counts as, empty when it is not
// scored.
func judged(kind, id string, t *reference.Tables) string {
	x, ok := t.Texture(kind, id)
	switch {
	case !ok:
		return ""
	case x.Judged:
		return x.ID
	}
	return x.Counts
}

// FewestBakes is how many bakes an adjustment of the odds wants.
const FewestBakes = 8

// Adjustment draws odds in or spreads them, for a kitchen in which things have
// turned out more or less surely than was said: each share is raised to a power
// and the shares made to sum to 1 again. Under 1 they are drawn in, over 1 they
// are spread. It is undone by the inverse power.
type Adjustment struct {
	Power float64
	Bakes int // it rests on
}

// How far an adjustment is held back while bakes are few: a spread of the log
// of the power (judgement), and the bounds that are searched.
const (
	heldBack          = .5
	leastPow, mostPow = .25, 4.0
	least             = .001 // a share of nothing is taken as this
)

// Adjustment fits the adjustment to the book; false while there are too few
// bakes. It is the power that makes what was tasted likeliest, held back towards
// no change.
func (b *Book) Adjustment(t *reference.Tables) (Adjustment, bool) {
	cases, _ := b.cases(t)
	bakes := 0
	last := 0
	for _, c := range cases {
		if c.bake != last {
			bakes++
			last = c.bake
		}
	}
	if bakes < FewestBakes {
		return Adjustment{Power: 1, Bakes: bakes}, false
	}
	loss := func(x float64) float64 {
		sum := x * x / (2 * heldBack * heldBack)
		for _, c := range cases {
			sum -= math.Log(raised(c.shares, math.Exp(x))[c.came])
		}
		return sum
	}
	return Adjustment{Power: math.Exp(lowest(loss, math.Log(leastPow), math.Log(mostPow))), Bakes: bakes}, true
}

// lowest is where a function with one low point has it, by the golden section.
func lowest(f func(float64) float64, low, high float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	a, b := high-ratio*(high-low), low+ratio*(high-low)
	fa, fb := f(a), f(b)
	for high-low > 1e-6 {
		if fa < fb {
			high, b, fb = b, a, fa
			a = high - ratio*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + ratio*(high-low)
			fb = f(b)
		}
	}
	return (low + high) / 2
}

func raised(shares []float64, power float64) []float64 {
	out := make([]float64, len(shares))
	sum := 0.0
	for i, s := range shares {
		out[i] = math.Pow(max(s, least), power)
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// Adjust gives shares as adjusted; they sum to 1.
func (a Adjustment) Adjust(shares []float64) []float64 { return raised(shares, a.Power) }

// Undo gives back the shares that Adjust was given, those of next to nothing
// apart.
func (a Adjustment) Undo(shares []float64) []float64 {
	if a.Power == 0 {
		return slices.Clone(shares)
	}
	out := make([]float64, len(shares))
	sum := 0.0
	for i, s := range shares {
		out[i] = math.Pow(s, 1/a.Power)
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}
