package receipt

import (
	"fmt"
	"slices"
	"strings"

	"assize/reference"
	"assize/reference/spell"
)

// measureAt returns how many tokens the longest name of a measure takes at the
// start of the phrase.
func (r *Reader) measureAt(ts phrase) int {
	if len(ts) == 0 || ts[0].kind != word {
		return 0
	}
	// A word of two parts ("tea-cupful" written as one sign) is looked up whole.
	for n := min(int(ts[0].opens.Measure), len(ts)); n > 0; n-- {
		if n == 1 {
			if r.Tables.MeasuresKeyed(ts[0].key) {
				return 1
			}
			break
		}
		if !plainWords(ts[:n]) {
			continue
		}
		var room [longestKey]byte
		if key, ok := ts[:n].appendKey(room[:0]); ok && r.Tables.MeasuresKeyed(string(key)) || !ok && r.Tables.MeasuresKeyed(ts[:n].joinedKey()) {
			if ts[0].opens.Fill > 0 && len(r.holding(ts[:n].joinedKey(), nil)) == 0 {
				continue // a small teacup is a measure in England, and elsewhere a teacup that is small
			}
			return n
		}
	}
	return 0
}

// longestKey is room for the key of most measures and fills.
const longestKey = 48

// plainWords reports a phrase that holds no marks and begins with a word.
func plainWords(ts phrase) bool {
	return len(ts) > 0 && ts[0].kind == word && !slices.ContainsFunc(ts, func(t token) bool { return t.kind == mark })
}

// measureName is the name by which a measure is called from here on: the first
// in its row, unless that would call other rows than the words did.
func (r *Reader) measureName(words string) string {
	rows := r.Tables.MeasuresCalled(words)
	if len(rows) == 0 {
		return ""
	}
	first := rows[0].Names[0]
	if slices.Equal(rows, r.Tables.MeasuresCalled(first)) {
		return first
	}
	for _, single := range singulars(reference.Key(words))[1:] {
		if slices.Equal(rows, r.Tables.MeasuresCalled(single)) {
			return single
		}
	}
	return reference.Key(words)
}

// holding are the rows of a measure that hold for the book's year and place
// and for the ingredient; any ingredient when it is nil.
func (r *Reader) holding(name string, ing *reference.Ingredient) []*reference.Measure {
	var out []*reference.Measure
	for _, m := range r.Tables.MeasuresCalled(name) {
		if m.Holds(r.Year, r.Place) && (ing == nil || suits(m.For, ing)) {
			out = append(out, m)
		}
	}
	return out
}

func suits(list []string, ing *reference.Ingredient) bool {
	return len(list) == 0 || slices.Contains(list, ing.ID) || ing.Base != "" && slices.Contains(list, ing.Base) ||
		slices.ContainsFunc(ing.Roles, func(role string) bool { return slices.Contains(list, role) })
}

// isWeight reports a measure that weighs rather than holds.
func (r *Reader) isWeight(name string) bool {
	rows := r.holding(name, nil)
	return len(rows) > 0 && rows[0].Unit == "g"
}

// unheld says what is wrong with a measure that no row knows for the time, the
// place and the thing.
func (r *Reader) unheld(f *found, a amount, th thing) {
	column, name, written := a.from, a.Measure, a.written
	if written == "" {
		written = name
	}
	if len(r.holding(name, nil)) > 0 {
		var of []string
		for _, m := range r.holding(name, nil) {
			for _, x := range m.For {
				if len(of) < 6 && !slices.Contains(of, x) {
					of = append(of, x)
				}
			}
		}
		f.trouble(column, "it is known of "+list(of)+"; give the weight instead", "what a %q of %s comes to is not known", written, th.name.String())
		return
	}
	var when []string
	for _, m := range r.Tables.MeasuresCalled(name) {
		if w := validity(m.Validity); !slices.Contains(when, w) {
			when = append(when, w)
		}
	}
	f.trouble(column, fmt.Sprintf("it held %s", strings.Join(when, "; ")), "the measure %q is not known for %d in %s", written, r.Year, r.Place)
}

// validity is where and when a row holds, in words.
func validity(v reference.Validity) string {
	where := "everywhere"
	if len(v.Places) > 0 {
		where = "in " + list(v.Places)
	}
	switch {
	case v.From != 0 && v.To != 0:
		return fmt.Sprintf("%s from %d to %d", where, v.From, v.To)
	case v.From != 0:
		return fmt.Sprintf("%s from %d", where, v.From)
	case v.To != 0:
		return fmt.Sprintf("%s to %d", where, v.To)
	}
	return where + " at any time"
}

// list joins words as a sentence does, each once.
func list(words []string) string {
	var once []string
	for _, w := range words {
		if w = strings.ReplaceAll(w, "_", " "); !slices.Contains(once, w) {
			once = append(once, w)
		}
	}
	if len(once) < 2 {
		return strings.Join(once, "")
	}
	return strings.Join(once[:len(once)-1], ", ") + " and " + once[len(once)-1]
}

func (r *Reader) askMeasure(word string) string {
	if r.quiet {
		return ""
	}
	return spell.Ask(word, r.Tables.MeasureNames())
}
