package receipt

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
)

// timeUnits are the words that make a time of a number.
var timeUnits = words("minute minutes min mins hour hours hr hrs day days night nights week weeks month months year years second seconds moment fortnight oclock")

// imperatives are the orders of a method, as a sentence begins with them.
var imperatives = words(`
	add beat mix stir put take boil bake melt pour strain sift grate rub roll make let set wash pick stone pound mince chop cut pare peel slice core squeeze
	whisk whip cream work knead fold lay line cover butter grease dredge strew sprinkle season sweeten flavour flavor dissolve soak scald simmer warm cool
	keep leave turn fill tie press pass bring cook place dust ice serve send break separate blanch bruise shred skim stew steam drain dry heat mould
	thicken moisten wet dust throw drop brush glaze ornament prepare procure have allow remove sieve combine blend toss thin spread wipe trim stick
	crumble weigh reduce then when having while after if next now do be proceed arrange divide shape form prick notch finish garnish decorate
	chill freeze preheat combine scrape spoon tip return begin crush clarify powder mash rinse flour scoop fry brown colour rasp heap smooth`)

// oven finds the heat of the oven in a sentence: "in a quick oven", "180 C",
// "gas mark 4". The place is in tokens.
func (r *Reader) oven(ts phrase) (from, to int) {
	if !ts.has(heatWords) {
		return 0, 0
	}
	for i := range ts {
		if k := ts.key(i); k != "oven" && k != "heat" {
			continue
		}
		for n := min(i, 5); n > 0; n-- {
			if ts[i-n:i].has(articles) || !plainWords(ts[i-n:i]) {
				continue
			}
			if r.ovenWord(ts[i-n : i]) {
				return i - n, i
			}
		}
	}
	for i := range ts { // "the oven is to be moderate"
		if ts.key(i) != "oven" {
			continue
		}
		j := i + 1
		if ts.key(j) == "," && ts.key(j+1) == "which" {
			j += 2
		}
		for j < len(ts) && j < i+6 && ts.is(j, beingHot) {
			j++
		}
		if j == i+1 && ts.key(j) == "," {
			j++ // "bake it in the oven, moderately hot"
		}
		for n := min(3, len(ts)-j); n > 0; n-- {
			if j <= i+2 && j+n < len(ts) && ts[j+n].kind != mark {
				continue // "the oven slow", and not "in the oven slow fires"
			}
			if plainWords(ts[j:j+n]) && r.ovenWord(ts[j:j+n]) {
				return j, j + n
			}
		}
	}
	for i := range ts {
		if n := degrees(ts[i:]); n > 0 {
			return i, i + n
		}
	}
	return 0, 0
}

// surelyFahrenheit is the heat from which degrees without a scale are Fahrenheit: no
// kitchen oven reaches it in the other.
var surelyFahrenheit = decimal.NewFromInt(275)

var (
	degreeWords  = words("degrees degree deg fahr")
	bakeWordsSet = words("bake baked baking oven")
)

// ovenSaid finds a heat told in other words than the table's, and gives it in those:
// "rather a hot oven", "a moderate-heated oven", "bake it slowly".
func (r *Reader) ovenSaid(ts phrase) (said string, at int) {
	for i := range ts {
		switch {
		case ts[i].kind == figure && ts.is(i+1, degreeWords) && ts.has(bakeWordsSet):
			if d := ts[i].value(); d.GreaterThanOrEqual(surelyFahrenheit) && ts[i].fault == sound {
				return ts[i].text + " F", i
			}
		case ts.key(i) == "oven":
			switch {
			case i > 2 && ts.key(i-2) == "a" && ts.is(i-3, rathers): // "rather a hot oven"
				if both := (phrase{ts[i-3], ts[i-1]}); r.ovenWord(both) {
					return both.String(), i - 3
				}
			case ts.key(i+2) == "heated": // "an oven moderately heated"
				if plain := strings.TrimSuffix(ts.key(i+1), "ly"); r.Tables.IsHeat(plain) {
					return plain, i + 1
				}
			case i > 1 && ts.key(i-1) == "heated":
				if plain := ts.key(i - 2); r.ovenWord(ts[i-2 : i-1]) {
					return plain, i - 2
				}
				if plain := strings.TrimSuffix(ts.key(i-2), "ly"); r.Tables.IsHeat(plain) { // "a moderately heated oven"
					return plain, i - 2
				}
			}
		case strings.HasPrefix(ts.key(i), "bak"):
			for j := i + 1; j < min(len(ts), i+4) && ts[j].kind == word; j++ {
				if heat, ok := bakedHow.at(ts, j); ok && ts.key(j+1) != "oven" {
					return heat, j
				}
			}
			if heat, ok := bakedHow.at(ts, i-1); ok {
				return heat, i - 1
			}
		}
	}
	return "", -1
}

