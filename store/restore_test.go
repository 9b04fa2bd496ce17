package store

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"handbreadth/store/vault"
)

// everything is all that a practice can get out of its file through the
// program's own calls.
type everything struct {
	Clients  []Client
	Files    []ClientFile
	History  []Record
	Settings []Setting
	Trail    []AuditEntry
}

func readEverything(t *testing.T, s *Store) everything {
	t.Helper()
	ctx := t.Context()
	e := everything{
		Clients:  must(s.Clients(ctx, true))(t),
		Settings: must(s.Settings(ctx))(t),
		Trail:    must(s.Trail(ctx, TrailQuery{Limit: 1 << 20}))(t),
	}
	for _, c := range e.Clients {
		f := must(s.ClientFile(ctx, c.ID))(t)
		e.Files = append(e.Files, f)
		for _, kind := range slices.Sorted(maps.Keys(f.Records)) {
			for _, h := range must(s.RecordHistory(ctx, c.ID, kind))(t) {
				e.History = append(e.History, must(s.RecordAt(ctx, c.ID, kind, h.Version))(t))
			}
		}
	}
	return e
}

// The rehearsal: a practice of some size loses its computer and its passphrase.
// On another one it has the stick with the backups, the recovery sheet, and the
// program. Everything is equal afterwards.
func TestRehearsalWithTheRecoveryCodeAlone(t *testing.T) {
	ctx := t.Context()
	s, code := aPractice(t, true, 60)
	fillKept(t, s)
	stick := t.TempDir()
	if err := s.SetBackupFolder(ctx, stick); err != nil {
		t.Fatal(err)
	}
	before := readEverything(t, s)
	must(s.BackUp(ctx))(t)
	written := code.String() // what is on the sheet
	mustClose(t, s)
	if err := os.RemoveAll(filepath.Dir(s.Path())); err != nil { // the computer is gone
		t.Fatal(err)
	}

	list := must(Backups(stick))(t)
	if len(list.List) != 1 || list.List[0].Clients != 63 || list.List[0].Plans != 66 {
		t.Fatalf("the stick has %+v", list)
	}
	typed := must(vault.ParseRecoveryCode(strings.ToLower(written)))(t)
	path := filepath.Join(t.TempDir(), "new computer", "Handbreadth", "clients.db")
	r := must(PrepareRestore(ctx, list.List[0].Path, path, WithRecoveryCode(typed)))(t)
	if r.Clients != 63 || r.Plans != 66 || r.Schema != must(latestVersion(shipped()))(t) {
		t.Errorf("the preview is %+v", r.Inside)
	}
	if kept := must(r.Exchange(ctx, time.Now()))(t); kept != "" {
		t.Errorf("there was no file, yet %s was kept", kept)
	}
	s = mustOpen(t, path, Options{Effort: vault.TestEffort})
	if !s.Locked() {
		t.Fatal("the restored file is not locked")
	}
	if err := s.Recover(ctx, typed, "a new passphrase for a new computer"); err != nil {
		t.Fatal(err)
	}
	if err := s.Check(ctx); err != nil {
		t.Error(err)
	}
	after := readEverything(t, s)
	since := len(after.Trail) - len(before.Trail)
	if since < 1 {
		t.Fatalf("the trail has %d entries, had %d", len(after.Trail), len(before.Trail))
	}
	var said []string
	for _, e := range after.Trail[:since] {
		said = append(said, e.Words())
	}
	if all := strings.Join(said, ", "); !strings.Contains(all, "Restored: backup of 2026-03-02") {
		t.Errorf("the trail goes on with %s", all)
	}
	after.Trail = after.Trail[since:]
	if !reflect.DeepEqual(before, after) {
		t.Error("what was restored is not what was there")
	}
}

// The button for a rehearsal does the same on trial, and leaves nothing.
func TestRehearse(t *testing.T) {
	ctx := t.Context()
	for _, sealed := range []bool{false, true} {
		s, code := aPractice(t, sealed, 3)
		b := must(s.BackUpTo(ctx, t.TempDir()))(t)
		secrets := []Secret{{}}
		if sealed {
			secrets = []Secret{WithPassphrase(backupPhrase), WithRecoveryCode(code)}
		}
		folder := t.TempDir()
		for _, secret := range secrets {
			if in := must(Rehearse(ctx, b.Path, folder, secret))(t); in.Clients != 3 || in.Entries != b.Entries {
				t.Errorf("inside is %+v", in)
			}
		}
		if sealed {
			_, err := Rehearse(ctx, b.Path, folder, WithPassphrase("the wrong one of them"))
			wantErr(t, err, ErrWrongPassphrase)
			_, err = Rehearse(ctx, b.Path, folder, WithRecoveryCode(vault.NewRecoveryCode()))
			wantErr(t, err, ErrWrongCode)
			_, err = Rehearse(ctx, b.Path, folder, Secret{})
			wantErr(t, err, ErrWrongPassphrase)
		}
		if left := must(os.ReadDir(folder))(t); len(left) > 0 {
			t.Errorf("left are %v", left)
		}
	}
}

