package store

import (
	"fmt"
	"path/filepath"
	"testing"
	"time"
)

// The clock of the computer goes back and forth by years, as after an empty
// battery. What was saved last is still what comes back, nothing is lost, the
// trail holds, and a backup is made and restored.
func TestAClockThatJumps(t *testing.T) {
	ctx := t.Context()
	rng := newRandom(t)
	jump := func() time.Time { return time.Unix(rng.Int64N(4102444800), rng.Int64N(1e9)).UTC() } // 1970 to 2100
	path := newPath(t)
	s := mustOpen(t, path, Options{Clock: jump})
	folder := t.TempDir()
	if err := s.SetBackupFolder(ctx, folder); err != nil {
		t.Fatal(err)
	}
	f := fillClient(t, s, func(column string) []byte { return []byte(column) })
	id := f.client.ID
	const saves = 60
	for i := 1; i <= saves; i++ {
		must(s.SaveDraft(ctx, id, FormIntake, killBody(i)))(t)
		must(s.SaveRecord(ctx, id, KindText, i, killBody(i)))(t)
		in := must(s.AddIntake(ctx, NewIntake{ClientID: id, VisitDate: visitDay, Height: 168, Weight: 70, Body: killBody(i)}))(t)
		must(s.AddPlan(ctx, NewPlan{ClientID: id, IntakeID: in.ID, Body: killBody(i), HandoutSettings: nil}))(t)
		if err := s.MarkOpened(ctx, id); err != nil {
			t.Fatal(err)
		}
		if i%20 == 0 {
			mustClose(t, s)
			s = mustOpen(t, path, Options{Clock: jump})
		}
		if i%6 == 0 {
			must(s.BackUp(ctx))(t)
		}
	}
	check := func(s *Store) {
		t.Helper()
		if d := must(s.Draft(ctx, id, FormIntake))(t); string(d.Body) != string(killBody(saves)) {
			t.Errorf("the draft is revision %d", d.Revision)
		}
		if r := must(s.LatestRecord(ctx, id, KindText))(t); string(r.Body) != string(killBody(saves)) {
			t.Errorf("the text is version %d", r.Version)
		}
		if p := must(s.LatestPlan(ctx, id))(t); p.Number != saves+1 || string(p.Body) != string(killBody(saves)) {
			t.Errorf("the latest plan is number %d", p.Number)
		}
		if n := len(must(s.Intakes(ctx, id))(t)); n != saves+1 {
			t.Errorf("%d visits", n)
		}
		if err := s.Check(ctx); err != nil {
			t.Error(err)
		}
	}
	check(s)
	last := must(s.BackUp(ctx))(t)
	restored := filepath.Join(t.TempDir(), "clients.db")
	r := must(PrepareRestore(ctx, last.Path, restored, Secret{}))(t)
	must(r.Exchange(ctx, jump()))(t)
	check(mustOpen(t, restored, Options{Clock: jump}))
	if list := must(Backups(folder))(t).List; len(list) == 0 {
		t.Error("no backup is left")
	} else {
		t.Log(fmt.Sprint(len(list), " backups are left of ", saves/6+1))
	}
}
