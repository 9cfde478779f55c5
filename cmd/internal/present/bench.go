package present

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/oven"
	"assize/ratios/worksheet"
	"assize/reference"
)

// Bench is a sheet for the bench in words: what text, Markdown and HTML set
// out, so that they cannot say different things.
type Bench struct {
	Title, Under, Lead string
	Cautions           []string
	Deference          string
	First              []string // to be put right before anything is weighed out
	Parts              []BenchPart
	Oven               []string
	Phases             []BenchPhase
	Time               []BenchTime
	TimeNote           string
	Stops, Show        []string
	Buy                []BenchBuy
	Aside              []string
	Assumed            []string
	Sources            []Entry
	OwnTables          string // what to say of the person's own tables, empty when none
}

// BenchPart is one part to weigh out.
type BenchPart struct {
	Name, Is, Total string
	Unit            string
	Lines           []BenchLine
	Notes           []string
}

// BenchLine is one thing to weigh: the amount, what it is, and the line of the
// receipt it comes from, which stands with the first of its things.
type BenchLine struct{ Amount, Between, Of, Book string }

// BenchPhase is a stretch of the work.
type BenchPhase struct {
	Heading string
	Steps   []BenchStep
}

// BenchStep is one thing to do. Mark says where it stands when that is not the
// receipt's own page; Kind is its origin.
type BenchStep struct {
	Text, Mark, Kind string
	// Tick is false for what is to be looked for and not done.
	Tick bool
}

// BenchTime is something that begins at a time.
type BenchTime struct {
	When, What, For string
	Waiting         bool
}

// BenchBuy is something to have in the house.
type BenchBuy struct{ Amount, Of, Note string }

// Clock is the time of day the dish is served, in minutes from midnight; less
// than nothing when it is not given.
type Clock int

// NoClock stands for a time of serving that is not given.
const NoClock Clock = -1

// WorksheetOf puts a sheet into words.
func WorksheetOf(s *worksheet.Sheet, a About, serve Clock) *Bench {
	w := &benching{s: s, citations: citations{tables: a.Tables}, serve: serve}
	f := s.Formula
	b := &Bench{Title: f.Title, Under: under(f)}
	if a.OwnTables != "" {
		b.OwnTables = ownTables(a.OwnTables)
	}
	b.Cautions = w.cautions()
	if len(b.Cautions) > 0 {
		b.Deference = sentence(reference.Deference)
	}
	for i := range s.Unlisted {
		b.First = append(b.First, sentence(s.Unlisted[i].Says))
	}
	for i := range s.Parts {
		b.Parts = append(b.Parts, w.part(&s.Parts[i]))
	}
	b.Oven = w.oven()
	for i := range s.Phases {
		b.Phases = append(b.Phases, w.phase(&s.Phases[i]))
	}
	b.Time, b.TimeNote = w.time(), w.timeNote()
	for _, r := range s.Plan.Stops {
		b.Stops = append(b.Stops, sentence(r.Stop))
	}
	for _, r := range s.Plan.Show {
		b.Show = append(b.Show, sentence(r.Show))
	}
	b.Buy = w.buy()
	for _, d := range s.Aside {
		b.Aside = append(b.Aside, aside(&d))
	}
	b.Assumed = w.assumed()
	b.Lead = w.lead()
	b.Sources = w.list()
	return b
}

type benching struct {
	s *worksheet.Sheet
	citations
	serve Clock
}

func (w *benching) cautions() []string {
	var out []string
	for i := range w.s.Cautions {
		f := &w.s.Cautions[i]
		text := sentence(f.Says)
		for _, e := range f.Because {
			mark := ""
			if e.Source != nil {
				mark = w.work(e.Source, e.Locator)
			}
			text += " (" + strings.TrimSpace(e.Limit+" "+mark) + ")"
		}
		out = append(out, text)
	}
	return out
}

func (w *benching) part(p *worksheet.Part) BenchPart {
	out := BenchPart{Name: upper(p.Of.Name), Is: benchPartIs(p), Unit: "g"}
	if p.Parts {
		out.Unit = partsUnit
	}
	for _, l := range p.Lines {
		text := l.Text
		for _, it := range l.Items {
			line := BenchLine{Of: benchItem(&it), Book: text}
			text = ""
			if words, ok := states[it.State]; ok {
				line.Amount = words
			} else {
				line.Amount, line.Between = figure(it.Grams.Likely)+" "+out.Unit, between(it.Grams)
			}
			out.Lines = append(out.Lines, line)
		}
		for _, n := range l.Notes {
			out.Notes = append(out.Notes, quoted(l.Text)+": "+n)
		}
	}
	out.Total = weight(p.Total, out.Unit)
	return out
}

