package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// SearchField is an entry for searching. Escape empties it; with [SearchField.Steer]
// the arrows, Page keys and Enter move in a list while typing goes on.
type SearchField struct {
	composite
	OnChanged func(text string)
	OnEnter   func(text string)

	entry *entry
	icon  *icon
	ring  *canvas.Rectangle
	list  *List
}

// NewSearchField returns an empty search field.
func NewSearchField(placeholder string) *SearchField {
	s := &SearchField{entry: newEntry(), icon: newIcon(IconSearch, theme.Muted, smallIcon()), ring: newRing()}
	s.entry.SetPlaceHolder(placeholder)
	s.entry.changed = s.typed
	s.entry.gained = func() { s.showFocus(true) }
	s.entry.lost = func() { s.showFocus(false) }
	s.entry.key = s.key
	s.recolor = func() { s.icon.setColour(theme.Muted) }
	ringed := &fyne.Container{Layout: ringLayout{}, Objects: []fyne.CanvasObject{rusty(s.entry), s.ring}}
	s.init(s, &fyne.Container{Layout: searchLayout{}, Objects: []fyne.CanvasObject{s.icon.image, ringed}})
	return s
}

// searchLayout sets the icon before the entry.
type searchLayout struct{}

func (searchLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	const least = 160
	size := objects[1].MinSize()
	return fyne.NewSize(least, size.Height)
}

func (searchLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left := smallIcon() + theme.Unit
	place(objects[0], 0, (size.Height-smallIcon())/2, smallIcon(), smallIcon())
	place(objects[1], left, 0, size.Width-left, size.Height)
}

// FocusTarget returns the entry, which takes the focus.
func (s *SearchField) FocusTarget() fyne.Focusable { return s.entry }

// Text returns the text.
func (s *SearchField) Text() string { return s.entry.Text }

// SetText changes the text without calling back.
func (s *SearchField) SetText(text string) { s.entry.setText(text) }

// Steer lets the keys of the field move the highlight of a list and choose from
// it.
func (s *SearchField) Steer(list *List) {
	s.list = list
	list.lit = true
}

func (s *SearchField) typed(text string) {
	if s.OnChanged != nil {
		s.OnChanged(text)
	}
}

func (s *SearchField) showFocus(shown bool) {
	s.ring.Hidden = !shown
	s.Refresh()
	if shown {
		reveal(s)
	}
}

func (s *SearchField) key(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyEscape:
		if s.entry.Text == "" {
			return commonKey(s.entry, key)
		}
		s.entry.SetText("")
		return true
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown:
		return s.list != nil && s.list.key(key)
	case fyne.KeyReturn, fyne.KeyEnter:
		if s.list != nil && s.list.key(key) {
			return true
		}
		if s.OnEnter != nil {
			s.OnEnter(s.entry.Text)
		}
		return true
	}
	return false
}

// blank reports whether a text has nothing in it.
func blank(text string) bool { return strings.TrimSpace(text) == "" }
