package explain_test

import (
	"fmt"
	"os"

	"assize/formula/book"
	"assize/ratios/explain"
	"assize/ratios/judge"
	"assize/reference"
)

// The demo pudding came out cakey, as was to be looked for; the steps that did
// it, each varied by itself.
func ExampleBake_Explain() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, _, faults := book.For(os.DirFS("../../testdata/demo/millrace"), "rich-lemon-pudding.yaml", tables)
	if faults != nil {
		fmt.Println(faults)
		return
	}
	b, faults := explain.Receipt(judge.New(tables), f)
	if faults != nil {
		fmt.Println(faults)
		return
	}
	seen, trouble := b.Tasted("spongy")
	if trouble != nil {
		fmt.Println(trouble)
		return
	}
	e, err := b.Explain(seen[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e.Of.Texture.Shown, "was", e.Expected)
	for _, c := range e.Causes {
		if c.ID == "creaming" {
			fmt.Printf("%s, not %s: from %.0f in 10 to %.0f\n", c.Done, c.Instead, 10*c.From, 10*c.To)
		}
	}
	// Output:
	// sets cakey was looked for
	// creaming the butter, not melting the butter: from 4 in 10 to 10
}
