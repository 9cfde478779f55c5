package present

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/daybook"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/reference"
)

// Headings of an explanation.
const (
	headSeen      = "What was seen"
	headChanged   = "What would have changed it"
	headUntold    = "What nobody has written down"
	headMight     = "If something was done otherwise than written"
	headOutside   = "Outside the formula"
	headSays      = "What it says about the receipt"
	headNext      = "Next time"
	headOpen      = "Still in doubt"
	headOtherwise = "Done otherwise, and not reckoned"
)

// Explained is a bake with what can be told of each result.
type Explained struct {
	Bake    *explain.Bake
	Results []*explain.Explanation
	// Kept says where it was written into a day-book, empty when it was not.
	Kept string
	// Kitchen is what the day-book says of the odds of this kitchen, nil when it
	// has too few bakes or none was named.
	Kitchen *daybook.Adjustment
}

// Explain is the page of a bake explained.
func Explain(x *Explained, a About) *Page {
	e := &explaining{Explained: x, citations: citations{tables: a.Tables}}
	f := x.Bake.Formula()
	p := &Page{Title: f.Title, Under: under(f), Lead: e.lead()}
	p.section(headSeen, e.seen())
	for _, r := range x.Results {
		e.result(p, r)
	}
	p.section(headOpen, e.open())
	p.section(headOtherwise, e.departures())
	p.section(headSources, e.sources(a)...)
	return p
}

type explaining struct {
	*Explained
	citations
}

// lead is the most important said first: of each result whether it was looked
// for, and what did most to it.
func (e *explaining) lead() string {
	var said []string
	for _, r := range e.Results {
		said = append(said, sentence(e.came(r)))
		if k := e.inKitchen(r); k != "" {
			said = append(said, k)
		}
		if m := most(r); m != "" {
			said = append(said, sentence(m))
		}
	}
	if e.Bake.Record == nil {
		said = append(said, "There is no bench record, so the page is explained and not the bake.")
	}
	if e.Kept != "" {
		said = append(said, "Kept as "+e.Kept+".")
	}
	return strings.Join(said, " ")
}

// kitchenShare is the chance of a result as the day-book fits it to this
// kitchen; false when there is no such fit.
func (x *Explained) kitchenShare(r *explain.Explanation) (float64, bool) {
	t := x.Bake.Report.Parts[r.Of.Part].Texture
	if x.Kitchen == nil || r.In != explain.Shares || t == nil {
		return 0, false
	}
	var shares []float64
	at := -1
	for i, s := range t.Shares {
		shares = append(shares, s.Share)
		if s.Texture.ID == r.Judged {
			at = i
		}
	}
	if at < 0 {
		return 0, false
	}
	return x.Kitchen.Adjust(shares)[at], true
}

// inKitchen is kitchenShare in words.
func (e *explaining) inKitchen(r *explain.Explanation) string {
	share, ok := e.kitchenShare(r)
	if !ok {
		return ""
	}
	return fmt.Sprintf("In this kitchen, by %d bakes of the day-book: %s.", e.Kitchen.Bakes, outOfTen(share))
}

// subject is a result as a sentence begins with it.
func (e *explaining) subject(r *explain.Explanation) string {
	if len(e.Bake.Formula().Parts) > 1 {
		return fmt.Sprintf("%s (%s)", r.Of.Texture.Shown, e.Bake.Formula().Parts[r.Of.Part].Name)
	}
	return r.Of.Texture.Shown
}

