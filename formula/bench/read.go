package bench

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/formula/file"
	"assize/formula/receipt"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
	"assize/reference/spell"
)

var (
	topKeys   = []string{"baked", "eggs", "parts", "dish", "oven", "centre", "minutes", "departures", "meant", "tasted", "formula"}
	eggKeys   = []string{"number", "grams"}
	partKeys  = []string{"part", "used", "added", "done"}
	usedKeys  = []string{"line", "of", "grams"}
	addedKeys = []string{"of", "grams"}
	heatKeys  = []string{"minute", "heat"}
	tasteKeys = append([]string{"by", "when", "words"}, reference.Looks...)
)

// IsRecord reports whether a page is a bench record and not a formula: it has
// the key `formula`.
func IsRecord(text []byte) bool {
	root := sheet.Parse(fault.NewPage("", text))
	if root == nil || root.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i+1 < len(root.Content); i += 2 {
		if root.Content[i].Value == "formula" {
			return true
		}
	}
	return false
}

// Read reads a bench record. It is nil when there is any fault; all faults are
// returned together.
func Read(name string, text []byte, t *reference.Tables) (*Record, fault.List) {
	page := fault.NewPage(name, text)
	root, faults := file.Root(page)
	if root == nil {
		return nil, faults
	}
	r := NewReader(t).At(page, root)
	if faults := page.Faults(); len(faults) > 0 {
		return nil, faults
	}
	r.text = text
	return r, nil
}

// Reader reads bench records by one set of tables. It is made once and may be
// used for many.
type Reader struct {
	tables  *reference.Tables
	methods *receipt.MethodReader
}

// NewReader makes a reader ready.
func NewReader(t *reference.Tables) *Reader {
	return &Reader{t, receipt.NewMethodReader(t)}
}

// At reads a bench record that stands at a node of a larger page. Faults are
// recorded on the page.
func (r *Reader) At(page *fault.Page, root *yaml.Node) *Record {
	p := &reading{Reader: sheet.Reader{Page: page}, tables: r.tables, methods: r.methods, out: &Record{File: page.Name}}
	p.record(root)
	return p.out
}

type reading struct {
	sheet.Reader
	tables  *reference.Tables
	methods *receipt.MethodReader
	out     *Record
}

func (p *reading) record(root *yaml.Node) {
	if root.Kind != yaml.MappingNode {
		p.Add(root, "`assize bake FILE` writes one to fill in", "a bench record is keys and values, and this is neither")
		return
	}
	has := p.given(root, topKeys)
	v, ok := has["formula"]
	if !ok {
		p.Add(root, "`assize bake FILE` writes a record with the receipt in it", "`formula` is missing: the record does not say what was baked")
		return
	}
	if p.out.Formula = file.At(p.Page, v, p.tables); p.out.Formula == nil {
		return
	}
	f := p.out.Formula
	for _, part := range f.Parts {
		if part.Take != "" && len(part.Lines) == 0 {
			p.Add(v, "write the lines of the part in full", "the part %q is taken from another receipt, and a record stands alone", part.Name)
		}
	}
	p.out.Parts = make([]Part, len(f.Parts))
	for _, key := range topKeys {
		v, ok := has[key]
		if !ok {
			continue
		}
		switch key {
		case "baked":
			p.out.Baked = p.day(v)
		case "eggs":
			p.eggs(v)
		case "parts":
			p.parts(v)
		case "dish":
			p.out.Dish, _ = p.words(v)
		case "oven":
			p.oven(v)
		case "centre":
			p.out.Centre = p.heat(v, leastCentre, mostCentre, "the centre of a dish")
		case "minutes":
			p.out.Minutes = p.figure(v, "the time in the oven", "minutes", leastMinutes, mostMinutes)
		case "departures":
			p.out.Departures = p.list(v)
		case "meant":
			p.out.Meant, _ = p.words(v)
		case "tasted":
			p.tasted(v)
		}
	}
}

// given returns the values of a mapping by key, leaving out those left empty.
func (p *reading) given(n *yaml.Node, known []string) map[string]*yaml.Node {
	out := map[string]*yaml.Node{}
	p.Fields(n, known, func(key string, _, v *yaml.Node) {
		if v.Tag != "!!null" {
			out[key] = v
		}
	})
	return out
}

// longestText is the most characters a text of a record may have.
const longestText = 500

