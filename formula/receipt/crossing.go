package receipt

import (
	"strings"

	"assize/formula"
)

// crossing is a part that a receipt takes from another: "line the dish with puff
// paste", "paste No. 3".
type crossing struct {
	from   int // token
	to     int // behind its number
	title  string
	number string // of the receipt, when it is named by one
	name   string // of the part
	kind   formula.Kind
	lay    string
	plain  bool // only "paste" or the like: what is made here may be meant
}

// crossing finds what a sentence takes from elsewhere.
func (m *making) crossing(ts phrase) []crossing {
	var out []crossing
	for i := range ts {
		c, ok := crossingAt(ts, i, m.section == ingredients)
		if !ok {
			continue
		}
		if c.kind == formula.Pastry && kindOf(m.titled) == formula.Pastry {
			continue
		}
		out = append(out, c)
	}
	return out
}

// crossingAt reads the name of another receipt that ends with the noun at token
// i.
func crossingAt(ts phrase, i int, listed bool) (crossing, bool) {
	if c, ok := icedWith(ts, i); ok {
		return c, true
	}
	kind, ok := takenKinds.at(ts, i)
	if !ok || (ts.key(i) == "shell" || ts.key(i) == "case") && !ts.is(i-1, shellWords) {
		return crossing{}, false
	}
	from := i
	for from > 0 && ts[from-1].kind == word && ts.is(from-1, pasteAdjectives) {
		from--
	}
	to := i + 1
	number, end := "", to
	for j := to; j < min(len(ts), to+8); j++ { // "No. 3", "(see No. 1165)", "by recipe No. 1215"
		if ts.key(j) == "no" && j+1 < len(ts) && ts[j+1].kind == figure {
			number, end = ts[j+1].text, j+2
			break
		}
		if ts[j].kind == mark && ts.key(j) != "(" && !(ts.key(j) == "," && j == to && ts.is(j+1, pointing)) || ts[j].kind == word && !ts.is(j, pointing) {
			break
		}
	}
	c := crossing{from: from, to: end, number: number, kind: kind, name: takenNames[kind]}
	title := ts[from:to].String()
	for _, w := range []string{"good ", "some ", "nice ", "rich ", "thin ", "fine ", "light ", "best ", "your "} {
		title = strings.TrimPrefix(strings.ToLower(title), w)
	}
	switch {
	case number != "" && from == i:
		c.title = title + " no. " + number
	case number != "":
		c.title = "no. " + number
		if direct := to < len(ts) && ts.key(to) == "no"; direct {
			c.title = title + " no. " + number
		}
	case kind != formula.Pastry:
		return crossing{}, false // a custard or a sauce without a number is made somewhere near
	case listed && (i+1 == len(ts) || ts[i+1].kind == mark || ts.key(i+1) == "and" || ts.key(i+1) == "made") && ts.key(from-1) != "the":
		c.title = title
	case from < i && madeElsewhere(ts, from, i):
		c.title = title
	case !laid(ts, from, i) && !asDirected(ts, from, i) && ts.key(i) != "shell":
		return crossing{}, false
	default:
		c.title = title
		c.plain = !ts.is(i, puffWords) && from == i || !ts[from:i].has(puffWords)
	}
	if kind == formula.Pastry {
		c.lay = layOf(ts)
		if k := ts.key(from - 1); c.lay == "" && (k == "a" || k == "the" || k == "your") && ts.key(from-2) == "into" && ts[max(0, from-6):from].has(pours) {
			c.lay = "lining" // it is filled
		}
		if near := layOf(nearOf(ts, from, i)); near == "lid" && c.lay == "rim" { // "press your thumb round the rim" of the lid
			c.lay = near
		} else if near := layOf(pieceOf(ts, from)); near != "" && c.lay != "patty" { // what the dish is told to be may stand elsewhere
			c.lay = near
		}
	}
	return c, true
}

var (
	// takenKinds are the nouns by which another receipt is named.
	takenKinds = mapped(map[string]formula.Kind{
		"paste": formula.Pastry, "pastes": formula.Pastry, "crust": formula.Pastry, "crusts": formula.Pastry, "pastry": formula.Pastry,
		"shell": formula.Pastry, "case": formula.Pastry, "icing": formula.Meringue, "meringue": formula.Meringue, "frosting": formula.Meringue, "custard": formula.Filling, "mincemeat": formula.Filling,
		"sauce": formula.Sauce, "syrup": formula.Sauce, "batter": formula.Batter,
	})
	takenNames = map[formula.Kind]string{
		formula.Pastry: "paste", formula.Meringue: "icing", formula.Filling: "custard", formula.Sauce: "sauce", formula.Batter: "batter",
	}
	puffWords       = words("puff short tart raised standing rough flaky suet")
	pasteAdjectives = words("shell pie puff short good rich light thin nice plain common tart raised standing best fine rough flaky suet very some french butter sweet your boiled wine melted custard lemon sugar almond")
	pointing        = words("see by as recipe receipt the of to according directed made page p like in")
	laying          = words("line lined lining lay laid cover covered covering sheet sheeted put bake baked edge edged rim round border bordered place placed roll rolled spread have patty pattypans pans tins under over")
	pasteBefore     = words("with in of a an the over on some good under thin out one two your")
)

