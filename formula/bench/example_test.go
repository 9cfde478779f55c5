package bench_test

import (
	"fmt"

	"assize/formula/bench"
	"assize/formula/receipt"
	"assize/reference"
)

// Eggs that were weighed, and butter that was melted and not creamed: what was
// done stands in the place of what is written.
func ExampleRecord_Made() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, faults := bench.Read("first.yaml", []byte(`
parts:
  - part: filling
    used:
      - {line: 6 eggs, grams: 318}
    done: melt the butter
tasted:
  - {by: Anne, when: cool, cut: small holes, base: wet}
formula:
  title: A pudding
  year: 1845
  place: england
  parts:
    - kind: filling
      lines: [6 eggs, 8 oz of butter, 8 oz of sugar]
      method: Beat the butter and sugar to a cream.
    - {name: paste, kind: pastry, lines: [8 oz of flour, 4 oz of butter]}
`), tables)
	if faults != nil {
		fmt.Println(faults)
		return
	}
	m, faults := r.Made(tables, receipt.NewMethodReader(tables))
	if faults != nil {
		fmt.Println(faults)
		return
	}
	fmt.Println("eggs", m.Weighed.Parts[0].Items[0].Grams.Likely, "g")
	fmt.Println("creamed", m.Written[0].Has("creamed"), "then", m.Methods[0].Has("creamed"))
	for _, s := range r.Tastings[0].Results() {
		fmt.Println(r.Formula.Parts[s.Part].Name, s.Texture)
	}
	// Output:
	// eggs 318 g
	// creamed true then false
	// filling cakey
	// paste soggy-base
}

// A word that may mean several things asks what was seen.
func ExampleTaste() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, _ := bench.Read("custard.yaml", []byte("formula: {title: C, year: 1900, place: england, parts: [{kind: filling, lines: [4 eggs, 500 ml of milk]}]}"), tables)
	for _, words := range []string{"spongy", "like a soufflé", "split", "eggy lumps", "bouncy", "lumps"} {
		signs, trouble := bench.Taste(words, "", r.Formula, tables)
		if trouble != nil {
			fmt.Printf("%s: %v\n", words, trouble)
			continue
		}
		fmt.Printf("%s: %s\n", words, signs[0].Texture)
	}
	// Output:
	// spongy: cakey
	// like a soufflé: cakey
	// split: curdy
	// eggy lumps: curdy
	// bouncy: rubbery
	// lumps: "lumps" may mean more than one thing
}
