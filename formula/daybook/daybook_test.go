package daybook

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"assize/formula/bench"
	"assize/reference"
	"assize/reference/fault"
)

// The test program keeps bakes itself when it is told to, so that runs can be
// set against each other and ended from without.
const keepMany = "ASSIZE_TEST_KEEP"

func TestMain(m *testing.M) {
	if path := os.Getenv(keepMany); path != "" {
		tables, err := reference.Load()
		if err != nil {
			panic(err)
		}
		for i := range 1000 {
			n, err := Keep(path, entry(tables, os.Getenv("BY"), "cakey"), tables)
			if err != nil {
				fmt.Fprintln(os.Stderr, err)
				os.Exit(1)
			}
			fmt.Println(n)
			if fmt.Sprint(i+1) == os.Getenv("TIMES") {
				break
			}
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

const record = `# kept by hand
baked: 2026-10-03
tasted:
  - {by: the cook, cut: small holes, words: "a cake: no pudding"}
formula:
  title: "Custard: a plain one"
  year: 1900
  place: england
  parts:
    - name: custard
      kind: filling
      lines:
        - 500 ml of milk
        - 4 eggs
`

func entry(t *reference.Tables, by, texture string) Entry {
	r, faults := bench.Read("record.yaml", []byte(record), t)
	if len(faults) > 0 {
		panic(faults.Error())
	}
	return Entry{
		Baked: r.Baked, Title: r.Formula.Title, Version: "0.1.0", Tables: reference.Edition, Readings: 2000,
		Predicted: []Predicted{{Part: "custard", Kind: "filling", Likeliest: "sets", Shares: shares(.7, .1, .1, .1)}},
		Tasted:    []Tasted{{By: by, When: "cool", Results: []Result{{"custard", texture}}, Words: "a cake, {no} pudding"}},
		Record:    r,
	}
}

func shares(sets, cakey, curdy, thin float64) []Share {
	of := func(f float64) decimal.Decimal { return decimal.RequireFromString(fmt.Sprintf("%.3f", f)) }
	return []Share{{"sets", of(sets)}, {"cakey", of(cakey)}, {"curdy", of(curdy)}, {"thin", of(thin)}}
}

func tables(t testing.TB) *reference.Tables {
	t.Helper()
	tab, err := reference.Load()
	require.NoError(t, err)
	return tab
}

// What is kept is read again word for word, and what stood before is untouched.
func TestKeep(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	for i := 1; i <= 3; i++ {
		before, err := os.ReadFile(path)
		if i > 1 {
			require.NoError(t, err)
		}
		n, err := Keep(path, entry(tab, "A: the first", "cakey"), tab)
		require.NoError(t, err)
		require.Equal(t, i, n)
		after, err := os.ReadFile(path)
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(after, before))
		if i == 1 {
			// A remark of the person's own stays where it is.
			after = append(after, "# it was a wet day\n"...)
			require.NoError(t, os.WriteFile(path, after, 0o644))
		}
	}
	b, err := Load(path, tab)
	require.NoError(t, err)
	require.Len(t, b.Entries, 3)
	e := b.Entries[1]
	want := entry(tab, "A: the first", "cakey")
	require.Equal(t, 2, e.Bake)
	require.Equal(t, want.Title, e.Title)
	require.Equal(t, want.Tasted, e.Tasted)
	require.Equal(t, want.Predicted[0].Likeliest, e.Predicted[0].Likeliest)
	require.Equal(t, "the cook", e.Record.Tastings[0].By)
	text, ok := b.Record(2)
	require.True(t, ok)
	require.Equal(t, record, string(text))
	_, ok = b.Record(4)
	require.False(t, ok)
	left, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, left, 1, "nothing is left beside the book")
}

// A receipt without a bench record is kept as it stands.
func TestKeepWithoutRecord(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	e := entry(tab, "A", "cakey")
	e.Record = &bench.Record{Formula: e.Record.Formula}
	_, err := Keep(path, e, tab)
	require.NoError(t, err)
	b, err := Load(path, tab)
	require.NoError(t, err)
	require.Equal(t, e.Record.Formula.Title, b.Entries[0].Record.Formula.Title)
	text, ok := b.Record(1)
	require.True(t, ok)
	_, faults := bench.Read("again.yaml", text, tab)
	require.NoError(t, faults.Err(), string(text))
}

// later is what was tasted the next day.
var later = Tasted{By: "Bess: a neighbour", When: "next day", Results: []Result{{"custard", "curdy"}}, Words: "a wet plate, {alas}"}

// What was tasted later stands behind what was tasted first, of its own bake;
// what stood in the book before is untouched and further bakes follow on.
func TestKeepTasting(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	for range 2 {
		_, err := Keep(path, entry(tab, "A", "cakey"), tab)
		require.NoError(t, err)
	}
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, KeepTasting(path, 1, later, tab))
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.HasPrefix(after, before))
	n, err := Keep(path, entry(tab, "C", "cakey"), tab)
	require.NoError(t, err)
	require.Equal(t, 3, n)
	b, err := Load(path, tab)
	require.NoError(t, err)
	first := entry(tab, "A", "cakey").Tasted
	require.Equal(t, append(first, later), b.Entries[0].Tasted)
	require.Equal(t, first, b.Entries[1].Tasted)
	for i := range b.Entries {
		text, ok := b.Record(i + 1)
		require.True(t, ok)
		require.Equal(t, record, string(text))
	}
}

