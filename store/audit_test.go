package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"handbreadth/domain/unit"
)

// words gives the whole trail of a client, or of all, the earliest first.
func trailWords(t *testing.T, s *Store, id ClientID) []string {
	t.Helper()
	entries := must(s.Trail(t.Context(), TrailQuery{Client: id, Limit: 1000}))(t)
	slices.Reverse(entries)
	var words []string
	for _, e := range entries {
		words = append(words, e.Words())
	}
	return words
}

func TestEverythingDoneIsInTheTrail(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	f := fillClient(t, s, func(column string) []byte { return []byte(column) })
	id := f.client.ID
	for _, err := range []error{
		s.MarkOpened(ctx, id),
		s.SetNextVisit(ctx, id, visitDay),
		s.ArchiveClient(ctx, id),
		s.UnarchiveClient(ctx, id),
		s.DiscardDraft(ctx, id, FormIntake),
		s.DiscardDraft(ctx, id, FormIntake), // nothing is there any more, so nothing is noted
		s.Note(ctx, Exported, id, Detail{What: "visit_record"}),
		s.DeleteClient(ctx, id),
		s.PutSetting(ctx, "practice", nil),
		s.Note(ctx, Unlocked, "", Detail{}),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	want := []string{
		"Created", "Changed: contact 1", "Changed: text 1", "Changed: health 1", "Changed: answers 1", "Changed: draft",
		"Changed: visit", "Changed: plan 1", "Printed: handout", "Opened", "Changed: next visit", "Changed: archived",
		"Changed: unarchived", "Changed: draft discarded", "Exported: visit record", "Deleted",
	}
	if got := trailWords(t, s, id); !slices.Equal(got, want) {
		t.Errorf("the client's trail is\n%q, want\n%q", got, want)
	}
	whole := append(append([]string{"Begun"}, want...), "Changed: practice 1", "Unlocked")
	if got := trailWords(t, s, ""); !slices.Equal(got, whole) {
		t.Errorf("the whole trail is\n%q, want\n%q", got, whole)
	}
	state := must(s.CheckTrail(ctx))(t)
	if state.Entries != int64(len(whole)) || !state.Last.After(state.First) {
		t.Errorf("state %+v", state)
	}
}

// What fails leaves no entry, because both are one transaction.
func TestWhatFailedIsNotInTheTrail(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	before := trailWords(t, s, "")
	_, err := s.SaveRecord(ctx, id, KindText, 3, nil)
	wantErr(t, err, ErrConflict)
	wantErr(t, s.MarkOpened(ctx, "nobody"), ErrNotFound)
	wantErr(t, s.DeleteClient(ctx, "nobody"), ErrNotFound)
	for _, about := range []Detail{{What: "Ottoline Quill"}, {What: "/home/ottoline"}} {
		var problem unit.Problem
		if err := s.Note(ctx, Exported, id, about); !errors.As(err, &problem) {
			t.Errorf("%+v may be noted: %v", about, err)
		}
	}
	if after := trailWords(t, s, ""); !slices.Equal(before, after) {
		t.Errorf("the trail is %q, was %q", after, before)
	}
}

func TestTypingIsOneEntryASitting(t *testing.T) {
	now := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	s := mustOpen(t, newPath(t), Options{Clock: func() time.Time { return now }})
	id := newClient(t, s)
	for _, row := range []struct {
		pause time.Duration
		want  int
	}{{0, 1}, {time.Second, 1}, {59 * time.Minute, 1}, {61 * time.Minute, 2}, {time.Minute, 2}, {-time.Hour, 3}, {time.Minute, 3}} {
		now = now.Add(row.pause)
		must(s.SaveDraft(t.Context(), id, FormIntake, []byte("typed")))(t)
		got := 0
		for _, words := range trailWords(t, s, id) {
			if words == "Changed: draft" {
				got++
			}
		}
		if got != row.want {
			t.Errorf("after a pause of %v: %d entries, want %d", row.pause, got, row.want)
		}
	}
}

func TestTheTrailIsReadInPages(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	for range 25 {
		if err := s.MarkOpened(t.Context(), id); err != nil {
			t.Fatal(err)
		}
	}
	var numbers []int64
	before := int64(0)
	for {
		page := must(s.Trail(t.Context(), TrailQuery{Before: before, Limit: 10}))(t)
		if len(page) == 0 {
			break
		}
		for _, e := range page {
			numbers = append(numbers, e.Number)
		}
		before = page[len(page)-1].Number
	}
	for i, n := range numbers {
		if want := int64(len(numbers) - i); n != want {
			t.Fatalf("place %d has entry %d, want %d", i, n, want)
		}
	}
	if len(numbers) != 27 { // the beginning, the client and the openings
		t.Errorf("%d entries", len(numbers))
	}
	if _, err := s.Trail(t.Context(), TrailQuery{}); err == nil {
		t.Error("a page without a size is read")
	}
}

func TestTheTrailRefusesToBeChanged(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	newClient(t, s)
	for _, statement := range []string{
		"UPDATE audit SET at = '2020'", "UPDATE audit SET body = NULL", "DELETE FROM audit", "DELETE FROM audit WHERE number = 2",
		"UPDATE audit_head SET entries = entries - 1", "DELETE FROM audit_head",
	} {
		_, err := s.writer.Exec(statement)
		wantErr(t, explain(err), ErrImmutable)
	}
	must(s.CheckTrail(t.Context()))(t)
}

// Nobody who looks at the file learns from the trail what it says.
func TestTheTrailIsSealedAndHasNoNames(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{Sealer: boundSealer{}})
	id := newClient(t, s)
	if err := s.Note(t.Context(), Exported, id, Detail{What: "plantedpaper"}); err != nil {
		t.Fatal(err)
	}
	if got := trailWords(t, s, id); !slices.Contains(got, "Exported: plantedpaper") {
		t.Errorf("the trail is %q", got)
	}
	if bytes.Contains(allBytes(t, path), []byte("plantedpaper")) {
		t.Error("a detail is readable in the file")
	}
	var ids int
	if err := s.reader.Get(&ids, "SELECT count(*) FROM audit WHERE instr(subject, ?) > 0", id); err != nil || ids > 0 {
		t.Errorf("%d entries have the client's id (%v)", ids, err)
	}
}

