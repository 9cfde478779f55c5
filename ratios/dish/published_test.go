package dish_test

import (
	"bytes"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"assize/ratios/dish"
)

// printedPan is a pan with its size and volume as printed; see the file's head.
type printedPan struct {
	ID        string    `yaml:"id"`
	Shape     string    `yaml:"shape"`
	Size      []float64 `yaml:"size"`
	Bottom    []float64 `yaml:"bottom"`
	BottomHow string    `yaml:"bottom_how"`
	Holds     float64   `yaml:"holds"`
	Told      string    `yaml:"told"`
	Measured  bool      `yaml:"measured"`
	Is        string    `yaml:"is"`
	Source    string    `yaml:"source"`
	Locator   string    `yaml:"locator"`
	How       string    `yaml:"how"`
	Why       string    `yaml:"why"`
}

func printedPans(t *testing.T) []printedPan {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/vectors/pan-volumes.yaml")
	require.NoError(t, err)
	var out struct {
		Rows []printedPan `yaml:"rows"`
	}
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	require.NoError(t, dec.Decode(&out))
	return out.Rows
}

func (p *printedPan) size() dish.Size {
	const in = 2.54
	s := dish.Size{Shape: dish.Shape(p.Shape), Depth: p.Size[len(p.Size)-1] * in, Top: p.Size[0] * in, Bottom: p.Size[0] * in}
	if s.Shape == dish.Oblong {
		s.TopSide, s.BottomSide = p.Size[1]*in, p.Size[1]*in
	}
	if len(p.Bottom) > 0 {
		s.Bottom = p.Bottom[0] * in
	}
	if len(p.Bottom) > 1 {
		s.BottomSide = p.Bottom[1] * in
	}
	return s
}

// TestPrintedPans: printed volumes from printed sizes. Brimful ones are
// reproduced within 10 per cent; those that lie under the brim by more, and
// those that cannot be reconciled, are told apart and counted.
func TestPrintedPans(t *testing.T) {
	pans := map[string]bool{} // shape and size, so that a pan in two tables counts once
	counts := map[string]int{}
	measured := map[string]bool{}
	for _, p := range printedPans(t) {
		require.NotEmpty(t, p.Source, p.ID)
		require.NotEmpty(t, p.Locator, p.ID)
		s := p.size()
		off := s.Brimful()/p.Holds - 1
		is := "neither"
		switch {
		case off >= -.10 && off <= .10:
			is = "brim"
		case off > .10 && p.Holds >= .70*s.Brimful():
			is = "usable"
		}
		require.Equalf(t, p.Is, is, "%s: %.0f ml printed, %.0f by its size, %+.3f", p.ID, p.Holds, s.Brimful(), off)
		if is == "neither" {
			require.NotEmpty(t, p.Why, p.ID)
		}
		counts[is]++
		if is != "brim" {
			continue
		}
		key := p.Shape
		for _, n := range p.Size {
			key += " " + string(rune('0'+int(n*8)))
		}
		if p.Measured {
			measured[key] = true
		}
		pans[key] = true
	}
	t.Logf("%d different pans within 10 per cent of the brim (%d of them filled with water by the work that prints them); rows at the brim %d, under it %d, not reconciled %d",
		len(pans), len(measured), counts["brim"], counts["usable"], counts["neither"])
	require.GreaterOrEqual(t, len(pans), 20)
	require.GreaterOrEqual(t, len(measured), 7)
	require.Positive(t, counts["neither"], "none is left out for not fitting")
}

// A pan that two works print differently has one volume by its size.
func TestTablesThatDisagree(t *testing.T) {
	byID := map[string]printedPan{}
	for _, p := range printedPans(t) {
		byID[p.ID] = p
	}
	for _, pair := range [][2]string{{"tbp-8x2", "pc-8x2-usual"}, {"cc-8x1.5", "tbp-8x1.5"}, {"wc-11x7x2", "gc-11x7x2"}} {
		a, b := byID[pair[0]], byID[pair[1]]
		require.Equal(t, a.size(), b.size())
		require.Greater(t, a.Holds, b.Holds*1.1)
		require.Equal(t, "brim", a.Is)
		require.NotEqual(t, "brim", b.Is)
	}
}
