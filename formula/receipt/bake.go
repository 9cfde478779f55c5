package receipt

import (
	"regexp"
	"slices"
	"strings"

	"assize/formula"
)

// ReadBake reads times and temperatures out of a bake or oven text: "half an
// hour", "30-35 min at 350 F", "15 min at 450 F, then 350 F 45 min". A bare
// figure is minutes. Words that are neither stay for the method reader.
func ReadBake(text string) formula.Bake {
	var bake formula.Bake
	var stage formula.Stage
	flush := func() {
		if stage != (formula.Stage{}) {
			bake.Stages = append(bake.Stages, stage)
			stage = formula.Stage{}
		}
	}
	for _, m := range bakeFigures(text) {
		if m.isTime {
			if stage.HighMinutes > 0 {
				flush()
			}
			stage.LowMinutes, stage.HighMinutes = m.low, m.high
			continue
		}
		if stage.HighC > 0 {
			flush()
		}
		stage.LowC, stage.HighC = m.low, m.high
	}
	flush()
	for _, s := range bake.Stages {
		bake.Minutes += (s.LowMinutes + s.HighMinutes) / 2
	}
	return bake
}

var (
	bakeWord  = regexp.MustCompile(`(?i)\b(?:bak(?:e|ed|es|ing)|oven)\b`)
	caseBaked = regexp.MustCompile(`(?i)\b(?:blind|empty|part[ -]baked|baked (?:shell|case|crust))\b`)
	stepEnd   = regexp.MustCompile(`[.;:](?:\s|$)`)
)

// bakeInStep reads the baking out of a step in words. Only a sentence that
// speaks of baking or the oven counts, from that word on when figures follow
// it: an hour's rest or ten minutes' beating is no baking, nor is what is done
// to an empty case.
func bakeInStep(step string) formula.Bake {
	var last formula.Bake
	for _, sentence := range stepEnd.Split(step, -1) {
		at := bakeWord.FindStringIndex(sentence)
		if at == nil || caseBaked.MatchString(sentence) {
			continue
		}
		b := ReadBake(sentence[at[0]:])
		if !b.Said() {
			b = ReadBake(sentence)
		}
		if b.Said() {
			last = b
		}
	}
	return last
}

var (
	stirWord = regexp.MustCompile(`(?i)\b(?:stir|whisk|whip|beat|cook)(?:s|t|ed|ing|en)?\b`)
	fireWord = regexp.MustCompile(`(?i)\b(?:heat|fire|flame|stove|water|boil(?:ing|s)?|simmer(?:ing|s)?|microwave|thick(?:en|ens|ened)?)\b`)
)

// fireInStep is how many minutes a step stirs the part open on the fire: the
// sentences that stir or cook it by some heat and tell how long. What is boiled
// or steamed shut up in a cloth or a basin is not stirred.
func fireInStep(step string) float64 {
	sum := 0.0
	for _, sentence := range stepEnd.Split(step, -1) {
		if bakeWord.MatchString(sentence) || !stirWord.MatchString(sentence) || !fireWord.MatchString(sentence) {
			continue
		}
		sum += ReadBake(sentence).Minutes
	}
	return sum
}

var (
	boilWord = regexp.MustCompile(`(?i)\b(?:boils?|boil(?:ed)? up|simmers?|simmered|bubbles)\b`)
	// what keeps it from the boil, and what is boiled by itself
	shortOfBoil = regexp.MustCompile(`(?i)\b(?:not|never|nor|without|nearly|almost|before|under|below|ready to|point of)\b[^,;]*$`)
	boilsAlone  = regexp.MustCompile(`(?i)^(?:up )?(?:the )?(?:new |rest of the )?(?:milk|cream|water|wine|syrup|lemons?|oranges?|rinds?|peels?)\s*(?:to|till|until|for|in|$|[.;]|, (?:then|pour|strain|let|and))`)
	broughtUp   = regexp.MustCompile(`(?i)\bbring (?:the )?(?:milk|cream|water|wine|syrup) (?:just )?to (?:the|a)\s*$`)
)

// boilsInStep reports whether a step brings what it works to the boil: not its
// milk or syrup alone, and not when it is kept short of the boil.
func boilsInStep(step string) bool {
	for _, sentence := range stepEnd.Split(step, -1) {
		if bakeWord.MatchString(sentence) {
			continue
		}
		for _, at := range boilWord.FindAllStringIndex(sentence, -1) {
			before, after := sentence[:at[0]], strings.TrimSpace(sentence[at[1]:])
			if !shortOfBoil.MatchString(before) && !boilsAlone.MatchString(after) && !broughtUp.MatchString(before) {
				return true
			}
		}
	}
	return false
}

