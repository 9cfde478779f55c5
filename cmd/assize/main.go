// Assize weighs old receipts and says how they are likely to turn out.
package main

import (
	"os"
	"runtime/debug"

	"assize/cmd/internal/cli"
)

// rarely is how far the heap may grow, in hundredths of what is in use, before
// it is gathered up. A run is short: a book of a thousand receipts is assembled
// a quarter sooner so, in 140 MB at most.
const rarely = 400

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(rarely)
	}
	os.Exit(int(cli.Main(os.Args[1:], cli.Here())))
}
