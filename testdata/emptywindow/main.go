// Command emptywindow is the floor that start-up time, memory and idle
// processor use are measured against: a Fyne window with nothing in it.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
)

func main() {
	start := flag.Bool("bench-start", false, "print first-frame when the first frame is drawn, then end")
	hold := flag.Bool("bench-hold", false, "with -bench-start: stay open until the input closes")
	flag.Parse()

	a := app.NewWithID("org.handbreadth.emptywindow")
	w := a.NewWindow("empty")
	w.SetContent(widget.NewLabel(""))
	if *start {
		onFirstFrame(func() {
			fmt.Println("first-frame")
			if *hold {
				go untilInputCloses(a)
				return
			}
			a.Quit()
		})
	}
	w.ShowAndRun()
}

// onFirstFrame calls then once the first frame is on the screen. Animations
// move before each frame is drawn, so their second move follows the first frame.
func onFirstFrame(then func()) {
	moves := 0
	var watch *fyne.Animation
	watch = fyne.NewAnimation(time.Hour, func(float32) {
		moves++
		if moves == 2 {
			watch.Stop()
			then()
		}
	})
	watch.Start()
}

func untilInputCloses(a fyne.App) {
	_, _ = io.Copy(io.Discard, os.Stdin)
	fyne.Do(a.Quit)
}
