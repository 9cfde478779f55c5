package present

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"assize/ratios/variant"
	"assize/reference"
)

// Nearest is the page of what is published nearest to a receipt.
func Nearest(n *variant.Nearest, a About) *Page {
	c := &nearing{citations: citations{tables: a.Tables}}
	p := &Page{Title: n.Formula.Title, Under: under(n.Formula)}
	var lead []string
	for i := range n.Parts {
		part := &n.Parts[i]
		lead = append(lead, nearestOf(part))
		p.section(upper(part.Name),
			c.classes(part.Modern, "Families of today"),
			c.classes(part.Period, "Families of the old books"),
			c.formulas(part))
	}
	p.Lead = strings.Join(lead, " ")
	p.section(headSources, c.list())
	return p
}

type nearing struct{ citations }

// nearestOf is the nearest of a part in a sentence.
func nearestOf(p *variant.NearPart) string {
	if len(p.Modern) == 0 {
		return sentence("nothing published today is enough like the " + p.Name + " to be held against it")
	}
	first := &p.Modern[0]
	switch {
	case first.Distance == 0:
		return sentence(fmt.Sprintf("the %s lies wholly within what is usual today for %s", p.Name, first.Class.Name))
	case first.Distance > farOff:
		return sentence(fmt.Sprintf("nothing of today is much like the %s; the nearest is %s", p.Name, first.Class.Name))
	}
	return sentence(fmt.Sprintf("the %s is nearest to %s", p.Name, first.Class.Name))
}

// classes are classes with what keeps the part from each.
func (c *nearing) classes(list []variant.NearClass, caption string) Block {
	t := Table{Caption: caption, Columns: []Column{{Name: "family"}, {Name: "how near"}, {Name: "what keeps it from that"}}}
	for i := range list {
		n := &list[i]
		var keeps []string
		for k := range n.Off {
			keeps = append(keeps, offRange(&n.Off[k]))
		}
		for _, q := range n.Otherwise {
			keeps = append(keeps, madeOtherwise[q])
		}
		said := strings.Join(keeps, "; ")
		if said == "" {
			said = "nothing"
		}
		t.Rows = append(t.Rows, []string{n.Class.Name + " (" + n.Class.ID + ")", howNear(n.Distance), said})
	}
	return t
}

// madeOtherwise is how a part is made otherwise than a class.
var madeOtherwise = map[string]string{
	"fat": "its fat goes in otherwise", "fire": "the heat comes to it otherwise", "air": "it is beaten or mixed otherwise",
}

// Bounds of nearness in words: what the ratios lie outside on the whole.
const (
	veryNear  = .01
	fairlyFar = 1
)

func howNear(d float64) string {
	switch {
	case d == 0:
		return "within"
	case d <= veryNear:
		return "very near"
	case d <= farOff:
		return "near"
	case d <= fairlyFar:
		return "some way off"
	}
	return "far off"
}

// offRange is a ratio outside its range: "sugar to egg 0.56, usual 0.63-1.47".
func offRange(o *variant.Obstacle) string {
	places := int32(fewestPlaces)
	for _, r := range o.Ranges {
		verdict := 1
		if o.Value.LessThan(r.Low) {
			verdict = -1
		}
		places = max(places, ratioPlaces(o.Value, r.Low, r.High, verdict))
	}
	var usual []string
	for _, r := range o.Ranges {
		usual = append(usual, r.Low.Round(places).String()+"-"+r.High.Round(places).String())
	}
	value := o.Value.Round(places).String() + unitAfter(o.Ratio)
	if o.Value.IsZero() {
		value = "none"
	}
	return fmt.Sprintf("%s %s, usual %s", o.Ratio.Name, value, or(usual))
}

// formulas are the published formulas most like a part.
func (c *nearing) formulas(p *variant.NearPart) Block {
	t := Table{Caption: "Published formulas most like it", Columns: []Column{{Name: "formula"}, {Name: "how near"}, {Name: "came out"}, {Name: "from"}}}
	for i := range p.Like {
		n := &p.Like[i]
		f := n.Published
		out := f.Outcome
		if n.Texture != nil {
			out = n.Texture.Shown
		}
		if f.Evidence == "class" {
			out += " (our guess)"
		}
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%s, %d", f.Title, f.Year), howNear(n.Distance), out, c.cite(f.Provenance)})
	}
	return t
}

type nearestDoc struct {
	Schema  int           `json:"schema"`
	Assize  assizeDoc     `json:"assize"`
	Receipt receiptDoc    `json:"receipt"`
	Parts   []nearPartDoc `json:"parts"`
}

type nearPartDoc struct {
	Name   string         `json:"name"`
	Kind   string         `json:"kind"`
	Modern []nearClassDoc `json:"modern"`
	Period []nearClassDoc `json:"period"`
	Like   []nearLikeDoc  `json:"published"`
}

type nearClassDoc struct {
	ID        string        `json:"id"`
	Distance  json.Number   `json:"distance"`
	Off       []obstacleDoc `json:"off,omitempty"`
	Otherwise []string      `json:"made_otherwise,omitempty"`
}

type nearLikeDoc struct {
	ID       string      `json:"id"`
	Title    string      `json:"title"`
	Year     int         `json:"year"`
	Class    string      `json:"class"`
	Distance json.Number `json:"distance"`
	Outcome  string      `json:"outcome"`
	Evidence string      `json:"evidence"`
	Source   string      `json:"source"`
	Locator  string      `json:"locator"`
}

// NearestJSON writes what is nearest as JSON.
func NearestJSON(w io.Writer, n *variant.Nearest, a About) error {
	f := n.Formula
	d := nearestDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt: receiptDoc{File: f.File, Title: f.Title, Source: f.Source, Year: f.Year, Printed: f.Printed, Place: f.Place},
	}
	classes := func(list []variant.NearClass) []nearClassDoc {
		out := []nearClassDoc{}
		for _, c := range list {
			out = append(out, nearClassDoc{c.Class.ID, number(c.Distance, measurePlaces), obstacleDocs(c.Off), c.Otherwise})
		}
		return out
	}
	for _, p := range n.Parts {
		one := nearPartDoc{Name: p.Name, Kind: string(p.Kind), Modern: classes(p.Modern), Period: classes(p.Period), Like: []nearLikeDoc{}}
		for _, l := range p.Like {
			f := l.Published
			one.Like = append(one.Like, nearLikeDoc{f.ID, f.Title, f.Year, f.Class, number(l.Distance, measurePlaces), f.Outcome, f.Evidence, f.Source, f.Locator})
		}
		d.Parts = append(d.Parts, one)
	}
	return writeJSON(w, d, false)
}
