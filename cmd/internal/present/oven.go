package present

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/reference"
)

// step is how finely the heat of an oven is told, degrees of either scale.
const step = 5.0

func rounded(v, to float64) float64 { return math.Round(v/to) * to }

// heat is a heat in both scales with its range: "about 400 F (350-450), 205 C
// (175-230)".
func heat(c oven.Range, exact bool) string {
	to, about := step, "about "
	if exact {
		to, about = 1, ""
	}
	in := func(r oven.Range, scale string) string {
		out := fmt.Sprintf("%.0f %s", rounded(r.Likely, to), scale)
		if low, high := rounded(r.Low, to), rounded(r.High, to); low < high {
			out += fmt.Sprintf(" (%.0f-%.0f)", low, high)
		}
		return out
	}
	return about + in(c.Fahrenheit(), "F") + ", " + in(c, "C")
}

// heatShort is a heat between two ends in both scales: "285-325 F (140-163 C)".
func heatShort(c oven.Range) string {
	between := func(r oven.Range, to float64) string {
		low, high := rounded(r.Low, to), rounded(r.High, to)
		if low == high {
			return fmt.Sprintf("%.0f", low)
		}
		return fmt.Sprintf("%.0f-%.0f", low, high)
	}
	return between(c.Fahrenheit(), step) + " F (" + between(c, step) + " C)"
}

// minutesFine is under how many minutes a time is told to the minute.
const minutesFine = 20

// duration is minutes as a cook says them, rounded to five from twenty on:
// "35 minutes (25-55)", "1 1/4 hours (50 minutes to 2 hours)".
func duration(m oven.Minutes) string {
	switch {
	case m.Never:
		return "never: it is not hot enough there to set it"
	case m.IsZero():
		return ""
	}
	out := "about " + clockless(m.Likely)
	high := clockless(m.High)
	if math.IsInf(m.High, 1) {
		return out + ", from " + clockless(m.Low) + " on; in the coolest bath it may never set"
	}
	if low := clockless(m.Low); low != high {
		out += " (" + timesFromTo(low, high) + ")"
	}
	if m.MayNever {
		out += "; in the coolest bath it may never set"
	}
	return out
}

func tidyMinutes(v float64) float64 {
	if v < minutesFine {
		return max(1, math.Round(v))
	}
	return rounded(v, 5)
}

// clockless is a length of time in words.
func clockless(v float64) string {
	m := int(tidyMinutes(v))
	switch {
	case m == 1:
		return "1 minute"
	case m < 60:
		return fmt.Sprintf("%d minutes", m)
	case m == 60:
		return "1 hour"
	case m%60 == 0:
		return fmt.Sprintf("%d hours", m/60)
	}
	return fmt.Sprintf("%d h %d min", m/60, m%60)
}

// bookTime is the receipt's own time.
func bookTime(r oven.Range) string {
	low, high := clockless(r.Low), clockless(r.High)
	if low == high {
		return low
	}
	return timesFromTo(low, high)
}

// timesFromTo is a range of times: the unit is said once where both have it.
func timesFromTo(low, high string) string {
	for _, unit := range []string{" minutes", " hours"} {
		if strings.HasSuffix(high, unit) {
			low = strings.TrimSuffix(low, unit)
		}
	}
	return low + " to " + high
}

// saidHeat is what the words of a receipt or a cook come to.
func saidHeat(h *oven.Heat) string {
	if h.C.IsZero() {
		return quoted(h.Words) + ": no work gives degrees for it"
	}
	out := heat(h.C, h.Exact)
	if h.Sign != oven.Degrees {
		out = quoted(h.Words) + " is " + out
	}
	if h.Fan {
		out += ", the fan allowed for"
	}
	return out
}

