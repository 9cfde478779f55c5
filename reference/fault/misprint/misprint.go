// Package misprint holds pages that are wrong, in tests, against what must be
// said of them: every fault in one run, each at its place on the page.
package misprint

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference/fault"
)

// Pages reads each page of a folder that ends in .yaml, of which there must be
// so many at least. What is said of NAME.yaml must be what stands in NAME.want,
// and nothing may come of a page with faults. UPDATE=1 writes what is said now;
// read it as a cook would before keeping it.
func Pages(t *testing.T, dir string, least int, read func(name string, text []byte) (came bool, faults fault.List)) {
	names, err := filepath.Glob(filepath.Join(dir, "*.yaml"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), least)
	for _, name := range names {
		bare := strings.TrimSuffix(name, ".yaml")
		t.Run(filepath.Base(bare), func(t *testing.T) {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			came, faults := read(filepath.Base(name), text)
			require.NotEmpty(t, faults, "nothing is wrong with it")
			require.False(t, came, "something came of a page with faults")
			Inside(t, text, faults)
			var got bytes.Buffer
			require.NoError(t, faults.Write(&got))
			Said(t, bare+".want", got.Bytes())
		})
	}
}

// Said holds what is said against what stands in a file; UPDATE=1 writes it
// there.
func Said(t *testing.T, file string, got []byte) {
	t.Helper()
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.WriteFile(file, got, 0o644))
		return
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), string(got))
}

// Inside holds every fault to a place on the page, in the order of it.
func Inside(t testing.TB, text []byte, faults fault.List) {
	t.Helper()
	rows := fault.Lines(string(text))
	last := fault.Fault{}
	for _, f := range faults {
		require.NotEmpty(t, f.What)
		require.GreaterOrEqual(t, f.Line, 0)
		require.LessOrEqual(t, f.Line, len(rows), f.What)
		if f.Line > 0 {
			require.GreaterOrEqual(t, f.Column, 0)
			require.LessOrEqual(t, f.Column, len([]rune(rows[f.Line-1]))+1, f.What)
		}
		require.False(t, f.Line < last.Line || f.Line == last.Line && f.Column < last.Column, "out of order: %s", f.What)
		last = f
	}
}

// Seed begins fuzzing from the pages of the patterns; each pattern must
// find some.
func Seed(f *testing.F, patterns ...string) {
	f.Helper()
	for _, pattern := range patterns {
		names, err := filepath.Glob(pattern)
		require.NoError(f, err)
		require.NotEmpty(f, names, pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			require.NoError(f, err)
			f.Add(text)
		}
	}
}
