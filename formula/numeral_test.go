package formula_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"assize/formula"
)

func ExampleNumeral() {
	for _, n := range []string{"2", "0.5", "1.25", "2.6666666667", "0.125", "0.0625", "1.3"} {
		fmt.Println(formula.Numeral(decimal.RequireFromString(n), 8))
	}
	// Output:
	// 2
	// 1/2
	// 1 1/4
	// 2 2/3
	// 1/8
	// 0.0625
	// 1.3
}
