package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/domain/derive"
	"handbreadth/ui/theme"
)

// levelLook is how a level is told: by shape, word and colour together.
type levelLook struct {
	icon   IconName
	word   string
	colour fyne.ThemeColorName
}

// lookOf returns how a level is told. A level that is not known is told as the
// gravest, so that nothing is played down.
func lookOf(level derive.Level) levelLook {
	switch level {
	case derive.Note:
		return levelLook{IconNote, "Note", theme.Blue}
	case derive.Caution:
		return levelLook{IconCaution, "Caution", theme.Amber}
	case derive.Hold:
		return levelLook{IconHold, "Hold", theme.Brick}
	}
	return levelLook{IconRefer, "Refer", theme.Brick}
}

// FindingCard shows one finding: its level, what it says, what it stops and
// where it comes from, with a button where something can be done.
type FindingCard struct {
	composite
	finding           derive.Finding
	box, bar          *canvas.Rectangle
	mark              *icon
	word              *Text
	text, stops, from *Text
	actions           *fyne.Container
}

// NewFindingCard returns the card of a finding.
func NewFindingCard(finding derive.Finding) *FindingCard {
	c := &FindingCard{
		box: newBox(), bar: newBox(),
		mark: newIcon(IconNote, theme.Blue, smallIcon()),
		word: NewLine("", Strong), text: NewText("", Body), stops: NewText("", Small), from: NewText("", Source),
		actions: InsetSides(0, theme.Half, 0, 0, Row()),
	}
	c.actions.Hidden = true
	c.recolor = c.paint
	head := &fyne.Container{Layout: markLayout(Strong), Objects: []fyne.CanvasObject{c.mark.image, c.word}}
	column := ColumnGap(theme.Half, head, c.text, c.stops, c.from, c.actions)
	body := InsetSides(theme.Two, theme.Unit, theme.Unit+theme.Half, theme.Unit+theme.Half, column)
	c.init(c, &fyne.Container{Layout: barLayout{}, Objects: []fyne.CanvasObject{c.box, c.bar, body}})
	c.SetFinding(finding)
	return c
}

// Finding returns the finding that is shown.
func (c *FindingCard) Finding() derive.Finding { return c.finding }

// SetFinding shows another finding.
func (c *FindingCard) SetFinding(finding derive.Finding) {
	c.finding = finding
	look := lookOf(finding.Level)
	c.word.SetText(look.word)
	c.text.SetText(finding.Text)
	c.stops.SetText("")
	if finding.Scope != 0 && finding.Level >= derive.Hold {
		c.stops.SetText("Stops: " + finding.Scope.String())
	}
	c.stops.Hidden = c.stops.Text() == ""
	c.from.SetText(SourceText(finding.Source))
	c.from.Hidden = c.from.Text() == ""
	c.Refresh()
}

// SetAction sets a button below the text; an empty label removes it. It returns
// the button, nil where there is none.
func (c *FindingCard) SetAction(label string, tapped func()) *Button {
	c.actions.Hidden = label == ""
	if label == "" {
		c.Refresh()
		return nil
	}
	b := NewQuietButton(label, tapped)
	c.actions.Objects[0] = Row(b)
	c.Refresh()
	return b
}

func (c *FindingCard) paint() {
	look := lookOf(c.finding.Level)
	c.box.FillColor, c.box.StrokeColor = theme.Colour(theme.Card), theme.Colour(theme.Rule)
	c.box.StrokeWidth, c.box.CornerRadius = 1, theme.Radius
	c.bar.FillColor, c.bar.CornerRadius = theme.Colour(look.colour), 2
	c.mark.set(look.icon, look.colour)
	c.word.SetColour(look.colour)
}

// barLayout lays a box behind the third object and a bar at its left edge.
type barLayout struct{}

func (barLayout) MinSize(objects []fyne.CanvasObject) fyne.Size { return objects[2].MinSize() }

func (barLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[2], width)
}

func (barLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	place(objects[0], 0, 0, size.Width, size.Height)
	place(objects[1], 0, 0, 4, size.Height)
	place(objects[2], 0, 0, size.Width, size.Height)
}
