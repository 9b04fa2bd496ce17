package unlock

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// RecoverWays lead on from the page.
type RecoverWays struct {
	// Recovered takes the new code. Where the file is open and only the code
	// could not be made, there is none, and the error says why.
	Recovered func(code Code, err error)
	Back      func()
	Restore   func() // restores a backup of an earlier day
}

// Recover is the page that opens the practice with the recovery code and gives
// it a new passphrase.
type Recover struct {
	guard Guard
	tools Tools
	ways  RecoverWays

	code     *widgets.Field
	pair     *pair
	do, back *widgets.Button
	told     told
	object   fyne.CanvasObject
	busy     bool
}

const wordsNeither = "Neither passphrase nor sheet? Then nobody can open the practice as it is now. " +
	"A backup of an earlier day opens with the passphrase or the sheet of that day."

// NewRecover returns the page.
func NewRecover(guard Guard, advise Adviser, tools Tools, ways RecoverWays) *Recover {
	s := &Recover{guard: guard, tools: tools, ways: ways, told: newTold("unlock.told")}
	s.code = widgets.Name(widgets.NewField("Recovery code", "The letters on the recovery sheet. Blanks and small letters do not matter."), "unlock.code")
	s.code.Check = s.readCode
	s.pair = newPair("unlock", "New passphrase", advise, s.onDo)
	s.do = widgets.Name(widgets.NewPrimaryButton("Open my practice", s.onDo), "unlock.do")
	s.back = widgets.Name(widgets.NewQuietButton("Go back", s.onBack), "unlock.back")
	restore := widgets.Name(widgets.NewTextButton("Restore a backup", ways.Restore), "unlock.restore")
	s.object = front("Use the recovery code",
		"The code on your recovery sheet opens the practice. Choose a new passphrase with it; a new recovery code follows. The old sheet then opens only backups of its own time.",
		s.code, s.pair.object, widgets.Row(s.do, s.back), s.told.Text,
		widgets.InsetSides(0, theme.Unit, 0, 0, widgets.Column(widgets.NewText(wordsNeither, widgets.Small), widgets.Row(restore))))
	return s
}

// Object is what is shown.
func (s *Recover) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the code.
func (s *Recover) FocusFirst() { widgets.FocusOn(s.code) }

// Escape goes back.
func (s *Recover) Escape() { s.onBack() }

// Busy reports whether a new code is being made, which must be shown.
func (s *Recover) Busy() bool { return s.busy }

func (s *Recover) readCode(typed string) (understood string, err error) {
	if _, err := s.guard.ReadCode(typed); err != nil {
		return "", err
	}
	return "This can be a recovery code: no letter is amiss.", nil
}

func (s *Recover) onBack() {
	if !s.busy {
		s.ways.Back()
	}
}

func (s *Recover) onDo() {
	if s.busy {
		return
	}
	code, ok := s.typedCode()
	if !ok {
		return
	}
	passphrase, ok := s.pair.take()
	if !ok {
		return
	}
	s.show(true)
	s.told.say("Opening, and making a new code…")
	var fresh Code
	s.tools.Run.Start(task.Job{
		Label: "Opening your practice",
		Work: func(ctx context.Context) (err error) {
			fresh, err = s.guard.Recover(ctx, code, passphrase)
			return err
		},
		Done: func(err error) { s.done(fresh, err) },
	})
}

// typedCode returns the code, or shows what is wrong with it.
func (s *Recover) typedCode() (Code, bool) {
	text := s.code.Text()
	problem := wordsNoCode
	if text != "" {
		code, err := s.guard.ReadCode(text)
		if err == nil {
			return code, true
		}
		problem = err.Error()
	}
	s.code.SetProblem(problem)
	widgets.FocusOn(s.code)
	return Code{}, false
}

func (s *Recover) done(fresh Code, err error) {
	s.show(false)
	if !s.guard.Locked() {
		s.ways.Recovered(fresh, err)
		return
	}
	s.told.say("")
	s.code.SetProblem(task.Words(err))
	s.object.Refresh()
	widgets.FocusOn(s.code)
}

func (s *Recover) show(busy bool) {
	s.busy = busy
	s.pair.setEnabled(!busy)
	setEnabled(!busy, s.code, s.do, s.back)
	s.object.Refresh()
}
