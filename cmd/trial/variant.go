package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"assize/ratios/readings"
	"assize/ratios/trial"
	"assize/reference"
)

// classes prints how often published formulas are found nearest to their class.
func classes(t *reference.Tables, out io.Writer) {
	fmt.Fprint(out, "NEAREST CLASS (published formulas that share two ratios or more with their class)\n")
	for _, c := range trial.ClassesFound(t) {
		if c.Of > 0 {
			fmt.Fprintf(out, "  %-8s %-7s nearest %d of %d by proportions alone, %d with how it is made; among three %d, %d\n",
				c.Kind, c.Era, c.First, c.Of, c.FirstMade, c.Three, c.ThreeMade)
		}
	}
	fmt.Fprintln(out)
}

// fewIngredients is how many may be changed in most of the variants found.
const fewIngredients = 3

// variants prints how often a variant answers a predicted fault, and how the
// variants of failed pairs compare with their good twins.
func variants(t *reference.Tables, out io.Writer) error {
	list, err := trial.Variants(t, readings.Usual)
	if err != nil {
		return err
	}
	found, passes, few, none, whole, said := 0, 0, 0, 0, 0, 0
	var longest time.Duration
	fmt.Fprint(out, "VARIANTS against every predicted fault of a formula of the fit\n")
	for _, a := range list {
		longest = max(longest, a.Took)
		if a.Whole {
			whole++
		}
		switch {
		case a.Found:
			found++
			if a.Passes {
				passes++
			}
			if a.Ingredients <= fewIngredients {
				few++
			}
			if a.Ingredients == 0 {
				none++
			}
		case a.Stands > 0:
			said++
		}
		fmt.Fprintf(out, "  %-30s %-8s %.2f  %s\n", a.ID, a.Texture, a.Share, strings.Join(a.Changes, " + "))
	}
	fmt.Fprintf(out, "  found %d of %d, %d pass their own check; where none is found %d of %d say what stands in the way\n", found, len(list), passes, said, len(list)-found)
	fmt.Fprintf(out, "  at most %d ingredients changed in %d of %d, none in %d; every egg whole in %d of %d; longest search under %.1f s\n\n",
		fewIngredients, few, found, none, whole, len(list), float64(longest/(100*time.Millisecond)+1)/10)
	pairs, err := trial.Pairs(t, readings.Usual)
	if err != nil {
		return err
	}
	fmt.Fprint(out, "GOOD TWINS: what the twin of a failed formula has otherwise, and the first three variants\n")
	hits, expected := 0, 0
	for _, p := range pairs {
		told := strings.Join(p.Told, "; ")
		if told == "" {
			told = "not expected, so nothing is answered"
		} else {
			expected++
		}
		if p.Hit {
			hits++
		}
		fmt.Fprintf(out, "  %-28s %-10s %.2f  twin: %s | %s | %v\n", p.ID, p.Outcome, p.Share, strings.Join(p.Differs, ", "), told, p.Hit)
	}
	fmt.Fprintf(out, "  the twin's change is among the first three in %d of %d that were expected to fail, of %d pairs\n\n", hits, expected, len(pairs))
	return nil
}
