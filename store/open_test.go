package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func TestASecondOpenerIsTold(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	id := newClient(t, s)
	link := filepath.Join(t.TempDir(), "another name.db")
	names := []string{path, filepath.Join(filepath.Dir(path), "..", "practice", "clients.db")}
	if err := os.Symlink(path, link); err == nil {
		names = append(names, link)
	} else {
		t.Logf("links were not tried: %v", err)
	}
	for _, name := range names {
		_, err := Open(t.Context(), name, Options{})
		wantErr(t, err, ErrInUse)
	}
	must(s.SaveDraft(t.Context(), id, FormIntake, []byte("the first goes on")))(t)
	mustClose(t, s)
	s = mustOpen(t, path, Options{})
	must(s.Draft(t.Context(), id, FormIntake))(t)
}

func TestFilesArePrivate(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no modes: the folder of the user is private there")
	}
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	newClient(t, s)
	if _, err := s.Backup(t.Context(), path+".copy"); err != nil {
		t.Fatal(err)
	}
	for _, name := range must(filepath.Glob(path + "*"))(t) {
		if mode := must(os.Stat(name))(t).Mode().Perm(); mode != 0o600 {
			t.Errorf("%s has mode %o", filepath.Base(name), mode)
		}
	}
	if mode := must(os.Stat(filepath.Dir(path)))(t).Mode().Perm(); mode != 0o700 {
		t.Errorf("folder has mode %o", mode)
	}
	mustClose(t, s)
	if err := os.Chmod(path, 0o644); err != nil {
		t.Fatal(err)
	}
	mustOpen(t, path, Options{})
	if mode := must(os.Stat(path))(t).Mode().Perm(); mode != 0o600 {
		t.Errorf("a file that others could read was opened and has mode %o", mode)
	}
}

func TestAClosedFileIsOneFile(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	newClient(t, s)
	mustClose(t, s)
	var left []string
	for _, name := range must(filepath.Glob(filepath.Join(filepath.Dir(path), "*")))(t) {
		left = append(left, filepath.Base(name))
	}
	if got := strings.Join(left, " "); got != "clients.db clients.db.lock" {
		t.Errorf("left are %s", got)
	}
}

func TestAwkwardPaths(t *testing.T) {
	for _, name := range []string{"a b", "100%41", "why?", "#1", "a&b=c", "Zoë Ünal", "semi;colon", "it's", "_pragma=x(1)"} {
		if runtime.GOOS == "windows" && strings.ContainsAny(name, "?") {
			continue
		}
		path := filepath.Join(t.TempDir(), name, name+".db")
		s := mustOpen(t, path, Options{})
		if _, err := s.Backup(t.Context(), path+" copy"); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		mustClose(t, s)
		if info, err := os.Stat(path); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The parent of the path is a file, so no folder can be made there. Unlike a
// folder without write permission, this stops root as well.
func TestAFolderThatCannotBeMade(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{filepath.Join(file, "clients.db"), filepath.Join(file, "practice", "clients.db")} {
		_, err := Open(t.Context(), path, Options{})
		wantErr(t, err, ErrReadOnlyFolder)
	}
	s := mustOpen(t, newPath(t), Options{})
	_, err := s.Backup(t.Context(), filepath.Join(file, "copy.db"))
	wantErr(t, err, ErrReadOnlyFolder)
}

func TestAFolderWithoutWritePermission(t *testing.T) {
	if runtime.GOOS == "windows" || os.Getuid() == 0 {
		t.Skip("modes do not stop this user; TestAnotherUsersFolder does it as somebody else where it can")
	}
	path := newPath(t)
	mustClose(t, mustOpen(t, path, Options{}))
	checkUnwritable(t, path)
}

// checkUnwritable takes away the right to write in the folder and wants that to
// be said, for a file that is there and for one that is not.
func checkUnwritable(t *testing.T, path string) {
	t.Helper()
	folder := filepath.Dir(path)
	if err := os.Chmod(folder, 0o500); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(folder, 0o700) })
	for _, name := range []string{path, filepath.Join(folder, "new.db")} {
		if _, err := Open(t.Context(), name, Options{}); !errors.Is(err, ErrReadOnlyFolder) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestBackup(t *testing.T) {
	ctx := t.Context()
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	f := fillClient(t, s, func(column string) []byte { return []byte("a " + column) })
	target := filepath.Join(t.TempDir(), "elsewhere", "copy.db")
	copied := must(s.Backup(ctx, target))(t)
	if copied.Rows["client"] != 1 || copied.Rows["record"] != 5 || copied.Bytes == 0 || copied.Path != target {
		t.Errorf("report: %+v", copied)
	}
	_, err := s.Backup(ctx, target)
	wantErr(t, err, ErrExists)
	must(s.SaveDraft(ctx, f.client.ID, FormIntake, []byte("after the copy")))(t)

	second := mustOpen(t, target, Options{})
	if err := second.Check(ctx); err != nil {
		t.Error(err)
	}
	got := must(second.ClientFile(ctx, f.client.ID))(t)
	if string(got.Drafts[0].Body) != "a draft" || string(got.Plans[0].Body) != "a plan" {
		t.Errorf("the copy has %+v", got)
	}
}

// A copy that does not come out right does not appear under its name.
func TestABackupThatFailsLeavesNothing(t *testing.T) {
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	fillClient(t, s, func(string) []byte { return bytes.Repeat([]byte("x"), 50_000) })
	conn := must(s.writer.Connx(t.Context()))(t)
	defer conn.Close()
	target := filepath.Join(t.TempDir(), "copy.db")
	err := writeBeside(target, func(fresh string) error {
		if err := copyInto(t.Context(), conn, fresh); err != nil {
			return err
		}
		if err := os.Truncate(fresh, 90_000); err != nil {
			return err
		}
		_, err := verify(t.Context(), fresh, 2)
		return err
	})
	wantErr(t, err, ErrDamaged)
	for name, copyIt := range map[string]func(fresh string) error{
		"another version": func(fresh string) error { return copyVerified(t.Context(), conn, fresh, 3) },
		"a row too few":   func(fresh string) error { return copyVerified(t.Context(), lossy{conn, t, fresh}, fresh, 2) },
	} {
		if err := writeBeside(target, copyIt); !errors.Is(err, ErrDamaged) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if left := must(filepath.Glob(target + "*"))(t); len(left) > 0 {
		t.Errorf("left are %v", left)
	}
}

// lossy is a connection whose copies lack a row.
type lossy struct {
	dbConn
	t    *testing.T
	copy string
}

func (l lossy) ExecContext(ctx context.Context, query string, args ...any) (sql.Result, error) {
	result, err := l.dbConn.ExecContext(ctx, query, args...)
	rawly(l.t, l.copy, "DELETE FROM draft")
	return result, err
}

func TestLeftoversOfAnInterruptedStartAreInNoOnesWay(t *testing.T) {
	path := newPath(t)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, end := range []string{".new", ".new-wal", ".new-shm", ".lock"} {
		if err := os.WriteFile(path+end, []byte("half"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	s := mustOpen(t, path, Options{})
	newClient(t, s)
	if _, err := os.Stat(path + ".new"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the half-made file: %v", err)
	}
}
