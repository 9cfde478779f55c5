package receipt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What is brought to the boil is the part itself: not its milk or syrup alone,
// not water under it, and nothing that is kept short of the boil.
func TestBoilsInAStep(t *testing.T) {
	for _, step := range []string{
		"bring to the boil, stirring", "boil the milk, sugar and cornstarch until it thickens", "stir over medium heat until it bubbles",
		"simmer 20 minutes", "cook until thick; boil 1 minute with the lemon juice", "stir until it boils", "let it boil a minute", "Bring the mixture to a boil.",
	} {
		require.True(t, boilsInStep(step), step)
	}
	for _, step := range []string{
		"boil the milk; pour it on the yolks and stir over low heat", "boil the milk", "stir over boiling water till thick", "whisk over simmering water",
		"stir over the fire but do not let it boil", "stir till it nearly boils", "boil the syrup to 230 F; pour it on the whites", "pour the boiling cream on the chocolate",
		"bring the milk to the boil; whisk it into the eggs", "take it off before it boils", "boil the lemons till tender",
	} {
		require.False(t, boilsInStep(step), step)
	}
}
