package cli

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/spf13/cobra"
	"github.com/stretchr/testify/require"

	"assize/cmd/internal/present"
	"assize/formula/file"
	"assize/reference"
)

// at runs the command line in a session of its own.
func at(s Session, args ...string) (code Exit, out, err string) {
	var o, e bytes.Buffer
	if s.Out == nil {
		s.Out = &o
	}
	s.Err = &e
	if s.In == nil {
		s.In = strings.NewReader("")
	}
	if s.Env == nil {
		s.Env = func(string) string { return "" }
	}
	code = Main(args, s)
	return code, o.String(), e.String()
}

type breaks struct{ with any }

func (b breaks) Read([]byte) (int, error) {
	if err, ok := b.with.(error); ok {
		return 0, err
	}
	panic(b.with)
}

func (b breaks) Write([]byte) (int, error) {
	if err, ok := b.with.(error); ok {
		return 0, err
	}
	panic(b.with)
}

const custard = "../../../testdata/receipts/custard.yaml"

func TestOurFaultIsOneLine(t *testing.T) {
	code, _, err := at(Session{In: breaks{"the oven fell over"}}, "check", "-")
	require.Equal(t, Bug, code)
	require.Equal(t, 1, strings.Count(err, "\n"))
	require.Contains(t, err, "the oven fell over")
}

func TestWhatCannotBeReadOrWritten(t *testing.T) {
	code, _, err := at(Session{In: breaks{errors.New("no paper")}}, "check", "-")
	require.Equal(t, Invalid, code)
	require.Contains(t, err, "standard input: error: it cannot be read: no paper")
	for _, args := range [][]string{
		{"check", custard}, {"check", "--format", "json", custard}, {"check", "--format", "csv", custard}, {"check", "--format", "markdown", custard},
		{"weigh", custard}, {"tables"}, {"tables", "fills"}, {"tables", "fills", "--format", "json"}, {"tables", "--format", "csv"}, {"help", "readings"},
	} {
		code, _, err := at(Session{Out: breaks{errors.New("no ink")}}, args...)
		require.Equal(t, Invalid, code, args)
		require.Contains(t, err, "cannot be written: no ink", args)
	}
}

// TestBold: bold is for terminals, and only where it is wanted.
func TestBold(t *testing.T) {
	env := func(pairs ...string) func(string) string {
		return func(name string) string {
			for i := 0; i < len(pairs); i += 2 {
				if pairs[i] == name {
					return pairs[i+1]
				}
			}
			return ""
		}
	}
	bold := func(s Session, args ...string) bool {
		code, out, err := at(s, append([]string{"check", "--brief", "--readings", "50", custard}, args...)...)
		require.Equal(t, Done, code, err)
		return strings.Contains(out, "\x1b")
	}
	require.True(t, bold(Session{Terminal: true}))
	require.False(t, bold(Session{}), "a pipe")
	require.False(t, bold(Session{Terminal: true}, "--plain"))
	require.False(t, bold(Session{Terminal: true, Env: env("NO_COLOR", "1")}))
	require.False(t, bold(Session{Terminal: true, Env: env("TERM", "dumb")}))
	require.False(t, bold(Session{Terminal: true}, "--format", "markdown"))
	require.False(t, bold(Session{Terminal: true}, "--format", "json"))
}

func TestWidthFollowsTheTerminal(t *testing.T) {
	longest := func(s Session) int {
		// Plain, so that the marks of bold type are not counted.
		_, out, _ := at(s, "check", "--plain", "--brief", "--readings", "50", custard)
		n := 0
		for line := range strings.Lines(out) {
			if !strings.Contains(line, "https://") { // which cannot be broken
				n = max(n, len([]rune(line))-1)
			}
		}
		return n
	}
	columns := func(string) string { return "60" }
	require.LessOrEqual(t, longest(Session{}), 100)
	require.Greater(t, longest(Session{}), 80)
	require.LessOrEqual(t, longest(Session{Terminal: true, Columns: 72}), 72)
	require.LessOrEqual(t, longest(Session{Terminal: true, Columns: 72, Env: columns}), 60)
}

func TestSameAnswerEveryTime(t *testing.T) {
	_, first, _ := at(Session{}, "check", "--format", "json", custard)
	_, again, _ := at(Session{}, "check", "--format", "json", custard)
	require.Equal(t, first, again)
	_, other, _ := at(Session{}, "check", "--format", "json", "--seed", "9", custard)
	require.NotEqual(t, first, other)
}

// pages are every page of help.
func pages(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	root := newRoot(&run{Session: Session{Out: io.Discard, Err: io.Discard}})
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		out[c.CommandPath()] = helpOf(c)
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(root)
	for _, topic := range topics() {
		out["help "+topic.name] = topic.text
	}
	return out
}

var example = regexp.MustCompile(`(?m)^\s*\$ assize (.*)$`)

