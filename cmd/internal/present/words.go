package present

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"assize/formula"
	"assize/ratios/judge"
	"assize/ratios/readings"
)

// Headings, in the order they stand on a page.
const (
	headMakes       = "What it makes"
	headProportions = "Proportions"
	headExpect      = "What to expect"
	headRather      = "If you would rather not"
	headOven        = "The oven, and done"
	headEye         = "Keep an eye on"
	headSettle      = "Settle first"
	headElsewhere   = "Said elsewhere in the book"
	headTaken       = "Taken as"
	headAssumed     = "Assumed"
	headDoubt       = "What the weights hang on"
	headCautions    = "Cautions"
	headSources     = "Sources"
)

// Headings of the pages about ovens.
const (
	headTablesSay = "What the works say"
	headWhichOven = "In which oven"
	headAsSaid    = "Mind"
	headInOrder   = "In this order"
	headLeftOut   = "Not placed"
	headFall      = "How it falls"
	headCool      = "Once out"
	headBase      = "The bottom crust"
)

// coldDish is said where a hot tray or stone is not to be advised, and
// baseJudged how far the chances of a base go.
const (
	coldDish   = "A cold dish of earthenware, china or glass goes on no hot tray or stone: part-bake the case, or bake it in tin."
	baseJudged = "Reckoned from the wet of the filling, the heat, the case and what it stands on; not very sure."
)

// Headings of the answer sheet.
const (
	headHolds     = "What is in it"
	headAllergens = "Foods people are allergic to"
	headRawEgg    = "Egg, raw or cooked"
	headDisplay   = "To be eaten, or for show"
	headSigned    = "Answered by"
)

// answersLead is the first thing read on the answer sheet.
const answersLead = "Made from what the receipt lists and what its directions name, and from nothing else. Read every packet, then answer; when you do not know, say so. This sheet never clears a dish."

// allergensElse stands under the allergens.
const allergensElse = "Of foods not named here nothing is known to us: bought things may hold more, and a kitchen that uses them all carries them from dish to dish."

// displayOnly and signHere are filled in by hand.
func displayOnly() List {
	return List{
		{Text: "[__] Display only: not to be eaten, and labelled so."},
		{Text: "[__] To be eaten: made, kept and served by the food-safety rules of the place, by people trained in them."},
	}
}

func signHere() List {
	return List{
		{Text: "Made with (makes and batches): ______________________________"},
		{Text: "Heat at the centre, and when: ______________________________"},
		{Text: "Name and date: ______________________________"},
	}
}

// byThermometer stands with every heat that is not said in degrees.
const byThermometer = "Go by an oven thermometer."

// neverTheHand stands with every count of the hand.
const neverTheHand = "Do not try it: it burns, and the same count is a hundred degrees apart in two cooks' books. Never ask visitors to try the hand test; show them the thermometer."

// oldWords stands with an oven word of an old book.
const oldWords = "No table of degrees older than 1915 is known, so a word of an old book is good to 50 F either way at best."

// papersDiffer stands with the tests of paper and flour.
const papersDiffer = "Papers and flours differ: one kind browned in a minute where another took three. Keep hot paper out of a fired oven, and go by a thermometer."

// How sure the line of a falling oven is.
const (
	fewReadings  = "Two readings give a line and not its error; the ranges are taken at a tenth. Read it again in half an hour."
	manyReadings = "Eight readings in ten would lie between; the further off in time, the wider. A door left open, or a full oven of wet dough, makes it fall faster."
)

// placeNames are the countries as they are written.
var placeNames = map[string]string{"england": "England", "scotland": "Scotland", "ireland": "Ireland", "usa": "United States"}

// under says where a receipt comes from: "Millrace House manuscript, leaf 12.
// England, 1838."
func under(f *formula.Formula) string {
	place := placeNames[f.Place]
	when := fmt.Sprintf("%s, %d", place, f.Year)
	if f.Printed != 0 {
		when += fmt.Sprintf(", in a book of %d", f.Printed)
	}
	if f.Source == "" {
		return when
	}
	return strings.TrimRight(f.Source, ".") + ". " + when
}

