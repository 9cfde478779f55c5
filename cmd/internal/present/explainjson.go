package present

import (
	"encoding/json"
	"io"

	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/reference"
)

// explainDoc is an explanation as JSON has it. What was not worked out is left
// out, never nought.
type explainDoc struct {
	Schema  int          `json:"schema"`
	Assize  assizeDoc    `json:"assize"`
	Receipt receiptDoc   `json:"receipt"`
	Record  *recordDoc   `json:"record,omitempty"`
	Results []resultDoc  `json:"results"`
	Kept    string       `json:"kept,omitempty"`
	Sources []sourceDoc  `json:"sources"`
	Made    []partShares `json:"made"`
	Written []partShares `json:"written,omitempty"`
}

type recordDoc struct {
	File       string       `json:"file"`
	Baked      string       `json:"baked,omitempty"`
	Departures []string     `json:"departures,omitempty"`
	Tasted     []tastingDoc `json:"tasted"`
	Open       []openDoc    `json:"open"`
}

type openDoc struct {
	Part  string   `json:"part"`
	Words []string `json:"words"`
}

type tastingDoc struct {
	By    string    `json:"by"`
	When  string    `json:"when,omitempty"`
	Signs []signDoc `json:"signs"`
	Words string    `json:"words,omitempty"`
}

type signDoc struct {
	Look    string `json:"look,omitempty"`
	Words   string `json:"words"`
	Part    string `json:"part,omitempty"`
	Texture string `json:"texture,omitempty"`
}

type partShares struct {
	Part      string                 `json:"part"`
	Likeliest string                 `json:"likeliest"`
	Shares    map[string]json.Number `json:"shares"`
}

type resultDoc struct {
	Part       string        `json:"part"`
	Texture    string        `json:"texture"`
	By         []string      `json:"by,omitempty"`
	Fault      bool          `json:"fault"`
	AsMeant    bool          `json:"as_meant"`
	Class      string        `json:"class,omitempty"`
	Told       string        `json:"told_by,omitempty"` // the texture whose share it is told by
	In         string        `json:"in,omitempty"`      // share | reasons | acid | sugar
	Share      *json.Number  `json:"share,omitempty"`
	Range      []json.Number `json:"range,omitempty"`
	Written    *json.Number  `json:"written,omitempty"`
	InKitchen  *json.Number  `json:"in_this_kitchen,omitempty"`
	Expected   string        `json:"expected"`
	Causes     []causeDoc    `json:"causes"`
	Doubts     []causeDoc    `json:"doubts"`
	Might      []causeDoc    `json:"might"`
	Outside    []outsideDoc  `json:"outside"`
	Centre     *centreDoc    `json:"centre,omitempty"`
	OfReceipt  *meantDoc     `json:"receipt,omitempty"`
	Next       []nextDoc     `json:"next"`
	Variant    []changeDoc   `json:"variant,omitempty"`
	SlightOnly bool          `json:"slight_only,omitempty"`
}

type causeDoc struct {
	Change  string      `json:"change"`
	Kind    string      `json:"kind"`
	Done    string      `json:"done"`
	Instead string      `json:"instead,omitempty"`
	From    json.Number `json:"from"`
	To      json.Number `json:"to"`
	Least   string      `json:"least,omitempty"`
	Most    string      `json:"most,omitempty"`
	Why     string      `json:"why,omitempty"`
	Source  string      `json:"source,omitempty"`
	Locator string      `json:"locator,omitempty"`
	How     string      `json:"how,omitempty"`
}

type outsideDoc struct {
	What   string `json:"what"`
	Kind   string `json:"kind"`
	Says   string `json:"says"`
	Source string `json:"source"`
	How    string `json:"how"`
}

type centreDoc struct {
	C       json.Number `json:"c"`
	Low     json.Number `json:"low"`
	High    json.Number `json:"high"`
	Verdict string      `json:"verdict"`
	Source  string      `json:"source"`
}

type meantDoc struct {
	Meant   string       `json:"meant"`
	By      string       `json:"by"`
	Texture string       `json:"texture,omitempty"`
	AsMeant bool         `json:"as_meant"`
	Tells   bool         `json:"tells"`
	Doubts  []readingDoc `json:"doubts"`
}

type readingDoc struct {
	Words string   `json:"words"`
	Ways  []wayDoc `json:"ways"`
}

type wayDoc struct {
	Words  string      `json:"words"`
	Before json.Number `json:"before"`
	After  json.Number `json:"after"`
	InBowl json.Number `json:"in_bowl"`
}

type nextDoc struct {
	Changes     []string                  `json:"changes"`
	Ingredients int                       `json:"ingredients_changed"`
	Left        json.Number               `json:"left"`
	Answers     bool                      `json:"answers"`
	Effect      map[string][2]json.Number `json:"effect,omitempty"`
}

