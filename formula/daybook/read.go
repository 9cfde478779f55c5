package daybook

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"assize/formula/bench"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/sheet"
)

// MaxSize is the largest day-book read, in bytes: some thousands of bakes.
const MaxSize = 16 << 20

var (
	entryKeys     = []string{"bake", "baked", "title", "version", "tables", "readings", "predicted", "tasted", "record"}
	predictedKeys = []string{"part", "kind", "likeliest", "shares"}
	laterKeys     = []string{"later", "tasted"}
	tastedKeys    = []string{"by", "when", "results", "words"}
	resultKeys    = []string{"part", "texture"}
)

// Read reads a day-book. It is nil when there is any fault; all faults are
// returned together. A file of comments or nothing is an empty book.
func Read(name string, text []byte, t *reference.Tables) (*Book, fault.List) {
	b := &Book{File: name, text: string(text)}
	if blank(text) {
		return b, nil
	}
	page := fault.NewPage(name, text)
	root := sheet.ParseUpTo(page, MaxSize, "begin a new day-book, and keep the old one")
	if root == nil {
		return nil, page.Faults()
	}
	r := &reading{Reader: sheet.Reader{Page: page}, tables: t, records: bench.NewReader(t), book: b, lines: len(fault.Lines(b.text))}
	r.entries(root)
	if faults := page.Faults(); len(faults) > 0 {
		return nil, faults
	}
	return b, nil
}

// blank reports a page without anything but comments.
func blank(text []byte) bool {
	for l := range strings.Lines(string(text)) {
		if l = strings.TrimSpace(l); l != "" && !strings.HasPrefix(l, "#") {
			return false
		}
	}
	return true
}

type reading struct {
	sheet.Reader
	tables  *reference.Tables
	records *bench.Reader
	book    *Book
	lines   int
}

func (r *reading) entries(root *yaml.Node) {
	if root.Kind != yaml.SequenceNode {
		r.Add(root, "is it a day-book? `assize explain --keep FILE` begins one", "a list of bakes is wanted here, each after a dash")
		return
	}
	for i, n := range root.Content {
		if isLater(n) {
			r.later(n)
			continue
		}
		to := r.lines
		if i+1 < len(root.Content) {
			to = root.Content[i+1].Line - 1
		}
		e, at := r.entry(n, len(r.book.Entries)+1)
		at.to = to
		r.book.Entries = append(r.book.Entries, e)
		r.book.starts = append(r.book.starts, at)
	}
}

// isLater reports an item that tells what was tasted later of a bake.
func isLater(n *yaml.Node) bool {
	if n.Kind != yaml.MappingNode {
		return false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == "later" {
			return true
		}
	}
	return false
}

// later puts what was tasted later to its bake, behind what was tasted before.
func (r *reading) later(n *yaml.Node) {
	has := r.given(n, laterKeys)
	if has["later"] == nil {
		r.Add(n, "the number of a bake", "it is not said which bake was tasted later")
		return
	}
	bake := r.whole(has["later"], 1, 1_000_000)
	var tasted []Tasted
	if v := has["tasted"]; v != nil {
		tasted = r.tasted(v)
	}
	switch {
	case bake == 0:
		return
	case bake > len(r.book.Entries):
		r.Add(has["later"], "a tasting stands behind its bake", "no bake %d stands before this", bake)
		return
	case len(tasted) == 0:
		r.Add(n, "`tasted` has a list of tasters", "it is not said what was tasted later of bake %d", bake)
		return
	}
	e := &r.book.Entries[bake-1]
	if e.Record != nil {
		r.tastedParts(e, tasted, has["tasted"])
	}
	e.Tasted = append(e.Tasted, tasted...)
}

// required are the keys every bake has.
var required = []string{"bake", "title", "version", "tables", "readings", "record"}

