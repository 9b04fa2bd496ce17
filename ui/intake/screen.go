// Package intake is the section in which a visit is written down: who came, why,
// what was measured, what they want and what they eat, in the order of a
// conversation.
package intake

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/draft"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Screen is the section of one client file.
type Screen struct {
	session  *draft.Session
	controls map[draft.Field]control
	boxes    map[draft.Field]fyne.CanvasObject
	folds    []*fold
	goalHint *widgets.Text
	goalPair *fyne.Container
	page     *widgets.Page
}

// columnWidth keeps lines readable in a wide window.
const columnWidth = 720

// New returns the section of a client file; it follows every change.
func New(session *draft.Session) *Screen {
	s := &Screen{
		session: session, controls: map[draft.Field]control{}, boxes: map[draft.Field]fyne.CanvasObject{},
		goalHint: widgets.NewText("", widgets.Small),
	}
	column := widgets.ColumnGap(theme.Half)
	for _, p := range parts {
		column.Add(s.newPart(p).object)
	}
	s.page = widgets.NewPage(widgets.Narrow(columnWidth, column))
	s.showAll()
	session.Hear(s.hear)
	return s
}

// Object returns what to put into the window.
func (s *Screen) Object() fyne.CanvasObject { return s.page }

// Focus opens the fold of a field and moves the focus to it.
func (s *Screen) Focus(field draft.Field) {
	at := partOf(field)
	if at < 0 {
		return
	}
	if !s.folds[at].isOpen() {
		s.folds[at].setOpen(true)
	}
	s.settle()
	widgets.FocusOn(s.controls[field].Target())
}

// newPart makes a fold with its fields.
func (s *Screen) newPart(p part) *fold {
	for _, field := range p.Fields {
		c := s.newControl(field)
		widgets.Name(c.Target(), "intake."+string(field))
		s.controls[field], s.boxes[field] = c, c.Object()
	}
	f := newFold(p.Title, s.contentOf(p), s.settle, s.reveal)
	widgets.Name(f.head, "intake.fold."+p.Key)
	s.folds = append(s.folds, f)
	return f
}

// contentOf lays out the fields of a fold: short ones that belong together side
// by side, the rest one below the other.
func (s *Screen) contentOf(p part) fyne.CanvasObject {
	const pairWidth = 240
	box := func(field draft.Field) fyne.CanvasObject { return s.boxes[field] }
	switch p.Key {
	case "measurements":
		return widgets.Beside(pairWidth, box(draft.Height), box(draft.Weight))
	case "goal":
		return widgets.ColumnGap(theme.Two, box(draft.GoalKind),
			s.pairOf(pairWidth, draft.GoalWeight, draft.GoalBy), box(draft.GoalEnergy), s.goalHint)
	}
	column := widgets.ColumnGap(theme.Two)
	for _, field := range p.Fields {
		column.Add(box(field))
	}
	return column
}

// pairOf sets two fields side by side that are of use together.
func (s *Screen) pairOf(width float32, a, b draft.Field) fyne.CanvasObject {
	s.goalPair = widgets.Beside(width, s.boxes[a], s.boxes[b])
	return s.goalPair
}

// hear shows a change of the form, wherever it was made.
func (s *Screen) hear(changed draft.Field) {
	if changed == "" {
		s.showAll()
		return
	}
	if c, mine := s.controls[changed]; mine {
		c.Show(s.session.Get(changed))
	}
	s.judge(changed)
}

// showAll shows the whole form.
func (s *Screen) showAll() {
	for field, c := range s.controls {
		c.Show(s.session.Get(field))
	}
	s.judge("")
}

// judge shows what follows from the form: hints, what is wrong, what is of use.
// The field that is being typed into judges itself.
func (s *Screen) judge(typing draft.Field) {
	form, r, style := s.session.Form(), s.session.Reading(), s.session.Style()
	for field, c := range s.controls {
		c.SetHint(hintNow(field, form, style), isMissing(field, r))
		if _, isTyped := c.(*typed); !isTyped || field != typing {
			c.Judge(understood(field, r), problemOf(field, r))
		}
	}
	for i, p := range parts {
		s.folds[i].setMark(markOf(p, form, r, style))
	}
	s.goalHint.SetText(goalHint(r, style))
	if s.showUseful(form) {
		s.settle()
	}
}

func problemOf(field draft.Field, r draft.Reading) string {
	if p, wrong := r.Problems[field]; wrong {
		return widgets.ProblemWords(p)
	}
	return ""
}

// showUseful shows the fields that are of use now and reports whether that
// changed anything.
func (s *Screen) showUseful(form draft.Form) bool {
	changed := false
	for field, box := range s.boxes {
		shown := isShown(field, form)
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
	s.goalPair.Hidden = !isShown(draft.GoalWeight, form)
	hinted := s.goalHint.Text() != ""
	changed = changed || s.goalHint.Visible() != hinted
	s.goalHint.Hidden = !hinted
	return changed
}

// settle lays out anew after something came, went or folded.
func (s *Screen) settle() {
	scroll := s.page.Scroll()
	content := scroll.Content.(*fyne.Container)
	view := scroll.Size()
	if view.Width == 0 {
		return
	}
	size := fyne.NewSize(view.Width, max(view.Height, content.MinSize().Height))
	content.Resize(size)
	content.Layout.Layout(content.Objects, size)
	scroll.Refresh()
}

// reveal scrolls so that an object is in view.
func (s *Screen) reveal(object fyne.CanvasObject) {
	scroll := s.page.Scroll()
	driver := fyne.CurrentApp().Driver()
	y := driver.AbsolutePositionForObject(object).Y - driver.AbsolutePositionForObject(scroll).Y
	below := y + object.Size().Height + theme.Two - scroll.Size().Height
	switch {
	case y < theme.Two:
		scroll.ScrollToOffset(fyne.NewPos(0, max(0, scroll.Offset.Y+y-theme.Two)))
	case below > 0:
		scroll.ScrollToOffset(fyne.NewPos(0, scroll.Offset.Y+below))
	}
}
