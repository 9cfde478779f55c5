package ratios_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"assize/formula/file"
	"assize/formula/weigh"
	"assize/ratios"
	"assize/reference"
)

// receipt is one part of a receipt, to be written as a formula file.
type receipt struct {
	year  int
	place string
	kind  string
	lines []string
}

// tables loads the reference tables, which are part of the program.
func tables() *reference.Tables {
	t, err := reference.Load()
	if err != nil {
		panic(err)
	}
	return t
}

// weighed reads the receipt from a formula file and puts it on the scales, in
// the kitchen of its year and place.
func (r receipt) weighed() *weigh.Weighed {
	text := fmt.Sprintf("title: Worked example\nyear: %d\nplace: %s\nkitchen: {year: %d, place: %s}\n"+
		"parts:\n  - kind: %s\n    lines:\n", r.year, r.place, r.year, r.place, r.kind)
	for _, l := range r.lines {
		text += "      - " + l + "\n"
	}
	f, faults := file.Read("example.yaml", []byte(text), tables())
	if len(faults) > 0 {
		panic(faults.Error())
	}
	w, faults := weigh.Weigh(f, tables())
	if len(faults) > 0 {
		panic(faults.Error())
	}
	return w
}

// profile is the profile of the receipt, to the usual basis.
func (r receipt) profile() ratios.Profile {
	return ratios.ProfileOf(r.weighed(), 0, tables(), "")
}

// percents prints every line of the receipt to the hundred of the basis.
func (r receipt) percents(places int32) {
	p := r.profile()
	for i, line := range r.lines {
		fmt.Println(p.Percents[i].StringFixed(places), line)
	}
}

// ratio is the likely value of a named ratio of the receipt.
func (r receipt) ratio(id string) decimal.Decimal {
	for _, ratio := range r.profile().Ratios {
		if ratio.Row.ID == id {
			return ratio.Value.Likely
		}
	}
	panic("no ratio " + id)
}
