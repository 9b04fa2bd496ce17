// Package gotest reads what "go test -json" writes: it counts tests, keeps the
// words of those that fail, and fails a run for lines that the window library
// logs when something is wrong though every test passes.
package gotest

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// alarms are parts of lines that the window library logs: a widget touched from
// the wrong goroutine, a picture that cannot be drawn, and any other error.
var alarms = []string{"Error in Fyne call thread", "Failed to load image", "Fyne error"}

// Alarm reports whether a line is one that fails a run.
func Alarm(line string) bool {
	for _, part := range alarms {
		if strings.Contains(line, part) {
			return true
		}
	}
	return false
}

// figureMark begins what a test measured and a person should read: a test logs
// "figure: 50 kills survived".
const figureMark = "figure: "

// Counts are numbers of tests, subtests included. A package that fails without
// a failing test (it does not compile, or ends early) counts as one failed.
type Counts struct{ Passed, Failed, Skipped int }

// Add adds the counts of another run.
func (c *Counts) Add(other Counts) {
	c.Passed += other.Passed
	c.Failed += other.Failed
	c.Skipped += other.Skipped
}

// String gives the counts as the last line of a run: "12 passed, 0 failed".
func (c Counts) String() string { return fmt.Sprintf("%d passed, %d failed", c.Passed, c.Failed) }

// event is one line of test2json.
type event struct {
	Action      string
	Package     string
	ImportPath  string
	Test        string
	Output      string
	FailedBuild string
}

// key names a test; test is empty for the package itself.
type key struct{ pkg, test string }

// Report gathers one or more runs.
type Report struct {
	Counts
	Failures []string // the words of each test or package that failed
	Figures  []string // what passing tests measured, see figureMark
	Alarms   []string // lines that fail the run, with the test that wrote them

	out     io.Writer // what a person follows
	log     io.Writer // everything
	output  map[key]*strings.Builder
	alarmed map[key]bool
	failed  map[string]int // failing tests by package
}

// NewReport returns an empty report. Closing lines of packages and failing
// tests go to out as they come; all output goes to log.
func NewReport(out, log io.Writer) *Report {
	return &Report{
		out: out, log: log,
		output: map[key]*strings.Builder{}, alarmed: map[key]bool{}, failed: map[string]int{},
	}
}

// Read takes in the output of one run of "go test -json" to its end. Lines that
// are not events are kept in the log and looked at for alarms. The error is
// that of the reader.
func (r *Report) Read(run io.Reader) error {
	lines := bufio.NewReader(run)
	for {
		line, err := lines.ReadString('\n')
		if line != "" {
			r.line(line)
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

func (r *Report) line(line string) {
	var e event
	if json.Unmarshal([]byte(line), &e) != nil || e.Action == "" {
		fmt.Fprint(r.log, line)
		r.plain(line)
		return
	}
	fmt.Fprint(r.log, e.Output)
	k := key{e.Package, e.Test}
	switch e.Action {
	case "output":
		r.keep(k, e.Output)
	case "build-output":
		r.keep(key{e.ImportPath, ""}, e.Output)
	case "pass", "fail", "skip":
		r.end(k, e)
	}
}

// plain takes in a line from outside the tests.
func (r *Report) plain(line string) {
	if Alarm(line) {
		r.Alarms = append(r.Alarms, strings.TrimSpace(line))
		r.Failed++
	}
}

// keep adds output to its test. Output may come in parts of a line.
func (r *Report) keep(k key, output string) {
	kept := r.output[k]
	if kept == nil {
		kept = &strings.Builder{}
		r.output[k] = kept
	}
	kept.WriteString(output)
	if k.test == "" && closing(output) || k.test != "" && strings.Contains(output, "--- FAIL") {
		fmt.Fprint(r.out, output)
	}
}

// closing reports whether output is the line with which go test ends a package.
func closing(output string) bool {
	return strings.HasPrefix(output, "ok  \t") || strings.HasPrefix(output, "FAIL\t") || strings.HasPrefix(output, "--- FAIL")
}

// end counts a test or package that came to its end and lets its output go.
func (r *Report) end(k key, e event) {
	words := ""
	if kept := r.output[k]; kept != nil {
		words = kept.String()
		delete(r.output, k)
	}
	alarmed := r.raise(k, words)
	switch {
	case k.test == "" && e.Action == "fail" && r.failed[k.pkg] == 0:
		if built := r.output[key{e.FailedBuild, ""}]; built != nil {
			words = built.String() + words
		}
		r.fail(k, words)
	case k.test == "" && alarmed:
		r.fail(k, words)
	case k.test == "":
		return
	case e.Action == "fail" || alarmed:
		r.fail(k, words)
	case e.Action == "skip":
		r.Skipped++
	default:
		r.Passed++
		r.note(words)
	}
}

// note keeps the figures in the words of a test.
func (r *Report) note(words string) {
	for line := range strings.Lines(words) {
		if _, figure, ok := strings.Cut(line, figureMark); ok {
			r.Figures = append(r.Figures, strings.TrimSpace(figure))
		}
	}
}

// raise records the alarms in the words of a test.
func (r *Report) raise(k key, words string) bool {
	found := false
	for line := range strings.Lines(words) {
		if Alarm(line) {
			found = true
			r.Alarms = append(r.Alarms, k.String()+": "+strings.TrimSpace(line))
		}
	}
	if found {
		fmt.Fprintf(r.out, "--- ALARM: %s: the window library logged an error\n", k)
	}
	return found
}

func (r *Report) fail(k key, words string) {
	r.Failed++
	r.failed[k.pkg]++
	r.Failures = append(r.Failures, "=== "+k.String()+"\n"+words)
}

// String names a test with its package.
func (k key) String() string { return strings.TrimSpace(k.pkg + " " + k.test) }

// Shown gives the words of everything that failed, for a person to read.
func (r *Report) Shown() string {
	var text strings.Builder
	for _, failure := range r.Failures {
		text.WriteString(strings.TrimRight(failure, "\n") + "\n")
	}
	if len(r.Alarms) > 0 {
		text.WriteString("The window library logged:\n")
	}
	for _, alarm := range r.Alarms {
		text.WriteString("  " + alarm + "\n")
	}
	return text.String()
}
