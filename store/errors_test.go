package store

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"testing"
)

// The words on the screen are for people: no word of the trade of programs, and
// each failure has its own.
func TestPlainWords(t *testing.T) {
	technical := regexp.MustCompile(`(?i)sql|database|transaction|constraint|nil|errno|rollback|schema|0x|store:|invalid`)
	seen := map[string]error{}
	all := []error{errors.New("disk I/O error (10)"), context.Canceled}
	for kind := range plainWords {
		all = append(all, fmt.Errorf("saving: %w", fail(kind, errors.New("SQLITE_XYZ in schema"))))
	}
	for _, err := range all {
		words := Plain(err)
		if len(words) < 40 || technical.MatchString(words) {
			t.Errorf("%v: %q", err, words)
		}
		if other, ok := seen[words]; ok {
			t.Errorf("%v and %v have the same words", err, other)
		}
		seen[words] = err
	}
	if Plain(nil) != "" {
		t.Error("no error has words")
	}
	err := fail(ErrInUse, errLocked)
	if !errors.Is(err, ErrInUse) || !errors.Is(err, errLocked) || err.Error() != "store: file is in use: lock is held elsewhere" {
		t.Errorf("for the log: %v", err)
	}
}

func TestACancelledSaveKeepsNothing(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := s.SaveDraft(ctx, id, FormIntake, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	_, err := s.Draft(t.Context(), id, FormIntake)
	wantErr(t, err, ErrNotFound)
	must(s.SaveDraft(t.Context(), id, FormIntake, nil))(t)
}
