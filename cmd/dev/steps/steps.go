// Package steps runs a list of named steps, shows how far it is, keeps what
// each step writes, and names the steps that fail at the end.
package steps

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// heartbeat is how often a running step says that it still runs.
const heartbeat = 20 * time.Second

// Step is one named piece of work.
type Step struct {
	Name string
	// Run does the work and writes all its output to log.
	Run func(ctx context.Context, log io.Writer) error
	// Needed says that nothing after it makes sense when it fails.
	Needed bool
}

// Shown is an error that knows what a person should read of the log. Without
// it the end of the log is shown.
type Shown interface {
	error
	Shown() string
}

// Runner runs steps.
type Runner struct {
	Out  io.Writer
	Logs string // the folder for the logs; it is made anew
}

// Run runs the steps in order and returns those that failed, by name. A failing
// step does not stop the others unless it is needed or ctx has ended. The error
// is that of making the logs.
func (r Runner) Run(ctx context.Context, list []Step) (failed []string, err error) {
	if err := os.RemoveAll(r.Logs); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(r.Logs, 0o750); err != nil {
		return nil, err
	}
	for i, step := range list {
		name := fmt.Sprintf("step %d/%d %s", i+1, len(list), step.Name)
		ok, err := r.one(ctx, name, filepath.Join(r.Logs, fileName(i+1, step.Name)), step)
		if err != nil {
			return failed, err
		}
		if ok {
			continue
		}
		failed = append(failed, name)
		if step.Needed || ctx.Err() != nil {
			break
		}
	}
	return failed, nil
}

// one runs a single step and tells how it went.
func (r Runner) one(ctx context.Context, name, logName string, step Step) (ok bool, err error) {
	log, err := os.OpenFile(logName, os.O_CREATE|os.O_RDWR|os.O_TRUNC, 0o600)
	if err != nil {
		return false, err
	}
	defer log.Close()
	fmt.Fprintf(r.Out, "%s\n", name)
	start := time.Now()
	stop := Beat(r.Out, name)
	failure := step.Run(ctx, log)
	stop()
	elapsed := Elapsed(time.Since(start))
	if failure == nil {
		fmt.Fprintf(r.Out, "  done in %s\n", elapsed)
		return true, nil
	}
	text, err := words(failure, logName)
	if err != nil {
		return false, err
	}
	fmt.Fprintf(r.Out, "%s  failed after %s: %v\n  all of its output: %s\n", text, elapsed, failure, logName)
	return false, nil
}

// Beat says now and then that something still runs, until stop is called.
func Beat(out io.Writer, name string) (stop func()) {
	start := time.Now()
	done, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		ticker := time.NewTicker(heartbeat)
		defer ticker.Stop()
		for {
			select {
			case <-done:
				return
			case <-ticker.C:
				fmt.Fprintf(out, "  %s: %s so far\n", name, Elapsed(time.Since(start)))
			}
		}
	}()
	return func() { close(done); <-ended }
}

// words returns what to show of a failing step.
func words(failure error, logName string) (string, error) {
	var shown Shown
	if errors.As(failure, &shown) {
		return shown.Shown(), nil
	}
	log, err := os.ReadFile(logName)
	if err != nil {
		return "", err
	}
	return Tail(string(log), 120), nil
}

// Tail returns the last lines of a text, with a word about those left out.
func Tail(text string, count int) string {
	lines := strings.SplitAfter(text, "\n")
	if lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	if len(lines) <= count {
		return strings.Join(lines, "")
	}
	left := len(lines) - count
	return fmt.Sprintf("  (%d earlier lines are in the log)\n", left) + strings.Join(lines[left:], "")
}

// Elapsed gives a time as a person says it: "8 s", "3 min 05 s".
func Elapsed(d time.Duration) string {
	seconds := int(d.Round(time.Second) / time.Second)
	if seconds < 60 {
		return fmt.Sprintf("%d s", seconds)
	}
	return fmt.Sprintf("%d min %02d s", seconds/60, seconds%60)
}

// fileName turns the name of a step into that of its log.
func fileName(number int, name string) string {
	plain := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(name))
	return fmt.Sprintf("%02d-%s.log", number, plain)
}
