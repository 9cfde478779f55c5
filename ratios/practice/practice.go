// Package practice holds a receipt against what a working cook does: which
// steps of the table are to be expected of each part, which of them its words
// tell, and which directions the book prints elsewhere are still to be taken.
// It knows words and ingredients and weighs nothing.
package practice

import (
	"maps"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/receipt"
	"assize/reference"
)

// Dish is a receipt with its parts' methods read.
type Dish struct {
	Formula *formula.Formula
	Methods []formula.Method // of each part
	tables  *reference.Tables
	reader  *receipt.MethodReader
	holds   []map[string]bool // the conditions that hold, for each part
	did     [][]string        // what a bench record says was done to each part; nothing without one
}

// Expected is a step of the table that is to be expected of a part.
type Expected struct {
	Step  *reference.Step
	Part  int
	Taken bool // its words, or the file, say it was taken
	// Spared: another way to the same end was taken.
	Spared bool
}

// Standing is a direction the book prints elsewhere that holds for a part.
type Standing struct {
	formula.Direction
	Part  int
	Steps []*reference.Step // the steps of the table it tells, none when it is no step we know
	Taken bool
	// Idle: what it tells has no place in this dish, as a wash inside a case has
	// none where there is no case.
	Idle bool
}

// Read reads what was done to each part of a formula whose takes are resolved.
func Read(f *formula.Formula, t *reference.Tables, reader *receipt.MethodReader) *Dish {
	methods := make([]formula.Method, len(f.Parts))
	for i := range f.Parts {
		methods[i] = reader.Read(f, &f.Parts[i])
	}
	return Made(f, methods, nil, t, reader)
}

// Made is a dish of which the method of each part is known, as a bench record
// has it, with the words of what was done to each part beside its steps. It
// keeps the methods it is given as they are.
func Made(f *formula.Formula, methods []formula.Method, did [][]string, t *reference.Tables, reader *receipt.MethodReader) *Dish {
	d := &Dish{Formula: f, tables: t, reader: reader, Methods: slices.Clone(methods), did: did}
	for i := range f.Parts {
		d.Methods[i].Flags = maps.Clone(methods[i].Flags)
		if d.tellsDone(d.told(i)) {
			d.Methods[i].Flags["doneness_told"] = true
		}
		if tellsLaid(d.told(i)) {
			d.Methods[i].Flags["laid_told"] = true
		}
	}
	d.holds = make([]map[string]bool, len(f.Parts))
	for i := range f.Parts {
		d.holds[i] = d.conditions(i)
	}
	return d
}

// Expected are the steps to be expected of the dish, in the order of the table
// and within it of the parts.
func (d *Dish) Expected() []Expected {
	var out []Expected
	for s := range d.tables.Steps {
		step := &d.tables.Steps[s]
		for i := range d.Formula.Parts {
			if !d.Wants(step, i) {
				continue
			}
			taken := d.raised(step.Takes, i, step.Anywhere) || slices.Contains(d.Formula.Parts[i].Done, step.ID)
			if !taken && slices.ContainsFunc(step.Unless, func(c string) bool { return d.Holds(i, c) }) {
				continue
			}
			out = append(out, Expected{
				Step: step, Part: i,
				Taken: taken,
				// The other way counts only where it is done to the part itself or
				// told anywhere, as the step itself.
				Spared: d.raised(step.Spares, i, step.Anywhere),
			})
			if step.Once {
				break
			}
		}
	}
	return out
}

// Wants reports whether a step is to be expected of part i, taken or not.
func (d *Dish) Wants(step *reference.Step, i int) bool {
	if !slices.Contains(step.Kinds, string(d.Formula.Parts[i].Kind)) {
		return false
	}
	if len(step.Flags) > 0 && !d.raised(step.Flags, i, false) {
		return false
	}
	return d.Holds(i, step.When...)
}

// Holds reports whether all the conditions hold for part i. The names are those
// of reference.StepConditions, each with "no-" before it to turn it round.
func (d *Dish) Holds(i int, conditions ...string) bool {
	for _, c := range conditions {
		name, not := strings.CutPrefix(c, "no-")
		if d.holds[i][name] == not {
			return false
		}
	}
	return true
}

func (d *Dish) raised(flags []string, i int, anywhere bool) bool {
	for _, f := range flags {
		for j := range d.Methods {
			if (j == i || anywhere) && d.Methods[j].Flags[formula.Flag(f)] {
				return true
			}
		}
	}
	return false
}

// Standing are the directions of the book that hold for the dish. One that
// tells a step is idle where the step makes no sense; any other holds wherever
// the book says it does.
func (d *Dish) Standing() []Standing {
	var out []Standing
	for i := range d.Formula.Parts {
		p := &d.Formula.Parts[i]
		for _, dir := range p.Standing {
			s := Standing{Direction: dir, Part: i, Steps: d.toldBy(dir, p.Kind)}
			if len(s.Steps) == 0 {
				s.Taken = spoken(dir.Text, d.told(i))
				out = append(out, s)
				continue
			}
			s.Steps = slices.DeleteFunc(s.Steps, func(step *reference.Step) bool { return !d.Wants(step, i) })
			s.Idle = len(s.Steps) == 0
			s.Taken = !s.Idle && spoken(dir.Text, d.told(i)) || !s.Idle && !slices.ContainsFunc(s.Steps, func(step *reference.Step) bool {
				return !d.raised(step.Takes, i, step.Anywhere) && !slices.Contains(p.Done, step.ID)
			})
			out = append(out, s)
		}
	}
	return out
}

// told are the steps of a part as written, and what was done to it.
func (d *Dish) told(i int) []string {
	if i >= len(d.did) {
		return d.Formula.Parts[i].Steps
	}
	return slices.Concat(d.Formula.Parts[i].Steps, d.did[i])
}

// toldBy are the steps of the table a direction tells: the one the book's page names, else
// those that its words show taken, at the first stage any of them stands at:
// what lies in the cold before it is rolled is not a case raised already.
func (d *Dish) toldBy(dir formula.Direction, kind formula.Kind) []*reference.Step {
	if step, ok := d.tables.Step(dir.Step); ok {
		return []*reference.Step{step}
	}
	_, flags := d.reader.Said(dir.Text, kind)
	var out []*reference.Step
	for i := range d.tables.Steps {
		step := &d.tables.Steps[i]
		if !slices.Contains(step.Kinds, string(kind)) {
			continue
		}
		if slices.ContainsFunc(step.Takes, func(f string) bool { return flags[formula.Flag(f)] }) {
			out = append(out, step)
		}
	}
	first := len(reference.StepStages)
	for _, step := range out {
		first = min(first, slices.Index(reference.StepStages, step.Stage))
	}
	return slices.DeleteFunc(out, func(step *reference.Step) bool { return slices.Index(reference.StepStages, step.Stage) != first })
}

// spoken reports whether one of the steps says what the direction says: nearly
// all the words of the shorter stand in the longer.
func spoken(direction string, steps []string) bool {
	const nearly = .8
	own := reference.Words(direction)
	for _, s := range steps {
		short, long := own, reference.Words(s)
		if len(short) > len(long) {
			short, long = long, short
		}
		n := 0
		for _, w := range short {
			if slices.Contains(long, w) {
				n++
			}
		}
		if 2*len(short) >= len(long) && float64(n) >= nearly*float64(len(short)) && n > 2 {
			return true
		}
	}
	return false
}

// Reader is the reader of method words the dish was read with.
func (d *Dish) Reader() *receipt.MethodReader { return d.reader }
