package trial

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"assize/formula/receipt"
	"assize/ratios/dish"
	"assize/reference"
)

// PanFile is testdata/vectors/pan-volumes.yaml: works, and what they print.
type PanFile struct {
	Sources []reference.Source `yaml:"sources"`
	Rows    []Pan              `yaml:"rows"`
}

// ReadPans reads a file of printed pans. Every row must rest on one of its
// works.
func ReadPans(raw []byte) (*PanFile, error) {
	var f PanFile
	dec := yaml.NewDecoder(bytes.NewReader(raw))
	dec.KnownFields(true)
	if err := dec.Decode(&f); err != nil {
		return nil, err
	}
	for _, p := range f.Rows {
		if !slices.ContainsFunc(f.Sources, func(s reference.Source) bool { return s.ID == p.Source }) {
			return nil, fmt.Errorf("%s: no work %q", p.ID, p.Source)
		}
	}
	return &f, nil
}

// Pan is a pan with its size and volume as a work prints them.
type Pan struct {
	ID       string `yaml:"id"`
	Words    string `yaml:"words"`    // size and kind of pan, as they are given for a dish
	Holds    string `yaml:"holds"`    // as printed: "4 cups", "1.25 l"
	Told     string `yaml:"told"`     // brim | usable
	Measured string `yaml:"measured"` // said | told how | full | not said
	Usable   string `yaml:"usable"`   // as printed beside the brim
	Inside   string `yaml:"inside"`   // not printed, where the size is another
	Is       string `yaml:"is"`       // see PanVolume.Is
	Source   string `yaml:"source"`
	Locator  string `yaml:"locator"`
	How      string `yaml:"how"`
	Why      string `yaml:"why"`
}

// What a printed volume is, held against the pan's size.
const (
	PanBrim   = "brim"   // within a tenth of what its size comes to
	PanUnder  = "under"  // less, and not less than such a pan can hold
	PanOver   = "over"   // more, and not more than such a pan can hold
	PanCannot = "cannot" // more or less than such a pan can hold
	PanUsable = "usable" // told as filled for use, and no more than it can hold
	PanNoSize = "no inside"
)

// PanVolume is a printed pan beside what its size comes to.
type PanVolume struct {
	*Pan
	ML       float64 // as printed
	Reckoned float64 // to the brim, ml
	// Least and Most are what such a pan can hold: every measure out by the
	// makers' quarter of an inch, the walls at their most leaning, and straight.
	Least, Most float64
	Is          string
	UsableML    float64 // as printed beside the brim; 0 where none is
}

// Off is what is reckoned over what is printed, less one.
func (p *PanVolume) Off() float64 { return p.Reckoned/p.ML - 1 }

// makersAllowance is how far a measure of a pan may be out by the standard of
// American makers of bakeware, cm.
const makersAllowance = .635

// asReproduced is how near a brim must be reckoned.
const asReproduced = .10

// Pans reckons what every pan holds from its words alone, by the rules a dish
// is read by.
func Pans(t *reference.Tables, rows []Pan) ([]PanVolume, error) {
	var out []PanVolume
	for i := range rows {
		p := &rows[i]
		v := PanVolume{Pan: p}
		var err error
		if v.ML, err = millilitres(p.Holds); err != nil {
			return nil, fmt.Errorf("%s: %w", p.ID, err)
		}
		if p.Usable != "" {
			if v.UsableML, err = millilitres(p.Usable); err != nil {
				return nil, fmt.Errorf("%s: %w", p.ID, err)
			}
		}
		d, err := dish.Called(t, p.Words, dish.Kitchen{})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p.ID, err)
		}
		if d.Vessel != nil || !d.Sized() {
			return nil, fmt.Errorf("%s: %q is not read as a size", p.ID, p.Words)
		}
		v.Reckoned = d.Brimful.Likely
		v.Least, v.Most = outBy(d.Sizes[0], -makersAllowance).Brimful(), outBy(straight(d.Sizes[2]), makersAllowance).Brimful()
		v.Is = v.is()
		out = append(out, v)
	}
	return out, nil
}

func (p *PanVolume) is() string {
	cannot := p.ML > p.Most || p.Told == "brim" && p.ML < p.Least
	switch off := p.Off(); {
	case p.Inside != "":
		return PanNoSize
	case cannot:
		return PanCannot
	case p.Told == "usable":
		return PanUsable
	case off > asReproduced:
		return PanUnder
	case off < -asReproduced:
		return PanOver
	}
	return PanBrim
}

// outBy is a pan whose every measure is out by so many cm.
func outBy(s dish.Size, by float64) dish.Size {
	add := func(n float64) float64 { return max(n+by, n/2) }
	s.Top, s.Bottom, s.Depth = add(s.Top), add(s.Bottom), add(s.Depth)
	if s.Shape != dish.Round {
		s.TopSide, s.BottomSide = add(s.TopSide), add(s.BottomSide)
	}
	return s
}

// straight is a pan of the same mouth and depth with upright walls.
func straight(s dish.Size) dish.Size {
	s.Bottom, s.BottomSide = s.Top, s.TopSide
	return s
}

// panMeasures are ml to the measures volumes of pans are printed in, American.
var panMeasures = map[string]float64{
	"ml": 1, "l": 1000, "cup": 236.588, "tablespoon": 14.787, "quart": 946.353, "fluid ounce": 29.574,
}

// millilitres reads a volume as printed.
func millilitres(text string) (float64, error) {
	number, measure, _ := strings.Cut(text, " ")
	one := panMeasures[strings.TrimSuffix(measure, "s")]
	n, err := receipt.ParseNumber(number)
	if err != nil || one == 0 {
		return 0, fmt.Errorf("%q is no volume", text)
	}
	return n.Likely.InexactFloat64() * one, nil
}

// PanCount is how many rows, and how many different pans, were of one way of
// knowing the volume, and of those how many were reproduced.
type PanCount struct {
	Rows, RowsAtBrim int
	Pans, AtBrim     int // different sizes: told as the brim, and within a tenth of it in a row at least
}

// PanCounts counts brims told, by how they are known, rows without an inside
// size left out. Under "measured" stand all but "not said" together.
func PanCounts(rows []PanVolume) map[string]PanCount {
	out := map[string]PanCount{}
	pans, brims := map[string]map[string]bool{}, map[string]map[string]bool{}
	mark := func(in map[string]map[string]bool, key, words string) {
		if in[key] == nil {
			in[key] = map[string]bool{}
		}
		in[key][sizeOnly(words)] = true
	}
	for _, p := range rows {
		if p.Told != "brim" || p.Is == PanNoSize {
			continue
		}
		keys := []string{p.Measured}
		if p.Measured != "not said" {
			keys = append(keys, "measured")
		}
		for _, key := range append(keys, "all") {
			c := out[key]
			c.Rows++
			mark(pans, key, p.Words)
			if p.Is == PanBrim {
				c.RowsAtBrim++
				mark(brims, key, p.Words)
			}
			out[key] = c
		}
	}
	for key, c := range out {
		c.Pans, c.AtBrim = len(pans[key]), len(brims[key])
		out[key] = c
	}
	return out
}

// sizeOnly is what tells a pan from another: its figures and whether it is a
// pie plate, a tart tin or a muffin cup, which hold less than a cake tin.
func sizeOnly(words string) string {
	figures, _, _ := strings.Cut(words, " in ")
	for _, kind := range []string{"pie", "tart", "muffin", "loaf"} {
		if strings.Contains(words, kind) {
			return figures + " " + kind
		}
	}
	return figures
}