func (r *reading) entry(n *yaml.Node, number int) (e Entry, at place) {
	has := r.given(n, entryKeys)
	if n.Kind != yaml.MappingNode {
		return e, at
	}
	for _, key := range required {
		if has[key] == nil {
			r.Add(n, "", "bake %d has no %q", number, key)
		}
	}
	text := func(key string) string {
		if v := has[key]; v != nil {
			s, _ := r.words(v)
			return s
		}
		return ""
	}
	e.Baked, e.Title, e.Version, e.Tables = text("baked"), text("title"), text("version"), text("tables")
	if v := has["bake"]; v != nil {
		e.Bake = r.whole(v, 1, 1_000_000)
		if e.Bake != number && e.Bake != 0 {
			r.Add(v, "bakes are numbered in order; is one missing?", "bake %d stands where bake %d should", e.Bake, number)
		}
	}
	if v := has["readings"]; v != nil {
		e.Readings = r.whole(v, 1, 1_000_000)
	}
	if v := has["predicted"]; v != nil {
		e.Predicted = r.predicted(v)
	}
	if v := has["tasted"]; v != nil {
		e.Tasted = r.tasted(v)
	}
	if v := has["record"]; v != nil {
		e.Record = r.records.At(r.Page, v)
		at.from, at.column = v.Line, v.Column
		for i := 0; i+1 < len(n.Content); i += 2 {
			if k := n.Content[i]; n.Content[i+1] == v && k.Line < v.Line {
				at.from = k.Line + 1 // remarks before the first key are the record's too
			}
		}
		r.parts(&e, has)
	}
	return e, at
}

// parts holds the parts that are named against those of the record.
func (r *reading) parts(e *Entry, has map[string]*yaml.Node) {
	if e.Record.Formula == nil {
		return
	}
	kinds := kindsOf(e)
	for _, p := range e.Predicted {
		if k, ok := kinds[p.Part]; !ok || p.Kind != "" && k != p.Kind {
			r.Add(has["predicted"], "", "something is foretold of a %s %q, and the record has none", p.Kind, p.Part)
		}
	}
	r.tastedParts(e, e.Tasted, has["tasted"])
}

// tastedParts holds the parts and textures that were tasted against the record
// of the bake.
func (r *reading) tastedParts(e *Entry, tasted []Tasted, at *yaml.Node) {
	if e.Record.Formula == nil {
		return
	}
	kinds := kindsOf(e)
	for _, t := range tasted {
		for _, x := range t.Results {
			k, ok := kinds[x.Part]
			if !ok {
				r.Add(at, "", "%q was tasted, and the record has no such part", x.Part)
			} else if _, ok := r.tables.Texture(k, x.Texture); !ok && x.Texture != "" {
				r.Add(at, "`assize tables textures` lists them", "no %s is %q", k, x.Texture)
			}
		}
	}
}

// kindsOf are the kinds of the parts of a bake, by name.
func kindsOf(e *Entry) map[string]string {
	kinds := map[string]string{}
	for _, p := range e.Record.Formula.Parts {
		kinds[p.Name] = string(p.Kind)
	}
	return kinds
}

func (r *reading) given(n *yaml.Node, known []string) map[string]*yaml.Node {
	out := map[string]*yaml.Node{}
	r.Fields(n, known, func(key string, _, v *yaml.Node) {
		if v.Tag != "!!null" {
			out[key] = v
		}
	})
	return out
}

// longest is the most characters a text may have.
const longest = 1000

func (r *reading) words(n *yaml.Node) (string, bool) {
	s, ok := r.Text(n)
	if !ok {
		return "", false
	}
	switch {
	case strings.ContainsFunc(s, func(c rune) bool { return unicode.IsControl(c) && c != '\n' && c != '\t' }):
		r.Add(n, "", "the text holds a character that cannot be printed")
		return "", false
	case len([]rune(s)) > longest:
		r.Add(n, "", "the text is %d characters long; at most %d are read", len([]rune(s)), longest)
		return "", false
	}
	return strings.Join(strings.Fields(s), " "), true
}

func (r *reading) whole(n *yaml.Node, least, most int64) int {
	d, ok := r.Decimal(n)
	if !ok {
		return 0
	}
	if !d.IsInteger() || d.LessThan(decimal.NewFromInt(least)) || d.GreaterThan(decimal.NewFromInt(most)) {
		r.Add(n, fmt.Sprintf("a whole number from %d to %d", least, most), "%s cannot be", d)
		return 0
	}
	return int(d.IntPart())
}

func (r *reading) list(n *yaml.Node) []*yaml.Node {
	if n.Kind != yaml.SequenceNode {
		r.Add(n, "", "a list is wanted here")
		return nil
	}
	return n.Content
}

// rounding is how far shares to three places may miss adding up to one.
var rounding = decimal.RequireFromString("0.01")

