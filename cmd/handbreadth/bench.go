package main

import (
	"io"
	"os"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
)

// onFrames calls then once so many frames were drawn. Animations move before
// each frame is drawn, so their second move follows the first frame.
func onFrames(frames int, then func()) {
	moves := 0
	var watch *fyne.Animation
	watch = fyne.NewAnimation(time.Hour, func(float32) {
		moves++
		if moves == frames+1 {
			watch.Stop()
			then()
		}
	})
	watch.Start()
}

// firstFrame tells that the first frame is drawn, and ends the program at once
// or when the input closes.
func (p *program) firstFrame(a fyne.App) {
	_, _ = os.Stdout.WriteString("first-frame\n")
	if !p.options.benchHold {
		a.Quit()
		return
	}
	go func() {
		_, _ = io.Copy(io.Discard, os.Stdin)
		task.After(nil, 0, a.Quit)
	}()
}
