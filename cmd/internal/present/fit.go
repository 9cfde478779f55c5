package present

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
	"assize/ratios/batch"
	"assize/ratios/change"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/readings"
	"assize/reference"
)

// inDish is how part i lies in the dish the receipt names: the paste that is
// needed and what is left of it, the room there is for the filling. It is
// empty where nothing is known.
func inDish(r *judge.Report, i int) string {
	f := r.InDish
	if f == nil {
		return ""
	}
	p := &r.Parts[i]
	if p.Kind == formula.Pastry {
		for k := range i { // said once, of the first paste
			if r.Parts[k].Kind == formula.Pastry {
				return ""
			}
		}
		return pasteFor(f)
	}
	if r.MainPart() != i || f.Verdict == dish.NotKnown {
		return ""
	}
	takes := "takes"
	if f.Count > 1 {
		takes = "take"
	}
	return fmt.Sprintf("%s %s %s%s: %s", theDish(f), takes, between2(f.RoomML), " ml", fitWords(f))
}

// pasteFor is the paste needed for a dish and what is left: "needs 260-300 g
// for the soup plate, left about 500 g".
func pasteFor(f *dish.Fit) string {
	if !(f.PasteNeeded.Likely > 0) {
		return ""
	}
	out := fmt.Sprintf("needs %s g for %s", between2(f.PasteNeeded), theDish(f))
	switch left := f.PasteLeft.Likely; {
	case f.PasteMade.Likely == 0:
	case math.Abs(left) < justEnough*f.PasteNeeded.Likely:
		out += ", just enough"
	case left >= 0:
		out += fmt.Sprintf(", left about %.0f g", toTen(left))
	default:
		out += fmt.Sprintf(", short by about %.0f g", toTen(-left))
	}
	return out
}

// justEnough is how near, a share, paste made and needed are called the same.
const justEnough = .05

// theDish names the dishes of a fit: "the soup plate", "the 24 patty-pans".
func theDish(f *dish.Fit) string { return "the " + dishes(f) }

// dishes names the dishes of a fit with their number: "soup plate", "24
// patty-pans", "3 holes of a muffin tin".
func dishes(f *dish.Fit) string {
	switch {
	case f.Count == 1:
		return f.Name
	case f.Vessel != nil && strings.Contains(f.Vessel.Note, "one hole"):
		return fmt.Sprintf("%d holes of %s", f.Count, reference.A(f.Name))
	}
	return fmt.Sprintf("%d %s", f.Count, reference.Plural(f.Name))
}

// fitWords is how a filling fits, in words.
func fitWords(f *dish.Fit) string {
	switch {
	case f.Verdict == dish.NotKnown:
		return "what it comes to is not known"
	case f.Boils:
		return "it fits, and may rise over the rim"
	case f.Verdict == dish.Overfills:
		return fmt.Sprintf("too much by about %.0f ml", toTen(f.Over()))
	case f.Verdict == dish.Underfills:
		return fmt.Sprintf("too little by about %.0f ml", toTen(-f.Over()))
	}
	return "it fits"
}

// toTen rounds a figure as a jug or a scale is read, to five below a hundred.
func toTen(v float64) float64 {
	if math.Abs(v) < 100 {
		return math.Round(v/5) * 5
	}
	return math.Round(v/10) * 10
}

// between2 is a range without its middle: "350-450".
func between2(s readings.Span) string {
	low, high := toTen(s.Low), toTen(s.High)
	if low == high {
		return fmt.Sprintf("%.0f", low)
	}
	return fmt.Sprintf("%.0f-%.0f", low, high)
}

// dishDoc is a receipt in a dish as JSON has it.
type dishDoc struct {
	ID          string       `json:"id,omitempty"`
	Name        string       `json:"name"`
	Own         bool         `json:"own"`
	Count       int          `json:"count"`
	RoomML      *spanDoc     `json:"room_ml,omitempty"`
	BrimML      *spanDoc     `json:"brim_ml,omitempty"`
	FillingML   *spanDoc     `json:"filling_ml,omitempty"`
	DepthCM     *spanDoc     `json:"depth_cm,omitempty"`
	PasteMade   *spanDoc     `json:"paste_made_g,omitempty"`
	PasteNeeded *spanDoc     `json:"paste_needed_g,omitempty"`
	PasteLeft   *spanDoc     `json:"paste_left_g,omitempty"`
	Verdict     string       `json:"verdict"`
	Full        *json.Number `json:"full,omitempty"`
	RisesOver   bool         `json:"rises_over,omitempty"`
}