// upper makes the first letter a capital.
func upper(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	return strings.ToUpper(string(r[0])) + string(r[1:])
}

// and joins words as they are said: "a, b and c".
func and(words []string) string { return joined(words, " and ") }

// or joins words as they are said: "a, b or c".
func or(words []string) string { return joined(words, " or ") }

// plainly is the name of a class within a sentence: without its bracket, and small
// but for proper names.
func plainly(name string) string {
	name, _, _ = strings.Cut(name, " (")
	for _, proper := range []string{"Yorkshire", "Madeira", "American"} {
		if strings.HasPrefix(name, proper) {
			return name
		}
	}
	first, n := utf8.DecodeRuneInString(name)
	return string(unicode.ToLower(first)) + name[n:]
}

func joined(words []string, last string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + last + words[n-1]
}

// turnsOut are the textures after "to": "likely to set cakey".
var turnsOut = map[string]string{
	"sets":       "set smooth",
	"starch-set": "set with its starch",
	"cakey":      "set cakey",
	"curdy":      "curdle",
	"thin":       "stay loose or weep",
	"rubbery":    "set rubbery",
	"sound":      "come out sound",
	"tough":      "be tough or hard",
	"crumbly":    "fall to crumbs",
	"greasy":     "be greasy",
}

// short are the textures in a word or two, for what a change does.
var short = map[string]string{
	"sets":       "smooth",
	"starch-set": "set with starch",
	"cakey":      "cakey",
	"curdy":      "curdled",
	"thin":       "loose or weeping",
	"rubbery":    "rubbery",
	"sound":      "sound",
	"tough":      "tough",
	"crumbly":    "crumbling",
	"greasy":     "greasy",
}

// turns is how a texture turns out, with the word told beside its share:
// "set tender" for a soft smooth set, "come out sound and flaky" for a paste.
func turns(t *judge.Texture, id string) string {
	out, ok := turnsOut[id]
	if !ok {
		out = "be " + id
	}
	if id != t.Likeliest || t.Word == "" {
		return out
	}
	switch id {
	case "sets":
		return "set " + t.Word
	case "sound":
		return out + " and " + t.Word
	}
	return out
}

// verdict is the sentence about one part, without a stop. Its subject is the
// part's name, or nothing when it is the only part judged.
func verdict(p *judge.Part, only bool) string {
	t := p.Texture
	best := share(t, t.Likeliest)
	the := "the " + p.Name
	if t.Undecided {
		ways := closest(t)
		var said []string
		for _, s := range ways {
			said = append(said, fmt.Sprintf("%s (%s)", turns(t, s.Texture.ID), outOfTen(s.Share)))
		}
		if only {
			return "could go either way: it may " + or(said)
		}
		return the + " could go either way: it may " + or(said)
	}
	asMeant := ""
	if p.Class != nil && p.Class.Class.Meant == t.Likeliest && isFault(t, t.Likeliest) {
		asMeant = ", as is meant"
	}
	if best >= nearly {
		if only {
			return "very likely to " + turns(t, t.Likeliest) + asMeant
		}
		return the + " is very likely to " + turns(t, t.Likeliest) + asMeant
	}
	said := "likely to " + turns(t, t.Likeliest) + asMeant + ", " + outOfTen(best)
	if only {
		return said
	}
	return the + " is " + said
}

func share(t *judge.Texture, id string) float64 {
	for _, s := range t.Shares {
		if s.Texture.ID == id {
			return s.Share
		}
	}
	return 0
}

func isFault(t *judge.Texture, id string) bool {
	return slices.ContainsFunc(t.Shares, func(s judge.Share) bool { return s.Texture.ID == id && s.Texture.Fault })
}

// worthNaming is the share from which one way among several is named.
const worthNaming = .15