// A bake that is not there, a part or a texture that it has not, leave the book
// as it is; and there must be a book.
func TestKeepTastingRefuses(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	require.ErrorIs(t, KeepTasting(path, 1, later, tab), fs.ErrNotExist)
	_, err := Keep(path, entry(tab, "A", "cakey"), tab)
	require.NoError(t, err)
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	for name, c := range map[string]struct {
		bake int
		of   Result
	}{
		"no bake nought":  {0, Result{"custard", "cakey"}},
		"no bake two":     {2, Result{"custard", "cakey"}},
		"no such part":    {1, Result{"paste", "cakey"}},
		"no such texture": {1, Result{"custard", "flaky"}},
	} {
		t.Run(name, func(t *testing.T) {
			var faults fault.List
			require.ErrorAs(t, KeepTasting(path, c.bake, Tasted{By: "B", Results: []Result{c.of}}, tab), &faults)
			got, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, before, got)
		})
	}
}

// Ended at any write, a later tasting is in the book whole or not at all.
func TestLaterTastingSurvivesBeingEnded(t *testing.T) {
	tab := tables(t)
	ends := 0
	for at := 1; ; at++ {
		path := filepath.Join(t.TempDir(), "book.yaml")
		_, err := Keep(path, entry(tab, "A", "cakey"), tab)
		require.NoError(t, err)
		err = keepTasting(&dying{at: at}, path, 1, later, tab)
		b, e := Load(path, tab)
		require.NoError(t, e)
		require.Len(t, b.Entries, 1)
		if err == nil {
			require.Len(t, b.Entries[0].Tasted, 2)
			break
		}
		ends++
		require.ErrorIs(t, err, errKilled)
		require.Contains(t, []int{1, 2}, len(b.Entries[0].Tasted))
	}
	require.Greater(t, ends, 10)
}

var errKilled = errors.New("killed")

// dying is a machine that is ended at one of the things it does: what it was
// writing is half written, and nothing is done after.
type dying struct {
	machine
	at   int
	done int
}

func (d *dying) step() bool {
	d.done++
	return d.done >= d.at
}

func (d *dying) create(path string, like fs.FileMode) (sink, error) {
	if d.step() {
		return nil, errKilled
	}
	f, err := d.machine.create(path, like)
	return &dyingSink{f, d}, err
}

func (d *dying) rename(from, to string) error {
	if d.step() {
		return errKilled
	}
	return d.machine.rename(from, to)
}

func (d *dying) settle(dir string) error {
	if d.step() {
		return errKilled
	}
	return d.machine.settle(dir)
}

type dyingSink struct {
	sink
	d *dying
}

// Write writes a few bytes at a time and may be ended between any two.
func (s *dyingSink) Write(p []byte) (int, error) {
	const few = 83
	for n := 0; n < len(p); n += few {
		if s.d.step() {
			return n, errKilled
		}
		if _, err := s.sink.Write(p[n:min(len(p), n+few)]); err != nil {
			return n, err
		}
	}
	return len(p), nil
}

func (s *dyingSink) Sync() error {
	if s.d.step() {
		return errKilled
	}
	return s.sink.Sync()
}

