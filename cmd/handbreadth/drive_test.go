//go:build journey

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"handbreadth/ui/draft"
)

// seenState is what the program tells about itself; see the probe.
type seenState struct {
	Place, Section, Save, Kept, Status, Focused string
	Turn, OnDisk, Touched                       int
	TargetKcal                                  float64
	Asking, Dialog, Palette, Settings           bool
	Sealed, Loading                             bool
	Title                                       string
	Form                                        draft.Form
	Controls                                    map[string]struct {
		X, Y, Width, Height int
		Text                string
	}
}

// patience is how long the journey waits for the program to show something.
const patience = 60 * time.Second

// passphrase is that of the journey's practices; it is invented.
const passphrase = "lantern orchard seven kites"

// driver drives one running program with mouse and keyboard.
type driver struct {
	t       *testing.T
	data    string
	probe   string
	log     *os.File
	command *exec.Cmd
	code    []string // the groups of the recovery code; nil: not seen
}

// way is how a program is started beside what every start has.
type way struct {
	arguments   []string
	environment []string
}

// buildWithProbe builds the program with the probe, without the tag that would
// switch off the toolkit's check of threads.
func buildWithProbe(t *testing.T) string {
	t.Helper()
	if os.Getenv("HANDBREADTH_DISPLAY_READY") == "" {
		t.Fatal("the journey needs a display of its own: run it through go run ./cmd/dev test")
	}
	path := filepath.Join(t.TempDir(), "handbreadth")
	if out, err := exec.Command("go", "build", "-tags", "probe", "-o", path, ".").CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	return path
}

// start opens the program on a data folder and waits until it shows a place.
func start(t *testing.T, program, data, place string) *driver {
	t.Helper()
	return startIn(t, program, data, place, way{})
}

func startIn(t *testing.T, program, data, place string, in way) *driver {
	t.Helper()
	d := &driver{t: t, data: data, probe: filepath.Join(t.TempDir(), "probe.json")}
	var err error
	if d.log, err = os.Create(filepath.Join(t.TempDir(), "log")); err != nil {
		t.Fatal(err)
	}
	d.command = exec.Command(program, append(in.arguments, "-data", data, "-probe", d.probe, "-probe-quick", "-size", "1366x768")...)
	d.command.Env = append(append(os.Environ(), "FYNE_SCALE=1", "XDG_CONFIG_HOME="+desktopFolders(t)), in.environment...)
	d.command.Stdout, d.command.Stderr = d.log, d.log
	if err := d.command.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(d.kill)
	d.until("the program shows "+place, func(s seenState) bool { return s.Place == place })
	return d
}

