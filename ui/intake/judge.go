package intake

import (
	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// judge shows what follows from the form: hints, what is wrong, what is of use.
// The field that is being typed into judges itself.
func (s *Screen) judge(typing draft.Field) {
	if !s.ready {
		return
	}
	form, r, style := s.session.Form(), s.session.Reading(), s.session.Style()
	s.picked = wayOfGoal(form, s.picked) // stays while its text is cleared to be typed anew
	changed := s.showUseful(form)
	for field, c := range s.controls {
		c.SetHint(hintNow(field, form, style), isMissing(field, r))
		if _, isTyped := c.(*typed); !isTyped || field != typing {
			c.Judge(understood(field, r), problemOf(field, r))
		}
	}
	s.showWays(form)
	for i, p := range parts {
		s.folds[i].SetMark(markOf(p, form, r, style))
	}
	s.foldAll.SetText(map[bool]string{true: "Fold all", false: "Open all"}[s.anyOpen()])
	if day, made := s.controls[draft.Day].(*dayBox); made {
		day.show(r, style)
	}
	if s.showGoalHint(goalHint(r, style)) || changed {
		s.page.Settle()
	}
}

// showGoalHint reports whether the hint came or went.
func (s *Screen) showGoalHint(hint string) bool {
	before := s.goalHint.Hidden
	s.goalHint.SetText(hint)
	s.goalHint.Hidden = hint == ""
	return before != s.goalHint.Hidden
}

func (s *Screen) showWays(form draft.Form) {
	if c, made := s.controls[goalWay].(*ways); made {
		c.show(wayOfGoal(form, s.picked))
	}
	if c, made := s.controls[activityWay].(*ways); made {
		c.show(wayOfActivity(form))
	}
}

func problemOf(field draft.Field, r draft.Reading) string {
	if p, wrong := r.Wrong(field); wrong {
		return widgets.ProblemWords(p)
	}
	return ""
}

// showUseful shows the fields that are of use now and reports whether that
// changed anything.
func (s *Screen) showUseful(form draft.Form) bool {
	changed := false
	for field, box := range s.boxes {
		shown := isShown(field, form, s.picked)
		if box.Visible() == shown {
			continue
		}
		changed = true
		if shown {
			box.Show()
		} else {
			box.Hide()
		}
	}
	s.goalNumbers.Hidden = form.Get(draft.GoalKind) == "" && form.Get(draft.GoalEnergy) == ""
	if day, made := s.controls[draft.Day].(*dayBox); made && wayOfActivity(form) == draft.Day {
		day.build()
	}
	return changed
}
