package present

import (
	"fmt"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/judge"
	"assize/reference"
)

// Check is the page of a judged receipt.
func Check(s *Sheet, a About, w Wish) *Page {
	c := &checking{Sheet: s, wish: w, citations: citations{tables: a.Tables}}
	r := s.Report
	p := &Page{Title: r.Formula.Title, Under: under(r.Formula), Lead: s.madeBy() + c.lead()}
	p.section(headMakes, c.makes())
	p.section(headProportions, c.proportions()...)
	p.section(headExpect, c.expect()...)
	p.section(headRather, c.rather())
	p.section(headOven, c.baking())
	p.section(headEye, c.eye())
	p.section(headSettle, c.settle())
	p.section(headElsewhere, c.elsewhere())
	p.section(headTaken, c.taken())
	p.section(headAssumed, assumed(r))
	p.section(headCautions, c.cautions()...)
	p.section(headSources, c.sources(a)...)
	return p
}

type checking struct {
	*Sheet
	citations
	wish Wish
}

// lead is the most important said first: how it is likely to turn out, what
// else may happen, what to settle, whether there are cautions.
func (c *checking) lead() string {
	judged := c.judged()
	var said []string
	for _, p := range judged {
		words := verdict(p, len(judged) == 1)
		if also := c.mayAlso(p); also != "" {
			words += "; " + also
		}
		said = append(said, sentence(words))
	}
	if len(judged) == 0 {
		said = append(said, c.unjudged())
	}
	if d := c.firstDoubt(judged); d != "" {
		said = append(said, sentence("settle first "+d))
	}
	if slices.ContainsFunc(c.Report.Findings, func(f judge.Finding) bool { return isCaution(&f) }) {
		said = append(said, readCautions)
	}
	return strings.Join(said, " ")
}

// unjudged is the lead of a receipt none of whose parts has a texture.
func (c *checking) unjudged() string {
	if p := &c.Report.Parts[0]; len(c.Report.Parts) == 1 && (p.Cold || p.Unset) {
		return notJudged(p)
	}
	var kinds []string
	held := false
	for i := range c.Report.Parts {
		held = held || c.Report.Parts[i].Class != nil
		if k := c.Report.Parts[i].Kind.A(); !slices.Contains(kinds, k) {
			kinds = append(kinds, k)
		}
	}
	if !held {
		return fmt.Sprintf("Weighed; how %s turns out is not judged yet.", or(kinds))
	}
	return fmt.Sprintf("Weighed and held against what is usual; how %s turns out is not judged yet.", or(kinds))
}

// mayAlso names the faults of a part that are worth watching beside its
// likeliest texture.
func (c *checking) mayAlso(p *judge.Part) string {
	if p.Texture.Undecided {
		return ""
	}
	var ways []string
	for _, s := range p.Texture.Shares {
		if s.Texture.ID != p.Texture.Likeliest && c.findingOf(p, s.Texture) != nil {
			ways = append(ways, turns(p.Texture, s.Texture.ID)+", "+outOfTen(s.Share))
		}
	}
	if len(ways) == 0 {
		return ""
	}
	return "it may " + or(ways)
}

// worthSettling is the part of the doubt from which an unknown is named in the
// first sentence.
const worthSettling = .3

// firstDoubt is what hangs most on being settled, where there is trouble or
// the verdict is open.
func (c *checking) firstDoubt(judged []*judge.Part) string {
	for _, p := range judged {
		if !c.troubled(p) || share(p.Texture, p.Texture.Likeliest) >= nearly {
			continue
		}
		for _, d := range c.Report.Settle {
			if d.Of == p.Name && d.Part >= worthSettling {
				return d.Words
			}
		}
	}
	return ""
}

// troubled reports that a part's verdict is open or warns of something.
func (c *checking) troubled(p *judge.Part) bool {
	if p.Texture.Undecided {
		return true
	}
	return slices.ContainsFunc(p.Texture.Shares, func(s judge.Share) bool { return c.findingOf(p, s.Texture) != nil })
}