// closest are the ways a part could go, most likely first: the first two, and
// a third when it is not far behind.
func closest(t *judge.Texture) []judge.Share {
	all := bySize(t)
	n := 2
	if len(all) > 2 && all[2].Share >= worthNaming {
		n = 3
	}
	return all[:min(n, len(all))]
}

// bySize are the shares, largest first.
func bySize(t *judge.Texture) []judge.Share {
	all := slices.Clone(t.Shares)
	slices.SortStableFunc(all, func(a, b judge.Share) int {
		switch {
		case a.Share > b.Share:
			return -1
		case a.Share < b.Share:
			return 1
		}
		return 0
	})
	return all
}

// shownShare is a texture of a part with its share: "sets cakey, about 8 in 10".
func shownShare(t *judge.Texture, s judge.Share) string {
	words := s.Texture.Shown
	if s.Texture.ID == t.Likeliest && t.Word != "" {
		switch s.Texture.ID {
		case "sets":
			words = "sets " + t.Word
		case "sound":
			words += ", " + t.Word
		}
	}
	return words + ", " + outOfTen(s.Share)
}

// layers are the three grounds of judgement, as they are named.
var layers = map[string]string{
	judge.LayerRange:     "published range",
	judge.LayerMechanism: "worked out",
	judge.LayerPractice:  "common practice",
}

// sureness is how sure a piece of evidence is.
var sureness = map[string]string{
	"high":   "sure of it",
	"medium": "fairly sure",
	"low":    "not very sure",
}

// ground is the layer and the sureness of evidence: "worked out, fairly sure".
func ground(e judge.Evidence) string {
	var said []string
	if l := layers[e.Layer]; l != "" {
		said = append(said, l)
	}
	if s := sureness[e.Confidence]; s != "" && e.Layer != judge.LayerPractice {
		said = append(said, s)
	}
	return strings.Join(said, ", ")
}

// pasteJudged says how far a judgement of paste goes. Held against published
// pastes that were kept back, it did no better than calling every paste sound.
const pasteJudged = "Of pastes we judge no better than a good guess."

// trust says how often a texture called likely was so, of published formulas
// the judge had not been fitted on.
func trust(shown string, said, right int) string {
	return fmt.Sprintf("of %d published formulas we called %q likely for, fitted without them, %d were so", said, shown, right)
}

// unheated is said of a filling that is eaten as mixed.
const unheated = "Nothing heats it, so neither egg nor starch sets in it: how it turns out is not foretold."

// nothingSets is said of a filling of fruit, meat or mincemeat by itself.
const nothingSets = "It keeps together by itself and is not there to set, so how it turns out is not foretold."

// notJudged says of kinds of part that have no mechanisms what is done instead.
func notJudged(p *judge.Part) string {
	switch {
	case p.Cold:
		return unheated
	case p.Unset:
		return nothingSets
	}
	if p.Class == nil {
		return fmt.Sprintf("How %s turns out is not judged yet.", p.Kind.A())
	}
	return fmt.Sprintf("How %s turns out is not judged yet; its proportions are held against what is usual.", p.Kind.A())
}

// Bounds of what is called the same in words.
const (
	sameShare  = .10 // of the figure before: set, toughness
	muchShare  = .35
	sameVolume = .05
	sameC      = 1.0 // degrees between set and curdled
	sameSweet  = 2.0 // parts of sugar to 100 of the water and sugar
	sameWater  = .01 // water to one of flour
)

// effect is what a remedy does, in words: the shares first, then each other
// thing it moves, then what it leaves as it was.
func effect(list []judge.Effect) string {
	var said, same []string
	for _, e := range list {
		if e.Kind == "share" {
			said = append(said, movedShare(e))
			continue
		}
		if words, still := movedMeasure(e); still != "" {
			same = append(same, still)
		} else if words != "" {
			said = append(said, words)
		}
	}
	if len(same) > 0 {
		said = append(said, and(same)+" as before")
	}
	return strings.Join(said, "; ")
}

