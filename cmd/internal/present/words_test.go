package present

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula"
	"assize/ratios/judge"
	"assize/reference"
)

// TestEveryTextureHasWords keeps a new texture from being shown by its id.
func TestEveryTextureHasWords(t *testing.T) {
	tables, err := reference.Load()
	require.NoError(t, err)
	for _, x := range tables.Textures {
		if x.Judged {
			require.NotEmpty(t, turnsOut[x.ID], x.ID)
			require.NotEmpty(t, short[x.ID], x.ID)
		}
	}
	for _, p := range reference.Places {
		require.NotEmpty(t, placeNames[p], p)
	}
	for _, l := range []string{judge.LayerRange, judge.LayerMechanism, judge.LayerPractice} {
		require.NotEmpty(t, layers[l], l)
	}
}

// TestNothingIsCertain: no share is ever shown as all or nothing, and a larger
// share is never shown as a smaller one.
func TestNothingIsCertain(t *testing.T) {
	require.Equal(t, "hardly ever", outOfTen(.049))
	require.Equal(t, "about 1 in 10", outOfTen(.05))
	require.Equal(t, "about 8 in 10", outOfTen(.82))
	require.Equal(t, "about 9 in 10", outOfTen(.949))
	require.Equal(t, "about 5 in 10", outOfTen(.599), "six in ten would be no open verdict")
	require.Equal(t, "about 6 in 10", outOfTen(.60))
	require.Equal(t, "nearly always", outOfTen(.95))
	rapid.Check(t, func(t *rapid.T) {
		words := outOfTen(rapid.Float64Range(0, 1).Draw(t, "share"))
		if strings.Contains(words, " 0 ") || strings.Contains(words, "10 in 10") || strings.Contains(words, "%") {
			t.Fatal(words)
		}
	})
}

// TestPrintedRatioKeepsItsVerdict: as printed, a ratio lies to its range as it
// does exactly.
func TestPrintedRatioKeepsItsVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// In thousandths, so that figures often fall on either side of a rounded end.
		at := func(name string) decimal.Decimal {
			return decimal.New(rapid.Int64Range(0, 200_000).Draw(t, name), -rapid.Int32Range(0, 5).Draw(t, name+" places"))
		}
		v, a, b := at("value"), at("a"), at("b")
		low, high := decimal.Min(a, b), decimal.Max(a, b)
		verdict := 0
		switch {
		case v.LessThan(low):
			verdict = -1
		case v.GreaterThan(high):
			verdict = 1
		}
		p := ratioPlaces(v, low, high, verdict)
		switch pv, pl, ph := v.Round(p), low.Round(p), high.Round(p); {
		case verdict < 0 && !pv.LessThan(pl), verdict > 0 && !pv.GreaterThan(ph), verdict == 0 && (pv.LessThan(pl) || pv.GreaterThan(ph)):
			t.Fatalf("%s in %s-%s is printed %s in %s-%s", v, low, high, pv, pl, ph)
		}
	})
}

func TestFigures(t *testing.T) {
	for in, want := range map[string]string{
		"0": "0", "0.03": "under 0.1", "0.05": "0.1", "3": "3", "2.46": "2.5", "9.94": "9.9", "9.96": "10", "10.4": "10", "320.4": "320",
	} {
		require.Equal(t, want, figure(dec(in)), in)
	}
	require.Equal(t, "320 g (264-376)", weight(three("264", "320.4", "376"), "g"))
	require.Equal(t, "227 g", weight(three("226.8", "226.8", "226.8"), "g"))
	require.Equal(t, "1 part", weight(three("1", "1", "1"), partsUnit))
	require.Equal(t, "none", ratio(three("0", "0", "0"), 2))
}

func TestEffectTellsEverything(t *testing.T) {
	list := []judge.Effect{
		{What: "cakey", Kind: "share", Before: .82, After: .31},
		{What: "curdy", Kind: "share", Before: .02, After: .12},
		{What: "set_index", Kind: "measure", Before: 2, After: 1.7},
		{What: "curdle_margin_c", Kind: "measure", Before: 8, After: 5},
		{What: "volume_ml", Kind: "measure", Before: 800, After: 790},
		{What: "sugar_share", Kind: "measure", Before: 38, After: 33},
	}
	require.Equal(t, "cakey 8 -> 3 in 10; curdled hardly ever -> 1 in 10; sets a little softer; nearer to curdling; a little less sweet; fill as before", effect(list))
}

func TestMovedShare(t *testing.T) {
	for want, e := range map[string]judge.Effect{
		"tough 6 -> 2 in 10":                 {What: "tough", Before: .6, After: .2},
		"tough nearly always -> 5 in 10":     {What: "tough", Before: .99, After: .5},
		"tough 3 in 10 -> hardly ever":       {What: "tough", Before: .3, After: .01},
		"tough a little less often":          {What: "tough", Before: .34, After: .26},
		"tough a little more often":          {What: "tough", Before: .26, After: .34},
		"loose or weeping 4 -> 1 in 10":      {What: "thin", Before: .4, After: .1},
		"smooth hardly ever -> 4 in 10":      {What: "sets", Before: .04, After: .4},
		"crumbling hardly ever -> 1 in 10":   {What: "crumbly", Before: 0, After: .1},
		"greasy nearly always -> 9 in 10":    {What: "greasy", Before: 1, After: .9},
		"set with starch 5 -> 6 in 10":       {What: "starch-set", Before: .5, After: .6},
		"some-new-texture 5 -> 6 in 10":      {What: "some-new-texture", Before: .5, After: .6},
		"rubbery 9 in 10 -> nearly always":   {What: "rubbery", Before: .9, After: .96},
		"sound 1 -> 9 in 10":                 {What: "sound", Before: .1, After: .9},
		"curdled hardly ever -> 9 in 10":     {What: "curdy", Before: .001, After: .94},
		"cakey nearly always -> hardly ever": {What: "cakey", Before: .95, After: .049},
	} {
		require.Equal(t, want, movedShare(e))
	}
}

