//go:build probe

package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/store/vault"
	"handbreadth/ui"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// Probe is what a program built for the journey tells about itself. Positions
// and sizes are in pixels of the window.
type Probe struct {
	ui.State
	Width, Height int
	Scale         float32
	Title         string // of the window
	Focused       string // name of the control with the focus
	Dialog        bool   // a dialog of the toolkit lies over the window
	Controls      map[string]Control
}

// Control is one named control that can be seen.
type Control struct {
	X, Y, Width, Height int
	Text                string
}

// probePath is the file to write to; "" is none. The others make what takes long
// on purpose short.
var (
	probePath  string
	probeQuick bool
	probeTick  time.Duration
)

func probeFlag(flags *flag.FlagSet) {
	flags.StringVar(&probePath, "probe", "", "write what is shown to this `file`, for the journey")
	flags.BoolVar(&probeQuick, "probe-quick", false, "make passphrases that protect nothing, for the journey")
	flags.DurationVar(&probeTick, "probe-minute", 0, "how long a minute of waiting is, for the journey")
}

// probeEvery is how often the program looks whether something has changed.
const probeEvery = 50 * time.Millisecond

// prober writes the probe file whenever something has changed.
type prober struct {
	program *program
	path    string
	last    []byte
}

func (p *program) probe(tools *ui.Tools) {
	if probeQuick {
		p.effort = vault.TestEffort
	}
	tools.Minute = probeTick
	if probePath == "" {
		return
	}
	w := &prober{program: p, path: probePath}
	task.After(nil, probeEvery, w.look)
}

func (w *prober) look() {
	task.After(nil, probeEvery, w.look)
	written, err := json.MarshalIndent(w.now(), "", " ")
	if err != nil || bytes.Equal(written, w.last) {
		return
	}
	fresh := filepath.Join(filepath.Dir(w.path), ".probe")
	if os.WriteFile(fresh, written, 0o600) == nil && os.Rename(fresh, w.path) == nil {
		w.last = written
	}
}

// now is what is shown now.
func (w *prober) now() Probe {
	c := w.program.window.Canvas()
	probe := Probe{State: w.program.shell.State(), Scale: c.Scale(), Title: w.program.window.Title(), Dialog: c.Overlays().Top() != nil, Controls: map[string]Control{}}
	probe.Width, probe.Height = c.PixelCoordinateForPosition(fyne.NewPos(c.Size().Width, c.Size().Height))
	for name, object := range widgets.Named() {
		if focusOf(object) != nil && focusOf(object) == c.Focused() {
			probe.Focused = name
		}
		if control, shown := w.control(c, object); shown {
			probe.Controls[name] = control
		}
	}
	return probe
}

func focusOf(object fyne.CanvasObject) fyne.Focusable {
	if f, ok := object.(widgets.Focuser); ok {
		return f.FocusTarget()
	}
	f, _ := object.(fyne.Focusable)
	return f
}

// control tells where an object is; false where it cannot be seen.
func (w *prober) control(c fyne.Canvas, object fyne.CanvasObject) (Control, bool) {
	driver := fyne.CurrentApp().Driver()
	if !object.Visible() || driver.CanvasForObject(object) != c {
		return Control{}, false
	}
	at, size := driver.AbsolutePositionForObject(object), object.Size()
	x, y := c.PixelCoordinateForPosition(at)
	right, below := c.PixelCoordinateForPosition(at.AddXY(size.Width, size.Height))
	return Control{X: x, Y: y, Width: right - x, Height: below - y, Text: textOf(object)}, true
}

// textOf is what a control says.
func textOf(object fyne.CanvasObject) string {
	switch o := object.(type) {
	case interface{ Text() string }:
		return o.Text()
	case interface{ Chosen() string }:
		return o.Chosen()
	}
	return ""
}
