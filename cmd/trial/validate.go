package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"assize/formula"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/ratios/trial"
	"assize/reference"
)

// validate prints how the judge does on the published formulas, beside both
// baselines, how the reader of words does on receipts with a key, and what
// each switchable rule changes.
func validate(t *reference.Tables, out io.Writer) error {
	fmt.Fprintf(out, "Tables %s: %d published formulas\n\n", reference.Edition, len(t.Published))
	if err := weighing(t, out); err != nil {
		return err
	}
	for _, kind := range []formula.Kind{formula.Filling, formula.Pastry} {
		if err := kindOf(t, kind, out); err != nil {
			return err
		}
	}
	if err := inWords(t, out); err != nil {
		return err
	}
	if err := pans(t, out); err != nil {
		return err
	}
	if err := yields(t, out); err != nil {
		return err
	}
	if err := times(t, out); err != nil {
		return err
	}
	if err := heat(t, out); err != nil {
		return err
	}
	if err := switches(t, out); err != nil {
		return err
	}
	classes(t, out)
	if err := variants(t, out); err != nil {
		return err
	}
	parameters(t, out)
	return nil
}

// weighing counts the published formulas that can be read and weighed whole.
func weighing(t *reference.Tables, out io.Writer) error {
	weighed := 0
	for i := range t.Published {
		p := &t.Published[i]
		f, faults := trial.Formula(p, t)
		if len(faults) == 0 {
			_, faults = weigh.Weigh(f, t)
		}
		if len(faults) > 0 {
			fmt.Fprintf(out, "  not weighed: %s: %v\n", p.ID, faults)
			continue
		}
		weighed++
	}
	fmt.Fprintf(out, "Weighed with every ingredient and measure known: %d of %d\n\n", weighed, len(t.Published))
	return nil
}

// joined are the textures reported together: the evidence cannot tell flaky
// from tender.
var joined = map[string]string{"flaky": "sound", "tender": "sound"}

var good = map[string]bool{"sets": true, "starch-set": true, "sound": true, "flaky": true, "tender": true}

func kindOf(t *reference.Tables, kind formula.Kind, out io.Writer) error {
	items, err := trial.Bench(t, kind, bake.Standard, trial.Fit)
	if err != nil {
		return err
	}
	judges, err := trial.Evaluate(t, kind, items, trial.FoldOf)
	if err != nil {
		return err
	}
	bySource, err := trial.Evaluate(t, kind, items, trial.SourceOf)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%s: %d published formulas with a known texture, five folds that keep sources and pairs together\n", strings.ToUpper(string(kind)), len(items))
	for i := range judges {
		if kind == formula.Pastry {
			right, of := judges[i].Accuracy()
			fmt.Fprintf(out, "  %-36s flaky and tender apart: %d of %d (%.2f)\n", judges[i].Name, right, of, float64(right)/float64(of))
			judges[i] = judges[i].Joined(joined)
		}
	}
	for i := range judges {
		report(&judges[i], out)
	}
	for _, j := range bySource {
		switch j.Name {
		case trial.Fitted, trial.Regression:
			if kind == formula.Pastry {
				j = j.Joined(joined)
			}
			j.Name += ", one source left out at a time"
			report(&j, out)
		}
	}
	if err := dealtOut(t, kind, items, out); err != nil {
		return err
	}
	confusion(&judges[0], out)
	bins(&judges[0], kind, out)
	fmt.Fprintln(out)
	return nil
}

// divisions is how many other ways of making five folds are tried.
const divisions = 20

// flagged is the texture of a kind whose calls matter most.
var flagged = map[formula.Kind]string{formula.Filling: "cakey", formula.Pastry: "tough"}

// dealtOut prints how far the scores hang on which sources fell into one fold.
func dealtOut(t *reference.Tables, kind formula.Kind, items []*trial.Item, out io.Writer) error {
	var right, found []int
	for seed := range uint64(divisions) {
		judges, err := trial.Evaluate(t, kind, items, trial.DealtOut(items, seed))
		if err != nil {
			return err
		}
		mine := judges[0]
		if kind == formula.Pastry {
			mine = mine.Joined(joined)
		}
		n, _ := mine.Accuracy()
		right, found = append(right, n), append(found, mine.Flag(flagged[kind], .5).Right)
	}
	fmt.Fprintf(out, "  over %d other ways of dealing the sources into five folds: right %.1f of %d (%d to %d), %s found %.1f (%d to %d)\n",
		divisions, mean(right), len(items), slices.Min(right), slices.Max(right), flagged[kind], mean(found), slices.Min(found), slices.Max(found))
	return nil
}

func mean(counts []int) float64 {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return float64(sum) / float64(len(counts))
}

