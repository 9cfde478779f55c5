package receipt

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// title takes the name of the receipt: the first heading, or the words before
// the first dash of running text ("Orange pudding.--Take ...").
func (m *making) title(blocks []block) []block {
	b := blocks[0]
	ts := m.page.tokens(b.from, b.to)
	switch {
	case b.kind == heading && !m.isHead(ts):
		m.name(ts)
		return blocks[1:]
	case b.kind == prose:
		if n := titleBefore(m.r, ts); n > 0 {
			m.name(ts[:n])
			rest := block{prose, b.to, b.to}
			if k := pastMarks(ts, n); k < len(ts) {
				rest.from = ts[k].from - 1
			}
			return append([]block{rest}, blocks[1:]...)
		}
	}
	if m.f.Title == "" {
		m.f.Title = "A receipt without a heading"
		if b.kind == prose {
			m.titled = ts[:min(len(ts), 30)]
		}
	}
	return blocks
}

func (m *making) isHead(ts phrase) bool {
	h, n := m.r.headAt(ts, true)
	return h.section != none && h.section != ofPart && n == len(ts)
}

// name sets the title, without the number of the receipt and the stop behind
// it. The number becomes another name, so that the book can call it by that.
func (m *making) name(ts phrase) {
	m.titled, m.seen = ts, append(m.seen, ts)
	if number, rest := numbered(ts); len(rest) > 0 {
		m.named = append(m.named, stretch{from: ts[0].from - 1, to: rest[0].from - 1})
		m.f.Also = append(m.f.Also, "No. "+number)
		ts, m.titled = rest, rest
	}
	words := strings.Trim(m.page.words(ts[0].from-1, after(ts)), " .,;:-–—_*=")
	if utf8.RuneCountInString(words) < longestTitle {
		m.named = append(m.named, stretch{from: ts[0].from - 1, to: after(ts)})
	}
	switch {
	case words == "":
	case m.f.Title == "":
		m.f.Title = shortened(quieted(words))
	case !strings.EqualFold(m.f.Title, words):
		m.f.Also = append(m.f.Also, shortened(quieted(words)))
	}
}

// numbered parts the number of a receipt from its title: "No. 34. Rich lemon
// pudding", "1292. Lemon cheesecakes".
func numbered(ts phrase) (number string, rest phrase) {
	i := 0
	if ts.key(0) == "no" {
		i = 1
	}
	if i >= len(ts) || ts[i].kind != figure || i+1 >= len(ts) {
		return "", nil
	}
	next := ts[i+1]
	if next.kind == mark && (next.key == "." || next.key == ")" || next.key == "-" || next.key == ":") {
		return ts[i].text, trimMarks(ts[i+2:])
	}
	if strings.HasPrefix(next.lead, ".") {
		return ts[i].text, ts[i+1:]
	}
	return "", nil
}

// after is the place behind the last token.
func after(ts phrase) int {
	t := ts[len(ts)-1]
	return t.from - 1 + utf8.RuneCountInString(t.text)
}

// longestTitle is how many characters of a heading make the title.
const longestTitle = 120

func shortened(s string) string {
	if utf8.RuneCountInString(s) <= longestTitle {
		return s
	}
	return string([]rune(s)[:longestTitle-3]) + "..."
}

// quieted is a heading without its capitals, when it has nothing else.
func quieted(s string) string {
	if s != strings.ToUpper(s) || s == strings.ToLower(s) {
		return s
	}
	runes := []rune(strings.ToLower(s))
	runes[0] = unicode.ToUpper(runes[0])
	return string(runes)
}

// titleBefore counts the tokens of a title that stands in front of running
// text: "Orange Pudding.--Take ...", "ORANGE PUDDING. Take ...".
func titleBefore(r *Reader, ts phrase) int {
	const longest = 9
	if _, rest := numbered(ts); len(rest) > 0 {
		if n := titleBefore(r, rest); n > 0 {
			return len(ts) - len(rest) + n
		}
		return 0
	}
	for i := 1; i < min(len(ts), longest+1); i++ {
		if ts[i].kind != mark || ts[i].key == "," && i < longest {
			continue
		}
		if k := ts[i].key; k != "." && k != "-" && k != ":" || r.isItem(ts[:i]) || i+1 == len(ts) {
			return 0
		}
		if h, _ := r.headAt(ts, false); h.section != none || ts.is(0, imperatives) && ts.key(0) != "to" {
			return 0
		}
		return i
	}
	return 0
}
