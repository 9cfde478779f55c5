package present

import (
	"encoding/json"
	"fmt"
	"math"

	"assize/formula"
	"assize/ratios/dish"
	"assize/ratios/judge"
	"assize/ratios/readings"
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
	case left >= 0:
		out += fmt.Sprintf(", left about %.0f g", toTen(left))
	default:
		out += fmt.Sprintf(", short by about %.0f g", toTen(-left))
	}
	return out
}

// theDish names the dishes of a fit: "the soup plate", "the 24 patty-pans".
func theDish(f *dish.Fit) string {
	if f.Count > 1 {
		return fmt.Sprintf("the %d of %s", f.Count, quoted(f.Name))
	}
	return "the " + f.Name
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
	told := func(s readings.Span) *spanDoc {
		if !finite(s.Low, s.Likely, s.High) || s == (readings.Span{}) {
			return nil
		}
		return &spanDoc{number(s.Low, dishPlaces), number(s.Likely, dishPlaces), number(s.High, dishPlaces)}
	}
	d.RoomML, d.BrimML, d.FillingML, d.DepthCM = told(f.RoomML), told(f.BrimML), told(f.FillingML), told(f.Depth)
	d.PasteMade, d.PasteNeeded, d.PasteLeft = told(f.PasteMade), told(f.PasteNeeded), told(f.PasteLeft)
	if f.Verdict != dish.NotKnown {
		full := number(f.Full, sharePlaces)
		d.Full = &full
	}
	return d
}