// baking are the lines of a judged receipt about its oven, time and doneness.
func (c *checking) baking() List {
	var out List
	var book []string
	for i := range c.Report.Said {
		book = append(book, saidHeat(&c.Report.Said[i]))
	}
	if len(book) > 0 {
		out = append(out, Entry{Label: "the book", Text: strings.Join(book, "; ") + "; go by a thermometer"})
	}
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		label := p.Name
		add := func(text string) {
			if text != "" {
				out = append(out, Entry{Label: label, Text: text})
				label = ""
			}
		}
		if b := p.Baking; b != nil && (p.Kind != formula.Pastry || c.pasteAlone()) {
			add(today(b))
			add(timed(b))
		}
		if p.Kind != formula.Pastry {
			add(c.set(&p.Done))
			add(c.floor(&p.Done))
		}
	}
	return out
}

// today is the heat the class wants today, and how long a part takes in it.
func today(b *judge.Baking) string {
	if b.Says == "" {
		return ""
	}
	out := "today: " + b.Says
	if d := duration(b.Today); d != "" {
		out += fmt.Sprintf("; %s cm deep it takes %s", depthOf(b.Depth), d)
	}
	return out
}

// timed is how long a part takes in the book's oven, against the book's time.
func timed(b *judge.Baking) string {
	said := ""
	if d := duration(b.Time); d != "" && b.AtBook {
		said = fmt.Sprintf("in the book's oven, %s cm deep, it takes %s", depthOf(b.Depth), d)
	}
	if b.Book.IsZero() {
		return said
	}
	book := "the book bakes it " + bookTime(b.Book)
	if said == "" {
		return book
	}
	switch {
	case b.Time.Never:
	case b.Book.High < b.Time.Low:
		book += ", which is short: its oven was hotter, its dish shallower, or it came out less done"
	case b.Book.Low > b.Time.High:
		book += ", which is long: look at it early"
	}
	return said + "; " + book
}

func depthOf(d oven.Range) string {
	at := func(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }
	if at(d.Low) == at(d.High) {
		return at(d.Likely)
	}
	return at(d.Likely) + " (" + at(d.Low) + "-" + at(d.High) + ")"
}

// degrees is a span of the tables in both scales.
func degrees(f, c reference.Span) string {
	one := func(s reference.Span) string {
		if s.IsExact() {
			return s.Likely.Round(0).String()
		}
		return s.Low.Round(0).String() + "-" + s.High.Round(0).String()
	}
	return one(f) + " F (" + one(c) + " C)"
}

// set is how a cook tells that a thing is set.
func (c *citations) set(d *oven.Doneness) string {
	r := d.Set
	if r == nil {
		return ""
	}
	said := []string{"set at " + degrees(r.F, r.C) + " in the middle " + c.cite(r.Provenance)}
	if len(r.Signs) > 0 {
		said = append(said, strings.Join(r.Signs, ", "))
	}
	if r.Carry.High.IsPositive() {
		said = append(said, fmt.Sprintf("it climbs another %s C once out", spanOfDegrees(r.Carry)))
	}
	return strings.Join(said, "; ")
}

func spanOfDegrees(s reference.Span) string {
	if s.IsExact() {
		return s.Likely.String()
	}
	return s.Low.String() + "-" + s.High.String()
}

// floor is the heat an authority asks for, apart from what sets it.
func (c *citations) floor(d *oven.Doneness) string {
	if d.Floor == nil {
		return ""
	}
	out := "for safety, another thing: " + d.Floor.F.Likely.Round(0).String() + " F (" + d.Floor.C.Likely.Round(0).String() + " C) in the middle " + c.cite(d.Floor.Provenance)
	if d.Under {
		out += "; it may be set below that"
	}
	return out
}

// OvenSheet is what was asked of an oven.
type OvenSheet struct {
	Asked string // the words, or the count
	Heats []oven.Heat
	Kind  string // brick | range | modern; empty for all
	When  oven.When
}

// Oven is the page of what words, counts and tests of an oven come to.
func Oven(s *OvenSheet, a About) *Page {
	c := &citations{tables: a.Tables}
	p := &Page{Title: upper(s.Asked), Lead: s.lead()}
	for i := range s.Heats {
		h := &s.Heats[i]
		heading := headTablesSay
		if len(s.Heats) > 1 {
			heading += ": " + h.Words
		}
		p.section(heading, c.tableOf(h), c.use(h))
	}
	p.section(headWhichOven, c.kindsOfOven(s.Kind, s.Heats))
	p.section(headAsSaid, s.advice())
	p.section(headSources, c.sources(a)...)
	return p
}

