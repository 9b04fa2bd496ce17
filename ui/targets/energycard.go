package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// energyCard is what the body spends: the equations side by side, and the chain
// from resting energy to maintenance with other ways beside it.
type energyCard struct {
	object *widgets.Card
	source Source
	now    energyView

	strip                          *widgets.DotStrip
	resting, activity, maintenance *opening
	checks                         [2]*opening
	measured                       *input
	measuring                      *widgets.Setting
	change                         *widgets.Button
	beside                         *fyne.Container
	chain                          *fyne.Container
	waiting                        *widgets.Text
}

const (
	stripWidth float32 = 400
	chainWidth float32 = 300
)

func newEnergyCard(s Source, goTo func(way), changed func()) *energyCard {
	style := s.Style()
	c := &energyCard{
		source:      s,
		resting:     newOpening("resting", "Resting energy", style, changed),
		activity:    newOpening("activity", "× activity level", style, changed),
		maintenance: newOpening("maintenance", "= maintenance energy", style, changed),
		measured:    newInput(s, draft.MeasuredResting, "Resting energy a day", "by indirect calorimetry; it wins over any equation"),
		waiting:     widgets.NewText("This is told as soon as a plan can be worked out.", widgets.Body),
	}
	for i, name := range []string{"check", "check_other"} {
		c.checks[i] = newOpening(name, "", style, changed)
	}
	c.strip = widgets.Name(widgets.NewDotStrip("Resting energy by equation", c.onEquation), "targets."+string(draft.RestingEquation))
	c.measuring = widgets.Name(widgets.NewSetting("Measured at rest", c.measured.Field), "targets.measuring")
	c.measuring.OnToggled = func(bool) { changed() }
	c.change = widgets.Name(widgets.NewTextButton("Change the activity", func() {
		goTo(way{Section: sectionIntake, Field: draft.Activity})
	}), "targets.to_activity")
	c.beside = widgets.ColumnGap(theme.Half, widgets.InsetSides(0, theme.Unit, 0, 0, widgets.NewText("Total energy in other ways", widgets.Small)), c.checks[0], c.checks[1])
	c.chain = widgets.WithAside(stripWidth, chainWidth, c.strip, widgets.ColumnGap(theme.Half,
		c.resting, c.measuring, c.activity, widgets.InsetSides(theme.Three-theme.Half, 0, 0, 0, widgets.Row(c.change)),
		c.maintenance, c.beside))
	c.object = widgets.NewCard("What the body spends", widgets.Column(c.waiting, c.chain))
	return c
}

func (c *energyCard) show(v view) {
	c.now = v.Energy
	c.waiting.Hidden, c.chain.Hidden = v.HasMaintenance, !v.HasMaintenance
	c.measured.show()
	if !v.HasMaintenance {
		return
	}
	e := v.Energy
	c.strip.Set(e.Strip, e.Chosen, e.Low, e.High)
	c.strip.SetCaption(e.Caption)
	c.resting.set(e.Resting)
	c.activity.set(e.Activity)
	c.maintenance.set(e.Maintenance)
	c.measuring.SetValue(e.Measured, "")
	for i, check := range c.checks {
		check.Hidden = i >= len(e.Checks)
		if !check.Hidden {
			check.set(e.Checks[i])
		}
	}
	c.beside.Hidden = len(e.Checks) == 0
}

// onEquation takes an equation; the default is taken by naming none.
func (c *energyCard) onEquation(index int) {
	c.source.Set(draft.RestingEquation, string(c.now.Equations[index]))
}

// reach opens the place for a measured value.
func (c *energyCard) reach() fyne.CanvasObject {
	c.measuring.SetOpen(true)
	return c.measured.Field
}
