package present

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"assize/formula/daybook"
	"assize/reference"
)

// DayBook is a day-book with how it has fared.
type DayBook struct {
	Book       *daybook.Book
	Fare       daybook.Fare
	Adjustment daybook.Adjustment
	Adjusts    bool // there are bakes enough for it
}

// Headings of a day-book.
const (
	headBakes   = "Bakes"
	headFared   = "What was said, and what came"
	headKitchen = "In this kitchen"
)

// DayBookPage is the page of a day-book.
func DayBookPage(d *DayBook, a About) *Page {
	v := &dayBook{d, a.Tables}
	p := &Page{Title: "Day-book", Lead: v.lead()}
	p.section(headBakes, v.bakes())
	p.section(headFared, v.fared()...)
	p.section(headKitchen, v.kitchen()...)
	return p
}

type dayBook struct {
	*DayBook
	tables *reference.Tables
}

func (v *dayBook) lead() string {
	n := len(v.Book.Entries)
	if n == 0 {
		return "Nothing has been kept in it yet."
	}
	words := fmt.Sprintf("%s.", upper(count(n, "bake", "bakes")))
	if v.Fare.Cases == 0 {
		return words + " None of them tells yet how what was foretold has fared."
	}
	likely, came := 0, 0
	for _, b := range v.Fare.Bands {
		if b.Low >= .5 {
			likely, came = likely+b.Said, came+b.Came
		}
	}
	if likely > 0 {
		words += fmt.Sprintf(" Of %s called likely, %d came so.", count(likely, "thing", "things"), came)
	}
	return words + " " + v.brier()
}

// count is a number of things: "1 bake", "3 bakes".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// brier puts the score in plain words.
func (v *dayBook) brier() string {
	f := &v.Fare
	words := fmt.Sprintf("The odds missed by %.2f a part", f.Brier)
	switch better := f.Alike - f.Brier; {
	case better > .05*f.Alike:
		words += ", which is better than calling every texture alike"
	case better < -.05*f.Alike:
		words += ", which is worse than calling every texture alike"
	default:
		words += ", no better than calling every texture alike"
	}
	return words + fmt.Sprintf(" (%.2f); 0 is never missing, 2 always being sure of the wrong thing.", f.Alike)
}

func (v *dayBook) bakes() Table {
	t := Table{Columns: []Column{{Name: "bake", Right: true}, {Name: "day"}, {Name: "receipt"}, {Name: "foretold"}, {Name: "tasted"}}}
	for i := range v.Book.Entries {
		e := &v.Book.Entries[i]
		t.Rows = append(t.Rows, []string{strconv.Itoa(e.Bake), e.Baked, e.Title, v.foretold(e), v.tasted(e)})
	}
	return t
}

func (v *dayBook) foretold(e *daybook.Entry) string {
	var said []string
	for _, p := range e.Predicted {
		for _, s := range p.Shares {
			if s.Texture != p.Likeliest {
				continue
			}
			words := v.shown(p.Kind, s.Texture) + ", " + outOfTen(s.Share.InexactFloat64())
			if len(e.Predicted) > 1 {
				words = p.Part + " " + words
			}
			said = append(said, words)
		}
	}
	return strings.Join(said, "; ")
}

func (v *dayBook) shown(kind, id string) string {
	if x, ok := v.tables.Texture(kind, id); ok {
		return x.Shown
	}
	return id
}

// tasted are the tasters with what each saw, apart.
func (v *dayBook) tasted(e *daybook.Entry) string {
	kinds := map[string]string{}
	if e.Record.Formula != nil {
		for _, p := range e.Record.Formula.Parts {
			kinds[p.Name] = string(p.Kind)
		}
	}
	var said []string
	for _, t := range e.Tasted {
		var saw []string
		for _, r := range t.Results {
			saw = append(saw, v.shown(kinds[r.Part], r.Texture))
		}
		who := t.By
		if t.When != "" {
			who += ", " + t.When
		}
		if len(saw) == 0 {
			saw = []string{quoted(t.Words)}
		}
		said = append(said, who+": "+strings.Join(saw, ", "))
	}
	return strings.Join(said, "; ")
}