// A rehearsal that goes on is not swept away by another opening in its folder.
func TestARehearsalUnderWayIsLeftAlone(t *testing.T) {
	folder := t.TempDir()
	running := filepath.Join(folder, trialPrefix+"1")
	if err := os.Mkdir(running, 0o700); err != nil {
		t.Fatal(err)
	}
	lock := must(takeLock(filepath.Join(running, trialLock)))(t)
	path := filepath.Join(folder, "clients.db")
	mustClose(t, mustOpen(t, path, Options{}))
	if _, err := os.Stat(running); err != nil {
		t.Error(err)
	}
	if err := lock.release(); err != nil {
		t.Fatal(err)
	}
	mustClose(t, mustOpen(t, path, Options{}))
	if _, err := os.Stat(running); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("what a killed rehearsal left: %v", err)
	}
}

// The present file stays beside the restored one, and can be gone back to.
func TestRestoreKeepsThePresentFile(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, false, 2)
	path := s.Path()
	b := must(s.BackUpTo(ctx, t.TempDir()))(t)
	late := newClient(t, s)
	r := must(PrepareRestore(ctx, b.Path, path, Secret{}))(t) // while the file is open
	now := must(s.Inside(ctx))(t)
	if r.Clients != 2 || now.Clients != 3 || r.Practice != now.Practice || !now.LastChange.After(r.LastChange) {
		t.Errorf("to compare are %+v and %+v", r.Inside, now)
	}
	_, err := r.Exchange(ctx, time.Now())
	wantErr(t, err, ErrInUse)
	must(s.Client(ctx, late))(t) // nothing happened
	mustClose(t, s)

	at := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	kept := must(r.Exchange(ctx, at))(t)
	if kept != path+".before-restore-2026-05-04-100000" {
		t.Errorf("kept as %s", kept)
	}
	s = mustOpen(t, path, Options{})
	_, err = s.Client(ctx, late)
	wantErr(t, err, ErrNotFound)
	if words := trailWords(t, s, ""); words[len(words)-1] != "Restored: backup of 2026-03-02" {
		t.Errorf("the trail ends with %q", words[len(words)-1])
	}
	if copies := must(s.OldCopies())(t); len(copies) != 1 || copies[0] != kept {
		t.Errorf("copies %v", copies)
	}
	noLeftovers(t, path, filepath.Dir(path))
	mustClose(t, s)

	// Once more in the same second: the first copy stays.
	r = must(PrepareRestore(ctx, b.Path, path, Secret{}))(t)
	if second := must(r.Exchange(ctx, at))(t); second != kept+"-2" {
		t.Errorf("kept as %s", second)
	}
	must(mustOpen(t, kept, Options{}).Client(ctx, late))(t)
}

