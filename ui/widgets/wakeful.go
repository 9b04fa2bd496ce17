package widgets

import "fyne.io/fyne/v2"

// Wakeful holds a screen that need not be kept up to date while it is hidden: it
// is told when it is shown again.
type Wakeful struct {
	composite
	// OnShow is called after the screen was hidden and is shown.
	OnShow func()
}

// NewWakeful returns a holder that shows an object.
func NewWakeful(body fyne.CanvasObject, onShow func()) *Wakeful {
	w := &Wakeful{OnShow: onShow}
	w.init(w, body)
	return w
}

// Show shows the screen and wakes it.
func (w *Wakeful) Show() {
	hidden := w.Hidden
	w.BaseWidget.Show()
	if hidden && w.OnShow != nil {
		w.OnShow()
	}
}
