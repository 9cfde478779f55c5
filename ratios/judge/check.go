package judge

import (
	"cmp"
	"fmt"
	"slices"

	"assize/formula"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/ratios/bake"
	"assize/ratios/baseline"
	"assize/ratios/oven"
	"assize/ratios/practice"
	"assize/ratios/readings"
	"assize/reference"
	"assize/reference/fault"
)

// worthSettling is the variance of the shares over the readings under which
// every way of taking the receipt comes to the same, and nothing need be
// settled first: about a tenth either way.
const worthSettling = .01

// Judge judges receipts by one set of tables. It is made once and may be used
// for many receipts, from one goroutine each.
type Judge struct {
	Tables   *reference.Tables
	Rules    bake.Rules
	Readings int // how many readings; 0 means readings.Usual
	Seed     uint64
	Basis    string // flour | egg | total; empty for the usual
	Remedies bool   // whether remedies are tried, which takes further readings
	// Depth of the filling in its dish and Width of the dish, cm; nothing when
	// they are not known.
	Depth   oven.Range
	Width   float64
	methods *receipt.MethodReader
	listed  *receipt.MentionReader
}

// New makes a judge with the standard rules.
func New(t *reference.Tables) *Judge {
	return &Judge{Tables: t, Rules: bake.Standard, Readings: readings.Usual, Remedies: true, methods: receipt.NewMethodReader(t), listed: receipt.NewMentionReader(t)}
}

// Check weighs and judges a formula. What cannot be weighed comes back as
// faults, and then there is no report.
func (j *Judge) Check(f *formula.Formula) (*Report, fault.List) {
	w, faults := weigh.Weigh(f, j.Tables)
	if len(faults) > 0 {
		return nil, faults
	}
	inputs := make([]bake.Input, len(w.Parts))
	for i := range w.Parts {
		inputs[i] = j.Input(w, i)
	}
	return j.CheckWeighed(w, inputs)
}

// CheckWeighed judges a formula that has been weighed and whose method has been
// read, part by part, as it is written.
func (j *Judge) CheckWeighed(w *weigh.Weighed, inputs []bake.Input) (*Report, fault.List) {
	return j.CheckMade(w, inputs, nil)
}

// CheckMade is CheckWeighed of a formula as a bench record says it was made, with
// the words of what was done to each part: a step done at the bench is not
// missed.
func (j *Judge) CheckMade(w *weigh.Weighed, inputs []bake.Input, did [][]string) (*Report, fault.List) {
	f := w.Formula
	r := &Report{Formula: f, Weighed: w, Readings: j.Readings}
	r.Notes = append(r.Notes, w.Notes...)
	methods := make([]formula.Method, len(inputs))
	for i := range inputs {
		methods[i] = inputs[i].Method
	}
	dish := practice.Made(f, methods, did, j.Tables, j.methods)
	for i, in := range inputs {
		part, findings, err := j.part(in, dish.Unheated(i), r)
		if err != nil {
			return nil, fault.List{{File: f.File, Line: f.Parts[i].Pos.Line, Column: f.Parts[i].Pos.Column, What: err.Error()}}
		}
		r.Parts = append(r.Parts, part)
		r.Findings = append(r.Findings, findings...)
	}
	r.lays(dish)
	r.stands = standing(dish, inputs)
	r.Findings = append(r.Findings, practised(dish, j.Tables)...)
	r.Findings = append(r.Findings, j.mentions(f)...)
	r.Findings = append(r.Findings, j.fill(r, inputs)...)
	j.inDish(r).ovens(r, inputs)
	r.meets(dish, j.Tables)
	r.Findings = append(r.Findings, cautions(r, inputs, j.Tables)...)
	slices.SortStableFunc(r.Findings, func(a, b Finding) int { return rank(a.Grade) - rank(b.Grade) })
	slices.SortStableFunc(r.Settle, func(a, b Doubt) int { return cmp.Compare(b.Weight, a.Weight) })
	return r, nil
}

func rank(g Grade) int {
	return slices.Index([]Grade{Decide, Watch, Note, Sound, ""}, g)
}

// Input is what part i of a weighed formula is judged from.
func (j *Judge) Input(w *weigh.Weighed, i int) bake.Input {
	return bake.Input{
		Weighed: w, Part: i, Tables: j.Tables, Rules: j.Rules,
		Method: j.methods.Read(w.Formula, w.Parts[i].Of),
	}
}

