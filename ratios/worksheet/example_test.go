package worksheet_test

import (
	"fmt"
	"os"

	"assize/formula/book"
	"assize/ratios/worksheet"
	"assize/reference"
)

// Millrace House manuscript, leaf 12: the page says nothing of the case. The
// book does, on leaf 31, and a working cook bakes it in part first.
func ExampleAssembler_Assemble() {
	tables, err := reference.Load()
	if err != nil {
		fmt.Println(err)
		return
	}
	f, _, faults := book.For(os.DirFS("../../testdata/demo/millrace"), "rich-lemon-pudding.yaml", tables)
	if len(faults) > 0 {
		fmt.Println(faults.Err())
		return
	}
	sheet, faults := worksheet.New(tables).Assemble(f)
	if len(faults) > 0 {
		fmt.Println(faults.Err())
		return
	}
	for _, phase := range sheet.Phases {
		if phase.ID != "case" {
			continue
		}
		for _, s := range phase.Steps {
			fmt.Printf("%s: %s\n", s.Origin, s.Text)
		}
	}
	for _, e := range sheet.Plan.Events {
		if e.ID == worksheet.CaseIn || e.ID == worksheet.DishIn {
			fmt.Printf("%s %d minutes before serving\n", e.ID, e.At)
		}
	}
	// Output:
	// unsaid: Roll it an eighth of an inch thick, line the dish without stretching it, and trim the edge when it has settled
	// unsaid: Light the oven in good time and let it come right to its heat
	// unsaid: Let the lined dish stand in the cold while the oven heats
	// unsaid: Do not prick this case
	// unsaid: Bake the case by itself until it is set and dry but hardly coloured, under paper and dried peas, in a hot oven
	// elsewhere: Before any wet filling goes in, brush the case within with beaten egg and dry it in the mouth of the oven
	// case-in 115 minutes before serving
	// dish-in 90 minutes before serving
}
