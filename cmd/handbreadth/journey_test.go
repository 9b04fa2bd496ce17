//go:build journey

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// TestJourney goes through a whole first day with mouse and keyboard: a
// passphrase and the recovery code, practice, intake, screening, targets, measures, handout, a kept plan; the program is
// killed while something is typed, and opened again; a second client in pounds
// and inches; closed, opened, both found.
func TestJourney(t *testing.T) {
	program, data := buildWithProbe(t), t.TempDir()
	d := start(t, program, data, "welcome")
	d.picture("welcome")
	d.begin()
	namePractice(d, practiceName)
	newClient(d, "Wren Example")
	metricIntake(d, "Wants to climb the stairs without a rest.")
	screening(d)
	targets(d)
	d.key("ctrl+4")
	d.until("the measures", func(s seenState) bool { return s.Section == "measures" && s.Controls["measures.day"].Width > 0 })
	d.picture("measures")
	handout(d)
	keepAnother(d)
	acknowledged := killedWhileTyping(d)
	d = start(t, program, data, "locked")
	d.unlock()
	openByName(d, "wren")
	d.lacksNothing(acknowledged)
	d.picture("reopened")
	d.key("Escape", "Escape")
	imperialClient(d)
	second := d.state()
	d.end()
	d = start(t, program, data, "locked")
	d.unlock()
	openByName(d, "robin")
	d.lacksNothing(second)
	d.key("Escape", "Escape")
	openByName(d, "wren")
	d.lacksNothing(acknowledged)
	d.click("rail.practice")
	d.until("the name of the practice", func(s seenState) bool { return s.Controls["practice.name"].Text == practiceName })
	d.end()
}

const practiceName = "The Paper Lantern Practice"

func namePractice(d *driver, name string) {
	d.t.Helper()
	d.click("rail.practice")
	d.until("the settings", func(s seenState) bool { return s.Place == "practice" })
	d.fill("practice.name", name)
	d.until("the settings are saved", func(s seenState) bool { return s.Settings })
}

func newClient(d *driver, name string) {
	d.t.Helper()
	d.key("ctrl+n")
	d.until("a name is asked for", func(s seenState) bool { return s.Focused == "clients.name" })
	d.write(name)
	d.until("the name is there", func(s seenState) bool { return s.Controls["clients.name"].Text == name })
	d.key("Return")
	d.until("the intake", func(s seenState) bool {
		return s.Place == "file" && s.Section == "intake" && s.Controls["intake.client.name"].Text == name
	})
}

// choose goes to a choice by Tab and takes its nth option.
func choose(d *driver, name string, nth int) {
	d.t.Helper()
	d.tabTo(name)
	turn := d.state().Turn
	d.key("space")
	d.until(name+" is chosen", func(s seenState) bool { return s.Turn > turn })
	for range nth {
		turn = d.state().Turn
		d.key("Right")
		d.until(name+" moved on", func(s seenState) bool { return s.Turn > turn })
	}
}

func metricIntake(d *driver, why string) {
	d.t.Helper()
	d.fill("intake.client.born", "17.5.1990")
	choose(d, "intake.client.equation_sex", 0)
	d.fill("intake.why", why)
	d.fill("intake.height", "168")
	d.fill("intake.weight", "72,6")
	choose(d, "intake.activity", 1)
	choose(d, "intake.goal.kind", 0)
	d.fill("intake.goal.weight", "68 kg")
	d.until("a target", func(s seenState) bool { return s.TargetKcal > 0 && s.Status == "held" })
	d.saved()
	d.picture("intake")
}

func screening(d *driver) {
	d.t.Helper()
	d.key("ctrl+2")
	d.until("the screening", func(s seenState) bool { return s.Section == "screening" })
	d.click("screening.all_no")
	d.click("screening.all_no.confirm")
	d.until("nothing stops the plan", func(s seenState) bool { return s.Status == "issuable" })
	d.picture("screening")
}

// targets moves the balance by keyboard until the fat floor stops it, and finds
// that it goes no further and that the target stays.
func targets(d *driver) {
	d.t.Helper()
	const slider = "targets.carb_fat_balance_percent"
	d.key("ctrl+3")
	d.until("the targets", func(s seenState) bool { return s.Section == "targets" && s.Controls[slider].Width > 0 })
	d.tabTo(slider)
	before := d.state()
	d.key("End")
	d.until("the balance moved to the wall", func(s seenState) bool { return s.Turn > before.Turn })
	wall := d.state().Form.Get(draft.Balance)
	if wall == "100" || wall == "" {
		d.t.Errorf("the balance went to %q, through the fat floor", wall)
	}
	d.key("Left")
	d.until("the balance moved back", func(s seenState) bool { return s.Form.Get(draft.Balance) != wall })
	d.key("Right", "Right", "Right")
	d.until("the balance is at the wall again", func(s seenState) bool { return s.Form.Get(draft.Balance) == wall })
	d.saved()
	if after := d.state(); after.Form.Get(draft.Balance) != wall || after.TargetKcal != before.TargetKcal {
		d.t.Errorf("balance %s and target %v, want %s and %v", after.Form.Get(draft.Balance), after.TargetKcal, wall, before.TargetKcal)
	}
	d.picture("targets")
}

