package variant_test

import (
	"fmt"
	"log"

	"assize/formula/file"
	"assize/ratios/judge"
	"assize/ratios/variant"
	"assize/reference"
)

// A custard of two eggs to the pint and a half of milk stays loose: McGee, On
// Food and Cooking (2004), chapter 2, one egg to about 250 ml is the least that
// holds.
func ExampleFind() {
	tables, err := reference.Load()
	if err != nil {
		log.Fatal(err)
	}
	f, faults := file.Read("custard.yaml", []byte(`title: Thin custard
year: 2000
place: england
kitchen: {year: 2000, place: england}
parts:
  - kind: filling
    lines: [2 eggs, 800 g milk, 60 g sugar]
    method: [beaten, water bath]
bake: 40 min at 160 C
`), tables)
	if len(faults) > 0 {
		log.Fatal(faults)
	}
	r, err := variant.Find(judge.New(tables), f, variant.Wish{Against: []string{"thin"}})
	if err != nil {
		log.Fatal(err)
	}
	for i := range r.Changes {
		fmt.Println(r.Changes[i].String())
	}
	// Output:
	// egg: 3 instead of 2
}
