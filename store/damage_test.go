package store

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// sampleFile makes a closed file with some clients and returns its path and ids.
func sampleFile(t *testing.T, clients int) (string, []ClientID) {
	t.Helper()
	path := newPath(t)
	s := mustOpen(t, path, Options{})
	ids := make([]ClientID, clients)
	for i := range ids {
		ids[i] = fillClient(t, s, sampleBody).client.ID
	}
	mustClose(t, s)
	return path, ids
}

func sampleBody(column string) []byte { return []byte(strings.Repeat(column+" ", 150)) }

// refusedUntouched wants Open to fail with want, and the file and what lies
// beside it to be as they were.
func refusedUntouched(t *testing.T, path string, want error) {
	t.Helper()
	before := allBytes(t, path)
	listing := strings.Join(must(filepath.Glob(path+"*"))(t), " ")
	s, err := Open(t.Context(), path, Options{})
	if err == nil {
		s.Close()
	}
	wantErr(t, err, want)
	if !bytes.Equal(before, allBytes(t, path)) {
		t.Error("the file was changed")
	}
	if now := strings.Join(must(filepath.Glob(path+"*"))(t), " "); strings.TrimSuffix(now, " "+path+".lock") != strings.TrimSuffix(listing, " "+path+".lock") {
		t.Errorf("beside the file lie %s, before it was %s", now, listing)
	}
}

func TestDamagedFilesAreRefusedAndLeftAlone(t *testing.T) {
	whole, _ := sampleFile(t, 3)
	content := must(os.ReadFile(whole))(t)
	scribbled := bytes.Clone(content)
	for i := 4096; i < 4196; i++ { // the head of the second page
		scribbled[i] = 0xFF
	}
	cases := map[string][]byte{
		"empty":           {},
		"one byte":        {'S'},
		"text":            []byte(strings.Repeat("This is a letter, not a client file. ", 400)),
		"zeros":           make([]byte, len(content)),
		"half":            content[:len(content)/2],
		"last page short": content[:len(content)-1],
		"header only":     content[:100],
		"scribbled":       scribbled,
	}
	for name, damaged := range cases {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "clients.db")
			if err := os.WriteFile(path, damaged, 0o600); err != nil {
				t.Fatal(err)
			}
			refusedUntouched(t, path, ErrDamaged)
		})
	}
}

func TestALogWithoutItsFileIsDamage(t *testing.T) {
	path := filepath.Join(t.TempDir(), "clients.db")
	if err := os.WriteFile(path+"-wal", []byte("what was saved last"), 0o600); err != nil {
		t.Fatal(err)
	}
	refusedUntouched(t, path, ErrDamaged)
}

func TestFilesThatAreNotOursAreLeftAlone(t *testing.T) {
	foreign := filepath.Join(t.TempDir(), "music.db")
	rawly(t, foreign, "CREATE TABLE song (title TEXT)", "INSERT INTO song VALUES ('la')")
	refusedUntouched(t, foreign, ErrForeign)
	folder := filepath.Join(t.TempDir(), "folder.db")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	_, err := Open(t.Context(), folder, Options{})
	wantErr(t, err, ErrForeign)
}

