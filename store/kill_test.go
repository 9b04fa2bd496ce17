package store

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"handbreadth/store/vault"
)

// The test binary runs itself again as a program that is killed. These
// variables tell it what to do, and how often to try (the usual number is for
// every day, a larger one for a long run).
const (
	roleVariable = "HANDBREADTH_STORE_ROLE"
	pathVariable = "HANDBREADTH_STORE_PATH"
	killVariable = "HANDBREADTH_KILLS"
	flipVariable = "HANDBREADTH_FLIPS"
	// folderVariable is the folder of backups, or the backup.
	folderVariable = "HANDBREADTH_STORE_FOLDER"
)

// moreRoles are those that only some systems have.
var moreRoles = map[string]func(path string) error{}

func TestMain(m *testing.M) {
	var err error
	switch role := os.Getenv(roleVariable); role {
	case "":
		os.Exit(m.Run())
	case "write":
		err = writeUntilKilled(os.Getenv(pathVariable))
	case "open":
		err = openOnly(os.Getenv(pathVariable))
	case "back up":
		err = backUpUntilKilled(os.Getenv(pathVariable), os.Getenv(folderVariable))
	case "restore":
		err = restoreOnly(os.Getenv(pathVariable), os.Getenv(folderVariable))
	default:
		err = fmt.Errorf("unknown role %q", role)
		if other, ok := moreRoles[role]; ok {
			err = other(os.Getenv(pathVariable))
		}
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

// openOnly tells on standard output what the opening of the file came to.
func openOnly(path string) error {
	s, err := Open(context.Background(), path, Options{})
	switch {
	case errors.Is(err, ErrReadOnlyFolder):
		fmt.Println("read-only folder")
	case errors.Is(err, ErrInUse):
		fmt.Println("in use")
	case err != nil:
		return err
	default:
		fmt.Println("opened")
		err = s.Close()
	}
	if err == nil || errors.Is(err, ErrReadOnlyFolder) || errors.Is(err, ErrInUse) {
		os.Exit(0)
	}
	return err
}

// openToBeKilled opens a file, with the passphrase of the tests where it has one.
func openToBeKilled(ctx context.Context, path string) (*Store, error) {
	s, err := Open(ctx, path, Options{Effort: vault.TestEffort})
	if err == nil && s.Locked() {
		err = s.Unlock(ctx, backupPhrase)
	}
	return s, err
}

// mustOpenSealed opens a file as openToBeKilled does.
func mustOpenSealed(t testing.TB, path string) *Store {
	t.Helper()
	s := must(openToBeKilled(t.Context(), path))(t)
	t.Cleanup(func() { s.Close() })
	return s
}

// writeUntilKilled makes a client, then saves its draft and its text again and
// again, and acknowledges each save once the store has returned.
func writeUntilKilled(path string) error {
	ctx := context.Background()
	s, err := openToBeKilled(ctx, path)
	if err != nil {
		return err
	}
	c, err := s.CreateClient(ctx, nil)
	if err != nil {
		return err
	}
	fmt.Println("client", c.ID)
	for i := 1; ; i++ {
		d, err := s.SaveDraft(ctx, c.ID, FormIntake, killBody(i))
		if err != nil {
			return err
		}
		fmt.Println("draft", d.Revision)
		r, err := s.SaveRecord(ctx, c.ID, KindText, i-1, killBody(i))
		if err != nil {
			return err
		}
		fmt.Println("text", r.Version)
	}
}

func killBody(i int) []byte { return []byte(strings.Repeat(strconv.Itoa(i)+" ", 40+i%400)) }

// acknowledged is what a killed writer had been told to be safe.
type acknowledged struct {
	client      ClientID
	draft, text int
}

// runAndKill starts a writer, lets it acknowledge a random number of lines and
// a random moment pass, and kills it.
func runAndKill(t *testing.T, path string, rng *rand.Rand) acknowledged {
	t.Helper()
	cmd, out := startRole(t, "write", path)
	lines := bufio.NewScanner(out)
	var ack acknowledged
	left := 1 + rng.IntN(120)
	for lines.Scan() {
		what, value, _ := strings.Cut(lines.Text(), " ")
		n, _ := strconv.Atoi(value)
		switch what {
		case "client":
			ack.client = ClientID(value)
		case "draft":
			ack.draft = n
		case "text":
			ack.text = n
		}
		if left--; left == 0 {
			time.Sleep(time.Duration(rng.IntN(3000)) * time.Microsecond) // to land inside a save
			if err := cmd.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	if left > 0 {
		t.Fatal("the writer ended by itself")
	}
	if err := cmd.Wait(); err == nil {
		t.Fatal("the writer was not killed")
	}
	return ack
}

func startRole(t *testing.T, role, path string, more ...string) (*exec.Cmd, io.Reader) {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), must(os.Executable())(t), "-test.run=^$")
	cmd.Env = append(append(os.Environ(), roleVariable+"="+role, pathVariable+"="+path), more...)
	cmd.Stderr = os.Stderr
	out := must(cmd.StdoutPipe())(t)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	return cmd, out
}

// kills is how often the writing program is killed; the tests that kill at
// other work do it a fifth as often.
func kills(t *testing.T) int { return times(t, killVariable, 50) }

// times is the number that an environment variable gives, or the usual one.
func times(t *testing.T, variable string, usual int) int {
	if text := os.Getenv(variable); text != "" {
		return must(strconv.Atoi(text))(t)
	}
	return usual
}

func newRandom(t *testing.T) *rand.Rand {
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	return rand.New(rand.NewPCG(seed, 0))
}

// killsAFile is how many kills one file goes through: each finds what the ones
// before left, and all of it is looked at after each.
const killsAFile = 10

// Whatever was acknowledged before kill -9 is there afterwards, whole, and so
// are the database and the audit trail. (Loss of power is not tried here: that
// rests on synchronous=FULL.)
func TestNothingAcknowledgedIsLostWhenKilled(t *testing.T) {
	rng := newRandom(t)
	saves := 0
	var path string
	var all []acknowledged
	for i := range kills(t) {
		if i%killsAFile == 0 {
			practice, _ := aPractice(t, i%(2*killsAFile) == 0, 0) // sealed and not in turns
			path, all = practice.Path(), nil
			mustClose(t, practice)
		}
		ack := runAndKill(t, path, rng)
		all = append(all, ack)
		saves += ack.draft + ack.text
		s := mustOpenSealed(t, path)
		for _, ack := range all {
			checkAcknowledged(t, s, ack)
		}
		if err := s.Check(t.Context()); err != nil {
			t.Fatal(err)
		}
		mustClose(t, s)
	}
	t.Logf("figure: %d kills while saving survived, %d acknowledged saves, all there", kills(t), saves)
}

func checkAcknowledged(t *testing.T, s *Store, ack acknowledged) {
	t.Helper()
	if ack.client == "" {
		return // killed before anything was acknowledged
	}
	must(s.Client(t.Context(), ack.client))(t)
	if ack.draft > 0 {
		d := must(s.Draft(t.Context(), ack.client, FormIntake))(t)
		if d.Revision < ack.draft || string(d.Body) != string(killBody(d.Revision)) {
			t.Errorf("draft %d was acknowledged, %d is there", ack.draft, d.Revision)
		}
	}
	history := must(s.RecordHistory(t.Context(), ack.client, KindText))(t)
	if len(history) < ack.text {
		t.Errorf("text %d was acknowledged, %d are there", ack.text, len(history))
	}
	for i, h := range history {
		r := must(s.RecordAt(t.Context(), ack.client, KindText, i+1))(t)
		if h.Version != i+1 || string(r.Body) != string(killBody(i+1)) {
			t.Errorf("text version %d is not what was saved", i+1)
		}
	}
}

// A program killed while it makes a new file leaves nothing that keeps the next
// one from starting.
func TestKilledWhileMakingTheFile(t *testing.T) {
	rng := newRandom(t)
	usual := 2 * howLong(t, "open", newPath(t))
	made := 0
	for range kills(t) / 5 {
		path := newPath(t)
		said, late := killAfter(t, rng, usual, "write", path)
		if late {
			t.Fatal("the writer was not killed")
		}
		if _, err := os.Stat(path); err == nil {
			made++
		}
		s := mustOpen(t, path, Options{})
		if len(said) > 0 && len(must(s.Clients(t.Context(), true))(t)) != 1 {
			t.Errorf("an acknowledged client is lost after %q", said)
		}
		if err := s.Check(t.Context()); err != nil {
			t.Error(err)
		}
		mustClose(t, s)
		if left := must(filepath.Glob(path + ".new*"))(t); len(left) > 0 {
			t.Errorf("left are %v", left)
		}
	}
	t.Logf("figure: %d kills while making a file survived, %d of them after it was there", kills(t)/5, made)
}

// The lock is held between programs, and a killed one does not leave it behind.
func TestTheLockBetweenPrograms(t *testing.T) {
	path := newPath(t)
	cmd, out := startRole(t, "write", path)
	if !bufio.NewScanner(out).Scan() {
		t.Fatal("the other program said nothing")
	}
	_, err := Open(t.Context(), path, Options{})
	wantErr(t, err, ErrInUse)
	if err := cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	cmd.Wait()
	mustOpen(t, path, Options{})
	second, answer := startRole(t, "open", path)
	if said := string(must(io.ReadAll(answer))(t)); said != "in use\n" {
		t.Errorf("the other program said %q", said)
	}
	if err := second.Wait(); err != nil {
		t.Error(err)
	}
}
