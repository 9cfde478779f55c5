package cli

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A book of 1,000 receipts is assembled in at most a second, the sheets set out
// as text with it.
func BenchmarkAssembleBook(b *testing.B) {
	const demo = "../../../testdata/demo/millrace"
	dir := b.TempDir()
	keep := func(from, to string, change func(string) string) {
		text, err := os.ReadFile(filepath.Join(demo, from))
		if err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, to), []byte(change(string(text))), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	same := func(s string) string { return s }
	for _, name := range []string{"book.yaml", "kitchen.yaml", "paste-no-1.yaml", "paste-no-3.yaml"} {
		keep(name, name, same)
	}
	for i := range 1000 {
		name := []string{"rich-lemon-pudding", "seville-orange-tart", "lemon-cheesecakes", "baked-custard"}[i%4]
		keep(name+".yaml", fmt.Sprintf("%s-%d.yaml", name, i), func(text string) string {
			lines := strings.Split(text, "\n")
			for n, l := range lines {
				switch {
				case strings.HasPrefix(l, "title:"):
					lines[n] = fmt.Sprintf("%s %d", l, i)
				case strings.HasPrefix(l, "also:"):
					lines[n] = ""
				}
			}
			return strings.Join(lines, "\n")
		})
	}
	for b.Loop() {
		var out, problems bytes.Buffer
		if code := Main([]string{"assemble", dir}, Session{Out: &out, Err: &problems, Env: func(string) string { return "" }}); code != 0 {
			b.Fatal(problems.String())
		}
	}
}
