package receipt

import (
	"strings"

	"assize/formula"
)

// section is what the words under a heading are.
type section int

const (
	none        section = iota
	ingredients         // a list, or a run of amounts
	directions          // what is done
	ofPart              // the making of one part
	time                // how long it bakes
	beside              // price, season, number of persons: no part of the making
)

// head is a heading: what comes under it, and of which part.
type head struct {
	section section
	part    string       // "paste", "icing"; empty when it names none
	kind    formula.Kind // of the part
}

// sectionWords are headings that name a section.
var sectionWords = []struct {
	words   string
	section section
}{
	{"ingredients", ingredients}, {"ingredient", ingredients}, {"you will need", ingredients},
	{"method", directions}, {"mode", directions}, {"directions", directions}, {"instructions", directions}, {"preparation", directions}, {"method of making", directions},
	{"the method", directions}, {"to make it", directions}, {"mode of making", directions}, {"to prepare", directions}, {"what to do", directions},
	{"time", time}, {"time to bake", time}, {"time of baking", time},
	{"average cost", beside}, {"cost", beside}, {"probable cost", beside}, {"sufficient", beside}, {"seasonable", beside}, {"serves", beside}, {"makes", beside}, {"yield", beside},
}

// partKinds are the words that end the name of a part, and the kind it is of.
var partKinds = mapped(map[string]formula.Kind{
	"paste": formula.Pastry, "pastry": formula.Pastry, "crust": formula.Pastry, "case": formula.Pastry, "shell": formula.Pastry, "base": formula.Pastry, "pie crust": formula.Pastry,
	"icing": formula.Meringue, "iceing": formula.Meringue, "frosting": formula.Meringue, "meringue": formula.Meringue, "topping": formula.Meringue,
	"filling": formula.Filling, "custard": formula.Filling, "curd": formula.Filling, "mincemeat": formula.Filling, "forcemeat": formula.Filling, "stuffing": formula.Filling,
	"cream": formula.Filling, "jelly": formula.Filling, "inside": formula.Filling, "pudding": formula.Filling, "tart": formula.Filling, "pie": formula.Filling,
	"sauce": formula.Sauce, "syrup": formula.Sauce, "gravy": formula.Sauce, "glaze": formula.Sauce,
	"cake": formula.Cake, "sponge": formula.Cake, "cakes": formula.Cake, "biscuits": formula.Cake, "batter": formula.Batter, "dough": formula.Bread, "bread": formula.Bread,
})

// longestPart is how many words the name of a part may have.
const longestPart = 4

// headAt reads the heading a line or a sentence begins with, and how many
// tokens it takes. A line of its own may be a bare name ("Icing"); in running
// words a mark has to follow it, or "for the" to stand before it.
func (r *Reader) headAt(ts phrase, alone bool) (head, int) {
	i := 0
	for i < len(ts) && ts[i].kind == mark { // "- Mode."
		i++
	}
	if i < len(ts) && ts[i].kind == figure && ts.key(i+1) == "." { // "1293. INGREDIENTS."
		i += 2
	} else if i < len(ts) && ts[i].kind == figure && i+1 < len(ts) && ts[i+1].lead == ". " {
		i++
	}
	for _, s := range sectionWords {
		n := ts[i:].begins(s.words)
		if n == 0 {
			continue
		}
		end := i + n
		if s.section == beside && end < len(ts) && !alone && ts[end].kind != mark && ts.key(end) != "for" && ts.key(end) != "at" && ts.key(end) != "in" && ts.key(end) != "from" {
			continue
		}
		if p, kind, m := partName(ts[end:]); m > 0 && s.section != beside && s.section != time { // "Ingredients for the paste"
			if e := end + m; e == len(ts) || ts[e].kind == mark {
				return head{s.section, p, kind}, pastMarks(ts, e)
			}
		}
		if s.section == beside && !alone {
			return head{section: beside}, end
		}
		if end < len(ts) && ts[end].kind != mark {
			continue
		}
		return head{section: s.section}, pastMarks(ts, end)
	}
	return partHead(ts, i, alone)
}

// partHead reads a heading that names a part: "For the paste:", "The icing.",
// "To make the crust", and before an order "For the paste, rub ...".
func partHead(ts phrase, i int, alone bool) (head, int) {
	name, kind, n := partName(ts[i:])
	if n == 0 {
		return head{}, 0
	}
	end := i + n
	opened := ts.key(i) == "for" || ts.key(i) == "to"
	if ts.key(end) == "for" && !opened { // "Cream for filling.--"
		for e := end + 1; e < min(len(ts), end+4); e++ {
			if e+1 == len(ts) && inCapitals(ts) || e+1 < len(ts) && ts[e+1].kind == mark && ts.key(e+1) != "," && ts.key(e+1) != "(" {
				end = e + 1
				break
			}
		}
	}
	if opened && kind == formula.Meringue && (ts.key(end) == "the" && ts.key(end+1) == "same" || ts.key(end) == "it") { // "for icing the same"
		if end++; ts.key(end) == "same" {
			end++
		}
		return head{ofPart, name, kind}, pastMarks(ts, end)
	}
	closed := end == len(ts) || ts[end].kind == mark && ts.key(end) != "("
	switch {
	case !alone && i == 0 && end == len(ts) && inCapitals(ts): // "CRUST.--Three-quarters of a pint ..."
	case alone && end == len(ts), alone && closed && pastMarks(ts, end) == len(ts):
	case !alone && ts.key(end) == ":", !alone && ts.key(end) == "-" && i == 0:
	case !alone && opened && (closed || ts.is(end, imperatives) || number(ts[end:]).used > 0):
	default:
		return head{}, 0
	}
	return head{ofPart, name, kind}, pastMarks(ts, end)
}

