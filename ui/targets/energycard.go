package targets

import (
	"fyne.io/fyne/v2"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// energyCard is the chain from resting energy to the target, and what the
// target promises by the static rule.
type energyCard struct {
	object                                 *widgets.Card
	resting, activity, maintenance, target *opening
	rate                                   *opening
	why                                    *widgets.Text
	promise                                *fyne.Container
}

func newEnergyCard(style unit.Style, changed func()) *energyCard {
	c := &energyCard{
		resting:     newOpening("targets.resting", "Resting energy", style, changed),
		activity:    newOpening("targets.activity", "× activity level", style, changed),
		maintenance: newOpening("targets.maintenance", "= maintenance energy", style, changed),
		target:      newOpening("targets.energy", "Target energy", style, changed),
	}
	c.rate = newOpening("targets.rate", "First weeks, by the static rule", style, changed)
	c.why = widgets.NewText("", widgets.Small)
	c.promise = widgets.Column(widgets.NewHairline(), c.rate, widgets.InsetSides(theme.Three, 0, 0, 0, c.why))
	c.object = widgets.NewCard("Energy a day", widgets.ColumnGap(theme.Half,
		c.resting, c.activity, c.maintenance, widgets.NewHairline(), c.target, c.promise))
	return c
}

func (c *energyCard) show(v view) {
	c.resting.set(v.Resting)
	c.activity.set(v.Activity)
	c.maintenance.set(v.Maintenance)
	c.target.set(v.Target)
	c.target.SetProminent(v.HasTargets)
	c.target.SetLabel(v.Step)
	c.rate.set(v.Goal.Rate)
	c.why.SetText(v.Goal.Why)
	c.promise.Hidden = v.Goal.Why == ""
}
