package main

import (
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui"
	"handbreadth/ui/draft"
)

// tourDay is the day of the demo consultation, so that its pictures change only
// when the program does.
var tourDay = time.Date(2026, time.March, 2, 10, 0, 0, 0, time.UTC)

// settleFrames are the frames drawn before a picture is taken: enough for
// layouts that follow one another.
const settleFrames = 8

// stop is one stop of the tour: something is done, and then a picture taken.
type stop struct {
	picture string // name of the file; "" takes none
	do      func()
}

// tour walks through the demo consultation and writes pictures and the handout.
type tour struct {
	program *program
	folder  string
	stops   []stop
	err     error
}

// tour opens the demo in a folder of its own, which is removed afterwards.
func (p *program) tour() error {
	data, err := os.MkdirTemp("", "handbreadth-tour-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(data)
	if err := os.MkdirAll(p.options.tour, 0o750); err != nil {
		return err
	}
	if err := os.Setenv("FYNE_SCALE", "1"); err != nil {
		return err
	}
	p.place = place{data}
	p.clock = func() time.Time { return tourDay }
	t := &tour{program: p, folder: p.options.tour}
	t.stops = t.plan()
	err = p.open(func() {
		p.shell.Start(false)
		t.next()
	})
	if t.err != nil {
		return t.err
	}
	return err
}

// next makes the next stop once nothing is under way and the window is drawn.
func (t *tour) next() {
	if t.err != nil || len(t.stops) == 0 {
		t.program.shell.Close()
		return
	}
	s := t.stops[0]
	t.stops = t.stops[1:]
	s.do()
	t.whenCalm(func() {
		if s.picture != "" {
			t.take(s.picture)
		}
		t.next()
	})
}

// whenCalm calls then once no job runs and the window is drawn.
func (t *tour) whenCalm(then func()) {
	onFrames(settleFrames, func() {
		if t.program.jobs.busy() {
			t.whenCalm(then)
			return
		}
		then()
	})
}

// take writes a picture of the window.
func (t *tour) take(name string) {
	path := filepath.Join(t.folder, name+".png")
	file, err := os.Create(path)
	if err == nil {
		err = png.Encode(file, capture(t.program.window))
		if closed := file.Close(); err == nil {
			err = closed
		}
	}
	if err != nil {
		t.err = err
		return
	}
	fmt.Println(path)
}

func (t *tour) size(width, height float32) func() {
	return func() { t.program.window.Resize(fyne.NewSize(width, height)) }
}

func (t *tour) open(name string) func() {
	return func() {
		if found := t.program.entered().Find(name, false); len(found) > 0 {
			t.program.shell.OpenClient(found[0])
			return
		}
		t.err = fmt.Errorf("the demo has no client %s", name)
	}
}

func (t *tour) section(s ui.Section) func() { return func() { t.program.shell.ShowSection(s) } }

// plan lists the stops.
func (t *tour) plan() []stop {
	shell := func() *ui.Shell { return t.program.shell }
	list := []stop{
		{"welcome", t.size(firstWidth, firstHeight)},
		{"", func() { shell().Start(true) }},
	}
	for _, look := range []string{ui.LookLight, ui.LookDark} {
		list = append(list, stop{"", func() { shell().SetLook(look) }}, stop{"clients-" + look, func() { shell().Go(ui.PlaceClients) }})
		list = append(list, stop{"", t.open("Wren")})
		for _, s := range ui.Sections() {
			list = append(list, stop{s.Name() + "-" + look, t.section(s)})
		}
		list = append(
			list,
			stop{"palette-" + look, func() { shell().OpenPalette() }},
			stop{"", func() { shell().Back() }},
			stop{"practice-" + look, func() { shell().Go(ui.PlacePractice) }},
			stop{"help-" + look, func() { shell().Go(ui.PlaceHelp) }},
		)
	}
	return append(list, t.consultation()...)
}

// consultation is the visit itself: the answers of one client change, the
// balance moves, the plan is kept and its handout written.
func (t *tour) consultation() []stop {
	shell := func() *ui.Shell { return t.program.shell }
	return []stop{
		{"", func() { shell().SetLook(ui.LookLight) }},
		{"", t.open("Amina")},
		{"held-light", t.section(ui.SectionScreening)},
		{"", t.open("Kofi")},
		{"referred-light", t.section(ui.SectionTargets)},
		{"", t.open("Oskar")},
		{"imperial-light", t.section(ui.SectionIntake)},
		{"", t.open("Wren")},
		{"", func() { shell().NewVisit() }},
		{"", func() { t.answer() }},
		{"balance-light", t.section(ui.SectionTargets)},
		{"", t.writeHandout},
		{"clients-wide-light", func() {
			t.size(1920, 1080)()
			shell().Go(ui.PlaceClients)
		}},
		{"", t.open("Wren")},
		{"targets-wide-light", t.section(ui.SectionTargets)},
		{"targets-narrow-light", t.size(1024, 768)},
	}
}

// answer types what the client says at the new visit.
func (t *tour) answer() {
	visit := demoVisit{form: draft.Form{draft.Weight: "76.9 kg", draft.Balance: "65", draft.NextStep: "Soup with beans on two evenings."}}
	for field, text := range visit.typed(t.program.entered().Today()) {
		t.program.shell.Set(field, text)
	}
}

func (t *tour) writeHandout() {
	path := filepath.Join(t.folder, "handout.pdf")
	t.program.shell.SaveHandout(path, func(err error) {
		if err != nil {
			t.err = err
			return
		}
		fmt.Println(path)
	})
}
