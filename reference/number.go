package reference

import "strings"

// A is a name with its article: "an ounce", "a pint", "an 8 inch tin".
func A(name string) string {
	if name == "" {
		return name
	}
	first, _, _ := strings.Cut(strings.ToLower(name), " ")
	switch {
	case strings.HasPrefix(first, "hour"), strings.HasPrefix(first, "8"), first == "11", first == "18",
		strings.ContainsRune("aeiou", rune(first[0])) && !strings.HasPrefix(first, "one") && !strings.HasPrefix(first, "eu") && !strings.HasPrefix(first, "us") && !strings.HasPrefix(first, "uni"):
		return "an " + name
	}
	return "a " + name
}

// Plural is a name or a measure of more than one: "ounces", "glasses", "lumps of
// sugar". Short forms of units, and likenesses in size, have none.
func Plural(name string) string {
	if head, rest, ok := strings.Cut(name, " of "); ok {
		if head == "size" || strings.HasSuffix(head, " size") {
			return name
		}
		return Plural(head) + " of " + rest
	}
	last := name[strings.LastIndexAny(name, " -")+1:]
	if len(last) < 3 || unchanged[last] || strings.HasPrefix(name, "on a ") || strings.HasSuffix(last, "s") && !strings.HasSuffix(last, "ss") {
		return name
	}
	switch {
	case strings.HasSuffix(last, "leaf"), strings.HasSuffix(last, "loaf"):
		return strings.TrimSuffix(name, "f") + "ves"
	case strings.HasSuffix(last, "y") && !strings.ContainsRune("aeiou", rune(last[len(last)-2])):
		return strings.TrimSuffix(name, "y") + "ies"
	case strings.HasSuffix(last, "ch"), strings.HasSuffix(last, "sh"), strings.HasSuffix(last, "x"), strings.HasSuffix(last, "ss"),
		last == "potato", last == "mango", last == "tomato":
		return name + "es"
	}
	return name + "s"
}

// unchanged are units that are the same of one and of many.
var unchanged = map[string]bool{"dag": true, "stone": true, "hundredweight": true}

// Piece is what is counted, as it is called: "peeled lemon" of peeled-lemon.
func Piece(each string) string {
	return strings.ReplaceAll(strings.ReplaceAll(each, "seville", "Seville orange"), "-", " ")
}
