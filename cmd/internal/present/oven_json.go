package present

import (
	"encoding/json"
	"io"
	"math"

	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/reference"
)

// heatDoc is a heat as JSON has it.
type heatDoc struct {
	Words string   `json:"words"`
	Sign  string   `json:"sign"`
	C     *spanDoc `json:"c,omitempty"`
	F     *spanDoc `json:"f,omitempty"`
	Exact bool     `json:"exact"`
	Row   string   `json:"row,omitempty"`
	Rows  []rowDoc `json:"rows,omitempty"`
}

type rowDoc struct {
	ID      string   `json:"id"`
	C       *spanDoc `json:"c,omitempty"`
	F       *spanDoc `json:"f,omitempty"`
	How     string   `json:"how,omitempty"` // of the degrees
	Source  string   `json:"source"`
	Locator string   `json:"locator"`
}

// minutesDoc is a time. High is absent where it is without bound.
type minutesDoc struct {
	Low      json.Number  `json:"low"`
	Likely   json.Number  `json:"likely"`
	High     *json.Number `json:"high,omitempty"`
	Never    bool         `json:"never,omitempty"`
	MayNever bool         `json:"may_never,omitempty"`
}

type bakingDoc struct {
	Class   string       `json:"class,omitempty"` // whose heat is told
	Says    string       `json:"says,omitempty"`
	Wants   []heatDoc    `json:"wants,omitempty"`
	Bath    bool         `json:"bath,omitempty"`
	DepthCM *spanDoc     `json:"depth_cm,omitempty"`
	Time    *minutesDoc  `json:"minutes,omitempty"`       // in the book's oven
	Today   *minutesDoc  `json:"today_minutes,omitempty"` // in the heat it wants today
	Book    *minutesDoc  `json:"book_minutes,omitempty"`
	Base    []throughDoc `json:"base,omitempty"`
}

type throughDoc struct {
	On     string      `json:"on"`
	Chance json.Number `json:"chance"`
}

type doneDoc struct {
	Set   *donenessDoc `json:"set,omitempty"`
	Floor *donenessDoc `json:"floor,omitempty"` // the authority's heat, apart from what sets it
	Under bool         `json:"under,omitempty"` // it sets below the floor
}

type donenessDoc struct {
	ID      string   `json:"id"`
	C       spanDoc  `json:"c"`
	F       spanDoc  `json:"f"`
	Signs   []string `json:"signs,omitempty"`
	CarryC  *spanDoc `json:"carry_c,omitempty"`
	Cooling string   `json:"cooling,omitempty"`
	Source  string   `json:"source"`
	Locator string   `json:"locator"`
}

// heatPlaces is how finely heats and minutes are told in JSON.
const heatPlaces = 1

func ovenSpan(r oven.Range) *spanDoc {
	if r.IsZero() {
		return nil
	}
	return &spanDoc{number(r.Low, heatPlaces), number(r.Likely, heatPlaces), number(r.High, heatPlaces)}
}

func tableSpan(s reference.Span) *spanDoc {
	if s.IsZero() {
		return nil
	}
	d := span(s, heatPlaces)
	return &d
}

func heatDocOf(h *oven.Heat, w *works, rows bool) heatDoc {
	d := heatDoc{Words: h.Words, Sign: h.Sign, C: ovenSpan(h.C), Exact: h.Exact}
	if !h.C.IsZero() {
		d.F = ovenSpan(h.C.Fahrenheit())
	}
	if h.Row != nil {
		d.Row = h.Row.ID
	}
	if rows {
		for _, r := range h.Rows {
			if s, ok := w.tables.Source(r.Source); ok {
				w.use(s)
			}
			d.Rows = append(d.Rows, rowDoc{r.ID, tableSpan(r.C), tableSpan(r.F), string(r.DegreesHow), r.Source, r.Locator})
		}
	}
	return d
}

func minutesDocOf(m oven.Minutes) *minutesDoc {
	if m.Never {
		return &minutesDoc{Low: "0", Likely: "0", Never: true}
	}
	if m.IsZero() {
		return nil
	}
	d := &minutesDoc{Low: number(m.Low, heatPlaces), Likely: number(m.Likely, heatPlaces), MayNever: m.MayNever}
	if !math.IsInf(m.High, 1) {
		high := number(m.High, heatPlaces)
		d.High = &high
	}
	return d
}

func bakingDocOf(b *judge.Baking, w *works) *bakingDoc {
	if b == nil {
		return nil
	}
	d := &bakingDoc{Says: b.Says, Bath: b.Bath, DepthCM: ovenSpan(b.Depth), Time: minutesDocOf(b.Time), Today: minutesDocOf(b.Today)}
	if b.Class != nil {
		d.Class = b.Class.ID
	}
	if !b.Book.IsZero() {
		d.Book = minutesDocOf(oven.Minutes{Range: b.Book})
	}
	for i := range b.Wants {
		d.Wants = append(d.Wants, heatDocOf(&b.Wants[i], w, false))
	}
	for _, t := range b.Base {
		d.Base = append(d.Base, throughDoc{t.On.String(), number(t.Chance, sharePlaces)})
	}
	return d
}

