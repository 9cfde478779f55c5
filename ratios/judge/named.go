package judge

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/practice"
	"assize/reference"
)

// Named is something a dish meets that no line of it lists, and so nothing
// weighs: the egg a lid is brushed with, the butter a tin is rubbed with, what
// is strewn over at the end.
type Named struct {
	Ingredient *reference.Ingredient
	Words      string // as it is called there
	Place      Place
	Part       int // the part it is done to
}

// Place is where a thing is named that no line lists.
type Place string

// The places a thing may be named at. The first is the receipt's own steps, and
// those of a receipt it takes a part from; the second what the book says once
// for all; the third what is not in the book and a working cook does.
const (
	InDirections Place = "directions"
	Elsewhere    Place = "elsewhere"
	InPractice   Place = "practice"
)

// meets sets what the directions of a dish name and no line lists, and what
// people are allergic to.
func (r *Report) meets(d *practice.Dish, t *reference.Tables) {
	r.Named = named(d, r.Weighed, t)
	r.Allergens = allergensOf(r, t)
}

// named are the things that no line lists, each once, at the first place that
// names it. It asks what meets the dish and not what is weighed, so it takes in
// washes, what tins are rubbed with and what is served with it: of two ways to
// take a word it takes the one that warns.
func named(d *practice.Dish, w *weigh.Weighed, t *reference.Tables) []Named {
	n := naming{tables: t, listed: holds(w)}
	f := d.Formula
	n.book = reference.When{Year: f.Year, Place: f.Place}
	n.kitchen = n.book
	if f.Kitchen.Year != 0 {
		n.kitchen.Year = f.Kitchen.Year
	}
	if f.Kitchen.Place != "" {
		n.kitchen.Place = f.Kitchen.Place
	}
	for i := range f.Parts {
		for _, s := range f.Parts[i].Steps {
			n.read(s, InDirections, i)
		}
	}
	for _, s := range d.Standing() {
		if !s.Idle {
			n.read(s.Text, Elsewhere, s.Part)
		}
	}
	for _, x := range d.Expected() {
		if !x.Taken && !x.Spared {
			n.read(x.Step.Says, InPractice, x.Part)
		}
	}
	return n.out
}

type naming struct {
	tables        *reference.Tables
	book, kitchen reference.When
	listed        []*reference.Ingredient
	out           []Named
}

// read finds what a direction names, clause by clause. A token of the method in
// place of words is read by its meaning where that is a wash.
func (n *naming) read(text string, place Place, part int) {
	if row, ok := n.tables.Method(strings.ToLower(strings.TrimSpace(text))); ok {
		if !slices.ContainsFunc(row.Sets, func(f string) bool { return slices.Contains(washes, formula.Flag(f)) }) {
			return
		}
		text = row.Meaning
	}
	for clause := range strings.FieldsFuncSeq(text, func(r rune) bool { return strings.ContainsRune(",.;:!?()", r) }) {
		words := reference.Words(clause)
		for i := 0; i < len(words); {
			ing, length := n.at(words, i)
			if length == 0 {
				i++
				continue
			}
			if ing != nil {
				n.add(Named{Ingredient: ing, Words: strings.Join(words[i:i+length], " "), Place: place, Part: part})
			}
			i += length
		}
	}
}

// washes are the flags of method that a wash raises.
var washes = []formula.Flag{"egg_wash_inside", "glazed"}

func (n *naming) add(x Named) {
	if slices.Contains(n.listed, x.Ingredient) || slices.ContainsFunc(n.out, func(y Named) bool { return y.Ingredient == x.Ingredient }) {
		return
	}
	n.out = append(n.out, x)
}

// at is the ingredient that words name from i on and how many words that takes.
// It is nil where the name is passed over: in a likeness, of a tool, as a verb
// of another meaning.
func (n *naming) at(words []string, i int) (*reference.Ingredient, int) {
	if thing, ok := laidOn[words[i]]; ok {
		c, _ := n.tables.Begins([]string{thing}, n.book, n.kitchen)
		return c.Ingredient, 1
	}
	c, length := n.tables.Begins(words[i:], n.book, n.kitchen)
	if length == 0 {
		return nil, 0
	}
	if c.Ingredient == nil || notMet(words, i, i+length) || length == 1 && slices.Contains(made, words[i]) && n.flour() {
		return nil, length
	}
	return c.Ingredient, length
}

