package oven

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"assize/reference/fault"
	"assize/reference/spell"
)

// Timed are readings of an oven with the clock they were taken by.
type Timed struct {
	Readings []Reading // minutes since the first
	// First is the time of day of the first reading, minutes since midnight; -1
	// where the readings are told in minutes only.
	First int
}

const (
	dayMinutes = 24 * 60
	// mostReadings bounds a list of readings.
	mostReadings = 1000
)

// Clock is the time of day so many minutes after the first reading, "14:35", or
// where no clock was given how long after, "1 h 5 min on".
func (t *Timed) Clock(minutes float64) string {
	m := int(minutes + .5)
	if t.First < 0 {
		switch {
		case m == 0:
			return "the first reading"
		case m < 60:
			return fmt.Sprintf("%d min on", m)
		}
		return fmt.Sprintf("%d h %02d min on", m/60, m%60)
	}
	at := t.First + m
	clock := fmt.Sprintf("%02d:%02d", at/60%24, at%60)
	if days := at / dayMinutes; days > 0 {
		clock += fmt.Sprintf(" (day %d)", days+1)
	}
	return clock
}

var (
	clockRE   = regexp.MustCompile(`^(\d{1,2})[:.](\d{2})$`)
	minutesRE = regexp.MustCompile(`(?i)^(\d{1,4})\s*(?:m|min|mins|minutes)?$`)
	scaleRE   = regexp.MustCompile(`(?i)^(\d{2,4}(?:\.\d)?)\s*(?:°|º)?\s*(c|f)$`)
)

// ReadReadings reads readings of an oven from a page: one a line, or several
// with commas between, each a time and degrees with their scale - "14:05 290 C",
// or minutes since the first, "35 min 262 C". What follows a # is a remark. All
// faults are returned.
func ReadReadings(name string, text []byte) (Timed, fault.List) {
	page := fault.NewPage(name, text)
	t := Timed{First: -1}
	if !utf8.Valid(text) {
		page.Add(1, 1, "save it as plain text", "the readings are no text")
		return t, page.Faults()
	}
	last, clocked, any := 0, false, false
	for n, line := range fault.Lines(string(text)) {
		body, _, _ := strings.Cut(line, "#")
		column := 1
		for i, piece := range strings.Split(body, ",") {
			if i > 0 {
				column++
			}
			at := column + utf8.RuneCountInString(piece) - utf8.RuneCountInString(strings.TrimLeft(piece, " \t"))
			column += utf8.RuneCountInString(piece)
			piece = strings.TrimSpace(piece)
			if piece == "" {
				continue
			}
			if len(t.Readings) >= mostReadings {
				page.Add(n+1, at, "", "more than %d readings", mostReadings)
				return t, page.Faults()
			}
			when, isClock, c, bad := oneReading(piece)
			if bad != (fault.Fault{}) {
				page.Add(n+1, at, bad.Hint, "%s", bad.What)
				continue
			}
			switch {
			case !any:
				any, clocked = true, isClock
				if isClock {
					t.First = when
				}
			case clocked != isClock:
				page.Add(n+1, at, "tell all of them by the clock, or all in minutes since the first", "%q is told another way than the first", piece)
				continue
			case isClock && when < last%dayMinutes && last%dayMinutes-when > dayMinutes/2:
				when += (last/dayMinutes + 1) * dayMinutes // over midnight
			case isClock:
				when += last / dayMinutes * dayMinutes
			}
			if len(t.Readings) > 0 && when <= last {
				page.Add(n+1, at, "set the readings down in the order they were taken", "%q is no later than the reading before it", piece)
				continue
			}
			last = when
			t.Readings = append(t.Readings, Reading{Minutes: float64(when - max(t.First, 0)), C: c})
		}
	}
	if !any && len(page.Faults()) == 0 {
		page.Add(1, 1, "write one a line: 14:05 290 C", "there is no reading")
	}
	if t.First < 0 && len(t.Readings) > 0 { // minutes are counted from the first reading
		from := t.Readings[0].Minutes
		for i := range t.Readings {
			t.Readings[i].Minutes -= from
		}
	}
	return t, page.Faults()
}

// oneReading reads a time and degrees. The fault has a hint and no place.
func oneReading(piece string) (when int, isClock bool, c float64, bad fault.Fault) {
	const like = "write a time and degrees with their scale: 14:05 290 C"
	words := strings.Fields(piece)
	// The time is the first word, or the first two: "35 min".
	cut := 1
	if len(words) > 2 && minutesRE.MatchString(words[0]) && minutesRE.MatchString(words[0]+" "+words[1]) {
		cut = 2
	}
	time, deg := strings.Join(words[:min(cut, len(words))], " "), strings.Join(words[min(cut, len(words)):], " ")
	switch m := clockRE.FindStringSubmatch(time); {
	case m != nil:
		h, _ := strconv.Atoi(m[1])
		minute, _ := strconv.Atoi(m[2])
		if h > 23 || minute > 59 {
			return 0, false, 0, fault.Fault{What: fmt.Sprintf("%q is no time of day", time), Hint: "from 00:00 to 23:59"}
		}
		when, isClock = 60*h+minute, true
	case minutesRE.MatchString(time):
		when, _ = strconv.Atoi(minutesRE.FindStringSubmatch(time)[1])
	default:
		return 0, false, 0, fault.Fault{What: fmt.Sprintf("%q does not begin with a time", piece), Hint: like}
	}
	m := scaleRE.FindStringSubmatch(deg)
	if m == nil {
		hint := like
		if deg == "" {
			return 0, false, 0, fault.Fault{What: fmt.Sprintf("no heat is told with %q", time), Hint: like}
		}
		if w := strings.Fields(deg); len(w) > 1 {
			if s := spell.Ask(strings.ToUpper(w[len(w)-1]), []string{"C", "F"}); s != "" {
				hint = s
			}
		} else if len(w) == 1 && regexp.MustCompile(`^\d+$`).MatchString(w[0]) {
			hint = "say whether it is " + w[0] + " C or " + w[0] + " F"
		}
		return 0, false, 0, fault.Fault{What: fmt.Sprintf("%q is no heat with its scale", deg), Hint: hint}
	}
	v, _ := strconv.ParseFloat(m[1], 64)
	if strings.EqualFold(m[2], "f") {
		v = celsius(v)
	}
	return when, isClock, v, fault.Fault{}
}
