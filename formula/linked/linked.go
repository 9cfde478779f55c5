// Package linked finds a receipt in linked data: a schema.org Recipe as JSON-LD,
// in a file of its own or in the script block of a saved page. It gives the
// receipt as words, as a cook would copy it out; package receipt reads those.
package linked

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"assize/reference/fault"
)

// The most a page may hold: no receipt is larger or nested deeper.
const (
	MaxSize  = 1 << 20 // bytes
	mostDeep = 60
	mostRows = 2000 // ingredients, or steps
)

// Receipt is a receipt found in linked data.
type Receipt struct {
	Title  string
	Source string // who wrote it and where it stands, as far as it says
	Year   int    // of its publication; 0 when not said
	Text   string // heading, ingredients, method
}

// Is reports whether a file is linked data or a saved page, by its name or by
// how it begins.
func Is(name string, text []byte) bool {
	low := strings.ToLower(name)
	for _, end := range []string{".json", ".jsonld", ".html", ".htm"} {
		if strings.HasSuffix(low, end) {
			return true
		}
	}
	start := bytes.TrimLeft(bytes.TrimPrefix(text, []byte("\uFEFF")), " \t\r\n")
	return bytes.HasPrefix(start, []byte("<")) || bytes.HasPrefix(start, []byte("{")) ||
		bytes.HasPrefix(start, []byte("[{")) || bytes.HasPrefix(start, []byte("[\n"))
}

// Read finds the receipt in a JSON-LD file or a saved page. The name is what the
// person calls the file. The receipt is nil when there is a fault: no Recipe,
// JSON that is none, a page too large or too deep.
func Read(name string, text []byte) (*Receipt, fault.List) {
	page := fault.NewPage(name, text)
	switch {
	case len(text) > MaxSize:
		page.Add(0, 0, "save the receipt alone", "the file is %d bytes; at most %d are read", len(text), MaxSize)
		return nil, page.Faults()
	case !utf8.Valid(text):
		page.Add(0, 0, "save the file as UTF-8", "the text is not UTF-8")
		return nil, page.Faults()
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	offset := len(page.Text) - len(text)
	if start := bytes.TrimLeft(text, " \t\r\n"); len(start) > 0 && (start[0] == '{' || start[0] == '[') {
		r := find(page, text, offset)
		if r == nil && len(page.Faults()) == 0 {
			page.Add(0, 0, `a Recipe of schema.org is wanted: {"@type": "Recipe", "recipeIngredient": [...]}`, "there is no receipt in it")
		}
		return whole(r, page)
	}
	found := false
	var result *Receipt
	for _, m := range scripts.FindAllSubmatchIndex(text, -1) {
		found = true
		if result = find(page, text[m[2]:m[3]], offset+m[2]); result != nil {
			return result, nil // what is wrong with another block is no matter
		}
	}
	switch {
	case len(page.Faults()) > 0:
	case found:
		page.Add(0, 0, "copy the receipt out as text, and read that", "the page has no receipt among its linked data")
	default:
		page.Add(0, 0, "copy the receipt out as text, and read that", "the page has no linked data, and so no receipt that can be told from the rest")
	}
	return nil, page.Faults()
}

func whole(r *Receipt, page *fault.Page) (*Receipt, fault.List) {
	if faults := page.Faults(); len(faults) > 0 {
		return nil, faults
	}
	return r, nil
}

// scripts are the blocks of a page that hold linked data.
var scripts = regexp.MustCompile(`(?is)<script\b[^>]*\btype\s*=\s*["']?application/ld\+json["']?[^>]*>(.*?)</script\s*>`)

// find reads one run of JSON, which stands at a place of the page, and looks for
// a Recipe in it. It is nil when there is none or the JSON is wrong, which then
// is a fault of the page.
func find(page *fault.Page, text []byte, at int) *Receipt {
	if deep := tooDeep(text); deep >= 0 {
		line, column := place(page.Text, at+deep)
		page.Add(line, column, "save the receipt alone", "it is nested more than %d deep, and no receipt is", mostDeep)
		return nil
	}
	var v any
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber()
	if err := dec.Decode(&v); err != nil {
		where := len(text)
		if syntax, ok := errors.AsType[*json.SyntaxError](err); ok {
			where = max(0, int(syntax.Offset)-1)
		}
		line, column := place(page.Text, at+where)
		page.Add(line, column, "save the page again", "this is no JSON: %s", strings.TrimPrefix(err.Error(), "json: "))
		return nil
	}
	object := recipeIn(v)
	if object == nil {
		return nil
	}
	r := receiptOf(object)
	if r == nil {
		line, column := place(page.Text, at)
		page.Add(line, column, "`recipeIngredient` lists them", "the Recipe has no ingredients")
	}
	return r
}

// tooDeep is the place where JSON is nested deeper than any receipt, -1 when it
// is not.
func tooDeep(text []byte) int {
	depth, quoted := 0, false
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '{' || c == '[':
			if depth++; depth > mostDeep {
				return i
			}
		case c == '}' || c == ']':
			depth--
		}
	}
	return -1
}

