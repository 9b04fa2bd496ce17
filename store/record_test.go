package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"
)

func TestSaveRecordRefusesAStaleVersion(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	for read := range 3 {
		r := must(s.SaveRecord(ctx, id, KindText, read, []byte{byte(read)}))(t)
		if r.Version != read+1 {
			t.Errorf("version %d after reading %d", r.Version, read)
		}
	}
	for _, read := range []int{-1, 0, 2, 4} {
		_, err := s.SaveRecord(ctx, id, KindText, read, nil)
		wantErr(t, err, ErrConflict)
	}
	if r := must(s.LatestRecord(ctx, id, KindText))(t); r.Version != 3 || !bytes.Equal(r.Body, []byte{2}) {
		t.Errorf("after the refusals the latest is %+v", r)
	}
	if r := must(s.RecordAt(ctx, id, KindText, 2))(t); !bytes.Equal(r.Body, []byte{1}) {
		t.Errorf("version 2 is %+v", r)
	}
}

func TestOfManyWritersOfOneVersionOneWins(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	const writers = 12
	results := make([]error, writers)
	var wg sync.WaitGroup
	for i := range writers {
		wg.Go(func() { _, results[i] = s.SaveRecord(t.Context(), id, KindText, 0, []byte{byte(i)}) })
	}
	wg.Wait()
	won := 0
	for _, err := range results {
		if err == nil {
			won++
		} else if !errors.Is(err, ErrConflict) {
			t.Errorf("a loser got %v", err)
		}
	}
	if won != 1 {
		t.Errorf("%d writers won", won)
	}
}

// What the store says about records is what a plain map of slices says.
func TestRecordVersionsFollowTheModel(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	ctx := context.Background()
	kinds := []Kind{KindIdentity, KindText, KindHealth}
	rapid.Check(t, func(rt *rapid.T) {
		type key struct {
			client ClientID
			kind   Kind
		}
		model := map[key][][]byte{}
		var clients []ClientID
		for range 2 {
			c, err := s.CreateClient(ctx, nil)
			if err != nil {
				rt.Fatal(err)
			}
			clients = append(clients, c.ID)
		}
		pick := func(rt *rapid.T) key {
			return key{rapid.SampledFrom(clients).Draw(rt, "client"), rapid.SampledFrom(kinds).Draw(rt, "kind")}
		}
		rt.Repeat(map[string]func(*rapid.T){
			"save": func(rt *rapid.T) {
				k := pick(rt)
				newest := len(model[k])
				read := newest + rapid.SampledFrom([]int{0, 0, 0, -1, 1}).Draw(rt, "off")
				body := rapid.SliceOf(rapid.Byte()).Draw(rt, "body")
				r, err := s.SaveRecord(ctx, k.client, k.kind, read, body)
				if read != newest {
					if !errors.Is(err, ErrConflict) {
						rt.Fatalf("read %d of %d: %v", read, newest, err)
					}
					return
				}
				if err != nil || r.Version != newest+1 {
					rt.Fatalf("saved version %d after %d: %v", r.Version, newest, err)
				}
				model[k] = append(model[k], body)
			},
			"": func(rt *rapid.T) {
				k := pick(rt)
				checkHistory(rt, s, k.client, k.kind, model[k])
			},
		})
	})
}

func checkHistory(rt *rapid.T, s *Store, id ClientID, kind Kind, want [][]byte) {
	ctx := context.Background()
	history, err := s.RecordHistory(ctx, id, kind)
	if err != nil || len(history) != len(want) {
		rt.Fatalf("history has %d versions, want %d: %v", len(history), len(want), err)
	}
	for i, body := range want {
		r, err := s.RecordAt(ctx, id, kind, i+1)
		if err != nil || !bytes.Equal(r.Body, body) || history[i].Version != i+1 || history[i].ID != r.ID {
			rt.Fatalf("version %d: %+v, %v", i+1, r, err)
		}
	}
	latest, err := s.LatestRecord(ctx, id, kind)
	if len(want) == 0 {
		if !errors.Is(err, ErrNotFound) {
			rt.Fatalf("latest of nothing: %v", err)
		}
	} else if err != nil || latest.Version != len(want) {
		rt.Fatalf("latest is %d of %d: %v", latest.Version, len(want), err)
	}
}

