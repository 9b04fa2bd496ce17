package widgets

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// macroNames are the macros in the order of the bar.
var macroNames = [3]string{"Protein", "Fat", "Carbohydrate"}

// MacroBar shows how the energy is shared among protein, fat and carbohydrate.
// They are told apart by pattern and label: solid, hatched, dotted, in ink.
type MacroBar struct {
	composite
	style   unit.Style
	grams   [3]unit.Gram
	share   [3]unit.Percent
	numbers bool
	bar     *canvas.Raster
	entries [3]*macroEntry
}

// macroEntry is one line of the bar's legend.
type macroEntry struct {
	swatch      *canvas.Raster
	name, value *Text
	row         *fyne.Container
}

const (
	barHeight    float32 = 24
	swatchWidth  float32 = 24
	swatchHeight float32 = 16
)

// NewMacroBar returns an empty bar.
func NewMacroBar(style unit.Style) *MacroBar {
	m := &MacroBar{style: style, numbers: true}
	m.bar = canvas.NewRaster(m.draw)
	m.bar.SetMinSize(fyne.NewSize(120, barHeight))
	column := ColumnGap(theme.Half, Inset(0, m.bar))
	legend := Column()
	for i, name := range macroNames {
		e := &macroEntry{name: NewText(name, Body), value: NewLine("", Strong)}
		e.swatch = canvas.NewRaster(func(w, h int) image.Image { return drawSwatch(pattern(i), w, h, swatchWidth) })
		e.swatch.SetMinSize(fyne.NewSize(swatchWidth, swatchHeight))
		named := &fyne.Container{Layout: swatchLayout{}, Objects: []fyne.CanvasObject{e.swatch, e.name}}
		e.row = Ends(named, e.value)
		legend.Add(e.row)
		m.entries[i] = e
	}
	column.Add(InsetSides(0, theme.Half, 0, 0, legend))
	m.init(m, column)
	m.recolor = func() {
		m.bar.Refresh()
		for _, e := range m.entries {
			e.swatch.Refresh()
		}
	}
	m.show()
	return m
}

// swatchLayout sets a swatch before a text, on its first line.
type swatchLayout struct{}

func (swatchLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[1].MinSize().AddWidthHeight(swatchWidth+theme.Unit, 0)
}

func (swatchLayout) heightFor(objects []fyne.CanvasObject, width float32) float32 {
	return heightOf(objects[1], width-swatchWidth-theme.Unit)
}

func (swatchLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	line := Body.measure("Hg").Height
	place(objects[0], 0, (line-swatchHeight)/2, swatchWidth, swatchHeight)
	place(objects[1], swatchWidth+theme.Unit, 0, size.Width-swatchWidth-theme.Unit, size.Height)
}

// SetGrams shows amounts a day, carbohydrate with its fibre.
func (m *MacroBar) SetGrams(protein, fat, carbohydrate unit.Gram) {
	m.SetDay(protein, fat, carbohydrate, macro.SharesOf(max(0, protein), max(0, fat), max(0, carbohydrate)))
}

// SetDay shows amounts a day with the parts of the energy that they have, which
// depend on how carbohydrate and its fibre are counted.
func (m *MacroBar) SetDay(protein, fat, carbohydrate unit.Gram, s macro.Shares) {
	m.grams = [3]unit.Gram{max(0, protein), max(0, fat), max(0, carbohydrate)}
	m.share = [3]unit.Percent{s.Protein, s.Fat, s.Carbohydrate}
	m.show()
}

// ShowNumbers says whether grams and percent are shown, or the names alone.
func (m *MacroBar) ShowNumbers(shown bool) {
	m.numbers = shown
	m.show()
}

// SetStyle changes how numbers are written.
func (m *MacroBar) SetStyle(style unit.Style) {
	m.style = style
	m.show()
}

// Value returns what the legend says for a macro: 0 protein, 1 fat, 2
// carbohydrate.
func (m *MacroBar) Value(index int) string { return m.entries[index].value.Text() }

func (m *MacroBar) show() {
	for i, share := range m.share {
		text := ""
		if m.numbers {
			text = m.style.Number(float64(m.grams[i]), 0) + " g · " + m.style.Number(float64(share), 0) + " %"
		}
		m.entries[i].value.SetText(text)
	}
	m.Refresh()
}

// draw paints the bar in device pixels.
func (m *MacroBar) draw(w, h int) image.Image {
	scale := float64(w) / float64(max(1, m.bar.Size().Width))
	p := newPatternPainter(w, h, scale)
	gap := max(1, int(2*scale+0.5))
	x, sum := 0, 0.0
	for i, share := range m.share {
		sum += float64(share)
		end := int(float64(w)*sum/100 + 0.5)
		right := end
		if end < w {
			right = end - gap
		}
		if share > 0 && right > x {
			p.fill(pattern(i), x, right)
		}
		x = end
	}
	if x == 0 {
		p.frame(0, w)
	}
	return p.img
}

// drawSwatch paints one pattern for the legend.
func drawSwatch(kind pattern, w, h int, width float32) image.Image {
	p := newPatternPainter(w, h, float64(w)/float64(width))
	p.fill(kind, 0, w)
	return p.img
}
