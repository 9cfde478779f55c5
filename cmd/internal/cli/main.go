package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"unicode"

	"github.com/olekukonko/tablewriter/pkg/twwidth"
	"golang.org/x/term"
)

// version is the program's; the tables have an edition of their own.
const version = "0.1.0"

// Exit is how a run ended.
type Exit int

// The ways a run may end.
const (
	Done    Exit = 0  // reported, whatever was found
	Stopped Exit = 1  // a finding reached --stop-at
	Usage   Exit = 2  // the command line cannot be understood
	Invalid Exit = 3  // something could not be read, is not as it must be, or could not be written
	Bug     Exit = 70 // a fault of ours
)

// Session is what a run is given of the world around it.
type Session struct {
	In       io.Reader
	Out, Err io.Writer
	Env      func(name string) string
	Terminal bool // whether Out is a terminal
	// ErrTerminal tells whether Err is one, where progress may be shown.
	ErrTerminal bool
	Columns     int // how wide that terminal is, 0 when not known
}

// Here is the session of this process.
func Here() Session {
	s := Session{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Getenv}
	out := int(os.Stdout.Fd())
	if s.Terminal = term.IsTerminal(out); s.Terminal {
		// A terminal that does not tell its size is set to the usual one.
		s.Columns, _, _ = term.GetSize(out)
	}
	s.ErrTerminal = term.IsTerminal(int(os.Stderr.Fd()))
	return s
}

// Main runs the command the arguments give and tells how it ended.
func Main(args []string, s Session) (code Exit) {
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintf(s.Err, "assize: this is a fault of ours, please report it: %v\n", r)
			code = Bug
		}
	}()
	// Figures like ½ are one column wide whatever the language of the terminal.
	twwidth.SetEastAsian(false)
	r := &run{Session: s}
	root := newRoot(r)
	root.SetArgs(append([]string{}, args...))
	return r.ended(root.Execute())
}

// run is one run of the program.
type run struct {
	Session
	// started is set once the command line has been understood: what goes
	// wrong before that is usage.
	started bool
	plain   bool   // --plain
	tables  string // --tables
}

// usageError is a mistake in the command line found after it was parsed.
type usageError struct{ what, hint string }

func (e usageError) Error() string { return e.what }

// usageAt is a usage error of one place in what was given.
type usageAt struct {
	usageError
	given  string
	column int // in characters from 1; 0 for no one place
}

// unreadable is something that could not be read or written.
type unreadable struct {
	what, hint string
}

func (e unreadable) Error() string { return e.what }

// stopError says which finding reached --stop-at.
type stopError struct{ what string }

func (e stopError) Error() string { return e.what }

// errFaults ends a run whose faults have been shown already.
var errFaults = errors.New("there were faults")

// ended says what went wrong, if anything did, and gives the exit code.
func (r *run) ended(err error) Exit {
	var usage usageError
	var place usageAt
	var unread unreadable
	var stop stopError
	switch {
	case err == nil:
		return Done
	case errors.As(err, &stop):
		fmt.Fprintf(r.Err, "assize: %s\n", stop.what)
		return Stopped
	case errors.As(err, &place):
		r.pointAt(&place)
		return Usage
	case errors.As(err, &usage):
		r.complain(usage.what, usage.hint)
		return Usage
	case !r.started:
		r.complain(err.Error(), "`assize help` lists what there is")
		return Usage
	case errors.Is(err, errFaults):
		return Invalid
	case errors.As(err, &unread):
		r.complain(unread.what, unread.hint)
		return Invalid
	}
	fmt.Fprintf(r.Err, "assize: this is a fault of ours, please report it: %v\n", err)
	return Bug
}

// pointAt complains with what was given below, and a caret under the place.
func (r *run) pointAt(u *usageAt) {
	what := u.what
	if u.column > 0 && !strings.ContainsFunc(u.given, unicode.IsControl) {
		what += "\n    " + u.given + "\n    " + strings.Repeat(" ", u.column-1) + "^"
	}
	r.complain(what, u.hint)
}

func (r *run) complain(what, hint string) {
	fmt.Fprintf(r.Err, "assize: error: %s\n", what)
	if hint != "" {
		fmt.Fprintf(r.Err, "  hint: %s\n", hint)
	}
}