// makes lists the parts: what each is, what it comes to and what goes in.
func (c *checking) makes() List {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		said := []string{partIs(p), makes(p, c.unit(i)), inDish(c.Report, i)}
		e := Entry{Label: p.Name, Text: strings.Join(slices.DeleteFunc(said, func(s string) bool { return s == "" }), "; ")}
		if goes := c.goesIn(i); goes != "" {
			e.More = []string{goes}
		}
		out = append(out, e)
	}
	return out
}

// partIs is what a part is besides its name.
func partIs(p *judge.Part) string {
	var said []string
	if string(p.Kind) != p.Name {
		said = append(said, string(p.Kind))
	}
	if p.Lay != "" {
		said = append(said, p.Lay)
	}
	if p.From != "" {
		said = append(said, "taken from "+p.From)
	}
	return strings.Join(said, ", ")
}

// goesIn is what part i is made of, with weights.
func (c *checking) goesIn(i int) string {
	var said []string
	for _, l := range c.Report.Parts[i].Lines {
		for _, it := range l.Items {
			said = append(said, itemInShort(&it, c.unit(i)))
		}
	}
	return strings.Join(said, "; ")
}

func itemInShort(it *judge.Item, unit string) string {
	if words, ok := states[it.State]; ok {
		return it.Ingredient.Name + ", " + words
	}
	out := weight(it.Grams, unit) + " " + it.Ingredient.Name
	if !it.Used {
		return "or " + out
	}
	return out
}

// proportions holds the ratios against what is usual, a table a part.
func (c *checking) proportions() []Block {
	var out []Block
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		t := Table{Caption: p.Name, Columns: []Column{{Name: "proportion"}, {Name: "here"}, {Name: "usual today"}, {Name: "usual then"}}}
		for j := range p.Ratios {
			if r := &p.Ratios[j]; len(shownRanges(p, r)) > 0 || c.wish.AllRatios {
				t.Rows = append(t.Rows, c.ratioRows(p, r)...)
			}
		}
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	if len(out) > 0 {
		out = append(out, Paragraph(howToRead))
	}
	return append(out, c.basis())
}

// verdictOrder is how a printed verdict lies: -1 below, 0 within, 1 above.
var verdictOrder = map[string]int{judge.Below: -1, judge.Within: 0, judge.Above: 1}

// ratioRows are the rows of one ratio: as many as the published figures it is
// held against stand one under another.
func (c *checking) ratioRows(p *judge.Part, r *judge.RatioReading) [][]string {
	v := r.Ratio.Value
	places := ratioPlaces(v.Likely, v.Low, v.High, 0)
	var today, then []judge.RangeReading
	for _, rr := range shownRanges(p, r) {
		if rr.Range.Low.LessThan(rr.Range.High) { // only then is its verdict printed
			places = max(places, ratioPlaces(v.Likely, rr.Range.Low, rr.Range.High, verdictOrder[rr.Verdict]))
		}
		if class, ok := c.tables.Class(rr.Range.Class); ok && class.Era == "period" {
			then = append(then, rr)
		} else {
			today = append(today, rr)
		}
	}
	here := ratio(v, places)
	if u := r.Ratio.Row.Unit; u != "" && here != "none" {
		here += " " + u
	}
	rows := [][]string{{r.Ratio.Row.Name, here, "", ""}}
	left, right := c.usuals(today, places), c.usuals(then, places)
	for i := range max(len(left), len(right)) {
		if i > 0 {
			rows = append(rows, make([]string, len(rows[0])))
		}
		if i < len(left) {
			rows[i][2] = left[i]
		}
		if i < len(right) {
			rows[i][3] = right[i]
		}
	}
	return rows
}

// fewFormulas is how many single formulas are shown one by one; more are
// shown together, from the least to the most.
const fewFormulas = 2

