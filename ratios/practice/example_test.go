package practice_test

import (
	"fmt"

	"assize/formula/file"
	"assize/formula/receipt"
	"assize/ratios/practice"
	"assize/reference"
)

// A baked custard in a dish, of which nothing is said but the oven: steps.yaml,
// rows strain, water-bath and doneness.
func ExampleDish_Expected() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, faults := file.Read("custard.yaml", []byte(`
title: Custard
year: 1838
place: england
parts:
  - kind: filling
    lines: [1 pint of milk, 4 eggs, 2 oz of sugar]
    method: [Beat the eggs, pour the milk to them and strain it., Bake it in a slow oven.]
`), tables)
	if len(faults) > 0 {
		fmt.Println(faults.Err())
		return
	}
	for _, x := range practice.Read(f, tables, receipt.NewMethodReader(tables)).Expected() {
		if x.Step.Grade != "" {
			fmt.Printf("%s: taken %t\n", x.Step.ID, x.Taken)
		}
	}
	// Output:
	// strain: taken true
	// water-bath: taken false
	// doneness: taken false
}