// tampering is a change by somebody who has the file and no key: the guards are
// taken away first.
type tampering struct {
	statements []string
	broken     int64 // the place to be named
}

// guardsAway are the statements that take the guards of the trail away.
func guardsAway() []string {
	var statements []string
	for _, trigger := range []string{"audit_unchanged", "audit_kept", "audit_head_forward", "audit_head_kept"} {
		statements = append(statements, "DROP TRIGGER "+trigger)
	}
	return statements
}

func TestTamperingWithTheTrailShows(t *testing.T) {
	cases := map[string]tampering{
		"an entry taken out":       {[]string{"DELETE FROM audit WHERE number = 7"}, 7},
		"the first taken out":      {[]string{"DELETE FROM audit WHERE number = 1"}, 1},
		"the end cut off":          {[]string{"DELETE FROM audit WHERE number > 9"}, 10},
		"the last cut off":         {[]string{"DELETE FROM audit WHERE number = 12"}, 12},
		"all taken out":            {[]string{"DELETE FROM audit"}, 1},
		"another moment":           {[]string{"UPDATE audit SET at = '2026-03-02T09:00:00.000000Z' WHERE number = 5"}, 5},
		"another action":           {[]string{"UPDATE audit SET action = 'printed' WHERE number = 5"}, 5},
		"no moment":                {[]string{"UPDATE audit SET at = 'noon' WHERE number = 5"}, 5},
		"no action":                {[]string{"UPDATE audit SET action = '' WHERE number = 5"}, 5},
		"another client":           {[]string{"UPDATE audit SET subject = 'somebody' WHERE number = 5"}, 5},
		"another sum":              {[]string{"UPDATE audit SET body_sum = zeroblob(32) WHERE number = 5"}, 5},
		"another link":             {[]string{"UPDATE audit SET link = zeroblob(32) WHERE number = 5"}, 5},
		"another body":             {[]string{"UPDATE audit SET body = zeroblob(40) WHERE number = 5"}, 5},
		"bodies swapped":           {[]string{"UPDATE audit SET body = (SELECT body FROM audit WHERE number = 6) WHERE number = 5"}, 5},
		"entries swapped":          {[]string{"UPDATE audit SET number = -5 WHERE number = 5", "UPDATE audit SET number = 5 WHERE number = 6", "UPDATE audit SET number = 6 WHERE number = -5"}, 5},
		"renumbered over a gap":    {[]string{"DELETE FROM audit WHERE number = 5", "UPDATE audit SET number = number - 1 WHERE number > 5", "UPDATE audit_head SET entries = entries - 1"}, 5},
		"one put in at the end":    {[]string{"INSERT INTO audit SELECT 13, at, action, subject, body, body_sum, link FROM audit WHERE number = 12"}, 13},
		"end cut, head to match":   {[]string{"DELETE FROM audit WHERE number > 9", "UPDATE audit_head SET entries = 9, link = (SELECT link FROM audit WHERE number = 9)"}, 9},
		"all and the head gone":    {[]string{"DELETE FROM audit WHERE number > 1", "DELETE FROM audit_head"}, 1},
		"the head's seal replaced": {[]string{"UPDATE audit_head SET body = zeroblob(40)"}, 12},
	}
	whole := newPath(t)
	s := mustOpen(t, whole, Options{Sealer: boundSealer{}})
	id := newClient(t, s)
	for range 10 {
		if err := s.MarkOpened(t.Context(), id); err != nil {
			t.Fatal(err)
		}
	}
	must(s.CheckTrail(t.Context()))(t)
	mustClose(t, s)
	content := must(os.ReadFile(whole))(t)
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "clients.db")
			if err := os.WriteFile(path, content, 0o600); err != nil {
				t.Fatal(err)
			}
			again := append([]string{}, trailGuards...)
			rawly(t, path, slices.Concat(guardsAway(), []string{"PRAGMA ignore_check_constraints = 1"}, c.statements, again)...)
			s := mustOpen(t, path, Options{Sealer: boundSealer{}})
			_, err := s.CheckTrail(t.Context())
			wantErr(t, err, ErrTrailBroken)
			var fault *TrailFault
			if !errors.As(err, &fault) || fault.Number != c.broken {
				t.Errorf("the place named is %v, want %d", fault, c.broken)
			}
			if words := Plain(err); !strings.Contains(words, fmt.Sprintf("entry %d", c.broken)) {
				t.Errorf("the words are %q", words)
			}
			wantErr(t, s.Check(t.Context()), ErrTrailBroken)
			entries, err := s.Trail(t.Context(), TrailQuery{Limit: 100}) // what is there can mostly still be read
			if err != nil && name != "no moment" {
				t.Error(err)
			}
			for _, e := range entries {
				_ = e.Words()
			}
		})
	}
}

// Somebody who has an older copy of the file could put its end of the trail in
// place of the present one. Then the latest backup knows better.
func TestABackupKnowsTheTrailOfItsDay(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	newClient(t, s)
	early := must(s.Inside(t.Context()))(t)
	if early.Entries != 2 || len(early.Link) != 32 {
		t.Fatalf("the trail has %d entries", early.Entries)
	}
	newClient(t, s)
	late := must(s.Inside(t.Context()))(t)
	for _, in := range []Inside{early, late, {}} {
		if err := s.CheckTrailHolds(t.Context(), in); err != nil {
			t.Error(err)
		}
	}
	other := mustOpen(t, newPath(t), Options{})
	newClient(t, other)
	wantErr(t, other.CheckTrailHolds(t.Context(), early), ErrTrailBroken)
	wantErr(t, other.CheckTrailHolds(t.Context(), late), ErrTrailBroken)
}
