package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Pages that are split or joined keep copies of rows in the room between their
// cells, which the pragma secure_delete alone does not reach (seen in some
// runs of the random test below without the rewriting of the
// file). Here such copies are put there on purpose.
func TestDeleteClientWipesCopiesBetweenTheRows(t *testing.T) {
	path, ids := sampleFile(t, 3)
	const trace = "traceofsomebody"
	content := must(os.ReadFile(path))(t)
	planted := 0
	for page := pageSize; page < len(content); page += pageSize { // not the first, which begins with the file's head
		if leaf := content[page]; leaf != 0x0a && leaf != 0x0d { // leaf of an index or of a table
			continue
		}
		cells := int(binary.BigEndian.Uint16(content[page+3:]))
		from, to := page+8+2*cells, page+int(binary.BigEndian.Uint16(content[page+5:]))
		if to-from >= len(trace) {
			copy(content[from:], trace)
			planted++
		}
	}
	if planted < 5 {
		t.Fatalf("only %d copies could be planted", planted)
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	s := mustOpen(t, path, Options{})
	if err := s.DeleteClient(t.Context(), ids[0]); err != nil {
		t.Fatal(err)
	}
	if left := bytes.Count(allBytes(t, path), []byte(trace)); left > 0 {
		t.Errorf("of %d copies %d are left", planted, left)
	}
}

// pageSize is what SQLite uses where nothing else is asked for.
const pageSize = 4096

func TestDeleteClientWipesTraces(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewPCG(seed, 0))
	if _, err := s.writer.Exec("PRAGMA synchronous = OFF"); err != nil { // only to be quick
		t.Fatal(err)
	}
	const clients = 80
	ids := make([]ClientID, clients)
	mark := func(i int) string { return fmt.Sprintf("traceof%03dx", i) }
	body := func(i int) []byte { return []byte(strings.Repeat(mark(i), 1+rng.IntN(12))) }
	for i := range ids {
		ids[i] = fillClient(t, s, func(string) []byte { return body(i) }).client.ID
	}
	for range 400 {
		i := rng.IntN(clients)
		must(s.SaveDraft(t.Context(), ids[i], FormIntake, body(i)))(t)
	}
	for i := 0; i < clients; i += 2 {
		if err := s.DeleteClient(t.Context(), ids[i]); err != nil {
			t.Fatal(err)
		}
	}
	all := allBytes(t, path)
	for i, id := range ids {
		found := bytes.Count(all, []byte(mark(i))) + bytes.Count(all, []byte(id))
		if deleted := i%2 == 0; deleted && found > 0 {
			t.Errorf("deleted client %d: %d traces", i, found)
		} else if !deleted && found == 0 {
			t.Errorf("client %d was not deleted, yet it is gone", i)
		}
	}
}

func TestDeleteClientRemovesEveryRow(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	word := func(column string) []byte { return []byte(column) }
	goes, stays := fillClient(t, s, word), fillClient(t, s, word)
	if err := s.DeleteClient(t.Context(), goes.client.ID); err != nil {
		t.Fatal(err)
	}
	for _, table := range []string{"client", "record", "draft", "intake", "plan_version", "handout"} {
		column := "client_id"
		if table == "client" {
			column = "id"
		}
		for id, want := range map[ClientID]bool{goes.client.ID: false, stays.client.ID: true} {
			var n int
			if err := s.reader.Get(&n, "SELECT count(*) FROM "+table+" WHERE "+column+" = ?", id); err != nil {
				t.Fatal(err)
			}
			if (n > 0) != want {
				t.Errorf("%s has %d rows of a client whose rows should be there: %v", table, n, want)
			}
		}
	}
	_, err := s.Client(t.Context(), goes.client.ID)
	wantErr(t, err, ErrNotFound)
	wantErr(t, s.DeleteClient(t.Context(), goes.client.ID), ErrNotFound)
}

// The tables above are all that have a client: a new one must be added there.
func TestEveryTableWithAClientCascades(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	var tables []string
	if err := s.reader.Select(&tables, `SELECT s.name FROM sqlite_schema s JOIN pragma_table_info(s.name) c
		WHERE s.type = 'table' AND c.name = 'client_id' AND NOT EXISTS (SELECT 1 FROM pragma_foreign_key_list(s.name) f
		WHERE f."table" = 'client' AND f."from" = 'client_id' AND f.on_delete = 'CASCADE')`); err != nil {
		t.Fatal(err)
	}
	if len(tables) > 0 {
		t.Errorf("tables whose rows outlive their client: %v", tables)
	}
}

