package steps

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// writes is a step that writes a line and ends with err.
func writes(name, line string, err error) Step {
	return Step{Name: name, Run: func(_ context.Context, log io.Writer) error {
		fmt.Fprintln(log, line)
		return err
	}}
}

type chosen struct{ error }

func (chosen) Shown() string { return "the chosen words\n" }

func TestRunGoesOnAndNamesWhatFailed(t *testing.T) {
	var out strings.Builder
	logs := filepath.Join(t.TempDir(), "log")
	failed, err := Runner{Out: &out, Logs: logs}.Run(context.Background(), []Step{
		writes("Go vet", "all quiet", nil),
		writes("lint", "line 3 is odd", errors.New("lint found something")),
		writes("tests", "much output", chosen{errors.New("2 failed")}),
		writes("last", "done", nil),
	})
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"step 2/4 lint", "step 3/4 tests"}; !slices.Equal(failed, want) {
		t.Errorf("failed %q, want %q", failed, want)
	}
	for _, want := range []string{"step 1/4 Go vet", "line 3 is odd", "lint found something", "the chosen words", "step 4/4 last"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("output lacks %q:\n%s", want, out.String())
		}
	}
	for _, hidden := range []string{"all quiet", "much output"} {
		if strings.Contains(out.String(), hidden) {
			t.Errorf("output shows %q, which belongs in the log", hidden)
		}
	}
	log, err := os.ReadFile(filepath.Join(logs, "01-go-vet.log"))
	if err != nil || string(log) != "all quiet\n" {
		t.Errorf("the first log is %q, %v", log, err)
	}
}

func TestNeededStepStopsTheRest(t *testing.T) {
	first := writes("packages", "none", errors.New("no network"))
	first.Needed = true
	ran := false
	second := Step{Name: "tests", Run: func(context.Context, io.Writer) error { ran = true; return nil }}
	failed, err := Runner{Out: io.Discard, Logs: filepath.Join(t.TempDir(), "log")}.Run(context.Background(), []Step{first, second})
	if err != nil || len(failed) != 1 || ran {
		t.Errorf("failed %q, %v, second step ran: %v; want one failed step and no second", failed, err, ran)
	}
}

func TestTail(t *testing.T) {
	text := "a\nb\nc\nd\n"
	if got, want := Tail(text, 2), "  (2 earlier lines are in the log)\nc\nd\n"; got != want {
		t.Errorf("Tail = %q, want %q", got, want)
	}
	if got := Tail(text, 4); got != text {
		t.Errorf("Tail of a short text = %q, want it whole", got)
	}
}

func TestElapsed(t *testing.T) {
	for d, want := range map[time.Duration]string{
		400 * time.Millisecond: "0 s", 8 * time.Second: "8 s", 185 * time.Second: "3 min 05 s", 3600 * time.Second: "60 min 00 s",
	} {
		if got := Elapsed(d); got != want {
			t.Errorf("Elapsed(%v) = %q, want %q", d, got, want)
		}
	}
}
