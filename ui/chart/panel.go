package chart

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Panel is a chart with what it says of the day that is read, and the same in a
// table for those who prefer to read.
type Panel struct {
	Object *fyne.Container
	Chart  *Chart

	style    unit.Style
	readout  *readout
	table    *table
	toggle   *widgets.Button
	relayout func()
}

// NewPanel returns a panel without a course. Relayout is told when its height
// has changed.
func NewPanel(style unit.Style, relayout func()) *Panel {
	p := &Panel{Chart: New(style), style: style, readout: newReadout(style), table: newTable(style), relayout: relayout}
	p.Chart.OnDay = p.read
	p.toggle = widgets.NewTextButton("", p.onToggle)
	p.Object = widgets.Column(p.Chart.Surface, p.readout.object,
		widgets.InsetSides(-theme.Half, 0, 0, 0, widgets.Row(p.toggle)), p.table.object)
	p.showTable(false)
	return p
}

// SetCourse shows a course.
func (p *Panel) SetCourse(course Course) {
	p.Chart.SetCourse(course)
	p.readout.static.object.Hidden = course.Static == nil
	if p.TableShown() {
		p.table.set(course, p.style)
	}
}

// Toggle returns the button that shows and hides the table.
func (p *Panel) Toggle() *widgets.Button { return p.toggle }

// TableShown reports whether the table is shown.
func (p *Panel) TableShown() bool { return !p.table.object.Hidden }

// Said returns what the panel says of the day that is read.
func (p *Panel) Said() Words { return p.readout.words }

func (p *Panel) read(day int) { p.readout.set(p.Chart.course.Say(day, p.style)) }

func (p *Panel) onToggle() {
	p.showTable(!p.TableShown())
	p.relayout()
}

func (p *Panel) showTable(shown bool) {
	p.table.object.Hidden = !shown
	p.toggle.SetText("Show as a table")
	p.toggle.SetIcon(widgets.IconOpen)
	if shown {
		p.toggle.SetText("Hide the table")
		p.toggle.SetIcon(widgets.IconOpened)
		p.table.set(p.Chart.course, p.style)
	}
}