// dishPlaces is how finely millilitres, grams and centimetres are written.
const dishPlaces = 1

func dishDocOf(f *dish.Fit) *dishDoc {
	d := &dishDoc{Name: f.Name, Own: f.Own, Count: f.Count, Verdict: string(f.Verdict), RisesOver: f.Boils}
	if f.Vessel != nil {
		d.ID = f.Vessel.ID
	}
	d.RoomML, d.BrimML, d.FillingML, d.DepthCM = told(f.RoomML), told(f.BrimML), told(f.FillingML), told(f.Depth)
	d.PasteMade, d.PasteNeeded, d.PasteLeft = told(f.PasteMade), told(f.PasteNeeded), told(f.PasteLeft)
	if f.Verdict != dish.NotKnown {
		full := number(f.Full, sharePlaces)
		d.Full = &full
	}
	return d
}

// told is a figure of a dish, nil when it was not worked out.
func told(s readings.Span) *spanDoc {
	if !finite(s.Low, s.Likely, s.High) || s == (readings.Span{}) {
		return nil
	}
	return &spanDoc{number(s.Low, dishPlaces), number(s.Likely, dishPlaces), number(s.High, dishPlaces)}
}

// Fitting is what a receipt comes to against the dishes.
type Fitting struct {
	Report *judge.Report
	// Given is the receipt in the dish that is asked after or named, nil when
	// there is none.
	Given *dish.Fit
	// Every is the receipt in every dish there is, best first.
	Every []dish.Fit
	// Batch is more or less of it, nil when none is wanted.
	Batch *batch.Batch
	// All shows every dish instead of the first few.
	All bool
}

// Headings of the page of a fit.
const (
	headFills  = "In the dish"
	headDishes = "Dishes"
	headBatch  = "Measured out"
	headTrial  = "What the trial tells"
)

// How many dishes are shown unless all are wanted, and of one name.
const fewDishes, fewOfAName = 8, 2

const inHundred = 100

// Fit is the page of a receipt against the dishes.
func Fit(f *Fitting, a About) *Page {
	v := &fitting{Fitting: f, citations: citations{tables: a.Tables}, load: f.Report.LoadOf()}
	p := &Page{Title: f.Report.Formula.Title, Under: under(f.Report.Formula), Lead: v.lead()}
	p.section(headMakes, v.makes())
	if v.Batch == nil && v.fillsOne() {
		p.section(headFills, v.inside())
	}
	p.section(headBatch, v.batch()...)
	p.section(headTrial, v.trial())
	if (v.Batch == nil || v.All) && v.fillsOne() {
		p.section(headDishes, v.dishes()...)
	}
	p.section(headAssumed, assumed(f.Report))
	p.section(headSources, v.list())
	return p
}

type fitting struct {
	*Fitting
	citations
	load dish.Load
}

// fillsOne reports that it fills a dish at all, or is asked after in one.
func (v *fitting) fillsOne() bool {
	return v.load.Lay != dish.Folded && (v.load.Stands != dish.OnSheet || v.Given != nil || v.All)
}

