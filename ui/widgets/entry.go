package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// entry is Fyne's entry with the hooks that the fields need. Setting its text
// by code does not call back.
type entry struct {
	widget.Entry
	changed func(text string)
	gained  func()
	lost    func()
	key     func(key fyne.KeyName) bool // true: handled

	quiet bool
}

func newEntry() *entry {
	e := &entry{}
	e.ExtendBaseWidget(e)
	e.Entry.OnChanged = func(text string) {
		if !e.quiet && e.changed != nil {
			e.changed(text)
		}
	}
	return e
}

// setText changes the text without calling back.
func (e *entry) setText(text string) {
	if text == e.Text {
		return
	}
	e.quiet = true
	e.SetText(text)
	e.quiet = false
}

// AcceptsTab is false also for text of several lines: Tab goes on.
func (e *entry) AcceptsTab() bool { return false }

// FocusGained tells the field, too.
func (e *entry) FocusGained() {
	e.Entry.FocusGained()
	if e.gained != nil {
		e.gained()
	}
}

// FocusLost tells the field, too.
func (e *entry) FocusLost() {
	e.Entry.FocusLost()
	if e.lost != nil {
		e.lost()
	}
}

// TypedKey lets the field have the key first.
func (e *entry) TypedKey(key *fyne.KeyEvent) {
	if e.key != nil && e.key(key.Name) || anywhere != nil && anywhere(key.Name) {
		return
	}
	if key.Name == fyne.KeyBackspace && e.CursorTextOffset() > 0 {
		e.keepCursor(-1, func() { e.Entry.TypedKey(key) })
		return
	}
	e.Entry.TypedKey(key)
}

// TypedRune keeps the cursor behind what was typed. Where words wrap, Fyne loses
// a blank at the end of a full line: it belongs to no line on the screen, so the
// cursor went before it and the next letter landed on the wrong side.
func (e *entry) TypedRune(r rune) {
	e.keepCursor(+1, func() { e.Entry.TypedRune(r) })
}

// keepCursor does something that moves the cursor by so many letters, and puts
// it there where Fyne lost a blank between two lines.
func (e *entry) keepCursor(by int, do func()) {
	there := e.CursorTextOffset() + by
	replaces := e.SelectedText() != ""
	do()
	if lost := there - e.CursorTextOffset(); lost > 0 && !replaces && !e.Disabled() {
		e.CursorColumn += lost
	}
}

// undo is what undo and redo do in an entry; set by [HandleUndo].
var undo func(again bool) bool

// HandleUndo sets what takes undo, and redo as again, while an entry has the
// focus. It reports whether it took it; else the entry undoes its own typing.
// Nil takes nothing.
func HandleUndo(f func(again bool) bool) { undo = f }

// TypedShortcut hands shortcuts of one letter that the entry does not know, such
// as Ctrl+K, on to the window: Fyne gives them to the focused widget only.
func (e *entry) TypedShortcut(shortcut fyne.Shortcut) {
	if undo != nil {
		switch shortcut.(type) {
		case *fyne.ShortcutUndo:
			if undo(false) {
				return
			}
		case *fyne.ShortcutRedo:
			if undo(true) {
				return
			}
		}
	}
	if forWindow(shortcut) {
		if window, ok := canvasOf(e).(fyne.Shortcutable); ok {
			window.TypedShortcut(shortcut)
			return
		}
	}
	e.Entry.TypedShortcut(shortcut)
}

// forWindow reports whether a shortcut is of one letter; those of Fyne's entry
// are of its own types or of named keys.
func forWindow(shortcut fyne.Shortcut) bool {
	custom, is := shortcut.(*desktop.CustomShortcut)
	return is && len(custom.KeyName) == 1
}

// rusty shows an entry in the program's own way: the border of the focused one
// and its cursor are rust.
func rusty(e *entry) *container.ThemeOverride {
	return container.NewThemeOverride(e, focusTheme{})
}

// focusTheme is the theme in force with rust for primary.
type focusTheme struct{}

func (focusTheme) inForce() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

func (t focusTheme) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	if name == fynetheme.ColorNamePrimary {
		return theme.Colour(theme.Rust)
	}
	return t.inForce().Color(name, variant)
}

func (t focusTheme) Font(style fyne.TextStyle) fyne.Resource    { return t.inForce().Font(style) }
func (t focusTheme) Icon(name fyne.ThemeIconName) fyne.Resource { return t.inForce().Icon(name) }
func (t focusTheme) Size(name fyne.ThemeSizeName) float32       { return t.inForce().Size(name) }