// usuals are the published figures of a ratio, single formulas together when
// there are many.
func (c *checking) usuals(list []judge.RangeReading, places int32) []string {
	var out []string
	var single []judge.RangeReading
	for _, rr := range list {
		if rr.Range.Kind == "point" && rr.Range.Low.Equal(rr.Range.High) {
			single = append(single, rr)
			continue
		}
		out = append(out, c.usual(&rr, places))
	}
	if len(single) <= fewFormulas {
		for _, rr := range single {
			if u := c.usual(&rr, places); !slices.Contains(out, u) {
				out = append(out, u)
			}
		}
		return out
	}
	low, high := single[0].Range.Low, single[0].Range.High
	var marks []string
	for _, rr := range single {
		low, high = decimal.Min(low, rr.Range.Low), decimal.Max(high, rr.Range.High)
		if m := c.cite(rr.Range.Provenance); m != "" && !slices.Contains(marks, m) {
			marks = append(marks, m)
		}
	}
	at := func(d decimal.Decimal) string { return d.Round(places).String() }
	span := at(low)
	if !low.Equal(high) {
		span += "-" + at(high)
	}
	return append(out, strings.TrimSpace(fmt.Sprintf("%s in %d formulas %s", span, len(single), strings.Join(marks, ""))))
}

// shownRanges are the ranges worth holding a ratio against: those of the
// part's class, and those of the old books where there is a class like it.
func shownRanges(p *judge.Part, r *judge.RatioReading) []judge.RangeReading {
	var out []judge.RangeReading
	for _, rr := range r.Ranges {
		if p.Class != nil && (rr.Range.Class == p.Class.Class.ID || likePeriod(p)) {
			out = append(out, rr)
		}
	}
	return out
}

// likePeriod reports whether a class of the old books is like the part, and is
// news: a part held against such a class already needs no other.
func likePeriod(p *judge.Part) bool {
	c := p.Class
	return c != nil && c.Class.Era != "period" && c.Period != nil && c.Period.Distance <= farOff
}

// usual is a published figure with its source, and for a range how the part
// lies to it: "0.63-1.47 [3] within". A single figure is one formula, which
// nothing lies within.
func (c *checking) usual(rr *judge.RangeReading, places int32) string {
	r := rr.Range
	at := func(d decimal.Decimal) string { return d.Round(places).String() }
	out := at(r.Low) + "-" + at(r.High)
	if r.Low.Equal(r.High) {
		out = at(r.Low)
	}
	if r.Kind == "rule" {
		out = "rule " + out
	}
	if mark := c.cite(r.Provenance); mark != "" {
		out += " " + mark
	}
	if r.Low.LessThan(r.High) {
		out += " " + rr.Verdict
	}
	return out
}

// basis says which family each part was held against and what it is.
func (c *checking) basis() List {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		e := Entry{Label: p.Name, Text: upper(fits(p)) + "."}
		if p.Class != nil {
			if about := p.Class.Class.About; about != "" {
				e.Text += " " + about
			}
			if likePeriod(p) {
				e.Text += " Nearest in the old books: " + p.Class.Period.Class.Name + "."
			}
		}
		out = append(out, e)
	}
	return out
}

// expect tells how each part is likely to turn out, and why.
func (c *checking) expect() []Block {
	var out List
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		if p.Texture == nil {
			out = append(out, Entry{Label: p.Name, Text: notJudged(p)})
			continue
		}
		label := p.Name
		add := func(e Entry) {
			e.Label, label = label, ""
			out = append(out, e)
		}
		var seldom []string
		if p.Texture.Undecided {
			add(Entry{Text: "could go either way"})
		}
		for _, s := range bySize(p.Texture) {
			if s.Share < hardly {
				seldom = append(seldom, s.Texture.Shown)
				continue
			}
			add(c.expected(p, s))
		}
		if len(seldom) > 0 {
			add(Entry{Text: "hardly ever: " + strings.Join(seldom, ", ")})
		}
		if b := p.Baseline; b != nil {
			add(Entry{Text: fmt.Sprintf("a textbook rule would say: %s (%s)", c.shown(p, b.Texture), b.Rule)})
		}
		if x := p.Texture; x.Said > 0 && !x.Undecided {
			add(Entry{Text: trust(c.shown(p, x.Likeliest), x.Said, x.Right)})
		}
		if p.Kind == formula.Pastry {
			add(Entry{Text: pasteJudged})
		}
	}
	blocks := []Block{out}
	if m := c.Report.Formula.Meant; m != "" {
		blocks = append(blocks, Paragraph(meant(m)))
	}
	return blocks
}

// shown is a texture of a part as it is shown.
func (c *checking) shown(p *judge.Part, id string) string {
	for _, s := range p.Texture.Shares {
		if s.Texture.ID == id {
			return s.Texture.Shown
		}
	}
	return id
}

