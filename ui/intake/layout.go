package intake

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// The least widths of fields that stand side by side.
const (
	rateWidth  = 120
	girthWidth = 190
	pairWidth  = 240
	wideWidth  = 300
)

// contentOf lays out the fields of a fold: short ones that belong together side
// by side, the rest one below the other.
func (s *Screen) contentOf(p part) fyne.CanvasObject {
	pair := func(a, b draft.Field) fyne.CanvasObject { return s.grid(pairWidth, a, b) }
	wide := func(fields ...draft.Field) fyne.CanvasObject { return s.grid(wideWidth, fields...) }
	box := func(field draft.Field) fyne.CanvasObject { return s.boxes[field] }
	switch p.Key {
	case "who":
		return s.grid(pairWidth, draft.Name, draft.Born, draft.Sex, draft.Date)
	case "why":
		return column(box(draft.Why), widgets.Beside(pairWidth, box(draft.OtherGoals), s.grid(rateWidth, draft.Importance, draft.Confidence)))
	case "goal":
		s.goalNumbers = s.grid(pairWidth, draft.GoalWeight, draft.GoalBy, draft.GoalPerWeek, draft.GoalEnergy)
		return column(box(draft.GoalKind), box(goalWay), s.goalNumbers, s.goalHint)
	case "measurements":
		return pair(draft.Height, draft.Weight)
	case "body":
		return column(widgets.NewText(bodyLead, widgets.Small),
			s.grid(girthWidth, draft.Waist, draft.Hip, draft.Neck), wide(draft.FatPercent, draft.MeasuredResting), box(draft.Points))
	case "context":
		return column(widgets.NewText(contextLead, widgets.Small), wide(p.Fields[:len(p.Fields)-1]...), box(draft.PastAttempts))
	case "health":
		return column(widgets.NewText(healthLead, widgets.Small), wide(draft.Medicines, draft.Supplements),
			pair(draft.BloodPressure, draft.PressureDate), box(draft.Laboratory))
	}
	all := column()
	for _, field := range p.Fields {
		if object, made := s.boxes[field]; made {
			all.Add(object)
		}
	}
	return all
}

func column(objects ...fyne.CanvasObject) *fyne.Container {
	return widgets.ColumnGap(theme.Two, objects...)
}

func (s *Screen) grid(leastWidth float32, fields ...draft.Field) *fyne.Container {
	objects := make([]fyne.CanvasObject, len(fields))
	for i, field := range fields {
		objects[i] = s.boxes[field]
	}
	return widgets.Grid(leastWidth, objects...)
}

const (
	bodyLead    = "All optional. Waist, neck and hip give an estimate of body fat where it was not measured."
	contextLead = "All optional: ask what matters for this client."
	healthLead  = "All optional, for the record and for a referral note. What can stop a plan is asked under Screening."
)