var (
	rathers = words("rather pretty tolerably moderately very")
	// bakedHow are the words for how a thing is to bake, with the oven that does it.
	bakedHow = mapped(map[string]string{"slowly": "slow", "quickly": "quick", "quick": "quick", "brisk": "brisk", "briskly": "brisk", "gently": "gentle"})
)

// heatWords are the words without one of which no heat is said.
var heatWords = words("oven heat gas c f celsius fahrenheit centigrade")

var beingHot = words("is are being to be must should kept rather very")

var articles = words("a an the in of into")

// ovenWord reports words by which the table of ovens knows a heat.
func (r *Reader) ovenWord(ts phrase) bool {
	return r.Tables.IsHeat(ts.joinedKey())
}

// degrees reads a heat in figures: "350 F", "180°C", "gas mark 4".
func degrees(ts phrase) int {
	if n := ts.begins("gas mark"); n > 0 && len(ts) > n && ts[n].kind == figure {
		return n + 1
	}
	if len(ts) == 0 || ts[0].kind != figure {
		return 0
	}
	n := 1
	if k := ts.key(1); k == "degrees" || k == "degree" || k == "deg" {
		n = 2
	}
	switch ts.key(n) {
	case "c", "f", "celsius", "fahrenheit", "centigrade":
		return n + 1
	}
	return 0
}

// baking finds how long a sentence has the thing baked. The place is in tokens.
func baking(ts phrase) (from, to int) {
	at := -1
	for i := range ts {
		if k := ts.key(i); k == "bake" || k == "baked" || k == "bakes" || k == "baking" || k == "oven" {
			at = i
			break
		}
	}
	if at < 0 {
		return 0, 0
	}
	for i := at; i < len(ts); i++ {
		if n := timeAt(ts[i:]); n > 0 {
			return i, i + n
		}
	}
	for i := range at {
		if n := timeAt(ts[i:]); n > 0 && countMarks(ts[i:at], ";") == 0 && !(ts.key(at) == "oven" && ts[i:at].has(tillWords)) && !ts[max(0, i-5):i].has(notBaking) { // beaten an hour, till the oven is ready
			return i, i + n
		}
	}
	return 0, 0
}

// notBaking are things done for a time before the baking: "let it rise three hours".
var notBaking = words("rise stand rest lie soak steep beat boil boiled stew simmer stir cool prove knead")

var tillWords = words("till until while before")

// timeAt reads a length of time: "half an hour", "20 to 30 minutes", "an hour
// and a half", "three quarters of an hour".
func timeAt(ts phrase) int { return timeOf(ts, number(ts)) }

// timeOf is timeAt when the number the phrase begins with is read already.
func timeOf(ts phrase, c counted) int {
	if c.used == 0 {
		return 0
	}
	n := c.used
	if ts.is(n, timeUnits) {
		n++
	} else if ts.key(n) == "or" || ts.key(n) == "to" { // "half or three quarters of an hour"
		d := number(ts[n+1:])
		if d.used == 0 || !ts.is(n+1+d.used, timeUnits) {
			return 0
		}
		n += 2 + d.used
	} else {
		return 0
	}
	if ts.key(n) == "and" {
		if f := fraction(ts[n+1:]); f.used > 0 {
			n += 1 + f.used
			if k := ts.key(n); k == "or" || k == "to" { // "two hours and a half or three hours"
				if d := number(ts[n+1:]); d.used > 0 && ts.is(n+1+d.used, timeUnits) {
					return n + 2 + d.used
				}
			}
			return n
		}
		if f := number(ts[n+1:]); f.used > 0 && ts.is(n+1+f.used, timeUnits) {
			return n + 2 + f.used
		}
	}
	if k := ts.key(n); k == "or" || k == "to" {
		if f := number(ts[n+1:]); f.used > 0 && ts.is(n+1+f.used, timeUnits) {
			m := n + 2 + f.used
			if ts.key(m) == "and" {
				if g := fraction(ts[m+1:]); g.used > 0 {
					return m + 1 + g.used
				}
			}
			return m
		}
	}
	return n
}