// movedShare is how often a texture is looked for before and after: "cakey 8
// -> 3 in 10".
func movedShare(e judge.Effect) string {
	word := short[e.What]
	if word == "" {
		word = e.What
	}
	before, after := outOfTen(e.Before), outOfTen(e.After)
	plain := func(s float64) bool { return s >= hardly && s < nearly }
	if before == after {
		if e.After < e.Before {
			return word + " a little less often"
		}
		return word + " a little more often"
	}
	if plain(e.Before) && plain(e.After) {
		return fmt.Sprintf("%s %d -> %d in 10", word, tenths(e.Before), tenths(e.After))
	}
	return word + " " + strings.TrimPrefix(before, "about ") + " -> " + strings.TrimPrefix(after, "about ")
}

// movedMeasure is what becomes of one figure: words for its change, or its
// name when it stays as it was.
func movedMeasure(e judge.Effect) (words, same string) {
	by := e.After - e.Before
	part := 0.0
	if e.Before != 0 {
		part = by / math.Abs(e.Before)
	}
	a := func(much bool, more, less string) string {
		word := more
		if by < 0 {
			word = less
		}
		if much {
			return word
		}
		return "a little " + word
	}
	switch e.What {
	case "set_index":
		if math.Abs(part) < sameShare {
			return "", "set"
		}
		return "sets " + a(math.Abs(part) >= muchShare, "firmer", "softer"), ""
	case "volume_ml":
		if math.Abs(part) < sameVolume {
			return "", "fill"
		}
		return "fills " + a(math.Abs(part) >= muchShare, "more", "less"), ""
	case "curdle_margin_c":
		if math.Abs(by) < sameC {
			return "", "room before it curdles"
		}
		if by > 0 {
			return "safer from curdling", ""
		}
		return "nearer to curdling", ""
	case "sugar_share":
		if math.Abs(by) < sameSweet {
			return "", "sweetness"
		}
		return a(math.Abs(by) >= 4*sameSweet, "sweeter", "less sweet"), ""
	case "toughness":
		if math.Abs(part) < sameShare {
			return "", "bite"
		}
		return "eats " + a(math.Abs(part) >= muchShare, "tougher", "more tender"), ""
	case "net_water":
		if math.Abs(by) < sameWater {
			return "", "wetness of the paste"
		}
		return "handles " + a(math.Abs(by) >= 4*sameWater, "wetter", "drier"), ""
	}
	return "", ""
}

// settle is what to find out first, for one part of the receipt.
func settle(doubts []judge.Doubt) string {
	var said []string
	for i, d := range doubts {
		amount := "nearly all of it"
		if d.Part < nearly {
			amount = fmt.Sprintf("%d in 10", tenths(d.Part))
		}
		switch {
		case i > 0:
			said = append(said, fmt.Sprintf("%s (%s)", d.Words, amount))
		case d.Part >= nearly:
			said = append(said, d.Words+" carries nearly all of the doubt")
		case d.Part >= .5:
			said = append(said, fmt.Sprintf("%s carries most of the doubt (%s)", d.Words, partsOf(d.Part)))
		default:
			said = append(said, fmt.Sprintf("%s carries the largest share of the doubt (%s)", d.Words, partsOf(d.Part)))
		}
	}
	if len(said) == 0 {
		return ""
	}
	out := upper(said[0])
	if len(said) > 1 {
		out += ", then " + and(said[1:])
	}
	return out + "."
}

func partsOf(share float64) string {
	if n := tenths(share); n != 1 {
		return fmt.Sprintf("%d parts in 10", n)
	}
	return "1 part in 10"
}

// basisColumn heads the column of figures to the hundred. Only what is
// reckoned on flour is a baker's percentage.
var basisColumn = map[string]string{
	"flour": "baker's %",
	"egg":   "to 100 of egg",
	"total": "in 100 of all",
}

