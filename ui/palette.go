package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// palette is the box that finds clients, sections and actions by typing.
type palette struct {
	shell  *Shell
	search *widgets.SearchField
	list   *widgets.List
	none   *widgets.Text
	popup  *widget.PopUp
	found  []offer
}

// The size of the palette.
const (
	paletteWidth  = 560
	paletteHeight = 440
)

// OpenPalette opens the palette over the page.
func (s *Shell) OpenPalette() {
	if s.desk == nil || s.gate != nil || s.palette != nil || s.asking != nil {
		return
	}
	p := &palette{shell: s}
	p.build()
	s.palette = p
	p.popup.Show()
	p.popup.Resize(fyne.NewSize(paletteWidth, paletteHeight))
	p.find("")
	widgets.FocusOn(p.search)
	s.changed()
}

func (p *palette) build() {
	p.search = widgets.Name(widgets.NewSearchField("A client's name, a section or an action"), "palette.search")
	p.list = widgets.Name(widgets.NewList(
		func() int { return len(p.found) },
		newOfferLine,
		func(i int, row fyne.CanvasObject) { p.found[i].fill(row.(*fyne.Container)) },
	), "palette.list")
	p.list.OnChosen = p.choose
	p.search.OnChanged = p.find
	p.search.Steer(p.list)
	p.none = widgets.NewText("Nothing by that name. Escape goes back.", widgets.Small)
	content := bordered(widgets.Inset(theme.Unit, p.search), nil, nil,
		container.NewStack(p.list, container.NewVBox(widgets.Inset(theme.Two, p.none))))
	p.popup = widget.NewModalPopUp(content, p.shell.window.Canvas())
}

// find shows what matches.
func (p *palette) find(query string) {
	p.found = p.shell.offers(query)
	setShown(p.none, len(p.found) == 0)
	p.list.SetCursor(0)
	p.list.Refresh()
	p.shell.changed()
}

func (p *palette) choose(index int) {
	if index < 0 || index >= len(p.found) {
		return
	}
	act := p.found[index].act
	p.close()
	act()
}

func (p *palette) close() {
	p.popup.Hide()
	p.shell.palette = nil
	widgets.Unname("palette")
	p.shell.changed()
}

// newOfferLine makes a line of the palette: a title and a remark at its end.
func newOfferLine() fyne.CanvasObject {
	return widgets.Ends(widgets.NewLine("", widgets.Strong), widgets.NewLine("", widgets.Small))
}

// fill shows an offer in a line.
func (o offer) fill(line *fyne.Container) {
	line.Objects[0].(*widgets.Text).SetText(o.title)
	line.Objects[1].(*widgets.Text).SetText(o.remark)
	line.Refresh()
}
