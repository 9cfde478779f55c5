package present

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"assize/reference"
)

// tableIs says what each table holds.
var tableIs = map[string]string{
	"sources":     "the works the tables rest on",
	"ingredients": "what 100 g of each is made of, how dense it is, what it counts as",
	"names":       "names that mean different things in different years and places",
	"fruits":      "things bought whole and used in parts",
	"modifiers":   "words beside a name that change nothing",
	"measures":    "what a measure's name held, when and where",
	"sizes":       "what one counted thing gives: an egg, the juice of a lemon",
	"fills":       "how full a measure was: scant, heaped, level",
	"methods":     "what a cook did, in the words of the books",
	"textures":    "how a part may turn out, and the words for it",
	"classes":     "families of formulas",
	"ranges":      "published proportions of the classes",
	"ratios":      "the proportions that are looked at, and how each is counted",
	"published":   "published formulas with what is known of their texture",
	"links":       "how the worked-out figures become \"about 8 in 10\"",
	"ovens":       "what a word, a hand or a scorched paper says of an oven",
	"vessels":     "dishes, tins and moulds with what they hold",
	"cautions":    "hazards in old receipts, and what to say of them",
	"doneness":    "how a cook tells that a thing is done",
	"steps":       "what a working cook does whether the receipt says so or not",
	"signs":       "what a taster sees, and what it points to",
	"causes":      "why a change alters the texture, and what no formula tells",
	"allergens":   "groups of foods that must be named to those who eat, by two lists",
	"answers":     "what the public asks beside allergens, and what answers it",
}

// TableList is the page that lists the tables.
func TableList(t *reference.Tables) *Page {
	list := Table{Columns: []Column{{Name: "table"}, {Name: "rows", Right: true}, {Name: "what it holds"}}}
	for _, name := range reference.TableNames() {
		rows, _ := t.Rows(name)
		list.Rows = append(list.Rows, []string{name, strconv.Itoa(len(rows)), tableIs[name]})
	}
	p := &Page{Title: "Tables, edition " + reference.Edition}
	p.section("", list)
	return p
}

// TableListJSON writes the list of tables as JSON.
func TableListJSON(w io.Writer, t *reference.Tables) error {
	type entry struct {
		Name string `json:"name"`
		Rows int    `json:"rows"`
		Is   string `json:"is"`
	}
	out := struct {
		Schema  int     `json:"schema"`
		Edition string  `json:"edition"`
		Tables  []entry `json:"tables"`
	}{Schema: 1, Edition: reference.Edition}
	for _, name := range reference.TableNames() {
		rows, _ := t.Rows(name)
		out.Tables = append(out.Tables, entry{name, len(rows), tableIs[name]})
	}
	return writeJSON(w, out, false)
}

// TableListCSV writes the list of tables as CSV.
func TableListCSV(w io.Writer, t *reference.Tables) error {
	rows := [][]string{{"table", "rows", "what it holds"}}
	for _, name := range reference.TableNames() {
		found, _ := t.Rows(name)
		rows = append(rows, []string{name, strconv.Itoa(len(found)), tableIs[name]})
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// Rows are the rows of one table picked for showing.
type Rows struct {
	name   string
	tables *reference.Tables
	rows   []reflect.Value
}

// RowsOf picks the rows of a table in which every one of the words stands
// somewhere. It reports false when there is no such table.
func RowsOf(t *reference.Tables, name string, words []string) (*Rows, bool) {
	all, ok := t.Rows(name)
	if !ok {
		return nil, false
	}
	r := &Rows{name: name, tables: t}
	for _, row := range all {
		v := reflect.ValueOf(row)
		if standsIn(v, words) {
			r.rows = append(r.rows, v)
		}
	}
	return r, true
}

// Len is how many rows were picked.
func (r *Rows) Len() int { return len(r.rows) }

func standsIn(row reflect.Value, words []string) bool {
	if len(words) == 0 {
		return true
	}
	var b strings.Builder
	for _, c := range cellsOf(row) {
		b.WriteString(strings.ToLower(c.text) + "\n")
	}
	for _, w := range words {
		if !strings.Contains(b.String(), strings.ToLower(w)) {
			return false
		}
	}
	return true
}

// cell is one filled-in key of a row.
type cell struct {
	key    string
	text   string // as shown
	figure bool
}

var (
	decimalType    = reflect.TypeFor[decimal.Decimal]()
	spanType       = reflect.TypeFor[reference.Span]()
	validityType   = reflect.TypeFor[reference.Validity]()
	provenanceType = reflect.TypeFor[reference.Provenance]()
)

// cellsOf are the keys of a row that say something, in the order of its type.
// A span is one cell, "low - likely - high".
func cellsOf(row reflect.Value) []cell {
	var out []cell
	t := row.Type()
	for i := range t.NumField() {
		f, v := t.Field(i), row.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		if leftOut(key, rest, v) {
			continue
		}
		if strings.Contains(rest, "inline") {
			switch v.Type() {
			case spanType:
				out = append(out, cell{"low - likely - high", spanText(v), true})
			case validityType:
				out = append(out, cell{key: "holds", text: holds(v.Interface().(reference.Validity))})
			default:
				out = append(out, cellsOf(v)...)
			}
			continue
		}
		if text := cellText(v); text != "" {
			out = append(out, cell{key, text, isFigure(v.Type())})
		}
	}
	return out
}

// leftOut reports that a field says nothing: it has no key, or is an empty one
// that need not be given.
func leftOut(key, options string, v reflect.Value) bool {
	return key == "-" || v.IsZero() && (strings.Contains(options, "omitempty") || strings.Contains(options, "inline"))
}

func isFigure(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Int, reflect.Float64:
		return true
	}
	return t == decimalType || t == spanType
}

// cellText is one value as it is shown.
func cellText(v reflect.Value) string {
	switch v.Type() {
	case decimalType:
		return v.Interface().(decimal.Decimal).String()
	case spanType:
		return spanText(v)
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return ""
		}
		return cellText(v.Elem())
	case reflect.String:
		return v.String()
	case reflect.Int:
		return strconv.FormatInt(v.Int(), 10)
	case reflect.Float64:
		return strconv.FormatFloat(v.Float(), 'f', -1, 64)
	case reflect.Bool:
		if v.Bool() {
			return "yes"
		}
		return ""
	case reflect.Slice:
		return sliceText(v)
	case reflect.Map:
		return mapText(v)
	case reflect.Struct:
		var said []string
		for _, c := range cellsOf(v) {
			said = append(said, c.key+" "+c.text)
		}
		return strings.Join(said, ", ")
	}
	return fmt.Sprint(v.Interface())
}

