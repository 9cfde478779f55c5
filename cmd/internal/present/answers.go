package present

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"assize/ratios/judge"
	"assize/reference"
)

// Answers is the sheet for the public's questions of a dish. It is made to be
// printed and signed by the person who has read the packets.
func Answers(s *Sheet, a About) *Page {
	x := &answering{checking: &checking{Sheet: s, citations: citations{tables: a.Tables}}}
	f := s.Report.Formula
	p := &Page{Title: f.Title + ": answers for the public", Under: under(f), Lead: x.lead()}
	p.section(headHolds, x.holds())
	p.section(headAllergens, x.allergens(), Paragraph(allergensElse))
	for _, q := range questions {
		p.section(q.heading, x.question(q.id), Paragraph(x.otherwise(q.id)))
	}
	p.section(headRawEgg, x.rawEgg())
	p.section(headDisplay, displayOnly())
	p.section(headCautions, x.cautions()...)
	p.section(headSigned, signHere())
	p.section(headSources, x.sources(a)...)
	return p
}

// questions are those the public asks beside allergens, in the order of the
// sheet.
var questions = []struct{ id, heading, nothing string }{
	{"vegetarian", "For vegetarians", "Nothing listed is known to us to come of the killed animal. Look at the packets of cheese, fat, wine and colouring, and at what the dish was greased with, before you answer."},
	{"coeliac", "Wheat and its kin", "Nothing listed is known to us to hold gluten. Flour flies in a kitchen where paste is made: do not answer that a dish holds none."},
	{"alcohol", "Alcohol", "Nothing listed is known to us to hold alcohol."},
	{"hidden", "What hides in bought things", "Nothing listed is known to us to hide more. Read every packet all the same."},
}

type answering struct{ *checking }

// lead names what people are allergic to, by the European list, which is the
// longer, and what the American has beside.
func (x *answering) lead() string {
	var names []string
	for _, a := range x.Report.Allergens {
		if !slices.Contains(names, a.Row.Group) && !slices.Contains(names, within[a.Row.Group]) {
			names = append(names, a.Row.Group)
		}
	}
	if len(names) == 0 {
		return answersLead
	}
	return sentence("holds "+and(names)) + " " + answersLead
}

// within are groups of the American list that lie within a group of the
// European one. Pine nuts are tree nuts by the American list alone.
var within = map[string]string{"wheat": "cereals containing gluten", "tree nuts": "nuts", "crustacean shellfish": "crustaceans"}

// holds are the ingredients by part.
func (x *answering) holds() List {
	var out List
	for i := range x.Report.Parts {
		p := &x.Report.Parts[i]
		var names []string
		for _, l := range p.Lines {
			for _, it := range l.Items {
				name := it.Ingredient.Name
				if !it.Used {
					name += " (perhaps)"
				}
				if !slices.Contains(names, name) {
					names = append(names, name)
				}
			}
		}
		out = append(out, Entry{Label: p.Name, Text: strings.Join(names, "; ")})
	}
	for i := range x.Report.Findings {
		if f := &x.Report.Findings[i]; f.Code == "not-listed" {
			out = append(out, Entry{Label: "mind", Text: f.Says})
		}
	}
	return out
}

// listNames are the two lists of allergens as they are headed.
var listNames = map[string]string{"eu": "European", "us": "American"}

// allergens is every group of both lists that something listed brings in; a
// group that both lists have, from the same things, stands once.
func (x *answering) allergens() Table {
	t := Table{Columns: []Column{{Name: "holds"}, {Name: "by list"}, {Name: "from"}}}
	at := map[string]int{}
	for _, a := range x.Report.Allergens {
		from := withNamed(namesOf(a.From), a.Named)
		by := listNames[a.Row.List] + " " + x.cite(a.Row.Provenance)
		key := a.Row.Group + from
		if i, ok := at[key]; ok {
			t.Rows[i][1] += ", " + by
			continue
		}
		at[key] = len(t.Rows)
		t.Rows = append(t.Rows, []string{a.Row.Shown, by, from})
	}
	return t
}

