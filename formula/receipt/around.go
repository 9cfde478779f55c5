package receipt

import (
	"slices"
	"strings"
)

// advice are words of a clause that speaks of what else might be done, of what
// goes with the dish or of another receipt, and not of what is put in.
var advice = []string{
	"may", "might", "can", "could", "would", "should", "if", "when", "instead", "without", "not", "never", "recipe", "receipt",
	"substitute", "substituted", "substituting", "omit", "omitted", "omitting", "improve", "improves", "improved", "improvement", "addition", "answer", "answers", "answering", "sometimes", "remains", "vary", "varied", "variety",
	"preferred", "liked", "like", "optional", "fancy", "garnish", "garnished", "ornament", "ornamented", "decorate", "decorated",
	"serve", "served", "serving", "send", "eat", "eaten", "accompany", "handed", "allowing", "allow", "reckoning", "according", "proper", "suitable",
}

var adviceWords = words(strings.Join(advice, " "))

// Words around a name that show it is not put into the dish.
var (
	// compares: "as thick as cream", "the size of an egg", "the colour of straw".
	compares = []string{"as", "size", "bigness", "resemble", "resembles", "resembling", "consistency", "consistence", "thickness", "colour", "color", "shape", "weight"}
	// vessels: greased, floured and filled with what does not go in.
	vessels = []string{"dish", "dishes", "tin", "tins", "pan", "pans", "mould", "moulds", "mold", "molds", "basin", "saucepan", "stewpan", "paper", "papers", "board", "slab", "table", "hoop", "hoops", "patty", "pattypans", "plate", "plates", "saucer", "saucers", "cup", "cups", "cloth", "rolling", "hands", "pot", "bath", "fill", "filled", "grease", "greased", "greasing", "rub", "kettle", "spoon", "sheet", "sheets", "mustard"}
	// greasers: what a vessel is rubbed, dusted, lined or filled with that is not eaten as a part.
	greasers = []string{"butter", "lard", "oil", "suet", "fat", "grease", "dripping", "flour", "meal", "sugar", "crumbs", "bread", "egg", "eggs", "white", "water", "paper", "mustard", "rice", "beans", "bran", "ice"}
	// tools: "butter dish", "egg whisk", "water-bath", "cream-coloured".
	tools = []string{"spoon", "spoons", "spoonful", "spoonfuls", "cup", "cups", "cupful", "glass", "glasses", "dish", "dishes", "pan", "pans", "bowl", "basin", "board", "mill", "whisk", "slice", "cloth", "paper", "press", "cutter", "knife", "grater", "brush", "pot", "jug", "boat", "sieve", "bag", "tin", "oven", "box", "jar", "cellar", "dredger", "bath", "beater", "squeezer", "scoop", "thermometer", "tub", "cask", "shell", "shells", "cloths", "mould", "coloured", "colored", "colour", "color", "like", "sized", "size"}
	// finishes: what is brushed, sifted or stuck on at the end is not weighed.
	finishes = []string{"feather", "brush", "brushed", "brushing", "glaze", "glazed", "varnish", "wash", "stick", "stuck", "fasten", "cement", "sprinkle", "sprinkled", "strew", "strewed", "strewn", "sift", "dust", "dusted", "dusting", "dredge", "dredged", "dredging", "powder", "scatter", "grate"}
	// mixes: with one of these before it, "with water" is an ingredient.
	mixes = []string{"mix", "mixed", "moisten", "moistened", "wet", "wetted", "dilute", "diluted", "thin", "thinned", "knead", "make", "made", "making", "paste", "work", "slake", "bind"}
	// nouns: a thing follows these, so that "the butter" is no verb.
	nouns = []string{"the", "of", "with", "some", "a", "an", "more", "no", "in", "your", "fresh", "melted", "cold", "warm", "little", "remaining", "other", "and", "or", "add", "put"}
	// plainObjects stand after a verb and hardly after anything else: "flour it".
	plainObjects = []string{"the", "a", "an", "your", "them", "it"}
	// objects: a verb has one of these after it: "butter the dish".
	objects = []string{"the", "a", "an", "your", "them", "it", "some", "each", "this", "well", "lightly", "over", "together", "two", "three", "four", "six"}
)

