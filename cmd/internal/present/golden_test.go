package present

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
	"github.com/stretchr/testify/require"
)

func TestMain(m *testing.M) {
	twwidth.SetEastAsian(false) // as the command line does
	os.Exit(m.Run())
}

// golden compares with a file of testdata; UPDATE=1 writes it anew.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err, "UPDATE=1 go test writes it")
	require.Equal(t, string(want), string(got))
}

// renderings are the sample in every format, by the name of its file.
func renderings(t *testing.T) map[string][]byte {
	t.Helper()
	s, a := sample(t)
	out := map[string][]byte{}
	put := func(name string, write func(*bytes.Buffer) error) {
		var b bytes.Buffer
		require.NoError(t, write(&b), name)
		out[name] = b.Bytes()
	}
	put("check.txt", func(b *bytes.Buffer) error { return Check(s, a, Wish{}).Text(b, Layout{Width: 100}) })
	put("check-narrow.txt", func(b *bytes.Buffer) error { return Check(s, a, Wish{AllRatios: true}).Text(b, Layout{Width: 48}) })
	put("check.md", func(b *bytes.Buffer) error { return Check(s, a, Wish{}).Markdown(b) })
	put("check.json", func(b *bytes.Buffer) error { return CheckJSON(b, s, a, false) })
	put("check.csv", func(b *bytes.Buffer) error { return NewCSV(b).Checked(s) })
	put("weigh.txt", func(b *bytes.Buffer) error { return Weigh(s, a).Text(b, Layout{Width: 100}) })
	put("weigh.md", func(b *bytes.Buffer) error { return Weigh(s, a).Markdown(b) })
	put("weigh.json", func(b *bytes.Buffer) error { return WeighJSON(b, s, a, false) })
	put("weigh.csv", func(b *bytes.Buffer) error { return NewCSV(b).Weighed(s) })
	put("answers.txt", func(b *bytes.Buffer) error { return Answers(s, a).Text(b, Layout{Width: 100}) })
	put("answers-narrow.txt", func(b *bytes.Buffer) error { return Answers(s, a).Text(b, Layout{Width: 48}) })
	put("answers.md", func(b *bytes.Buffer) error { return Answers(s, a).Markdown(b) })
	put("answers.html", func(b *bytes.Buffer) error { return HTML(b, []*Page{Answers(s, a)}) })
	put("baking.txt", func(b *bytes.Buffer) error { return Baking(s, a).Text(b, Layout{Width: 100}) })
	put("baking.html", func(b *bytes.Buffer) error { return HTML(b, []*Page{Baking(s, a), Answers(s, a)}) })
	put("baking.json", func(b *bytes.Buffer) error { return BakingJSON(b, s, a, false) })
	return out
}

func TestGoldens(t *testing.T) {
	for name, got := range renderings(t) {
		t.Run(name, func(t *testing.T) { golden(t, name, got) })
	}
}
