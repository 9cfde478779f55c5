package present

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/reference"
)

// TestSameItemsInAllFormats holds the renderers to one model: every item on
// the scales stands in all of them with the same figure.
func TestSameItemsInAllFormats(t *testing.T) {
	s, _ := sample(t)
	out := renderings(t)
	var doc document
	require.NoError(t, json.Unmarshal(out["check.json"], &doc))
	records := recordsOf(t, out["check.csv"], "item")
	n := 0
	for i, p := range s.Report.Parts {
		for j, l := range p.Lines {
			for k, it := range l.Items {
				inJSON, inCSV := doc.Parts[i].Lines[j].Items[k], records[n]
				n++
				require.Equal(t, it.Ingredient.ID, inJSON.Ingredient)
				require.Equal(t, it.Ingredient.ID, inCSV["name"])
				shown := states[it.State]
				if it.State == formula.Stated {
					shown = figure(it.Grams.Likely)
					require.Equal(t, inJSON.Grams.Likely.String(), inCSV["likely"])
					require.Equal(t, inJSON.Grams.High.String(), inCSV["high"])
				}
				for _, name := range []string{"weigh.txt", "weigh.md"} {
					require.True(t, hasRow(string(out[name]), it.Ingredient.Name, shown), "%s: %s %s", name, it.Ingredient.Name, shown)
				}
				for _, name := range []string{"check.txt", "check.md"} {
					require.Contains(t, string(out[name]), itemInShort(&it, "g"), name)
				}
			}
		}
	}
	require.Len(t, records, n)
}

// hasRow reports whether some line holds all the words.
func hasRow(text string, words ...string) bool {
	for line := range strings.Lines(text) {
		all := true
		for _, w := range words {
			all = all && strings.Contains(line, w)
		}
		if all {
			return true
		}
	}
	return false
}

// TestSameRatiosInAllFormats is the same for the ratios and what they are held
// against.
func TestSameRatiosInAllFormats(t *testing.T) {
	s, _ := sample(t)
	out := renderings(t)
	var doc document
	require.NoError(t, json.Unmarshal(out["check.json"], &doc))
	records := recordsOf(t, out["check.csv"], "ratio")
	n := 0
	for i, p := range s.Report.Parts {
		require.Len(t, doc.Parts[i].Ratios, len(p.Ratios))
		for _, r := range p.Ratios {
			require.Equal(t, r.Ratio.Row.ID, records[n]["name"])
			require.Equal(t, r.Verdict, records[n]["verdict"])
			inJSON := doc.Parts[i].Ratios[r.Ratio.Row.ID]
			require.Equal(t, r.Verdict, inJSON.Verdict)
			require.Equal(t, inJSON.Likely.String(), records[n]["likely"])
			require.Len(t, inJSON.Ranges, len(r.Ranges))
			for _, name := range []string{"check.txt", "check.md"} {
				require.Equal(t, len(r.Ranges) > 0, hasRow(string(out[name]), r.Ratio.Row.Name), "%s: %s", name, r.Ratio.Row.Name)
			}
			n++
		}
	}
	require.Len(t, records, n)
}

func recordsOf(t *testing.T, text []byte, kind string) []map[string]string {
	t.Helper()
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	require.NoError(t, err)
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, head := range rows[0] {
			m[head] = row[i]
		}
		if m["record"] == kind {
			out = append(out, m)
		}
	}
	return out
}

func TestSharesSumToOne(t *testing.T) {
	var doc document
	require.NoError(t, json.Unmarshal(renderings(t)["check.json"], &doc))
	for _, p := range doc.Parts {
		sum := 0.0
		for _, v := range p.Texture.Shares {
			f, err := v.Float64()
			require.NoError(t, err)
			sum += f
		}
		require.InDelta(t, 1, sum, .001*float64(len(p.Texture.Shares)))
	}
}

