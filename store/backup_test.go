package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"handbreadth/store/vault"
)

const backupPhrase = "four crates of plain oats"

// aPractice is an open file with some invented clients; sealed says whether it
// has a passphrase.
func aPractice(t testing.TB, sealed bool, clients int) (*Store, vault.RecoveryCode) {
	t.Helper()
	s := mustOpen(t, newPath(t), Options{Effort: vault.TestEffort})
	var code vault.RecoveryCode
	if sealed {
		code = must(s.SetPassphrase(t.Context(), backupPhrase, nil))(t)
	}
	for i := range clients {
		fillClient(t, s, func(column string) []byte { return fmt.Appendf(nil, "planted %s of client %d", column, i) })
	}
	return s, code
}

func TestBackup(t *testing.T) {
	for _, sealed := range []bool{false, true} {
		t.Run(fmt.Sprint("sealed ", sealed), func(t *testing.T) {
			ctx := t.Context()
			s, _ := aPractice(t, sealed, 3)
			folder := t.TempDir()
			if err := s.SetBackupFolder(ctx, folder); err != nil {
				t.Fatal(err)
			}
			if due := BackupDue(must(s.BackupPlan(ctx))(t), time.Now()); due.Why != DueNever {
				t.Errorf("before the first: %+v", due)
			}
			b := must(s.BackUp(ctx))(t)
			if b.Clients != 3 || b.Visits != 3 || b.Plans != 3 || b.Sealed != sealed || b.Rows["record"] != 15 {
				t.Errorf("report: %+v", b)
			}
			plan := must(s.BackupPlan(ctx))(t)
			if due := BackupDue(plan, b.MadeAt); plan.Folder != folder || !plan.Last.Equal(b.MadeAt) || due.Now {
				t.Errorf("afterwards: %+v, %+v", plan, due)
			}
			list := must(Backups(folder))(t)
			if len(list.List) != 1 || len(list.Unreadable) > 0 || list.List[0].Path != b.Path || list.List[0].Clients != 3 || list.List[0].Bytes != b.Bytes {
				t.Errorf("the list is %+v, want %+v", list, b)
			}
			if mode := must(os.Stat(b.Path))(t).Mode().Perm(); mode != 0o600 {
				t.Errorf("the backup has mode %o", mode)
			}
			content := must(os.ReadFile(b.Path))(t)
			for _, word := range []string{"planted", "SQLite format", "weight_kg"} {
				if bytes.Contains(content, []byte(word)) == sealed {
					t.Errorf("sealed %v, and %q in the backup is %v", sealed, word, !sealed)
				}
			}
			if words := trailWords(t, s, ""); words[len(words)-1] != "Backed up" {
				t.Errorf("the trail ends with %q", words[len(words)-1])
			}
			noLeftovers(t, s.Path(), folder)
		})
	}
}

// noLeftovers wants nothing half made beside the file and in the folder.
func noLeftovers(t *testing.T, path, folder string) {
	t.Helper()
	for _, pattern := range []string{path + ".*", filepath.Join(folder, "*"+freshMark+"*")} {
		for _, name := range must(filepath.Glob(pattern))(t) {
			if name != path+lockMark && !strings.HasPrefix(name, path+beforeMark) && !strings.HasPrefix(name, path+restoreMark) {
				t.Errorf("left is %s", name)
			}
		}
	}
}

// Saving goes on while a backup is made, and the backup has one moment of it:
// the plan that was added with each visit is there or not there together with it.
func TestABackupWhileWritingGoesOn(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, true, 10)
	id := newClient(t, s)
	stop := make(chan struct{})
	var writing sync.WaitGroup
	var saved int
	writing.Go(func() {
		for i := 1; ; i++ {
			select {
			case <-stop:
				return
			default:
			}
			if _, err := s.SaveRecord(ctx, id, KindText, i-1, killBody(i)); err != nil {
				t.Error(err)
				return
			}
			saved = i
		}
	})
	folder := t.TempDir()
	var all []Backup
	for range 3 {
		all = append(all, must(s.BackUpTo(ctx, folder))(t))
	}
	close(stop)
	writing.Wait()
	last := -1
	for _, b := range all {
		path := filepath.Join(t.TempDir(), "clients.db")
		r := must(PrepareRestore(ctx, b.Path, path, WithPassphrase(backupPhrase)))(t)
		must(r.Exchange(ctx, time.Now()))(t)
		restored := mustOpen(t, path, Options{})
		if err := restored.Unlock(ctx, backupPhrase); err != nil {
			t.Fatal(err)
		}
		history := must(restored.RecordHistory(ctx, id, KindText))(t)
		for v := range history {
			if r := must(restored.RecordAt(ctx, id, KindText, v+1))(t); string(r.Body) != string(killBody(v+1)) {
				t.Errorf("version %d is not what was saved", v+1)
			}
		}
		if len(history) < last || len(history) > saved {
			t.Errorf("%d versions after %d, of %d", len(history), last, saved)
		}
		last = len(history)
		mustClose(t, restored)
	}
	t.Logf("%d saves during three backups, the last has %d", saved, last)
	if saved < 5 {
		t.Error("nothing was saved meanwhile: the test shows nothing")
	}
}

