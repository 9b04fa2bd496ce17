package store

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"golang.org/x/sys/unix"
)

// Root ignores modes, so the test runs itself as another user, in a folder where
// that user may read and not write.
func TestAnotherUsersFolder(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root can become another user; TestAFolderWithoutWritePermission does it for this one")
	}
	const nobody = 65534
	base := must(os.MkdirTemp("", "handbreadth"))(t)
	t.Cleanup(func() { os.RemoveAll(base) })
	program := filepath.Join(base, "program")
	if err := os.WriteFile(program, must(os.ReadFile(must(os.Executable())(t)))(t), 0o755); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(base, "practice")
	path := filepath.Join(folder, "clients.db")
	mustClose(t, mustOpen(t, path, Options{}))
	for _, name := range []string{path, path + ".lock"} {
		if err := os.Chown(name, nobody, nobody); err != nil {
			t.Fatal(err)
		}
	}
	for mode, want := range map[os.FileMode]string{0o755: "read-only folder\n", 0o777: "opened\n"} {
		if err := os.Chmod(base, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.Chmod(folder, mode); err != nil {
			t.Fatal(err)
		}
		cmd := exec.CommandContext(t.Context(), program)
		cmd.Dir = base
		cmd.Env = []string{roleVariable + "=open", pathVariable + "=" + path}
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		out := must(cmd.StdoutPipe())(t)
		var trouble bytes.Buffer
		cmd.Stderr = &trouble
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		said := string(must(io.ReadAll(out))(t))
		if err := cmd.Wait(); err != nil || said != want {
			t.Errorf("mode %o: said %q (%s), want %q, %v", mode, said, trouble.String(), want, err)
		}
	}
}

// A disk of one megabyte, really full.
func TestAFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := unix.Mount("none", disk, "tmpfs", 0, "size=1m"); err != nil {
		t.Skipf("a small disk cannot be mounted here (%v); TestAFullFile stands in for it", err)
	}
	t.Cleanup(func() { unix.Unmount(disk, unix.MNT_DETACH) })
	path := filepath.Join(disk, "clients.db")
	s := mustOpen(t, path, Options{})
	ballast := filepath.Join(disk, "ballast")
	fillUp(t, s, func() error { return os.Remove(ballast) }, func() error {
		return os.WriteFile(ballast, make([]byte, 300_000), 0o600)
	})
	if err := os.WriteFile(filepath.Join(disk, "rest"), make([]byte, 1<<20), 0o600); err == nil {
		t.Fatal("the disk is larger than it was made")
	}
	_, err := s.BackUpTo(t.Context(), disk)
	wantErr(t, err, ErrDiskFull)
	_, err = Open(t.Context(), filepath.Join(disk, "new.db"), Options{})
	wantErr(t, err, ErrDiskFull)
	for _, pattern := range []string{path + ".copy*", filepath.Join(disk, "*.backup*"), filepath.Join(disk, "new.db?new*")} {
		if left := must(filepath.Glob(pattern))(t); len(left) > 0 {
			t.Errorf("left are %v", left)
		}
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	mustClose(t, s)
}
