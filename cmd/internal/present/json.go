package present

import (
	"embed"
	"encoding/json"
	"io"
	"math"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

// Schema is the JSON Schema of a report in JSON.
//
//go:embed report.schema.json
var Schema string

// Schemas are the JSON Schemas of what is written as JSON, by their files: the
// report of check and weigh, explain, compare, daybook, fit. They name each
// other by these names.
//
//go:embed *.schema.json
var Schemas embed.FS

// Places that figures are rounded to in JSON.
const (
	gramPlaces    = 2
	percentPlaces = 2
	ratioPlacesJ  = 4
	sharePlaces   = 3
	measurePlaces = 4
)

// document is a report as JSON has it. What was not worked out is left out,
// never nought.
type document struct {
	Schema     int            `json:"schema"`
	Assize     assizeDoc      `json:"assize"`
	Receipt    receiptDoc     `json:"receipt"`
	Made       *madeDoc       `json:"made_by,omitempty"`
	Oven       []heatDoc      `json:"oven,omitempty"` // the heats of its own words
	Parts      []partDoc      `json:"parts"`
	Dish       *dishDoc       `json:"dish,omitempty"`
	Findings   []findingDoc   `json:"findings"`
	Settle     []doubtDoc     `json:"settle,omitempty"`
	Directions []directionDoc `json:"directions,omitempty"`
	Notes      []string       `json:"notes"`
	Readings   int            `json:"readings,omitempty"`
	Deference  string         `json:"deference,omitempty"`
	Sources    []sourceDoc    `json:"sources"`
}

type assizeDoc struct {
	Version   string `json:"version"`
	Tables    string `json:"tables"`
	OwnTables string `json:"own_tables,omitempty"`
}

type receiptDoc struct {
	File    string `json:"file"`
	Title   string `json:"title"`
	Source  string `json:"source,omitempty"`
	Year    int    `json:"year"`
	Printed int    `json:"printed,omitempty"`
	Place   string `json:"place"`
}

// madeDoc is the bench record a receipt was judged by.
type madeDoc struct {
	Record string `json:"record"`
	Baked  string `json:"baked,omitempty"`
}

type spanDoc struct {
	Low    json.Number `json:"low"`
	Likely json.Number `json:"likely"`
	High   json.Number `json:"high"`
}

type partDoc struct {
	Name     string              `json:"name"`
	Kind     string              `json:"kind"`
	From     string              `json:"from,omitempty"`
	Lay      string              `json:"lay,omitempty"`
	Lines    []lineDoc           `json:"lines"`
	TotalG   *spanDoc            `json:"total_g,omitempty"`
	Basis    string              `json:"basis"`
	Ratios   map[string]ratioDoc `json:"ratios,omitempty"`
	Class    *classDoc           `json:"class,omitempty"`
	Measures map[string]spanDoc  `json:"measures,omitempty"`
	Method   []methodDoc         `json:"method,omitempty"`
	Texture  *textureDoc         `json:"texture,omitempty"`
	Textbook *textbookDoc        `json:"textbook,omitempty"`
	Baking   *bakingDoc          `json:"baking,omitempty"`
	Done     *doneDoc            `json:"done,omitempty"`
}

type lineDoc struct {
	Text  string    `json:"text"`
	Items []itemDoc `json:"items"`
	Note  string    `json:"note,omitempty"`
}

type itemDoc struct {
	Ingredient string       `json:"ingredient"`
	Form       string       `json:"form,omitempty"`
	Grams      *spanDoc     `json:"grams,omitempty"`
	Percent    *json.Number `json:"percent,omitempty"`
	State      string       `json:"state,omitempty"`
	Used       bool         `json:"used"`
}

type ratioDoc struct {
	spanDoc
	Unit    string     `json:"unit,omitempty"`
	Verdict string     `json:"verdict"`
	Ranges  []rangeDoc `json:"ranges"`
}

type rangeDoc struct {
	Low     json.Number `json:"low"`
	Typical json.Number `json:"typical"`
	High    json.Number `json:"high"`
	Kind    string      `json:"kind"`
	Class   string      `json:"class"`
	Era     string      `json:"era"`
	Source  string      `json:"source"`
	Locator string      `json:"locator"`
	How     string      `json:"how"`
	Verdict string      `json:"verdict"`
}

type classDoc struct {
	ID        string        `json:"id"`
	Distance  json.Number   `json:"distance"`
	Given     bool          `json:"given"`
	RunnersUp []distanceDoc `json:"runners_up"`
	Period    *distanceDoc  `json:"period,omitempty"`
}

type distanceDoc struct {
	ID       string      `json:"id"`
	Distance json.Number `json:"distance"`
}

type methodDoc struct {
	Words   string `json:"words"`
	Token   string `json:"token"`
	Meaning string `json:"meaning"`
	Where   string `json:"where"`
}

type textureDoc struct {
	Likeliest string                 `json:"likeliest"`
	Undecided bool                   `json:"undecided"`
	Word      string                 `json:"word,omitempty"`
	Shares    map[string]json.Number `json:"shares"`
}

type textbookDoc struct {
	Texture string `json:"texture"`
	Rule    string `json:"rule"`
}

type findingDoc struct {
	Code     string        `json:"code"`
	Part     string        `json:"part,omitempty"`
	Grade    string        `json:"grade,omitempty"`
	Share    *json.Number  `json:"share,omitempty"`
	Says     string        `json:"says"`
	Because  []evidenceDoc `json:"because"`
	Remedies []remedyDoc   `json:"remedies"`
}

type evidenceDoc struct {
	What       string `json:"what"`
	Value      string `json:"value,omitempty"`
	Limit      string `json:"limit,omitempty"`
	Layer      string `json:"layer,omitempty"`
	Source     string `json:"source,omitempty"`
	Locator    string `json:"locator,omitempty"`
	Confidence string `json:"confidence,omitempty"`
}

type remedyDoc struct {
	Text   string                    `json:"text"`
	Effect map[string][2]json.Number `json:"effect"`
}

type doubtDoc struct {
	Words string      `json:"words"`
	Part  string      `json:"part"`
	Share json.Number `json:"share"`
}

type directionDoc struct {
	Part  string `json:"part"`
	Text  string `json:"text"`
	Where string `json:"where,omitempty"`
}

type sourceDoc struct {
	ID      string `json:"id"`
	Author  string `json:"author,omitempty"`
	Title   string `json:"title"`
	Year    string `json:"year,omitempty"`
	Edition string `json:"edition,omitempty"`
	Licence string `json:"licence,omitempty"`
	Address string `json:"address,omitempty"`
}

// CheckJSON writes a report as one JSON object. It is indented when it stands
// by itself, and on one line when it is one of several.
func CheckJSON(w io.Writer, s *Sheet, a About, oneOfSeveral bool) error {
	return writeJSON(w, documentOf(s, a), oneOfSeveral)
}

// WeighJSON writes what was weighed, without any judgement, as CheckJSON does.
func WeighJSON(w io.Writer, s *Sheet, a About, oneOfSeveral bool) error {
	d := documentOf(s, a)
	for i := range d.Parts {
		p := &d.Parts[i]
		p.Ratios, p.Class, p.Measures, p.Method, p.Texture, p.Textbook, p.Baking, p.Done = nil, nil, nil, nil, nil, nil, nil, nil
	}
	d.Oven = nil
	d.Findings, d.Settle, d.Readings, d.Deference = []findingDoc{}, nil, 0, ""
	d.Dish = nil
	d.Sources = []sourceDoc{}
	return writeJSON(w, d, oneOfSeveral)
}

func writeJSON(w io.Writer, v any, oneLine bool) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	if !oneLine {
		e.SetIndent("", "  ")
	}
	return e.Encode(v)
}