// verbs are names of ingredients that are things done as well.
var verbs = []string{"butter", "flour", "sugar", "salt", "oil", "cream", "egg", "water", "pepper", "crumb", "bread", "honey", "vinegar"}

// passedOver reports a name from words[from] to words[to] that is not put into
// the dish where it stands.
// near is how many words stand before it since the last comma: a likening goes no
// further.
func passedOver(words []string, from, to, near int) bool {
	before := func(n int, list []string) bool { return overlaps(words[max(0, from-n):from], list) }
	after := func(n int, list []string) bool { return overlaps(words[to:min(len(words), to+n)], list) }
	at := func(i int) string {
		if i < 0 || i >= len(words) {
			return ""
		}
		return words[i]
	}
	prev, next := at(from-1), at(to)
	name := words[from:to]
	verb := len(name) == 1 && slices.Contains(verbs, name[0]) && slices.Contains(objects, next)
	switch {
	case len(name) == 1 && name[0] == "cream" && prev == "" && next != "" && !slices.Contains([]string{"and", "of", "to", "or"}, next):
		return true // cream half a pound of butter
	case slices.Contains(tools, next), before(min(6, near), compares) && !asDone(words[max(0, from-min(6, near)):from]):
		return true
	case next == "warm" && len(name) == 1:
		return true // milk-warm, blood-warm
	case beatenTo(words[:from]):
		return true // beaten to a cream, melted to oil
	case sweetened(words[:from]), filledWith(words[:from], name):
		return false // fill it with raspberries, made sweet with sugar
	case vesselWith(words[max(0, from-8):from]) && overlaps(name, greasers) && !laidWith(words[max(0, from-8):from]):
		return true // rub the dish with butter
	case before(5, []string{"free"}) && before(4, []string{"from"}) && !before(3, []string{"and", "with", "add", "put"}):
		return true // free from salt or sour milk
	case name[len(name)-1] == "cheese" && (stem(next) == "cake" || stem(next) == "straw"):
		return true // what is baked, in two words
	case finished(words[max(0, from-6):from], words[from:]) && !slices.Contains(name, "nutmeg"):
		return true // brush it with the white of an egg
	case verb && after(5, vessels):
		return true // grease and flour the tin
	case verb && (prev == "and" || prev == "or") && slices.Contains(plainObjects, next):
		return true // butter the dish and flour it
	case verb && !slices.Contains(nouns, prev) && !slices.Contains(compares, at(to+1)):
		return true // salt it well, but not: butter the size of an egg
	case overlaps(words, []string{"fry", "fried", "frying"}) && overlaps(name, []string{"butter", "lard", "oil", "fat", "dripping", "drippings", "suet"}):
		return true
	case slices.Contains([]string{"butter", "lard", "oil"}, name[len(name)-1]) && after(10, []string{"grease", "mould", "tin", "dish"}):
		return true // melt some butter and with it grease the mould
	case stem(name[len(name)-1]) == "water" && plainWater(name) && next == "with" && (prev == "boil" || prev == "take"):
		return false // boil water with a little lard
	case stem(name[len(name)-1]) == "water" && plainWater(name):
		// A paste is drawn together with water; whey is drawn off with it.
		mixed := before(10, mixes) || before(10, []string{"draw"}) && before(10, []string{"together", "up"})
		return !before(4, []string{"with"}) || !mixed || before(10, vessels)
	}
	return false
}

// beatenTo reports that what follows is what a thing is brought to: "to a smooth",
// "into".
func beatenTo(before []string) bool {
	n := len(before)
	for n > 0 && slices.Contains([]string{"smooth", "stiff", "thick", "thin", "fine", "light", "soft", "nice", "rich", "perfect", "complete"}, before[n-1]) {
		n--
	}
	adjective := n < len(before)
	if n > 1 && (before[n-1] == "a" || before[n-1] == "an") {
		n--
	} else if adjective {
		return false // "add to thick cream"
	}
	return n > 0 && (before[n-1] == "to" || before[n-1] == "into")
}

