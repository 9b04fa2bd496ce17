package unlock

import (
	"context"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// EnterWays lead on from the locked window.
type EnterWays struct {
	Opened  func() // the file is open
	Recover func() // the recovery code is to be used
}

// Enter is the locked window: it asks for the passphrase and shows nothing else.
type Enter struct {
	guard Guard
	tools Tools
	ways  EnterWays

	field       *widgets.Field
	do, show    *widgets.Button
	recover     *widgets.Button
	told        told
	object      fyne.CanvasObject
	ready, busy bool
	wanted      bool // Enter was pressed before it was ready
	stopWaiting func()
}

const (
	leadLocked = "Your practice is locked. Type the passphrase to go on."
	wordsTry   = "You can try again now."
	// waitEvery is how often the countdown is shown anew.
	waitEvery = 250 * time.Millisecond
)

// NewEnter returns the locked window. A note, where there is one, tells what
// happened before. The window is not ready until Ready is called.
func NewEnter(guard Guard, tools Tools, ways EnterWays, note string) *Enter {
	s := &Enter{guard: guard, tools: tools, ways: ways, told: newTold("unlock.told"), stopWaiting: func() {}}
	s.field = widgets.Name(widgets.NewPasswordField("Passphrase", ""), "unlock.passphrase")
	s.field.OnEnter = func(string) { s.onDo() }
	s.do = widgets.Name(widgets.NewPrimaryButton("Unlock", s.onDo), "unlock.do")
	s.show = widgets.Name(widgets.NewTextButton(labelShow, s.onShow), "unlock.show")
	s.recover = widgets.Name(widgets.NewTextButton("Use the recovery code", s.onRecover), "unlock.recover")
	lead := leadLocked
	if note != "" {
		lead = note
	}
	s.object = front("Handbreadth", lead, s.field, s.told.Text,
		widgets.Row(s.do, s.show, s.recover),
		widgets.InsetSides(0, theme.Four, 0, 0, figures()))
	return s
}

// Object is what is shown.
func (s *Enter) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the passphrase.
func (s *Enter) FocusFirst() { widgets.FocusOn(s.field) }

// Escape empties the field.
func (s *Enter) Escape() {
	s.field.SetText("")
	widgets.FocusOn(s.field)
}

// Ready lets the passphrase be tried; what was asked for before is done now.
func (s *Enter) Ready() {
	s.ready = true
	s.follow()
	if s.wanted {
		s.wanted = false
		s.onDo()
	}
}

// Leave ends the countdown.
func (s *Enter) Leave() { s.stopWaiting() }

func (s *Enter) onShow() {
	s.field.SetHidden(!s.field.Hidden())
	label := labelHide
	if s.field.Hidden() {
		label = labelShow
	}
	s.show.SetText(label)
}

func (s *Enter) onRecover() {
	if !s.busy {
		s.ways.Recover()
	}
}

func (s *Enter) onDo() {
	switch {
	case s.busy || s.field.Text() == "":
		widgets.FocusOn(s.field)
		return
	case !s.ready:
		s.wanted = true
		return
	case s.guard.Wait() > 0:
		s.follow()
		return
	}
	passphrase := s.field.Text()
	s.busy = true
	s.field.SetProblem("")
	s.do.Disable()
	s.say("Opening…")
	s.tools.Run.Start(task.Job{
		Label: "Opening your practice",
		Work:  func(ctx context.Context) error { return s.guard.Unlock(ctx, passphrase) },
		Done:  s.tried,
	})
}

func (s *Enter) tried(err error) {
	s.busy = false
	s.do.Enable()
	s.say("")
	if err == nil {
		s.Leave()
		s.field.SetText("")
		s.ways.Opened()
		return
	}
	s.field.SetProblem(err.Error())
	s.object.Refresh()
	widgets.FocusOn(s.field)
	s.follow()
}

// follow counts down to the next try, where there is something to wait for.
func (s *Enter) follow() {
	s.stopWaiting()
	wait := s.guard.Wait()
	if wait <= 0 {
		if s.do.Disabled() && !s.busy {
			s.do.Enable()
			s.say(wordsTry)
		}
		return
	}
	s.do.Disable()
	s.say(waitWords(wait))
	s.stopWaiting = task.After(s.tools.Clock, waitEvery, s.follow)
}

func (s *Enter) say(words string) {
	s.told.say(words)
	s.object.Refresh()
}