// place is a place in bytes as line and column, counted from 1 in characters.
func place(text []byte, at int) (line, column int) {
	at = min(at, len(text))
	before := text[:at]
	return bytes.Count(before, []byte("\n")) + 1, utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// recipeIn walks linked data for an object whose type is Recipe.
func recipeIn(v any) map[string]any {
	switch v := v.(type) {
	case map[string]any:
		if isRecipe(v["@type"]) || isRecipe(v["type"]) {
			return v
		}
		for _, key := range []string{"@graph", "mainEntity", "mainEntityOfPage", "hasPart", "itemListElement", "item"} {
			if found := recipeIn(v[key]); found != nil {
				return found
			}
		}
	case []any:
		for _, e := range v {
			if found := recipeIn(e); found != nil {
				return found
			}
		}
	}
	return nil
}

func isRecipe(v any) bool {
	switch v := v.(type) {
	case string:
		return v == "Recipe" || strings.HasSuffix(v, "schema.org/Recipe") || v == "schema:Recipe"
	case []any:
		for _, e := range v {
			if isRecipe(e) {
				return true
			}
		}
	}
	return false
}

// receiptOf puts a Recipe into words; nil when it has no ingredients.
func receiptOf(o map[string]any) *Receipt {
	list := rows(o["recipeIngredient"])
	if len(list) == 0 {
		list = rows(o["ingredients"])
	}
	if len(list) == 0 {
		return nil
	}
	r := &Receipt{Title: plain(o["name"])}
	var b strings.Builder
	if r.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", r.Title)
	}
	b.WriteString("Ingredients\n")
	for _, row := range list {
		fmt.Fprintf(&b, "- %s\n", row)
	}
	if steps := stepsOf(o["recipeInstructions"], 0); len(steps) > 0 {
		b.WriteString("\nMethod\n")
		for _, s := range steps {
			fmt.Fprintf(&b, "%s\n", s)
		}
	}
	if minutes := duration(plain(o["cookTime"])); minutes > 0 {
		fmt.Fprintf(&b, "\nTime: %d minutes.\n", minutes)
	}
	r.Text = b.String()
	if y := year.FindString(plain(o["datePublished"])); y != "" {
		r.Year, _ = strconv.Atoi(y)
	}
	var from []string
	for _, key := range []string{"author", "publisher", "isPartOf"} {
		if s := nameOf(o[key]); s != "" {
			from = append(from, s)
		}
	}
	if u := plain(o["url"]); u != "" {
		from = append(from, u)
	}
	r.Source = strings.Join(from, ", ")
	return r
}

var year = regexp.MustCompile(`^(1[0-9]|20)[0-9]{2}`)

// nameOf is the name of a person or a work, given as words or as an object.
func nameOf(v any) string {
	switch v := v.(type) {
	case map[string]any:
		return plain(v["name"])
	case []any:
		if len(v) > 0 {
			return nameOf(v[0])
		}
	}
	return plain(v)
}

// rows are the texts of a list, or of a text by its lines.
func rows(v any) []string {
	var out []string
	switch v := v.(type) {
	case string:
		for line := range strings.Lines(withLines(v)) {
			if s := plain(line); s != "" {
				out = append(out, s)
			}
		}
	case []any:
		for _, e := range v {
			if s := plain(e); s != "" {
				out = append(out, s)
			} else if o, ok := e.(map[string]any); ok {
				if s := plain(o["name"]); s != "" {
					out = append(out, s)
				}
			}
		}
	}
	return out[:min(len(out), mostRows)]
}

// stepsOf are the directions: text, a list, steps, or sections of steps.
func stepsOf(v any, depth int) []string {
	if depth > 6 {
		return nil
	}
	var out []string
	switch v := v.(type) {
	case string:
		out = rows(v)
	case []any:
		for _, e := range v {
			out = append(out, stepsOf(e, depth+1)...)
		}
	case map[string]any:
		if items, ok := v["itemListElement"]; ok {
			if s := plain(v["name"]); s != "" {
				out = append(out, strings.TrimSuffix(s, ":")+":")
			}
			return append(out, stepsOf(items, depth+1)...)
		}
		if s := plain(v["text"]); s != "" {
			return append(out, s)
		}
		if s := plain(v["name"]); s != "" {
			return append(out, s)
		}
	}
	return out[:min(len(out), mostRows)]
}

var (
	breaks = regexp.MustCompile(`(?i)<br\s*/?>|</p>|</li>|</div>`)
	tags   = regexp.MustCompile(`<[^<>]*>`)
)

func withLines(s string) string { return breaks.ReplaceAllString(s, "\n") }

// plain is a value as words on one line, without the marks of a page.
func plain(v any) string {
	switch v := v.(type) {
	case string:
		return strings.Join(strings.Fields(html.UnescapeString(tags.ReplaceAllString(v, " "))), " ")
	case json.Number:
		return v.String()
	}
	return ""
}

var iso = regexp.MustCompile(`^P(?:T)?(?:(\d{1,4})H)?(?:(\d{1,4})M)?`)

// duration is a time of the standard's way, "PT1H15M", in minutes.
func duration(s string) int {
	m := iso.FindStringSubmatch(strings.ToUpper(s))
	if m == nil {
		return 0
	}
	hours, _ := strconv.Atoi(m[1])
	minutes, _ := strconv.Atoi(m[2])
	return 60*hours + minutes
}