// pours are the words for filling a paste that lies in its dish already.
var pours = words("pour put turn")

// icedWith reads "iced with No. 84": the icing has a receipt of its own.
func icedWith(ts phrase, i int) (crossing, bool) {
	if ts.key(i) != "no" || i+1 >= len(ts) || ts[i+1].kind != figure || ts.key(i-1) != "with" || icedAt(ts) != i-1 {
		return crossing{}, false
	}
	return crossing{from: i, to: i + 2, number: ts[i+1].text, title: "no. " + ts[i+1].text, name: takenNames[formula.Meringue], kind: formula.Meringue}, true
}

var shellWords = words("pie tart pastry patty")

// madeElsewhere reports a paste that is ordered made, and of what is not said: "make a
// short crust, and fill the pattypans".
func madeElsewhere(ts phrase, from, i int) bool {
	j := from - 1
	if ts.key(j) == "little" && ts.key(j-1) == "a" {
		j--
	}
	if k := ts.key(j); k == "a" || k == "some" {
		j--
	}
	if k := ts.key(j); k != "make" && k != "prepare" || j > 0 && ts[j-1].kind == word && ts.key(j-1) != "and" && ts.key(j-1) != "then" {
		return false
	}
	return i+1 >= len(ts) || ts[i+1].kind == mark && ts.key(i+1) != ":" && !(i+2 < len(ts) && (ts.key(i+2) == "with" || ts.key(i+2) == "of")) || ts.key(i+1) == "and"
}

// asDirected reports a paste that is made as another page tells: "make the sweet
// paste, as directed under that name".
func asDirected(ts phrase, from, i int) bool {
	j := pastMarks(ts, i+1)
	return ts[from:i].has(pasteAdjectives) && (ts[j:].begins("as directed") > 0 || ts[j:].begins("as in") > 0 || ts[j:].begins("as for") > 0 || ts[j:].begins("by the receipt") > 0 || ts[j:].begins("as above") > 0)
}

// laid reports that the words round a paste have it laid in a dish, and that it
// is no paste beaten of what is in hand ("to a paste").
func laid(ts phrase, from, i int) bool {
	b := ts.key(from - 1)
	if b == "a" || b == "an" || b == "the" || b == "your" || b == "some" || b == "one" || b == "two" {
		switch ts.key(from - 2) {
		case "into":
			return ts[max(0, from-5):from].has(pours) && (i+1 >= len(ts) || ts[i+1].kind == mark || ts.key(i+1) == "and")
		case "to", "make", "makes", "like", "as", "till", "until", "form", "be":
			return false
		case "is":
			return ts.key(from-3) == "there"
		}
	}
	if b == "this" || b == "that" {
		return false
	}
	if n := ts.key(i + 1); b == "into" && i == from && ts[max(0, from-4):from].has(pours) && (n == "with" || n == "and" || i+1 >= len(ts) || ts[i+1].kind == mark) && ts[max(0, from-4):from].has(objectWords) {
		return true // "put them into paste with sugar"
	}
	if b == "the" && i == from { // "roll out the paste" is of what is in hand
		if k := ts.key(from - 2); k != "with" && k != "in" && k != "of" {
			return false
		}
	}
	if b == "to" || b == "into" || b == "make" || b == "as" || b == "the" && (ts.key(from-2) == "roll" || ts.key(from-2) == "make") {
		return false
	}
	if n := ts.key(i + 1); n == "of" || n == "with" && !ts.is(from-2, laying) || n == "for" || n == "as" && ts.key(i+2) == "thin" {
		if n != "for" && n != "as" {
			return false
		}
	}
	for j := max(0, from-9); j < from; j++ {
		if ts[j].kind == mark && (ts[j].key == ";" || ts[j].key == ".") {
			continue
		}
		if ts.is(j, laying) {
			return true
		}
	}
	n := ts.key(i + 1)
	if n == "must" || n == "should" || n == "is" || n == "lines" || n == "covers" { // "a paste must line the dish"
		for j := i + 1; j < min(len(ts), i+5); j++ {
			switch ts.key(j) {
			case "line", "lines", "lined", "cover", "covers", "covered", "laid", "put":
				return true
			}
		}
	}
	if n == "put" || n == "laid" { // "there is a paste put in the dish"
		return true
	}
	if ts.key(from-2) == "with" && (n == "line" || n == "cover" || n == "sheet") { // "with a nice paste line your dish"
		return true
	}
	return n == "in" || n == "round" || n == "over" || n == "at" || n == "under" || n == "on" && pasteBefore.has(b)
}

// nearOf are the words right round a paste, up to the next stop.
func nearOf(ts phrase, from, i int) phrase {
	lo := from
	for lo > 0 && lo > from-6 && ts[lo-1].kind != mark {
		lo--
	}
	return ts[lo:min(len(ts), i+1)]
}

