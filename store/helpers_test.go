package store

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/jmoiron/sqlx"

	"handbreadth/domain/unit"
)

// tick is a clock that goes on by one second at each look.
type tick struct {
	mu sync.Mutex
	at time.Time
}

func newTick() *tick { return &tick{at: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)} }

func (c *tick) now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.at = c.at.Add(time.Second)
	return c.at
}

func newPath(t testing.TB) string {
	t.Helper()
	return filepath.Join(t.TempDir(), "practice", "clients.db")
}

func mustOpen(t testing.TB, path string, opts Options) *Store {
	t.Helper()
	if opts.Clock == nil {
		opts.Clock = newTick().now
	}
	s, err := Open(t.Context(), path, opts)
	if err != nil {
		t.Fatalf("opening %s: %v", path, err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func mustClose(t testing.TB, s *Store) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Fatalf("closing: %v", err)
	}
}

func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func wantErr(t testing.TB, err, want error) {
	t.Helper()
	if !errors.Is(err, want) {
		t.Fatalf("got error %v, want %v", err, want)
	}
	if words := Plain(err); words == "" || words == plainUnknown {
		t.Errorf("error %v has no plain words", err)
	}
}

func newClient(t testing.TB, s *Store) ClientID {
	t.Helper()
	return must(s.CreateClient(t.Context(), nil))(t).ID
}

var visitDay = unit.Date{Year: 2026, Month: time.March, Day: 2}

// full is one client with something in every table, each body made by word.
type full struct {
	client  Client
	intake  Intake
	plan    Plan
	handout Handout
}

func fillClient(t testing.TB, s *Store, word func(column string) []byte) full {
	t.Helper()
	ctx := t.Context()
	var f full
	f.client = must(s.CreateClient(ctx, map[Kind][]byte{KindIdentity: word("identity")}))(t)
	id := f.client.ID
	for _, kind := range []Kind{KindContact, KindText, KindHealth, KindAnswers} {
		must(s.SaveRecord(ctx, id, kind, 0, word(string(kind))))(t)
	}
	must(s.SaveDraft(ctx, id, FormIntake, word("draft")))(t)
	waist, pal := unit.Centimetre(81.5), unit.PAL(1.62)
	f.intake = must(s.AddIntake(ctx, NewIntake{
		ClientID: id, VisitDate: visitDay, Height: 168, Weight: 72.5, Waist: &waist, PAL: &pal, Body: word("intake"),
	}))(t)
	f.plan = must(s.AddPlan(ctx, NewPlan{
		ClientID: id, IntakeID: f.intake.ID, Body: word("plan"), HandoutSettings: word("settings"),
	}))(t)
	f.handout = must(s.AddHandout(ctx, f.plan.ID, "handout", word("document")))(t)
	return f
}

// boundSealer is a toy: it hides bytes from a search by XOR with 0xA5, and
// refuses a value that was moved, because its place is sealed along with it.
type boundSealer struct{}

type boundValue struct {
	Table, Row, Column string
	Version            int
	Plain              []byte
}

func flip(in []byte) []byte {
	out := bytes.Clone(in)
	for i := range out {
		out[i] ^= 0xA5
	}
	return out
}

func (boundSealer) Seal(table, row, column string, version int, plain []byte) ([]byte, error) {
	whole, err := json.Marshal(boundValue{table, row, column, version, plain})
	return flip(whole), err
}

func (boundSealer) Open(table, row, column string, version int, sealed []byte) ([]byte, error) {
	var v boundValue
	if err := json.Unmarshal(flip(sealed), &v); err != nil {
		return nil, err
	}
	if v.Table != table || v.Row != row || v.Column != column || v.Version != version {
		return nil, fmt.Errorf("sealed for %s %s.%s version %d", v.Row, v.Table, v.Column, v.Version)
	}
	return v.Plain, nil
}

// allBytes returns the names and content of everything in the folder of the
// file, and of the folders in it, but for the empty lock.
func allBytes(t testing.TB, path string) []byte {
	t.Helper()
	var all []byte
	err := filepath.WalkDir(filepath.Dir(path), func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || name == path+lockMark {
			return err
		}
		all = append(append(all, name...), must(os.ReadFile(name))(t)...)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// rawly runs statements on a closed file through the driver alone.
func rawly(t testing.TB, path string, statements ...string) {
	t.Helper()
	db := must(openPool(path, writerSettings, 1))(t)
	for _, statement := range statements {
		if _, err := db.ExecContext(context.Background(), statement); err != nil {
			t.Fatalf("%s: %v", statement, err)
		}
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
}

func openPoolForTest(t testing.TB, path string) *sqlx.DB {
	t.Helper()
	db := must(openPool(path, writerSettings, 1))(t)
	t.Cleanup(func() { db.Close() })
	return db
}
