// Package draft holds an intake as it was typed, reads it into a domain intake
// and keeps the plan that follows it. It knows no widget, so that everything a
// screen decides about text can be tested without drawing anything.
package draft

import (
	"encoding/json"
	"strings"

	"handbreadth/domain/screen"
)

// Field names one thing that can be typed or chosen. Where the consult file has
// the same thing, the name is the same.
type Field string

// Values of a screening field.
const (
	AnswerNo  = "no"
	AnswerYes = "yes"
)

// ReasonPart is one part of the reason for lifting a hold.
type ReasonPart string

// The parts of a reason.
const (
	ReasonText         ReasonPart = "text"
	ReasonBy           ReasonPart = "by"
	ReasonRegistration ReasonPart = "registration"
	ReasonDate         ReasonPart = "date"
	ReasonPrescriber   ReasonPart = "prescriber"
)

const (
	screeningPrefix = "screening."
	reasonPrefix    = "hold_reasons."
	scoredPrefix    = "scored."
)

// Screening returns the field of a screening question.
func Screening(c screen.Code) Field { return Field(screeningPrefix + string(c)) }

// Reason returns the field of one part of the reason for a finding.
func Reason(code string, part ReasonPart) Field {
	return Field(reasonPrefix + code + "." + string(part))
}

// Form is an intake as it was typed: the text of each field. Fields that were
// never touched are missing.
type Form map[Field]string

// Get returns the text of a field without the blanks around it.
func (f Form) Get(field Field) string { return strings.TrimSpace(f[field]) }

// Clone returns a copy.
func (f Form) Clone() Form {
	c := make(Form, len(f))
	for k, v := range f {
		c[k] = v
	}
	return c
}

// JSON returns the form for keeping.
func (f Form) JSON() ([]byte, error) { return json.Marshal(f) }

// FromJSON returns a kept form. Nothing gives an empty form.
func FromJSON(data []byte) (Form, error) {
	form := Form{}
	if len(data) == 0 {
		return form, nil
	}
	if err := json.Unmarshal(data, &form); err != nil {
		return nil, err
	}
	return form, nil
}
