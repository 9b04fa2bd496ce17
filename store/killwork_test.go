package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A long check of all acknowledged text would take most of the time, so these
// tests kill at the work that replaces whole files: updates, backups, restores.

// killAfter starts a program and kills it at a random moment before it usually
// is done. It returns what the program said, and whether it was too late.
func killAfter(t *testing.T, rng *rand.Rand, usual time.Duration, role, path string, more ...string) (said string, late bool) {
	t.Helper()
	cmd, out := startRole(t, role, path, more...)
	time.Sleep(time.Duration(rng.Int64N(int64(usual))))
	if err := cmd.Process.Kill(); err != nil && !errors.Is(err, os.ErrProcessDone) {
		t.Fatal(err)
	}
	all := must(io.ReadAll(out))(t)
	return string(all), cmd.Wait() == nil
}

// howLong is how long a program takes when nobody kills it.
func howLong(t *testing.T, role, path string, more ...string) time.Duration {
	t.Helper()
	began := time.Now()
	cmd, out := startRole(t, role, path, more...)
	said := must(io.ReadAll(out))(t)
	if err := cmd.Wait(); err != nil {
		t.Fatalf("%s: %v, %s", role, err, said)
	}
	return time.Since(began)
}

// A file of the first schema is brought up to date, and the program killed
// meanwhile: the file has everything, and comes up to date the next time.
func TestKilledWhileBringingAFileUpToDate(t *testing.T) {
	rng := newRandom(t)
	path := newPath(t)
	unpackKept(t, 1, path)
	old := openPoolForTest(t, path)
	before := readContents(t, old)
	old.Close()
	usual := howLong(t, "open", path)
	interrupted := 0
	for range kills(t) / 5 {
		path := newPath(t)
		unpackKept(t, 1, path)
		if _, late := killAfter(t, rng, usual, "open", path); !late && inTheMiddle(t, path) {
			interrupted++
		}
		s := mustOpen(t, path, Options{})
		compareContents(t, before, s.reader)
		checkUpToDate(t, s)
		copies := must(s.OldCopies())(t)
		if len(copies) != 1 {
			t.Fatalf("copies %v", copies)
		}
		compareContents(t, before, openPoolForTest(t, copies[0]))
		noLeftovers(t, s.Path(), t.TempDir())
		mustClose(t, s)
	}
	t.Logf("figure: %d kills during an update survived, %d in the middle", kills(t)/5, interrupted)
}

// inTheMiddle reports whether half-made files lie beside the file.
func inTheMiddle(t *testing.T, path string) bool {
	t.Helper()
	for _, pattern := range []string{".*" + freshMark + "*", freshMark + "*", copyMark + "*", restoringMark + "*"} {
		if len(must(filepath.Glob(path+pattern))(t)) > 0 {
			return true
		}
	}
	return false
}

// backUpUntilKilled saves and makes backups in turns, and acknowledges both.
func backUpUntilKilled(path, folder string) error {
	ctx := context.Background()
	s, err := openToBeKilled(ctx, path)
	if err != nil {
		return err
	}
	for {
		c, err := s.CreateClient(ctx, map[Kind][]byte{KindText: killBody(7)})
		if err != nil {
			return err
		}
		fmt.Println("client", c.ID)
		b, err := s.BackUpTo(ctx, folder)
		if err != nil {
			return err
		}
		fmt.Println("backup", b.Path)
	}
}

