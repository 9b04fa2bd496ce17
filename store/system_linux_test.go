package store

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

func init() { moreRoles["fill"] = fillUntilRefused }

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
		t.Skipf("a small disk cannot be mounted here (%v); TestAFileThatMayNotGrow stands in for it", err)
	}
	t.Cleanup(func() { unix.Unmount(disk, unix.MNT_DETACH) })
	path := filepath.Join(disk, "clients.db")
	s := mustOpen(t, path, Options{})
	elsewhere := must(s.BackUpTo(t.Context(), t.TempDir()))(t).Path
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
	_, err = PrepareRestore(t.Context(), elsewhere, path, Secret{})
	wantErr(t, err, ErrDiskFull)
	for _, pattern := range []string{path + ".restoring*", path + ".copy*", filepath.Join(disk, "*.backup*"), filepath.Join(disk, "new.db?new*")} {
		if left := must(filepath.Glob(pattern))(t); len(left) > 0 {
			t.Errorf("left are %v", left)
		}
	}
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	mustClose(t, s)
}

// fillUntilRefused saves until it is refused, acknowledges each save, tries once
// more, and says in plain words what the matter is.
func fillUntilRefused(path string) error {
	ctx := context.Background()
	if err := limitFiles(fileLimit); err != nil {
		return err
	}
	s, err := Open(ctx, path, Options{})
	if err != nil {
		return err
	}
	c, err := s.CreateClient(ctx, nil)
	if err != nil {
		return err
	}
	fmt.Println("client", c.ID)
	for i := 1; i < 10_000; i++ {
		if _, err = s.SaveRecord(ctx, c.ID, KindText, i-1, killBody(i)); err != nil {
			break
		}
		fmt.Println("text", i)
	}
	if !errors.Is(err, ErrDiskFull) && !errors.Is(err, ErrDisk) {
		return err
	}
	_, err = s.SaveRecord(ctx, c.ID, KindHealth, 0, make([]byte, 2*fileLimit))
	fmt.Println("refused", Plain(err))
	os.Exit(0)
	return nil
}

// fileLimit is how long a file may become for a program with a limit, in bytes.
const fileLimit = 600_000

// There is room for the restored file but not for the copy of the present one:
// nothing is exchanged.
func TestAFullDiskAtTheExchange(t *testing.T) {
	disk := t.TempDir()
	if err := unix.Mount("none", disk, "tmpfs", 0, "size=3m"); err != nil {
		t.Skipf("a small disk cannot be mounted here: %v", err)
	}
	t.Cleanup(func() { unix.Unmount(disk, unix.MNT_DETACH) })
	ctx := t.Context()
	path := filepath.Join(disk, "clients.db")
	s := mustOpen(t, path, Options{})
	backup := must(s.BackUpTo(ctx, t.TempDir()))(t).Path
	id := must(s.CreateClient(ctx, map[Kind][]byte{KindText: make([]byte, 1_200_000)}))(t).ID
	r := must(PrepareRestore(ctx, backup, path, Secret{}))(t)
	mustClose(t, s)
	_ = os.WriteFile(filepath.Join(disk, "rest"), make([]byte, 3<<20), 0o600) // as much as fits
	_, err := r.Exchange(ctx, time.Now())
	wantErr(t, err, ErrDiskFull)
	if left := must(filepath.Glob(path + restoreMark + "*"))(t); len(left) > 0 {
		t.Errorf("left are %v", left)
	}
	if err := os.Remove(filepath.Join(disk, "rest")); err != nil {
		t.Fatal(err)
	}
	s = mustOpen(t, path, Options{})
	must(s.LatestRecord(ctx, id, KindText))(t)
	if err := s.Check(ctx); err != nil {
		t.Error(err)
	}
}

// limitFiles lets no file of this program become longer.
func limitFiles(bytes uint64) error {
	signal.Ignore(unix.SIGXFSZ) // so that the write is refused, not the program ended
	return unix.Setrlimit(unix.RLIMIT_FSIZE, &unix.Rlimit{Cur: bytes, Max: bytes})
}

// The system refuses to let a file grow, as a full disk does, wherever the test
// runs: a program with a limit on its files saves until it is refused.
func TestAFileThatMayNotGrow(t *testing.T) {
	path := newPath(t)
	cmd, out := startRole(t, "fill", path)
	var ack acknowledged
	var words string
	for lines := bufio.NewScanner(out); lines.Scan(); {
		what, value, _ := strings.Cut(lines.Text(), " ")
		switch what {
		case "client":
			ack.client = ClientID(value)
		case "text":
			ack.text = must(strconv.Atoi(value))(t)
		case "refused":
			words = value
		}
	}
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	if words != plainWords[ErrDiskFull] && words != plainWords[ErrDisk] {
		t.Errorf("refused with %q", words)
	}
	s := mustOpen(t, path, Options{}) // without the limit: room was made
	checkAcknowledged(t, s, ack)
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	must(s.SaveRecord(t.Context(), ack.client, KindHealth, 0, []byte("goes on")))(t)
	t.Logf("%d saves before the limit of %d bytes", ack.text, fileLimit)
	if ack.text == 0 {
		t.Error("nothing was saved before: the test shows nothing")
	}
}

// A disk that turned read-only, as failing ones and locked sticks do.
func TestAReadOnlyDisk(t *testing.T) {
	disk := t.TempDir()
	if err := unix.Mount("none", disk, "tmpfs", 0, "size=4m"); err != nil {
		t.Skipf("a small disk cannot be mounted here (%v); TestAFolderWithoutWritePermission and TestAnotherUsersFolder stand in for it", err)
	}
	t.Cleanup(func() { unix.Unmount(disk, unix.MNT_DETACH) })
	path := filepath.Join(disk, "clients.db")
	mustClose(t, mustOpen(t, path, Options{}))
	safe := mustOpen(t, newPath(t), Options{})
	if err := safe.SetBackupFolder(t.Context(), disk); err != nil {
		t.Fatal(err)
	}
	kept := must(safe.BackUp(t.Context()))(t)
	if err := unix.Mount("none", disk, "tmpfs", unix.MS_REMOUNT|unix.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	_, err := Open(t.Context(), path, Options{})
	wantErr(t, err, ErrReadOnlyFolder)
	_, err = safe.BackUp(t.Context())
	wantErr(t, err, ErrReadOnlyFolder)
	wantErr(t, safe.SetBackupFolder(t.Context(), disk), ErrReadOnlyFolder)
	// What lies there can still be restored, elsewhere.
	must(PrepareRestore(t.Context(), kept.Path, newPath(t), Secret{}))(t)
}
