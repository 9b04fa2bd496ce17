package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// Setting is a line that says how something is set, and opens to what changes
// it: inside of a card, where a [Fold] would be too loud.
type Setting struct {
	composite
	// OnToggled is called after the person at the desk opened or closed it.
	OnToggled func(open bool)

	header *disclosureHeader
	side   *canvas.Rectangle
	inner  *fyne.Container
}

// NewSetting returns a closed setting.
func NewSetting(label string, content fyne.CanvasObject) *Setting {
	s := &Setting{side: newBox()}
	s.header = newDisclosureHeader(label, s.toggle)
	s.inner = &fyne.Container{Layout: sideLayout{}, Objects: []fyne.CanvasObject{s.side, content}}
	s.inner.Hidden = true
	s.recolor = func() { s.side.FillColor = theme.Colour(theme.Rule) }
	s.init(s, ColumnGap(theme.Unit, s.header, s.inner))
	return s
}

// FocusTarget returns the line, which takes the focus.
func (s *Setting) FocusTarget() fyne.Focusable { return s.header }

// Value returns what the line says, and Note what stands below.
func (s *Setting) Value() string { return s.header.value.Text() }

// Note returns the remark below the value.
func (s *Setting) Note() string { return s.header.span.Text() }

// SetValue says how it is set, with a remark below; the remark may be empty.
func (s *Setting) SetValue(value, note string) {
	s.header.value.SetText(value)
	s.header.span.SetText(note)
	s.header.Refresh()
	s.Refresh()
}

// Open reports whether what changes it is shown.
func (s *Setting) Open() bool { return !s.inner.Hidden }

// SetOpen shows or hides what changes it, without calling back.
func (s *Setting) SetOpen(open bool) {
	s.inner.Hidden = !open
	s.header.open = open
	s.header.Refresh()
	s.Refresh()
}

func (s *Setting) toggle() {
	s.SetOpen(!s.Open())
	if s.OnToggled != nil {
		s.OnToggled(s.Open())
	}
}
