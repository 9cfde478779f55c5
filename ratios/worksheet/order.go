package worksheet

import (
	"slices"
	"strings"

	"assize/formula"
	"assize/ratios/practice"
	"assize/reference"
)

// ordered is the whole work of a dish: its steps, and the steps of the table
// that are to be expected of it whether its words tell them or not.
type ordered struct {
	steps    []Step
	expected []practice.Expected
	aside    []Step // directions of the book that have no place here
}

// order puts the steps of every part, what the book says elsewhere and what it
// leaves unsaid into working order.
func (a *Assembler) order(d *practice.Dish, o *Oven) ordered {
	out := ordered{expected: d.Expected()}
	var lists [3][]Step
	for i := range d.Formula.Parts {
		lists[0] = append(lists[0], a.own(d, i)...)
	}
	told := map[*reference.Step]map[int]bool{} // by a direction of the book
	for _, s := range d.Standing() {
		if s.Taken {
			continue
		}
		if s.Idle {
			out.aside = append(out.aside, Step{Text: s.Text, Origin: Elsewhere, From: s.Where, Part: s.Part})
			continue
		}
		step := Step{Text: sentence(strings.TrimRight(s.Text, ".")), Origin: Elsewhere, From: s.Where, Part: s.Part, Stage: stageOf(d, s.Part, s.Text)}
		if len(s.Steps) > 0 {
			step.Row, step.Stage = s.Steps[0], s.Steps[0].Stage
		}
		for _, row := range s.Steps {
			if told[row] == nil {
				told[row] = map[int]bool{}
			}
			told[row][s.Part] = true
		}
		lists[1] = append(lists[1], step)
	}
	for _, x := range out.expected {
		switch {
		case x.Taken || told[x.Step][x.Part]:
			if x.Taken && x.Step.Stage == "done" && o.Done.Set != nil {
				lists[2] = append(lists[2], Step{Text: "", Origin: Unsaid, Row: x.Step, Part: x.Part, Stage: x.Step.Stage, Done: o.Done.Set})
			}
			continue
		case x.Spared:
			continue
		}
		step := Step{Text: strings.TrimRight(x.Step.Says, "."), Origin: Unsaid, Row: x.Step, Part: x.Part, Stage: x.Step.Stage}
		if x.Step.Stage == "done" {
			step.Done = o.Done.Set
		}
		lists[2] = append(lists[2], step)
	}
	// The oven and the time stand on the page beside the steps: they are told
	// where the dish goes in, unless the steps say them.
	if beside := o.beside(lists[0], d); beside != "" {
		lists[0] = append(lists[0], Step{Text: sentence(beside), Origin: Own, Part: mainPart(d), Stage: "oven"})
	}
	out.steps = a.merge(d, lists)
	return out
}

// own are the steps of part i as its page and the pages it is taken from have
// them. Each is set at the stage its words speak of, and never before the one
// that stands ahead of it on the page.
func (a *Assembler) own(d *practice.Dish, i int) []Step {
	p := &d.Formula.Parts[i]
	var out []Step
	last := ""
	for j, text := range p.Steps {
		s := Step{Origin: Own, Part: i, From: p.StepFrom(j)}
		if s.From != "" {
			s.Origin = Taken
		}
		if row, ok := a.tables.Method(strings.ToLower(strings.TrimSpace(text))); ok { // a token in place of words
			text = row.Meaning
		}
		var pieces []string
		for _, clause := range clauses(text) {
			pieces = append(pieces, risings(d, i, clause)...)
		}
		for _, clause := range pieces {
			stage := stageOf(d, i, clause)
			if stage == "rise" && (last == "shape" || last == "prove") {
				stage = "prove" // what is shaped already rises a second time
			}
			if rank(last) >= rank("oven") && cooling(clause) {
				stage = "cool"
			}
			if rank(stage) < rank(last) {
				stage = last
			}
			last = stage
			s.Text, s.Stage, s.Part = clause, stage, i
			if paste := rolledFor(d, i, clause); paste >= 0 {
				s.Stage, s.Part = "lay", paste
				if d.Holds(paste, "folded") {
					last = "fill" // what comes next is filled into it
				}
			}
			out = append(out, s)
		}
	}
	return out
}

// rolledFor is the paste that a clause among the steps of a filling rolls out: it is
// done when the paste is laid. -1 when it speaks of something else.
func rolledFor(d *practice.Dish, part int, clause string) int {
	words := reference.Words(clause)
	if len(words) < 2 || words[0] != "roll" || d.Formula.Parts[part].Kind != formula.Filling || !slices.Contains([]string{"it", "out", "the", "your", "this"}, words[1]) {
		return -1
	}
	if words[1] == "the" && len(words) > 2 && !slices.Contains([]string{"paste", "crust", "dough", "pastry"}, words[2]) {
		return -1
	}
	return slices.IndexFunc(d.Formula.Parts, func(p formula.Part) bool { return p.Kind == formula.Pastry })
}

