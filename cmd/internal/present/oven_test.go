package present

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"assize/ratios/judge"
	"assize/ratios/oven"
)

// The pages of ovens, which belong to no receipt, and the answer sheet in JSON,
// which has a form of its own.
func TestOvenGoldens(t *testing.T) {
	s, a := sample(t)
	heats := oven.Read("quick, then 300 F", a.Tables, oven.When{Year: 1838})
	require.Len(t, heats, 2)
	asked := &OvenSheet{Asked: "quick, then 300 F", Heats: heats, When: oven.When{Year: 1838}}
	timed, faults := oven.ReadReadings("r", []byte("14:00 300C, 14:30 275C, 15:00 252C"))
	require.NoError(t, faults.Err())
	line, err := oven.Fit(timed.Readings, 18)
	require.NoError(t, err)
	d, why, ok := s.Report.Dish()
	require.True(t, ok, why)
	plan := &PlanSheet{Line: line, Clock: timed.Clock, Plan: oven.Plan(line, []oven.Dish{d, {Name: "Bread", C: oven.Range{Low: 400, Likely: 420, High: 450}}}), Others: []string{"Paste: a paste by itself"}, Cautions: s.Report.Findings}
	for name, write := range map[string]func(*bytes.Buffer) error{
		"oven.txt":     func(b *bytes.Buffer) error { return Oven(asked, a).Text(b, Layout{Width: 100}) },
		"oven.md":      func(b *bytes.Buffer) error { return Oven(asked, a).Markdown(b) },
		"oven-doc.txt": func(b *bytes.Buffer) error { return OvenJSON(b, asked, a) },
		"plan.txt":     func(b *bytes.Buffer) error { return Plan(plan, a).Text(b, Layout{Width: 100}) },
		"plan-doc.txt": func(b *bytes.Buffer) error { return PlanJSON(b, plan, a) },
		"order.txt": func(b *bytes.Buffer) error {
			return Plan(&PlanSheet{Line: line, Clock: timed.Clock}, a).Text(b, Layout{Width: 60})
		},
		"answers-doc.txt": func(b *bytes.Buffer) error { return AnswersJSON(b, s, a, false) },
	} {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			require.NoError(t, write(&b))
			if regexp.MustCompile(`-doc\.txt$`).MatchString(name) {
				require.True(t, json.Valid(b.Bytes()))
			}
			golden(t, name, b.Bytes())
		})
	}
}

// clears are words that would clear a dish.
var clears = regexp.MustCompile(`(?i)\b(?:safe|safely|harmless|free (?:of|from)|[a-z]+-free|suitable for|no risk)\b`)

// No page of ours clears a dish, and every one that tells of a receipt's
// ingredients says whom it defers to.
func TestNoPageClearsADish(t *testing.T) {
	for name, got := range renderings(t) {
		require.NotRegexp(t, clears, string(got), name)
	}
	s, a := sample(t)
	for _, p := range []*Page{Check(s, a, Wish{}), Check(s, a, Wish{Brief: true}), Baking(s, a), Answers(s, a)} {
		var b bytes.Buffer
		require.NoError(t, p.Text(&b, Layout{Width: 400}))
		require.Contains(t, b.String(), "follow the food-safety authority of the place")
		require.Contains(t, b.String(), "can carry disease", "no wish leaves a caution out")
	}
	// With nothing found, the sheet still says that nothing follows from it.
	s.Report.Weighed.Parts[0].Items, s.Report.Weighed.Parts[1].Items, s.Report.Allergens = nil, nil, nil
	var b bytes.Buffer
	require.NoError(t, Answers(s, a).Text(&b, Layout{Width: 400}))
	require.Contains(t, strings.Join(strings.Fields(b.String()), " "), "never clears a dish")
	require.NotRegexp(t, clears, b.String())
}

// What no line lists is told with where it is named.
func TestAnswersTellWhatIsOnlyNamed(t *testing.T) {
	s, a := sample(t)
	egg := s.Report.Allergens[0].From[0]
	for place, words := range namedIn {
		n := judge.Named{Ingredient: egg, Words: "white of an egg", Place: place, Part: 1}
		s.Report.Named = []judge.Named{n}
		s.Report.Allergens[0].From, s.Report.Allergens[0].Named = nil, s.Report.Named
		s.Report.Findings = nil
		var b bytes.Buffer
		require.NoError(t, Answers(s, a).Text(&b, Layout{Width: 400}))
		require.Contains(t, b.String(), "egg ("+words+")")
		require.Contains(t, b.String(), "egg, "+words+": it is to be baked on")
		require.NotContains(t, b.String(), "No egg is listed")
	}
}

// HTML fetches nothing, runs nothing, and shows what people wrote as they wrote
// it.
func TestHTMLStandsByItself(t *testing.T) {
	s, a := sample(t)
	var b bytes.Buffer
	require.NoError(t, HTML(&b, []*Page{Answers(s, a)}))
	require.NotRegexp(t, `(?i)<script|<link|src=|href=|url\(|@import|\son[a-z]+=`, b.String())
	require.NotContains(t, b.String(), "<b>pudding</b>")
	require.Contains(t, b.String(), "&lt;b&gt;pudding&lt;/b&gt;")
}

func TestOvenWords(t *testing.T) {
	require.Equal(t, "about 400 F (350-450), 205 C (175-230)", heat(oven.Range{Low: 176.67, Likely: 204.4, High: 232.2}, false))
	require.Equal(t, "356 F, 180 C", heat(oven.Range{Low: 180, Likely: 180, High: 180}, true))
	require.Equal(t, "about 35 minutes (20 minutes to 1 h 10 min)", duration(oven.Minutes{Range: oven.Range{Low: 22, Likely: 36, High: 71}}))
	require.Equal(t, "about 12 minutes (8 to 19 minutes)", duration(oven.Minutes{Range: oven.Range{Low: 7.6, Likely: 12, High: 19}}))
	require.Contains(t, duration(oven.Minutes{Range: oven.Range{Low: 20, Likely: 40, High: math.Inf(1)}, MayNever: true}), "may never set")
	require.Contains(t, duration(oven.Minutes{Never: true}), "never")
	require.Equal(t, "2 hours", clockless(121))
}
