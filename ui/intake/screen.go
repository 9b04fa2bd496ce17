// Package intake is the section in which a visit is written down, in the order
// of a conversation: who came, why, what they want, what was measured, how they
// live and eat, and their health.
package intake

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/widgets"
)

// Screen is the section of one client file. The controls of a fold are made when
// it opens for the first time.
type Screen struct {
	session     *draft.Session
	controls    map[draft.Field]control
	boxes       map[draft.Field]fyne.CanvasObject
	folds       []*widgets.Fold
	foldAll     *widgets.Button
	goalHint    *widgets.Text
	goalNumbers *fyne.Container
	page        *widgets.Page
	ready       bool // the page is made

	// picked is the way of the goal that was chosen and not told yet; told holds
	// what was told in the ways that were left, so that it comes back with them.
	picked draft.Field
	told   map[draft.Field]string
}

// columnWidth keeps lines readable in a wide window.
const columnWidth = 720

// New returns the section of a client file; it follows every change.
func New(session *draft.Session) *Screen {
	s := &Screen{
		session: session, controls: map[draft.Field]control{}, boxes: map[draft.Field]fyne.CanvasObject{},
		goalHint: widgets.NewText("", widgets.Small), told: map[draft.Field]string{},
	}
	s.foldAll = widgets.Name(widgets.NewTextButton("", s.onFoldAll), "intake.fold_all")
	column := widgets.ColumnGap(0)
	for _, p := range parts {
		column.Add(s.newFold(p))
	}
	s.page = widgets.NewPage(widgets.Narrow(columnWidth, widgets.Column(
		widgets.Ends(widgets.NewText(lead, widgets.Small), s.foldAll), column)))
	for i, p := range parts {
		s.folds[i].SetOpen(p.Essential)
	}
	s.ready = true
	s.judge("")
	session.Hear(s.hear)
	return s
}

const lead = "In the order of a conversation. What is not needed for a plan may stay empty."

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus opens the fold of a field and moves the focus to it, or to the choice
// that it hangs on.
func (s *Screen) Focus(field draft.Field) {
	at := partOf(field)
	if at < 0 {
		return
	}
	s.folds[at].SetOpen(true)
	s.judge("")
	s.page.Settle()
	widgets.FocusOn(s.controls[s.reachable(field)].Target())
}

// reachable returns the field itself, or the choice that has to come first.
func (s *Screen) reachable(field draft.Field) draft.Field {
	form := s.session.Form()
	part := parts[partOf(field)].Key
	switch {
	case part == "activity" && field != activityWay && wayFor(field) != wayOfActivity(form):
		return activityWay
	case isShown(field, form, s.picked):
		return field
	case movesWeight(form):
		return goalWay
	}
	return draft.GoalKind
}

// newFold makes a fold whose controls are made when it opens.
func (s *Screen) newFold(p part) *widgets.Fold {
	f := widgets.NewFold(p.Title, func() fyne.CanvasObject { return s.build(p) })
	f.OnToggled = func(bool) { s.onToggled() }
	widgets.Name(f, "intake.fold."+p.Key)
	s.folds = append(s.folds, f)
	return f
}

// build makes the controls of a fold and shows what the form has.
func (s *Screen) build(p part) fyne.CanvasObject {
	for _, field := range p.Fields {
		if _, isHours := pursuitOf(field); !isHours { // the day makes its own
			s.addControl(field, s.newControl(field))
		}
	}
	return s.contentOf(p)
}

func (s *Screen) addControl(field draft.Field, c control) {
	widgets.Name(c.Target(), "intake."+string(field))
	s.controls[field], s.boxes[field] = c, c.Object()
	c.Show(s.session.Get(field))
}

func (s *Screen) onToggled() {
	s.judge("")
	s.page.Settle()
}

func (s *Screen) onFoldAll() {
	open := !s.anyOpen()
	for _, f := range s.folds {
		f.SetOpen(open)
	}
	s.judge("")
	s.page.Settle()
}

func (s *Screen) anyOpen() bool {
	for _, f := range s.folds {
		if f.Open() {
			return true
		}
	}
	return false
}

// onGoalWay takes another way to tell the pace of the goal.
func (s *Screen) onGoalWay(field draft.Field) {
	s.picked = field
	changes := pickGoalWay(s.session.Form(), field, s.told)
	s.session.SetAll(changes)
	s.judge("")
	s.page.Settle()
}

// onActivityWay takes another way to tell the activity; the class that was told
// comes back with its way.
func (s *Screen) onActivityWay(field draft.Field) {
	if now := s.session.Form().Get(draft.Activity); isClass(now) {
		s.told[draft.Activity] = now
	}
	value, other := activityValues[field]
	if !other {
		value = s.told[draft.Activity]
	}
	s.session.Set(draft.Activity, value)
}

// hear shows a change of the form, wherever it was made.
func (s *Screen) hear(changed draft.Field) {
	if changed == "" {
		for field, c := range s.controls {
			c.Show(s.session.Get(field))
		}
	} else if c, mine := s.controls[changed]; mine {
		c.Show(s.session.Get(changed))
	}
	s.judge(changed)
}
