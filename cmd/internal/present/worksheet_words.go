package present

import (
	"fmt"
	"math"
	"strings"

	"assize/formula"
	"assize/ratios/dish"
	"assize/ratios/oven"
	"assize/ratios/worksheet"
	"assize/reference"
)

// Headings of the worksheet.
const (
	headFirst   = "Put right first"
	headWeigh   = "Weigh out"
	headBake    = "The dish and the oven"
	headSteps   = "Do"
	headTime    = "When"
	headStops   = "Where you may stop"
	headShow    = "Ready made, where people look on"
	headBuy     = "Have in the house"
	headNotPut  = "Said elsewhere in the book, and left out here"
	headHanging = "Taken for granted"
)

// phaseHeading is what a stretch of work is called.
func phaseHeading(p *worksheet.Phase, s *worksheet.Sheet) string {
	switch p.ID {
	case "ready":
		return "Before you begin"
	case "paste", "filling":
		return "The " + p.Part
	case "case":
		for i := range s.Parts {
			if s.Parts[i].Of.Kind == formula.Pastry {
				return caseHeading[s.Parts[i].Lay]
			}
		}
	case "oven":
		if s.Oven.Pot {
			return "To the pot"
		}
		if s.Oven.Baked {
			return "To the oven"
		}
		return "To put together"
	case "finish":
		return "Afterwards"
	}
	return "The case"
}

// caseHeading names the work on a paste by the way it is laid.
var caseHeading = map[string]string{
	"lining":         "The case",
	"rim":            "The rim",
	"lid":            "The lid",
	"lining and lid": "Case and lid",
	"raised":         "The raised case",
	"patty":          "The patties",
	"folded":         "Folding over",
	"":               "The case",
}

// layIs says how a paste is laid.
var layIs = map[string]string{
	"lining":         "lines the dish",
	"rim":            "a rim only, no paste underneath",
	"lid":            "a lid only, no paste underneath",
	"lining and lid": "lines the dish and covers it",
	"raised":         "a raised case with its lid",
	"patty":          "lines patty-pans",
	"folded":         "folded over the filling, on a sheet",
}

// benchPartIs is what a part is besides its name.
func benchPartIs(p *worksheet.Part) string {
	var said []string
	if lay := layIs[p.Lay]; lay != "" {
		said = append(said, lay)
	}
	if p.Of.From != "" {
		said = append(said, "taken from "+p.Of.From)
	}
	return strings.Join(said, "; ")
}

func layAssumed(p *worksheet.Part) string {
	return sentence(fmt.Sprintf("the book does not say how the %s is laid; taken as a lining", p.Of.Name))
}

func takenFrom(receipt string) string { return "from " + receipt }

func printedElsewhere(where string) string {
	if where == "" {
		return "printed elsewhere in the book"
	}
	return "printed elsewhere in the book: " + where
}

// notInTheBook marks a step the book leaves unsaid.
func notInTheBook(ground, why, found string) string {
	out := "not in the book: " + ground
	if found != "" {
		out += "; " + found
	}
	return out + ". " + sentence(why)
}

// earliest says where a practice was first met with, and never that it is older
// nowhere.
func earliest(year int) string { return fmt.Sprintf("the earliest we have found in print is %d", year) }

// doneWhen is what to look for.
func doneWhen(d *reference.Doneness) string {
	out := "Done when: " + strings.Join(d.Signs, "; ")
	if len(d.Signs) == 0 {
		out = "Done at"
	}
	if d.C.High.IsPositive() {
		out += fmt.Sprintf("; in the middle about %s", weight(d.C, "C"))
	}
	if d.TooFar != "" {
		out += ". Too far: " + d.TooFar
	}
	return out + "."
}

// fives rounds a heat to five degrees, as an oven is set.
func fives(c float64) int { return int(math.Round(c/5) * 5) }

// fanLess is how much lower a fan oven is set for the same heat, C (common
// practice).
const fanLess = 20

