package widgets

import (
	"testing"

	"handbreadth/ui/theme"
)

func TestWakefulWakesOnlyFromSleep(t *testing.T) {
	program(t, theme.Light)
	woken := 0
	body := NewQuietButton("Inside", nil)
	w := NewWakeful(Column(body), func() { woken++ })
	open(t, w, 300, 200)
	w.Show()
	if woken != 0 {
		t.Error("woken while it was shown")
	}
	w.Hide()
	w.Show()
	if woken != 1 || !w.Visible() || body.Size().Width != 300 {
		t.Errorf("woken %d times, visible %v, inside %v", woken, w.Visible(), body.Size())
	}
}
