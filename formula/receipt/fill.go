package receipt

import (
	"slices"

	"assize/reference"
)

// fill is a word that says how full a measure was, or how big a thing.
type fill struct {
	id    string
	words string
}

// fillCalled finds the fill of exactly these words.
func (r *Reader) fillCalled(words string) (string, bool) {
	return r.Tables.FillKeyed(reference.Key(words))
}

// fillAt finds the longest fill at the start of the phrase. When its wording
// takes in the measure ("heaped cup") only the words before the measure are
// counted as used.
func (r *Reader) fillAt(ts phrase) (fill, int) {
	id, used := "", 0
	if len(ts) == 0 || ts[0].kind != word {
		return fill{}, 0
	}
	for n := min(int(ts[0].opens.Fill), len(ts)); n > 0; n-- {
		if !plainWords(ts[:n]) {
			continue
		}
		var room [longestKey]byte
		key, ok := ts[:n].appendKey(room[:0])
		if !ok {
			key = []byte(ts[:n].joinedKey())
		}
		got, ok := r.Tables.FillKeyed(string(key))
		switch {
		case !ok:
			continue
		case id == "":
			id, used = got, n
		case r.measureAt(ts[n:]) >= used-n:
			return fill{id, ts[:n].String()}, n
		}
	}
	if used == 0 {
		return fill{}, 0
	}
	// A wording that swallows the measure has to leave it standing.
	for n := 1; n < used; n++ {
		if m := r.measureAt(ts[n:used]); m > 0 && n+m == used {
			return fill{id, ts[:n].String()}, n
		}
	}
	return fill{id, ts[:used].String()}, used
}

// fullness are the fills that say how full a spoon or cup was. They are
// nothing to a weight, nor to a number of things.
var fullness = words("level rounded rounded-cup heaped heaped-cup packed loose full half-full")

// sizeOf are the fills that are sizes of a thing, as the sizes table calls
// them. A size that the table does not know of a thing stays a fill.
var sizeOf = map[string]string{"small": "small", "medium": "medium", "large": "large", "very-large": "very large"}

// sized reports a fill that says how big a thing is.
func sized(id string) bool { return sizeOf[id] != "" || id == "very-small" }

// setFill records how full or how big, on a measure or a number of things.
// Of several the last counts, being nearest the measure; the others are noted.
func (r *Reader) setFill(f *found, a *amount) {
	var kept []fill
	for _, x := range a.fills {
		if fullness.has(x.id) && (a.Measure == "" || r.isWeight(a.Measure)) {
			continue
		}
		kept = append(kept, x)
	}
	if len(kept) == 0 {
		return
	}
	last := kept[len(kept)-1]
	a.Fill = last.id
	for _, x := range kept[:len(kept)-1] {
		if x.id != last.id {
			f.note("%q is not reckoned beside %q", x.words, last.words)
		}
	}
}

// setSize turns a size word into the size of the thing counted, when the sizes
// table knows the thing in that size.
func (r *Reader) setSize(a *amount, each string) {
	size, ok := sizeOf[a.Fill]
	if a.jumbo {
		size, ok = "jumbo", true
	}
	if !ok {
		return
	}
	if slices.ContainsFunc(r.Tables.Sizes, func(s reference.Size) bool { return s.Each == each && s.Size == size }) {
		a.Size, a.Fill = size, ""
	}
}