// states are amounts a receipt does not give, as they stand in a column.
var states = map[formula.State]string{
	formula.ToTaste:  "to taste",
	formula.NotGiven: "not given",
	formula.Enough:   "as it takes",
}

// fits says which family of formulas a part was held against.
func fits(p *judge.Part) string {
	c := p.Class
	if c == nil {
		return "nothing published is enough like it to be held against"
	}
	if c.Given {
		return c.Class.Name + ", as the receipt says"
	}
	if c.Distance > farOff {
		return "nothing of today is much like it; the nearest is " + c.Class.Name
	}
	return "nearest today: " + c.Class.Name
}

// farOff is the distance from which a class is no longer called like: its
// ratios lie about a third outside the ranges on the whole.
const farOff = .1

// quoted are words of the page.
func quoted(words string) string { return `"` + words + `"` }

// makes is what a part comes to on the scales and in the dish.
func makes(p *judge.Part, unit string) string {
	out := "makes " + weight(p.Profile.Total, unit)
	if v, ok := p.Measures["volume_ml"]; ok && p.Kind != formula.Pastry && measured(v) {
		out += ", " + volume(v)
	}
	return out
}

// measured reports that a figure was worked out.
func measured(v readings.Span) bool {
	return finite(v.Low, v.Likely, v.High) && v.Likely > 0
}

// sentence makes a plain statement a sentence.
func sentence(s string) string {
	s = upper(strings.TrimSpace(s))
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}

// kitchen says whose kitchen the receipt was weighed for, nothing when none is
// given.
func kitchen(k *formula.Kitchen) string {
	if !k.Given {
		return ""
	}
	out := "Weighed for the kitchen given"
	var in []string
	if place := placeNames[k.Place]; place != "" {
		in = append(in, place)
	}
	if k.Year != 0 {
		in = append(in, fmt.Sprint(k.Year))
	}
	if len(in) > 0 {
		out += " (" + strings.Join(in, ", ") + ")"
	}
	var has []string
	switch {
	case k.EggGrams.IsPositive():
		has = append(has, "eggs of "+figure(k.EggGrams)+" g")
	case k.EggSize != "":
		has = append(has, k.EggSize+" eggs")
	}
	if k.FlourProtein.IsPositive() {
		has = append(has, "flour of "+k.FlourProtein.String()+" g of protein in 100")
	}
	if k.Butter != "" {
		has = append(has, k.Butter+" butter")
	}
	if len(has) > 0 {
		out += ": " + strings.Join(has, ", ")
	}
	return out + "."
}

func ownTables(dir string) string {
	return "Tables of your own from " + dir + " were laid over ours."
}

// idleWords names the words of method that change nothing.
func idleWords(list []string) string {
	return "read, and of no weight here: " + strings.Join(list, ", ")
}

// meant is how the receipt itself says it should turn out.
func meant(words string) string { return "The receipt says of it: " + quoted(words) + "." }

// readCautions stands in the lead of a page that has cautions.
const readCautions = "Read the cautions below."

// seeElsewhere points from a missing step to the book's standing directions.
const seeElsewhere = "see below what the book says elsewhere"

// howToRead stands under the proportions.
const howToRead = "All by weight: 0.5 is half as much of the first as of the second. A single figure is one published formula."

// unsaidLabel stands before the usual steps a receipt does not speak of.
const unsaidLabel = "unsaid"

// unsaidSteps names usual steps that a receipt leaves unsaid and that matter
// less.
func unsaidSteps(names []string) string {
	return and(names) + ": usual, and not in the receipt; `assize assemble` puts them in their place"
}

// What a card says of a receipt nobody has made, one that nothing was changed
// in, and one whose owner has not been asked.
const (
	notYetBaked    = "Worked out, not yet baked."
	nothingChanged = "The amounts are the book's own, weighed."
	noPermission   = "no leave to print is recorded: ask whoever keeps the book before its words are printed"
)

// times is how often.
func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
