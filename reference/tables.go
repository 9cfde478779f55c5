package reference

import (
	"bytes"
	"embed"
	"encoding/gob"
	"fmt"
	"io/fs"
	"reflect"
	"slices"
	"sync"

	"gopkg.in/yaml.v3"

	"assize/reference/fault"
	"assize/reference/sheet"
)

// Edition is the edition of the tables, shown by --version and in every
// machine-readable report.
const Edition = "2026-11"

// Tables is every table, with the indices to find rows quickly. Treat it as
// read-only: it is shared.
type Tables struct {
	Sources     []Source
	Ingredients []Ingredient
	Names       []Name
	Fruits      []Fruit
	Modifiers   []Modifier
	Measures    []Measure
	Sizes       []Size
	Fills       []Fill
	Methods     []Method
	Textures    []Texture
	Classes     []Class
	Ranges      []Range
	Ratios      []Ratio
	Published   []Published
	Links       []Link
	Ovens       []Oven
	Vessels     []Vessel
	Cautions    []Caution
	Doneness    []Doneness
	Steps       []Step
	Signs       []Sign
	Causes      []Cause
	Allergens   []Allergen
	Answers     []Answer

	index index
}

// table is one file of rows and the field of Tables it fills.
type table struct {
	name  string
	field func(*Tables) any // pointer to the slice
	key   func(row any) string
}

// tables lists every file in the order it is shown and checked.
var tables = []table{
	{"sources", func(t *Tables) any { return &t.Sources }, func(r any) string { return r.(Source).ID }},
	{"ingredients", func(t *Tables) any { return &t.Ingredients }, func(r any) string { return r.(Ingredient).ID }},
	{"names", func(t *Tables) any { return &t.Names }, func(r any) string { return r.(Name).Names[0] }},
	{"fruits", func(t *Tables) any { return &t.Fruits }, func(r any) string { return r.(Fruit).ID }},
	{"modifiers", func(t *Tables) any { return &t.Modifiers }, nil},
	{"measures", func(t *Tables) any { return &t.Measures }, func(r any) string { return r.(Measure).ID }},
	{"sizes", func(t *Tables) any { return &t.Sizes }, func(r any) string { return r.(Size).ID }},
	{"fills", func(t *Tables) any { return &t.Fills }, func(r any) string { return r.(Fill).ID }},
	{"methods", func(t *Tables) any { return &t.Methods }, func(r any) string { return r.(Method).ID }},
	{"textures", func(t *Tables) any { return &t.Textures }, func(r any) string { return r.(Texture).Kind + "/" + r.(Texture).ID }},
	{"classes", func(t *Tables) any { return &t.Classes }, func(r any) string { return r.(Class).ID }},
	{"ranges", func(t *Tables) any { return &t.Ranges }, nil},
	{"ratios", func(t *Tables) any { return &t.Ratios }, func(r any) string { return r.(Ratio).ID }},
	{"published", func(t *Tables) any { return &t.Published }, func(r any) string { return r.(Published).ID }},
	{"links", func(t *Tables) any { return &t.Links }, func(r any) string { return r.(Link).Kind + "/" + r.(Link).ID }},
	{"ovens", func(t *Tables) any { return &t.Ovens }, func(r any) string { return r.(Oven).ID }},
	{"vessels", func(t *Tables) any { return &t.Vessels }, func(r any) string { return r.(Vessel).ID }},
	{"cautions", func(t *Tables) any { return &t.Cautions }, func(r any) string { return r.(Caution).ID }},
	{"doneness", func(t *Tables) any { return &t.Doneness }, func(r any) string { return r.(Doneness).ID }},
	{"steps", func(t *Tables) any { return &t.Steps }, func(r any) string { return r.(Step).ID }},
	{"signs", func(t *Tables) any { return &t.Signs }, func(r any) string { return r.(Sign).ID }},
	{"causes", func(t *Tables) any { return &t.Causes }, func(r any) string { return r.(Cause).ID }},
	{"allergens", func(t *Tables) any { return &t.Allergens }, func(r any) string { return r.(Allergen).ID }},
	{"answers", func(t *Tables) any { return &t.Answers }, func(r any) string { return r.(Answer).ID }},
}

// Names of the tables, in the order they are shown.
func TableNames() []string {
	var out []string
	for _, t := range tables {
		out = append(out, t.name)
	}
	return out
}

// Rows returns the rows of a table by its name, for showing; false when there
// is no such table.
func (t *Tables) Rows(name string) ([]any, bool) {
	for _, tab := range tables {
		if tab.name != name {
			continue
		}
		v := reflect.ValueOf(tab.field(t)).Elem()
		out := make([]any, v.Len())
		for i := range out {
			out[i] = v.Index(i).Interface()
		}
		return out, true
	}
	return nil, false
}