// bandWords are the bands of chance as they are worded.
func bandWords(b daybook.Band) string {
	switch {
	case b.High <= hardly:
		return "hardly ever"
	case b.Low >= nearly:
		return "nearly always"
	}
	return fmt.Sprintf("about %s to %s in 10", tenth(b.Low), tenth(b.High))
}

func tenth(share float64) string {
	return strconv.FormatFloat(math.Round(share*100)/10, 'f', -1, 64)
}

func (v *dayBook) fared() []Block {
	f := &v.Fare
	if f.Cases == 0 {
		return nil
	}
	t := Table{Columns: []Column{{Name: "a texture was said to come"}, {Name: "times", Right: true}, {Name: "came so", Right: true}, {Name: "as said, it would have been", Right: true}}}
	for _, b := range f.Bands {
		if b.Said > 0 {
			t.Rows = append(t.Rows, []string{bandWords(b), strconv.Itoa(b.Said), strconv.Itoa(b.Came), figureOf(b.Mean * float64(b.Said))})
		}
	}
	words := fmt.Sprintf("From %s of %s. A part counts when all its tasters saw the same, and cold tasting goes before hot.", count(f.Cases, "part", "parts"), count(f.Bakes, "bake", "bakes"))
	if f.Apart > 0 {
		words += fmt.Sprintf(" %s set aside because tasters saw different things, or the texture is not foretold.", upper(was(f.Apart)))
	}
	return []Block{t, Paragraph(words)}
}

func was(n int) string {
	if n == 1 {
		return "1 part was"
	}
	return fmt.Sprintf("%d parts were", n)
}