// came says how far a result was looked for.
func (e *explaining) came(r *explain.Explanation) string {
	what := e.subject(r)
	if r.AsMeant {
		return fmt.Sprintf("%s: that is as it should be; %s is meant so, and to have it otherwise is to make another dish", what, plainly(r.Class.Name))
	}
	if r.In == explain.Acid || r.In == explain.Sugar {
		return fmt.Sprintf("%s: taste is not foretold; there is %s", what, taste(r.In, r.Share))
	}
	switch r.Expected {
	case explain.LookedFor:
		return fmt.Sprintf("%s: it was to be expected, %s", what, outOfTen(r.Share))
	case explain.OneOfTheWays:
		return fmt.Sprintf("%s: it was one of the ways, %s", what, outOfTen(r.Share))
	case explain.Unlikely:
		return fmt.Sprintf("%s: we did not think it likely, %s; look outside the formula too", what, outOfTen(r.Share))
	case explain.NotExpected:
		return fmt.Sprintf("%s: we did not expect it, and nothing in the formula makes it likely; look outside the formula", what)
	case explain.ByPractice:
		if r.Share == 0 {
			return fmt.Sprintf("%s: no odds are reckoned of it, and nothing that is written gives a reason; look outside the formula", what)
		}
		return fmt.Sprintf("%s: no odds are reckoned of it; by common practice there %s for it here", what, reasons(r.Share))
	}
	return fmt.Sprintf("%s: it is not foretold; what follows is common practice", what)
}

func reasons(n float64) string {
	if n < 1.5 {
		return "is one reason"
	}
	return fmt.Sprintf("are %.0f reasons", n)
}

// most is what moves a result most, a thing that was done or a doubt, as a
// sentence; nothing where that is too little to show.
func most(r *explain.Explanation) string {
	if !r.Fault || r.AsMeant || r.Slight || r.In != explain.Shares {
		return ""
	}
	shows := func(list []explain.Cause) bool {
		return len(list) > 0 && outOfTen(list[0].From) != outOfTen(list[0].To)
	}
	causes, doubts := shows(r.Causes), shows(r.Doubts)
	switch {
	case doubts && (!causes || r.Doubts[0].Moves() > r.Causes[0].Moves()):
		return "most hangs on " + doubtWords(&r.Doubts[0])
	case causes:
		c := &r.Causes[0]
		return fmt.Sprintf("%s did most: %s would have made it %s", c.Done, c.Instead, outOfTen(c.From))
	}
	return ""
}

// seen lists the tasters with what each saw, apart.
func (e *explaining) seen() List {
	var out List
	if e.Bake.Record != nil {
		for _, t := range e.Bake.Record.Tastings {
			label := t.By
			if t.When != "" {
				label += ", " + t.When
			}
			var signs []string
			for _, s := range t.Signs {
				said := quoted(s.Words)
				if s.Look != "" {
					said = s.Look + " " + said
				}
				if s.Texture != "" {
					if x, ok := e.tables.Texture(string(e.Bake.Formula().Parts[s.Part].Kind), s.Texture); ok && !strings.EqualFold(x.Shown, s.Words) {
						said += ": " + x.Shown
					}
				}
				signs = append(signs, said)
			}
			en := Entry{Label: label, Text: strings.Join(signs, "; ")}
			if t.Words != "" {
				en.More = []string{"said: " + quoted(t.Words)}
			}
			out = append(out, en)
		}
		if differ(e.Results) {
			out = append(out, Entry{Text: "The tasters saw different things; each is explained by itself."})
		}
	}
	return out
}

// differ reports that two tasters saw the same part otherwise.
func differ(list []*explain.Explanation) bool {
	for i, a := range list {
		for _, b := range list[i+1:] {
			if a.Of.Part == b.Of.Part && len(a.Of.By) > 0 && len(b.Of.By) > 0 && a.Judged != b.Judged &&
				!slices.ContainsFunc(a.Of.By, func(s string) bool { return slices.Contains(b.Of.By, s) }) {
				return true
			}
		}
	}
	return false
}

// heading is a heading of one result, with its name when there are several.
func (e *explaining) heading(words string, r *explain.Explanation) string {
	if len(e.Results) < 2 {
		return words
	}
	return upper(e.subject(r)) + ": " + strings.ToLower(words[:1]) + words[1:]
}

// mostTold is how many causes of one kind are told, and mostOutside how many
// of those outside the formula.
const mostTold, mostOutside = 4, 3

