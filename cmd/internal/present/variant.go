package present

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/judge"
	"assize/ratios/variant"
	"assize/reference"
)

// Headings of a variant's page.
const (
	headChange  = "What to change"
	headStands  = "What still stands in the way"
	headSide    = "Book and variant"
	headInstead = "Other ways that would do"
	headSought  = "How it was sought"
)

// Variant is the page of a variant. With why it shows the next best ways and
// what was gone through.
func Variant(r *variant.Result, a About, why bool) *Page {
	v := &varying{Result: r, citations: citations{tables: a.Tables}}
	p := &Page{Title: r.Formula.Title, Under: under(r.Formula), Lead: v.lead()}
	p.section(headChange, v.what()...)
	p.section(headStands, v.stands())
	p.section(headSide, v.side()...)
	p.section(headProportions, v.proportions()...)
	if why {
		p.section(headInstead, v.others()...)
		p.section(headSought, v.sought()...)
	}
	p.section(headSources, v.list())
	return p
}

type varying struct {
	*variant.Result
	citations
}

func (v *varying) part() *formula.Part { return &v.Formula.Parts[v.Part] }

// lead is what it comes to, in two sentences.
func (v *varying) lead() string {
	name := "the " + v.part().Name
	switch {
	case v.Unchanged && v.Class != nil:
		return sentence(fmt.Sprintf("nothing need be changed: %s lies within what is usual for %s, and %s", name, v.Class.Name, v.nothingAgainst()))
	case v.Unchanged:
		return sentence(fmt.Sprintf("nothing need be changed in %s: %s", name, v.nothingAgainst()))
	case !v.Found && len(v.Changes) == 0:
		return sentence(fmt.Sprintf("no change we know of does it, with up to %s of %s in other amounts; none comes near enough to be worth telling", ingredients(v.Most), name))
	case !v.Found:
		return sentence("no change we know of does it whole; the nearest is this: "+v.inShort()) + " " + v.changedTurns()
	}
	return sentence(v.inShort()) + " " + v.changedTurns()
}

func ingredients(n int) string {
	if n == 1 {
		return "one ingredient"
	}
	return fmt.Sprintf("%s ingredients", small(n))
}