func documentOf(s *Sheet, a About) *document {
	r := s.Report
	f := r.Formula
	d := &document{
		Schema:   1,
		Assize:   assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt:  receiptDoc{f.File, f.Title, f.Source, f.Year, f.Printed, f.Place},
		Parts:    []partDoc{},
		Findings: []findingDoc{},
		Notes:    []string{},
		Readings: r.Readings,
		Sources:  []sourceDoc{},
	}
	if s.Record != nil {
		d.Made = &madeDoc{s.Record.File, s.Record.Baked}
	}
	d.Notes = append(d.Notes, r.Notes...)
	if r.InDish != nil {
		d.Dish = dishDocOf(r.InDish)
	}
	w := works{tables: a.Tables}
	for i := range r.Said {
		d.Oven = append(d.Oven, heatDocOf(&r.Said[i], &w, false))
	}
	for i := range r.Parts {
		d.Parts = append(d.Parts, s.partDoc(i, &w))
	}
	for i := range r.Findings {
		d.Findings = append(d.Findings, findingDocOf(&r.Findings[i], &w))
		if isCaution(&r.Findings[i]) {
			d.Deference = reference.Deference
		}
	}
	for _, x := range r.Settle {
		d.Settle = append(d.Settle, doubtDoc{x.Words, x.Of, number(x.Part, sharePlaces)})
	}
	for i, list := range s.Directions {
		for _, x := range list {
			d.Directions = append(d.Directions, directionDoc{r.Parts[i].Name, x.Text, x.Where})
		}
	}
	for _, x := range w.used {
		d.Sources = append(d.Sources, sourceDocOf(x))
	}
	return d
}