func TestEachLatestGivesTheNewestOfEveryClientOnce(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	want := map[ClientID]string{}
	for i := range 20 {
		id := must(s.CreateClient(ctx, map[Kind][]byte{KindIdentity: []byte("old name"), KindText: []byte("other")}))(t).ID
		for v := range i % 3 {
			want[id] = fmt.Sprintf("client %d name %d", i, v+2)
			must(s.SaveRecord(ctx, id, KindIdentity, v+1, []byte(want[id])))(t)
		}
		if i%3 == 0 {
			want[id] = "old name"
		}
	}
	seen := 0
	if err := s.EachLatest(ctx, KindIdentity, func(r Record) error {
		seen++
		if string(r.Body) != want[r.ClientID] {
			t.Errorf("%s: %q, want %q", r.ClientID, r.Body, want[r.ClientID])
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if seen != len(want) {
		t.Errorf("saw %d of %d", seen, len(want))
	}
	stop := errors.New("enough")
	if err := s.EachLatest(ctx, KindIdentity, func(Record) error { return stop }); !errors.Is(err, stop) {
		t.Errorf("the visitor's error came back as %v", err)
	}
}

// What is kept for good is refused by the database itself, whoever asks.
func TestKeptRowsCannotBeChanged(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	f := fillClient(t, s, func(string) []byte { return []byte("x") })
	for _, statement := range []string{
		"UPDATE record SET body = x'00'",
		"UPDATE intake SET weight_kg = 1",
		"UPDATE plan_version SET number = 7",
		"UPDATE handout SET sha256 = ''",
		"DELETE FROM record",
		"DELETE FROM intake",
		"DELETE FROM plan_version",
		"DELETE FROM handout",
	} {
		_, err := s.writer.Exec(statement)
		if err = explain(err); !errors.Is(err, ErrImmutable) {
			t.Errorf("%s: %v", statement, err)
		}
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	if got := must(s.ClientFile(t.Context(), f.client.ID))(t); got.Plans[0].Number != 1 || len(got.Records) != 5 {
		t.Errorf("after the refusals: %+v", got)
	}
	if _, err := s.reader.Exec("DELETE FROM draft"); err == nil {
		t.Error("a reading connection could write")
	}
}

func TestDraftsAreSavedWhileOthersRead(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	id := newClient(t, s)
	must(s.SaveDraft(ctx, id, FormIntake, []byte("0:")))(t)
	const saves, readers = 150, 4
	done := make(chan struct{})
	var wg sync.WaitGroup
	for range readers {
		wg.Go(func() {
			last := 0
			for {
				select {
				case <-done:
					return
				default:
				}
				d, err := s.Draft(ctx, id, FormIntake)
				if err != nil || d.Revision < last || !wholeDraft(d) {
					t.Errorf("revision %d after %d: %q, %v", d.Revision, last, d.Body, err)
					return
				}
				last = d.Revision
			}
		})
	}
	for i := 1; i <= saves; i++ {
		body := fmt.Sprintf("%d:%s", i, strings.Repeat("x", i))
		if d := must(s.SaveDraft(ctx, id, FormIntake, []byte(body)))(t); d.Revision != i+1 {
			t.Errorf("save %d is revision %d", i, d.Revision)
		}
	}
	close(done)
	wg.Wait()
}

// wholeDraft reports whether a body is exactly one that the test saved, under
// its own revision.
func wholeDraft(d Draft) bool {
	n := d.Revision - 1
	return slices.Equal(d.Body, []byte(fmt.Sprintf("%d:%s", n, strings.Repeat("x", n))))
}