// inCapitals reports words set in capitals throughout.
func inCapitals(ts phrase) bool {
	for i := range ts {
		if ts[i].text != strings.ToUpper(ts[i].text) {
			return false
		}
	}
	return len(ts) > 0
}

// partName reads "for the short paste", "to make the icing", "paste", and gives
// the name without what stands before it.
func partName(ts phrase) (name string, kind formula.Kind, n int) {
	i := 0
	for _, w := range []string{"to make the", "to make", "for making the", "for the", "for", "the"} {
		if m := ts.begins(w); m > 0 {
			i = m
			break
		}
	}
	for j := i; j < min(len(ts), i+longestPart); j++ {
		if ts[j].kind != word || ts.is(j, glue) || ts.is(j, imperatives) && partKinds.of(ts, j) == "" {
			return "", "", 0
		}
		k, ok := partKinds.at(ts, j)
		if !ok {
			continue
		}
		if _, longer := partKinds.at(ts, j+1); longer {
			continue // "custard sauce"
		}
		return strings.ToLower(ts[i : j+1].String()), k, j + 1
	}
	return "", "", 0
}

func pastMarks(ts phrase, i int) int {
	for i < len(ts) && ts[i].kind == mark {
		i++
	}
	return i
}

// titleKinds are the words of a title that tell what is made, with its kind.
var titleKinds = mapped(map[string]formula.Kind{
	"paste": formula.Pastry, "pastes": formula.Pastry, "pastry": formula.Pastry, "crust": formula.Pastry, "crusts": formula.Pastry,
	"cake": formula.Cake, "cakes": formula.Cake, "gingerbread": formula.Cake, "biscuit": formula.Cake, "biscuits": formula.Cake, "shortbread": formula.Cake,
	"jumbles": formula.Cake, "jumbals": formula.Cake, "sponge": formula.Cake, "cookies": formula.Cake, "seedcake": formula.Cake, "parkin": formula.Cake, "queens": formula.Cake,
	"drops": formula.Cake, "snaps": formula.Cake, "crullers": formula.Cake, "doughnuts": formula.Cake, "cracknels": formula.Cake, "crackers": formula.Cake, "wafers": formula.Cake, "shortcake": formula.Cake, "naples": formula.Cake, "diet": formula.Cake, "madeleines": formula.Cake, "rout": formula.Cake,
	"bread": formula.Bread, "loaf": formula.Bread, "rolls": formula.Bread, "buns": formula.Bread, "muffins": formula.Bread, "crumpets": formula.Bread, "brioche": formula.Bread, "rusks": formula.Bread, "rusk": formula.Bread, "wigs": formula.Bread,
	"pancakes": formula.Batter, "fritters": formula.Batter, "batter": formula.Batter, "waffles": formula.Batter, "gauffres": formula.Batter, "puffs": formula.Batter, "popovers": formula.Batter,
	"icing": formula.Meringue, "iceing": formula.Meringue, "meringue": formula.Meringue, "meringues": formula.Meringue, "kisses": formula.Meringue, "frosting": formula.Meringue, "macaroons": formula.Meringue, "macaroone": formula.Meringue, "macaroon": formula.Meringue, "ratafias": formula.Meringue,
	"sauce": formula.Sauce, "gravy": formula.Sauce, "syrup": formula.Sauce, "ketchup": formula.Sauce, "catsup": formula.Sauce,
})

// kindOf is the kind of what a title names; a filling when nothing tells.
func kindOf(ts phrase) formula.Kind {
	kind := formula.Filling
	for i := range ts {
		switch k := ts.key(i); {
		case k == "for" || k == "with" || k == "in": // "paste for tarts", "pudding in crust"
			if i > 0 {
				return kind
			}
		case k == "yorkshire" && ts.key(i+1) == "pudding", k == "batter" && ts.key(i+1) == "pudding":
			return formula.Batter
		case k == "bread" && ts.key(i-1) == "ginger":
			kind = formula.Cake
		case titleKinds.of(ts, i) != "" && ts.key(i-1) != "cheese":
			kind = titleKinds.of(ts, i)
		case ts.is(i, fillings):
			kind = formula.Filling
		}
	}
	return kind
}

// fillings are words of a title that overrule the kind named before them:
// "biscuit pudding".
var fillings = words("pudding puddings tart tarts pie pies custard custards cream creams jelly cheesecake cheesecakes flummery syllabub trifle tartlets curd mincemeat ice")
