package trial

import (
	"assize/formula"
	"assize/reference"
)

// Trust counts, by texture, how often the judge said "likely" in
// cross-validation and how often that was so: what a cook may be told of how
// far to trust a share.
func Trust(t *reference.Tables, kind formula.Kind, items []*Item) (map[string][2]int, error) {
	judges, err := Evaluate(t, kind, items, FoldOf)
	if err != nil {
		return nil, err
	}
	out := map[string][2]int{}
	for _, id := range judges[0].Textures {
		f := judges[0].Flag(id, .5)
		out[id] = [2]int{f.Called, f.Right}
	}
	return out, nil
}