// benchHeat is a sign of heat on the page in degrees, and for the fan oven of
// the kitchen when it has one.
func benchHeat(h *oven.Heat, fan bool) string {
	out := fmt.Sprintf("%s: about %d C", quoted(h.Words), fives(h.C.Likely))
	if low, high := fives(h.C.Low), fives(h.C.High); low != high {
		out += fmt.Sprintf(" (%d-%d)", low, high)
	}
	f := h.C.Fahrenheit()
	out += fmt.Sprintf(", %d F", fives(f.Likely))
	if fan && !h.Fan {
		out += fmt.Sprintf("; with your fan %d C", fives(h.C.Likely-fanLess))
	}
	return out
}

func saidMinutes(s reference.Span) string { return "In it " + minutesOf(s) + ", as the receipt says." }

func reckonedMinutes(s reference.Span) string {
	return sentence("no time is given; reckoned for the dish it takes " + duration(oven.Minutes{Range: oven.Range{Low: s.Low.InexactFloat64(), Likely: s.Likely.InexactFloat64(), High: s.High.InexactFloat64()}}))
}

func usualMinutes(s reference.Span, name string) string {
	return sentence(fmt.Sprintf("no time is given; for %s %s is usual", name, minutesOf(s)))
}

const noMinutes = "No time is given, and none is usual enough to plan by: watch it."

// minutesOf is a length of time with its range.
func minutesOf(s reference.Span) string { return ranged(figure(s.Likely), s) + " minutes" }

// usualHeat is what today's books bake such a thing in.
func usualHeat(c *reference.Class, given bool) string {
	like := "nearest to it today is " + c.Name
	if given {
		like = c.Name + " today"
	}
	return sentence(like + ": " + c.Heat)
}

// eventIs says what begins.
func eventIs(e *worksheet.Event, s *worksheet.Sheet) string {
	the := "the " + e.Part
	switch e.ID {
	case worksheet.ButterOut:
		return "butter out of the cold"
	case worksheet.MakePaste, worksheet.MakeFilling:
		return "make " + the
	case worksheet.Rest:
		return the + " rests in the cold"
	case worksheet.Rise:
		return the + ": first rising"
	case worksheet.Shape:
		return "knock back and shape " + the
	case worksheet.Prove:
		return the + ": second rising, shaped"
	case worksheet.Lay:
		switch layOf(e.Part, s) {
		case "folded":
			return "roll " + the + ", fill it and fold it over"
		case "patty":
			return "roll " + the + " and line the pans"
		case "raised":
			return "raise the case"
		}
		return "roll and lay " + the
	case worksheet.Chill:
		return "into the cold again, laid"
	case worksheet.LightOven:
		return "light the oven"
	case worksheet.CaseIn:
		return "the case into the oven by itself"
	case worksheet.CoolCase:
		return "the case cools"
	case worksheet.Stand:
		return the + " stands"
	case worksheet.CoolFilling:
		return the + " cools"
	case worksheet.Fill:
		return "fill it"
	case worksheet.DishIn:
		return "into " + fireplace(s)
	case worksheet.DishOut:
		return "out of " + fireplace(s)
	case worksheet.FillCold:
		return "fill it up; the jelly sets in the cold"
	}
	if s.Oven.Baked || s.Oven.Pot || len(s.Plan.Events) > 1 && hasFilling(s) {
		return "to table"
	}
	return "ready"
}

// layOf is how the part of a name is laid.
func layOf(part string, s *worksheet.Sheet) string {
	for i := range s.Parts {
		if p := &s.Parts[i]; p.Of.Name == part {
			return p.Lay
		}
	}
	return ""
}

// fireplace is where the dish is cooked.
func fireplace(s *worksheet.Sheet) string {
	if s.Oven.Pot {
		return "the pot"
	}
	return "the oven"
}

func hasFilling(s *worksheet.Sheet) bool {
	for i := range s.Parts {
		if s.Parts[i].Of.Kind == formula.Filling {
			return true
		}
	}
	return false
}

// lasts is how long something takes.
func lasts(e *worksheet.Event) string {
	if e.Minutes == 0 {
		return ""
	}
	out := hours(e.Minutes)
	if e.ID == worksheet.DishOut && e.Minutes > 0 {
		out += " to cool"
	}
	if e.Usual {
		out += ", as is usual"
	}
	return out
}