func (c *checking) expected(p *judge.Part, s judge.Share) Entry {
	e := Entry{Text: shownShare(p.Texture, s)}
	f := c.findingOf(p, s.Texture)
	if f == nil {
		return e
	}
	var grounds []string
	for _, b := range f.Because {
		e.More = append(e.More, evidence(b))
		g := ground(b)
		if b.Source != nil {
			g += " " + c.work(b.Source, b.Locator)
		}
		if !slices.Contains(grounds, g) {
			grounds = append(grounds, g)
		}
	}
	if len(grounds) > 0 {
		e.Text += " (" + strings.Join(grounds, "; ") + ")"
	}
	return e
}

// evidence is one reason with its figure: what, how much, and from where on it
// tells.
func evidence(e judge.Evidence) string {
	out := e.What
	if e.Value != "" {
		out += ": " + e.Value
	}
	switch {
	case e.Limit == "":
	case e.Limit[0] >= '0' && e.Limit[0] <= '9':
		out += ", against " + e.Limit
	default:
		out += "; " + e.Limit
	}
	return out
}

// rather lists the remedies of each warning with all their effects.
func (c *checking) rather() List {
	var out List
	for i := range c.Report.Findings {
		f := &c.Report.Findings[i]
		x := c.textureOf(f)
		if x == nil {
			continue
		}
		for _, m := range f.Remedies {
			out = append(out, Entry{Text: m.Text, More: []string{effect(m.Effect)}})
		}
		if len(f.Remedies) == 0 && !c.wish.Brief {
			out = append(out, Entry{Text: fmt.Sprintf("against %s (%s) we know no small change that helps by much", short[x.ID], f.Part)})
		}
	}
	return out
}

// eye lists the findings that carry no share and are no cautions.
func (c *checking) eye() List {
	var out List
	last := ""
	var unsaid []string
	for i := range c.Report.Findings {
		f := &c.Report.Findings[i]
		if isCaution(f) || c.textureOf(f) != nil {
			continue
		}
		if name := leftUnsaid(f); name != "" {
			unsaid = append(unsaid, name)
			continue
		}
		e := Entry{Label: f.Part, Text: f.Says}
		if f.Part == last {
			e.Label = ""
		}
		last = f.Part
		for _, b := range f.Because {
			g := ground(b)
			switch {
			case b.Layer != judge.LayerPractice:
				if b.Source != nil {
					g += " " + c.work(b.Source, b.Locator)
				}
				e.More = append(e.More, evidence(b)+" ("+g+")")
			case b.Limit != "":
				e.Text += " (" + b.Limit + ")"
			default:
				e.Text += " (" + g + ")"
			}
		}
		if f.Code == unreadiedCase && c.directed(f.Part) {
			e.Text += "; " + seeElsewhere
		}
		out = append(out, e)
	}
	if len(unsaid) > 0 {
		out = append(out, Entry{Label: unsaidLabel, Text: unsaidSteps(unsaid)})
	}
	return out
}

// leftUnsaid is the name of a usual step that a finding of no more than a note
// misses, empty for any other finding.
func leftUnsaid(f *judge.Finding) string {
	if f.Code != stepMissing || f.Grade != judge.Note || len(f.Because) == 0 || f.Because[0].Source == nil && !strings.HasPrefix(f.Because[0].Limit, layers[judge.LayerPractice]) {
		return ""
	}
	return f.Because[0].What
}

// stepMissing is the finding of a direction or a usual step that was not taken.
const stepMissing = "step-missing"

// unreadiedCase is the finding that a step is missing which books like to give
// once for all their tarts.
const unreadiedCase = "soggy-base"

// directed reports whether the book gives directions for the part elsewhere.
func (c *checking) directed(part string) bool {
	for i := range c.Report.Parts {
		if c.Report.Parts[i].Name == part && i < len(c.Directions) && len(c.Directions[i]) > 0 {
			return true
		}
	}
	return false
}

// mostSettled is how many unknowns are named for a part, and leastSettled the
// part of the doubt under which none is.
const (
	mostSettled  = 3
	leastSettled = .10
)