func doneDocOf(x *oven.Doneness, w *works) *doneDoc {
	one := func(r *reference.Doneness) *donenessDoc {
		if r == nil {
			return nil
		}
		if s, ok := w.tables.Source(r.Source); ok {
			w.use(s)
		}
		return &donenessDoc{r.ID, span(r.C, heatPlaces), span(r.F, heatPlaces), r.Signs, tableSpan(r.Carry), r.Cooling, r.Source, r.Locator}
	}
	if x.Set == nil && x.Floor == nil {
		return nil
	}
	return &doneDoc{Set: one(x.Set), Floor: one(x.Floor), Under: x.Under}
}

// ovenDoc is what words of an oven come to, as JSON has it.
type ovenDoc struct {
	Schema  int         `json:"schema"`
	Assize  assizeDoc   `json:"assize"`
	Asked   string      `json:"asked"`
	Heats   []heatDoc   `json:"heats"`
	Mind    []string    `json:"mind"`
	Sources []sourceDoc `json:"sources"`
}

// OvenJSON writes what words, counts and tests of an oven come to.
func OvenJSON(w io.Writer, s *OvenSheet, a About) error {
	d := ovenDoc{Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables}, Asked: s.Asked, Heats: []heatDoc{}, Mind: []string{byThermometer}, Sources: []sourceDoc{}}
	used := works{tables: a.Tables}
	for i := range s.Heats {
		d.Heats = append(d.Heats, heatDocOf(&s.Heats[i], &used, true))
	}
	for _, e := range s.advice() {
		d.Mind = append(d.Mind, e.Text)
	}
	for _, src := range used.used {
		d.Sources = append(d.Sources, sourceDocOf(src))
	}
	return writeJSON(w, d, false)
}

// BakingJSON writes a report of which only oven, doneness and cautions are
// kept; it keeps to the schema of a report.
func BakingJSON(w io.Writer, s *Sheet, a About, oneOfSeveral bool) error {
	d := documentOf(s, a)
	for i := range d.Parts {
		p := &d.Parts[i]
		p.Ratios, p.Class, p.Measures, p.Method, p.Texture, p.Textbook = nil, nil, nil, nil, nil, nil
	}
	kept := []findingDoc{}
	for i := range s.Report.Findings {
		if f := &s.Report.Findings[i]; isCaution(f) {
			kept = append(kept, findingDocOf(f, &works{tables: a.Tables}))
		}
	}
	d.Findings, d.Settle = kept, nil
	return writeJSON(w, d, oneOfSeveral)
}

// planDoc is a falling oven as JSON has it.
type planDoc struct {
	Schema    int          `json:"schema"`
	Assize    assizeDoc    `json:"assize"`
	RoomC     json.Number  `json:"room_c"`
	FirstC    json.Number  `json:"first_c"`
	Halves    json.Number  `json:"halves_in_minutes"`
	Spread    json.Number  `json:"spread"` // of the heat over the room's, as a part
	Few       bool         `json:"few_readings"`
	Dishes    []placeDoc   `json:"dishes"`
	Left      []string     `json:"not_placed"`
	Cautions  []findingDoc `json:"cautions"`
	Deference string       `json:"deference"`
}

type placeDoc struct {
	Dish     string      `json:"dish"`
	At       string      `json:"at"`
	InMinute json.Number `json:"minutes_after_first"`
	OvenC    *spanDoc    `json:"oven_c"`
	WantsC   *spanDoc    `json:"wants_c"`
	Stay     *minutesDoc `json:"minutes,omitempty"`
	LeftC    json.Number `json:"oven_c_when_out"`
	Late     bool        `json:"late,omitempty"`
	Slow     bool        `json:"falls_too_soon,omitempty"`
}

// PlanJSON writes a falling oven and what goes into it.
func PlanJSON(w io.Writer, s *PlanSheet, a About) error {
	l := &s.Line
	d := planDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		RoomC: number(l.Room, heatPlaces), FirstC: number(l.First, heatPlaces), Halves: number(l.Halves(), heatPlaces),
		Spread: number(l.Spread, sharePlaces), Few: l.Few, Dishes: []placeDoc{}, Left: []string{}, Cautions: []findingDoc{}, Deference: reference.Deference,
	}
	for i := range s.Plan {
		p := &s.Plan[i]
		d.Dishes = append(d.Dishes, placeDoc{
			p.Dish.Name, s.Clock(p.In), number(p.In, 0), ovenSpan(p.Heat), ovenSpan(p.Dish.C), minutesDocOf(p.Stay), number(p.Left, heatPlaces), p.Late, p.Slow,
		})
	}
	d.Left = append(d.Left, s.Others...)
	used := works{tables: a.Tables}
	for i := range s.Cautions {
		d.Cautions = append(d.Cautions, findingDocOf(&s.Cautions[i], &used))
	}
	return writeJSON(w, d, false)
}