// hours is a length of time: "1 h 20 min".
func hours(minutes int) string {
	h, m := minutes/60, minutes%60
	switch {
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m == 0:
		return fmt.Sprintf("%d h", h)
	}
	return fmt.Sprintf("%d h %d min", h, m)
}

const (
	planBefore  = "Hours and minutes before it goes to table. Waiting is reckoned as is likely, baking at its longest; what hands take is our allowance."
	planByClock = "Waiting is reckoned as is likely, baking at its longest; what hands take is our allowance."
	openPlan    = "How long it cooks is not known, so only the end is planned: add your own time for the rest."
)

// beginAt says when the work begins.
func beginAt(minutes int, when string, clock, open bool) string {
	switch {
	case open || minutes == 0:
		return ""
	case clock:
		return sentence("begin at " + when)
	}
	return sentence("begin " + hours(minutes) + " before it is wanted")
}

// putIn counts the steps that are not on the receipt's page.
func putIn(elsewhere, unsaid int) string {
	count := func(n int, one, many string) string {
		switch n {
		case 0:
			return ""
		case 1:
			return "One step " + one
		}
		return fmt.Sprintf("%s steps %s", upper(numeral(n)), many)
	}
	a := count(elsewhere, "is printed elsewhere in the book", "are printed elsewhere in the book")
	b := count(unsaid, "is left unsaid by it", "are left unsaid by it")
	switch {
	case a != "" && b != "":
		return a + "; " + strings.ToLower(b[:1]) + b[1:] + "."
	case a != "":
		return a + "."
	case b != "":
		return strings.Replace(b, "by it", "by the book", 1) + "."
	}
	return ""
}

// numeral is a small number in words.
func numeral(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(words) {
		return words[n]
	}
	return fmt.Sprint(n)
}

// countOf is how many to buy.
func countOf(low, high int) string {
	if low == high {
		return fmt.Sprint(high)
	}
	return fmt.Sprintf("%d-%d", low, high)
}

// pluralOf is the name of what is bought by the piece.
func pluralOf(name string, n int) string {
	if n == 1 {
		return name
	}
	return reference.Plural(name)
}

// wholeNote says what is left of things bought whole.
func wholeNote(x *worksheet.Whole) string {
	var said []string
	if x.Wash {
		said = append(said, "one of them for the wash inside the case")
	}
	for _, s := range x.Spare {
		over := fmt.Sprintf("%s %s over", numeral(s.Count), pluralOf(s.What, s.Count))
		switch {
		case s.What == "juice" || s.What == "rind":
			over = fmt.Sprintf("the %s of %s over", s.What, numeral(s.Count))
		case s.Serves && s.Count == 1:
			over = "the spare " + s.What + " does for the wash inside the case"
		case s.Serves:
			over += ", one of them for the wash inside the case"
		}
		said = append(said, over)
	}
	return strings.Join(said, "; ")
}

const byProportion = "by proportion; weigh out what you want"

// pasteOver says what becomes of the paste made. What the dish takes is told of
// the first paste alone.
func pasteOver(p *worksheet.PasteMade, lay string, f *dish.Fit, first bool) string {
	made := "makes " + weight(p.Made, "g")
	switch {
	case !first:
		return made
	case lay == "folded":
		return made + ", all of it for folding over"
	case lay == "raised" && f == nil:
		return made + ", case and lid"
	case f == nil || !(f.PasteNeeded.Likely > 0):
		return made + "; how much the dish takes is not known"
	}
	return made + "; " + pasteFor(f)
}

// fills is how what is made lies in the dish: "The soup plate takes 350-450 ml;
// this comes to about 1070 ml: too much by about 620 ml."
func fills(f *dish.Fit) string {
	takes := "takes"
	if f.Count > 1 {
		takes = "take"
	}
	return sentence(fmt.Sprintf("%s %s %s ml; this comes to about %.0f ml: %s", theDish(f), takes, between2(f.RoomML), toTen(f.FillingML.Likely), fitWords(f)))
}

// aside is a direction of the book that has no place in the dish.
func aside(s *worksheet.Step) string {
	out := strings.TrimRight(s.Text, ".")
	if s.From != "" {
		out += " (" + s.From + ")"
	}
	return out + "."
}

func weightsHang(names []string) string { return sentence("the weights hang on " + and(names)) }
