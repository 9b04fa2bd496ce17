package gotest

import (
	"encoding/json"
	"strings"
	"testing"
)

// stream writes events as go test does, one a line.
func stream(t *testing.T, events ...event) string {
	t.Helper()
	var lines strings.Builder
	for _, e := range events {
		line, err := json.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		lines.Write(append(line, '\n'))
	}
	return lines.String()
}

func read(t *testing.T, run string) (report *Report, out, log string) {
	t.Helper()
	var outText, logText strings.Builder
	report = NewReport(&outText, &logText)
	if err := report.Read(strings.NewReader(run)); err != nil {
		t.Fatal(err)
	}
	return report, outText.String(), logText.String()
}

func said(pkg, test, output string) event {
	return event{Action: "output", Package: pkg, Test: test, Output: output}
}

func ended(action, pkg, test string) event {
	return event{Action: action, Package: pkg, Test: test}
}

func TestCounts(t *testing.T) {
	report, out, log := read(t, stream(t,
		said("m/a", "TestOne", "quiet words\n"), ended("pass", "m/a", "TestOne/sub"), ended("pass", "m/a", "TestOne"),
		ended("skip", "m/a", "TestTwo"), said("m/a", "", "ok  \tm/a\t0.01s\n"), ended("pass", "m/a", ""),
		said("m/b", "TestBad", "    b_test.go:3: got 1, want 2\n"), said("m/b", "TestBad", "--- FAIL: TestBad (0.00s)\n"),
		ended("fail", "m/b", "TestBad"), said("m/b", "", "FAIL\tm/b\t0.01s\n"), ended("fail", "m/b", "")))
	if want := (Counts{Passed: 2, Failed: 1, Skipped: 1}); report.Counts != want {
		t.Errorf("counts %+v, want %+v", report.Counts, want)
	}
	if got, want := report.Counts.String(), "2 passed, 1 failed"; got != want {
		t.Errorf("last line %q, want %q", got, want)
	}
	if want := "ok  \tm/a\t0.01s\n--- FAIL: TestBad (0.00s)\nFAIL\tm/b\t0.01s\n"; out != want {
		t.Errorf("followed %q, want %q", out, want)
	}
	if !strings.Contains(log, "quiet words") || !strings.Contains(report.Shown(), "got 1, want 2") {
		t.Errorf("log %q and shown %q lack the words of the tests", log, report.Shown())
	}
	if strings.Contains(report.Shown(), "quiet words") {
		t.Error("words of a passing test are shown")
	}
}

// A passing test that makes the window library complain fails the run, even
// when the line arrives in parts.
func TestAlarmFailsAPassingTest(t *testing.T) {
	for _, line := range []string{
		"2026/03/02 *** Error in Fyne call thread, this should have been called in fyne.Do[AndWait] ***\n",
		"2026/03/02 Fyne error:  Failed to load image\n",
		"2026/03/02 Fyne error:  no such theme\n",
	} {
		half := len(line) / 2
		report, out, _ := read(t, stream(t,
			said("m/ui", "TestForm", line[:half]), said("m/ui", "TestForm", line[half:]), ended("pass", "m/ui", "TestForm")))
		if report.Failed != 1 || report.Passed != 0 || len(report.Alarms) != 1 {
			t.Errorf("%q: %+v with alarms %q, want one failed", line, report.Counts, report.Alarms)
		}
		if !strings.Contains(out, "m/ui TestForm") || !strings.Contains(report.Shown(), strings.TrimSpace(line)) {
			t.Errorf("%q: the test is not named in %q and %q", line, out, report.Shown())
		}
	}
}

func TestAlarmOutsideTests(t *testing.T) {
	report, _, _ := read(t, "2026/03/02 Fyne error:  late\n"+
		stream(t, said("m/ui", "", "Failed to load image\n"), ended("pass", "m/ui", "")))
	if report.Failed != 2 {
		t.Errorf("%d failed, want one for the loose line and one for the package", report.Failed)
	}
}

func TestHarmlessLinesRaiseNoAlarm(t *testing.T) {
	for _, line := range []string{"go: downloading fyne.io/fyne/v2 v2.7.1", "Fyne starts", "error", ""} {
		if Alarm(line) {
			t.Errorf("%q raises an alarm", line)
		}
	}
}

// A package that does not compile, and one that ends early, count as failed and
// show why.
func TestPackageFailsWithoutATest(t *testing.T) {
	report, _, _ := read(t, stream(t,
		event{Action: "build-output", ImportPath: "m/c", Output: "c.go:1: undefined: x\n"},
		event{Action: "build-fail", ImportPath: "m/c"},
		said("m/c", "", "FAIL\tm/c [build failed]\n"),
		event{Action: "fail", Package: "m/c", FailedBuild: "m/c"},
		said("m/d", "", "panic: boom\n"), ended("fail", "m/d", "")))
	if report.Failed != 2 || report.Passed != 0 {
		t.Errorf("%+v, want two failed", report.Counts)
	}
	for _, words := range []string{"undefined: x", "panic: boom"} {
		if !strings.Contains(report.Shown(), words) {
			t.Errorf("shown %q lacks %q", report.Shown(), words)
		}
	}
}

func TestFiguresOfPassingTests(t *testing.T) {
	report, _, _ := read(t, stream(t,
		said("p", "TestA", "    a_test.go:7: figure: 50 kills survived\n"), said("p", "TestA", "    a_test.go:8: seed 7\n"), ended("pass", "p", "TestA"),
		said("p", "TestB", "    b_test.go:7: figure: 3 kills survived\n"), ended("fail", "p", "TestB"),
	))
	if len(report.Figures) != 1 || report.Figures[0] != "50 kills survived" {
		t.Errorf("figures %q", report.Figures)
	}
}