// lead is the heat asked for, and what to go by.
func (s *OvenSheet) lead() string {
	var said []string
	for i := range s.Heats {
		said = append(said, sentence(saidHeat(&s.Heats[i])))
	}
	if slices.ContainsFunc(s.Heats, func(h oven.Heat) bool { return !h.Exact }) {
		said = append(said, byThermometer)
	}
	return strings.Join(said, " ")
}

// tableOf holds the readings of a sign against each other.
func (c *citations) tableOf(h *oven.Heat) Table {
	t := Table{Columns: []Column{{Name: "what is said"}, {Name: "F", Right: true}, {Name: "C", Right: true}, {Name: "how known"}, {Name: "from"}}}
	for _, r := range h.Rows {
		f, deg := "", ""
		if !r.F.IsZero() {
			f, deg = fromTo(r.F), fromTo(r.C)
		}
		how := string(r.DegreesHow)
		if f == "" {
			how = "no degrees"
		}
		if r.Working {
			how += ", to go by"
		}
		t.Rows = append(t.Rows, []string{signOf(r), f, deg, how, c.cite(r.Provenance)})
	}
	return t
}

func fromTo(s reference.Span) string {
	low, high := s.Low.Round(0).String(), s.High.Round(0).String()
	if low == high {
		return low
	}
	return low + "-" + high
}

// signOf is what a row of the ovens says, in short.
func signOf(r *reference.Oven) string {
	said := []string{r.Words[0]}
	if !r.Seconds.IsZero() && r.Kind == oven.Hand {
		said = append(said, "a count of "+fromTo(r.Seconds))
	}
	for _, s := range []string{r.Sign, r.Means} {
		if s != "" {
			said = append(said, s)
		}
	}
	if r.Refused != "" {
		said = append(said, r.Refused)
	}
	return strings.Join(said, "; ")
}

// use is what was baked in such an oven, and the note to its row.
func (c *citations) use(h *oven.Heat) List {
	var out List
	if r := h.Row; r != nil {
		if r.Use != "" {
			out = append(out, Entry{Label: "baked in it", Text: r.Use})
		}
		if r.Note != "" {
			out = append(out, Entry{Label: "note", Text: r.Note})
		}
	}
	return out
}

// kindsOfOven tells of the ovens one may have how each is brought to the heat
// asked for; of one alone when it is said.
func (c *citations) kindsOfOven(kind string, heats []oven.Heat) List {
	var out List
	for i := range c.tables.Ovens {
		r := &c.tables.Ovens[i]
		if r.Kind != "oven" || kind != "" && kind != r.ID && !(kind == "modern" && r.ID == "fan") {
			continue
		}
		text := r.Means
		if len(heats) == 1 && !heats[0].C.IsZero() {
			at := heats[0].C.Likely
			switch r.ID {
			case "modern":
				text = fmt.Sprintf("%.0f C (%.0f F): %s", rounded(at, step), rounded(heats[0].C.Fahrenheit().Likely, step), text)
			case "fan":
				text = fmt.Sprintf("%.0f C: %s", rounded(at-oven.FanC, step), text)
			}
		}
		out = append(out, Entry{Label: r.Words[0], Text: text + " " + c.cite(r.Provenance)})
	}
	return out
}

// advice is what must be said with a sign.
func (s *OvenSheet) advice() List {
	var out List
	for _, h := range s.Heats {
		switch {
		case h.Sign == oven.Hand:
			out = append(out, Entry{Text: neverTheHand})
		case h.Sign == oven.Word && s.When.Year < 1915:
			out = append(out, Entry{Text: oldWords})
		case h.Sign == oven.Paper || h.Sign == oven.Flour:
			out = append(out, Entry{Text: papersDiffer})
		}
	}
	return out
}