// lead is the fit in the dish asked after, else the dish it fits best.
func (v *fitting) lead() string {
	if v.Batch != nil {
		return v.batchLead()
	}
	if v.load.Lay == dish.Folded {
		return sentence(fmt.Sprintf("its paste is folded over the filling and lies on a sheet, so it fills no dish; about %.0f g of paste for %.0f ml of filling",
			toTen(v.load.Paste.Likely), toTen(v.load.Filling.Likely)))
	}
	if f := v.Given; f != nil {
		out := sentence(upper(theDish(f)) + ": " + fitWords(f))
		if f.Verdict == dish.Overfills || f.Verdict == dish.Underfills {
			if best := v.best(); best != nil {
				out += " " + sentence("it fits "+anyOf(best)+" better")
			}
		}
		return out
	}
	switch best := v.best(); {
	case v.load.Stands == dish.OnSheet:
		return sentence("it is shaped and baked piece by piece on a tin, a sheet or paper, so it fills no dish")
	case v.load.Lay == dish.Raised:
		out := sentence("the case is raised by hand and stands by itself, so it needs no dish: bake it on a tray or a sheet")
		for i := range v.Every {
			if f := &v.Every[i]; f.Verdict == dish.Fits && v.load.Suits(f) && f.Vessel != nil && f.Vessel.Walls != "paste" {
				return out + " " + sentence("if you would rather have a mould, it fits "+anyOf(f))
			}
		}
		return out
	case best == nil:
	case v.load.Stands == dish.Cold:
		return sentence("it is not baked: it fills " + anyOf(best))
	case v.load.Stands == dish.Potted:
		return sentence("it is cooked on the fire and poured off: it fills " + anyOf(best))
	default:
		return sentence("it fits " + anyOf(best) + ", " + deep(best))
	}
	if v.load.Filling.Likely > 0 {
		return "No one dish we know of fits it; the nearest stand below."
	}
	if v.load.Paste.Likely > 0 {
		return sentence(fmt.Sprintf("it is paste alone, about %.0f g", toTen(v.load.Paste.Likely)))
	}
	return "What it comes to by volume is not known, so no dish can be told."
}

// best is the dish it fits best of those that take it whole.
func (v *fitting) best() *dish.Fit {
	for i := range v.Every {
		if f := &v.Every[i]; f.Verdict == dish.Fits && v.load.Suits(f) {
			return f
		}
	}
	return nil
}

// anyOf names a dish among others: "a pie dish", "24 patty-pans".
func anyOf(f *dish.Fit) string {
	if f.Count > 1 {
		return dishes(f)
	}
	if f.Own {
		return "your " + f.Name
	}
	return reference.A(f.Name)
}

// deep is how deep it stands: "about 2.5 cm deep".
func deep(f *dish.Fit) string {
	if !(f.Depth.Likely > 0) {
		return "how deep is not known"
	}
	return fmt.Sprintf("about %.1f cm deep", f.Depth.Likely)
}

// makes is what the receipt comes to in millilitres and grams of paste.
func (v *fitting) makes() List {
	var out List
	r := v.Report
	for i := range r.Parts {
		p := &r.Parts[i]
		e := Entry{Label: p.Name, Text: makes(p, unitOf(r, i))}
		if rise, ok := p.Measures["risen_ml"]; ok && measured(rise) && rise.Likely > 1.02*p.Measures["volume_ml"].Likely {
			e.Text += "; at its height in the oven " + volume(rise)
		}
		out = append(out, e)
	}
	return out
}

func unitOf(r *judge.Report, i int) string { return (&Sheet{Report: r}).unit(i) }

// inside is the receipt in the dish asked after.
func (v *fitting) inside() List {
	f := v.Given
	if f == nil {
		return nil
	}
	var out List
	takes := v.takes(f)
	if f.BrimML.Likely > 0 {
		takes += fmt.Sprintf(", %s ml to the brim", between2(f.BrimML))
	}
	if f.Vessel != nil {
		if mark := v.cite(f.Vessel.Provenance); mark != "" {
			takes += " " + mark
		}
	}
	out = append(out, Entry{Label: "takes", Text: takes})
	if f.Depth.Likely > 0 {
		out = append(out, Entry{Label: "depth", Text: standsDeep(f)})
	}
	if paste := pasteFor(f); paste != "" {
		out = append(out, Entry{Label: "paste", Text: pasteMade(f) + paste})
	}
	if f.DepthGuessed {
		out = append(out, Entry{Label: "taken as", Text: fmt.Sprintf("%.1f cm deep (%.1f-%.1f), as such dishes are: its depth is not told", f.Sizes[1].Depth, f.Sizes[0].Depth, f.Sizes[2].Depth)})
	}
	if f.Own {
		out = append(out, Entry{Label: "taken as", Text: "yours, as such dishes are in the kitchen's year"})
	} else if f.Vessel != nil {
		if when := era(f); when != "" {
			out = append(out, Entry{Label: "taken as", Text: "the dish of that name, " + when})
		}
	}
	return out
}

