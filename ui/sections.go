package ui

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
)

// Section is a part of a client file.
type Section int

// The sections, in the order of the strip.
const (
	SectionIntake Section = iota
	SectionScreening
	SectionTargets
	SectionMeasures
	SectionHandout
)

// sectionWords has the name of each section in code and its label.
var sectionWords = []struct{ name, label string }{
	{"intake", "Intake"},
	{"screening", "Screening"},
	{"targets", "Targets"},
	{"measures", "Measures"},
	{"handout", "Handout"},
}

// Sections lists the sections in order.
func Sections() []Section {
	list := make([]Section, len(sectionWords))
	for i := range list {
		list[i] = Section(i)
	}
	return list
}

// Name is the section's name in code.
func (s Section) Name() string { return sectionWords[s].name }

// Label is the section's name on the screen.
func (s Section) Label() string { return sectionWords[s].label }

// sectionNamed returns the section of a name, and false where none has it.
func sectionNamed(name string) (Section, bool) {
	for i, w := range sectionWords {
		if w.name == name {
			return Section(i), true
		}
	}
	return 0, false
}

// sectionScreen is what every section is.
type sectionScreen interface {
	Object() fyne.CanvasObject
}

// focuser is a section with fields.
type focuser interface{ Focus(field draft.Field) }
