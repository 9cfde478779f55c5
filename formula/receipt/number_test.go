package receipt

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseNumber(t *testing.T) {
	for _, c := range []struct{ text, low, likely, high string }{
		{"6", "6", "6", "6"},
		{"1.5", "1.5", "1.5", "1.5"},
		{".5", "0.5", "0.5", "0.5"},
		{"1,000", "1000", "1000", "1000"},
		{"3/4", "0.75", "0.75", "0.75"},
		{"1 1/2", "1.5", "1.5", "1.5"},
		{"1-1/2", "1.5", "1.5", "1.5"},
		{"1 and 1/2", "1.5", "1.5", "1.5"},
		{"1 & 1/2", "1.5", "1.5", "1.5"},
		{"½", "0.5", "0.5", "0.5"},
		{"1½", "1.5", "1.5", "1.5"},
		{"1 ½", "1.5", "1.5", "1.5"},
		{"1⁄4", "0.25", "0.25", "0.25"},
		{"2 to 3", "2", "2.5", "3"},
		{"2-3", "2", "2.5", "3"},
		{"2–3", "2", "2.5", "3"},
		{"2 - 3", "2", "2.5", "3"},
		{"2 or 3", "2", "2.5", "3"},
		{"from 2 to 3", "2", "2.5", "3"},
		{"between two and three", "2", "2.5", "3"},
		{"two or three", "2", "2.5", "3"},
		{"1 to 1 1/2", "1", "1.25", "1.5"},
		{"1/2 to 3/4", "0.5", "0.625", "0.75"},
		{"half or three quarters of a", "0.5", "0.625", "0.75"},
		{"Half a", "0.5", "0.5", "0.5"},
		{"half", "0.5", "0.5", "0.5"},
		{"one half", "0.5", "0.5", "0.5"},
		{"a", "1", "1", "1"},
		{"an", "1", "1", "1"},
		{"a quarter of a", "0.25", "0.25", "0.25"},
		{"three quarters of a", "0.75", "0.75", "0.75"},
		{"three-fourths", "0.75", "0.75", "0.75"},
		{"two-thirds", "0.666666666667", "0.666666666667", "0.666666666667"},
		{"half a quarter of a", "0.125", "0.125", "0.125"},
		{"one and a half", "1.5", "1.5", "1.5"},
		{"two and three quarters", "2.75", "2.75", "2.75"},
		{"dozen", "12", "12", "12"},
		{"a dozen", "12", "12", "12"},
		{"2 dozen", "24", "24", "24"},
		{"a dozen and a half", "18", "18", "18"},
		{"half a dozen", "6", "6", "6"},
		{"two and a half dozen", "30", "30", "30"},
		{"a couple", "2", "2", "2"},
		{"a score", "20", "20", "20"},
		{"half a score", "10", "10", "10"},
		{"twenty-four", "24", "24", "24"},
		{"a hundred", "100", "100", "100"},
		{"two hundred and fifty", "250", "250", "250"},
		{"1000000", "1000000", "1000000", "1000000"},
	} {
		t.Run(c.text, func(t *testing.T) {
			s, err := ParseNumber(c.text)
			require.NoError(t, err)
			require.Equal(t, []string{c.low, c.likely, c.high}, []string{s.Low.String(), s.Likely.String(), s.High.String()})
		})
	}
}

func TestParseNumberRefuses(t *testing.T) {
	for _, c := range []struct{ text, why string }{
		{"", "no number is given"},
		{"  ", "no number is given"},
		{"0", "nought"},
		{"0.0", "nought"},
		{"0 to 3", "nought"},
		{"-2", "less than nothing"},
		{"−2", "less than nothing"},
		{"1e400", "not a number"},
		{"NaN", "not a number"},
		{"Inf", "not a number"},
		{"0x10", "n"},
		{"1000001", "more than any kitchen"},
		{"1234567890123", "more digits"},
		{"0.1234567890123", "more digits"},
		{"1/0", "divides by nothing"},
		{"1,5", "a point, not a comma"},
		{"1.2.3", "two points"},
		{"eggs", "not a number"},
		{"2 3", "not a number"},
		{"two eggs", "not a number"},
		{"from 2", "not a number"},
		{"2 to", "not a number"},
		{strings.Repeat("a", 101), "too long"},
	} {
		t.Run(c.text, func(t *testing.T) {
			_, err := ParseNumber(c.text)
			require.ErrorContains(t, err, c.why)
			require.NotRegexp(t, `^[A-Z]|\.$`, err.Error())
		})
	}
}
