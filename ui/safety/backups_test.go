package safety

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"handbreadth/ui/widgets"
)

func TestAFolderIsTypedOrChosen(t *testing.T) {
	keeper := sealed()
	keeper.backups = Backups{DueWords: "No folder for backups is chosen yet."}
	b := newBench(t, keeper)
	if b.mark("backups") != "No folder chosen yet" {
		t.Errorf("mark %q", b.mark("backups"))
	}
	b.unfold("backups")
	b.fill("safety.folder", " there ")
	b.press("safety.folder.use")
	if keeper.backups.Folder != "there" {
		t.Errorf("folder %q", keeper.backups.Folder)
	}
	b.path = "stick"
	b.press("safety.folder.choose")
	if keeper.backups.Folder != "stick" || b.problem("safety.folder") != "" {
		t.Errorf("folder %q", keeper.backups.Folder)
	}
	keeper.trouble = errors.New("no such folder")
	b.press("safety.folder.use")
	if b.problem("safety.folder") != "plainly: no such folder" {
		t.Errorf("says %q", b.problem("safety.folder"))
	}
}

func TestABackupIsMadeHereAndElsewhere(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("backups")
	b.press("safety.backup.now")
	if b.keeper.made != 1 || b.keeper.madeIn != "stick" || !strings.Contains(b.said("safety.backup.told"), "handbreadth-new.backup") {
		t.Errorf("made %d, says %q", b.keeper.made, b.said("safety.backup.told"))
	}
	b.path = "other"
	b.press("safety.backup.elsewhere")
	if b.keeper.madeIn != "other" {
		t.Errorf("made in %q", b.keeper.madeIn)
	}
	b.keeper.trouble = errors.New("the folder is not there")
	b.press("safety.backup.now")
	if b.said("safety.backup.told") != "plainly: the folder is not there" {
		t.Errorf("says %q", b.said("safety.backup.told"))
	}
}

func TestAFolderThatIsGoneIsTold(t *testing.T) {
	keeper := sealed()
	keeper.backups.Gone, keeper.backups.List = "The folder is not there. Plug the stick in.", nil
	b := newBench(t, keeper)
	b.unfold("backups")
	if b.mark("backups") != "The folder is not there" || !b.shows("Plug the stick in.") {
		t.Errorf("mark %q", b.mark("backups"))
	}
}

func TestOnlyTheNewestBackupsAreShownAtFirst(t *testing.T) {
	keeper := sealed()
	keeper.backups.List, keeper.backups.Unreadable = nil, []string{"handbreadth-torn.backup"}
	for days := range 24 {
		keeper.backups.List = append(keeper.backups.List, someBackup(days))
	}
	b := newBench(t, keeper)
	b.unfold("backups")
	if n := len(b.section.kept.list.Objects); n != fewBackups {
		t.Errorf("%d are shown", n)
	}
	b.press("safety.backup.all")
	if n := len(b.section.kept.list.Objects); n != 24 || !b.shows("handbreadth-torn.backup") {
		t.Errorf("%d are shown", n)
	}
}

const firstLine = "safety.backup.line.1"

func TestABackupIsChecked(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("backups")
	b.openLine(firstLine)
	b.press(firstLine + ".check")
	if b.problem(firstLine+".secret") == "" {
		t.Error("checked without a passphrase")
	}
	b.fill(firstLine+".secret", "wrong")
	b.press(firstLine + ".check")
	if b.said(firstLine+".told") != "plainly: this is not the passphrase" {
		t.Errorf("says %q", b.said(firstLine+".told"))
	}
	widgets.Named()[firstLine+".secret"].(*widgets.Field).SetText(somePhrase)
	b.press(firstLine + ".check")
	if b.said(firstLine+".told") != "It opens completely: 12 clients, 30 visits, 14 plans. Nothing was changed." {
		t.Errorf("says %q", b.said(firstLine+".told"))
	}
}

func TestABackupIsLookedAtBeforeItIsRestored(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("backups")
	b.openLine(firstLine)
	b.fill(firstLine+".secret", somePhrase)
	b.press(firstLine + ".look")
	if !b.shows("In the backup of yesterday, 12:00: 12 clients") || !b.shows("In use now: 13 clients") || !b.shows("What was kept after") {
		t.Error("the preview does not compare")
	}
	first := b.keeper.restoring
	b.press(firstLine + ".leave")
	if !first.discarded || b.shows("In use now") {
		t.Error("what was unpacked is still there")
	}
	b.press(firstLine + ".look")
	b.press(firstLine + ".put")
	if b.restored != nil || b.asked.Title == "" {
		t.Fatal("restored without a question")
	}
	b.asked.Do()
	if b.restored != Restoring(b.keeper.restoring) || b.keeper.restoring.discarded {
		t.Errorf("restored %v", b.restored)
	}
}

func TestABackupFromElsewhereIsRestored(t *testing.T) {
	b := newBench(t, sealed())
	b.unfold("backups")
	b.path = "elsewhere/handbreadth.backup"
	b.press("safety.restore.other")
	b.fill("safety.restore.secret", somePhrase)
	b.press("safety.restore.look")
	if !slices.Equal(b.keeper.prepared, []string{"elsewhere/handbreadth.backup"}) {
		t.Errorf("prepared %v", b.keeper.prepared)
	}
}