// withNamed are names with those behind them that no line lists, each with where it
// is named.
func withNamed(names []string, more []judge.Named) string {
	for _, n := range more {
		names = append(names[:len(names):len(names)], fmt.Sprintf("%s (%s)", n.Ingredient.Name, namedIn[n.Place]))
	}
	return strings.Join(names, "; ")
}

// namedIn says where a thing is named that no line lists.
var namedIn = map[judge.Place]string{
	judge.InDirections: "named in the directions", judge.Elsewhere: "named elsewhere in the book", judge.InPractice: "in a step the worksheet adds",
}

func namesOf(list []*reference.Ingredient) []string {
	var out []string
	for _, ing := range list {
		out = append(out, ing.Name)
	}
	return out
}

// answerWords are the two answers a row may give, by question: never a word
// that could be read the other way round.
var answerWords = map[string]map[string]string{
	"vegetarian": {"against": "not vegetarian", "ask": "ask"},
	"coeliac":    {"against": "not for coeliacs", "ask": "ask"},
	"alcohol":    {"against": "holds alcohol", "ask": "ask"},
	"hidden":     {"against": "holds", "ask": "ask"},
}

// question are the answers to one question: what speaks against first.
func (x *answering) question(id string) List {
	var against, ask List
	add := func(answer, says, from, mark string) {
		e := Entry{Label: answerWords[id][answer], Text: strings.TrimSpace(fmt.Sprintf("%s: %s %s", from, says, mark))}
		if answer == "against" {
			against = append(against, e)
		} else {
			ask = append(ask, e)
		}
	}
	switch id {
	case "alcohol":
		listed, named := x.Report.Spirits()
		for _, ing := range listed {
			if !essence(ing) {
				add("against", "by what it is made of", ing.Name, x.cite(ing.Provenance))
			}
		}
		for _, n := range named {
			if !essence(n.Ingredient) {
				add("against", "by what it is made of", withNamed(nil, []judge.Named{n}), x.cite(n.Ingredient.Provenance))
			}
		}
	case "coeliac":
		for _, a := range x.Report.Allergens {
			if a.Row.ID == "eu-gluten" {
				add("against", "a source of gluten", withNamed(namesOf(a.From), a.Named), x.cite(a.Row.Provenance))
			}
		}
	}
	for _, a := range x.Report.Answers(x.tables) {
		if a.Row.Question == id {
			add(a.Row.Answer, a.Row.Says, withNamed(a.From, a.Named), x.cite(a.Row.Provenance))
		}
	}
	return append(against, ask...)
}

// essence reports a flavouring taken by the drop, which has a row of its own.
func essence(ing *reference.Ingredient) bool { return strings.HasSuffix(ing.ID, "_extract") }

// otherwise is said where nothing was found to answer a question: what is not
// known, and never a yes.
func (x *answering) otherwise(id string) string {
	if len(x.question(id)) > 0 {
		return ""
	}
	for _, q := range questions {
		if q.id == id {
			return q.nothing
		}
	}
	return ""
}

// rawEgg tells of egg that is not cooked, or not by the authority's heat.
func (x *answering) rawEgg() List {
	var out List
	for i := range x.Report.Findings {
		if f := &x.Report.Findings[i]; f.Code == "raw-egg" {
			out = append(out, Entry{Label: f.Part, Text: sentence(f.Says)})
		}
	}
	if len(out) > 0 {
		return out
	}
	for i := range x.Report.Parts {
		if p := &x.Report.Parts[i]; p.Done.Floor != nil {
			text := fmt.Sprintf("egg, to be cooked to %s F (%s C) in the middle %s: measure it, and write it down below",
				p.Done.Floor.F.Likely.Round(0), p.Done.Floor.C.Likely.Round(0), x.cite(p.Done.Floor.Provenance))
			out = append(out, Entry{Label: p.Name, Text: text})
		}
	}
	for _, n := range x.Report.Named {
		if slices.Contains([]string{"egg", "white", "yolk"}, n.Ingredient.Kind) {
			out = append(out, Entry{Label: x.Report.Parts[n.Part].Name, Text: fmt.Sprintf("%s, %s: it is to be baked on, or cooked through", n.Ingredient.Name, namedIn[n.Place])})
		}
	}
	if len(out) == 0 {
		out = append(out, Entry{Text: "No egg is listed."})
	}
	return out
}