// ExplainJSON writes an explanation as one indented JSON object.
func ExplainJSON(w io.Writer, x *Explained, a About) error {
	f := x.Bake.Formula()
	d := explainDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt: receiptDoc{f.File, f.Title, f.Source, f.Year, f.Printed, f.Place},
		Results: []resultDoc{}, Kept: x.Kept, Sources: []sourceDoc{}, Made: sharesOf(x.Bake.Report),
	}
	if r := x.Bake.Record; r != nil {
		d.Written = sharesOf(x.Bake.Written)
		rd := recordDoc{File: r.File, Baked: r.Baked, Departures: r.Departures, Tasted: []tastingDoc{}, Open: []openDoc{}}
		for _, t := range r.Tastings {
			td := tastingDoc{By: t.By, When: t.When, Words: t.Words, Signs: []signDoc{}}
			for _, s := range t.Signs {
				sd := signDoc{Look: s.Look, Words: s.Words, Texture: s.Texture}
				if s.Part >= 0 {
					sd.Part = f.Parts[s.Part].Name
				}
				td.Signs = append(td.Signs, sd)
			}
			rd.Tasted = append(rd.Tasted, td)
		}
		for i := range f.Parts {
			if words := x.Bake.Open(i); len(words) > 0 {
				rd.Open = append(rd.Open, openDoc{f.Parts[i].Name, words})
			}
		}
		d.Record = &rd
	}
	used := works{tables: a.Tables}
	for _, r := range x.Results {
		d.Results = append(d.Results, resultDocOf(x, r, &used))
	}
	for _, s := range used.used {
		d.Sources = append(d.Sources, sourceDocOf(s))
	}
	return writeJSON(w, d, false)
}

func sharesOf(r *judge.Report) []partShares {
	out := []partShares{}
	for _, p := range explain.Predictions(r) {
		d := partShares{Part: p.Part, Likeliest: p.Likeliest, Shares: map[string]json.Number{}}
		for _, s := range p.Shares {
			d.Shares[s.Texture.ID] = number(s.Share, sharePlaces)
		}
		out = append(out, d)
	}
	return out
}

func resultDocOf(x *Explained, r *explain.Explanation, used *works) resultDoc {
	d := resultDoc{
		Part: x.Bake.Formula().Parts[r.Of.Part].Name, Texture: r.Of.Texture.ID, By: r.Of.By, Fault: r.Fault, AsMeant: r.AsMeant,
		Told: r.Judged, In: string(r.In), Expected: string(r.Expected), SlightOnly: r.Slight,
		Causes: causeDocs(r.Causes, used), Doubts: causeDocs(r.Doubts, used), Might: causeDocs(r.Might, used),
		Outside: []outsideDoc{}, Next: []nextDoc{},
	}
	if r.Class != nil {
		d.Class = r.Class.ID
	}
	if r.In != "" {
		share := number(r.Share, sharePlaces)
		d.Share = &share
	}
	if r.In == explain.Shares {
		d.Range = []json.Number{number(r.Low, sharePlaces), number(r.High, sharePlaces)}
		written := number(r.Written, sharePlaces)
		d.Written = &written
		if share, ok := x.kitchenShare(r); ok {
			in := number(share, sharePlaces)
			d.InKitchen = &in
		}
	}
	for _, c := range r.Outside {
		use(used, c.Provenance)
		d.Outside = append(d.Outside, outsideDoc{c.What, c.Kind, c.Says, c.Source, string(c.How)})
	}
	if c := r.Doneness; c != nil {
		use(used, c.Row.Provenance)
		d.Centre = &centreDoc{number(c.C, 1), exact(c.Row.C.Low, 1), exact(c.Row.C.High, 1), c.Verdict, c.Row.Source}
	}
	if m := &r.Receipt; m.Meant != "" {
		md := &meantDoc{Meant: m.Meant, By: m.By, AsMeant: m.AsMeant, Tells: m.Tells, Doubts: []readingDoc{}}
		if m.Texture != nil {
			md.Texture = m.Texture.ID
		}
		for _, o := range m.Doubts {
			rd := readingDoc{Words: o.Words, Ways: []wayDoc{}}
			for _, w := range o.Ways {
				rd.Ways = append(rd.Ways, wayDoc{w.Words, number(w.Before, sharePlaces), number(w.After, sharePlaces), number(w.InBowl, sharePlaces)})
			}
			md.Doubts = append(md.Doubts, rd)
		}
		d.OfReceipt = md
	}
	if r.Variant != nil {
		d.Variant = changeDocs(r.Variant.Changes)
	}
	for _, s := range r.Next {
		nd := nextDoc{Changes: s.Texts, Ingredients: s.Ingredients, Left: number(s.Left, sharePlaces), Answers: s.Answers}
		for _, e := range s.Effect {
			if !finite(e.Before, e.After) {
				continue
			}
			if nd.Effect == nil {
				nd.Effect = map[string][2]json.Number{}
			}
			nd.Effect[e.What] = [2]json.Number{number(e.Before, measurePlaces), number(e.After, measurePlaces)}
		}
		d.Next = append(d.Next, nd)
	}
	return d
}

// use names the source of a row.
func use(used *works, p reference.Provenance) {
	if s, ok := used.tables.Source(p.Source); ok {
		used.use(s)
	}
}

func causeDocs(list []explain.Cause, used *works) []causeDoc {
	out := []causeDoc{}
	for i := range list {
		c := &list[i]
		d := causeDoc{
			Change: c.ID, Kind: string(c.Kind), Done: c.Done, Instead: c.Instead, From: number(c.From, sharePlaces), To: number(c.To, sharePlaces),
			Least: c.Least, Most: c.Most,
		}
		if c.Why != nil {
			use(used, c.Why.Provenance)
			d.Why, d.Source, d.Locator, d.How = c.Why.Says, c.Why.Source, c.Why.Locator, string(c.Why.How)
		}
		out = append(out, d)
	}
	return out
}
