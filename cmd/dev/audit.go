package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"strings"
)

// vulnerabilityCheck is the pinned checker of the Go project.
const vulnerabilityCheck = "golang.org/x/vuln/cmd/govulncheck@v1.9.0"

// audit looks for known vulnerabilities in the code that the program reaches.
func audit(ctx context.Context, _ []string) error {
	var output bytes.Buffer
	both := io.MultiWriter(os.Stdout, &output)
	err := run(ctx, both, os.Environ(), "go", "run", vulnerabilityCheck, "./...")
	if err != nil && withoutNetwork(output.String()) {
		return errors.New("\nThe audit could not ask for the list of known vulnerabilities: there is no way to its server from here.\n" +
			"Nothing was checked. Run it again on a machine with a network")
	}
	return err
}

// withoutNetwork reports whether the checker, or the go command that fetches it,
// says that it could not reach its server. Words of findings do not count.
func withoutNetwork(output string) bool {
	for line := range strings.Lines(output) {
		if strings.HasPrefix(line, "govulncheck: fetching vulnerabilities") {
			return true
		}
		if strings.HasPrefix(line, "go: ") && (strings.Contains(line, "dial tcp") || strings.Contains(line, "proxyconnect")) {
			return true
		}
	}
	return false
}