// words is the node's text on one line. It must say something, be of a
// bearable length and hold nothing that cannot be printed.
func (p *reading) words(n *yaml.Node) (string, bool) {
	if n.Kind == yaml.MappingNode {
		p.Add(n, "put quotes round text that holds a colon", "words are wanted here, not keys and values")
		return "", false
	}
	s, ok := p.Text(n)
	if !ok {
		return "", false
	}
	if strings.ContainsFunc(s, func(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\t' }) {
		p.Add(n, "", "the text holds a character that cannot be printed")
		return "", false
	}
	s = strings.Join(strings.Fields(s), " ")
	switch n := n; {
	case s == "":
		p.Add(n, "leave it out when there is nothing to say", "the text is empty")
		return "", false
	case utf8.RuneCountInString(s) > longestText:
		p.Add(n, "is a line end missing?", "the text is %d characters long; at most %d are read", utf8.RuneCountInString(s), longestText)
		return "", false
	}
	return s, true
}

// list is a list of texts, those left empty passed over; a single text counts
// as a list of one.
func (p *reading) list(n *yaml.Node) []string {
	nodes := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		nodes = n.Content
	}
	var out []string
	for _, c := range nodes {
		if c.Tag == "!!null" {
			continue
		}
		if s, ok := p.words(c); ok {
			out = append(out, s)
		}
	}
	return out
}

// entries are the entries of a list of mappings, those left empty passed over.
func (p *reading) entries(n *yaml.Node, what, example string) []*yaml.Node {
	if n.Kind != yaml.SequenceNode {
		p.Add(n, "begin each with a dash: `"+example+"`", "a list of %s is wanted here", what)
		return nil
	}
	var out []*yaml.Node
	for _, c := range n.Content {
		switch {
		case c.Tag == "!!null":
		case c.Kind != yaml.MappingNode:
			p.Add(c, "write it as `"+example+"`", "one of the %s is wanted here, with keys and values", what)
		default:
			out = append(out, c)
		}
	}
	return out
}

// dayForm is how a day is written.
const dayForm = "2006-01-02"

func (p *reading) day(n *yaml.Node) string {
	s, ok := p.words(n)
	if !ok {
		return ""
	}
	d, err := time.Parse(dayForm, s)
	if err != nil || d.Year() < 1900 {
		p.Add(n, "write the day as 2026-11-07", "%q is not a day", s)
		return ""
	}
	return s
}

// What may be filled in, from a pinch to a great batch; from the coolest oven
// that bakes to the hottest; from a warm cream to boiling sugar.
var (
	leastGrams, mostGrams     = decimal.RequireFromString("0.01"), decimal.NewFromInt(1_000_000)
	leastOven, mostOven       = decimal.NewFromInt(40), decimal.NewFromInt(450)
	leastCentre, mostCentre   = decimal.NewFromInt(20), decimal.NewFromInt(125)
	leastMinutes, mostMinutes = decimal.NewFromInt(1), decimal.NewFromInt(1440)
	leastMinute, mostMinute   = decimal.Zero, decimal.NewFromInt(1440)
	leastEgg, mostEgg         = decimal.NewFromInt(15), decimal.NewFromInt(250)
)

const mostEggs = 1000

// figure is a number between bounds. A unit written after it is no harm when
// it is the one wanted.
func (p *reading) figure(n *yaml.Node, what, unit string, least, most decimal.Decimal) decimal.Decimal {
	c := *n
	for _, word := range []string{unit, strings.TrimSuffix(unit, "s"), "min"} {
		if rest, ok := strings.CutSuffix(strings.TrimSpace(c.Value), word); ok && (word != "min" || unit == "minutes") {
			c.Value = strings.TrimSpace(rest)
			break
		}
	}
	d, ok := p.Decimal(&c)
	if ok && (d.LessThan(least) || d.GreaterThan(most)) {
		p.Add(n, fmt.Sprintf("between %s and %s %s", least, most, unit), "%s cannot be %s %s", what, d, unit)
		return decimal.Zero
	}
	return d
}

var (
	fahrenheitAt = decimal.NewFromInt(32)
	five, nine   = decimal.NewFromInt(5), decimal.NewFromInt(9)
)

