package judge

import (
	"assize/ratios"
	"assize/reference"
)

// Verdicts of a ratio against a range.
const (
	Below   = "below"
	Within  = "within"
	Above   = "above"
	NoRange = "no-range"
)

var verdicts = map[int]string{-1: Below, 0: Within, 1: Above}

// readRatios holds each ratio of a part against the ranges of its class, and
// of the nearest period class where there is one. Outside a range is unusual,
// not wrong.
func readRatios(p *ratios.Profile, fit *ClassFit, t *reference.Tables) []RatioReading {
	var out []RatioReading
	for _, r := range p.Ratios {
		reading := RatioReading{Ratio: r, Verdict: NoRange}
		if fit != nil {
			classes := []string{fit.Class.ID}
			if fit.Period != nil {
				classes = append(classes, fit.Period.Class.ID)
			}
			for _, class := range classes {
				reading.add(&r, class, fit.Class, t)
			}
		}
		out = append(out, reading)
	}
	return out
}

// add holds the ratio against every row of one class. The verdict is taken
// from the published ranges of the part's own class alone: within when any of
// them holds the figure, since sources of one class may disagree. Points and
// rules are shown beside it.
func (reading *RatioReading) add(r *ratios.Ratio, class string, own *reference.Class, t *reference.Tables) {
	for i := range t.Ranges {
		row := &t.Ranges[i]
		if row.Class != class || row.Ratio != r.Row.ID {
			continue
		}
		v := verdicts[r.Against(row.Low, row.High)]
		reading.Ranges = append(reading.Ranges, RangeReading{Range: row, Verdict: v})
		if class == own.ID && row.Kind == "range" && reading.Verdict != Within {
			reading.Verdict = v
		}
	}
}