// Ended at any write, the book is either as it was or has the whole of the new
// bake, and the next run adds to it as if nothing had been.
func TestSurvivesBeingEnded(t *testing.T) {
	tab := tables(t)
	for _, begun := range []bool{false, true} {
		ends := 0
		for at := 1; ; at++ {
			path := filepath.Join(t.TempDir(), "book.yaml")
			bakes := 0
			if begun {
				_, err := Keep(path, entry(tab, "A", "cakey"), tab)
				require.NoError(t, err)
				bakes = 1
			}
			before, err := os.ReadFile(path)
			require.Equal(t, begun, err == nil)
			d := &dying{at: at}
			_, err = keep(d, path, entry(tab, "B", "sets"), tab)
			if err == nil {
				require.Greater(t, ends, 10, "the writing was ended at many places")
				break
			}
			ends++
			require.ErrorIs(t, err, errKilled)
			after, e := os.ReadFile(path)
			if bytes.Equal(after, before) {
				require.Equal(t, begun, e == nil)
			} else {
				b, faults := Read(path, after, tab)
				require.NoError(t, faults.Err(), "ended at %d", at)
				require.Len(t, b.Entries, bakes+1)
				bakes++
			}
			n, err := Keep(path, entry(tab, "C", "thin"), tab)
			require.NoError(t, err)
			require.Equal(t, bakes+1, n)
			b, err := Load(path, tab)
			require.NoError(t, err)
			require.Len(t, b.Entries, n)
			left, err := os.ReadDir(filepath.Dir(path))
			require.NoError(t, err)
			require.Len(t, left, 1)
		}
	}
}

// child is a run of this program that keeps bakes.
func child(t *testing.T, path, by string, times int) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self)
	c.Env = append(os.Environ(), keepMany+"="+path, "BY="+by, fmt.Sprint("TIMES=", times))
	return c
}

// Runs that are killed while they write lose nothing they said they had kept.
func TestKilledRunsLoseNothing(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	kept := 0
	for i := range 6 {
		c := child(t, path, fmt.Sprint("run ", i), 1000)
		out, err := c.StdoutPipe()
		require.NoError(t, err)
		require.NoError(t, c.Start())
		// It is killed a moment after it has kept a few, wherever it then is.
		killed := false
		for lines := bufio.NewScanner(out); lines.Scan(); {
			if kept++; kept%(i+2) == 0 && !killed {
				killed = true
				time.Sleep(time.Duration(7*i) * time.Millisecond)
				require.NoError(t, c.Process.Kill())
			}
		}
		_ = c.Wait() // it was killed
		if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
			require.Zero(t, kept)
			continue
		}
		b, err := Load(path, tab)
		require.NoError(t, err)
		require.GreaterOrEqual(t, len(b.Entries), kept)
		kept = len(b.Entries)
	}
	require.Positive(t, kept)
}

// Several runs that add at once, and several writers in one run, lose nothing.
func TestWritersAtOnceLoseNothing(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	const runs, writers, times = 3, 3, 5
	var wg sync.WaitGroup
	for i := range runs {
		c := child(t, path, fmt.Sprint("run ", i), times)
		wg.Go(func() {
			out, err := c.CombinedOutput()
			if err != nil {
				t.Errorf("%v: %s", err, out)
			}
		})
	}
	for i := range writers {
		wg.Go(func() {
			for range times {
				if _, err := Keep(path, entry(tab, fmt.Sprint("writer ", i), "sets"), tab); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	b, err := Load(path, tab)
	require.NoError(t, err)
	require.Len(t, b.Entries, (runs+writers)*times)
	by := map[string]int{}
	for i, e := range b.Entries {
		require.Equal(t, i+1, e.Bake)
		by[e.Tasted[0].By]++
	}
	require.Len(t, by, runs+writers)
	for who, n := range by {
		require.Equal(t, times, n, who)
	}
}

// A damaged book is told of with its place and not written to.
func TestDamagedIsLeftAlone(t *testing.T) {
	tab := tables(t)
	path := filepath.Join(t.TempDir(), "book.yaml")
	for range 2 {
		_, err := Keep(path, entry(tab, "A", "cakey"), tab)
		require.NoError(t, err)
	}
	whole, err := os.ReadFile(path)
	require.NoError(t, err)
	for name, damaged := range map[string]string{
		"cut short":      string(whole[:len(whole)-40]),
		"a bake missing": strings.Replace(string(whole), "bake: 2", "bake: 3", 1),
		"a share lost":   strings.Replace(string(whole), "sets: 0.7, ", "", 1),
		"another page":   "title: Custard\n",
		"not text":       "- bake: 1\xff\n",
	} {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, os.WriteFile(path, []byte(damaged), 0o644))
			_, err := Keep(path, entry(tab, "A", "cakey"), tab)
			var faults fault.List
			require.ErrorAs(t, err, &faults)
			require.Positive(t, faults[0].Line)
			require.Positive(t, faults[0].Column)
			got, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, damaged, string(got))
		})
	}
}

