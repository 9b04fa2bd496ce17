package ui

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/widgets"
)

// region is a part of the window that F6 moves between.
type region int

const (
	regionRail region = iota
	regionStrip
	regionBody
	regionSheet
)

// nextRegion moves the focus to the next part of the window.
func (s *Shell) nextRegion() {
	if s.desk == nil || s.gate != nil || s.palette != nil || s.asking != nil {
		return
	}
	switch s.regionOfFocus() {
	case regionRail:
		if s.place == PlaceFile {
			widgets.FocusOn(s.file.strip)
		} else {
			s.enterPage()
		}
	case regionStrip:
		s.window.Canvas().FocusNext()
	case regionBody:
		if s.place == PlaceFile && !s.file.fold.now {
			widgets.FocusOn(s.file.head.sheet)
		} else {
			widgets.FocusOn(s.rail.Button(max(0, s.rail.Selected())))
		}
	case regionSheet:
		widgets.FocusOn(s.rail.Button(max(0, s.rail.Selected())))
	}
	s.changed()
}

// enterPage gives the focus to the first control after the rail.
func (s *Shell) enterPage() {
	last := s.rail.Button(len(railPlaces) - 1)
	if s.lock.Visible() {
		last = s.lock
	}
	if widgets.FocusOn(last) {
		s.window.Canvas().FocusNext()
	}
}

// regionOfFocus tells where the focus is; without focus it counts as the sheet,
// from where the rail is next.
func (s *Shell) regionOfFocus() region {
	focused, ok := s.window.Canvas().Focused().(fyne.CanvasObject)
	if !ok {
		return regionSheet
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(focused)
	switch {
	case at.X < s.side.Size().Width:
		return regionRail
	case s.place != PlaceFile:
		return regionBody
	case focused == fyne.CanvasObject(s.file.strip):
		return regionStrip
	case focused == fyne.CanvasObject(s.file.head.sheet), at.X >= s.file.sheetLeft():
		return regionSheet
	}
	return regionBody
}

// sheetLeft is where the running sheet begins in the window.
func (f *clientFile) sheetLeft() float32 {
	return fyne.CurrentApp().Driver().AbsolutePositionForObject(f.object.Objects[1]).X
}