// asDone reports that the only likening before a name is to another page: "as directed
// for pound cake, add raisins".
func asDone(before []string) bool {
	if n := len(before); n == 0 || before[n-1] == "for" || before[n-1] == "in" || before[n-1] == "as" {
		return false
	}
	for i, w := range before {
		if slices.Contains(compares, w) && !(w == "as" && i+1 < len(before) && slices.Contains([]string{"directed", "above", "before", "usual", "for", "in"}, before[i+1])) {
			return false
		}
	}
	return true
}

// vesselWith reports a vessel and a "with" behind it, as in "rub the dish with".
func vesselWith(before []string) bool {
	vessel := false
	for _, w := range before {
		if w == "with" && vessel {
			return true
		}
		vessel = vessel || slices.Contains(vessels, w)
	}
	return false
}

// laidWith reports that a thing is laid with another in a vessel, which is not what the
// vessel is rubbed with: "lay it in a dish with currants".
func laidWith(before []string) bool {
	in, vessel := -1, -1
	for i, w := range before {
		switch {
		case w == "in" || w == "into":
			in = i
		case slices.Contains(vessels, w):
			if in < 0 || i-in > 4 || overlaps([]string{w}, []string{"rub", "grease", "greased", "greasing", "fill", "filled"}) {
				return false
			}
			vessel = i
		case w == "with":
			return vessel >= 0 && i == vessel+1
		}
	}
	return false
}

// filledWith reports words that have a thing put into a dish or a case, which is the
// way of filling it; what a case is baked empty with, or a kettle holds, is not put in.
func filledWith(before, name []string) bool {
	n := len(before)
	for n > 0 && strings.HasSuffix(before[n-1], "ed") && before[n-1] != "filled" {
		n-- // "with stewed apples"
	}
	if n > 1 && slices.Contains([]string{"the", "these", "your"}, before[n-1]) {
		n--
	}
	if n < 2 || before[n-1] != "with" || overlaps(name, notFillings) {
		return false
	}
	return overlaps(before[max(0, n-6):n-1], []string{"fill", "filled", "filling"})
}

var notFillings = []string{"water", "rice", "beans", "bean", "peas", "bran", "flour", "bread", "crusts", "crumbs", "paper", "barley", "meal", "oats"}

// sweetened reports that what follows is what makes a thing sweet.
func sweetened(before []string) bool {
	n := len(before)
	for n > 0 && (before[n-1] == "powdered" || before[n-1] == "fine" || before[n-1] == "loaf" || before[n-1] == "white" || before[n-1] == "brown") {
		n--
	}
	return n > 1 && before[n-1] == "with" && overlaps(before[max(0, n-3):n-1], []string{"sweet", "sweeten", "sweetened"})
}

// finished reports a word for what is brushed or strewn on at the end; "a stick of" is
// none. What is strewn between layers, or of which no more is said than that it is
// strewn in, is put in.
func finished(words, after []string) bool {
	for i, w := range words {
		if !slices.Contains(finishes, w) || i+1 < len(words) && words[i+1] == "of" {
			continue
		}
		if w == "wash" { // "wash it over with egg", and no washing of fruit
			if !overlaps(words[i+1:], []string{"with", "over"}) {
				continue
			}
			return true
		}
		if slices.Contains(strews, w) {
			near := after[:min(len(after), 12)]
			if overlaps(near, layered) || overlaps(words, layered) || !overlaps(words[i+1:], onTop) && !overlaps(near, onTop) {
				continue
			}
		}
		return true
	}
	return false
}

var (
	// strews are the finishes that may as well be strewn in.
	strews  = []string{"sprinkle", "sprinkled", "strew", "strewed", "strewn", "scatter", "sift", "grate"}
	layered = []string{"layer", "layers", "between", "among", "amongst", "alternately"}
	onTop   = []string{"over", "on", "upon", "top", "with", "it", "them"}
)

func overlaps(a, b []string) bool {
	return slices.ContainsFunc(a, func(w string) bool { return slices.Contains(b, w) })
}

// plainWater tells water, cold or hot, from rose-water.
func plainWater(name []string) bool {
	return len(name) == 1 || slices.Contains([]string{"boiling", "cold", "hot", "warm", "spring", "iced", "tepid", "lukewarm", "ice", "boiled"}, name[0])
}

// notName are the words that mostly name something else in a method.
var notName = words(strings.Join(notNames, " "))
