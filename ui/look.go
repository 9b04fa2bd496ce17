package ui

import (
	"io"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"handbreadth/ui/practice"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// variants says which variant each look is; light where none was chosen.
var variants = map[string]theme.Variant{
	"": theme.Light, practice.LookLight: theme.Light, practice.LookDark: theme.Dark, practice.LookSystem: theme.FollowSystem,
}

// wear puts on the look of the settings.
func (s *Shell) wear(settings Settings) {
	s.app.Settings().SetTheme(theme.New(variants[settings.Look], settings.Scale()))
}

// changeSettings takes what was set: the look and the units change at once.
func (s *Shell) changeSettings(now Settings) {
	before := s.settings.value
	if s.settings.turn == 0 {
		before = s.desk.Settings()
	}
	s.settings.change(now)
	if now.Look != before.Look || now.TextSize != before.TextSize {
		s.wear(now)
	}
	if s.file != nil && now.Style() != before.Style() {
		s.file.session.SetStyle(now.Style())
	}
	s.changed()
}

// SetLook changes to light, dark or the system's look.
func (s *Shell) SetLook(look string) {
	now := s.currentSettings()
	now.Look = look
	s.changeSettings(now)
	s.practice, s.safety = nil, nil
	if s.place == PlacePractice {
		s.Go(PlacePractice)
	}
}

// currentSettings is what was set last, on the disk or not yet.
func (s *Shell) currentSettings() Settings {
	if s.settings.turn > 0 {
		return s.settings.value
	}
	return s.desk.Settings()
}

func (s *Shell) showSettingsSaved(state SaveState, words string) {
	if s.practice != nil {
		s.practice.ShowSaved(saveWords[state])
	}
	if state == SaveFailed {
		s.toast.Warn(words)
	}
	s.changed()
}

var saveWords = map[SaveState]string{Saved: "Saved", Saving: "Saving…", SaveFailed: "Not saved"}

// choosePicture asks for a picture file and hands over its name and content.
func (s *Shell) choosePicture(chosen func(name string, data []byte)) {
	ask := dialog.NewFileOpen(func(reader fyne.URIReadCloser, err error) {
		if err != nil || reader == nil {
			return
		}
		defer reader.Close()
		const most = 16 << 20
		data, err := io.ReadAll(io.LimitReader(reader, most))
		if err != nil {
			s.toast.Warn("This picture could not be read. Choose another.")
			return
		}
		chosen(reader.URI().Name(), data)
	}, s.window)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{".png", ".jpg", ".jpeg"}))
	ask.Show()
}

// demoMark marks the demo at the foot of the rail.
func demoMark() *fyne.Container {
	var lines []fyne.CanvasObject
	for _, words := range []string{"Demo data", "All invented"} {
		line := widgets.NewLine(words, widgets.Small)
		line.SetColour(theme.Amber)
		line.SetAlign(fyne.TextAlignCenter)
		lines = append(lines, line)
	}
	return widgets.InsetSides(0, theme.Unit, 0, theme.Two, widgets.ColumnGap(0, lines...))
}