// Every backup that bears a name is whole, whenever the program was killed.
func TestKilledWhileBackingUp(t *testing.T) {
	ctx := t.Context()
	rng := newRandom(t)
	s, _ := aPractice(t, true, 5)
	path, folder := s.Path(), t.TempDir()
	mustClose(t, s)
	usual := 10 * howLong(t, "open", path)
	backups, clients := 0, map[ClientID]bool{}
	interrupted := 0
	for range kills(t) / 5 {
		said, _ := killAfter(t, rng, usual, "back up", path, folderVariable+"="+folder)
		named := map[string]bool{}
		for line := range strings.Lines(said) {
			what, value, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
			if what == "client" {
				clients[ClientID(value)] = true
			}
			if what == "backup" {
				named[value] = true
			}
		}
		if inTheMiddle(t, path) || len(must(filepath.Glob(filepath.Join(folder, "*"+freshMark)))(t)) > 0 {
			interrupted++
		}
		list := must(Backups(folder))(t)
		if len(list.Unreadable) > 0 {
			t.Errorf("half made are %v", list.Unreadable)
		}
		for _, b := range list.List {
			delete(named, b.Path)
			if in := must(Rehearse(ctx, b.Path, t.TempDir(), WithPassphrase(backupPhrase)))(t); in.Clients != b.Clients {
				t.Errorf("inside are %d clients, the header says %d", in.Clients, b.Clients)
			}
			backups++
			if err := os.Remove(b.Path); err != nil { // to look at each once
				t.Fatal(err)
			}
		}
		if len(named) > 0 {
			t.Errorf("acknowledged and not there: %v", named)
		}
		s := mustOpenSealed(t, path)
		for id := range clients {
			must(s.LatestRecord(ctx, id, KindText))(t)
		}
		must(s.BackUpTo(ctx, folder))(t)
		noLeftovers(t, path, folder)
		mustClose(t, s)
	}
	t.Logf("figure: %d kills during a backup survived, %d in the middle, %d backups, all whole", kills(t)/5, interrupted, backups)
}

// restoreOnly restores one backup.
func restoreOnly(path, backup string) error {
	ctx := context.Background()
	r, err := PrepareRestore(ctx, backup, path, WithPassphrase(backupPhrase))
	if err != nil {
		return err
	}
	if _, err := r.Exchange(ctx, time.Now()); err != nil {
		return err
	}
	fmt.Println("restored")
	os.Exit(0)
	return nil
}

// Whenever a restore is killed, the client file is the present one or the
// restored one, whole; where it is the restored one, the present one lies beside.
func TestKilledWhileRestoring(t *testing.T) {
	ctx := t.Context()
	rng := newRandom(t)
	s, _ := aPractice(t, true, 5)
	backup := must(s.BackUpTo(ctx, t.TempDir()))(t).Path
	late := newClient(t, s)
	mustClose(t, s)
	present := must(os.ReadFile(s.Path()))(t)
	put := func() string {
		path := newPath(t)
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o700), os.WriteFile(path, present, 0o600)); err != nil {
			t.Fatal(err)
		}
		return path
	}
	usual := howLong(t, "restore", put(), folderVariable+"="+backup) * 5 / 4
	interrupted, restored := 0, 0
	for range kills(t) / 5 {
		path := put()
		said, _ := killAfter(t, rng, usual, "restore", path, folderVariable+"="+backup)
		copies := must(filepath.Glob(path + restoreMark + "*"))(t)
		if inTheMiddle(t, path) {
			interrupted++
		}
		s := mustOpenSealed(t, path)
		if err := s.Check(ctx); err != nil {
			t.Error(err)
		}
		_, err := s.Client(ctx, late)
		switch clients := len(must(s.Clients(ctx, true))(t)); {
		case err == nil && clients == 6:
			if said != "" {
				t.Error("a restore was acknowledged and is not there")
			}
		case errors.Is(err, ErrNotFound) && clients == 5:
			restored++
			whole := ""
			for _, copied := range copies {
				if !strings.Contains(copied, freshMark) {
					whole = copied
				}
			}
			must(mustOpenSealed(t, whole).Client(ctx, late))(t)
		default:
			t.Errorf("%d clients, and %v", clients, err)
		}
		mustClose(t, s)
	}
	t.Logf("figure: %d kills during a restore survived, %d in the middle, %d after the exchange", kills(t)/5, interrupted, restored)
}