// heat is a temperature with its scale: 78 C, 172 F. It is given back in C, to
// a tenth.
func (p *reading) heat(n *yaml.Node, least, most decimal.Decimal, what string) decimal.Decimal {
	s, ok := p.words(n)
	if !ok {
		return decimal.Zero
	}
	low := strings.ToLower(strings.NewReplacer("°", " ", "º", " ").Replace(s))
	number, scale := low, ""
	for _, word := range []string{"celsius", "fahrenheit", "c", "f"} {
		if rest, ok := strings.CutSuffix(low, word); ok {
			number, scale = strings.TrimSpace(rest), word[:1]
			break
		}
	}
	c := *n
	c.Value, c.Kind, c.Tag = number, yaml.ScalarNode, "!!float"
	if scale == "" {
		if _, err := decimal.NewFromString(number); err == nil {
			p.Add(n, fmt.Sprintf("write %s C or %s F", number, number), "%s of which degrees?", number)
		} else {
			p.Add(n, "write it as 180 C or 350 F", "%q is no heat", s)
		}
		return decimal.Zero
	}
	d, ok := p.Decimal(&c)
	if !ok {
		return decimal.Zero
	}
	if scale == "f" {
		d = d.Sub(fahrenheitAt).Mul(five).DivRound(nine, 1)
	}
	if d.LessThan(least) || d.GreaterThan(most) {
		p.Add(n, fmt.Sprintf("between %s and %s C", least, most), "%s cannot be at %s", what, s)
		return decimal.Zero
	}
	return d
}

func (p *reading) eggs(n *yaml.Node) {
	has := p.given(n, eggKeys)
	number, okN := has["number"]
	grams, okG := has["grams"]
	switch {
	case !okN && !okG:
		return
	case okN != okG:
		p.Add(n, "eggs: {number: 4, grams: 208}, weighed together out of their shells", "`number` and `grams` go together")
		return
	}
	d := p.figure(number, "the number of eggs", "eggs", decimal.NewFromInt(1), decimal.NewFromInt(mostEggs))
	if d.IsZero() {
		return
	}
	if !d.IsInteger() {
		p.Add(number, "weigh whole eggs", "%s is no number of eggs", d)
		return
	}
	g := p.figure(grams, "what the eggs weighed", "g", leastGrams, mostGrams)
	if g.IsZero() {
		return
	}
	e := Eggs{int(d.IntPart()), g}
	if each := e.Each(); each.LessThan(leastEgg) || each.GreaterThan(mostEgg) {
		p.Add(n, fmt.Sprintf("between %s and %s g", leastEgg, mostEgg), "an egg out of its shell cannot be %s g", each.Round(1))
		return
	}
	p.out.Eggs = e
}

func (p *reading) parts(n *yaml.Node) {
	f := p.out.Formula
	taken := map[int]bool{}
	for _, c := range p.entries(n, "parts", "- part: filling") {
		has := p.given(c, partKeys)
		v, ok := has["part"]
		if !ok {
			p.Add(c, "`part: filling`, by its name in the formula", "the part has no `part`")
			continue
		}
		name, ok := p.words(v)
		if !ok {
			continue
		}
		i := slices.IndexFunc(f.Parts, func(fp formula.Part) bool { return reference.Key(fp.Name) == reference.Key(name) })
		if i < 0 {
			var known []string
			for _, fp := range f.Parts {
				known = append(known, fp.Name)
			}
			hint := spell.Ask(name, known)
			if hint == "" {
				hint = "its parts are " + strings.Join(known, ", ")
			}
			p.Add(v, hint, "the formula has no part %q", name)
			continue
		}
		if taken[i] {
			p.Add(v, "put all that is known of a part in one place", "the part %q stands twice", name)
			continue
		}
		taken[i] = true
		if v, ok := has["used"]; ok {
			p.used(v, i)
		}
		if v, ok := has["added"]; ok {
			p.added(v, i)
		}
		if v, ok := has["done"]; ok {
			p.done(v, i)
		}
	}
}

