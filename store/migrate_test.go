package store

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/pressly/goose/v3"
)

// with returns the shipped migrations and more, or fewer when upTo is not 0.
func with(t *testing.T, upTo int64, more map[string]string) fs.FS {
	t.Helper()
	files := fstest.MapFS{}
	for _, name := range must(fs.Glob(shipped(), "*.sql"))(t) {
		if n := must(goose.NumericComponent(name))(t); upTo == 0 || n <= upTo {
			files[name] = &fstest.MapFile{Data: must(fs.ReadFile(shipped(), name))(t)}
		}
	}
	for name, text := range more {
		files[name] = &fstest.MapFile{Data: []byte("-- +goose Up\n" + text)}
	}
	return files
}

func TestMigrationsAreNumberedWithoutAGap(t *testing.T) {
	names := must(fs.Glob(shipped(), "*"))(t)
	for i, name := range names { // sorted by name
		if !strings.HasPrefix(name, fmt.Sprintf("%04d_", i+1)) {
			t.Errorf("migration %d is called %s", i+1, name)
		}
		text := string(must(fs.ReadFile(shipped(), name))(t))
		if strings.Contains(text, "+goose Down") || strings.Contains(text, "NO TRANSACTION") {
			t.Errorf("%s: a migration goes up only, and in a transaction", name)
		}
	}
	if latest := must(latestVersion(shipped()))(t); latest != int64(len(names)) {
		t.Errorf("latest version %d of %d files", latest, len(names))
	}
}

func TestMigrationsRunInTheOrderOfTheirNumbers(t *testing.T) {
	more := map[string]string{
		"0010_c.sql": "INSERT INTO meta SELECT 'c', value || 'c' FROM meta WHERE name = 'b';",
		"0009_b.sql": "INSERT INTO meta SELECT 'b', value || 'b' FROM meta WHERE name = 'a';",
		"0008_a.sql": "INSERT INTO meta VALUES ('a', 'a');",
	}
	s := must(openWith(t.Context(), newPath(t), Options{}, with(t, 0, more)))(t)
	defer s.Close()
	if got := must(s.Meta(t.Context(), "c"))(t); got != "abc" {
		t.Errorf("ran as %q", got)
	}
}

func TestAFailingUpdateLeavesTheFileAsItWas(t *testing.T) {
	latest := must(latestVersion(shipped()))(t)
	path, ids := sampleFile(t, 2)
	before := must(os.ReadFile(path))(t)
	more := map[string]string{
		fmt.Sprintf("%04d_good.sql", latest+1): "ALTER TABLE client ADD COLUMN good TEXT;",
		fmt.Sprintf("%04d_bad.sql", latest+2):  "CREATE TABLE half (a TEXT); INSERT INTO nowhere VALUES (1);",
	}
	_, err := openWith(t.Context(), path, Options{}, with(t, 0, more))
	wantErr(t, err, ErrUpdate)
	if !bytes.Equal(before, must(os.ReadFile(path))(t)) {
		t.Error("the file was changed")
	}
	s := mustOpen(t, path, Options{})
	must(s.ClientFile(t.Context(), ids[1]))(t)
	if copies := must(s.OldCopies())(t); len(copies) != 1 {
		t.Errorf("copies: %v", copies)
	}
	if left := must(filepath.Glob(path + ".new*"))(t); len(left) > 0 {
		t.Errorf("left are %v", left)
	}
}

// A migration may rebuild a table that others refer to, and change guarded rows:
// nothing cascades, and the guards come back.
func TestAMigrationMayRebuildTables(t *testing.T) {
	path, ids := sampleFile(t, 2)
	more := map[string]string{
		"0050_rebuild.sql": `CREATE TABLE fresh (id TEXT NOT NULL PRIMARY KEY, created_at TEXT NOT NULL,
			updated_at TEXT NOT NULL, last_opened_at TEXT NOT NULL, archived_at TEXT, next_visit TEXT, room TEXT);
			INSERT INTO fresh SELECT id, created_at, updated_at, last_opened_at, archived_at, next_visit, 'a' FROM client;
			DROP TABLE client;
			ALTER TABLE fresh RENAME TO client;
			UPDATE intake SET pal = NULL;`,
	}
	s := must(openWith(t.Context(), path, Options{}, with(t, 0, more)))(t)
	defer s.Close()
	f := must(s.ClientFile(t.Context(), ids[0]))(t)
	if len(f.Records) != 5 || len(f.Plans) != 1 || f.Intakes[0].PAL != nil {
		t.Errorf("after the migration: %+v", f)
	}
	_, err := s.writer.Exec("UPDATE intake SET weight_kg = 1")
	wantErr(t, explain(err), ErrImmutable)
	if err := s.DeleteClient(t.Context(), ids[1]); err != nil {
		t.Error(err)
	}
	if n := must(tableCounts(t.Context(), s.reader))(t)["record"]; n != 5 {
		t.Errorf("%d records after deleting one of two clients", n)
	}
}

// A migration that loses what others refer to is refused.
func TestAMigrationThatBreaksReferencesIsRefused(t *testing.T) {
	path, ids := sampleFile(t, 1)
	_, err := openWith(t.Context(), path, Options{}, with(t, 0, map[string]string{"0050_lose.sql": "DELETE FROM client;"}))
	wantErr(t, err, ErrUpdate)
	must(mustOpen(t, path, Options{}).ClientFile(t.Context(), ids[0]))(t)
}

func TestAStoppedUpdateLeavesTheFileAsItWas(t *testing.T) {
	path := newPath(t)
	unpackKept(t, 1, path)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := Open(ctx, path, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if _, err := verify(t.Context(), path, 1); err != nil {
		t.Error(err)
	}
	mustOpen(t, path, Options{})
}

// A copy before an update that does not come out right is not taken for one.
func TestACopyThatFailsLeavesNothing(t *testing.T) {
	s := mustOpen(t, newPath(t), Options{})
	fillClient(t, s, func(string) []byte { return bytes.Repeat([]byte("x"), 50_000) })
	conn := must(s.writer.Connx(t.Context()))(t)
	defer conn.Close()
	latest := must(latestVersion(shipped()))(t)
	target := filepath.Join(t.TempDir(), "copy.db")
	for name, copyIt := range map[string]func(fresh string) error{
		"cut short": func(fresh string) error {
			if err := copyInto(t.Context(), conn, fresh); err != nil {
				return err
			}
			if err := os.Truncate(fresh, 90_000); err != nil {
				return err
			}
			_, err := verify(t.Context(), fresh, latest)
			return err
		},
		"another version": func(fresh string) error { return copyVerified(t.Context(), conn, fresh, latest+1) },
		"a row too few":   func(fresh string) error { return copyVerified(t.Context(), lossy{conn, t, fresh}, fresh, latest) },
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
