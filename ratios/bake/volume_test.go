package bake_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/bake"
	"assize/ratios/readings"
)

func volumeOf(t *testing.T, kind, lines, method string) float64 {
	t.Helper()
	r := readings.Run(compiled(t, 2000, kind, lines, method), readings.Options{N: 200, Seed: 1})
	return r.Measures[bake.Volume].Likely
}

// An open pan loses some hundredths as steam, a longer stir more; a pudding
// boiled shut up loses none, and neither does one baked.
func TestSteamOffAnOpenPan(t *testing.T) {
	const curd = `["3 eggs", "150 g sugar", "100 ml lemon juice", "100 g butter"]`
	short := volumeOf(t, "filling", curd, `["stir over medium-low heat 5 minutes till it thickens"]`)
	unsaid := volumeOf(t, "filling", curd, `["stir over medium-low heat till it thickens"]`)
	long := volumeOf(t, "filling", curd, `["stir over medium-low heat 20 minutes till it thickens"]`)
	require.Less(t, unsaid, short)
	require.Less(t, long, unsaid)
	require.Greater(t, long, .9*short)

	const pudding = `["4 eggs", "200 g sugar", "500 ml milk", "100 g flour"]`
	boiled := volumeOf(t, "filling", pudding, `["boil in a cloth two hours"]`)
	require.Greater(t, boiled, volumeOf(t, "filling", pudding, `["stir over the fire 20 minutes till it thickens"]`))
}

// Whites beaten up with sugar keep their air, also over hot water; stirred into
// a filling on the fire they do not.
func TestMeringueKeepsItsAir(t *testing.T) {
	const whites = `["3 egg whites", "300 g sugar", "80 ml water"]`
	cold := volumeOf(t, "meringue", whites, `["beat the whites and sugar to stiff peaks"]`)
	hot := volumeOf(t, "meringue", whites, `["beat the whites, sugar and water over simmering water 7 minutes to stiff peaks"]`)
	stirred := volumeOf(t, "filling", whites, `["stir the whites, sugar and water over simmering water 7 minutes"]`)
	require.Greater(t, cold, 1.8*stirred)
	require.InDelta(t, cold, hot, .1*cold)
}

// Butter and sugar creamed for an icing keep the air that was creamed in; the same
// put into an oven keep what something in it fixes.
func TestIcingKeepsItsAir(t *testing.T) {
	const icing = `["225 g butter", "225 g icing sugar", "1 tablespoon milk"]`
	creamed := volumeOf(t, "filling", icing, `["cream the butter, beat in the sugar and the milk until light"]`)
	require.Greater(t, creamed, 1.25*volumeOf(t, "filling", icing, `["melt the butter, stir in the sugar and the milk"]`))
	require.Greater(t, creamed, 1.15*volumeOf(t, "filling", icing, `["cream the butter, beat in the sugar and the milk until light; bake it in a moderate oven"]`))
}
