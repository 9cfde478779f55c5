package fault

import "strings"

// breaks turns every line break YAML knows into one: a return, alone or before
// a new line, and the breaks of Unicode.
var breaks = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

// Lines splits a text into its lines, where YAML breaks them, so that the line
// numbers of a fault and of the page agree.
func Lines(text string) []string {
	return strings.Split(breaks.Replace(text), "\n")
}
