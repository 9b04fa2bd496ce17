//go:build journey

package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"handbreadth/ui/draft"
)

// What is planted in the sealed practice, all of it invented, and the name of an
// answer as a form that is not sealed would have it.
const (
	plantedName     = "Quillowmere Thistledown"
	plantedWhy      = "Zanthopickle stairs without a rest"
	plantedNotes    = "Brindlewhistle moved house"
	plantedLater    = "Marrowquist came by bus"
	plantedPractice = "Tumblewick Practice"
	plantedAnswer   = "screening.lithium"
)

// words are the words to search for.
func planted() []string {
	return []string{
		"Quillowmere", "Thistledown", "Zanthopickle", "Brindlewhistle", "Marrowquist", "Tumblewick", plantedAnswer,
		passphrase, strings.ReplaceAll(passphrase, " ", ""),
	}
}

// TestNothingIsLeftInClear plants words in a sealed practice through the real
// program, keeps a plan, looks at its paper and prints it, makes a backup, is
// killed, locks, and ends; after each it searches every byte of the data folder,
// the backups, the temporary folder, the toolkit's own folder and the logs.
func TestNothingIsLeftInClear(t *testing.T) {
	program := buildWithProbe(t)
	s := newSearch(t)
	d := s.start(program, "welcome")
	d.begin()
	s.recoveryCode = d.code
	namePractice(d, plantedPractice)
	newClient(d, plantedName)
	metricIntake(d, plantedWhy)
	d.fill("intake.notes", plantedNotes)
	d.saved()
	screening(d)
	printed(d, s)
	backedUp(d, s)
	d.kill()
	s.finds("after a kill", d)

	d = s.start(program, "locked")
	d.unlock()
	openByName(d, "quillowmere")
	d.key("ctrl+1")
	d.until("the intake", func(s seenState) bool { return s.Section == "intake" })
	d.tabTo("intake.notes")
	d.key("End")
	d.write(". " + plantedLater)
	d.until("it is typed", func(s seenState) bool { return strings.HasSuffix(s.Form.Get(draft.Notes), plantedLater) })
	d.key("ctrl+l")
	d.until("the window is locked", func(s seenState) bool { return s.Place == "locked" })
	s.showsNothing(d)
	d.picture("locked")
	s.finds("while it is locked", d)
	d.unlock()
	d.until("the work goes on at the same place", func(s seenState) bool {
		return s.Place == "file" && s.Section == "intake" && strings.HasSuffix(s.Form.Get(draft.Notes), plantedLater)
	})
	if !s.inFiles(s.probes, "Quillowmere") {
		t.Error("the search does not find what the probe tells in clear, so it would find nothing")
	}
	d.end()
	s.finds("after the end", d)
}

// printed keeps the plan, looks at its paper and hands it to the printer: a
// program that takes it and leaves it lying.
func printed(d *driver, s *search) {
	d.t.Helper()
	d.key("ctrl+5")
	d.until("the preview", func(s seenState) bool { return s.Section == "handout" && s.Controls["handout.preview"].Height > 600 })
	d.click("file.keep")
	d.until("the plan is kept", func(s seenState) bool { return strings.HasPrefix(s.Kept, "Plan 1") })
	d.click("handout.print")
	d.until("the paper waits for the printer", func(seenState) bool {
		waiting, err := filepath.Glob(filepath.Join(s.data, "*.print", "Quillowmere*.pdf"))
		return err == nil && len(waiting) == 1
	})
	d.key("ctrl+l")
	d.until("the window is locked", func(s seenState) bool { return s.Place == "locked" })
	d.until("the shelf of papers is empty", func(seenState) bool {
		waiting, err := filepath.Glob(filepath.Join(s.data, "*.print"))
		return err == nil && len(waiting) == 0
	})
	d.unlock()
	d.until("the handout again", func(s seenState) bool { return s.Place == "file" && s.Section == "handout" })
}

// backedUp makes a backup into a folder that is typed.
func backedUp(d *driver, s *search) {
	d.t.Helper()
	d.click("rail.practice")
	d.until("the practice", func(s seenState) bool { return s.Place == "practice" })
	d.tabTo("safety.backups")
	d.key("space")
	d.fill("safety.folder", s.backups)
	d.tabTo("safety.folder.use")
	d.key("space")
	d.until("the folder is taken", func(seenState) bool {
		_, err := os.Stat(filepath.Join(s.backups, "handbreadth-backups.txt"))
		return err == nil
	})
	d.tabTo("safety.backup.now")
	d.key("space")
	d.until("the backup is there", func(s seenState) bool {
		return strings.HasPrefix(s.Controls["safety.backup.told"].Text, "Made and checked")
	})
	d.picture("backups")
}

// TestItLocksByItself waits until the program locks by itself, and tries that it
// hears of every key and every move of the pointer.
func TestItLocksByItself(t *testing.T) {
	program, data := buildWithProbe(t), t.TempDir()
	d := start(t, program, data, "welcome")
	d.begin()
	for what, do := range map[string]func(){
		"the pointer":              func() { d.xdotool("mousemove_relative", "--", "7", "5") },
		"the wheel":                func() { d.xdotool("click", "5") },
		"a key":                    func() { d.key("shift") },
		"a key in the search":      func() { d.click("clients.search"); d.key("a") },
		"the pointer over a popup": func() { d.key("ctrl+k"); d.xdotool("mousemove_relative", "--", "3", "3") },
	} {
		before := d.state().Touched
		do()
		d.until("it hears of "+what, func(s seenState) bool { return s.Touched > before })
	}
	d.end()
	const minute = "200ms" // ten of them until it locks
	d = startIn(t, program, data, "locked", way{arguments: []string{"-probe-minute", minute}})
	d.unlock()
	d.until("it locks by itself", func(s seenState) bool { return s.Place == "locked" })
	d.end()
}

