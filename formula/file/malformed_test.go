package file_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/reference"
	"assize/reference/fault"
	"assize/reference/fault/misprint"
)

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

const malformed = "../../testdata/malformed"

// Each malformed file says exactly what is wrong with it.
func TestMalformed(t *testing.T) {
	tab := tables(t)
	misprint.Pages(t, malformed, 45, func(name string, text []byte) (bool, fault.List) {
		f, faults := read(name, text, tab)
		return f != nil, faults
	})
}

// read reads a page as what its name says it is.
func read(name string, text []byte, t *reference.Tables) (any, fault.List) {
	switch {
	case strings.HasPrefix(name, "kitchen-"):
		_, faults := file.ReadKitchen(name, text)
		return nil, faults
	case strings.HasPrefix(name, "book-"):
		_, faults := file.ReadBook(name, text, t)
		return nil, faults
	}
	f, faults := file.Read(name, text, t)
	if f == nil {
		return nil, faults
	}
	return f, faults
}
