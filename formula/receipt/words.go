package receipt

import "strings"

// glue are the words that only hold a line together. They belong to no name,
// amount or form, and leaving them out loses nothing.
var glue = words("a an the of and or in with from also then plus some your any each take add put use allow get have mix stir")

// orders are the words a cook gives an order with, before the amount.
var orders = words("take add put use allow get have mix stir")

// openers are the words that may begin what is said about a thing after its
// name, besides those that participle knows.
var openers = words(`
	to in into with without for from at on upon as if when while that which where by before after over off out through till until between
	not no only just both all also too again very well quite rather finely nearly enough sufficient according at
	then being having leaving omitting keeping using taking weighing making allowing excepting including measuring containing
	beat beaten whipt mixt cut wet broken ground shred torn frozen burnt split run grown left kept made done set put taken drawn bought laid freed
	fresh new old cold hot warm cool tepid lukewarm boiling soft softer hard stiff dry thin thick fine coarse whole raw ripe clear free
	large small medium big light lighter smooth separate apart together loose full rich good best each of more less twice once wiped
	scant level heaping rounding generous optional about the it them its their they he she whose
	preferably ideally such`)

// noOpeners end like a participle and are names of things.
var noOpeners = words(`seed weed red bed feed linseed aniseed rapeseed flaxseed reed shred bread jelly barley parsley lily belly holly icing
	moonseed poppyseed mustardseed cottonseed hempseed`)

// participle reports a word that says what was done to a thing or how:
// "sifted", "finely", "beaten".
func (t token) participle() bool {
	if len(t.key) < 4 || t.kind != word || t.is(noOpeners) {
		return false
	}
	return strings.HasSuffix(t.key, "ed") || strings.HasSuffix(t.key, "ly") || t.is(handled)
}

// participle reports that the token at i is one.
func (p phrase) participle(i int) bool { return i >= 0 && i < len(p) && p[i].participle() }

// handled are participles that do not end in -ed.
var handled = words("beat beaten whipt mixt cut broken ground shred torn frozen burnt split")

// opensForm reports whether the phrase, which follows a name, says something
// about the named thing rather than going on with the name: "butter melted to
// oil", not "butter beans".
func opensForm(ts phrase) bool {
	if len(ts) == 0 || ts[0].kind == mark {
		return true
	}
	k := ts.key(0)
	if k == "and" || k == "but" || k == "or" {
		return len(ts) > 1 && ts[1].kind == word && (ts.participle(1) || ts.is(1, handled) || ts.is(1, doing))
	}
	if k == "of" && number(ts[1:]).used > 0 {
		return false // "yolks of 4 eggs"
	}
	return ts.is(0, openers) || ts.participle(0)
}

// doing are the verbs a sentence about the thing may go on with.
var doing = words("beat stir mix add put take let cut wash pick stone sift pound grate melt boil strain rub roll dry keep leave well finely then not also more so as to")

// piece are the ways of naming a bit of something whose bigness is said after.
var piece = []string{
	"a piece", "a small piece", "a little piece", "a good piece", "a large piece", "piece", "pieces", "a bit", "a little bit", "a small bit", "bit", "bits", "a lump", "lump",
	"lumps", "a small lump", "a knob", "knob", "a ball", "ball", "balls", "a slice", "slice", "a cut", "a square", "the",
}

// pinches are measures that mean one when no number is given, even in a list
// of fields.
var pinches = words("pinch dash speck handful scrape grating shake sprinkle")

// containers are measures that go by what is printed on them.
var containers = words("tin tins can cans packet packets jar jars box boxes bottle bottles carton cartons package packages bag bags tub tubs envelope envelopes sachet sachets tube tubes pot pots block blocks")

// fruitParts are the parts of a fruit by the words for them.
var fruitParts = mapped(map[string]string{
	"juice": juice, "juices": juice,
	"rind": rind, "rinds": rind, "zest": rind, "peel": rind, "peels": rind, "peal": rind, "peals": rind, "skin": rind, "skins": rind, "raspings": rind, "outside": rind, "outsides": rind, "yellow": rind,
	"pulp": flesh, "flesh": flesh, "segments": flesh, "inside": flesh, "insides": flesh, "meat": flesh, "peeled": flesh, "skinned": flesh,
	"whole": wholeFruit, "entire": wholeFruit,
})

// The words for parts: of fruits but for the whole of one, of eggs as well, and of
// either with the whole.
var (
	partWords  = fruitParts.where(func(part string) bool { return part != wholeFruit })
	sideOrPart = union(eggWords, partWords)
	anyPart    = union(eggWords, fruitParts.set)
)

// wholeUses are things done to a fruit that leave all of it in.
var wholeUses = words("sliced slices boiled pounded blended minced chopped quartered cut blitzed")

// sameEach are other words for things the sizes table counts.
var sameEach = map[string]string{
	"pippin": "apple", "codling": "apple", "codlin": "apple", "bramley": "apple", "russet": "apple", "biffin": "apple", "rennet": "apple",
	"ladyfinger": "sponge-finger", "filbert": "hazelnut", "cobnut": "hazelnut", "shalot": "onion", "shallot": "onion",
	"cocoanut": "coconut", "chicken": "fowl", "pullet": "fowl",
	"savoiardi": "sponge-finger", "greengage": "plum",
}

// leaning are the ways of giving an amount by another line.
var leaning = []string{
	"their weight", "its weight", "their own weight", "its own weight", "the same weight", "same weight", "the same quantity", "same quantity",
	"the like weight", "the like quantity", "like weight", "equal weight", "equal weights", "an equal weight", "equal quantity", "an equal quantity",
	"equal quantities", "equal parts", "the weight of them", "their weights", "half their weight", "half its weight", "twice their weight", "double their weight",
	"double its weight", "twice its weight", "ditto", "do", "as much", "half as much", "twice as much", "the same", "the same amount", "as many", "half that quantity", "half the quantity", "half the weight", "the weight", "same",
}
