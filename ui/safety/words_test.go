package safety

import (
	"testing"
	"time"
)

func TestMomentsAreToldAsPeopleSayThem(t *testing.T) {
	for at, want := range map[time.Time]string{
		noon.Add(-2 * time.Hour): "today, 10:00", noon.AddDate(0, 0, -1): "yesterday, 12:00",
		noon.AddDate(0, -1, 0): "2 February 2026, 12:00", noon.AddDate(0, 0, 1): "3 March 2026, 12:00",
	} {
		if got := moment(at, noon); got != want {
			t.Errorf("%v: %q, want %q", at, got, want)
		}
	}
}

func TestTheHeadsSayHowThingsStand(t *testing.T) {
	for _, c := range []struct {
		state   State
		words   string
		wanting bool
	}{
		{State{}, "Not sealed", true},
		{State{Sealed: true, Unfinished: true}, "Sealing not finished", true},
		{State{Sealed: true}, "Sealed; recovery sheet not tried yet", true},
		{State{Sealed: true, SheetTried: true}, "Sealed", false},
	} {
		if words, wanting := sealSummary(c.state); words != c.words || wanting != c.wanting {
			t.Errorf("%+v: %q, %v", c.state, words, wanting)
		}
	}
	for _, c := range []struct {
		backups Backups
		words   string
		wanting bool
	}{
		{Backups{}, "No folder chosen yet", true},
		{Backups{Folder: "stick", Gone: "gone", Last: noon}, "The folder is not there", true},
		{Backups{Folder: "stick"}, "None yet", true},
		{Backups{Folder: "stick", Due: true, Last: noon.AddDate(0, 0, -1)}, "Due; last yesterday, 12:00", true},
		{Backups{Folder: "stick", Last: noon}, "Last today, 12:00", false},
	} {
		if words, wanting := backupSummary(c.backups, noon); words != c.words || wanting != c.wanting {
			t.Errorf("%+v: %q, %v", c.backups, words, wanting)
		}
	}
}

func TestTheContentsAreCounted(t *testing.T) {
	if got := (Inside{Clients: 1, Plans: 2}).contents(); got != "1 client, 0 visits, 2 plans" {
		t.Errorf("got %q", got)
	}
	for bytes, want := range map[int64]string{12: "12 bytes", 64_000: "64 kB", 1_234_567: "1.2 MB"} {
		if got := size(bytes); got != want {
			t.Errorf("%d: %q, want %q", bytes, got, want)
		}
	}
}

func TestWhatToThinkOfBeforeRestoring(t *testing.T) {
	day := noon.AddDate(0, 0, -1)
	old := Inside{MadeAt: day, LastChange: day, Sealed: true, Practice: "same"}
	present := Inside{LastChange: noon, Sealed: true, Practice: "same"}
	open := old
	open.Sealed = false
	other := old
	other.Practice = "other"
	for _, c := range []struct {
		name    string
		inside  Inside
		present Inside
		known   bool
		count   int
	}{
		{"older", old, present, true, 1},
		{"older and not sealed", open, present, true, 2},
		{"older, of another practice", other, present, true, 2},
		{"the same", present, present, true, 0},
		{"nothing in use", open, Inside{}, false, 0},
	} {
		if got := warnings(c.inside, c.present, c.known, noon); len(got) != c.count {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

func TestLockingIsToldInMinutes(t *testing.T) {
	if got := lockSummary(15); got != "After 15 minutes" {
		t.Errorf("got %q", got)
	}
	if got := lockSummary(Never); got != "Only by hand" {
		t.Errorf("got %q", got)
	}
}