// search is where the program of one test leaves anything, and how it is looked
// through.
type search struct {
	t                                   *testing.T
	data, backups, temp, config, probes string
	bin                                 string // has the program that prints
	recoveryCode                        []string
}

func newSearch(t *testing.T) *search {
	s := &search{t: t, data: t.TempDir(), backups: t.TempDir(), temp: t.TempDir(), config: t.TempDir(), bin: t.TempDir()}
	for _, name := range []string{"xdg-open", "lp"} {
		if err := os.WriteFile(filepath.Join(s.bin, name), []byte("#!/bin/sh\nexit 0\n"), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

func (s *search) start(program, place string) *driver {
	d := startIn(s.t, program, s.data, place, way{environment: []string{
		"TMPDIR=" + s.temp, "XDG_CONFIG_HOME=" + s.config, "XDG_CACHE_HOME=" + s.temp,
		"PATH=" + s.bin + string(os.PathListSeparator) + os.Getenv("PATH"),
	}})
	s.probes = filepath.Dir(d.probe)
	return d
}

// finds reports every planted word that is found, in any case and coding.
func (s *search) finds(when string, d *driver) {
	s.t.Helper()
	words := planted()
	if len(s.recoveryCode) > 1 {
		words = append(words, strings.Join(s.recoveryCode, " "), strings.Join(s.recoveryCode, ""))
	}
	var bytes int64
	for _, folder := range []string{s.data, s.backups, s.temp, s.config, filepath.Dir(d.log.Name())} {
		bytes += s.look(folder, func(path string, content []byte) {
			for _, word := range words {
				if has(content, word) || has([]byte(filepath.Base(path)), word) {
					s.t.Errorf("%s: %q lies in clear in %s", when, word, path)
				}
			}
		})
	}
	if bytes == 0 {
		s.t.Errorf("%s: nothing was searched", when)
	}
	s.t.Logf("%s: %d bytes searched for %d words", when, bytes, len(words))
}

// inFiles reports whether some file of a folder has a word.
func (s *search) inFiles(folder, word string) (found bool) {
	s.look(folder, func(_ string, content []byte) { found = found || has(content, word) })
	return found
}

// look shows every file below a folder and returns how many bytes there were.
func (s *search) look(folder string, at func(path string, content []byte)) (total int64) {
	err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !entry.Type().IsRegular() {
			return err
		}
		content, err := os.ReadFile(path)
		if os.IsNotExist(err) {
			return nil // the program removed it meanwhile
		}
		total += int64(len(content))
		at(path, content)
		return err
	})
	if err != nil {
		s.t.Error(err)
	}
	return total
}

// showsNothing looks for planted words in what the locked window shows.
func (s *search) showsNothing(d *driver) {
	s.t.Helper()
	seen := d.state()
	texts := []string{seen.Title}
	for name, control := range seen.Controls {
		texts = append(texts, name, control.Text)
	}
	for _, field := range seen.Form {
		texts = append(texts, field)
	}
	for _, word := range planted() {
		if has([]byte(strings.Join(texts, "\n")), word) {
			s.t.Errorf("the locked window shows %q", word)
		}
	}
	if seen.Title != "Handbreadth" {
		s.t.Errorf("the title of the locked window is %q", seen.Title)
	}
	if out, err := exec.Command("xdotool", "search", "--name", "Quillowmere").Output(); err == nil && len(out) > 0 {
		s.t.Errorf("a window is named after the client: %s", out)
	}
}

// has reports whether bytes have a word in UTF-8 or UTF-16, whatever the case.
func has(content []byte, word string) bool {
	for _, form := range []string{word, strings.ToLower(word), strings.ToUpper(word)} {
		for _, coded := range [][]byte{[]byte(form), utf16Bytes(form, 0, 1), utf16Bytes(form, 1, 0)} {
			if bytes.Contains(content, coded) {
				return true
			}
		}
	}
	return bytes.Contains(bytes.ToLower(content), []byte(strings.ToLower(word)))
}

// utf16Bytes codes a text; low and high say where each half of a unit goes.
func utf16Bytes(text string, low, high int) []byte {
	var out []byte
	for _, unit := range utf16.Encode([]rune(text)) {
		pair := make([]byte, 2)
		pair[low], pair[high] = byte(unit), byte(unit>>8)
		out = append(out, pair...)
	}
	return out
}

func TestTheSearchFindsWhatIsThere(t *testing.T) {
	for i, content := range [][]byte{
		[]byte("xx Quillowmere yy"), []byte("\x00QUILLOWMERE\x00"), []byte("quillowmere"), []byte("qUiLlowMere"),
		append([]byte{0}, utf16Bytes("Quillowmere", 0, 1)...), utf16Bytes("QUILLOWMERE", 1, 0),
	} {
		if !has(content, "Quillowmere") {
			t.Errorf("case %s is not found", strconv.Itoa(i))
		}
	}
	if has([]byte("Quillow mere"), "Quillowmere") {
		t.Error("found what is not there")
	}
}