// Only a file is a day-book.
func TestNotAFile(t *testing.T) {
	_, err := Keep(t.TempDir(), entry(tables(t), "A", "cakey"), tables(t))
	require.Error(t, err)
	_, err = Load(filepath.Join(t.TempDir(), "none.yaml"), tables(t))
	require.ErrorIs(t, err, fs.ErrNotExist)
}

// book is a book of so many bakes with the same prediction, of which the first
// so many came so.
func book(tab *reference.Tables, sets float64, came, of int) *Book {
	b := &Book{}
	rest := (1 - sets) / 3
	for i := range of {
		texture := "custard-set"
		if i >= came {
			texture = "cakey"
		}
		e := entry(tab, "A", texture)
		e.Bake = i + 1
		e.Predicted[0].Shares = shares(sets, rest, rest, rest)
		b.Entries = append(b.Entries, e)
	}
	return b
}

// Worked by hand: of ten bakes foretold .7 .1 .1 .1, seven set and three were
// cakey. A set one misses by .09 + 3 (.01) = .12, a cakey one by .49 + .81 + .02
// = 1.32; the mean is .48. Calling all four alike misses by .5625 + 3 (.0625) =
// .75 each time.
func TestFared(t *testing.T) {
	tab := tables(t)
	f := book(tab, .7, 7, 10).Fared(tab)
	require.Equal(t, 10, f.Bakes)
	require.Equal(t, 10, f.Cases)
	require.Zero(t, f.Apart)
	require.InDelta(t, .48, f.Brier, 1e-9)
	require.InDelta(t, .75, f.Alike, 1e-9)
	said, came := 0, 0
	for _, b := range f.Bands {
		said, came = said+b.Said, came+b.Came
		if b.Said > 0 {
			require.True(t, b.Mean >= b.Low && b.Mean <= b.High)
		}
	}
	require.Equal(t, 40, said)
	require.Equal(t, 10, came)
	require.Equal(t, Band{.5, .75, 10, 7, .7}, rounded(f.Bands[3]))
}

func rounded(b Band) Band {
	b.Mean = math.Round(b.Mean*1e9) / 1e9
	return b
}

// Tasters are not averaged: where they saw different things the part does not
// count, and cold tasting goes before hot.
func TestTastersWhoDifferDoNotCount(t *testing.T) {
	tab := tables(t)
	b := book(tab, .7, 1, 1)
	e := &b.Entries[0]
	e.Tasted = append(e.Tasted, Tasted{By: "B", When: "hot", Results: []Result{{"custard", "thin"}}})
	require.Equal(t, 1, b.Fared(tab).Cases)
	e.Tasted[1].When = "cool"
	require.Zero(t, b.Fared(tab).Cases)
	require.Equal(t, 1, b.Fared(tab).Apart)
	e.Tasted = nil
	require.Zero(t, b.Fared(tab).Apart)
}

// With too few bakes nothing is adjusted; what is said too surely is drawn in,
// what is said too timidly spread, and what is said rightly left nearly as it is.
func TestAdjustment(t *testing.T) {
	tab := tables(t)
	a, ok := book(tab, .9, 7, 7).Adjustment(tab)
	require.False(t, ok)
	require.Equal(t, 1.0, a.Power)
	a, ok = book(tab, .95, 12, 20).Adjustment(tab)
	require.True(t, ok)
	require.Less(t, a.Power, .8)
	require.Less(t, a.Adjust([]float64{.9, .1})[0], .9)
	a, ok = book(tab, .5, 20, 20).Adjustment(tab)
	require.True(t, ok)
	require.Greater(t, a.Power, 1.2)
	a, _ = book(tab, .7, 14, 20).Adjustment(tab)
	require.InDelta(t, 1, a.Power, .25)
}