// pieceOf is the piece of a sentence, between its semicolons, that token i is in.
func pieceOf(ts phrase, i int) phrase {
	from, to := i, i
	for from > 0 && ts.key(from-1) != ";" {
		from--
	}
	for to < len(ts) && ts.key(to) != ";" {
		to++
	}
	return ts[from:to]
}

// layOf tells how a paste is laid.
func layOf(ts phrase) string {
	over := ts.has(overWords) && ts.has(dishWords) && ts.has(overDish)
	lining := over || ts.has(liningWords) || ts.has(liningWithin) && ts.has(putWithin) && !ts.has(rimWords)
	lid := ts.has(lidOrCover) && !ts.has(notCovered)
	rim := ts.has(rimOrRound) && !ts.has(lineWords) && !over
	switch {
	case ts.has(rimOrBorder) && !ts.has(lineOrLid) && !over:
		return "rim"
	case ts.has(raiseWords) && !ts.has(rimWords):
		return "raised"
	case ts.has(pattyWords):
		return "patty"
	case lining && lid && ts.has(lidWords):
		return "lining and lid"
	case rim && lid && ts.has(restOrLid):
		return "lid"
	case rim:
		return "rim"
	case lining:
		return "lining"
	case lid && ts.has(lidWords):
		return "lid"
	case lid && coversDish(ts):
		return "lining" // "cover the dish with paste" lines it
	case lid:
		return "lid"
	}
	return ""
}

// The words by which layOf tells one way of laying a paste from another.
var (
	overWords    = words("over")
	dishWords    = words("dish dishes")
	overDish     = words("lay laid put spread")
	liningWords  = words("line lined lining sheet sheeted bottom pattypans patty under")
	liningWithin = words("in")
	putWithin    = words("put lay laid bake baked")
	lineWords    = words("line lined lining")
	lineOrLid    = union(lineWords, words("lid rest"))
	lidWords     = words("lid top upper")
	lidOrCover   = union(lidWords, words("cover covered"))
	restOrLid    = words("rest lid")
	notCovered   = words("uncovered")
	rimWords     = words("edge rim")
	rimOrBorder  = union(rimWords, words("edged border"))
	rimOrRound   = union(rimOrBorder, words("round"))
	raiseWords   = words("raise raised walls")
	wallWords    = words("walls")
	pattyWords   = words("pattypans patty")
)

// coversDish reports that it is the dish that is covered, and not what is in it.
func coversDish(ts phrase) bool {
	for i := range ts {
		if k := ts.key(i); k != "cover" && k != "covered" {
			continue
		}
		for j := i + 1; j < min(len(ts), i+6); j++ {
			switch ts.key(j) {
			case "dish", "dishes", "plate", "tin", "bottom", "pattypans", "pans":
				return true
			case "with":
				return false
			}
		}
	}
	return false
}

// madeHere follows the parts that a sentence begins to make without a heading:
// "Make a paste of half a pound of flour ...". The main part goes on when the
// words turn from it.
func (m *making) madeHere(ts phrase) {
	if m.section == ingredients {
		return
	}
	if name, kind, ok := made(ts); ok && kind != m.parts[0].part.Kind {
		m.begin(name, kind, ts[0].from-1)
		m.passing = true
		return
	}
	if m.passing && !ts.has(ofPaste) {
		m.passing = false
		m.now = m.parts[0]
	}
}

// ofPaste are words that go on speaking of a paste.
var proportional = words("proportion")

var ofPaste = words("paste crust pastry dough roll rolled icing")

// made reads "make a good crust with", "make a paste of".
func made(ts phrase) (name string, kind formula.Kind, ok bool) {
	if k := ts.key(0); k != "make" && k != "prepare" && !(k == "have" && ts.key(1) == "ready") {
		return "", "", false
	}
	if _, icing := takenKinds.at(ts, 2); ts.key(1) == "the" && icing && (ts.key(3) == "of" || ts.key(3) == "with") && takenKinds.of(ts, 2) != formula.Pastry {
		return takenNames[takenKinds.of(ts, 2)], takenKinds.of(ts, 2), true // "make the icing of the whites of eight eggs"
	}
	switch ts.key(1) {
	case "it", "them", "all", "these", "this", "the", "up":
		return "", "", false // "make it into a paste with the whites": of what is in hand
	}
	for i := 1; i < min(len(ts), 8) && ts[i].kind == word; i++ {
		kind, known := takenKinds.at(ts, i)
		if !known {
			continue
		}
		if _, two := takenKinds.at(ts, i+2); ts.key(i+1) == "or" && two {
			continue // "a crust or paste of"
		}
		if n := ts.key(pastMarks(ts, i+1)); (n == "made" || n == "allowing") && number(ts[i+1:]).used == 0 {
			return takenNames[kind], kind, true
		}
		if n := ts.key(i + 1); n == "of" || n == "with" || n == "by" || n == "in" || ts.key(i+2) == "in" && ts.has(proportional) {
			return takenNames[kind], kind, true
		}
		return "", "", false
	}
	return "", "", false
}
