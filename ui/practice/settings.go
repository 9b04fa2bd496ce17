package practice

import (
	"handbreadth/domain/unit"
)

// The looks of the program.
const (
	LookSystem = "system"
	LookLight  = "light"
	LookDark   = "dark"
)

// The sizes of paper.
const (
	PaperA4     = "A4"
	PaperLetter = "Letter"
)

// Settings is what the practice has set. The zero value is a practice that has
// set nothing: metric, kilocalories, A4, the light look.
type Settings struct {
	Name         string `json:"name,omitempty"`
	Practitioner string `json:"practitioner,omitempty"`
	Registration string `json:"registration,omitempty"`
	Contact      string `json:"contact,omitempty"` // one line each
	Footer       string `json:"footer,omitempty"`
	Colour       string `json:"colour,omitempty"` // "#1E5B4F"; empty: the program's own
	LogoName     string `json:"logo_name,omitempty"`
	// Logo is a PNG or JPEG picture, kept apart from the rest.
	Logo         []byte          `json:"-"`
	System       unit.System     `json:"system"`
	Energy       unit.EnergyUnit `json:"energy"`
	DecimalComma bool            `json:"decimal_comma"`
	Paper        string          `json:"paper,omitempty"`
	Look         string          `json:"look,omitempty"`
	TextSize     int             `json:"text_size,omitempty"` // percent; 0: 100
	// LockAfter is after how many minutes the program locks by itself: 0 is
	// DefaultLockMinutes, less is never.
	LockAfter int `json:"lock_after,omitempty"`
}

// DefaultLockMinutes is after how many minutes the program locks where nothing
// was chosen.
const DefaultLockMinutes = 10

// LockMinutes returns after how many minutes the program locks by itself; less
// than 0 is never.
func (s Settings) LockMinutes() int {
	if s.LockAfter == 0 {
		return DefaultLockMinutes
	}
	return s.LockAfter
}

// Style returns how the practice writes quantities.
func (s Settings) Style() unit.Style {
	return unit.Style{System: s.System, EnergyIn: s.Energy, DecimalComma: s.DecimalComma}
}

// Scale returns the factor of all text sizes.
func (s Settings) Scale() float32 {
	if s.TextSize == 0 {
		return 1
	}
	return float32(s.TextSize) / 100
}

// chosenLook returns the look, light where none was chosen.
func (s Settings) chosenLook() string {
	if s.Look == "" {
		return LookLight
	}
	return s.Look
}

// PaperSize returns the paper, A4 where none was chosen.
func (s Settings) PaperSize() string {
	if s.Paper == "" {
		return PaperA4
	}
	return s.Paper
}