// dish finds the vessel a thing is baked or set in, by the table of vessels.
func (r *Reader) dish(ts phrase) (from, to int) {
	for i := range ts {
		if i > 0 && ts.is(i, measuring) && (ts[i-1].kind == figure || ts.is(i-1, numberOpens)) && (ts.key(i+1) == "of" || i+1 < len(ts) && ts[i+1].opens.Name > 0) {
			continue // two cups sugar
		}
		if k := ts.key(i); (k == "sheet" || k == "sheets") && !ts.is(i-1, sheetOf) {
			continue // a sheet of paper, or of paste
		}
		if ts.is(i, handyWords) && !r.Tables.IsVessel(ts.key(i)) && r.bakedIn(ts, i) {
			return r.dishFrom(ts, i), dishTo(ts, i+1)
		}
		for n := min(int(ts[i].opens.Vessel), len(ts)-i); n > 0; n-- {
			if !plainWords(ts[i:i+n]) || !r.isVessel(ts[i:i+n]) {
				continue
			}
			if k := ts.key(i + n); k == "of" || k == "full" || k == "and" && ts.is(i+n-1, measuring) {
				continue // four tea-cups full of arrow-root
			}
			if n == 1 && (ts.is(i, handyWords) || ts.is(i, handy)) && !r.bakedIn(ts, i) {
				continue // a basin to mix in
			}
			return r.dishFrom(ts, i), dishTo(ts, i+n)
		}
	}
	return 0, 0
}

// dishTo takes in a second word for the vessel, "a tin pan", "tin pie-plates", and the
// other vessels it may be: "cups or saucers", "pans, cups or bowls".
func dishTo(ts phrase, end int) int {
	for {
		k := end
		for ts.is(k, shapes) && k < end+2 {
			k++
		}
		if !ts.is(k, handyWords) || ts[k].lead != " " && ts[k].lead != "-" {
			break
		}
		end = k + 1
	}
	for k := end; k < len(ts); {
		switch {
		case ts.key(k) == "or" || ts[k].kind == mark && ts.key(k) == "," && orFollows(ts, k):
			k++
		default:
			return end
		}
		for ts.is(k, shapes) || ts.key(k) == "or" {
			k++
		}
		if !ts.is(k, vesselNames) {
			return end
		}
		k++
		end = k
	}
	return end
}

// orFollows reports "or" within the next words: "pans, cups or bowls".
func orFollows(ts phrase, i int) bool {
	for j := i + 1; j < min(len(ts), i+4); j++ {
		if ts.key(j) == "or" {
			return true
		}
	}
	return false
}

// bakedIn reports that a thing is baked or set in the vessel at token i.
func (r *Reader) bakedIn(ts phrase, i int) bool {
	if ts.key(i) == "hoop" || ts.key(i) == "hoops" {
		return true
	}
	if !ts.has(bakingWords) && !(strings.HasPrefix(ts.key(i), "mould") && ts.has(pouring)) {
		return false
	}
	for j := max(0, i-6); j < i; j++ {
		if ts.is(j, holding) {
			return true
		}
	}
	return false
}

var (
	bakingWords = words("bake baked bakes baking oven fill filled line lined buttered")
	pouring     = words("pour poured put oiled set turn")
	holding     = words("on upon in into fill buttered butter line between round your the")
)

// dishFrom takes in the words of shape and size before a vessel: "a shallow
// dish", "a 23 cm tart tin".
func (r *Reader) dishFrom(ts phrase, i int) int {
	for j := i; j > 0 && (ts[j-1].kind == figure || ts[j-1].kind == word && ts.is(j-1, shapes)); j-- {
		if k := ts.key(j - 1); k != "in" && k != "inch" && k != "inches" && k != "cm" && k != "x" || j > 1 && ts[j-2].kind == figure {
			i = j - 1
		} else {
			break
		}
	}
	return i
}

