package intake

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// dayBox takes the hours that an average day has of each activity, and tells
// what they add up to. Its fields are made when it is shown for the first time.
type dayBox struct {
	screen  *Screen
	object  *fyne.Container
	rows    *fyne.Container
	meter   *widgets.Meter
	sum     *widgets.Text
	level   *widgets.Text
	problem *widgets.Text
	made    bool
}

func newDayBox(s *Screen) *dayBox {
	d := &dayBox{
		screen: s, rows: widgets.Column(), meter: widgets.NewMeter(),
		sum: widgets.NewText("", widgets.Body), level: widgets.NewText("", widgets.Strong), problem: widgets.NewText("", widgets.Problem),
	}
	total := widgets.ColumnGap(theme.Half, d.meter, d.sum, d.level, d.problem)
	d.object = widgets.ColumnGap(theme.Two, widgets.NewText(dayHow, widgets.Small), d.rows, total)
	return d
}

const dayHow = "Hours of an average day. What happens a few times a week can be told so: 3 h a week. The small number is the MET: the energy over that of quiet rest."

// Object is what lies in the fold.
func (d *dayBox) Object() fyne.CanvasObject { return d.object }

// Target is the field of the first activity, once it is made.
func (d *dayBox) Target() fyne.CanvasObject {
	if !d.made {
		return d.object
	}
	return d.screen.controls[draft.DayHours(energy.Pursuits()[0].Code)].Target()
}

// Show does nothing: the fields of the hours show themselves.
func (d *dayBox) Show(string) {}

// SetHint does nothing: what the hours add up to says what is needed.
func (d *dayBox) SetHint(string, bool) {}

// Judge shows what is wrong with the day as a whole.
func (d *dayBox) Judge(_, problem string) {
	d.problem.SetText(problem)
	d.problem.Hidden = problem == ""
}

// build makes the fields of the hours, in two columns.
func (d *dayBox) build() {
	if d.made {
		return
	}
	d.made = true
	pursuits := energy.Pursuits()
	half := (len(pursuits) + 1) / 2
	left, right := widgets.ColumnGap(theme.Half), widgets.ColumnGap(theme.Half)
	for i, p := range pursuits {
		side := left
		if i >= half {
			side = right
		}
		side.Add(d.newHours(p))
	}
	d.rows.Add(widgets.Beside(wideWidth, left, right))
}

func (d *dayBox) newHours(p energy.Pursuit) fyne.CanvasObject {
	field := draft.DayHours(p.Code)
	f := widgets.NewLineField(p.Name, metWords(p.MET, d.screen.session.Style()))
	d.screen.addControl(field, d.screen.taking(field, &typed{Field: f, object: f}))
	return f
}

// show tells what the hours add up to.
func (d *dayBox) show(r draft.Reading, style unit.Style) {
	words := dayWordsOf(r.Intake.Activity.Day, style)
	d.meter.SetShare(words.Share)
	d.sum.SetText(words.Sum)
	d.level.SetText(words.Level)
	d.level.Hidden = words.Level == ""
}
