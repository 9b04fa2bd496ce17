package intake

import (
	"fmt"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// goalHint says what energy the goal comes to be reckoned with, so that nothing
// happens unseen where nothing is named.
func goalHint(r draft.Reading, style unit.Style) string {
	g := r.Intake.Goal
	switch {
	case !g.Kind.Valid():
		return ""
	case g.Energy != 0:
		return "The agreed energy is taken as it is. Targets shows where it leads."
	case g.Kind == energy.Maintain:
		return "Holding the weight takes the maintenance energy, unless another energy is agreed."
	case g.PerWeek != 0:
		return "The energy is worked out from the change a week. Targets shows how."
	case g.Weight != 0 && !g.By.IsZero():
		return "The energy is worked out from the weight and the date. Targets shows how."
	case g.Kind == energy.Gain:
		return fmt.Sprintf("Until a pace is agreed, a customary %s over maintenance is used.", style.EnergyPerDay(energy.DefaultSurplus))
	}
	least := leastWords(r.Intake.Client.EquationSex, style)
	return fmt.Sprintf("Until a pace is agreed, a customary %s under maintenance is used, and never less than %s.",
		style.EnergyPerDay(energy.DefaultDeficit), least)
}

func leastWords(sex energy.Sex, style unit.Style) string {
	if sex.Valid() {
		return style.EnergyPerDay(energy.LeastEnergy(sex))
	}
	return fmt.Sprintf("%s for women or %s for men", style.EnergyPerDay(energy.LeastEnergy(energy.Female)), style.EnergyPerDay(energy.LeastEnergy(energy.Male)))
}
