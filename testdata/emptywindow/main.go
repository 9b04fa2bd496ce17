// Command emptywindow is the floor that start-up time, memory and idle
// processor use are measured against: a Fyne window with nothing in it.
package main

import (
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
)

func main() {
	a := app.NewWithID("org.handbreadth.emptywindow")
	w := a.NewWindow("empty")
	w.SetContent(widget.NewLabel(""))
	w.ShowAndRun()
}