func pasteMade(f *dish.Fit) string {
	if f.PasteMade.Likely > 0 {
		return fmt.Sprintf("made %.0f g, ", toTen(f.PasteMade.Likely))
	}
	return ""
}

// takes is the room there is: "350-450 ml once it is lined".
func (v *fitting) takes(f *dish.Fit) string {
	out := between2(f.RoomML) + " ml"
	switch v.load.Lay {
	case dish.NoPaste, dish.RimOnly, dish.Lid:
	case dish.Raised:
		out += " inside the paste"
	default:
		out += " once it is lined"
	}
	return out
}

func standsDeep(f *dish.Fit) string {
	low, high := fmt.Sprintf("%.1f", f.Depth.Low), fmt.Sprintf("%.1f", f.Depth.High)
	out := fmt.Sprintf("%.1f cm", f.Depth.Likely)
	if low != high {
		out += fmt.Sprintf(" (%s-%s)", low, high)
	}
	return out
}

// era is when a dish of the table was in use, in words.
func era(f *dish.Fit) string {
	v := f.Vessel
	switch {
	case v == nil:
		return ""
	case v.From == 0 && v.To == 0:
		return ""
	case v.From == 0:
		return fmt.Sprintf("before %d", v.To+1)
	case v.To == 0:
		return fmt.Sprintf("%d and after", v.From)
	}
	return fmt.Sprintf("%d to %d", v.From, v.To)
}

// dishes is the table of dishes: the kitchen's own and the best fits, or all.
func (v *fitting) dishes() []Block {
	if !(v.load.Filling.Likely > 0) {
		return v.pasteAlone()
	}
	list := v.Every
	if !v.All {
		list = firstOf(list, &v.load)
	}
	t := Table{Columns: []Column{
		{Name: "dish"}, {Name: "of"}, {Name: "takes, ml", Right: true}, {Name: "so it is"}, {Name: "deep, cm", Right: true},
	}}
	paste := v.load.Lay != dish.NoPaste
	if paste {
		t.Columns = append(t.Columns, Column{Name: "paste, g", Right: true}, Column{Name: "left, g", Right: true})
	}
	for i := range list {
		f := &list[i]
		name := dishes(f)
		when := era(f)
		if f.Own {
			when = "your kitchen"
		}
		row := []string{name, when, between2(f.RoomML), fitWords(f), ""}
		if f.Depth.Likely > 0 {
			row[4] = fmt.Sprintf("%.1f", f.Depth.Likely)
		}
		if paste {
			need, left := "", ""
			if f.PasteNeeded.Likely > 0 {
				need = fmt.Sprintf("%.0f", toTen(f.PasteNeeded.Likely))
				if f.PasteMade.Likely > 0 {
					left = fmt.Sprintf("%.0f", toTen(f.PasteLeft.Likely))
				}
			}
			row = append(row, need, left)
		}
		if f.Vessel != nil {
			if mark := v.cite(f.Vessel.Provenance); mark != "" {
				row[0] += " " + mark
			}
		}
		t.Rows = append(t.Rows, row)
	}
	what := "filling"
	if i := v.Report.MainPart(); i >= 0 && v.Report.Parts[i].Kind != formula.Filling {
		what = string(v.Report.Parts[i].Kind)
	}
	said := fmt.Sprintf("The %s comes to %s. What a dish takes is as a cook fills it", what, volume(v.load.Filling))
	if paste {
		said += ", with paste laid in it"
	}
	said += "."
	if !v.All && len(v.Every) > len(list) {
		said += fmt.Sprintf(" %d dishes of %d are shown; --all shows the rest.", len(list), len(v.Every))
	}
	return []Block{t, Paragraph(said)}
}

