package targets

import (
	"math"
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// The sections that this one leads to.
const (
	sectionIntake    = "intake"
	sectionScreening = "screening"
)

// likely tells a range of energy: "likely 1640 to 2130".
func likely(low, high unit.Kilocalorie, style unit.Style) string {
	if low >= high {
		return ""
	}
	return "likely " + rounded(low, style) + " to " + rounded(high, style)
}

// rounded writes an energy to the nearest 10 kcal or 50 kJ, so that a range
// does not claim more than is known.
func rounded(e unit.Kilocalorie, style unit.Style) string {
	value, _ := style.EnergyValue(max(e, 0))
	step := 10.0
	if style.EnergyIn == unit.InKilojoules {
		step = 50
	}
	return style.Number(math.Round(value/step)*step, 0)
}

// targetNote says how sure the target is, and whether it is held.
func targetNote(p domain.Plan, s state, style unit.Style) string {
	note := likely(p.Maintenance.Low+p.Goal.Change, p.Maintenance.High+p.Goal.Change, style)
	if p.Intake.Goal.Energy != 0 {
		note = "as agreed"
	}
	if s == held {
		return note + "; held until a reason is recorded"
	}
	return note
}

// waitingLead says why there is no target yet, under a title.
func waitingLead(r draft.Reading) (title, lead string) {
	const more = "More is needed"
	for _, field := range goalFields {
		if _, wrong := r.Problems[field]; wrong && len(r.Problems) == 1 {
			return "No plan for this goal", "The goal cannot be worked out as it stands; it says below why."
		}
	}
	if len(r.Problems) > 0 {
		return more, "An answer could not be read, so there are no targets yet. The sheet beside says which."
	}
	return more, "The targets appear when the intake has what they need."
}

func wayToWant(r draft.Reading) way {
	for _, field := range r.Missing {
		if !ownField(field) {
			return way{"Go on with the intake", sectionIntake, field}
		}
	}
	return way{}
}

// ownField reports whether a field can be filled in here.
func ownField(field draft.Field) bool {
	switch field {
	case draft.Balance, draft.FatFloor, draft.FatFloorPerKg, draft.Protein, draft.ProteinBasis, draft.Counting,
		draft.MeasuredResting, draft.RestingEquation, draft.UsualFibre:
		return true
	}
	return slices.Contains(goalFields, field)
}

func referredLead(p domain.Plan) string {
	lead := "A referral comes first, so no target is set."
	if p.OutOfReach {
		return lead + " No energy brings this weight by then: the goal needs more time, or a weight nearer to the present one."
	}
	for _, f := range p.Gate.Refers {
		if f.Code == codeVeryLow || f.Code == codeUnderweight {
			return lead + " A later date, a slower rate or a goal nearer to the present weight changes this."
		}
	}
	return lead
}

func heldLead(p domain.Plan) string {
	if len(p.Gate.Holds) == 1 {
		return "One finding needs a reason first. The targets are here to be looked at and are not printed until then."
	}
	return unit.Style{}.Number(float64(len(p.Gate.Holds)), 0) +
		" findings need a reason first. The targets are here to be looked at and are not printed until then."
}

func lower(name string) string {
	if name == "" {
		return ""
	}
	return string(name[0]|0x20) + name[1:]
}

// stepWords leads from maintenance to the target: "− 339 kcal = target energy".
func stepWords(o energy.Outcome, style unit.Style) string {
	switch {
	case o.Lowers():
		return "− " + style.Energy(-o.Change) + " = target energy"
	case o.Raises():
		return "+ " + style.Energy(o.Change) + " = target energy"
	}
	return "= target energy"
}