func TestOnlyProportionsKnown(t *testing.T) {
	s, a := sample(t)
	s.Report.Weighed.Parts[0].Items[0].Amount.Parts = true
	var b bytes.Buffer
	require.NoError(t, CheckJSON(&b, s, a, true))
	require.Equal(t, 1, strings.Count(b.String(), "\n"), "one of several stands on one line")
	var doc document
	require.NoError(t, json.Unmarshal(b.Bytes(), &doc))
	require.Nil(t, doc.Parts[0].TotalG)
	require.Nil(t, doc.Parts[0].Lines[0].Items[0].Grams)
	require.NotNil(t, doc.Parts[0].Lines[0].Items[0].Percent)
	require.NotNil(t, doc.Parts[1].TotalG)
	b.Reset()
	require.NoError(t, Weigh(s, a).Text(&b, Layout{Width: 100}))
	require.Contains(t, b.String(), "parts")
}

// TestTables shows every table of the program in every format.
func TestTables(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	var list bytes.Buffer
	require.NoError(t, TableListCSV(&list, tables))
	listed, err := csv.NewReader(&list).ReadAll()
	require.NoError(t, err)
	for i, name := range reference.TableNames() {
		t.Run(name, func(t *testing.T) {
			require.NotEmpty(t, tableIs[name], "say what the table holds")
			all, _ := tables.Rows(name)
			require.Equal(t, []string{name, strconv.Itoa(len(all)), tableIs[name]}, listed[i+1])
			rows, ok := RowsOf(tables, name, nil)
			require.True(t, ok)
			require.Equal(t, len(all), rows.Len())

			var asJSON, asCSV, asMarkdown, asText bytes.Buffer
			require.NoError(t, rows.JSON(&asJSON))
			require.NoError(t, rows.CSV(&asCSV))
			require.NoError(t, rows.Page().Markdown(&asMarkdown))
			require.NoError(t, rows.Page().Text(&asText, Layout{Width: 100}))
			var doc struct {
				Rows    []map[string]any
				Sources []sourceDoc
			}
			require.NoError(t, json.Unmarshal(asJSON.Bytes(), &doc))
			require.Len(t, doc.Rows, len(all))
			records, err := csv.NewReader(&asCSV).ReadAll()
			require.NoError(t, err)
			require.Len(t, records, len(all)+1)
			inMarkdown := 0
			for line := range strings.Lines(asMarkdown.String()) {
				if strings.HasPrefix(line, "|") {
					inMarkdown++
				}
			}
			require.Equal(t, len(all)+2, inMarkdown, "rows, the headings and the rule under them")
			key := records[0][0]
			require.GreaterOrEqual(t, strings.Count(asText.String(), key), 1)
			for _, r := range doc.Rows {
				if src, has := r["source"]; has {
					require.True(t, hasSource(doc.Sources, src.(string)), "%s is shown in full", src)
				}
			}
		})
	}
}

func hasSource(list []sourceDoc, id string) bool {
	for _, s := range list {
		if s.ID == id {
			return true
		}
	}
	return false
}

func TestRowsPicked(t *testing.T) {
	tables := fewTables(t)
	rows, ok := RowsOf(tables, "measures", []string{"GILL", "brown"})
	require.True(t, ok)
	require.Equal(t, 1, rows.Len())
	rows, ok = RowsOf(tables, "measures", []string{"gill", "pint"})
	require.True(t, ok)
	require.Zero(t, rows.Len())
	_, ok = RowsOf(tables, "spoons", nil)
	require.False(t, ok)
}

func TestSpansInTables(t *testing.T) {
	rows, _ := RowsOf(fewTables(t), "measures", nil)
	var b bytes.Buffer
	require.NoError(t, rows.Page().Text(&b, Layout{Width: 100}))
	require.Contains(t, b.String(), "140 - 142 - 142")
	require.Contains(t, b.String(), "B. Brown, The Larder (2nd, 1840)")
	b.Reset()
	require.NoError(t, rows.JSON(&b))
	require.Contains(t, b.String(), `"low": 140`)
}