// A file that a killed program left with a log, and one that is damaged with a
// log: what is kept has all of it, and the restored file does not meet the log.
func TestRestoreOverAFileThatWasNotClosed(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, false, 2)
	b := must(s.BackUpTo(ctx, t.TempDir()))(t)
	late := newClient(t, s)
	for _, damaged := range []bool{false, true} {
		path := newPath(t)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		for _, end := range []string{"", "-wal"} {
			content := must(os.ReadFile(s.Path() + end))(t)
			if damaged && end == "" {
				copy(content, "nothing that is a database")
			}
			if err := os.WriteFile(path+end, content, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		if !logWaits(path) {
			t.Fatal("there is no log: the test shows nothing")
		}
		log := must(os.ReadFile(path + "-wal"))(t)
		r := must(PrepareRestore(ctx, b.Path, path, Secret{}))(t)
		kept := must(r.Exchange(ctx, time.Now()))(t)
		restored := mustOpen(t, path, Options{})
		if n := len(must(restored.Clients(ctx, true))(t)); n != 2 {
			t.Errorf("%d clients", n)
		}
		if err := restored.Check(ctx); err != nil {
			t.Error(err)
		}
		if damaged {
			if !bytes.Equal(log, must(os.ReadFile(kept+"-wal"))(t)) {
				t.Error("the log of the damaged file is not kept")
			}
			continue
		}
		must(mustOpen(t, kept, Options{}).Client(ctx, late))(t)
	}
}

// Whatever is wrong with a backup is said, the client file stays as it is, and
// nothing is left beside it.
func TestBackupsThatCannotBeRestored(t *testing.T) {
	ctx := t.Context()
	for _, sealed := range []bool{false, true} {
		s, _ := aPractice(t, sealed, 2)
		secret := Secret{}
		if sealed {
			secret = WithPassphrase(backupPhrase)
		}
		folder := t.TempDir()
		b := must(s.BackUpTo(ctx, folder))(t)
		mustClose(t, s)
		present := must(os.ReadFile(s.Path()))(t)
		good := must(os.ReadFile(b.Path))(t)
		header := len(backupMagic) + bytes.IndexByte(good[len(backupMagic):], '\n') + 1
		try := func(name string, content []byte, want error) {
			t.Helper()
			path := filepath.Join(folder, "tried"+backupSuffix)
			if err := os.WriteFile(path, content, 0o600); err != nil {
				t.Fatal(err)
			}
			_, err := PrepareRestore(ctx, path, s.Path(), secret)
			if !errors.Is(err, want) {
				t.Errorf("sealed %v, %s: %v, want %v", sealed, name, err, want)
			}
			if words := Plain(err); words == "" || words == plainUnknown {
				t.Errorf("sealed %v, %s: no words for %v", sealed, name, err)
			}
		}
		try("empty", nil, ErrNotABackup)
		try("a letter", []byte(strings.Repeat("Dear colleague, ", 100)), ErrNotABackup)
		try("the client file itself", present, ErrNotABackup)
		try("magic only", good[:len(backupMagic)], ErrDamaged)
		try("header only", good[:header], ErrDamaged)
		try("half", good[:len(good)/2], ErrDamaged)
		try("without the last byte", good[:len(good)-1], ErrDamaged)
		try("a byte too many", append(bytes.Clone(good), 0), ErrDamaged)
		other := bytes.Replace(good, []byte(`"clients":2`), []byte(`"clients":9`), 1)
		try("another count in the header", other, ErrDamaged)
		rng := newRandom(t)
		for range 60 {
			flipped := bytes.Clone(good)
			at := len(backupMagic) + rng.IntN(len(flipped)-len(backupMagic))
			flipped[at] ^= 1 << rng.IntN(8)
			try(fmt.Sprintf("a bit of byte %d flipped, the header has %d", at, header), flipped, ErrDamaged)
		}
		if !bytes.Equal(present, must(os.ReadFile(s.Path()))(t)) {
			t.Error("the client file was changed")
		}
		noLeftovers(t, s.Path(), folder)
		_, err := PrepareRestore(ctx, filepath.Join(folder, "nowhere"), s.Path(), secret)
		wantErr(t, err, ErrFolderGone)
	}
}

func TestABackupOfANewerProgramIsRefused(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, false, 1)
	mustClose(t, s)
	rawly(t, s.Path(), "INSERT INTO goose_db_version (version_id, is_applied) VALUES (999, 1)")
	path := filepath.Join(t.TempDir(), "newer"+backupSuffix)
	h := backupHeader{Inside: Inside{MadeAt: time.Now(), Practice: "somepractice", Schema: 999}}
	var err error
	if h.Bytes, h.Sum, err = sumOf(s.Path()); err != nil {
		t.Fatal(err)
	}
	if err := writeBackup(ctx, path, s.Path(), h, nil); err != nil {
		t.Fatal(err)
	}
	_, err = PrepareRestore(ctx, path, newPath(t), Secret{})
	wantErr(t, err, ErrNewerVersion)
	if b := must(Backups(filepath.Dir(path)))(t); len(b.List) > 0 {
		t.Error("a file with another name is listed")
	}
}

// Backups of older programs are restored and brought up to date at the opening.
func TestBackupsOfOlderSchemas(t *testing.T) {
	ctx := t.Context()
	latest := must(latestVersion(shipped()))(t)
	for version := int64(2); version < latest; version++ { // the first had no backups
		old := newPath(t)
		unpackKept(t, version, old)
		h := backupHeader{Inside: Inside{MadeAt: time.Now(), Practice: "somepractice"}}
		if err := inspectCopy(ctx, old, &h); err != nil {
			t.Fatal(err)
		}
		backup := filepath.Join(t.TempDir(), "old"+backupSuffix)
		if err := writeBackup(ctx, backup, old, h, nil); err != nil {
			t.Fatal(err)
		}
		path := newPath(t)
		r := must(PrepareRestore(ctx, backup, path, Secret{}))(t)
		if r.Schema != version || r.Clients != 3 {
			t.Errorf("inside is %+v", r.Inside)
		}
		must(r.Exchange(ctx, time.Now()))(t)
		s := mustOpen(t, path, Options{})
		checkUpToDate(t, s)
		if words := trailWords(t, s, ""); len(words) < 2 || !strings.HasPrefix(words[1], "Restored") {
			t.Errorf("the trail is %q", words)
		}
	}
}

func TestDiscardLeavesNothing(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, false, 1)
	folder := t.TempDir()
	b := must(s.BackUpTo(ctx, folder))(t)
	r := must(PrepareRestore(ctx, b.Path, s.Path(), Secret{}))(t)
	if _, err := os.Stat(r.fresh); err != nil {
		t.Fatal(err)
	}
	if err := r.Discard(); err != nil {
		t.Fatal(err)
	}
	noLeftovers(t, s.Path(), folder)
	mustClose(t, s)
	_, err := r.Exchange(ctx, time.Now())
	if err == nil {
		t.Error("what was discarded is restored")
	}
	if _, err := os.Stat(s.Path()); errors.Is(err, fs.ErrNotExist) {
		t.Error("the client file is gone")
	}
	stopped, stop := context.WithCancel(ctx)
	stop()
	if _, err := PrepareRestore(stopped, b.Path, s.Path(), Secret{}); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: %v", err)
	}
	noLeftovers(t, s.Path(), folder)
}