func sourceDocOf(s *reference.Source) sourceDoc {
	return sourceDoc{s.ID, s.Author, s.Title, s.Year, s.Edition, s.Licence, s.Address}
}

// works gathers the sources a document names.
type works struct {
	tables *reference.Tables
	used   []*reference.Source
}

func (w *works) use(s *reference.Source) {
	if !slices.Contains(w.used, s) {
		w.used = append(w.used, s)
	}
}

func (s *Sheet) partDoc(i int, w *works) partDoc {
	p := &s.Report.Parts[i]
	d := partDoc{
		Name: p.Name, Kind: string(p.Kind), From: p.From, Lay: p.Lay,
		Lines: []lineDoc{}, Basis: p.Profile.Basis.Of,
		Ratios: map[string]ratioDoc{}, Measures: map[string]spanDoc{},
	}
	partsOnly := s.partsOnly(i)
	if !partsOnly {
		d.TotalG = grams(p.Profile.Total)
	}
	for _, l := range p.Lines {
		d.Lines = append(d.Lines, lineDocOf(&l, partsOnly))
	}
	for j := range p.Ratios {
		d.Ratios[p.Ratios[j].Ratio.Row.ID] = ratioDocOf(&p.Ratios[j], w)
	}
	for name, v := range p.Measures {
		if doc, ok := measureDoc(v); ok {
			d.Measures[name] = doc
		}
	}
	for _, m := range p.Words {
		d.Method = append(d.Method, methodDoc{m.Words, m.Token, m.Meaning, string(m.Where)})
	}
	if c := p.Class; c != nil {
		d.Class = &classDoc{ID: c.Class.ID, Distance: number(c.Distance, measurePlaces), Given: c.Given, RunnersUp: []distanceDoc{}}
		for _, o := range c.Others {
			d.Class.RunnersUp = append(d.Class.RunnersUp, distanceDoc{o.Class.ID, number(o.Distance, measurePlaces)})
		}
		if c.Period != nil {
			d.Class.Period = &distanceDoc{c.Period.Class.ID, number(c.Period.Distance, measurePlaces)}
		}
	}
	if t := p.Texture; t != nil {
		d.Texture = &textureDoc{t.Likeliest, t.Undecided, t.Word, map[string]json.Number{}}
		for _, x := range t.Shares {
			d.Texture.Shares[x.Texture.ID] = number(x.Share, sharePlaces)
		}
	}
	if b := p.Baseline; b != nil {
		d.Textbook = &textbookDoc{b.Texture, b.Rule}
	}
	d.Baking, d.Done = bakingDocOf(p.Baking, w), doneDocOf(&p.Done, w)
	return d
}