// settle says what each part's verdict hangs on, for the parts whose verdict
// is not as good as certain.
func (c *checking) settle() List {
	var out List
	judged := c.judged()
	for _, p := range judged {
		if share(p.Texture, p.Texture.Likeliest) >= nearly {
			continue
		}
		var doubts []judge.Doubt
		for _, d := range c.Report.Settle {
			if d.Of == p.Name && d.Part >= leastSettled && len(doubts) < mostSettled {
				doubts = append(doubts, d)
			}
		}
		if len(doubts) == 0 {
			continue
		}
		e := Entry{Text: settle(doubts)}
		if len(judged) > 1 {
			e.Label = p.Name
		}
		out = append(out, e)
	}
	return out
}

// elsewhere are the book's standing directions for each part.
func (c *checking) elsewhere() List {
	var out List
	for i := range c.Report.Parts {
		if i >= len(c.Directions) {
			break
		}
		label := c.Report.Parts[i].Name
		for _, d := range c.Directions[i] {
			text := d.Text
			if d.Where != "" {
				text += " (" + d.Where + ")"
			}
			out = append(out, Entry{Label: label, Text: text})
			label = ""
		}
	}
	return out
}

// taken lists the words of method that were recognised with what each was
// taken for, and what is to be checked of the lines. Words of the oven and the
// dish hold for all parts and are told once.
func (c *checking) taken() List {
	var out List
	var bake readWords
	for i := range c.Report.Parts {
		p := &c.Report.Parts[i]
		var own readWords
		var said List
		for _, l := range p.Lines {
			for _, n := range l.Notes {
				said = append(said, Entry{Text: quoted(l.Text) + ": " + n})
			}
		}
		for _, w := range p.Words {
			if w.Where == formula.InBake {
				bake.add(c.tables, w)
			} else {
				own.add(c.tables, w)
			}
		}
		out = append(out, labelled(p.Name, append(said, own.list()...))...)
	}
	return append(out, labelled("oven, dish", bake.list())...)
}

// labelled puts a label before the first entry.
func labelled(label string, l List) List {
	if len(l) > 0 {
		l[0].Label = label
	}
	return l
}

// readWords gathers words by what they were taken for.
type readWords struct {
	meanings []string
	words    map[string][]string
	idle     []string // words that are known and change nothing
}

func (r *readWords) add(t *reference.Tables, w judge.MethodWord) {
	q := quoted(w.Words)
	if row, ok := t.Method(w.Token); ok && len(row.Sets) == 0 {
		if !slices.Contains(r.idle, q) {
			r.idle = append(r.idle, q)
		}
		return
	}
	if r.words == nil {
		r.words = map[string][]string{}
	}
	if r.words[w.Meaning] == nil {
		r.meanings = append(r.meanings, w.Meaning)
	}
	if !slices.Contains(r.words[w.Meaning], q) {
		r.words[w.Meaning] = append(r.words[w.Meaning], q)
	}
}

func (r *readWords) list() List {
	var out List
	for _, m := range r.meanings {
		out = append(out, Entry{Text: strings.Join(r.words[m], ", ") + ": " + m})
	}
	if len(r.idle) > 0 {
		out = append(out, Entry{Text: idleWords(r.idle)})
	}
	return out
}

func (c *checking) cautions() []Block { return c.cautionsOf(c.Report.Findings) }

// cautionsOf are the cautions among findings, each once, with their authorities
// and the deference that always stands with them.
func (c *citations) cautionsOf(list []judge.Finding) []Block {
	var out List
	for i := range list {
		f := &list[i]
		if !isCaution(f) {
			continue
		}
		e := Entry{Text: sentence(f.Says)}
		for _, b := range f.Because {
			mark := ""
			if b.Source != nil {
				mark = c.work(b.Source, b.Locator)
			}
			e.Text += " (" + strings.TrimSpace(b.Limit+" "+mark) + ")"
		}
		if !slices.ContainsFunc(out, func(o Entry) bool { return o.Text == e.Text }) {
			out = append(out, e)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return []Block{out, Paragraph(sentence(reference.Deference))}
}

// sources are the works cited, and the person's own tables when they were
// laid over ours.
func (c *citations) sources(a About) []Block {
	out := []Block{c.list()}
	if a.OwnTables != "" {
		out = append(out, Paragraph(ownTables(a.OwnTables)))
	}
	return out
}
