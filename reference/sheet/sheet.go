// Package sheet reads strict YAML: every key known, none given twice, no
// aliases, one document, and every fault reported with its line and column in
// one run. The reference tables and the formula files are both sheets.
package sheet

import (
	"bytes"
	"errors"
	"io"
	"math/big"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"assize/reference/fault"
	"assize/reference/spell"
)

// MaxSize is the largest sheet read, in bytes.
const MaxSize = 1 << 20

// Decoder is a value that reads itself from a node and records its own faults.
type Decoder interface {
	DecodeSheet(n *yaml.Node, r *Reader)
}

// Reader walks the nodes of one page. Its Page collects the faults.
type Reader struct {
	Page *fault.Page
}

// Decode reads the page's single document into out, a pointer to a struct.
// Struct fields take their key from the `yaml` tag; `sheet:"required"` makes a
// key obligatory. What is wrong is recorded on the page; the values that could
// be read are set all the same.
func Decode(page *fault.Page, out any) {
	node := Parse(page)
	if node == nil {
		return
	}
	r := &Reader{Page: page}
	r.Read(node, reflect.ValueOf(out).Elem())
}

// Parse returns the root of the page's single document, nil when there is none
// to be had. Size, encoding, syntax and aliases are checked here.
func Parse(page *fault.Page) *yaml.Node {
	return ParseUpTo(page, MaxSize, "split it: one receipt a file")
}

// ParseUpTo is Parse for pages of another size, with what to do about a page
// that is larger.
func ParseUpTo(page *fault.Page, most int, hint string) *yaml.Node {
	switch {
	case len(page.Text) > most:
		page.Add(0, 0, hint, "the file is %d bytes; at most %d are read", len(page.Text), most)
		return nil
	case !utf8.Valid(page.Text):
		line, col := badByte(page.Text)
		page.Add(line, col, "save the file as UTF-8", "the text is not UTF-8")
		return nil
	case len(bytes.TrimSpace(page.Text)) == 0:
		page.Add(0, 0, "", "the file is empty")
		return nil
	}
	dec := yaml.NewDecoder(bytes.NewReader(page.Text))
	var doc yaml.Node
	if err := dec.Decode(&doc); err != nil {
		if errors.Is(err, io.EOF) {
			page.Add(0, 0, "", "the file holds nothing but comments")
			return nil
		}
		addSyntax(page, err)
		return nil
	}
	var second yaml.Node
	switch err := dec.Decode(&second); {
	case err == nil:
		page.Add(second.Line, second.Column, "put the second receipt in a file of its own", "a second document in one file")
	case !errors.Is(err, io.EOF):
		addSyntax(page, err)
	}
	root := doc.Content[0]
	if refuseAliases(page, root) {
		return nil
	}
	return root
}

var syntaxLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

func addSyntax(page *fault.Page, err error) {
	text := strings.SplitN(err.Error(), "\n", 2)[0]
	m := syntaxLine.FindStringSubmatch(text)
	if m == nil {
		page.Add(0, 0, "", "%s", text)
		return
	}
	line, _ := strconv.Atoi(m[1])
	column := 0
	if line > 0 {
		column = 1
	}
	page.Add(line, column, "check the indenting, and put quotes round text that holds a colon, a # or a leading quote", "this cannot be read as YAML: %s", m[2])
}