// A stick that was pulled out is told, whether its place is gone or empty, or
// another stick is there.
func TestAVanishedFolderIsTold(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, false, 1)
	_, err := s.BackUp(ctx)
	wantErr(t, err, ErrFolderGone) // none was chosen
	wantErr(t, s.SetBackupFolder(ctx, filepath.Join(t.TempDir(), "nowhere")), ErrFolderGone)

	stick := filepath.Join(t.TempDir(), "stick")
	if err := os.Mkdir(stick, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := s.SetBackupFolder(ctx, stick); err != nil {
		t.Fatal(err)
	}
	first := must(s.BackUp(ctx))(t)
	away := stick + " away"
	if err := os.Rename(stick, away); err != nil {
		t.Fatal(err)
	}
	_, err = s.BackUp(ctx)
	wantErr(t, err, ErrFolderGone)
	if _, err := os.Stat(stick); !errors.Is(err, fs.ErrNotExist) {
		t.Error("the folder was made anew, on another disk")
	}
	if err := os.Mkdir(stick, 0o700); err != nil { // the empty place of the stick
		t.Fatal(err)
	}
	_, err = s.BackUp(ctx)
	wantErr(t, err, ErrFolderGone)
	if plan := must(s.BackupPlan(ctx))(t); !plan.Last.Equal(first.MadeAt) {
		t.Errorf("a backup that failed counts: %+v", plan)
	}
	if err := errors.Join(os.Remove(stick), os.Rename(away, stick)); err != nil {
		t.Fatal(err)
	}
	must(s.BackUp(ctx))(t)
	if err := s.SetBackupFolder(ctx, ""); err != nil {
		t.Fatal(err)
	}
	if due := BackupDue(must(s.BackupPlan(ctx))(t), time.Now()); due.Why != DueNoFolder {
		t.Errorf("without a folder: %+v", due)
	}
}

// twoKeys seals with one key and opens with another.
type twoKeys struct{ sealing, opening container }

func (c twoKeys) seal(dst io.Writer) (io.WriteCloser, error) { return c.sealing.seal(dst) }
func (c twoKeys) open(src io.Reader) (io.Reader, error)      { return c.opening.open(src) }

// cutShort is a container on a disk that loses the end of what is written.
type cutShort struct{ container }

func (c cutShort) open(src io.Reader) (io.Reader, error) {
	all, err := io.ReadAll(src)
	if err != nil {
		return nil, err
	}
	return c.container.open(bytes.NewReader(all[:len(all)-20]))
}

func TestABackupThatCannotBeReadBackIsNotKept(t *testing.T) {
	ctx := t.Context()
	s, _ := aPractice(t, true, 2)
	working := s.Path() + copyMark
	h := backupHeader{Inside: Inside{MadeAt: time.Now(), Practice: must(s.practice(ctx))(t), Sealed: true}}
	if err := s.copyOut(ctx, working, &h); err != nil {
		t.Fatal(err)
	}
	target := filepath.Join(t.TempDir(), "x"+backupSuffix)
	good := must(s.container())(t)
	other, _ := aPractice(t, true, 0)
	for name, c := range map[string]container{
		"another key reads back": twoKeys{good, must(other.container())(t)},
		"the end is lost":        cutShort{good},
	} {
		err := writeBackup(ctx, target, working, h, c)
		wantErr(t, backupTrouble("", err), ErrDisk)
		if left := must(filepath.Glob(target + "*"))(t); len(left) > 0 {
			t.Errorf("%s: left are %v", name, left)
		}
	}
	wrong := h
	wrong.Sum = bytes.Repeat([]byte{1}, 32)
	if err := writeBackup(ctx, target, working, wrong, good); !errors.Is(err, ErrDisk) {
		t.Errorf("a wrong sum: %v", err)
	}
	if err := writeBackup(ctx, target, working, h, good); err != nil {
		t.Errorf("without a fault: %v", err)
	}
}