// pasteAlone is the table of dishes a paste would line.
func (v *fitting) pasteAlone() []Block {
	if !(v.load.Paste.Likely > 0) {
		return nil
	}
	t := Table{Columns: []Column{{Name: "dish"}, {Name: "of"}, {Name: "paste, g", Right: true}, {Name: "it lines", Right: true}}}
	for i := range v.Every {
		f := &v.Every[i]
		if !(f.PasteNeeded.Likely > 0) || !v.All && !f.Own && (len(t.Rows) >= fewDishes || f.Small() || !linedKinds[f.Vessel.Kind]) {
			continue
		}
		when := era(f)
		if f.Own {
			when = "your kitchen"
		}
		t.Rows = append(t.Rows, []string{
			f.Name + " " + v.cite(f.Vessel.Provenance), when, between2(f.PasteNeeded), fmt.Sprintf("%.0f", math.Floor(v.load.Paste.Likely/f.PasteNeeded.Likely)),
		})
	}
	return []Block{t, Paragraph("An eighth of an inch thick, trimmings counted.")}
}

// linedKinds are the kinds of dish that are lined with paste.
var linedKinds = map[string]bool{"plate": true, "pie plate": true, "tart tin": true, "pie dish": true, "patty-pan": true}

// firstOf are the dishes worth showing: all of the kitchen's own, then the best
// fits among the kinds it is put in, and of one name no more than two.
func firstOf(list []dish.Fit, l *dish.Load) []dish.Fit {
	var out []dish.Fit
	kinds := map[string]int{}
	shown := 0
	for i := range list {
		f := &list[i]
		if !f.Own {
			if shown >= fewDishes || f.Verdict == dish.NotKnown || !l.Suits(f) || kinds[f.Name] >= fewOfAName {
				continue
			}
			shown++
		}
		kinds[f.Name]++
		out = append(out, *f)
	}
	return out
}

// batchLead says what the batch is and what it costs.
func (v *fitting) batchLead() string {
	b := v.Batch
	what := change.Portion(b.By)
	if b.Trial != nil {
		what = "the smallest trial is " + what
	} else {
		what = "this is " + what
	}
	if eggs := eggsOf(b); eggs != "" {
		what += ", with " + eggs
	}
	if b.In != nil && b.In.Verdict == dish.Fits {
		what += ", in " + anyOf(b.In)
		if b.In.Depth.Likely > 0 {
			what += ", " + deep(b.In)
		}
	}
	out := sentence(what)
	if f := v.Given; f != nil && b.Trial == nil && b.In != nil && f.Verdict != dish.Fits {
		out += " " + sentence("the whole would be "+fitWords(f))
	}
	if t := b.Trial; t != nil && !t.KeepsDepth {
		out += " " + flavourOnly
	}
	return out
}

// flavourOnly is said of a trial that does not stand as deep as the whole.
const flavourOnly = "No dish we know keeps the depth of the whole receipt with it, so it tests flavour and set only, not the baking."

// eggsOf names the eggs of a batch: "2 eggs".
func eggsOf(b *batch.Batch) string {
	main := b.Report.MainPart()
	if main < 0 {
		return ""
	}
	for _, l := range b.Formula.Parts[main].Lines {
		for _, it := range l.Items {
			if n := it.Amount.Number; it.Amount.Each == "egg" && it.Amount.Measure == "" && n.IsExact() {
				name := strings.TrimSuffix(it.Name, "s")
				if !n.Likely.Equal(decimal.NewFromInt(1)) {
					name += "s"
				}
				return n.Likely.String() + " " + name
			}
		}
	}
	return ""
}

