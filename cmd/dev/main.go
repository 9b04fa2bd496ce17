// Command dev is the contributor's helper: it gets a fresh machine ready,
// builds and opens the program, runs every check, and measures. It uses the
// standard library only, so that it runs before anything else is there.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// command is one word after "go run ./cmd/dev".
type command struct {
	name, about string
	run         func(ctx context.Context, arguments []string) error
}

// commands lists what the helper can do, in the order of the help.
func commands() []command {
	return []command{
		{"start", "get ready, build, and open the program; -demo opens the demo practice", start},
		{"test", "run every check, as continuous integration does", test},
		{"verify", "run the long checks: more random cases, kills and fuzzing; -short for a taste", verify},
		{"bench", "measure against floors taken in the same run", bench},
		{"audit", "look for known vulnerabilities in what the program uses (needs a network)", audit},
		{"pictures", "make the pictures of the README anew, by the program itself", pictures},
		{"drawings", "write contact sheets of the hand measures to a folder", drawings},
		{"package", "build the program for handing out", packageProgram},
	}
}

// errTold is returned where everything that is to be said has been printed.
var errTold = errors.New("already told")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	err := dispatch(ctx, os.Stdout, os.Args[1:])
	stop()
	if err == nil {
		return
	}
	if !errors.Is(err, errTold) {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(1)
}

// dispatch runs the command that the arguments name, in the root of the module.
func dispatch(ctx context.Context, out io.Writer, arguments []string) error {
	if len(arguments) == 0 || isHelp(arguments[0]) {
		help(out)
		return nil
	}
	for _, c := range commands() {
		if c.name != arguments[0] {
			continue
		}
		if err := enterRoot(); err != nil {
			return err
		}
		return c.run(ctx, arguments[1:])
	}
	help(os.Stderr)
	return fmt.Errorf("there is no command %q", arguments[0])
}

func isHelp(word string) bool {
	return word == "help" || word == "-h" || word == "-help" || word == "--help"
}

func help(out io.Writer) {
	fmt.Fprint(out, "Usage: go run ./cmd/dev COMMAND\n\n")
	for _, c := range commands() {
		fmt.Fprintf(out, "  %-9s %s\n", c.name, c.about)
	}
	fmt.Fprintf(out, "  %-9s %s\n", "help", "show this")
}