// sliceText joins words with commas and larger things with semicolons.
func sliceText(v reflect.Value) string {
	by := ", "
	if v.Type().Elem().Kind() == reflect.Struct {
		by = "; "
	}
	var said []string
	for i := range v.Len() {
		said = append(said, cellText(v.Index(i)))
	}
	return strings.Join(said, by)
}

func mapText(v reflect.Value) string {
	var said []string
	for _, k := range sortedKeys(v) {
		said = append(said, k.String()+" "+cellText(v.MapIndex(k)))
	}
	return strings.Join(said, ", ")
}

func sortedKeys(v reflect.Value) []reflect.Value {
	keys := v.MapKeys()
	slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
	return keys
}

// spanText is a span as it stands in a table: one figure when it is exact.
func spanText(v reflect.Value) string {
	s := v.Interface().(reference.Span)
	if s.IsExact() {
		return s.Likely.String()
	}
	return s.Low.String() + " - " + s.Likely.String() + " - " + s.High.String()
}

// holds says when and where a row is valid.
func holds(v reference.Validity) string {
	var said []string
	switch {
	case v.From != 0 && v.To != 0:
		said = append(said, fmt.Sprintf("%d to %d", v.From, v.To))
	case v.From != 0:
		said = append(said, fmt.Sprintf("from %d", v.From))
	case v.To != 0:
		said = append(said, fmt.Sprintf("to %d", v.To))
	}
	var where []string
	for _, p := range v.Places {
		where = append(where, placeNames[p])
	}
	if len(where) > 0 {
		said = append(said, and(where))
	}
	return strings.Join(said, ", ")
}

// Page sets the rows out, with their sources in full at the end.
func (r *Rows) Page() *Page {
	p := &Page{Title: upper(r.name), Under: counted(len(r.rows))}
	p.Lead = sentence(tableIs[r.name])
	cites := &citations{tables: r.tables}
	t := Table{}
	rows := make([]map[string]string, len(r.rows))
	for i, row := range r.rows {
		rows[i] = map[string]string{}
		for _, c := range cellsOf(row) {
			if c.key == "source" && hasProvenance(row.Type()) {
				c.text = cites.mark(c.text)
			}
			rows[i][c.key] = c.text
			if !slices.ContainsFunc(t.Columns, func(k Column) bool { return k.Name == c.key }) {
				t.Columns = append(t.Columns, Column{c.key, c.figure})
			}
		}
	}
	t.Columns = inOrder(t.Columns, keysOf(r.rowType()))
	for _, row := range rows {
		cells := make([]string, len(t.Columns))
		for j, c := range t.Columns {
			cells[j] = row[c.Name]
		}
		t.Rows = append(t.Rows, cells)
	}
	p.section("", t)
	p.section(headSources, cites.inFull())
	return p
}

