package main

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"handbreadth/domain"
	"handbreadth/domain/unit"
	"handbreadth/store"
	"handbreadth/store/vault"
	"handbreadth/ui"
	"handbreadth/ui/draft"
	"handbreadth/ui/task"
)

var noon = time.Date(2026, time.March, 2, 12, 0, 0, 0, time.UTC)

// newDesk opens the file of a folder and reads its names; it is closed at the end
// of the test.
func newDesk(t *testing.T, folder string) *desk {
	t.Helper()
	d := newDoor(t, folder)
	return enter(t, d)
}

// newDoor opens the file of a folder; it is closed at the end of the test.
func newDoor(t *testing.T, folder string) *door {
	t.Helper()
	d, err := openDoor(context.Background(), place{folder}, false, func() time.Time { return noon }, vault.TestEffort)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = d.close() })
	return d
}

func enter(t *testing.T, d *door) *desk {
	t.Helper()
	entered, err := d.Enter(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if err := entered.Names(context.Background()); err != nil {
		t.Fatal(err)
	}
	return entered.(*desk)
}

func newFile(t *testing.T, d *desk, name string) *file {
	t.Helper()
	id, err := d.Create(context.Background(), name)
	if err != nil {
		t.Fatal(err)
	}
	f, err := d.open(context.Background(), store.ClientID(id))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// complete is a form from which a plan follows.
func complete() draft.Form {
	form := regular().visits[0].typed(unit.FromTime(noon))
	form[draft.Born], form[draft.Date] = "17 May 1984", "2 March 2026"
	return form
}

func planOf(t *testing.T, form draft.Form) domain.Plan {
	t.Helper()
	plan, err := domain.NewPlan(draft.Read(form, unit.Style{}).Intake)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func TestEverythingIsFoundAgain(t *testing.T) {
	ctx, folder := context.Background(), t.TempDir()
	d := newDesk(t, folder)
	f := newFile(t, d, "Wren Applecart")
	form := complete()
	kept, err := f.Keep(ctx, form, planOf(t, form))
	if err != nil {
		t.Fatal(err)
	}
	if kept.String() != "Plan 1, 2 March 2026" {
		t.Errorf("kept as %q", kept)
	}
	later := form.Clone()
	later[draft.Weight], later[draft.Name], later[draft.NextVisit] = "78 kg", "Wren Applecart-Hale", "30 March 2026"
	if err := errors.Join(f.SaveDraft(ctx, 1, later), f.Settle(ctx, later), d.records.Close()); err != nil {
		t.Fatal(err)
	}

	d = newDesk(t, folder)
	found := d.Find("hale", false)
	if len(found) != 1 {
		t.Fatalf("found %v", found)
	}
	row, _ := d.Row(found[0])
	if row.Name != "Wren Applecart-Hale" || row.Born.String() != "1984-05-17" || row.NextVisit.String() != "2026-03-30" {
		t.Errorf("the list has %+v", row)
	}
	again, err := d.Open(ctx, found[0])
	if err != nil {
		t.Fatal(err)
	}
	if !maps.Equal(again.Form(), later) {
		t.Errorf("the draft is %v, want %v", again.Form(), later)
	}
	if got := again.Kept(); got.String() != "Plan 1, 2 March 2026" || !maps.Equal(got.Form, form) {
		t.Errorf("kept is %+v", got)
	}
}

func TestAKeptFormOpensWithoutADraft(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	f := newFile(t, d, "Wren Applecart")
	form := complete()
	if err := f.SaveDraft(ctx, 1, form); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Keep(ctx, form, planOf(t, form)); err != nil {
		t.Fatal(err)
	}
	if _, err := d.records.Draft(ctx, f.id, store.FormIntake); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("the draft is still there: %v", err)
	}
	again, err := d.open(ctx, f.id)
	if err != nil || !maps.Equal(again.form, form) {
		t.Errorf("form %v, %v", again.form, err)
	}
}

func TestAnEarlierTurnDoesNotOverwriteALaterOne(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	f := newFile(t, d, "Wren Applecart")
	if err := errors.Join(
		f.SaveDraft(ctx, 2, draft.Form{draft.Weight: "78 kg"}),
		f.SaveDraft(ctx, 1, draft.Form{draft.Weight: "7"}),
	); err != nil {
		t.Fatal(err)
	}
	again, err := d.open(ctx, f.id)
	if err != nil || again.form[draft.Weight] != "78 kg" {
		t.Errorf("weight %q, %v", again.form[draft.Weight], err)
	}
}

func TestAHeldPlanIsNotKept(t *testing.T) {
	d := newDesk(t, t.TempDir())
	f := newFile(t, d, "Amina Lantern")
	form := held().visits[0].typed(unit.FromTime(noon))
	form[draft.Born] = "1 June 1992"
	_, err := f.Keep(context.Background(), form, planOf(t, form))
	var failure *task.Failure
	if !errors.As(err, &failure) || failure.Words != wordsHeld {
		t.Errorf("error is %v", err)
	}
	if f.Kept().Form != nil {
		t.Errorf("kept %+v", f.Kept())
	}
}

func TestAReferralIsKeptAsARecord(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	f := newFile(t, d, "Kofi Riverstone")
	form := referred().visits[0].typed(unit.FromTime(noon))
	form[draft.Born] = "1 June 1996"
	kept, err := f.Keep(ctx, form, planOf(t, form))
	if err != nil || !kept.Referral || kept.String() != "Referred, 2 March 2026" {
		t.Fatalf("kept %+v, %v", kept, err)
	}
	again, err := d.open(ctx, f.id)
	if err != nil || !again.Kept().Referral {
		t.Errorf("found again: %+v, %v", again.Kept(), err)
	}
	if plans, err := d.records.Plans(ctx, f.id); err != nil || len(plans) != 0 {
		t.Errorf("%d plans, %v", len(plans), err)
	}
}

func TestArchivingAndDeleting(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	id := string(newFile(t, d, "Wren Applecart").id)
	if err := d.Archive(ctx, id); err != nil {
		t.Fatal(err)
	}
	if len(d.Find("", false)) != 0 || len(d.Find("wren", true)) != 1 {
		t.Error("an archived client is in the daily list, or not among the archived")
	}
	if err := d.Unarchive(ctx, id); err != nil || len(d.Find("", false)) != 1 {
		t.Errorf("not back in the list: %v", err)
	}
	if err := d.Delete(ctx, id); err != nil || len(d.Find("", false)) != 0 || len(d.Find("wren", false)) != 0 {
		t.Errorf("still there: %v", err)
	}
	if _, err := d.Open(ctx, id); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("a deleted client opens: %v", err)
	}
}

func TestSettingsAndLogoAreFoundAgain(t *testing.T) {
	ctx, folder := context.Background(), t.TempDir()
	d := newDesk(t, folder)
	want := demoSettings()
	want.Logo, want.LogoName, want.System = picture(t), "lantern.png", unit.UKCustomary
	if err := errors.Join(d.SaveSettings(ctx, want), d.records.Close()); err != nil {
		t.Fatal(err)
	}
	got := newDesk(t, folder).Settings()
	if got.Name != want.Name || got.System != want.System || !bytes.Equal(got.Logo, want.Logo) {
		t.Errorf("found %+v", got)
	}
}

func picture(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 8, 8))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// The demo shows the situations that it promises.
func TestTheDemoIsDiverse(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	if err := d.fillDemo(ctx); err != nil {
		t.Fatal(err)
	}
	ids := d.Find("", false)
	glances, err := d.Glances(ctx, ids)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[ui.Status]bool{}
	plans := 0
	for _, g := range glances {
		seen[g.Status] = true
		plans = max(plans, g.Plan)
	}
	for _, want := range []ui.Status{ui.Begun, ui.Ready, ui.Held, ui.Referred, ui.Complete} {
		if !seen[want] {
			t.Errorf("no client has status %d", want)
		}
	}
	if plans != 2 {
		t.Errorf("the newest plan is %d, want one with an older version", plans)
	}
	if row, _ := d.Row(ids[0]); row.Name != "Wren Applecart" {
		t.Errorf("first is %s", row.Name)
	}
	if d.watch.now() != noon {
		t.Error("the clock was not put back")
	}
}

func TestADemoThatWasCutShortBeginsAnew(t *testing.T) {
	ctx, d := context.Background(), newDesk(t, t.TempDir())
	newFile(t, d, "Somebody Half-Made")
	for range 2 { // the second time it is full, and stays
		if err := d.readyDemo(ctx); err != nil {
			t.Fatal(err)
		}
		if n := len(d.Find("", false)); n != len(demoClients()) || len(d.Find("somebody", false)) != 0 {
			t.Fatalf("%d clients", n)
		}
	}
}

func TestTheLogNamesNobody(t *testing.T) {
	test.NewTempApp(t)
	folder := t.TempDir()
	log, closer := place{folder}.log()
	done := make(chan struct{})
	b := &task.Background{Words: store.Plain, Log: log}
	b.Start(task.Job{Label: "Saving", Work: func(context.Context) error {
		defer close(done)
		return errors.New("Wren Applecart could not be saved")
	}})
	<-done
	b.Wait()
	if err := closer.Close(); err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile(filepath.Join(folder, logName))
	if err != nil || !strings.Contains(string(written), "Saving") || strings.Contains(string(written), "Wren") {
		t.Errorf("the log is %q, %v", written, err)
	}
}