var shapes = words("baking gem little square buttered oiled greased muffin cake gem bread shallow deep large small long round oval square tart cm in inch inches sandwich loaf loose bottomed earthen tin china soup pie flat fluted paper pudding custard x")

// measuring are vessels that measure as well.
var measuring = words("cup cups teacup teacups glass glasses tumbler tumblers")

// handy are vessels a cook mixes or drinks in as well.
var (
	handy       = words("basin bowl cup glass pan plate saucer dish mould mold tin jar ring hoop")
	sheetOf     = words("baking tin iron cooky cookie")
	vesselNames = words("basin bowl cup pan plate saucer dish mould mold tin jar ring hoop glass pot pattypan patty teacup " +
		"basins bowls cups glasses pans plates saucers dishes moulds molds tins jars rings hoops pots pattypans teacups")
	handyWords = words("sheet sheets basin bowl cup pan plate saucer dish mould mold tin jar ring hoop " +
		"basins bowls cups glasses pans plates saucers dishes moulds molds tins jars rings hoops")
)

func (r *Reader) isVessel(ts phrase) bool {
	var room [longestKey]byte
	if key, ok := ts.appendKey(room[:0]); ok {
		return r.Tables.IsVessel(string(key))
	}
	return r.Tables.IsVessel(ts.joinedKey())
}

// stages puts together a baking at one heat and then at another: "at 425 F for
// 15 minutes, then at 350 F for 40". It is empty when there are no two.
func stages(ts phrase, words func(from, to int) string) string {
	var heats, times []string
	for i := 0; i < len(ts); {
		if n := degrees(ts[i:]); n > 0 {
			heats = append(heats, words(i, i+n))
			i += n
			continue
		}
		if n := timeAt(ts[i:]); n > 0 {
			times = append(times, words(i, i+n))
			i += n
			continue
		}
		i++
	}
	if len(heats) != 2 || len(times) != 2 {
		return ""
	}
	return times[0] + " at " + heats[0] + ", then " + heats[1] + " " + times[1]
}

// between makes one range of two times in different words: "half an hour or
// forty minutes". It is empty when the words are no such thing.
func between(ts phrase) string {
	for i := 1; i+1 < len(ts); i++ {
		if k := ts.key(i); k != "or" && k != "to" || !ts.is(i-1, timeUnits) {
			continue
		}
		a, b := ReadBake(ts[:i].String()), ReadBake(ts[i+1:].String())
		if len(a.Stages) == 1 && len(b.Stages) == 1 && a.Minutes < b.Minutes {
			return fmt.Sprintf("%g to %g minutes", a.Minutes, b.Minutes)
		}
	}
	return ""
}

// emptyWords are words without which no case is said to be baked empty.
var emptyWords = words("blind empty part baked")

// setBaking takes oven, time and dish from a sentence, the first of each that
// the text gives.
func (r *Reader) setBaking(f *formula.Formula, ts phrase, words func(from, to int) string) (ovenAt, bakeAt, dishAt int) {
	ovenAt, bakeAt, dishAt = -1, -1, -1
	empty := ts.has(emptyWords) && caseBaked.MatchString(words(0, len(ts)))
	if f.Oven == "" {
		said, at := r.ovenSaid(ts)
		if from, to := r.oven(ts); to > 0 && !(empty && ts[from].kind == figure) && !ts.is(at, rathers) {
			f.Oven, ovenAt = words(from, to), from
		} else if said != "" {
			f.Oven, ovenAt = said, at
		}
	}
	if f.Bake == "" {
		if from, to := baking(ts); to > 0 && ReadBake(words(from, to)).Said() && !empty {
			f.Bake, bakeAt = words(from, to), from
			if s := stages(ts, words); s != "" {
				f.Bake = s
			} else if s := between(ts[from:to]); s != "" {
				f.Bake = s
			}
		}
	}
	if f.Dish == "" {
		if from, to := r.dish(ts); to > 0 {
			f.Dish, dishAt = words(from, to), from
		}
	}
	return ovenAt, bakeAt, dishAt
}