type bakeFigure struct {
	low, high float64 // minutes or degrees Celsius
	isTime    bool
}

// bakeUnits are the words that close a figure: minutes to multiply by, or a
// scale of temperature.
var bakeUnits = map[string]struct {
	minutes float64
	degrees string
}{
	"min": {minutes: 1}, "mins": {minutes: 1}, "minute": {minutes: 1}, "minutes": {minutes: 1}, "m": {minutes: 1},
	"h": {minutes: 60}, "hr": {minutes: 60}, "hrs": {minutes: 60}, "hour": {minutes: 60}, "hours": {minutes: 60},
	"c": {degrees: "C"}, "celsius": {degrees: "C"}, "centigrade": {degrees: "C"},
	"f": {degrees: "F"}, "fahrenheit": {degrees: "F"},
}

func bakeFigures(text string) []bakeFigure {
	words := bakeWords(text)
	var out []bakeFigure
	from := 0 // words before it are used up
	add := func(end int, close func(low, high float64) bakeFigure) {
		for start := max(from, end-6); start < end; start++ {
			phrase := strings.Join(trimArticles(words[start:end]), " ")
			n, err := ParseNumber(phrase)
			if phrase == "" || err != nil {
				continue
			}
			out = append(out, close(n.Low.InexactFloat64(), n.High.InexactFloat64()))
			return
		}
		// "an hour" is one hour.
		if end > from && (words[end-1] == "an" || words[end-1] == "a") {
			out = append(out, close(1, 1))
		}
	}
	for i, w := range words {
		unit, ok := bakeUnits[w]
		switch {
		case ok && unit.minutes > 0:
			more, used := andAPart(words[i+1:])
			add(i, func(low, high float64) bakeFigure {
				return bakeFigure{(low + more) * unit.minutes, (high + more) * unit.minutes, true}
			})
			from = i + 1 + used
			continue
		case ok:
			add(i, func(low, high float64) bakeFigure {
				return bakeFigure{celsius(low, unit.degrees), celsius(high, unit.degrees), false}
			})
		case w == "," || w == "then" || w == "+" || w == "at":
			add(i, bareFigure)
		default:
			continue
		}
		from = i + 1
	}
	add(len(words), bareFigure)
	return out
}

// andAPart reads what may follow a time in words, "an hour and a half", as a
// part of its unit, and how many words that took.
func andAPart(words []string) (part float64, used int) {
	for _, p := range []struct {
		words []string
		part  float64
	}{
		{[]string{"and", "three", "quarters"}, .75}, {[]string{"and", "a", "half"}, .5},
		{[]string{"and", "a", "quarter"}, .25}, {[]string{"and", "half"}, .5},
	} {
		if len(words) >= len(p.words) && slices.Equal(words[:len(p.words)], p.words) {
			return p.part, len(p.words)
		}
	}
	return 0, 0
}

// bareFigure reads a figure without a unit: minutes, which no kitchen counts
// beyond six hours, else degrees of an oven, Fahrenheit above 260.
func bareFigure(low, high float64) bakeFigure {
	const sixHours, hottestC = 360, 260
	switch {
	case high <= sixHours:
		return bakeFigure{low, high, true}
	case high <= hottestC:
		return bakeFigure{low, high, false}
	}
	return bakeFigure{celsius(low, "F"), celsius(high, "F"), false}
}

func celsius(degrees float64, scale string) float64 {
	if scale == "F" {
		return (degrees - 32) / 1.8
	}
	return degrees
}

// apart parts the signs of a text from its words, and leaves out those that say
// nothing.
var apart = strings.NewReplacer("°", " ", "º", " ", ",", " , ", "+", " + ", "(", " ", ")", " ")

// bakeWords splits keeping fractions, ranges and commas, and parting a figure
// from a unit written against it ("180C", "30min").
func bakeWords(text string) []string {
	text = apart.Replace(strings.ToLower(text))
	var out []string
	for _, w := range strings.Fields(text) {
		w = strings.TrimRight(w, ".;:")
		cut := len(w)
		for cut > 0 && (w[cut-1] < '0' || w[cut-1] > '9') {
			cut--
		}
		if _, unit := bakeUnits[w[cut:]]; cut > 0 && unit {
			out = append(out, w[:cut], w[cut:])
			continue
		}
		if w == "degrees" || w == "degree" || w == "about" || w == "" || w == "fan" {
			continue
		}
		out = append(out, w)
	}
	return out
}

// trimArticles drops the words between a fraction and its unit: "three
// quarters of an" hour.
func trimArticles(words []string) []string {
	for len(words) > 1 {
		switch words[len(words)-1] {
		case "an", "a", "of":
			words = words[:len(words)-1]
		default:
			return words
		}
	}
	return words
}