func (p *reading) used(n *yaml.Node, part int) {
	out := &p.out.Parts[part]
	for _, c := range p.entries(n, "lines", "- {line: 6 eggs, grams: 318}") {
		has := p.given(c, usedKeys)
		v, ok := has["line"]
		if !ok {
			p.Add(c, "`line: 6 eggs`, as the formula has it", "the entry has no `line`")
			continue
		}
		text, ok := p.words(v)
		if !ok {
			continue
		}
		of := ""
		if o, ok := has["of"]; ok {
			of, _ = p.words(o)
		}
		line, ingredient, ok := p.place(v, has["of"], part, text, of)
		if !ok {
			continue
		}
		g, ok := has["grams"]
		if !ok {
			continue // left open
		}
		if slices.ContainsFunc(out.Used, func(u Used) bool { return u.Line == line && u.Ingredient == ingredient }) {
			p.Add(c, "give what was used of it in all, once", "%q is weighed twice", text)
			continue
		}
		if grams := p.figure(g, "what was used of "+text, "g", leastGrams, mostGrams); grams.IsPositive() {
			out.Used = append(out.Used, Used{line, ingredient, grams})
		}
	}
}

// place finds the line and the ingredient an entry speaks of.
func (p *reading) place(at, ofAt *yaml.Node, part int, text, of string) (line int, ingredient string, ok bool) {
	fp := &p.out.Formula.Parts[part]
	var known []string
	line = -1
	for i := range fp.Lines {
		known = append(known, fp.Lines[i].Text)
		if line < 0 && reference.Key(fp.Lines[i].Text) == reference.Key(text) && !p.filled(part, i, of) {
			line = i
		}
	}
	if line < 0 {
		if i := slices.IndexFunc(fp.Lines, func(l formula.Line) bool { return reference.Key(l.Text) == reference.Key(text) }); i >= 0 {
			line = i // every line of that wording is filled in; told of as weighed twice
		}
	}
	if line < 0 {
		hint := spell.Ask(text, known)
		if hint == "" {
			hint = "write the line as the formula has it; what it does not list goes under `added`"
		}
		p.Add(at, hint, "the part has no line %q", text)
		return 0, "", false
	}
	list := ingredientsOf(&fp.Lines[line])
	if len(list) == 0 {
		p.Add(at, "", "nothing of the line %q is weighed", text)
		return 0, "", false
	}
	if of == "" {
		if len(list) > 1 {
			p.Add(at, "say `of: "+p.name(list[0])+"`", "%q holds %d things; which was weighed?", text, len(list))
			return 0, "", false
		}
		return line, list[0], true
	}
	var names []string
	for _, id := range list {
		if reference.Key(p.name(id)) == reference.Key(of) || reference.Key(id) == reference.Key(of) {
			return line, id, true
		}
		names = append(names, p.name(id))
	}
	hint := spell.Ask(of, names)
	if hint == "" {
		hint = "it holds " + strings.Join(names, ", ")
	}
	p.Add(ofAt, hint, "the line %q holds no %q", text, of)
	return 0, "", false
}

// filled reports whether a line has been weighed already, as far as the entry
// could speak of it.
func (p *reading) filled(part, line int, of string) bool {
	return slices.ContainsFunc(p.out.Parts[part].Used, func(u Used) bool {
		return u.Line == line && (of == "" || reference.Key(p.name(u.Ingredient)) == reference.Key(of) || u.Ingredient == of)
	})
}

func (p *reading) name(id string) string {
	if ing, ok := p.tables.Ingredient(id); ok {
		return ing.Name
	}
	return id
}

// ingredientsOf are the ids of what a line may hold, each once.
func ingredientsOf(l *formula.Line) []string {
	var out []string
	add := func(items []formula.Item) {
		for _, it := range items {
			if !slices.Contains(out, it.Ingredient) {
				out = append(out, it.Ingredient)
			}
		}
	}
	if len(l.Either) == 0 {
		add(l.Items)
	}
	for _, a := range l.Either {
		add(a.Items)
	}
	return out
}

func (p *reading) added(n *yaml.Node, part int) {
	f := p.out.Formula
	reader := &receipt.Reader{Tables: p.tables, Year: f.Year, Place: f.Place, KitchenYear: f.Kitchen.Year, KitchenPlace: f.Kitchen.Place}
	for _, c := range p.entries(n, "things", "- {of: cornflour, grams: 8}") {
		has := p.given(c, addedKeys)
		of, okOf := has["of"]
		g, okG := has["grams"]
		if !okOf && !okG {
			continue
		}
		if !okOf || !okG {
			p.Add(c, "{of: cornflour, grams: 8}", "what was added is given by `of` and `grams`")
			continue
		}
		name, ok := p.words(of)
		grams := p.figure(g, "what was added", "g", leastGrams, mostGrams)
		if !ok || grams.IsZero() {
			continue
		}
		l, troubles := reader.Plain(receipt.Plain{Amount: grams.String(), Unit: "g", Of: name})
		if len(troubles) > 0 {
			p.Add(of, troubles[0].Hint, "%s", troubles[0].What)
			continue
		}
		l.Pos = formula.Pos{Line: c.Line, Column: c.Column}
		p.out.Parts[part].Added = append(p.out.Parts[part].Added, l)
	}
}

