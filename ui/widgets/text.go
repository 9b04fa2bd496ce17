package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// TextStyle is one of the ways in which text is set.
type TextStyle int

// The text styles.
const (
	Body    TextStyle = iota // ordinary text
	Strong                   // a label, a value in a line
	Small                    // hints and remarks, muted
	Source                   // where a figure comes from: small, slanted, muted
	Title                    // title of a card or a page
	Display                  // the one number that matters most
	Problem                  // what is wrong with a field: small, brick
)

// face returns size, style, own font and colour of a text style.
func (s TextStyle) face() (size float32, style fyne.TextStyle, font fyne.Resource, colour fyne.ThemeColorName) {
	switch s {
	case Strong:
		return theme.Body(), fyne.TextStyle{}, theme.MediumFace(), theme.Ink
	case Small:
		return theme.Small(), fyne.TextStyle{}, nil, theme.Muted
	case Source:
		return theme.Small(), fyne.TextStyle{Italic: true}, nil, theme.Muted
	case Title:
		return theme.Title(), fyne.TextStyle{}, theme.MediumFace(), theme.Ink
	case Display:
		return theme.Display(), fyne.TextStyle{}, theme.MediumFace(), theme.Ink
	case Problem:
		return theme.Small(), fyne.TextStyle{}, theme.MediumFace(), theme.Brick
	}
	return theme.Body(), fyne.TextStyle{}, nil, theme.Ink
}

// measure returns the size of a text on one line.
func (s TextStyle) measure(text string) fyne.Size {
	size, style, font, _ := s.face()
	measured, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, size, style, font)
	return measured
}

// Text is text that wraps at its width. A line break in it is kept; a word that
// is wider than the line is broken.
type Text struct {
	widget.BaseWidget
	text   string
	style  TextStyle
	colour fyne.ThemeColorName // "" is the style's own
	align  fyne.TextAlign
	single bool // never wraps
	cut    bool // a line that is too long ends in an ellipsis
	lines  []*canvas.Text
	r      *renderer
	memo   textFit
}

// NewText returns text that wraps.
func NewText(text string, style TextStyle) *Text {
	t := &Text{text: text, style: style}
	t.ExtendBaseWidget(t)
	return t
}

// NewLine returns text that stays on one line, for short labels in a row.
func NewLine(text string, style TextStyle) *Text {
	t := NewText(text, style)
	t.single = true
	return t
}

// Text returns the text.
func (t *Text) Text() string { return t.text }

// SetText changes the text.
func (t *Text) SetText(text string) {
	if text != t.text {
		t.text = text
		t.Refresh()
	}
}

// SetStyle changes how the text is set.
func (t *Text) SetStyle(style TextStyle) {
	if style != t.style {
		t.style = style
		t.Refresh()
	}
}

// SetColour sets the text in a named colour of the theme; "" is the style's own.
func (t *Text) SetColour(name fyne.ThemeColorName) {
	if name != t.colour {
		t.colour = name
		t.Refresh()
	}
}

// SetAlign aligns the lines; the default is leading.
func (t *Text) SetAlign(align fyne.TextAlign) {
	if align != t.align {
		t.align = align
		t.Refresh()
	}
}

// HeightFor returns the height that the text needs at a width.
func (t *Text) HeightFor(width float32) float32 {
	return float32(len(t.wrapped(width))) * t.lineHeight()
}

// newCutLine returns a line that gives way: where it is too long for its place it
// ends in an ellipsis. It is for rows that are all equally high.
func newCutLine(text string, style TextStyle) *Text {
	t := NewLine(text, style)
	t.cut = true
	return t
}

func (t *Text) lineHeight() float32 { return t.fit().line }

func (t *Text) wrapped(width float32) []string { return t.fit().wrapped(t, width) }

// wrap breaks the text at a width.
func (t *Text) wrap(width float32) []string {
	if t.cut && width > 0 {
		return []string{shorten(t.text, width, t.widthOf)}
	}
	if t.single || width <= 0 {
		return strings.Split(t.text, "\n")
	}
	return wrap(t.text, width, t.widthOf)
}

func (t *Text) widthOf(text string) float32 { return t.style.measure(text).Width }

// CreateRenderer implements fyne.Widget.
func (t *Text) CreateRenderer() fyne.WidgetRenderer {
	t.r = &renderer{of: t, min: t.leastSize, layout: t.layout}
	t.layout(t.Size())
	return t.r
}

// leastSize is as wide as the longest word, or a moderate width where that is
// less, and as high as the text is at the present width.
func (t *Text) leastSize() fyne.Size {
	width := t.fit().least
	return fyne.NewSize(width, t.HeightFor(max(width, t.Size().Width)))
}

// layout makes a line of text for each wrapped line.
func (t *Text) layout(size fyne.Size) {
	texts := t.wrapped(size.Width)
	pointSize, style, font, colour := t.style.face()
	if t.colour != "" {
		colour = t.colour
	}
	height := t.lineHeight()
	changed := len(texts) != len(t.lines)
	for len(t.lines) < len(texts) {
		t.lines = append(t.lines, canvas.NewText("", nil))
	}
	t.lines = t.lines[:len(texts)]
	for i, text := range texts {
		line := t.lines[i]
		changed = changed || line.Text != text
		line.Text, line.TextSize, line.TextStyle, line.FontSource = text, pointSize, style, font
		line.Color, line.Alignment = theme.Colour(colour), t.align
		place(line, 0, float32(i)*height, size.Width, height)
	}
	if t.r != nil && changed {
		t.r.parts = t.r.parts[:0:0]
		for _, line := range t.lines {
			t.r.parts = append(t.r.parts, line)
		}
		canvas.Refresh(t)
	}
}
