package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"handbreadth/cmd/dev/gotest"
	"handbreadth/cmd/dev/steps"
)

// checks is one run of every check.
type checks struct {
	environment []string // language, empty home
	counts      gotest.Counts
	figures     []string           // what the tests measured
	program     <-chan buildResult // the build that runs behind the quick checks
}

// test runs every check and prints the counts last, or the failing steps.
func test(ctx context.Context, arguments []string) error {
	flags := flag.NewFlagSet("test", flag.ContinueOnError)
	if err := flags.Parse(arguments); err != nil {
		return errTold
	}
	environment, err := apart()
	if err != nil {
		return err
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	c := &checks{environment: environment}
	return finish(ctx, os.Stdout, c, c.steps())
}

// steps lists the checks. The program builds in the background from the second
// step on; steps that would compile the same C code come after it.
func (c *checks) steps() []steps.Step {
	return []steps.Step{
		{Name: "system packages", Run: c.packages, Needed: true},
		{Name: "formatting", Run: c.counted(c.formatting)},
		{Name: "import rules", Run: c.importRules},
		{Name: "unit, property and store tests", Run: c.unit},
		{Name: "batch without cgo", Run: c.counted(c.batch)},
		{Name: "the program builds", Run: c.counted(c.awaitProgram)},
		{Name: "go vet", Run: c.counted(c.vet)},
		{Name: "staticcheck", Run: c.counted(c.staticcheck)},
		{Name: "gosec", Run: c.counted(c.security)},
		{Name: "race detector", Run: c.race},
		{Name: fmt.Sprintf("the store killed %d times", usualKills), Run: c.kills(usualKills, killTests)},
		{Name: "fuzzing, " + shortFuzz.String() + " a parser", Run: c.fuzzAll},
		{Name: "journey through the program", Run: c.journey},
	}
}

// finish runs the steps and says how it went: the counts last where all is
// well, the failing steps last where it is not.
func finish(ctx context.Context, out io.Writer, c *checks, list []steps.Step) error {
	began := time.Now()
	failed, err := steps.Runner{Out: out, Logs: logFolder}.Run(ctx, list)
	if err != nil {
		return err
	}
	if c.counts.Skipped > 0 {
		fmt.Fprintf(out, "%d skipped\n", c.counts.Skipped)
	}
	for _, figure := range c.figures {
		fmt.Fprintf(out, "  %s\n", figure)
	}
	fmt.Fprintf(out, "Finished in %s.\n%s\n", steps.Elapsed(time.Since(began)), c.counts)
	if len(failed) == 0 {
		return nil
	}
	for _, name := range failed {
		fmt.Fprintf(out, "FAILED: %s\n", name)
	}
	return errTold
}

// counted counts a step without tests of its own as one check.
func (c *checks) counted(work func(context.Context, io.Writer) error) func(context.Context, io.Writer) error {
	return func(ctx context.Context, log io.Writer) error {
		err := work(ctx, log)
		if err != nil {
			c.counts.Failed++
		} else {
			c.counts.Passed++
		}
		return err
	}
}

// testFailure is a failed run of tests with the words of what failed.
type testFailure struct {
	error
	words string
}

// Shown returns the words of the tests that failed.
func (f testFailure) Shown() string { return f.words }

// goTest runs go test with the arguments, counts, and fails for alarms too.
func (c *checks) goTest(ctx context.Context, log io.Writer, environment []string, arguments ...string) error {
	arguments = append([]string{"test", "-json", "-vet=off"}, arguments...)
	command := prepared(ctx, environment, "go", arguments...)
	output, input := io.Pipe()
	command.Stdout, command.Stderr = input, input
	report := gotest.NewReport(os.Stdout, log)
	read := make(chan error, 1)
	go func() { read <- report.Read(output) }()
	failure := command.Run()
	input.Close()
	if err := <-read; err != nil {
		return err
	}
	err := verdict(report, failure)
	if err != nil && report.Failed == 0 {
		report.Failed++ // the run itself
	}
	c.counts.Add(report.Counts)
	c.figures = append(c.figures, report.Figures...)
	return err
}

// verdict turns a report and the end of the go command into the step's error.
func verdict(report *gotest.Report, failure error) error {
	switch {
	case report.Failed > 0:
		return testFailure{fmt.Errorf("%s", report.Counts), report.Shown()}
	case failure != nil:
		return failure
	case report.Passed == 0:
		return errors.New("no test ran")
	}
	return nil
}
