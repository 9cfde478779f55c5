package receipt

import (
	"slices"

	"assize/formula"
	"assize/reference"
)

// resting gives a paste the sentences that stand behind its own and before
// anything of the next part is named, where they speak of resting or rolling it:
// "make a paste of flour and butter; let it rest an hour".
func (m *making) resting(parts []*portionOf) {
	for i, p := range parts {
		if i == 0 || p.part.Kind == formula.Pastry || len(p.lines) == 0 {
			continue
		}
		paste := parts[i-1]
		if paste.part.Kind != formula.Pastry || len(paste.lines) == 0 || paste.begins() > p.begins() {
			continue
		}
		n := 0
		for n < len(p.steps) && p.steps[n].to <= p.begins() && p.steps[n].from > paste.begins() && worksPaste(p.steps[n].text) {
			n++
		}
		if n == len(p.steps) {
			continue
		}
		paste.steps = append(slices.Clip(paste.steps), p.steps[:n]...)
		p.steps = p.steps[n:]
	}
}

// worksPaste reports a sentence that speaks of resting, working or rolling and of
// no making of something else.
func worksPaste(text string) bool {
	words := reference.Words(text)
	return overlaps(words, []string{"rest", "stand", "lie", "roll", "knead", "chill", "cool", "cold"}) &&
		overlaps(words, []string{"it", "this", "paste", "crust", "dough", "pastry"}) &&
		!overlaps(words, []string{"filling", "inside", "meanwhile", "meantime"})
}