func TestVerdicts(t *testing.T) {
	fault := func(id string, s float64) judge.Share {
		return judge.Share{Texture: &reference.Texture{ID: id, Fault: true, Shown: id}, Share: s}
	}
	good := func(id string, s float64) judge.Share {
		return judge.Share{Texture: &reference.Texture{ID: id, Shown: id}, Share: s}
	}
	part := func(tx *judge.Texture, meant string) *judge.Part {
		p := &judge.Part{Name: "filling", Kind: formula.Filling, Texture: tx}
		if meant != "" {
			p.Class = &judge.ClassFit{Class: &reference.Class{Meant: meant}}
		}
		return p
	}
	for _, c := range []struct {
		want string
		part *judge.Part
		only bool
	}{
		{"the filling is likely to set cakey, about 8 in 10", part(&judge.Texture{Likeliest: "cakey", Shares: []judge.Share{good("sets", .2), fault("cakey", .8)}}, ""), false},
		{"likely to set firm, about 7 in 10", part(&judge.Texture{Likeliest: "sets", Word: "firm", Shares: []judge.Share{good("sets", .7), fault("cakey", .3)}}, ""), true},
		{"very likely to set smooth", part(&judge.Texture{Likeliest: "sets", Word: "smooth", Shares: []judge.Share{good("sets", .97)}}, ""), true},
		{"likely to curdle, as is meant, about 9 in 10", part(&judge.Texture{Likeliest: "curdy", Shares: []judge.Share{fault("curdy", .9)}}, "curdy"), true},
		{"could go either way: it may set smooth (about 5 in 10) or set cakey (about 4 in 10)", part(&judge.Texture{Likeliest: "sets", Undecided: true, Shares: []judge.Share{good("sets", .52), fault("cakey", .42), fault("thin", .06)}}, ""), true},
		{"the filling could go either way: it may set smooth (about 4 in 10), set cakey (about 3 in 10) or stay loose or weep (about 3 in 10)", part(&judge.Texture{Likeliest: "sets", Undecided: true, Shares: []judge.Share{good("sets", .4), fault("cakey", .3), fault("thin", .3)}}, ""), false},
	} {
		require.Equal(t, c.want, verdict(c.part, c.only))
	}
}

// figuresTalk are words a cook has no use for.
var figuresTalk = regexp.MustCompile(`(?i)probabilit|percentile|variance|median|sample|quantile|distribution|confidence|standard deviation|monte carlo|likelihood|p-value`)

// TestVoice: no talk of statistics, no codes, no share in per cent.
func TestVoice(t *testing.T) {
	s, _ := sample(t)
	out := renderings(t)
	for _, name := range []string{"check.txt", "check-narrow.txt", "check.md", "weigh.txt", "weigh.md"} {
		require.NotRegexp(t, figuresTalk, string(out[name]), name)
		for _, f := range s.Report.Findings {
			if strings.Contains(f.Code, "-") {
				require.NotContains(t, string(out[name]), f.Code, name)
			}
		}
	}
	require.NotContains(t, string(out["check.txt"]), "82")
	require.Contains(t, string(out["check.txt"]), reference.Deference[3:60])
}

// TestTextIsSet: no line is wider than asked or ends in a blank, and bold adds
// nothing but its marks.
func TestTextIsSet(t *testing.T) {
	s, a := sample(t)
	for width := narrowest; width <= widest+20; width += 7 {
		var plain, bold bytes.Buffer
		require.NoError(t, Check(s, a, Wish{AllRatios: true}).Text(&plain, Layout{Width: width}))
		require.NoError(t, Check(s, a, Wish{AllRatios: true}).Text(&bold, Layout{Width: width, Bold: true}))
		for line := range strings.Lines(plain.String()) {
			line = strings.TrimSuffix(line, "\n")
			require.LessOrEqual(t, wide(line), width, line)
			require.Equal(t, strings.TrimRight(line, " "), line)
		}
		require.NotContains(t, plain.String(), "\x1b")
		unmarked := strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(bold.String())
		require.NotEqual(t, bold.String(), unmarked)
		require.Equal(t, plain.String(), unmarked)
	}
}

// TestMarkdownKeepsTextAsText: what people write in their files is not markup.
func TestMarkdownKeepsTextAsText(t *testing.T) {
	require.Equal(t, `a \| b \\ \<i> \*c\* \_d\_ \[e\](f)`, escape(`a | b \ <i> *c* _d_ [e](f)`))
	require.Equal(t, `\# no heading`, escape("# no heading"))
	require.Equal(t, `\- no list`, escape("- no list"))
	require.Equal(t, "one line", escape("one\nline"))
}
