package safety

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

func TestAPracticeThatLiesOpenIsOfferedAPassphrase(t *testing.T) {
	b := newBench(t, &fakeKeeper{})
	if b.mark("keys") != "Not sealed" || b.mark("lock") != "Needs a passphrase" {
		t.Errorf("marks %q, %q", b.mark("keys"), b.mark("lock"))
	}
	b.unfold("keys")
	if b.shows("Change the passphrase") {
		t.Error("a passphrase that is not there can be changed")
	}
	b.press("safety.seal")
	if b.went["seal"] != 1 {
		t.Errorf("led to %v", b.went)
	}
	b.keeper.state = State{Sealed: true}
	b.section.Renew()
	if b.shows(wordsOpen) || !b.shows("Change the passphrase") {
		t.Error("the part did not follow the sealing")
	}
}

func TestWhatIsStillToBeDoneIsHandedUp(t *testing.T) {
	keeper := sealed()
	b := newBench(t, keeper)
	if b.wanting != "" {
		t.Errorf("in good order it says %q", b.wanting)
	}
	keeper.state.SheetTried = false
	keeper.backups = Backups{DueWords: "No folder for backups is chosen yet."}
	b.section.Renew()
	if b.wanting != "The recovery sheet was not tried yet. No folder for backups is chosen yet." {
		t.Errorf("says %q", b.wanting)
	}
	b.section.See()
	if got := widgettest.Focused(b.window.Canvas()); got != "safety.keys" || !b.section.folds.keys.Open() {
		t.Errorf("leads to %q", got)
	}
	keeper.state.SheetTried = true
	b.section.Renew()
	b.section.See()
	if got := widgettest.Focused(b.window.Canvas()); got != "safety.backups" {
		t.Errorf("leads to %q", got)
	}
	keeper.backups.Folder, keeper.backups.Gone = "stick", "It is not there."
	b.section.Renew()
	if b.wanting != "The folder for backups is not there." {
		t.Errorf("says %q", b.wanting)
	}
}

func TestTheSheetIsAskedForUntilItWasTried(t *testing.T) {
	keeper := sealed()
	keeper.state.SheetTried = false
	b := newBench(t, keeper)
	b.unfold("keys")
	if !b.shows("The recovery sheet was not tried yet.") {
		t.Error("nothing reminds of the sheet")
	}
	b.press("safety.try")
	if b.problem("safety.code") == "" {
		t.Error("nothing typed is no problem")
	}
	b.fill("safety.code", "ABCD")
	b.press("safety.try")
	if b.problem("safety.code") != "plainly: this is not the code" {
		t.Errorf("says %q", b.problem("safety.code"))
	}
	widgets.Named()["safety.code"].(*widgets.Field).SetText(someCode)
	b.press("safety.try")
	if b.mark("keys") != "" && b.mark("keys") != "Sealed" || !strings.Contains(b.said("safety.sheet.told"), "good") {
		t.Errorf("mark %q, says %q", b.mark("keys"), b.said("safety.sheet.told"))
	}
	b.press("safety.change")
	b.press("safety.renew")
	if b.went["change"] != 1 || b.went["renew"] != 1 {
		t.Errorf("led to %v", b.went)
	}
}

func TestTheKeyIsChangedAfterAQuestion(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("keys")
	b.press("safety.key")
	if b.keeper.keys != 0 || b.asked.Title == "" {
		t.Fatal("changed without a question")
	}
	b.asked.Do()
	if b.keeper.keys != 1 || b.said("safety.key.told") != "Done. Everything is sealed with the new key." {
		t.Errorf("changed %d times, says %q", b.keeper.keys, b.said("safety.key.told"))
	}
	b.keeper.trouble = errors.New("disk is full")
	b.asked.Do()
	if b.said("safety.key.told") != "plainly: disk is full" {
		t.Errorf("says %q", b.said("safety.key.told"))
	}
}

func TestAnInterruptedSealingGoesOn(t *testing.T) {
	keeper := sealed()
	keeper.state.Unfinished = true
	b := newBench(t, keeper)
	b.unfold("keys")
	b.press("safety.resume")
	if keeper.resumed != 1 || b.shows(wordsResume) {
		t.Error("did not go on, or still says so")
	}
}

// laterRunner lets a job wait.
type laterRunner struct {
	jobs    []task.Job
	stopped int
}

func (r *laterRunner) Start(job task.Job) func() {
	r.jobs = append(r.jobs, job)
	return func() { r.stopped++ }
}

func (r *laterRunner) next() task.Job {
	job := r.jobs[0]
	r.jobs = r.jobs[1:]
	return job
}

func TestALongWorkShowsHowFarItIsAndCanBeStopped(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("keys")
	later := &laterRunner{}
	b.section.keys.work.tools.Run = later
	b.section.keys.onKey()
	b.asked.Do()
	job := later.next()
	err := job.Work(context.Background())
	b.clock.Advance(time.Second)
	if got := b.said("safety.key.told"); got != "Sealing anew: 1 of 2 entries" {
		t.Errorf("says %q", got)
	}
	if !widgets.Named()["safety.key"].(*widgets.Button).Disabled() {
		t.Error("can be started twice")
	}
	b.press("safety.key.stop")
	if later.stopped != 1 {
		t.Error("not stopped")
	}
	job.Done(err)
	if widgets.Named()["safety.key"].(*widgets.Button).Disabled() || widgets.Named()["safety.key.stop"].Visible() {
		t.Error("still running after the end")
	}
}

