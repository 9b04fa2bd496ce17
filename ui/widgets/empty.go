package widgets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
)

// EmptyState says that there is nothing yet and what to do next.
type EmptyState struct {
	composite
	title, next *Text
	button      *Button
}

// NewEmptyState returns an empty state; without a label it has no button.
func NewEmptyState(title, next, label string, tapped func()) *EmptyState {
	e := &EmptyState{title: NewText(title, Title), next: NewText(next, Body)}
	e.next.SetColour(theme.Muted)
	column := Column(e.title, e.next)
	if label != "" {
		e.button = NewPrimaryButton(label, tapped)
		column.Add(InsetSides(0, theme.Unit, 0, 0, Row(e.button)))
	}
	const most = 440
	e.init(e, Inset(theme.Four, Narrow(most, column)))
	return e
}

// SetText changes both texts.
func (e *EmptyState) SetText(title, next string) {
	e.title.SetText(title)
	e.next.SetText(next)
	e.Refresh()
}

// Button returns the button, nil where there is none.
func (e *EmptyState) Button() *Button { return e.button }

// FocusTarget returns the button.
func (e *EmptyState) FocusTarget() fyne.Focusable { return e.button }
