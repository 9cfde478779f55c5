package receipt

import "strings"

// vocabulary numbers the words that the rules of this package speak of, so that
// a word of a text is looked up once and then held against any set by its
// number. It is complete when the package is ready, and never added to after.
var vocabulary = map[string]uint16{}

// entered is the number of a word of the rules, a new one the first time.
func entered(w string) uint16 {
	id, ok := vocabulary[w]
	if !ok {
		if ready {
			panic("receipt: a set of words is made after the start: " + w)
		}
		id = uint16(len(vocabulary) + 1)
		vocabulary[w] = id
	}
	return id
}

var ready bool

func init() { ready = true }

// wordSet is a set of words as they are compared.
type wordSet struct {
	bits []uint64 // by the number of the word
}

// words is the set of the words in a list, parted by spaces.
func words(list string) wordSet {
	var s wordSet
	for _, w := range strings.Fields(list) {
		s.add(w)
	}
	return s
}

func (s *wordSet) add(w string) {
	id := entered(w)
	for int(id>>6) >= len(s.bits) {
		s.bits = append(s.bits, 0)
	}
	s.bits[id>>6] |= 1 << (id & 63)
}

func (s wordSet) numbered(id uint16) bool {
	return int(id>>6) < len(s.bits) && s.bits[id>>6]&(1<<(id&63)) != 0
}

// has reports a word of the set.
func (s wordSet) has(w string) bool {
	id, ok := vocabulary[w]
	return ok && s.numbered(id)
}

// is reports that the token at i is a word of the set; nothing is beyond the ends
// of the phrase.
func (p phrase) is(i int, s wordSet) bool {
	return i >= 0 && i < len(p) && s.numbered(p[i].id)
}

// has reports whether any word of the phrase is one of those given.
func (p phrase) has(s wordSet) bool {
	for i := range p {
		if p[i].id != 0 && s.numbered(p[i].id) {
			return true
		}
	}
	return false
}

// is reports a word of the set.
func (t token) is(s wordSet) bool { return s.numbered(t.id) }

// union is the set of what is in any of some sets.
func union(sets ...wordSet) wordSet {
	var out wordSet
	for _, s := range sets {
		for len(out.bits) < len(s.bits) {
			out.bits = append(out.bits, 0)
		}
		for i, b := range s.bits {
			out.bits[i] |= b
		}
	}
	return out
}

// wordRun is some words one after another, by their numbers.
type wordRun []uint16

// running is the run of the words of a list.
func running(list string) wordRun {
	var out wordRun
	for _, w := range strings.Fields(list) {
		out = append(out, entered(w))
	}
	return out
}

// runs returns how many tokens of the phrase the words cover from its start, 0
// when it begins otherwise.
func (p phrase) runs(words wordRun) int {
	if len(words) > len(p) {
		return 0
	}
	for i, id := range words {
		if p[i].id != id {
			return 0
		}
	}
	return len(words)
}

// list is every word of the set.
func (s wordSet) list() []string {
	var out []string
	for w, id := range vocabulary {
		if s.numbered(id) {
			out = append(out, w)
		}
	}
	return out
}

// wordMap says something of each of some words.
type wordMap[V any] struct {
	values []V // by the number of the word
	set    wordSet
}

func mapped[V any](of map[string]V) wordMap[V] {
	var m wordMap[V]
	for w, v := range of {
		m.set.add(w)
		for id := entered(w); int(id) >= len(m.values); {
			m.values = append(m.values, *new(V))
		}
		m.values[entered(w)] = v
	}
	return m
}

// get is what is said of a word.
func (m *wordMap[V]) get(w string) (V, bool) {
	if id, ok := vocabulary[w]; ok && m.set.numbered(id) {
		return m.values[id], true
	}
	return *new(V), false
}

// at is what is said of the token at i of a phrase.
func (m *wordMap[V]) at(p phrase, i int) (V, bool) {
	if p.is(i, m.set) {
		return m.values[p[i].id], true
	}
	return *new(V), false
}

// of is what is said of the token at i, the zero value when it is nothing.
func (m *wordMap[V]) of(p phrase, i int) V {
	v, _ := m.at(p, i)
	return v
}

// where is the set of the words of which a thing is said that holds.
func (m *wordMap[V]) where(holds func(V) bool) wordSet {
	var out wordSet
	for _, w := range m.set.list() {
		if holds(m.values[vocabulary[w]]) {
			out.add(w)
		}
	}
	return out
}