func (r *reading) predicted(n *yaml.Node) []Predicted {
	var out []Predicted
	for _, c := range r.list(n) {
		has := r.given(c, predictedKeys)
		var p Predicted
		for key, v := range has {
			switch key {
			case "part":
				p.Part, _ = r.words(v)
			case "kind":
				p.Kind, _ = r.words(v)
			case "likeliest":
				p.Likeliest, _ = r.words(v)
			}
		}
		if v := has["shares"]; v != nil {
			p.Shares = r.shares(v)
		}
		if c.Kind == yaml.MappingNode && (p.Part == "" || p.Kind == "" || len(p.Shares) == 0) {
			r.Add(c, "", "a prediction has a part, its kind and its shares")
		}
		for _, s := range p.Shares {
			if _, ok := r.tables.Texture(p.Kind, s.Texture); !ok && p.Kind != "" {
				r.Add(has["shares"], "`assize tables textures` lists them", "no %s is %q", p.Kind, s.Texture)
			}
		}
		if v := has["likeliest"]; v != nil && !slices.ContainsFunc(p.Shares, func(s Share) bool { return s.Texture == p.Likeliest }) {
			r.Add(v, "", "%q has no share", p.Likeliest)
		}
		out = append(out, p)
	}
	return out
}

func (r *reading) shares(n *yaml.Node) []Share {
	var out []Share
	if n.Kind != yaml.MappingNode {
		r.Add(n, "", "shares are keys and values: {sets: 0.9, cakey: 0.1}")
		return nil
	}
	sum, sound := decimal.Zero, true
	one := decimal.NewFromInt(1)
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if slices.ContainsFunc(out, func(s Share) bool { return s.Texture == k.Value }) {
			r.Add(k, "", "%q is given twice", k.Value)
			sound = false
			continue
		}
		d, ok := r.Decimal(v)
		if ok && (d.IsNegative() || d.GreaterThan(one)) {
			r.Add(v, "", "a share cannot be %s", d)
			ok = false
		}
		sound = sound && ok
		sum = sum.Add(d)
		out = append(out, Share{k.Value, d})
	}
	if sound && sum.Sub(one).Abs().GreaterThan(rounding) {
		r.Add(n, "", "the shares add up to %s, not to 1", sum)
	}
	return out
}

func (r *reading) tasted(n *yaml.Node) []Tasted {
	var out []Tasted
	for _, c := range r.list(n) {
		has := r.given(c, tastedKeys)
		var t Tasted
		for key, v := range has {
			switch key {
			case "by":
				t.By, _ = r.words(v)
			case "when":
				t.When, _ = r.words(v)
				if !slices.Contains(bench.Times, t.When) {
					r.Add(v, strings.Join(bench.Times, ", "), "unknown time of tasting %q", t.When)
				}
			case "words":
				t.Words, _ = r.words(v)
			case "results":
				for _, x := range r.list(v) {
					given := r.given(x, resultKeys)
					var res Result
					if p := given["part"]; p != nil {
						res.Part, _ = r.words(p)
					}
					if p := given["texture"]; p != nil {
						res.Texture, _ = r.words(p)
					}
					if x.Kind == yaml.MappingNode && (res.Part == "" || res.Texture == "") {
						r.Add(x, "", "a result has a part and a texture")
					}
					t.Results = append(t.Results, res)
				}
			}
		}
		out = append(out, t)
	}
	return out
}

// Record is the page of the bench record of a bake, as it was kept; false when
// the book has no bake of that number.
func (b *Book) Record(bake int) ([]byte, bool) {
	if bake < 1 || bake > len(b.starts) {
		return nil, false
	}
	at := b.starts[bake-1]
	lines := fault.Lines(b.text)
	var out strings.Builder
	indent := strings.Repeat(" ", at.column-1)
	for i := at.from - 1; i < at.to && i < len(lines); i++ {
		l, inside := strings.CutPrefix(lines[i], indent)
		switch {
		case inside:
		case strings.TrimSpace(l) == "":
			l = ""
		case out.Len() == 0:
			l = string([]rune(l)[min(at.column-1, len([]rune(l))):]) // it begins beside its key
		default:
			i = at.to // a remark between two bakes is no part of the record
			continue
		}
		out.WriteString(l + "\n")
	}
	return []byte(strings.TrimRight(out.String(), "\n") + "\n"), true
}