func figureOf(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// nearlyNone is how near to 1 a power leaves the odds as they are.
const nearlyNone = .1

// kitchen says what the odds come to in this kitchen, and how that is undone.
func (v *dayBook) kitchen() []Block {
	if !v.Adjusts {
		if len(v.Book.Entries) == 0 {
			return nil
		}
		return []Block{Paragraph(fmt.Sprintf("From %d bakes that tell, the odds can be fitted to this kitchen; there %s so far. Until then nothing is adjusted.", daybook.FewestBakes, isSoFar(v.Adjustment.Bakes)))}
	}
	a := v.Adjustment
	words := fmt.Sprintf("By %d bakes, things here turn out as surely as is said; the odds would be left as they are.", a.Bakes)
	switch {
	case a.Power < 1-nearlyNone:
		words = fmt.Sprintf("By %d bakes, things here turn out less surely than is said: the odds would be drawn in.", a.Bakes)
	case a.Power > 1+nearlyNone:
		words = fmt.Sprintf("By %d bakes, things here turn out more surely than is said: the odds would be spread.", a.Bakes)
	}
	t := Table{Columns: []Column{{Name: "what is said"}, {Name: "in this kitchen"}}}
	for _, p := range []float64{.9, .75, .5, .25, .1} {
		to := a.Adjust([]float64{p, 1 - p})[0]
		t.Rows = append(t.Rows, []string{inTen(p), inTen(to)})
	}
	undo := fmt.Sprintf("Each chance is raised to the power %.2f and the chances of a part made to sum to 1 again; the power %.2f undoes it. What is kept in the day-book is always what was said, unadjusted. `assize explain --daybook FILE` tells both.", a.Power, 1/a.Power)
	return []Block{Paragraph(words), t, Paragraph(undo)}
}

func isSoFar(n int) string {
	switch n {
	case 0:
		return "are none"
	case 1:
		return "is 1"
	}
	return fmt.Sprintf("are %d", n)
}

// inTen is a chance to half a tenth, finer than words need, to show what moves.
func inTen(p float64) string {
	return strconv.FormatFloat(math.Round(p*20)/2, 'f', -1, 64) + " in 10"
}

// KeptLater says that a later tasting was added to the day-book.
func KeptLater(bake int, file string) string {
	return fmt.Sprintf("Kept with bake %d of %s, behind what was tasted before.", bake, file)
}

// dayBookDoc is a day-book as JSON has it.
type dayBookDoc struct {
	Schema     int         `json:"schema"`
	Assize     assizeDoc   `json:"assize"`
	File       string      `json:"file"`
	Bakes      []bakeDoc   `json:"bakes"`
	Fared      *faredDoc   `json:"fared,omitempty"`
	Adjustment *adjustment `json:"adjustment,omitempty"`
}

type bakeDoc struct {
	Bake      int          `json:"bake"`
	Baked     string       `json:"baked,omitempty"`
	Title     string       `json:"title"`
	Version   string       `json:"version"`
	Tables    string       `json:"tables"`
	Readings  int          `json:"readings"`
	Predicted []partShares `json:"predicted"`
	Tasted    []tasterDoc  `json:"tasted"`
}

type tasterDoc struct {
	By      string      `json:"by"`
	When    string      `json:"when,omitempty"`
	Results []partIsDoc `json:"results"`
	Words   string      `json:"words,omitempty"`
}

type partIsDoc struct {
	Part    string `json:"part"`
	Texture string `json:"texture"`
}

type faredDoc struct {
	Bakes int         `json:"bakes"`
	Cases int         `json:"parts"`
	Apart int         `json:"set_aside"`
	Brier json.Number `json:"brier"`
	Alike json.Number `json:"brier_of_all_alike"`
	Bands []bandDoc   `json:"bands"`
}

type bandDoc struct {
	Low  json.Number `json:"low"`
	High json.Number `json:"high"`
	Said int         `json:"said"`
	Came int         `json:"came"`
	Mean json.Number `json:"mean"`
}

type adjustment struct {
	Power json.Number `json:"power"`
	Undo  json.Number `json:"undo"`
	Bakes int         `json:"bakes"`
}

// DayBookJSON writes a day-book as one indented JSON object.
func DayBookJSON(w io.Writer, d *DayBook, a About) error {
	doc := dayBookDoc{Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables}, File: d.Book.File, Bakes: []bakeDoc{}}
	for i := range d.Book.Entries {
		e := &d.Book.Entries[i]
		b := bakeDoc{e.Bake, e.Baked, e.Title, e.Version, e.Tables, e.Readings, []partShares{}, []tasterDoc{}}
		for _, p := range e.Predicted {
			s := partShares{Part: p.Part, Likeliest: p.Likeliest, Shares: map[string]json.Number{}}
			for _, x := range p.Shares {
				s.Shares[x.Texture] = exact(x.Share, sharePlaces)
			}
			b.Predicted = append(b.Predicted, s)
		}
		for _, t := range e.Tasted {
			td := tasterDoc{By: t.By, When: t.When, Results: []partIsDoc{}, Words: t.Words}
			for _, r := range t.Results {
				td.Results = append(td.Results, partIsDoc{r.Part, r.Texture})
			}
			b.Tasted = append(b.Tasted, td)
		}
		doc.Bakes = append(doc.Bakes, b)
	}
	if f := d.Fare; f.Cases > 0 {
		fd := &faredDoc{f.Bakes, f.Cases, f.Apart, number(f.Brier, sharePlaces), number(f.Alike, sharePlaces), []bandDoc{}}
		for _, b := range f.Bands {
			if b.Said > 0 {
				fd.Bands = append(fd.Bands, bandDoc{number(b.Low, 2), number(b.High, 2), b.Said, b.Came, number(b.Mean, sharePlaces)})
			}
		}
		doc.Fared = fd
	}
	if d.Adjusts {
		doc.Adjustment = &adjustment{number(d.Adjustment.Power, measurePlaces), number(1/d.Adjustment.Power, measurePlaces), d.Adjustment.Bakes}
	}
	return writeJSON(w, doc, false)
}
