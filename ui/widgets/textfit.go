package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
)

// textFit remembers how a text fits, since a layout asks for it many times over
// and measuring letters is the dearest part of one. It is worked out anew when
// the text, the way in which it is set, or the theme changes.
type textFit struct {
	of    fitKey
	least float32 // the least width
	line  float32 // the height of a line
	kept  [fitsKept]wrapping
	next  int // of kept, the one to be replaced
}

// fitKey is what a fit depends on.
type fitKey struct {
	text        string
	style       TextStyle
	theme       fyne.Theme // its sizes and faces
	single, cut bool
}

// wrapping is a text broken at a width.
type wrapping struct {
	width float32
	lines []string
}

// fitsKept is how many widths are remembered: a layout asks for the least, for
// the present one, and for what each way of standing beside others would leave.
const fitsKept = 4

// fit returns the memory of a text as it is set now.
func (t *Text) fit() *textFit {
	key := fitKey{t.text, t.style, fyne.CurrentApp().Settings().Theme(), t.single, t.cut}
	if t.memo.of != key || t.memo.line == 0 {
		t.memo = textFit{of: key, line: t.style.measure("Hg").Height, least: t.leastWidth()}
	}
	return &t.memo
}

// leastWidth is the width of the longest word, or a moderate width where that is
// less.
func (t *Text) leastWidth() float32 {
	width := t.style.measure(t.text).Width
	const moderate = 96
	if t.cut {
		return min(width, moderate)
	}
	if t.single {
		return width
	}
	longest := float32(0)
	for _, word := range strings.Fields(t.text) {
		longest = max(longest, t.style.measure(word).Width)
	}
	return min(width, max(moderate, min(longest, 2*moderate)))
}

// wrapped returns the lines of a text at a width.
func (f *textFit) wrapped(t *Text, width float32) []string {
	for _, w := range f.kept {
		if w.lines != nil && w.width == width {
			return w.lines
		}
	}
	w := wrapping{width, t.wrap(width)}
	f.kept[f.next] = w
	f.next = (f.next + 1) % fitsKept
	return w.lines
}
