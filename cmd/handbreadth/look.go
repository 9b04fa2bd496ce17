package main

import (
	"encoding/json"
	"os"
	"path/filepath"

	"handbreadth/ui"
)

// worn is what the window wore last. It lies in clear beside the file, so that
// the locked window can be read by who needs large text: nothing of anybody is
// in it.
type worn struct {
	Look     string `json:"look,omitempty"`
	TextSize int    `json:"text_size,omitempty"`
}

// look returns what the window wore last; what cannot be read is nothing.
func (p place) look() (s ui.Settings) {
	text, err := os.ReadFile(filepath.Join(p.folder, lookName))
	var w worn
	if err == nil && json.Unmarshal(text, &w) == nil {
		s.Look, s.TextSize = w.Look, w.TextSize
	}
	return s
}

// remember keeps what the window wears. What cannot be kept is a look less.
func (p place) remember(s ui.Settings) {
	before := p.look()
	if before.Look == s.Look && before.TextSize == s.TextSize {
		return
	}
	if text, err := json.Marshal(worn{s.Look, s.TextSize}); err == nil {
		_ = writePrivate(filepath.Join(p.folder, lookName), text)
	}
}