// Options are the draws for a receipt: always the same for the same title. A
// changed formula has the draws of the receipt it comes from, so that what
// differs between the two is the change.
func (j *Judge) Options(f *formula.Formula) readings.Options {
	title := f.Title
	if f.Ancestry != nil && f.Ancestry.Of != "" {
		title = f.Ancestry.Of
	}
	return readings.Options{N: j.Readings, Seed: readings.SeedOf(title) ^ j.Seed}
}

func (j *Judge) part(in bake.Input, unheated bool, r *Report) (Part, []Finding, error) {
	w := in.Weighed
	wp := &w.Parts[in.Part]
	p := Part{
		Name: wp.Of.Name, Kind: wp.Of.Kind, From: wp.Of.From, Lay: wp.Of.Lay,
		Profile:  ratios.ProfileOf(w, in.Part, j.Tables, j.Basis),
		Measures: map[string]readings.Span{},
	}
	p.Lines = linesOf(w, wp, &p.Profile)
	p.Words = wordsOf(&in.Method, j.Tables)
	p.Class = ClassOf(in, &p.Profile)
	p.Ratios = readRatios(&p.Profile, p.Class, j.Tables)

	in.Class = likelyMeant(p.Class)
	k, err := bake.Compile(in)
	if err != nil {
		return p, nil, err
	}
	o := j.Options(w.Formula)
	result := readings.Run(k, o)
	for m, s := range result.Measures {
		p.Measures[m.String()] = s
	}
	if k.Kind == formula.Filling && (unheated || bake.FireOf(&in.Method).Cold()) {
		p.Cold = true
		return p, nil, nil
	}
	if bake.HoldsItself(in, k) {
		p.Unset = true
		return p, nil, nil
	}
	p.Texture = textureOf(k, result, j.Tables)
	if p.Texture == nil {
		return p, nil, nil
	}
	text, err := baseline.Textbook(in)
	if err != nil {
		return p, nil, err
	}
	p.Baseline = &Baseline{Texture: shownAs(text.Texture), Rule: text.Rule}
	for _, d := range result.Doubts {
		if result.Variance >= worthSettling {
			r.Settle = append(r.Settle, Doubt{Words: d.Words, Part: d.Part, Of: p.Name, Weight: d.Part * result.Variance})
		}
	}
	findings := j.textureFindings(in, k, &p, result, o)
	return p, findings, nil
}

// likelyMeant is the class whose habits are taken where the receipt is silent:
// the one it names, else the nearer of today's and the old books'.
func likelyMeant(fit *ClassFit) *reference.Class {
	switch {
	case fit == nil:
		return nil
	case !fit.Given && fit.Period != nil && fit.Period.Distance < fit.Distance:
		return fit.Period.Class
	}
	return fit.Class
}

func linesOf(w *weigh.Weighed, wp *weigh.Part, prof *ratios.Profile) []Line {
	lines := make([]Line, len(wp.Of.Lines))
	for i, l := range wp.Of.Lines {
		lines[i] = Line{Text: l.Text, Notes: l.Notes}
		if l.Why != "" {
			lines[i].Notes = append(slices.Clone(l.Notes), "in doubt: "+l.Why)
		}
	}
	for i := range wp.Items {
		it := &wp.Items[i]
		lines[it.Line].Items = append(lines[it.Line].Items, Item{
			Ingredient: it.Ingredient, Form: it.Form, Grams: it.Grams, Percent: prof.Percents[i],
			State: it.State, Used: it.Used(w.Unknowns),
		})
	}
	for i := range lines {
		for _, it := range lines[i].Items {
			if n := stateNote(it.State); n != "" && !slices.Contains(lines[i].Notes, n) {
				lines[i].Notes = append(lines[i].Notes, fmt.Sprintf("%s: %s", it.Ingredient.Name, n))
			}
		}
	}
	return lines
}

// stateNote says what becomes of an amount the receipt does not give.
func stateNote(s formula.State) string {
	switch s {
	case formula.ToTaste:
		return "to taste, so not weighed"
	case formula.NotGiven:
		return "no amount given, so not weighed"
	case formula.Enough:
		return "as much as it takes, so not weighed"
	}
	return ""
}

func wordsOf(m *formula.Method, t *reference.Tables) []MethodWord {
	var out []MethodWord
	for _, tok := range m.Tokens {
		row, ok := t.Method(tok.Method)
		if !ok {
			continue
		}
		w := MethodWord{Words: tok.Words, Token: row.ID, Meaning: row.Meaning, Where: tok.Where}
		if !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}