func TestMinutesAreHandedUp(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("lock")
	choice := widgets.Named()["safety.lock.after"].(widgets.Focuser).FocusTarget()
	choice.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if b.minutes != 15 {
		t.Errorf("handed up %d", b.minutes)
	}
	choice.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	if b.minutes != Never {
		t.Errorf("handed up %d at the end", b.minutes)
	}
	b.press("safety.lock.now")
	if b.went["lock"] != 1 {
		t.Error("not locked")
	}
}

func TestTheRecordIsReadPageByPage(t *testing.T) {
	keeper := sealed()
	keeper.entries = nil
	for n := 50; n > 0; n-- {
		keeper.entries = append(keeper.entries, Entry{Number: int64(n), At: noon, Words: fmt.Sprintf("Entry %d opened", n), Who: "Wren Applecart"})
	}
	b := newBench(t, keeper)
	b.unfold("record")
	if n := len(b.section.past.entries); n != entriesAtOnce || !b.shows("Entry 50 opened") || !b.shows("Wren Applecart") {
		t.Errorf("%d entries", n)
	}
	for range 2 {
		b.press("safety.record.more")
	}
	if n := len(b.section.past.entries); n != 50 || widgets.Named()["safety.record.more"].Visible() {
		t.Errorf("%d entries, and more are offered", n)
	}
	b.press("safety.record.check")
	if b.said("safety.record.told") != "Whole: 3 entries." {
		t.Errorf("says %q", b.said("safety.record.told"))
	}
	keeper.trouble = errors.New("at entry 7 one is missing")
	b.press("safety.record.check")
	if b.said("safety.record.told") != "plainly: at entry 7 one is missing" {
		t.Errorf("says %q", b.said("safety.record.told"))
	}
}

func TestOldCopiesAreRemovedAfterAQuestion(t *testing.T) {
	keeper := sealed()
	b := newBench(t, keeper)
	if b.section.folds.copies.Visible() {
		t.Error("copies are offered where there are none")
	}
	keeper.copies = 2
	b.section.Renew()
	b.unfold("copies")
	b.press("safety.copies.remove")
	if keeper.copies != 2 {
		t.Fatal("removed without a question")
	}
	b.asked.Do()
	if keeper.copies != 0 || b.said("safety.copies.told") != "2 copies are removed." {
		t.Errorf("%d left, says %q", keeper.copies, b.said("safety.copies.told"))
	}
}

func TestTheDemoHasOnlyItsRecord(t *testing.T) {
	keeper := sealed()
	keeper.state = State{Demo: true}
	b := newBench(t, keeper)
	if b.shows("Backups") || !b.shows(wordsDemo[:20]) {
		t.Error("the demo offers to be kept safe")
	}
	b.unfold("record")
	if !b.shows("Wren Applecart") {
		t.Error("the demo has no record")
	}
}

// onPage is the page that restores where nothing is open.
func onPage(t *testing.T, keeper *fakeKeeper) (*bench, *RestorePage) {
	widgettest.Program(t, theme.Light)
	b := &bench{t: t, keeper: keeper, clock: &task.ManualClock{}, went: map[string]int{}, runner: task.Inline{}}
	ways := b.ways()
	page := NewRestorePage(keeper, b.tools(), PageWays{
		ChooseFile: ways.ChooseFile, Ask: ways.Ask, Restore: ways.Restore, Back: func() { b.went["back"]++ },
	})
	b.window = widgettest.Window(t, page.Object(), 1366, 768)
	page.FocusFirst()
	return b, page
}

func TestABackupIsRestoredOnANewComputer(t *testing.T) {
	keeper := sealed()
	keeper.none = true
	b, page := onPage(t, keeper)
	b.press("restore.open")
	if b.problem("restore.path") == "" {
		t.Error("nothing chosen is no problem")
	}
	b.path = "stick/handbreadth.backup"
	b.press("restore.choose")
	if got := widgettest.Focused(b.window.Canvas()); got != "restore.found.secret" {
		t.Errorf("focus on %q", got)
	}
	b.fill("restore.found.secret", somePhrase)
	b.press("restore.found.look")
	if b.shows("In use now") || !b.shows("12 clients") {
		t.Error("compares with what is not there")
	}
	b.press("restore.found.put")
	b.asked.Do()
	if b.restored == nil {
		t.Error("not restored")
	}
	page.Escape()
	if b.went["back"] != 1 || keeper.restoring.discarded {
		t.Error("did not go back, or removed what is being restored")
	}
}

func TestLeavingTheRestorePageRemovesWhatWasUnpacked(t *testing.T) {
	b, page := onPage(t, sealed())
	b.fill("restore.path", "stick/handbreadth.backup")
	b.press("restore.open")
	b.fill("restore.found.secret", somePhrase)
	b.press("restore.found.look")
	page.Escape()
	if !b.keeper.restoring.discarded || b.went["back"] != 1 {
		t.Error("still there")
	}
}

func TestEveryControlIsReachedByTab(t *testing.T) {
	keeper := sealed()
	keeper.state.SheetTried = false
	keeper.copies = 1
	b := newBench(t, keeper)
	for _, part := range []string{"keys", "lock", "backups", "record", "copies"} {
		b.unfold(part)
	}
	b.openLine(firstLine)
	seen := map[string]bool{}
	for _, name := range widgettest.Walk(b.window.Canvas()) {
		seen[name] = true
	}
	for name, object := range widgets.Named() {
		if _, focusable := object.(widgets.Focuser); focusable && object.Visible() && !seen[name] && reallyShown(name) {
			t.Errorf("Tab never comes to %s", name)
		}
	}
}

// reallyShown leaves out what is named and lies in something that is hidden.
func reallyShown(name string) bool {
	for _, hidden := range []string{"safety.seal", "safety.resume", "safety.record.more", ".put", ".leave", ".stop"} {
		if strings.HasSuffix(name, hidden) {
			return false
		}
	}
	return true
}
