package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// fileHead is the top of the client file: the name, what is kept, whether what
// was typed is saved, and what can be done with the whole file.
type fileHead struct {
	file   *clientFile
	object *fyne.Container

	name, about *widgets.Text
	saved       *widgets.Text
	again       *widgets.Button
	visit, keep *widgets.Button
	sheet       *widgets.Button
}

func newFileHead(f *clientFile) *fileHead {
	h := &fileHead{
		file:  f,
		name:  widgets.NewLine("", widgets.Title),
		about: widgets.NewLine("", widgets.Small),
		saved: widgets.Name(widgets.NewLine("", widgets.Small), "file.saved"),
		again: widgets.Name(widgets.NewQuietButton("Try again", f.saver.start), "file.again"),
		visit: widgets.Name(widgets.NewQuietButton("Start a new visit", f.shell.NewVisit), "file.visit"),
		keep:  widgets.Name(widgets.NewPrimaryButton("Keep this plan", f.shell.KeepPlan), "file.keep"),
		sheet: widgets.Name(widgets.NewQuietButton("Sheet", f.shell.ToggleSheet), "sheet.toggle"),
	}
	h.again.Hide()
	h.object = widgets.Ends(
		widgets.ColumnGap(0, h.name, h.about),
		container.NewHBox(container.NewCenter(h.saved), h.again, h.visit, h.keep, h.sheet),
	)
	h.renew()
	return h
}

// renew shows what the form and what is kept say now.
func (h *fileHead) renew() {
	f := h.file
	h.name.SetText(clipped(f.name()))
	h.about.SetText(f.about())
	label, can := f.keepLabel()
	h.keep.SetText(label)
	setEnabled(h.keep, can)
	setShown(h.visit, f.visitIsOld())
	h.object.Refresh()
}

// longestName keeps a long name from pushing the buttons out of the window.
const longestName = 28

func clipped(name string) string {
	runes := []rune(name)
	if len(runes) <= longestName {
		return name
	}
	return string(runes[:longestName-1]) + "…"
}

// showSaved shows whether what was typed is on the disk. "Saved" is shown only
// when the file has it.
func (h *fileHead) showSaved(state SaveState, words string) {
	setShown(h.again, state == SaveFailed)
	switch state {
	case Saved:
		h.saved.SetColour(theme.Muted)
		h.saved.SetText("Saved")
	case Saving:
		h.saved.SetColour(theme.Muted)
		h.saved.SetText("Saving…")
	case SaveFailed:
		h.saved.SetColour(theme.Brick)
		h.saved.SetText("Not saved")
		h.file.shell.toast.Warn(words)
	}
	h.object.Refresh()
}

// showFolded shows whether the running sheet is folded away.
func (h *fileHead) showFolded(folded bool) {
	if folded {
		h.sheet.SetText("Show sheet")
	} else {
		h.sheet.SetText("Hide sheet")
	}
}

// keepLabel says what keeping would do, and whether it can be done.
func (f *clientFile) keepLabel() (label string, can bool) {
	plan, ok := f.session.Plan()
	switch {
	case f.isKept() && f.file.Kept().Referral:
		return "Referral kept", false
	case f.isKept():
		return "Plan kept", false
	case ok && plan.Gate.Referred():
		return "Keep the referral", true
	}
	return "Keep this plan", true
}

// visitIsOld reports whether the form is of a kept visit before today.
func (f *clientFile) visitIsOld() bool {
	date := f.session.Reading().Intake.Date
	return f.isKept() && date.Before(f.shell.desk.Today())
}

func setShown(object fyne.CanvasObject, shown bool) {
	if shown {
		object.Show()
	} else {
		object.Hide()
	}
}

func setEnabled(b *widgets.Button, enabled bool) {
	if enabled {
		b.Enable()
	} else {
		b.Disable()
	}
}
