package reference_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/reference"
)

// Every word of a taster in the table of textures is taken for its texture, by
// itself and among other words, unless it is one of which one must ask.
func TestEveryTastedWordIsKnown(t *testing.T) {
	tab := readFiles(t)
	asked := 0
	for i := range tab.Textures {
		x := &tab.Textures[i]
		if x.Kind != "filling" && x.Kind != "pastry" {
			continue
		}
		for _, w := range append([]string{x.ID, x.Shown}, x.Tasted...) {
			got, ok := tab.TastedAs(w, "", []string{x.Kind})
			require.True(t, ok, w)
			if got.Unclear {
				asked++
				continue
			}
			require.NotEmpty(t, got.Textures, w)
			require.Equal(t, x.ID, got.Textures[0].ID, w)
			got, ok = tab.TastedAs("it came out "+w+" I thought", "", []string{x.Kind})
			require.True(t, ok, w)
			require.Contains(t, ids(got.Textures), x.ID, w)
		}
	}
	require.Less(t, asked, 5)
}

func ids(list []*reference.Texture) []string {
	var out []string
	for _, x := range list {
		out = append(out, x.ID)
	}
	return out
}

// Every sign is found by each of its words at its place, and points where its
// row says.
func TestEverySignIsFound(t *testing.T) {
	tab := readFiles(t)
	for i := range tab.Signs {
		s := &tab.Signs[i]
		for _, w := range s.Words {
			got, ok := tab.TastedAs(w, s.Look, []string{"filling", "pastry"})
			require.True(t, ok, "%s: %s", s.ID, w)
			require.NotNil(t, got.Sign, w)
			require.Equal(t, s.ID, got.Sign.ID, w)
			require.Len(t, got.Textures, len(s.Points), w)
			require.Equal(t, s.Unclear, got.Unclear, w)
		}
	}
}

// What is denied is not seen.
func TestDeniedIsNotSeen(t *testing.T) {
	tab := readFiles(t)
	for _, w := range []string{"not spongy", "without any curds", "hardly rubbery", "no lumps"} {
		got, ok := tab.TastedAs(w, "", []string{"filling"})
		require.False(t, ok && slices.ContainsFunc(got.Textures, func(x *reference.Texture) bool { return x.Fault }), "%s: %+v", w, got)
	}
}

// Every cause explains a texture that is a fault of something, in two sentences.
func TestCausesAreTwoSentences(t *testing.T) {
	tab := readFiles(t)
	for _, c := range tab.Causes {
		stops := 0
		for i, r := range c.Says {
			if r == '.' && (i+1 == len(c.Says) || c.Says[i+1] == ' ') {
				stops++
			}
		}
		require.Equal(t, 2, stops, "%s: %s", c.ID, c.Says)
	}
}