// flour reports that flour is listed: the crust that is spoken of is then made
// of it.
func (n *naming) flour() bool {
	return slices.ContainsFunc(n.listed, func(ing *reference.Ingredient) bool { return slices.Contains(ing.Roles, "flour") })
}

// laidOn are words for what has been rubbed, dusted or coated, with what.
var laidOn = map[string]string{
	"buttered": "butter", "floured": "flour", "egged": "egg", "breaded": "bread crumbs", "crumbed": "bread crumbs",
}

// Words about a name that show it does not meet the dish.
var (
	// otherwise are names that are something else more often than the thing.
	otherwise = []string{
		"white", "fat", "grease", "spread", "soup", "sole", "perch", "glaze", "glazed", "mince", "must", "roll", "rolls", "loaf", "loaves", "bun", "buns",
		"sponge", "starter", "leaven", "curd", "curds", "cake", "cakes", "biscuit", "biscuits", "pudding", "puddings", "jelly", "jellies", "tongue", "heart",
		"skirt", "lights", "bones", "blood", "meat", "kid", "palate", "game", "brains", "straw", "meal", "date", "bay", "rind", "peel", "juice", "zest",
		"liquor", "liquid", "water", "ice", "syrup", "spice", "flavouring", "seasoning", "colouring", "brown", "red", "green", "yellow",
	}
	// made are names of what is being made: met only where it is put in or on
	// something, or something is put in or on it.
	made   = []string{"paste", "pastes", "pastry", "crust", "crusts", "dough", "batter", "custard", "custards", "toast", "toasts", "stock", "sauce"}
	put    = []string{"with", "in", "on", "of", "into"}
	likens = []string{"as", "like", "than", "resemble", "resembles", "resembling", "resembled"}
	// likenesses stand before "of" and the thing a thing is likened to.
	likenesses = []string{"size", "bigness", "consistency", "consistence", "thickness", "colour", "color", "shape", "weight", "form", "appearance"}
	// before a name within a likeness: "the size of a large walnut".
	qualifies = []string{"a", "an", "the", "of", "good", "thick", "new", "rich", "small", "large", "very", "common", "pigeons", "hens", "hen", "pullets", "sweet", "double", "smooth", "stiff", "soft", "light", "thin", "fine", "strong"}
	tools     = []string{"spoon", "spoons", "spoonful", "cup", "cups", "glass", "glasses", "dish", "dishes", "pan", "pans", "bowl", "mill", "whisk", "slice", "cutter", "knife", "grater", "brush", "boat", "oven", "box", "jar", "dredger", "beater", "tub", "shell", "shells", "mould", "moulds", "coloured", "colored", "colour", "color", "like", "sized", "size", "warm", "plate", "plates", "jug", "kettle", "basin"}
	// creamed and fished: the verbs.
	objects = []string{"the", "a", "an", "your", "them", "it", "out", "up", "together", "well"}
)

func notMet(words []string, from, to int) bool {
	name := words[from:to]
	at := func(i int) string {
		if i < 0 || i >= len(words) {
			return ""
		}
		return words[i]
	}
	if slices.Contains(tools, at(to)) {
		return true
	}
	if len(name) == 1 {
		switch {
		case slices.Contains(otherwise, name[0]),
			slices.Contains(made, name[0]) && !slices.ContainsFunc(words[max(0, from-3):from], func(w string) bool { return slices.Contains(put, w) }),
			(name[0] == "cream" || name[0] == "fish") && slices.Contains(objects, at(to)):
			return true
		}
	}
	b, this := from-1, false
	for b >= 0 && slices.Contains(qualifies, words[b]) {
		if words[b] == "of" && b > 0 && slices.Contains(likenesses, words[b-1]) {
			return true
		}
		this = this || words[b] == "the"
		b--
	}
	switch {
	case slices.Contains(likens, at(b)):
		return at(b) != "like" || !slices.Contains([]string{"you", "they", "some", "who"}, at(b-1))
	case !this && (at(b) == "to" || at(b) == "into"): // beaten to a cream, to a smooth paste
		return slices.Contains([]string{"cream", "oil", "butter", "flour", "froth", "curd", "paste", "batter", "dough", "custard", "caramel"}, name[len(name)-1])
	}
	return false
}