// answersDoc is the answer sheet as JSON has it.
type answersDoc struct {
	Schema    int                  `json:"schema"`
	Assize    assizeDoc            `json:"assize"`
	Receipt   receiptDoc           `json:"receipt"`
	Holds     []string             `json:"holds"`
	Allergens map[string][]fromDoc `json:"allergens"` // by list: eu, us
	Questions map[string][]saysDoc `json:"questions"`
	Cautions  []findingDoc         `json:"cautions"`
	Deference string               `json:"deference"`
	Sources   []sourceDoc          `json:"sources"`
}

type fromDoc struct {
	Group string     `json:"group"`
	From  []string   `json:"from"`
	Named []namedDoc `json:"named,omitempty"`
}

// namedDoc is a thing that no line lists.
type namedDoc struct {
	Ingredient string `json:"ingredient"`
	Words      string `json:"words"`
	In         string `json:"in"` // directions | elsewhere | practice
}

func namedDocs(list []judge.Named) []namedDoc {
	var out []namedDoc
	for _, n := range list {
		out = append(out, namedDoc{n.Ingredient.ID, n.Words, string(n.Place)})
	}
	return out
}

type saysDoc struct {
	Answer string     `json:"answer"` // against | ask; none speaks for a dish
	Says   string     `json:"says"`
	From   []string   `json:"from"`
	Named  []namedDoc `json:"named,omitempty"`
	Source string     `json:"source"`
}

// AnswersJSON writes the answer sheet as one JSON object.
func AnswersJSON(w io.Writer, s *Sheet, a About, oneOfSeveral bool) error {
	r := s.Report
	f := r.Formula
	d := answersDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt: receiptDoc{f.File, f.Title, f.Source, f.Year, f.Printed, f.Place},
		Holds:   []string{}, Allergens: map[string][]fromDoc{}, Questions: map[string][]saysDoc{},
		Cautions: []findingDoc{}, Deference: reference.Deference, Sources: []sourceDoc{},
	}
	used := works{tables: a.Tables}
	use := func(id string) {
		if src, ok := a.Tables.Source(id); ok {
			used.use(src)
		}
	}
	for i := range r.Parts {
		for _, l := range r.Parts[i].Lines {
			for _, it := range l.Items {
				if !slices.Contains(d.Holds, it.Ingredient.ID) {
					d.Holds = append(d.Holds, it.Ingredient.ID)
				}
			}
		}
	}
	for _, l := range reference.AllergenLists {
		d.Allergens[l] = []fromDoc{}
	}
	for _, x := range r.Allergens {
		from := fromDoc{Group: x.Row.Group, From: []string{}, Named: namedDocs(x.Named)}
		for _, ing := range x.From {
			from.From = append(from.From, ing.ID)
		}
		d.Allergens[x.Row.List] = append(d.Allergens[x.Row.List], from)
		use(x.Row.Source)
	}
	for _, q := range reference.Questions {
		d.Questions[q] = []saysDoc{}
	}
	listed, named := r.Spirits()
	for _, ing := range listed {
		d.Questions["alcohol"] = append(d.Questions["alcohol"], saysDoc{"against", "holds alcohol", []string{ing.ID}, nil, ing.Source})
		use(ing.Source)
	}
	for _, n := range named {
		d.Questions["alcohol"] = append(d.Questions["alcohol"], saysDoc{"against", "holds alcohol", []string{}, namedDocs([]judge.Named{n}), n.Ingredient.Source})
		use(n.Ingredient.Source)
	}
	for _, x := range r.Answers(a.Tables) {
		d.Questions[x.Row.Question] = append(d.Questions[x.Row.Question], saysDoc{x.Row.Answer, x.Row.Says, slices.Concat([]string{}, x.From), namedDocs(x.Named), x.Row.Source})
		use(x.Row.Source)
	}
	for i := range r.Findings {
		if isCaution(&r.Findings[i]) {
			d.Cautions = append(d.Cautions, findingDocOf(&r.Findings[i], &used))
		}
	}
	for _, src := range used.used {
		d.Sources = append(d.Sources, sourceDocOf(src))
	}
	return writeJSON(w, d, oneOfSeveral)
}
