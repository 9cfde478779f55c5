// Assize weighs old receipts and says how they are likely to turn out.
package main

import (
	"os"

	"assize/cmd/internal/cli"
)

func main() { os.Exit(int(cli.Main(os.Args[1:], cli.Here()))) }
