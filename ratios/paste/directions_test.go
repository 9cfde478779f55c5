package paste_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/ratios/paste"
)

// slack is what rounding may take.
const slack = 1e-9

func between(t *rapid.T, what string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(t, what)
}

// anyPaste draws a paste of any type. Its water runs from next to nothing to
// much more than it needs.
func anyPaste(t *rapid.T) paste.State {
	s := paste.State{
		Type:     paste.Type(rapid.IntRange(int(paste.NoFat), int(paste.Short)).Draw(t, "type")),
		PureFat:  between(t, "fat", 0, 1.2),
		Sugar:    between(t, "sugar", 0, .6),
		Coverage: between(t, "coverage", .1, 1.4),
		Water:    between(t, "water", 0, .8),
		FatWater: between(t, "butter's water", 0, .15),
		Protein:  between(t, "protein", 6, 15),
		Work:     between(t, "work", .8, 3),
		Acid:     rapid.Bool().Draw(t, "acid"),
		Leavened: rapid.Bool().Draw(t, "leavened"),
		Lean:     between(t, "lean", 1, 1.3),
	}
	_, _, s.UsualMost = s.Type.Usual(s.PureFat)
	return s
}

// water that a paste takes up to the usual.
func usual(t *rapid.T, s *paste.State) { s.Water = between(t, "usual water", 0, s.UsualMost) }

func TestWaterToughensAndBinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyPaste(t)
		wet := s
		wet.Water += between(t, "more", 0, .3)
		require.GreaterOrEqual(t, wet.Toughness()+slack, s.Toughness())
		require.GreaterOrEqual(t, wet.Tough()+slack, s.Tough())
		require.LessOrEqual(t, wet.Crumbly(), s.Crumbly()+slack)
		require.GreaterOrEqual(t, wet.NetWater(), s.NetWater())
		usual(t, &s)
		wet = s
		wet.Water = s.UsualMost
		require.GreaterOrEqual(t, wet.Toughness()+slack, s.Toughness(), "up to the usual as well as past it")
	})
}

// Coverage never raises the layers, nor the gluten that a paste makes. It can
// raise Toughness, which is the gluten divided by 1 + 3 layers: in a paste
// whose layers are under a third of the flour, fat that leaves the sheets to
// coat the flour takes more from the divisor than from the gluten, so the rule
// "fat worked in finer never toughens" does not hold of Toughness itself. It
// holds where there are no layers to lose (coverage from 1), and where they are
// more than a third.
func TestCoverageTenders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyPaste(t)
		finer := s
		finer.Coverage += between(t, "finer", 0, .4)
		require.LessOrEqual(t, finer.Layers(), s.Layers()+slack)
		require.LessOrEqual(t, finer.Flakes(), s.Flakes()+slack)
		gluten := func(s *paste.State) float64 { return s.Toughness() * (1 + 3*s.Layers()) }
		require.LessOrEqual(t, gluten(&finer), gluten(&s)+slack)
		if s.Coverage >= 1 || finer.Layers() > 1.0/3 {
			require.LessOrEqual(t, finer.Toughness(), s.Toughness()+slack)
		}
		require.GreaterOrEqual(t, finer.Greasy()+slack, s.Greasy())
		require.GreaterOrEqual(t, finer.Crumbly()+slack, s.Crumbly(), "what coats the flour keeps water out")
	})
}

func TestFatTendersAndGreases(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyPaste(t)
		rich := s
		rich.PureFat += between(t, "more", 0, .5)
		require.GreaterOrEqual(t, rich.Greasy()+slack, s.Greasy())
		require.LessOrEqual(t, rich.Toughness(), s.Toughness()+slack)
		require.LessOrEqual(t, rich.Tough(), s.Tough()+slack)
		require.GreaterOrEqual(t, rich.Layers()+slack, s.Layers())
	})
}

func TestFlourWorkAndAcid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, d := anyPaste(t), between(t, "more", 0, 3)
		up := s
		up.Protein += d
		require.GreaterOrEqual(t, up.Toughness()+slack, s.Toughness(), "stronger flour is no tenderer")
		require.GreaterOrEqual(t, up.Tough()+slack, s.Tough())
		up = s
		up.Work += d
		require.GreaterOrEqual(t, up.Toughness()+slack, s.Toughness(), "nor is a paste worked more")
		up = s
		up.Sugar += d / 10
		require.LessOrEqual(t, up.Toughness(), s.Toughness()+slack, "sugar takes water from the flour")
		require.GreaterOrEqual(t, up.Crumbly()+slack, s.Crumbly())
		up = s
		up.Acid = true
		require.LessOrEqual(t, up.Toughness(), s.Toughness()+slack)
		up = s
		up.Leavened = true
		require.LessOrEqual(t, up.Toughness(), s.Toughness()+slack)
		up = s
		up.FatWater += d / 30
		require.GreaterOrEqual(t, up.NetWater(), s.NetWater())
		for _, x := range []float64{s.Toughness(), s.Tough(), s.Greasy(), s.Crumbly(), s.Flakes()} {
			require.False(t, math.IsNaN(x) || math.IsInf(x, 0))
		}
		require.Positive(t, s.Toughness())
		require.GreaterOrEqual(t, s.NetWater(), .02)
	})
}

// The paste that Toughness measures others by: two of flour to one of fat, half
// lard and half butter (.455 pure fat), flour of 10 in 100 protein and .18 of
// water, worked with care.
func TestShortPasteIsOne(t *testing.T) {
	s := paste.State{Type: paste.Short, PureFat: .455, Coverage: 1, Water: .18, Protein: 10, Work: 1, UsualMost: .30, Lean: 1}
	require.InDelta(t, 1, s.Toughness(), .01)
}

func TestUsualWater(t *testing.T) {
	for kind := paste.NoFat; kind <= paste.Short; kind++ {
		for _, fat := range []float64{.2, .5, .7, 1} {
			low, likely, high := kind.Usual(fat)
			require.Positive(t, low, "a receipt that names no water has some")
			require.Less(t, low, likely)
			require.Less(t, likely, high)
		}
	}
}

func TestTypes(t *testing.T) {
	for _, c := range []struct {
		want                  paste.Type
		fat, oil, suet, sugar float64
		hot, laminated        bool
	}{
		{paste.NoFat, .04, 0, 0, .2, true, true},
		{paste.HotWater, .36, 0, 0, 0, true, false},
		{paste.Flaky, .36, 0, 0, 0, true, true},
		{paste.OilPaste, .36, .6, 0, .2, false, false},
		{paste.Suet, .45, 0, .6, .1, false, true},
		{paste.Flaky, .45, 0, .5, .1, false, true},
		{paste.Sweet, .45, 0, 0, .08, false, false},
		{paste.Short, .45, .5, 0, .07, false, false},
	} {
		require.Equal(t, c.want, paste.Of(c.fat, c.oil, c.suet, c.sugar, c.hot, c.laminated), "%+v", c)
	}
}
