package daybook_test

import (
	"fmt"

	"assize/formula/daybook"
)

// A kitchen in which things turn out less surely than is said: nine in ten is
// drawn in, and the same power undone gives nine in ten back.
func ExampleAdjustment() {
	a := daybook.Adjustment{Power: .5, Bakes: 12}
	in := a.Adjust([]float64{.9, .1})
	fmt.Printf("said .90, in this kitchen %.2f\n", in[0])
	fmt.Printf("undone %.2f\n", a.Undo(in)[0])
	// Output:
	// said .90, in this kitchen 0.75
	// undone 0.90
}
