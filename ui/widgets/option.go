package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// Option is one answer among several.
type Option struct {
	Label       string
	Description string // one sentence below the label; may be empty
}

// markSize is the size of the round or square mark before an option.
func markSize() float32 { return grown(14) }

// optionBox is the drawing of one option: a box with a mark and texts. The mark
// is round where one option can be chosen, square where several can.
type optionBox struct {
	box         *canvas.Rectangle
	mark, fill  *canvas.Rectangle
	tick        *icon
	label, desc *Text
	square      bool
	at          fyne.Position
	size        fyne.Size
}

func newOptionBox(o Option, square bool) *optionBox {
	b := &optionBox{
		box: newBox(), mark: newBox(), fill: newBox(),
		tick:  newIcon(IconCheck, theme.OnSpruce, markSize()),
		label: NewText(o.Label, Body), desc: NewText(o.Description, Small), square: square,
	}
	return b
}

func (b *optionBox) parts() []fyne.CanvasObject {
	return []fyne.CanvasObject{b.box, b.mark, b.fill, b.tick.image, b.label, b.desc}
}

// textLeft is where the texts begin in an option.
func textLeft() float32 { return theme.Unit + theme.Half + markSize() + theme.Unit }

// naturalWidth is the width at which the label fits on one line, measured in
// the heavier style that it has when chosen.
func (b *optionBox) naturalWidth() float32 {
	return textLeft() + Strong.measure(b.label.Text()).Width + theme.Unit + theme.Half + 1
}

func (b *optionBox) heightFor(width float32) float32 {
	inner := width - textLeft() - theme.Unit
	height := theme.Two + b.label.HeightFor(inner)
	if b.desc.Text() != "" {
		height += b.desc.HeightFor(inner)
	}
	return max(height, theme.Target)
}

func (b *optionBox) set(at fyne.Position, size fyne.Size) {
	b.at, b.size = at, size
	place(b.box, at.X, at.Y, size.Width, size.Height)
	inner := size.Width - textLeft() - theme.Unit
	labelHeight := b.label.HeightFor(inner)
	textHeight := labelHeight
	if b.desc.Text() != "" {
		textHeight += b.desc.HeightFor(inner)
	}
	top := at.Y + (size.Height-textHeight)/2
	place(b.label, at.X+textLeft(), top, inner, labelHeight)
	place(b.desc, at.X+textLeft(), top+labelHeight, inner, b.desc.HeightFor(inner))
	markY := top + (b.label.lineHeight()-markSize())/2
	markX := at.X + theme.Unit + theme.Half
	place(b.mark, markX, markY, markSize(), markSize())
	place(b.tick.image, markX, markY, markSize(), markSize())
	dot := grown(8)
	place(b.fill, markX+(markSize()-dot)/2, markY+(markSize()-dot)/2, dot, dot)
}

// paint colours the option for its state.
func (b *optionBox) paint(chosen, hovered, disabled bool) {
	b.box.CornerRadius = theme.Radius
	b.box.StrokeWidth = 1
	b.box.StrokeColor, b.box.FillColor = theme.Colour(theme.Edge), theme.Colour(theme.Card)
	b.mark.CornerRadius, b.fill.CornerRadius = markSize()/2, grown(4)
	if b.square {
		b.mark.CornerRadius = 3
	}
	b.mark.StrokeWidth, b.mark.StrokeColor, b.mark.FillColor = 1.5, theme.Colour(inkOf(disabled, theme.Muted)), nothing
	b.label.SetStyle(Body)
	if hovered && !disabled {
		b.box.FillColor = theme.Colour(theme.Hover)
	}
	if chosen {
		accent := theme.Colour(inkOf(disabled, theme.Spruce))
		b.box.FillColor, b.box.StrokeColor = theme.Colour(theme.Tint), accent
		b.mark.StrokeColor = accent
		b.fill.FillColor = accent
		b.label.SetStyle(Strong)
		if b.square {
			b.mark.FillColor = accent
		}
	}
	if disabled {
		b.box.StrokeColor = theme.Colour(theme.Rule)
	}
	b.fill.Hidden = !chosen || b.square
	b.tick.image.Hidden = !chosen || !b.square
	b.tick.setColour(theme.OnSpruce)
	b.label.SetColour(inkOf(disabled, theme.Ink))
	b.desc.SetColour(inkOf(disabled, theme.Muted))
}