func (e *explaining) result(p *Page, r *explain.Explanation) {
	if !r.Fault && len(e.Results) > 1 {
		return // what is as wanted is told in the lead; the rest is about what is not
	}
	p.section(e.heading(headChanged, r), e.changed(r)...)
	p.section(e.heading(headUntold, r), e.doubts(r))
	if r.Expected != explain.LookedFor && r.Fault && !r.AsMeant {
		p.section(e.heading(headMight, r), e.might(r))
		p.section(e.heading(headOutside, r), e.outside(r))
	}
	p.section(e.heading(headSays, r), e.receipt(r)...)
	p.section(e.heading(headNext, r), e.next(r))
}

// kindLabels are the kinds of cause as they are named.
var kindLabels = map[explain.Kind]string{
	explain.InFormula: "formula", explain.InProcess: "process", explain.InReading: "misreading",
}

// changed are the causes, kind by kind, that with the greatest cause first.
func (e *explaining) changed(r *explain.Explanation) []Block {
	var out List
	for _, kind := range kindsBySize(r.Causes) {
		label, told := kindLabels[kind], 0
		for i := range r.Causes {
			c := &r.Causes[i]
			if c.Kind != kind || told == mostTold {
				continue
			}
			told++
			en := Entry{Label: label, Text: causeWords(c, r.Slight)}
			label = ""
			if why := e.why(c); why != "" {
				en.More = []string{why}
			}
			if u := e.unusual(c.Unusual); u != "" {
				en.More = append(en.More, u)
			}
			out = append(out, en)
		}
	}
	switch {
	case r.Slight:
		return []Block{Paragraph("Nothing in the formula or the method moves it by as much as one time in twenty. What moves it most, for what little it is:"), out}
	case len(out) == 0 && r.In == explain.Reasons:
		return nil // told in the lead: nothing gives a reason
	case len(out) == 0 && r.Expected != explain.NotForetold:
		return []Block{Paragraph("No change of one thing in formula, method or oven would have made it less likely by as much as a cook would notice.")}
	}
	blocks := []Block{out}
	if d := e.doneness(r); d != "" {
		blocks = append(blocks, Paragraph(d))
	}
	if r.In == explain.Shares && e.Bake.Record != nil && outOfTen(r.Written) != outOfTen(r.Share) {
		blocks = append(blocks, Paragraph(fmt.Sprintf("As the page has it, it was to be looked for %s; as it was really made, %s.", outOfTen(r.Written), outOfTen(r.Share))))
	}
	return blocks
}

// unusual says how a proportion lies to what is usual of its class today.
func (e *explaining) unusual(r *judge.RatioReading) string {
	if r == nil {
		return ""
	}
	v := r.Ratio.Value
	for _, rr := range r.Ranges {
		class, ok := e.tables.Class(rr.Range.Class)
		if !ok || class.Era != "modern" || rr.Verdict != r.Verdict || !rr.Range.Low.LessThan(rr.Range.High) {
			continue
		}
		places := ratioPlaces(v.Likely, rr.Range.Low, rr.Range.High, verdictOrder[rr.Verdict])
		unit := r.Ratio.Row.Unit
		if unit != "" {
			unit = " " + unit
		}
		name, of := inWhole(r.Ratio.Row.Name)
		return fmt.Sprintf("%s is %s%s%s, %s what is usual today for %s, %s-%s %s", name, ratio(v, places), unit, of, rr.Verdict,
			plainly(class.Name), rr.Range.Low.Round(places), rr.Range.High.Round(places), e.cite(rr.Range.Provenance))
	}
	return ""
}

func kindsBySize(list []explain.Cause) []explain.Kind {
	var out []explain.Kind
	for i := range list {
		if !slices.Contains(out, list[i].Kind) {
			out = append(out, list[i].Kind)
		}
	}
	return out
}

// inWhole parts the name of a proportion as it is said in a sentence: "egg", and
// " of the whole" behind its figure.
func inWhole(name string) (what, of string) {
	if what, ok := strings.CutSuffix(name, ", part of the whole"); ok {
		return what, " of the whole"
	}
	return name, ""
}

