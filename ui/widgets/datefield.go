package widgets

import "handbreadth/domain/unit"

// dateHint says what a date field accepts.
const dateHint = "such as 2026-03-02, 2/3/2026 (day first) or 2 March 2026"

// DateField is a field for a day. It accepts what people type and shows how it
// understood it.
type DateField struct {
	Field

	// OnDate is called on every keystroke, with the day and true where the text
	// is one, else with the zero day: true for blank text, false for text that
	// is no date.
	OnDate func(date unit.Date, ok bool)
	// CheckDate refuses days that make no sense here; nil takes every day.
	CheckDate func(date unit.Date) error
}

// NewDateField returns an empty date field. An empty hint says which ways of
// writing a date are accepted.
func NewDateField(label, hint string) *DateField {
	if hint == "" {
		hint = dateHint
	}
	d := &DateField{}
	d.setUp(d, label, hint)
	d.Check = d.understand
	d.OnChanged = d.tell
	return d
}

// Date returns the day; ok is false for text that is no date, and the day is
// zero for blank text.
func (d *DateField) Date() (date unit.Date, ok bool) { return d.read(d.Text()) }

// SetDate shows a day without calling back; the zero day empties the field.
func (d *DateField) SetDate(date unit.Date) { d.SetText(date.String()) }

func (d *DateField) read(text string) (unit.Date, bool) {
	if blank(text) {
		return unit.Date{}, true
	}
	date, err := unit.ParseDate(d.Label(), text)
	if err == nil && d.CheckDate != nil {
		err = d.CheckDate(date)
	}
	if err != nil {
		return unit.Date{}, false
	}
	return date, true
}

func (d *DateField) understand(text string) (string, error) {
	date, err := unit.ParseDate(d.Label(), text)
	if err != nil {
		return "", err
	}
	if d.CheckDate != nil {
		if err := d.CheckDate(date); err != nil {
			return "", err
		}
	}
	return "= " + date.Weekday().String() + " " + date.Long(), nil
}

func (d *DateField) tell(text string) {
	if d.OnDate != nil {
		d.OnDate(d.read(text))
	}
}