// PlanSheet is a falling oven with what goes into it.
type PlanSheet struct {
	Line   oven.Line
	Clock  func(minutes float64) string
	Plan   []oven.Placing
	Others []string // receipts that nothing could be told of, with why
	// Cautions are those of the receipts. They cannot be left out.
	Cautions []judge.Finding
}

// Plan is the page of a falling oven.
func Plan(s *PlanSheet, a About) *Page {
	l := &s.Line
	p := &Page{Title: "A falling oven", Lead: s.lead()}
	fall := Table{Columns: []Column{{Name: "at"}, {Name: "F", Right: true}, {Name: "between", Right: true}, {Name: "C", Right: true}, {Name: "between", Right: true}}}
	until := l.Last + 240
	for m := 0.0; m <= until; m += 30 {
		c := l.At(m)
		f := c.Fahrenheit()
		fall.Rows = append(fall.Rows, []string{
			s.Clock(m), fmt.Sprintf("%.0f", rounded(f.Likely, step)), fmt.Sprintf("%.0f-%.0f", rounded(f.Low, step), rounded(f.High, step)),
			fmt.Sprintf("%.0f", rounded(c.Likely, step)), fmt.Sprintf("%.0f-%.0f", rounded(c.Low, step), rounded(c.High, step)),
		})
	}
	if len(s.Plan) > 0 {
		t := Table{Columns: []Column{{Name: "in at"}, {Name: "what"}, {Name: "oven then"}, {Name: "wants"}, {Name: "leave it"}, {Name: "note"}}}
		for i := range s.Plan {
			t.Rows = append(t.Rows, s.row(&s.Plan[i]))
		}
		p.section(headInOrder, t)
	} else {
		p.section(headInOrder, oldOrder(l, s.Clock))
	}
	var rest List
	for _, o := range s.Others {
		rest = append(rest, Entry{Text: o})
	}
	p.section(headLeftOut, rest)
	p.section(headFall, fall, Paragraph(s.howSure()))
	c := &citations{tables: a.Tables}
	p.section(headAsSaid, List{{Text: neverTheHand}})
	p.section(headCautions, c.cautionsOf(s.Cautions)...)
	p.section(headSources, c.sources(a)...)
	return p
}

func (s *PlanSheet) lead() string {
	said := ""
	if n := len(s.Plan); n > 0 {
		said = fmt.Sprintf("First in: %s, %s.", s.Plan[0].Dish.Name, s.Clock(s.Plan[0].In))
		if n > 1 {
			said += fmt.Sprintf(" Last: %s, %s.", s.Plan[n-1].Dish.Name, s.Clock(s.Plan[n-1].In))
		}
		said += " "
	}
	said += fmt.Sprintf("It halves its heat over the room's in %s; it was %s at the first reading and %s at the last.",
		clockless(s.Line.Halves()), heatShort(oneHeat(s.Line.First)), heatShort(oneHeat(s.Line.At(s.Line.Last).Likely)))
	late, slow := 0, 0
	for i := range s.Plan {
		if s.Plan[i].Late {
			late++
		} else if s.Plan[i].Slow {
			slow++
		}
	}
	if late > 0 {
		said += fmt.Sprintf(" It is already too cool for %d of the %d dishes.", late, len(s.Plan))
	}
	if slow > 0 {
		said += fmt.Sprintf(" It falls too soon for %d of them.", slow)
	}
	return said
}

func oneHeat(c float64) oven.Range { return oven.Range{Low: c, Likely: c, High: c} }

func (s *PlanSheet) row(p *oven.Placing) []string {
	leave := duration(p.Stay)
	if leave == "" {
		leave = "not known: go by the signs"
	}
	note := ""
	switch {
	case p.Late:
		note = "the oven is past it: fire it again, or bake this elsewhere"
	case p.Slow:
		note = "the oven falls below its heat before it is done"
	}
	in := s.Clock(p.In)
	if p.In == 0 {
		in += " (at once)"
	}
	return []string{in, p.Dish.Name, heatShort(p.Heat), heatShort(p.Dish.C), leave, note}
}