// An adjustment is undone, keeps the order of the shares, and sums to 1.
func TestAdjustmentIsUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Adjustment{Power: rapid.Float64Range(.25, 4).Draw(t, "power")}
		n := rapid.IntRange(2, 6).Draw(t, "textures")
		s, sum := make([]float64, n), 0.0
		for i := range s {
			s[i] = rapid.Float64Range(.01, 1).Draw(t, "share")
			sum += s[i]
		}
		total := 0.0
		for i := range s {
			s[i] /= sum
		}
		adjusted := a.Adjust(s)
		for i := range s {
			total += adjusted[i]
			for j := range s {
				if s[i] > s[j]+1e-9 {
					require.Greater(t, adjusted[i], adjusted[j])
				}
			}
		}
		require.InDelta(t, 1, total, 1e-9)
		back := a.Undo(adjusted)
		for i := range s {
			require.InDelta(t, s[i], back[i], 1e-6)
		}
	})
}

// A year of bakes, one a day, read and added to: at most a second each.
func BenchmarkKeep(b *testing.B) {
	tab := tables(b)
	path := filepath.Join(b.TempDir(), "book.yaml")
	e := entry(tab, "A", "cakey")
	var text strings.Builder
	text.WriteString(head)
	for i := range 365 {
		e.Bake = i + 1
		one, err := e.entry()
		require.NoError(b, err)
		text.WriteString(one)
	}
	b.Run("read", func(b *testing.B) {
		for b.Loop() {
			if _, faults := Read(path, []byte(text.String()), tab); len(faults) > 0 {
				b.Fatal(faults)
			}
		}
	})
	b.Run("keep", func(b *testing.B) {
		for b.Loop() {
			b.StopTimer()
			require.NoError(b, os.WriteFile(path, []byte(text.String()), 0o644))
			b.StartTimer()
			if _, err := Keep(path, e, tab); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// Records however they are written are kept and come out again the same bake.
func TestRecordsAsPeopleWriteThem(t *testing.T) {
	tab := tables(t)
	for name, text := range map[string]string{
		"with returns":   strings.ReplaceAll(record, "\n", "\r\n"),
		"with a mark":    "\ufeff" + record,
		"begun":          "---\n" + record,
		"without an end": strings.TrimRight(record, "\n"),
		"folded":         strings.Replace(record, `words: "a cake: no pudding"}`, "words: >-\n      a cake:\n\n      no pudding", 1),
		"on one line":    `{baked: 2026-10-03, formula: {title: C, year: 1900, place: england, parts: [{name: custard, kind: filling, lines: [4 eggs]}]}}`,
		"spread out":     strings.ReplaceAll(record, "\nformula", "\n\n# what the page said\n\nformula"),
	} {
		t.Run(name, func(t *testing.T) {
			if name == "folded" {
				text = strings.Replace(text, "  - {by: the cook, cut: small holes, words: >-", "  - by: the cook\n    cut: small holes\n    words: >-", 1)
			}
			r, faults := bench.Read("record.yaml", []byte(text), tab)
			require.NoError(t, faults.Err(), text)
			e := entry(tab, "A", "cakey")
			e.Record = r
			path := filepath.Join(t.TempDir(), "book.yaml")
			for range 2 {
				_, err := Keep(path, e, tab)
				require.NoError(t, err)
			}
			b, err := Load(path, tab)
			require.NoError(t, err)
			require.Len(t, b.Entries, 2)
			out, ok := b.Record(1)
			require.True(t, ok)
			again, faults := bench.Read("again.yaml", out, tab)
			require.NoError(t, faults.Err(), string(out))
			require.Equal(t, r.Tastings, again.Tastings)
			require.Equal(t, r.Baked, again.Baked)
			require.Equal(t, r.Formula.Title, again.Formula.Title)
		})
	}
}

// A link to a book goes on pointing at it, and its rights stay what they were.
func TestLinkAndRightsStay(t *testing.T) {
	tab := tables(t)
	dir := t.TempDir()
	path, link := filepath.Join(dir, "book.yaml"), filepath.Join(dir, "link.yaml")
	_, err := Keep(path, entry(tab, "A", "cakey"), tab)
	require.NoError(t, err)
	require.NoError(t, os.Chmod(path, 0o600))
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here:", err)
	}
	n, err := Keep(link, entry(tab, "B", "cakey"), tab)
	require.NoError(t, err)
	require.Equal(t, 2, n)
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&fs.ModeSymlink)
	info, err = os.Stat(path)
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
	b, err := Load(path, tab)
	require.NoError(t, err)
	require.Len(t, b.Entries, 2)
}