// benchItem is an ingredient as it is weighed out; the less likely side of a
// line in doubt says so.
func benchItem(it *worksheet.Item) string {
	j := judge.Item{Ingredient: it.Ingredient, Form: it.Form, Used: it.Used}
	return itemIs(&j)
}

func (w *benching) phase(p *worksheet.Phase) BenchPhase {
	out := BenchPhase{Heading: phaseHeading(p, w.s)}
	last := ""
	for i := range p.Steps {
		s := &p.Steps[i]
		if s.Text != "" {
			b := BenchStep{Text: benchText(s.Text), Kind: string(s.Origin), Tick: true, Mark: w.mark(s)}
			if s.Origin == worksheet.Taken && b.Mark == last {
				b.Mark = ""
			} else {
				last = b.Mark
			}
			out.Steps = append(out.Steps, b)
		}
		if s.Done != nil {
			out.Steps = append(out.Steps, BenchStep{Text: marked(doneWhen(s.Done), w.cite(s.Done.Provenance)), Kind: "sign"})
		}
	}
	return out
}

// benchText ends a step with a stop.
func benchText(s string) string {
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "!") || strings.HasSuffix(s, "?") {
		return s
	}
	return s + "."
}

// marked sets the mark of a source before the stop of a sentence.
func marked(sentence, mark string) string {
	if mark == "" {
		return sentence
	}
	return strings.TrimSuffix(sentence, ".") + " " + mark + "."
}

// citeMark is the mark of a source with a space before it.
func (w *benching) citeMark(p reference.Provenance) string {
	if m := w.cite(p); m != "" {
		return " " + m
	}
	return ""
}

// mark says where a step stands, and for what the book leaves unsaid why it is
// done and the earliest print it was found in.
func (w *benching) mark(s *worksheet.Step) string {
	switch s.Origin {
	case worksheet.Taken:
		return takenFrom(s.From)
	case worksheet.Elsewhere:
		return printedElsewhere(s.From)
	case worksheet.Unsaid:
		r := s.Row
		ground, mark := layers[judge.LayerPractice], ""
		if r.How != reference.HowCommon {
			if src, ok := w.tables.Source(r.Source); ok {
				ground, mark = src.Title, w.citeMark(r.Provenance)
			}
		}
		found := ""
		if r.Found.Year != 0 {
			found = earliest(r.Found.Year)
			if m := w.citeMark(r.Found.Provenance); m != mark {
				found += m
			}
		}
		return notInTheBook(ground+mark, r.Why, found)
	}
	return ""
}

func (w *benching) oven() []string {
	o := &w.s.Oven
	var out []string
	if d := w.s.InDish; d != nil && d.Verdict != dish.NotKnown {
		said := fills(d)
		if d.Vessel != nil {
			said = marked(said, w.cite(d.Vessel.Provenance))
		}
		out = append(out, said)
	}
	if o.Pot {
		if o.Said {
			out = append(out, saidMinutes(o.Minutes))
		}
		return out
	}
	if !o.Baked {
		if o.Class != nil && o.Class.Heat != "" {
			out = append(out, marked(usualHeat(o.Class, o.Given), w.cite(o.Class.Provenance)))
		}
		return out
	}
	for i := range o.Heats {
		h := &o.Heats[i]
		// "Quick" beside the steps and "a quick oven" in them are one sign.
		again := slices.ContainsFunc(o.Heats, func(x oven.Heat) bool {
			return len(x.Words) > len(h.Words) && strings.Contains(x.Words, h.Words) && x.C == h.C
		}) || slices.ContainsFunc(o.Heats[:i], func(x oven.Heat) bool { return x.Words == h.Words })
		if h.C.IsZero() || again {
			continue
		}
		said := benchHeat(h, strings.Contains(w.s.Formula.Kitchen.Oven, "fan"))
		if h.Row != nil {
			said += w.citeMark(h.Row.Provenance)
		}
		out = append(out, sentence(said))
	}
	switch {
	case o.Said:
		out = append(out, saidMinutes(o.Minutes))
	case o.Reckoned:
		out = append(out, reckonedMinutes(o.Minutes))
	case o.Usual != nil:
		out = append(out, marked(usualMinutes(o.Minutes, o.Usual.Name), w.cite(o.Usual.Provenance)))
	default:
		out = append(out, noMinutes)
	}
	if o.Class != nil && o.Class.Heat != "" {
		out = append(out, marked(usualHeat(o.Class, o.Given), w.cite(o.Class.Provenance)))
	}
	return out
}

