package trial

import (
	"fmt"
	"slices"

	"assize/formula"
	"assize/formula/receipt"
	"assize/formula/weigh"
	"assize/ratios/bake"
	"assize/ratios/readings"
	"assize/reference"
)

// Item is one published formula made ready to judge.
type Item struct {
	Published *reference.Published
	Kind      formula.Kind
	Label     string // the judged texture its outcome counts as
	Complaint bool   // its outcome is a fault: of texture, or of taste alone
	Input     bake.Input
	Kernel    *bake.Kernel
	Seed      uint64
}

// Bench makes the published formulas of a kind ready: those that are wanted
// and whose outcome counts as a judged texture.
func Bench(t *reference.Tables, kind formula.Kind, rules bake.Rules, want func(*reference.Published) bool) ([]*Item, error) {
	methods := receipt.NewMethodReader(t)
	labels, complaints := Labels(t, kind), Complaints(t, kind)
	var out []*Item
	for i := range t.Published {
		p := &t.Published[i]
		if p.Part != string(kind) || !want(p) || labels[p.Outcome] == "" {
			continue
		}
		it, err := ready(p, t, methods, rules)
		if err != nil {
			return nil, err
		}
		it.Label, it.Complaint = labels[p.Outcome], complaints[p.Outcome]
		out = append(out, it)
	}
	return out, nil
}

func ready(p *reference.Published, t *reference.Tables, methods *receipt.MethodReader, rules bake.Rules) (*Item, error) {
	f, faults := Formula(p, t)
	if len(faults) > 0 {
		return nil, fmt.Errorf("published formula %s: %w", p.ID, faults)
	}
	w, faults := weigh.Weigh(f, t)
	if len(faults) > 0 {
		return nil, fmt.Errorf("published formula %s: %w", p.ID, faults)
	}
	in := bake.Input{Weighed: w, Tables: t, Rules: rules, Method: methods.Read(f, &f.Parts[0])}
	k, err := bake.Compile(in)
	if err != nil {
		return nil, fmt.Errorf("published formula %s: %w", p.ID, err)
	}
	return &Item{Published: p, Kind: f.Parts[0].Kind, Input: in, Kernel: k, Seed: readings.SeedOf(f.Title)}, nil
}

// Fit chooses the formulas the judge is fitted and scored on.
func Fit(p *reference.Published) bool { return p.Fit }

// Labels map outcome words to the judged textures they count as; flaky and
// tender are told apart, as the links do.
func Labels(t *reference.Tables, kind formula.Kind) map[string]string {
	out := map[string]string{}
	for _, x := range t.Textures {
		if x.Kind != string(kind) {
			continue
		}
		label := x.ID
		if !x.Judged {
			label = x.Counts
		}
		for _, o := range x.Outcomes {
			if label != "" {
				out[o] = label
			}
		}
	}
	if kind == formula.Pastry {
		for o, l := range out {
			if l == "sound" {
				out[o] = "tender"
			}
		}
		out["flaky"] = "flaky"
	}
	return out
}

// Complaints are the outcome words that somebody complained of: faults of
// texture, and of taste alone.
func Complaints(t *reference.Tables, kind formula.Kind) map[string]bool {
	out := map[string]bool{}
	for _, x := range t.Textures {
		if x.Kind == string(kind) && x.Fault {
			for _, o := range x.Outcomes {
				out[o] = true
			}
		}
	}
	return out
}

// Shares are the mean shares of an item by texture id, over n readings.
func (it *Item) Shares(n int) map[string]float64 {
	s, _ := readings.Shares(it.Kernel, readings.Options{N: n, Seed: it.Seed})
	out := map[string]float64{}
	for i, id := range it.Kernel.Textures {
		out[id] = s[i]
	}
	return out
}

// Best is the texture with the largest share, ties to the first in order.
func Best(textures []string, shares map[string]float64) string {
	best := ""
	for _, id := range textures {
		if best == "" || shares[id] > shares[best] {
			best = id
		}
	}
	return best
}

// groups lists the groups the items fall into, sorted.
func groups(items []*Item, group func(*reference.Published) string) []string {
	var out []string
	for _, it := range items {
		if g := group(it.Published); !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	slices.Sort(out)
	return out
}
