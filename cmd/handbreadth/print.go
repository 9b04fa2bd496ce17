package main

import (
	"context"
	"errors"
	"os/exec"
	"runtime"
	"time"

	"handbreadth/ui/task"
)

// viewerPatience is how long a program may take to refuse a paper; one that is
// still there after that has opened it.
const viewerPatience = 3 * time.Second

// opener is a command that shows or prints a file named last.
type opener []string

// openers returns what a system opens papers with, the best first.
func openers(system string) []opener {
	switch system {
	case "windows":
		return []opener{{"rundll32", "url.dll,FileProtocolHandler"}}
	case "darwin":
		return []opener{{"open"}, {"lp"}}
	}
	return []opener{{"xdg-open"}, {"lp"}}
}

var errNoOpener = errors.New("no program opens or prints a PDF")

// handOver gives a paper to the first program that takes it. The error is a
// task.Failure.
func handOver(ctx context.Context, path string) error {
	trouble := errNoOpener
	for _, o := range openers(runtime.GOOS) {
		err := o.open(ctx, path)
		if err == nil {
			return nil
		}
		trouble = errors.Join(trouble, err)
	}
	return &task.Failure{
		Words: "There is no program on this computer that shows or prints a PDF. Save the handout as a file instead, and print it from there.",
		Cause: trouble,
	}
}

func (o opener) open(ctx context.Context, path string) error {
	program, err := exec.LookPath(o[0])
	if err != nil {
		return err
	}
	// #nosec G204 -- the program is one of those named in this file, the path is that of our own paper
	command := exec.Command(program, append(o[1:len(o):len(o)], path)...)
	if err := command.Start(); err != nil {
		return err
	}
	ended := make(chan error, 1)
	go func() { ended <- command.Wait() }()
	select {
	case err := <-ended:
		return err
	case <-time.After(viewerPatience):
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
