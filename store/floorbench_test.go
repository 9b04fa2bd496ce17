package store

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"golang.org/x/crypto/scrypt"

	"handbreadth/store/vault"
)

// BenchmarkPlainSave is the floor of BenchmarkSaveDraftSealed: the same bytes in
// a row of one table of plain SQLite, as durable, with nothing around it.
func BenchmarkPlainSave(b *testing.B) {
	db := openPoolForTest(b, filepath.Join(b.TempDir(), "plain.db"))
	for _, statement := range []string{
		"CREATE TABLE note (id TEXT NOT NULL PRIMARY KEY, body BLOB NOT NULL)", "INSERT INTO note VALUES ('one', x'00')",
	} {
		if _, err := db.Exec(statement); err != nil {
			b.Fatal(err)
		}
	}
	body := bytes.Clone(formBody)
	for b.Loop() {
		for i := range body {
			body[i]++ // the database does not write what has not changed
		}
		if _, err := db.Exec("UPDATE note SET body = ? WHERE id = 'one'", body); err != nil {
			b.Fatal(err)
		}
	}
}

// benchmarkClients is how many clients the practice of the benchmarks has.
const benchmarkClients = 500

// aFullPractice is a sealed file of some size, filled without waiting for the
// disk.
func aFullPractice(b *testing.B) *Store {
	b.Helper()
	s, _ := aPractice(b, true, 0)
	if _, err := s.writer.Exec("PRAGMA synchronous = OFF"); err != nil {
		b.Fatal(err)
	}
	for range benchmarkClients {
		fillClient(b, s, func(string) []byte { return formBody })
	}
	if _, err := s.writer.Exec("PRAGMA synchronous = FULL"); err != nil {
		b.Fatal(err)
	}
	return s
}

// BenchmarkBackUp makes and verifies a backup of 500 clients.
func BenchmarkBackUp(b *testing.B) {
	s := aFullPractice(b)
	folder := b.TempDir()
	for b.Loop() {
		made := must(s.BackUpTo(b.Context(), folder))(b)
		if err := os.Remove(made.Path); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRestore unpacks, checks and exchanges a backup of 500 clients.
func BenchmarkRestore(b *testing.B) {
	s := aFullPractice(b)
	backup := must(s.BackUpTo(b.Context(), b.TempDir()))(b).Path
	path := newPath(b)
	for b.Loop() {
		r := must(PrepareRestore(b.Context(), backup, path, WithPassphrase(backupPhrase)))(b)
		kept := must(r.Exchange(b.Context(), time.Now()))(b)
		if err := removeAll([]string{kept}); kept != "" && err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(must(os.Stat(path))(b).Size())/1e6, "MB")
}

// BenchmarkCopyFile is the floor of both: the same file copied to the disk.
func BenchmarkCopyFile(b *testing.B) {
	s := aFullPractice(b)
	path := s.Path()
	mustClose(b, s)
	for b.Loop() {
		if err := plainCopy(path, filepath.Join(b.TempDir(), "copy")); err != nil {
			b.Fatal(err)
		}
	}
}

func plainCopy(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	defer out.Close()
	if _, err := io.Copy(out, in); err != nil {
		return err
	}
	return out.Sync()
}

// BenchmarkUnlockFile opens a locked file with its passphrase, at the effort that
// this machine measures for a new one.
func BenchmarkUnlockFile(b *testing.B) {
	s := mustOpen(b, newPath(b), Options{Effort: must(vault.MeasureEffort())(b)})
	must(s.SetPassphrase(b.Context(), backupPhrase, nil))(b)
	for b.Loop() {
		s.Lock()
		if err := s.Unlock(context.Background(), backupPhrase); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBareScrypt is its floor: the same work and nothing else.
func BenchmarkBareScrypt(b *testing.B) {
	effort := must(vault.MeasureEffort())(b)
	for b.Loop() {
		must(scrypt.Key([]byte(backupPhrase), make([]byte, 16), 1<<effort, 8, 1, 32))(b)
	}
}