// cooling reports words of what is done to a dish that has left the oven: "when
// it is cold", "as soon as it is drawn".
func cooling(clause string) bool {
	words := reference.Words(clause)
	opens := len(words) > 0 && slices.Contains([]string{"when", "while", "after", "once", "as", "let", "leave", "set", "then"}, words[0])
	return opens && slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"cold", "cool", "cooled", "drawn", "out", "baked"}, w)
	})
}

func rank(stage string) int { return slices.Index(reference.StepStages, stage) }

// before are the stages at which what the book leaves unsaid goes ahead of what
// it says: the dish is filled only when the oven is ready, and then comes the
// filling as the book has it; it is let cool, and then finished and sent to table.
// At the others it comes after.
var before = []string{"ready", "case", "fill", "oven", "cool"}

// merge sorts the receipt's own steps, the book's and the unsaid ones into one
// order: by phase, by part, by stage; the receipt's own keep theirs.
func (a *Assembler) merge(d *practice.Dish, lists [3][]Step) []Step {
	type keyed struct {
		Step
		key [5]int
	}
	var all []keyed
	for l, list := range lists {
		for n, s := range list {
			place := 1 // of the receipt's own steps within a stage
			if l > 0 {
				place = 2
				if slices.Contains(before, s.Stage) {
					place = 0
				}
			}
			part := s.Part
			if phase := phaseOf(d, &s); phase >= shared {
				part = 0 // by now there is one dish
			}
			within := n
			if s.Row != nil {
				within = slices.IndexFunc(a.tables.Steps, func(r reference.Step) bool { return r.ID == s.Row.ID })
			}
			all = append(all, keyed{s, [5]int{phaseOf(d, &s), part, rank(s.Stage), place, within}})
		}
	}
	slices.SortStableFunc(all, func(x, y keyed) int { return slices.Compare(x.key[:], y.key[:]) })
	out := make([]Step, len(all))
	for i := range all {
		out[i] = all[i].Step
	}
	return settleCooling(d, out)
}

// settleCooling sets the cooling of melted butter behind the step that melts it.
func settleCooling(d *practice.Dish, steps []Step) []Step {
	from := slices.IndexFunc(steps, func(s Step) bool { return s.Row != nil && s.Origin == Unsaid && s.Stage == "make" })
	if from < 0 {
		return steps
	}
	moved := steps[from]
	steps = slices.Delete(steps, from, from+1)
	to := slices.IndexFunc(steps, func(s Step) bool {
		if s.Part != moved.Part || s.Stage != "make" {
			return false
		}
		_, flags := d.Reader().Said(s.Text, d.Formula.Parts[s.Part].Kind)
		return slices.ContainsFunc(moved.Row.Flags, func(f string) bool { return flags[formula.Flag(f)] })
	})
	if to < 0 {
		to = min(from, len(steps)) - 1
	}
	return slices.Insert(steps, to+1, moved)
}

// Indices of Phases; from shared on the parts are one dish.
const (
	phaseReady = iota
	phasePaste
	phaseCase
	phaseFilling
	phaseOven
	phaseFinish
	shared = phaseOven
)

// phaseOf is the phase a step falls in.
func phaseOf(d *practice.Dish, s *Step) int {
	pastry := d.Formula.Parts[s.Part].Kind == formula.Pastry
	switch s.Stage {
	case "ready":
		return phaseReady
	case "make", "rest", "rise", "shape", "prove":
		if pastry {
			return phasePaste
		}
		return phaseFilling
	case "lay", "chill", "case", "wash":
		if s.Row != nil && s.Row.Once && d.Holds(s.Part, "folded") {
			return phaseReady // there is no case the oven is lit beside
		}
		if s.Stage == "lay" && d.Holds(s.Part, "folded") {
			return phaseOven // it is filled as it is rolled
		}
		if pastry {
			return phaseCase
		}
		return phaseReady
	case "strain":
		return phaseFilling
	case "cool", "set":
		return phaseFinish
	case "done":
		if d.Holds(s.Part, "stove") {
			return phaseFilling
		}
	}
	return phaseOven
}

// phases groups the steps under headings.
func phases(d *practice.Dish, o ordered) []Phase {
	var out []Phase
	for i := range o.steps {
		s := o.steps[i]
		phase := phaseOf(d, &s)
		name := ""
		if phase == phasePaste || phase == phaseFilling {
			name = d.Formula.Parts[s.Part].Name
		}
		if n := len(out); n == 0 || out[n-1].ID != Phases[phase] || out[n-1].Part != name {
			out = append(out, Phase{ID: Phases[phase], Part: name})
		}
		out[len(out)-1].Steps = append(out[len(out)-1].Steps, s)
	}
	return out
}

// mainPart is the part the oven and the time are said of: the first filling,
// else the first part.
func mainPart(d *practice.Dish) int {
	return max(0, slices.IndexFunc(d.Formula.Parts, func(p formula.Part) bool { return p.Kind == formula.Filling }))
}
