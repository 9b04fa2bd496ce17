package store

import (
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/domain/unit"
	"handbreadth/store/vault"
)

// keptFolder has a file of every schema that was ever shipped, as the program
// of its day left it. They are invented clients, not sealed.
const keptFolder = "../testdata/store"

// keepVariable names a folder into which TestKeepAFileOfThisSchema writes.
const keepVariable = "HANDBREADTH_KEEP_SCHEMA"

func keptName(version int64) string { return fmt.Sprintf("schema-%04d.db.gz", version) }

// From the fourth schema on a file with a passphrase is kept as well, with its
// recovery code beside it.
const (
	firstSealed = 4
	keptPhrase  = "an invented practice of three"
)

func keptSealedName(version int64, end string) string {
	return fmt.Sprintf("schema-%04d-sealed.%s", version, end)
}

// TestKeepAFileOfThisSchema writes the file to keep when a schema is released:
//
//	HANDBREADTH_KEEP_SCHEMA=$PWD/testdata/store go test -run KeepAFile ./store
func TestKeepAFileOfThisSchema(t *testing.T) {
	folder := os.Getenv(keepVariable)
	if folder == "" {
		t.Skipf("a tool, not a check: it writes the file to keep where %s names a folder", keepVariable)
	}
	version := must(latestVersion(shipped()))(t)
	path := newPath(t)
	s := mustOpen(t, path, Options{Effort: vault.TestEffort})
	fillKept(t, s)
	mustClose(t, s)
	packKept(t, path, filepath.Join(folder, keptName(version)))
	s = mustOpen(t, path, Options{Effort: vault.TestEffort})
	code := must(s.SetPassphrase(t.Context(), keptPhrase, nil))(t)
	mustClose(t, s)
	packKept(t, path, filepath.Join(folder, keptSealedName(version, "db.gz")))
	if err := os.WriteFile(filepath.Join(folder, keptSealedName(version, "txt")), []byte(code.String()+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
}

func packKept(t *testing.T, from, to string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		t.Fatal(err)
	}
	out := must(os.Create(to))(t)
	packer := gzip.NewWriter(out)
	if _, err := packer.Write(must(os.ReadFile(from))(t)); err != nil {
		t.Fatal(err)
	}
	if err := packer.Close(); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
}

// unpackKept puts the kept file of a schema at path.
func unpackKept(t *testing.T, version int64, path string) {
	t.Helper()
	unpackFile(t, keptName(version), path)
}

func unpackFile(t *testing.T, name, path string) {
	t.Helper()
	in, err := os.Open(filepath.Join(keptFolder, name))
	if err != nil {
		t.Fatalf("every shipped schema needs its kept file, see TestKeepAFileOfThisSchema: %v", err)
	}
	defer in.Close()
	content := must(io.ReadAll(must(gzip.NewReader(in))(t)))(t)
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

// fillKept puts something of everything into a file, through the program's own
// calls: what a practice of three invented clients would have.
func fillKept(t *testing.T, s *Store) {
	t.Helper()
	ctx := t.Context()
	var all []full
	for _, name := range []string{"Ottoline Quill", "Bartholomew Fennimore", "Zoë Åkerblom"} {
		all = append(all, fillClient(t, s, func(column string) []byte { return []byte(column + " of " + name) }))
	}
	first, second, third := all[0], all[1], all[2]
	for version := 1; version < 4; version++ {
		must(s.SaveRecord(ctx, first.client.ID, KindText, version, fmt.Appendf(nil, "note, version %d", version+1)))(t)
	}
	for week := range 3 {
		i := must(s.AddIntake(ctx, NewIntake{
			ClientID: first.client.ID, VisitDate: unit.FromTime(time.Date(2026, 3, 9+7*week, 0, 0, 0, 0, time.UTC)),
			Height: 168, Weight: unit.Kilogram(72 - 0.4*float64(week)), Body: fmt.Appendf(nil, "visit %d", week+2),
		}))(t)
		p := must(s.AddPlan(ctx, NewPlan{
			ClientID: first.client.ID, IntakeID: i.ID, Body: fmt.Appendf(nil, "plan %d", week+2), HandoutSettings: []byte("{}"),
		}))(t)
		must(s.AddHandout(ctx, p.ID, "pocket_card", fmt.Appendf(nil, "card %d", week)))(t)
	}
	if err := s.SetNextVisit(ctx, first.client.ID, unit.Date{Year: 2026, Month: time.April, Day: 20}); err != nil {
		t.Fatal(err)
	}
	if err := s.ArchiveClient(ctx, second.client.ID); err != nil {
		t.Fatal(err)
	}
	if err := s.MarkOpened(ctx, third.client.ID); err != nil {
		t.Fatal(err)
	}
	if must(hasTable(s.writer, "setting"))(t) {
		for version := range 2 {
			if err := s.PutSetting(ctx, "practice", fmt.Appendf(nil, "The Invented Practice, %d", version)); err != nil {
				t.Fatal(err)
			}
		}
		if err := s.SetMeta(ctx, "window.size", "1366x768"); err != nil {
			t.Fatal(err)
		}
	}
}

func hasTable(db *sqlx.DB, name string) (bool, error) {
	var n int
	err := db.Get(&n, "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = ?", name)
	return n == 1, err
}

// contents are all rows of all tables, as text, by "table.column,column".
type contents map[string][]string

// readContents reads every table but the list of migrations.
func readContents(t *testing.T, db *sqlx.DB) contents {
	t.Helper()
	var tables []string
	if err := db.Select(&tables, `SELECT name FROM sqlite_schema WHERE type = 'table'
		AND name NOT LIKE 'sqlite\_%' ESCAPE '\' AND name <> 'goose_db_version' ORDER BY name`); err != nil {
		t.Fatal(err)
	}
	found := contents{}
	for _, table := range tables {
		var columns []string
		if err := db.Select(&columns, "SELECT name FROM pragma_table_info(?) ORDER BY cid", table); err != nil {
			t.Fatal(err)
		}
		key := table + "." + strings.Join(columns, ",")
		found[key] = readTable(t, db, key)
	}
	return found
}

// readTable reads the columns that a key of contents names, in the order of
// their text.
func readTable(t *testing.T, db *sqlx.DB, key string) []string {
	t.Helper()
	table, columns, _ := strings.Cut(key, ".")
	var quoted []string
	for column := range strings.SplitSeq(columns, ",") {
		quoted = append(quoted, fmt.Sprintf(`quote("%s")`, column))
	}
	lines := []string{}
	if err := db.Select(&lines, fmt.Sprintf(`SELECT %s FROM "%s"`, strings.Join(quoted, " || ' ' || "), table)); err != nil {
		t.Fatal(err)
	}
	slices.Sort(lines)
	return lines
}

// Every schema that was ever shipped comes up to date with all that it has. A
// file of the present one is kept too: it will be the past one.
func TestKeptFilesComeUpToDate(t *testing.T) {
	latest := must(latestVersion(shipped()))(t)
	for version := int64(1); version <= latest; version++ {
		t.Run(fmt.Sprint("schema ", version), func(t *testing.T) {
			path := newPath(t)
			unpackKept(t, version, path)
			old := openPoolForTest(t, path)
			before := readContents(t, old)
			old.Close()
			s := mustOpen(t, path, Options{})
			compareContents(t, before, s.reader)
			checkUpToDate(t, s)
			copies := must(s.OldCopies())(t)
			if version == latest {
				if len(copies) > 0 {
					t.Errorf("nothing was to do, yet there are the copies %v", copies)
				}
				return
			}
			if want := fmt.Sprintf("%s.before-v%d", s.Path(), latest); len(copies) != 1 || copies[0] != want {
				t.Fatalf("copies %v, want %s", copies, want)
			}
			if mode := must(os.Stat(copies[0]))(t).Mode().Perm(); mode != 0o600 {
				t.Errorf("the copy has mode %o", mode)
			}
			must(verify(t.Context(), copies[0], version))(t)
			compareContents(t, before, openPoolForTest(t, copies[0]))
		})
	}
}

// A sealed file of every schema that knew of sealing opens with its passphrase
// and with its code, and has all that it had.
func TestKeptSealedFilesComeUpToDate(t *testing.T) {
	ctx := t.Context()
	for version := int64(firstSealed); version <= must(latestVersion(shipped()))(t); version++ {
		written := string(must(os.ReadFile(filepath.Join(keptFolder, keptSealedName(version, "txt"))))(t))
		code := must(vault.ParseRecoveryCode(written))(t)
		for name, open := range map[string]func(s *Store) error{
			"passphrase": func(s *Store) error { return s.Unlock(ctx, keptPhrase) },
			"code":       func(s *Store) error { return s.Recover(ctx, code, otherPhrase) },
		} {
			path := newPath(t)
			unpackFile(t, keptSealedName(version, "db.gz"), path)
			s := mustOpen(t, path, quick())
			if err := open(s); err != nil {
				t.Fatalf("schema %d, %s: %v", version, name, err)
			}
			checkUpToDate(t, s)
			var texts []string
			for _, c := range must(s.Clients(ctx, true))(t) {
				texts = append(texts, string(must(s.LatestRecord(ctx, c.ID, KindText))(t).Body))
			}
			slices.Sort(texts)
			if want := []string{"note, version 4", "text of Bartholomew Fennimore", "text of Zoë Åkerblom"}; !slices.Equal(texts, want) {
				t.Errorf("schema %d, %s: the notes are %q", version, name, texts)
			}
		}
	}
}

// compareContents wants a file to have what another had, in the same columns.
func compareContents(t *testing.T, want contents, db *sqlx.DB) {
	t.Helper()
	rows := 0
	for key, lines := range want {
		rows += len(lines)
		if got := readTable(t, db, key); !slices.Equal(got, lines) {
			t.Errorf("%s has\n%s\nand should have\n%s", key, strings.Join(got, "\n"), strings.Join(lines, "\n"))
		}
	}
	if rows < 30 {
		t.Errorf("only %d rows were compared", rows)
	}
}

// checkUpToDate wants every body of a kept file to open, the guards to be there
// and what is new to work.
func checkUpToDate(t *testing.T, s *Store) {
	t.Helper()
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	clients := must(s.Clients(t.Context(), true))(t)
	if len(clients) != 3 {
		t.Fatalf("%d clients", len(clients))
	}
	plans := 0
	for _, c := range clients {
		plans += len(must(s.ClientFile(t.Context(), c.ID))(t).Plans)
	}
	if plans != 6 {
		t.Errorf("%d plans", plans)
	}
	if err := s.PutSetting(t.Context(), "practice", []byte("new")); err != nil {
		t.Errorf("what is new does not work: %v", err)
	}
	must(s.CheckTrail(t.Context()))(t)
	_, err := s.writer.Exec("UPDATE record SET version = 7")
	wantErr(t, explain(err), ErrImmutable)
}