// TestHelpIsTrue runs every example of every page of help in the demo book.
func TestHelpIsTrue(t *testing.T) {
	all := pages(t)
	t.Chdir("../../../testdata/demo/millrace")
	ran := 0
	for name, text := range all {
		for _, m := range example.FindAllStringSubmatch(text, -1) {
			code, out, err := at(Session{}, strings.Fields(m[1])...)
			// A finding that reaches --stop-at is no mistake of the example.
			require.Contains(t, []Exit{Done, Stopped}, code, "%s: %s: %s", name, m[1], err)
			require.NotEmpty(t, out, m[1])
			ran++
		}
		for line := range strings.Lines(text) {
			if name != "help schema" {
				require.LessOrEqual(t, len(strings.TrimRight(line, "\n")), 100, "%s: %s", name, line)
			}
		}
	}
	require.Greater(t, ran, 10)
}

// TestFormatExampleIsRead reads the receipt that the help shows.
func TestFormatExampleIsRead(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	var b strings.Builder
	for line := range strings.Lines(formatExample) {
		b.WriteString(strings.TrimPrefix(line, "  "))
	}
	f, faults := file.Read("example", []byte(b.String()), tables)
	require.Empty(t, faults)
	require.Len(t, f.Parts, 2)
	code, out, said := at(Session{In: strings.NewReader(b.String())}, "check", "-")
	require.Equal(t, Done, code, said)
	require.Contains(t, out, "Orange tart")
}

// compiled compiles one of the published schemas.
func compiled(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	files, err := fs.Glob(present.Schemas, "*.schema.json")
	require.NoError(t, err)
	for _, file := range files {
		text, err := fs.ReadFile(present.Schemas, file)
		require.NoError(t, err)
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		require.NoError(t, err)
		require.NoError(t, c.AddResource(file, doc))
	}
	schema, err := c.Compile(name + ".schema.json")
	require.NoError(t, err)
	return schema
}

// What the commands write as JSON of every page of the demo book keeps to the
// published form: each receipt fitted and explained, with and without a dish, a
// batch and a record.
func TestDemoPagesKeepToTheirSchemas(t *testing.T) {
	const demo = "../../../testdata/demo/millrace/"
	receipts, err := filepath.Glob(demo + "*.yaml")
	require.NoError(t, err)
	holds := func(name string, args ...string) {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			code, out, said := at(Session{}, append([]string{name, "--format", "json"}, args...)...)
			require.Equal(t, Done, code, said)
			page, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
			require.NoError(t, err)
			require.NoError(t, compiled(t, name).Validate(page))
		})
	}
	fitted := 0
	for _, f := range receipts {
		if base := filepath.Base(f); base == "book.yaml" || base == "kitchen.yaml" {
			continue
		}
		holds("fit", f)
		fitted++
	}
	require.Greater(t, fitted, 6)
	first, second := demo+"bench/rich-lemon-pudding-first.yaml", demo+"bench/rich-lemon-pudding-second.yaml"
	holds("fit", "--eggs", "3", demo+"rich-lemon-pudding.yaml")
	holds("explain", "--readings", "200", first)
	holds("explain", "--readings", "200", "--daybook", demo+"bench/day-book.yaml", second)
	holds("explain", "--readings", "200", "--tasted", "weeping, too sweet", demo+"rich-lemon-pudding.yaml")
	holds("explain", "--readings", "200", "--tasted", "tough", demo+"raised-pie-paste.yaml")
	holds("compare", first, second)
	holds("compare", first, demo+"rich-lemon-pudding.yaml")
	holds("daybook", demo+"bench/day-book.yaml")
}

// TestDemoReportsKeepToTheSchema judges every receipt of the demo book and of
// testdata/receipts, and holds each report to the published form.
func TestDemoReportsKeepToTheSchema(t *testing.T) {
	schema := compiled(t, "report")
	checked := 0
	for _, folder := range []string{"../../../testdata/demo/*/*.yaml", "../../../testdata/receipts/*.yaml"} {
		files, err := filepath.Glob(folder)
		require.NoError(t, err)
		for _, f := range files {
			if base := filepath.Base(f); base == "book.yaml" || base == "kitchen.yaml" || base == "faulty.yaml" {
				continue
			}
			t.Run(filepath.Base(f), func(t *testing.T) {
				code, out, said := at(Session{}, "check", "--format", "json", "--readings", "200", f)
				require.Equal(t, Done, code, said)
				report, err := jsonschema.UnmarshalJSON(strings.NewReader(out))
				require.NoError(t, err)
				require.NoError(t, schema.Validate(report))
			})
			checked++
		}
	}
	require.Greater(t, checked, 8)
}

func TestFileNamesAreThePersons(t *testing.T) {
	code, _, err := at(Session{}, "check", "../../../testdata/receipts/faulty.yaml")
	require.Equal(t, Invalid, code)
	require.Contains(t, err, filepath.FromSlash("../../../testdata/receipts/faulty.yaml:8:"))
	here, e := os.Getwd()
	require.NoError(t, e)
	require.NotContains(t, err, here)
}
