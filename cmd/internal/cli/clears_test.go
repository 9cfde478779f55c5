package cli

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// clears are words that would clear a dish for those who eat it.
var clears = regexp.MustCompile(`(?i)\b(?:safe|safely|harmless|free (?:of|from)|(?:gluten|nut|egg|milk|dairy|wheat|alcohol|allergen)-free|suitable for|no risk)\b`)

// Nothing the program prints of a receipt clears it, in any format of any
// command; and each that tells what is in it tells its cautions and defers.
func TestNoOutputClearsADish(t *testing.T) {
	const demo = "../../../testdata/demo/millrace"
	for _, c := range []struct {
		args     string
		cautions bool
	}{
		{"check --brief --readings 50", true},
		{"check --brief --readings 50 --format markdown", true},
		{"check --brief --readings 50 --format json", true},
		{"check --brief --readings 50 --format csv", false}, // which lists findings, cautions among them
		{"weigh", false},
		{"assemble", true},
		{"assemble --format html", true},
		{"oven", true},
		{"oven --format html", true},
		{"oven --format json", true},
		{"oven --readings 14:00=300C,15:00=250C", true},
		{"answers", true},
		{"answers --format markdown", true},
		{"answers --format html", true},
		{"answers --format json", true},
	} {
		t.Run(c.args, func(t *testing.T) {
			code, out, err := at(Session{}, append(strings.Fields(c.args), demo)...)
			require.Equal(t, Done, code, err)
			require.NotRegexp(t, clears, out)
			if c.cautions {
				require.Contains(t, strings.ToLower(strings.Join(strings.Fields(out), " ")), "follow the food-safety authority of the place")
			}
		})
	}
	for _, format := range []string{"markdown", "text", "html"} {
		code, out, err := at(Session{}, "card", "--format", format, demo+"/rich-lemon-pudding.yaml")
		require.Equal(t, Done, code, err)
		require.NotRegexp(t, clears, out)
		require.Contains(t, strings.ToLower(strings.Join(strings.Fields(out), " ")), "follow the food-safety authority of the place")
	}
	for _, args := range [][]string{{"tables", "cautions"}, {"tables", "answers"}, {"tables", "doneness"}, {"tables", "allergens"}} {
		_, out, _ := at(Session{}, args...)
		// The address of a work is its own.
		require.NotRegexp(t, clears, regexp.MustCompile(`https?://\S+`).ReplaceAllString(out, ""), args)
	}
}