// desktopFolders makes the folders that a desktop has, and returns where they
// are named; the file dialog logs an error where they are not.
func desktopFolders(t *testing.T) (config string) {
	t.Helper()
	config = t.TempDir()
	var named strings.Builder
	for _, name := range []string{"DESKTOP", "DOCUMENTS", "DOWNLOAD", "DOWNLOADS", "MUSIC", "PICTURES", "VIDEOS"} {
		folder := t.TempDir()
		fmt.Fprintf(&named, "XDG_%s_DIR=%q\n", name, folder)
	}
	if err := os.WriteFile(filepath.Join(config, "user-dirs.dirs"), []byte(named.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return config
}

// kill ends the program at once, as a power cut would.
func (d *driver) kill() {
	if d.command.ProcessState != nil {
		return
	}
	_ = d.command.Process.Kill() // SIGKILL
	_ = d.command.Wait()         // ended by the signal
	d.alarms()
}

// ownSettings is what the toolkit logs when its watcher reads its own settings
// file while it is being written, or after it was killed at that. None of the
// program's settings are in that file, and it is written again.
const ownSettings = "Fyne error:  Preferences load error"

// alarms looks for what the toolkit logs when it is used wrongly.
func (d *driver) alarms() {
	text, err := os.ReadFile(d.log.Name())
	if err != nil {
		d.t.Error(err)
	}
	text = bytes.ReplaceAll(text, []byte(ownSettings), nil)
	for _, alarm := range []string{"Error in Fyne call thread", "Failed to load image", "Fyne error", "panic:"} {
		if bytes.Contains(text, []byte(alarm)) {
			d.t.Errorf("the program logged %q:\n%s", alarm, text)
		}
	}
}

// end asks the program to end, as the system does at the end of the day.
func (d *driver) end() {
	d.t.Helper()
	if err := d.command.Process.Signal(os.Interrupt); err != nil {
		d.t.Fatal(err)
	}
	if err := d.command.Wait(); err != nil {
		d.t.Errorf("the program ended with %v", err)
	}
	d.alarms()
}

func (d *driver) state() (s seenState) {
	text, err := os.ReadFile(d.probe)
	if err == nil {
		err = json.Unmarshal(text, &s)
	}
	if err != nil && !os.IsNotExist(err) {
		d.t.Fatal(err)
	}
	return s
}

// await waits until the program is in a state; false where it never was.
func (d *driver) await(limit time.Duration, holds func(seenState) bool) bool {
	const look = 15 * time.Millisecond
	ticker := time.NewTicker(look)
	defer ticker.Stop()
	for end := time.Now().Add(limit); time.Now().Before(end); <-ticker.C {
		if holds(d.state()) {
			return true
		}
	}
	return false
}

// until waits for a state that must come.
func (d *driver) until(what string, holds func(seenState) bool) {
	d.t.Helper()
	if d.await(patience, holds) {
		return
	}
	s := d.state()
	s.Controls = nil
	log, _ := os.ReadFile(d.log.Name()) // only to be shown
	d.picture("stuck")
	d.t.Fatalf("never seen: %s; the program shows %+v\n%s", what, s, log)
}

func (d *driver) xdotool(arguments ...string) {
	d.t.Helper()
	if out, err := exec.Command("xdotool", arguments...).CombinedOutput(); err != nil {
		d.t.Fatalf("xdotool %v: %v\n%s", arguments, err, out)
	}
}

func (d *driver) key(keys ...string) {
	d.t.Helper()
	d.xdotool(append([]string{"key", "--delay", "20"}, keys...)...)
}

func (d *driver) write(text string) {
	d.t.Helper()
	d.xdotool("type", "--delay", "12", text)
}

// click clicks into the middle of a control once it can be seen.
func (d *driver) click(name string) {
	d.t.Helper()
	d.until(name+" can be clicked", func(s seenState) bool {
		c, shown := s.Controls[name]
		return shown && c.X+c.Y > 0 && c.Width > 0
	})
	c := d.state().Controls[name]
	d.xdotool("mousemove", strconv.Itoa(c.X+c.Width/2), strconv.Itoa(c.Y+c.Height/2), "click", "1")
}

// tabTo presses Tab until a control has the focus.
func (d *driver) tabTo(name string) {
	d.t.Helper()
	const most = 60
	for range most {
		before := d.state().Focused
		if before == name {
			return
		}
		d.key("Tab")
		const step = time.Second
		d.await(step, func(s seenState) bool { return s.Focused != before })
	}
	d.picture("tab")
	d.t.Fatalf("%d times Tab never came to %s", most, name)
}

// fill goes to a field by Tab, writes into it and waits until it says so.
func (d *driver) fill(name, text string) {
	d.t.Helper()
	d.tabTo(name)
	d.write(text)
	d.until(name+" holds what was typed", func(s seenState) bool { return s.Controls[name].Text == text })
}

// begin starts a practice: it chooses a passphrase, reads the recovery code off
// the window, and types two groups of it back.
func (d *driver) begin() {
	d.t.Helper()
	d.click("welcome.start")
	d.until("a passphrase is asked for", func(s seenState) bool { return s.Place == "passphrase" && s.Focused == "unlock.first" })
	d.picture("passphrase")
	d.write(passphrase)
	d.key("Return")
	d.until("it is asked for again", func(s seenState) bool { return s.Focused == "unlock.again" })
	d.write(passphrase)
	d.key("Return")
	d.until("the recovery code", func(s seenState) bool { return s.Place == "code" && s.Controls["unlock.on"].Width > 0 })
	d.picture("code")
	code := d.state().Controls
	for n := 1; code["unlock.group"+strconv.Itoa(n)].Text != ""; n++ {
		d.code = append(d.code, code["unlock.group"+strconv.Itoa(n)].Text)
	}
	d.click("unlock.on")
	d.until("two groups are asked for", func(s seenState) bool { return s.Place == "confirm" && strings.HasPrefix(s.Focused, "unlock.asked") })
	for range 2 {
		asked := d.state().Focused
		d.write(strings.ToLower(code["unlock.group"+strings.TrimPrefix(asked, "unlock.asked")].Text))
		d.key("Return")
		d.until("the group is taken", func(s seenState) bool { return s.Focused != asked })
	}
	d.until("the list of clients", func(s seenState) bool { return s.Place == "clients" && s.Sealed })
}

// unlock types the passphrase into the locked window.
func (d *driver) unlock() {
	d.t.Helper()
	d.until("the passphrase is asked for", func(s seenState) bool { return s.Place == "locked" && s.Focused == "unlock.passphrase" })
	d.write(passphrase)
	d.key("Return")
	d.until("it is unlocked", func(s seenState) bool { return s.Place != "locked" && !s.Loading })
}

// saved waits until everything that was typed is on the disk.
func (d *driver) saved() {
	d.t.Helper()
	d.until("everything is saved", func(s seenState) bool { return s.Save == "saved" && s.OnDisk == s.Turn })
}

// picture keeps what the display shows, where a folder for pictures is named.
func (d *driver) picture(name string) {
	folder := os.Getenv("HANDBREADTH_PICTURES")
	if folder == "" {
		return
	}
	path := filepath.Join(folder, "journey-"+strings.ReplaceAll(name, " ", "-")+".png")
	if out, err := exec.Command("import", "-window", "root", path).CombinedOutput(); err != nil {
		d.t.Errorf("import: %v\n%s", err, out)
	}
}