// batch is the batch as it is measured out, with the error of each line.
func (v *fitting) batch() []Block {
	b := v.Batch
	if b == nil {
		return nil
	}
	var out []Block
	for i := range b.Formula.Parts {
		t := Table{Caption: b.Formula.Parts[i].Name, Columns: []Column{
			{Name: "measure out"}, {Name: "g", Right: true}, {Name: "exactly, g", Right: true}, {Name: "out by"},
		}}
		for k := range b.Items {
			it := &b.Items[k]
			if it.Part != i {
				continue
			}
			row := []string{it.Text, "", "", ""}
			if !it.NotGiven {
				row[1], row[2], row[3] = it.Is.Likely.Round(1).String(), it.Exact.Likely.Round(1).String(), outBy(it.Off())
			}
			t.Rows = append(t.Rows, row)
		}
		out = append(out, t)
	}
	said := fmt.Sprintf("Measured so, no proportion is out by more than %s; %s is let pass.", inTheHundred(b.Worst), inTheHundred(b.Tolerance))
	if !b.Within() {
		said = fmt.Sprintf("Measured so, a proportion is out by %s, more than the %s that is let pass.", inTheHundred(b.Worst), inTheHundred(b.Tolerance))
	}
	said += " What is under 1 part in 100, as spice is, is not counted."
	if b.In != nil {
		mark := ""
		if b.In.Vessel != nil {
			mark = " " + v.cite(b.In.Vessel.Provenance)
		}
		said += " " + sentence(upper(theDish(b.In))+" "+verbOf(b.In, "takes", "take")+" "+between2(b.In.RoomML)+" ml of it, "+inIt(b.In)+mark)
		if paste := pasteFor(b.In); paste != "" {
			said += " " + sentence("the paste: "+pasteMade(b.In)+paste)
		}
	}
	if bakes := v.bakes(); bakes != "" {
		said += " " + bakes
	}
	return append(out, Paragraph(said))
}

// inIt is how deep a batch stands in its dish, or that it does not fit.
func inIt(f *dish.Fit) string {
	if f.Verdict == dish.Fits {
		return deep(f)
	}
	return fitWords(f)
}

// bakes tells the time of the batch where its depth makes it another than the
// whole receipt's.
func (v *fitting) bakes() string {
	is, was := bakingOf(v.Batch.Report), bakingOf(v.Report)
	if is == nil || was == nil || is.Time.IsZero() || was.Time.IsZero() || is.Time.Never || was.Time.Never {
		return ""
	}
	if duration(is.Time) == duration(was.Time) {
		return ""
	}
	return sentence("it bakes in " + duration(is.Time) + "; the whole, in the dish it names, in " + duration(was.Time))
}

// bakingOf is what the oven has to do with the filling of a receipt.
func bakingOf(r *judge.Report) *judge.Baking {
	if i := r.MainPart(); i >= 0 {
		return r.Parts[i].Baking
	}
	return nil
}

func verbOf(f *dish.Fit, one, many string) string {
	if f.Count > 1 {
		return many
	}
	return one
}

// outBy is an error in the hundred: "1.2 in 100 over".
func outBy(off float64) string {
	switch n := math.Abs(off) * inHundred; {
	case n < .05:
		return "nothing"
	case off > 0:
		return fmt.Sprintf("%.1f in 100 over", n)
	default:
		return fmt.Sprintf("%.1f in 100 under", n)
	}
}

// inTheHundred is a share of error, rounded up, so that no error is told less
// than it is.
func inTheHundred(share float64) string {
	n := max(0, math.Ceil(share*inHundred*10-1e-6)/10)
	return strconv.FormatFloat(n, 'f', -1, 64) + " in 100"
}

// trial says what a trial batch can tell and what to try in it.
func (v *fitting) trial() List {
	if v.Batch == nil || v.Batch.Trial == nil {
		return nil
	}
	t := v.Batch.Trial
	var out List
	depth := Entry{Label: "depth", Text: flavourOnly}
	if t.KeepsDepth {
		whole := "the whole receipt in " + anyOf(t.Full)
		if t.Named {
			whole = "the whole receipt in the " + t.Full.Name
		}
		depth.Text = fmt.Sprintf("it stands %.1f cm deep, and %s %.1f: give it the same heat and the same lining, and it tells of the baking too", v.Batch.In.Depth.Likely, whole, t.Full.Depth.Likely)
	}
	out = append(out, depth)
	if t.Parted {
		out = append(out, Entry{Label: "eggs", Text: "no smaller batch leaves every egg whole: beat what is left over and weigh it out"})
	}
	try := Entry{Label: "try in it", Text: "nothing hangs much on what is unclear: bake it as it stands"}
	if d := t.Least; d != nil {
		try.Text = d.Words
		if d.Part > 0 {
			try.Text += ", which carries " + partsOf(d.Part) + " of the doubt"
		}
		if len(t.Ways) > 0 {
			try.Text += "; make it once each way: " + or(t.Ways)
		} else {
			try.Text += "; make two, one at each end of what it may be, and keep a note of which"
		}
	}
	return append(out, try)
}