func TestTracesLeftByABusyReaderAreWipedAtTheNextOpening(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	const secret = "wanderingsecret"
	id := must(s.CreateClient(t.Context(), map[Kind][]byte{KindText: []byte(secret)}))(t).ID
	if _, err := s.writer.Exec("PRAGMA busy_timeout = 0"); err != nil {
		t.Fatal(err)
	}
	tx, err := s.reader.Beginx()
	if err != nil {
		t.Fatal(err)
	}
	defer tx.Rollback()
	var n int
	if err := tx.Get(&n, "SELECT count(*) FROM client"); err != nil || n != 1 {
		t.Fatal(n, err)
	}
	wantErr(t, s.DeleteClient(t.Context(), id), ErrTracesLeft)
	if !bytes.Contains(allBytes(t, path), []byte(secret)) {
		t.Fatal("the reader left nothing to wipe: this test shows nothing")
	}
	if err := tx.Rollback(); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)

	s = mustOpen(t, path, Options{})
	if bytes.Contains(allBytes(t, path), []byte(secret)) {
		t.Error("the trace is still there")
	}
	if _, err := s.Meta(t.Context(), wipeNote); err == nil {
		t.Error("the note to wipe is still there")
	}
}

func TestOldCopiesNamesCopiesOnly(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	for _, name := range []string{path + ".before-v7", path + ".backup"} {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if got := must(s.OldCopies())(t); len(got) != 1 || got[0] != s.Path()+".before-v7" {
		t.Errorf("got %v", got)
	}
}

// Whatever may hold a client beside the file: what killed work left, copies
// before updates and restores. After the deletion every byte of the folder, and
// every name in it, is without a trace; the trail still says that somebody was
// deleted.
func TestNoTraceInTheWholeFolder(t *testing.T) {
	ctx := t.Context()
	s := mustOpen(t, newPath(t), Options{})
	path := s.Path()
	const trace = "traceofsomebody"
	body := func(column string) []byte { return []byte(strings.Repeat(trace+column, 40)) }
	goes := fillClient(t, s, body).client.ID
	stays := fillClient(t, s, sampleBody).client.ID
	must(s.SaveRecord(ctx, goes, KindIdentity, 1, []byte("a new name, no longer "+trace)))(t)
	if err := s.MarkOpened(ctx, goes); err != nil {
		t.Fatal(err)
	}
	mustClose(t, s)
	content := must(os.ReadFile(path))(t)
	for _, end := range []string{
		copyMark, copyMark + freshMark, copyMark + pagesMark, restoringMark, restoringMark + "-wal", freshMark,
		beforeMark + "4", restoreMark + "2026-03-02-090000", restoreMark + "2026-03-02-090000-wal",
	} {
		if err := os.WriteFile(path+end, content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	trial := filepath.Join(filepath.Dir(path), trialPrefix+"123")
	if err := errors.Join(os.Mkdir(trial, 0o700), os.WriteFile(filepath.Join(trial, "clients.db"), content, 0o600)); err != nil {
		t.Fatal(err)
	}
	s = mustOpen(t, path, Options{})
	if err := s.DeleteClient(ctx, goes); err != nil {
		t.Fatal(err)
	}
	if n := must(s.RemoveOldCopies(ctx))(t); n != 3 {
		t.Errorf("%d old copies removed, of 3", n)
	}
	mustClose(t, s)
	all := allBytes(t, path)
	for _, word := range []string{trace, string(goes)} {
		if n := bytes.Count(all, []byte(word)); n > 0 {
			t.Errorf("%q is found %d times in %d bytes", word, n, len(all))
		}
	}
	if !bytes.Contains(all, []byte(stays)) {
		t.Error("the other client is not found: the search shows nothing")
	}
	s = mustOpen(t, path, Options{})
	words := trailWords(t, s, goes)
	if len(words) == 0 || words[0] != "Created" || words[len(words)-1] != "Deleted" {
		t.Errorf("the trail of the deleted client is %q", words)
	}
	must(s.CheckTrail(ctx))(t)
	t.Logf("figure: %d bytes searched after a deletion, no trace", len(all))
}

func TestRetentionNoticeSaysWhatMatters(t *testing.T) {
	notice := RetentionNotice()
	for _, word := range []string{"cannot be undone", "years", "children", "Local law", "archive", "Backups", "without a name"} {
		if !strings.Contains(notice, word) {
			t.Errorf("the notice says nothing of %q", word)
		}
	}
}
