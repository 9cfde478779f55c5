package judge

import (
	"fmt"
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios/practice"
	"assize/reference"
)

// practised are the directions of the book and the steps a working cook expects
// that have not been taken. A step that a direction tells is asked for once, as
// the direction.
func practised(d *practice.Dish, t *reference.Tables) []Finding {
	var out []Finding
	asked := map[string]bool{}
	key := func(step *reference.Step, part int) string { return fmt.Sprint(step.ID, " ", part) }
	for _, s := range d.Standing() {
		for _, step := range s.Steps {
			asked[key(step, s.Part)] = true
		}
		if s.Taken || s.Idle {
			continue
		}
		f := Finding{
			Code: "step-missing", Part: d.Formula.Parts[s.Part].Name, Grade: Note,
			Says: "the book says elsewhere: " + strings.TrimRight(s.Text, ". "),
		}
		e := Evidence{What: "a standing direction of the book", Value: "not taken", Layer: LayerPractice, Confidence: "high"}
		if s.Where != "" {
			e.Limit = s.Where
		}
		if len(s.Steps) > 0 {
			f.Grade = Watch
			e.What = s.Steps[0].Name
		}
		f.Because = []Evidence{e}
		out = append(out, f)
	}
	for _, x := range d.Expected() {
		step := x.Step
		if step.Grade == "" || x.Taken || x.Spared || asked[key(step, x.Part)] || step.ID == partBake && badCase(&d.Methods[x.Part]) {
			continue
		}
		// The wash does the same service as part-baking: where the book directs
		// it, that is the step that is missing.
		if slices.ContainsFunc(step.Spares, func(f string) bool { return directs(d, x.Part, f) }) {
			continue
		}
		f := Finding{
			Code: "step-missing", Part: d.Formula.Parts[x.Part].Name, Grade: Grade(step.Grade),
			Says: fmt.Sprintf("nothing is said of %s: %s", step.Name, step.Why),
			Because: []Evidence{{
				What: step.Name, Value: "not in the receipt", Layer: LayerPractice, Confidence: "medium",
				Limit: foundIn(step, t), Source: sourceOf(t, step.Found.Source), Locator: step.Found.Locator,
			}},
		}
		if step.ID == partBake {
			f.Base = true
			f.Says = "nothing is said of readying the case, and " + step.Why + ": part-bake it, or dry a wash of egg inside it before it is filled"
		}
		out = append(out, f)
	}
	return out
}

// lays sets how each paste under or about a filling is laid. Where nothing tells
// it, it is judged as a lining and the notes say so.
func (r *Report) lays(d *practice.Dish) {
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.Kind != formula.Pastry || p.Lay != "" {
			continue
		}
		p.Lay = d.LaidBy(i)
		if p.Lay == "" && d.Lay(i) != "" {
			r.Notes = append(r.Notes, fmt.Sprintf("the book does not say how the %s is laid; taken as a lining", p.Name))
		}
	}
}

// partBake is the step whose want a check tells with its other way, the wash.
const partBake = "part-bake"

// badCase reports a case whose words raise a finding of their own.
func badCase(m *formula.Method) bool {
	return m.Has("raw_case", "warm_filling", "juicy_filling", "cool_oven")
}

// directs reports whether a direction of the book for the part would raise the
// flag.
func directs(d *practice.Dish, part int, flag string) bool {
	for _, s := range d.Standing() {
		if s.Part == part && slices.ContainsFunc(s.Steps, func(step *reference.Step) bool { return slices.Contains(step.Takes, flag) }) {
			return true
		}
	}
	return false
}

// foundIn says what a step rests on, and where the earliest of it we know is
// printed.
func foundIn(step *reference.Step, t *reference.Tables) string {
	out := "common practice"
	if step.How != reference.HowCommon {
		if s, ok := t.Source(step.Source); ok {
			out = s.Title
		}
	}
	if step.Found.Year != 0 {
		out += fmt.Sprintf("; the earliest we have found in print is %d", step.Found.Year)
	}
	return out
}

// mentions are things named in the steps and not listed, or the reverse, and
// lines that do not belong in their part.
func (j *Judge) mentions(f *formula.Formula) []Finding {
	var out []Finding
	for _, m := range j.listed.NotListed(f) {
		says := fmt.Sprintf("the steps never name %s, which the list has", m.Name)
		if m.InSteps {
			says = fmt.Sprintf("the steps name %s, which the list has not, so it is not weighed", m.Name)
		}
		out = append(out, Finding{
			Code: "not-listed", Part: f.Parts[m.Part].Name, Grade: Watch, Says: says,
			Because: []Evidence{{What: m.Name, Value: m.Words, Layer: LayerPractice, Confidence: "medium"}},
		})
	}
	return out
}