func TestANewerFileIsLeftAlone(t *testing.T) {
	path, ids := sampleFile(t, 1)
	rawly(t, path, "INSERT INTO goose_db_version (version_id, is_applied) VALUES (999, 1)")
	refusedUntouched(t, path, ErrNewerVersion)

	// The same when the newer program was killed and its log still waits.
	newer := must(os.ReadFile(path))(t)
	live := openPoolForTest(t, path)
	if _, err := live.Exec("UPDATE client SET archived_at = created_at"); err != nil {
		t.Fatal(err)
	}
	killed := filepath.Join(t.TempDir(), "clients.db")
	for _, end := range []string{"", "-wal"} {
		if err := os.WriteFile(killed+end, must(os.ReadFile(path+end))(t), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	before := must(os.ReadFile(killed + "-wal"))(t)
	_, err := Open(t.Context(), killed, Options{})
	wantErr(t, err, ErrNewerVersion)
	if !bytes.Equal(newer, must(os.ReadFile(killed))(t)) || !bytes.Equal(before, must(os.ReadFile(killed+"-wal"))(t)) {
		t.Error("the file or its log was changed")
	}
	if len(ids) != 1 || len(before) == 0 {
		t.Fatal("the sample is not what the test needs")
	}
}

// A flipped bit in the description of a table is seen at the opening, not when
// some statement stumbles over it.
func TestAFlippedBitInTheSchemaIsSeen(t *testing.T) {
	path, _ := sampleFile(t, 1)
	content := must(os.ReadFile(path))(t)
	at := bytes.Index(content, []byte("last_opened_at TEXT"))
	if at < 0 {
		t.Fatal("the description is not where this test looks for it")
	}
	content[at] ^= 2
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	refusedUntouched(t, path, ErrDamaged)
}

// One flipped bit anywhere: the file is refused, or a body is refused, or what
// comes back is what was kept, or a clear column differs. A body that comes
// back different would be a lie, and is never accepted.
func TestAFlippedBitNeverBecomesAnotherBody(t *testing.T) {
	path, ids := sampleFile(t, 2)
	content := must(os.ReadFile(path))(t)
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	rng := rand.New(rand.NewPCG(seed, 0))
	folder := t.TempDir()
	refused, unreadable, sound := 0, 0, 0
	for range times(t, flipVariable, 100) {
		flipped := bytes.Clone(content)
		bit := rng.IntN(len(flipped) * 8)
		flipped[bit/8] ^= 1 << (bit % 8)
		name := filepath.Join(folder, "clients.db")
		for _, old := range must(filepath.Glob(name + "*"))(t) {
			os.Remove(old)
		}
		if err := os.WriteFile(name, flipped, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(t.Context(), name, Options{})
		if err != nil {
			if Plain(err) == plainUnknown {
				t.Errorf("bit %d: no plain words for %v", bit, err)
			}
			refused++
			continue
		}
		if checkBodies(t, s, bit, ids) {
			sound++
		} else {
			unreadable++
		}
		s.Close()
	}
	t.Logf("refused %d, a body refused %d, all bodies whole %d", refused, unreadable, sound)
	if refused == 0 || unreadable == 0 {
		t.Error("the flips found nothing to break: the test shows nothing")
	}
}

// checkBodies reads all clients and reports whether all bodies came back. Those
// that do must be the ones that were kept.
func checkBodies(t *testing.T, s *Store, bit int, ids []ClientID) bool {
	t.Helper()
	whole := true
	for _, id := range ids {
		f, err := s.ClientFile(t.Context(), id)
		if err != nil {
			if !errors.Is(err, ErrDamaged) && !errors.Is(err, ErrNotFound) {
				t.Errorf("bit %d: %v", bit, err)
			}
			whole = false
			continue
		}
		for kind, r := range f.Records {
			if !bytes.Equal(r.Body, sampleBody(string(kind))) {
				t.Errorf("bit %d: %s is another body", bit, kind)
			}
		}
		for _, d := range f.Drafts {
			if !bytes.Equal(d.Body, sampleBody("draft")) {
				t.Errorf("bit %d: the draft is another body", bit)
			}
		}
		for _, i := range f.Intakes {
			if !bytes.Equal(i.Body, sampleBody("intake")) {
				t.Errorf("bit %d: the intake is another body", bit)
			}
		}
		for _, p := range f.Plans {
			if !bytes.Equal(p.Body, sampleBody("plan")) || !bytes.Equal(p.HandoutSettings, sampleBody("settings")) {
				t.Errorf("bit %d: the plan is another body", bit)
			}
		}
	}
	return whole
}

// The outside check: the database's own command line reads the file, sealed or
// not, the copy before an update, and what was restored from a backup.
func TestTheCommandLineToolFindsTheFileSound(t *testing.T) {
	tool, err := exec.LookPath("sqlite3")
	if err != nil {
		t.Skip("NOT CHECKED from outside: the command line tool sqlite3 is not installed (apt-get install sqlite3)")
	}
	ctx := t.Context()
	sound := func(what, path string) {
		t.Helper()
		out, err := exec.CommandContext(ctx, tool, "-readonly", path,
			"PRAGMA integrity_check; PRAGMA foreign_key_check; SELECT count(*) FROM client; SELECT weight_kg FROM intake LIMIT 1").CombinedOutput()
		if err != nil || string(out) != "ok\n3\n72.5\n" {
			t.Errorf("%s: sqlite3 says %q, %v", what, out, err)
		}
	}
	for _, sealed := range []bool{false, true} {
		s, _ := aPractice(t, sealed, 3)
		backup := must(s.BackUpTo(ctx, t.TempDir()))(t).Path
		sound(fmt.Sprint("open, sealed ", sealed), s.Path())
		mustClose(t, s)
		sound(fmt.Sprint("closed, sealed ", sealed), s.Path())
		secret := Secret{}
		if sealed {
			secret = WithPassphrase(backupPhrase)
		}
		path := newPath(t)
		r := must(PrepareRestore(ctx, backup, path, secret))(t)
		must(r.Exchange(ctx, time.Now()))(t)
		sound(fmt.Sprint("restored, sealed ", sealed), path)
	}
	path := newPath(t)
	unpackKept(t, 1, path)
	mustClose(t, mustOpen(t, path, Options{}))
	sound("brought up to date", path)
	for _, name := range must(filepath.Glob(path + beforeMark + "*"))(t) {
		sound("copy before the update", name)
	}
}
