package trial

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// A fact of the trade (common practice, no source): an egg-rich filling with
// no milk, water or flour - butter and sugar creamed, whole eggs whisked in,
// juice and rind of lemons, baked unstirred half an hour at 375-400 F - sets
// cakey. Melting the butter, a water bath, heat and stirring, yolks alone or
// milk each take it away. The bands are wide, since the size is not known.
func TestCheckFormulas(t *testing.T) {
	creamed := "[beat the butter and sugar to a cream, whisk in the eggs]"
	melted := "[melt the butter, whisk the eggs with the sugar and stir in the butter]"
	bathed := "[beat the butter and sugar to a cream, whisk in the eggs, water-bath]"
	stirred := "[whisk the eggs with the sugar, stirred over heat]"
	rich := func(eggs, butter string) string {
		return fmt.Sprintf(`["%s eggs", "%s oz butter", "%s oz sugar", "the juice and grated rind of 2 lemons"]`, eggs, butter, butter)
	}
	for _, c := range []struct {
		name, lines, method, bake string
		low, high                 float64
	}{
		{"8 eggs, 4 oz", rich("8", "4"), creamed, "385 F 30 min", .85, 1},
		{"8 eggs, 8 oz", rich("8", "8"), creamed, "385 F 30 min", .65, .95},
		{"8 eggs, 12 oz", rich("8", "12"), creamed, "385 F 30 min", .30, .75},
		{"9 eggs, 4 oz", rich("9", "4"), creamed, "385 F 30 min", .85, 1},
		{"9 eggs, 8 oz, melted", rich("9", "8"), melted, "385 F 30 min", .15, .60},
		{"9 eggs, 12 oz, melted", rich("9", "12"), melted, "385 F 30 min", 0, .25},
		{"9 eggs, 8 oz, water bath", rich("9", "8"), bathed, "385 F 30 min", .10, .50},
		{"9 eggs, 8 oz, stirred over heat", rich("9", "8"), stirred, "", 0, .05},
		{"15 yolks", `["15 yolks of eggs", "8 oz butter", "8 oz sugar", "the juice and grated rind of 2 lemons"]`, creamed, "385 F 30 min", 0, .15},
		{"9 eggs and a pint of milk", `["9 eggs", "8 oz butter", "8 oz sugar", "1 pint of milk", "the juice and grated rind of 2 lemons"]`, creamed, "385 F 30 min", 0, .05},
		{"transparent pudding", `["8 eggs", "8 oz butter", "1 lb sugar"]`, "[beat the butter and sugar to a cream]", "385 F 30 min", 0, .35},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := cakey(t, fmt.Sprintf("title: %s\nyear: 1830\nplace: england\nkitchen: {year: 1830, place: england}\nparts:\n- kind: filling\n  lines: %s\n  method: %s\nbake: \"%s\"\n", c.name, c.lines, c.method, c.bake))
			require.GreaterOrEqual(t, got, c.low)
			require.LessOrEqual(t, got, c.high)
		})
	}
}

// Smooth controls: proportions as modern books print them; none sets cakey.
func TestSmoothControls(t *testing.T) {
	for _, c := range []struct {
		name, lines, method, bake string
		most                      float64
	}{
		{"baked custard", `["500 ml milk", "4 eggs", "60 g sugar"]`, "[slightly beaten, hot milk on egg]", "45 min", .05},
		{"stirred lemon curd", `["4 eggs", "200 g sugar", "120 ml lemon juice", "115 g butter"]`, "[whisked, stirred over heat]", "", .05},
		{"plain chess", `["4 eggs", "300 g sugar", "115 g butter, melted", "60 ml buttermilk", "1 tablespoon cornmeal", "1 tablespoon flour"]`, "[melted-butter, mixed]", "350 F 45 min", .10},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := fmt.Sprintf("title: %s\nyear: 2000\nplace: usa\nkitchen: {year: 2000, place: usa}\nparts:\n- kind: filling\n  lines: %s\n  method: %s\n", c.name, c.lines, c.method)
			if c.bake != "" {
				text += fmt.Sprintf("bake: %q\n", c.bake)
			}
			require.LessOrEqual(t, cakey(t, text), c.most)
		})
	}
}

// cakey is the mean cakey share of a formula file's first part.
func cakey(t *testing.T, text string) float64 {
	t.Helper()
	tables, err := reference.Load()
	require.NoError(t, err)
	f, faults := file.Read("check.yaml", []byte(clean(text)), tables)
	require.NoError(t, faults.Err())
	w, faults := weigh.Weigh(f, tables)
	require.NoError(t, faults.Err())
	k, err := bake.Compile(bake.Input{Weighed: w, Tables: tables, Rules: bake.Standard, Method: receipt.NewMethodReader(tables).Read(f, &f.Parts[0])})
	require.NoError(t, err)
	shares, _ := readings.Shares(k, readings.Options{N: 400, Seed: readings.SeedOf(f.Title)})
	for i, id := range k.Textures {
		if id == "cakey" {
			return shares[i]
		}
	}
	t.Fatal("no cakey share")
	return 0
}

// clean leaves an empty bake out.
func clean(text string) string {
	const none = "bake: \"\"\n"
	if len(text) > len(none) && text[len(text)-len(none):] == none {
		return text[:len(text)-len(none)]
	}
	return text
}
