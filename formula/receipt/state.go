package receipt

import (
	"strings"

	"assize/formula"
)

// stated is a way of saying that no amount is given.
type stated struct {
	words string
	state formula.State
}

// statedRun is the same, to hold words against.
type statedRun struct {
	words wordRun
	state formula.State
}

// states are the ways of giving no amount, by how they begin. The longest that
// fits counts.
var states = []stated{
	{"to taste", formula.ToTaste}, {"to your taste", formula.ToTaste}, {"to the taste", formula.ToTaste}, {"to suit", formula.ToTaste},
	{"according to taste", formula.ToTaste}, {"according to your taste", formula.ToTaste}, {"at pleasure", formula.ToTaste},
	{"at discretion", formula.ToTaste}, {"as you like", formula.ToTaste}, {"as you please", formula.ToTaste}, {"as liked", formula.ToTaste}, {"to palate", formula.ToTaste},
	{"to your palate", formula.ToTaste}, {"to liking", formula.ToTaste}, {"to your liking", formula.ToTaste}, {"to season", formula.ToTaste},
	{"to sweeten", formula.ToTaste}, {"to sweeten to taste", formula.ToTaste}, {"to flavour", formula.ToTaste}, {"to flavor", formula.ToTaste},

	{"enough", formula.Enough}, {"sufficient", formula.Enough}, {"a sufficiency", formula.Enough}, {"plenty", formula.Enough},
	{"as much as", formula.Enough}, {"as little as", formula.Enough}, {"so much as", formula.Enough}, {"as required", formula.Enough},
	{"as needed", formula.Enough}, {"as necessary", formula.Enough}, {"q s", formula.Enough}, {"quantum sufficit", formula.Enough}, {"quant suff", formula.Enough},
	{"a sufficient quantity", formula.Enough}, {"sufficient quantity", formula.Enough},
	{"to mix", formula.Enough}, {"to bind", formula.Enough}, {"to moisten", formula.Enough}, {"to wet", formula.Enough}, {"to make", formula.Enough},
	{"to dough", formula.Enough}, {"to a dough", formula.Enough}, {"to a soft dough", formula.Enough}, {"to a stiff dough", formula.Enough},
	{"to a paste", formula.Enough}, {"to a stiff paste", formula.Enough}, {"to a firm paste", formula.Enough}, {"to a batter", formula.Enough},
	{"to stiffness", formula.Enough}, {"to form", formula.Enough}, {"to cover", formula.Enough}, {"to fill", formula.Enough}, {"to thin", formula.Enough},
	{"to thicken", formula.Enough}, {"to work", formula.Enough}, {"to knead", formula.Enough}, {"to roll", formula.Enough}, {"to dissolve", formula.Enough},
	{"till it is", formula.Enough}, {"until it is", formula.Enough}, {"stiff", formula.Enough}, {"firm paste", formula.Enough}, {"stiff paste", formula.Enough},
	{"soft dough", formula.Enough}, {"stiff dough", formula.Enough}, {"some added to make", formula.Enough}, {"some to make", formula.Enough},

	{"quantity not given", formula.NotGiven}, {"quantity not stated", formula.NotGiven}, {"quantity unknown", formula.NotGiven},
	{"amount not given", formula.NotGiven}, {"amount not stated", formula.NotGiven}, {"no amount given", formula.NotGiven},
	{"no quantity given", formula.NotGiven}, {"no quantity", formula.NotGiven}, {"not given", formula.NotGiven}, {"not stated", formula.NotGiven},
	{"a very little", formula.NotGiven}, {"a little", formula.NotGiven}, {"very little", formula.NotGiven}, {"little", formula.NotGiven}, {"some", formula.NotGiven},
	{"a bit", formula.NotGiven}, {"a small bit", formula.NotGiven}, {"a piece", formula.NotGiven}, {"a small piece", formula.NotGiven}, {"a few", formula.NotGiven},
	{"few", formula.NotGiven}, {"a trifle", formula.NotGiven}, {"a suspicion", formula.NotGiven}, {"a dust", formula.NotGiven}, {"a seasoning", formula.NotGiven},
	{"a flavouring", formula.NotGiven}, {"a flavoring", formula.NotGiven}, {"a quantity", formula.NotGiven}, {"a small quantity", formula.NotGiven},
	{"a good deal", formula.NotGiven}, {"a touch", formula.NotGiven}, {"a hint", formula.NotGiven}, {"a good quantity", formula.NotGiven},
	{"too little", formula.NotGiven}, {"too much", formula.NotGiven}, {"more than needed", formula.NotGiven}, {"less than needed", formula.NotGiven},
	{"a layer", formula.NotGiven}, {"a bunch", formula.NotGiven}, {"a small bunch", formula.NotGiven}, {"the remains", formula.NotGiven},
	{"a good many", formula.NotGiven}, {"several", formula.NotGiven}, {"a sprinkling", formula.NotGiven}, {"a sprinkle", formula.NotGiven},
}

// statesBy are the same by their first word.
var statesBy = func() wordMap[[]statedRun] {
	out := map[string][]statedRun{}
	for _, s := range states {
		first, _, _ := strings.Cut(s.words, " ")
		out[first] = append(out[first], statedRun{running(s.words), s.state})
	}
	return mapped(out)
}()

// stateAt finds the way of giving no amount that the phrase begins with, and
// how many tokens it takes.
func stateAt(ts phrase) (formula.State, int) {
	state, used := formula.Stated, 0
	for _, s := range statesBy.of(ts, 0) {
		if n := ts.runs(s.words); n > used {
			state, used = s.state, n
		}
	}
	return state, used
}

// enoughOpens are the words that "enough" and its like begin with.
var enoughOpens = words("a sufficient enough plenty just as so about only")

// enoughFor reads "enough water to make a stiff paste", "as much flour as will
// make it a stiff paste", "sufficient milk to mix", "a sufficient quantity of
// flour".
func (r *Reader) enoughFor(ts phrase) (found, bool) {
	if !ts.is(0, enoughOpens) {
		return found{}, false
	}
	n := 0
	for _, w := range [...]string{
		"a sufficient quantity of", "sufficient quantity of", "a sufficiency of", "enough of", "enough", "sufficient", "plenty of", "just enough",
		"as much", "as little", "so much", "as many", "about enough", "only enough",
	} {
		n = max(n, ts.begins(w))
	}
	if n == 0 {
		return found{}, false
	}
	if k := ts.key(n); k == "as" || k == "to" {
		return found{}, false // "enough to ..." follows the name
	}
	at := n
	for at < len(ts) && ts[at].kind != mark && !ts.is(at, purpose) {
		at++
	}
	if at == len(ts) && opens(ts, "as much", "as little", "so much") {
		return found{}, false // "as much butter" leans on another line
	}
	a := amount{said: true}
	a.State = formula.Enough
	a.Words = ts[:n].String()
	rest := ts[at:]
	if at < len(ts) && ts[at].kind != mark {
		a.Words += " ... " + cut(rest).String()
		rest = rest[len(cut(rest)):]
	}
	return r.put(a, splice(ts[n:at], rest)), true
}

// purpose are the words that open what something is enough for.
var purpose = words("to as for")

// opens reports whether the phrase begins with any of the wordings.
func opens(ts phrase, wordings ...string) bool {
	for _, w := range wordings {
		if ts.begins(w) > 0 {
			return true
		}
	}
	return false
}