// small is a small number in words.
func small(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

// nothingAgainst says that nothing was found against a part, or not what was
// asked about.
func (v *varying) nothingAgainst() string {
	if len(v.Against) == 0 {
		if meant := v.meant(); meant != "" {
			return fmt.Sprintf("it would %s %s, as such a thing is meant to; --against %s has it otherwise", turnsOut[meant], v.howOften(v.Before, meant), meant)
		}
		return "nothing is found against it"
	}
	var said []string
	for _, id := range v.Against {
		said = append(said, fmt.Sprintf("it would %s %s", turnsOut[id], v.howOften(v.Before, id)))
	}
	return and(said)
}

// meant is the fault that is none in such a part and that it may well have.
func (v *varying) meant() string {
	p := &v.Before.Parts[v.Part]
	if p.Class == nil || p.Class.Class.Meant == "" || p.Texture == nil || !isFault(p.Texture, p.Class.Class.Meant) || share(p.Texture, p.Class.Class.Meant) < judge.May {
		return ""
	}
	return p.Class.Class.Meant
}

func (v *varying) howOften(r *judge.Report, id string) string {
	p := &r.Parts[v.Part]
	if p.Texture == nil {
		return ""
	}
	return outOfTen(share(p.Texture, id))
}

// inShort are the changes in one breath.
func (v *varying) inShort() string {
	var said []string
	for i := range v.Changes {
		said = append(said, changed(&v.Changes[i]))
	}
	return strings.Join(said, "; ")
}

// changed is one change as it is told.
func changed(c *variant.Change) string {
	switch c.Kind {
	case variant.Done:
		return c.Text
	case variant.Added:
		return "put in " + amountOf(c.Is, c.Item)
	case variant.Stated:
		return fmt.Sprintf("take %s, where the book gives no amount", amountOf(c.Is, c.Item))
	case variant.LeftOut:
		return "leave out the " + c.Item.Name
	}
	return fmt.Sprintf("take %s, instead of %s", amountOf(c.Is, c.Item), quantity(c.Was))
}

// amountOf is an amount of something, weighed: "7 eggs, 350 g".
func amountOf(q variant.Quantity, ing *reference.Ingredient) string {
	grams := weight(q.Grams, "g")
	if said := q.String(); !q.Counted {
		if strings.HasSuffix(said, " g") {
			return said + " of " + ing.Name
		}
		return fmt.Sprintf("%s of %s, %s", said, ing.Name, grams)
	}
	said := q.Bare()
	many := func(name string) string {
		if q.Number.GreaterThan(decimal.NewFromInt(1)) {
			return said + " " + reference.Plural(name)
		}
		return said + " " + name
	}
	for _, of := range []string{"juice", "rind", "peel", "zest"} {
		if strings.Contains(ing.Name, of) && q.Measure != "" {
			return fmt.Sprintf("the %s of %s, %s", of, many(q.Measure), grams)
		}
	}
	return many(strings.TrimSuffix(ing.Name, ", raw")) + ", " + grams
}

func quantity(q variant.Quantity) string {
	said := q.String()
	if q.Counted {
		return q.Bare()
	}
	if strings.HasSuffix(said, " g") {
		return said
	}
	return fmt.Sprintf("%s, %s g", said, figure(q.Grams.Likely))
}

// changedTurns says how the changed part is likely to turn out.
func (v *varying) changedTurns() string {
	if v.After == nil {
		return ""
	}
	p := &v.After.Parts[v.Part]
	if p.Texture == nil {
		return ""
	}
	return sentence("changed so, " + verdict(p, false))
}

// what lists the changes with the reason for each and what each does by itself.
func (v *varying) what() []Block {
	var out List
	for i := range v.Changes {
		c := &v.Changes[i]
		e := Entry{Text: changed(c)}
		if len(c.Why) > 0 && v.Found {
			e.More = append(e.More, "without it: "+v.obstacles(c.Why))
		}
		if len(v.Changes) > 1 && len(c.Effects) > 0 {
			e.More = append(e.More, "by itself: "+effect(c.Effects))
		}
		out = append(out, e)
	}
	if len(v.Effects) > 0 && len(out) > 0 {
		all := "what it does"
		if len(out) > 1 {
			all = "all together"
		}
		return []Block{out, Paragraph(sentence(all + ": " + effect(v.Effects)))}
	}
	return []Block{out}
}

// obstacles are wishes that are not met, in words.
func (v *varying) obstacles(list []variant.Obstacle) string {
	var said []string
	for i := range list {
		said = append(said, v.obstacle(&list[i]))
	}
	if n := len(said) - 1; n > 0 && slices.ContainsFunc(said, func(s string) bool { return strings.Contains(s, ", ") }) {
		return strings.Join(said[:n], "; ") + "; and " + said[n]
	}
	return and(said)
}

// watched are findings told without a share, as they are named in passing.
var watched = map[string]string{
	"oily": "it may eat oily", "heavy": "it may eat heavy", "grainy": "it may grain", "starch-thin": "its starch may let it thin",
	"shrinks": "it may shrink", "soggy-base": "its base may stay soggy",
}

func (v *varying) obstacle(o *variant.Obstacle) string {
	switch {
	case o.Texture != "":
		return fmt.Sprintf("it would %s %s", turnsOut[o.Texture], outOfTen(o.Share))
	case o.Ratio != nil:
		var usual []string
		places := int32(fewestPlaces)
		for _, r := range o.Ranges {
			verdict := 1
			if o.Value.LessThan(r.Low) {
				verdict = -1
			}
			places = max(places, ratioPlaces(o.Value, r.Low, r.High, verdict))
		}
		for _, r := range o.Ranges {
			usual = append(usual, r.Low.Round(places).String()+"-"+r.High.Round(places).String())
		}
		name, of := inWhole(o.Ratio.Name)
		return fmt.Sprintf("%s would be %s%s%s, where %s is usual", name, o.Value.Round(places), unitAfter(o.Ratio), of, or(usual))
	case o.Volume:
		return "it would fill the dish otherwise"
	}
	if said, ok := watched[o.Code]; ok {
		return said
	}
	return o.Code
}

func unitAfter(r *reference.Ratio) string {
	if r.Unit == "" {
		return ""
	}
	return " " + r.Unit
}

func (v *varying) stands() List {
	var out List
	for i := range v.Stands {
		out = append(out, Entry{Text: v.obstacle(&v.Stands[i])})
	}
	return out
}

// side sets the book and the variant beside each other, line by line, and the
// oven and steps where they differ.
func (v *varying) side() []Block {
	if v.Variant == nil {
		return nil
	}
	book, is := &v.Before.Parts[v.Part], &v.After.Parts[v.Part]
	t := Table{Columns: []Column{{Name: ""}, {Name: "in the book"}, {Name: "g", Right: true}, {Name: "changed"}, {Name: "g", Right: true}}}
	taken := make([]bool, len(is.Lines))
	for i := range book.Lines {
		for _, it := range book.Lines[i].Items {
			if !it.Used {
				continue // the less likely side of a line in doubt
			}
			row := []string{it.Ingredient.Name, book.Lines[i].Text, amountShown(&it), "left out", ""}
			if l, other := v.counterpart(is, taken, &it); other != nil {
				row[3], row[4] = l.Text, amountShown(other)
				if row[3] == row[1] {
					row[3] = "as in the book"
				}
			}
			t.Rows = append(t.Rows, row)
		}
	}
	for i := range is.Lines {
		for _, it := range is.Lines[i].Items {
			if !taken[i] && it.Used {
				t.Rows = append(t.Rows, []string{it.Ingredient.Name, "", "", is.Lines[i].Text, amountShown(&it)})
			}
		}
	}
	t.Rows = append(t.Rows, []string{"all together", "", figure(book.Profile.Total.Likely), "", figure(is.Profile.Total.Likely)})
	var out List
	if v.Formula.Oven != v.Variant.Oven || v.Formula.Bake != v.Variant.Bake {
		out = append(out, Entry{Label: "oven", Text: fmt.Sprintf("%s; in the book %s", fireWords(v.Variant), fireWords(v.Formula))})
	}
	if was, now := v.part().Steps, v.Variant.Parts[v.Part].Steps; !slices.Equal(was, now) {
		out = append(out, Entry{Label: "steps", Text: strings.Join(now, " ")})
	}
	if !v.Reads {
		out = append(out, Entry{Text: "the steps cannot be put in words that are read as is meant: put them right by hand before you check it again"})
	}
	return []Block{t, out}
}

func fireWords(f *formula.Formula) string {
	var said []string
	for _, s := range []string{f.Oven, f.Bake} {
		if s != "" {
			said = append(said, s)
		}
	}
	if len(said) == 0 {
		return "not said"
	}
	return strings.Join(said, ", ")
}

// counterpart is the line of the variant that holds an item of the book.
func (v *varying) counterpart(p *judge.Part, taken []bool, it *judge.Item) (*judge.Line, *judge.Item) {
	for i := range p.Lines {
		for j := range p.Lines[i].Items {
			other := &p.Lines[i].Items[j]
			if other.Used && other.Ingredient == it.Ingredient && (!taken[i] || len(p.Lines[i].Items) > 1) {
				taken[i] = true
				return &p.Lines[i], other
			}
		}
	}
	return nil, nil
}

func amountShown(it *judge.Item) string {
	if words, ok := states[it.State]; ok {
		return words
	}
	return figure(it.Grams.Likely)
}

// proportions are the ratios of the class, in the book and as changed.
func (v *varying) proportions() []Block {
	if v.Class == nil || v.After == nil {
		return nil
	}
	t := Table{Columns: []Column{{Name: "proportion"}, {Name: "in the book"}, {Name: "changed"}, {Name: "usual for " + v.Class.Name}}}
	value := func(p *judge.Part, id string) *judge.RatioReading {
		for i := range p.Ratios {
			if p.Ratios[i].Ratio.Row.ID == id {
				return &p.Ratios[i]
			}
		}
		return nil
	}
	for i := range v.After.Parts[v.Part].Ratios {
		now := &v.After.Parts[v.Part].Ratios[i]
		var usual []string
		places := int32(fewestPlaces)
		for _, rr := range now.Ranges {
			if rr.Range.Class == v.Class.ID && rr.Range.Kind == "range" {
				places = max(places, ratioPlaces(now.Ratio.Value.Likely, rr.Range.Low, rr.Range.High, verdictOrder[rr.Verdict]))
			}
		}
		for _, rr := range now.Ranges {
			if rr.Range.Class == v.Class.ID {
				usual = append(usual, fmt.Sprintf("%s-%s %s", rr.Range.Low.Round(places), rr.Range.High.Round(places), v.cite(rr.Range.Provenance)))
			}
		}
		if len(usual) == 0 {
			continue
		}
		was := "none"
		if b := value(&v.Before.Parts[v.Part], now.Ratio.Row.ID); b != nil {
			was = b.Ratio.Value.Likely.Round(places).String()
		}
		t.Rows = append(t.Rows, []string{now.Ratio.Row.Name, was, now.Ratio.Value.Likely.Round(places).String() + unitAfter(now.Ratio.Row), strings.Join(usual, "; ")})
	}
	return []Block{t, v.made()}
}

// made says how the class is made otherwise, which its proportions do not tell.
func (v *varying) made() Paragraph {
	var said []string
	for _, q := range v.Otherwise {
		said = append(said, madeOtherwise[q])
	}
	if len(said) == 0 {
		return ""
	}
	return Paragraph(fmt.Sprintf("By its proportions alone: how it is made is not as for %s (%s).", v.Class.Name, and(said)))
}

func (v *varying) others() []Block {
	var out List
	for _, o := range v.Others {
		var said []string
		for i := range o.Changes {
			said = append(said, changed(&o.Changes[i]))
		}
		out = append(out, Entry{Text: strings.Join(said, "; "), More: []string{effect(o.Effects)}})
	}
	return []Block{out}
}

// sought tells the lattice and what was gone through on it.
func (v *varying) sought() []Block {
	var out List
	for _, w := range v.Ways {
		out = append(out, Entry{Label: "otherwise", Text: w})
	}
	for _, l := range v.Lattice {
		var steps []string
		for _, s := range l.Steps {
			q := variant.Quantity{Number: s, Measure: l.Unit}
			steps = append(steps, q.Bare())
		}
		unit := ""
		if l.Unit != "" && !strings.Contains(l.Item.Name, l.Unit) {
			unit = " (" + l.Unit + ")"
		}
		what := "in place of " + variant.Quantity{Number: l.Book}.Bare()
		switch {
		case l.Added:
			what = "put in"
		case l.Book.IsZero():
			what = "where the book gives no amount"
		}
		out = append(out, Entry{Label: "amounts", Text: fmt.Sprintf("%s%s, %s: %s", l.Item.Name, unit, what, steppedThrough(steps))})
	}
	how := fmt.Sprintf(howSought, grouped(v.Count.Points), grouped(v.Count.Ranged), grouped(v.Count.Judged))
	switch {
	case v.Unchanged:
		how = "The book's own formula does, so that nothing was sought."
	case v.Found:
		how += " No smaller change among them does it."
	default:
		how += " None of them does it."
	}
	return []Block{Paragraph(order), out, Paragraph(how)}
}

// order is what counts as the smaller change.
const order = "Fewer ingredients changed come before fewer things done otherwise, and those before the least change of amounts, each reckoned over the larger of the two. What is put in or left out counts as a whole change. The whole comes to what the book makes, within a tenth, unless you say --any-volume."

const howSought = "Gone through, or ruled out together: %s combinations; within the ranges and the dish: %s; of those judged by the readings, least change first: %s."

// steppedThrough shortens a long list of steps.
func steppedThrough(steps []string) string {
	const shown = 8
	if len(steps) <= shown {
		return strings.Join(steps, ", ")
	}
	return strings.Join(steps[:3], ", ") + " ... " + strings.Join(steps[len(steps)-2:], ", ") + fmt.Sprintf(" (%d in all)", len(steps))
}

// grouped is a count with its thousands apart.
func grouped(n int) string {
	s := fmt.Sprint(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// variantDoc is a variant as JSON has it.
type variantDoc struct {
	Schema    int                       `json:"schema"`
	Assize    assizeDoc                 `json:"assize"`
	Receipt   receiptDoc                `json:"receipt"`
	Part      string                    `json:"part"`
	To        string                    `json:"to,omitempty"`
	Against   []string                  `json:"against"`
	Found     bool                      `json:"found"`
	Unchanged bool                      `json:"unchanged"`
	Changes   []changeDoc               `json:"changes"`
	Effects   map[string][2]json.Number `json:"effects,omitempty"`
	Stands    []obstacleDoc             `json:"stands,omitempty"`
	Otherwise []string                  `json:"made_otherwise,omitempty"`
	Lines     []string                  `json:"lines,omitempty"`
	Steps     []string                  `json:"steps,omitempty"`
	Oven      string                    `json:"oven,omitempty"`
	Bake      string                    `json:"bake,omitempty"`
	Others    []otherDoc                `json:"others,omitempty"`
	Tried     *triedDoc                 `json:"tried,omitempty"`
}

type changeDoc struct {
	Kind       string                    `json:"kind"`
	Text       string                    `json:"text"`
	Ingredient string                    `json:"ingredient,omitempty"`
	Was        *quantityDoc              `json:"was,omitempty"`
	Is         *quantityDoc              `json:"is,omitempty"`
	Why        []obstacleDoc             `json:"why,omitempty"`
	Effects    map[string][2]json.Number `json:"effects,omitempty"`
}

type quantityDoc struct {
	Number json.Number `json:"number"`
	Unit   string      `json:"unit,omitempty"`
	Grams  spanDoc     `json:"grams"`
}

type obstacleDoc struct {
	Texture string      `json:"texture,omitempty"`
	Share   json.Number `json:"share,omitempty"`
	Ratio   string      `json:"ratio,omitempty"`
	Value   json.Number `json:"value,omitempty"`
	Code    string      `json:"code,omitempty"`
	Volume  bool        `json:"volume,omitempty"`
}

type otherDoc struct {
	Changes []changeDoc               `json:"changes"`
	Effects map[string][2]json.Number `json:"effects,omitempty"`
}

type triedDoc struct {
	Combinations int `json:"combinations"`
	Within       int `json:"within"`
	Judged       int `json:"judged"`
}

// VariantJSON writes a variant as JSON.
func VariantJSON(w io.Writer, r *variant.Result, a About, why bool) error {
	f := r.Formula
	d := variantDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt: receiptDoc{File: f.File, Title: f.Title, Source: f.Source, Year: f.Year, Printed: f.Printed, Place: f.Place},
		Part:    f.Parts[r.Part].Name, Against: nonNil(r.Against), Found: r.Found, Unchanged: r.Unchanged,
		Changes: changeDocs(r.Changes), Effects: effectDocs(r.Effects), Stands: obstacleDocs(r.Stands), Otherwise: r.Otherwise,
	}
	if r.Class != nil {
		d.To = r.Class.ID
	}
	if r.Variant != nil {
		p := &r.Variant.Parts[r.Part]
		for _, l := range p.Lines {
			d.Lines = append(d.Lines, l.Text)
		}
		d.Steps, d.Oven, d.Bake = p.Steps, r.Variant.Oven, r.Variant.Bake
	}
	if why {
		for _, o := range r.Others {
			d.Others = append(d.Others, otherDoc{changeDocs(o.Changes), effectDocs(o.Effects)})
		}
		d.Tried = &triedDoc{r.Count.Points, r.Count.Ranged, r.Count.Judged}
	}
	return writeJSON(w, d, false)
}

func effectDocs(list []judge.Effect) map[string][2]json.Number {
	out := map[string][2]json.Number{}
	for _, e := range list {
		if !finite(e.Before, e.After) {
			continue
		}
		places := measurePlaces
		if e.Kind == "share" {
			places = sharePlaces
		}
		out[e.What] = [2]json.Number{number(e.Before, places), number(e.After, places)}
	}
	return out
}

func nonNil(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func changeDocs(list []variant.Change) []changeDoc {
	out := []changeDoc{}
	for i := range list {
		c := &list[i]
		d := changeDoc{Kind: string(c.Kind), Text: changed(c), Why: obstacleDocs(c.Why), Effects: effectDocs(c.Effects)}
		if c.Item != nil {
			d.Ingredient = c.Item.ID
			d.Was, d.Is = quantityDocOf(c.Was), quantityDocOf(c.Is)
		}
		out = append(out, d)
	}
	return out
}

func quantityDocOf(q variant.Quantity) *quantityDoc {
	if q.Number.IsZero() {
		return nil
	}
	return &quantityDoc{Number: exact(q.Number, ratioPlacesJ), Unit: q.Measure, Grams: span(q.Grams, gramPlaces)}
}

func obstacleDocs(list []variant.Obstacle) []obstacleDoc {
	var out []obstacleDoc
	for i := range list {
		o := &list[i]
		d := obstacleDoc{Texture: o.Texture, Code: o.Code, Volume: o.Volume}
		if o.Texture != "" {
			d.Share = number(o.Share, sharePlaces)
		}
		if o.Ratio != nil {
			d.Ratio, d.Value = o.Ratio.ID, exact(o.Value, ratioPlacesJ)
		}
		out = append(out, d)
	}
	return out
}