// rowType is the type of the table's rows, nil when it has none.
func (r *Rows) rowType() reflect.Type {
	if len(r.rows) == 0 {
		return nil
	}
	return r.rows[0].Type()
}

func counted(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}

func hasProvenance(t reflect.Type) bool {
	for i := range t.NumField() {
		if t.Field(i).Type == provenanceType {
			return true
		}
	}
	return false
}

// keysOf are the keys a row may have, in the order they are shown.
func keysOf(t reflect.Type) []string {
	if t == nil {
		return nil
	}
	var out []string
	for i := range t.NumField() {
		f := t.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		switch {
		case key == "-":
		case !strings.Contains(rest, "inline"):
			out = append(out, key)
		case f.Type == spanType:
			out = append(out, "low - likely - high")
		case f.Type == validityType:
			out = append(out, "holds")
		default:
			out = append(out, keysOf(f.Type)...)
		}
	}
	return out
}

func inOrder(columns []Column, keys []string) []Column {
	slices.SortStableFunc(columns, func(a, b Column) int {
		return slices.Index(keys, a.Name) - slices.Index(keys, b.Name)
	})
	return columns
}

// mark numbers a source by its id without saying where in it.
func (c *citations) mark(id string) string {
	s, ok := c.tables.Source(id)
	if !ok {
		return id
	}
	return c.work(s, "")
}

// inFull lists the sources cited with their licences and notes.
func (c *citations) inFull() List {
	var out List
	for i, n := range c.cited {
		e := Entry{Label: fmt.Sprintf("[%d]", i+1), Text: work(n.source)}
		if n.source.Licence != "" {
			e.More = append(e.More, n.source.Licence)
		}
		if n.source.Note != "" {
			e.More = append(e.More, n.source.Note)
		}
		out = append(out, e)
	}
	return out
}

// CSV writes the rows with a column for every key of the table.
func (r *Rows) CSV(w io.Writer) error {
	keys := keysOf(r.rowType())
	out := csv.NewWriter(w)
	if err := out.Write(keys); err != nil {
		return err
	}
	for _, row := range r.rows {
		cells := make([]string, len(keys))
		for _, c := range cellsOf(row) {
			cells[slices.Index(keys, c.key)] = c.text
		}
		if err := out.Write(cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// JSON writes the rows as objects with the keys of the table's files, and the
// sources they name.
func (r *Rows) JSON(w io.Writer) error {
	out := struct {
		Schema  int         `json:"schema"`
		Edition string      `json:"edition"`
		Table   string      `json:"table"`
		Rows    []any       `json:"rows"`
		Sources []sourceDoc `json:"sources"`
	}{1, reference.Edition, r.name, []any{}, []sourceDoc{}}
	works := works{tables: r.tables}
	for _, row := range r.rows {
		out.Rows = append(out.Rows, jsonValue(row))
		if p, ok := provenance(row); ok {
			if s, known := r.tables.Source(p.Source); known {
				works.use(s)
			}
		}
	}
	for _, s := range works.used {
		out.Sources = append(out.Sources, sourceDocOf(s))
	}
	return writeJSON(w, out, false)
}

func provenance(row reflect.Value) (reference.Provenance, bool) {
	for i := range row.NumField() {
		if p, ok := row.Field(i).Interface().(reference.Provenance); ok {
			return p, true
		}
	}
	return reference.Provenance{}, false
}

// object is a JSON object that keeps the order of its keys.
type object []struct {
	key   string
	value any
}

// MarshalJSON writes the keys in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b strings.Builder
	b.WriteByte('{')
	for i, kv := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := json.Marshal(kv.key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(kv.value)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return []byte(b.String()), nil
}

// jsonValue is a value of a row as JSON has it: figures are numbers, and what
// is not given is left out.
func jsonValue(v reflect.Value) any {
	if v.Type() == decimalType {
		return json.Number(v.Interface().(decimal.Decimal).String())
	}
	switch v.Kind() {
	case reflect.Pointer:
		return jsonValue(v.Elem())
	case reflect.Slice:
		out := make([]any, v.Len())
		for i := range out {
			out[i] = jsonValue(v.Index(i))
		}
		return out
	case reflect.Map:
		var out object
		for _, k := range sortedKeys(v) {
			out = append(out, struct {
				key   string
				value any
			}{k.String(), jsonValue(v.MapIndex(k))})
		}
		return out
	case reflect.Struct:
		return jsonObject(v, nil)
	}
	return v.Interface()
}

func jsonObject(v reflect.Value, out object) object {
	t := v.Type()
	for i := range t.NumField() {
		f, x := t.Field(i), v.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		switch {
		case leftOut(key, rest, x):
		case strings.Contains(rest, "inline"):
			out = jsonObject(x, out)
		default:
			out = append(out, struct {
				key   string
				value any
			}{key, jsonValue(x)})
		}
	}
	return out
}