// badByte is the place of the first byte that is not UTF-8.
func badByte(text []byte) (line, col int) {
	good := 0
	for good < len(text) {
		r, n := utf8.DecodeRune(text[good:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		good += n
	}
	lines := fault.Lines(string(text[:good]))
	return len(lines), utf8.RuneCountInString(lines[len(lines)-1]) + 1
}

// refuseAliases reports anchors, aliases and merge keys: a short page of them
// can stand for a huge one, and a cook's file has no use for them.
func refuseAliases(page *fault.Page, n *yaml.Node) (found bool) {
	if n.Kind == yaml.AliasNode || n.Anchor != "" || n.Tag == "!!merge" {
		page.Add(n.Line, n.Column, "write the text out, or quote it if the sign is meant", "aliases and anchors (& and *) are not taken")
		return true
	}
	for _, c := range n.Content {
		if refuseAliases(page, c) {
			found = true
		}
	}
	return found
}

// Add records a fault at a node.
func (r *Reader) Add(n *yaml.Node, hint, format string, args ...any) {
	r.Page.Add(n.Line, n.Column, hint, format, args...)
}

var (
	decimalType = reflect.TypeFor[decimal.Decimal]()
	decoderType = reflect.TypeFor[Decoder]()
)

// Read sets v from the node, recording what is wrong.
func (r *Reader) Read(n *yaml.Node, v reflect.Value) {
	if v.CanAddr() && v.Addr().Type().Implements(decoderType) {
		v.Addr().Interface().(Decoder).DecodeSheet(n, r)
		return
	}
	if v.Type() == decimalType {
		if d, ok := r.Decimal(n); ok {
			v.Set(reflect.ValueOf(d))
		}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		r.Read(n, p.Elem())
		v.Set(p)
	case reflect.Struct:
		r.readStruct(n, v)
	case reflect.Slice:
		r.readSlice(n, v)
	case reflect.Map:
		r.readMap(n, v)
	case reflect.String:
		if s, ok := r.Text(n); ok {
			v.SetString(s)
		}
	case reflect.Int:
		if s, ok := r.Text(n); ok {
			i, err := strconv.Atoi(s)
			if err != nil {
				r.Add(n, "", "%q is not a whole number", s)
				return
			}
			v.SetInt(int64(i))
		}
	case reflect.Bool:
		switch n.Value {
		case "true", "yes":
			v.SetBool(true)
		case "false", "no":
		default:
			r.Add(n, "write yes or no", "%q is neither yes nor no", n.Value)
		}
	default:
		panic("sheet: no reading for " + v.Type().String())
	}
}

// Text is the node's text, recording a fault when it is not a plain value.
func (r *Reader) Text(n *yaml.Node) (string, bool) {
	if n.Kind != yaml.ScalarNode {
		r.Add(n, "", "a single value is wanted here, not a %s", kindWord(n))
		return "", false
	}
	if n.Tag == "!!null" {
		r.Add(n, "leave the key out when there is nothing to say", "the value is missing")
		return "", false
	}
	return n.Value, true
}

// maxDigits bounds a number's size and fineness: no kitchen figure needs more.
const maxDigits = 12

// Decimal is the node's number, recording a fault when it is none or is of a
// size no kitchen meets.
func (r *Reader) Decimal(n *yaml.Node) (decimal.Decimal, bool) {
	text, ok := r.Text(n)
	if !ok {
		return decimal.Zero, false
	}
	d, err := decimal.NewFromString(text)
	if err != nil {
		r.Add(n, "", "%q is not a number", text)
		return decimal.Zero, false
	}
	if d.Exponent() > maxDigits || -d.Exponent() > 2*maxDigits || d.Coefficient().CmpAbs(tooLong) > 0 {
		r.Add(n, "", "%q is not a figure a kitchen can use", text)
		return decimal.Zero, false
	}
	return d, true
}

var tooLong = new(big.Int).Exp(big.NewInt(10), big.NewInt(2*maxDigits), nil)

func kindWord(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "mapping"
	case yaml.SequenceNode:
		return "list"
	}
	return "value"
}

// Fields calls each for every key of a mapping, after refusing keys that are
// unknown or given twice. It returns the keys present.
func (r *Reader) Fields(n *yaml.Node, known []string, each func(key string, k, v *yaml.Node)) map[string]bool {
	if n.Kind != yaml.MappingNode {
		r.Add(n, "", "keys and values are wanted here, not a %s", kindWord(n))
		return nil
	}
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		key := k.Value
		switch {
		case k.Kind != yaml.ScalarNode:
			r.Add(k, "", "a key must be a plain word")
		case seen[key]:
			r.Add(k, "", "%q is given twice", key)
		case !contains(known, key):
			hint := spell.Ask(key, known)
			if hint == "" {
				hint = "known here: " + strings.Join(known, ", ")
			}
			r.Add(k, hint, "unknown key %q", key)
		default:
			seen[key] = true
			each(key, k, v)
		}
	}
	return seen
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

func (r *Reader) readStruct(n *yaml.Node, v reflect.Value) {
	fields := map[string]reflect.Value{}
	var known, required []string
	collect(v, fields, &known, &required)
	seen := r.Fields(n, known, func(key string, _, val *yaml.Node) {
		if val.Tag == "!!null" {
			return // an empty value is the same as none; a required key is asked for below
		}
		r.Read(val, fields[key])
	})
	if seen == nil {
		return
	}
	for _, key := range required {
		if !seen[key] {
			r.Add(n, "", "%q is missing", key)
		}
	}
}

// collect gathers the fields of a struct by key, inlined ones included.
func collect(v reflect.Value, fields map[string]reflect.Value, known, required *[]string) {
	t := v.Type()
	for i := range t.NumField() {
		f := t.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		if strings.Contains(rest, "inline") {
			collect(v.Field(i), fields, known, required)
			continue
		}
		if key == "" || key == "-" {
			continue
		}
		fields[key] = v.Field(i)
		*known = append(*known, key)
		if f.Tag.Get("sheet") == "required" {
			*required = append(*required, key)
		}
	}
}

func (r *Reader) readSlice(n *yaml.Node, v reflect.Value) {
	if n.Kind != yaml.SequenceNode {
		r.Add(n, "write it as a list: one entry a line, each after a dash", "a list is wanted here, not a %s", kindWord(n))
		return
	}
	out := reflect.MakeSlice(v.Type(), len(n.Content), len(n.Content))
	for i, c := range n.Content {
		r.Read(c, out.Index(i))
	}
	v.Set(out)
}

func (r *Reader) readMap(n *yaml.Node, v reflect.Value) {
	if n.Kind != yaml.MappingNode {
		r.Add(n, "", "keys and values are wanted here, not a %s", kindWord(n))
		return
	}
	out := reflect.MakeMapWithSize(v.Type(), len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := reflect.ValueOf(n.Content[i].Value)
		if out.MapIndex(key).IsValid() {
			r.Add(n.Content[i], "", "%q is given twice", n.Content[i].Value)
			continue
		}
		elem := reflect.New(v.Type().Elem()).Elem()
		r.Read(n.Content[i+1], elem)
		out.SetMapIndex(key, elem)
	}
	v.Set(out)
}