// rather is one thing done in place of another: "creaming the butter rather than
// melting the butter", "as much egg as this rather than a quarter less".
func rather(done, instead string) string {
	for _, much := range []string{"as much ", "as little "} {
		if thing, ok := strings.CutPrefix(done, much); ok {
			instead = strings.TrimSuffix(instead, " "+strings.TrimSuffix(thing, " as this"))
		}
		if strings.HasPrefix(instead, much) {
			return done // "a quarter less egg": than there is
		}
	}
	return done + " rather than " + instead
}

// causeWords is a cause with how far it moves the result: "creaming the butter
// rather than melting the butter: from 4 in 10 to 9".
func causeWords(c *explain.Cause, slight bool) string {
	switch {
	case slight:
		return rather(c.Done, c.Instead)
	case c.In == explain.Reasons:
		return fmt.Sprintf("%s; it would not be a reason with %s", c.Done, c.Instead)
	case c.In == explain.Acid || c.In == explain.Sugar:
		return fmt.Sprintf("%s: %s; with %s %s", c.Done, taste(c.In, c.To), c.Instead, tasteFigure(c.In, c.From))
	}
	return rather(c.Done, c.Instead) + ": " + sharesFromTo(c.From, c.To)
}

// taste is a figure of sourness or sweetness in words.
func taste(u explain.Unit, v float64) string {
	if u == explain.Acid {
		return fmt.Sprintf("%s parts of acid in 100 of it", tasteFigure(u, v))
	}
	return fmt.Sprintf("%s parts of sugar in 100 of its sugar and water", tasteFigure(u, v))
}

func tasteFigure(u explain.Unit, v float64) string {
	if u == explain.Acid {
		return fmt.Sprintf("%.2g", v)
	}
	return fmt.Sprintf("%.0f", v)
}

// sharesFromTo is a share before and after in words: "from 3 in 10 to 9".
func sharesFromTo(from, to float64) string {
	a, b := outOfTen(from), outOfTen(to)
	plain := func(s float64) bool { return s >= hardly && s < nearly }
	switch {
	case a == b && b == outOfTen(0):
		return "a little oftener, though still " + b
	case a == b:
		return "a little oftener, " + b
	case plain(from) && plain(to):
		return fmt.Sprintf("from %d in 10 to %d", tenths(from), tenths(to))
	}
	return "from " + strings.TrimPrefix(a, "about ") + " to " + strings.TrimPrefix(b, "about ")
}

// why is the mechanism of a cause with its source.
func (e *explaining) why(c *explain.Cause) string {
	if c.Why == nil {
		return ""
	}
	return c.Why.Says + " " + e.ground(c.Why.Provenance)
}

// ground is what a row rests on: its source as numbered, or common practice.
func (e *explaining) ground(p reference.Provenance) string {
	if p.How == reference.HowCommon {
		return "(common practice)"
	}
	return e.cite(p)
}

// doneness holds the heat at the centre against what the thing wants.
func (e *explaining) doneness(r *explain.Explanation) string {
	d := r.Doneness
	if d == nil {
		return ""
	}
	words := fmt.Sprintf("At the centre it came out at %.0f C; %s is done at %s to %s C", d.C, reference.A(d.Row.Name), d.Row.C.Low.Round(0), d.Row.C.High.Round(0))
	switch d.Verdict {
	case "under":
		words += ", so it came out too soon"
	case "over":
		words += ", so it was left too long"
		if d.Row.TooFar != "" {
			words += " (" + d.Row.TooFar + ")"
		}
	default:
		words += ", so the heat was right at the centre"
	}
	return words + " " + e.cite(d.Row.Provenance) + "."
}

// doubts are what nobody has told, with what it may have made of the result.
func (e *explaining) doubts(r *explain.Explanation) List {
	var out List
	for _, kind := range kindsBySize(r.Doubts) {
		label, told := kindLabels[kind], 0
		for i := range r.Doubts {
			c := &r.Doubts[i]
			if c.Kind != kind || told == mostTold {
				continue
			}
			told++
			out = append(out, Entry{Label: label, Text: doubtWords(c)})
			label = ""
		}
	}
	return out
}

