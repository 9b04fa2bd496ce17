package store

import (
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
	must(s.BackUpTo(t.Context(), filepath.Dir(path)))(t)
	for _, name := range must(filepath.Glob(filepath.Join(filepath.Dir(path), "*")))(t) {
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
		if _, err := s.BackUpTo(t.Context(), filepath.Dir(path)); err != nil {
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
	_, err := s.BackUpTo(t.Context(), filepath.Join(file, "copies"))
	wantErr(t, err, ErrFolderGone)
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