//go:embed data
var data embed.FS

const snapshotFile = "data/tables.gob"

// Load returns the tables that come with the program. They are decoded once.
var Load = sync.OnceValues(func() (*Tables, error) {
	raw, err := data.ReadFile(snapshotFile)
	if err != nil {
		return nil, fmt.Errorf("reading the tables: %w", err)
	}
	return Decode(raw)
})

// Decode reads tables from their compact form.
func Decode(snapshot []byte) (*Tables, error) {
	t := &Tables{}
	if err := gob.NewDecoder(bytes.NewReader(snapshot)).Decode(t); err != nil {
		return nil, fmt.Errorf("reading the tables: %w", err)
	}
	t.build()
	return t, nil
}

// Snapshot is the compact form of the tables that Load reads.
func (t *Tables) Snapshot() ([]byte, error) {
	var b bytes.Buffer
	if err := gob.NewEncoder(&b).Encode(t); err != nil {
		return nil, fmt.Errorf("writing the tables: %w", err)
	}
	return b.Bytes(), nil
}

// Files returns the YAML files that come with the program.
func Files() fs.FS {
	sub, err := fs.Sub(data, "data")
	if err != nil {
		panic(err) // the folder is embedded above
	}
	return sub
}

// origin is where a row was read, for faults found when rows are held against
// each other.
type origin struct {
	page         *fault.Page
	line, column int
}

// Read reads and checks every table of a folder of YAML files. Files may be
// missing only when base is given: then the folder is an overlay, whose rows
// replace those of base with the same id and are otherwise added to them. All
// faults of all files are returned together as a fault.List.
func Read(files fs.FS, base *Tables) (*Tables, error) {
	t := &Tables{}
	origins := map[string][]origin{}
	var pages []*fault.Page
	for _, tab := range tables {
		file := tab.name + ".yaml"
		var old reflect.Value
		if base != nil {
			old = reflect.ValueOf(tab.field(base)).Elem()
			origins[tab.name] = make([]origin, old.Len())
			dst := reflect.ValueOf(tab.field(t)).Elem()
			dst.Set(reflect.AppendSlice(reflect.MakeSlice(dst.Type(), 0, old.Len()), old))
		}
		raw, err := fs.ReadFile(files, file)
		if err != nil {
			if base != nil {
				continue
			}
			return nil, fmt.Errorf("reading the tables: %w", err)
		}
		page := fault.NewPage(file, raw)
		pages = append(pages, page)
		readTable(t, tab, page, origins)
	}
	t.build()
	var faults fault.List
	if base != nil {
		unknown(files, &faults)
	}
	for _, p := range pages {
		faults = append(faults, p.Faults()...)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	t.check(origins)
	for _, p := range pages {
		faults = append(faults, p.Faults()...)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return t, nil
}

// unknown reports YAML files of an overlay that are no table's.
func unknown(files fs.FS, faults *fault.List) {
	found, err := fs.Glob(files, "*.yaml")
	if err != nil {
		return
	}
	for _, f := range found {
		if !slices.Contains(TableNames(), f[:len(f)-len(".yaml")]) {
			*faults = append(*faults, fault.Fault{File: f, What: "no table has this name", Hint: "`assize tables` lists them"})
		}
	}
}

func readTable(t *Tables, tab table, page *fault.Page, origins map[string][]origin) {
	root := sheet.Parse(page)
	if root == nil {
		return
	}
	r := &sheet.Reader{Page: page}
	dst := reflect.ValueOf(tab.field(t)).Elem()
	seen := map[string]bool{}
	r.Fields(root, []string{"rows"}, func(_ string, _, list *yaml.Node) {
		if list.Kind != yaml.SequenceNode {
			r.Add(list, "", "the rows must be a list")
			return
		}
		for _, n := range list.Content {
			row := reflect.New(dst.Type().Elem()).Elem()
			before := len(page.Faults())
			r.Read(n, row)
			if len(page.Faults()) > before {
				continue
			}
			at := origin{page, n.Line, n.Column}
			if tab.key != nil {
				key := tab.key(row.Interface())
				if seen[key] {
					r.Add(n, "", "%q stands twice in the table %s", key, tab.name)
					continue
				}
				seen[key] = true
				if i := find(dst, tab, key); i >= 0 {
					dst.Index(i).Set(row)
					origins[tab.name][i] = at
					continue
				}
			}
			dst.Set(reflect.Append(dst, row))
			origins[tab.name] = append(origins[tab.name], at)
		}
	})
}

// find returns the place of the row with that key among those of the base
// tables, -1 when it is new.
func find(rows reflect.Value, tab table, key string) int {
	for i := range rows.Len() {
		if tab.key(rows.Index(i).Interface()) == key {
			return i
		}
	}
	return -1
}
