package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"handbreadth/ui/help"
)

// binding is a key and what it does.
type binding struct {
	shortcut fyne.Shortcut
	keys     string // as the help shows it; "" for a second way to the same
	does     string
	act      func()
}

const (
	control      = fyne.KeyModifierShortcutDefault
	controlShift = control | fyne.KeyModifierShift
)

func custom(key fyne.KeyName, modifier fyne.KeyModifier) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: modifier}
}

// bindings lists the keys with a modifier, in the order of the help.
func (s *Shell) bindings() []binding {
	list := []binding{
		{custom(fyne.KeyK, control), "Ctrl+K", "Find clients, sections and actions", s.OpenPalette},
		{custom(fyne.KeyN, control), "Ctrl+N", "New client", s.NewClient},
		{custom(fyne.KeyP, control), "Ctrl+P", "Go to the handout", func() { s.ShowSection(SectionHandout) }},
		{custom(fyne.KeyS, control), "Ctrl+S", "Save now (it saves itself as you type)", s.SaveNow},
		{&fyne.ShortcutUndo{}, "Ctrl+Z", "Undo", s.Undo},
		{custom(fyne.KeyZ, controlShift), "Ctrl+Shift+Z", "Redo", s.Redo},
		{&fyne.ShortcutRedo{}, "", "", s.Redo},
		{custom(fyne.KeyL, control), "Ctrl+L", "Lock", s.Lock},
	}
	keys := []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5}
	for i, section := range Sections() {
		list = append(list, binding{
			custom(keys[i], control), "Ctrl+" + string(keys[i]), section.Label(), func() { s.ShowSection(section) },
		})
	}
	return append(list,
		binding{custom(fyne.Key6, control), "Ctrl+6", "Show or hide the running sheet", s.ToggleSheet},
	)
}

// bind makes the keys work in the window.
func (s *Shell) bind() {
	for _, b := range s.bindings() {
		s.window.Canvas().AddShortcut(b.shortcut, func(fyne.Shortcut) {
			if s.gate == nil {
				b.act()
			}
		})
	}
	s.window.Canvas().SetOnTypedKey(func(event *fyne.KeyEvent) {
		if !s.plainKey(event.Name) && event.Name == fyne.KeyEscape {
			s.Back()
		}
	})
}

// plainKey handles the keys that work everywhere without a modifier, and
// reports whether it did.
func (s *Shell) plainKey(key fyne.KeyName) bool {
	switch key {
	case fyne.KeyF1:
		s.Go(PlaceHelp)
	case fyne.KeyF6:
		s.nextRegion()
	default:
		return false
	}
	return true
}

// helpGroups are the keys as the help lists them.
func (s *Shell) helpGroups() []help.Group {
	var work, sections []help.Key
	for _, b := range s.bindings() {
		switch {
		case b.keys == "":
		case strings.HasSuffix(b.keys, "+6") || isSectionKey(b.keys):
			sections = append(sections, help.Key{Keys: b.keys, Does: b.does})
		default:
			work = append(work, help.Key{Keys: b.keys, Does: b.does})
		}
	}
	return []help.Group{
		{Title: "Anywhere", Keys: append(work,
			help.Key{Keys: "F1", Does: "This page"},
			help.Key{Keys: "F6", Does: "Move between rail, sections, page and running sheet"},
			help.Key{Keys: "Escape", Does: "Back"},
		)},
		{Title: "In a client file", Keys: sections},
		{Title: "In a form", Keys: []help.Key{
			{Keys: "Tab, Enter", Does: "On to the next field"},
			{Keys: "Shift+Tab", Does: "To the field before"},
			{Keys: "Space", Does: "Choose, press, open a number"},
			{Keys: "Arrow keys", Does: "Move within choices, lists and the balance"},
		}},
	}
}

func isSectionKey(keys string) bool {
	const digits = "12345"
	return strings.HasPrefix(keys, "Ctrl+") && len(keys) == len("Ctrl+1") && strings.Contains(digits, keys[len(keys)-1:])
}
