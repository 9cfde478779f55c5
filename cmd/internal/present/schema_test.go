package present

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
)

// schemaOf compiles the schema of a report; strict refuses members the schema
// does not name, which a reader must not, but our own reports are held to.
func schemaOf(t *testing.T, strict bool) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(Schema))
	require.NoError(t, err)
	if strict {
		closeObjects(doc)
	}
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("report.schema.json", doc))
	s, err := c.Compile("report.schema.json")
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
