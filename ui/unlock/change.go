package unlock

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// ChangeWays lead on from the page.
type ChangeWays struct {
	Changed func()
	Back    func()
}

// Change is the page on which the passphrase is changed.
type Change struct {
	guard Guard
	tools Tools
	ways  ChangeWays

	old      *oldField
	pair     *pair
	do, back *widgets.Button
	told     told
	object   fyne.CanvasObject
	busy     bool
}

// NewChange returns the page.
func NewChange(guard Guard, advise Adviser, tools Tools, ways ChangeWays) *Change {
	s := &Change{guard: guard, tools: tools, ways: ways, told: newTold("unlock.told")}
	s.old = newOldField(guard)
	s.pair = newPair("unlock", "New passphrase", advise, s.onDo)
	s.do = widgets.Name(widgets.NewPrimaryButton("Change the passphrase", s.onDo), "unlock.do")
	s.back = widgets.Name(widgets.NewQuietButton("Go back", s.onBack), "unlock.back")
	s.object = front("Change the passphrase",
		"Backups made until now still open with the old one. If somebody else may know it, change the key as well, "+
			"and make a new backup: both are in Practice.",
		s.old.Field, s.pair.object, widgets.Row(s.do, s.back), s.told.Text)
	return s
}

// Object is what is shown.
func (s *Change) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the old passphrase.
func (s *Change) FocusFirst() { widgets.FocusOn(s.old) }

// Escape goes back.
func (s *Change) Escape() { s.onBack() }

// Busy reports whether the passphrase is being changed.
func (s *Change) Busy() bool { return s.busy }

func (s *Change) onBack() {
	if !s.busy {
		s.ways.Back()
	}
}

func (s *Change) onDo() {
	if s.busy {
		return
	}
	old, ok := s.old.take()
	if !ok {
		return
	}
	passphrase, ok := s.pair.take()
	if !ok {
		return
	}
	s.show(true)
	s.told.say("Changing the passphrase…")
	s.tools.Run.Start(task.Job{
		Label: "Changing the passphrase",
		Work:  func(ctx context.Context) error { return s.guard.Change(ctx, old, passphrase) },
		Done: func(err error) {
			s.show(false)
			s.told.say("")
			if err != nil {
				s.old.refuse(err)
				return
			}
			s.ways.Changed()
		},
	})
}

func (s *Change) show(busy bool) {
	s.busy = busy
	s.pair.setEnabled(!busy)
	setEnabled(!busy, s.old, s.do, s.back)
	s.object.Refresh()
}

// oldField asks for the passphrase of now.
type oldField struct {
	*widgets.Field
	guard Guard
}

func newOldField(guard Guard) *oldField {
	f := widgets.NewPasswordField("Passphrase of now", "So that nobody does this at a desk that was left open.")
	widgets.Name(f, "unlock.old")
	return &oldField{Field: f, guard: guard}
}

// take returns what was typed, or shows what is missing or how long to wait.
func (f *oldField) take() (passphrase string, ok bool) {
	problem := ""
	switch wait := f.guard.Wait(); {
	case f.Text() == "":
		problem = wordsOld
	case wait > 0:
		problem = waitWords(wait)
	default:
		return f.Text(), true
	}
	f.SetProblem(problem)
	widgets.FocusOn(f)
	return "", false
}

func (f *oldField) refuse(err error) {
	f.SetProblem(task.Words(err))
	widgets.FocusOn(f)
}

// RenewWays lead on from the page.
type RenewWays struct {
	Made func(code Code)
	Back func()
}

// Renew is the page on which a new recovery code is made.
type Renew struct {
	guard Guard
	tools Tools
	ways  RenewWays

	old      *oldField
	do, back *widgets.Button
	told     told
	object   fyne.CanvasObject
	busy     bool
}

// NewRenew returns the page.
func NewRenew(guard Guard, tools Tools, ways RenewWays) *Renew {
	s := &Renew{guard: guard, tools: tools, ways: ways, told: newTold("unlock.told")}
	s.old = newOldField(guard)
	s.old.OnEnter = func(string) { s.onDo() }
	s.do = widgets.Name(widgets.NewPrimaryButton("Make a new code", s.onDo), "unlock.do")
	s.back = widgets.Name(widgets.NewQuietButton("Go back", s.onBack), "unlock.back")
	s.object = front("A new recovery code",
		"The sheet that you have now no longer opens your practice after this. It still opens backups made until now, so keep it beside them, or make a new backup.",
		s.old.Field, widgets.Row(s.do, s.back), s.told.Text)
	return s
}

// Object is what is shown.
func (s *Renew) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the passphrase.
func (s *Renew) FocusFirst() { widgets.FocusOn(s.old) }

// Escape goes back.
func (s *Renew) Escape() { s.onBack() }

// Busy reports whether a new code is being made, which must be shown.
func (s *Renew) Busy() bool { return s.busy }

func (s *Renew) onBack() {
	if !s.busy {
		s.ways.Back()
	}
}

func (s *Renew) onDo() {
	if s.busy {
		return
	}
	passphrase, ok := s.old.take()
	if !ok {
		return
	}
	s.show(true)
	s.told.say("Making a new code…")
	task.Run(s.tools.Run, "Making a recovery code", func(ctx context.Context) (Code, error) {
		return s.guard.Renew(ctx, passphrase)
	}, func(code Code, err error) {
		s.show(false)
		s.told.say("")
		if err != nil {
			s.old.refuse(err)
			return
		}
		s.ways.Made(code)
	})
}

func (s *Renew) show(busy bool) {
	s.busy = busy
	setEnabled(!busy, s.old, s.do, s.back)
	s.object.Refresh()
}
