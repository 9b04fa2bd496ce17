package task

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
)

// background starts a test program and a runner whose log is kept.
func background(t *testing.T) (*Background, *bytes.Buffer) {
	t.Helper()
	test.NewTempApp(t)
	var log bytes.Buffer
	return &Background{Log: slog.New(slog.NewTextHandler(&log, nil)), Clock: &ManualClock{}}, &log
}

// both runs a check with the background runner and with the inline one.
func both(t *testing.T, check func(t *testing.T, r Runner)) {
	t.Run("background", func(t *testing.T) {
		b, _ := background(t)
		check(t, b)
	})
	t.Run("inline", func(t *testing.T) { check(t, Inline{}) })
}

// outcome is what a job handed over.
type outcome struct {
	value string
	err   error
}

func await(r Runner, work func(context.Context) (string, error)) outcome {
	handed := make(chan outcome, 2)
	Run(r, "a try", work, func(value string, err error) { handed <- outcome{value, err} })
	return <-handed
}

func TestValueIsHandedOver(t *testing.T) {
	both(t, func(t *testing.T, r Runner) {
		got := await(r, func(context.Context) (string, error) { return "ready", nil })
		if got.value != "ready" || got.err != nil {
			t.Errorf("handed over %q and %v", got.value, got.err)
		}
	})
}

func TestErrorComesInPlainWordsWithItsCause(t *testing.T) {
	cause := fmt.Errorf("open x: %w", fs.ErrPermission)
	both(t, func(t *testing.T, r Runner) {
		got := await(r, func(context.Context) (string, error) { return "half done", cause })
		var failure *Failure
		if !errors.As(got.err, &failure) || failure.Words != wordsAccess {
			t.Fatalf("handed over %v", got.err)
		}
		if !errors.Is(got.err, fs.ErrPermission) {
			t.Error("the cause is lost")
		}
		if got.value != "" {
			t.Errorf("value %q beside an error", got.value)
		}
	})
}

func TestPanicBecomesAFailure(t *testing.T) {
	both(t, func(t *testing.T, r Runner) {
		got := await(r, func(context.Context) (string, error) { panic("Ottoline") })
		if got.err == nil || strings.Contains(got.err.Error(), "Ottoline") {
			t.Errorf("handed over %v", got.err)
		}
	})
}

func TestCancelStopsTheWork(t *testing.T) {
	b, log := background(t)
	handed := make(chan error, 1)
	started := make(chan struct{})
	cancel := b.Start(Job{
		Label: "waiting",
		Work: func(ctx context.Context) error {
			close(started)
			<-ctx.Done()
			return ctx.Err()
		},
		Done: func(err error) { handed <- err },
	})
	<-started
	cancel()
	if err := <-handed; !Canceled(err) || err.Error() != wordsStopped {
		t.Errorf("handed over %v", err)
	}
	b.Wait()
	if log.Len() > 0 {
		t.Errorf("what was stopped on purpose is no error: %s", log)
	}
}

func TestWordsOfTheProgramAreUsed(t *testing.T) {
	b, _ := background(t)
	b.Words = func(error) string { return "in other words" }
	got := await(b, func(context.Context) (string, error) { return "", errors.New("x") })
	if got.err.Error() != "in other words" {
		t.Errorf("said %q", got.err)
	}
	inline := await(Inline{Words: b.Words}, func(context.Context) (string, error) { return "", errors.New("x") })
	if inline.err.Error() != "in other words" {
		t.Errorf("inline said %q", inline.err)
	}
}

// The log names the kinds of errors and never their texts, which may hold what
// a client said.
func TestLogHoldsNothingOfTheClient(t *testing.T) {
	b, log := background(t)
	problem := unit.Problem{Field: "name", Given: "Ottoline Farrow", Accepted: "a name"}
	got := await(b, func(context.Context) (string, error) {
		return "", errors.Join(fmt.Errorf("saving Ottoline: %w", problem), fs.ErrNotExist)
	})
	b.Wait()
	if strings.Contains(log.String(), "Ottoline") || strings.Contains(log.String(), "Farrow") {
		t.Errorf("the log names the client: %s", log)
	}
	for _, wanted := range []string{"a try", "unit.Problem"} {
		if !strings.Contains(log.String(), wanted) {
			t.Errorf("the log lacks %q: %s", wanted, log)
		}
	}
	if !strings.Contains(got.err.Error(), "Ottoline Farrow") {
		t.Errorf("the person at the desk is not told what was given: %v", got.err)
	}
}

func TestWords(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{nil, ""},
		{&Failure{Words: "as said"}, "as said"},
		{fmt.Errorf("outer: %w", &Failure{Words: "as said"}), "as said"},
		{context.DeadlineExceeded, wordsStopped},
		{fs.ErrExist, wordsExists},
		{&fs.PathError{Op: "open", Path: "x", Err: fs.ErrNotExist}, wordsMissing},
		{unit.Problems{{Field: "weight", Given: "x", Accepted: "a weight"}}, `weight: given "x"; accepted: a weight`},
		{errors.New("sql: bad"), wordsUnknown},
	} {
		if got := Words(c.err); got != c.want {
			t.Errorf("words for %v: %q, want %q", c.err, got, c.want)
		}
	}
}

// progressed runs work that lasts until the clock has advanced, and returns
// what was told of its progress.
func progressed(t *testing.T, pass time.Duration) []Progress {
	t.Helper()
	b, _ := background(t)
	clock := b.Clock.(*ManualClock)
	var told []Progress
	b.OnProgress = func(p Progress) { told = append(told, p) }
	handed, goOn := make(chan struct{}), make(chan struct{})
	b.Start(Job{
		Label: "Opening the client file",
		Work:  func(context.Context) error { <-goOn; return nil },
		Done:  func(error) { close(handed) },
	})
	clock.Advance(pass)
	close(goOn)
	<-handed
	clock.Advance(time.Hour)
	return told
}

func TestShortWorkShowsNoProgress(t *testing.T) {
	if told := progressed(t, ProgressAfter-1); len(told) != 0 {
		t.Errorf("told %+v", told)
	}
}

func TestLongWorkShowsProgressAndItsEnd(t *testing.T) {
	told := progressed(t, ProgressAfter)
	if len(told) != 2 || told[0].Ended || !told[1].Ended {
		t.Fatalf("told %+v", told)
	}
	if told[0].ID != told[1].ID || told[0].Label != "Opening the client file" || told[0].Cancel == nil {
		t.Errorf("told %+v", told)
	}
}

func TestProgressCanCancel(t *testing.T) {
	b, _ := background(t)
	handed := make(chan error, 1)
	b.OnProgress = func(p Progress) {
		if !p.Ended {
			p.Cancel()
		}
	}
	b.Start(Job{
		Label: "long",
		Work:  func(ctx context.Context) error { <-ctx.Done(); return ctx.Err() },
		Done:  func(err error) { handed <- err },
	})
	b.Clock.(*ManualClock).Advance(ProgressAfter)
	if err := <-handed; !Canceled(err) {
		t.Errorf("handed over %v", err)
	}
}