func (p *reading) done(n *yaml.Node, part int) {
	nodes := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		nodes = n.Content
	}
	for _, c := range nodes {
		if c.Tag == "!!null" {
			continue
		}
		s, ok := p.words(c)
		if !ok {
			continue
		}
		if m := doneMethod(p.methods, p.out.Formula, part, []string{s}); len(m.Tokens) == 0 && !m.Bake.Said() {
			p.Add(c, "say it as a receipt would (`assize tables methods` has the wordings), or put it under `departures`", "nothing known was done in %q", s)
			continue
		}
		p.out.Parts[part].Done = append(p.out.Parts[part].Done, s)
	}
}

func (p *reading) oven(n *yaml.Node) {
	for _, c := range p.entries(n, "readings", "- {minute: 0, heat: 200 C}") {
		has := p.given(c, heatKeys)
		if len(has) == 0 {
			continue
		}
		h, ok := has["heat"]
		if !ok {
			p.Add(c, "{minute: 0, heat: 200 C}", "the reading has no `heat`")
			continue
		}
		var r Heat
		if m, ok := has["minute"]; ok {
			r.Minute = p.figure(m, "the time of a reading", "minutes", leastMinute, mostMinute)
		}
		if r.C = p.heat(h, leastOven, mostOven, "an oven"); r.C.IsZero() {
			continue
		}
		if last := len(p.out.Oven) - 1; last >= 0 && r.Minute.LessThan(p.out.Oven[last].Minute) {
			p.Add(c, "in the order of the clock", "the reading at minute %s comes before that at minute %s", r.Minute, p.out.Oven[last].Minute)
			continue
		}
		p.out.Oven = append(p.out.Oven, r)
	}
}

func (p *reading) tasted(n *yaml.Node) {
	for _, c := range p.entries(n, "tasters", "- by: first taster") {
		has := p.given(c, tasteKeys)
		if len(has) == 0 {
			continue
		}
		t := Tasting{By: fmt.Sprintf("taster %d", len(p.out.Tastings)+1)}
		if v, ok := has["by"]; ok {
			if s, ok := p.words(v); ok {
				t.By = s
			}
		}
		if v, ok := has["when"]; ok {
			t.When = p.when(v)
		}
		if v, ok := has["words"]; ok {
			t.Words = strings.Join(p.list(v), "; ")
		}
		for _, look := range reference.Looks {
			if v, ok := has[look]; ok {
				t.Signs = append(t.Signs, p.signs(v, look)...)
			}
		}
		if len(t.Signs) == 0 && t.Words == "" {
			continue // a name alone is no tasting
		}
		if slices.ContainsFunc(p.out.Tastings, func(o Tasting) bool { return o.By == t.By && o.When == t.When }) {
			p.Add(c, "give each taster a name of their own, and each tasting its time", "%s has tasted already", t.By)
			continue
		}
		p.out.Tastings = append(p.out.Tastings, t)
	}
}

func (p *reading) when(n *yaml.Node) string {
	s, ok := p.words(n)
	if !ok {
		return ""
	}
	switch low := strings.ToLower(s); {
	case slices.Contains(Times, low):
		return low
	case low == "cold":
		return "cool"
	}
	hint := spell.Ask(s, Times)
	if hint == "" {
		hint = "known: " + strings.Join(Times, ", ")
	}
	p.Add(n, hint, "unknown time of tasting %q", s)
	return ""
}

func (p *reading) signs(n *yaml.Node, look string) []Sign {
	nodes := []*yaml.Node{n}
	if n.Kind == yaml.SequenceNode {
		nodes = n.Content
	}
	var out []Sign
	for _, c := range nodes {
		if c.Tag == "!!null" {
			continue
		}
		s, ok := p.words(c)
		if !ok {
			continue
		}
		signs, trouble := Taste(s, look, p.out.Formula, p.tables)
		if trouble != nil {
			p.Add(c, trouble.Hint, "%s", trouble.What)
			continue
		}
		out = append(out, signs...)
	}
	return out
}