// stateNames are amounts a receipt does not give, as JSON has them.
var stateNames = map[formula.State]string{
	formula.ToTaste: "to-taste", formula.NotGiven: "not-given", formula.Enough: "enough",
}

func lineDocOf(l *judge.Line, partsOnly bool) lineDoc {
	d := lineDoc{Text: l.Text, Items: []itemDoc{}}
	for i, n := range l.Notes {
		if i > 0 {
			d.Note += "; "
		}
		d.Note += n
	}
	for _, it := range l.Items {
		x := itemDoc{Ingredient: it.Ingredient.ID, Form: it.Form, State: stateNames[it.State], Used: it.Used}
		if it.State == formula.Stated {
			percent := json.Number(it.Percent.Round(percentPlaces).String())
			x.Percent = &percent
			if !partsOnly {
				x.Grams = grams(it.Grams)
			}
		}
		d.Items = append(d.Items, x)
	}
	return d
}

func ratioDocOf(r *judge.RatioReading, w *works) ratioDoc {
	d := ratioDoc{spanDoc: span(r.Ratio.Value, ratioPlacesJ), Unit: r.Ratio.Row.Unit, Verdict: r.Verdict, Ranges: []rangeDoc{}}
	for _, x := range r.Ranges {
		row := x.Range
		if s, ok := w.tables.Source(row.Source); ok {
			w.use(s)
		}
		d.Ranges = append(d.Ranges, rangeDoc{
			Low: exact(row.Low, ratioPlacesJ), Typical: exact(row.Typical, ratioPlacesJ), High: exact(row.High, ratioPlacesJ),
			Kind: row.Kind, Class: row.Class, Era: row.Era,
			Source: row.Source, Locator: row.Locator, How: string(row.How), Verdict: x.Verdict,
		})
	}
	return d
}

func findingDocOf(f *judge.Finding, w *works) findingDoc {
	d := findingDoc{
		Code: f.Code, Part: f.Part, Grade: string(f.Grade), Says: f.Says,
		Because: []evidenceDoc{}, Remedies: []remedyDoc{},
	}
	if f.Share > 0 {
		share := number(f.Share, sharePlaces)
		d.Share = &share
	}
	for _, b := range f.Because {
		e := evidenceDoc{What: b.What, Value: b.Value, Limit: b.Limit, Layer: b.Layer, Locator: b.Locator, Confidence: b.Confidence}
		if b.Source != nil {
			e.Source = b.Source.ID
			w.use(b.Source)
		}
		d.Because = append(d.Because, e)
	}
	for _, m := range f.Remedies {
		x := remedyDoc{Text: m.Text, Effect: effectDocs(m.Effect)}
		d.Remedies = append(d.Remedies, x)
	}
	return d
}

func grams(s reference.Span) *spanDoc {
	d := span(s, gramPlaces)
	return &d
}

func span(s reference.Span, places int32) spanDoc {
	return spanDoc{exact(s.Low, places), exact(s.Likely, places), exact(s.High, places)}
}

func exact(d decimal.Decimal, places int32) json.Number { return json.Number(d.Round(places).String()) }

// measureDoc is a computed figure, false when any of it is not a number.
func measureDoc(v readings.Span) (spanDoc, bool) {
	if !finite(v.Low, v.Likely, v.High) {
		return spanDoc{}, false
	}
	return spanDoc{number(v.Low, measurePlaces), number(v.Likely, measurePlaces), number(v.High, measurePlaces)}, true
}

func finite(figures ...float64) bool {
	return !slices.ContainsFunc(figures, func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) })
}

// number rounds to so many places.
func number(v float64, places int) json.Number {
	scale := math.Pow10(places)
	if v = math.Round(v*scale) / scale; v == 0 {
		v = 0 // never -0
	}
	return json.Number(strconv.FormatFloat(v, 'f', -1, 64))
}
