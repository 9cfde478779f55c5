package receipt

import (
	"strings"

	"github.com/shopspring/decimal"

	"assize/formula"
)

// choices makes a line of one thing or another where the book leaves the choice: "a
// gill of sack or white wine". What is named alone is taken in the same amount. The
// line stays as it is when it holds several things or the other cannot be read.
func (m *making) choices(g gathered, l formula.Line) formula.Line {
	if len(l.Items) == 1 && l.Items[0].Amount.State == formula.NotGiven {
		return m.unweighedChoice(g, l)
	}
	if g.how != withAmount || len(l.Items) != 1 || l.Items[0].Amount.State != formula.Stated {
		return l
	}
	out := l
	out.Why = "the book leaves the choice"
	out.Either = []formula.Alternative{{Text: l.Text, Items: l.Items, Odds: decimal.NewFromInt(1)}}
	texts := []string{l.Text}
	for _, o := range g.or {
		text := o.line.Text
		if o.how != withAmount {
			text = l.Items[0].Amount.Words + " of " + text
		}
		other, troubles := m.r.silent().Line(text)
		if len(troubles) > 0 || len(other.Items) != 1 || other.Items[0].Amount.State != formula.Stated {
			return l
		}
		if other.Items[0].Ingredient == l.Items[0].Ingredient {
			continue
		}
		out.Either = append(out.Either, formula.Alternative{Text: text, Items: other.Items, Odds: decimal.NewFromInt(1)})
		texts = append(texts, text)
	}
	if len(out.Either) < 2 {
		return l
	}
	out.Text = strings.Join(texts, " or ")
	return out
}

// unweighedChoice is choices of things of which no amount is given: "some coriander or
// allspice".
func (m *making) unweighedChoice(g gathered, l formula.Line) formula.Line {
	out := l
	out.Why = "the book leaves the choice"
	out.Either = []formula.Alternative{{Text: l.Text, Items: l.Items, Odds: decimal.NewFromInt(1)}}
	texts := []string{l.Text}
	for _, o := range g.or {
		text := o.line.Text
		if words := l.Items[0].Amount.Words; words != "" && o.how == bare && len(o.line.Items) == 1 && o.line.Items[0].Amount.Words == "" {
			text = words + " " + text
		}
		other, troubles := m.r.silent().Line(text)
		if len(troubles) > 0 || len(other.Items) != 1 {
			return l
		}
		if other.Items[0].Ingredient == l.Items[0].Ingredient {
			continue
		}
		out.Either = append(out.Either, formula.Alternative{Text: text, Items: other.Items, Odds: decimal.NewFromInt(1)})
		texts = append(texts, text)
	}
	if len(out.Either) < 2 {
		return l
	}
	out.Text = strings.Join(texts, " or ")
	return out
}

// unmeasuredWithin is choiceWithin where no amount is given: "milk or water enough to
// moisten it".
func (m *making) unmeasuredWithin(l formula.Line) formula.Line {
	name := l.Items[0].Name
	left, right, _ := strings.Cut(name, " or ")
	if strings.Contains(right, " or ") || !strings.Contains(l.Text, name) {
		return l
	}
	out := l
	out.Why = "the book leaves the choice"
	var texts []string
	for _, one := range []string{left, right} {
		text := strings.Replace(l.Text, name, one, 1)
		line, troubles := m.r.silent().Line(text)
		if len(troubles) > 0 || len(line.Items) != 1 {
			return l
		}
		out.Either = append(out.Either, formula.Alternative{Text: text, Items: line.Items, Odds: decimal.NewFromInt(1)})
		texts = append(texts, text)
	}
	if out.Either[0].Items[0].Ingredient == out.Either[1].Items[0].Ingredient {
		return l
	}
	out.Text = strings.Join(texts, " or ")
	return out
}

// choiceWithin is choices where one name is "cream or milk", or where the line itself
// goes on with "or white wine".
func (m *making) choiceWithin(l formula.Line) formula.Line {
	if len(l.Items) == 1 && l.Items[0].Amount.State != formula.Stated && strings.Contains(l.Items[0].Name, " or ") {
		return m.unmeasuredWithin(l)
	}
	if len(l.Items) != 1 || l.Items[0].Amount.State != formula.Stated || !strings.Contains(l.Text, "or ") {
		return l
	}
	r := m.r.silent()
	ts := r.tokens(l.Text)
	a, n := r.amountAt(ts)
	if n == 0 {
		return l
	}
	rest := ofName(ts[n:])
	clause := first(rest)
	for i := 1; i+1 < len(clause); i++ {
		if clause.key(i) != "or" {
			continue
		}
		var items [2]formula.Line
		left, right := clause[:i], clause[i+1:]
		names := [2]phrase{left, right}
		if !r.isName(left) || right.is(len(right)-1, preserves) { // "lemon or orange juice", "raspberry or currant jelly"
			names[0] = splice(left, right[len(right)-1:])
		}
		said := rest[len(clause):].String()
		if said != "" {
			said = ", " + strings.TrimLeft(said, ", ")
		}
		for k, name := range names {
			text := name.String()
			switch {
			case number(name).used > 0:
			case a.measured:
				text = ts[:n].String() + " of " + text
			default:
				text = ts[:n].String() + " " + text
			}
			if text += said; k > 0 {
				text = lowerFirst(text)
			}
			var troubles []Trouble
			if items[k], troubles = r.Line(text); len(troubles) > 0 || len(items[k].Items) != 1 || items[k].Items[0].Amount.State != formula.Stated {
				return l
			}
		}
		if items[0].Items[0].Ingredient == items[1].Items[0].Ingredient {
			return l
		}
		out := l
		out.Why, out.Notes = "the book leaves the choice", nil
		out.Items, out.Text = items[0].Items, items[0].Text+" or "+items[1].Text
		for k := range items {
			out.Either = append(out.Either, formula.Alternative{Text: items[k].Text, Items: items[k].Items, Odds: decimal.NewFromInt(1)})
		}
		return out
	}
	return l
}