// fitDoc is a fit as JSON has it.
type fitDoc struct {
	Schema  int        `json:"schema"`
	Assize  assizeDoc  `json:"assize"`
	Receipt receiptDoc `json:"receipt"`
	Lay     string     `json:"lay,omitempty"`
	Stands  string     `json:"stands,omitempty"` // on a sheet | not baked | potted
	Filling *spanDoc   `json:"filling_ml,omitempty"`
	Risen   *spanDoc   `json:"risen_ml,omitempty"`
	Paste   *spanDoc   `json:"paste_g,omitempty"`
	Dish    *dishDoc   `json:"dish,omitempty"`
	Batch   *batchDoc  `json:"batch,omitempty"`
	Dishes  []*dishDoc `json:"dishes"`
}

type batchDoc struct {
	By         json.Number `json:"by"`
	PasteBy    json.Number `json:"paste_by"`
	Worst      json.Number `json:"worst"`
	Tolerance  json.Number `json:"tolerance"`
	Lines      []linesDoc  `json:"lines"`
	Dish       *dishDoc    `json:"dish,omitempty"`
	Trial      bool        `json:"trial,omitempty"`
	KeepsDepth bool        `json:"keeps_depth,omitempty"`
	Try        string      `json:"try,omitempty"`
}

type linesDoc struct {
	Part   string   `json:"part"`
	Text   string   `json:"text"`
	Grams  *spanDoc `json:"grams,omitempty"`
	Exact  *spanDoc `json:"exact_grams,omitempty"`
	Trifle bool     `json:"trifle,omitempty"`
}

// FitJSON writes a fit as one JSON object; dishes stand best first.
func FitJSON(w io.Writer, f *Fitting, a About) error {
	r := f.Report
	load := r.LoadOf()
	d := fitDoc{
		Schema: 1, Assize: assizeDoc{a.Version, reference.Edition, a.OwnTables},
		Receipt: receiptDoc{File: r.Formula.File, Title: r.Formula.Title, Source: r.Formula.Source, Year: r.Formula.Year, Printed: r.Formula.Printed, Place: r.Formula.Place},
		Lay:     string(load.Lay), Stands: string(load.Stands), Filling: told(load.Filling), Risen: told(load.Risen), Paste: told(load.Paste), Dishes: []*dishDoc{},
	}
	if f.Given != nil {
		d.Dish = dishDocOf(f.Given)
	}
	for i := range f.Every {
		if load.Stands == dish.OnSheet {
			break
		}
		d.Dishes = append(d.Dishes, dishDocOf(&f.Every[i]))
	}
	if b := f.Batch; b != nil {
		d.Batch = &batchDoc{
			By: exact(b.By, dishFine), PasteBy: exact(b.PasteBy, dishFine), Worst: number(b.Worst, measurePlaces), Tolerance: number(b.Tolerance, measurePlaces),
			Lines: []linesDoc{},
		}
		for i := range b.Items {
			it := &b.Items[i]
			l := linesDoc{Part: b.Formula.Parts[it.Part].Name, Text: it.Text, Trifle: it.Trifle}
			if !it.NotGiven {
				l.Grams, l.Exact = grams(it.Is), grams(it.Exact)
			}
			d.Batch.Lines = append(d.Batch.Lines, l)
		}
		if b.In != nil {
			d.Batch.Dish = dishDocOf(b.In)
		}
		if t := b.Trial; t != nil {
			d.Batch.Trial, d.Batch.KeepsDepth = true, t.KeepsDepth
			if t.Least != nil {
				d.Batch.Try = t.Least.Words
			}
		}
	}
	return writeJSON(w, d, false)
}

// dishFine is how finely a factor is written.
const dishFine = 6