// oldOrder is the order of a falling oven when no receipts are given.
func oldOrder(l *oven.Line, clock func(float64) string) Table {
	t := Table{Columns: []Column{{Name: "from"}, {Name: "to"}, {Name: "what"}, {Name: "wants"}}}
	for _, o := range oven.Order {
		from, to := max(0, l.When(o.C.High)), l.When(o.C.Low)
		row := []string{clock(from), clock(to), o.Name, heatShort(o.C)}
		if to <= 0 {
			row[0], row[1] = "past", "past"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (s *PlanSheet) howSure() string {
	if s.Line.Few {
		return fewReadings
	}
	return manyReadings
}

// Baking is the page of a receipt's oven: what its words come to, what it wants
// today, how long it takes, how it is known to be done, and whether the base
// bakes through.
func Baking(s *Sheet, a About) *Page {
	c := &checking{Sheet: s, citations: citations{tables: a.Tables}}
	f := s.Report.Formula
	p := &Page{Title: f.Title + ": the oven", Under: under(f), Lead: c.ovenLead()}
	p.section(headOven, c.baking())
	p.section(headCool, c.cooling())
	p.section(headBase, c.base())
	for i := range s.Report.Said {
		h := &s.Report.Said[i]
		if h.Row != nil {
			p.section(headTablesSay+": "+h.Words, c.tableOf(h))
		}
	}
	p.section(headCautions, c.cautions()...)
	p.section(headSources, c.sources(a)...)
	return p
}

// ovenLead says the heat, the time and the sign first.
func (c *checking) ovenLead() string {
	var said []string
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		b := p.Baking
		if b == nil || p.Kind == formula.Pastry && !c.pasteAlone() {
			continue
		}
		at, takes := b.At, b.Time
		if len(b.Wants) > 0 {
			at, takes = b.Wants[0].C, b.Today
		}
		if !at.IsZero() {
			said = append(said, sentence(fmt.Sprintf("bake the %s at %s", p.Name, heatShort(at))))
		}
		if takes.Never {
			said = append(said, sentence("it will not set there: "+strings.TrimPrefix(duration(takes), "never: ")))
		} else if !takes.IsZero() {
			from := takes.Low
			if b.Book.Low > 0 { // the book's own time may be the shorter; a thing overbaked is lost
				from = min(from, b.Book.Low)
			}
			said = append(said, sentence("look at it from "+clockless(from)+" on"))
		}
		if d := p.Done.Set; d != nil {
			said = append(said, sentence("it is set at "+degrees(d.F, d.C)+" in the middle"))
		}
	}
	switch {
	case len(said) > 0:
	case !slices.ContainsFunc(c.Report.Parts, func(p judge.Part) bool { return p.Baking != nil }):
		return "Nothing in it goes into the oven."
	default:
		return "The receipt tells no oven, and no class is near enough to tell one for it."
	}
	return strings.Join(append(said, byThermometer), " ")
}

// pasteAlone reports that nothing but paste goes into the oven.
func (c *checking) pasteAlone() bool {
	return !slices.ContainsFunc(c.Report.Parts, func(p judge.Part) bool { return p.Kind != formula.Pastry && p.Baking != nil })
}

// cooling is how each part is let cool.
func (c *checking) cooling() List {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		if d := p.Done.Set; d != nil && p.Kind != formula.Pastry {
			if d.Cooling != "" {
				out = append(out, Entry{Label: p.Name, Text: d.Cooling})
			}
			if d.TooFar != "" {
				out = append(out, Entry{Text: "too long: " + d.TooFar})
			}
		}
	}
	return out
}

// base is the chance of each paste to bake through, by what it stands on.
func (c *checking) base() List {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		if p.Baking == nil || len(p.Baking.Base) == 0 {
			continue
		}
		label := p.Name
		for _, t := range p.Baking.Base {
			out = append(out, Entry{Label: label, Text: "on " + t.On.String() + ": bakes through " + outOfTen(t.Chance)})
			label = ""
		}
		if len(p.Baking.Base) == 1 {
			out = append(out, Entry{Text: coldDish})
		}
		out = append(out, Entry{Text: baseJudged})
	}
	return out
}