// A sealed backup can be taken apart by lines, without this program: from the
// third on it is the container that package vault tells how to open.
func TestABackupCanBeTakenApart(t *testing.T) {
	ctx := t.Context()
	s, code := aPractice(t, true, 2)
	content := must(os.ReadFile(must(s.BackUpTo(ctx, t.TempDir()))(t).Path))(t)
	lines := bytes.SplitN(content, []byte("\n"), 3)
	found := must(vault.OpenContainer(bytes.NewReader(lines[2])))(t)
	keys := must(found.Ring().Recover(code))(t)
	inner := must(io.ReadAll(must(found.NewReader(keys))(t)))(t)
	if sum := sha256.Sum256(lines[1]); !bytes.Equal(sum[:], inner[:32]) {
		t.Error("the content does not begin with the sum of the header")
	}
	path := newPath(t)
	if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o700), os.WriteFile(path, inner[32:], 0o600)); err != nil {
		t.Fatal(err)
	}
	if n := len(must(mustOpenSealed(t, path).Clients(ctx, true))(t)); n != 2 {
		t.Errorf("%d clients", n)
	}
}

func TestABackupOfALockedFileIsRefused(t *testing.T) {
	s, _ := aPractice(t, true, 1)
	folder := t.TempDir()
	s.Lock()
	_, err := s.BackUpTo(t.Context(), folder)
	wantErr(t, err, ErrLocked)
	if left := must(os.ReadDir(folder))(t); len(left) > 0 {
		t.Errorf("left are %v", left)
	}
}

func TestAStoppedBackupLeavesNothing(t *testing.T) {
	s, _ := aPractice(t, true, 1)
	folder := t.TempDir()
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := s.BackUpTo(ctx, folder); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if left := must(os.ReadDir(folder))(t); len(left) > 0 {
		t.Errorf("left are %v", left)
	}
	noLeftovers(t, s.Path(), folder)
}

// Two practices may share a folder: neither removes the other's backups, and
// what else lies there is left alone.
func TestRotationInAFolder(t *testing.T) {
	ctx := t.Context()
	folder := t.TempDir()
	now := time.Date(2026, 1, 5, 18, 0, 0, 0, time.UTC)
	open := func() *Store {
		s := mustOpen(t, newPath(t), Options{Clock: func() time.Time { return now }})
		if err := s.SetBackupFolder(ctx, folder); err != nil {
			t.Fatal(err)
		}
		return s
	}
	ours, theirs := open(), open()
	foreign := must(theirs.BackUp(ctx))(t)
	for name, content := range map[string]string{
		"handbreadth-notes.backup": "no backup", "letter.txt": "a letter", filepath.Base(foreign.Path) + ".old": "renamed",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	killed := filepath.Join(folder, backupPrefix+must(ours.practice(ctx))(t)[:practiceShort]+"-2026-01-05-175959"+backupSuffix+freshMark)
	if err := os.WriteFile(killed, []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	for range 40 {
		now = now.AddDate(0, 0, 1)
		must(ours.BackUp(ctx))(t)
	}
	must(ours.BackUp(ctx))(t) // twice the same moment
	list := must(Backups(folder))(t)
	if len(list.Unreadable) != 1 || filepath.Base(list.Unreadable[0]) != "handbreadth-notes.backup" {
		t.Errorf("unreadable are %v", list.Unreadable)
	}
	var days []string
	for _, b := range list.List {
		if b.Path != foreign.Path {
			days = append(days, dayOf(b.MadeAt))
		}
	}
	want := []string{
		"2026-02-14", "2026-02-13", "2026-02-12", "2026-02-11", "2026-02-10", "2026-02-09", "2026-02-08", // seven days
		"2026-02-01",               // the third week, which ends on that Sunday; the first two are among the days
		"2026-01-31",               // the month
		"2026-01-25", "2026-01-18", // the fourth and fifth week
	}
	if !slices.Equal(days, want) {
		t.Errorf("days are\n%v, want\n%v", days, want)
	}
	for _, name := range []string{foreign.Path, filepath.Join(folder, "letter.txt"), foreign.Path + ".old"} {
		if _, err := os.Stat(name); err != nil {
			t.Errorf("not ours to remove: %v", err)
		}
	}
	if _, err := os.Stat(killed); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("what a killed backup left: %v", err)
	}
}