func report(j *trial.Judged, out io.Writer) {
	right, of := j.Accuracy()
	low, high := trial.Wilson(right, of)
	alarms, ofGood := j.FalseAlarms(good, .5)
	may, _ := j.FalseAlarms(good, .25)
	fmt.Fprintf(out, "  %-36s right %d of %d = %.2f (%.2f to %.2f), balanced %.2f; false alarms on good ones %d of %d, \"may\" %d\n",
		j.Name, right, of, float64(right)/float64(of), low, high, j.Balanced(), alarms, ofGood, may)
	for _, id := range j.Textures {
		f := j.Flag(id, .5)
		foundLow, foundHigh := trial.Wilson(f.Right, f.Occurs)
		fmt.Fprintf(out, "      %-11s found %2d of %2d (%.2f to %.2f)   right %2d of %2d called   Brier %.3f (base rate %.3f)   calibration error %.3f\n",
			id, f.Right, f.Occurs, foundLow, foundHigh, f.Right, f.Called, f.Brier, f.BaseBrier, f.ECE)
	}
}

func confusion(j *trial.Judged, out io.Writer) {
	fmt.Fprintf(out, "  what it was (down) and what %s says (across)\n      %-11s", j.Name, "")
	for _, id := range j.Textures {
		fmt.Fprintf(out, "%11s", id)
	}
	fmt.Fprintln(out)
	counts := j.Confusion()
	for _, was := range j.Textures {
		fmt.Fprintf(out, "      %-11s", was)
		for _, said := range j.Textures {
			fmt.Fprintf(out, "%11d", counts[was][said])
		}
		fmt.Fprintln(out)
	}
}

// bins prints the calibration of the flag that matters most.
func bins(j *trial.Judged, kind formula.Kind, out io.Writer) {
	id := flagged[kind]
	fmt.Fprintf(out, "  %s, share said and share seen:", id)
	for b := range 10 {
		n, said, seen := 0, 0.0, 0.0
		for _, p := range j.Predictions {
			if s := p.Shares[id]; min(9, int(s*10)) == b {
				n++
				said += s
				if p.Item.Label == id {
					seen++
				}
			}
		}
		if n > 0 {
			fmt.Fprintf(out, "  %.2f/%.2f (%d)", said/float64(n), seen/float64(n), n)
		}
	}
	fmt.Fprintln(out)
}

func heat(t *reference.Tables, out io.Writer) error {
	items, err := trial.HeatBench(t, bake.Standard)
	if err != nil {
		return err
	}
	fmt.Fprint(out, "HEAT CAUTION (not a fault)\n")
	for _, from := range []float64{.25, .35, .5} {
		spoiled, ofSpoiled, fine, ofFine := 0, 0, 0, 0
		for _, it := range items {
			_, p := readings.Shares(it.Kernel, readings.Options{N: 400, Seed: it.Seed})
			if it.Spoiled {
				ofSpoiled++
				if p >= from {
					spoiled++
				}
				continue
			}
			ofFine++
			if p >= from {
				fine++
			}
		}
		fmt.Fprintf(out, "  printed from %.2f: on %d of %d spoiled by heat, on %d of %d good\n", from, spoiled, ofSpoiled, fine, ofFine)
	}
	fmt.Fprintln(out)
	return nil
}

// switches measures each switchable rule: what changes when it is left out.
func switches(t *reference.Tables, out io.Writer) error {
	fmt.Fprint(out, "SWITCHABLE RULES (formulas of the fit whose likeliest texture changes when the rule is left out)\n")
	for _, s := range []struct {
		name string
		kind formula.Kind
		off  func(*bake.Rules)
	}{
		{"egg and plain water curdles", formula.Filling, func(r *bake.Rules) { r.EggAndWater = false }},
		{"an oven whose heat is not said is drawn, not taken as moderate", formula.Filling, func(r *bake.Rules) { r.UnsaidHeat = false }},
		{"oil counts 1.3 against leanness; pressed oil paste is meant to crumble", formula.Pastry, func(r *bake.Rules) { r.OilPaste = false }},
	} {
		rules := bake.Standard
		s.off(&rules)
		on, err := trial.Bench(t, s.kind, bake.Standard, trial.Fit)
		if err != nil {
			return err
		}
		off, err := trial.Bench(t, s.kind, rules, trial.Fit)
		if err != nil {
			return err
		}
		changed, better, worse := 0, 0, 0
		for i := range on {
			a := trial.Best(on[i].Kernel.Textures, on[i].Shares(200))
			b := trial.Best(off[i].Kernel.Textures, off[i].Shares(200))
			if a == b {
				continue
			}
			changed++
			switch on[i].Label {
			case a:
				better++
			case b:
				worse++
			}
		}
		fmt.Fprintf(out, "  %-72s changes %d; right with it %d, right without %d\n", s.name, changed, better, worse)
	}
	fmt.Fprint(out, "  two layers, heavy batter and oily filling speak in findings of their own and move no share\n\n")
	return nil
}

func parameters(t *reference.Tables, out io.Writer) {
	links := map[string]int{}
	for _, l := range t.Links {
		if l.Order > 0 {
			links[l.Kind] += 2
		}
	}
	fmt.Fprintf(out, "FREE PARAMETERS\n  fillings: %d link values, 10 rule constants chosen with these formulas in view; pastes: %d and 4. All others are carried over from physics and trade books, or judgement, and were not varied.\n",
		links["filling"], links["pastry"])
}