// handout keeps the plan, saves its paper and reads it back.
func handout(d *driver) {
	d.t.Helper()
	d.key("ctrl+5")
	d.until("the handout", func(s seenState) bool { return s.Section == "handout" && s.Controls["handout.save"].Width > 0 })
	d.click("file.keep")
	d.until("the plan is kept", func(s seenState) bool { return strings.HasPrefix(s.Kept, "Plan 1") })
	d.picture("handout")
	path := savePaper(d)
	text, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		d.t.Fatal(err)
	}
	energy := unit.Style{}.Number(d.state().TargetKcal, 0)
	for _, word := range []string{"Wren", practiceName, energy, "kcal", "Protein", "Fat", "Carbohydrate", "Fibre", "palm", "fist", "cupped hand", "thumb", "Meal 3"} {
		if !strings.Contains(string(text), word) {
			d.t.Errorf("the handout lacks %q", word)
		}
	}
}

// savePaper takes the proposed name in the home folder and returns the path once
// the whole paper is there.
func savePaper(d *driver) (path string) {
	d.t.Helper()
	home, err := os.UserHomeDir()
	if err != nil {
		d.t.Fatal(err)
	}
	d.click("handout.save")
	d.until("the file dialog", func(s seenState) bool { return s.Dialog })
	d.key("Return")
	d.until("the paper is written", func(seenState) bool {
		found, err := filepath.Glob(filepath.Join(home, "Wren plan *.pdf"))
		if err != nil || len(found) == 0 {
			return false
		}
		path = found[len(found)-1]
		info, err := os.Stat(path)
		return err == nil && info.Size() > 0
	})
	return path
}

// keepAnother changes the plan and keeps it as the next version, by the palette.
func keepAnother(d *driver) {
	d.t.Helper()
	d.key("ctrl+3")
	d.until("the targets", func(s seenState) bool { return s.Section == "targets" })
	d.tabTo("targets.carb_fat_balance_percent")
	turn := d.state().Turn
	d.key("Left", "Left", "Left")
	d.until("the balance moved", func(s seenState) bool { return s.Turn >= turn+3 })
	d.saved()
	d.key("ctrl+k")
	d.until("the palette", func(s seenState) bool { return s.Focused == "palette.search" })
	d.write("keep")
	d.until("the word is typed", func(s seenState) bool { return s.Controls["palette.search"].Text == "keep" })
	d.key("Return")
	d.until("another plan is kept", func(s seenState) bool { return strings.HasPrefix(s.Kept, "Plan 2") })
}

// killedWhileTyping kills the program while it is being typed into, and returns
// the latest state that it had called saved.
func killedWhileTyping(d *driver) seenState {
	d.t.Helper()
	d.key("ctrl+1")
	d.until("the intake", func(s seenState) bool { return s.Section == "intake" })
	d.fill("intake.notes", "A quiet week")
	d.saved()
	acknowledged := d.state()
	typing := exec.Command("xdotool", "type", "--delay", "30", " "+strings.Repeat("and then a bus ", 60))
	if err := typing.Start(); err != nil {
		d.t.Fatal(err)
	}
	const enough = 60 // letters that came after what was acknowledged at first
	least := len(acknowledged.Form.Get(draft.Notes)) + enough
	d.until("it is being typed into and not all is saved", func(s seenState) bool {
		if s.Save == "saved" { // as it is told on the screen
			acknowledged = s
		}
		return len(s.Form.Get(draft.Notes)) > least && s.Turn > s.OnDisk
	})
	d.kill()
	_ = typing.Process.Kill()
	_ = typing.Wait() // ended by the signal
	return acknowledged
}

// lacksNothing checks that all that was acknowledged is there. What was being
// typed may have grown further.
func (d *driver) lacksNothing(acknowledged seenState) {
	d.t.Helper()
	now := d.state()
	for field, want := range acknowledged.Form {
		got := now.Form[field]
		if got != want && (field != draft.Notes || !strings.HasPrefix(got, want)) {
			d.t.Errorf("%s: %q was acknowledged, %q is there", field, want, got)
		}
	}
	if now.Kept != acknowledged.Kept || now.Status != acknowledged.Status || now.TargetKcal != acknowledged.TargetKcal {
		d.t.Errorf("kept %q, %s, %v kcal; want %q, %s, %v kcal",
			now.Kept, now.Status, now.TargetKcal, acknowledged.Kept, acknowledged.Status, acknowledged.TargetKcal)
	}
}

func openByName(d *driver, name string) {
	d.t.Helper()
	d.until("the list of clients", func(s seenState) bool { return s.Place == "clients" && s.Controls["clients.search"].Width > 0 })
	d.tabTo("clients.search")
	d.key("ctrl+a", "BackSpace")
	d.write(name)
	d.key("Return")
	d.until("the file of "+name, func(s seenState) bool {
		return s.Place == "file" && strings.HasPrefix(strings.ToLower(s.Form.Get(draft.Name)), name)
	})
}

func imperialClient(d *driver) {
	d.t.Helper()
	d.until("the list of clients", func(s seenState) bool { return s.Place == "clients" })
	newClient(d, "Robin Sample")
	d.fill("intake.client.born", "2 March 1980")
	choose(d, "intake.client.equation_sex", 1)
	d.fill("intake.height", "5 ft 11 in")
	d.fill("intake.weight", "11 st 6 lb")
	choose(d, "intake.activity", 2)
	choose(d, "intake.goal.kind", 1)
	d.until("a target", func(s seenState) bool { return s.TargetKcal > 0 })
	d.saved()
	d.picture("imperial")
}
