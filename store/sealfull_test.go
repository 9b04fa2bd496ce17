package store

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"testing"
)

// A first sealing and a rotation in a file that may grow by a few pages only:
// they say so, nothing is lost, and with more room they come to their end.
func TestSealingWithoutRoom(t *testing.T) {
	ctx := t.Context()
	outcomes := map[string]int{}
	for _, room := range []int{0, 1, 2, 4, 8, 20, 200} {
		s := mustOpen(t, newPath(t), quick())
		var ids []ClientID
		for range 30 {
			ids = append(ids, fillClient(t, s, sampleBody).client.ID)
		}
		limit := func(more int) {
			t.Helper()
			var pages int
			if err := s.writer.Get(&pages, "PRAGMA page_count"); err != nil {
				t.Fatal(err)
			}
			must(s.writer.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages+more)))(t)
		}
		limit(room)
		code, err := s.SetPassphrase(ctx, phrase, nil)
		outcomes[outcome(t, s, err)]++
		if code.IsZero() == s.Sealed() {
			t.Errorf("room for %d pages: sealed %v, code %q", room, s.Sealed(), code)
		}
		checkClients(t, s, ids)
		limit(10_000)
		if !s.Sealed() {
			must(s.SetPassphrase(ctx, phrase, nil))(t)
		}
		if err := s.Resume(ctx, nil); err != nil || s.Unfinished() {
			t.Fatal(err)
		}
		limit(room)
		outcomes[outcome(t, s, s.RotateKey(ctx, nil))]++
		s.Lock()
		if err := s.Unlock(ctx, phrase); err != nil { // a full disk keeps nobody out
			t.Fatal(err)
		}
		checkClients(t, s, ids)
		s = again(t, s)
		if err := s.Unlock(ctx, phrase); err != nil {
			t.Fatal(err)
		}
		if err := s.Resume(ctx, nil); err != nil || s.Unfinished() {
			t.Fatal(err)
		}
		checkClients(t, s, ids)
		mustClose(t, s)
		if bytes.Contains(everyFile(t, filepath.Dir(s.Path())), sampleBody("identity")) {
			t.Error("a name is readable")
		}
	}
	t.Logf("%v", outcomes)
	if outcomes["done"] == 0 || len(outcomes) < 2 {
		t.Errorf("%v: the test does not show both ends", outcomes)
	}
}

func outcome(t *testing.T, s *Store, err error) string {
	t.Helper()
	switch {
	case err == nil && !s.Unfinished():
		return "done"
	case errors.Is(err, ErrDiskFull) && s.Unfinished():
		return "full on the way"
	case errors.Is(err, ErrDiskFull):
		return "full before"
	case errors.Is(err, ErrTracesLeft):
		return "full at the end"
	}
	t.Errorf("unfinished %v: %v", s.Unfinished(), err)
	return "unknown"
}
