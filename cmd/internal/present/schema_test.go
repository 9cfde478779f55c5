package present

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"assize/ratios/batch"
)

// schemaOf compiles the schema of a report; strict refuses members the schema
// does not name, which a reader must not, but our own reports are held to.
func schemaOf(t *testing.T, strict bool) *jsonschema.Schema {
	t.Helper()
	return schemaNamed(t, "report", strict)
}

// schemaNamed compiles one of the schemas, with those it names.
func schemaNamed(t *testing.T, name string, strict bool) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	files, err := fs.Glob(Schemas, "*.schema.json")
	require.NoError(t, err)
	for _, file := range files {
		text, err := fs.ReadFile(Schemas, file)
		require.NoError(t, err)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err, file)
		if strict {
			closeObjects(doc)
		}
		require.NoError(t, c.AddResource(file, doc))
	}
	s, err := c.Compile(name + ".schema.json")
	require.NoError(t, err)
	return s
}

func closeObjects(v any) {
	switch v := v.(type) {
	case map[string]any:
		if _, has := v["properties"]; has {
			v["additionalProperties"] = false
		}
		for _, x := range v {
			closeObjects(x)
		}
	case []any:
		for _, x := range v {
			closeObjects(x)
		}
	}
}

func TestReportsKeepToTheSchema(t *testing.T) {
	strict := schemaOf(t, true)
	for name, got := range renderings(t) {
		if !strings.HasSuffix(name, ".json") {
			continue
		}
		t.Run(name, func(t *testing.T) {
			doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(got))
			require.NoError(t, err)
			require.NoError(t, strict.Validate(doc))
		})
	}
}

// TestSchemaRefuses keeps the schema from being one that anything passes.
func TestSchemaRefuses(t *testing.T) {
	schema := schemaOf(t, false)
	spoil := map[string]func(d map[string]any){
		"no parts":              func(d map[string]any) { delete(d, "parts") },
		"another schema":        func(d map[string]any) { d["schema"] = json.Number("2") },
		"a grade of its own":    func(d map[string]any) { first(d, "findings")["grade"] = "loud" },
		"grams as text":         func(d map[string]any) { first(d, "parts")["total_g"] = "681 g" },
		"a share over one":      func(d map[string]any) { first(d, "findings")["share"] = json.Number("1.2") },
		"a verdict of its own":  func(d map[string]any) { ratioIn(d)["verdict"] = "odd" },
		"a texture left out":    func(d map[string]any) { delete(sharesIn(d), "greasy") },
		"a place of no measure": func(d map[string]any) { d["receipt"].(map[string]any)["place"] = "atlantis" },
	}
	for name, change := range spoil {
		t.Run(name, func(t *testing.T) {
			doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(renderings(t)["check.json"]))
			require.NoError(t, err)
			require.NoError(t, schema.Validate(doc))
			change(doc.(map[string]any))
			require.Error(t, schema.Validate(doc))
		})
	}
}

func first(d map[string]any, list string) map[string]any {
	return d[list].([]any)[0].(map[string]any)
}

func ratioIn(d map[string]any) map[string]any {
	return first(d, "parts")["ratios"].(map[string]any)["fat-to-flour"].(map[string]any)
}

func sharesIn(d map[string]any) map[string]any {
	return first(d, "parts")["texture"].(map[string]any)["shares"].(map[string]any)
}

// TestAdditionsAreAllowed holds readers to nothing but what is named.
func TestAdditionsAreAllowed(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(renderings(t)["check.json"]))
	require.NoError(t, err)
	doc.(map[string]any)["weather"] = "fair"
	require.NoError(t, schemaOf(t, false).Validate(doc))
	require.Error(t, schemaOf(t, true).Validate(doc))
}

// What is written as JSON of the demo bakes and of a fit keeps to its schema,
// which a page spoilt in any of these ways does not.
func TestPagesKeepToTheirSchemas(t *testing.T) {
	fit, a := fitted(t, &batch.Wish{Trial: true})
	var fits bytes.Buffer
	require.NoError(t, FitJSON(&fits, fit, a))
	for name, c := range map[string]struct {
		page  []byte
		spoil map[string]func(d map[string]any)
	}{
		"explain": {kept(t, "explain.json"), map[string]func(d map[string]any){
			"nothing tasted":            func(d map[string]any) { d["results"] = []any{} },
			"a share over one":          func(d map[string]any) { first(d, "results")["written"] = json.Number("1.2") },
			"an expectation of its own": func(d map[string]any) { first(d, "results")["expected"] = "perhaps" },
			"a cause without figures":   func(d map[string]any) { delete(first(first(d, "results"), "causes"), "from") },
			"a time of its own":         func(d map[string]any) { first(d["record"].(map[string]any), "tasted")["when"] = "at dawn" },
			"no shares":                 func(d map[string]any) { delete(first(d, "made"), "shares") },
		}},
		"compare": {kept(t, "compare.json"), map[string]func(d map[string]any){
			"one side only":           func(d map[string]any) { delete(d, "b") },
			"a difference of nothing": func(d map[string]any) { delete(first(d, "differ"), "what") },
			"a part of a thing":       func(d map[string]any) { d["things_that_may_tell"] = json.Number("0.5") },
			"a share over one": func(d map[string]any) {
				first(d["a"].(map[string]any), "predicted")["shares"].(map[string]any)["sound"] = json.Number("1.2")
			},
		}},
		"daybook": {kept(t, "daybook.json"), map[string]func(d map[string]any){
			"a bake without number":   func(d map[string]any) { delete(first(d, "bakes"), "bake") },
			"a day of its own":        func(d map[string]any) { first(d, "bakes")["baked"] = "Michaelmas" },
			"an adjustment to nought": func(d map[string]any) { d["adjustment"].(map[string]any)["power"] = json.Number("0") },
			"no taster":               func(d map[string]any) { delete(first(first(d, "bakes"), "tasted"), "by") },
		}},
		"fit": {fits.Bytes(), map[string]func(d map[string]any){
			"no dishes":         func(d map[string]any) { delete(d, "dishes") },
			"a fit of its own":  func(d map[string]any) { first(d, "dishes")["verdict"] = "snug" },
			"a lay of its own":  func(d map[string]any) { d["lay"] = "askew" },
			"grams as text":     func(d map[string]any) { first(d["batch"].(map[string]any), "lines")["grams"] = "90 g" },
			"a batch of nought": func(d map[string]any) { d["batch"].(map[string]any)["by"] = json.Number("0") },
		}},
	} {
		t.Run(name, func(t *testing.T) {
			open := schemaNamed(t, name, false)
			read := func() map[string]any {
				doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(c.page))
				require.NoError(t, err)
				return doc.(map[string]any)
			}
			require.NoError(t, schemaNamed(t, name, true).Validate(read()))
			for how, change := range c.spoil {
				d := read()
				change(d)
				require.Error(t, open.Validate(d), how)
			}
			d := read()
			d["weather"] = "fair"
			require.NoError(t, open.Validate(d))
		})
	}
}

// kept is a page of testdata as the goldens hold it.
func kept(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name))
	require.NoError(t, err)
	return text
}
