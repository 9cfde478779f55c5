package setting_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/setting"
)

// TestSteamed: a batch of half a litre stirred ten minutes to thicken loses a
// few per cent, boiled more, longer more, and a big batch less for its size.
func TestSteamed(t *testing.T) {
	curd := setting.Steamed(500, 10, false)
	require.InDelta(t, 13, curd, 2)
	require.Greater(t, setting.Steamed(500, 10, true), 1.5*curd)
	require.InDelta(t, 2*curd, setting.Steamed(500, 20, false), 1e-9)
	require.Less(t, setting.Steamed(5000, 10, false)/5000, curd/500)
	require.Equal(t, setting.Steamed(500, 40, false), setting.Steamed(500, 400, false), "not trusted past forty minutes")
}

// TestBoiledOff: more goes off at the boil than short of it, a big batch loses less
// for its size, and the custard of the food tables (see boilsOff) loses some
// tenths of its weight.
func TestBoiledOff(t *testing.T) {
	custard := setting.BoiledOff(532, setting.UnsaidFire)
	require.Greater(t, custard, 1.5*setting.Steamed(532, setting.UnsaidFire, true))
	require.InDelta(t, .13, custard/565, .05)
	require.Less(t, setting.BoiledOff(5000, 10)/5000, setting.BoiledOff(500, 10)/500)
	require.Equal(t, setting.BoiledOff(500, 40), setting.BoiledOff(500, 400), "not trusted past forty minutes")
}
