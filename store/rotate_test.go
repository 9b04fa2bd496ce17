package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/store/vault"
)

func TestMovedSealedValuesAreRefused(t *testing.T) {
	for name, statement := range moves {
		t.Run(name, func(t *testing.T) {
			s, _, _ := sealedFile(t, 1)
			for _, setting := range []string{"one", "two"} {
				if err := s.PutSetting(t.Context(), setting, []byte(setting)); err != nil {
					t.Fatal(err)
				}
			}
			must(s.CreateClient(t.Context(), nil))(t)
			if err := s.Check(t.Context()); err != nil {
				t.Fatal(err)
			}
			if err := unguard(t.Context(), s.writer); err != nil {
				t.Fatal(err)
			}
			must(s.writer.Exec(statement))(t)
			wantErr(t, s.Check(t.Context()), ErrDamaged)
		})
	}
}

// Once the file is sealed, a value that nobody sealed is refused, and so is one
// of another practice.
func TestAPlantedValueIsRefused(t *testing.T) {
	s, ids, _ := sealedFile(t, 1)
	stranger, _, _ := sealedFile(t, 0)
	draft := must(s.Draft(t.Context(), ids[0], FormIntake))(t)
	where := place{"draft", fmt.Sprintf("%s/%s/%s", ids[0], FormIntake, draft.ID), "body", draft.Revision}
	for name, sealer := range map[string]Sealer{"unsealed": PassThrough{}, "of another practice": stranger.sealer} {
		planted := must(sealer.Seal(where.table, where.row, where.column, where.version, []byte("planted")))(t)
		must(s.writer.Exec("UPDATE draft SET body = ?", planted))(t)
		if _, err := s.Draft(t.Context(), ids[0], FormIntake); !errors.Is(err, ErrDamaged) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// everyFile returns the bytes of every file in the folder, whatever its name.
func everyFile(t testing.TB, folder string) (all []byte) {
	t.Helper()
	if err := filepath.WalkDir(folder, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		all = append(all, must(os.ReadFile(name))(t)...)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	return all
}

func TestSealingLeavesNoPlainText(t *testing.T) {
	ctx := t.Context()
	path := newPath(t)
	unpackKept(t, 1, path) // leaves an unsealed copy beside the file when it comes up to date
	s := mustOpen(t, path, quick())
	old := must(s.Clients(ctx, true))(t)[0].ID
	var words []string
	word := func(column string) []byte {
		w := fmt.Sprintf("planted%sword%d", column, len(words))
		words = append(words, w)
		return bytes.Repeat([]byte(w+" "), 1+len(words)%7*40) // some on pages of their own
	}
	for range 20 {
		f := fillClient(t, s, word)
		for revision := range 3 {
			must(s.SaveDraft(ctx, f.client.ID, FormIntake, word(fmt.Sprint("draft", revision))))(t)
		}
	}
	gone := fillClient(t, s, word).client.ID
	if err := s.PutSetting(ctx, "practice", word("practice")); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Dir(path)
	if before := everyFile(t, folder); !bytes.Contains(before, []byte("plantedidentityword")) ||
		!bytes.Contains(before, []byte("note, version 3")) {
		t.Fatal("the words are not found before the sealing: the search shows nothing")
	}
	seen := 0
	code := must(s.SetPassphrase(ctx, phrase, func(done, total int) {
		if done < seen || done > total {
			t.Errorf("progress went from %d to %d of %d", seen, done, total)
		}
		seen = done
	}))(t)
	words = append(words, "note, version 3", phrase, strings.Join(code.Groups(), ""), code.String())
	look := func(when string) {
		t.Helper()
		all := everyFile(t, folder)
		for _, w := range words {
			if bytes.Contains(all, []byte(w)) {
				t.Errorf("%s: %q is readable", when, w)
			}
		}
		t.Logf("figure: %s: %d bytes searched for %d planted words, none found", when, len(all), len(words))
	}
	look("sealed, still open")
	if seen == 0 {
		t.Error("no progress was told")
	}
	must(s.SaveDraft(ctx, old, FormIntake, word("later")))(t)
	if err := s.DeleteClient(ctx, gone); err != nil {
		t.Fatal(err)
	}
	look("saved to, still open")
	if err := s.RotateKey(ctx, nil); err != nil {
		t.Fatal(err)
	}
	s.Lock()
	look("locked")
	mustClose(t, s)
	look("closed")
}

// The former key is gone from the file when the rotation is over: what it
// sealed, and the key itself.
func TestRotationForgetsTheFormerKey(t *testing.T) {
	ctx := t.Context()
	s, ids, code := sealedFile(t, 5)
	before := must(s.openKeys())(t)
	old, _ := before.Current()
	if err := s.RotateKey(ctx, nil); err != nil {
		t.Fatal(err)
	}
	if now, ok := must(s.openKeys())(t).Current(); !ok || now == old {
		t.Errorf("the key is %v, before it was %v", now, old)
	}
	if _, ok := before.Current(); ok {
		t.Error("the former keys are still in memory")
	}
	checkClients(t, s, ids)
	mustClose(t, s)
	all := everyFile(t, filepath.Dir(s.Path()))
	if head := append([]byte{vault.Mark}, old[:]...); bytes.Contains(all, head) {
		t.Error("something sealed with the former key is left")
	}
	if bytes.Contains(all, []byte(old.String())) {
		t.Error("the former key is left, wrapped, in the key ring or in a trace of it")
	}
	for name, open := range map[string]func(*Store) error{
		"passphrase": func(s *Store) error { return s.Unlock(ctx, phrase) },
		"code":       func(s *Store) error { return s.Recover(ctx, code, phrase) },
	} {
		s := mustOpen(t, s.Path(), quick())
		if err := open(s); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		checkClients(t, s, ids)
		mustClose(t, s)
	}
}

// A work on the seals that is stopped at any page leaves a file that works, and
// goes on from there.
func TestWorkOnTheSealsCanBeStopped(t *testing.T) {
	for name, begin := range map[string]func(context.Context, *Store, Progress) error{
		"first sealing": func(ctx context.Context, s *Store, p Progress) error {
			code, err := s.SetPassphrase(ctx, phrase, p)
			if code.IsZero() {
				return errors.New("no code")
			}
			return err
		},
		"rotation": func(ctx context.Context, s *Store, p Progress) error {
			if _, err := s.SetPassphrase(t.Context(), phrase, nil); err != nil {
				return err
			}
			return s.RotateKey(ctx, p)
		},
	} {
		for _, lock := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s/lock=%v", name, lock), func(t *testing.T) { stopWork(t, lock, begin) })
		}
	}
}

func stopWork(t *testing.T, lock bool, begin func(context.Context, *Store, Progress) error) {
	s := mustOpen(t, newPath(t), quick())
	var ids []ClientID
	for range 4 {
		ids = append(ids, fillClient(t, s, sampleBody).client.ID)
	}
	for stopAt := 1; ; stopAt++ {
		ctx, stop := context.WithCancel(t.Context())
		calls := 0
		progress := func(int, int) {
			if calls++; calls == stopAt {
				stop()
			}
		}
		var err error
		if stopAt == 1 {
			err = begin(ctx, s, progress)
		} else {
			err = s.Resume(ctx, progress)
		}
		stop()
		if err == nil {
			break
		}
		if !errors.Is(err, context.Canceled) || !s.Unfinished() {
			t.Fatalf("stopped at page %d: %v", stopAt, err)
		}
		ids = append(ids, fillClient(t, s, sampleBody).client.ID)
		checkClients(t, s, ids)
		if lock {
			s.Lock()
		} else {
			s = again(t, s)
		}
		if err := s.Unlock(t.Context(), phrase); err != nil {
			t.Fatal(err)
		}
		checkClients(t, s, ids)
	}
	if s.Unfinished() {
		t.Error("the work is over, but called unfinished")
	}
	checkClients(t, s, ids)
}

// Locking from elsewhere ends a rotation, and the next unlocking finishes it.
func TestLockEndsARotation(t *testing.T) {
	s, ids, _ := sealedFile(t, 3)
	locked := make(chan struct{})
	err := s.RotateKey(t.Context(), func(done, _ int) {
		if done > 0 && !s.Locked() {
			go func() { s.Lock(); close(locked) }()
			<-locked
		}
	})
	wantErr(t, err, ErrLocked)
	if err := s.Unlock(t.Context(), phrase); err != nil {
		t.Fatal(err)
	}
	checkClients(t, s, ids)
	if err := s.Resume(t.Context(), nil); err != nil || s.Unfinished() {
		t.Error(err)
	}
	checkClients(t, s, ids)
}

// Every column that goes through the sealer is in the list of what is sealed at
// first and when the key changes.
func TestEverySealedColumnIsRotated(t *testing.T) {
	s := mustOpen(t, newPath(t), quick())
	fillClient(t, s, sampleBody)
	if err := s.PutSetting(t.Context(), "one", []byte("1")); err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for _, table := range sealedTables {
		tx := s.reader.MustBeginTx(t.Context(), nil)
		rows := must(table.page(t.Context(), tx, table.first))(t)
		if err := tx.Rollback(); err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			for _, value := range row.sealedValues() {
				if value.place.table != table.name || value.place.column != value.column || len(value.body) == 0 {
					t.Errorf("%s.%s is read as %+v", table.name, value.column, value)
				}
				found[table.name+"."+value.column] = true
			}
		}
	}
	for column := range sealedColumns {
		if !found[column] {
			t.Errorf("%s is sealed, but would stay as it is when the key changes", column)
		}
	}
	if len(found) != len(sealedColumns) {
		t.Errorf("%v are sealed anew, %v are known to be sealed", found, sealedColumns)
	}
}

func TestSealedBodiesComeBack(t *testing.T) {
	s, _, _ := sealedFile(t, 0)
	id := newClient(t, s)
	rapid.Check(t, func(rt *rapid.T) {
		body := rapid.SliceOf(rapid.Byte()).Draw(rt, "body")
		must(s.SaveDraft(t.Context(), id, FormIntake, body))(t)
		if got := must(s.Draft(t.Context(), id, FormIntake))(t); !bytes.Equal(got.Body, body) {
			rt.Errorf("%x came back as %x", body, got.Body)
		}
	})
}
