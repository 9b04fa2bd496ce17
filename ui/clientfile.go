package ui

import (
	"context"
	"fmt"
	"maps"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/draft"
	"handbreadth/ui/handout"
	"handbreadth/ui/intake"
	"handbreadth/ui/measures"
	"handbreadth/ui/screening"
	"handbreadth/ui/sheet"
	"handbreadth/ui/targets"
	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// clientFile is the open client file: its form, what is being saved, and the
// screens over it.
type clientFile struct {
	shell   *Shell
	id      string
	file    File
	session *draft.Session
	saver   *saver[draft.Form]
	papers  *filePapers

	section Section
	screens map[Section]sectionScreen

	head   *fileHead
	strip  *widgets.SectionStrip
	body   *fyne.Container
	sheet  *sheet.Screen
	fold   *foldLayout
	object *fyne.Container
}

// OpenClient opens a client file.
func (s *Shell) OpenClient(id string) {
	s.openFile(id, func(file File) {
		s.file = s.newClientFile(id, file, file.Form())
		s.Go(PlaceFile)
		s.file.goOn()
	})
}

// openFile reads a client file in place of the one that is open.
func (s *Shell) openFile(id string, opened func(File)) {
	s.leaveFile()
	desk := s.desk
	task.Run(s.tools.Run, "Opening the client file", func(ctx context.Context) (File, error) {
		return desk.Open(ctx, id)
	}, func(file File, err error) {
		if err != nil {
			s.toast.Warn(err.Error())
			return
		}
		s.leaveFile()
		opened(file)
	})
}

func (s *Shell) newClientFile(id string, file File, form draft.Form) *clientFile {
	f := &clientFile{
		shell: s, id: id, file: file, session: draft.NewSession(form, s.desk.Settings().Style()),
		screens: map[Section]sectionScreen{}, body: container.NewStack(),
	}
	f.saver = newSaver(s.tools, "Saving", file.SaveDraft, f.showSaved)
	f.papers = &filePapers{file: file, run: s.tools.Run, kept: f.showKept, paper: s.desk.Settings().PaperSize}
	f.papers.note(f.session)
	f.build()
	f.session.Hear(f.hear)
	f.showSaved(Saved, "")
	f.showMarks()
	return f
}

func (f *clientFile) build() {
	labels := make([]string, len(sectionWords))
	for i, section := range Sections() {
		labels[i] = section.Label()
	}
	f.head = newFileHead(f)
	f.strip = widgets.Name(widgets.NewSectionStrip(labels, func(i int) { f.show(Section(i)) }), "strip")
	f.sheet = sheet.New(f.session)
	f.sheet.OnGo = f.goTo
	top := container.NewVBox(widgets.InsetSides(theme.Three, theme.Unit, theme.Three, 0, f.head.object),
		widgets.InsetSides(theme.Unit, 0, theme.Unit, 0, f.strip))
	middle := bordered(top, nil, nil, f.body)
	side := container.NewBorder(nil, nil, widget.NewSeparator(), nil, f.sheet.Object())
	f.fold = &foldLayout{
		window: func() float32 { return f.shell.window.Canvas().Size().Width },
		folded: f.head.showFolded,
	}
	f.object = container.New(f.fold, middle, side)
}

// goOn shows where the work goes on: what the intake still needs, then the
// targets.
func (f *clientFile) goOn() {
	reading := f.session.Reading()
	if len(reading.Missing) > 0 {
		f.goTo(SectionIntake.Name(), reading.Missing[0])
		return
	}
	f.show(SectionTargets)
	if len(reading.Problems) > 0 {
		f.show(SectionIntake)
	}
	f.enterBody()
}

// hear follows every change of the form.
func (f *clientFile) hear(draft.Field) {
	f.papers.note(f.session)
	f.saver.change(f.session.Form())
	f.head.renew()
	f.showMarks()
	f.shell.changed()
}

// show shows a section and gives it the focus.
func (f *clientFile) show(section Section) {
	f.section = section
	screen, made := f.screens[section]
	if !made {
		screen = f.newScreen(section)
		f.screens[section] = screen
		f.body.Add(screen.Object())
	}
	for other, s := range f.screens {
		if other != section {
			s.Object().Hide()
		}
	}
	screen.Object().Show()
	f.strip.Select(int(section))
	f.body.Refresh()
	f.shell.changed()
}

func (f *clientFile) newScreen(section Section) sectionScreen {
	switch section {
	case SectionScreening:
		s := screening.New(f.session)
		s.OnGo = f.goTo
		return s
	case SectionTargets:
		s := targets.New(f.session)
		s.OnGo = f.goTo
		return s
	case SectionMeasures:
		s := measures.New(f.session)
		s.OnGo = f.goTo
		return s
	case SectionHandout:
		s := handout.New(f.session, f.papers, f.shell.tools.Run)
		s.OnGo = f.goTo
		s.SetPaper(f.papers.paper())
		return s
	}
	return intake.New(f.session)
}

// goTo leads to a section and, where one is named, to a field in it.
func (f *clientFile) goTo(section string, field draft.Field) {
	to, known := sectionNamed(section)
	if !known {
		return
	}
	f.show(to)
	if screen, ok := f.screens[to].(focuser); ok && field != "" {
		screen.Focus(field)
	}
}

// enterBody gives the focus to the first control of the section.
func (f *clientFile) enterBody() {
	if widgets.FocusOn(f.strip) {
		f.shell.window.Canvas().FocusNext()
	}
}

// leaveField moves the focus from a field to the sections, and reports whether
// it did.
func (f *clientFile) leaveField() bool {
	focused := f.shell.window.Canvas().Focused()
	if focused == nil || focused == fyne.Focusable(f.strip) {
		return false
	}
	return widgets.FocusOn(f.strip)
}

// showMarks sets marks at sections that wait for something.
func (f *clientFile) showMarks() {
	marks := make([]string, len(sectionWords))
	if n := len(f.session.Reading().Problems); n > 0 {
		marks[SectionIntake] = fmt.Sprintf("%d to mend", n)
	}
	if plan, ok := f.session.Plan(); ok {
		switch {
		case plan.Gate.Referred():
			marks[SectionScreening] = "refer"
		case plan.Gate.Held():
			marks[SectionScreening] = "hold"
		}
	}
	for i, mark := range marks {
		f.strip.SetMark(i, mark)
	}
}

func (f *clientFile) showSaved(state SaveState, words string) {
	f.head.showSaved(state, words)
	f.shell.changed()
}

func (f *clientFile) showKept(Kept) {
	f.head.renew()
	f.shell.changed()
}

// isKept reports whether the form is as it was kept last.
func (f *clientFile) isKept() bool {
	kept := f.file.Kept()
	return kept.Form != nil && maps.Equal(kept.Form, f.session.Form())
}

// flush writes what is not on the disk yet, and brings the list up to date.
func (f *clientFile) flush() error {
	if err := f.saver.flush(); err != nil {
		return err
	}
	return f.file.Settle(context.Background(), f.session.Form())
}

// leaveFile saves and closes the open client file, if any.
func (s *Shell) leaveFile() {
	f := s.file
	if f == nil {
		return
	}
	s.toast.Close() // what it offers belongs to the file
	if err := f.flush(); err != nil {
		s.toast.Warn(s.tools.Words(err))
	}
	s.file = nil
	for _, section := range Sections() {
		widgets.Unname(section.Name())
	}
	for _, name := range []string{"strip", "sheet", "file"} {
		widgets.Unname(name)
	}
}

// name is the client's name as typed, or as it was.
func (f *clientFile) name() string {
	if name := f.session.Form().Get(draft.Name); name != "" {
		return name
	}
	row, _ := f.shell.desk.Row(f.id)
	return row.Name
}

// about is the line below the name.
func (f *clientFile) about() string {
	var parts []string
	if date := f.session.Reading().Intake.Date; !date.IsZero() {
		parts = append(parts, "Visit of "+date.Long())
	}
	if kept := f.file.Kept(); kept.Form != nil {
		parts = append(parts, kept.String())
	}
	return strings.Join(parts, "  ·  ")
}