func doubtWords(c *explain.Cause) string {
	if c.In == explain.Reasons {
		return fmt.Sprintf("%s: by one way of taking it there is a reason more", c.Done)
	}
	if c.In != explain.Shares {
		return fmt.Sprintf("%s: between %s and %s", c.Done, tasteFigure(c.In, c.From), taste(c.In, c.To))
	}
	a, b := outOfTen(c.From), outOfTen(c.To)
	if a == b {
		return fmt.Sprintf("%s: it makes little of it, %s", c.Done, b)
	}
	return fmt.Sprintf("%s: between %s (%s) and %s (%s)", c.Done, strings.TrimPrefix(a, "about "), wayWords(c.Least), strings.TrimPrefix(b, "about "), wayWords(c.Most))
}

// wayWords is a way of taking a doubt as it is told.
func wayWords(s string) string {
	switch s {
	case "less":
		return "at its least"
	case "more":
		return "at its most"
	}
	return s
}

// might are things that would have made it likelier, had they been done.
func (e *explaining) might(r *explain.Explanation) List {
	var out List
	for i := range r.Might {
		c := &r.Might[i]
		if len(out) == mostTold {
			break
		}
		en := Entry{}
		switch c.In {
		case explain.Shares:
			en.Text = rather(c.Instead, c.Done) + ": " + sharesFromTo(c.From, c.To)
		case explain.Reasons:
			en.Text = rather(c.Instead, c.Done) + ": a reason more"
		default:
			continue
		}
		if why := e.why(c); why != "" {
			en.More = []string{why}
		}
		out = append(out, en)
	}
	return out
}

// outside are causes no formula tells.
func (e *explaining) outside(r *explain.Explanation) List {
	kinds := map[string]string{"oven": "oven", "handling": "handling", "ingredients": "ingredients"}
	var out List
	for _, kind := range reference.CauseKinds {
		label, told := kinds[kind], 0
		for _, c := range r.Outside {
			if c.Kind != kind || kinds[kind] == "" || told == mostOutside {
				continue
			}
			told++
			out = append(out, Entry{Label: label, Text: c.What, More: []string{c.Says + " " + e.ground(c.Provenance)}})
			label = ""
		}
	}
	return out
}

// receipt is what the tasting says about the receipt's own doubts.
func (e *explaining) receipt(r *explain.Explanation) []Block {
	x := &r.Receipt
	switch {
	case x.Meant == "":
		return nil
	case x.Texture == nil:
		return []Block{Paragraph(fmt.Sprintf("%s says it should be %s. We cannot tell what that is at the cut, so nothing is concluded from it.", upper(x.By), quoted(x.Meant)))}
	}
	lead := fmt.Sprintf("%s says it should be %s (%s), and it came out so.", upper(x.By), quoted(x.Meant), x.Texture.Shown)
	if !x.AsMeant {
		lead = fmt.Sprintf("%s says it should be %s (%s), and it did not come out so.", upper(x.By), quoted(x.Meant), x.Texture.Shown)
	}
	switch {
	case r.In != explain.Shares:
		return []Block{Paragraph(lead + " The odds of this result are not reckoned, so nothing is concluded from it.")}
	case len(x.Doubts) == 0:
		return []Block{Paragraph(lead + " Every amount was weighed or is plain, so nothing of the receipt's measures is left to ask.")}
	case !x.Tells:
		return []Block{Paragraph(lead + " The tasting cannot tell between the ways of taking what nobody weighed: " + and(readingWords(x.Doubts)) + ".")}
	}
	var out List
	var mute []string
	for _, d := range x.Doubts {
		if !d.Tells {
			mute = append(mute, d.Words)
			continue
		}
		var said []string
		for _, w := range d.Ways {
			said = append(said, fmt.Sprintf("%s %s", w.Words, odds(w.Before, w.After)))
		}
		en := Entry{Label: "", Text: d.Words + ": " + strings.Join(said, "; ")}
		if !x.AsMeant {
			best := slices.MaxFunc(d.Ways, func(a, b explain.WayOf) int { return compareFloat(a.InBowl-a.Before, b.InBowl-b.Before) })
			if best.InBowl-best.Before >= leastTold {
				en.More = []string{fmt.Sprintf("what came out points to %s in the bowl", best.Words)}
			}
		}
		out = append(out, en)
	}
	blocks := []Block{Paragraph(lead + " Of the ways of taking what nobody weighed, those that give it have become likelier:"), out}
	if len(mute) > 0 {
		blocks = append(blocks, Paragraph("The tasting cannot tell anything of "+and(mute)+"."))
	}
	return blocks
}

