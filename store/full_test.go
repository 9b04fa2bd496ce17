package store

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// A file that may grow no further, wherever the test runs.
func TestAFullFile(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	limit := func(pages int) func() error {
		return func() error {
			_, err := s.writer.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages))
			return err
		}
	}
	fillUp(t, s, limit(1<<20), limit(150))
}

// fillUp saves until there is no room, wants that to be said and nothing
// acknowledged to be lost, makes room and goes on.
func fillUp(t *testing.T, s *Store, makeRoom, takeRoom func() error) {
	t.Helper()
	ctx := t.Context()
	id := newClient(t, s)
	if err := takeRoom(); err != nil {
		t.Fatal(err)
	}
	body := func(i int) []byte { return []byte(strings.Repeat(fmt.Sprint(i), 3000)) }
	saved := 0
	var err error
	for saved < 1000 && err == nil {
		if _, err = s.SaveRecord(ctx, id, KindText, saved, body(saved+1)); err == nil {
			saved++
		}
	}
	wantErr(t, err, ErrDiskFull)
	if _, err := s.SaveRecord(ctx, id, KindText, saved, body(saved+1)); !errors.Is(err, ErrDiskFull) {
		t.Errorf("the second try: %v", err)
	}
	if history := must(s.RecordHistory(ctx, id, KindText))(t); len(history) != saved || saved == 0 {
		t.Errorf("%d were acknowledged, %d are there", saved, len(history))
	}
	if err := makeRoom(); err != nil {
		t.Fatal(err)
	}
	must(s.SaveRecord(ctx, id, KindText, saved, body(saved+1)))(t)
	for v := 1; v <= saved+1; v++ {
		if r := must(s.RecordAt(ctx, id, KindText, v))(t); string(r.Body) != string(body(v)) {
			t.Errorf("version %d is not what was saved", v)
		}
	}
	if err := s.Check(ctx); err != nil {
		t.Error(err)
	}
}
