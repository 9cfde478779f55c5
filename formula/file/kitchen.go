package file

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
	"gopkg.in/yaml.v3"

	"assize/formula"
	"assize/reference"
)

var (
	kitchenKeys = []string{"year", "place", "eggs", "flour", "butter", "oven", "dishes"}
	eggSizes    = []string{"small", "medium", "large", "very large"}
	butters     = []string{"salted", "unsalted"}
)

// What an egg out of its shell may weigh, from a bantam's to a goose's, and
// the protein of flours milled from wheat, with room on both sides.
var (
	leastEgg, mostEgg         = decimal.NewFromInt(15), decimal.NewFromInt(250)
	leastProtein, mostProtein = decimal.NewFromInt(5), decimal.NewFromInt(20)
)

func (p *reading) kitchen(n *yaml.Node) formula.Kitchen {
	var k formula.Kitchen
	has := p.given(n, kitchenKeys)
	for key, v := range has {
		switch key {
		case "year":
			k.Year = p.year(v)
		case "place":
			k.Place = p.oneOf(v, "place", reference.Places)
		case "eggs":
			p.eggs(v, &k)
		case "flour":
			k.FlourProtein = p.figure(v, figure{
				key: "protein", wanted: "the protein of the flour is wanted here", hint: "{protein: 9.5}, as the bag has it in 100 g",
				what: "the protein of a flour", unit: "g in 100 g", least: leastProtein, most: mostProtein,
			})
		case "butter":
			k.Butter = p.oneOf(v, "butter", butters)
		case "oven":
			k.Oven, _ = p.words(v)
		case "dishes":
			k.Dishes = p.list(v)
		}
	}
	k.Given = len(has) > 0
	return k
}

func (p *reading) eggs(n *yaml.Node, k *formula.Kitchen) {
	if n.Kind == yaml.ScalarNode && n.Tag != "!!int" && n.Tag != "!!float" {
		k.EggSize = p.oneOf(n, "size of egg", eggSizes)
		return
	}
	k.EggGrams = p.figure(n, figure{
		key: "grams", wanted: "a size of egg is wanted here, or a weight",
		hint: strings.Join(eggSizes, ", ") + ", or {grams: 54} for one out of its shell",
		what: "an egg out of its shell", unit: "g", least: leastEgg, most: mostEgg,
	})
}

// figure describes a mapping with one figure in it: {grams: 54}.
type figure struct {
	key          string
	wanted, hint string // when it is anything else
	what, unit   string // when the figure is out of bounds
	least, most  decimal.Decimal
}

func (p *reading) figure(n *yaml.Node, want figure) decimal.Decimal {
	if n.Kind == yaml.ScalarNode && (n.Tag == "!!int" || n.Tag == "!!float") {
		want.hint = fmt.Sprintf("write {%s: %s}", want.key, n.Value)
	}
	if n.Kind != yaml.MappingNode || len(n.Content) == 0 {
		p.Add(n, want.hint, "%s", want.wanted)
		return decimal.Zero
	}
	v, ok := p.given(n, []string{want.key})[want.key]
	if !ok {
		return decimal.Zero
	}
	d, ok := p.Decimal(v)
	if ok && (d.LessThan(want.least) || d.GreaterThan(want.most)) {
		p.Add(v, fmt.Sprintf("between %s and %s %s", want.least, want.most, want.unit), "%s cannot be %s %s", want.what, d, want.unit)
	}
	return d
}

// Over lays one kitchen over another: what the upper one says holds, the rest
// comes from the lower.
func Over(lower, upper formula.Kitchen) formula.Kitchen {
	out := lower
	out.Given = lower.Given || upper.Given
	if upper.Year != 0 {
		out.Year = upper.Year
	}
	if upper.Place != "" {
		out.Place = upper.Place
	}
	// A size and a weight are two ways of saying one thing.
	if upper.EggSize != "" || !upper.EggGrams.IsZero() {
		out.EggSize, out.EggGrams = upper.EggSize, upper.EggGrams
	}
	if !upper.FlourProtein.IsZero() {
		out.FlourProtein = upper.FlourProtein
	}
	if upper.Butter != "" {
		out.Butter = upper.Butter
	}
	if upper.Oven != "" {
		out.Oven = upper.Oven
	}
	if len(upper.Dishes) > 0 {
		out.Dishes = upper.Dishes
	}
	return out
}

// kitchenNode is the kitchen as a mapping, nil when nothing of it is known.
func kitchenNode(k formula.Kitchen) *yaml.Node {
	m := mapping()
	if k.Year != 0 {
		m.put("year", number(fmt.Sprint(k.Year)))
	}
	m.text("place", k.Place)
	m.text("eggs", k.EggSize)
	if !k.EggGrams.IsZero() {
		m.put("eggs", flow("grams", number(written(k.EggGrams))))
	}
	if !k.FlourProtein.IsZero() {
		m.put("flour", flow("protein", number(written(k.FlourProtein))))
	}
	m.text("butter", k.Butter)
	m.text("oven", k.Oven)
	m.texts("dishes", k.Dishes)
	if len(m.Content) == 0 {
		return nil
	}
	return m.Node
}

// written is a figure with the places it was given with.
func written(d decimal.Decimal) string {
	return strings.TrimSpace(d.StringFixed(max(0, -d.Exponent())))
}
