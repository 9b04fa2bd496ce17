package draft

import (
	"handbreadth/domain"
	"handbreadth/domain/unit"
)

// Session is one open client file: its form, what it was understood to say and
// the plan that follows. It is used from one goroutine, the one that draws.
type Session struct {
	form    Form
	style   unit.Style
	reading Reading
	plan    domain.Plan
	planned bool
	undo    []change
	redo    []change
	hears   []func(changed Field)
}

// change is what undoes in one step: edits to one field in a row, or several
// fields set together.
type change []edit

type edit struct {
	field         Field
	before, after string
}

// only reports whether the change is to this one field.
func (c change) only(field Field) bool { return len(c) == 1 && c[0].field == field }

// field names what changed; empty where several did.
func (c change) field() Field {
	if len(c) == 1 {
		return c[0].field
	}
	return ""
}

// NewSession opens a form.
func NewSession(form Form, style unit.Style) *Session {
	s := &Session{form: form.Clone(), style: style}
	s.recompute()
	return s
}

// Form returns a copy of the form as typed.
func (s *Session) Form() Form { return s.form.Clone() }

// Get returns the text of one field as typed.
func (s *Session) Get(field Field) string { return s.form[field] }

// Style returns the units of the practice.
func (s *Session) Style() unit.Style { return s.style }

// Reading returns what the form was understood to say.
func (s *Session) Reading() Reading { return s.reading }

// Try returns what the form would be understood to say with a text in a field.
// Where the text stands there already, what the whole computation found is in
// it, too.
func (s *Session) Try(field Field, text string) Reading {
	if s.form[field] == text {
		return s.reading
	}
	form := s.form.Clone()
	form[field] = text
	return Read(form, s.style)
}

// Plan returns the plan of the form as it stands, and false where something is
// missing or wrong.
func (s *Session) Plan() (domain.Plan, bool) { return s.plan, s.planned }

// Hear calls f after every change, with the field that changed; an empty field
// means that several may have.
func (s *Session) Hear(f func(changed Field)) { s.hears = append(s.hears, f) }

// Set takes what was typed into a field and recomputes everything. Changes to
// one field in a row undo together.
func (s *Session) Set(field Field, text string) {
	before := s.form[field]
	if before == text {
		return
	}
	s.redo = nil
	if n := len(s.undo); n > 0 && s.undo[n-1].only(field) {
		s.undo[n-1][0].after = text
	} else {
		s.undo = append(s.undo, change{{field, before, text}})
	}
	s.put(field, text)
	s.settle(field)
}

// SetAll takes several fields together; they undo in one step.
func (s *Session) SetAll(texts map[Field]string) {
	var c change
	for field, text := range texts {
		if before := s.form[field]; before != text {
			c = append(c, edit{field, before, text})
		}
	}
	if len(c) == 0 {
		return
	}
	s.redo = nil
	s.undo = append(s.undo, c)
	for _, e := range c {
		s.put(e.field, e.after)
	}
	s.settle(c.field())
}

// SetStyle changes the units of the practice; what was typed stays as it is.
func (s *Session) SetStyle(style unit.Style) {
	s.style = style
	s.settle("")
}

// Undo takes back the last change and returns its field, or none where several
// fields changed together; false where there is nothing to take back.
func (s *Session) Undo() (Field, bool) {
	n := len(s.undo)
	if n == 0 {
		return "", false
	}
	c := s.undo[n-1]
	s.undo, s.redo = s.undo[:n-1], append(s.redo, c)
	for _, e := range c {
		s.put(e.field, e.before)
	}
	s.settle(c.field())
	return c.field(), true
}

// Redo makes the change that was taken back last; false where there is none.
func (s *Session) Redo() (Field, bool) {
	n := len(s.redo)
	if n == 0 {
		return "", false
	}
	c := s.redo[n-1]
	s.redo, s.undo = s.redo[:n-1], append(s.undo, c)
	for _, e := range c {
		s.put(e.field, e.after)
	}
	s.settle(c.field())
	return c.field(), true
}

func (s *Session) put(field Field, text string) {
	if text == "" {
		delete(s.form, field)
	} else {
		s.form[field] = text
	}
}

// settle follows what was put into the form and tells who listens.
func (s *Session) settle(field Field) {
	s.recompute()
	for _, hear := range s.hears {
		hear(field)
	}
}

func (s *Session) recompute() {
	s.reading = Read(s.form, s.style)
	s.plan, s.planned = domain.Plan{}, false
	if !s.reading.Complete() {
		return
	}
	plan, err := domain.NewPlan(s.reading.Intake)
	s.plan, s.planned = plan, err == nil
	s.reading.note(s.form, err)
}
