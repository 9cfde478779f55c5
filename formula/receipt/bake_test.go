package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestReadBake(t *testing.T) {
	for _, c := range []struct {
		text          string
		minutes       float64
		firstC, lastC float64
	}{
		{"half an hour", 30, 0, 0},
		{"three quarters of an hour", 45, 0, 0},
		{"an hour and a half", 90, 0, 0},
		{"30-35 min at 350 F", 32.5, 176.7, 176.7},
		{"15 min at 450 F, then 350 F 45 min", 60, 232.2, 176.7},
		{"12-15 min", 13.5, 0, 0},
		{"160-200 C", 0, 180, 180},
		{"slow, kept pale", 0, 0, 0},
	} {
		b := ReadBake(c.text)
		require.InDelta(t, c.minutes, b.Minutes, .01, c.text)
		require.InDelta(t, c.firstC, b.FirstC(), .1, c.text)
		require.InDelta(t, c.lastC, b.LastC(), .1, c.text)
	}
}

// Resting, beating and an empty case are no baking of the dish.
func TestBakeInStep(t *testing.T) {
	for step, minutes := range map[string]float64{
		"Let it lie an hour in a cold place.":                            0,
		"Beat it twenty minutes, and bake in a quick oven half an hour.": 30,
		"Knead it ten minutes. Let it rest.":                             0,
		"Bake the case blind 15 min.":                                    0,
		"Put it in a slow oven for forty minutes.":                       40,
		"Half an hour will bake it.":                                     30,
	} {
		require.InDelta(t, minutes, bakeInStep(step).Minutes, .01, step)
	}
}

// Only stirring over some heat dries a part in the open pan.
func TestFireInStep(t *testing.T) {
	for step, minutes := range map[string]float64{
		"Stir over medium-low heat 8 to 10 minutes.":                             9,
		"Whisk over simmering water 20 minutes; stir in the butter.":             20,
		"Boil in a cloth three hours.":                                           0,
		"Let it stand ten minutes.":                                              0,
		"Beat it half an hour, and set it in a cold place.":                      0,
		"Stir it over the fire till it thickens, about a quarter of an hour.":    15,
		"Stir in the milk and bake half an hour.":                                0,
		"Cook, stirring, to 160 F. Cook 2 minutes more over a low heat.":         2,
		"Stir over hot water a quarter of an hour. Cook 5 minutes on the stove.": 20,
	} {
		require.InDelta(t, minutes, fireInStep(step), .01, step)
	}
}
