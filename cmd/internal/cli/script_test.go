package cli

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/require"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"assize": func() { os.Exit(int(Main(os.Args[1:], Here()))) },
	})
}

// TestScripts runs the scripts of testdata/script. UPDATE=1 rewrites what they
// compare with.
func TestScripts(t *testing.T) {
	top, err := filepath.Abs("../../..")
	require.NoError(t, err)
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join(top, "testdata", "script"),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("UPDATE") != "",
		Setup: func(env *testscript.Env) error {
			env.Setenv("RECEIPTS", filepath.Join(top, "testdata", "receipts"))
			env.Setenv("DEMO", filepath.Join(top, "testdata", "demo"))
			if !strings.HasSuffix(env.WorkDir, "read-refused") {
				return nil
			}
			return unreadableFiles(env.WorkDir)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

// exits runs a command and holds it to an exit code: exits 3 assize check x.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND [ARG...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := errors.AsType[*exec.ExitError](err)
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// unreadableFiles writes what no script can hold: bytes that are no text, and
// files too large or too deep.
func unreadableFiles(dir string) error {
	var parts strings.Builder
	parts.WriteString("A great book\n\n")
	for i := range 200 {
		fmt.Fprintf(&parts, "For the %s paste:\n6 oz flour\n\n", strings.Repeat("i", i+1))
	}
	for name, text := range map[string]string{
		"parts.txt":  parts.String(),
		"latin.txt":  "a gill of cr\xe8me\n",
		"nul.txt":    "6 eggs\x00",
		"bell.txt":   "6 eggs\a",
		"deep.json":  strings.Repeat("[", 10_000) + strings.Repeat("]", 10_000),
		"large.txt":  strings.Repeat("6 eggs\n", 200_000),
		"large.json": "{" + strings.Repeat(" ", 1<<20) + "}",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			return err
		}
	}
	return nil
}
