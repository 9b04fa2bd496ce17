package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/chart"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// courseCard leads the section: the expected course drawn, and below it what the
// goal comes to.
type courseCard struct {
	object *widgets.Card
	panel  *chart.Panel

	target, reached, first      *opening
	holding, half, static       *opening
	why, never, unmodelled      *widgets.Text
	drawn, comparison, whyInset *fyne.Container
}

// figuresWidth is the least width of a column of figures.
const figuresWidth float32 = 232

func newCourseCard(style unit.Style, changed func()) *courseCard {
	c := &courseCard{
		panel:   chart.NewPanel(style, changed),
		target:  newOpening("energy", "Target energy", style, changed),
		reached: newOpening("reached", "", style, changed),
		first:   newOpening("rate", "First weeks", style, changed),
		holding: newOpening("holding", "", style, changed),
		half:    newOpening("half", "Half of the change", style, changed),
		static:  newOpening("static", "The static rule", style, changed),
		why:     widgets.NewText("", widgets.Small), never: widgets.NewText("", widgets.Body), unmodelled: widgets.NewText("", widgets.Body),
	}
	widgets.Name(c.panel.Chart.Surface, "targets.chart")
	widgets.Name(c.panel.Toggle(), "targets.table")
	c.whyInset = widgets.InsetSides(theme.Three, 0, 0, 0, c.why)
	c.comparison = widgets.ColumnGap(0, c.static, c.whyInset)
	c.drawn = widgets.Column(c.panel.Object, widgets.NewHairline())
	figures := widgets.Beside(figuresWidth,
		widgets.ColumnGap(theme.Half, c.first, c.half, c.holding), c.comparison)
	c.object = widgets.NewCard("Expected course", widgets.ColumnGap(theme.Half, c.drawn, c.unmodelled, c.target, c.reached, c.never, figures))
	return c
}

func (c *courseCard) show(v view) {
	c.object.Hidden = !v.HasTargets
	if !v.HasTargets {
		return
	}
	c.drawn.Hidden = !v.HasCourse
	if v.HasCourse {
		c.panel.SetCourse(v.Course)
	}
	o := v.Outcome
	c.target.set(o.Target)
	c.target.SetProminent(true)
	for opening, r := range map[*opening]row{
		c.reached: o.Reached, c.first: o.First, c.holding: o.Holding, c.half: o.Half, c.static: o.Static,
	} {
		opening.setOrHide(r)
	}
	c.comparison.Hidden = !o.Static.shown()
	say(c.why, o.Why)
	say(c.never, o.Never)
	say(c.unmodelled, o.Unmodelled)
}

// say shows a text, or hides it where there is nothing to say.
func say(text *widgets.Text, words string) {
	text.SetText(words)
	text.Hidden = words == ""
}

// setShown shows or hides an object, and does nothing where it is so already.
func setShown(o fyne.CanvasObject, shown bool) {
	if shown == o.Visible() {
		return
	}
	if shown {
		o.Show()
	} else {
		o.Hide()
	}
}
