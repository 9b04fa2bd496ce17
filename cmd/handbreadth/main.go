// Command handbreadth is the program: it opens the window, wires the screens to
// the practice's file and the papers, and shows them.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
)

func main() {
	options, err := readFlags(os.Args[1:], os.Stderr)
	if errors.Is(err, flag.ErrHelp) {
		return
	}
	if err == nil {
		err = run(options)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
