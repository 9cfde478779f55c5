package reference

import "github.com/shopspring/decimal"

// Span is a figure with its range: low <= likely <= high. An exact figure has
// all three equal.
type Span struct {
	Low    decimal.Decimal `yaml:"low" sheet:"required"`
	Likely decimal.Decimal `yaml:"likely" sheet:"required"`
	High   decimal.Decimal `yaml:"high" sheet:"required"`
}

// Exact is the span of a figure without doubt.
func Exact(d decimal.Decimal) Span { return Span{Low: d, Likely: d, High: d} }

// IsExact reports whether the span has no width.
func (s Span) IsExact() bool { return s.Low.Equal(s.High) }

// IsZero reports whether the span is nothing at all, the value of a span that
// was never given.
func (s Span) IsZero() bool { return s.Low.IsZero() && s.Likely.IsZero() && s.High.IsZero() }

// Mul multiplies each end by a positive factor.
func (s Span) Mul(f decimal.Decimal) Span {
	return Span{Low: s.Low.Mul(f), Likely: s.Likely.Mul(f), High: s.High.Mul(f)}
}

// Add adds two spans end to end.
func (s Span) Add(t Span) Span {
	return Span{Low: s.Low.Add(t.Low), Likely: s.Likely.Add(t.Likely), High: s.High.Add(t.High)}
}

// Validity says when and where a row holds. A zero year is open; no place
// means everywhere.
type Validity struct {
	From   int      `yaml:"from,omitempty"` // first year, inclusive
	To     int      `yaml:"to,omitempty"`   // last year, inclusive
	Places []string `yaml:"places,omitempty"`
}

// Holds reports whether the row is valid in that year and place.
func (v Validity) Holds(year int, place string) bool {
	if v.From != 0 && year < v.From || v.To != 0 && year > v.To {
		return false
	}
	if len(v.Places) == 0 {
		return true
	}
	for _, p := range v.Places {
		if p == place {
			return true
		}
	}
	return false
}

// Places are the countries whose measures the tables know.
var Places = []string{"england", "scotland", "ireland", "usa"}
