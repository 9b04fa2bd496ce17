package main

import (
	"bytes"
	"context"
	"errors"
	"io"
)

// buildResult is how a build in the background went.
type buildResult struct {
	output []byte
	err    error
}

// buildBehind starts to build the program. Most of a first build is C code on
// one processor, which leaves the others free for the quick checks.
func (c *checks) buildBehind(ctx context.Context) <-chan buildResult {
	done := make(chan buildResult, 1)
	go func() {
		var output bytes.Buffer
		_, err := buildProgram(ctx, &output, c.environment)
		done <- buildResult{output.Bytes(), err}
	}()
	return done
}

// awaitProgram waits for the build in the background.
func (c *checks) awaitProgram(_ context.Context, log io.Writer) error {
	result := <-c.program
	_, err := log.Write(result.output)
	return errors.Join(result.err, err)
}