// leastTold is how far a way's odds must move to be told.
const leastTold = .10

func compareFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// odds is how a way's odds have moved.
func odds(before, after float64) string {
	if outOfTen(before) == outOfTen(after) {
		return "as before, " + outOfTen(after)
	}
	return sharesFromTo(before, after)
}

func readingWords(list []explain.Reading) []string {
	var out []string
	for _, d := range list {
		out = append(out, d.Words)
	}
	return out
}

// next are the least changes that answer a result, with all that they do.
func (e *explaining) next(r *explain.Explanation) List {
	if !r.Fault && !r.AsMeant {
		return List{{Text: "Nothing need be changed: do as you did."}}
	}
	if r.AsMeant {
		otherwise := "Softer"
		if r.Of.Texture.Kind == string(formula.Filling) {
			otherwise = "Smoother"
		}
		return List{{Text: fmt.Sprintf("Nothing need be changed: %s is meant to be so. %s would be another dish.", plainly(r.Class.Name), otherwise)}}
	}
	var out List
	for _, s := range r.Next {
		en := Entry{Text: strings.Join(s.Texts, "; and ")}
		switch s.In {
		case explain.Shares:
			en.More = []string{effect(s.Effect)}
		case explain.Reasons:
			en.More = []string{"a reason for it less"}
			if s.Answers {
				en.More = []string{"then no reason for it is left"}
			}
		default:
			en.More = []string{"then " + taste(s.In, s.Left)}
		}
		out = append(out, en)
	}
	if v := r.Variant; v != nil {
		var words []string
		for i := range v.Changes {
			words = append(words, changed(&v.Changes[i]))
		}
		text := "for an answer altogether: " + strings.Join(words, "; and ")
		if e.Bake.Record != nil {
			text = "for an answer altogether, from the page as it is written: " + strings.Join(words, "; and ")
		}
		return append(out, Entry{Text: text, More: []string{effect(v.Effects)}})
	}
	if r.In == explain.Shares && r.Share >= fewAnswered && !slices.ContainsFunc(r.Next, func(s explain.Step) bool { return s.Answers }) {
		out = append(out, Entry{Text: fmt.Sprintf("No few steps answer it altogether; `assize variant --against %s FILE` seeks the least change that does.", r.Judged)})
		return out
	}
	if len(out) == 0 && (r.Expected == explain.NotExpected || r.In == explain.Reasons && r.Share == 0) {
		return List{{Text: "No change to the formula is called for: bake it again as written, and look to the oven and the handling first."}}
	}
	if len(out) == 0 {
		return List{{Text: "We know no small change that helps by much."}}
	}
	return out
}

// fewAnswered is the share from which a result wants an answer at all.
const fewAnswered = judge.May

// open is what the record leaves in doubt.
func (e *explaining) open() List {
	if e.Bake.Record == nil {
		return nil
	}
	var out List
	for i := range e.Bake.Formula().Parts {
		if words := e.Bake.Open(i); len(words) > 0 {
			out = append(out, Entry{Label: e.Bake.Formula().Parts[i].Name, Text: and(words)})
		}
	}
	return out
}

// departures are what was done otherwise, in the cook's words.
func (e *explaining) departures() List {
	var out List
	if e.Bake.Record == nil {
		return nil
	}
	for _, d := range e.Bake.Record.Departures {
		out = append(out, Entry{Text: d})
	}
	for _, l := range e.Bake.Made.Outside {
		out = append(out, Entry{Text: quoted(l) + ": what was used is none the receipt can mean, so it is reckoned as used and nothing is said of the receipt's measures"})
	}
	return out
}