func (w *benching) time() []BenchTime {
	var out []BenchTime
	p := &w.s.Plan
	for _, e := range p.Events {
		out = append(out, BenchTime{When: w.when(e.At), What: eventIs(&e, w.s), For: lasts(&e), Waiting: e.Waiting})
	}
	return out
}

// when is a moment as the plan shows it: by the clock when the time of serving
// is given, else in hours before it.
func (w *benching) when(before int) string {
	if w.serve == NoClock {
		if before == 0 {
			return "0:00"
		}
		return fmt.Sprintf("%d:%02d", before/60, before%60)
	}
	const day = 24 * 60
	at := int(w.serve) - before
	ahead := ""
	for ; at < 0; at += day {
		ahead = "the day before, "
	}
	return fmt.Sprintf("%s%d:%02d", ahead, at/60, at%60)
}

func (w *benching) timeNote() string {
	if w.s.Plan.OvenOpen {
		return openPlan
	}
	if w.serve == NoClock {
		return planBefore
	}
	return planByClock
}

func (w *benching) buy() []BenchBuy {
	var out []BenchBuy
	for i := range w.s.Shopping.Wholes {
		x := &w.s.Shopping.Wholes[i]
		out = append(out, BenchBuy{Amount: countOf(x.Low, x.High), Of: pluralOf(x.Name, x.High), Note: wholeNote(x)})
	}
	for i := range w.s.Shopping.Goods {
		g := &w.s.Shopping.Goods[i]
		b := BenchBuy{Of: g.Ingredient.Name}
		switch {
		case g.Parts:
			b.Amount, b.Note = "", byProportion
		case !g.Grams.High.IsPositive():
			b.Amount = states[g.State]
		default:
			b.Amount = figure(g.Grams.Likely) + " g"
			if r := between(g.Grams); r != "" {
				b.Note = r + " g"
			}
			if words, ok := states[g.State]; ok {
				b.Note = strings.TrimPrefix(b.Note+"; and some "+words, "; ")
			}
		}
		out = append(out, b)
	}
	for i := range w.s.Shopping.Paste {
		p := &w.s.Shopping.Paste[i]
		out = append(out, BenchBuy{Of: p.Part, Note: pasteOver(p, layOf(p.Part, w.s), w.s.InDish, i == 0)})
	}
	return out
}

func (w *benching) assumed() []string {
	var out []string
	if k := kitchen(&w.s.Formula.Kitchen); k != "" {
		out = append(out, k)
	}
	for _, n := range w.s.Weighed.Notes {
		out = append(out, sentence(n))
	}
	for i := range w.s.Parts {
		if p := &w.s.Parts[i]; p.Of.Kind == formula.Pastry && p.Lay != "" && !p.Given {
			out = append(out, layAssumed(p))
		}
	}
	return append(out, benchDoubts(w.s.Weighed)...)
}

// benchDoubts names what the weights hang on in one sentence.
func benchDoubts(w *weigh.Weighed) []string {
	var names []string
	for i := range w.Unknowns {
		names = append(names, w.Unknowns[i].Words)
	}
	if len(names) == 0 {
		return nil
	}
	return []string{weightsHang(names)}
}

// lead counts what was put in its place and says when to begin.
func (w *benching) lead() string {
	elsewhere, unsaid := 0, 0
	for _, p := range w.s.Phases {
		for _, s := range p.Steps {
			switch {
			case s.Text == "":
			case s.Origin == worksheet.Elsewhere:
				elsewhere++
			case s.Origin == worksheet.Unsaid:
				unsaid++
			}
		}
	}
	said := []string{beginAt(w.s.Plan.Start, w.when(w.s.Plan.Start), w.serve != NoClock, w.s.Plan.OvenOpen)}
	said = append(said, putIn(elsewhere, unsaid))
	if len(w.s.Cautions) > 0 {
		said = append(said, readCautions)
	}
	return strings.Join(slices.DeleteFunc(said, func(s string) bool { return s == "" }), " ")
}
