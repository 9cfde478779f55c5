package receipt

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// receiptSeeds are whole receipts of every shape the reader knows.
var receiptSeeds = []string{
	"Rich lemon pudding\n\nFor the paste:\n8 oz flour\n4 oz butter\n- a little salt\ncold water to mix\n\nFor the filling\n6 [?] eggs, well beaten\n[6|8] oz of loaf sugar\n3 gils of milk\n[struck: 4 oz suet]\n[margin: a glass of brandy]\n\nMethod\n1. Beat the eggs with the sugar.\n2. Bake in a quick oven for 30 minutes.\n",
	"A PLAIN PUDDING.--Beat six eggs and stir into them half a pound of melted butter, the same of sugar, and the juice of a lemon; line a dish with puff paste, and bake it in a quick oven half an hour.",
	"INGREDIENTS.--1/4 lb. of butter, 1 lb. of sugar, 6 eggs, the rind of 2 lemons and the juice of 3, nutmeg to taste.\nMode.--Mix all.\nTime.--1/2 hour.\nAverage cost, 1s. 4d.\n",
	"Take six eggs, their weight in sugar, and half their weight in flour. To every pound of fruit put half a pound of sugar. As much flour as will make it a stiff paste. Season with pepper and salt.",
	"Salt\n[illegible] of butter\n6 or 8, blotted, eggs\n", "½ cup milk\n1 (400 g) tin condensed milk\n", "0illegible0 0 or 00 blottedAA0", "0000\n[illegible]\" 0000\n0000", "6 or 8, blotted\" 0000", "0\n\" 0000\n00000\n\n00000000", "Salt\n[illegible]0 0,1 or 0 blotted 00", "Take white pow-\ndered;6 eggs,but-\nter", "[", "[struck:", "a\x00b", "ſix egges & ye juyce of a lemon", "1.", "....", "--", "for the paste:",
}

// FuzzReceipt holds the reader to this, whatever it is given: it does not fall
// over, places lie inside the text, and no word is lost: each stands in the
// title, a line, a step, the oven, the dish or the time, or among what was told,
// set aside or not read.
func FuzzReceipt(f *testing.F) {
	for _, s := range receiptSeeds {
		f.Add(s)
	}
	r := reader(f)
	f.Fuzz(func(t *testing.T, text string) { keepsWords(t, r, text) })
}

func keepsWords(t require.TestingT, r *Reader, text string) {
	f, trace := r.Receipt(text, About{})
	lines := strings.Split(text, "\n")
	inside := func(line, column int) {
		require.True(t, line >= 1 && line <= len(lines), "%q: line %d is outside the text", text, line)
		require.True(t, column >= 1 && column <= utf8.RuneCountInString(lines[line-1])+1, "%q: column %d of line %d is outside the text", text, column, line)
	}
	for _, i := range trace.Read {
		inside(i.Line, i.Column)
		require.NotEmpty(t, i.Took, "%q: %+v", text, i)
	}
	for _, u := range append(trace.Unread, trace.Aside...) {
		inside(u.Line, u.Column)
		require.NotEmpty(t, u.Why, "%q: %+v", text, u)
	}
	if f == nil {
		require.NotEmpty(t, trace.Unread, "%q: refused, and not said why", text)
		return
	}
	kept := map[string]bool{}
	keep := func(list ...string) {
		for _, s := range list {
			for _, tok := range r.tokens(s) {
				kept[tok.spelled()] = true
			}
		}
	}
	keep(f.Title, f.Dish, f.Oven, f.Bake)
	keep(f.Also...)
	for _, p := range f.Parts {
		inside(p.Pos.Line, p.Pos.Column)
		keep(p.Name, p.Take)
		keep(p.Steps...)
		for _, l := range p.Lines {
			inside(l.Pos.Line, l.Pos.Column)
			keep(l.Text)
			for _, a := range l.Either {
				keep(a.Text)
			}
		}
	}
	for _, i := range trace.Read {
		keep(i.Words)
	}
	for _, u := range append(trace.Unread, trace.Aside...) {
		keep(u.Words)
	}
	p := newPage(r, text)
	for _, tok := range p.tokens(0, len(p.clear)) {
		if w := tok.spelled(); tok.kind != mark && w != "" && !tok.is(glue) {
			require.True(t, kept[w], "%q: the word %q is lost", text, tok.text)
		}
	}
}

// TestReceiptSalad holds receipts put together at random from the words of the
// kitchen to the promises of FuzzReceipt.
func TestReceiptSalad(t *testing.T) {
	r := reader(t)
	menu := strings.Split(`half a pound|six|6|the yolks|the whites|eggs|egg|of|of each|each|the same|as much|their weight|in|sugar|butter|flour|melted butter|lemon|the juice|the rind|two lemons|and|or|,|;|.|:|--|(|)
|

|For the paste|For the icing:|Ingredients|Ingredients.--|Method|Mode.--|Time.--|Average cost, 1s.|- |1. |beat|add|take|Take|Beat|stir in|bake it|in a quick oven|half an hour|line a dish with puff paste|paste No. 3|a dish|soup plate|to taste|a little|some|salt|nutmeg|as will make a paste|enough|every|to every pound|[?]|[6|8]|[illegible]|[struck: 4 oz suet]|[margin: a glass of brandy]|[errata: 4 oz]|squeeze it|leaving out half the whites|well beaten|sweeten it|gils|of milk|A PLAIN PUDDING.|water|cup|1 (400 g) tin|½|serve with cream|if liked|ye|ſugar|do.|against|them`, "|")
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.SampledFrom(menu), 1, 40).Draw(t, "words")
		keepsWords(t, r, strings.Join(words, " "))
	})
}
